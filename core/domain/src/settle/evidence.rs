//! What the sets of a row say: sides brought together, and what says nothing left out.

use crate::call::{Amount, EffortTarget, Ending, EntryId, HowMany, SetId, SetKind};
use crate::owners::Terms;
use crate::quantity::{Mass, Reserve};
use crate::session::{CallLoad, EntryRun, Load, SetRun};

/// A set that says something, by the weaker side.
#[derive(Debug, Clone)]
pub(super) struct Judged {
    pub(super) id: SetId,
    pub(super) place: u16,
    /// The figure that was called, and the one that was on.
    pub(super) called: Option<Mass>,
    pub(super) lifted: Option<Mass>,
    pub(super) asked: HowMany,
    pub(super) target: Option<EffortTarget>,
    pub(super) done: Amount,
    pub(super) left: Option<Reserve>,
    pub(super) helped: bool,
    /// Whether every side that was to do it did.
    pub(super) whole: bool,
}

impl Judged {
    pub(super) fn missed(&self) -> bool {
        !self.asked.reached_by(&self.done)
    }

    fn lighter(&self) -> bool {
        matches!((self.called, self.lifted), (Some(called), Some(lifted)) if lifted < called)
    }

    fn heavier(&self) -> bool {
        matches!((self.called, self.lifted), (Some(called), Some(lifted)) if lifted > called)
    }
}

/// A row of one session.
#[derive(Debug, Clone)]
pub(super) struct Row<'a> {
    pub(super) terms: &'a Terms,
    /// The load of the first set that was begun, as it was on, and as it was called.
    pub(super) load: Option<Load>,
    pub(super) called: Option<Load>,
    /// What it was meant to be, before rounding.
    pub(super) meant: Option<Mass>,
    /// A set was left out by choice, or ended by pain, an interruption or the equipment.
    pub(super) broken: bool,
    /// The sets that say something, in their order.
    pub(super) sets: Vec<Judged>,
    /// The place of the last set that was called.
    last: u16,
}

impl<'a> Row<'a> {
    pub(super) fn of(id: EntryId, entry: &EntryRun, terms: &'a Terms) -> Self {
        let of_row = |set: &&SetRun| {
            set.call.row == terms.row && set.call.round > 0 && set.call.kind != SetKind::Ramp
        };
        let mut rounds: Vec<u16> =
            entry.sets.iter().filter(of_row).map(|set| set.call.round).collect();
        rounds.sort_unstable();
        rounds.dedup();
        let mut judged = Vec::new();
        for round in &rounds {
            let sets = (0_u16..).zip(&entry.sets).filter(|(_, set)| of_row(set));
            let sets: Vec<_> = sets.filter(|(_, set)| set.call.round == *round).collect();
            judged.extend(one(id, &sets, terms));
        }
        if terms.top_only {
            let top = judged.pop();
            judged = top.into_iter().collect();
        }
        let first = entry.sets.iter().filter(of_row).find(|set| set.begun());
        let load = first.and_then(|set| set.parts.first()).map(|part| part.done.load.clone());
        let called = first.and_then(|set| match &set.call.load {
            CallLoad::Known(load) => Some(load.clone()),
            CallLoad::AfterTop { .. } | CallLoad::Chosen { .. } => None,
        });
        let meant = called.as_ref().and_then(|load| load.meant.or(load.figure));
        let ended =
            |set: &SetRun| set.parts.last().is_some_and(|part| !part.done.ending.is_evidence());
        let broken = entry.skipped
            || entry.sets.iter().filter(of_row).any(|set| set.skipped || set.left || ended(set));
        let last = rounds.last().copied().unwrap_or(0);
        Self { terms, load, called, meant, broken, sets: judged, last }
    }

    /// The row has nothing that says anything.
    pub(super) fn silent(&self) -> bool {
        self.sets.is_empty()
    }

    pub(super) fn missed(&self) -> bool {
        // Less load by choice and still too few says nothing of the load that was called.
        self.sets.iter().any(|set| set.missed() && !set.lighter())
    }

    pub(super) fn lighter(&self) -> bool {
        self.sets.iter().any(Judged::lighter)
    }

    pub(super) fn heavier(&self) -> bool {
        !self.sets.is_empty() && self.sets.iter().all(Judged::heavier)
    }

    /// Made: every set that was called, or, where the session was shortened, half of what the plan
    /// has at the least; with none left out by choice.
    pub(super) fn made(&self) -> bool {
        let enough = if self.terms.top_only {
            !self.sets.is_empty()
        } else {
            self.sets.len() * 2 >= usize::from(self.terms.sets) && !self.broken
        };
        enough && self.sets.iter().all(|set| set.whole && !set.missed() && !set.lighter())
    }

    /// The last set called, where it was done and says something.
    pub(super) fn last_set(&self) -> Option<&Judged> {
        self.sets.last().filter(|set| set.whole && set.place == self.last)
    }

    /// The middle of the calls against their target, in half repetitions: above nothing too easy.
    pub(super) fn off_target(&self) -> Option<(i16, Reserve, Reserve)> {
        let mut all: Vec<(i16, Reserve, Reserve)> =
            self.sets.iter().filter_map(|set| off(set.left?, set.target?)).collect();
        all.sort_by_key(|(by, ..)| *by);
        // Of two in the middle the one that is nearer to the target.
        let (low, high) = (all.len().checked_sub(1)? / 2, all.len() / 2);
        let (low, high) = (*all.get(low)?, *all.get(high)?);
        Some(if low.0.abs() <= high.0.abs() { low } else { high })
    }
}

/// Past five left a call is too far off to steer by (Hackett et al. 2017, JSCR 31(8):2162–2168).
const FIVE_LEFT: Reserve = match Reserve::from_halves(10) {
    Some(reserve) => reserve,
    None => Reserve::NONE,
};

fn off(called: Reserve, target: EffortTarget) -> Option<(i16, Reserve, Reserve)> {
    let target = target.left;
    let trusted = called.min(target.to.max(FIVE_LEFT));
    let halves = |reserve: Reserve| i16::from(reserve.halves());
    Some(if trusted < target.from {
        (halves(trusted) - halves(target.from), called, target.from)
    } else if trusted > target.to {
        (halves(trusted) - halves(target.to), called, target.to)
    } else {
        (0, called, trusted)
    })
}

/// The sets of one round, one a side, brought together; none where nothing of them is evidence.
fn one(id: EntryId, sets: &[(u16, &SetRun)], terms: &Terms) -> Option<Judged> {
    let mut begun = sets.iter().filter(|(_, set)| set.begun());
    let evidence: Vec<Judged> = begun
        .clone()
        .filter_map(|(at, set)| side(SetId { entry: id, set: *at }, set, terms))
        .collect();
    let mut weakest = evidence.first()?.clone();
    for other in evidence.iter().skip(1) {
        weakest.done = lesser(weakest.done, other.done);
        weakest.left = match (weakest.left, other.left) {
            (Some(one), Some(other)) => Some(one.min(other)),
            (one, other) => one.or(other),
        };
        weakest.helped |= other.helped;
        if other.lifted < weakest.lifted {
            (weakest.called, weakest.lifted) = (other.called, other.lifted);
        }
    }
    // The side that ended otherwise says nothing, and so nothing is whole without it.
    let silent =
        begun.any(|(_, set)| set.parts.last().is_some_and(|part| !part.done.ending.is_evidence()));
    let sides = if terms.each_side { 2 } else { 1 };
    weakest.whole = !silent && evidence.len() >= sides;
    Some(weakest)
}

fn side(id: SetId, set: &SetRun, terms: &Terms) -> Option<Judged> {
    let (first, last) = (set.parts.first()?, set.parts.last()?);
    if !last.done.ending.is_evidence() {
        return None;
    }
    let failed = last.done.ending == Ending::Failed;
    let called = match &set.call.load {
        CallLoad::Known(load) => load.figure,
        CallLoad::AfterTop { .. } | CallLoad::Chosen { .. } => None,
    };
    let done = if terms.all_parts { Amount::Reps(set.reps()) } else { first.done.amount };
    Some(Judged {
        id,
        place: set.call.round,
        called,
        lifted: first.done.load.figure,
        asked: set.call.how_many,
        target: set.call.effort,
        done,
        // After a repetition that failed there was none left, whatever was called.
        left: if failed { Some(Reserve::NONE) } else { last.done.left },
        helped: set.parts.iter().any(|part| part.done.helped > 0),
        whole: true,
    })
}

fn lesser(one: Amount, other: Amount) -> Amount {
    if size(one) > size(other) { other } else { one }
}

/// An amount as a number, to compare amounts of one kind.
pub(super) fn size(amount: Amount) -> u32 {
    match amount {
        Amount::Reps(reps) => u32::from(reps),
        Amount::Seconds(seconds) => seconds.count(),
        Amount::Metres(distance) => distance.millimetres(),
    }
}
