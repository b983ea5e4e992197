//! Records: the best of each kind, those with a belt apart from those without.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::row::{DoneSet, SetKey};
use crate::call::{Amount, Side};
use crate::catalogue::Counting;
use crate::quantity::{Mass, Reps};
use crate::session::Kit;

/// What keeps a record apart from others of its exercise.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct Apart {
    /// The side, where each works for itself.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side: Option<Side>,
    /// How figures are meant.
    pub counting: Counting,
    /// What was worn.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub kit: Vec<Kit>,
    /// Named bands or chains.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bands: Option<String>,
    /// Grip, stance, handle or range of movement.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub technique: Option<String>,
}

/// What a record is the best of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Measure {
    /// The heaviest figure in nanograms, for so many repetitions in one go.
    HeaviestFor(Reps),
    /// The most repetitions in one go, where the load has no figure.
    MostReps,
    /// The longest hold in seconds, at a figure.
    LongestAt(Option<Mass>),
    /// The farthest carry in millimetres, at a figure.
    FarthestAt(Option<Mass>),
}

/// A record, or a set's claim to one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Record {
    /// The exercise, by its slug.
    pub exercise: String,
    /// What keeps it apart.
    pub apart: Apart,
    /// What it is the best of.
    pub measure: Measure,
    /// How good, in the unit of the measure.
    pub value: i64,
    /// The set it was done in.
    pub set: SetKey,
    /// Local date of it, in days since 1970-01-01.
    pub day: i32,
}

impl Record {
    /// Whether it takes the place of another of the same measure: better, or as good and earlier.
    pub fn beats(&self, other: &Self) -> bool {
        let order = |one: &Self| (one.value, Reverse((one.day, one.set)));
        order(self) > order(other)
    }
}

/// The records that a set claims. Each part claims for itself, since a pause lies between them; a
/// warm-up claims nothing, and neither does a part without a repetition.
pub fn claims(set: &DoneSet) -> impl Iterator<Item = Record> {
    let parts = if set.is_work() { set.parts.as_slice() } else { &[] };
    parts.iter().filter_map(move |part| {
        let (measure, value) = match (part.amount, part.figure) {
            (Amount::Reps(0), _) => return None,
            (Amount::Reps(reps), Some(figure)) => (Measure::HeaviestFor(reps), figure.nanograms()),
            (Amount::Reps(reps), None) => (Measure::MostReps, reps.into()),
            (Amount::Seconds(held), figure) => (Measure::LongestAt(figure), held.count().into()),
            (Amount::Metres(far), figure) => {
                (Measure::FarthestAt(figure), far.millimetres().into())
            }
        };
        let apart = Apart {
            side: set.side,
            counting: set.counting,
            kit: set.kit.clone(),
            bands: set.bands.clone(),
            technique: set.technique.clone(),
        };
        Some(Record {
            exercise: set.exercise.clone(),
            apart,
            measure,
            value,
            set: set.key,
            day: set.day,
        })
    })
}

/// The most repetitions in one go at one load.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MostAt {
    /// What keeps it apart.
    pub apart: Apart,
    /// The figure of the load.
    pub figure: Mass,
    /// Repetitions.
    pub reps: Reps,
    /// Local date of it, in days since 1970-01-01.
    pub day: i32,
}

/// The most repetitions in one go at each load that was lifted: what is kept apart together, the
/// heaviest first; of equals the earlier stands.
pub fn most_at_loads<'a>(sets: impl IntoIterator<Item = &'a DoneSet>) -> Vec<MostAt> {
    type Best = (Reps, (i32, SetKey));
    let mut best: BTreeMap<(Apart, Reverse<Mass>), Best> = BTreeMap::new();
    for claim in sets.into_iter().flat_map(claims) {
        let Measure::HeaviestFor(reps) = claim.measure else { continue };
        let at = (claim.apart, Reverse(Mass::from_nanograms(claim.value)));
        let when = (claim.day, claim.set);
        let best = best.entry(at).or_insert((reps, when));
        if (reps, Reverse(when)) > (best.0, Reverse(best.1)) {
            *best = (reps, when);
        }
    }
    best.into_iter()
        .map(|((apart, Reverse(figure)), (reps, (day, _)))| MostAt { apart, figure, reps, day })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::call::HowMany;
    use crate::history::DonePart;
    use crate::quantity::{Range, Seconds};
    use crate::session::{Ending, EntryId, SetId, SetKind};

    fn set(number: u16, kind: SetKind, parts: &[(Amount, Option<i64>)]) -> DoneSet {
        DoneSet {
            key: SetKey { session: 7, set: SetId { entry: EntryId(0), set: number } },
            day: 20_780,
            exercise: "front-squat".into(),
            kind,
            row: 0,
            round: 1,
            side: None,
            asked: HowMany::Reps(Range { from: 5, to: 5 }),
            target: None,
            meant: None,
            figure: None,
            counting: Counting::Total,
            moved: None,
            bands: None,
            technique: None,
            set_up: Vec::new(),
            kit: Vec::new(),
            parts: parts
                .iter()
                .map(|&(amount, grams)| DonePart {
                    amount,
                    figure: grams.and_then(Mass::from_grams),
                    slowing: None,
                })
                .collect(),
            left: None,
            helped: 0,
            ending: Ending::AsCalled,
        }
    }

    #[test]
    fn each_part_claims_for_itself() {
        let drop = set(
            0,
            SetKind::Work,
            &[
                (Amount::Reps(8), Some(100_000)),
                (Amount::Reps(6), Some(80_000)),
                (Amount::Reps(0), Some(60_000)),
                (Amount::Reps(9), None),
                (Amount::Seconds(Seconds::new(40)), None),
            ],
        );
        let claimed: Vec<_> = claims(&drop).map(|record| (record.measure, record.value)).collect();
        assert_eq!(
            claimed,
            [
                (Measure::HeaviestFor(8), 100_000_000_000_000),
                (Measure::HeaviestFor(6), 80_000_000_000_000),
                (Measure::MostReps, 9),
                (Measure::LongestAt(None), 40),
            ]
        );
        assert_eq!(claims(&set(0, SetKind::Ramp, &[(Amount::Reps(5), Some(1))])).count(), 0);
    }

    #[test]
    fn the_most_at_each_load_the_heaviest_first() {
        let of =
            |number, reps, grams| set(number, SetKind::Work, &[(Amount::Reps(reps), Some(grams))]);
        let mut belted = of(4, 2, 110_000);
        belted.kit = vec![Kit::Belt];
        let sets =
            [of(0, 5, 100_000), of(1, 8, 80_000), of(2, 7, 100_000), of(3, 7, 100_000), belted];
        let most: Vec<_> = most_at_loads(&sets)
            .into_iter()
            .map(|most| {
                (most.apart.kit.len(), most.figure.nanograms() / 1_000_000_000_000, most.reps)
            })
            .collect();
        assert_eq!(most, [(0, 100, 7), (0, 80, 8), (1, 110, 2)]);
    }

    #[test]
    fn of_equals_the_earlier_stands() {
        let claim = |number, grams| {
            claims(&set(number, SetKind::Work, &[(Amount::Reps(5), Some(grams))])).next().unwrap()
        };
        assert!(claim(1, 102_500).beats(&claim(0, 100_000)));
        assert!(claim(0, 100_000).beats(&claim(1, 100_000)));
        assert!(!claim(1, 100_000).beats(&claim(0, 100_000)));
        assert!(!claim(1, 100_000).beats(&claim(1, 100_000)));
    }
}
