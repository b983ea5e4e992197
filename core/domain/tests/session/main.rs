//! The session through its door: commands in, what stands out.

#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

mod floor;
mod guard;
mod order;
mod parts;
mod rest;
mod undo;

use barwright_domain::call::{Amount, Flow, HowMany, Stop};
use barwright_domain::quantity::{Percent, RepRange, Reserve, Seconds};
use barwright_domain::session::{
    CallLoad, Command, Ending, EntryId, Event, RecordedSet, Refusal, SetId, SetKind,
};
use floor::{Floor, alone, call, entry, kg, left, sheet};

#[test]
fn a_target_is_never_written_down_as_the_lifters_judgement() {
    let mut set = call(1, "100", "5");
    set.effort = Some(left(1, 2));
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Back squat", vec![set]))]));
    floor.racked();
    let done = &floor.run().set(SetId { entry: EntryId(0), set: 0 }).unwrap().parts[0].done;
    assert_eq!((done.left, done.amount, done.ending), (None, Amount::Reps(5), Ending::AsCalled));
}

#[test]
fn what_was_really_on_and_done_is_recorded() {
    let calls = vec![call(1, "100", "5"), call(2, "100", "5")];
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Back squat", calls))]));
    floor.tap(Command::Record(RecordedSet {
        amount: Some(Amount::Reps(4)),
        load: Some(kg("97.5")),
        left: Reserve::from_halves(1),
        ending: Ending::Failed,
        helped: 1,
        last: false,
    }));
    let set = floor.run().set(SetId { entry: EntryId(0), set: 0 }).unwrap();
    let done = &set.parts[0].done;
    assert_eq!(done.load.figure, Some(kg("97.5")));
    assert_eq!((done.ending, done.helped, done.left), (Ending::Failed, 1, Reserve::from_halves(1)));
    // The next set is still called at what the sheet said.
    assert_eq!(floor.called(), kg("100"));
}

#[test]
fn back_offs_follow_the_top_set_that_was_really_done() {
    let mut top = call(1, "150", "3");
    top.kind = SetKind::Top;
    let back = |round| {
        let mut set = call(round, "100", "5");
        (set.kind, set.row) = (SetKind::BackOff, 1);
        set.load = CallLoad::AfterTop { share: Percent::whole(90) };
        set
    };
    let calls = vec![top, back(1), back(2)];
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Deadlift", calls))]));
    floor.tap(Command::Record(RecordedSet { load: Some(kg("120")), ..RecordedSet::default() }));
    // 90 % of the 120 lifted is 108: the nearest of 2.5 kg steps is 107.5.
    assert_eq!(floor.called(), kg("107.5"));
    assert_eq!(floor.run().load_at(&floor.cursor()).unwrap().meant, Some(kg("108")));
    // Put the top set right, and what is still to come of them follows.
    floor.racked();
    floor.tap(Command::Correct {
        set: SetId { entry: EntryId(0), set: 0 },
        part: 0,
        to: RecordedSet { load: Some(kg("150")), ..RecordedSet::default() },
        sure: false,
    });
    assert_eq!(floor.called(), kg("135"));
}

/// A slip of the thumb adds a digit or loses one: it is asked about. Less than nothing can't be lifted.
#[test]
fn a_correction_far_from_what_was_recorded_is_asked_about() {
    let mut floor =
        Floor::begin(sheet(vec![alone(entry(0, "Deadlift", vec![call(1, "100", "5"); 2]))]));
    floor.tap(Command::Record(RecordedSet::default()));
    let correct = |load: &str, sure| Command::Correct {
        set: SetId { entry: EntryId(0), set: 0 },
        part: 0,
        to: RecordedSet { load: Some(kg(load)), ..RecordedSet::default() },
        sure,
    };
    let recorded = kg("100");
    for far in ["1000", "200.5", "49.5", "10", "0"] {
        let refused = floor.try_tap(correct(far, false)).unwrap_err();
        assert_eq!(refused, Refusal::FarFromRecorded { recorded }, "{far}");
    }
    for sure in [false, true] {
        assert_eq!(floor.try_tap(correct("-60", sure)).unwrap_err(), Refusal::BelowNothing);
    }
    floor.tap(correct("50", false));
    floor.tap(correct("200", true));
}

#[test]
fn a_climb_goes_on_until_the_set_is_as_hard_as_asked() {
    let mut first = call(1, "100", "1");
    first.kind = SetKind::Top;
    first.flow = Flow::Climb { to: left(1, 2), step: Percent::whole(5), most: 6 };
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Deadlift", vec![first]))]));
    let called =
        |reps: u8| RecordedSet { left: Reserve::from_halves(reps * 2), ..Default::default() };
    floor.tap(Command::Record(called(4)));
    assert_eq!(floor.called(), kg("105"));
    floor.tap(Command::Record(called(3)));
    assert_eq!(floor.called(), kg("110")); // 110.25 asked
    floor.tap(Command::Record(called(2)));
    assert_eq!(floor.at(), "", "two left is as hard as asked");
}

#[test]
fn a_test_goes_down_after_a_miss_and_stops_at_its_tries() {
    let mut first = call(1, "100", "1");
    first.kind = SetKind::Test;
    first.flow = Flow::Test { step: Percent::whole(5), most: 4 };
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Deadlift", vec![first]))]));
    floor.racked();
    assert_eq!(floor.called(), kg("105"));
    floor.racked();
    assert_eq!(floor.called(), kg("110"));
    floor.tap(Command::Record(RecordedSet {
        amount: Some(Amount::Reps(0)),
        ending: Ending::Failed,
        ..Default::default()
    }));
    assert_eq!(floor.called(), kg("107")); // 2.5 % off 110 = 107.25
    floor.racked();
    assert_eq!(floor.at(), "", "four tries are over");
}

#[test]
fn a_total_takes_as_many_sets_as_it_takes() {
    let mut first = call(1, "60", "12");
    first.flow = Flow::Total { reps: 30, most: 8 };
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Pull-up", vec![first]))]));
    floor.racked();
    floor.reps(10);
    let asked = floor.run().how_many_at(&floor.cursor());
    assert_eq!(asked, Some(HowMany::Reps(RepRange::just(8))), "no more than is left of it");
    floor.reps(7);
    floor.reps(1);
    assert_eq!(floor.at(), "");
}

#[test]
fn a_set_is_repeated_until_it_is_hard() {
    let mut first = call(1, "60", "5");
    first.flow = Flow::Repeat { until: left(0, 1), most: 5 };
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Bench press", vec![first]))]));
    for reps in [4, 2] {
        floor.tap(Command::Record(RecordedSet {
            left: Reserve::from_halves(reps * 2),
            ..Default::default()
        }));
    }
    assert_eq!(floor.at(), "0.2.0");
    floor.tap(Command::Record(RecordedSet { left: Reserve::from_halves(2), ..Default::default() }));
    assert_eq!(floor.at(), "");
}

#[test]
fn a_hold_is_measured_when_its_start_was_said() {
    let mut hold = call(1, "20", "1");
    hold.how_many = HowMany::Seconds(barwright_domain::quantity::Range::just(Seconds::new(30)));
    let calls = vec![hold.clone(), {
        hold.round = 2;
        hold
    }];
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Plank", calls))]));
    floor.tap(Command::Start);
    floor.wait(41);
    floor.racked();
    floor.racked();
    let held =
        |set| floor.run().set(SetId { entry: EntryId(0), set }).unwrap().parts[0].done.amount;
    assert_eq!(held(0), Amount::Seconds(Seconds::new(41)));
    assert_eq!(held(1), Amount::Seconds(Seconds::new(30)));
}

#[test]
fn an_open_set_has_a_floor_and_a_stop_rule() {
    let mut open = call(1, "60", "1");
    open.how_many = HowMany::Open { at_least: 5, stop: Stop::Form };
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Push-up", vec![open]))]));
    floor.reps(17);
    let done = &floor.run().set(SetId { entry: EntryId(0), set: 0 }).unwrap().parts[0].done;
    assert_eq!(done.amount, Amount::Reps(17));
}

#[test]
fn the_load_changes_for_the_sets_left_and_waves_keep_their_shape() {
    let calls = vec![call(1, "100", "5"), call(2, "110", "3"), call(3, "100", "5")];
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Back squat", calls))]));
    let change = |load: &str, only_next| Command::ChangeLoad {
        entry: EntryId(0),
        load: kg(load),
        only_next,
        sure: false,
    };
    floor.tap(change("95", false));
    assert_eq!(floor.called(), kg("95"));
    floor.racked();
    assert_eq!(floor.called(), kg("105"));
    floor.tap(change("107.5", true));
    floor.racked();
    assert_eq!(floor.called(), kg("95"), "only the next one was changed");
    let refused = floor.try_tap(change("95.3", false)).unwrap_err();
    assert_eq!(refused, Refusal::NotExact { nearest: kg("95") });
}

#[test]
fn a_load_far_over_what_is_supported_asks_first() {
    let mut squat = entry(0, "Back squat", vec![call(1, "100", "5")]);
    squat.supported = Some(kg("100"));
    let mut floor = Floor::begin(sheet(vec![alone(squat)]));
    let change = |load: &str, sure| Command::ChangeLoad {
        entry: EntryId(0),
        load: kg(load),
        only_next: false,
        sure,
    };
    floor.tap(change("110", false));
    let refused = floor.try_tap(change("112.5", false)).unwrap_err();
    assert_eq!(refused, Refusal::OverSupported { supported: kg("100") });
    floor.tap(change("112.5", true));
    assert_eq!(floor.called(), kg("112.5"));
}

#[test]
fn nonsense_is_refused_and_changes_nothing() {
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Row", vec![call(1, "60", "5")]))]));
    let set = |amount| Command::Record(RecordedSet { amount: Some(amount), ..Default::default() });
    let before = floor.run().clone();
    for (command, refusal) in [
        (set(Amount::Seconds(Seconds::new(30))), Refusal::WrongKind),
        (set(Amount::Reps(0)), Refusal::NothingDone),
        (set(Amount::Reps(1001)), Refusal::OutOfRange),
        (Command::SkipEntry(EntryId(9)), Refusal::NoSuchEntry),
        (Command::Postpone(EntryId(0)), Refusal::AlreadyThere),
        (Command::Return(EntryId(0)), Refusal::AlreadyThere),
        (Command::RestBy(20), Refusal::NoRest),
        (Command::Resume, Refusal::AlreadySo),
        (Command::Redo, Refusal::NothingToRedo),
        (Command::Note { entry: None, text: " ".into() }, Refusal::BadText),
        (Command::Note { entry: None, text: "x".repeat(2001) }, Refusal::BadText),
    ] {
        assert_eq!(floor.try_tap(command.clone()).unwrap_err(), refusal, "{command:?}");
    }
    floor.now.offset_minutes = 3000;
    assert_eq!(floor.try_tap(Command::SkipSet).unwrap_err(), Refusal::BadReading);
    assert_eq!(floor.run(), &before);
}

#[test]
fn a_session_cut_short_keeps_what_was_done_and_closes_the_open_set() {
    let mut cluster = call(1, "100", "1");
    cluster.structure = barwright_domain::call::Structure::Cluster {
        blocks: vec![2, 2, 2],
        pause: Seconds::new(20),
    };
    let calls = vec![cluster, call(2, "100", "5")];
    let mut floor = Floor::begin(sheet(vec![alone(entry(0, "Back squat", calls))]));
    floor.racked();
    let events = floor.tap(Command::Finish);
    assert!(matches!(events[..], [Event::SetLeft { .. }, Event::Finished { .. }]));
    let run = floor.run();
    assert!(run.finished.is_some() && run.rest.is_none());
    let set = |set| run.set(SetId { entry: EntryId(0), set }).unwrap();
    assert!(set(0).left && set(0).begun() && !set(1).begun());
    assert_eq!(floor.try_tap(Command::SkipSet).unwrap_err(), Refusal::NoSession);
}
