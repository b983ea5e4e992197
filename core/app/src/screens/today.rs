//! Today's sheet.

use barwright_domain::session::Reading;

use super::key::shows;
use crate::contract::{EngineError, Look, TodayScreen};
use crate::engine::Core;

/// What is on.
pub(super) fn screen(
    core: &Core,
    _session: Option<&str>,
    _minutes: Option<u32>,
    _at: &Reading,
) -> Result<TodayScreen, EngineError> {
    let title = match &core.plan {
        None => "No plan yet".to_owned(),
        Some(plan) => plan.name.clone(),
    };
    Ok(TodayScreen {
        aloud: title.clone(),
        title,
        subtitle: core.gym().name,
        duration: String::new(),
        rows: Vec::new(),
        left_out: Vec::new(),
        cautions: Vec::new(),
        needs: Vec::new(),
        keys: vec![shows("equipment", "What this gym has", Look::Equipment)],
    })
}
