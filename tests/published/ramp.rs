//! The usual ramp, against ramps that are taught.

use barwright_domain::quantity::{Mass, Reps};
use barwright_domain::session::{CallLoad, SetKind};

use crate::play::{Season, kg};

/// Warm-up steps and the work load.
fn ramp(lift: &str, load: &str) -> (Vec<(Mass, Reps)>, Mass) {
    let row = format!(
        "[[session.exercise]]\nname = \"{lift}\"\nsets = 3\nreps = 5\nload = \"{load} kg\""
    );
    let sheet = Season::of(&["Monday"], &row).sheet(1, 1);
    let calls = &sheet.entries().next().unwrap().calls;
    let step = |call: &barwright_domain::session::Call| {
        let CallLoad::Known(load) = &call.load else { panic!("{call:?}") };
        (load.figure.unwrap(), call.how_many.as_called().reps().unwrap())
    };
    let ramps = calls.iter().filter(|call| call.kind == SetKind::Ramp);
    (ramps.map(step).collect(), kg(load))
}

const LOADS: [&str; 8] = ["60", "75", "90", "112.5", "140", "165", "200", "260"];

/// A ramp as it is taught (a Canadian college's exercise database; author and year not seen),
/// published: 50 % × 10, 70 % × 5, 80 % × 3, 90 % × 1. No step of ours asks for more than that one at
/// as much or less of the work load, and none is heavier than its last.
#[test]
fn no_more_than_a_taught_ramp_asks() {
    const TAUGHT: [(i64, Reps); 4] = [(50, 10), (70, 5), (80, 3), (90, 1)];
    for load in LOADS {
        for lift in ["Back squat", "Deadlift"] {
            let (steps, work) = ramp(lift, load);
            for (made, reps) in steps {
                let share = made.nanograms() / (work.nanograms() / 1_000);
                let taught = TAUGHT.iter().rev().find(|(from, _)| share >= from * 10);
                let most = taught.map_or(10, |(_, reps)| *reps);
                // A deadlift of 60 kg begins at 67 % of it: the bar has no lower height.
                assert!(reps <= most, "{lift} {load}: {reps} at {share} ‰");
                assert!(share <= 900, "{lift} {load}: {share} ‰");
            }
        }
    }
}

/// Haff & Triplett (eds.) 2016, Essentials of Strength Training and Conditioning, 4th ed. (NSCA), the
/// 1RM protocol of ch. 17, published: a warm-up goes from 5–10
/// repetitions over 3–5 to 2–3. Ours begins, passes and ends there, wherever it has three steps.
#[test]
fn repetitions_fall_as_in_the_textbook() {
    for load in LOADS {
        for lift in ["Back squat", "Deadlift"] {
            let (steps, _) = ramp(lift, load);
            let reps: Vec<Reps> = steps.into_iter().map(|(_, reps)| reps).collect();
            if let [first, middle @ .., last] = reps.as_slice()
                && !middle.is_empty()
            {
                assert!((5..=10).contains(first) && (2..=3).contains(last), "{reps:?}");
                assert!(middle.iter().any(|reps| (3..=5).contains(reps)), "{reps:?}");
            }
            assert!(reps.is_sorted_by(|one, next| one >= next), "{reps:?}");
        }
    }
}

/// The same protocol, of the tries of a test: the last warm-up lies 5–10 % (upper body) or 10–20 %
/// (lower) under the first single, wherever the plan begins.
#[test]
fn a_test_is_warmed_up_for_well_under_its_first_single() {
    for (lift, slug, off) in
        [("Back squat", "back-squat", 90..=180), ("Bench press", "bench-press", 40..=100)]
    {
        for share in ["80 %", "92.5 %"] {
            let row = format!(
                "[[session.exercise]]\nname = \"{lift}\"\nload = \"{share}\"\ntest = {{ step = \
                 \"2.5 %\" }}"
            );
            let mut season = Season::of(&["Monday"], &row);
            season.max(slug, "150");
            let entry = season.entry(1, 1, slug);
            let loads: Vec<Mass> = entry
                .calls
                .iter()
                .filter_map(|call| match &call.load {
                    CallLoad::Known(load) => load.figure,
                    _ => None,
                })
                .collect();
            let [.., last, single] = loads.as_slice() else { panic!("{loads:?}") };
            let under = (single.nanograms() - last.nanograms()) / (single.nanograms() / 1_000);
            assert!(off.contains(&under), "{lift} {share}: {under} ‰");
        }
    }
}
