//! Old records from a table of any make.

use barwright_domain::columns::{BadRow, Field, NoColumn, Note, bounds};

use super::words::{count, sessions};

/// Why a table is not read at all.
pub fn too_large() -> String {
    format!(
        "Die Tabelle ist größer als {} MiB oder hat mehr als {} Zeilen. Nichts wurde geändert: teile sie \
         auf mehrere Dateien auf.",
        bounds::BYTES >> 20,
        bounds::ROWS
    )
}

/// A table that is no text, or none in UTF-8.
pub fn not_text() -> &'static str {
    "Das ist keine Tabelle aus reinem Text. Nichts wurde geändert: speichere sie als CSV, in UTF-8."
}

/// A table with nothing in it.
pub fn no_table() -> &'static str {
    "In dieser Tabelle steht keine Zeile. Nichts wurde geändert."
}

/// A column that the table lacks.
pub fn no_column(lacks: &NoColumn) -> String {
    let NoColumn { field, named, there } = lacks;
    format!(
        "Die Tabelle hat keine Spalte „{named}“ ({}). Sie hat: {}. Nichts wurde geändert.",
        field_name(*field),
        there.join(", ")
    )
}

/// A file of columns has so many faults.
pub fn faults(number: usize) -> String {
    let faults = count(number, "Fehler", "Fehler");
    format!("Die Datei mit den Spalten hat {faults}. Nichts wurde geändert.")
}

/// What a table has.
pub fn read(found: usize, sets: usize, left_out: usize) -> String {
    let sets = count(sets, "Satz", "Sätze");
    let rows = match left_out {
        0 => "keine Zeile wird ausgelassen".to_owned(),
        1 => "1 Zeile wird ausgelassen".to_owned(),
        _ => format!("{left_out} Zeilen werden ausgelassen"),
    };
    format!("In der Tabelle: {}, {sets}; {rows}.", sessions(found))
}

/// A row that is left out.
pub fn left_out(line: u64, why: &BadRow) -> String {
    format!("  Zeile {line}: {}", bad_row(why))
}

/// More of them than are told.
pub fn more_left_out(rows: usize) -> String {
    format!("  und {rows} weitere")
}

/// Sessions that came from the table before and stand otherwise in it now.
pub fn changed(number: usize) -> String {
    match number {
        1 => "Eine Einheit steht in der Tabelle jetzt anders als damals; sie bleibt, wie sie kam. Wenn du \
              sie so willst, wie sie jetzt dort steht: nimm den letzten Import zurück, und lies die \
              Tabelle noch einmal ein."
            .to_owned(),
        _ => format!(
            "{number} Einheiten stehen in der Tabelle jetzt anders als damals; sie bleiben, wie sie \
             kamen. Wenn du sie so willst, wie sie jetzt dort stehen: nimm den letzten Import zurück, und \
             lies die Tabelle noch einmal ein."
        ),
    }
}

/// On so many days of new sessions the history has another session already.
pub fn shared_days(days: usize) -> String {
    format!(
        "An {} der neuen Einheiten steht schon eine andere Einheit im Verlauf: sieh nach, ob es dieselbe \
         ist.",
        count(days, "Tag", "Tagen")
    )
}

fn bad_row(why: &BadRow) -> String {
    match why {
        BadRow::NotText => "das ist kein Text in UTF-8; speichere die Tabelle als UTF-8".to_owned(),
        BadRow::Empty(field) => format!("hier fehlt etwas: {}", field_name(*field)),
        BadRow::Unread(field, cell) => {
            format!("„{cell}“ lässt sich nicht lesen: {}", field_name(*field))
        }
        BadRow::TooLong(field) => format!("der Text ist zu lang: {}", field_name(*field)),
        BadRow::UnknownWord(Field::Unit, word) => {
            format!("„{word}“ ist keine Einheit; gelesen werden kg und lb")
        }
        BadRow::UnknownWord(field, word) => format!(
            "„{word}“ ist nicht bekannt ({}); ordne es in der Datei mit den Spalten unter [words] ein",
            field_name(*field)
        ),
        BadRow::TooEarly(cell) => format!("„{cell}“ liegt vor 1970"),
        BadRow::Future(cell) => format!("„{cell}“ liegt nach heute"),
        BadRow::NoExercise(name, None) => format!("keine Übung heißt „{name}“"),
        BadRow::NoExercise(name, Some(near)) => {
            format!("keine Übung heißt „{name}“; ähnlich: {near}")
        }
        BadRow::NoAmount => "keine Wiederholungen, keine Sekunden, keine Strecke".to_owned(),
        BadRow::NoNumber => {
            "ein Gewicht, aber bei dieser Übung hat es keine Zahl; sag, was es zählt: counted = \"total\""
                .to_owned()
        }
        BadRow::BelowNothing(cell) => format!("„{cell}“ ist weniger als nichts"),
        BadRow::TooManySets(most) => format!("ihre Einheit hat mehr als {most} Sätze"),
        BadRow::TooManySessions(most) => format!("ihr Tag hat mehr als {most} Einheiten"),
    }
}

fn field_name(field: Field) -> &'static str {
    match field {
        Field::Date => "das Datum",
        Field::Time => "die Uhrzeit",
        Field::Title => "der Titel",
        Field::Exercise => "die Übung",
        Field::Kind => "die Art des Satzes",
        Field::Set => "die Nummer des Satzes",
        Field::Side => "die Seite",
        Field::Sets => "wie viele Sätze",
        Field::Reps => "die Wiederholungen",
        Field::Seconds => "die Sekunden",
        Field::Distance => "die Strecke",
        Field::Load => "das Gewicht",
        Field::Unit => "kg oder lb",
        Field::Rpe => "die RPE",
        Field::Left => "Wiederholungen in Reserve",
    }
}

/// What stands beside a line of a guess.
pub fn note(note: &Note) -> String {
    let rows = |rows: usize| count(rows, "Zeile", "Zeilen");
    match note {
        Note::Head(number) => format!(
            "Was in welcher Spalte steht, geraten aus {}. Sieh jede Zeile an, und stell richtig, was\n\
             nicht stimmt. Wo \"?\" steht, entscheidest du: davor wird nichts übernommen.",
            rows(*number)
        ),
        Note::ByHeader(name, shown) => format!("In der ersten Zeile heißt sie „{name}“: {shown}"),
        Note::ByCells(number, shown) => {
            format!("Kein Name sagt es, aber was in Spalte {number} steht: {shown}")
        }
        Note::Missing(field) => {
            format!("Nicht gefunden: {}. Nenne die Spalte oder ihre Nummer:", field_name(*field))
        }
        Note::NoAmount => {
            "Weder Wiederholungen noch Sekunden noch eine Strecke gefunden. Nenne eine davon:".to_owned()
        }
        Note::DatesShown(cell) => format!("Wie „{cell}“ zeigt. Sonst \"iso\", \"day first\" (Tag zuerst), \"month first\" (Monat zuerst)\noder ein Muster wie \"%d.%m.%y\"."),
        Note::DatesEither(cell) => format!(
            "„{cell}“ kann beides heißen. Schreib \"day first\" (Tag zuerst) oder \"month first\" (Monat \
             zuerst):"
        ),
        Note::DecimalsShown(cell) => format!("Wie „{cell}“ zeigt: \"point\" (Punkt) oder \"comma\" (Komma)."),
        Note::DecimalsEither(cell) => format!(
            "„{cell}“ kann Tausender oder Nachkommastellen haben. Schreib \"point\" oder \"comma\", was vor \
             Nachkommastellen steht:"
        ),
        Note::UnitShown(shown) => format!("Wie „{shown}“ zeigt: \"kg\" oder \"lb\"."),
        Note::UnitEither => {
            "Nichts sagt, in welcher Maßeinheit die Gewichte sind. Schreib \"kg\" oder \"lb\":".to_owned()
        }
        Note::NotRead(number, name, shown) => {
            format!("Nicht gelesen: Spalte {number}, „{name}“: {shown}")
        }
        Note::UnknownWords(Field::Side, words) => format!(
            "Nicht als Seite bekannt: {}. Nimm das # weg, und lass jedes dort stehen, wohin es gehört:",
            words.join(", ")
        ),
        Note::UnknownWords(_, words) => format!(
            "Nicht als Art eines Satzes bekannt: {}. Nimm das # weg, und lass jedes dort stehen, wohin es \
             gehört:",
            words.join(", ")
        ),
        Note::KnownExercises => {
            "Übungen, die bekannt sind, mit ihren Zeilen. Ist eine anders gemeint, nenne sie als\n\
             [[exercise]] mit name und is."
                .to_owned()
        }
        Note::Known(name, exercise, number) => format!("  {name} = {exercise}, {}", rows(*number)),
        Note::UnknownExercises => {
            "Übungen, die nicht bekannt sind: ihre Zeilen werden ausgelassen. Um sie zu übernehmen, nimm das\n\
             # vor einer der vorgeschlagenen Zeilen weg, oder schreib eine andere Übung. Zählt ein Gewicht\n\
             anders als üblich, schreib counted dazu: \"total\" (alles zusammen), \"each hand\" (je Hand),\n\
             \"one\" (eines), \"stack\" (Gewichtsblock), \"each side\" (je Seite), \"added\" (Zusatzgewicht)."
                .to_owned()
        }
        Note::Unknown(number) => rows(*number),
        Note::More(number) => format!("Und {number} weitere."),
    }
}
