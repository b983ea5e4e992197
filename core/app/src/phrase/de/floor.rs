//! Words of the floor.

use barwright_domain::call::{EffortScale, HowMany, Side, Structure};
use barwright_domain::prescribe;
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Reserve};
use barwright_domain::session::{Cursor, EntryRun, LastTime, PartRun, RestKind, Run, SetRun};

use super::{named, panel, words};
pub use crate::phrase::written::figures::effort_label;

/// What a rest is, as its label.
pub fn rest_label(kind: RestKind) -> &'static str {
    match kind {
        RestKind::Pause => "Pause im Satz",
        RestKind::Sides => "Pause zwischen den Seiten",
        RestKind::Within => "Pause in der Runde",
        RestKind::Round => "Pause nach der Runde",
        RestKind::Set => "Pause",
        RestKind::Clock => "Nächster Start",
    }
}

/// What a notification says when a rest is over.
pub fn rest_over(kind: RestKind) -> String {
    match kind {
        RestKind::Pause => "Pause vorbei.".to_owned(),
        RestKind::Clock => "Jetzt los.".to_owned(),
        RestKind::Sides | RestKind::Within | RestKind::Round | RestKind::Set => {
            "Pause vorbei.".to_owned()
        }
    }
}

/// What comes next, in a few words: "Kniebeuge, Satz 2 von 4".
pub fn next_in_short(run: &Run, name: impl Fn(&EntryRun) -> String) -> String {
    let Some((entry, set)) = run
        .cursor()
        .and_then(|cursor| Some((run.entries.get(&cursor.set.entry)?, run.set(cursor.set)?)))
    else {
        return String::new();
    };
    format!("{}, {}", name(entry), panel::which_set(entry, set))
}

/// Which part of a set made of parts; nothing for a straight one.
fn which_part(set: &SetRun, part: u16) -> String {
    let at = usize::from(part);
    match &set.call.structure {
        Structure::Straight => String::new(),
        Structure::Cluster { blocks, .. } => format!(", Block {} von {}", at + 1, blocks.len()),
        Structure::RestPause { .. } if at == 0 => ", erster Satz".to_owned(),
        Structure::RestPause { total, .. } => {
            let so_far = set.reps();
            match total {
                Some(total) => format!(", Minisatz {at} ({so_far} von {total} geschafft)"),
                None => format!(", Minisatz {at}"),
            }
        }
        Structure::Drop { .. } if at == 0 => String::new(),
        Structure::Drop { off } => format!(", Drop {at} von {}", off.len()),
        Structure::Ranges { parts } => {
            parts.get(at).map(|part| format!(", {}", part.name)).unwrap_or_default()
        }
        Structure::Continued { .. } if at == 0 => String::new(),
        Structure::Continued { parts } => parts
            .get(at - 1)
            .map(|part| format!(", dann {}", named::exercise(&part.exercise)))
            .unwrap_or_default(),
    }
}

/// The call in one sentence: "Satz 2 von 4: 5 Wdh., 1–2 in Reserve."
pub fn sentence(run: &Run, cursor: &Cursor, numerals: Numerals) -> String {
    let Some((entry, set)) =
        run.entries.get(&cursor.set.entry).and_then(|entry| Some((entry, run.set(cursor.set)?)))
    else {
        return String::new();
    };
    let side = set.call.side.map(|side| format!(", {}", words::side(side))).unwrap_or_default();
    let asked =
        run.how_many_at(cursor).map(|asked| words::how_many(&asked, numerals)).unwrap_or_default();
    // An open set says itself where it ends.
    let open = matches!(run.how_many_at(cursor), Some(HowMany::Open { .. }));
    let effort = run
        .effort_at(cursor.set)
        .filter(|_| !open)
        .map(|target| format!(", {}", words::effort(&target, numerals)))
        .unwrap_or_default();
    let (set_of, part) = (panel::which_set(entry, set), which_part(set, cursor.part));
    words::end(format!("{set_of}{part}{side}: {asked}{effort}"))
}

/// What the wide key says: "Abgelegt" where a bar goes back to its rack, "Fertig" where nothing is
/// racked.
pub fn main_key(
    set: &SetRun,
    part: u16,
    asked: &HowMany,
    next: Option<&str>,
    racks: bool,
) -> String {
    let done = if racks { "Abgelegt" } else { "Fertig" };
    let side = set.call.side.map(|side| match side {
        Side::Left => "Linke Seite fertig",
        Side::Right => "Rechte Seite fertig",
    });
    match (next, side, asked) {
        (Some(next), _, _) if matches!(set.call.structure, Structure::Drop { .. }) => {
            format!("Auf {next} reduziert")
        }
        (Some(next), _, _) => format!("{done}: dann {next}"),
        (None, Some(side), _) => side.to_owned(),
        (None, None, HowMany::Seconds(_) | HowMany::Metres(_)) => "Fertig".to_owned(),
        (None, None, _) if part > 0 => format!("{done}: letzter Teil"),
        (None, None, _) => done.to_owned(),
    }
}

/// A key: a part of a drop is over, and nothing here is lighter.
pub fn nothing_lighter() -> &'static str {
    "Nichts Leichteres da: gleiches Gewicht"
}

/// Over the effort keys: how the set ends, and in which scale its effort is called.
pub fn prompt(racks: bool, scale: EffortScale) -> &'static str {
    match (racks, scale) {
        (true, EffortScale::Left) => "Abgelegt, Wdh. in Reserve:",
        (true, EffortScale::Rpe) => "Abgelegt, RPE:",
        (false, EffortScale::Left) => "Fertig, Wdh. in Reserve:",
        (false, EffortScale::Rpe) => "Fertig, RPE:",
    }
}

/// An effort key read aloud: "5 Wdh. eintragen, 2 in Reserve".
pub fn effort_says(left: Reserve, scale: EffortScale, amount: &str, numerals: Numerals) -> String {
    format!("{amount} eintragen, {}", words::reserve(left, scale, numerals))
}

/// The call's sentence when nothing is left.
pub fn nothing_left() -> &'static str {
    "Alle Sätze sind gemacht oder übersprungen."
}
/// A notice.
pub fn paused() -> &'static str {
    "Die Einheit ist unterbrochen."
}
/// A notice.
pub fn restarted() -> &'static str {
    "Das Gerät wurde neu gestartet: Die Pause läuft nach der Uhrzeit weiter."
}
/// A notice.
pub fn clock_went_back() -> &'static str {
    "Die Uhr des Geräts ging zurück: Die Pause läuft mit dem weiter, was von ihr übrig war."
}

/// Tempo, technique and what is worn, a line each.
pub fn manner(entry: &EntryRun, set: &SetRun) -> Vec<String> {
    let manner = &set.call.manner;
    let worn: Vec<&str> = entry.kit.iter().map(|kit| words::kit(*kit)).collect();
    [
        manner.tempo.map(|tempo| format!("Tempo {tempo}")),
        manner.technique.clone(),
        (!worn.is_empty()).then(|| format!("mit {}", worn.join(", "))),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// "letztes Mal 107,5 kg: 5, 5, 4; 1 in Reserve".
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
            format!(" {} Unterstützung", figure.distance(Mass::ZERO).print(unit, numerals))
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
    format!("letztes Mal{load}: {}{left}", amounts.join(", "))
}

/// "noch 9 Sätze, etwa 34 min".
pub fn to_go(run: &Run) -> String {
    let sets: usize = run
        .in_order()
        .filter(|(_, _, entry)| entry.pending())
        .flat_map(|(_, _, entry)| &entry.sets)
        .filter(|set| set.pending())
        .count();
    if sets == 0 {
        return "keine Sätze mehr".to_owned();
    }
    let seconds = prescribe::seconds_to_go(run);
    format!("noch {}, {}", words::count(sets, "Satz", "Sätze"), words::minutes(seconds))
}

/// What this gym lacks for an exercise.
pub fn lacks_here(lacks: &[String]) -> String {
    format!("hier fehlt: {}", named::things(lacks))
}

/// What this gym lacks for the exercise that is on, and where what is done instead is found.
pub fn lacking(lacks: &[String], instead: Option<&str>) -> String {
    let lacks = words::sentence_case(&lacks_here(lacks));
    match instead {
        Some(instead) => {
            format!("{lacks}. Stattdessen geht {instead}: Mehr, Übung tauschen.")
        }
        None => format!("{lacks}."),
    }
}

/// A key: the session goes on after a pause.
pub fn resume() -> &'static str {
    "Fortsetzen"
}

/// A key: the first set by the clock.
pub fn start_clock() -> (&'static str, &'static str) {
    ("Uhr starten", "Den ersten Satz starten; jeder weitere beginnt nach der Uhr")
}

/// A key: a hold is measured.
pub fn start_hold() -> (&'static str, &'static str) {
    ("Halten starten", "Die Haltezeit ab jetzt messen")
}

/// A key: a part was short, and the set is over.
pub fn short(amount: &str) -> (&'static str, String) {
    ("Weniger: Satz beenden", format!("{amount} als Letztes im Satz eintragen"))
}

/// A key: the set is recorded without a call.
pub fn uncalled(amount: &str) -> (&'static str, String) {
    ("Ohne Angabe", format!("{amount} eintragen, ohne Angabe zur Anstrengung"))
}

/// The wide key read aloud.
pub fn record(amount: &str) -> String {
    format!("{amount} eintragen")
}

/// A step of the figure read aloud.
pub fn down_to(amount: &str) -> String {
    format!("Auf {amount} herunter")
}

/// A step of the figure read aloud.
pub fn up_to(amount: &str) -> String {
    format!("Auf {amount} herauf")
}

/// A key.
pub fn ended() -> &'static str {
    "Satz abgebrochen…"
}

/// A key.
pub fn more() -> &'static str {
    "Mehr…"
}

/// A key.
pub fn finish() -> &'static str {
    "Einheit beenden"
}

/// A key.
pub fn undo() -> (&'static str, &'static str) {
    ("Rückgängig", "Die letzte Eingabe rückgängig machen")
}

/// A key.
pub fn redo() -> (&'static str, &'static str) {
    ("Wiederherstellen", "Wiederherstellen, was rückgängig gemacht wurde")
}

/// The call's sentence while an earlier part is corrected: "Satz 2 von 4 berichtigen: …"
pub fn correcting(
    entry: &EntryRun,
    set: &SetRun,
    part: &PartRun,
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    let at = set.parts.iter().position(|other| std::ptr::eq(other, part)).unwrap_or(0);
    let at = u16::try_from(at).unwrap_or(0);
    let which = panel::which_set(entry, set);
    let side = set.call.side.map(|side| format!(", {}", words::side(side))).unwrap_or_default();
    let part_of = which_part(set, at);
    let was = panel::done(part, unit, numerals);
    words::end(format!("{which}{part_of}{side} berichtigen: Eingetragen ist {was}"))
}

/// Over the effort keys of a part that is corrected.
pub fn really_left(scale: EffortScale) -> &'static str {
    match scale {
        EffortScale::Left => "Berichtigt, Wdh. in Reserve:",
        EffortScale::Rpe => "Berichtigt, RPE:",
    }
}

/// A key: an earlier part is corrected.
pub fn put_right(amount: &str) -> (&'static str, String) {
    ("Berichtigen", format!("Auf {amount} berichtigen"))
}

/// A key.
pub fn leave() -> &'static str {
    "So lassen"
}

/// A key: a shorter rest.
pub fn shorter(seconds: i32) -> (String, String) {
    (format!("−{seconds} s"), format!("{seconds} Sekunden kürzer"))
}

/// A key: a longer rest.
pub fn longer(seconds: i32) -> (String, String) {
    (format!("+{seconds} s"), format!("{seconds} Sekunden länger"))
}

/// A rest read aloud: its label, and its figures; none where it is over.
pub fn rest_aloud(label: &str, figures: Option<&str>) -> String {
    match figures {
        None => format!("{label} vorbei."),
        Some(figures) => format!("{label}, noch {figures}."),
    }
}

/// The exercise and its load read aloud.
pub fn exercise_aloud(name: &str, load: &str) -> String {
    let load = if load.is_empty() { String::new() } else { format!(", {load}") };
    words::end(format!("{name}{load}"))
}

/// A tap on the figure: what is far from the call is typed.
pub fn pad() -> (&'static str, &'static str) {
    ("Eintippen", "Eintippen, was geschafft wurde")
}

/// The title of the pad before a digit.
pub fn type_it() -> &'static str {
    "Wie viele?"
}

/// A key of the pad.
pub fn rub_out() -> (&'static str, &'static str) {
    ("\u{232b}", "Die letzte Ziffer löschen")
}

/// A key of the pad.
pub fn set_to(amount: &str) -> (&'static str, String) {
    ("Stimmt so", format!("{amount} übernehmen"))
}
