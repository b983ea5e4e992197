//! A miss stands in its own session until it is made there.

use barwright_domain::owners::{Cutting, Question, Why};
use barwright_domain::plan::Miss;
use barwright_domain::quantity::Percent;
use barwright_domain::session::{Because, Ending};

use crate::play::{Season, as_called, kg, of, reps, why};

const BENCH: &str = r#"
    [[session.exercise]]
    name = "Bench press"
    sets = 2
    reps = 6
    load = "70 kg"
    ramp = "none"
    next = { rule = "add when made", step = "2.5 kg" }
    "#;

#[test]
fn repeat_then_less_then_ask() {
    let mut season = Season::of(&["Monday"], BENCH);
    let short = [as_called(), reps(4).ended(Ending::Failed)];
    for (week, called, times, then) in [
        (1, "70", 1, Miss::Repeat),
        (2, "70", 2, Miss::Less(Percent::whole(5))),
        (3, "66", 3, Miss::Hold),
    ] {
        assert_eq!(season.load(week, 1, "bench-press"), called);
        let missed = season.session(week, 1, &[("bench-press", &short)]);
        assert_eq!(of(&missed, "track").why, Why::Missed { times, then });
    }
    // Held where it is, and the coach is asked.
    assert_eq!(season.load(4, 1, "bench-press"), "66");
    let missed = season.session(4, 1, &[("bench-press", &short)]);
    let proposal = of(&missed, "track").proposal.clone().unwrap();
    assert_eq!((proposal.question, proposal.to), (Question::Missed, Some(kg("66.5"))));
    // Made under the cut: the earlier load comes back, and no more.
    let made = season.session(5, 1, &[]);
    assert_eq!(of(&made, "track").why, Why::MissMade);
    assert_eq!(season.load(6, 1, "bench-press"), "70");
    season.session(6, 1, &[]);
    assert_eq!(season.load(7, 1, "bench-press"), "72.5");
}

/// Monday's miss is cleared on a Monday and nowhere else; the other days go on.
#[test]
fn a_miss_is_cleared_in_its_own_session() {
    let mut season = Season::of(&["Monday", "Thursday"], BENCH);
    let short = [reps(5), reps(5)];
    season.session(1, 1, &[("bench-press", &short)]);
    season.session(1, 2, &[]);
    assert_eq!(season.load(2, 2, "bench-press"), "72.5");
    assert_eq!(season.load(2, 1, "bench-press"), "70");
    let again = season.session(2, 1, &[("bench-press", &short)]);
    // Two running there, of several that share a track: a track of its own is proposed.
    let question = of(&again, "track").proposal.clone().unwrap().question;
    assert!(matches!(question, Question::OwnTrack(_)), "{question:?}");
}

/// On a row in percent a miss is a cut until it is made, whatever the next week's percentage says.
#[test]
fn a_miss_on_a_row_in_percent_never_touches_the_max() {
    let mut season = Season::of(
        &["Monday"],
        r#"
        [[session.exercise]]
        name = "Back squat"
        sets = 2
        reps = 4
        ramp = "none"
        load.by_week = ["80 %", "84 %", "87.5 %", "82 %"]
        "#,
    );
    season.max("back-squat", "150");
    season.session(1, 1, &[("back-squat", &[reps(3), reps(2)])]);
    assert_eq!(season.max_of("back-squat"), kg("150"));
    let entry = season.entry(2, 1, "back-squat");
    assert_eq!(season.load(2, 1, "back-squat"), "120");
    assert!(why(&entry).iter().any(|why| matches!(
        why,
        Because::Cut { cut, .. } if matches!(cut.why, Cutting::Missed { times: 1, .. })
    )));
    season.session(2, 1, &[]);
    // Made: 87.5 % of 150 are 131.25.
    assert_eq!(season.load(3, 1, "back-squat"), "131");
}

#[test]
fn stopping_an_open_set_above_its_floor_is_no_miss() {
    let mut season = Season::of(
        &["Monday"],
        r#"
        [[session.exercise]]
        name = "Overhead press"
        sets = 2
        reps = [6, "6 or more, stop at 2 left"]
        load = "40 kg"
        ramp = "none"
        next = "add when made"
        "#,
    );
    season.session(1, 1, &[("overhead-press", &[reps(6), reps(7)])]);
    assert_eq!(season.load(2, 1, "overhead-press"), "42.5");
    season.session(2, 1, &[("overhead-press", &[reps(6), reps(5)])]);
    assert_eq!(season.load(3, 1, "overhead-press"), "42.5");
}
