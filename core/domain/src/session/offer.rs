//! What is offered at once on the floor: a lighter load after a set that was too much, and the four
//! answers to pain in their order (stop, swap, lighter, go on).

use super::state::{EntryRun, PartRun, Run, SetRun};
use crate::call::{Ending, EntryId, SetId, SetKind};
use crate::equipment::Fit;
use crate::quantity::{Mass, Percent};

use super::made::Rack;

/// After a set that failed or was harder than asked the next is lighter by this (common practice).
const LIGHTER: Percent = Percent::whole(5);
/// And this under what hurt (common practice).
const UNDER_PAIN: Percent = Percent::whole(10);
/// Failed sets of an exercise after which leaving the rest of it out is offered.
const FAILED_SETS: usize = 2;

/// Something offered; all of it is the lifter's to take or leave.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Offer {
    /// The sets left of an exercise with this load.
    Lighter {
        /// The exercise.
        entry: EntryId,
        /// The figure, counted as the exercise counts, as this gym makes it.
        load: Mass,
        /// The last set failed; otherwise it was called harder than asked.
        failed: bool,
    },
    /// Leave the rest of an exercise out: two sets of it failed.
    Skip {
        /// The exercise.
        entry: EntryId,
    },
    /// The last set ended in pain: stop, swap, lighter, go on.
    Pain {
        /// The exercise.
        entry: EntryId,
        /// A load at least a tenth under what hurt, where this gym makes one and sets are left.
        lighter: Option<Mass>,
        /// Going on is offered: it did not hurt in the session before.
        go_on: bool,
    },
}

impl Run {
    /// What is offered now, by the last part that was recorded. Nothing once another set of the
    /// exercise has another load already.
    pub fn offers(&self) -> Vec<Offer> {
        let Some((id, entry, set, part)) = self.last_part() else { return Vec::new() };
        if self.finished.is_some() || set.call.kind == SetKind::Ramp {
            return Vec::new();
        }
        let done = &part.done;
        let left = entry.sets.iter().find(|set| set.pending() && !set.begun());
        let lighter = |off: Percent| {
            let next = left.filter(|_| entry.pending())?.first_load()?;
            let lighter = self.lighter(entry, done.load.figure?, off)?;
            (next.figure > Some(lighter)).then_some(lighter)
        };
        if done.ending == Ending::Pain {
            let go_on = entry.entry.pain.is_none_or(|pain| pain.running == 0);
            return if entry.pending() {
                vec![Offer::Pain { entry: id.entry, lighter: lighter(UNDER_PAIN), go_on }]
            } else {
                Vec::new()
            };
        }
        if !set.closed || set.call.kind == SetKind::Test {
            return Vec::new();
        }
        let failed = done.ending == Ending::Failed;
        let hard =
            set.call.effort.zip(done.left).is_some_and(|(target, left)| left < target.left.from);
        let mut offers = Vec::new();
        if let Some(load) = lighter(LIGHTER).filter(|_| failed || hard) {
            offers.push(Offer::Lighter { entry: id.entry, load, failed });
        }
        let fails =
            |set: &&SetRun| set.parts.last().is_some_and(|part| part.done.ending == Ending::Failed);
        if failed && entry.pending() && entry.sets.iter().filter(fails).count() >= FAILED_SETS {
            offers.push(Offer::Skip { entry: id.entry });
        }
        offers
    }

    /// The part that was recorded last.
    fn last_part(&self) -> Option<(SetId, &EntryRun, &SetRun, &PartRun)> {
        let parts = self.entries.iter().flat_map(|(id, entry)| {
            let sets = (0_u16..).zip(&entry.sets);
            sets.filter_map(move |(at, set)| {
                let part = set.parts.last()?;
                Some((SetId { entry: *id, set: at }, entry.as_ref(), set, part))
            })
        });
        parts.max_by_key(|(id, _, _, part)| (part.at.wall_ms, *id))
    }

    /// A load lighter by a share of what is moved, and by one step at least.
    fn lighter(&self, entry: &EntryRun, from: Mass, off: Percent) -> Option<Mass> {
        let load = entry.sets.iter().find_map(SetRun::first_load)?;
        let body =
            load.moved().and_then(|moved| moved.checked_sub(load.figure?)).unwrap_or_default();
        let less = off.of(from.checked_add(body)?)?;
        let to = from.checked_sub(less)?;
        let rack = Rack { equipment: &self.equipment, liked: entry.entry.liked };
        let of = (entry.entry.implement.as_str(), load.counting);
        rack.lighter(of, (to, from), Fit::Under).map(|(made, _)| made)
    }
}
