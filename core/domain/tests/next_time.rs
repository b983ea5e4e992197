//! What each lift should be next time: the rules on worked histories.
#![allow(clippy::unwrap_used, reason = "a test that fails says where")]

use barwright_domain::call::{Amount, EffortTarget, HowMany, Side, WeekKind};
use barwright_domain::plan::{
    Cut, LayOff, Miss, Rule, RuleKind, Step, USUAL_LAY_OFF, USUAL_MISSES,
};
use barwright_domain::progress::estimate::Formula;
use barwright_domain::progress::history::{PastSession, PastSet};
use barwright_domain::progress::makes::{Makes, Multiples};
use barwright_domain::progress::next::{Ask, Next, Question, Reason, next};
use barwright_domain::quantity::{
    Distance, Mass, Numerals, Percent, Range, RepRange, Reps, Reserve, Rpe, Seconds,
};
use barwright_domain::session::Ending;

fn kg(text: &str) -> Mass {
    Mass::read(&format!("{text} kg"), Numerals::Point).unwrap()
}

fn left(text: &str) -> Reserve {
    Reserve::read(text, Numerals::Point).unwrap()
}

fn rpe(text: &str) -> EffortTarget {
    let range = Rpe::read_range(text, Numerals::Point).unwrap();
    EffortTarget::rpe(range.from, range.to)
}

fn reps(text: &str) -> HowMany {
    HowMany::Reps(RepRange::read(text).unwrap())
}

const fn rule(kind: RuleKind) -> Rule {
    Rule { kind, step: None }
}

/// A case: what the plan says of a row, and the gym's step.
struct Case {
    rules: Vec<Rule>,
    planned: Option<Mass>,
    how_many: HowMany,
    target: Option<EffortTarget>,
    body: Mass,
    week: WeekKind,
    days_off: u16,
    held_back: bool,
    step: Mass,
}

impl Case {
    fn new(kind: RuleKind, planned: &str, how_many: &str) -> Self {
        Self {
            rules: vec![rule(kind)],
            planned: Some(kg(planned)),
            how_many: reps(how_many),
            target: None,
            body: Mass::ZERO,
            week: WeekKind::Ordinary,
            days_off: 2,
            held_back: false,
            step: kg("2.5"),
        }
    }

    fn next(&self, history: &[PastSession]) -> Next {
        let ask = Ask {
            week: self.week,
            cut: Cut::DELOAD,
            planned: self.planned,
            how_many: self.how_many,
            target: self.target,
            body: self.body,
            days_off: self.days_off,
            rules: &self.rules,
            misses: &USUAL_MISSES,
            lay_off: &USUAL_LAY_OFF,
            ease_in: Cut::EASE_IN,
            held_back: self.held_back,
            formula: Formula::Epley,
        };
        next(&ask, history, &Multiples(self.step))
    }

    /// A session as this case would have called it, with these repetitions in its sets.
    fn did(&self, meant: &str, done: &[Reps]) -> PastSession {
        let sets = done.iter().enumerate().map(|(place, done)| PastSet {
            place: u8::try_from(place).unwrap(),
            side: None,
            made: Multiples(self.step).nearest(kg(meant)),
            asked: self.how_many,
            target: self.target,
            done: Amount::Reps(*done),
            left: None,
            ending: Ending::AsCalled,
            helped: false,
        });
        PastSession {
            kind: WeekKind::Ordinary,
            planned: self.planned,
            meant: Some(kg(meant)),
            made: Multiples(self.step).nearest(kg(meant)),
            body: self.body,
            sets_called: u8::try_from(done.len()).unwrap(),
            each_side: false,
            sets: sets.collect(),
        }
    }
}

fn called(mut session: PastSession, text: &str) -> PastSession {
    for set in &mut session.sets {
        set.left = Some(left(text));
    }
    session
}

fn ended(mut session: PastSession, place: usize, ending: Ending) -> PastSession {
    session.sets[place].ending = ending;
    session
}

fn meant(next: &Next) -> String {
    next.meant.unwrap().kilograms()
}

fn made(next: &Next) -> String {
    next.made.unwrap().kilograms()
}

// The worked cases.

/// Front squat, max 160 kg, 1 × 5 at 75 % = 120, RPE 6–7. Called 8: one point past the edge, two
/// halves, 2 × 2 % = −4 %: 120 · 0.96 = 115.2, which 2.5 kg steps make 115.
#[test]
fn front_squat_by_effort() {
    let case = Case { target: Some(rpe("6-7")), ..Case::new(RuleKind::ByEffort, "120", "5") };
    let seventy_five = Percent::whole(75).of(kg("160")).unwrap();
    assert_eq!(case.planned, Some(seventy_five));

    let harder = case.next(&[called(case.did("120", &[5]), "2")]);
    assert_eq!((meant(&harder), made(&harder)), ("115.2".into(), "115".into()));
    let reason = Reason::OffTarget {
        called: left("2"),
        edge: left("3"),
        change: Percent::whole(-4),
        set: 1,
    };
    assert_eq!(harder.reason, reason);

    let not_called = case.next(&[case.did("120", &[5])]);
    assert_eq!((made(&not_called), not_called.reason), ("120".into(), Reason::NotCalled));

    // A back-off at 90 % of the 120 lifted is 108, made 107.5.
    let back_off = Percent::whole(90).of(kg("120")).unwrap();
    assert_eq!(Multiples(kg("2.5")).nearest(back_off), Some(kg("107.5")));
}

/// Body mass 82.4, assistance 20, moved 62.4 × 10, none left. With assistance 15 moved 67.4:
/// Epley gives 7.0 repetitions. Range 6–10: step. Range 8–10: hold.
#[test]
fn assisted_pull_up() {
    let assisted = |range| Case {
        body: kg("82.4"),
        step: kg("5"),
        ..Case::new(RuleKind::LessAssistance, "-20", range)
    };
    let case = assisted("6-10");
    let step = case.next(&[called(case.did("-20", &[10]), "0")]);
    assert_eq!(made(&step), "-15");
    assert!(matches!(step.reason, Reason::TopReached { rule: RuleKind::LessAssistance, .. }));

    let case = assisted("8-10");
    let hold = case.next(&[called(case.did("-20", &[10]), "0")]);
    assert_eq!(made(&hold), "-20");
    let Reason::StepTooBig { step_to, expected, floor, .. } = hold.reason else {
        panic!("{:?}", hold.reason)
    };
    assert_eq!((step_to, expected.hundredths(), floor), (kg("-15"), 703, 8));
    // The repetitions go on past the range.
    assert_eq!((hold.how_many, hold.aim), (reps("8-11"), Some(Amount::Reps(11))));

    // Eleven: 62.4 · (1 + 11/30) = 85.28, and 30 · (85.28 / 67.4 − 1) = 7.96. Twelve: 8.88.
    let held = case.next(&[called(case.did("-20", &[11]), "0")]);
    assert_eq!((made(&held), held.how_many), ("-20".into(), reps("8-12")));
    assert_eq!(made(&case.next(&[called(case.did("-20", &[12]), "0")])), "-15");
}

/// Floor press 4 × 7 at 60 kg: last set 9; next session cut before it; then last set 9 → 62.5.
/// With a last set of 8 in between → 60. With pain → 60 and a question.
#[test]
fn floor_press_two_for_two() {
    let case = Case::new(RuleKind::TwoForTwo, "60", "7");
    let nine = case.did("60", &[7, 7, 7, 9]);
    let cut_short = PastSession { sets_called: 4, ..case.did("60", &[7, 7]) };

    let up = case.next(&[nine.clone(), cut_short.clone(), nine.clone()]);
    assert_eq!(made(&up), "62.5");
    assert_eq!(up.reason, Reason::TwoForTwo { goal: 7, done: [9, 9] });

    let once = case.next(&[nine.clone(), cut_short]);
    assert_eq!(made(&once), "60");
    assert_eq!(once.reason, Reason::NotYetTwo { goal: 7, done: 9, times: 1 });

    let eight = case.did("60", &[7, 7, 7, 8]);
    let broken = case.next(&[nine.clone(), eight, nine.clone()]);
    assert_eq!(made(&broken), "60");
    assert_eq!(broken.reason, Reason::NotYetTwo { goal: 7, done: 9, times: 1 });

    let pain = case.next(&[nine.clone(), ended(nine, 3, Ending::Pain)]);
    assert_eq!((made(&pain), pain.reason), ("60".into(), Reason::Pain));
    assert_eq!(pain.question, Some(Question::Pain));
}

// The order of things.

#[test]
fn without_history_it_is_the_plans_number() {
    let case = Case::new(RuleKind::TwoForTwo, "61", "7");
    let first = case.next(&[]);
    assert_eq!((meant(&first), made(&first)), ("61".into(), "60".into()));
    assert_eq!(first.reason, Reason::FirstTime);
    let by_feel = Case { planned: None, ..case }.next(&[]);
    assert_eq!((by_feel.meant, by_feel.reason), (None, Reason::ByFeel));
}

/// Repeat, then −5 %, then hold and ask; a session that succeeds begins anew.
#[test]
fn misses() {
    let case = Case::new(RuleKind::DoubleProgression, "100", "6-8");
    let miss = |meant| case.did(meant, &[6, 5]);
    let once = case.next(&[miss("100")]);
    assert_eq!(meant(&once), "100");
    assert_eq!(once.reason, Reason::Missed { times: 1, then: Miss::Repeat });

    let twice = case.next(&[miss("100"), miss("100")]);
    assert_eq!(meant(&twice), "95");
    assert_eq!(twice.reason, Reason::Missed { times: 2, then: Miss::Less(Percent::whole(5)) });

    let thrice = case.next(&[miss("100"), miss("100"), miss("95")]);
    assert_eq!((meant(&thrice), thrice.question), ("95".into(), Some(Question::Missed)));

    let anew = case.next(&[miss("100"), miss("100"), case.did("95", &[7, 6]), miss("95")]);
    assert_eq!(anew.reason, Reason::Missed { times: 1, then: Miss::Repeat });
}

#[test]
fn a_failed_repetition_past_the_goal_is_no_miss() {
    let case = Case::new(RuleKind::DoubleProgression, "100", "6-8");
    let failed = case.next(&[ended(case.did("100", &[8, 7]), 1, Ending::Failed)]);
    assert!(matches!(failed.reason, Reason::BelowTop { .. }), "{:?}", failed.reason);
    // But it is none left, whatever the target.
    let case = Case { target: Some(rpe("8")), ..Case::new(RuleKind::ByEffort, "100", "6") };
    let failed = case.next(&[ended(case.did("100", &[6]), 0, Ending::Failed)]);
    assert_eq!(meant(&failed), "92");
}

/// Interrupted, or ended by the equipment: nothing is missed, and nothing reached.
#[test]
fn what_says_nothing() {
    let case = Case::new(RuleKind::DoubleProgression, "100", "6-8");
    for ending in [Ending::Interrupted, Ending::Equipment] {
        let silent = case.next(&[ended(case.did("100", &[8, 3]), 1, ending)]);
        assert_eq!((meant(&silent), silent.reason), ("100".into(), Reason::NoEvidence));
    }
    let none_begun = PastSession { sets_called: 3, ..case.did("100", &[]) };
    assert_eq!(case.next(&[none_begun]).reason, Reason::NoEvidence);
    // The sets that were begun reached the top, the others say nothing.
    let cut_short = PastSession { sets_called: 3, ..case.did("100", &[8, 8]) };
    assert_eq!(case.next(&[cut_short]).reason, Reason::NoEvidence);
}

#[test]
fn pain_asks_even_after_a_lighter_week_and_never_goes_up() {
    let case = Case::new(RuleKind::AsPlanned, "110", "5");
    let mut sore = ended(case.did("90", &[5]), 0, Ending::Pain);
    sore.kind = WeekKind::Deload;
    sore.planned = Some(kg("90"));
    let held = case.next(&[case.did("100", &[5]), sore]);
    assert_eq!((meant(&held), held.question), ("90".into(), Some(Question::Pain)));
}

/// To 10 days nothing, to 3 weeks −10 % and half the sets, to 8 weeks −20 %, longer the ease-in.
#[test]
fn days_off() {
    let history = |case: &Case| [case.did("100", &[8, 8])];
    for (days_off, load, sets_off) in [
        (10, "102.5", 0),
        (11, "90", 50),
        (21, "90", 50),
        (22, "80", 0),
        (56, "80", 0),
        (57, "90", 50),
    ] {
        let case = Case { days_off, ..Case::new(RuleKind::DoubleProgression, "100", "6-8") };
        let next = case.next(&history(&case));
        assert_eq!(made(&next), load, "{days_off}");
        assert_eq!(next.sets_off, Percent::whole(sets_off), "{days_off}");
    }
    let longest: LayOff = USUAL_LAY_OFF[2];
    assert!(longest.ease_in);
}

/// A lighter week takes its part off what the rule has come to, and is no evidence after.
#[test]
fn deload_week() {
    let case = Case::new(RuleKind::DoubleProgression, "100", "6-8");
    let before = case.did("110", &[7, 7]);
    // The plan's 100 came to 90: nine tenths of the 110 that the rule had come to.
    let deload = Case {
        week: WeekKind::Deload,
        planned: Some(kg("90")),
        ..Case::new(RuleKind::DoubleProgression, "90", "6-8")
    };
    let light = deload.next(std::slice::from_ref(&before));
    assert_eq!(meant(&light), "99");
    assert_eq!(light.reason, Reason::Eased { week: WeekKind::Deload });
    let done = PastSession { kind: WeekKind::Deload, ..deload.did("99", &[8, 8]) };
    let after = case.next(&[before, done]);
    assert_eq!(meant(&after), "110");
    assert!(matches!(after.reason, Reason::BelowTop { .. }));
}

#[test]
fn a_lighter_week_of_a_load_by_feel() {
    let case = Case {
        week: WeekKind::Deload,
        planned: None,
        ..Case::new(RuleKind::DoubleProgression, "0", "6-8")
    };
    assert_eq!(meant(&case.next(&[case.did("50", &[8, 8])])), "45");
}

// Rules.

#[test]
fn the_plans_percentages_by_week() {
    let week_1 = Case::new(RuleKind::AsPlanned, "120", "5");
    let week_2 = Case::new(RuleKind::AsPlanned, "124", "5");
    let next = week_2.next(&[week_1.did("120", &[5])]);
    assert_eq!((meant(&next), made(&next)), ("124".into(), "125".into()));
    assert_eq!(next.reason, Reason::AsPlanned);
}

/// The plan's 75 % of 160 becomes 77.5 %: 124. What effort took off stays off, in proportion:
/// 115.2 · 124 / 120 = 119.04.
#[test]
fn percentages_and_effort_go_together() {
    let rules = vec![rule(RuleKind::AsPlanned), rule(RuleKind::ByEffort)];
    let target = Some(rpe("6-7"));
    let week = |planned| Case {
        rules: rules.clone(),
        target,
        ..Case::new(RuleKind::ByEffort, planned, "5")
    };
    let (one, two) = (week("120"), week("124"));
    let next = two.next(&[called(one.did("120", &[5]), "2"), called(one.did("115.2", &[5]), "3")]);
    assert_eq!((meant(&next), made(&next)), ("119.04".into(), "120".into()));
    assert_eq!(next.reason, Reason::OnTarget { called: left("3") });
}

/// A rounding is no progress: meant 114 is made 115, and a step from it makes 117.5, not 115 again.
#[test]
fn steps_go_from_what_was_meant() {
    let case = Case::new(RuleKind::DoubleProgression, "114", "6-8");
    let next = case.next(&[case.did("114", &[8, 8])]);
    assert_eq!(meant(&next), "117.5");
    // A step that the coach names adds to what was meant, and shows when the plates make it.
    let mut case = Case::new(RuleKind::DoubleProgression, "60", "6-8");
    case.rules = vec![Rule { kind: RuleKind::DoubleProgression, step: Some(Step::Mass(kg("1"))) }];
    let next = case.next(&[case.did("60", &[8, 8])]);
    assert_eq!((meant(&next), made(&next)), ("61".into(), "60".into()));
    let next = case.next(&[case.did("61", &[8, 8])]);
    assert_eq!((meant(&next), made(&next)), ("62".into(), "62.5".into()));
}

#[test]
fn below_the_top_there_is_something_to_aim_for() {
    let case = Case::new(RuleKind::DoubleProgression, "60", "6-8");
    let next = case.next(&[case.did("60", &[8, 7, 6])]);
    assert_eq!((meant(&next), next.aim), ("60".into(), Some(Amount::Reps(7))));
    assert_eq!(next.how_many, reps("6-8"));
}

#[test]
fn seconds_and_metres() {
    let hold = Range { from: Seconds::new(20), to: Seconds::new(30) };
    let mut case = Case::new(RuleKind::DoubleProgression, "10", "1");
    case.how_many = HowMany::Seconds(hold);
    let held = |seconds| {
        let mut session = case.did("10", &[0, 0]);
        for set in &mut session.sets {
            set.done = Amount::Seconds(Seconds::new(seconds));
        }
        session
    };
    assert_eq!(case.next(&[held(25)]).aim, Some(Amount::Seconds(Seconds::new(30))));
    assert_eq!(made(&case.next(&[held(30)])), "12.5");

    let forty = Distance::from_millimetres(40_000);
    case.how_many = HowMany::Metres(Range { from: Distance::from_millimetres(30_000), to: forty });
    let mut session = case.did("10", &[0]);
    session.sets[0].done = Amount::Metres(forty);
    assert_eq!(made(&case.next(&[session])), "12.5");
}

#[test]
fn the_weaker_side_governs() {
    let case = Case::new(RuleKind::DoubleProgression, "20", "8-10");
    let mut session = PastSession { each_side: true, ..case.did("20", &[10, 9]) };
    session.sets[0].place = 0;
    session.sets[0].side = Some(Side::Left);
    session.sets[1].place = 0;
    session.sets[1].side = Some(Side::Right);
    session.sets_called = 1;
    let next = case.next(std::slice::from_ref(&session));
    let nine = Amount::Reps(9);
    assert!(matches!(next.reason, Reason::BelowTop { done, .. } if done == nine));
    session.sets[1].done = Amount::Reps(10);
    assert_eq!(made(&case.next(std::slice::from_ref(&session))), "22.5");
    // One side alone is not the whole set.
    session.sets.truncate(1);
    assert_eq!(case.next(&[session]).reason, Reason::NoEvidence);
}

/// From the last bit of help to none, and then the next rule adds load.
#[test]
fn help_ends_at_none_and_load_follows() {
    let mut case = Case {
        body: kg("80"),
        step: kg("2.5"),
        ..Case::new(RuleKind::LessAssistance, "-20", "5-8")
    };
    case.rules = vec![
        Rule { kind: RuleKind::LessAssistance, step: Some(Step::Mass(kg("5"))) },
        rule(RuleKind::MoreAddedLoad),
    ];
    let none = case.next(&[called(case.did("-2.5", &[8]), "1")]);
    assert_eq!(made(&none), "0");
    let added = case.next(&[called(case.did("0", &[8]), "1")]);
    assert_eq!(made(&added), "2.5");
    assert!(matches!(added.reason, Reason::TopReached { rule: RuleKind::MoreAddedLoad, .. }));
}

#[test]
fn nothing_heavier_extends_the_repetitions() {
    struct UpTo(Mass);
    impl Makes for UpTo {
        fn nearest(&self, load: Mass) -> Option<Mass> {
            Multiples(kg("2")).nearest(load.min(self.0))
        }
        fn above(&self, load: Mass) -> Option<Mass> {
            Multiples(kg("2")).above(load).filter(|above| *above <= self.0)
        }
    }
    let case = Case::new(RuleKind::DoubleProgression, "30", "8-10");
    let ask = Ask {
        week: WeekKind::Ordinary,
        cut: Cut::default(),
        planned: case.planned,
        how_many: case.how_many,
        target: None,
        body: Mass::ZERO,
        days_off: 2,
        rules: &case.rules,
        misses: &USUAL_MISSES,
        lay_off: &[],
        ease_in: Cut::default(),
        held_back: false,
        formula: Formula::Epley,
    };
    let held = next(&ask, &[case.did("30", &[10, 10])], &UpTo(kg("30")));
    assert_eq!((held.made, held.reason), (Some(kg("30")), Reason::NothingHeavier));
    assert_eq!((held.how_many, held.aim), (reps("8-11"), Some(Amount::Reps(11))));
}

/// An unnumbered stack has history and repetitions, and no load to step.
#[test]
fn a_pin_without_a_number() {
    let case = Case { planned: None, ..Case::new(RuleKind::DoubleProgression, "0", "8-10") };
    let mut session = case.did("0", &[10, 10]);
    (session.meant, session.made) = (None, None);
    for set in &mut session.sets {
        set.made = None;
    }
    let next = case.next(&[session]);
    assert_eq!((next.meant, next.made), (None, None));
    assert_eq!(next.reason, Reason::NextPlace { top: Amount::Reps(10) });
}

#[test]
fn effort_easier_than_asked_adds_load() {
    let case = Case { target: Some(rpe("8")), ..Case::new(RuleKind::ByEffort, "100", "5") };
    // RPE 7 is a point under: +4 %.
    assert_eq!(meant(&case.next(&[called(case.did("100", &[5]), "3")])), "104");
    // A call past five left is no measure: it counts as five, three reps from the edge, +12 %.
    assert_eq!(meant(&case.next(&[called(case.did("100", &[5]), "12")])), "112");
    // The hardest call governs.
    let mut session = called(case.did("100", &[5, 5, 5]), "3");
    session.sets[2].left = Some(left("1"));
    assert_eq!(meant(&case.next(&[session])), "96");
}

#[test]
fn a_lifter_may_hold_a_change_back() {
    let case = Case { held_back: true, ..Case::new(RuleKind::DoubleProgression, "60", "6-8") };
    let next = case.next(&[case.did("60", &[8, 8])]);
    assert_eq!((made(&next), next.reason), ("60".into(), Reason::HeldBack));
}

/// At another load the sessions do not run together: after a step, two for two begins anew.
#[test]
fn two_for_two_begins_anew_after_a_step() {
    let case = Case::new(RuleKind::TwoForTwo, "60", "7");
    let history = [case.did("60", &[7, 9]), case.did("60", &[7, 9]), case.did("62.5", &[7, 9])];
    let next = case.next(&history);
    assert_eq!(made(&next), "62.5");
    assert_eq!(next.reason, Reason::NotYetTwo { goal: 7, done: 9, times: 1 });
}

#[test]
fn a_test_week_is_as_planned_and_no_evidence() {
    let case = Case { week: WeekKind::Test, ..Case::new(RuleKind::TwoForTwo, "120", "1") };
    let next = case.next(&[case.did("60", &[9]), case.did("60", &[9])]);
    assert_eq!((made(&next), next.reason), ("120".into(), Reason::Test));
}

/// Fine plates make half kilograms, but the usual step is 2.5: unless that is more than a tenth of
/// what is moved, or too much for the range.
#[test]
fn fine_plates_do_not_make_fine_steps() {
    struct FinePlates;
    impl Makes for FinePlates {
        fn nearest(&self, load: Mass) -> Option<Mass> {
            Multiples(kg("0.5")).nearest(load)
        }
        fn above(&self, load: Mass) -> Option<Mass> {
            Multiples(kg("0.5")).above(load)
        }
        fn usual_step(&self) -> Mass {
            kg("2.5")
        }
    }
    let next_of = |meant: &str, left_halves: Option<u8>| {
        let case = Case { step: kg("0.5"), ..Case::new(RuleKind::DoubleProgression, meant, "8-9") };
        let mut session = case.did(meant, &[9, 9]);
        for set in &mut session.sets {
            set.left = left_halves.and_then(Reserve::from_halves);
        }
        let ask = Ask {
            week: WeekKind::Ordinary,
            cut: Cut::default(),
            planned: case.planned,
            how_many: case.how_many,
            target: None,
            body: Mass::ZERO,
            days_off: 2,
            rules: &case.rules,
            misses: &USUAL_MISSES,
            lay_off: &[],
            ease_in: Cut::default(),
            held_back: false,
            formula: Formula::Epley,
        };
        made(&next(&ask, &[session], &FinePlates))
    };
    assert_eq!(next_of("60", None), "62.5");
    assert_eq!(next_of("20", None), "20.5");
    assert_eq!(next_of("25", None), "27.5");
    // Nine with none left at 60 is 78; at 62.5 that leaves 7.44 repetitions, at 60.5 8.68.
    assert_eq!(next_of("60", Some(0)), "60.5");
    // At 8 with none left and a step of 2.5 on 100: 130 / 102.5 leaves 8.05.
    assert_eq!(next_of("100", Some(0)), "102.5");
}

// Whatever was done.

mod any {
    use super::*;
    use proptest::prelude::*;

    const KINDS: [RuleKind; 6] = [
        RuleKind::AsPlanned,
        RuleKind::DoubleProgression,
        RuleKind::TwoForTwo,
        RuleKind::ByEffort,
        RuleKind::LessAssistance,
        RuleKind::MoreAddedLoad,
    ];
    const ENDINGS: [Ending; 6] = [
        Ending::AsCalled,
        Ending::Failed,
        Ending::Form,
        Ending::Pain,
        Ending::Interrupted,
        Ending::Equipment,
    ];
    const WEEKS: [WeekKind; 4] =
        [WeekKind::Ordinary, WeekKind::EaseIn, WeekKind::Deload, WeekKind::Test];

    fn load() -> impl Strategy<Value = Option<Mass>> {
        // Half kilograms, and now and then the most that a reader takes.
        let usual = (-60_i64..600).prop_map(|halves| Mass::from_grams(halves * 500));
        prop_oneof![8 => usual, 1 => Just(None), 1 => Just(Some(kg("5000")))]
    }

    fn session(how_many: HowMany) -> impl Strategy<Value = PastSession> {
        let set = (
            (0_u8..5, prop::option::of(prop::bool::ANY)),
            (0_u16..20, prop::option::of(0_u8..=40)),
            prop::sample::select(&ENDINGS[..]),
            prop::bool::ANY,
            load(),
        );
        let sets = prop::collection::vec(set, 0..6);
        (prop::sample::select(&WEEKS[..]), load(), load(), 0_u8..6, prop::bool::ANY, sets).prop_map(
            move |(kind, planned, meant, sets_called, each_side, sets)| PastSession {
                kind,
                planned,
                meant,
                made: meant.and_then(|meant| Multiples(kg("2.5")).nearest(meant)),
                body: Mass::ZERO,
                sets_called,
                each_side,
                sets: sets
                    .into_iter()
                    .map(|((place, side), (done, left), ending, helped, made)| PastSet {
                        place,
                        side: side.map(|left| if left { Side::Left } else { Side::Right }),
                        made,
                        asked: how_many,
                        target: Some(rpe("7-8")),
                        done: Amount::Reps(done),
                        left: left.and_then(Reserve::from_halves),
                        ending,
                        helped,
                    })
                    .collect(),
            },
        )
    }

    proptest! {
        /// Only a rule that says so adds load to what was meant or planned; what was made is
        /// always what the gym makes of what was meant; pain and misses never add.
        #[test]
        fn nothing_rises_without_a_reason(
            rules in prop::collection::vec(prop::sample::select(&KINDS[..]), 0..3),
            history in prop::collection::vec(session(reps("6-8")), 0..6),
            planned in load(),
            days_off in 0_u16..80,
            week in prop::sample::select(&WEEKS[..]),
        ) {
            let case = Case {
                rules: rules.into_iter().map(rule).collect(),
                planned,
                days_off,
                week,
                ..Case::new(RuleKind::AsPlanned, "0", "6-8")
            };
            let next = case.next(&history);
            prop_assert_eq!(
                next.made,
                next.meant.and_then(|meant| Multiples(case.step).nearest(meant))
            );
            let (Some(meant), Some(latest)) = (next.meant, history.last()) else { return Ok(()) };
            let last = history.iter().rev().find(|past| past.kind == WeekKind::Ordinary);
            match next.reason {
                Reason::Pain => prop_assert!(latest.meant.is_none_or(|most| meant <= most)),
                Reason::Missed { .. } => {
                    let most = last.and_then(|last| last.meant);
                    prop_assert!(most.is_none_or(|most| meant <= most));
                }
                Reason::OffTarget { change, .. } => prop_assert!(change != Percent::default()),
                Reason::TopReached { top, .. } => prop_assert_eq!(top, Amount::Reps(8)),
                Reason::TwoForTwo { goal, done } => {
                    prop_assert!(done.iter().all(|done| *done >= goal + 2));
                }
                _ => {}
            }
        }
    }
}
