//! A plan mended is the same plan.

use barwright_domain::call::Amount;
use barwright_domain::desk::Shared;

use crate::play::{Season, plan, reps, work};

const ROW: &str = r#"
    [[session.exercise]]
    name = "Barbell row"
    sets = 2
    reps = "8-10"
    load = "60 kg"
    ramp = "none"
    next = "double progression"
    "#;

fn two_days() -> String {
    plan(&["Monday", "Friday"], ROW)
}

/// Five steps and an aim are there after one cue was added.
#[test]
fn a_cue_changes_nothing() {
    let text = two_days();
    let mut season = Season::new(&text);
    for week in 1..=3 {
        season.session(week, 1, &[("barbell-row", &[reps(10), reps(10)])]);
    }
    season.session(3, 2, &[("barbell-row", &[reps(9), reps(8)])]);
    assert_eq!(season.load(4, 1, "barbell-row"), "67.5");
    let cued = text.replacen("ramp = \"none\"", "ramp = \"none\"\ncues = [\"elbows back\"]", 1);
    season.adopt(&cued, true);
    for index in [1, 2] {
        assert_eq!(season.load(4, index, "barbell-row"), "67.5");
        assert_eq!(work(&season.entry(4, index, "barbell-row"))[0].aim, Some(Amount::Reps(9)));
    }
    // Once more, unchanged, and with a session put before it.
    season.adopt(&cued, true);
    let moved = cued.replacen(
        "[[session]]\n",
        "[[session]]\nname = \"Saturday walk\"\n[[session.exercise]]\nname = \"Plank\"\nsets = \
         1\nseconds = 30\n[[session]]\n",
        1,
    );
    season.adopt(&moved, true);
    assert_eq!(season.load(4, 2, "barbell-row"), "67.5");
}

/// A number that is written anew is the newest word: a clean sheet, with neither aim nor misses.
#[test]
fn a_new_number_starts_anew() {
    let text = plan(&["Monday"], ROW);
    let mut season = Season::new(&text);
    season.session(1, 1, &[("barbell-row", &[reps(10), reps(10)])]);
    season.session(2, 1, &[("barbell-row", &[reps(7), reps(7)])]);
    season.adopt(&text.replace("60 kg", "55 kg"), true);
    assert_eq!(season.load(3, 1, "barbell-row"), "55");
    assert_eq!(work(&season.entry(3, 1, "barbell-row"))[0].aim, None);
    season.session(3, 1, &[("barbell-row", &[reps(10), reps(10)])]);
    assert_eq!(season.load(4, 1, "barbell-row"), "57.5");
}

/// Of two rows that share a track one gets another number: that one alone, or both, as is asked.
#[test]
fn one_of_several_is_asked_about() {
    let text = two_days();
    let one = text.replacen("60 kg", "50 kg", 1);
    let start = || {
        let mut season = Season::new(&text);
        season.session(1, 1, &[("barbell-row", &[reps(10), reps(10)])]);
        season
    };
    let mut season = start();
    season.adopt(&one, true);
    assert_eq!(
        (season.load(2, 1, "barbell-row"), season.load(2, 2, "barbell-row")),
        ("50".into(), "62.5".into())
    );
    season.session(2, 1, &[("barbell-row", &[reps(10), reps(10)])]);
    assert_eq!(season.load(2, 2, "barbell-row"), "62.5");
    let mut season = start();
    season.adopt_taking(&one, true, Shared::All);
    assert_eq!(
        (season.load(2, 1, "barbell-row"), season.load(2, 2, "barbell-row")),
        ("50".into(), "50".into())
    );
}

/// Another plan starts by its own numbers, and goes on from what was found by feel.
#[test]
fn another_plan_starts_by_its_own_numbers() {
    let curl = "[[session.exercise]]\nname = \"Dumbbell curl\"\nsets = 2\nreps = 9\n";
    let mut season = Season::new(&plan(&["Monday"], &format!("{ROW}{curl}")));
    season.session(
        1,
        1,
        &[
            ("barbell-row", &[reps(10), reps(10)]),
            ("dumbbell-curl", &[reps(9).with("12.5"), reps(9).with("12.5")]),
        ],
    );
    let other = plan(&["Tuesday"], &format!("{ROW}{curl}")).replace("Winter block", "Spring block");
    season.adopt(&other, false);
    assert_eq!(season.load(1, 1, "barbell-row"), "60");
    assert_eq!(season.load(1, 1, "dumbbell-curl"), "12.5");
}

/// A key joins rows that are written otherwise, and parts those that are written alike.
#[test]
fn a_key_joins_and_parts() {
    let keyed = |one: &str, two: &str| {
        let day = |name: &str, sets: u8, key: &str| {
            format!(
                "[[session]]\nname = \"{name}\"\nday = \"{name}\"\n[[session.exercise]]\nname = \"Barbell \
                 row\"\nsets = {sets}\nreps = 8\nload = \"60 kg\"\nramp = \"none\"\nnext = \"add when \
                 made\"\n{key}\n"
            )
        };
        format!("name = \"Keys\"\nweeks = 4\n{}{}", day("Monday", 3, one), day("Friday", 2, two))
    };
    let key = "track = \"row\"";
    let mut season = Season::new(&keyed(key, key));
    season.session(1, 1, &[]);
    assert_eq!(season.load(1, 2, "barbell-row"), "62.5");
    let mut season = Season::new(&keyed("", ""));
    season.session(1, 1, &[]);
    assert_eq!(season.load(1, 2, "barbell-row"), "60");
}
