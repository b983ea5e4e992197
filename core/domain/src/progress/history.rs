//! What was done before, as the rules read it.

use crate::call::{Amount, EffortTarget, HowMany, Side, WeekKind};
use crate::history::DoneSet;
use crate::quantity::{Mass, Reserve};
use crate::session::Ending;

/// One past session of one row of sets of an exercise. Loads are those of the row's first set, in
/// the terms the exercise counts in: on the bar, in each hand, added to the body (help is
/// negative). They are absent where a load has no number.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PastSession {
    /// What its week was for. Only ordinary weeks are evidence.
    pub kind: WeekKind,
    /// What the plan's own number came to, before any rule.
    pub planned: Option<Mass>,
    /// What was meant, before rounding to what could be made.
    pub meant: Option<Mass>,
    /// What was made of it.
    pub made: Option<Mass>,
    /// The share of body mass that the exercise moved beside the load; nothing for most.
    pub body: Mass,
    /// How many sets were called.
    pub sets_called: u8,
    /// Whether each side was to do each of them.
    pub each_side: bool,
    /// The sets that were begun; the others say nothing.
    pub sets: Vec<PastSet>,
}

/// One set that was done, or that one side did.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PastSet {
    /// Its place among the sets called, from 0.
    pub place: u8,
    /// The side that did it.
    pub side: Option<Side>,
    /// The load that was lifted.
    pub made: Option<Mass>,
    /// How many were asked.
    pub asked: HowMany,
    /// How hard it was meant to be.
    pub target: Option<EffortTarget>,
    /// How many were done of what was asked, without help: all blocks of a cluster, the first part
    /// of any other set made of parts.
    pub done: Amount,
    /// What the lifter called; never the target.
    pub left: Option<Reserve>,
    /// How it ended.
    pub ending: Ending,
    /// Whether a spotter helped with further repetitions: nothing is estimated from it.
    pub helped: bool,
}

/// What was called of a row in a past session, as its plan and its week say.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Called {
    /// What its week was for.
    pub kind: WeekKind,
    /// What the plan's own number came to then.
    pub planned: Option<Mass>,
    /// How many sets were called.
    pub sets: u8,
    /// Whether each side was to do each of them.
    pub each_side: bool,
    /// Whether what was asked is asked of all parts together: a cluster. Of other sets made of
    /// parts it is asked of the first.
    pub all_parts: bool,
}

impl PastSession {
    /// A past session of a row from the sets of that row that were done.
    pub fn of<'a>(called: Called, sets: impl IntoIterator<Item = &'a DoneSet>) -> Self {
        let mut session = Self {
            kind: called.kind,
            planned: called.planned,
            meant: None,
            made: None,
            body: Mass::ZERO,
            sets_called: called.sets,
            each_side: called.each_side,
            sets: Vec::new(),
        };
        let mut earliest = u16::MAX;
        for set in sets.into_iter().filter(|set| set.is_work()) {
            if set.round < earliest {
                earliest = set.round;
                session.meant = set.meant.or(set.figure);
                session.made = set.figure;
                let body = set.moved.zip(set.figure).and_then(|(all, own)| all.checked_sub(own));
                session.body = body.unwrap_or_default();
            }
            let first = set.parts.first().map_or_else(|| set.amount(), |part| part.amount);
            session.sets.push(PastSet {
                place: u8::try_from(set.round.saturating_sub(1)).unwrap_or(u8::MAX),
                side: set.side,
                made: set.figure,
                asked: set.asked,
                target: set.target,
                done: if called.all_parts { set.amount() } else { first },
                left: set.left,
                ending: set.ending,
                helped: set.helped > 0,
            });
        }
        session
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::Counting;
    use crate::history::{DonePart, SetKey};
    use crate::quantity::{Percent, Range};
    use crate::session::{EntryId, SetId, SetKind};

    fn grams(grams: i64) -> Mass {
        Mass::from_grams(grams).unwrap()
    }

    fn set(round: u16, parts: &[u16]) -> DoneSet {
        let figure = Some(grams(-20_000));
        let amount = |reps: &u16| DonePart { amount: Amount::Reps(*reps), figure, slowing: None };
        DoneSet {
            key: SetKey { session: 1, set: SetId { entry: EntryId(0), set: round } },
            day: 20_000,
            exercise: "assisted-pull-up".into(),
            kind: if round == 0 { SetKind::Ramp } else { SetKind::Work },
            row: 0,
            round,
            side: None,
            asked: HowMany::Reps(Range::just(8)),
            target: None,
            meant: Some(grams(-19_000)),
            figure,
            counting: Counting::Added,
            moved: Percent::WHOLE.of(grams(82_400)).unwrap().checked_add(grams(-20_000)),
            bands: None,
            technique: None,
            set_up: Vec::new(),
            kit: Vec::new(),
            parts: parts.iter().map(amount).collect(),
            left: None,
            helped: 0,
            ending: Ending::AsCalled,
        }
    }

    #[test]
    fn rows_of_what_was_done_become_a_session() {
        let called = Called {
            kind: WeekKind::Ordinary,
            planned: None,
            sets: 3,
            each_side: false,
            all_parts: false,
        };
        let rows = [set(0, &[5]), set(1, &[8]), set(2, &[8, 3, 2])];
        let session = PastSession::of(called, &rows);
        assert_eq!((session.meant, session.made), (Some(grams(-19_000)), Some(grams(-20_000))));
        assert_eq!(session.body, grams(82_400));
        let done: Vec<_> = session.sets.iter().map(|set| (set.place, set.done)).collect();
        assert_eq!(done, [(0, Amount::Reps(8)), (1, Amount::Reps(8))]);

        let whole = PastSession::of(Called { all_parts: true, ..called }, &rows);
        assert_eq!(whole.sets[1].done, Amount::Reps(13));
    }
}
