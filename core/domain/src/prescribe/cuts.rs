//! What is taken off for a while: of cuts that hold at once only the deepest counts, for the load
//! and for the sets each. None of them touches an owner.

use chrono::Weekday;

use super::slot::Slot;
use crate::call::{Flow, WeekKind};
use crate::owners::{Care, Cut, Cutting, Missed, RowId, Track};
use crate::plan::{Block, Miss, Plan};
use crate::quantity::{Mass, Percent};
use crate::session::{Because, Call, CallLoad, Entry};
use crate::settle::after_pain;

/// At least this much under what hurt (common practice).
const UNDER_PAIN: Percent = Percent::whole(10);

/// The cut that counts for a row today: the least that is kept of the load, and the most that is
/// left out of the sets. `own` is its owner's load.
pub(super) fn deepest(
    slot: &Slot<'_>,
    block: &Block,
    row: Option<RowId>,
    track: &Track,
    own: Option<Mass>,
) -> Option<Cut> {
    let mut all: Vec<Cut> = Vec::new();
    if !matches!(block.flow, Flow::Test { .. }) {
        all.extend(week(slot, block));
        all.extend(ill(slot));
    }
    all.extend(laid_off(slot));
    all.extend(pain(slot, own));
    all.extend(track.missed_at(row).and_then(|missed| still_missed(slot, missed, own)));
    all.extend(track.next.map(|keep| cut(keep, Cutting::Effort)));
    let sets_off = all.iter().map(|cut| cut.sets_off).max()?;
    let deepest = all.into_iter().min_by_key(|cut| cut.keep)?;
    Some(Cut { sets_off, ..deepest })
}

fn cut(keep: Percent, why: Cutting) -> Cut {
    Cut { keep, sets_off: Percent::default(), why }
}

/// What a lighter week takes off what is not written week by week.
fn week(slot: &Slot<'_>, block: &Block) -> Option<Cut> {
    let why = match slot.session.kind {
        WeekKind::Deload => Cutting::Deload,
        WeekKind::EaseIn => Cutting::EaseIn,
        WeekKind::Ordinary | WeekKind::Test => return None,
    };
    Some(Cut { keep: block.cut.load_off.left_of_whole(), sets_off: block.cut.sets_off, why })
}

/// The first session after an illness is the ease-in.
fn ill(slot: &Slot<'_>) -> Option<Cut> {
    slot.lifter.desk.was_ill?;
    let ease_in = slot.source.plan.ease_in;
    Some(Cut {
        keep: ease_in.load_off.left_of_whole(),
        sets_off: ease_in.sets_off,
        why: Cutting::EaseIn,
    })
}

/// By the lift's own days beyond the plan's own gap for it; and what still comes back of one.
fn laid_off(slot: &Slot<'_>) -> Option<Cut> {
    let today = slot.lifter.today;
    // What a wrong clock dated after today is no absence, and hides none.
    let last = slot.past().iter().map(|past| past.day).filter(|day| *day <= today).max();
    let by_days = last.and_then(|last| {
        let days = today.saturating_sub(last);
        let beyond = days.saturating_sub(gap(slot.source.plan, &slot.exercise.slug));
        let rules = &slot.source.plan.lay_off;
        let rule = rules.iter().rev().find(|rule| beyond > i32::from(rule.over_days))?;
        let why = Cutting::LayOff { days: Some(u16::try_from(days).unwrap_or(u16::MAX)) };
        if !rule.ease_in {
            return Some(Cut { keep: rule.load_off.left_of_whole(), sets_off: rule.sets_off, why });
        }
        // The longest is no lighter than a shorter one.
        let deepest = rules.iter().map(|rule| rule.load_off).max().unwrap_or_default();
        let ease_in = slot.source.plan.ease_in;
        let off = ease_in.load_off.max(deepest);
        Some(Cut { keep: off.left_of_whole(), sets_off: ease_in.sets_off, why })
    });
    let back = slot.care().laid_off.map(|back| cut(back.keep, Cutting::LayOff { days: None }));
    by_days.into_iter().chain(back).min_by_key(|cut| cut.keep)
}

/// While pain stands, at least a tenth under what hurt and under the owner's load; after it, at most
/// a tenth more a session (common practice).
fn pain(slot: &Slot<'_>, own: Option<Mass>) -> Option<Cut> {
    let pain = slot.care().pain?;
    if let Some(back) = pain.back {
        let keep = after_pain(back).min(Percent::WHOLE);
        return Some(cut(keep, Cutting::BackFromPain));
    }
    let under = pain.at.zip(own).and_then(|(at, own)| under_pain(at, own, slot.body_mass()));
    let keep = under.unwrap_or(UNDER_PAIN.left_of_whole());
    Some(cut(keep, Cutting::Pain { since: pain.since }))
}

/// What is kept of an owner's load, the body's part with it, to be a tenth under what hurt; where
/// that was more than its own, a tenth under its own. None for loads that have no share.
fn under_pain(at: Mass, own: Mass, body: Mass) -> Option<Percent> {
    let share = share(at, own, body)?;
    Some(share.min(Percent::WHOLE).of_share(UNDER_PAIN.left_of_whole()))
}

/// The most that a set with this load of its own may be for pain, whatever else cuts it: what that
/// leaves of it, and while it stands a tenth under what hurt, however heavy the set is in its row.
/// `first` is the load of the row's first set. None where there was no pain.
pub(super) fn most_for_pain(slot: &Slot<'_>, first: Option<Mass>, own: Mass) -> Option<Mass> {
    let body = slot.body_mass();
    let left = kept(own, body, pain(slot, first)?.keep);
    let hurt = slot.care().pain.filter(|pain| pain.back.is_none()).and_then(|pain| pain.at);
    let under = hurt.map(|at| kept(at, body, UNDER_PAIN.left_of_whole()));
    Some(under.map_or(left, |under| under.min(left)))
}

/// The load that hurt, where a call's is exactly a tenth under it by the pain that stands, before
/// what this gym makes of it. None where it is of another set of its row, where the owner's own load
/// is less than what hurt, where a body is moved with it, or where it was called before the pain
/// that is known now.
pub fn tenth_under(care: &Care, entry: &Entry, call: &Call) -> Option<Mass> {
    let pain = care.pain.filter(|pain| pain.back.is_none())?;
    let at = pain.at?;
    let (cut, gives) = call.reason.0.iter().find_map(|because| match because {
        Because::Cut { cut, gives } => Some((*cut, *gives)),
        _ => None,
    })?;
    let terms = entry.terms.iter().find(|terms| terms.row == call.row)?;
    let own = terms.own.filter(|own| *own >= at)?;
    let CallLoad::Known(load) = &call.load else { return None };
    let by_pain = cut.why == Cutting::Pain { since: pain.since }
        && load.body.is_none()
        && under_pain(at, own, Mass::ZERO) == Some(cut.keep)
        && kept(own, Mass::ZERO, cut.keep) == gives;
    by_pain.then_some(at)
}

/// What one load is of another, the body's part with both.
pub(super) fn share(load: Mass, own: Mass, body: Mass) -> Option<Percent> {
    Percent::part_of(load.checked_add(body)?, own.checked_add(body)?)
}

/// A share of what is moved: of the load, or of body and load. Where body mass is not known, help
/// alone moves nothing that a share could be taken of: the load stays.
pub(super) fn kept(load: Mass, body: Mass, keep: Percent) -> Mass {
    let less = || keep.left_of_whole().of(load.checked_add(body)?.max(Mass::ZERO));
    less().and_then(|less| load.checked_sub(less)).unwrap_or(load)
}

/// A miss that stands in the row's own session: never above what was missed there, whatever the
/// owner has come to since.
fn still_missed(slot: &Slot<'_>, missed: &Missed, own: Option<Mass>) -> Option<Cut> {
    let misses = slot.entry.misses.iter().take(usize::from(missed.times));
    let off = misses.rev().find_map(|miss| match miss {
        Miss::Less(off) => Some(*off),
        Miss::Repeat | Miss::Hold => None,
    });
    let of_own = share(missed.load?, own?, slot.body_mass())?.min(Percent::WHOLE);
    let keep = of_own.of_share(off.unwrap_or_default().left_of_whole());
    Some(cut(keep, Cutting::Missed { times: missed.times, then: missed.then }))
}

/// The most days that the plan itself lets pass from one session with a lift to the next: a week
/// where it has it but once.
fn gap(plan: &Plan, exercise: &str) -> i32 {
    let mut days: Vec<i32> = Vec::new();
    for week in 0..plan.weeks.len() {
        let sessions = plan.sessions_of(week);
        let count = i32::try_from(sessions.len()).unwrap_or(1).max(1);
        let monday = i32::try_from(week).unwrap_or(0).saturating_mul(7);
        for (nth, session) in (0_i32..).zip(sessions) {
            let Some(session) = plan.sessions.get(session) else { continue };
            let has =
                |slot: &crate::plan::Slot| slot.exercise == exercise && slot.weeks.contain(week);
            if session.exercises.iter().any(has) {
                let day = session.day.map_or(nth * 7 / count, from_monday);
                days.push(monday.saturating_add(day));
            }
        }
    }
    let gaps = days.iter().zip(days.iter().skip(1)).map(|(one, next)| next.saturating_sub(*one));
    gaps.max().unwrap_or(7)
}

fn from_monday(day: Weekday) -> i32 {
    i32::try_from(day.num_days_from_monday()).unwrap_or(0)
}
