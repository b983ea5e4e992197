//! What guards a lifter under a bar: when it is asked, and what is called without it.

use barwright_domain::call::{Amount, Flow, HowMany, Stop, Structure};
use barwright_domain::quantity::{Percent, RepRange, Reps, Reserve, Seconds};
use barwright_domain::session::{
    Because, Call, CallLoad, Command, Ending, Entry, EntryId, Event, Expected, Guard, Reason,
    RecordedSet, SetId, SetKind,
};

use crate::floor::{Floor, alone, call, entry, kg, left, sheet};

fn under_a_bar(calls: Vec<Call>) -> Entry {
    Entry { over_body: true, ..entry(0, "Bench press", calls) }
}

fn on(entry: Entry) -> Floor {
    Floor::begin(sheet(vec![alone(entry)]))
}

fn asked(entry: Entry) -> bool {
    let floor = on(entry);
    let run = &floor.run().entries[&EntryId(0)];
    run.asks_guard(&run.sets[0])
}

fn say(floor: &mut Floor, guard: Guard) -> Vec<Event> {
    floor.tap(Command::GuardedBy { entry: EntryId(0), guard })
}

fn of_max(share: i32) -> Reason {
    let (share, max) = (Percent::from_hundredths(share), kg("100"));
    let gives = share.of(max).unwrap();
    Reason(vec![Because::ShareOfMax { share, max, day: 0, of: None, gives }])
}

fn single(figure: &str) -> Call {
    let mut single = call(1, figure, "1");
    single.kind = SetKind::Test;
    single.flow = Flow::Test { step: Percent::whole(5), most: 4 };
    single
}

fn test_of(max: &str) -> Entry {
    let region = barwright_domain::catalogue::Region::Upper;
    let test = Some(Expected { max: Some(kg(max)), region });
    Entry { test, ..under_a_bar(vec![single("92.5")]) }
}

fn open(at_least: Reps, stop: Stop) -> Call {
    Call { how_many: HowMany::Open { at_least, stop }, ..call(1, "60", "8") }
}

#[test]
fn it_is_asked_within_two_of_failure_and_when_it_is_heavy() {
    let plain = || call(1, "60", "8");
    let with = |from, to| Call { effort: Some(left(from, to)), ..plain() };
    // RPE 8 leaves two.
    for (call, asks) in [
        (plain(), false),
        (with(2, 3), true),
        (with(0, 1), true),
        (with(3, 4), false),
        (
            Call {
                flow: Flow::Climb { to: left(2, 2), step: Percent::whole(5), most: 5 },
                ..plain()
            },
            true,
        ),
        (
            Call {
                flow: Flow::Climb { to: left(4, 5), step: Percent::whole(5), most: 5 },
                ..plain()
            },
            false,
        ),
        (Call { flow: Flow::Repeat { until: left(1, 1), most: 5 }, ..plain() }, true),
        (Call { structure: Structure::Drop { off: vec![Percent::whole(20)] }, ..plain() }, true),
        (open(6, Stop::Form), true),
        (open(6, Stop::Pace), true),
        (open(6, Stop::Reserve(Reserve::from_halves(4).unwrap())), true),
        (open(6, Stop::Reserve(Reserve::from_halves(6).unwrap())), false),
        (single("92.5"), true),
        (Call { kind: SetKind::Ramp, effort: Some(left(0, 0)), ..plain() }, false),
        // Three with three left are six to failure: 85 % by the table.
        (Call { effort: Some(left(3, 3)), ..call(1, "60", "3") }, true),
    ] {
        assert_eq!(asked(under_a_bar(vec![call.clone()])), asks, "{call:?}");
        assert!(!asked(entry(0, "Barbell row", vec![call])), "no bar over the body");
    }
}

#[test]
fn a_cluster_at_85_percent_and_more_is_heavy() {
    let blocks = Structure::Cluster { blocks: vec![2, 2], pause: Seconds::new(20) };
    for (share, figure, asks) in
        [(8_000, "80", false), (8_400, "83.5", false), (8_500, "85", true), (9_000, "90", true)]
    {
        let cluster =
            Call { structure: blocks.clone(), reason: of_max(share), ..call(1, figure, "4") };
        assert_eq!(asked(under_a_bar(vec![cluster])), asks, "{share}");
    }
    // The lifter's own change to a load counts by the load.
    let light = Call { reason: of_max(7_000), ..call(1, "70", "4") };
    let mut floor = on(under_a_bar(vec![light]));
    floor.tap(Command::ChangeLoad {
        entry: EntryId(0),
        load: kg("87.5"),
        only_next: false,
        sure: true,
    });
    let run = &floor.run().entries[&EntryId(0)];
    assert!(run.asks_guard(&run.sets[0]));
}

#[test]
fn without_pins_or_spotter_a_test_becomes_one_set_with_two_in_reserve() {
    let mut floor = on(test_of("100"));
    say(&mut floor, Guard::Neither);
    let set = floor.run().set(SetId { entry: EntryId(0), set: 0 }).unwrap().clone();
    assert_eq!((set.call.kind, set.call.flow), (SetKind::Work, Flow::Listed));
    assert_eq!(set.call.how_many, HowMany::Reps(RepRange { from: 3, to: 5 }));
    assert_eq!(set.call.effort, Some(left(2, 2)));
    // Five with two left are seven to failure: 83 % (NSCA Essentials, Table 17.7, published).
    assert_eq!(floor.called(), kg("82.5"));
    let CallLoad::Known(load) = &set.call.load else { panic!() };
    assert_eq!(load.meant, Some(kg("83")));
    assert!(set.call.reason.0.contains(&Because::Unguarded));
    floor.reps(5);
    assert_eq!(floor.at(), "", "nothing beyond is offered");
    assert!(floor.run().offers().is_empty());
}

#[test]
fn pins_bring_the_test_back_and_undo_does() {
    let mut floor = on(test_of("100"));
    let before = floor.run().clone();
    say(&mut floor, Guard::Neither);
    say(&mut floor, Guard::Pins);
    let at = SetId { entry: EntryId(0), set: 0 };
    assert_eq!(floor.run().set(at), before.set(at));
    let mut floor = on(test_of("100"));
    say(&mut floor, Guard::Neither);
    floor.tap(Command::Undo);
    assert_eq!(floor.run().set(at), before.set(at));
}

#[test]
fn no_single_follows_once_nothing_guards() {
    let mut floor = on(test_of("100"));
    floor.racked();
    assert_eq!(floor.run().entries[&EntryId(0)].sets.len(), 2, "a second single was called");
    say(&mut floor, Guard::Neither);
    assert_eq!(floor.at(), "", "what is left of the test is left out");
}

#[test]
fn an_open_set_stops_with_two_in_reserve() {
    let mut floor = on(under_a_bar(vec![open(8, Stop::Form)]));
    say(&mut floor, Guard::Neither);
    let stop = Stop::Reserve(Reserve::from_halves(4).unwrap());
    let asked = floor.run().how_many_at(&floor.cursor());
    assert_eq!(asked, Some(HowMany::Open { at_least: 6, stop }));
    // Said twice it is no lower, and one more is called the same.
    say(&mut floor, Guard::Neither);
    floor.tap(Command::AddSet(EntryId(0)));
    let asked: Vec<_> =
        floor.run().entries[&EntryId(0)].sets.iter().map(|set| set.call.how_many).collect();
    assert_eq!(asked, [HowMany::Open { at_least: 6, stop }; 2]);
}

#[test]
fn efforts_and_climbs_keep_two_in_reserve() {
    let mut first = call(1, "60", "3");
    first.kind = SetKind::Top;
    first.effort = Some(left(0, 1));
    first.flow = Flow::Climb { to: left(0, 1), step: Percent::whole(5), most: 6 };
    let mut floor = on(under_a_bar(vec![first]));
    let called = |halves| RecordedSet { left: Reserve::from_halves(halves), ..Default::default() };
    floor.tap(Command::Record(called(8)));
    // Said in the middle of the climb.
    say(&mut floor, Guard::Neither);
    let cursor = floor.cursor();
    assert_eq!(floor.run().effort_at(cursor.set), Some(left(2, 2)));
    floor.tap(Command::Record(called(4)));
    assert_eq!(floor.at(), "", "two left is as far as it goes");

    // What holds no bar over the body is as it was.
    let hard = Call { effort: Some(left(0, 1)), ..call(1, "60", "8") };
    let mut floor = on(entry(0, "Barbell row", vec![hard]));
    assert_eq!(say(&mut floor, Guard::Neither).len(), 1);
    assert_eq!(floor.run().effort_at(floor.cursor().set), Some(left(0, 1)));
}

#[test]
fn a_set_that_is_under_way_is_left_alone() {
    let mut cluster = call(1, "60", "4");
    cluster.effort = Some(left(0, 1));
    cluster.structure = Structure::Cluster { blocks: vec![2, 2], pause: Seconds::new(20) };
    let mut floor = on(under_a_bar(vec![cluster.clone()]));
    floor.tap(Command::Record(RecordedSet {
        amount: Some(Amount::Reps(2)),
        ending: Ending::AsCalled,
        ..Default::default()
    }));
    assert_eq!(say(&mut floor, Guard::Neither).len(), 1);
    assert_eq!(floor.at(), "0.0.1");
}
