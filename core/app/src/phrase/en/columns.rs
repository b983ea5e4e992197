//! Old records from a table of any make.

use barwright_domain::columns::{BadRow, Field, NoColumn, Note, bounds};

use super::words::{count, sessions};

/// Why a table is not read at all.
pub fn too_large() -> String {
    format!(
        "The table is larger than {} MiB, or has more than {} rows. Nothing was changed: cut it into \
         several files.",
        bounds::BYTES >> 20,
        bounds::ROWS
    )
}

/// A table that is no text, or none in UTF-8.
pub fn not_text() -> &'static str {
    "This is no table of plain text. Nothing was changed: save it as CSV, in UTF-8."
}

/// A table with nothing in it.
pub fn no_table() -> &'static str {
    "There is no row in this table. Nothing was changed."
}

/// A column that the table lacks.
pub fn no_column(lacks: &NoColumn) -> String {
    let NoColumn { field, named, there } = lacks;
    format!(
        "The table has no column “{named}” for {}. It has: {}. Nothing was changed.",
        field_name(*field),
        there.join(", ")
    )
}

/// A file of columns has so many faults.
pub fn faults(number: usize) -> String {
    let faults = count(number, "fault", "faults");
    format!("The file of columns has {faults}. Nothing was changed.")
}

/// What a table has.
pub fn read(found: usize, sets: usize, left_out: usize) -> String {
    let sets = count(sets, "set", "sets");
    let rows = match left_out {
        0 => "no row is left out".to_owned(),
        1 => "1 row is left out".to_owned(),
        _ => format!("{left_out} rows are left out"),
    };
    format!("In the table: {}, {sets}; {rows}.", sessions(found))
}

/// A row that is left out.
pub fn left_out(line: u64, why: &BadRow) -> String {
    format!("  line {line}: {}", bad_row(why))
}

/// More of them than are told.
pub fn more_left_out(rows: usize) -> String {
    format!("  and {rows} more")
}

/// Sessions that came from the table before and stand otherwise in it now.
pub fn changed(number: usize) -> String {
    match number {
        1 => "One session stands otherwise in the table now than when it came; it stays as it came. To \
              have it as it stands now, take the last import back and import the table again."
            .to_owned(),
        _ => format!(
            "{number} sessions stand otherwise in the table now than when they came; they stay as they \
             came. To have them as they stand now, take the last import back and import the table \
             again."
        ),
    }
}

/// On so many days of new sessions the history has another session already.
pub fn shared_days(days: usize) -> String {
    format!(
        "On {} of the new sessions the history has another session already: look whether it is the same.",
        count(days, "day", "days")
    )
}

fn bad_row(why: &BadRow) -> String {
    match why {
        BadRow::NotText => "it is not UTF-8 text; save the table as UTF-8".to_owned(),
        BadRow::Empty(field) => format!("nothing stands for {}", field_name(*field)),
        BadRow::Unread(field, cell) => {
            format!("“{cell}” can't be read as {}", field_name(*field))
        }
        BadRow::TooLong(field) => format!("too long a text for {}", field_name(*field)),
        BadRow::UnknownWord(Field::Unit, word) => {
            format!("“{word}” is no unit; kg and lb are read")
        }
        BadRow::UnknownWord(field, word) => format!(
            "“{word}” is not known as {}; put it under [words] in the file of columns",
            field_name(*field)
        ),
        BadRow::TooEarly(cell) => format!("“{cell}” is before 1970"),
        BadRow::Future(cell) => format!("“{cell}” is after today"),
        BadRow::NoExercise(name, None) => format!("no exercise is called “{name}”"),
        BadRow::NoExercise(name, Some(near)) => {
            format!("no exercise is called “{name}”; near it: {near}")
        }
        BadRow::NoAmount => "no repetitions, seconds or distance".to_owned(),
        BadRow::NoNumber => {
            "a load, but the exercise's has no number; say what it counts: counted = \"total\""
                .to_owned()
        }
        BadRow::BelowNothing(cell) => format!("“{cell}” is less than nothing"),
        BadRow::TooManySets(most) => format!("its session has more than {most} sets"),
        BadRow::TooManySessions(most) => format!("its day has more than {most} sessions"),
    }
}

fn field_name(field: Field) -> &'static str {
    match field {
        Field::Date => "the date",
        Field::Time => "the time of day",
        Field::Title => "the title",
        Field::Exercise => "the exercise",
        Field::Kind => "the kind of set",
        Field::Set => "the number of the set",
        Field::Side => "the side",
        Field::Sets => "how many sets",
        Field::Reps => "repetitions",
        Field::Seconds => "seconds",
        Field::Distance => "the distance",
        Field::Load => "the load",
        Field::Unit => "the unit of the load",
        Field::Rpe => "RPE",
        Field::Left => "repetitions in reserve",
    }
}

/// What stands beside a line of a guess.
pub fn note(note: &Note) -> String {
    let rows = |rows: usize| count(rows, "row", "rows");
    match note {
        Note::Head(number) => format!(
            "Which column is what, guessed from {}. Look at every line, and put it right where it is\n\
             not so. Where \"?\" stands, you decide: nothing is taken before.",
            rows(*number)
        ),
        Note::ByHeader(name, shown) => format!("The first line calls it “{name}”: {shown}"),
        Note::ByCells(number, shown) => {
            format!("No name says so, but what stands in column {number}: {shown}")
        }
        Note::Missing(field) => {
            format!("Not found: {}. Name its column, or give its number:", field_name(*field))
        }
        Note::NoAmount => {
            "Found neither repetitions nor seconds nor a distance. Name one of them:".to_owned()
        }
        Note::DatesShown(cell) => format!("As “{cell}” shows. Also \"iso\", \"day first\", \"month first\", or a pattern such as \"%d.%m.%y\"."),
        Note::DatesEither(cell) => format!(
            "“{cell}” could be read either way. Write \"day first\" or \"month first\":"
        ),
        Note::DecimalsShown(cell) => format!("As “{cell}” shows: \"point\" or \"comma\"."),
        Note::DecimalsEither(cell) => format!(
            "“{cell}” could have thousands or decimals. Write \"point\" or \"comma\", whichever is \
             before decimals:"
        ),
        Note::UnitShown(shown) => format!("As “{shown}” shows: \"kg\" or \"lb\"."),
        Note::UnitEither => "Nothing says in which unit loads are. Write \"kg\" or \"lb\":".to_owned(),
        Note::NotRead(number, name, shown) => {
            format!("Not read: column {number}, “{name}”: {shown}")
        }
        Note::UnknownWords(Field::Side, words) => format!(
            "Not known as a side: {}. Take out the # and leave each where it belongs:",
            words.join(", ")
        ),
        Note::UnknownWords(_, words) => format!(
            "Not known as a kind of set: {}. Take out the # and leave each where it belongs:",
            words.join(", ")
        ),
        Note::KnownExercises => {
            "Exercises that are known, with their rows. Where one is meant otherwise, name it as\n\
             [[exercise]] with name and is."
                .to_owned()
        }
        Note::Known(name, exercise, number) => format!("  {name} = {exercise}, {}", rows(*number)),
        Note::UnknownExercises => {
            "Exercises that are not known: their rows are left out. To take them, take out the # of one\n\
             of the lines that are proposed, or write another exercise. Where a load counts otherwise\n\
             than usual, add counted: \"total\", \"each hand\", \"one\", \"stack\", \"each side\",\n\
             \"added\"."
                .to_owned()
        }
        Note::Unknown(number) => rows(*number),
        Note::More(number) => format!("And {number} more."),
    }
}
