//! From one session to the next by the engine: what was done decides what is called.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use barwright_app::contract::{HowEnded, Row};
use barwright_player::clock::booted;
use barwright_player::gyms::CELLAR;
use barwright_player::{Plan, Player, intents};

fn set_up(plan: &str) -> Player {
    Player::at(booted()).taking(60).takes_up(plan)
}

/// A session of these sets, each with its repetitions and half repetitions left; then two days.
fn session(lifter: &mut Player, sets: &[(u32, Option<u8>, HowEnded)]) {
    lifter.begin();
    for (amount, left_halves, ended) in sets {
        lifter.dispatch(intents::done(Some(*amount), *left_halves, *ended));
    }
    lifter.finish();
    lifter.days(2);
}

/// The work of today's one exercise, as the sheet says it, with its reasons.
fn called(lifter: &Player) -> (String, String) {
    let rows = lifter.see_today().rows;
    let text = rows.iter().map(|row| row.text.clone()).collect::<Vec<_>>().join("\n");
    let why = rows.iter().flat_map(|row| row.why.clone()).collect::<Vec<_>>();
    (text, why.join("\n"))
}

fn max_of(lifter: &Player, lift: &str) -> String {
    lifter.see_lift(lift).subtitle
}

fn plan(lines: &str) -> String {
    let plan = Plan::new("Off-season", 8).with("raise_max = \"estimates\"").session("One");
    plan.with("[[session.exercise]]").with(lines).with("ramp = \"none\"").text()
}

const DONE: HowEnded = HowEnded::AsCalled;

/// 75 % of 160 is 120, called RPE 8 for 6–7: 115.2, made 115. Five with two left at 120 estimate
/// 148, and so the max stays.
#[test]
fn front_squat_by_effort() {
    let mut lifter = set_up(&plan(
        "name = \"Front squat\"\nsets = 1\nreps = 5\nload = \"75 %\"\nrpe = \"6-7\"\nnext = [\"as \
         planned\", \"by effort\"]",
    ));
    lifter.type_in("max:front-squat", "160 kg");
    assert!(called(&lifter).0.contains("120 kg"), "{:?}", called(&lifter));
    session(&mut lifter, &[(5, Some(4), DONE)]);
    let (text, why) = called(&lifter);
    assert!(text.contains("115 kg"), "{text}");
    assert!(why.contains("115.2"), "{why}");
    assert!(max_of(&lifter, "front-squat").contains("160 kg, entered"));
    // A max that stays is no change.
    let tally = lifter.see_tally();
    assert!(tally.changes.iter().all(|row| !row.id.starts_with("max-")), "{:?}", tally.changes);
}

/// Five with three left at 120 (80 % of 150) estimate 120 · (1 + 8/30) = 152. Once is not enough; the
/// second session running raises the max, and 80 % of it is 121.6, made 122. It is a fact with the
/// session's end.
#[test]
fn an_estimate_raises_the_max_and_the_next_loads() {
    let mut lifter = set_up(&plan(
        "name = \"Back squat\"\nsets = 1\nreps = 5\nload = \"80 %\"\nnext = \"as planned\"",
    ));
    lifter.type_in("max:back-squat", "150 kg");
    assert!(called(&lifter).0.contains("120 kg"), "{:?}", called(&lifter));
    session(&mut lifter, &[(5, Some(6), DONE)]);
    assert!(called(&lifter).0.contains("120 kg"), "{:?}", called(&lifter));
    assert!(max_of(&lifter, "back-squat").contains("150 kg, entered"));
    session(&mut lifter, &[(5, Some(6), DONE)]);
    let (text, why) = called(&lifter);
    assert!(text.contains("122 kg"), "{text}");
    assert!(why.contains("Max 152 kg since"), "{why}");
    assert!(max_of(&lifter, "back-squat").contains("152 kg, raised from estimates"));
}

/// Floor press 4 × 7 at 60 kg: nine in the last set twice, one session cut short between: 62.5.
#[test]
fn floor_press_two_for_two() {
    let mut lifter = set_up(&plan(
        "name = \"Floor press\"\nsets = 4\nreps = 7\nload = \"60 kg\"\nnext = \"two for two\"",
    ));
    let nine = [(7, None, DONE), (7, None, DONE), (7, None, DONE), (9, None, DONE)];
    session(&mut lifter, &nine);
    assert!(called(&lifter).0.contains("60 kg"));
    session(&mut lifter, &nine[..2]);
    assert!(called(&lifter).0.contains("60 kg"));
    session(&mut lifter, &nine);
    let (text, _) = called(&lifter);
    assert!(text.contains("62.5 kg"), "{text}");
    session(&mut lifter, &[(7, None, HowEnded::Pain)]);
    let (text, why) = called(&lifter);
    // A tenth less than what hurt, until a session without pain.
    assert!(text.contains("56 kg"), "{text}");
    assert!(why.contains("62.5 kg since") && why.contains("pain since"), "{why}");
    assert!(why.contains("a tenth under the 62.5 kg that hurt: 56.25 kg"), "{why}");
    // It hurts at less, too: the rule is said by what hurt, not as a share of the load it left.
    session(&mut lifter, &[(7, None, HowEnded::Pain)]);
    let (text, why) = called(&lifter);
    assert!(text.contains("50 kg"), "{text}");
    assert!(why.contains("a tenth under the 56 kg that hurt: 50.4 kg"), "{why}");
    assert!(!why.contains('%'), "{why}");
}

/// Where a body moves with the load, a tenth is of both: no figure of the load alone is said to be a
/// tenth under another.
#[test]
fn what_hurt_is_named_only_where_the_load_is_a_tenth_under_it() {
    let mut lifter = set_up(&plan(
        "name = \"Chin-up\"\nsets = 1\nreps = 5\nload = \"body + 20 kg\"\nnext = \"as planned\"",
    ));
    lifter.type_in("body-mass", "80 kg");
    session(&mut lifter, &[(5, None, HowEnded::Pain)]);
    let (text, why) = called(&lifter);
    assert!(text.contains("+10 kg"), "{text}");
    assert!(why.contains("at least a tenth less") && !why.contains("that hurt"), "{why}");
}

fn in_the_cellar(plan: &str) -> Player {
    set_up(plan).trains_in(CELLAR)
}

fn total(lifter: &Player) -> String {
    lifter.see_floor(None).bar.total
}

/// The tally's row of an exercise next time.
fn next_time(lifter: &Player, exercise: &str) -> Row {
    let id = format!("next-{exercise}");
    lifter.see_tally().changes.into_iter().find(|row| row.id == id).unwrap()
}

const SQUAT: &str = "name = \"Front squat\"\nsets = 1\nreps = 5\nload = \"75 %\"\nrpe = \"6-7\"\nnext = \
                     [\"as planned\", \"by effort\"]";

/// No effort called: 120 again, and the tally says why.
#[test]
fn front_squat_without_a_call() {
    let mut lifter = in_the_cellar(&plan(SQUAT));
    lifter.type_in("max:front-squat", "160 kg");
    session(&mut lifter, &[(5, None, DONE)]);
    let (text, _) = called(&lifter);
    assert!(text.contains("120 kg"), "{text}");
    let row = next_time(&lifter, "front-squat");
    assert_eq!(row.detail, "No effort called: no change.");
}

/// A back-off at 90 % of the 120 lifted is 108, made 107.5 by steps of 2.5 kg.
#[test]
fn a_back_off_follows_the_set_that_was_lifted() {
    let rows = "name = \"Front squat\"\nramp = \"none\"\n[[session.exercise.set]]\nreps = 5\nload = \
                \"75 %\"\n[[session.exercise.set]]\nsets = 2\nreps = 5\nload = \"90 % of top set\"";
    let rows = plan(rows).replace("\nramp = \"none\"\n\n", "\n");
    let rows = rows.trim_end().trim_end_matches("ramp = \"none\"");
    let mut lifter = in_the_cellar(rows);
    lifter.type_in("max:front-squat", "160 kg");
    lifter.begin();
    assert_eq!(total(&lifter), "120 kg");
    lifter.record(HowEnded::AsCalled);
    assert_eq!(total(&lifter), "107.5 kg");
}

/// Body 82.4 kg with 20 of help, 62.4 moved for ten with none left; with 15 of help 67.4 is good for 7.0
/// by Epley: enough for 6–10, and held where 8 are asked at least.
#[test]
fn assisted_pull_up_steps_only_where_the_range_allows_it() {
    for (reps, help, says) in [
        ("6-10", "15 kg assistance", "every set reached 10 reps: 5 kg less assistance"),
        ("8-10", "20 kg assistance", "good for about 7.0 reps by Epley, and 8 are asked"),
    ] {
        let rows = format!(
            "name = \"Assisted pull-up\"\nsets = 1\nreps = \"{reps}\"\nleft = 0\nload = \"body - 20 kg\"\n\
             next = \"less assistance\""
        );
        let mut lifter = in_the_cellar(&plan(&rows));
        lifter.type_in("body-mass", "82.4 kg");
        session(&mut lifter, &[(10, Some(0), DONE)]);
        let (text, why) = called(&lifter);
        assert!(text.contains(help), "{reps}: {text}");
        assert!(why.contains(says), "{reps}: {why}");
    }
}

/// The tally says what changes and from what; held back, it stays, today and next time; let go, it
/// changes again.
#[test]
fn a_change_is_held_back_from_the_tally() {
    let mut lifter = in_the_cellar(&plan(SQUAT));
    lifter.type_in("max:front-squat", "160 kg");
    lifter.begin();
    lifter.dispatch(intents::done(None, Some(4), DONE));
    lifter.finish();
    let press = |lifter: &mut Player| {
        let key = next_time(lifter, "front-squat").keys.remove(0);
        lifter.press(&key);
    };
    let row = next_time(&lifter, "front-squat");
    assert!(row.text.contains("115 kg"), "{row:?}");
    assert_eq!(
        row.why,
        [
            "Max 160 kg since Wed 18 Nov × 75 % = 120 kg; \u{2212}4 % for one session: 115.2 kg; rounded to \
             115 kg.",
            "Wed 18 Nov: RPE 8, target RPE 7: 4 % less.",
        ]
    );
    press(&mut lifter);
    let row = next_time(&lifter, "front-squat");
    assert!(row.text.contains("120 kg"), "{row:?}");
    assert!(row.detail.starts_with("Kept as it was."), "{row:?}");
    press(&mut lifter);
    assert!(next_time(&lifter, "front-squat").text.contains("115 kg"));
    press(&mut lifter);
    lifter.begin();
    assert_eq!(total(&lifter), "120 kg");
}

/// A stack without numbers: the lifter finds the place, the floor and the tally say it, and one the stack
/// has not is refused.
#[test]
fn a_pin_is_the_lifters_to_choose() {
    let gym = CELLAR.replace(
        "name = \"Help\"\nkind = \"assisted-pull-up\"\nfrom = \"5 kg\"\nto = \"60 kg\"\nstep = \"5 kg\"",
        "name = \"Curl\"\nkind = \"leg-curl\"\npins = [\"1\", \"2\", \"3\"]",
    );
    let mut lifter = set_up(&plan("name = \"Leg curl\"\nsets = 2\nreps = 10")).trains_in(&gym);
    lifter.begin();
    let keys = lifter.see_floor(Some("load")).panel.unwrap().keys;
    assert_eq!(
        keys.iter().map(|key| key.label.as_str()).collect::<Vec<_>>(),
        ["Pin 1", "Pin 2", "Pin 3"]
    );
    lifter.press(&keys[1]);
    assert_eq!(total(&lifter), "Pin 2");
    assert!(lifter.try_dispatch(intents::write("pin:0", "9")).is_err());
    lifter.record(HowEnded::AsCalled);
    assert_eq!(total(&lifter), "Pin 2");
    lifter.finish();
    let tally = lifter.see_tally();
    assert!(tally.done.iter().any(|row| row.text == "Set 1 of 2: pin 2 × 10"), "{:?}", tally.done);
}
