//! Undo: an event that names the tap it takes back.

use barwright_domain::call::Structure;
use barwright_domain::quantity::Seconds;
use barwright_domain::session::{Command, EntryId, Refusal, SetId};

use crate::floor::{Floor, alone, call, entry, sheet};

fn squat() -> Floor {
    let mut cluster = call(1, "100", "1");
    cluster.structure = Structure::Cluster { blocks: vec![2, 2, 2], pause: Seconds::new(20) };
    let calls = vec![cluster, call(2, "100", "5")];
    Floor::begin(sheet(vec![alone(entry(0, "Back squat", calls))]))
}

#[test]
fn undoing_a_part_brings_its_rest_back_as_it_stood() {
    let mut floor = squat();
    floor.racked();
    floor.wait(12);
    floor.racked();
    floor.wait(3);
    floor.tap(Command::Undo);
    // Fifteen of the first pause's twenty seconds are over.
    assert_eq!((floor.at().as_str(), floor.rest()), ("0.0.1", Some(5)));
}

#[test]
fn undoing_an_undo_brings_it_back_with_its_first_times() {
    let mut floor = squat();
    floor.racked();
    floor.wait(5);
    floor.racked();
    let before = floor.run().clone();
    floor.wait(40);
    floor.tap(Command::Undo);
    floor.wait(40);
    floor.tap(Command::Redo);
    let mut after = floor.run().clone();
    // Only the last reading differs; the part keeps the time it was recorded at.
    assert_eq!(after.seen, floor.now);
    after.seen = before.seen.clone();
    assert_eq!(after, before);
}

#[test]
fn it_goes_back_to_the_beginning_and_over_the_end() {
    let mut floor = squat();
    floor.racked();
    floor.racked();
    floor.tap(Command::Finish);
    for at in ["0.0.2", "0.0.1", "0.0.0"] {
        floor.tap(Command::Undo);
        assert_eq!(floor.at(), at);
    }
    floor.tap(Command::Undo);
    assert!(floor.state.run().is_none(), "even its beginning");
    assert_eq!(floor.try_tap(Command::Undo).unwrap_err(), Refusal::NothingToUndo);
    for _ in 0..4 {
        floor.tap(Command::Redo);
    }
    assert!(floor.run().finished.is_some());
    assert_eq!(floor.try_tap(Command::Redo).unwrap_err(), Refusal::NothingToRedo);
}

#[test]
fn a_new_tap_ends_what_can_be_brought_back() {
    let mut floor = squat();
    floor.racked();
    floor.racked();
    floor.tap(Command::Undo);
    floor.reps(1);
    assert_eq!(floor.try_tap(Command::Redo).unwrap_err(), Refusal::NothingToRedo);
    let set = floor.run().set(SetId { entry: EntryId(0), set: 0 }).unwrap();
    assert_eq!(set.done_reps(), [2, 1]);
    // Both the tap and the undo before it are in the log; only the tap can go.
    floor.tap(Command::Undo);
    floor.tap(Command::Undo);
    assert_eq!(floor.at(), "0.0.0");
}

#[test]
fn undo_and_redo_alternate_without_end() {
    let mut floor = squat();
    floor.racked();
    for _ in 0..3 {
        floor.tap(Command::Undo);
        assert_eq!(floor.at(), "0.0.0");
        floor.tap(Command::Redo);
        assert_eq!(floor.at(), "0.0.1");
    }
}
