//! When a screen changes by itself.

use barwright_domain::session::{Cursor, Passed, Reading, Run};

use super::hand::holds;
use crate::contract::Look;
use crate::facts::{Facts, Of};

const SECOND_MS: i64 = 1_000;
const DAY_MS: i64 = 86_400_000;

/// The wall time to look again at, in milliseconds: the next second of a rest or a hold; the next
/// local midnight for what goes by the day.
pub(crate) fn wakes_at(facts: &Facts<'_>, look: &Look) -> Option<i64> {
    let at = facts.at;
    let after = match &facts.of {
        Of::Floor(run) => next_second(run, look, at),
        Of::Today(_) | Of::Tally(_) | Of::Weeks(_) | Of::Anew(_) | Of::Care => {
            let local = at.wall_ms + i64::from(at.offset_minutes) * 60_000;
            Some(DAY_MS - local.rem_euclid(DAY_MS))
        }
        Of::NothingOn
        | Of::PlanIsOver(_)
        | Of::Lift(_)
        | Of::Balance(_)
        | Of::Equipment
        | Of::GymForm(_)
        | Of::SessionForm(_)
        | Of::Maxes(_)
        | Of::Exercises
        | Of::PlanForm(_)
        | Of::LikedForm(_)
        | Of::Sent(_)
        | Of::Handed(_)
        | Of::Coming(_)
        | Of::Start
        | Of::PlanFile
        | Of::PlanOn(_) => None,
    };
    after.map(|after| at.wall_ms.saturating_add(after))
}

fn next_second(run: &Run, look: &Look, at: &Reading) -> Option<i64> {
    let rest = run.rest.as_ref().filter(|_| run.paused.is_none());
    let rest =
        rest.map(|rest| match rest.standing(Some(&run.seen), at).left_ms.rem_euclid(SECOND_MS) {
            0 => SECOND_MS,
            part => part,
        });
    let entered = matches!(look, Look::Floor { draft } if draft.amount.is_some());
    let hold = run.cursor().filter(|_| !entered && run.paused.is_none());
    let hold = hold.and_then(|cursor| until_second(run, &cursor, at));
    [rest, hold].into_iter().flatten().min()
}

/// Of a hold that runs.
fn until_second(run: &Run, cursor: &Cursor, at: &Reading) -> Option<i64> {
    let started = holds(run, cursor)?;
    Some(SECOND_MS - Passed::between(started, at).ms().rem_euclid(SECOND_MS))
}
