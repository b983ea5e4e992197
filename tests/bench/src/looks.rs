//! What a look at a screen costs with ten years of history behind it.

use std::sync::OnceLock;

use barwright_app::contract::{LiftScreen, Look};
use barwright_player::screens;

use crate::clock::{median, micros};
use crate::lifter::Lifter;
use crate::measure::{Measure, Outcome};
use crate::records::{self, Past};

/// One exercise over time.
pub(crate) const LIFT: Measure = Measure {
    name: "lift-ms",
    unit: "ms",
    against: "the Lift screen of the most trained exercise with ten years of history",
    bar: Some(5.0),
    run: || look(|exercise| lift(exercise, false)),
};

/// All its sessions.
pub(crate) const LIFT_WHOLE: Measure = Measure {
    name: "lift-whole-ms",
    unit: "ms",
    against: "the same with all its sessions on one page, as the command prints them",
    bar: Some(50.0),
    run: || look(|exercise| lift(exercise, true)),
};

/// What is on.
pub(crate) const TODAY: Measure = Measure {
    name: "today-ms",
    unit: "ms",
    against: "today's sheet with ten years of history",
    bar: Some(3.0),
    run: today,
};

const TIMES: usize = 41;

fn lift(exercise: &str, all: bool) -> Look {
    Look::Lift { exercise: exercise.to_owned(), page: 0, all }
}

fn shown(lifter: &Lifter, look: Look) -> LiftScreen {
    screens::lift(lifter.player.see(look))
}

/// The exercise with the most sessions, by its slug.
fn most_trained(lifter: &Lifter) -> String {
    static FOUND: OnceLock<String> = OnceLock::new();
    let find = || {
        let others = shown(lifter, lift("", false)).keys;
        let slugs = others.iter().filter_map(|key| key.id.strip_prefix("lift-"));
        let most = slugs.max_by_key(|slug| shown(lifter, lift(slug, true)).sessions.len());
        most.expect("something was trained").to_owned()
    };
    FOUND.get_or_init(find).clone()
}

fn after_ten_years() -> Lifter {
    Lifter::returning(records::open(&records::copy_of(Past::TenYears)))
}

fn look(of: impl Fn(&str) -> Look) -> Outcome {
    let lifter = after_ten_years();
    let exercise = most_trained(&lifter);
    often(|| lifter.player.engine.view(of(&exercise), lifter.now()).expect("it is shown"))
}

fn today() -> Outcome {
    let lifter = after_ten_years();
    often(|| lifter.today())
}

/// The median, once it is warm.
fn often<T>(once: impl Fn() -> T) -> Outcome {
    let took = (0..=TIMES).map(|_| micros(&once)).skip(1).collect();
    Outcome { value: median(took) / 1e3 }
}
