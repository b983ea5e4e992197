//! Tempo seconds and the rest arithmetic of published set layouts.

use barwright_domain::call::Structure;
use barwright_domain::catalogue::Catalogue;
use barwright_domain::desk::At;
use barwright_domain::equipment::builtin_in;
use barwright_domain::plan::{Goal, Plan};
use barwright_domain::prescribe::{self, Lifter, Source};
use barwright_domain::quantity::{MassUnit, Reps, Seconds, Tempo};

use crate::play::{Season, work};

/// Textbook convention, and Wilk, Golas, Stastny, Nawrocka, Krzysztofik, Zajac 2018, "Does tempo of
/// resistance exercise impact training volume?" (authors and title from memory), J Hum Kinet
/// 62:241–250, published: 2/0/2/0, 5/0/3/0 and 6/0/4/0 are 4, 8 and 10 s a repetition; 3-0-1-0 is 4 s.
#[test]
fn seconds_of_a_tempo() {
    for (tempo, seconds) in [("2/0/2/0", 4), ("5/0/3/0", 8), ("6/0/4/0", 10), ("3-0-1-0", 4)] {
        assert_eq!(Tempo::read(tempo).unwrap().rep_tenths(), seconds * 10, "{tempo}");
    }
}

fn cluster(blocks: &[Reps], pause: u32) -> Structure {
    Structure::Cluster { blocks: blocks.to_vec(), pause: Seconds::new(pause) }
}

/// Tufano, Conlon, Nimphius, Brown, Petkovic, Frick, Haff 2017, "Effects of cluster sets and
/// rest-redistribution on mechanical responses to back squats in trained men", J Hum Kinet 58:35–43
/// (abstract), published: 36 repetitions in three layouts with the same rest in all, 420 s: 6 × 30 + 2 × 120 = 8 × 52.5 = 35 × 12. (The one in the middle has half
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

/// Marshall, Robbins, Wrightson, Siegler 2012, "Acute neuromuscular and fatigue responses to the
/// rest-pause method", J Sci Med Sport 15(2):153–158, published: 20 squats at 80 % as 5 × 4 take
/// 780 s with 180 s between and 140 s with 20 s. What a repetition takes by default was taken from
/// there, so only the 640 s between the two are checked here, which are rests alone; `time.rs` holds
/// the seconds of a repetition against another study.
#[test]
fn two_layouts_differ_by_their_rests() {
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
            at: At { week: 1, session: 1 },
            catalogue: &catalogue,
            equipment: &gym,
        };
        let sheet = prescribe::sheet(source, &Lifter::default()).expect("it has a session").sheet;
        prescribe::duration(&sheet).total()
    };
    assert_eq!(seconds(180) - seconds(20), 780 - 140);
}

/// American College of Sports Medicine 2009, "Progression models in resistance training for healthy
/// adults" (position stand), MSSE 41(3):687–708, published: at least two to three
/// minutes after heavy sets of main lifts, one to two after assistance.
#[test]
fn rests_of_a_goal() {
    assert!((120..=180).contains(&Goal::Strength.rest(true).count()));
    assert!((60..=120).contains(&Goal::Size.rest(false).count()));
}

/// NSCA Essentials, 4th ed. (Haff & Triplett 2016), ch. 17, published: two to five minutes for
/// strength.
#[test]
fn a_rest_for_strength() {
    for compound in [true, false] {
        assert!((120..=300).contains(&Goal::Strength.rest(compound).count()));
    }
}

/// Singer, Wolf, Generoso et al. 2024, "Give it a rest: a systematic review with Bayesian
/// meta-analysis on the effect of inter-set rest interval duration on muscle hypertrophy" (title and
/// further authors from memory), Front Sports Act Living 6 (journal from memory), abstract: the estimates overlap, leaning to longer than 60 s.
#[test]
fn a_rest_for_size() {
    assert!(Goal::Size.rest(true).count() > 60 && Goal::Size.rest(false).count() > 60);
}

/// Haff & Burgess 2012, "Resistance training for endurance sports", in Reuter (ed.), Developing
/// Endurance (title and book from memory), published at second hand: 15–45 s inside a cluster set.
/// What a plan that says no pause is given lies there.
#[test]
fn a_pause_inside_a_cluster() {
    let row = "[[session.exercise]]\nname = \"Deadlift\"\nload = \"100 kg\"\ncluster = { blocks = [2, \
               2, 2] }";
    let entry = Season::of(&["Monday"], row).entry(1, 1, "deadlift");
    let Structure::Cluster { pause, .. } = &work(&entry)[0].structure else { panic!() };
    assert!((15..=45).contains(&pause.count()), "{pause:?}");
}
