//! A plan's file changed a step at a time, as by hand: see [`crate::text::edit`].

use super::Plan;
use super::read::PlanFile;
use crate::catalogue::{Catalogue, Exercise};
use crate::text::edit::{NotEdited, Written, put, remove};

/// What of a slot belongs to the exercise that it was written for, in the exercise and in its rows.
const OF_ITS_EXERCISE: [&str; 9] = [
    "load",
    "percent_of",
    "counted",
    "sides",
    "set_up",
    "track",
    "technique",
    "part_techniques",
    "cues",
];

/// Another exercise in the place of one of a session, both by their places, from now on: it has its
/// own history, so its load is found by feel. What the new one can't follow (a rule, a list of
/// substitutes) goes too.
///
/// # Errors
/// [`NotEdited`].
pub fn exchange(
    text: &str,
    (session, slot): (usize, usize),
    exercise: &Exercise,
) -> Result<String, NotEdited> {
    let place = format!("session.{session}.exercise.{slot}");
    let mut text = put(text, &format!("{place}.name"), &exercise.name.as_ref().into())?;
    let rows = Written::of(&text).map_or(0, |written| written.count(&format!("{place}.set")));
    let owners =
        std::iter::once(place.clone()).chain((0..rows).map(|at| format!("{place}.set.{at}")));
    for owner in owners {
        for key in OF_ITS_EXERCISE {
            if let Ok(without) = remove(&text, &format!("{owner}.{key}")) {
                text = without;
            }
        }
    }
    let sound = |text: &str| read(text).is_ok();
    for key in ["next", "substitutes", "ramp"] {
        if sound(&text) {
            break;
        }
        if let Ok(without) = remove(&text, &format!("{place}.{key}"))
            && (sound(&without) || !sound(&text))
        {
            text = without;
        }
    }
    Ok(text)
}

fn read(text: &str) -> Result<PlanFile, Vec<crate::text::Fault>> {
    Plan::read(text, &Catalogue::builtin())
}
