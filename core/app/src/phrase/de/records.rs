//! Records that go out as a file, and come in.

use barwright_domain::shown::plain;
use barwright_log::form::{BadLine, NoHead, Wrong};

use super::date;

/// Why a file of records is not taken, or could not be written.
pub fn wrong(wrong: &Wrong) -> String {
    match wrong {
        Wrong::Io(error) => format!(
            "Die Datei lässt sich nicht lesen oder schreiben: {}.",
            plain(&error.to_string())
        ),
        Wrong::NoHead(why) => format!(
            "Das ist keine Datei mit Aufzeichnungen: {}. Nichts wurde geändert.",
            plain(&no_head(why))
        ),
        Wrong::Newer { .. } => {
            "Diese Datei wurde von einer neueren Version geschrieben. Nichts wurde \
                                geändert: lies sie mit jener Version."
                .to_owned()
        }
        Wrong::Line { line, what } => format!(
            "Zeile {line} der Datei kann nicht übernommen werden: {}. Nichts wurde geändert.",
            plain(&bad_line(what))
        ),
        Wrong::Cut { said, found } => format!(
            "Die Datei sagt, sie habe {said} Zeilen mit Aufzeichnungen, und hat {found}: sie wurde \
             abgeschnitten. Nichts wurde geändert."
        ),
    }
}

/// Why a first line is none of the form's; what a reader of JSON says is technical, in any language.
fn no_head(why: &NoHead) -> String {
    match why {
        NoHead::Empty => "sie ist leer".to_owned(),
        NoHead::NotJson => "ihre erste Zeile ist kein JSON von hier".to_owned(),
        NoHead::NotOurs => "ihre erste Zeile sagt es nicht".to_owned(),
        NoHead::OutOfBounds => {
            "ihre erste Zeile nennt keinen Speicher von hier, oder zu viele Ereignisse".to_owned()
        }
        NoHead::Unread(said) => said.clone(),
    }
}

/// Why a line is not taken.
fn bad_line(what: &BadLine) -> String {
    match what {
        BadLine::FileTooLarge => "die Datei ist zu groß".to_owned(),
        BadLine::TooLong => "sie ist zu lang".to_owned(),
        BadLine::KeyTooLong => "der Schlüssel ist zu lang".to_owned(),
        BadLine::Gap => "vor ihr fehlt ein Ereignis, oder ihre Prüfsumme".to_owned(),
        BadLine::Checksum => "ihre Prüfsumme passt nicht".to_owned(),
        BadLine::OutOfOrder => "ihre Nummer passt nicht in die Reihe".to_owned(),
        BadLine::NoKind => "keine bekannte Art von Ereignis".to_owned(),
        BadLine::NoFact => "keine Angabe, die hier bekannt ist".to_owned(),
        BadLine::Time => "ihre Zeit kann nicht sein".to_owned(),
        BadLine::NameTooLong => "ein zu langer Name".to_owned(),
        BadLine::TooDeep => "zu tief verschachtelt".to_owned(),
        BadLine::TextTooLong(bytes) => format!("ein Text von {bytes} Byte"),
        BadLine::Unread(said) => said.clone(),
    }
}

/// A file has only a part of somebody's records.
pub fn part_only() -> &'static str {
    "Diese Datei hat nur einen Teil der Aufzeichnungen von jemandem: man kann sie ansehen, aber nicht \
     übernehmen. Nichts wurde geändert."
}

/// A file has other records than those that are here.
pub fn of_others() -> &'static str {
    "Diese Datei hat andere Aufzeichnungen als die, die hier sind. Nichts wurde geändert: nenne einen \
     anderen Ort für sie, oder lass ihre Einheiten als Verlauf herein."
}

/// The records here and those of a file went on differently after an entry.
pub fn went_apart(after: u64) -> String {
    format!(
        "Bis Eintrag {after} hat diese Datei die Aufzeichnungen, die hier sind; danach ging beides für \
         sich weiter. Nichts wurde geändert: lass ihre Einheiten als Verlauf herein, oder \
         öffne sie an einem eigenen Ort."
    )
}

/// What history from elsewhere came to.
pub fn joined(new: u64, same: u64, open: u64, taken: bool) -> String {
    let sessions = |count: u64| match count {
        1 => "1 Einheit".to_owned(),
        _ => format!("{count} Einheiten"),
    };
    let mut said = match (new, taken) {
        (0, _) => format!("Nichts ist neu: {} schon hier.", sessions(same)),
        (_, false) => format!(
            "Neu im Verlauf: {}. Schon hier: {}. Nichts wurde geändert.",
            sessions(new),
            sessions(same)
        ),
        (_, true) => format!(
            "In den Verlauf gekommen: {}. Schon hier: {}. Gewichte und Plan bleiben, wie sie hier \
             sind.",
            sessions(new),
            sessions(same)
        ),
    };
    if open > 0 {
        said.push_str(&format!(" Dort nicht beendet, also dort gelassen: {}.", sessions(open)));
    }
    said
}

/// A key that opens what is handed on.
pub fn open() -> (&'static str, &'static str) {
    ("Weitergeben", "Die Aufzeichnungen als Datei weitergeben: dem Trainer, oder alle")
}

/// Its title.
pub fn title() -> &'static str {
    "Aufzeichnungen als Datei"
}

/// How much it is.
pub fn handed(sessions: u64, bytes: usize) -> String {
    let sessions =
        if sessions == 1 { "1 Einheit".to_owned() } else { format!("{sessions} Einheiten") };
    format!("{sessions}, {} Kilobyte", bytes.div_ceil(1000))
}

/// What a coach gets.
pub fn for_coach(since: i32) -> (String, &'static str) {
    (
        format!("Für den Trainer, seit {}", date::day(since)),
        "Einheiten, Plan, Maxima und Gewichte, wie sie stehen. Sonst nichts, wenn du es nicht sagst.",
    )
}

/// With body mass.
pub fn body_mass() -> (String, &'static str) {
    ("Körpergewicht".to_owned(), "Was du gewogen hast, und der Anteil des Körpers an Lasten.")
}

/// With notes.
pub fn notes() -> (String, &'static str) {
    ("Notizen".to_owned(), "Was du zu Sätzen und Übungen geschrieben hast.")
}

/// All of them.
pub fn all() -> (String, &'static str) {
    ("Alle Aufzeichnungen".to_owned(), "Ohne Verlust, und so, dass andere Programme es lesen.")
}

/// A key that chooses a line.
pub fn choose() -> (&'static str, &'static str) {
    ("Dies", "Dies weitergeben")
}

/// A key that puts something in, or takes it out again.
pub fn turn(is_in: bool) -> (&'static str, &'static str) {
    if is_in { ("Dabei", "Wieder herausnehmen") } else { ("Nicht dabei", "Hineinnehmen") }
}

/// It is too large.
pub fn too_large() -> &'static str {
    "Das ist zu groß, um von hier weitergegeben zu werden. Sichere stattdessen eine Kopie."
}

/// A file can be opened.
pub fn from_file() -> (&'static str, &'static str) {
    (
        "Aufzeichnungen eines anderen Telefons",
        "Öffne die Datei, die es weitergegeben hat, wie einen Plan. Du siehst, was neu ist, bevor etwas \
         davon übernommen wird.",
    )
}

/// Asks for one.
pub fn to_file() -> (&'static str, &'static str) {
    ("Aus einer Datei", "Aufzeichnungen aus einer Datei übernehmen")
}

/// It is open no longer.
pub fn closed() -> &'static str {
    "Die Datei ist nicht mehr geöffnet. Öffne sie noch einmal: Nichts wurde geändert."
}

/// Takes in what is new.
pub fn take_in() -> (&'static str, &'static str) {
    ("Übernehmen", "Übernehmen, was in der Datei neu ist")
}

/// Takes sessions in as history.
pub fn as_history() -> (&'static str, &'static str) {
    (
        "Als Verlauf",
        "Die Einheiten der Datei in den Verlauf übernehmen. Gewichte und Plan bleiben, wie sie hier \
         sind",
    )
}

/// Loads that stand otherwise there.
pub fn differing(count: u64) -> (String, String) {
    match count {
        1 => {
            ("1 Gewicht anders".to_owned(), "Das Gewicht ansehen, das dort anders steht".to_owned())
        }
        _ => (
            format!("{count} Gewichte anders"),
            format!("Die {count} Gewichte ansehen, die dort anders stehen"),
        ),
    }
}

/// Takes sessions out of the history.
pub fn withdraw(count: u64) -> (&'static str, String) {
    let says = match count {
        1 => "Die zuletzt gekommene Einheit wieder aus dem Verlauf nehmen".to_owned(),
        _ => format!("Die {count} zuletzt gekommenen Einheiten wieder aus dem Verlauf nehmen"),
    };
    ("Wieder herausnehmen", says)
}

/// They went.
pub fn withdrawn(count: u64) -> String {
    match count {
        1 => "Wieder aus dem Verlauf genommen: 1 Einheit.".to_owned(),
        _ => format!("Wieder aus dem Verlauf genommen: {count} Einheiten."),
    }
}

/// What the records are called that history came from.
pub fn other_records() -> &'static str {
    "Andere Aufzeichnungen"
}

/// What a file of records came to.
pub fn imported(same: u64, new: u64, sessions: u64, taken: bool) -> String {
    let entries =
        |count: u64| format!("{count} {}", if count == 1 { "Eintrag" } else { "Einträge" });
    let sessions = format!("{sessions} {}", if sessions == 1 { "Einheit" } else { "Einheiten" });
    match (new, taken) {
        (0, _) => format!("Nichts ist neu: {} schon hier.", entries(same)),
        (_, false) => format!(
            "Neu: {}, {sessions}. Schon hier, dasselbe: {}. Nichts wurde geändert.",
            entries(new),
            entries(same)
        ),
        (_, true) => format!(
            "Übernommen: {}, {sessions}. Schon hier, dasselbe: {}.",
            entries(new),
            entries(same)
        ),
    }
}
