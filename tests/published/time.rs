//! How long a session takes, against sessions that were timed.

use barwright_domain::prescribe;

use crate::play::Season;

/// Seconds of a session as it is laid out, and how many exercises it has.
fn whole(exercises: &str) -> (u64, u64) {
    let sheet = Season::of(&["Monday"], exercises).sheet(1, 1);
    (prescribe::duration(&sheet).total(), sheet.entries().count() as u64)
}

/// Without the minute to set up each exercise, which is ours (common practice).
fn seconds(exercises: &str) -> u64 {
    let (seconds, exercises) = whole(exercises);
    seconds - 60 * exercises
}

/// Four exercises of four sets of ten with this rest, loads by feel.
fn sixteen_sets(rest: &str) -> u64 {
    // No guided bar is in the catalogue: the leg press stands for it.
    let names = ["Leg press", "Leg extension", "Standing calf raise", "Seated calf raise"];
    let row = |name| {
        format!(
            "[[session.exercise]]\nname = \"{name}\"\nsets = 4\nreps = 10\nleft = 0\nramp = \
             \"none\"\nrest = \"{rest}\"\n"
        )
    };
    whole(&names.map(row).concat()).0
}

/// International Journal of Exercise Science: Conference Proceedings 15(8), article 23 (abstract;
/// authors, title and year not seen), published: forty trained people took 55.3 ± 12.6 min for four
/// sets of each of four exercises of the legs (squats on a guided bar, leg extensions, two calf raises)
/// at the ten-repetition maximum, with 2.4 min between sets. An independent check of three seconds a repetition, which comes from another study.
#[test]
fn a_session_with_fixed_rests() {
    let minutes = sixteen_sets("2:24") as f64 / 60.0;
    assert!((minutes - 55.3).abs() <= 12.6, "{minutes}");
}

/// The same: 70.5 ± 19.1 min with the 3.7 min that lifters chose.
#[test]
fn a_session_with_rests_by_choice() {
    let minutes = sixteen_sets("3:42") as f64 / 60.0;
    assert!((minutes - 70.5).abs() <= 19.1, "{minutes}");
}

/// A share of the time in percent.
fn share(short: u64, long: u64) -> u64 {
    100 * short / long
}

/// Iversen, Norum, Schoenfeld, Fimland 2021, "No time to lift? Designing time-efficient training
/// programs for strength and hypertrophy: a narrative review", Sports Med 51:2079–2095, published:
/// supersets roughly halve the time for the same volume. Two minutes of rest either way; "roughly" is
/// taken as 40 to 67 %.
#[test]
fn supersets_roughly_halve_the_time() {
    let pair = |superset: &str| {
        let row = |name| {
            format!(
                "[[session.exercise]]\nname = \"{name}\"\n{superset}sets = 4\nreps = 10\nleft = \
                 1\nramp = \"none\"\n"
            )
        };
        let rest = "rest = { after_set = \"2:00\", in_superset = \"0 s\", after_superset = \
                    \"2:00\" }\n";
        ["Leg press", "Seated cable row"].map(|name| row(name) + rest).concat()
    };
    let (apart, together) = (seconds(&pair("")), seconds(&pair("superset = \"a\"\n")));
    assert!((40..=67).contains(&share(together, apart)), "{together} of {apart}");
}

/// The same of rest-pause: 24 repetitions as a first set of eight and mini-sets of four, against three
/// sets of eight.
#[test]
fn rest_pause_roughly_halves_the_time() {
    let row = "[[session.exercise]]\nname = \"Leg press\"\nreps = 8\nleft = 0\nramp = \
               \"none\"\nrest = \"2:00\"\n";
    let apart = seconds(&format!("{row}sets = 3"));
    let parts = "rest_pause = { pause = \"20 s\", each = 4, total = 24, most_parts = 4 }";
    let together = seconds(&format!("{row}sets = 1\n{parts}"));
    assert!((40..=67).contains(&share(together, apart)), "{together} of {apart}");
}

/// The same of drop sets (and Coleman, Harrison, Arias, Johnson, Grgic, Orazem, Schoenfeld 2022,
/// "Muscular adaptations in drop set vs. traditional training: a meta-analysis", Int J Strength Cond
/// 2(1), title from memory: no loss, less time): one set with two drops takes less than half of three sets.
#[test]
fn a_drop_set_takes_less_than_half_the_time() {
    let row = "[[session.exercise]]\nname = \"Leg extension\"\nreps = 10\nleft = 0\nramp = \
               \"none\"\nrest = \"2:00\"\nload = \"49 kg\"\n";
    let apart = seconds(&format!("{row}sets = 3"));
    let together = seconds(&format!("{row}sets = 1\ndrop = [\"20 %\", \"20 %\"]"));
    assert!(share(together, apart) < 50, "{together} of {apart}");
}
