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
    let Ok(Screen::Weeks { weeks }) = engine.view(Look::Weeks, now()) else {
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
    let Ok(Screen::Today { today }) =
        engine.view(Look::Today { session: None, minutes: None }, now())
    else {
        panic!("today is shown")
    };
    assert!(today.subtitle.contains("week 7 of 8"), "{}", today.subtitle);
    assert!(today.needs.is_empty());
    // A second demo never lands on the first.
    assert!(demo::create(&path, "en-GB", &now()).is_err());
}
