//! Words of the floor's panels: what is seldom needed.

use barwright_domain::call::Amount;
use barwright_domain::quantity::{MassUnit, Numerals};
use barwright_domain::session::{Ending, EntryRun, Guard, Kit, PartRun, SetRun};

use super::{bar, words};
use crate::phrase::written::plates::label;
use crate::phrase::written::sets::{self, SetNames};

/// A key that closes a panel.
pub fn back() -> &'static str {
    "Zurück"
}

/// A title.
pub fn more() -> &'static str {
    "Mehr"
}

/// A key of More.
pub fn open_guard() -> &'static str {
    "Ablagen oder Helfer…"
}

/// A key of More.
pub fn open_load() -> &'static str {
    "Gewicht wählen…"
}

/// A key of More.
pub fn skip_set() -> &'static str {
    "Diesen Satz überspringen"
}

/// A key of More.
pub fn add_set() -> &'static str {
    "Noch ein Satz"
}

/// A key of More.
pub fn open_swap() -> &'static str {
    "Übung tauschen…"
}

/// A key of More.
pub fn postpone() -> &'static str {
    "Diese Übung zuletzt machen"
}

/// A key of More.
pub fn skip_exercise() -> &'static str {
    "Rest der Übung überspringen"
}

/// A key of More.
pub fn open_helped() -> &'static str {
    "Ein Helfer half mit…"
}

/// A key of More.
pub fn open_kit() -> &'static str {
    "Gürtel, Bandagen, Zughilfen…"
}

/// A key of More.
pub fn open_order() -> &'static str {
    "Reihenfolge der Übungen…"
}

/// A key of More.
pub fn open_earlier() -> &'static str {
    "Früheren Satz berichtigen…"
}

/// A key of More.
pub fn open_notes() -> &'static str {
    "Notizen und Einstellung…"
}

/// A key of More.
pub fn pause() -> &'static str {
    "Unterbrechen"
}

/// A key of More.
pub fn finish_here() -> &'static str {
    "Einheit jetzt beenden"
}

/// A title.
pub fn ended(after: &Amount, numerals: Numerals) -> String {
    format!("Satz abgebrochen nach {}", words::amount(after, numerals))
}

/// A way that a set ended, with how much was done then.
pub fn way(ending: Ending, done: &Amount, numerals: Numerals) -> (&'static str, String) {
    let label = match ending {
        Ending::AsCalled => "Wie vorgegeben",
        Ending::Failed => "Wdh. nicht geschafft",
        Ending::Form => "Technik ließ nach",
        Ending::Pain => "Schmerz",
        Ending::Interrupted => "Unterbrochen",
        Ending::Equipment => "Gerät",
    };
    (label, format!("{} eintragen: {}", words::amount(done, numerals), label))
}

/// A title.
pub fn bar_holds() -> &'static str {
    "Auf der Stange"
}

/// What is on each side; none where nothing is.
pub fn each_side(held: Option<&str>) -> String {
    format!("Je Seite: {}", held.unwrap_or("nichts"))
}

/// A key.
pub fn take_off(plate: &str, numerals: Numerals) -> String {
    words::sentence_case(format!("{} abnehmen", label(plate, numerals)).trim_start())
}

/// A key.
pub fn put_on(plate: &str, numerals: Numerals) -> String {
    format!("{} auflegen", label(plate, numerals))
}

/// A key.
pub fn empty() -> &'static str {
    "Leer"
}

/// A key.
pub fn as_called() -> &'static str {
    "Wie vorgegeben"
}

/// A title.
pub fn load(name: &str) -> String {
    format!("{name}: Gewicht für die übrigen Sätze")
}

/// A field for a load in all, with the body: its label and what is typed.
pub fn all_field(unit: MassUnit, numerals: Numerals) -> (&'static str, String) {
    let (_, hint) = load_field(unit, numerals);
    ("Gesamt, mit Körpergewicht", hint)
}

/// A field: its label, and an example.
pub fn load_field(unit: MassUnit, numerals: Numerals) -> (&'static str, String) {
    ("Gewicht", barwright_domain::quantity::Mass::whole(100, unit).print(unit, numerals))
}

/// A key.
pub fn pin(pin: &str, numerals: Numerals) -> String {
    format!("Stift {}", label(pin, numerals))
}

/// A title.
pub fn swap(name: &str) -> String {
    format!("Statt {name}")
}

/// A key: why it is swapped, where some of it was done.
pub fn it_hurts() -> (&'static str, &'static str) {
    ("Weil es schmerzt", "Tauschen, weil es schmerzt: Das steht bei der Übung, bis es vorbei ist")
}

/// A substitute that can't be done here.
pub fn not_here(name: &str) -> String {
    format!("{name}: nicht in diesem Kraftraum")
}

/// A title.
pub fn order() -> &'static str {
    "Reihenfolge der Übungen"
}

/// An exercise with sets left.
pub fn sets_left(name: &str, sets: usize) -> String {
    format!("{name}: {}", words::count(sets, "Satz", "Sätze"))
}

/// A key.
pub fn do_now() -> &'static str {
    "Jetzt machen"
}

/// A title.
pub fn earlier() -> &'static str {
    "Früheren Satz berichtigen"
}

/// A part that was done: "Kniebeuge, Satz 2 von 4: 110 kg × 5 Wdh.".
pub fn part(
    name: &str,
    entry: &EntryRun,
    set: &SetRun,
    part: &PartRun,
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    let which = which_set(entry, set);
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

/// What was done: "110 kg × 5 Wdh.", or "12 Wdh." where there was no load.
pub(super) fn done(part: &PartRun, unit: MassUnit, numerals: Numerals) -> String {
    let load = bar::in_line(&part.done.load, unit, numerals);
    let amount = words::amount(&part.done.amount, numerals);
    if load.is_empty() { amount } else { format!("{load} × {amount}") }
}

/// A key.
pub fn put_right() -> &'static str {
    "Berichtigen"
}

/// A title.
pub fn notes() -> &'static str {
    "Notizen und Einstellung"
}

/// A field: its label, and an example.
pub fn session_note() -> (&'static str, &'static str) {
    ("Notiz zur Einheit", "schlecht geschlafen")
}

/// A field: its label, and an example.
pub fn exercise_note(name: &str) -> (String, &'static str) {
    (format!("Notiz zu {name}"), "linkes Knie steif")
}

/// A field: its label, and an example.
pub fn set_up(name: &str) -> (String, &'static str) {
    (format!("Einstellung für {name}"), "Ablagen auf 7; Sitz 4")
}

/// A title.
pub fn worn(name: &str) -> String {
    format!("Getragen bei {name}")
}

/// A key that puts it on or takes it off.
pub fn wear(kit: Kit, worn: bool) -> (String, String) {
    let label = words::sentence_case(words::kit(kit));
    let says = if worn { format!("{label} ablegen") } else { format!("{label} anlegen") };
    (label, says)
}

/// A key.
pub fn guard(guard: Guard) -> &'static str {
    match guard {
        Guard::Pins => "Ablagen",
        Guard::Spotter => "Ein Helfer",
        Guard::Neither => "Keins von beiden: zwei in Reserve lassen",
    }
}

/// A title.
pub fn helped(own: &Amount, numerals: Numerals) -> String {
    format!("{} allein, und mit Hilfe:", words::amount(own, numerals))
}

/// A key: so many with help.
pub fn with_help(help: &Amount, numerals: Numerals) -> (String, String) {
    let amount = words::amount(help, numerals);
    let says = format!("{amount} mit Hilfe");
    (amount, says)
}

/// A key: none with help.
pub fn no_help() -> &'static str {
    "Keine"
}

/// A key that opens the answers to pain.
pub fn it_hurt() -> (&'static str, &'static str) {
    ("Es schmerzte: was nun?", "Es schmerzte: aufhören, tauschen, leichter oder weiter")
}

/// Over the answers to pain.
pub fn pain(name: &str) -> String {
    format!("Schmerz bei {name}")
}

/// An answer to pain: the rest of the exercise is skipped.
pub fn stop() -> (&'static str, &'static str) {
    ("Übung abbrechen", "Den Rest der Übung überspringen")
}

/// A key: the sets left with a lighter load.
pub fn lighter(load: &str) -> String {
    format!("Leichter: {load}")
}

/// A key: two sets failed, and the rest of the exercise is skipped.
pub fn leave_rest() -> &'static str {
    "Rest überspringen"
}

/// An answer to pain.
pub fn go_on() -> (&'static str, &'static str) {
    ("Weiter", "Weiter wie vorgegeben")
}

/// A key: what hurts is the joint.
pub fn of_joint() -> (&'static str, &'static str) {
    ("Gelenkschmerz", "Es ist das Gelenk: die anderen Übungen, die es belasten, leichter angehen")
}

/// "Satz 2 von 4", "Aufwärmsatz 1 von 3", "Topsatz 1", "Versuch 2".
pub(super) fn which_set(entry: &EntryRun, set: &SetRun) -> String {
    let names = SetNames {
        ramp: "Aufwärmsatz",
        attempt: "Versuch",
        top: "Topsatz",
        back_off: "Back-off-Satz",
        speed: "Schnellkraftsatz",
        work: "Satz",
        of: "von",
    };
    sets::which(entry, set, &names)
}
