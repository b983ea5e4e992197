//! Pain stands until a session without it.

use barwright_domain::owners::{Cutting, Why};
use barwright_domain::quantity::Percent;
use barwright_domain::session::{Because, Command, Ending, Reading};

use crate::play::{DAY_MS, Season, as_called, kg, meant, of, plan, why, work};

const PRESS: &str = r#"
    [[session.exercise]]
    name = "Overhead press"
    sets = 4
    reps = 6
    load = "50 kg"
    ramp = "none"
    next = "add when made"
    "#;

/// Three sets, each heavier than the one before.
const ASCENDING: &str = r#"
    [[session.exercise]]
    name = "Overhead press"
    reps = 6
    load = ["50 kg", "60 kg", "70 kg"]
    ramp = "none"
    "#;

fn answer(season: &mut Season, free: bool) {
    let mut at = Reading {
        wall_ms: i64::from(season.lifter.today) * DAY_MS + 80_000_000,
        offset_minutes: 0,
        boot_ms: None,
        boot_id: None,
    };
    season.tap(&mut at, &Command::AnswerPain { exercise: "overhead-press".to_owned(), free });
    season.settle();
}

/// Pain in every set of a week, ten days without, a deload: the load stays under the plan's own, and
/// neither the days nor the deload clear it.
#[test]
fn neither_weeks_nor_a_deload_clear_it() {
    let text = plan(&["Monday"], PRESS) + "[[week]]\nnumber = 3\nkind = \"deload\"\n";
    let mut season = Season::new(&text);
    let sore: Vec<_> = (0..4).map(|_| as_called().ended(Ending::Pain)).collect();
    let hurt = season.session(1, 1, &[("overhead-press", &sore)]);
    assert_eq!(of(&hurt, "care").why, Why::Pain);
    // A tenth under what hurt: 45.
    assert_eq!(season.load(2, 1, "overhead-press"), "45");
    season.session(2, 1, &[("overhead-press", &sore)]);
    // It hurt at 45: a tenth under that.
    assert_eq!(season.load(3, 1, "overhead-press"), "40");
    season.days(10);
    season.session(3, 1, &[]);
    answer(&mut season, true);
    // A lighter week's session clears nothing.
    let entry = season.entry(4, 1, "overhead-press");
    assert!(why(&entry).iter().any(|why| matches!(
        why,
        Because::Cut { cut, .. } if matches!(cut.why, Cutting::Pain { .. })
    )));
    assert!(season.load(4, 1, "overhead-press").parse::<f64>().unwrap() <= 41.0);
}

/// Half the work sets of an ordinary session and "no pain": from then on at most a tenth more a
/// session, and no step until the owner's own load is back.
#[test]
fn it_comes_back_by_a_tenth_a_session() {
    let mut season = Season::of(&["Monday"], PRESS);
    season.session(1, 1, &[("overhead-press", &[as_called().ended(Ending::Pain)])]);
    season.session(2, 1, &[]);
    assert_eq!(season.load(3, 1, "overhead-press"), "45");
    // Not answered: it stands.
    season.session(3, 1, &[]);
    answer(&mut season, true);
    let entry = season.entry(4, 1, "overhead-press");
    // 0.9 · 1.1 = 0.99 of 50.
    assert_eq!(meant(work(&entry)[0]), Some(kg("49.5")));
    season.session(4, 1, &[]);
    assert_eq!(season.load(5, 1, "overhead-press"), "50");
    season.session(5, 1, &[]);
    assert_eq!(season.load(6, 1, "overhead-press"), "52.5");
}

#[test]
fn no_max_is_tested_while_it_stands() {
    let text = plan(&["Monday"], PRESS)
        + "[[session]]\nname = \"Test\"\nday = \"Friday\"\n[[session.exercise]]\nname = \"Overhead \
           press\"\nload = \"90 %\"\ntest = { step = \"2.5 %\" }\n[[session.exercise]]\nname = \"Plank\"\nsets = \
           1\nseconds = 30\n";
    let mut season = Season::new(&text);
    season.max("overhead-press", "60");
    assert_eq!(season.sheet(1, 2).entries().count(), 2);
    season.session(1, 1, &[("overhead-press", &[as_called().ended(Ending::Pain)])]);
    let left: Vec<String> =
        season.sheet(1, 2).entries().map(|entry| entry.exercise.clone()).collect();
    assert_eq!(left, ["plank"]);
}

/// The lifter says that it is of the joint: what else works it is careful too.
#[test]
fn a_joint_has_more_than_one_exercise() {
    let both = PRESS.to_owned()
        + "[[session.exercise]]\nname = \"Bench press\"\nsets = 2\nreps = 6\nload = \"80 kg\"\nramp = \
           \"none\"\n[[session.exercise]]\nname = \"Leg press\"\nsets = 2\nreps = 6\nload = \"100 kg\"\nramp = \
           \"none\"\n";
    let mut season = Season::of(&["Monday"], &both);
    season.session(1, 1, &[("overhead-press", &[as_called().ended(Ending::Pain)])]);
    assert_eq!(season.load(2, 1, "bench-press"), "80");
    let mut at = Reading {
        wall_ms: i64::from(season.lifter.today) * DAY_MS,
        offset_minutes: 0,
        boot_ms: None,
        boot_id: None,
    };
    let exercise = "overhead-press".to_owned();
    season.tap(&mut at, &Command::PainOfJoint { exercise, of_joint: true });
    season.settle();
    // A tenth under its own 80, whatever load hurt in the other.
    assert_eq!(season.load(2, 1, "bench-press"), "72");
    assert_eq!(season.load(2, 1, "leg-press"), "100");
}

/// What the plan has heavier than the set that hurt is called no heavier than that, less a tenth
/// (common practice).
#[test]
fn no_set_of_a_row_is_heavier_than_a_tenth_under_what_hurt() {
    let mut season = Season::of(&["Monday"], ASCENDING);
    let sore = [as_called().ended(Ending::Pain)];
    season.session(1, 1, &[("overhead-press", &sore)]);
    assert_eq!(season.loads(2, 1, "overhead-press"), ["45", "45", "45"]);
    // It was the last that hurt: those before it keep their distance, a tenth less each.
    let mut season = Season::of(&["Monday"], ASCENDING);
    let last = [as_called(), as_called(), as_called().ended(Ending::Pain)];
    season.session(1, 1, &[("overhead-press", &last)]);
    let entry = season.entry(2, 1, "overhead-press");
    let called: Vec<_> = work(&entry).into_iter().map(meant).collect();
    assert_eq!(called, ["45", "54", "63"].map(|load| Some(kg(load))));
}

/// The load after pain in week 1 is no more than nine tenths of what hurt, whatever plates there are.
fn is_bounded(weeks: &str) {
    let mut lighter = 0;
    for hurt in 50..90 {
        let text = plan(&["Monday"], &PRESS.replace("50 kg", &format!("{hurt} kg"))) + weeks;
        let mut season = Season::new(&text);
        let on = season.load(1, 1, "overhead-press");
        season.session(1, 1, &[("overhead-press", &[as_called().ended(Ending::Pain)])]);
        let entry = season.entry(2, 1, "overhead-press");
        let most = Percent::whole(90).of(kg(&on)).unwrap();
        let called = meant(work(&entry)[0]).unwrap();
        let made = kg(&season.load(2, 1, "overhead-press"));
        assert!(made <= called && called <= most, "{on}: {called:?}, made {made:?}");
        lighter += u32::from(made < called);
    }
    assert!(lighter > 0, "every load could be made as it was called");
}

/// A tenth under is a bound: no plate that is there makes more of it.
#[test]
fn what_the_gym_makes_of_it_is_not_more() {
    is_bounded("");
}

/// So it is where something else takes as much off, and is what counts.
#[test]
fn a_deload_makes_no_more_of_it() {
    is_bounded("[[week]]\nnumber = 2\nkind = \"deload\"\n");
}
