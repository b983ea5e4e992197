//! Whatever a table of old sets has, and whatever is said of its columns: it is read or refused.

use std::cell::Cell;
use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{EngineError, Reading};
use proptest::prelude::*;

/// 2026-11-28, noon.
fn noon() -> Reading {
    Reading { wall_ms: 1_795_867_200_000, offset_minutes: 0, boot_ms: None, boot_id: None }
}

fn engine() -> Arc<Engine> {
    Engine::in_memory("en-GB".to_owned()).expect("it opens")
}

/// Pieces of a table: cells, what stands between them, and what takes a reader of tables apart.
fn table() -> impl Strategy<Value = Vec<u8>> {
    let pieces = prop_oneof![
        6 => prop::sample::select(vec![
            "date", "exercise", "reps", "Gewicht (kg)", "Satz", "2026-10-27", "03/04/2026", "04.03.26",
            "back squat", "Kniebeuge", "5", "102,5", "1,125", "BW+10", "W", "8.5", "1:30", "kg", "lbs",
        ]),
        6 => prop::sample::select(vec![",", ";", "\t", "|", "\n", "\r\n", "\r"]),
        2 => prop::sample::select(vec![
            "\n2026-10-27,back squat,5,100,", "\n27.10.2026;Kniebeuge;5;102,5;\r\n",
            "\n2026-10-28,bench press,5,80,left\n",
        ]),
        1 => prop::sample::select(vec!["\"", "\"\"", "\u{feff}", "\0", "\u{202e}", " ", "#"]),
    ];
    let text = prop::collection::vec(pieces, 0..80).prop_map(|pieces| pieces.concat().into_bytes());
    prop_oneof![6 => text, 1 => prop::collection::vec(any::<u8>(), 0..200)]
}

/// A usual file of columns for tables that happen to fit it.
fn columns() -> impl Strategy<Value = String> {
    let dates =
        prop::sample::select(vec!["iso", "day first", "month first", "%d.%m.%y", "%s", "?"]);
    let numbers = prop::collection::vec(1_u16..6, 4);
    (dates, numbers, any::<bool>()).prop_map(|(dates, at, header)| {
        format!(
            "name = \"x\"\nheader = {header}\ndates = \"{dates}\"\nunit = \"kg\"\n[columns]\n\
             date = {}\nexercise = {}\nreps = {}\nload = {}\n",
            at[0], at[1], at[2], at[3]
        )
    })
}

/// It is no defect, whatever else it is.
fn sound<T>(answer: Result<T, EngineError>) -> Option<T> {
    match answer {
        Ok(answer) => Some(answer),
        Err(EngineError::Refused { .. }) => None,
        Err(other) => panic!("{other:?}"),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 192, failure_persistence: None, ..Default::default() })]

    #[test]
    fn any_table_is_read_or_refused(table in table(), said in columns()) {
        let engine = engine();
        let guess = sound(engine.guess_columns(&table, "table", noon()));
        for columns in guess.into_iter().chain([said]) {
            let faults = engine.check_columns(&columns).expect("it is looked at");
            let found = sound(engine.import_table(&table, &columns, noon(), true, &|_| {}));
            prop_assert!(faults.is_empty() || found.is_none(), "{columns}");
            let Some(found) = found else { continue };
            prop_assert_eq!(found.left_out.len(), found.left_out_in_all);
            prop_assert!(!found.joined.taken);
            // What is said is taken, once, and goes out again.
            let take = || engine.import_table(&table, &columns, noon(), false, &|_| {});
            let taken = sound(take()).expect("it was looked at");
            prop_assert_eq!(taken.joined.new, found.sessions as u64);
            prop_assert_eq!(sound(take()).expect("as before").joined.new, 0);
            engine.examine_records().expect("they are in order");
            let gone = engine.withdraw_sessions(noon()).expect("they go");
            prop_assert_eq!(gone, taken.joined.new);
        }
    }
}

#[test]
fn how_far_it_is_comes_out_now_and_then() {
    let table = format!("date,exercise,reps\n{}", "2026-10-27,squad,5\n".repeat(5_000));
    let columns = "name = \"x\"\ndates = \"iso\"\n[columns]\ndate = 1\nexercise = 2\nreps = 3\n";
    let (times, last) = (Cell::new(0), Cell::new(0));
    let found = engine().import_table(table.as_bytes(), columns, noon(), true, &|bytes| {
        assert!(bytes > last.replace(bytes) && bytes <= table.len() as u64);
        times.set(times.get() + 1);
    });
    let found = found.expect("it is read");
    assert_eq!((found.left_out_in_all, found.left_out.len(), times.get()), (5_000, 1_000, 2));
}
