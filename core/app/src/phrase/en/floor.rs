//! Words of the floor.

use barwright_domain::call::{EffortScale, HowMany, Side, Structure};
use barwright_domain::prescribe;
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Reserve};
use barwright_domain::session::{Cursor, EntryRun, LastTime, PartRun, RestKind, Run, SetRun};

use super::{panel, words};
pub use crate::phrase::written::figures::effort_label;

/// What a rest is, as its label.
pub fn rest_label(kind: RestKind) -> &'static str {
    match kind {
        RestKind::Pause => "Pause in the set",
        RestKind::Sides => "Rest between sides",
        RestKind::Within => "Rest within the round",
        RestKind::Round => "Rest after the round",
        RestKind::Set => "Rest",
        RestKind::Clock => "Next start",
    }
}

/// What a notification says when a rest is over.
pub fn rest_over(kind: RestKind) -> String {
    match kind {
        RestKind::Pause => "Pause over.".to_owned(),
        RestKind::Clock => "Start now.".to_owned(),
        RestKind::Sides | RestKind::Within | RestKind::Round | RestKind::Set => {
            "Rest over.".to_owned()
        }
    }
}

/// What comes next, in a few words: "Back squat, set 2 of 4".
pub fn next_in_short(run: &Run, name: impl Fn(&EntryRun) -> String) -> String {
    let Some((entry, set)) = run
        .cursor()
        .and_then(|cursor| Some((run.entries.get(&cursor.set.entry)?, run.set(cursor.set)?)))
    else {
        return String::new();
    };
    format!("{}, {}", name(entry), panel::which_set(entry, set).to_lowercase())
}

/// Which part of a set made of parts; nothing for a straight one.
fn which_part(set: &SetRun, part: u16) -> String {
    let at = usize::from(part);
    match &set.call.structure {
        Structure::Straight => String::new(),
        Structure::Cluster { blocks, .. } => format!(", block {} of {}", at + 1, blocks.len()),
        Structure::RestPause { .. } if at == 0 => ", first set".to_owned(),
        Structure::RestPause { total, .. } => {
            let so_far = set.reps();
            match total {
                Some(total) => format!(", mini-set {at} ({so_far} of {total} done)"),
                None => format!(", mini-set {at}"),
            }
        }
        Structure::Drop { .. } if at == 0 => String::new(),
        Structure::Drop { off } => format!(", drop {at} of {}", off.len()),
        Structure::Ranges { parts } => {
            parts.get(at).map(|part| format!(", {}", part.name)).unwrap_or_default()
        }
        Structure::Continued { .. } if at == 0 => String::new(),
        Structure::Continued { parts } => parts
            .get(at - 1)
            .map(|part| format!(", then {}", part.exercise.replace('-', " ")))
            .unwrap_or_default(),
    }
}

/// The call in one sentence: "Set 2 of 4: 5 reps, 1–2 in reserve."
pub fn sentence(run: &Run, cursor: &Cursor, numerals: Numerals) -> String {
    let Some((entry, set)) =
        run.entries.get(&cursor.set.entry).and_then(|entry| Some((entry, run.set(cursor.set)?)))
    else {
        return String::new();
    };
    let side =
        set.call.side.map(|side| format!(", {} side", words::side(side))).unwrap_or_default();
    let asked =
        run.how_many_at(cursor).map(|asked| words::how_many(&asked, numerals)).unwrap_or_default();
    // An open set says itself where it ends.
    let open = matches!(run.how_many_at(cursor), Some(HowMany::Open { .. }));
    let effort = run
        .effort_at(cursor.set)
        .filter(|_| !open)
        .map(|target| format!(", {}", words::effort(&target, numerals)))
        .unwrap_or_default();
    format!(
        "{}{}{side}: {asked}{effort}.",
        panel::which_set(entry, set),
        which_part(set, cursor.part)
    )
}

/// What the wide key says: "Racked" where a bar goes back to its rack, "Done" where nothing is racked.
pub fn main_key(
    set: &SetRun,
    part: u16,
    asked: &HowMany,
    next: Option<&str>,
    racks: bool,
) -> String {
    let done = if racks { "Racked" } else { "Done" };
    let side = set.call.side.map(|side| match side {
        Side::Left => "Left side done",
        Side::Right => "Right side done",
    });
    match (next, side, asked) {
        (Some(next), _, _) if matches!(set.call.structure, Structure::Drop { .. }) => {
            format!("Dropped to {next}")
        }
        (Some(next), _, _) => format!("{done}: next {next}"),
        (None, Some(side), _) => side.to_owned(),
        (None, None, HowMany::Seconds(_) | HowMany::Metres(_)) => "Done".to_owned(),
        (None, None, _) if part > 0 => format!("{done}: last part"),
        (None, None, _) => done.to_owned(),
    }
}

/// A key: a part of a drop is over, and nothing here is lighter.
pub fn nothing_lighter() -> &'static str {
    "Nothing lighter here: same load"
}

/// Over the effort keys: how the set ends, and in which scale its effort is called.
pub fn prompt(racks: bool, scale: EffortScale) -> &'static str {
    match (racks, scale) {
        (true, EffortScale::Left) => "Racked, reps in reserve:",
        (true, EffortScale::Rpe) => "Racked, RPE:",
        (false, EffortScale::Left) => "Done, reps in reserve:",
        (false, EffortScale::Rpe) => "Done, RPE:",
    }
}

/// An effort key read aloud: "Record 5 reps, 2 in reserve".
pub fn effort_says(left: Reserve, scale: EffortScale, amount: &str, numerals: Numerals) -> String {
    format!("Record {amount}, {}", words::reserve(left, scale, numerals))
}

/// The call's sentence when nothing is left.
pub fn nothing_left() -> &'static str {
    "Every set is done or skipped."
}
/// A notice.
pub fn paused() -> &'static str {
    "The session is paused."
}
/// A notice.
pub fn restarted() -> &'static str {
    "The device restarted: the rest goes on by the time of day."
}
/// A notice.
pub fn clock_went_back() -> &'static str {
    "The device's clock went back: the rest goes on from what was left of it."
}

/// Tempo, technique and what is worn, a line each.
pub fn manner(entry: &EntryRun, set: &SetRun) -> Vec<String> {
    let manner = &set.call.manner;
    let worn: Vec<&str> = entry.kit.iter().map(|kit| words::kit(*kit)).collect();
    [
        manner.tempo.map(|tempo| format!("tempo {tempo}")),
        manner.technique.clone(),
        (!worn.is_empty()).then(|| format!("with {}", worn.join(", "))),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// "last time 107.5 kg: 5, 5, 4; 1 in reserve".
pub fn last_time(
    last: &LastTime,
    scale: EffortScale,
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    let load = match last.figure {
        // The body alone, or a set-up without figures.
        None | Some(Mass::ZERO) => String::new(),
        Some(figure) if figure < Mass::ZERO => {
            format!(" {} assistance", figure.distance(Mass::ZERO).print(unit, numerals))
        }
        Some(figure) => format!(" {}", figure.print(unit, numerals)),
    };
    let amounts: Vec<String> =
        last.amounts.iter().map(|amount| words::figure(amount, numerals)).collect();
    let left = last
        .left_halves
        .and_then(Reserve::from_halves)
        .map(|left| format!("; {}", words::reserve(left, scale, numerals)))
        .unwrap_or_default();
    format!("last time{load}: {}{left}", amounts.join(", "))
}

/// "9 sets left, about 34 min".
pub fn to_go(run: &Run) -> String {
    let sets: usize = run
        .in_order()
        .filter(|(_, _, entry)| entry.pending())
        .flat_map(|(_, _, entry)| &entry.sets)
        .filter(|set| set.pending())
        .count();
    if sets == 0 {
        return "no sets left".to_owned();
    }
    let seconds = prescribe::seconds_to_go(run);
    format!("{} left, {}", words::count(sets, "set", "sets"), words::minutes(seconds))
}

/// What this gym lacks for an exercise.
pub fn lacks_here(lacks: &[String]) -> String {
    format!("this gym lacks: {}", lacks.join(", ").replace('-', " "))
}

/// What this gym lacks for the exercise that is on, and where what is done instead is found.
pub fn lacking(lacks: &[String], instead: Option<&str>) -> String {
    let lacks = words::sentence_case(&lacks_here(lacks));
    match instead {
        Some(instead) => {
            format!("{lacks}. {instead} is here: More, Swap this exercise.")
        }
        None => format!("{lacks}."),
    }
}

/// A key: the session goes on after a pause.
pub fn resume() -> &'static str {
    "Resume"
}

/// A key: the first set by the clock.
pub fn start_clock() -> (&'static str, &'static str) {
    ("Start the clock", "Start the first set; every further one starts by the clock")
}

/// A key: a hold is measured.
pub fn start_hold() -> (&'static str, &'static str) {
    ("Start the hold", "Measure the hold from now")
}

/// A key: a part was short, and the set is over.
pub fn short(amount: &str) -> (&'static str, String) {
    ("Fewer: end the set", format!("Record {amount} as the last of the set"))
}

/// A key: the set is recorded without a call.
pub fn uncalled(amount: &str) -> (&'static str, String) {
    ("No effort called", format!("Record {amount}, no effort called"))
}

/// The wide key read aloud.
pub fn record(amount: &str) -> String {
    format!("Record {amount}")
}

/// A step of the figure read aloud.
pub fn down_to(amount: &str) -> String {
    format!("Down to {amount}")
}

/// A step of the figure read aloud.
pub fn up_to(amount: &str) -> String {
    format!("Up to {amount}")
}

/// A key.
pub fn ended() -> &'static str {
    "Set cut short…"
}

/// A key.
pub fn more() -> &'static str {
    "More…"
}

/// A key.
pub fn finish() -> &'static str {
    "Finish the session"
}

/// A key.
pub fn undo() -> (&'static str, &'static str) {
    ("Undo", "Undo the last tap")
}

/// A key.
pub fn redo() -> (&'static str, &'static str) {
    ("Redo", "Redo what was undone")
}

/// The call's sentence while an earlier part is corrected: "Correct set 2 of 4, 110 kg × 5 reps."
pub fn correcting(
    entry: &EntryRun,
    set: &SetRun,
    part: &PartRun,
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    let at = set.parts.iter().position(|other| std::ptr::eq(other, part)).unwrap_or(0);
    let at = u16::try_from(at).unwrap_or(0);
    let which = panel::which_set(entry, set).to_lowercase();
    let side =
        set.call.side.map(|side| format!(", {} side", words::side(side))).unwrap_or_default();
    let part_of = which_part(set, at);
    let was = panel::done(part, unit, numerals);
    format!("Correct {which}{part_of}{side}: it says {was}.")
}

/// Over the effort keys of a part that is corrected.
pub fn really_left(scale: EffortScale) -> &'static str {
    match scale {
        EffortScale::Left => "Corrected, reps in reserve:",
        EffortScale::Rpe => "Corrected, RPE:",
    }
}

/// A key: an earlier part is corrected.
pub fn put_right(amount: &str) -> (&'static str, String) {
    ("Correct it", format!("Correct it to {amount}"))
}

/// A key.
pub fn leave() -> &'static str {
    "Keep as it was"
}

/// A key: a shorter rest.
pub fn shorter(seconds: i32) -> (String, String) {
    (format!("−{seconds} s"), format!("{seconds} seconds shorter"))
}

/// A key: a longer rest.
pub fn longer(seconds: i32) -> (String, String) {
    (format!("+{seconds} s"), format!("{seconds} seconds longer"))
}

/// A rest read aloud: its label, and its figures; none where it is over.
pub fn rest_aloud(label: &str, figures: Option<&str>) -> String {
    match figures {
        None => format!("{label} over."),
        Some(figures) => format!("{label}, {figures} left."),
    }
}

/// The exercise and its load read aloud.
pub fn exercise_aloud(name: &str, load: &str) -> String {
    let load = if load.is_empty() { String::new() } else { format!(", {load}") };
    format!("{name}{load}.")
}

/// A tap on the figure: what is far from the call is typed.
pub fn pad() -> (&'static str, &'static str) {
    ("Type", "Type what was done")
}

/// The title of the pad before a digit.
pub fn type_it() -> &'static str {
    "How many?"
}

/// A key of the pad.
pub fn rub_out() -> (&'static str, &'static str) {
    ("\u{232b}", "Rub the last digit out")
}

/// A key of the pad.
pub fn set_to(amount: &str) -> (&'static str, String) {
    ("That is it", format!("It was {amount}"))
}
