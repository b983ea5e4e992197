//! What raises a max, and what it does not.

use barwright_domain::owners::{Question, Why};
use barwright_domain::session::Ending;

use crate::play::{Season, kg, of, plan, reps};

fn bench() -> Season {
    let text = plan(
        &["Monday"],
        "[[session.exercise]]\nname = \"Bench press\"\nsets = 1\nreps = 5\nleft = 2\nload = \"80 \
         %\"\nramp = \"none\"",
    );
    let mut season =
        Season::new(&text.replace("weeks = 8", "weeks = 8\nraise_max = \"estimates\""));
    season.max("bench-press", "100");
    season
}

/// Five at 80 with three left are 80 · (1 + 8/30) = 101.33; with four left 104. Two sessions above:
/// the smaller, taken down to a half kilogram, is 101; and the pair is spent.
#[test]
fn two_sessions_raise_it_and_the_smaller_counts() {
    let mut season = bench();
    let once = season.session(1, 1, &[("bench-press", &[reps(5).left(8)])]);
    assert!(matches!(of(&once, "max").why, Why::AboveOnce { .. }), "{once:?}");
    assert_eq!(
        (season.max_of("bench-press"), season.load(2, 1, "bench-press")),
        (kg("100"), "80".into())
    );
    season.session(2, 1, &[("bench-press", &[reps(5).left(6)])]);
    assert_eq!(season.max_of("bench-press"), kg("101"));
    // 80 % of 101 are 80.8; the next pair begins anew.
    season.session(3, 1, &[("bench-press", &[reps(5).left(8)])]);
    assert_eq!(season.max_of("bench-press"), kg("101"));
}

#[test]
fn never_more_than_a_fortieth_at_once() {
    let mut season = bench();
    for week in 1..=2 {
        season.session(week, 1, &[("bench-press", &[reps(5).left(8).with("90")])]);
    }
    // 90 · (1 + 9/30) = 117, but 2.5 % at once.
    assert_eq!(season.max_of("bench-press"), kg("102.5"));
}

/// What a person enters on the evening of a session stands above it, and no older evidence moves it.
#[test]
fn the_newest_word_wins_by_order_and_not_by_date() {
    let mut season = bench();
    season.session(1, 1, &[("bench-press", &[reps(5).left(8)])]);
    season.max("bench-press", "110");
    season.session(2, 1, &[("bench-press", &[reps(5).left(6)])]);
    assert_eq!(season.max_of("bench-press"), kg("110"));
    assert_eq!(season.load(3, 1, "bench-press"), "87.5");
}

fn test() -> Season {
    let mut season = Season::of(
        &["Monday"],
        "[[session.exercise]]\nname = \"Back squat\"\nload = \"92 %\"\nramp = \"none\"\ntest = { step = \
         \"2.5 %\", most_tries = 4 }",
    );
    season.max("back-squat", "150");
    season
}

/// 138 and 145 go, 152.5 fails: 145 would be lower than the max that stands, and is asked first.
#[test]
fn a_lower_test_is_asked_first() {
    let mut season = test();
    let outcomes = season.session(
        1,
        1,
        &[(
            "back-squat",
            &[
                reps(1).with("138"),
                reps(1).with("145"),
                reps(0).with("152.5").ended(Ending::Failed),
                reps(0).with("147.5").ended(Ending::Failed),
            ],
        )],
    );
    let proposal = of(&outcomes, "max").proposal.clone().unwrap();
    assert_eq!((proposal.question, proposal.to), (Question::Test, Some(kg("145"))));
    assert_eq!(season.max_of("back-squat"), kg("150"));
}

#[test]
fn a_test_that_was_ended_sets_the_max() {
    let mut season = test();
    let tries = [reps(1).with("140"), reps(1).with("150"), reps(1).with("155").left(0)];
    season.session(1, 1, &[("back-squat", &tries)]);
    assert_eq!(season.max_of("back-squat"), kg("155"));
    // Broken off before anything was missed, it is only asked.
    let mut season = test();
    let sheet = season.sheet(1, 1);
    let outcomes = season.play(sheet, &[("back-squat", &tries[..2])], false);
    assert_eq!(of(&outcomes, "max").proposal, None);
    let mut season = test();
    let sheet = season.sheet(1, 1);
    let tries = [reps(1).with("140"), reps(1).with("152.5")];
    let outcomes = season.play(sheet, &[("back-squat", &tries)], false);
    assert_eq!(of(&outcomes, "max").proposal.clone().unwrap().to, Some(kg("152.5")));
    assert_eq!(season.max_of("back-squat"), kg("150"));
}

/// Three sets, the last of them ended by pain: whatever the two before estimate, it raises nothing and
/// is no first of a pair.
#[test]
fn a_session_that_hurt_says_nothing_of_a_max() {
    let text = plan(
        &["Monday"],
        "[[session.exercise]]\nname = \"Bench press\"\nsets = 3\nreps = 5\nleft = 2\nload = \"80 \
         %\"\nramp = \"none\"",
    );
    let mut season =
        Season::new(&text.replace("weeks = 8", "weeks = 8\nraise_max = \"estimates\""));
    season.max("bench-press", "100");
    let good = || reps(5).left(8);
    season.session(1, 1, &[("bench-press", &[good(), good(), good()])]);
    let hurt =
        season.session(2, 1, &[("bench-press", &[good(), good(), reps(3).ended(Ending::Pain)])]);
    assert!(hurt.iter().all(|one| !one.owner.name().starts_with("max:")), "{hurt:?}");
    assert_eq!(season.max_of("bench-press"), kg("100"));
}
