//! A plan read: what it says, or what is wrong with it and where.

use crate::contract::{EngineError, PlanScreen};
use crate::engine::Core;

/// The plan in a text, or the one that is on.
pub(super) fn screen(
    core: &Core,
    _text: Option<&str>,
    _week: Option<u32>,
) -> Result<PlanScreen, EngineError> {
    let title = core.plan.as_ref().map_or_else(|| "No plan yet".to_owned(), |p| p.name.clone());
    Ok(PlanScreen {
        aloud: title.clone(),
        title,
        subtitle: String::new(),
        rows: Vec::new(),
        faults: Vec::new(),
        keys: Vec::new(),
    })
}
