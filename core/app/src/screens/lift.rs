//! One exercise over time.

use barwright_domain::session::Reading;

use crate::contract::{EngineError, LiftScreen, RefusalCode};
use crate::engine::Core;
use crate::phrase::en;

/// An exercise by slug or name.
pub(super) fn screen(
    core: &Core,
    exercise: &str,
    _page: u32,
    _at: &Reading,
) -> Result<LiftScreen, EngineError> {
    let found =
        core.catalogue.find(exercise).ok_or_else(|| en::refusal::coded(RefusalCode::NotHere))?;
    Ok(LiftScreen {
        title: found.name.to_string(),
        subtitle: String::new(),
        chart: None,
        records: Vec::new(),
        sessions: Vec::new(),
        keys: Vec::new(),
        aloud: found.name.to_string(),
    })
}
