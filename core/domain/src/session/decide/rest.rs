//! Rest: begun by itself after each part that has one, made shorter or longer, put right.

use super::super::event::Event;
use super::super::next::pause_after;
use super::super::reading::{Passed, Reading};
use super::super::refusal::Refusal;
use super::super::rest::{Rest, RestKind};
use super::super::state::Run;
use crate::call::Flow;
use crate::call::SetId;
use crate::quantity::Seconds;

/// The longest rest that "longer" leads to, in milliseconds: an hour.
const LONGEST_MS: i64 = 3_600_000;

/// The rest after a part, with `run` as it stands after it.
pub(super) fn after_part(run: &Run, set: SetId, part: u16, at: &Reading) -> Option<Rest> {
    let entry = run.entries.get(&set.entry)?;
    let done = run.set(set)?;
    let begin =
        |kind, length: Seconds| (length.count() > 0).then(|| Rest::new(kind, at.clone(), length));
    if !done.closed {
        return begin(RestKind::Pause, pause_after(&done.call, part)?);
    }
    let next = run.cursor()?;
    let next_set = run.set(next.set)?;
    let next_entry = run.entries.get(&next.set.entry)?;
    let same_round = entry.turn_of(done) == next_entry.turn_of(next_set);
    if next.set.entry == set.entry
        && same_round
        && done.call.side.is_some()
        && next_set.call.side != done.call.side
    {
        return begin(RestKind::Sides, entry.entry.rest_between_sides);
    }
    if let Flow::Clock { every } = done.call.flow
        && next.set.entry == set.entry
        && next_set.call.row == done.call.row
        && done.call.round > 0
    {
        // Start to start: from when this set began, as far as that is known.
        let spent = done
            .started
            .as_ref()
            .or(done.parts.first().map(|part| &part.at))
            .map_or(0, |started| Passed::between(started, at).ms());
        let length_ms = i64::from(every.count()).saturating_mul(1000).saturating_sub(spent);
        return Some(Rest { kind: RestKind::Clock, began: at.clone(), length_ms, passed_ms: 0 });
    }
    let lane = run.lane_of(set.entry)?;
    if lane.entries.len() > 1 && done.call.round > 0 {
        let in_lane = lane.entries.contains(&next.set.entry);
        return if in_lane && same_round && next.set.entry != set.entry {
            begin(RestKind::Within, lane.rest_within)
        } else {
            begin(RestKind::Round, lane.rest_after_round)
        };
    }
    begin(RestKind::Set, done.call.rest)
}

/// Makes the running rest longer or shorter; never to less than has passed, nor over an hour.
pub(super) fn by(run: &Run, seconds: i32, at: &Reading) -> Result<Vec<Event>, Refusal> {
    let rest = run.rest.as_ref().ok_or(Refusal::NoRest)?;
    let left = rest.standing(Some(&run.seen), at).left_ms;
    // Of the whole rest, whatever clocks it ran on.
    let whole = rest.length_ms.saturating_add(rest.passed_ms);
    let passed = whole.saturating_sub(left);
    let to = whole
        .saturating_add(i64::from(seconds).saturating_mul(1000))
        .clamp(passed.min(LONGEST_MS), LONGEST_MS.max(whole));
    if to == whole {
        return Err(Refusal::OutOfRange);
    }
    let length_ms = to.saturating_sub(rest.passed_ms);
    Ok(vec![Event::RestSet { rest: Rest { length_ms, ..rest.clone() } }])
}

/// After a restart or a change of clocks: the running rest goes on with what remains, on the clock
/// there is now. Nothing to do within one boot.
pub(super) fn wake(run: &Run, at: &Reading) -> Vec<Event> {
    let Some(rest) = &run.rest else { return Vec::new() };
    match Passed::between(&rest.began, at) {
        Passed::Boot(_) | Passed::Wall { restarted: false, .. } => Vec::new(),
        Passed::Wall { restarted: true, .. } | Passed::Backwards { .. } => {
            vec![Event::RestRebased { was: rest.clone(), rest: rest.rebased(Some(&run.seen), at) }]
        }
    }
}
