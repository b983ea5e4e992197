//! Invented rows, the same for the same number, of every shape that a row can have.

use barwright_domain::call::{Amount, EffortTarget, HowMany, Side, Stop, WeekKind};
use barwright_domain::catalogue::{Counting, Muscle};
use barwright_domain::history::{
    DonePart, DoneSet, MuscleTally, Outcome, SessionRow, SetKey, first_day,
};
use barwright_domain::quantity::{Distance, Mass, Range, Reserve, Seconds};
use barwright_domain::session::{Ending, EntryId, Kit, PlanPlace, SetId, SetKind};
use barwright_domain::volume::{Count, Sides, Tally};
use barwright_store::Stamp;

pub(crate) const AT: Stamp = Stamp { wall_ms: 1_795_000_000_000, offset_minutes: 60 };

pub(crate) const EXERCISES: [&str; 3] = ["front-squat", "pull-up", "farmers-walk"];

/// The day of a session: two of them fall into each week, and their numbers tell nothing of their
/// order.
pub(crate) fn day_of(session: u64) -> i32 {
    first_day(2_900) + (session ^ 3) as i32 * 3
}

fn pick<T: Copy, const N: usize>(number: u32, from: [T; N]) -> T {
    from[number as usize % N]
}

/// The set of a name in some shape; its figures vary little, so that records are contested.
pub(crate) fn set(session: u64, entry: u16, number: u16, shape: u32) -> DoneSet {
    let figure = pick(shape, [Some(100_000), Some(102_500), Some(-20_000), None]);
    let figure = figure.and_then(Mass::from_grams);
    let amount = pick(
        shape / 3,
        [
            Amount::Reps(5),
            Amount::Reps(5),
            Amount::Reps(3),
            Amount::Reps(0),
            Amount::Seconds(Seconds::new(40 + shape % 3)),
            Amount::Metres(Distance::from_millimetres(30_000 + shape % 3)),
        ],
    );
    let mut parts = vec![DonePart { amount, figure, slowing: None }];
    if shape.is_multiple_of(5) {
        parts.push(DonePart { amount, figure: Mass::from_grams(80_000), slowing: None });
    }
    DoneSet {
        key: SetKey { session, set: SetId { entry: EntryId(entry), set: number } },
        day: day_of(session),
        exercise: pick(u32::from(entry), EXERCISES).to_owned(),
        kind: pick(shape, [SetKind::Work, SetKind::Top, SetKind::BackOff, SetKind::Ramp]),
        row: entry,
        round: number,
        side: pick(shape / 2, [None, Some(Side::Left), Some(Side::Right)]),
        asked: pick(
            shape,
            [
                HowMany::Reps(Range { from: 5, to: 8 }),
                HowMany::Seconds(Range::just(Seconds::new(30))),
                HowMany::Metres(Range::just(Distance::from_millimetres(40_000))),
                HowMany::Open { at_least: 8, stop: Stop::Form },
            ],
        ),
        target: Reserve::from_halves(3)
            .filter(|_| shape.is_multiple_of(2))
            .map(|left| EffortTarget::left(Reserve::NONE, left)),
        meant: Mass::from_grams(101_300).filter(|_| shape.is_multiple_of(3)),
        figure,
        counting: pick(shape / 7, [Counting::Total, Counting::Added, Counting::Unnumbered]),
        moved: figure,
        bands: (shape.is_multiple_of(11)).then(|| "two \"green\" bands; doubled".to_owned()),
        technique: (shape.is_multiple_of(13)).then(|| "close grip".to_owned()),
        set_up: if shape.is_multiple_of(4) {
            vec!["pins 7".into(), "seat 3".into()]
        } else {
            Vec::new()
        },
        kit: if shape.is_multiple_of(6) { vec![Kit::Belt, Kit::Straps] } else { Vec::new() },
        parts,
        left: Reserve::from_halves((shape % 9) as u8).filter(|_| shape % 4 != 1),
        helped: (shape % 3) as u16,
        ending: pick(shape / 5, [Ending::AsCalled, Ending::Failed, Ending::Pain]),
    }
}

/// A session's row in some shape.
pub(crate) fn session(session: u64, shape: u32) -> SessionRow {
    let count = |direct| Count { direct, indirect: 1 };
    let sides = |more| Sides { left: count(shape % 5 + more), right: count(2) };
    let tally = Tally { sets: sides(0), under_six: sides(1) };
    let muscles = Muscle::ALL.iter().skip(shape as usize % 7).take(shape as usize % 4);
    SessionRow {
        session,
        day: day_of(session),
        title: format!("Session {shape}; \"heavy\""),
        place: (!shape.is_multiple_of(3)).then_some(PlanPlace {
            plan: 1 + u64::from(shape % 2),
            week: (shape % 6) as u16,
            session: 1,
        }),
        week_kind: pick(shape, [WeekKind::Ordinary, WeekKind::EaseIn, WeekKind::Deload]),
        outcome: (!shape.is_multiple_of(4)).then(|| Outcome {
            seconds: 3_000 + shape,
            owed: 20,
            done: 18,
            volume: muscles.map(|muscle| MuscleTally { muscle: *muscle, tally }).collect(),
        }),
    }
}
