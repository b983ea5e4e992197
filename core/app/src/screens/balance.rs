//! Each muscle and side, planned and done.

use barwright_domain::session::Reading;

use crate::contract::{BalanceScreen, EngineError};
use crate::engine::Core;

/// Over so many weeks.
pub(super) fn screen(
    _core: &Core,
    _weeks: Option<u32>,
    _at: &Reading,
) -> Result<BalanceScreen, EngineError> {
    Ok(BalanceScreen {
        title: "Balance".to_owned(),
        subtitle: String::new(),
        full_halves: 40,
        bars: Vec::new(),
        sentences: Vec::new(),
        keys: Vec::new(),
        aloud: "Balance".to_owned(),
    })
}
