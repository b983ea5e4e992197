//! The plan as weeks by the engine: dates, and what is arranged otherwise, by the keys of the screen.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use barwright_app::contract::{Action, EngineError, Intent, Key, Reading, Row, Screen};
use barwright_player::Player;
use barwright_player::clock::{DAY_MS, wall};

/// Monday 2 March 2026, 18:00 in a zone an hour ahead of UTC.
const MONDAY_EVENING: i64 = 1_772_470_800_000;

/// Two sessions a week, Tuesday and Friday, for four weeks.
const PLAN: &str = r#"
name = "Off-season"
weeks = 4

[[session]]
name = "Legs"
day = "Tuesday"

[[session.exercise]]
name = "Back squat"
sets = 1
reps = 5
load = "60 kg"
next = { rule = "double progression", step = "2.5 kg" }
ramp = "none"

[[session]]
name = "Push"
day = "Friday"

[[session.exercise]]
name = "Bench press"
sets = 1
reps = 5
load = "40 kg"
next = { rule = "double progression", step = "2.5 kg" }
ramp = "none"
"#;

fn set_up() -> Player {
    Player::at(wall(MONDAY_EVENING, 60)).taking(60).takes_up(PLAN)
}

fn row(lifter: &Player, id: &str) -> Row {
    let mut rows = lifter.see_weeks().weeks.into_iter().flat_map(|week| week.rows);
    rows.find(|row| row.id == id).unwrap()
}

fn state(lifter: &Player, id: &str) -> String {
    row(lifter, id).detail
}

/// Taps a key of a row.
fn press(lifter: &mut Player, at: &str, key: &str) {
    let row = row(lifter, at);
    let key = row.keys.iter().find(|one| one.id == key);
    press_key(lifter, key.unwrap_or_else(|| panic!("{key:?} of {row:?}")));
}

fn press_key(lifter: &mut Player, key: &Key) {
    let Action::Do { intent, .. } = &key.action else { panic!("{key:?}") };
    let screen = lifter.dispatch(intent.clone());
    assert!(matches!(screen, Screen::Weeks { .. }), "a tap of the list shows it again");
}

/// Taken up on a Monday: Tuesday the 3rd, Friday the 6th, and a week later again.
#[test]
fn each_session_has_its_date_and_says_when_it_is_late() {
    let mut lifter = set_up();
    let weeks = lifter.see_weeks();
    assert_eq!(weeks.subtitle, "week 1 of 4, next Legs, Tue 3 Mar");
    assert_eq!(state(&lifter, "1.2"), "Fri 6 Mar");
    assert_eq!(state(&lifter, "4.2"), "Fri 27 Mar");
    lifter.days(1);
    assert_eq!(state(&lifter, "1.1"), "next, Tue 3 Mar, today");
    lifter.days(2);
    assert_eq!(lifter.see_weeks().subtitle, "week 1 of 4, next Legs, Tue 3 Mar, 2 days late");
    lifter.train(None);
    assert_eq!(state(&lifter, "1.1"), "Thu 5 Mar");
    assert!(row(&lifter, "1.1").done);
    assert_eq!(lifter.see_weeks().subtitle, "week 1 of 4, next Push, Fri 6 Mar");
}

/// A date is a day of the calendar: neither a change of zone nor of summer time (29 March 2026, in
/// the last week) moves one.
#[test]
fn dates_survive_another_zone_and_summer_time() {
    let mut lifter = set_up();
    let all = |lifter: &Player| -> Vec<String> {
        let weeks = lifter.see_weeks().weeks.into_iter().flat_map(|week| week.rows);
        weeks.map(|row| row.detail).collect()
    };
    let before = all(&lifter);
    for offset in [120, 0, -300, 720, -600] {
        // The same evening by the clock of that place.
        let moved = (60 - i64::from(offset)) * 60_000;
        lifter.now = Reading {
            wall_ms: MONDAY_EVENING + moved,
            offset_minutes: offset,
            ..lifter.now.clone()
        };
        assert_eq!(all(&lifter), before, "{offset}");
    }
    // Four weeks on, with the clock an hour ahead, the last Friday is that Friday still.
    lifter.now = Reading {
        wall_ms: MONDAY_EVENING + 27 * DAY_MS,
        offset_minutes: 120,
        ..lifter.now.clone()
    };
    assert_eq!(state(&lifter, "4.2"), "Fri 27 Mar");
    // 23:30 on Thursday at home is Friday five hours further east: what is trained there is of Friday.
    let mut lifter = set_up();
    lifter.now.wall_ms += 3 * DAY_MS + 5 * 3_600_000 + 1_800_000;
    lifter.now.offset_minutes = 360;
    lifter.train(Some("1.2"));
    assert_eq!(state(&lifter, "1.2"), "Fri 6 Mar");
    lifter.now.offset_minutes = -300;
    assert_eq!(state(&lifter, "1.2"), "Fri 6 Mar");
}

#[test]
fn missed_left_out_and_made_up() {
    let mut lifter = set_up();
    lifter.days(4);
    lifter.train(Some("1.2"));
    assert_eq!(state(&lifter, "1.1"), "missed, Tue 3 Mar");
    assert!(row(&lifter, "1.1").warns);
    assert_eq!(lifter.see_weeks().subtitle, "week 2 of 4, next Legs, Tue 10 Mar");
    // Made up: it comes before the next, and then it is done.
    press(&mut lifter, "1.1", "again");
    assert!(lifter.see_weeks().subtitle.starts_with("week 1 of 4, next Legs"));
    lifter.days(1);
    lifter.train(None);
    assert_eq!(state(&lifter, "1.1"), "Sat 7 Mar");
    // Left out on purpose is no miss, and can be brought back.
    press(&mut lifter, "2.1", "leave-out");
    assert_eq!(state(&lifter, "2.1"), "skipped");
    assert!(!row(&lifter, "2.1").warns);
    assert_eq!(lifter.see_weeks().subtitle, "week 2 of 4, next Push, Fri 13 Mar");
    press(&mut lifter, "2.1", "bring-back");
    assert_eq!(lifter.see_weeks().subtitle, "week 2 of 4, next Legs, Tue 10 Mar");
}

/// Moved past Friday, Legs comes after Push; back on its own day it comes first again.
#[test]
fn moved_to_another_day() {
    let mut lifter = set_up();
    for _ in 0..4 {
        press(&mut lifter, "1.1", "later");
    }
    assert_eq!(state(&lifter, "1.1"), "moved to Sat 7 Mar");
    assert_eq!(lifter.see_weeks().subtitle, "week 1 of 4, next Push, Fri 6 Mar");
    press(&mut lifter, "1.1", "own-day");
    assert_eq!(state(&lifter, "1.1"), "next, Tue 3 Mar");
    press(&mut lifter, "1.2", "today");
    assert_eq!(state(&lifter, "1.2"), "next, moved to Mon 2 Mar, today");
    let called = lifter.train(None);
    assert_eq!(called, ["Bench press 40 kg"]);
    assert_eq!(state(&lifter, "1.1"), "next, Tue 3 Mar");
}

/// Joined, both are done in one evening; each goes on from it the next time.
#[test]
fn joined_sessions_are_done_together_and_each_goes_on_from_it() {
    let mut lifter = set_up();
    press(&mut lifter, "1.1", "join");
    assert_eq!(state(&lifter, "1.1"), "with Push");
    assert_eq!(lifter.see_weeks().subtitle, "week 1 of 4, next Push, Fri 6 Mar");
    press(&mut lifter, "1.1", "apart");
    assert_eq!(state(&lifter, "1.1"), "next, Tue 3 Mar");
    press(&mut lifter, "1.1", "join");
    lifter.days(4);
    assert_eq!(lifter.train(None), ["Bench press 40 kg", "Back squat 60 kg"]);
    assert_eq!(state(&lifter, "1.1"), "Fri 6 Mar, with Push");
    // All five done of five asked: both step on by 2.5 kg.
    lifter.days(4);
    assert_eq!(lifter.train(None), ["Back squat 62.5 kg"]);
    lifter.days(3);
    assert_eq!(lifter.train(None), ["Bench press 42.5 kg"]);
}

#[test]
fn done_once_more() {
    let mut lifter = set_up();
    lifter.days(1);
    lifter.train(None);
    lifter.days(3);
    lifter.train(None);
    press(&mut lifter, "1.2", "again");
    assert_eq!(state(&lifter, "1.2"), "repeat");
    press(&mut lifter, "1.2", "not-again");
    assert_eq!(state(&lifter, "1.2"), "Fri 6 Mar");
    press(&mut lifter, "1.2", "again");
    lifter.days(1);
    lifter.train(None);
    assert_eq!(state(&lifter, "1.2"), "Sat 7 Mar");
    assert_eq!(lifter.see_weeks().subtitle, "week 2 of 4, next Legs, Tue 10 Mar");
}

/// A week away: what comes after it comes a week later.
#[test]
fn a_week_away() {
    let mut lifter = set_up();
    press(&mut lifter, "2.1", "travel");
    let weeks = lifter.see_weeks();
    assert_eq!(weeks.weeks[1].title, "Week 2, after 1 week away");
    assert_eq!(state(&lifter, "1.2"), "Fri 6 Mar");
    assert_eq!(state(&lifter, "2.1"), "Tue 17 Mar");
    assert_eq!(state(&lifter, "4.2"), "Fri 3 Apr");
    press(&mut lifter, "2.1", "no-travel");
    assert_eq!(state(&lifter, "2.1"), "Tue 10 Mar");
}

/// Entered in the middle: what comes before is not owed; the dates run from today. Gone back to, a
/// week is done anew.
#[test]
fn entered_in_the_middle_and_a_week_done_anew() {
    let mut lifter = set_up();
    press(&mut lifter, "3.1", "enter");
    assert_eq!(lifter.see_weeks().subtitle, "week 3 of 4, next Legs, Tue 3 Mar");
    assert_eq!(state(&lifter, "1.1"), "before you began");
    assert!(!row(&lifter, "1.1").warns);
    assert_eq!(state(&lifter, "4.2"), "Fri 13 Mar");
    lifter.days(1);
    lifter.train(None);
    lifter.days(3);
    lifter.train(None);
    assert_eq!(lifter.see_weeks().subtitle, "week 4 of 4, next Legs, Tue 10 Mar");
    lifter.days(3);
    press(&mut lifter, "3.1", "enter");
    assert_eq!(lifter.see_weeks().subtitle, "week 3 of 4, next Legs, Tue 10 Mar");
    assert_eq!(state(&lifter, "3.2"), "Fri 13 Mar");
}

/// A second plan is started and the first kept: gone back to, it goes on where it stood, with its
/// own history; and the second is kept too.
#[test]
fn a_second_plan_and_back_to_the_first() {
    let mut lifter = set_up();
    lifter.days(1);
    lifter.train(None);
    let second = PLAN.replace("Off-season", "Spring").replace("60 kg", "50 kg");
    lifter.dispatch(Intent::adopt(second));
    assert_eq!(lifter.see_weeks().title, "Spring");
    lifter.days(14);
    let key = lifter.see_weeks().keys.iter().find(|key| key.label == "Back to Off-season").cloned();
    press_key(&mut lifter, &key.unwrap());
    let weeks = lifter.see_weeks();
    assert_eq!(weeks.title, "Off-season");
    // 17 March is a Tuesday: the next Friday is the 20th.
    assert_eq!(weeks.subtitle, "week 1 of 4, next Push, Fri 20 Mar");
    assert_eq!(state(&lifter, "1.1"), "Tue 3 Mar");
    assert!(weeks.keys.iter().any(|key| key.label == "Back to Spring"), "{:?}", weeks.keys);
    lifter.train(None);
    // All five of five: a step on; a fortnight off since then takes nothing from what was done today.
    assert_eq!(lifter.train(None), ["Back squat 62.5 kg"]);
}

#[test]
fn nonsense_is_refused() {
    use barwright_app::contract::Arrange;
    let mut lifter = set_up();
    let arrange = |session: &str, how| Intent::Arrange { session: session.into(), how };
    let join = |with: &str| Arrange::Join { with: Some(with.into()) };
    for intent in [
        arrange("9.1", Arrange::Enter),
        arrange("1.1", join("1.1")),
        arrange("1.1", join("7.7")),
        arrange("1.1", Arrange::Move { day: Some(1_000_000) }),
        Intent::TakeUpPlan { plan: "99".into() },
        Intent::TakeUpPlan { plan: "x".into() },
    ] {
        assert!(
            matches!(lifter.try_dispatch(intent.clone()), Err(EngineError::Refused { .. })),
            "{intent:?}"
        );
    }
    lifter.dispatch(arrange("1.1", join("1.2")));
    assert!(lifter.try_dispatch(arrange("1.2", join("2.1"))).is_err(), "no chains");
    assert!(lifter.try_dispatch(arrange("2.1", join("1.1"))).is_err(), "no chains");
    lifter.begin();
    assert!(lifter.try_dispatch(Intent::TakeUpPlan { plan: "1".into() }).is_err());
}
