//! A file that somebody hands in: a whole log, a return, a coach's changes. It is refused, or it is
//! taken; what was taken in is looked at, gone on with, and goes out again as it came; what was refused
//! left nothing behind.
#![no_main]

use barwright_app::contract::{Draft, Edit, EngineError, FormOf, Intent, Look, Reading};
use barwright_app::{Engine, Export};
use barwright_log::form::{EventLine, FORM, Head, write_line};
use barwright_store::{Event, Stamp};
use libfuzzer_sys::fuzz_target;

/// A whole log, with the store that `changes.toml` is for.
const WHOLE: &[u8] = include_bytes!("../corpus/records/whole.jsonl");

fn at(minute: i64) -> Reading {
    let wall_ms = 1_796_200_000_000 + minute * 60_000;
    Reading { wall_ms, offset_minutes: 0, boot_ms: None, boot_id: None }
}

fn is_no_defect<T>(answer: Result<T, EngineError>) -> Option<T> {
    match answer {
        Ok(answer) => Some(answer),
        Err(EngineError::Refused { .. }) => None,
        Err(error) => panic!("{error:?}"),
    }
}

/// All that can be looked at of a log, and a session that goes on or begins.
fn looked_at(engine: &Engine) {
    let form = |of| Look::Form { of, at: String::new(), text: String::new() };
    let looks = [
        Look::Floor { draft: Draft::default() },
        Look::Today { session: None, minutes: None },
        Look::Tally,
        Look::Weeks,
        Look::Balance { weeks: Some(8) },
        Look::Lift { exercise: "back-squat".to_owned(), page: 0, all: true },
        Look::Equipment,
        Look::Care,
        Look::Plan { text: None, week: None },
        form(FormOf::Maxes),
        form(FormOf::Exercises),
        form(FormOf::Session),
    ];
    for look in looks {
        is_no_defect(engine.view(look, at(0)));
    }
    is_no_defect(engine.week_in_short(at(0)));
    let begin = Intent::Begin { session: None, minutes: None, sure: true };
    for (minute, intent) in (1..).zip([Intent::Undo, Intent::Redo, Intent::Finish, begin]) {
        is_no_defect(engine.dispatch(intent, at(minute)));
    }
}

/// The events of a file as a whole log: numbered, counted and with the checksums that they have. Only
/// those tell an altered file from one that was written so.
fn made_whole(text: &str) -> Option<Vec<u8>> {
    let mut lines = text.lines();
    let head: Head = serde_json::from_str(lines.next()?).ok()?;
    let (mut events, mut sum) = (Vec::new(), 0);
    let read = lines.filter_map(|line| serde_json::from_str::<EventLine>(line).ok());
    for (seq, line) in (1..).zip(read) {
        let row = Event {
            seq,
            tap: line.tap.clamp(1, seq),
            kind: line.kind,
            version: line.version,
            at: Stamp { wall_ms: line.wall_ms, offset_minutes: line.offset_min },
            body: line.body.get().to_owned(),
        };
        sum = row.sum(sum);
        let Event { tap, kind, .. } = row;
        events.push(EventLine { seq, tap, kind, checksum: Some(sum), ..line });
    }
    let last = events.len() as u64;
    let head = Head {
        barwright_records: FORM,
        events: last,
        facts: 0,
        last,
        since: None,
        left_out: Vec::new(),
        ..head
    };
    let mut file = Vec::new();
    write_line(&mut file, &head).ok()?;
    for event in events {
        write_line(&mut file, &event).ok()?;
    }
    Some(file)
}

fn written(engine: &Engine, what: Export) -> Vec<u8> {
    let mut file = Vec::new();
    engine.export_records(what, &mut file).expect("records go out");
    file
}

/// Takes a whole log in, and holds what goes out against it.
fn taken_in(file: &[u8]) {
    let engine = Engine::in_memory("en".to_owned()).expect("memory");
    let seen = is_no_defect(engine.import_records(file, true));
    let taken = is_no_defect(engine.import_records(file, false));
    let (Some(seen), Some(taken)) = (seen, taken) else {
        assert_eq!((seen, taken), (None, None), "looked at and taken in, it is not the same");
        assert_eq!(engine.count_records().expect("it counts"), 0);
        return;
    };
    assert_eq!((seen.new, seen.sessions), (taken.new, taken.sessions));
    assert_eq!(engine.count_records().expect("it counts"), taken.new);
    if taken.new > 0 {
        assert_eq!(written(&engine, Export::default()), file);
    }
    let again = engine.import_records(file, false).expect("it is there already");
    assert_eq!((again.new, again.same), (0, taken.new));
    let since = Export { since: Some(20_780), ..Export::default() };
    let handed_on = written(&engine, since);
    let read = Engine::read_records(&handed_on[..], "en");
    looked_at(&read.expect("a return of ours is read"));
    looked_at(&engine);
    let found = engine.examine_records().expect("its rows are made anew");
    assert_eq!(found.mended, 0, "what was derived as it came is what is derived anew");
}

/// A coach's changes, seen and taken.
fn changed(text: &str) {
    let engine = Engine::read_records(WHOLE, "en").expect("a whole log");
    let look = Look::Form { of: FormOf::Changes, at: String::new(), text: text.to_owned() };
    is_no_defect(engine.view(look, at(0)));
    let (edit, place) = (Edit::Put { text: text.to_owned() }, String::new());
    let put = Intent::Edit { of: FormOf::Changes, place, edit, step: None };
    if is_no_defect(engine.dispatch(put, at(1))).is_some() {
        looked_at(&engine);
    }
}

fuzz_target!(|bytes: &[u8]| {
    if let Some(engine) = is_no_defect(Engine::read_records(bytes, "en")) {
        looked_at(&engine);
    }
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    if text.starts_with('{') {
        if let Some(file) = made_whole(text) {
            taken_in(&file);
        }
        return;
    }
    changed(text);
});
