//! Rest that starts by itself, tells the truth, and ends when the next set is recorded.

use barwright_domain::call::Flow;
use barwright_domain::quantity::Seconds;
use barwright_domain::session::{Block, Command, EntryId, Event, Refusal, SetId};

use crate::floor::{Floor, alone, call, entry, sheet};

fn three() -> Floor {
    let calls = vec![call(1, "100", "5"), call(2, "100", "5"), call(3, "100", "5")];
    Floor::begin(sheet(vec![alone(entry(0, "Back squat", calls))]))
}

#[test]
fn it_begins_with_a_part_and_ends_with_the_next() {
    let mut floor = three();
    assert_eq!(floor.rest(), None);
    floor.racked();
    floor.wait(200);
    assert_eq!(floor.rest(), Some(-20), "over, by how much");
    floor.racked();
    assert_eq!(floor.rest(), Some(180));
    let set = floor.run().set(SetId { entry: EntryId(0), set: 1 }).unwrap();
    let (rest, left_ms) = set.parts[0].rest_before.clone().unwrap();
    assert_eq!((rest.length_ms, left_ms), (180_000, -20_000));
    floor.wait(60);
    floor.racked();
    assert_eq!(floor.rest(), None, "nothing to rest for");
}

#[test]
fn it_is_made_shorter_and_longer_but_never_undone() {
    let mut floor = three();
    floor.racked();
    floor.wait(60);
    floor.tap(Command::RestBy(20));
    assert_eq!(floor.rest(), Some(140));
    floor.tap(Command::RestBy(-600));
    assert_eq!(floor.rest(), Some(0), "over now, not before it began");
    floor.tap(Command::RestBy(9000));
    assert_eq!(floor.rest(), Some(3600 - 60), "an hour at the most");
    assert_eq!(floor.try_tap(Command::RestBy(20)).unwrap_err(), Refusal::OutOfRange);
}

#[test]
fn a_superset_rests_within_and_after_the_round() {
    let row = entry(0, "Row", vec![call(1, "60", "8"), call(2, "60", "8")]);
    let press = entry(1, "Press", vec![call(1, "40", "8"), call(2, "40", "8"), call(3, "40", "8")]);
    let block = Block {
        entries: vec![row, press],
        rest_within: Seconds::new(15),
        rest_after_round: Seconds::new(90),
    };
    let mut floor = Floor::begin(sheet(vec![block]));
    for (now, rest) in [("1.0.0", 15), ("0.1.0", 90), ("1.1.0", 15), ("1.2.0", 90)] {
        floor.racked();
        assert_eq!((floor.at().as_str(), floor.rest()), (now, Some(rest)));
    }
    floor.racked();
    assert_eq!((floor.at().as_str(), floor.rest()), ("", None));
}

#[test]
fn a_clock_counts_from_start_to_start() {
    let calls = (1..=3)
        .map(|round| {
            let mut set = call(round, "60", "2");
            set.flow = Flow::Clock { every: Seconds::new(60) };
            set
        })
        .collect();
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Power clean", calls))]));
    floor.tap(Command::Start);
    floor.wait(9);
    floor.racked();
    assert_eq!(floor.rest(), Some(51));
    // The second set starts when the clock says, and took twelve seconds.
    floor.wait(51 + 12);
    floor.racked();
    assert_eq!(floor.rest(), Some(48));
    let set = floor.run().set(SetId { entry: EntryId(0), set: 1 }).unwrap();
    let started = set.started.clone().unwrap();
    assert_eq!(floor.now.wall_ms - started.wall_ms, 12_000);
}

#[test]
fn after_a_restart_it_goes_on_with_what_remained() {
    let mut floor = three();
    floor.racked();
    floor.wait(60);
    floor.now.boot_id = Some("second".into());
    floor.now.boot_ms = Some(4_000);
    assert_eq!(floor.rest(), Some(120));
    let events = floor.tap(Command::Wake);
    assert!(matches!(events[..], [Event::RestRebased { .. }]));
    // From here on the new boot's clock rules, whatever is done to the wall clock.
    floor.wait(30);
    floor.now.wall_ms += 3_600_000;
    assert_eq!(floor.rest(), Some(90));
    assert_eq!(floor.tap(Command::Wake), [], "nothing to put right within one boot");
    // The lifter's own last tap is what an undo takes back.
    floor.tap(Command::Undo);
    assert_eq!((floor.at().as_str(), floor.rest()), ("0.0.0", None));
}
