//! What a session's sets say: sides brought together, and what says nothing left out.

use super::history::{PastSession, PastSet};
use crate::call::{Amount, EffortTarget, HowMany, WeekKind};
use crate::quantity::{Mass, Reserve};
use crate::session::Ending;

/// A set that says something, by the weaker side.
#[derive(Debug, Clone, Copy)]
pub(super) struct Judged {
    pub(super) place: u8,
    pub(super) made: Option<Mass>,
    pub(super) asked: HowMany,
    pub(super) target: Option<EffortTarget>,
    pub(super) done: Amount,
    pub(super) left: Option<Reserve>,
    /// Whether every side that was to do it did, and at the load called or more.
    pub(super) complete: bool,
    pub(super) helped: bool,
}

impl Judged {
    pub(super) fn missed(&self) -> bool {
        !self.asked.reached_by(&self.done)
    }
}

/// The sets of a session that are evidence, in their order.
pub(super) fn judged(session: &PastSession) -> Vec<Judged> {
    let mut places: Vec<u8> = session.sets.iter().map(|set| set.place).collect();
    places.sort_unstable();
    places.dedup();
    let mut all: Vec<Judged> = Vec::with_capacity(places.len());
    for place in places {
        let mut sets = session.sets.iter().filter(|set| set.place == place);
        let evidence: Vec<_> = sets.clone().filter(|set| set.ending.is_evidence()).collect();
        let Some(first) = evidence.first() else { continue };
        let weakest = evidence.iter().skip(1).fold(one(session, first), |weakest, set| {
            let other = one(session, set);
            Judged {
                done: lesser(weakest.done, other.done),
                left: match (weakest.left, other.left) {
                    (Some(one), Some(other)) => Some(one.min(other)),
                    (one, other) => one.or(other),
                },
                complete: weakest.complete && other.complete,
                helped: weakest.helped || other.helped,
                ..weakest
            }
        });
        // The side that ended otherwise says nothing, and so nothing is complete without it.
        let silent = sets.any(|set| !set.ending.is_evidence());
        let sides = if session.each_side { 2 } else { 1 };
        let complete = weakest.complete && !silent && evidence.len() >= sides;
        all.push(Judged { complete, ..weakest });
    }
    all
}

fn one(session: &PastSession, set: &PastSet) -> Judged {
    let failed = set.ending == Ending::Failed;
    Judged {
        place: set.place,
        made: set.made,
        asked: set.asked,
        target: set.target,
        done: set.done,
        // After a repetition that failed there was none left, whatever was called.
        left: if failed { Some(Reserve::NONE) } else { set.left },
        complete: set.made >= session.made,
        helped: set.helped,
    }
}

fn lesser(one: Amount, other: Amount) -> Amount {
    let more = match (one, other) {
        (Amount::Reps(one), Amount::Reps(other)) => one > other,
        (Amount::Seconds(one), Amount::Seconds(other)) => one > other,
        (Amount::Metres(one), Amount::Metres(other)) => one > other,
        _ => false,
    };
    if more { other } else { one }
}

/// Whether any set of the session ended in pain.
pub(super) fn pain(session: &PastSession) -> bool {
    session.sets.iter().any(|set| set.ending == Ending::Pain)
}

/// Whether the session is evidence for a rule: of an ordinary week.
pub(super) fn ordinary(session: &&PastSession) -> bool {
    session.kind == WeekKind::Ordinary
}

/// How many sessions running missed, the latest last; those that say nothing are passed over.
pub(super) fn misses_running(history: &[PastSession]) -> usize {
    history
        .iter()
        .rev()
        .filter(ordinary)
        .map(judged)
        .filter(|sets| !sets.is_empty())
        .take_while(|sets| sets.iter().any(Judged::missed))
        .count()
}
