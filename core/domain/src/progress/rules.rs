//! The rules that a plan names, one by one.

use super::estimate::{Estimate, EstimatedReps, Nearness};
use super::evidence::{Judged, judged, ordinary};
use super::history::PastSession;
use super::makes::Makes;
use super::next::{Ask, Found, Reason, carried, moved_by};
use crate::call::{Amount, HowMany};
use crate::plan::{Rule, RuleKind, Step};
use crate::quantity::{Distance, Mass, Percent, Range, Reps, Reserve, Seconds};

/// What a rule says.
pub(super) struct Answer {
    pub(super) found: Found,
    /// Whether it changes the load; otherwise a later rule may.
    pub(super) changes: bool,
}

impl Answer {
    fn hold(found: Found) -> Option<Self> {
        Some(Self { found, changes: false })
    }

    fn change(found: Found) -> Option<Self> {
        Some(Self { found, changes: true })
    }
}

/// Asks one rule; `None` where it does not apply.
pub(super) fn ask(
    rule: Rule,
    ask: &Ask<'_>,
    history: &[PastSession],
    last: &PastSession,
    base: Option<Mass>,
    makes: &impl Makes,
) -> Option<Answer> {
    let here = Here { rule, ask, last, base, makes };
    match rule.kind {
        RuleKind::AsPlanned => Answer::hold(Found::new(ask, base, Reason::AsPlanned)),
        RuleKind::DoubleProgression => here.to_the_top(),
        // No help is left to take away: another rule may add load.
        RuleKind::LessAssistance if base.is_some_and(|base| base >= Mass::ZERO) => None,
        RuleKind::LessAssistance => here.to_the_top(),
        RuleKind::MoreAddedLoad if base.is_some_and(|base| base < Mass::ZERO) => None,
        RuleKind::MoreAddedLoad => here.to_the_top(),
        RuleKind::TwoForTwo => here.two_for_two(history),
        RuleKind::ByEffort => here.by_effort(),
    }
}

struct Here<'a, M> {
    rule: Rule,
    ask: &'a Ask<'a>,
    last: &'a PastSession,
    base: Option<Mass>,
    makes: &'a M,
}

impl<M: Makes> Here<'_, M> {
    fn found(&self, reason: Reason) -> Found {
        Found::new(self.ask, self.base, reason)
    }

    /// More repetitions, seconds or metres to the top of the range, then a step.
    fn to_the_top(&self) -> Option<Answer> {
        // An open set has no top.
        if let HowMany::Open { .. } = self.ask.how_many {
            return None;
        }
        let (floor, top) = ends(&self.ask.how_many);
        let sets = judged(self.last);
        let Some(weakest) = sets.iter().min_by_key(|set| size(set.done)) else {
            return Answer::hold(self.found(Reason::NoEvidence));
        };
        let same_kind = self.ask.how_many.same_kind(&weakest.done);
        // Sets that were not begun say nothing, and so not that the top was reached in all.
        let all =
            sets.len() >= usize::from(self.last.sets_called) && sets.iter().all(|set| set.complete);
        if !same_kind || (!all && size(weakest.done) >= size(top)) {
            return Answer::hold(self.found(Reason::NoEvidence));
        }
        if size(weakest.done) < size(top) {
            let reason = Reason::BelowTop { rule: self.rule.kind, done: weakest.done, top };
            let aim = at_least(one_more(weakest.done), floor);
            return Answer::hold(Found { aim: Some(aim), ..self.found(reason) });
        }
        self.step(weakest, floor, Reason::TopReached { rule: self.rule.kind, top }, top)
    }

    /// Two or more over the goal in the last set of two sessions running.
    fn two_for_two(&self, history: &[PastSession]) -> Option<Answer> {
        let (floor, goal) = ends(&self.ask.how_many);
        let (Amount::Reps(_), Amount::Reps(goal_reps)) = (floor, goal) else { return None };
        // Sessions that have a last set, the latest first. One that was cut short before it says
        // nothing and is passed over.
        let mut with_last = history.iter().rev().filter(ordinary).filter_map(|session| {
            let last = last_set(session)?;
            Some((session, last, last.done.reps()?, goal_of(&last.asked)?))
        });
        let Some((session, last, done, then)) = with_last.next() else {
            return Answer::hold(self.found(Reason::NoEvidence));
        };
        let over = |done: Reps, goal: Reps| done >= goal.saturating_add(2);
        let earlier = with_last.next().filter(|(earlier, ..)| {
            // At a lighter load it says nothing of this one.
            carried(earlier, session.planned) >= session.meant
        });
        match (over(done, then), earlier) {
            (true, Some((_, _, before, goal))) if over(before, goal) => {
                let reason = Reason::TwoForTwo { goal: goal_reps, done: [before, done] };
                self.step(&last, floor, reason, Amount::Reps(goal))
            }
            (two_over, _) => {
                let times = u8::from(two_over);
                Answer::hold(self.found(Reason::NotYetTwo { goal: goal_reps, done, times }))
            }
        }
    }

    /// 2 % for each half point outside the target, from its edge (Helms et al. 2018, Front Physiol
    /// 9:247). The hardest call governs.
    fn by_effort(&self) -> Option<Answer> {
        let off = |set: &Judged| {
            let (called, target) = (set.left?, set.target?.left);
            // Past five left a call is too far off to steer by (Hackett et al. 2017).
            let trusted = called.min(target.to.max(FIVE_LEFT));
            let halves = |reserve: Reserve| i32::from(reserve.halves());
            let (edge, by) = if trusted < target.from {
                (target.from, halves(trusted) - halves(target.from))
            } else if trusted > target.to {
                (target.to, halves(trusted) - halves(target.to))
            } else {
                (trusted, 0)
            };
            Some((by, called, edge, set.place.saturating_add(1)))
        };
        let sets = judged(self.last);
        let Some((by, called, edge, set)) = sets.iter().filter_map(off).min_by_key(|(by, ..)| *by)
        else {
            let silent = sets.is_empty();
            let reason = if silent { Reason::NoEvidence } else { Reason::NotCalled };
            return Answer::hold(self.found(reason));
        };
        if by == 0 {
            return Answer::hold(self.found(Reason::OnTarget { called }));
        }
        // A load without a number cannot be changed by a share.
        let base = self.base?;
        let (meant, change) = match self.rule.step {
            Some(Step::Mass(step)) => {
                let meant = base.checked_add(step.checked_mul(i64::from(by))?)?;
                (meant, share(meant.checked_sub(base)?, base.checked_add(self.ask.body)?)?)
            }
            step => {
                let each = match step {
                    Some(Step::Share(share)) => share.hundredths(),
                    _ => HALF_POINT.hundredths(),
                };
                let change = Percent::from_hundredths(each.saturating_mul(by));
                (moved_by(base, self.ask.body, change)?, change)
            }
        };
        let reason = Reason::OffTarget { called, edge, change, set };
        Answer::change(Found { meant: Some(meant), ..self.found(reason) })
    }

    /// A step up, unless the equipment has none or the estimate says that it would fall below the
    /// range: then the load is held and the range goes on.
    fn step(&self, set: &Judged, floor: Amount, reason: Reason, top: Amount) -> Option<Answer> {
        let Some(base) = self.base else {
            return Answer::hold(self.found(Reason::NextPlace { top }));
        };
        let held = |reason| {
            let aim = one_more(set.done);
            let how_many = up_to(self.ask.how_many, aim);
            Answer::hold(Found { how_many, aim: Some(aim), ..self.found(reason) })
        };
        // The usual step first, and where that is too much the smallest.
        let mut refused = Reason::NothingHeavier;
        for step_to in self.steps_to(base) {
            let lifted = self.makes.nearest(step_to).unwrap_or(step_to);
            match (floor, self.expected(set, lifted)) {
                (Amount::Reps(floor), Some(expected))
                    if expected.hundredths() < floor.saturating_mul(100) =>
                {
                    let formula = self.ask.formula;
                    refused = Reason::StepTooBig { step_to: lifted, expected, floor, formula };
                }
                _ => return Answer::change(Found { meant: Some(step_to), ..self.found(reason) }),
            }
        }
        held(refused)
    }

    /// The loads that a step may go to, in the order they are tried: what the plan says, from what
    /// was meant; else the usual step, unless it is more than a tenth of what is moved (+2–10 %:
    /// ACSM Position Stand 2009), and then the least that is heavier than both what was meant and
    /// what was made of it.
    fn steps_to(&self, base: Mass) -> impl Iterator<Item = Mass> {
        // What there is to add may all be in place: the heaviest that can be made stays it.
        let from = self.makes.nearest(base).map(|made| made.max(base));
        let smallest = from.and_then(|from| self.makes.above(from));
        let (first, second) = match self.rule.step {
            _ if smallest.is_none() => (None, None),
            Some(Step::Mass(step)) => (base.checked_add(step), None),
            Some(Step::Share(share)) => (moved_by(base, self.ask.body, share), None),
            None => {
                let usual = self.usual_step_to(base).filter(|usual| Some(*usual) > smallest);
                (usual, smallest)
            }
        };
        let no_help = self.rule.kind == RuleKind::LessAssistance;
        let most = if no_help { Mass::ZERO } else { Mass::from_nanograms(i64::MAX) };
        first.into_iter().chain(second).map(move |step_to| step_to.min(most))
    }

    /// The least that can be made and is the usual step more than what was meant, or next to it.
    fn usual_step_to(&self, base: Mass) -> Option<Mass> {
        let step = self.makes.usual_step();
        let moved = base.checked_add(self.ask.body)?;
        let small_enough = step.checked_mul(10)? <= moved;
        let wanted = base.checked_add(step).filter(|_| small_enough && step > Mass::ZERO)?;
        self.makes.nearest(wanted)
    }

    /// Repetitions that an estimate from the set expects at a load. Without a call there is no
    /// estimate, only a lower bound, and that is no ground to hold a step.
    fn expected(&self, set: &Judged, load: Mass) -> Option<EstimatedReps> {
        let done = set.done.reps().filter(|_| !set.helped)?;
        let lifted = set.made?.checked_add(self.last.body)?;
        let nearness = Nearness::Called(set.left?);
        let estimate = Estimate::of(lifted, done, nearness, self.ask.formula).ok()?;
        self.ask.formula.reps_at(estimate.max, load.checked_add(self.ask.body)?).ok()
    }
}

const FIVE_LEFT: Reserve = match Reserve::from_halves(10) {
    Some(reserve) => reserve,
    None => Reserve::NONE,
};

/// What half a point of effort is worth.
const HALF_POINT: Percent = Percent::whole(2);

/// A change as a share of what is moved.
fn share(change: Mass, moved: Mass) -> Option<Percent> {
    let scaled = i128::from(change.nanograms()) * 10_000;
    let hundredths = scaled.checked_div(i128::from(moved.nanograms()))?;
    i32::try_from(hundredths).ok().map(Percent::from_hundredths)
}

/// The last set called, where it was done and says something.
fn last_set(session: &PastSession) -> Option<Judged> {
    let last = session.sets_called.checked_sub(1)?;
    judged(session).into_iter().find(|set| set.place == last && set.complete)
}

fn goal_of(asked: &HowMany) -> Option<Reps> {
    ends(asked).1.reps()
}

/// The least and the most that is asked for; an open set has its floor for both.
fn ends(how_many: &HowMany) -> (Amount, Amount) {
    match how_many {
        HowMany::Reps(Range { from, to }) => (Amount::Reps(*from), Amount::Reps(*to)),
        HowMany::Open { at_least, .. } => (Amount::Reps(*at_least), Amount::Reps(*at_least)),
        HowMany::Seconds(Range { from, to }) => (Amount::Seconds(*from), Amount::Seconds(*to)),
        HowMany::Metres(Range { from, to }) => (Amount::Metres(*from), Amount::Metres(*to)),
    }
}

/// An amount as a number, to compare amounts of one kind.
fn size(amount: Amount) -> u32 {
    match amount {
        Amount::Reps(reps) => u32::from(reps),
        Amount::Seconds(seconds) => seconds.count(),
        Amount::Metres(distance) => distance.millimetres(),
    }
}

fn at_least(amount: Amount, floor: Amount) -> Amount {
    if size(amount) < size(floor) { floor } else { amount }
}

/// A little more: one repetition, five seconds, five metres (common practice).
fn one_more(amount: Amount) -> Amount {
    match amount {
        Amount::Reps(reps) => Amount::Reps(reps.saturating_add(1)),
        Amount::Seconds(s) => Amount::Seconds(Seconds::new(s.count().saturating_add(5))),
        Amount::Metres(metres) => {
            let more = metres.millimetres().saturating_add(5_000);
            Amount::Metres(Distance::from_millimetres(more))
        }
    }
}

/// What is asked for with its most raised to an amount.
fn up_to(how_many: HowMany, most: Amount) -> HowMany {
    match (how_many, most) {
        (HowMany::Reps(range), Amount::Reps(to)) => {
            HowMany::Reps(Range { to: range.to.max(to), ..range })
        }
        (HowMany::Seconds(range), Amount::Seconds(to)) => {
            HowMany::Seconds(Range { to: range.to.max(to), ..range })
        }
        (HowMany::Metres(range), Amount::Metres(to)) => {
            HowMany::Metres(Range { to: range.to.max(to), ..range })
        }
        (how_many, _) => how_many,
    }
}
