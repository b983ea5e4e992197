//! Words of the floor's panels: what is seldom needed.

use barwright_domain::call::Amount;
use barwright_domain::quantity::{MassUnit, Numerals};
use barwright_domain::session::{Ending, EntryRun, Guard, Kit, PartRun, SetRun};

use super::{bar, words};
use crate::phrase::written::plates::label;
use crate::phrase::written::sets::{self, SetNames};

/// A key that closes a panel.
pub fn back() -> &'static str {
    "Back"
}

/// A title.
pub fn more() -> &'static str {
    "More"
}

/// A key of More.
pub fn open_guard() -> &'static str {
    "Pins or spotter…"
}

/// A key of More.
pub fn open_load() -> &'static str {
    "Choose a load…"
}

/// A key of More.
pub fn skip_set() -> &'static str {
    "Skip this set"
}

/// A key of More.
pub fn add_set() -> &'static str {
    "One more set"
}

/// A key of More.
pub fn open_swap() -> &'static str {
    "Swap this exercise…"
}

/// A key of More.
pub fn postpone() -> &'static str {
    "Do this exercise last"
}

/// A key of More.
pub fn skip_exercise() -> &'static str {
    "Skip the rest of this exercise"
}

/// A key of More.
pub fn open_helped() -> &'static str {
    "A spotter helped…"
}

/// A key of More.
pub fn open_kit() -> &'static str {
    "Belt, wraps, straps…"
}

/// A key of More.
pub fn open_order() -> &'static str {
    "Order of exercises…"
}

/// A key of More.
pub fn open_earlier() -> &'static str {
    "Correct an earlier set…"
}

/// A key of More.
pub fn open_notes() -> &'static str {
    "Notes and set-up…"
}

/// A key of More.
pub fn pause() -> &'static str {
    "Pause"
}

/// A key of More.
pub fn finish_here() -> &'static str {
    "Finish the session now"
}

/// A title.
pub fn ended(after: &Amount, numerals: Numerals) -> String {
    format!("Set cut short after {}", words::amount(after, numerals))
}

/// A way that a set ended, with how much was done then.
pub fn way(ending: Ending, done: &Amount, numerals: Numerals) -> (&'static str, String) {
    let label = match ending {
        Ending::AsCalled => "As called",
        Ending::Failed => "Failed a rep",
        Ending::Form => "Form went",
        Ending::Pain => "Pain",
        Ending::Interrupted => "Interrupted",
        Ending::Equipment => "Equipment",
    };
    (label, format!("Record {}: {}", words::amount(done, numerals), label.to_lowercase()))
}

/// A title.
pub fn bar_holds() -> &'static str {
    "The bar holds"
}

/// What is on each side; none where nothing is.
pub fn each_side(held: Option<&str>) -> String {
    format!("Each side: {}", held.unwrap_or("nothing"))
}

/// A key.
pub fn take_off(plate: &str, numerals: Numerals) -> String {
    format!("Take off {}", label(plate, numerals)).trim_end().to_owned()
}

/// A key.
pub fn put_on(plate: &str, numerals: Numerals) -> String {
    format!("Put on {}", label(plate, numerals))
}

/// A key.
pub fn empty() -> &'static str {
    "Empty"
}

/// A key.
pub fn as_called() -> &'static str {
    "As called"
}

/// A title.
pub fn load(name: &str) -> String {
    format!("{name}: choose a load for the sets left")
}

/// A field for a load in all, with the body: its label and what is typed.
pub fn all_field(unit: MassUnit, numerals: Numerals) -> (&'static str, String) {
    let (_, hint) = load_field(unit, numerals);
    ("Total, with bodyweight", hint)
}

/// A field: its label, and an example.
pub fn load_field(unit: MassUnit, numerals: Numerals) -> (&'static str, String) {
    ("Load", barwright_domain::quantity::Mass::whole(100, unit).print(unit, numerals))
}

/// A key.
pub fn pin(pin: &str, numerals: Numerals) -> String {
    format!("Pin {}", label(pin, numerals))
}

/// A title.
pub fn swap(name: &str) -> String {
    format!("Instead of {name}")
}

/// A key: why it is swapped, where some of it was done.
pub fn it_hurts() -> (&'static str, &'static str) {
    ("Because it hurts", "Swap it because it hurts: it stands on the exercise until it does not")
}

/// A substitute that can't be done here.
pub fn not_here(name: &str) -> String {
    format!("{name}: not in this gym")
}

/// A title.
pub fn order() -> &'static str {
    "Order of exercises"
}

/// An exercise with sets left.
pub fn sets_left(name: &str, sets: usize) -> String {
    format!("{name}: {}", words::count(sets, "set", "sets"))
}

/// A key.
pub fn do_now() -> &'static str {
    "Do now"
}

/// A title.
pub fn earlier() -> &'static str {
    "Correct an earlier set"
}

/// A part that was done: "Back squat, set 2 of 4: 110 kg × 5 reps".
pub fn part(
    name: &str,
    entry: &EntryRun,
    set: &SetRun,
    part: &PartRun,
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    let which = which_set(entry, set).to_lowercase();
    format!("{name}, {which}: {}", done(part, unit, numerals))
}

/// As [`done`], repetitions without their word: "110 kg × 5", "30 s".
pub(super) fn done_short(part: &PartRun, unit: MassUnit, numerals: Numerals) -> String {
    let load = bar::in_line(&part.done.load, unit, numerals);
    let amount = match part.done.amount {
        Amount::Reps(_) => words::figure(&part.done.amount, numerals),
        Amount::Seconds(_) | Amount::Metres(_) => words::amount(&part.done.amount, numerals),
    };
    if load.is_empty() { amount } else { format!("{load} × {amount}") }
}

/// What was done: "110 kg × 5 reps", or "12 reps" where there was no load.
pub(super) fn done(part: &PartRun, unit: MassUnit, numerals: Numerals) -> String {
    let load = bar::in_line(&part.done.load, unit, numerals);
    let amount = words::amount(&part.done.amount, numerals);
    if load.is_empty() { amount } else { format!("{load} × {amount}") }
}

/// A key.
pub fn put_right() -> &'static str {
    "Correct"
}

/// A title.
pub fn notes() -> &'static str {
    "Notes and set-up"
}

/// A field: its label, and an example.
pub fn session_note() -> (&'static str, &'static str) {
    ("Note on the session", "slept badly")
}

/// A field: its label, and an example.
pub fn exercise_note(name: &str) -> (String, &'static str) {
    (format!("Note on {name}"), "left knee stiff")
}

/// A field: its label, and an example.
pub fn set_up(name: &str) -> (String, &'static str) {
    (format!("Set-up of {name}"), "pins at 7; seat 4")
}

/// A title.
pub fn worn(name: &str) -> String {
    format!("Worn for {name}")
}

/// A key that puts it on or takes it off.
pub fn wear(kit: Kit, worn: bool) -> (String, String) {
    let label = words::sentence_case(words::kit(kit));
    let says = if worn { format!("{label} off") } else { format!("{label} on") };
    (label, says)
}

/// A key.
pub fn guard(guard: Guard) -> &'static str {
    match guard {
        Guard::Pins => "Pins",
        Guard::Spotter => "A spotter",
        Guard::Neither => "Neither: keep two in reserve",
    }
}

/// A title.
pub fn helped(own: &Amount, numerals: Numerals) -> String {
    format!("{} alone, and with a spotter's help:", words::amount(own, numerals))
}

/// A key: so many with help.
pub fn with_help(help: &Amount, numerals: Numerals) -> (String, String) {
    let amount = words::amount(help, numerals);
    let says = format!("{amount} with help");
    (amount, says)
}

/// A key: none with help.
pub fn no_help() -> &'static str {
    "None"
}

/// A key that opens the answers to pain.
pub fn it_hurt() -> (&'static str, &'static str) {
    ("It hurt: what now?", "It hurt: stop, swap, lighter or go on")
}

/// Over the answers to pain.
pub fn pain(name: &str) -> String {
    format!("{name} hurt")
}

/// An answer to pain: the rest of the exercise is skipped.
pub fn stop() -> (&'static str, &'static str) {
    ("Stop this exercise", "Skip the rest of this exercise")
}

/// A key: the sets left with a lighter load.
pub fn lighter(load: &str) -> String {
    format!("Lighter: {load}")
}

/// A key: two sets failed, and the rest of the exercise is skipped.
pub fn leave_rest() -> &'static str {
    "Skip the rest"
}

/// An answer to pain.
pub fn go_on() -> (&'static str, &'static str) {
    ("Go on", "Go on as called")
}

/// A key: what hurts is the joint.
pub fn of_joint() -> (&'static str, &'static str) {
    ("Joint pain", "It is the joint: go easy on the other lifts that load it")
}

/// "Set 2 of 4", "Ramp set 1 of 3", "Top set", "Try 2".
pub(super) fn which_set(entry: &EntryRun, set: &SetRun) -> String {
    let names = SetNames {
        ramp: "Ramp set",
        attempt: "Try",
        top: "Top set",
        back_off: "Back-off set",
        speed: "Speed set",
        work: "Set",
        of: "of",
    };
    sets::which(entry, set, &names)
}
