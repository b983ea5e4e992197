//! What changes next time and why.

use barwright_domain::session::{Reading, Run};

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
            let intent = Intent::HoldBack { exercise: change.exercise.clone(), held: !held };
            let label = if held { "Let it change" } else { "Hold it back" };
            row(format!("next-{}", change.exercise), 1, change.name.clone())
                .why(en::reason::lines(&change.reason, unit, numerals))
                .keys(if change.changes { vec![does("hold", label, intent)] } else { Vec::new() })
        })
        .collect())
}
