//! A rehearsed season through the engine: an invented lifter's taps, tapped on a device, are called the
//! same loads. What is rehearsed is what a lifter will get.

use barwright_app::contract::{HowEnded, Intent, Reading, SwapReason};
use barwright_domain::call::{Amount, Ending};
use barwright_domain::catalogue::Catalogue;
use barwright_domain::equipment::builtin_in;
use barwright_domain::plan::Plan;
use barwright_domain::quantity::{Mass, MassUnit, Numerals};
use barwright_domain::session::Command;
use barwright_player::Player;
use barwright_player::clock::{DAY_MS, wall};
use barwright_player::intents::begin_row;
use barwright_rehearsal::{Tap, tap_by_tap};

/// Every rule, a lift in two sessions, a deload and an ease-in.
const PLAN: &str = r#"
name = "Before the regatta"
weeks = 9

[warm_up]
ramp = "none"

[[week]]
number = 1
kind = "ease-in"

[[week]]
number = 5
kind = "deload"

[[session]]
name = "Legs"
day = "Monday"

[[session.exercise]]
name = "Back squat"
sets = 3
reps = 5
load = "76 %"
rpe = "7-8"
next = ["as planned", "by effort"]

[[session.exercise]]
name = "Overhead press"
sets = 3
reps = 6
load = "37.5 kg"
next = { rule = "add when made", step = "2.5 kg" }

[[session.exercise]]
name = "Pull-up"
sets = 3
reps = "5-8"
load = "body"
next = "more added load"

[[session]]
name = "Pull"
day = "Thursday"

[[session.exercise]]
name = "Overhead press"
sets = 3
reps = 6
load = "37.5 kg"
next = { rule = "add when made", step = "2.5 kg" }

[[session.exercise]]
name = "Floor press"
sets = 3
reps = "6-9"
load = "50 kg"
next = "double progression"

[[session.exercise]]
name = "Plank"
sets = 2
seconds = "30-45 s"
next = "double progression"
"#;

fn write(device: &mut Player, field: &str, mass: Mass) {
    let text = mass.print(MassUnit::Kilogram, Numerals::Point);
    device.dispatch(Intent::Write { field: field.into(), text, sure: true });
}

/// What is called now, in kilograms; help is below nothing.
fn called(device: &Player) -> Option<Mass> {
    let total = device.see_floor(None).bar.total;
    if total.is_empty() || total == "Bodyweight" {
        return (total == "Bodyweight").then_some(Mass::ZERO);
    }
    let figure = total.trim_start_matches('+').split(' ').next()?.trim_start_matches('\u{2212}');
    let mass = Mass::read(&format!("{figure} kg"), Numerals::Point).expect("a figure");
    if total.contains("assistance") { Mass::ZERO.checked_sub(mass) } else { Some(mass) }
}

fn play(device: &mut Player, tap: &Tap) {
    device.now = Reading {
        wall_ms: tap.at.wall_ms,
        offset_minutes: tap.at.offset_minutes,
        boot_ms: tap.at.boot_ms,
        boot_id: tap.at.boot_id.clone(),
    };
    let intent = match &tap.command {
        Command::Begin { .. } => begin_row(&format!("{}.{}", tap.place.0 + 1, tap.place.1 + 1)),
        Command::Record(done) => {
            if let Some(found) = done.load {
                let part = device.see_floor(None).part.expect("a part to do");
                let entry = part.split('.').next().expect("its exercise").to_owned();
                write(device, &format!("load:{entry}"), found);
            }
            Intent::Record {
                part: None,
                amount: done.amount.map(|amount| match amount {
                    Amount::Reps(reps) => u32::from(reps),
                    Amount::Seconds(seconds) => seconds.count(),
                    Amount::Metres(distance) => distance.millimetres(),
                }),
                left_halves: done.left.map(|left| left.halves()),
                ended: match done.ending {
                    Ending::AsCalled => HowEnded::AsCalled,
                    Ending::Failed => HowEnded::Failed,
                    Ending::Form => HowEnded::Form,
                    Ending::Pain => HowEnded::Pain,
                    Ending::Interrupted => HowEnded::Interrupted,
                    Ending::Equipment => HowEnded::Equipment,
                },
                helped: done.helped.into(),
                last: done.last,
            }
        }
        Command::SkipSet => Intent::SkipSet,
        Command::SkipEntry(entry) => Intent::SkipExercise { entry: entry.0.into() },
        Command::Swap { entry, to, .. } => Intent::Swap {
            entry: entry.0.into(),
            exercise: to.exercise.clone(),
            why: SwapReason::Lacking,
        },
        Command::Finish => Intent::Finish,
        other => panic!("no rehearsed lifter taps {other:?}"),
    };
    device.dispatch(intent);
}

#[test]
fn a_rehearsed_season_is_called_the_same_by_the_engine() {
    let plan = Plan::read(PLAN, &Catalogue::builtin()).expect("it has no fault").plan;
    let gym = builtin_in(MassUnit::Kilogram);
    for number in 0..4 {
        let season = tap_by_tap(&plan, &gym, 20_261_128, number);
        let now = wall(i64::from(season.day) * DAY_MS + 36_000_000, 0);
        let mut device = Player::at(now).taking(0);
        write(&mut device, "body-mass", season.body_mass);
        for (lift, mass) in &season.maxes {
            write(&mut device, &format!("max:{lift}"), *mass);
        }
        device.dispatch(Intent::adopt(PLAN));
        let (mut compared, mut loads) = (0, Vec::new());
        for tap in &season.taps {
            if matches!(tap.command, Command::Record(_)) {
                device.now.wall_ms = tap.at.wall_ms;
                let called = called(&device);
                assert_eq!(
                    called,
                    tap.load,
                    "lifter {number}, {:?}: {:?}",
                    tap.place,
                    device.see_floor(None)
                );
                compared += 1;
                loads.extend(called);
            }
            play(&mut device, tap);
        }
        loads.sort();
        loads.dedup();
        assert!(compared > 100 && loads.len() > 8, "{compared} sets at {} loads", loads.len());
    }
}
