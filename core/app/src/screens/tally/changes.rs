//! What changes next time and why, and what another max moves.

use barwright_domain::session::{Call, SetKind};

use crate::contract::{Intent, MovedLoadData, Row};
use crate::facts::{Held, TallyOf};
use crate::phrase::Words;
use crate::screens::key::taps;
use crate::screens::name;
use crate::screens::row::row;

/// A row for each exercise whose next call is known.
pub(super) fn rows(held: &Held, tally: &TallyOf<'_>, words: Words) -> Vec<Row> {
    let (run, unit) = (tally.run, tally.run.equipment.unit);
    let changes = tally.next_times.iter().map(|change| {
        let back = run.held_back.contains(&change.exercise);
        let work: Vec<&Call> = change
            .entry
            .calls
            .iter()
            .filter(|call| call.kind != SetKind::Ramp)
            .take_while(|call| call.row == 0)
            .collect();
        let line = words.sheet().line(&work, unit, words.numerals);
        let why = work
            .first()
            .map(|call| words.reason().lines(&call.reason, unit, words.numerals))
            .unwrap_or_default();
        let name = name::exercise(held, &change.exercise, &change.entry.name, words);
        let intent = Intent::HoldBack { exercise: change.exercise.clone(), held: !back };
        let hold = taps(run, "hold", words.tally().hold_back(back), intent);
        row(format!("next-{}", change.exercise), 1, words.tally().next_time(&name, &line))
            .why(why)
            .keys(vec![hold.chosen(back)])
    });
    changes.collect()
}

/// The maxes that the session changed, each with the loads that it moves, before and after: in rows,
/// and as data.
pub(super) fn maxes(
    held: &Held,
    tally: &TallyOf<'_>,
    words: Words,
) -> (Vec<Row>, Vec<MovedLoadData>) {
    let (say, numerals) = (words.lift(), words.numerals);
    let unit = tally.run.equipment.unit;
    let (mut rows, mut data) = (Vec::new(), Vec::new());
    for moved in &tally.maxes {
        let name = name::exercise(held, &moved.exercise, &moved.exercise, words);
        let text = say.max_moved(&name, moved.before.as_ref(), &moved.after, unit, numerals);
        let mut heading = row(format!("max-{}", moved.exercise), 1, text);
        if moved.again {
            heading = heading.detail(say.again(!moved.loads.is_empty()));
        }
        rows.push(heading);
        for load in &moved.loads {
            let id = format!("moved-{}.{}-{}", load.week + 1, load.index + 1, load.exercise);
            let name = name::exercise(held, &load.exercise, &load.name, words);
            rows.push(row(id.clone(), 2, say.moved(load, &name, unit, numerals)));
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
    (rows, data)
}
