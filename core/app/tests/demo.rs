//! The demo, as a lifter finds it.

use barwright_app::contract::{Look, Reading, Screen};
use barwright_app::demo;
use barwright_player::Player;
use barwright_player::clock::wall;

fn now() -> Reading {
    // Tuesday, 24 November 2026.
    wall(1_795_510_800_000, 60)
}

#[test]
fn six_weeks_lie_behind_and_the_seventh_is_on() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("demo.barwright");
    let engine = demo::create(&path, "en-GB", &now()).expect("the demo is made");
    let player = Player::on(engine, now());
    let weeks = player.see_weeks();
    let done: usize = weeks.weeks.iter().flat_map(|week| &week.rows).filter(|row| row.done).count();
    let missed: Vec<&str> = weeks
        .weeks
        .iter()
        .flat_map(|week| &week.rows)
        .filter(|row| row.warns)
        .map(|row| row.id.as_str())
        .collect();
    assert_eq!((done, missed.as_slice()), (17, ["3.3"].as_slice()));
    let today = player.see_today();
    assert!(today.subtitle.contains("week 7 of 8"), "{}", today.subtitle);
    assert!(today.needs.is_empty());
    // A second demo never lands on the first.
    assert!(demo::create(&path, "en-GB", &now()).is_err());
}

#[test]
fn lift_and_balance_have_six_weeks_behind_them() {
    let player = Player::on(demo::play("en-GB", &now()).expect("the demo is played"), now());
    let lift = player.see_lift("back squat");
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
    let Screen::Balance { balance } = player.see(look) else { panic!("the balance is shown") };
    let quads = balance.bars.iter().find(|bar| bar.muscle == "Quadriceps").expect("legs are done");
    assert!(quads.planned_halves > 0 && quads.done_halves > 0);
}
