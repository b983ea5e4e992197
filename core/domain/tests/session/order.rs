//! The order of work: skip, swap, postpone, take up, add.

use barwright_domain::call::Structure;
use barwright_domain::quantity::Seconds;
use barwright_domain::session::{
    Block, Command, EntryId, Event, Refusal, SetId, SetKind, SwapCause,
};

use crate::floor::{Floor, alone, call, entry, kg, sheet};

fn two() -> Floor {
    let squat = entry(0, "Back squat", vec![call(1, "100", "5"), call(2, "100", "5")]);
    let row = entry(1, "Row", vec![call(1, "60", "8"), call(2, "60", "8")]);
    Floor::begin(sheet(vec![alone(squat), alone(row)]))
}

#[test]
fn sets_and_exercises_are_left_out() {
    let mut floor = two();
    floor.tap(Command::SkipSet);
    assert_eq!(floor.at(), "0.1.0");
    floor.tap(Command::SkipEntry(EntryId(0)));
    assert_eq!(floor.at(), "1.0.0");
    let refused = floor.try_tap(Command::SkipEntry(EntryId(0))).unwrap_err();
    assert_eq!(refused, Refusal::NothingLeftOf);
}

#[test]
fn an_exercise_is_put_off_and_taken_up_again() {
    let mut floor = two();
    floor.racked();
    floor.tap(Command::Postpone(EntryId(0)));
    assert_eq!(floor.at(), "1.0.0");
    floor.racked();
    floor.tap(Command::Return(EntryId(0)));
    assert_eq!(floor.at(), "0.1.0");
    floor.racked();
    assert_eq!(floor.at(), "1.1.0");
}

#[test]
fn what_is_swapped_in_takes_the_place_and_what_was_done_stays() {
    let mut floor = two();
    floor.racked();
    let leg_press = entry(0, "Leg press", vec![call(1, "120", "10")]);
    floor.tap(Command::Swap { entry: EntryId(0), to: leg_press, cause: SwapCause::Taken });
    assert_eq!((floor.at().as_str(), floor.called()), ("2.0.0", kg("120")));
    floor.racked();
    assert_eq!(floor.at(), "1.0.0");
    let squat = &floor.run().entries[&EntryId(0)];
    assert_eq!(squat.swapped_for, Some(EntryId(2)));
    assert!(squat.sets[0].begun() && !squat.sets[1].begun());
}

#[test]
fn a_set_under_way_is_left_where_it_is() {
    let mut cluster = call(1, "100", "1");
    cluster.structure = Structure::Cluster { blocks: vec![2, 2], pause: Seconds::new(20) };
    let squat = entry(0, "Back squat", vec![cluster, call(2, "100", "5")]);
    let row = entry(1, "Row", vec![call(1, "60", "8")]);
    let mut floor = Floor::begin(sheet(vec![alone(squat), alone(row)]));
    floor.racked();
    let events = floor.tap(Command::Return(EntryId(1)));
    assert!(matches!(events[..], [Event::SetLeft { .. }, Event::Returned { .. }]));
    floor.racked();
    assert_eq!(floor.at(), "0.1.0");
    let set = floor.run().set(SetId { entry: EntryId(0), set: 0 }).unwrap();
    assert!(set.left && set.begun());
}

#[test]
fn ramps_come_first_exercise_by_exercise_then_rounds() {
    let ramp = |figure| {
        let mut set = call(0, figure, "5");
        set.kind = SetKind::Ramp;
        set
    };
    let squat = entry(0, "Squat", vec![ramp("40"), call(1, "100", "5"), call(2, "100", "5")]);
    let row = entry(1, "Row", vec![ramp("30"), call(1, "60", "8"), call(2, "60", "8")]);
    let block = Block {
        entries: vec![squat, row],
        rest_within: Seconds::new(0),
        rest_after_round: Seconds::new(90),
    };
    let mut floor = Floor::begin(sheet(vec![block]));
    let mut order = Vec::new();
    while !floor.at().is_empty() {
        order.push(floor.at());
        floor.racked();
    }
    assert_eq!(order, ["0.0.0", "1.0.0", "0.1.0", "1.1.0", "0.2.0", "1.2.0"]);
}

#[test]
fn one_more_set_is_like_the_last() {
    let mut floor = two();
    floor.racked();
    floor.racked();
    floor.tap(Command::AddSet(EntryId(0)));
    assert_eq!((floor.at().as_str(), floor.called()), ("0.2.0", kg("100")));
    for _ in 0..98 {
        let _ = floor.try_tap(Command::AddSet(EntryId(0)));
    }
    assert_eq!(floor.try_tap(Command::AddSet(EntryId(0))).unwrap_err(), Refusal::TooMany);
}

#[test]
fn recording_while_paused_goes_on() {
    let mut floor = two();
    floor.tap(Command::Pause);
    floor.racked();
    assert!(floor.run().paused.is_none());
}

#[test]
fn a_long_pause_calls_for_one_step_again() {
    let begin = || {
        let squat = entry(0, "Back squat", vec![call(1, "100", "5"), call(2, "100", "5")]);
        let mut sheet = sheet(vec![alone(squat)]);
        sheet.again_after = Some(Seconds::new(720));
        Floor::begin(sheet)
    };
    let after = |mut floor: Floor, seconds| {
        floor.tap(Command::Pause);
        floor.wait(seconds);
        floor.tap(Command::Resume);
        floor
    };
    let mut floor = begin();
    floor.racked();
    // Twelve minutes are no longer than twelve.
    assert_eq!(after(floor, 720).at(), "0.1.0");

    let mut floor = begin();
    floor.racked();
    let mut floor = after(floor, 721);
    assert_eq!((floor.at().as_str(), floor.called()), ("0.2.0", kg("60")));
    assert_eq!(floor.run().set(floor.cursor().set).unwrap().call.kind, SetKind::Ramp);
    // It may be left out, and goes with its tap.
    floor.tap(Command::SkipSet);
    assert_eq!(floor.at(), "0.1.0");
    floor.tap(Command::Undo);
    floor.tap(Command::Undo);
    assert_eq!(floor.at(), "0.1.0");
    assert!(floor.run().paused.is_some());

    // Nothing was begun yet: the ramp is still to come by itself.
    assert_eq!(after(begin(), 900).at(), "0.0.0");
}
