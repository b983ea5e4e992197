//! What spoils a file, from outside: it is known, it is said, and what can be read is read.
#![expect(clippy::unwrap_used, reason = "a test's helpers fail as the test does")]

mod support;

use std::path::{Path, PathBuf};

use barwright_domain::history::Change;
use barwright_store::{
    AtEnd, Damage, Derive, Event, NewEvent, Place, Schedule, Store, StoreError, restore, salvage,
    take_its_place,
};
use rusqlite::Connection;
use support::{AT, EXERCISES, day_of, session, set};

const PAGE: usize = 16_384;

fn folder() -> (tempfile::TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("log.barwright");
    (folder, path)
}

fn log_of(path: &Path) -> PathBuf {
    path.with_file_name(format!("{}-wal", path.file_name().unwrap().to_str().unwrap()))
}

/// A tap whose events are its changes.
fn tap(store: &mut Store, number: u64) -> Result<(), StoreError> {
    let of = 1 + number / 12 * 24;
    let shape = number as u32;
    let changes = [
        Change::PutSet(set(of, (number % 3) as u16, (number % 12 / 3) as u16, shape)),
        Change::PutSession(session(of, shape)),
    ];
    let bodies = changes.each_ref().map(|change| serde_json::to_string(change).unwrap());
    let events = bodies.each_ref().map(|body| NewEvent { kind: "change", version: 1, body });
    let last = number.to_string();
    store.append(AT, &events, &changes, &[("last", Some(&last))]).map(|_| ())
}

fn taps(store: &mut Store, numbers: std::ops::Range<u64>) {
    for number in numbers {
        tap(store, number).unwrap();
    }
}

/// A closed store with so many taps of two events.
fn made(path: &Path, count: u64) {
    let mut store = Store::open(path).unwrap();
    taps(&mut store, 0..count);
    store.close().unwrap();
}

/// Folds the log as the taps did.
struct Refold(u64);

impl Derive for Refold {
    type Error = StoreError;

    fn event(&mut self, event: Event) -> Result<Vec<Change>, StoreError> {
        self.0 += 1;
        Ok(vec![serde_json::from_str(&event.body).unwrap()])
    }

    fn end(&mut self) -> Result<AtEnd, StoreError> {
        let last = (self.0 / 2 - 1).to_string();
        Ok(AtEnd { changes: Vec::new(), standing: vec![("last".into(), last)] })
    }
}

fn flip(path: &Path, at: usize, bit: u8) {
    let mut bytes = std::fs::read(path).unwrap();
    bytes[at] ^= 1 << bit;
    std::fs::write(path, bytes).unwrap();
}

/// Restores, with what is derived made anew where it does not fit.
fn restored(
    backup: &Path,
    place: &Place,
) -> Result<(barwright_store::Verified, Option<Place>), StoreError> {
    restore(backup, place, |store| {
        if store.differing(&mut Refold(0))?.differing > 0 {
            store.rebuild(&mut Refold(0))?;
        }
        Ok(())
    })
}

/// Changes one bit in an entry, as it lies in the log.
fn spoil_entry(path: &Path, from: &str, to: &str) {
    let connection = Connection::open(path).unwrap();
    let trigger: String = connection
        .query_row("SELECT sql FROM sqlite_schema WHERE name LIKE '%changed'", [], |row| row.get(0))
        .unwrap();
    connection.execute_batch("DROP TRIGGER event_is_never_changed").unwrap();
    let sql = "UPDATE event SET body = substr(body, 1, instr(body, ?1) - 1) || ?2
                                       || substr(body, instr(body, ?1) + length(?1))
               WHERE seq = (SELECT min(seq) FROM event WHERE instr(body, ?1) AND seq > 11)";
    assert_eq!(connection.execute(sql, [from, to]).unwrap(), 1);
    connection.execute_batch(&trigger).unwrap();
}

/// Reads all that is derived, in every way that it is read.
fn read_all(store: &mut Store) -> Result<(), StoreError> {
    let history = store.history()?;
    for row in history.last_sessions(None, 1_000)? {
        history.session(row.session)?;
        history.sets_in(row.session)?;
    }
    history.sessions_between(i32::MIN..=i32::MAX)?;
    for plan in 0..3 {
        history.sessions_of_plan(plan, 0..=u16::MAX)?;
        history.turns_of_plan(plan)?;
    }
    history.volume(i32::MIN..=i32::MAX)?;
    history.exercises_done()?;
    for exercise in EXERCISES {
        history.sets_of(exercise, None, 3)?;
        history.sets_of(exercise, Some((day_of(60), 60)), 2)?;
        history.records(exercise)?;
    }
    drop(history);
    store.standing()?.get("last").map(|_| ())
}

#[test]
fn derived_rows_that_do_not_fit_are_found_when_read_and_made_anew() {
    let spoiled = [
        "UPDATE done_set SET helped = helped + 1 WHERE nth = 7",
        "UPDATE done_set SET exercise = 'front-squats' WHERE nth = 7",
        "DELETE FROM done_set WHERE nth = 7",
        "DELETE FROM done_set WHERE nth = (SELECT max(nth) FROM done_set)",
        "DELETE FROM done_set",
        "UPDATE session SET day = day + 400 WHERE nth = 3",
        "DELETE FROM session WHERE nth = 2",
        "DELETE FROM session WHERE nth = (SELECT max(nth) FROM session)",
        "UPDATE week_volume SET volume = replace(volume, ' 1 ', ' 2 ') WHERE nth = 2",
        "DELETE FROM week_volume WHERE nth = 2",
        "UPDATE record SET value = value + 1 WHERE exercise = 'pull-up'",
        "DELETE FROM record WHERE exercise = 'pull-up' AND value > 3",
        "DELETE FROM exercise WHERE exercise = 'pull-up'",
        "UPDATE standing SET body = '3' WHERE key = 'last'",
        "DELETE FROM standing WHERE key = 'last'",
        "UPDATE standing SET key = 'lost' WHERE key = 'last'",
        "DELETE FROM standing",
        "DELETE FROM total",
    ];
    for sql in spoiled {
        let (_folder, path) = folder();
        made(&path, 60);
        let connection = Connection::open(&path).unwrap();
        assert!(connection.execute(sql, []).unwrap() > 0, "{sql}");
        drop(connection);
        let mut store = Store::open(&path).unwrap();
        let read = read_all(&mut store);
        assert!(matches!(read, Err(StoreError::Spoiled { .. })), "{sql}: {read:?}");
        assert!(store.is_spoiled() && !store.history_is_current(), "{sql}");
        // The log has no part in it.
        assert_eq!(store.verify().unwrap().events, 120, "{sql}");
        assert!(store.differing(&mut Refold(0)).unwrap().differing > 0, "{sql}");
        store.rebuild(&mut Refold(0)).unwrap();
        read_all(&mut store).unwrap();
        let found = store.differing(&mut Refold(0)).unwrap();
        assert!(found.differing == 0 && found.looked_at > 60, "{sql}: {found:?}");
        store.close().unwrap();
        read_all(&mut Store::open(&path).unwrap()).unwrap();
    }
}

#[test]
fn queued_changes_that_do_not_fit_are_not_carried_out() {
    let (_folder, path) = folder();
    let mut store = Store::open(&path).unwrap();
    taps(&mut store, 0..5);
    drop(store);
    let connection = Connection::open(&path).unwrap();
    connection.execute("UPDATE pending SET change = replace(change, '5', '6')", []).unwrap();
    connection.close().unwrap();
    let store = Store::open(&path);
    // The write-ahead log went with that connection, which is known too.
    assert!(matches!(
        store,
        Err(StoreError::Corrupt { damage: Damage::LogMissing { seq: 10 }, .. })
    ));
}

#[test]
fn a_file_that_lost_its_end_is_read_page_by_page() {
    let (folder, path) = folder();
    made(&path, 900);
    let bytes = std::fs::read(&path).unwrap();
    std::fs::write(&path, &bytes[..bytes.len() - PAGE]).unwrap();
    let found = Store::open(&path).and_then(|store| store.verify());
    assert!(matches!(found, Err(StoreError::Corrupt { .. })), "{found:?}");
    let place = Place::file(&path);
    let (store, read) = salvage(&place).unwrap();
    assert!(read.kept > 1_500 && read.last == 1_800, "{read:?}");
    assert_eq!(read.kept_at, Some(AT));
    let aside = take_its_place(store, &place).unwrap();
    assert_eq!(std::fs::read(aside.path()).unwrap(), &bytes[..bytes.len() - PAGE]);
    let store = Store::open(&path).unwrap();
    assert_eq!(store.verify().unwrap().events, read.kept);
    drop(store);
    assert!(folder.path().join("log.barwright.damaged-1").exists());
}

#[test]
fn what_lies_behind_a_lost_page_of_an_index_is_read() {
    let (_folder, path) = folder();
    // Years of entries, so that the log's own tree has inner pages.
    let mut store = Store::open(&path).unwrap();
    let body = format!("{{\"note\":\"{}\"}}", "x".repeat(900));
    let events = vec![NewEvent { kind: "change", version: 1, body: &body }; 1_000];
    for _ in 0..20 {
        store.append(AT, &events, &[], &[]).unwrap();
    }
    store.close().unwrap();
    let whole = std::fs::read(&path).unwrap();
    // SQLite's file format, 1.6: an inner page of a table begins with 5, one of an index with 2.
    let inner: Vec<usize> =
        (1..whole.len() / PAGE).filter(|page| matches!(whole[page * PAGE], 2 | 5)).collect();
    assert!(!inner.is_empty());
    let mut damaged = 0;
    for page in inner {
        let mut bytes = whole.clone();
        bytes[page * PAGE..][..PAGE].fill(0);
        std::fs::write(&path, &bytes).unwrap();
        let found = Store::open(&path).and_then(|store| store.verify());
        damaged += u32::from(matches!(found, Err(StoreError::Corrupt { .. })));
        let (store, read) = salvage(&Place::file(&path)).unwrap();
        assert_eq!((read.kept, read.last, read.beyond), (20_000, 20_000, 0), "page {page}");
        drop(store);
    }
    assert!(damaged > 0);
}

#[test]
fn a_flipped_bit_in_the_header_or_the_schema_costs_nothing() {
    let (_folder, path) = folder();
    made(&path, 200);
    let whole = std::fs::read(&path).unwrap();
    let words = whole.windows(9).position(|bytes| bytes == b"offset_mi").unwrap();
    // The name of the format, the size of pages, how it is read, the version, the id, a word of the
    // schema, the count of its rows, the count of the rows about the store itself.
    let places = [(3, 1), (16, 3), (19, 2), (63, 3), (68, 0), (words, 0), (104, 1), (PAGE + 3, 1)];
    for (at, bit) in places {
        std::fs::write(&path, &whole).unwrap();
        flip(&path, at, bit);
        let found = Store::open(&path).and_then(|store| store.verify());
        assert!(matches!(found, Err(StoreError::Corrupt { .. })), "{at}: {found:?}");
        let place = Place::file(&path);
        let (store, read) = salvage(&place).unwrap();
        assert_eq!((read.kept, read.last, read.beyond), (400, 400, 0), "{at}");
        take_its_place(store, &place).unwrap();
        assert_eq!(Store::open(&path).unwrap().verify().unwrap().events, 400, "{at}");
    }
}

#[test]
fn a_flipped_bit_in_the_log_is_put_right_by_its_checksums() {
    let (_folder, path) = folder();
    let mut store = Store::open(&path).unwrap();
    taps(&mut store, 0..150);
    // A long entry too, most of which lies in pages of its own.
    let sheet = "a sheet with every reason ".repeat(1_500);
    let events = [NewEvent { kind: "change", version: 1, body: &sheet }];
    store.append(AT, &events, &[], &[]).unwrap();
    taps(&mut store, 150..300);
    store.close().unwrap();
    let whole = std::fs::read(&path).unwrap();
    for (from, to) in [("front-squat", "froot-squat"), ("sheet with", "sheet sith")] {
        std::fs::write(&path, &whole).unwrap();
        spoil_entry(&path, from, to);
        let found = Store::open(&path).and_then(|store| store.verify());
        assert!(matches!(found, Err(StoreError::Corrupt { .. })), "{found:?}");
        let (store, read) = salvage(&Place::file(&path)).unwrap();
        assert_eq!((read.kept, read.mended), (601, 1), "{to}");
        drop(store);
    }
}

#[test]
fn a_broken_write_ahead_log_is_known_before_it_is_taken_over() {
    let (folder, path) = folder();
    let mut store = Store::open(&path).unwrap();
    taps(&mut store, 0..20);
    store.checkpoint().unwrap();
    taps(&mut store, 20..40);
    drop(store);
    let (file, log) = (std::fs::read(&path).unwrap(), std::fs::read(log_of(&path)).unwrap());
    let put = || {
        std::fs::write(&path, &file).unwrap();
        std::fs::write(log_of(&path), &log).unwrap();
    };
    // In the header, in a frame's header, in a frame's page; early and late.
    for at in [5, 20, 32 + 10, 32 + 24 + 16_300, 32 + 16_408 * 9 + 20] {
        put();
        flip(&log_of(&path), at, 4);
        let found = Store::open(&path).unwrap_err();
        let StoreError::Corrupt { damage: Damage::LogBroken { seq, last }, .. } = found else {
            panic!("{at}: {found}");
        };
        assert!(seq < 79 && last >= 79, "{at}: {seq} {last}");
        let (store, read) = salvage(&Place::file(&path)).unwrap();
        assert_eq!((read.kept, read.last), (80, 80), "{at}");
        drop(store);
    }
    // Cut at its end: what was not sealed may be gone, and no more than that.
    put();
    std::fs::write(log_of(&path), &log[..log.len() - 16_408 * 2]).unwrap();
    assert!(Store::open(&path).unwrap().last_seq() >= 76);
    // Gone, or empty.
    for gone in [true, false] {
        put();
        if gone {
            std::fs::remove_file(log_of(&path)).unwrap();
        } else {
            std::fs::write(log_of(&path), "").unwrap();
        }
        let damage = Damage::LogMissing { seq: 40 };
        assert_eq!(
            Store::open(&path).unwrap_err(),
            StoreError::Corrupt { path: path.clone(), damage }
        );
    }
    // Beside another file: one that has it all lets it go, one that has not does not.
    let other = folder.path().join("other");
    made(&other, 3);
    std::fs::copy(&other, &path).unwrap();
    std::fs::write(log_of(&path), &log).unwrap();
    let damage = Damage::LogOfAnother;
    assert_eq!(Store::open(&path).unwrap_err(), StoreError::Corrupt { path: path.clone(), damage });
    // Put back, all is there.
    put();
    assert_eq!(Store::open(&path).unwrap().verify().unwrap().events, 80);
}

#[test]
fn a_log_that_was_left_behind_is_put_aside() {
    let (folder, path) = folder();
    let mut store = Store::open(&path).unwrap();
    taps(&mut store, 0..40);
    let copy = folder.path().join("copy");
    store.backup(&copy).unwrap();
    drop(store);
    // As a restore that was cut off leaves it, or a hand that copied over the file.
    std::fs::copy(&copy, &path).unwrap();
    let mut store = Store::open(&path).unwrap();
    assert_eq!(store.verify().unwrap().events, 80);
    read_all(&mut store).unwrap();
    assert!(folder.path().join("log.barwright.left-1-wal").exists());
}

#[test]
fn a_seal_says_how_far_the_log_went() {
    let (_folder, path) = folder();
    let mut store = Store::open(&path).unwrap();
    taps(&mut store, 0..10);
    assert_eq!(store.sealed(), 0);
    store.checkpoint().unwrap();
    assert_eq!(store.sealed(), 20);
    taps(&mut store, 10..12);
    store.close().unwrap();
    let store = Store::open(&path).unwrap();
    assert_eq!(store.sealed(), 24);
    drop(store);
    let connection = Connection::open(&path).unwrap();
    let sql: String = connection
        .query_row("SELECT sql FROM sqlite_schema WHERE name LIKE '%deleted'", [], |row| row.get(0))
        .unwrap();
    connection
        .execute_batch(&format!(
            "DROP TRIGGER event_is_never_deleted; DELETE FROM event WHERE seq > 20;
             UPDATE standing SET seq = 20; {sql}"
        ))
        .unwrap();
    drop(connection);
    let damage = Damage::EndLost { seq: 24 };
    assert_eq!(Store::open(&path).unwrap_err(), StoreError::Corrupt { path: path.clone(), damage });
}

#[test]
fn a_file_that_is_moved_or_replaced_while_open_takes_no_tap() {
    type Act = fn(&Path, &Path);
    let acts: [(&str, Act); 4] = [
        ("renamed", |path, away| std::fs::rename(path, away).unwrap()),
        ("replaced", |path, away| {
            std::fs::rename(path, away).unwrap();
            std::fs::copy(away, path).unwrap();
        }),
        ("its log renamed", |path, away| std::fs::rename(log_of(path), away).unwrap()),
        ("removed", |path, _| std::fs::remove_file(path).unwrap()),
    ];
    for (what, act) in acts {
        let (folder, path) = folder();
        let away = folder.path().join("away");
        let mut store = Store::open(&path).unwrap();
        taps(&mut store, 0..10);
        act(&path, &away);
        let refused = tap(&mut store, 10).unwrap_err();
        assert_eq!(refused, StoreError::Moved { path: path.clone() }, "{what}");
        assert!(matches!(tap(&mut store, 10), Err(StoreError::Closed { .. })), "{what}");
        if what == "renamed" || what == "replaced" {
            // All that was acknowledged went with it.
            let found = Connection::open(&away).unwrap().query_row(
                "SELECT count(*) FROM event",
                [],
                |row| row.get::<_, u64>(0),
            );
            assert_eq!(found.unwrap(), 20, "{what}");
            // Brought back, or opened where it is, it is whole.
            let store = Store::open(&away).unwrap();
            assert_eq!(store.verify().unwrap().events, 20, "{what}");
            drop(store);
        }
        // No new file is made in its place.
        if what == "renamed" || what == "removed" {
            assert_eq!(store.reopen().unwrap_err(), StoreError::Moved { path: path.clone() });
            assert!(!path.exists(), "{what}");
        }
    }
}

#[test]
fn a_file_that_is_written_over_while_open_takes_no_tap() {
    let (folder, path) = folder();
    let mut store = Store::open(&path).unwrap();
    taps(&mut store, 0..10);
    store.checkpoint().unwrap();
    let older = std::fs::read(&path).unwrap();
    taps(&mut store, 10..20);
    store.checkpoint().unwrap();
    taps(&mut store, 20..25);
    // Some file systems count time in steps of several milliseconds.
    std::thread::sleep(std::time::Duration::from_millis(30));
    std::fs::write(&path, older).unwrap();
    assert_eq!(tap(&mut store, 25).unwrap_err(), StoreError::Moved { path: path.clone() });
    drop(folder);
}

#[cfg(unix)]
#[test]
fn a_file_that_cannot_be_written_is_looked_at_and_copied() {
    use std::os::unix::fs::PermissionsExt;
    let (folder, path) = folder();
    let mut store = Store::open(&path).unwrap();
    taps(&mut store, 0..10);
    // While it is open: refused before anything is recorded, and taken again when it can be.
    let mode = |mode| {
        std::fs::set_permissions(&path, std::fs::Permissions::from_mode(mode)).unwrap();
    };
    mode(0o400);
    assert_eq!(tap(&mut store, 10).unwrap_err(), StoreError::ReadOnly { path: path.clone() });
    assert_eq!(store.last_seq(), 20);
    mode(0o600);
    tap(&mut store, 10).unwrap();
    drop(store);
    // With a write-ahead log beside it, whose rows are shown too.
    mode(0o400);
    let before = (std::fs::read(&path).unwrap(), std::fs::read(log_of(&path)).unwrap());
    let why = Store::open(&path).unwrap_err();
    assert_eq!(why, StoreError::ReadOnly { path: path.clone() });
    let mut store = Store::open_to_read(Place::file(&path), why.clone()).unwrap();
    assert!(store.is_read_only());
    assert_eq!(store.verify().unwrap().events, 22);
    read_all(&mut store).unwrap();
    assert_eq!(store.differing(&mut Refold(0)).unwrap().differing, 0);
    assert_eq!(tap(&mut store, 11).unwrap_err(), why);
    let copy = folder.path().join("copy");
    assert_eq!(store.backup(&copy).unwrap().events, 22);
    store.close().unwrap();
    assert_eq!((std::fs::read(&path).unwrap(), std::fs::read(log_of(&path)).unwrap()), before);
    assert_eq!(Store::open(&copy).unwrap().verify().unwrap().events, 22);
}

#[cfg(unix)]
#[test]
fn every_file_is_its_owners_alone() {
    use std::os::unix::fs::PermissionsExt;
    let (folder, path) = folder();
    made(&path, 10);
    // As an earlier release, or a copy, left it.
    std::fs::set_permissions(&path, std::fs::Permissions::from_mode(0o644)).unwrap();
    let mut store = Store::open(&path).unwrap();
    taps(&mut store, 10..20);
    store.backup(&folder.path().join("copy")).unwrap();
    store.keep_backup(folder.path(), Schedule { every: 1, keep: 2 }, 20_000).unwrap();
    drop(store);
    let place = Place::file(&path);
    let (store, _) = salvage(&place).unwrap();
    take_its_place(store, &place).unwrap();
    restored(&folder.path().join("copy"), &place).unwrap();
    let mut seen = 0;
    for file in std::fs::read_dir(folder.path()).unwrap() {
        let file = file.unwrap();
        let mode = file.metadata().unwrap().permissions().mode() & 0o777;
        assert_eq!(mode, 0o600, "{:?}", file.file_name());
        seen += 1;
    }
    assert!(seen >= 6, "{seen}");
}

#[test]
fn backups_are_kept_by_a_schedule_and_restored_when_they_are_whole() {
    let (folder, path) = folder();
    let backups = folder.path().join("backups");
    std::fs::create_dir(&backups).unwrap();
    std::fs::write(backups.join("barwright-notes.txt"), "not ours").unwrap();
    let mut store = Store::open(&path).unwrap();
    let schedule = Schedule { every: 3, keep: 2 };
    let mut made = Vec::new();
    for day in 0..12_u64 {
        taps(&mut store, day * 2..day * 2 + 2);
        let kept = store.keep_backup(&backups, schedule, 20_785 + day as i32).unwrap();
        made.extend(kept.made.map(|(_, verified)| verified.events));
        assert!(kept.days.len() <= 2);
    }
    assert_eq!(made, [4, 16, 28, 40]);
    let names = || {
        let files = std::fs::read_dir(&backups).unwrap();
        let mut names: Vec<_> =
            files.map(|file| file.unwrap().file_name().into_string().unwrap()).collect();
        names.sort();
        names
    };
    let two = ["barwright-2026-12-04.backup", "barwright-2026-12-07.backup"];
    assert_eq!(names(), [two[0], two[1], "barwright-notes.txt"]);
    // A clock that is far ahead delays none.
    std::fs::copy(backups.join(two[0]), backups.join("barwright-2299-01-01.backup")).unwrap();
    assert!(store.keep_backup(&backups, schedule, 20_797).unwrap().made.is_some());

    let place = Place::file(&path);
    let backup = backups.join("barwright-2026-12-10.backup");
    assert_eq!(restored(&backup, &place).unwrap_err(), StoreError::InUse { path: path.clone() });
    store.close().unwrap();
    let whole = std::fs::read(&path).unwrap();
    let copied = std::fs::read(&backup).unwrap();
    // A spoiled backup is not restored.
    spoil_entry(&backup, "front-squat", "froot-squat");
    let refused = restored(&backup, &place).unwrap_err();
    assert!(matches!(refused, StoreError::Corrupt { .. }), "{refused}");
    assert_eq!(std::fs::read(&path).unwrap(), whole);
    std::fs::write(&backup, &copied).unwrap();
    // One in which only derived rows are spoiled is: they are made anew in the copy.
    let connection = Connection::open(&backup).unwrap();
    connection.execute("UPDATE done_set SET helped = helped + 1 WHERE nth = 7", []).unwrap();
    drop(connection);
    restored(&backup, &place).unwrap();
    read_all(&mut Store::open(&path).unwrap()).unwrap();
    std::fs::write(&path, &whole).unwrap();
    std::fs::write(&backup, copied).unwrap();
    let older = backups.join("barwright-2299-01-01.backup");
    let (verified, aside) = restored(&older, &place).unwrap();
    assert_eq!(verified.events, 28);
    assert_eq!(std::fs::read(aside.unwrap().path()).unwrap(), whole);
    let mut store = Store::open(&path).unwrap();
    assert_eq!(store.last_seq(), 28);
    read_all(&mut store).unwrap();
    taps(&mut store, 14..16);
    // What a damaged file held comes back from one too.
    drop(store);
    std::fs::write(&path, "spoiled").unwrap();
    restored(&backup, &place).unwrap();
    assert_eq!(Store::open(&path).unwrap().last_seq(), 48);
}
