//! Rules for next time, and the test of a max.

use barwright_domain::call::{Amount, EffortTarget, HowMany, WeekKind};
use barwright_domain::catalogue::Region;
use barwright_domain::plan::{Cut, Rule, RuleKind};
use barwright_domain::progress::estimate::Formula;
use barwright_domain::progress::history::{PastSession, PastSet};
use barwright_domain::progress::makes::Multiples;
use barwright_domain::progress::next::{Ask, Next, next};
use barwright_domain::progress::test_day::{
    After, FIRST_SINGLE, MOST_TRIES, REST_BETWEEN_TRIES, Test, Try,
};
use barwright_domain::quantity::{Mass, MassUnit, Percent, RepRange, Reps, Rpe};
use barwright_domain::session::Ending;

fn kg(count: i32) -> Mass {
    Mass::whole(count, MassUnit::Kilogram)
}

/// A plain session at 100 kg and what it leads to, with a gym that makes every tenth of a kilogram.
fn after(kind: RuleKind, target: Option<EffortTarget>, past: &[(Reps, Option<Rpe>)]) -> Next {
    after_at(kg(100), Multiples(Mass::from_grams(100).unwrap()), kind, target, past)
}

/// The same at another load and in another gym.
fn after_at(
    load: Mass,
    gym: Multiples,
    kind: RuleKind,
    target: Option<EffortTarget>,
    past: &[(Reps, Option<Rpe>)],
) -> Next {
    let how_many = HowMany::Reps(RepRange::just(7));
    let sessions: Vec<_> = past
        .iter()
        .map(|(done, called)| PastSession {
            kind: WeekKind::Ordinary,
            planned: Some(load),
            meant: Some(load),
            made: Some(load),
            body: Mass::ZERO,
            sets_called: 1,
            each_side: false,
            sets: vec![PastSet {
                place: 0,
                side: None,
                made: Some(load),
                asked: how_many,
                target,
                done: Amount::Reps(*done),
                left: called.map(Rpe::reserve),
                ending: Ending::AsCalled,
                helped: false,
            }],
        })
        .collect();
    let ask = Ask {
        week: WeekKind::Ordinary,
        cut: Cut::default(),
        planned: Some(load),
        how_many,
        target,
        body: Mass::ZERO,
        days_off: 3,
        rules: &[Rule { kind, step: None }],
        misses: &[],
        lay_off: &[],
        ease_in: Cut::default(),
        held_back: false,
        formula: Formula::Epley,
    };
    next(&ask, &sessions, &gym)
}

fn rpe(halves: u8) -> Rpe {
    Rpe::from_halves(halves).unwrap()
}

/// Helms et al. 2018, Front Physiol 9:247, published at second hand: the load moves 2 % for each
/// 0.5 RPE outside the target range, 4 % a point.
#[test]
fn two_percent_for_half_a_point() {
    let target = Some(EffortTarget::rpe(rpe(14), rpe(16)));
    for (called, hundredths) in
        [(12, 10_400), (13, 10_200), (14, 10_000), (16, 10_000), (17, 9_800), (20, 9_200)]
    {
        let next = after(RuleKind::ByEffort, target, &[(7, Some(rpe(called)))]);
        assert_eq!(next.meant, Percent::from_hundredths(hundredths).of(kg(100)), "{called}");
    }
}

/// "2 for 2", NSCA Essentials, ch. 17, published: two or more repetitions over the goal in the last
/// set in two consecutive sessions → more load. ACSM Position Stand 2009, MSSE 41(3):687–708,
/// published: +2–10 %, when one or two over the goal.
#[test]
fn two_for_two() {
    let last = |past: &[Reps]| {
        let past: Vec<_> = past.iter().map(|reps| (*reps, None)).collect();
        after(RuleKind::TwoForTwo, None, &past).meant.unwrap() > kg(100)
    };
    assert!(last(&[9, 9]) && last(&[10, 9]));
    assert!(!last(&[9]) && !last(&[9, 8]) && !last(&[8, 9]) && !last(&[9, 9, 8]));
}

/// ACSM Position Stand 2009, MSSE 41(3):687–708, published: +2–10 % when one or two repetitions over
/// the goal on two consecutive sessions. With the smallest pair of most gyms (2.5 kg on the bar:
/// common practice) that holds from 25 to 125 kg.
#[test]
fn a_step_of_two_to_ten_percent() {
    let gym = Multiples(Mass::from_grams(2_500).unwrap());
    for load in [25, 40, 60, 100, 125] {
        let twice = [(9, None), (9, None)];
        let next = after_at(kg(load), gym, RuleKind::TwoForTwo, None, &twice);
        let rise = next.meant.unwrap().nanograms() - kg(load).nanograms();
        let share = rise * 10_000 / kg(load).nanograms();
        assert!((200..=1_000).contains(&share), "{load}: {share}");
    }
}

/// NSCA Essentials, 1RM protocol, published: steps of 5–10 % (upper body) and 10–20 % (lower) to
/// the singles; 5–10 easy repetitions and 1 min, 3–5 and 2 min, 2–3 and 2–4 min, 2–4 min between
/// singles; after a miss −2.5–5 % (upper) and −5–10 % (lower); within three to five tries.
#[test]
fn steps_of_the_protocol() {
    for (region, least, most, miss) in
        [(Region::Upper, 500, 1_000, 250..=500), (Region::Lower, 1_000, 2_000, 500..=1_000)]
    {
        let step = Percent::from_hundredths(250);
        let test = Test { expected: kg(100), region, step, most_tries: MOST_TRIES };
        let [easy, middle, last] = test.warm_up();
        let shares = [easy.share, middle.share, last.share, FIRST_SINGLE].map(Percent::hundredths);
        for pair in shares.windows(2) {
            let rise = (pair[1] - pair[0]) * 10_000 / pair[0];
            // To the hundredth of a percent that the shares are rounded to.
            assert!((least - 2..=most + 2).contains(&rise), "{region:?}: {rise}");
        }
        assert!((5..=10).contains(&easy.reps) && easy.rest.count() == 60);
        assert!((3..=5).contains(&middle.reps) && middle.rest.count() == 120);
        assert!((2..=3).contains(&last.reps) && (120..=240).contains(&last.rest.count()));
        assert!((120..=240).contains(&REST_BETWEEN_TRIES.count()));
        assert!((3..=5).contains(&MOST_TRIES));

        let gram = Multiples(Mass::from_grams(1).unwrap());
        let missed = [Try { load: kg(90), lifted: false }];
        let lifted = [Try { load: kg(80), lifted: true }, missed[0]];
        for tries in [&missed[..], &lifted[..]] {
            let Some(After::Single { load, .. }) = test.after(tries, &gram) else { panic!() };
            let off = (kg(90).nanograms() - load.nanograms()) * 10_000 / kg(90).nanograms();
            assert!(miss.contains(&off), "{region:?}: {off}");
        }
    }
}
