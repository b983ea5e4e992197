//! Plans that are trained by in a year, and what is done to them in between.

use crate::chance::Chance;
use crate::life::PLAN;

/// A plan without weekdays.
const SHORT: &str = r#"
name = "Two days"
weeks = 6

[[session]]
name = "One"

[[session.exercise]]
name = "Back squat"
sets = 3
reps = 5
load = "100 kg"
rest = "3:00"
next = "two for two"

[[session.exercise]]
name = "Bench press"
sets = 2
reps = "6-8"
left = "1-2"
next = "double progression"

[[session]]
name = "Two"

[[session.exercise]]
name = "Deadlift"
sets = 2
reps = 5
load = "120 kg"
rest = "2:00"

[[session.exercise]]
name = "Barbell row"
sets = 2
reps = 8
left = "1-2"
next = "double progression"
"#;

/// Weeks, and sessions in a week, of the plans here.
pub(super) fn size(name: &str) -> Option<(u64, u64)> {
    match name {
        "Boathouse off-season" => Some((8, 3)),
        "Two days" => Some((6, 2)),
        _ => None,
    }
}

/// What is mended in them, from and to; no session comes or goes.
const MENDS: [(&str, &str); 5] = [
    ("reps = 8\n", "reps = 7\n"),
    ("reps = 5\n", "reps = 4\n"),
    ("rest = \"3:00\"", "rest = \"2:40\""),
    ("load = \"60 kg\"", "load = \"62.5 kg\""),
    ("rest = \"2:00\"", "rest = \"2:10\""),
];

/// Whether a text is one of these with all its sessions, mended or not.
pub(super) fn is_known(text: &str) -> bool {
    let shape = |text: &str| {
        let heads = text.lines().filter(|line| line.starts_with("[[")).count();
        let name = text.lines().find(|line| line.starts_with("name")).map(str::to_owned);
        (heads, name, text.lines().last().map(str::to_owned))
    };
    [PLAN, SHORT].iter().any(|plan| shape(plan) == shape(text))
}

/// The text of a plan to be adopted, by chance.
pub(super) fn text(chance: &mut Chance) -> String {
    let mut text = if chance.below(2) == 0 { PLAN } else { SHORT }.to_owned();
    for (from, to) in MENDS {
        if chance.below(3) == 0 {
            text = text.replacen(from, to, 1);
        }
    }
    match chance.below(8) {
        // Cut off, as a file that was copied by half.
        0 => {
            let mut end = chance.below(text.len() as u64) as usize;
            while !text.is_char_boundary(end) {
                end -= 1;
            }
            text.truncate(end);
        }
        1 => text = text.replacen('=', "", 1 + chance.below(5) as usize),
        _ => {}
    }
    text
}
