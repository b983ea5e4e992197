//! What was done before, as the rules and the sheet read it.

use std::cmp::Ordering;

use super::lifter::{Past, RECENT_DAYS};
use super::meant::{For, Said, said};
use super::slot::Slot;
use crate::call::{Amount, HowMany, LoadCall, Side, Structure};
use crate::history::DoneSet;
use crate::plan::Block;
use crate::progress::estimate::{Formula, is_estimated};
use crate::progress::history::{Called, PastSession};
use crate::progress::reference;
use crate::quantity::{Mass, Percent, Reserve};
use crate::session::{Because, Call, LastTime};

/// The past sessions of a row, oldest first: those of the same place in the same plan, where there
/// are any; otherwise those of the exercise that asked for as many or more.
pub(super) fn sessions(slot: &Slot<'_>, block: &Block) -> Vec<(i32, PastSession)> {
    let Some(first) = block.sets.first() else { return Vec::new() };
    let all_parts = matches!(first.structure, Structure::Cluster { .. });
    let mut here = Vec::new();
    let mut elsewhere = Vec::new();
    for work in slot.past().iter().rev() {
        let counts = |set: &&DoneSet| {
            set.is_work()
                && set.counting == slot.here.counting
                && set.bands.as_deref() == bands(block)
        };
        let of_entry = entry_of(slot, work);
        if let (Some(week), Some(entry)) = (week_here(slot, work), of_entry) {
            let sets: Vec<_> = work
                .sets
                .iter()
                .filter(counts)
                .filter(|set| set.key.set.entry == entry && usize::from(set.row) == block.line)
                .collect();
            if !sets.is_empty() {
                let called = called_then(slot, work, week, block, &sets, all_parts);
                here.push((work.day, PastSession::of(called, sets)));
            }
        }
        let asked = |set: &&DoneSet| at_least(&set.asked, &first.how_many);
        let like = work.sets.iter().filter(counts).find(asked);
        if let Some(like) = like {
            let row = |set: &DoneSet| (set.key.set.entry, set.row);
            let sets: Vec<_> = work
                .sets
                .iter()
                .filter(counts)
                .filter(|set| row(set) == row(like))
                .filter(asked)
                .collect();
            let called = Called {
                kind: work.week_kind,
                planned: None,
                sets: rounds(&sets),
                each_side: first.side.is_none() && sets.iter().any(|set| set.side.is_some()),
                all_parts,
            };
            elsewhere.push((work.day, PastSession::of(called, sets)));
        }
    }
    if here.is_empty() { elsewhere } else { here }
}

/// The named set-up of a row.
fn bands(block: &Block) -> Option<&str> {
    match &block.sets.first()?.load {
        LoadCall::SetUp { name, .. } => Some(name),
        _ => None,
    }
}

/// The week, from 0, of a past session at the same place of this plan.
fn week_here(slot: &Slot<'_>, work: &Past) -> Option<usize> {
    let place = work.place.as_ref().filter(|place| Some(place.plan) == slot.source.adopted)?;
    let week = usize::from(place.week).checked_sub(1)?;
    let index = usize::from(place.session).checked_sub(1)?;
    let session = *slot.source.plan.sessions_of(week).get(index)?;
    (session == slot.session.session).then_some(week)
}

/// The entry of a past session that is this one's: of several of one exercise the same in order.
fn entry_of(slot: &Slot<'_>, work: &Past) -> Option<crate::session::EntryId> {
    let mut entries: Vec<_> = work.sets.iter().map(|set| set.key.set.entry).collect();
    entries.sort_unstable();
    entries.dedup();
    entries.get(slot.occurrence()).copied()
}

fn called_then(
    slot: &Slot<'_>,
    work: &Past,
    week: usize,
    block: &Block,
    sets: &[&DoneSet],
    all_parts: bool,
) -> Called {
    let index = work.place.as_ref().map_or(0, |place| usize::from(place.session));
    let there = (week, index.saturating_sub(1));
    let exercise = &slot.entry.exercise;
    let then = slot.source.plan.row(there, exercise, slot.occurrence(), block.line);
    let first = then.as_ref().and_then(|then| then.sets.first());
    let body = sets.first().and_then(|set| set.moved?.checked_sub(set.figure?));
    let planned = first.and_then(|call| {
        let on = For { here: slot.here, day: work.day, past: true, body };
        match said(slot.source, slot.lifter, &on, &call.load) {
            Said::Figure(planned) => Some(planned.figure),
            Said::Open | Said::Missing(_) => None,
        }
    });
    let called = then.map_or(0, |then| then.sets.len());
    Called {
        kind: work.week_kind,
        planned,
        sets: u8::try_from(called).unwrap_or(u8::MAX).max(1),
        // A row for one side alone is whole with that side.
        each_side: block.sets.iter().all(|call| call.side.is_none())
            && sets.iter().any(|set| set.side.is_some()),
        all_parts,
    }
}

fn rounds(sets: &[&DoneSet]) -> u8 {
    let mut rounds: Vec<u16> = sets.iter().map(|set| set.round).collect();
    rounds.sort_unstable();
    rounds.dedup();
    u8::try_from(rounds.len()).unwrap_or(u8::MAX)
}

/// Whether what was asked then is as much as is asked now, so that its load is none too heavy.
fn at_least(then: &HowMany, now: &HowMany) -> bool {
    now.same_kind(&then.as_called()) && now.reached_by(&then.as_called())
}

/// Last time's line: the latest session with work in it.
pub(super) fn last_time(past: &[Past]) -> Option<LastTime> {
    let work = past.iter().find(|work| work.sets.iter().any(DoneSet::is_work))?;
    let sets = || work.sets.iter().filter(|set| set.is_work());
    Some(LastTime {
        day: work.day,
        figure: sets().filter_map(|set| set.figure).max(),
        amounts: sets().map(DoneSet::amount).collect(),
        left_halves: sets().next_back().and_then(|set| set.left).map(Reserve::halves),
    })
}

/// The weaker side, as the latest session in which the two differ shows it: less on, then less done.
/// Once the weaker works first the stronger stops where it did, so later ones may show nothing.
pub(super) fn weaker(past: &[Past]) -> Option<Side> {
    past.iter().find_map(|work| {
        let of = |side| {
            let sets = || work.sets.iter().filter(|set| set.is_work() && set.side == Some(side));
            let rounds: Vec<_> = sets().map(|set| (set.row, set.round)).collect();
            (
                sets().filter_map(|set| set.figure).max(),
                sets().map(|set| size(set.amount())).sum::<u32>(),
                rounds,
            )
        };
        let (left, right) = (of(Side::Left), of(Side::Right));
        // A side that was not worked as often says nothing.
        if left.2 != right.2 {
            return None;
        }
        match (left.0, left.1).cmp(&(right.0, right.1)) {
            Ordering::Less => Some(Side::Left),
            Ordering::Equal => None,
            Ordering::Greater => Some(Side::Right),
        }
    })
}

fn size(amount: Amount) -> u32 {
    match amount {
        Amount::Reps(reps) => reps.into(),
        Amount::Seconds(seconds) => seconds.count(),
        Amount::Metres(distance) => distance.millimetres(),
    }
}

/// The figure that the last four weeks' estimates support for the fewest repetitions called.
pub(super) fn supported(slot: &Slot<'_>, calls: &[Call]) -> Option<Mass> {
    if !is_estimated(slot.exercise) {
        return None;
    }
    let (reps, left) = calls
        .iter()
        .filter(|call| call.round > 0)
        .filter_map(|call| {
            let reps = call.how_many.as_called().reps()?;
            let left = call.effort.map_or(Reserve::NONE, |target| target.left.from);
            Some((reps.max(1), left))
        })
        .min_by_key(|(reps, left)| u32::from(*reps) * 2 + u32::from(left.halves()))?;
    let formula = Formula::default();
    let since = slot.lifter.today.saturating_sub(RECENT_DAYS);
    let estimates = slot
        .past()
        .iter()
        .filter(|work| work.day >= since)
        .flat_map(|work| &work.sets)
        .filter(|set| set.counting == slot.here.counting)
        .filter_map(|set| reference::estimate(set, formula));
    let body = match slot.body {
        Some(body) => body.share.of(body.mass)?,
        None if slot.exercise.body_share.hundredths() > 0 => return None,
        None => Mass::ZERO,
    };
    reference::supported(estimates, reps, left, body)
}

/// The max that a test starts from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct ExpectedMax {
    pub(super) max: Mass,
    /// Local date of what it is known by.
    pub(super) day: i32,
    /// It is an estimate and no reference max.
    pub(super) estimated: bool,
}

impl ExpectedMax {
    /// A share of it, and why.
    pub(super) fn share(&self, share: Percent) -> Option<(Mass, Because)> {
        let Self { max, day, estimated } = *self;
        let gives = share.of(max)?;
        let why = if estimated {
            Because::ShareOfEstimate { share, max, day, gives }
        } else {
            Because::ShareOfMax { share, max, day, of: None, gives }
        };
        Some((gives, why))
    }
}

/// What a test is to start from: the best estimate of the hard sets of the last four weeks, for a
/// lift that is estimated; else, or where it is newer than those sets, the reference max.
pub(super) fn expected(slot: &Slot<'_>) -> Option<ExpectedMax> {
    let fact = slot.lifter.desk.max_on(&slot.exercise.slug, slot.lifter.today);
    let known = fact.map(|fact| ExpectedMax { max: fact.mass, day: fact.day, estimated: false });
    if !is_estimated(slot.exercise) {
        return known;
    }
    let since = slot.lifter.today.saturating_sub(RECENT_DAYS);
    let sets = slot.past().iter().filter(|work| work.day >= since).flat_map(|work| &work.sets);
    let best = sets
        .filter(|set| set.counting == slot.here.counting)
        .filter_map(|set| {
            let estimate = reference::hard_estimate(set, Formula::default())?;
            Some(ExpectedMax { max: estimate.max, day: set.day, estimated: true })
        })
        .max_by_key(|one| one.max);
    match (best, known) {
        (Some(best), Some(known)) if known.day > best.day => Some(known),
        (best, known) => best.or(known),
    }
}
