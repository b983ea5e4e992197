//! Stored samples: what was written once is read, and written back to the same bytes.
//!
//! A line is one body, under the kind that it is of. `BARWRIGHT_REWRITE=1 cargo test -p barwright-log
//! --test log samples` writes the file of the newest version. Version 1 is frozen: its lines stay as
//! they are, and a new version brings a file of its own.

use std::collections::BTreeSet;
use std::path::Path;

use barwright_domain::call::{ContinuedPart, Ending, EntryId, LoadCall, MaxOf, SetId, Structure};
use barwright_domain::desk::{Arrangement, At, DeskEvent};
use barwright_domain::owners::{Account, Change, Max, Outcome, Owner, RowId, State, Why, Word};
use barwright_domain::progress::estimate::Formula;
use barwright_domain::progress::test_day;
use barwright_domain::quantity::{Percent, Range};
use barwright_domain::session::{Because, Call, Done, Event, LoadForSet, Reading, Reason};
use barwright_log::{
    VERSION, decode_account, decode_desk, decode_draft, decode_session, decode_standing_desk,
    encode_account, encode_desk, encode_draft, encode_session, encode_standing_desk,
};
use serde_json::Value;

use crate::any::{Any, Every, Tape};
use crate::usual;
use crate::walk::Schema;

/// The usual, which is left out wherever it could stand.
const UNWRITTEN: [(&str, &str); 6] = [
    ("EffortScale", "left"),
    ("Ending", "as_called"),
    ("Flow", "listed"),
    ("SetKind", "work"),
    ("Structure", "straight"),
    ("WeekKind", "ordinary"),
];

fn folder() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The kind of a line, and its body.
fn split(line: &str) -> (&str, &str) {
    let inside = line.strip_prefix("{\"").and_then(|line| line.strip_suffix('}'));
    inside.and_then(|line| line.split_once("\":")).expect("a kind and its body")
}

fn line(kind: &str, body: &str) -> String {
    format!("{{\"{kind}\":{body}}}")
}

/// A body read through the door and written again.
fn written_again(kind: &str, body: &str) -> Result<String, barwright_log::Unreadable> {
    let at = usual::reading();
    let (wall_ms, offset) = (at.wall_ms, at.offset_minutes);
    Ok(match kind {
        "session" => {
            let (at, event) = decode_session(VERSION, body, wall_ms, offset)?;
            encode_session(&at, &event)
        }
        "desk" => {
            let (at, event) = decode_desk(VERSION, body, wall_ms, offset)?;
            encode_desk(&at, &event)
        }
        "standing_desk" => encode_standing_desk(&decode_standing_desk(body)?),
        "account" => encode_account(&decode_account(body)?),
        "draft" => encode_draft(&decode_draft(body)?),
        other => panic!("no such kind: {other}"),
    })
}

/// Every variant of a type, one after another, with bytes of its own behind each.
fn every<T: Every>() -> Vec<T> {
    let bytes = |nth: usize| -> Vec<u8> {
        (0..96_usize)
            .map(|at| u8::try_from((at * 37 + nth * 11 + 5) % 97).expect("small"))
            .collect()
    };
    T::MAKES.iter().enumerate().map(|(nth, make)| make(&mut Tape::new(&bytes(nth)))).collect()
}

/// What the file is written from: a usual evening, then what it takes for every variant of every type.
fn lines() -> Vec<String> {
    let at = usual::reading();
    let bare = Reading { boot_ms: None, boot_id: None, ..usual::reading() };
    let mut lines: Vec<String> = Vec::new();
    let session = usual::session();
    lines.extend(session.iter().map(|event| line("session", &encode_session(&at, event))));
    let desk = usual::desk();
    lines.extend(desk.iter().map(|event| line("desk", &encode_desk(&bare, event))));
    lines.push(line("standing_desk", &encode_standing_desk(&usual::standing_desk())));
    lines.push(line("account", &encode_account(&usual::account())));
    lines.push(line("draft", &encode_draft(&usual::draft())));

    let jump = every::<Why>().into_iter().find_map(|why| match why {
        Why::StepTooBig { step_to, expected, floor, .. } => Some((step_to, expected, floor)),
        _ => None,
    });
    let (step_to, expected, floor) = jump.expect("every reason is there");
    let by_formula = every::<Formula>().into_iter();
    let by_formula =
        by_formula.map(|formula| Why::StepTooBig { step_to, expected, floor, formula });
    let outcomes = every::<Why>().into_iter().chain(by_formula).map(|why| Outcome {
        owner: Owner::Loose("back-squat".into()),
        changes: Vec::new(),
        why,
        sets: Vec::new(),
        silent: true,
        held: true,
        proposal: None,
    });
    let decided = DeskEvent::Decided { session: 7, day: 20_514, outcomes: outcomes.collect() };
    lines.push(line("desk", &encode_desk(&bare, &decided)));
    let said = DeskEvent::Said {
        owner: Owner::Care("back-squat".into()),
        changes: every::<Change>(),
        day: 20_514,
    };
    lines.push(line("desk", &encode_desk(&bare, &said)));
    let load = LoadForSet::any(&mut Tape::new(&[]));
    let loads = vec![LoadForSet { reason: Reason(every()), ..load }];
    lines.push(line("session", &encode_session(&bare, &Event::LoadsSet { loads })));
    for rig in every() {
        lines.push(line("session", &encode_session(&bare, &Event::BarHolds { rig })));
    }
    for what in every() {
        let arranged = DeskEvent::Arranged { plan: 1, what };
        lines.push(line("desk", &encode_desk(&bare, &arranged)));
    }
    let what = Arrangement::ForOnce { at: At { week: 1, session: 1 }, changes: every() };
    lines.push(line("desk", &encode_desk(&bare, &DeskEvent::Arranged { plan: 1, what })));
    for base in every() {
        lines.push(line("account", &encode_account(&Account::restored(base, Vec::new()))));
    }
    let shares = every::<MaxOf>().into_iter().map(|of| {
        let share = Range::just(Percent::whole(60));
        ContinuedPart { load: LoadCall::Percent { share, of }, ..Any::any(&mut Tape::new(&[])) }
    });
    let call = Call {
        structure: Structure::Continued { parts: shares.collect() },
        ..Any::any(&mut Tape::new(&[]))
    };
    let added = Event::SetAdded { set: SetId { entry: EntryId(0), set: 3 }, call };
    lines.push(line("session", &encode_session(&bare, &added)));
    let singles = every::<test_day::Because>().into_iter().map(|rule| {
        let (last, gives) = Any::any(&mut Tape::new(&[]));
        Because::Single { rule, last, gives }
    });
    let load = LoadForSet::any(&mut Tape::new(&[]));
    let loads = vec![LoadForSet { reason: Reason(singles.collect()), ..load }];
    lines.push(line("session", &encode_session(&bare, &Event::LoadsSet { loads })));
    for ending in every::<Ending>() {
        let done = Done { ending, ..Any::any(&mut Tape::new(&[])) };
        let set = SetId { entry: EntryId(0), set: 3 };
        let corrected = Event::Corrected { set, part: 0, done };
        lines.push(line("session", &encode_session(&bare, &corrected)));
    }
    fill(&mut lines);
    lines
}

/// Adds lines, of bytes in their order, until every variant of every type has one.
fn fill(lines: &mut Vec<String>) {
    let schema = Schema::read(&folder().join("schema/v1.json"));
    let mut seen = BTreeSet::new();
    for line in &*lines {
        seen.extend(schema.branches_of(&serde_json::from_str(line).expect("JSON")).expect("valid"));
    }
    let at = Reading { boot_ms: None, boot_id: None, ..usual::reading() };
    for nth in 0..6_000_usize {
        let byte = |at: usize| u8::try_from((at * at * 31 + nth * 17 + at * nth) % 251 % 128);
        let bytes: Vec<u8> = (0..160).map(|at| byte(at).expect("small")).collect();
        let mut tape = Tape::new(&bytes);
        let of_session = |event: &Event| line("session", &encode_session(&at, event));
        let of_desk = |event: &DeskEvent| line("desk", &encode_desk(&at, event));
        let next = match nth % 6 {
            0 => {
                let (set, call) = Any::any(&mut tape);
                of_session(&Event::SetAdded { set, call })
            }
            1 => {
                let (entry, to, cause) = Any::any(&mut tape);
                of_session(&Event::Swapped { entry, to, cause })
            }
            2 => of_session(&Any::any(&mut tape)),
            3 => {
                let (session, day) = (7, 20_514);
                of_desk(&DeskEvent::Decided { session, day, outcomes: vec![Any::any(&mut tape)] })
            }
            4 => {
                let (equipment, text) = Any::any(&mut tape);
                of_desk(&DeskEvent::GymKept { equipment, text })
            }
            _ => line("account", &encode_account(&Any::any(&mut tape))),
        };
        let branches = schema.branches_of(&serde_json::from_str(&next).expect("JSON"));
        let branches = branches.expect("valid");
        if next.len() < 2_000 && !branches.is_subset(&seen) {
            seen.extend(branches);
            lines.push(next);
        }
    }
}

fn stored() -> Vec<String> {
    let path = folder().join("samples/v1.jsonl");
    if std::env::var_os("BARWRIGHT_REWRITE").is_some() {
        std::fs::write(&path, lines().join("\n") + "\n").expect("the checkout can be written");
    }
    let text = std::fs::read_to_string(&path).expect("the samples are committed");
    text.lines().map(ToOwned::to_owned).collect()
}

/// One test, so that the file is written before it is read.
#[test]
fn samples() {
    let stored = stored();
    written_back_to_the_same_bytes(&stored);
    every_event_has_one(&stored);
    every_variant_of_every_type_has_one(&stored);
    an_unknown_field_is_refused_anywhere(&stored);
}

fn written_back_to_the_same_bytes(stored: &[String]) {
    for line in stored {
        let (kind, body) = split(line);
        let again = written_again(kind, body).unwrap_or_else(|error| panic!("{error}\n{line}"));
        assert_eq!(again, body);
    }
}

fn every_event_has_one(stored: &[String]) {
    let mut names: BTreeSet<(&str, &str)> = BTreeSet::new();
    for line in stored {
        let (kind, body) = split(line);
        match kind {
            "session" => {
                names.insert((kind, decode_session(VERSION, body, 0, 0).expect("read").1.name()))
            }
            "desk" => {
                names.insert((kind, decode_desk(VERSION, body, 0, 0).expect("read").1.name()))
            }
            _ => false,
        };
    }
    let session = Event::names().into_iter().map(|name| ("session", name));
    let desk = DeskEvent::names().into_iter().map(|name| ("desk", name));
    let all: BTreeSet<(&str, &str)> = session.chain(desk).collect();
    let lack: Vec<_> = all.difference(&names).collect();
    assert!(
        lack.is_empty(),
        "no sample of {lack:?}: put one into tests/log/usual.rs and run \
         BARWRIGHT_REWRITE=1 cargo test -p barwright-log --test log samples"
    );
}

fn every_variant_of_every_type_has_one(stored: &[String]) {
    let schema = Schema::read(&folder().join("schema/v1.json"));
    let mut seen = BTreeSet::new();
    for line in stored {
        let value: Value = serde_json::from_str(line).expect("JSON");
        seen.extend(schema.branches_of(&value).unwrap_or_else(|why| panic!("{why}\n{line}")));
    }
    let mut all = schema.branches();
    assert!(all.len() > 200, "the schema's branches are seen");
    for (of, usual) in UNWRITTEN {
        let place = schema.branch(of, usual).unwrap_or_else(|| panic!("no {usual} of {of}"));
        assert!(!seen.contains(&place), "{usual} of {of} is written");
        all.remove(&place);
    }
    let lack: Vec<_> = all.difference(&seen).collect();
    assert!(
        lack.is_empty(),
        "no sample of {lack:#?}: run BARWRIGHT_REWRITE=1 cargo test -p barwright-log --test log samples"
    );
}

/// Each object of a value in turn with a field more.
fn with_a_field_more(value: &Value) -> Vec<Value> {
    fn objects(value: &Value, pointer: String, found: &mut Vec<String>) {
        match value {
            Value::Object(fields) => {
                for (name, field) in fields {
                    objects(
                        field,
                        format!("{pointer}/{}", name.replace('~', "~0").replace('/', "~1")),
                        found,
                    );
                }
                found.push(pointer);
            }
            Value::Array(items) => {
                for (nth, item) in items.iter().enumerate() {
                    objects(item, format!("{pointer}/{nth}"), found);
                }
            }
            _ => {}
        }
    }
    let mut found = Vec::new();
    objects(value, String::new(), &mut found);
    let more = |pointer: String| {
        let mut value = value.clone();
        let object = value.pointer_mut(&pointer).and_then(Value::as_object_mut);
        object.expect("it was found there").insert("unheard_of".into(), Value::Null);
        value
    };
    found.into_iter().map(more).collect()
}

/// What a later release adds is never dropped in silence.
fn an_unknown_field_is_refused_anywhere(stored: &[String]) {
    let mut tried = 0;
    for line in stored {
        let (kind, body) = split(line);
        for more in with_a_field_more(&serde_json::from_str(body).expect("JSON")) {
            tried += 1;
            let more = more.to_string();
            assert!(written_again(kind, &more).is_err(), "{kind} is read all the same: {more}");
        }
    }
    assert!(tried > 500, "{tried}");
}

#[test]
fn what_cannot_be_read_says_why() {
    let error = |version, body: &str| decode_session(version, body, 0, 0).unwrap_err().to_string();
    assert_eq!(
        error(2, "{\"event\":\"paused\"}"),
        "written as version 2, and 1 is the latest that is read here"
    );
    assert!(error(1, "{\"event\":\"danced\"}").contains("unknown variant `danced`"));
    assert!(error(1, "{\"event\":\"paused\"").contains("EOF"));
    let held = "{\"event\":{\"set_added\":{\"set\":{\"entry\":0,\"set\":0},\"call\":{\"round\":1,\
                \"load\":{\"after_top\":{\"share\":9000}},\"how_many\":{\"seconds\":{\"from\":30,\
                \"to\":90000}},\"rest\":60,\"reason\":[]}}}}";
    assert_eq!(error(1, held), "90000 is no duration in seconds: 0 to 86400");
}

/// Words of an owner are kept in their order.
#[test]
fn an_account_keeps_its_words_in_order() {
    let word = |day| {
        let changes = vec![Change::Cleared(RowId(u32::try_from(day).expect("a day since 1970")))];
        let outcome = Outcome::any(&mut Tape::new(&[]));
        Word { session: None, day, outcome: Outcome { changes, ..outcome } }
    };
    let words: Vec<Word> = [9, 3, 7].map(word).into();
    let account = Account::restored(State::Max(Max::default()), words.clone());
    let read = decode_account(&encode_account(&account)).unwrap();
    assert_eq!(read.words(), words);
    assert_eq!(read.base(), &State::Max(Max::default()));
}
