//! What changes next time and why, and what another max moves.

use barwright_domain::session::{Call, Reading, Run, SetKind};

use super::key::does;
use super::row::row;
use crate::contract::{EngineError, Intent, MovedLoadData, Row};
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

/// The maxes that the session changed, each with the loads that it moves, before and after: in rows,
/// and as data.
pub(super) fn maxes(
    core: &Core,
    run: &Run,
    at: &Reading,
) -> Result<(Vec<Row>, Vec<MovedLoadData>), EngineError> {
    let numerals = core.locale.numerals;
    let unit = run.equipment.unit;
    let (mut rows, mut data) = (Vec::new(), Vec::new());
    for moved in today::maxes_moved(core, run, at)? {
        let text =
            en::lift::max_moved(&moved.name, moved.before.as_ref(), &moved.after, unit, numerals);
        let mut heading = row(format!("max-{}", moved.exercise), 1, text);
        if moved.again {
            heading = heading.detail(en::lift::again(!moved.loads.is_empty()));
        }
        rows.push(heading);
        for load in &moved.loads {
            let id = format!("moved-{}.{}-{}", load.week + 1, load.index + 1, load.exercise);
            rows.push(row(id.clone(), 2, en::lift::moved(load, unit, numerals)));
            data.push(MovedLoadData {
                row: id,
                week: u32::try_from(load.week + 1).unwrap_or(u32::MAX),
                exercise: load.exercise.clone(),
                before: load.before.kilograms(),
                after: load.after.kilograms(),
                again: moved.again,
            });
        }
    }
    Ok((rows, data))
}
