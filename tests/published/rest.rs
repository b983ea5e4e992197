//! Tempo seconds and the rest arithmetic of published set layouts.

use barwright_domain::call::Structure;
use barwright_domain::catalogue::Catalogue;
use barwright_domain::equipment::builtin_in;
use barwright_domain::plan::Plan;
use barwright_domain::prescribe::{self, Lifter, Source};
use barwright_domain::quantity::{MassUnit, Reps, Seconds, Tempo};

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
    // By feel, so that no plates are reckoned; nothing after the set, and no ramp before it.
    let layout = |pause: u32| {
        format!(
            r#"
            name = "Squats"
            weeks = 1
            [[session]]
            name = "One"
            [[session.exercise]]
            name = "Back squat"
            cluster = {{ blocks = [4, 4, 4, 4, 4], pause = "{pause} s" }}
            rest = "0 s"
            "#
        )
    };
    let catalogue = Catalogue::builtin();
    let gym = builtin_in(MassUnit::Kilogram);
    let seconds = |pause| {
        let plan = Plan::read(&layout(pause), &catalogue).expect("the plan is in order").plan;
        let source = Source {
            plan: &plan,
            adopted: None,
            week: 0,
            index: 0,
            catalogue: &catalogue,
            equipment: &gym,
        };
        let sheet = prescribe::sheet(source, &Lifter::default()).expect("it has a session").sheet;
        prescribe::duration(&sheet).total()
    };
    // A minute to set up is ours (common practice), not the study's.
    assert_eq!((seconds(180) - 60, seconds(20) - 60), (780, 140));
}
