//! How long it takes, and what to leave out.

use barwright_domain::prescribe::{LeftOut, duration, fit_minutes};

use crate::desk::Table;

fn seconds(body: &str) -> u64 {
    duration(&Table::of(&format!("[[session.exercise]]\n{body}")).week(0).sheet).total()
}

#[test]
fn seconds_by_hand() {
    // A minute to set up (common practice); three sets of ten at 3 s a repetition; rests of 60 s.
    // The last set has no rest after it.
    assert_eq!(
        seconds("name = \"Push-up\"\nsets = 3\nreps = 10\nrest = \"60 s\""),
        60 + 3 * 90 - 60
    );
    // 4-2-X-0: an X counts a second, so seven a repetition.
    let tempo = "name = \"Push-up\"\nsets = 1\nreps = 4\ntempo = \"4-2-X-0\"\nrest = \"0 s\"";
    assert_eq!(seconds(tempo), 60 + 28);
    assert_eq!(seconds("name = \"Plank\"\nsets = 2\nseconds = 45\nrest = \"30 s\""), 60 + 150 - 30);
    // Start to start, whatever rest stands beside it; the last takes its own 15 s.
    let clock = "name = \"Push-up\"\nsets = 10\nreps = 5\nevery = \"60 s\"";
    assert_eq!(seconds(clock), 60 + 540 + 15);
    // Both sides at 24 s with 30 s between and 90 s after.
    let sides = "name = \"One-leg bridge\"\nsets = 2\nreps = 8\n\
                 rest = { after_set = \"90 s\", between_sides = \"30 s\" }";
    assert_eq!(seconds(sides), 60 + 2 * (24 + 30 + 24 + 90) - 60);
    // A total of 30 by tens takes three sets.
    let total =
        "name = \"Push-up\"\nreps = 10\ntotal = { reps = 30, most_sets = 5 }\nrest = \"0 s\"";
    assert_eq!(seconds(total), 60 + 3 * 30);
}

#[test]
fn rests_of_a_round_are_shared() {
    let body = r#"
        [[session.exercise]]
        name = "Push-up"
        superset = "pair"
        sets = 2
        reps = 10
        rest = { in_superset = "20 s", after_superset = "90 s" }
        [[session.exercise]]
        name = "Bodyweight squat"
        superset = "pair"
        sets = 2
        reps = 10
        "#;
    // Two rounds of 30 + 20 + 30 with 90 between, and a minute to set up each.
    assert_eq!(duration(&Table::of(body).week(0).sheet).total(), 120 + 2 * 80 + 90);
}

#[test]
fn plates_are_changed_while_resting() {
    let rest = |rest: u32| {
        let body = format!(
            "name = \"Hip thrust\"\nsets = 2\nreps = 5\nload = [\"180 kg\", \"30 kg\"]\nramp = \
             \"none\"\nrest = \"{rest} s\""
        );
        seconds(&body)
    };
    // 80 a side are 25 + 25 + 25 + 5: four plates at 5 s, in the rest after the first set.
    assert_eq!(rest(0), 60 + 15 + 20 + 15);
    assert_eq!(rest(60), 60 + 15 + 60 + 15);
}

/// From one exercise to the next the longer of its rest and of setting up, once.
#[test]
fn setting_up_lies_in_the_rest() {
    let two = |rest: u32| {
        seconds(&format!(
            "name = \"Push-up\"\nsets = 1\nreps = 10\nrest = \"{rest} s\"\n[[session.exercise]]\n\
             name = \"Bodyweight squat\"\nsets = 1\nreps = 10\nrest = \"{rest} s\""
        ))
    };
    assert_eq!((two(30), two(90)), (60 + 30 + 60 + 30, 60 + 30 + 90 + 30));
}

const SESSION: &str = r#"
    [[session.exercise]]
    name = "Push-up"
    sets = 5
    reps = 10
    rest = "60 s"
    [[session.exercise]]
    name = "Bodyweight squat"
    sets = 4
    reps = 10
    rest = "60 s"
    [[session.exercise]]
    name = "Plank"
    optional = true
    sets = 3
    seconds = 60
    rest = "30 s"
    [[session.exercise]]
    name = "One-leg bridge"
    sets = 3
    reps = 10
    rest = "60 s"
    "#;

#[test]
fn what_is_left_out_and_in_which_order() {
    let sheet = Table::of(SESSION).week(0).sheet;
    // 60 + 5 × 30 + 4 × 60; each of the others begins with the rest of the one before.
    let all = duration(&sheet);
    assert_eq!(all.entries, [450, 360, 300, 390]);
    assert_eq!(fit_minutes(&sheet, 25), (sheet.clone(), Vec::new()));
    let left_out = |minutes| {
        let (cut, left_out) = fit_minutes(&sheet, minutes);
        // It fits, or no more than two sets of the first exercise are left.
        let fits = duration(&cut).total() <= u64::from(minutes) * 60;
        let first = cut.entries().next().unwrap();
        assert!(fits || (cut.entries().count() == 1 && first.calls.len() == 1), "{minutes}");
        left_out
    };
    let gone = |name: &str| LeftOut::Exercise(name.to_owned());
    let sets = |name: &str, sets| LeftOut::Sets { name: name.to_owned(), sets };
    // The optional exercise first, then sets of the others from the end, then those exercises, and
    // sets of the first, which the day is for, last.
    assert_eq!(left_out(24), [gone("Plank")]);
    assert_eq!(left_out(18), [gone("Plank"), sets("One-leg bridge", 1)]);
    assert_eq!(
        left_out(16),
        [sets("Bodyweight squat", 2), gone("Plank"), sets("One-leg bridge", 1)]
    );
    assert_eq!(left_out(8), [gone("Bodyweight squat"), gone("Plank"), gone("One-leg bridge")]);
    assert_eq!(
        left_out(5),
        [sets("Push-up", 2), gone("Bodyweight squat"), gone("Plank"), gone("One-leg bridge")]
    );
}

#[test]
fn what_the_plan_keeps_is_left_whole() {
    let body =
        SESSION.replace("name = \"One-leg bridge\"", "name = \"One-leg bridge\"\n    keep = true");
    let (_, left_out) = fit_minutes(&Table::of(&body).week(0).sheet, 12);
    let bridge = |out: &LeftOut| match out {
        LeftOut::Exercise(name) | LeftOut::Sets { name, .. } => name == "One-leg bridge",
    };
    assert!(!left_out.is_empty() && !left_out.iter().any(bridge), "{left_out:?}");
}
