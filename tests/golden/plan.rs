//! The plan that the story is trained by.

use barwright_player::Plan;

const BASE: &str = "Off-season base";

/// The plan's text. The press stands in two sessions alike, on one load.
pub(crate) fn base(cue: &str) -> String {
    let press = "sets = 2\nreps = 5\nload = \"40 kg\"\nramp = \"none\"\nrest = \"2:00\"\n\
                 next = { rule = \"add when made\", step = \"2.5 kg\" }";
    let squat = format!(
        "sets = 2\nreps = 5\nload = \"70 %\"\nrpe = \"7-8\"\nrest = \"3:00\"\ncues = [\"{cue}\"]\n\
         substitutes = [\"Goblet squat\"]"
    );
    Plan::new(BASE, 6)
        .session("Heavy")
        .with("day = \"Monday\"")
        .exercise("Overhead press", press)
        .exercise("Back squat", &squat)
        .exercise("Plank", "sets = 2\nseconds = \"30-45 s\"\nrest = \"60 s\"\nramp = \"none\"")
        .exercise("Farmer's carry", "metres = 40\nload = \"32 kg\"\nramp = \"none\"")
        .session("Parts")
        .with("day = \"Wednesday\"")
        .exercise(
            "Deadlift",
            "sets = 2\nload = \"120 kg\"\nramp = \"none\"\nrest = \"3:00\"\n\
             cluster = { blocks = [2, 2, 1], pause = \"20 s\" }",
        )
        .exercise(
            "Bench press",
            "sets = 2\nreps = \"8-10\"\nleft = 0\nload = \"60 kg\"\nrest = \"2:00\"\nramp = \"none\"\n\
             rest_pause = { pause = \"15 s\", each = 3, total = 18, most_parts = 4 }\n\
             on_sets = \"last\"",
        )
        .exercise(
            "Front squat",
            "sets = 2\nreps = 8\nload = \"70 kg\"\nleft = 1\nramp = \"none\"\n\
             drop = [\"20 %\", \"25 %\"]\non_sets = \"last\"",
        )
        .exercise(
            "Rear-foot-raised split squat",
            "sides = \"weaker first\"\nreps = 8\nload = \"16 kg\"\nramp = \"none\"\n\
             rest = { after_set = \"90 s\", between_sides = \"30 s\" }",
        )
        .session("Light")
        .with("day = \"Friday\"")
        .exercise("Overhead press", press)
        .exercise("Barbell row", "sets = 2\nreps = 10\nload = \"50 kg\"\nramp = \"none\"")
        .session("Seldom")
        .with("day = \"Saturday\"")
        .exercise(
            "Bench press",
            "superset = \"a\"\nsets = 2\nreps = [5, \"5 or more, stop at 1 left\"]\nload = \"60 kg\"\n\
             ramp = \"none\"\nrest = { in_superset = \"30 s\", after_superset = \"2:00\" }",
        )
        .exercise(
            "Low row",
            "superset = \"a\"\nsets = 2\nreps = 10\nload = \"45 kg\"\nleft = 2\nramp = \"none\"",
        )
        .exercise(
            "Power clean",
            "sets = 2\nreps = 2\nload = \"60 kg\"\nevery = \"60 s\"\nramp = \"none\"",
        )
        .exercise(
            "Chin-up",
            "reps = \"3 or more, stop at 2 left\"\ntotal = { reps = 9, most_sets = 6 }\n\
             load = \"body\"\nrest = \"90 s\"\nramp = \"none\"",
        )
        .exercise("Leg curl", "sets = 1\nreps = 12\nload = \"pin 7\"\nramp = \"none\"")
        .exercise("Face pull", "reps = 15\nload = \"with red band, doubled\"\nramp = \"none\"")
        .exercise("Box squat", "reps = 2\nload = \"80 kg with light chains\"\nramp = \"none\"")
        .text()
}
