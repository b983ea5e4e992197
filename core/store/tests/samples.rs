//! A store of every past format is kept, as a release of that format wrote it, and still opens.
//!
//! `BARWRIGHT_WRITE_SAMPLE=1 cargo test -p barwright-store --test samples` writes the one of the
//! newest format, where there is none; those that are there are never written again.
#![expect(clippy::unwrap_used, reason = "a test's helpers fail as the test does")]

mod support;

use std::path::{Path, PathBuf};

use barwright_domain::history::Change;
use barwright_store::{NewEvent, SCHEMA_VERSION, Store};
use support::{AT, session, set};

fn sample(version: u32) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/samples/v{version}.barwright"))
}

const BODIES: [&str; 4] = ["{}", "{\"text\":\"größer\"}", "", "[1,2.5,null]"];

/// Twenty taps; the first fifteen carried out, the last five still queued.
fn fill(store: &mut Store) {
    for number in 0..20_u16 {
        let of = 1 + u64::from(number / 7);
        let bodies = BODIES.iter().take(1 + usize::from(number % 4));
        let events: Vec<_> =
            bodies.map(|body| NewEvent { kind: "sample", version: 7, body }).collect();
        let changes = [
            Change::PutSet(set(of, number % 7, 0, number.into())),
            Change::PutSession(session(of, number.into())),
        ];
        let last = format!("tap {number}");
        store.append(AT, &events, &changes, &[("last", Some(&last))]).unwrap();
        if number == 14 {
            store.checkpoint().unwrap();
        }
    }
}

fn check(store: &mut Store) {
    assert_eq!(store.verify().unwrap().events, 50);
    let events = store.events_from(47).unwrap();
    assert!(events.iter().all(|event| (event.tap, event.version) == (47, 7)));
    assert_eq!(events.iter().map(|event| event.body.as_str()).collect::<Vec<_>>(), BODIES);
    assert_eq!((events[0].at, events[0].kind.as_str()), (AT, "sample"));
    let last = store.standing().unwrap().get("last").unwrap().unwrap();
    assert_eq!((last.body.as_str(), last.seq), ("tap 19", 50));
    if !store.history_is_current() {
        // Rows of an older version are made anew, by the log's own readers.
        return;
    }
    let history = store.history().unwrap();
    for number in 0..20_u16 {
        let of = 1 + u64::from(number / 7);
        let expected = set(of, number % 7, 0, number.into());
        assert!(history.sets_in(of).unwrap().contains(&expected));
    }
    assert_eq!(history.session(3).unwrap(), Some(session(3, 19)));
}

#[test]
fn every_past_format_opens() {
    if std::env::var_os("BARWRIGHT_WRITE_SAMPLE").is_some() {
        let path = sample(SCHEMA_VERSION);
        if !path.exists() {
            // Dropped, not closed: closing would carry out what is queued. It lies in the write-ahead
            // log beside the file.
            fill(&mut Store::open(&path).unwrap());
        }
    }
    for version in 1..=SCHEMA_VERSION {
        let folder = tempfile::tempdir().unwrap();
        let copy = folder.path().join("copy");
        std::fs::copy(sample(version), &copy).unwrap();
        let log = sample(version).with_extension("barwright-wal");
        std::fs::copy(log, folder.path().join("copy-wal")).unwrap();
        let mut store = Store::open(&copy).unwrap();
        check(&mut store);
        // It goes on in the newest format.
        fill(&mut store);
        store.close().unwrap();
        assert_eq!(Store::open(&copy).unwrap().verify().unwrap().events, 100);
    }
}
