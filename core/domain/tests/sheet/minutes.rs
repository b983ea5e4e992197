//! How long it takes, and what to leave out.

use barwright_domain::prescribe::{LeftOut, duration, fit_minutes};

use crate::desk::Table;

fn seconds(body: &str) -> u64 {
    duration(&Table::of(&format!("[[session.exercise]]\n{body}")).week(0).sheet).total()
}

#[test]
fn seconds_by_hand() {
    // A minute to set up (common practice); three sets of ten at 3 s a repetition; rests of 60 s.
    assert_eq!(seconds("name = \"Push-up\"\nsets = 3\nreps = 10\nrest = \"60 s\""), 60 + 3 * 90);
    // 4-2-X-0: an X counts a second, so seven a repetition.
    let tempo = "name = \"Push-up\"\nsets = 1\nreps = 4\ntempo = \"4-2-X-0\"\nrest = \"0 s\"";
    assert_eq!(seconds(tempo), 60 + 28);
    assert_eq!(seconds("name = \"Plank\"\nsets = 2\nseconds = 45\nrest = \"30 s\""), 60 + 150);
    // Start to start, whatever rest stands beside it.
    let clock = "name = \"Push-up\"\nsets = 10\nreps = 5\nevery = \"60 s\"";
    assert_eq!(seconds(clock), 60 + 600);
    // Both sides at 24 s with 30 s between and 90 s after.
    let sides = "name = \"One-leg bridge\"\nsets = 2\nreps = 8\n\
                 rest = { after_set = \"90 s\", between_sides = \"30 s\" }";
    assert_eq!(seconds(sides), 60 + 2 * (24 + 30 + 24 + 90));
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
    // Two rounds of 30 + 20 + 30 + 90, and a minute to set up each.
    assert_eq!(duration(&Table::of(body).week(0).sheet).total(), 120 + 2 * 170);
}

#[test]
fn plates_are_changed_while_resting() {
    let rest = |rest: u32| {
        let body = format!(
            "name = \"Hip thrust\"\nsets = 1\nreps = 5\nload = \"180 kg\"\nramp = \"none\"\n\
             rest = \"{rest} s\""
        );
        seconds(&body)
    };
    // 80 a side are 25 + 25 + 25 + 5: four plates at 5 s.
    assert_eq!(rest(0), 60 + 15 + 20);
    assert_eq!(rest(60), 60 + 15 + 60);
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
    // 510 + 420 + 330 + 420.
    let all = duration(&sheet);
    assert_eq!(all.entries, [510, 420, 330, 420]);
    assert_eq!(fit_minutes(&sheet, 28), (sheet.clone(), Vec::new()));
    let left_out = |minutes| {
        let (cut, left_out) = fit_minutes(&sheet, minutes);
        // It fits, or nothing but the first exercise is left.
        let fits = duration(&cut).total() <= u64::from(minutes) * 60;
        assert!(fits || cut.entries().count() == 1, "{minutes}");
        left_out
    };
    let gone = |name: &str| LeftOut::Exercise(name.to_owned());
    let sets = |name: &str, sets| LeftOut::Sets { name: name.to_owned(), sets };
    // The optional exercise first, then last sets from the end, then exercises from the end.
    assert_eq!(left_out(27), [gone("Plank")]);
    assert_eq!(left_out(22), [gone("Plank"), sets("One-leg bridge", 1)]);
    assert_eq!(
        left_out(19),
        [sets("Bodyweight squat", 1), gone("Plank"), sets("One-leg bridge", 1)]
    );
    // With the bridge gone there is time for a third set of squats again: 510 + 330.
    assert_eq!(left_out(15), [sets("Bodyweight squat", 1), gone("Plank"), gone("One-leg bridge")]);
    assert_eq!(left_out(1), [gone("Bodyweight squat"), gone("Plank"), gone("One-leg bridge")]);
}
