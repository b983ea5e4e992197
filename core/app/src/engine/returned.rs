//! A lifter's week in short: looked at, and nothing recorded.

use barwright_domain::session::Reading;

use super::Engine;
use crate::contract::{self, EngineError};
use crate::gather;
use crate::screens::{self, LifterWeek};

impl Engine {
    /// The week of the plan in which a session was done last, in short: what was done of what was
    /// planned, and what stands out.
    ///
    /// # Errors
    /// [`EngineError::Refused`] without a plan; else as [`Engine::view`].
    pub fn week_in_short(&self, reading: contract::Reading) -> Result<LifterWeek, EngineError> {
        let at = Reading::from(reading);
        self.with(|core| {
            let ended = core.held.when_next_begins(&at);
            let held = ended.as_ref().unwrap_or(&core.held);
            let of = gather::returned(&core.store, held, &at)?;
            Ok(screens::returned_week(held, &of, held.locale.words()))
        })
    }
}
