//! The log through its public door: what goes in comes out, under one lock, in one file.
#![expect(clippy::unwrap_used, reason = "a test's helpers fail as the test does")]

use std::path::Path;

use barwright_store::{
    Damage, Foreign, NewEvent, Place, Stamp, Store, StoreError, move_aside, salvage, take_its_place,
};
use rusqlite::Connection;

const AT: Stamp = Stamp { wall_ms: 1_795_000_000_000, offset_minutes: 60 };

fn event(body: &str) -> NewEvent<'_> {
    NewEvent { kind: "part_done", version: 1, body }
}

fn fill(store: &mut Store, taps: u32) {
    for tap in 0..taps {
        let body = format!("{{\"tap\":{tap},\"reps\":5}}");
        let count = format!("{tap}");
        store.append(AT, &[event(&body), event("{}")], &[], &[("count", Some(&count))]).unwrap();
    }
}

/// A closed store with so many taps of two events.
fn made(path: &Path, taps: u32) {
    let mut store = Store::open(path).unwrap();
    fill(&mut store, taps);
    store.close().unwrap();
}

/// A closed store with so many events, all of one tap.
fn made_at_once(path: &Path, count: usize) {
    let bodies: Vec<_> = (0..count).map(|number| format!("{{\"number\":{number}}}")).collect();
    let events: Vec<_> = bodies.iter().map(|body| event(body)).collect();
    let mut store = Store::open(path).unwrap();
    store.append(AT, &events, &[], &[("count", Some("1"))]).unwrap();
    store.close().unwrap();
}

fn folder() -> (tempfile::TempDir, std::path::PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("log.barwright");
    (folder, path)
}

#[test]
fn a_tap_is_one_run_of_numbers() {
    let mut store = Store::in_memory().unwrap();
    assert_eq!((store.last_seq(), store.next_seq()), (0, 1));
    let tap = store.append(AT, &[event("a"), event("b")], &[], &[("plan", Some("one"))]).unwrap();
    assert_eq!((tap.first, tap.last), (1, 2));
    let tap =
        store.append(AT, &[event("ü")], &[], &[("plan", Some("two")), ("gone", None)]).unwrap();
    assert_eq!((tap.first, tap.last), (3, 3));
    assert_eq!(store.append(AT, &[], &[], &[("plan", None)]).unwrap().last, 3);

    let events = store.events_from(2).unwrap();
    let seen: Vec<_> = events.iter().map(|e| (e.seq, e.tap, e.body.as_str())).collect();
    assert_eq!(seen, [(2, 1, "b"), (3, 3, "ü")]);
    assert_eq!((events[0].at, events[0].version, events[0].kind.as_str()), (AT, 1, "part_done"));
    assert_eq!(store.events_from(4).unwrap(), []);
    assert_eq!(store.events_from(9).unwrap(), []);
    // No number is too large to be asked for.
    assert_eq!(store.events_from(u64::MAX).unwrap(), []);
    assert_eq!(store.event(u64::MAX).unwrap(), None);
    let history = store.history().unwrap();
    assert_eq!(history.session(u64::MAX).unwrap(), None);
    assert_eq!(history.sets_in(u64::MAX).unwrap(), []);
    assert_eq!(history.turns_of_plan(u64::MAX).unwrap(), []);
    assert_eq!(history.last_sessions(Some((i32::MAX, u64::MAX)), 3).unwrap(), []);
    drop(history);
    let plan = store.standing().unwrap().get("plan").unwrap().unwrap();
    assert_eq!((plan.body.as_str(), plan.seq), ("two", 3));
    store.append(AT, &[event("c")], &[], &[("plan", None)]).unwrap();
    assert_eq!(store.standing().unwrap().get("plan").unwrap(), None);
    assert_eq!(store.verify().unwrap().events, 4);
}

#[test]
fn closing_leaves_one_file_that_opens_again() {
    let (folder, path) = folder();
    made(&path, 100);
    let names: Vec<_> =
        std::fs::read_dir(folder.path()).unwrap().map(|f| f.unwrap().file_name()).collect();
    assert_eq!(names, ["log.barwright"]);
    let uuid = {
        let store = Store::open(&path).unwrap();
        assert_eq!(store.last_seq(), 200);
        assert_eq!(store.standing().unwrap().get("count").unwrap().unwrap().body, "99");
        assert_eq!(store.events_from(1).unwrap().len(), 200);
        store.uuid().to_owned()
    };
    let mut store = Store::open(&path).unwrap();
    assert_eq!(store.uuid(), uuid);
    store.reopen().unwrap();
    fill(&mut store, 1);
    assert_eq!(store.last_seq(), 202);
}

#[test]
fn what_was_acknowledged_survives_a_process_that_dies() {
    let (folder, path) = folder();
    let mut store = Store::open(&path).unwrap();
    fill(&mut store, 10);
    // What a killed process leaves: the file and its log as they are, with no closing.
    let dead = folder.path().join("dead");
    std::fs::copy(&path, &dead).unwrap();
    std::fs::copy(folder.path().join("log.barwright-wal"), folder.path().join("dead-wal")).unwrap();
    drop(store);
    let store = Store::open(&dead).unwrap();
    assert_eq!(store.verify().unwrap().events, 20);
}

#[test]
fn a_name_is_a_file_whatever_it_looks_like() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("file:x?mode=memory");
    made(&path, 1);
    assert!(path.exists());
}

#[test]
fn one_engine_at_a_time() {
    let (_folder, path) = folder();
    let mut store = Store::open(&path).unwrap();
    let refused = Store::open(&path).unwrap_err();
    assert_eq!(refused, StoreError::InUse { path: path.clone() });
    fill(&mut store, 1);
    store.close().unwrap();
    Store::open(&path).unwrap();
}

#[test]
fn a_newer_file_is_refused_and_left_as_it_is() {
    let (_folder, path) = folder();
    made(&path, 3);
    let connection = Connection::open(&path).unwrap();
    connection.pragma_update(None, "user_version", 99).unwrap();
    drop(connection);
    // A header alone that says so is spoiled.
    let refused = Store::open(&path).unwrap_err();
    assert!(matches!(refused, StoreError::Corrupt { .. }), "{refused}");
    Connection::open(&path).unwrap().execute("UPDATE store SET format = 99", []).unwrap();
    let before = std::fs::read(&path).unwrap();
    let refused = Store::open(&path).unwrap_err();
    assert!(matches!(refused, StoreError::Newer { found: 99, known: 1, .. }), "{refused}");
    assert_eq!(std::fs::read(&path).unwrap(), before);
}

#[test]
fn other_files_are_refused_and_left_as_they_are() {
    let (folder, path) = folder();
    std::fs::write(&path, "a letter, not a database. ".repeat(100)).unwrap();
    let other = folder.path().join("other.db");
    let connection = Connection::open(&other).unwrap();
    connection.execute_batch("CREATE TABLE stamps (country TEXT)").unwrap();
    connection.close().unwrap();
    for (path, found) in
        [(&path, Foreign::NotSqlite), (&other, Foreign::OtherDatabase { application_id: 0 })]
    {
        let before = std::fs::read(path).unwrap();
        let refused = Store::open(path).unwrap_err();
        assert_eq!(refused, StoreError::NotAStore { path: path.clone(), found });
        assert_eq!(&std::fs::read(path).unwrap(), &before);
    }
    let refused = Store::open(folder.path()).unwrap_err();
    assert!(matches!(refused, StoreError::NotAStore { found: Foreign::Folder, .. }));
    let refused = Store::open(&folder.path().join("no/such.barwright")).unwrap_err();
    assert!(matches!(refused, StoreError::NoFolder { .. }));
    // What a crash before the first transaction leaves is a new store.
    let empty = folder.path().join("empty");
    std::fs::write(&empty, "").unwrap();
    Store::open(&empty).unwrap();
}

/// Changes rows of a closed store behind the triggers' back.
fn tamper(path: &Path, sql: &str) {
    let connection = Connection::open(path).unwrap();
    let triggers: String = connection
        .query_row(
            "SELECT group_concat(sql, ';') FROM sqlite_schema WHERE type = 'trigger'",
            [],
            |row| row.get(0),
        )
        .unwrap();
    connection.execute_batch("DROP TRIGGER event_is_never_changed").unwrap();
    connection.execute_batch("DROP TRIGGER event_is_never_deleted").unwrap();
    connection.execute_batch(sql).unwrap();
    connection.execute_batch(&triggers).unwrap();
}

#[test]
fn a_changed_event_shows() {
    for (sql, damage) in [
        ("UPDATE event SET body = '{}' WHERE seq = 199", Damage::Checksum { seq: 199 }),
        ("UPDATE event SET wall_ms = wall_ms + 1 WHERE seq = 200", Damage::Checksum { seq: 200 }),
        ("DELETE FROM event WHERE seq = 150", Damage::Missing { seq: 150 }),
        ("DELETE FROM event WHERE seq > 180", Damage::EndLost { seq: 200 }),
    ] {
        let (_folder, path) = folder();
        made(&path, 100);
        tamper(&path, sql);
        let refused = Store::open(&path).unwrap_err();
        assert_eq!(refused, StoreError::Corrupt { path: path.clone(), damage }, "{sql}");
    }
    // Far back, opening does not look; verifying and replaying do.
    let (_folder, path) = folder();
    made(&path, 100);
    tamper(&path, "UPDATE event SET kind = 'other' WHERE seq = 7");
    let store = Store::open(&path).unwrap();
    let damage = Damage::Checksum { seq: 7 };
    assert_eq!(store.verify().unwrap_err(), StoreError::Corrupt { path: path.clone(), damage });
    assert!(store.events_from(7).is_err());
    assert_eq!(store.events_from(8).unwrap().len(), 193);
}

#[test]
fn events_are_never_changed() {
    let (_folder, path) = folder();
    made(&path, 1);
    let connection = Connection::open(&path).unwrap();
    for sql in ["UPDATE event SET body = ''", "DELETE FROM event"] {
        assert!(connection.execute_batch(sql).unwrap_err().to_string().contains("never"), "{sql}");
    }
}

#[test]
fn a_damaged_file_is_kept_and_read_as_far_as_it_is_good() {
    let (folder, path) = folder();
    made_at_once(&path, 4_000);
    let uuid = Store::open(&path).unwrap().uuid().to_owned();
    tamper(&path, "UPDATE event SET body = 'x' WHERE seq = 3990");
    assert!(Store::open(&path).is_err());
    let before = std::fs::read(&path).unwrap();

    let place = Place::file(&path);
    let (store, read) = salvage(&place).unwrap();
    assert_eq!((read.kept, read.mended, read.last, read.beyond), (3989, 0, 4000, 11));
    assert_eq!(std::fs::read(&path).unwrap(), before);
    let aside = take_its_place(store, &place).unwrap();
    assert_eq!(aside.path(), folder.path().join("log.barwright.damaged-1"));
    assert_eq!(std::fs::read(aside.path()).unwrap(), before);
    let mut store = Store::open(&path).unwrap();
    assert_eq!(store.uuid(), uuid);
    assert_eq!(store.verify().unwrap().events, 3989);
    fill(&mut store, 1);
    store.close().unwrap();
    assert_eq!(Store::open(&path).unwrap().last_seq(), 3991);

    // A second one gets a name of its own.
    let second = move_aside(&place).unwrap();
    assert_eq!(second.path(), folder.path().join("log.barwright.damaged-2"));
    assert!(!path.exists());
}

#[test]
fn a_torn_page_is_damage_and_the_rest_is_read() {
    let (_folder, path) = folder();
    made_at_once(&path, 4_000);
    let mut bytes = std::fs::read(&path).unwrap();
    // One that holds rows of the log, in the midst of them.
    let place = bytes.windows(14).position(|bytes| bytes == b"{\"number\":2000").unwrap();
    let damaged = place / 16_384 * 16_384;
    bytes[damaged..damaged + 16_384].fill(0xa5);
    std::fs::write(&path, &bytes).unwrap();
    let refused = Store::open(&path).and_then(|store| store.verify()).unwrap_err();
    assert!(matches!(refused, StoreError::Corrupt { .. }), "{refused}");
    let place = Place::file(&path);
    let (store, read) = salvage(&place).unwrap();
    assert!((1_000..2_000).contains(&read.kept), "{read:?}");
    assert!(read.beyond > 1_000 && read.kept + read.beyond < 4_000, "{read:?}");
    assert_eq!(read.last, 4_000);
    assert_eq!(store.verify().unwrap().events, read.kept);
}

#[test]
fn a_log_alone_is_never_taken_for_a_new_store() {
    let (_folder, path) = folder();
    let mut store = Store::open(&path).unwrap();
    fill(&mut store, 3);
    drop(store);
    std::fs::remove_file(&path).unwrap();
    let refused = Store::open(&path).unwrap_err();
    assert_eq!(refused, StoreError::Corrupt { path: path.clone(), damage: Damage::LogAlone });
    // It holds all of so young a log.
    let place = Place::file(&path);
    let (store, read) = salvage(&place).unwrap();
    assert_eq!((read.kept, read.last), (6, 6));
    let aside = take_its_place(store, &place).unwrap();
    assert!(!aside.path().exists());
    assert_eq!(Store::open(&path).unwrap().last_seq(), 6);
}

#[test]
fn a_backup_is_whole_and_checked() {
    let (folder, path) = folder();
    made_at_once(&path, 998);
    let mut store = Store::open(&path).unwrap();
    fill(&mut store, 1);
    let to = folder.path().join("backup.barwright");
    let verified = store.backup(&to).unwrap();
    assert_eq!(verified, store.verify().unwrap());
    assert_eq!(store.backup(&to).unwrap_err(), StoreError::Exists { path: to.clone() });
    fill(&mut store, 1);
    let mut copy = Store::open(&to).unwrap();
    assert_eq!(copy.last_seq(), 1000);
    assert_eq!(copy.uuid(), store.uuid());
    fill(&mut copy, 1);
    // Nowhere to write: no half a backup is left.
    let nowhere = folder.path().join("no/backup");
    assert!(matches!(store.backup(&nowhere), Err(StoreError::NoFolder { .. })));
    copy.close().unwrap();
    let mut names: Vec<_> =
        std::fs::read_dir(folder.path()).unwrap().map(|f| f.unwrap().file_name()).collect();
    names.sort();
    assert_eq!(names, ["backup.barwright", "log.barwright", "log.barwright-wal"]);
}

#[test]
fn standing_facts_are_found_by_how_their_keys_begin() {
    let mut store = Store::in_memory().unwrap();
    let event = [NewEvent { kind: "sample", version: 1, body: "{}" }];
    let facts = [("load:a", Some("1")), ("load:b", Some("2")), ("loader", Some("3")), ("m", None)];
    store.append(AT, &event, &[], &facts).unwrap();
    let keys = |prefix| -> Vec<_> {
        let found = store.standing().unwrap().beginning(prefix).unwrap();
        found.into_iter().map(|(key, fact)| (key, fact.body, fact.seq)).collect()
    };
    let fact = |key: &str, body: &str| (key.to_owned(), body.to_owned(), 1);
    assert_eq!(keys("load:"), [fact("load:a", "1"), fact("load:b", "2")]);
    assert_eq!(keys("load").len(), 3);
    assert_eq!(keys("").len(), 3);
    assert_eq!(keys("load:c"), []);
}
