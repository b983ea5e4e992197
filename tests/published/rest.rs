//! Tempo seconds and the rest arithmetic of published set layouts.

use barwright_domain::call::Structure;
use barwright_domain::catalogue::Catalogue;
use barwright_domain::plan::Plan;
use barwright_domain::quantity::{Reps, Seconds, Tempo};

/// Textbook convention, and Wilk et al. 2018, J Hum Kinet 62:241–250, published: 2/0/2/0, 5/0/3/0
/// and 6/0/4/0 are 4, 8 and 10 s a repetition; 3-0-1-0 is 4 s.
#[test]
fn seconds_of_a_tempo() {
    for (tempo, seconds) in [("2/0/2/0", 4), ("5/0/3/0", 8), ("6/0/4/0", 10), ("3-0-1-0", 4)] {
        assert_eq!(Tempo::read(tempo).unwrap().rep_tenths(), seconds * 10, "{tempo}");
    }
}

fn cluster(blocks: &[Reps], pause: u32) -> Structure {
    Structure::Cluster { blocks: blocks.to_vec(), pause: Seconds::new(pause) }
}

/// Tufano et al. 2017, J Hum Kinet 58:35–43, published: 36 repetitions in three layouts with the
/// same rest in all, 420 s: 6 × 30 + 2 × 120 = 8 × 52.5 = 35 × 12. (The one in the middle has half
/// seconds, which no rest here has.)
#[test]
fn the_same_rest_in_two_layouts() {
    // Three sets of 3 × 4 with 30 s inside and 120 s between: six pauses and two rests.
    let set = cluster(&[4, 4, 4], 30);
    assert_eq!(set.pauses().count(), 60);
    assert_eq!(3 * set.pauses().count() + 2 * 120, 420);
    // Singles with 12 s between, one set of 36.
    assert_eq!(cluster(&[1; 36], 12).pauses().count(), 420);
}

/// Marshall et al. 2012, J Sci Med Sport 15(2):153–158, published: 20 squats at 80 % as 5 × 4 take
/// 780 s with 180 s between and 140 s with 20 s. Both leave 60 s of work: 3 s a repetition
/// (computed), what a plan takes where it gives no tempo.
#[test]
fn three_seconds_a_repetition() {
    let text = r#"
        name = "Squats"
        weeks = 1
        [[session]]
        name = "One"
        [[session.exercise]]
        name = "Back squat"
        sets = 1
        reps = 20
        load = "80 %"
    "#;
    let plan = Plan::read(text, &Catalogue::builtin()).expect("the plan is in order").plan;
    for (pause, total) in [(180, 780), (20, 140)] {
        let rest = cluster(&[4; 5], pause).pauses().count();
        assert_eq!(rest + 20 * u32::from(plan.seconds_a_rep), total, "{pause} s");
    }
}
