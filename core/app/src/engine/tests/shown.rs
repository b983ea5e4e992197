//! Screens made of facts alone: no store, no engine.

use std::collections::BTreeMap;

use barwright_domain::desk::{At, Desk, DeskEvent, TrainedAt, calendar};
use barwright_domain::history::Rows;
use barwright_domain::prescribe::{Lifter, Source, sheet};
use barwright_domain::session::{Command, Reading, Stamped, State, decide};

use crate::contract::{Draft, Look, Screen};
use crate::engine::demo;
use crate::facts::{Balance, Facts, Held, LaidOut, Of, TallyOf, Today, Weeks};
use crate::locale::Locale;
use crate::screens::{show, wakes_at};

fn at(minute: i64) -> Reading {
    Reading {
        wall_ms: 1_795_000_000_000 + minute * 60_000,
        offset_minutes: 60,
        boot_ms: None,
        boot_id: None,
    }
}

/// A desk with the demo's plan on it.
fn desk() -> Desk {
    let mut desk = Desk::default();
    let day = at(0).local_day();
    desk.apply(
        1,
        &DeskEvent::PlanAdopted {
            text: demo::PLAN.into(),
            name: "Demo".into(),
            day,
            rows: Vec::new(),
            said: Vec::new(),
        },
    );
    desk
}

fn held(state: State) -> Held {
    Held::new(Locale::read("en-GB"), desk(), state)
}

fn laid_out(held: &Held) -> LaidOut {
    let plan = held.plan.as_deref().expect("it is on");
    let (gym, catalogue) = (held.gym(), &held.catalogue);
    let adopted = Some(1);
    let source =
        Source { plan, adopted, at: At { week: 1, session: 1 }, catalogue, equipment: &gym };
    let lifter = Lifter { desk: desk(), today: at(0).local_day(), ..Lifter::default() };
    let laid = sheet(source, &lifter).expect("the plan has it");
    LaidOut { sheet: laid.sheet, needs: laid.needs, left_out: Vec::new() }
}

/// A session of the demo's plan that runs.
fn running() -> State {
    let still = held(State::default());
    let command = Command::Begin {
        sheet: laid_out(&still).sheet,
        equipment: still.gym(),
        body_mass: None,
        paper: None,
    };
    let events = decide(&State::default(), &command, &at(1)).expect("it begins");
    let stamped = |(seq, event)| Stamped { seq, tap: 2, at: at(1), event };
    State::replay((2..).zip(events).map(stamped).collect())
}

fn look() -> Look {
    Look::Today { session: None, minutes: None }
}

#[test]
fn today_is_shown_from_a_sheet() {
    let held = held(State::default());
    let plan = held.plan.as_deref().expect("it is on");
    let laid_out = laid_out(&held);
    let needs = laid_out.needs.len();
    let today = Today { plan, place: At { week: 1, session: 1 }, laid_out, behind: 0 };
    let (now, words) = (at(0), held.locale.words());
    let facts = Facts { held: &held, at: &now, of: Of::Today(today) };
    let Screen::Today { today } = show(&facts, &look(), words) else { panic!("today") };
    assert_eq!(today.title, "Monday: squat and press");
    assert!(today.subtitle.contains("week 1 of 8 (ease-in)"), "{}", today.subtitle);
    assert!(today.needs.len() == needs && needs > 0 && !today.cautions.is_empty());
    // At the next midnight of the lifter's, an hour ahead of UTC.
    let wakes = wakes_at(&facts, &look()).expect("it goes by the day");
    assert_eq!((wakes + 3_600_000) % 86_400_000, 0);
}

#[test]
fn the_floor_and_its_tally_are_shown_from_a_session() {
    let held = held(running());
    let run = held.state.running().expect("it runs");
    let (now, words) = (at(2), held.locale.words());
    let floor = Facts { held: &held, at: &now, of: Of::Floor(run) };
    let draft = Draft { panel: Some("more".to_owned()), ..Draft::default() };
    let Screen::Floor { floor } = show(&floor, &Look::Floor { draft }, words) else {
        panic!("the floor")
    };
    assert_eq!(floor.part.as_deref(), Some("0.0.0@2"));
    assert!(floor.panel.is_some_and(|panel| panel.keys.iter().any(|key| key.id == "skip-set")));
    let of = TallyOf { run, came: Vec::new(), maxes: Vec::new() };
    let tally = Facts { held: &held, at: &now, of: Of::Tally(of) };
    let Screen::Tally { tally } = show(&tally, &Look::Tally, words) else { panic!("the tally") };
    assert!(tally.subtitle.ends_with("so far"), "{}", tally.subtitle);
    assert!(tally.done.iter().all(|row| !row.done));
    assert_eq!(held.rows.sets, Rows::default().sets);
}

#[test]
fn weeks_and_balance_are_shown_from_a_calendar() {
    let held = held(State::default());
    let plan = held.plan.as_deref().expect("it is on");
    let day = at(0).local_day();
    let trained = [TrainedAt { at: At { week: 1, session: 1 }, day, session: 7 }];
    let calendar = calendar(plan, day, &held.desk.arranged(), &trained);
    let (now, words) = (at(0), held.locale.words());
    let of = Balance { plan, calendar: calendar.clone(), span: (1, 1), done: BTreeMap::new() };
    let balance = Facts { held: &held, at: &now, of: Of::Balance(of) };
    let Screen::Balance { balance } = show(&balance, &Look::Balance { weeks: None }, words) else {
        panic!("balance")
    };
    // The first session was due, and nothing of it counted.
    assert!(balance.bars.iter().any(|bar| bar.behind), "{:?}", balance.bars);
    let weeks = Facts { held: &held, at: &now, of: Of::Weeks(Weeks { plan, calendar }) };
    let Screen::Weeks { weeks } = show(&weeks, &Look::Weeks, words) else { panic!("weeks") };
    let first = &weeks.weeks[0].rows;
    assert!(first[0].done && !first[1].done);
    assert!(first[1].detail.starts_with("next"), "{:?}", first[1]);
}

#[test]
fn nothing_on_is_shown_from_nothing() {
    let held = Held::new(Locale::read("nl-NL"), Desk::default(), State::default());
    let now = at(0);
    let facts = Facts { held: &held, at: &now, of: Of::NothingOn };
    let Screen::Today { today } = show(&facts, &look(), held.locale.words()) else {
        panic!("today")
    };
    assert_eq!(today.title, "No plan");
    assert_eq!(wakes_at(&facts, &look()), None);
}
