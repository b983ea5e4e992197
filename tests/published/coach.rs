//! A plan looked over, at the thresholds that have a source.

use barwright_domain::catalogue::Catalogue;
use barwright_domain::coach::{Check, look_over};
use barwright_domain::equipment::builtin_in;
use barwright_domain::plan::Plan;
use barwright_domain::quantity::MassUnit;

/// Whether a check finds anything in a plan of two weeks with one session of this.
fn finds(check: Check, exercises: &str) -> bool {
    let text = format!("name = \"A\"\nweeks = 2\n[[session]]\nname = \"Monday\"\n{exercises}");
    let file = Plan::read(&text, &Catalogue::builtin()).unwrap();
    let found = look_over(&file, &Catalogue::builtin(), &builtin_in(MassUnit::Kilogram));
    found.iter().any(|finding| finding.check == check)
}

fn exercise(name: &str, keys: &str) -> String {
    format!("[[session.exercise]]\nname = \"{name}\"\n{keys}\n")
}

/// American College of Sports Medicine 2009, "Progression models in resistance training for healthy
/// adults" (position stand), MSSE 41(3):687–708, published: a load rises by 2–10 % at a time.
#[test]
fn a_load_that_rises_by_more_than_ten_percent() {
    for (loads, found) in [("\"60 kg\", \"66 kg\"", false), ("\"60 kg\", \"67 kg\"", true)] {
        let keys = format!("sets = 3\nreps = 8\nload.by_week = [{loads}]");
        assert_eq!(finds(Check::LoadJump, &exercise("Leg press", &keys)), found, "{loads}");
    }
}

/// Haff & Triplett (eds.) 2016, Essentials of Strength Training and Conditioning, 4th ed. (NSCA), Table
/// 17.7, published: six repetitions to
/// failure go with 85 %, three with 93 %, ten with 75 %. 2.5 points more are let pass (common
/// practice), half a point more is not.
#[test]
fn repetitions_at_more_than_the_table_allows() {
    for (reps, passes, fails) in
        [(6, "87.5 %", "88 %"), (3, "95.5 %", "96 %"), (10, "77.5 %", "78 %")]
    {
        let at = |load: &str| {
            let keys = format!("sets = 3\nreps = {reps}\nload = \"{load}\"");
            finds(Check::PercentAndReps, &exercise("Back squat", &keys))
        };
        assert!(!at(passes) && at(fails), "{reps}");
    }
}

/// Baz-Valle, Balsalobre-Fernández, Alix-Fages, Santos-Concejero 2022, "A systematic review of the
/// effects of different resistance training volumes on muscle hypertrophy", J Hum Kinet 81:199–210,
/// published: over 20 weekly sets are high. With the
/// rest at eight to ten, 20 sets of leg extensions are let be and 21 are named.
#[test]
fn more_than_twenty_weekly_sets() {
    for (sets, found) in [(20, false), (21, true)] {
        let rows = [("Bench press", 8), ("Barbell row", 8), ("Romanian deadlift", 8)];
        let rest = rows.map(|(name, sets)| exercise(name, &format!("sets = {sets}\nreps = 8")));
        let legs = exercise("Leg extension", &format!("sets = {sets}\nreps = 12"));
        assert_eq!(finds(Check::MuscleHigh, &(rest.concat() + &legs)), found, "{sets}");
    }
}

/// Haff & Triplett (eds.) 2016, Essentials of Strength Training and Conditioning, 4th ed. (NSCA), ch.
/// 17, published: strength is trained from 85 %. Two such sessions on
/// neighbouring days are named, one of them at 84.5 % is not.
#[test]
fn heavy_is_from_85_percent() {
    for (load, found) in [("85 %", true), ("84.5 %", false)] {
        let keys = format!("sets = 3\nreps = 3\nload = \"{load}\"");
        let squats = |keys: &str| exercise("Back squat", keys);
        let text = format!(
            "{}[[session]]\nname = \"Next\"\nday = \"Tuesday\"\n{}",
            squats("sets = 3\nreps = 3\nload = \"85 %\""),
            squats(&keys)
        );
        let text = format!(
            "name = \"A\"\nweeks = 1\n[[session]]\nname = \"First\"\nday = \"Monday\"\n{text}"
        );
        let file = Plan::read(&text, &Catalogue::builtin()).unwrap();
        let all = look_over(&file, &Catalogue::builtin(), &builtin_in(MassUnit::Kilogram));
        let named = all.iter().any(|finding| finding.check == Check::HeavyNeighbours);
        assert_eq!(named, found, "{load}");
    }
}
