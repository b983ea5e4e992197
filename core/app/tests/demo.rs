//! The demo, as a lifter finds it.

use barwright_app::contract::{Look, Reading, Screen};
use barwright_app::demo;

fn now() -> Reading {
    // Tuesday, 24 November 2026.
    Reading { wall_ms: 1_795_510_800_000, offset_minutes: 60, boot_ms: None, boot_id: None }
}

#[test]
fn six_weeks_lie_behind_and_the_seventh_is_on() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("demo.barwright");
    let engine = demo::create(&path, "en-GB", &now()).expect("the demo is made");
    let Screen::Weeks { weeks } = engine.view(Look::Weeks, now()).unwrap().screen else {
        panic!("the weeks are shown")
    };
    let done: usize = weeks.weeks.iter().flat_map(|week| &week.rows).filter(|row| row.done).count();
    let missed: Vec<&str> = weeks
        .weeks
        .iter()
        .flat_map(|week| &week.rows)
        .filter(|row| row.warns)
        .map(|row| row.id.as_str())
        .collect();
    assert_eq!((done, missed.as_slice()), (17, ["3.3"].as_slice()));
    let Screen::Today { today } =
        engine.view(Look::Today { session: None, minutes: None }, now()).unwrap().screen
    else {
        panic!("today is shown")
    };
    assert!(today.subtitle.contains("week 7 of 8"), "{}", today.subtitle);
    assert!(today.needs.is_empty());
    // A second demo never lands on the first.
    assert!(demo::create(&path, "en-GB", &now()).is_err());
}

#[test]
fn lift_and_balance_have_six_weeks_behind_them() {
    let engine = demo::play("en-GB", &now()).expect("the demo is played");
    let look = Look::Lift { exercise: "back squat".into(), page: 0, all: false };
    let Screen::Lift { lift } = engine.view(look, now()).unwrap().screen else {
        panic!("the lift is shown")
    };
    assert_eq!(lift.sessions.len(), 6);
    let chart = lift.chart.expect("six sessions are enough for a chart");
    assert!(chart.series.iter().all(|series| {
        series.points.iter().all(|point| {
            (chart.across.from..=chart.across.to).contains(&point.x)
                && point.low >= chart.up.from
                && point.high <= chart.up.to
        })
    }));
    assert!(!lift.records.is_empty());
    let look = Look::Balance { weeks: Some(4) };
    let Screen::Balance { balance } = engine.view(look, now()).unwrap().screen else {
        panic!("the balance is shown")
    };
    let quads = balance.bars.iter().find(|bar| bar.muscle == "Quadriceps").expect("legs are done");
    assert!(quads.planned_halves > 0 && quads.done_halves > 0);
}
