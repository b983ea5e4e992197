//! The rules that a plan names, one by one. The first that changes anything decides; one that holds
//! speaks unless a later one changes something.

use super::evidence::{Judged, Row, size};
use crate::call::{Amount, HowMany};
use crate::owners::{Change, Owner, Proposal, Question, Track, Why};
use crate::plan::{Rule, RuleKind, Step};
use crate::progress::estimate::{Estimate, EstimatedReps, Formula, Nearness};
use crate::progress::makes::Makes;
use crate::quantity::{Distance, Mass, Percent, Range, Reps, Reserve, Seconds};
use crate::session::here::Here;

/// What a rule says.
#[derive(Debug, Clone)]
pub(super) struct Verdict {
    pub(super) changes: Vec<Change>,
    pub(super) why: Why,
    pub(super) silent: bool,
    pub(super) proposal: Option<Proposal>,
}

impl Verdict {
    pub(super) const fn says(why: Why) -> Self {
        Self { changes: Vec::new(), why, silent: false, proposal: None }
    }

    fn with(why: Why, change: Change) -> Self {
        Self { changes: vec![change], ..Self::says(why) }
    }

    /// Whether it changes what is called, beside what to try for.
    fn decides(&self) -> bool {
        self.changes.iter().any(|change| {
            matches!(change, Change::Step(_) | Change::NextTime(_) | Change::Place { .. })
        })
    }
}

/// A row as the rules are asked.
pub(super) struct Ask<'a> {
    pub(super) row: &'a Row<'a>,
    pub(super) state: &'a Track,
    pub(super) here: &'a Here<'a>,
    /// The body's part of what is moved.
    pub(super) body: Mass,
}

/// What a half point of effort outside the target is worth (Helms et al. 2018, Front Physiol 9:247).
const HALF_POINT: Percent = Percent::whole(2);
/// Half repetitions from which a session is well off its target where no rule follows the calls
/// (common practice: two repetitions).
const WELL_OFF: i16 = 4;
/// Repetitions that a held load may go on above a range, and above a fixed number (common practice).
const ABOVE_A_RANGE: u32 = 5;
const ABOVE_A_NUMBER: u32 = 2;
/// A step of more than this share of what is moved is a jump (+2–10 %: ACSM position stand 2009,
/// MSSE 41(3):687–708).
const JUMP: i64 = 10;

pub(super) fn verdict(ask: &Ask<'_>) -> Verdict {
    let rules = &ask.row.terms.rules;
    let only_planned = rules.iter().all(|rule| rule.kind == RuleKind::AsPlanned);
    let mut first: Option<Verdict> = None;
    for rule in rules.iter().filter(|rule| rule.kind != RuleKind::AsPlanned) {
        let Some(answer) = ask.rule(*rule) else { continue };
        if answer.decides() {
            return answer;
        }
        first.get_or_insert(answer);
    }
    match first {
        Some(found) => found,
        None if only_planned => ask.without_a_rule(rules.is_empty()),
        None => Verdict::says(Why::NoRule),
    }
}

impl Ask<'_> {
    fn rule(&self, rule: Rule) -> Option<Verdict> {
        let own = self.own();
        match rule.kind {
            RuleKind::AsPlanned => None,
            RuleKind::DoubleProgression => self.to_the_top(rule),
            // No help is left to take away: another rule may add load.
            RuleKind::LessAssistance if own.is_some_and(|own| own >= Mass::ZERO) => None,
            RuleKind::LessAssistance => self.to_the_top(rule),
            RuleKind::MoreAddedLoad if own.is_some_and(|own| own < Mass::ZERO) => None,
            RuleKind::MoreAddedLoad => self.to_the_top(rule),
            RuleKind::TwoForTwo => self.two_for_two(rule),
            RuleKind::AddWhenMade => Some(self.add_when_made(rule)),
            RuleKind::ByEffort => self.by_effort(rule),
        }
    }

    /// The track's load, before rounding.
    fn own(&self) -> Option<Mass> {
        self.state.load.or(self.row.terms.own)
    }

    /// Whether the track carries the load itself, so that it can step.
    fn steps(&self) -> bool {
        self.row.terms.load == self.row.terms.track && !self.row.terms.by_week
    }

    /// Made, but of too few sets to step on.
    fn too_few(&self) -> Option<Verdict> {
        let (done, of) = (self.row.sets.len(), self.row.terms.sets);
        let whole = self.row.sets.iter().all(|set| set.whole);
        (!self.row.made() && whole).then(|| {
            let done = u8::try_from(done).unwrap_or(u8::MAX);
            Verdict { silent: true, ..Verdict::says(Why::TooFew { done, of }) }
        })
    }

    fn add_when_made(&self, rule: Rule) -> Verdict {
        if !self.row.made() {
            return self
                .too_few()
                .unwrap_or_else(|| Verdict { silent: true, ..Verdict::says(Why::Silent) });
        }
        let Some(own) = self.own().filter(|_| self.steps()) else {
            return self.next_place(self.top()).unwrap_or_else(|| Verdict::says(Why::NoRule));
        };
        match self.steps_to(rule, own).into_iter().next() {
            Some(to) => step(own, to, Why::AllMade),
            None => self.held(Why::NothingHeavier),
        }
    }

    /// More repetitions, seconds or metres to the top of the range, then a step.
    fn to_the_top(&self, rule: Rule) -> Option<Verdict> {
        // An open set has no top.
        if let HowMany::Open { .. } = self.row.terms.asked {
            return None;
        }
        let (floor, top) = (ends(&self.row.terms.asked).0, self.top());
        let weakest = self.row.sets.iter().min_by_key(|set| size(set.done))?;
        if size(weakest.done) < size(top) {
            let why = Why::BelowTop { rule: rule.kind, done: weakest.done, top };
            let aim = at_least(one_more(weakest.done), floor);
            return Some(Verdict::with(why, Change::Aim(aim)));
        }
        if !self.row.made() {
            return Some(
                self.too_few()
                    .unwrap_or_else(|| Verdict { silent: true, ..Verdict::says(Why::Silent) }),
            );
        }
        Some(self.step_up(rule, weakest, floor, Why::TopReached { rule: rule.kind, top }))
    }

    /// Two or more over the goal in the last set of two sessions running.
    fn two_for_two(&self, rule: Rule) -> Option<Verdict> {
        let (floor, goal) =
            ends(&self.row.last_set().map_or(self.row.terms.asked, |set| set.asked));
        let goal = goal.reps()?;
        // One that was cut short before its last set says nothing and is passed over.
        let Some(last) = self.row.last_set() else {
            return Some(Verdict { silent: true, ..Verdict::says(Why::Silent) });
        };
        let done = last.done.reps()?;
        let over = |done: Reps| done >= goal.saturating_add(2);
        // At a lighter load it says nothing of this one.
        let before = self.state.over.filter(|(load, _)| *load >= self.row.meant);
        match before {
            Some((_, before)) if over(done) => {
                let why = Why::TwoForTwo { goal, done: [before, done] };
                Some(self.step_up(rule, last, floor, why))
            }
            _ if over(done) => {
                let why = Why::NotYetTwo { goal, done, times: 1 };
                Some(Verdict::with(why, Change::TwoOver { load: self.row.meant, done }))
            }
            _ => Some(Verdict::says(Why::NotYetTwo { goal, done, times: 0 })),
        }
    }

    /// 2 % for each half point outside the target, from its edge, by the median of the calls.
    fn by_effort(&self, rule: Rule) -> Option<Verdict> {
        let Some((by, called, edge)) = self.row.off_target() else {
            return Some(Verdict::says(Why::NotCalled));
        };
        let percent = matches!(self.row.terms.load, Owner::Max(_));
        if by == 0 {
            return Some(Verdict::says(Why::OnTarget { called }));
        }
        if percent || self.row.terms.by_week {
            let change = times(share_of(rule), by);
            // Of what was called, which may have been less already.
            let kept = self.row.terms.cut.map_or(Percent::WHOLE, |cut| cut.keep);
            let share = Percent::from_hundredths(kept.hundredths() + change.hundredths());
            // Percentages go down by effort alone, unless the plan says up as well.
            if by > 0 && !rule.up {
                let change = Percent::default();
                return Some(Verdict::says(Why::OffTarget { called, edge, change }));
            }
            let why = Why::OffTarget { called, edge, change };
            return Some(Verdict::with(why, Change::NextTime(share)));
        }
        // A load without a number cannot be changed by a share.
        let own = self.own()?;
        let moved = own.checked_add(self.body)?;
        let (step, change) = match rule.step {
            Some(Step::Mass(mass)) => {
                let step = mass.checked_mul(i64::from(by))?;
                (step, Percent::part_of(step, moved)?)
            }
            _ => {
                let change = times(share_of(rule), by);
                (change.of(moved.max(Mass::ZERO))?, change)
            }
        };
        Some(Verdict::with(Why::OffTarget { called, edge, change }, Change::Step(step)))
    }

    /// Where no rule is written the load holds; twice well off its target, a change is proposed.
    fn without_a_rule(&self, no_rule: bool) -> Verdict {
        let why = if no_rule { Why::NoRule } else { Why::AsPlanned };
        let Some((by, called, edge)) =
            self.row.off_target().filter(|(by, ..)| by.abs() >= WELL_OFF)
        else {
            return Verdict::says(why);
        };
        let off = Verdict::with(why, Change::WellOff(by));
        let Some(before) = self.state.off.filter(|before| before.signum() == by.signum()) else {
            return off;
        };
        // As far as both sessions say.
        let by = if before.abs() < by.abs() { before } else { by };
        let change = times(HALF_POINT, by);
        let to = match &self.row.terms.load {
            Owner::Max(_) => None,
            _ => self.own().and_then(|own| {
                own.checked_add(change.of(own.checked_add(self.body)?)?)
                    .and_then(|to| self.here.nearest(to))
            }),
        };
        let proposal = Proposal { question: Question::WellOff, to };
        Verdict { proposal: Some(proposal), why: Why::OffTarget { called, edge, change }, ..off }
    }

    /// A step up, unless the equipment has none or the most careful estimate says that it would fall
    /// below the range: then the load is held and the range goes on, to a stated end.
    fn step_up(&self, rule: Rule, set: &Judged, floor: Amount, why: Why) -> Verdict {
        let Some(own) = self.own().filter(|_| self.steps()) else {
            return self.next_place(self.top()).unwrap_or_else(|| Verdict::says(Why::NoRule));
        };
        let mut refused = Why::NothingHeavier;
        for to in self.steps_to(rule, own) {
            let lifted = self.here.nearest(to).unwrap_or(to);
            match self.too_big(set, own, lifted, floor) {
                None => return step(own, to, why),
                Some(too_big) => refused = too_big,
            }
        }
        self.held(refused)
    }

    /// Why a step is too big for the range, by the most careful reading there is.
    fn too_big(&self, set: &Judged, own: Mass, to: Mass, floor: Amount) -> Option<Why> {
        let Amount::Reps(floor) = floor else { return None };
        let moved = set.lifted?.checked_add(self.body)?;
        let next = to.checked_add(self.body)?;
        let jump = to.checked_sub(own)?.checked_mul(JUMP)? > own.checked_add(self.body)?;
        let done = set.done.reps().filter(|_| !set.helped)?;
        // Without a call nothing is known but that it was made: read as none left, where the step is
        // a jump.
        let left = match set.left {
            Some(left) => left,
            None if jump => Reserve::NONE,
            None => return None,
        };
        let careful = Formula::ALL
            .into_iter()
            // For a jump the most careful counts; but for the power law, which lies far under the six
            // others from ten repetitions up (computed).
            .filter(|formula| {
                *formula == Formula::default() || (jump && *formula != Formula::Lombardi)
            })
            .filter_map(|formula| Some((expected(formula, moved, done, left, next)?, formula)))
            .min_by_key(|(expected, _)| expected.hundredths());
        match careful {
            Some((expected, formula)) if expected.hundredths() < floor.saturating_mul(100) => {
                Some(Why::StepTooBig { step_to: to, expected, floor, formula })
            }
            Some(_) => None,
            None if jump => Some(Why::Rough { step_to: to }),
            None => None,
        }
    }

    /// The load is held and the range goes on by one; at its end the jump is proposed.
    fn held(&self, why: Why) -> Verdict {
        let asked = &self.row.terms.asked;
        let (from, to) = ends(asked);
        let most = size(to).saturating_add(unit(
            to,
            if size(from) == size(to) { ABOVE_A_NUMBER } else { ABOVE_A_RANGE },
        ));
        let weakest = self.row.sets.iter().map(|set| set.done).min_by_key(|done| size(*done));
        let aim = one_more(weakest.unwrap_or(to));
        if size(aim) <= most {
            return Verdict {
                changes: vec![Change::Extend(aim), Change::Aim(aim)],
                ..Verdict::says(why)
            };
        }
        let jump = match why {
            Why::StepTooBig { step_to, .. } | Why::Rough { step_to } => Some(step_to),
            _ => None,
        };
        let proposal = jump.map(|to| Proposal { question: Question::Jump, to: Some(to) });
        let stays = self.state.top.map(Change::Extend).into_iter();
        Verdict { changes: stays.collect(), proposal, ..Verdict::says(why) }
    }

    /// The next place on a stack without numbers.
    fn next_place(&self, top: Amount) -> Option<Verdict> {
        use crate::equipment::Rig;
        if !self.steps() {
            return None;
        }
        let load = self.row.load.as_ref()?;
        let Rig::Stack { stack, pin, .. } = &load.rig else { return None };
        let equipment = self.here.equipment;
        let pins = &equipment.stacks.iter().find(|one| one.name == *stack)?.pins;
        let at = pins.iter().position(|one| one.label == *pin)?;
        Some(match pins.get(at + 1) {
            Some(next) => Verdict::with(
                Why::TopReached { rule: RuleKind::DoubleProgression, top },
                Change::Place { gym: equipment.name.clone(), place: next.label.clone() },
            ),
            None => Verdict::says(Why::NoPlace { top }),
        })
    }

    /// The top of what is asked, as far as it goes on now.
    fn top(&self) -> Amount {
        let (_, top) = ends(&self.row.terms.asked);
        self.state.top.filter(|more| size(*more) > size(top)).unwrap_or(top)
    }

    /// The loads that a step may go to, in the order they are tried: what the plan says, from what
    /// was meant; else the usual step, unless it is more than a tenth of what is moved, and then the
    /// least that is heavier than both what was meant and what was made of it.
    fn steps_to(&self, rule: Rule, own: Mass) -> Vec<Mass> {
        // What there is to add may all be in place: the heaviest that can be made stays it.
        let from = self.here.nearest(own).map(|made| made.max(own));
        let smallest = from.and_then(|from| self.here.above(from));
        let (first, second) = match rule.step {
            _ if smallest.is_none() => (None, None),
            Some(Step::Mass(step)) => (own.checked_add(step), None),
            Some(Step::Share(share)) => {
                let moved = own.checked_add(self.body).map(|moved| moved.max(Mass::ZERO));
                (moved.and_then(|moved| own.checked_add(share.of(moved)?)), None)
            }
            None => (self.usual_step_to(own).filter(|usual| Some(*usual) > smallest), smallest),
        };
        let no_help = rule.kind == RuleKind::LessAssistance;
        let most = if no_help { Mass::ZERO } else { Mass::from_nanograms(i64::MAX) };
        first.into_iter().chain(second).map(|to| to.min(most)).collect()
    }

    /// The least that can be made and is the usual step more than what was meant, or next to it.
    fn usual_step_to(&self, own: Mass) -> Option<Mass> {
        let step = self.here.usual_step();
        let moved = own.checked_add(self.body)?;
        let small_enough = step.checked_mul(JUMP)? <= moved;
        let wanted = own.checked_add(step).filter(|_| small_enough && step > Mass::ZERO)?;
        self.here.nearest(wanted)
    }
}

fn step(own: Mass, to: Mass, why: Why) -> Verdict {
    match to.checked_sub(own) {
        Some(by) => Verdict::with(why, Change::Step(by)),
        None => Verdict::says(why),
    }
}

fn expected(
    formula: Formula,
    moved: Mass,
    done: Reps,
    left: Reserve,
    next: Mass,
) -> Option<EstimatedReps> {
    let estimate = Estimate::of(moved, done, Nearness::Called(left), formula).ok()?;
    formula.reps_at(estimate.max, next).ok()
}

/// The share that a rule takes for half a point.
fn share_of(rule: Rule) -> Percent {
    match rule.step {
        Some(Step::Share(share)) => share,
        _ => HALF_POINT,
    }
}

fn times(share: Percent, by: i16) -> Percent {
    Percent::from_hundredths(share.hundredths().saturating_mul(i32::from(by)))
}

/// The least and the most that is asked for; an open set has its floor for both.
pub(super) fn ends(how_many: &HowMany) -> (Amount, Amount) {
    match how_many {
        HowMany::Reps(Range { from, to }) => (Amount::Reps(*from), Amount::Reps(*to)),
        HowMany::Open { at_least, .. } => (Amount::Reps(*at_least), Amount::Reps(*at_least)),
        HowMany::Seconds(Range { from, to }) => (Amount::Seconds(*from), Amount::Seconds(*to)),
        HowMany::Metres(Range { from, to }) => (Amount::Metres(*from), Amount::Metres(*to)),
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

/// So many times a little more, in the measure of an amount.
fn unit(of: Amount, times: u32) -> u32 {
    match of {
        Amount::Reps(_) => times,
        Amount::Seconds(_) => times.saturating_mul(5),
        Amount::Metres(_) => times.saturating_mul(5_000),
    }
}
