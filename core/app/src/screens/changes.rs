//! What changes next time and why.

use barwright_domain::session::{Call, Reading, Run, SetKind};

use super::key::does;
use super::row::row;
use crate::contract::{EngineError, Intent, Row};
use crate::engine::Core;
use crate::phrase::en;
use crate::today;

/// A row for each exercise whose next call is known.
pub(super) fn rows(core: &Core, run: &Run, at: &Reading) -> Result<Vec<Row>, EngineError> {
    let numerals = core.locale.numerals;
    let unit = run.equipment.unit;
    let changes = today::next_times(core, run, at)?;
    Ok(changes
        .into_iter()
        .map(|change| {
            let held = run.held_back.contains(&change.exercise);
            let work: Vec<&Call> = change
                .entry
                .calls
                .iter()
                .filter(|call| call.kind != SetKind::Ramp)
                .take_while(|call| call.row == 0)
                .collect();
            let line = en::sheet::line(&work, unit, numerals);
            let why = work
                .first()
                .map(|call| en::reason::lines(&call.reason, unit, numerals))
                .unwrap_or_default();
            let intent = Intent::HoldBack { exercise: change.exercise.clone(), held: !held };
            let label = if held { "Let it change" } else { "Hold it back" };
            row(format!("next-{}", change.exercise), 1, format!("{}: {line}", change.name))
                .why(why)
                .keys(vec![does("hold", label, intent).chosen(held)])
        })
        .collect())
}
