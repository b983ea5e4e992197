//! What holds for any season: good and bad days, misses, pain, absence, a plan read again in mid-block.

use barwright_domain::call::SetKind;
use barwright_domain::owners::{Change, Cutting, Owner, Why};
use barwright_domain::quantity::{Mass, Percent};
use barwright_domain::session::{Because, CallLoad, Ending};
use proptest::prelude::*;

use crate::play::{Did, Season, kg, of, plan, reps};

/// How a session of an exercise went.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Day {
    Made,
    Missed,
    Hurt,
    Interrupted,
    Lighter,
    Away(u8),
    Read,
}

fn day() -> impl Strategy<Value = Day> {
    prop_oneof![
        6 => Just(Day::Made),
        2 => Just(Day::Missed),
        1 => Just(Day::Hurt),
        1 => Just(Day::Interrupted),
        1 => Just(Day::Lighter),
        1 => (0_u8..45).prop_map(Day::Away),
        1 => Just(Day::Read),
    ]
}

fn rows(rule: &str, load: &str) -> String {
    format!(
        "[[session.exercise]]\nname = \"Back squat\"\nsets = 3\nreps = 5\nleft = 2\nramp = \"none\"\nload = \
         \"{load}\"\nnext = {rule}\n"
    )
}

fn sets(day: Day, halves: u8) -> Vec<Did> {
    let five = || reps(5).left(halves);
    match day {
        Day::Missed => vec![five(), reps(3).ended(Ending::Failed), five()],
        Day::Hurt => vec![five(), reps(2).ended(Ending::Pain), five()],
        Day::Interrupted => vec![five(), reps(2).ended(Ending::Interrupted)],
        Day::Lighter => vec![five().with("30"), five().with("30"), five().with("30")],
        Day::Made | Day::Away(_) | Day::Read => vec![five(), five(), five()],
    }
}

/// The first set of today's sheet: its own load, its cut, and what is meant.
fn today(season: &Season, index: usize) -> (Option<Mass>, Percent, Option<Mass>, Option<Cutting>) {
    let entry = season.entry(1, index, "back-squat");
    let terms = &entry.terms[0];
    let call = entry.calls.iter().find(|call| call.kind != SetKind::Ramp).unwrap();
    let CallLoad::Known(load) = &call.load else { return (None, Percent::WHOLE, None, None) };
    // What is made here is the nearest that this gym makes of what is meant, and the reason says so.
    let made = load.figure.unwrap();
    let said = call.reason.0.iter().any(|why| matches!(why, Because::Made { .. }));
    assert_eq!(load.meant != Some(made), said, "{call:#?}");
    let keep = terms.cut.map_or(Percent::WHOLE, |cut| cut.keep);
    (terms.own, keep, load.meant, terms.cut.map(|cut| cut.why))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// However the lift is spread over sessions, whatever comes between: start + step × sessions that
    /// were made outside cuts.
    #[test]
    fn a_linear_rule_gives_start_and_steps(
        days in proptest::collection::vec((day(), 1_usize..=3), 1..30),
        step in prop::sample::select(vec!["1", "2.5", "5"]),
    ) {
        let rule = format!("{{ rule = \"add when made\", step = \"{} kg\" }}", step);
        let text = plan(&["Monday", "Wednesday", "Friday"], &rows(&rule, "60 kg"));
        let mut season = Season::new(&text);
        let mut made = 0;
        for (day, index) in days {
            match day {
                Day::Away(days) => season.days(i32::from(days)),
                Day::Read => season.adopt(&text, true),
                day => {
                    let (own, keep, meant, why) = today(&season, index);
                    let expected = kg("60").checked_add(kg(step).checked_mul(made).unwrap()).unwrap();
                    prop_assert_eq!(own, Some(expected));
                    // Owner × cut is what is meant.
                    prop_assert_eq!(meant, keep.of(expected));
                    prop_assert!(keep <= Percent::WHOLE);
                    let pain = season.lifter.desk.owners.care("back-squat").pain;
                    if pain.is_some_and(|pain| pain.back.is_none()) {
                        prop_assert!(keep <= Percent::whole(90), "{:?}", why);
                    }
                    season.session(1, index, &[("back-squat", &sets(day, 4))]);
                    // What was missed and is called lighter is only made good.
                    if day == Day::Made && (why.is_none() || keep == Percent::WHOLE) {
                        made += 1;
                    }
                }
            }
        }
    }

    /// One session's evidence moves a load once: for every rule, and whatever may raise the max, no
    /// owner has more than one outcome of a session, and of a row in percent either its max moves or
    /// its next session alone.
    #[test]
    fn one_evidence_has_one_effect(
        days in proptest::collection::vec((day(), 0_u8..14), 1..20),
        raise in prop::sample::select(vec!["never", "tests", "estimates"]),
        up in any::<bool>(),
        percent in any::<bool>(),
    ) {
        let rule = format!("{{ rule = \"by effort\", up = {up} }}");
        let load = if percent { "75 %" } else { "75 kg" };
        let text = plan(&["Monday"], &rows(&rule, load))
            .replace("weeks = 8", &format!("weeks = 8\nraise_max = \"{raise}\""));
        let mut season = Season::new(&text);
        season.max("back-squat", "100");
        for (day, halves) in days {
            match day {
                Day::Away(days) => season.days(i32::from(days)),
                Day::Read => season.adopt(&text, true),
                day => {
                    let before = season.max_of("back-squat");
                    let own = today(&season, 1).0;
                    let outcomes = season.session(1, 1, &[("back-squat", &sets(day, halves))]);
                    let mut owners: Vec<_> = outcomes.iter().map(|one| one.owner.clone()).collect();
                    owners.sort();
                    owners.dedup();
                    prop_assert_eq!(owners.len(), outcomes.len());
                    let track = of(&outcomes, "track");
                    let share = |change: &Change| matches!(change, Change::NextTime(_));
                    let moves = |change: &Change| matches!(change, Change::Step(_) | Change::Load { .. });
                    if percent {
                        prop_assert!(!track.changes.iter().any(moves));
                        let rose = season.max_of("back-squat") > before;
                        let up = track.changes.iter().any(|change| {
                            matches!(change, Change::NextTime(share) if *share > Percent::WHOLE)
                        });
                        prop_assert!(!(rose && up));
                        // Up in the next session alone, and by what was said once.
                        let after = today(&season, 1);
                        prop_assert_eq!(after.0, Percent::whole(75).of(season.max_of("back-squat")));
                    } else {
                        prop_assert!(!track.changes.iter().any(share));
                        let rises = track.changes.iter().filter(|change| moves(change)).count();
                        prop_assert!(rises <= 1);
                        if track.silent || track.changes.is_empty() {
                            prop_assert_eq!(today(&season, 1).0, own);
                        }
                    }
                }
            }
        }
    }

    /// After a miss nothing above what was missed is called there before it is made; with no evidence
    /// nothing moves; and a plan that is read again unchanged changes no later call.
    #[test]
    fn nothing_moves_without_a_word(
        days in proptest::collection::vec((day(), 1_usize..=2), 1..25),
    ) {
        let rule = "{ rule = \"add when made\", step = \"2.5 kg\" }";
        let text = plan(&["Monday", "Thursday"], &rows(rule, "60 kg"));
        let mut season = Season::new(&text);
        let mut missed: [Option<Mass>; 3] = [None; 3];
        for (day, index) in days {
            let calls = |season: &Season| [season.sheet(1, 1), season.sheet(1, 2)];
            match day {
                Day::Away(days) => season.days(i32::from(days)),
                Day::Read => {
                    let before = calls(&season);
                    season.adopt(&text, true);
                    prop_assert_eq!(before, calls(&season));
                }
                day => {
                    let (_, _, meant, _) = today(&season, index);
                    if let (Some(missed), Some(meant)) = (missed[index], meant) {
                        prop_assert!(meant <= missed, "{meant:?} over {missed:?}");
                    }
                    let owner = season.lifter.desk.plan.as_ref().unwrap().rows[0].track;
                    let before = season.lifter.desk.owners.track(&Owner::Track(owner));
                    let outcomes = season.session(1, index, &[("back-squat", &sets(day, 4))]);
                    let track = of(&outcomes, "track");
                    let after = season.lifter.desk.owners.track(&Owner::Track(owner));
                    match day {
                        Day::Missed => {
                            let says = matches!(track.why, Why::Missed { .. });
                            prop_assert!(says);
                            missed[index] = missed[index].or(meant);
                        }
                        Day::Made => missed[index] = None,
                        Day::Interrupted | Day::Lighter => {
                            prop_assert!(track.silent, "{track:?}");
                            prop_assert_eq!(before, after);
                        }
                        _ => {}
                    }
                }
            }
        }
    }
}
