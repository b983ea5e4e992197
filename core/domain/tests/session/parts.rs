//! Sets made of parts: each part is a tap of its own.

use barwright_domain::call::{
    Amount, ContinuedPart, HowMany, LoadCall, RangePart, Side, Structure,
};
use barwright_domain::quantity::{Percent, RepRange, Seconds};
use barwright_domain::session::{Call, Command, Ending, EntryId, RecordedSet, SetId};

use crate::floor::{Floor, alone, call, entry, kg, load, sheet, sides};

fn with(structure: Structure, reps: &str) -> Call {
    let mut set = call(1, "100", reps);
    set.structure = structure;
    set
}

fn on(set: Call) -> Floor {
    Floor::begin(sheet(vec![alone(entry(0, "Back squat", vec![set, call(2, "100", "5")]))]))
}

fn reps_of(floor: &Floor, set: u16) -> Vec<u16> {
    floor.run().set(SetId { entry: EntryId(0), set }).unwrap().done_reps()
}

fn cluster() -> Structure {
    Structure::Cluster { blocks: vec![2, 2, 2, 1], pause: Seconds::new(20) }
}

#[test]
fn a_cluster_is_a_tap_a_block_with_its_pause_between() {
    let mut floor = on(with(cluster(), "7"));
    for (at, rest) in [("0.0.1", 20), ("0.0.2", 20), ("0.0.3", 20), ("0.1.0", 180)] {
        floor.racked();
        assert_eq!((floor.at().as_str(), floor.rest()), (at, Some(rest)));
        floor.wait(25);
    }
    assert_eq!(reps_of(&floor, 0), [2, 2, 2, 1]);
}

#[test]
fn a_block_that_falls_short_ends_the_cluster() {
    let mut floor = on(with(cluster(), "7"));
    floor.racked();
    floor.reps(1);
    assert_eq!(floor.at(), "0.1.0");
    assert_eq!(reps_of(&floor, 0), [2, 1]);
}

#[test]
fn rest_pause_ends_at_its_total_a_cap_or_a_miss() {
    let structure =
        |total, most| Structure::RestPause { pause: Seconds::new(15), each: 3, total, most };
    // To a total: the last short part asks only for what is left.
    let mut floor = on(with(structure(Some(17), 6), "10"));
    floor.racked();
    assert_eq!(floor.rest(), Some(15));
    floor.racked();
    floor.racked();
    assert_eq!(floor.run().how_many_at(&floor.cursor()), Some(HowMany::Reps(RepRange::just(1))));
    floor.racked();
    assert_eq!((reps_of(&floor, 0), floor.at()), (vec![10, 3, 3, 1], "0.1.0".to_owned()));
    // To a cap.
    let mut floor = on(with(structure(None, 2), "10"));
    for _ in 0..3 {
        floor.racked();
    }
    assert_eq!(reps_of(&floor, 0), [10, 3, 3]);
    // To a miss; an opening part of any size goes on.
    let mut floor = on(with(structure(None, 5), "10"));
    floor.reps(8);
    floor.reps(2);
    assert_eq!((reps_of(&floor, 0), floor.at()), (vec![8, 2], "0.1.0".to_owned()));
    // To a word.
    let mut floor = on(with(structure(None, 5), "10"));
    floor.racked();
    floor.tap(Command::Record(RecordedSet { last: true, ..Default::default() }));
    assert_eq!(floor.at(), "0.1.0");
}

#[test]
fn a_drop_takes_its_share_off_what_was_really_on() {
    let mut set = with(Structure::Drop { off: vec![Percent::whole(20), Percent::whole(20)] }, "10");
    set.part_loads = vec![load("80"), load("65")];
    let mut floor = on(set.clone());
    floor.racked();
    assert_eq!((floor.called(), floor.rest()), (kg("80"), None), "no rest before a drop");
    floor.reps(6);
    assert_eq!(floor.called(), kg("65"));
    floor.reps(4);
    assert_eq!(floor.at(), "0.1.0");
    // Another load to begin with: 90 less 20 % is 72.
    let mut floor = on(set);
    floor.tap(Command::Record(RecordedSet { load: Some(kg("90")), ..Default::default() }));
    assert_eq!(floor.called(), kg("72"));
}

#[test]
fn ranges_follow_one_another_without_rest() {
    let part = |name: &str, reps| RangePart { name: name.into(), reps: RepRange::just(reps) };
    let parts = vec![part("whole", 9), part("from the stretch to halfway", 4)];
    let mut floor = on(with(Structure::Ranges { parts }, "9"));
    floor.racked();
    assert_eq!((floor.at().as_str(), floor.rest()), ("0.0.1", None));
    floor.reps(3);
    assert_eq!(reps_of(&floor, 0), [9, 3]);
}

#[test]
fn a_set_goes_on_in_an_easier_variation() {
    let parts = vec![ContinuedPart {
        exercise: "push-up".into(),
        load: LoadCall::Body,
        how_many: HowMany::Open { at_least: 1, stop: barwright_domain::call::Stop::Form },
        pause: Some(Seconds::new(10)),
    }];
    let mut set = with(Structure::Continued { parts }, "8");
    set.part_loads = vec![load("20")];
    let mut floor = on(set);
    floor.racked();
    assert_eq!((floor.called(), floor.rest()), (kg("20"), Some(10)));
    floor.reps(12);
    assert_eq!(reps_of(&floor, 0), [8, 12]);
}

#[test]
fn pain_ends_the_set_whatever_was_to_come() {
    let mut floor = on(with(cluster(), "7"));
    floor.tap(Command::Record(RecordedSet {
        amount: Some(Amount::Reps(1)),
        ending: Ending::Pain,
        ..Default::default()
    }));
    assert_eq!(floor.at(), "0.1.0");
}

#[test]
fn the_weaker_sides_reps_limit_the_stronger() {
    let calls = sides(vec![call(1, "30", "8-12"), call(2, "30", "8-12")], Side::Left);
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Split squat", calls))]));
    floor.reps(9);
    assert_eq!(floor.rest(), Some(30), "the rest between sides");
    let asked = floor.run().how_many_at(&floor.cursor());
    assert_eq!(asked, Some(HowMany::Reps(RepRange { from: 8, to: 9 })));
    floor.reps(9);
    assert_eq!((floor.at().as_str(), floor.rest()), ("0.2.0", Some(180)));
}
