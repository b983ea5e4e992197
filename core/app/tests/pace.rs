//! A partner's taps by the engine: what they record, what they show at once, and what the lifter's own
//! calls make of them.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use barwright_app::contract::{FloorScreen, HowEnded, Intent};
use barwright_player::clock::{booted, pass};
use barwright_player::{Plan, Player, intents, screens};

const SQUAT: &str =
    "name = \"Back squat\"\nsets = 14\nreps = \"4-8\"\nload = \"60 kg\"\nleft = \"0-4\"";

fn begun(player: Player, lines: &str) -> Player {
    let plan = Plan::new("Off-season", 4).session("One").with("[[session.exercise]]").with(lines);
    let mut lifter = player.taking(0).takes_up(&plan.with("ramp = \"none\"").text());
    lifter.begin();
    lifter
}

fn set_up(lines: &str) -> Player {
    begun(Player::at(booted()), lines)
}

/// Taps the partner's key: as the first repetition begins, and as each is over.
fn partner(lifter: &mut Player, reps_ms: &[i64]) -> FloorScreen {
    let mut floor = lifter.see_floor(Some("pace"));
    for wait in std::iter::once(&0).chain(reps_ms) {
        pass(&mut lifter.now, *wait);
        let panel = floor.panel.unwrap();
        lifter.press(panel.keys.iter().find(|key| key.id == "rep").unwrap());
        floor = lifter.floor();
    }
    floor
}

fn record(lifter: &mut Player, amount: Option<u32>, left_halves: Option<u8>) -> FloorScreen {
    screens::floor(lifter.dispatch(intents::done(amount, left_halves, HowEnded::AsCalled)))
}

fn rows(floor: &FloorScreen) -> Vec<&str> {
    floor.panel.as_ref().unwrap().rows.iter().map(|row| row.text.as_str()).collect()
}

/// 2.0, 2.0, 2.1, 2.4, 2.6, 2.8 s: the last two, 5.4 s, took 35 % longer than the first two, 4.0 s.
#[test]
fn the_slowing_is_shown_at_once_and_the_taps_are_the_reps() {
    let mut lifter = set_up(SQUAT);
    assert_eq!(
        rows(&lifter.see_floor(Some("pace")))[0],
        "A partner's tap, never the lifter's under a bar."
    );
    let floor = partner(&mut lifter, &[2_000, 2_000, 2_100, 2_400, 2_600, 2_800]);
    assert_eq!(
        rows(&floor)[1..],
        ["6 reps tapped", "The last two reps took 35 % longer than the first two."]
    );
    assert_eq!(floor.thumb.figure.unwrap().text, "6", "what was tapped is what one tap records");
    let floor = record(&mut lifter, None, Some(2));
    assert_eq!(
        floor.notices,
        [
            "The last two reps took 35 % longer than the first two.",
            "0 sets with taps and an effort call so far; it takes 10 to judge by.",
        ]
    );
    // The next set has no taps, and nothing is said of it.
    assert!(record(&mut lifter, None, Some(2)).notices.is_empty());
}

/// Another number of repetitions than was tapped: someone missed one, and nothing is made of it.
#[test]
fn taps_that_do_not_fit_say_nothing() {
    let mut lifter = set_up(SQUAT);
    partner(&mut lifter, &[2_000, 2_000, 2_000, 2_000]);
    assert!(record(&mut lifter, Some(5), Some(2)).notices.is_empty());
}

/// Ten sets in which each tenth of slowing was half a repetition fewer left: the eleventh, 30 % slower,
/// is about 4 − 1.5 = 2.5 left. Ten sets are the least.
#[test]
fn the_lifters_own_calls_make_a_guess_of_it_with_its_uncertainty() {
    let mut lifter = set_up(SQUAT);
    for nth in 0..10_i64 {
        let slower = (nth % 6) * 10;
        let last = 2_000 + 20 * slower;
        partner(&mut lifter, &[2_000, 2_000, last, last]);
        let floor = record(&mut lifter, None, Some(u8::try_from(8 - nth % 6).unwrap()));
        assert!(floor.notices[1].contains("it takes 10 to judge by"), "{:?}", floor.notices);
    }
    partner(&mut lifter, &[2_000, 2_000, 2_600, 2_600]);
    assert_eq!(
        record(&mut lifter, None, None).notices[1],
        "By your own calls on 10 such sets that is about 2.5 in reserve, give or take 0.5: a guess, not a fact."
    );
}

/// A tap is on disk before it is answered: a device that ends in the middle of a set has them all.
#[test]
fn a_device_that_ends_in_the_middle_keeps_the_taps_and_undo_takes_one_back() {
    let mut lifter = begun(Player::stored(booted(), "en-GB"), SQUAT);
    partner(&mut lifter, &[2_000, 2_000, 2_500]);
    lifter.killed();
    assert_eq!(rows(&lifter.see_floor(Some("pace")))[1], "3 reps tapped");
    lifter.dispatch(Intent::Undo);
    assert_eq!(rows(&lifter.see_floor(Some("pace")))[1], "2 reps tapped");
}

/// "Stop when the pace drops": a fifth of velocity lost is a quarter longer (Pareja-Blanco et al. 2017,
/// published). 2.4 s is 20 % longer and goes on; 2.5 s is 25 %.
#[test]
fn a_stop_rule_of_pace_is_judged_by_the_same_taps() {
    let lines = "name = \"Push-up\"\nsets = 2\nreps = \"4 or more, stop when the pace drops\"";
    for (last, stops) in [(2_400, false), (2_500, true)] {
        let mut lifter = set_up(lines);
        let floor = partner(&mut lifter, &[2_000, 2_000, 2_000, last, last]);
        let said = rows(&floor).contains(&"You have slowed: end the set.");
        assert_eq!(said, stops, "{:?}", rows(&floor));
    }
}

#[test]
fn a_tempo_has_its_beats_and_a_hold_takes_no_taps() {
    let tempo = format!("{SQUAT}\ntempo = \"3-1-X-0\"");
    let floor = set_up(&tempo).see_floor(None);
    let beats: Vec<_> = floor.beats.iter().map(|beat| (beat.says.as_str(), beat.ms)).collect();
    assert_eq!(beats, [("lower", 3_000), ("pause", 1_000), ("lift", 0)]);
    assert!(set_up(SQUAT).see_floor(None).beats.is_empty());
    let mut lifter = set_up("name = \"Plank\"\nsets = 2\nseconds = 30");
    let floor = lifter.see_floor(Some("pace"));
    assert!(floor.panel.is_none());
    let tap = Intent::TapRep { part: floor.part.unwrap() };
    assert!(lifter.try_dispatch(tap).is_err());
    let late = Intent::TapRep { part: "9.9.9".into() };
    assert!(lifter.try_dispatch(late).is_err());
}
