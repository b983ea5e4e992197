//! Old records from a table of any make: the file of columns, the guess, rows and sessions.

use barwright_domain::call::{Amount, Ending, SetKind, Side};
use barwright_domain::catalogue::{Catalogue, Counting};
use barwright_domain::columns::{
    BadRow, Columns, Field, Guess, Lifted, Note, Reader, Separator, Sessions, bounds,
};
use barwright_domain::history::{DoneSet, SessionRow};
use barwright_domain::quantity::{Mass, Numerals, Reserve};
use barwright_domain::volume::EASIEST_HARD;
use proptest::prelude::*;

/// 2026-11-28.
const TODAY: i32 = 20_785;

/// A usual file of columns.
const COLUMNS: &str = r#"
name = "Notebook"
separator = ";"
decimals = "comma"
dates = "day first"
unit = "kg"

[columns]
date = "Datum"
title = "Einheit"
exercise = "Übung"
kind = "Art"
side = "Seite"
sets = "Sätze"
reps = "Wdh."
seconds = "Sek."
load = "Gewicht"
rpe = "RPE"

[words]
warm_up = ["leicht"]

[[exercise]]
name = "KH Bank"
is = "Kurzhantelbankdrücken"
counted = "total"
"#;

const FIRST: &[&str] =
    &["Datum", "Einheit", "Übung", "Art", "Seite", "Sätze", "Wdh.", "Sek.", "Gewicht", "RPE"];

fn columns() -> Columns {
    Columns::read(COLUMNS, &Catalogue::builtin()).expect("it is in order")
}

fn kg(text: &str) -> Mass {
    Mass::read(&format!("{text} kg"), Numerals::Point).expect("a mass")
}

/// What rows of the usual columns come to.
fn read(rows: &[&[&str]]) -> Vec<Result<Option<Lifted>, BadRow>> {
    let (columns, catalogue) = (columns(), Catalogue::builtin());
    let mut reader = Reader::new(&columns, FIRST, &catalogue, TODAY).expect("it has them");
    rows.iter().map(|row| reader.row(row)).collect()
}

fn put_together(rows: &[&[&str]]) -> Vec<(SessionRow, Vec<DoneSet>)> {
    let mut sessions = Sessions::default();
    for row in read(rows) {
        sessions.add(row.expect("a good row").expect("a set")).expect("it has room");
    }
    sessions.put_together("Notebook", &Catalogue::builtin(), EASIEST_HARD)
}

#[test]
fn a_row_is_a_set() {
    let rows = read(&[
        &["04.03.2026", "Beine", "Kniebeuge", "leicht", "", "", "5", "", "60", ""],
        &["04.03.2026", "Beine", "Kniebeuge", "", "", "3", "5", "", "102,5", "8,5"],
        &["04.03.2026", "Beine", "KH Bank", "Arbeitssatz", "links", "", "8", "0", "50", ""],
        &["04.03.2026", "Beine", "Klimmzüge", "", "", "", "6", "", "BW+10", ""],
        &["04.03.2026", "Beine", "Unterarmstütz", "", "", "", "0", "1:30", "", ""],
        &["04.03.2026", "Beine", "Kniebeuge", "", "", "", "0", "", "140 kg", "10"],
        &["", "", " ", "", "", "", "", "", "", ""],
        &["04.03.2026", "–", "Kniebeuge", "-", "", "", "5", "", "100", "0"],
    ]);
    let set = |at: usize| rows[at].clone().expect("taken").expect("a set");
    assert_eq!((set(0).kind, set(0).figure), (SetKind::Ramp, Some(kg("60"))));
    let work = set(1);
    assert_eq!((work.day, work.title.as_deref()), (20_516, Some("Beine")));
    assert_eq!((work.exercise.as_str(), work.kind, work.times), ("back-squat", SetKind::Work, 3));
    assert_eq!((work.amount, work.figure), (Amount::Reps(5), Some(kg("102.5"))));
    assert_eq!((work.moved, work.left), (Some(kg("102.5")), Reserve::from_halves(3)));
    // Both hands together, as the file says, are half in each.
    let bench = set(2);
    assert_eq!(
        (bench.exercise.as_str(), bench.counting),
        ("dumbbell-bench-press", Counting::EachHand)
    );
    assert_eq!((bench.figure, bench.side), (Some(kg("25")), Some(Side::Left)));
    let pull_up = set(3);
    assert_eq!((pull_up.figure, pull_up.counting), (Some(kg("10")), Counting::Added));
    assert_eq!(pull_up.moved, None, "the body's mass is not known");
    assert!(matches!(set(4).amount, Amount::Seconds(held) if held.count() == 90));
    assert_eq!((set(5).amount, set(5).ending), (Amount::Reps(0), Ending::Failed));
    assert_eq!(rows[6], Ok(None));
    assert_eq!((set(7).title, set(7).left), (None, None), "dashes, and an RPE that is none");
}

#[test]
fn a_row_that_is_out_of_bounds_is_left_out_with_its_reason() {
    let long = "x".repeat(200);
    let near = Some("Back squat".to_owned());
    let cases: &[(&[&str], BadRow)] = &[
        (&["", "", "Kniebeuge", "", "", "", "5"], BadRow::Empty(Field::Date)),
        (&["04.03.2026", "", ""], BadRow::Empty(Field::Exercise)),
        (&["soon", "", "Kniebeuge"], BadRow::Unread(Field::Date, "soon".into())),
        (&["29.11.2026", "", "Kniebeuge"], BadRow::Future("29.11.2026".into())),
        (&["04.03.1969", "", "Kniebeuge"], BadRow::TooEarly("04.03.1969".into())),
        (&["04.03.2026", &long, "Kniebeuge"], BadRow::TooLong(Field::Title)),
        (&["04.03.2026", "", &long], BadRow::TooLong(Field::Exercise)),
        (&["04.03.2026", "", "Kniebeuche"], BadRow::NoExercise("Kniebeuche".into(), near)),
        (&["04.03.2026", "", "Radfahren"], BadRow::NoExercise("Radfahren".into(), None)),
        (
            &["04.03.2026", "", "Kniebeuge", "schwer"],
            BadRow::UnknownWord(Field::Kind, "schwer".into()),
        ),
        (
            &["04.03.2026", "", "Kniebeuge", "", "vorn"],
            BadRow::UnknownWord(Field::Side, "vorn".into()),
        ),
        (
            &["04.03.2026", "", "Kniebeuge", "", "", "31", "5"],
            BadRow::Unread(Field::Sets, "31".into()),
        ),
        (&["04.03.2026", "", "Kniebeuge"], BadRow::NoAmount),
        (&["04.03.2026", "", "Unterarmstütz", "", "", "", "0", "0"], BadRow::NoAmount),
        (
            &["04.03.2026", "", "Kniebeuge", "", "", "", "1001"],
            BadRow::Unread(Field::Reps, "1001".into()),
        ),
        (
            &["04.03.2026", "", "Kniebeuge", "", "", "", "5", "", "5001"],
            BadRow::Unread(Field::Load, "5001".into()),
        ),
        (
            &["04.03.2026", "", "Kniebeuge", "", "", "", "5", "", "-5"],
            BadRow::BelowNothing("-5".into()),
        ),
        (
            &["04.03.2026", "", "Kniebeuge", "", "", "", "5", "", "100", "11"],
            BadRow::Unread(Field::Rpe, "11".into()),
        ),
    ];
    for (row, why) in cases {
        let tongue = barwright_domain::catalogue::Tongue::English;
        let (columns, catalogue) = (columns(), Catalogue::builtin().speaking(tongue));
        let mut reader = Reader::new(&columns, FIRST, &catalogue, TODAY).expect("it has them");
        assert_eq!(reader.row(row), Err(why.clone()), "{row:?}");
    }
    let (columns, catalogue) = (columns(), Catalogue::builtin());
    let lacks = Reader::new(&columns, &["Datum", "Übung"], &catalogue, TODAY);
    assert_eq!(lacks.expect_err("it has no title").field, Field::Title);
}

#[test]
fn rows_of_a_day_and_a_title_are_a_session() {
    let rows: Vec<[&str; 10]> = vec![
        ["02.03.2026", "", "Bankdrücken", "", "", "", "5", "", "70", ""],
        ["04.03.2026", "Beine", "Kniebeuge", "leicht", "", "", "5", "", "60", ""],
        ["04.03.2026", "Beine", "Kniebeuge", "", "", "2", "5", "", "100", "9"],
        ["04.03.2026", "Beine", "Bankdrücken", "", "", "", "5", "", "80", ""],
        ["04.03.2026", "Beine", "Kniebeuge", "", "", "", "5", "", "90", ""],
        ["04.03.2026", "Abend", "Bankdrücken", "", "", "", "5", "", "70", ""],
    ];
    let of = |rows: &[[&str; 10]]| {
        put_together(&rows.iter().map(|row| row.as_slice()).collect::<Vec<_>>())
    };
    let sessions = of(&rows);
    let named = |at: usize| (sessions[at].0.session, sessions[at].0.title.as_str());
    assert_eq!(sessions.len(), 3);
    assert_eq!(named(0), (2_051_401, "Notebook"), "the oldest first; without a title the table's");
    assert_eq!((named(1), named(2)), ((2_051_601, "Beine"), (2_051_602, "Abend")));
    let (row, sets) = &sessions[1];
    let told: Vec<_> = sets
        .iter()
        .map(|set| (set.key.set.entry.0, set.key.set.set, set.round, set.left.is_some()))
        .collect();
    // An exercise is together, however its sets were mixed; the effort is after the last of two.
    let squats = [(0, 0, 0, false), (0, 1, 1, false), (0, 2, 2, true), (0, 3, 3, false)];
    assert_eq!(told[..4], squats);
    assert_eq!(told[4..], [(1, 0, 1, false)]);
    let outcome = row.outcome.as_ref().expect("it is over");
    assert_eq!((outcome.owed, outcome.done, outcome.seconds), (4, 4, 0));
    assert!(!outcome.volume.is_empty());

    // A table that grew numbers what it had as before.
    let mut longer = rows.clone();
    longer.push(["04.03.2026", "Nacht", "Bankdrücken", "", "", "", "5", "", "60", ""]);
    assert_eq!(of(&longer)[..3], sessions);
    // One with the newest first grows at its head.
    let newest_first = |rows: &[[&str; 10]]| {
        let mut rows: Vec<[&str; 10]> = rows.to_vec();
        rows.retain(|row| row[1] != "Beine");
        rows.reverse();
        rows.sort_by_key(|row| std::cmp::Reverse(row[0].to_owned()));
        of(&rows)
    };
    let before = newest_first(&rows);
    assert_eq!(newest_first(&longer)[..before.len()], before);
}

#[test]
fn sets_that_are_counted_down_are_turned_round() {
    let row = ["04.03.2026", "A", "Kniebeuge", "", "", "", "5", "", "100", ""];
    let lifted = read(&[&row]).remove(0).expect("taken").expect("a set");
    let order = |numbers: [u16; 3]| -> Vec<Amount> {
        let mut sessions = Sessions::default();
        for number in numbers {
            let (amount, number) = (Amount::Reps(number), Some(number));
            sessions.add(Lifted { amount, number, ..lifted.clone() }).expect("it has room");
        }
        let together = sessions.put_together("x", &Catalogue::builtin(), EASIEST_HARD);
        together[0].1.iter().map(DoneSet::amount).collect()
    };
    assert_eq!(order([3, 2, 1]), [1, 2, 3].map(Amount::Reps));
    assert_eq!(order([1, 2, 1]), [1, 2, 1].map(Amount::Reps));
}

#[test]
fn a_session_and_a_day_have_their_bounds() {
    let row = ["04.03.2026", "A", "Kniebeuge", "", "", "30", "5", "", "100", ""];
    let lifted = read(&[&row]).remove(0).expect("taken").expect("a set");
    let mut sessions = Sessions::default();
    let results: Vec<_> = (0..20).map(|_| sessions.add(lifted.clone())).collect();
    assert_eq!(results.iter().filter(|one| one.is_ok()).count(), bounds::SETS / 30);
    assert_eq!(results[19], Err(BadRow::TooManySets(bounds::SETS)));
    let titled = |title: u32| Lifted { title: Some(title.to_string()), ..lifted.clone() };
    let results: Vec<_> = (0..30).map(|title| sessions.add(titled(title))).collect();
    assert_eq!(results[29], Err(BadRow::TooManySessions(bounds::SESSIONS)));
}

#[test]
fn what_is_wrong_in_a_file_of_columns_is_a_fault() {
    let catalogue = Catalogue::builtin();
    let spoiled = [
        COLUMNS.replace("\"day first\"", "\"?\""),
        COLUMNS.replace("\"day first\"", "\"%Q\""),
        COLUMNS.replace("\"comma\"", "\"?\""),
        COLUMNS.replace("unit = \"kg\"", "unit = \"?\""),
        COLUMNS.replace("unit = \"kg\"\n", ""),
        COLUMNS.replace("date = \"Datum\"\n", ""),
        COLUMNS.replace("exercise = \"Übung\"\n", ""),
        COLUMNS.replace("reps = \"Wdh.\"\nseconds = \"Sek.\"\n", ""),
        COLUMNS.replace("rpe = \"RPE\"", "rpe = \"RPE\"\nleft = \"RIR\""),
        COLUMNS.replace("date = \"Datum\"", "date = 0"),
        COLUMNS.replace("date = \"Datum\"", "date = true"),
        COLUMNS.replace("decimals", "header = false\ndecimals"),
        COLUMNS.replace("Kurzhantelbankdrücken", "Radfahren"),
        COLUMNS.replace("counted = \"total\"", "counted = \"half\""),
        COLUMNS.replace("separator = \";\"", "separator = \"x\""),
        format!("{COLUMNS}\nrun = \"something\"\n"),
        "\u{feff}".to_owned(),
    ];
    for text in spoiled {
        assert_ne!(text, COLUMNS);
        assert!(Columns::read(&text, &catalogue).is_err(), "{text}");
    }
}

/// What a guess says of a table, and the file as it reads it again.
fn guessed(first: &str, rows: &[&str]) -> (String, Result<Columns, usize>) {
    let cells = |row: &str| row.split(';').map(str::to_owned).collect::<Vec<String>>();
    let rows: Vec<Vec<String>> = rows.iter().map(|row| cells(row)).collect();
    let catalogue = Catalogue::builtin();
    let guess = Guess::of(Separator::Semicolon, &cells(first), &rows, &catalogue, TODAY);
    let text = guess.write("Old", &catalogue, &|note| format!("{note:?}"));
    let read = Columns::read(&text, &catalogue).map_err(|faults| faults.len());
    (text, read)
}

#[test]
fn columns_are_guessed_by_their_names_and_by_what_stands_in_them() {
    let (text, read) = guessed(
        "Datum;Übung;Satz;Wdh.;Gewicht (kg);RPE;Notiz",
        &["27.10.2026;Kniebeuge;1;5;100;8;gut", "27.10.2026;Kniebeuge;W;5;102,5;8,5;"],
    );
    let read = read.expect("nothing is left to decide");
    let key = |field: Field| read.at.contains_key(&field);
    for field in [Field::Date, Field::Exercise, Field::Set, Field::Reps, Field::Load, Field::Rpe] {
        assert!(key(field), "{field:?} in {text}");
    }
    assert_eq!(read.at.len(), 6, "{text}");
    assert!(text.contains("unit = \"kg\"") && text.contains("decimals = \"comma\""), "{text}");
    assert!(text.contains("NotRead(7, \"Notiz\""), "{text}");

    // Without names, the date and the exercise show in their cells; the rest is a person's.
    let (text, read) = guessed("2026-10-27;back squat;5;100", &["2026-10-28;bench press;5;80"]);
    assert!(text.contains("header = false\n") && text.contains("date = 1\n"), "{text}");
    assert!(text.contains("exercise = 2\n") && text.contains("NoAmount"), "{text}");
    assert!(read.is_err(), "which column has repetitions is not known");
}

#[test]
fn what_a_name_leaves_open_shows_in_the_cells() {
    let has = |first: &str, rows: &[&str], lines: &[&str]| {
        let (text, _) = guessed(first, rows);
        for line in lines {
            assert!(text.lines().any(|there| there == *line), "{line} in {text}");
        }
        text
    };
    // How many sets, or which one.
    let head = "date;exercise;sets;reps;kg";
    has(head, &["2026-10-27;squat;1;5;100", "2026-10-27;squat;2;5;100"], &["set = \"sets\""]);
    has(head, &["2026-10-27;squat;3;5;100", "2026-10-28;squat;4;5;100"], &["sets = \"sets\""]);
    let one = head.replace("sets", "set");
    has(&one, &["2026-10-27;squat;3;5;100", "2026-10-28;squat;4;5;100"], &["sets = \"set\""]);
    // A time behind the date begins the session, where it is not each set's.
    let head = "start;exercise;reps;kg";
    let same = ["2026-10-27 18:05;squat;5;100", "2026-10-27 18:05;squat;5;100"];
    has(head, &same, &["date = \"start\"", "time = \"start\""]);
    let each: Vec<String> =
        (1..6).map(|minute| format!("2026-10-27 18:0{minute};squat;5;100")).collect();
    let each: Vec<&str> = each.iter().map(String::as_str).collect();
    let text = has("date;exercise;reps;kg", &each, &["date = \"date\""]);
    assert!(!text.contains("\ntime = "), "{text}");
    // A type that is not of sets is not read.
    let text = has("date;exercise;type;reps;kg", &["2026-10-27;squat;strength;5;100"], &[]);
    assert!(!text.contains("\nkind = "), "{text}");
}

#[test]
fn what_can_be_either_is_asked_and_not_guessed() {
    for (first, rows, undecided) in [
        ("date;exercise;reps;kg", ["03/04/2026;squat;5;100", "04/05/2026;squat;5;100"], "dates"),
        ("date;exercise;reps;weight", ["03/24/2026;squat;5;100", "04/05/2026;squat;5;90"], "unit"),
        (
            "date;exercise;reps;kg",
            ["03/24/2026;squat;5;1,125", "04/05/2026;squat;5;90"],
            "decimals",
        ),
    ] {
        let (text, read) = guessed(first, &rows);
        assert!(text.contains(&format!("\n{undecided} = \"?\"\n")), "{text}");
        assert_eq!(read, Err(1), "nothing else is: {text}");
    }
    for (cell, dates) in [
        ("24/03/2026", "day first"),
        ("03/24/2026", "month first"),
        ("03.04.2026", "day first"),
        ("2026-03-04", "iso"),
        ("3 Apr 2026", "day first"),
        ("20260304", "%Y%m%d"),
        ("01/12/2026", "month first"),
    ] {
        let row = format!("{cell};squat;5;100");
        let (text, _) = guessed("date;exercise;reps;kg", &[&row]);
        assert!(text.contains(&format!("dates = \"{dates}\"")), "{cell}: {text}");
    }
}

#[test]
fn names_that_are_not_known_are_proposed_in_comments() {
    let (text, read) = guessed(
        "date;exercise;type;reps;kg",
        &["2026-03-04;squat (front);cold;5;100", "2026-03-04;bench press;work;5;80"],
    );
    assert!(
        text.contains("# [[exercise]]\n# name = \"squat (front)\"\n# is = \"Front squat\""),
        "{text}"
    );
    assert!(text.contains("UnknownWords(Kind, [\"cold\"])"), "{text}");
    assert!(text.contains("# warm_up = [\"cold\"]\n# work = [\"cold\"]"), "{text}");
    assert!(read.is_ok_and(|read| read.exercises.is_empty()), "{text}");
    // What is proposed can be taken as it stands.
    let taken = text.replace("# [[exercise]]", "[[exercise]]").replace("# name", "name");
    let taken = taken.replacen("# is", "is", 1).replace("# [words]\n# warm_up", "[words]\nwarm_up");
    let read = Columns::read(&taken, &Catalogue::builtin()).expect("it is in order");
    assert_eq!(read.exercises[0].is, "front-squat");
    assert_eq!(read.words.warm_up, ["cold"]);
}

#[test]
fn a_guess_of_a_large_table_is_a_file_that_is_read() {
    let names: Vec<String> = (0..250).map(|at| format!("column {at} {}", "x".repeat(90))).collect();
    let first = format!("date;exercise;reps;{}", names.join(";"));
    let other = ";y".repeat(250);
    let rows: Vec<String> =
        (0..400).map(|at| format!("2026-10-27;thing {at} {};5{other}", "z".repeat(90))).collect();
    let rows: Vec<&str> = rows.iter().map(String::as_str).collect();
    let (text, read) = guessed(&first, &rows);
    assert!(read.is_ok(), "{} bytes", text.len());
    assert!(text.contains("# More(210)") && text.contains("# More(250)"), "the rest is counted");
}

/// Cells that are nearly something.
fn cell() -> impl Strategy<Value = String> {
    let pieces = prop_oneof![
        Just("2026-03-04"),
        Just("03/04/2026"),
        Just("4. Mär 26"),
        Just("18:05"),
        Just("squat"),
        Just("Kniebeuge"),
        Just("kg"),
        Just("lbs"),
        Just("BW+"),
        Just("8,5"),
        Just("1.250"),
        Just("-5"),
        Just("99999999999999"),
        Just("%Y"),
        Just("W"),
        Just("left"),
        Just(" "),
        Just("\u{202e}"),
        Just("\""),
        Just("\n"),
        Just("date"),
        Just("Wdh."),
        Just("Gewicht (kg)"),
        Just("rpe"),
    ];
    let made = prop::collection::vec(pieces, 0..3).prop_map(|pieces| pieces.concat());
    prop_oneof![4 => made, 1 => any::<String>()]
}

/// A file of columns with something else in the place of a value.
fn mapping() -> impl Strategy<Value = String> {
    (0..COLUMNS.lines().count(), cell()).prop_map(|(line, cell)| {
        let lines = COLUMNS.lines().enumerate().map(|(at, text)| match text.split_once('=') {
            Some((key, _)) if at == line => format!("{key}= {cell:?}"),
            _ => text.to_owned(),
        });
        lines.collect::<Vec<_>>().join("\n")
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..Default::default() })]

    #[test]
    fn whatever_stands_in_a_table_is_read_or_refused_within_bounds(
        rows in prop::collection::vec(prop::collection::vec(cell(), 0..12), 1..12),
        columns in mapping(),
    ) {
        let catalogue = Catalogue::builtin();
        let (first, others) = rows.split_first().expect("one at least");
        let guess = Guess::of(Separator::Comma, first, others, &catalogue, TODAY);
        let text = guess.write(&first.concat(), &catalogue, &|note: &Note| format!("{note:?}"));
        // A guess is a file of columns, with nothing wrong but what is to be decided.
        let undecided = text.matches("= \"?\"").count() + text.matches("# Missing").count()
            + text.matches("# NoAmount").count();
        let read = Columns::read(&text, &catalogue);
        prop_assert_eq!(read.is_err(), undecided > 0, "{}\n{:?}", &text, &read);
        for columns in [read.ok(), Columns::read(&columns, &catalogue).ok()].into_iter().flatten() {
            let usual: Vec<&str> = FIRST.to_vec();
            let own: Vec<&str> = first.iter().map(String::as_str).collect();
            for head in [own, usual] {
                let Ok(mut reader) = Reader::new(&columns, &head, &catalogue, TODAY) else { continue };
                let mut sessions = Sessions::default();
                for row in &rows {
                    let cells: Vec<&str> = row.iter().map(String::as_str).collect();
                    if let Ok(Some(set)) = reader.row(&cells) {
                        prop_assert!((0..=TODAY).contains(&set.day));
                        prop_assert!(set.times >= 1 && set.times <= bounds::SETS_OF_A_ROW);
                        prop_assert!(set.figure.is_none_or(|mass| mass.distance(Mass::ZERO) <= kg("5000")));
                        prop_assert!(set.title.as_ref().is_none_or(|it| it.chars().count() <= bounds::NAME));
                        prop_assert!(catalogue.get(&set.exercise).is_some());
                        let _ = sessions.add(set);
                    }
                }
                for (row, sets) in sessions.put_together("x", &catalogue, EASIEST_HARD) {
                    prop_assert!(!sets.is_empty() && sets.len() <= bounds::SETS);
                    prop_assert!(sets.iter().all(|set| set.key.session == row.session));
                }
            }
        }
    }
}
