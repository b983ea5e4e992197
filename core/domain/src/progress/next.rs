//! What an exercise should be next time, and why.
//!
//! In this order: pain holds and asks; a lighter or a test week is as the plan says; days off and
//! misses take their part; then the rules that the plan names are asked in their order, and the
//! first that changes anything decides. Every rule steps from what was meant, not from what
//! rounding made of it.

use serde::{Deserialize, Serialize};

use super::estimate::{EstimatedReps, Formula};
use super::evidence::{misses_running, ordinary, pain};
use super::history::PastSession;
use super::makes::Makes;
use super::rules;
use crate::call::{Amount, EffortTarget, HowMany, WeekKind};
use crate::plan::{Cut, LayOff, Miss, Rule, RuleKind};
use crate::quantity::{Mass, Percent, Reps, Reserve, Rounding};

/// What the plan says of the row this time.
#[derive(Debug, Clone, Copy)]
pub struct Ask<'a> {
    /// What the week is for.
    pub week: WeekKind,
    /// What the week takes off, where the plan does not write it out.
    pub cut: Cut,
    /// The load of the row's first set as the plan's own number comes to today, the cut taken off;
    /// none where it gives none.
    pub planned: Option<Mass>,
    /// How many it asks for.
    pub how_many: HowMany,
    /// How hard.
    pub target: Option<EffortTarget>,
    /// The share of body mass that the exercise moves beside the load; nothing for most.
    pub body: Mass,
    /// Days without training before today.
    pub days_off: u16,
    /// The rules, in the order they are asked.
    pub rules: &'a [Rule],
    /// What follows misses.
    pub misses: &'a [Miss],
    /// What follows days off, shortest first.
    pub lay_off: &'a [LayOff],
    /// What a first week back takes off after the longest lay-off.
    pub ease_in: Cut,
    /// The lifter holds a change of a rule back.
    pub held_back: bool,
    /// The formula of the estimate that a step is held by.
    pub formula: Formula,
}

/// The next call of a row.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Next {
    /// The load that is meant, before rounding; none where it has no number or is by feel.
    pub meant: Option<Mass>,
    /// What the equipment makes of it.
    pub made: Option<Mass>,
    /// How many to ask for; wider than the plan's where a step is held.
    pub how_many: HowMany,
    /// What to try for within it.
    pub aim: Option<Amount>,
    /// The share of the sets to leave out.
    pub sets_off: Percent,
    /// Why.
    pub reason: Reason,
    /// What the coach is to be asked.
    pub question: Option<Question>,
}

/// What only the coach can answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Question {
    /// There was pain last time: go on, go lighter or swap?
    Pain,
    /// It was missed again and again: what now?
    Missed,
}

/// Why the next call is what it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum Reason {
    /// There is no history: the plan's own number.
    FirstTime,
    /// There is neither history nor a number: by feel.
    ByFeel,
    /// The plan's own number for this week.
    AsPlanned,
    /// A lighter week.
    Eased {
        /// Deload or ease-in.
        week: WeekKind,
    },
    /// A week of testing.
    Test,
    /// Pain last time.
    Pain,
    /// Days without training.
    LayOff {
        /// So many.
        days: u16,
        /// Share of the load taken off.
        load_off: Percent,
        /// Whether it starts again as a first week.
        ease_in: bool,
    },
    /// Missed so many sessions running.
    Missed {
        /// Sessions.
        times: u16,
        /// What the plan does about it.
        then: Miss,
    },
    /// The lifter holds the change back.
    HeldBack,
    /// The last session said nothing for the rule: its sets were not begun, or ended by pain, an
    /// interruption or the equipment.
    NoEvidence,
    /// Every set reached the top of the range: more load, or less help.
    TopReached {
        /// The rule.
        rule: RuleKind,
        /// The top.
        top: Amount,
    },
    /// The weakest set has not reached the top: the same load, more of it.
    BelowTop {
        /// The rule.
        rule: RuleKind,
        /// The weakest set.
        done: Amount,
        /// The top.
        top: Amount,
    },
    /// Every set reached the top, and the next place of an unnumbered load is the lifter's to
    /// choose.
    NextPlace {
        /// The top.
        top: Amount,
    },
    /// The smallest step would fall below the range: the load is held and the range goes on.
    StepTooBig {
        /// The load of the step.
        step_to: Mass,
        /// Repetitions that an estimate expects there.
        expected: EstimatedReps,
        /// The least of the range.
        floor: Reps,
        /// The estimate's formula.
        formula: Formula,
    },
    /// The equipment makes nothing heavier: the load is held and the range goes on.
    NothingHeavier,
    /// Two or more over the goal in the last set, two sessions running: more load.
    TwoForTwo {
        /// The goal.
        goal: Reps,
        /// The last sets of the two sessions, the earlier first.
        done: [Reps; 2],
    },
    /// Not yet two or more over the goal two sessions running.
    NotYetTwo {
        /// The goal.
        goal: Reps,
        /// The last set of the last session that has one.
        done: Reps,
        /// Sessions running with two over: none or one.
        times: u8,
    },
    /// The effort called was outside its target: so much less or more.
    OffTarget {
        /// What was called; none left where a repetition failed.
        called: Reserve,
        /// The edge of the target that it passed.
        edge: Reserve,
        /// The change of what is moved.
        change: Percent,
        /// The set that was called so, from 1; 0 where it was not written down.
        #[serde(default)]
        set: u8,
    },
    /// The effort called was in its target: the same.
    OnTarget {
        /// What was called.
        called: Reserve,
    },
    /// No effort was called: the same.
    NotCalled,
}

/// The next call of a row, from its history with the latest session last.
pub fn next(ask: &Ask<'_>, history: &[PastSession], makes: &impl Makes) -> Next {
    let found = decide(ask, history, makes);
    let made = found.meant.and_then(|meant| makes.nearest(meant));
    Next {
        meant: found.meant,
        made,
        how_many: found.how_many,
        aim: found.aim,
        sets_off: found.sets_off,
        reason: found.reason,
        question: found.question,
    }
}

/// A decision before the equipment has its say.
#[derive(Debug, Clone, Copy)]
pub(super) struct Found {
    pub(super) meant: Option<Mass>,
    pub(super) how_many: HowMany,
    pub(super) aim: Option<Amount>,
    pub(super) sets_off: Percent,
    pub(super) reason: Reason,
    pub(super) question: Option<Question>,
}

impl Found {
    pub(super) fn new(ask: &Ask<'_>, meant: Option<Mass>, reason: Reason) -> Self {
        let sets_off = Percent::default();
        Self { meant, how_many: ask.how_many, aim: None, sets_off, reason, question: None }
    }

    fn asking(self, question: Question) -> Self {
        Self { question: Some(question), ..self }
    }
}

fn decide(ask: &Ask<'_>, history: &[PastSession], makes: &impl Makes) -> Found {
    let Some(latest) = history.last() else { return without_history(ask) };
    let last = history.iter().rev().find(ordinary);
    // An ease-in alone is no history of the plan's own number, but better than none at all.
    let base = match (last, ask.planned) {
        (None, Some(planned)) => Some(planned),
        (last, _) => base(ask, last.unwrap_or(latest)),
    };
    if pain(latest) {
        let held = not_above(base, latest.meant);
        return Found::new(ask, held, Reason::Pain).asking(Question::Pain);
    }
    match ask.week {
        WeekKind::Test => return Found::new(ask, ask.planned.or(base), Reason::Test),
        WeekKind::Deload | WeekKind::EaseIn => return eased(ask, base),
        WeekKind::Ordinary => {}
    }
    if let Some(found) = laid_off(ask, base) {
        return found;
    }
    let Some(last) = last else {
        let reason = if ask.planned.is_some() { Reason::AsPlanned } else { Reason::NoEvidence };
        return Found::new(ask, base, reason);
    };
    if let Some(found) = missed(ask, history, last, base) {
        return found;
    }
    let mut first = None;
    for rule in ask.rules {
        let Some(answer) = rules::ask(*rule, ask, history, last, base, makes) else { continue };
        if answer.changes {
            let held = ask.held_back.then(|| Found::new(ask, base, Reason::HeldBack));
            return held.unwrap_or(answer.found);
        }
        // A rule that holds speaks, unless a later one changes something. The plan's own number
        // has nothing to say where another rule does.
        match first {
            None => first = Some(answer.found),
            Some(found) if found.reason == Reason::AsPlanned => first = Some(answer.found),
            Some(_) => {}
        }
    }
    first.unwrap_or_else(|| Found::new(ask, base, Reason::AsPlanned))
}

fn without_history(ask: &Ask<'_>) -> Found {
    let reason = match (ask.week, ask.planned) {
        (WeekKind::Test, _) => Reason::Test,
        (week @ (WeekKind::Deload | WeekKind::EaseIn), _) => Reason::Eased { week },
        (WeekKind::Ordinary, Some(_)) => Reason::FirstTime,
        (WeekKind::Ordinary, None) => Reason::ByFeel,
    };
    Found::new(ask, ask.planned, reason)
}

/// Where the rules start from. Where the plan's own numbers are all that is asked for, it is
/// those; otherwise what was meant last time, moved as far as the plan's number has moved since,
/// so that percentages by week and a rule go together.
fn base(ask: &Ask<'_>, last: &PastSession) -> Option<Mass> {
    let only_planned = ask.rules.iter().all(|rule| rule.kind == RuleKind::AsPlanned);
    match ask.planned {
        Some(planned) if only_planned => Some(planned),
        _ => carried(last, ask.planned),
    }
}

/// What was meant in a session, moved as far as the plan's number has moved since.
pub(crate) fn carried(then: &PastSession, planned: Option<Mass>) -> Option<Mass> {
    match (then.meant, then.planned, planned) {
        (Some(meant), Some(was), Some(is)) if was != is => {
            if was > Mass::ZERO && is > Mass::ZERO {
                meant.ratio(is.nanograms(), was.nanograms(), Rounding::HalfEven)
            } else {
                // Help and nothing at all have no ratio.
                is.checked_sub(was).and_then(|moved| meant.checked_add(moved))
            }
        }
        (Some(meant), Some(_), Some(_)) | (Some(meant), _, None) => Some(meant),
        // The plan has begun to give a number, or the load had none.
        (_, None, Some(planned)) | (None, _, Some(planned)) => Some(planned),
        (None, _, None) => None,
    }
}

fn not_above(base: Option<Mass>, limit: Option<Mass>) -> Option<Mass> {
    match (base, limit) {
        (Some(base), Some(limit)) => Some(base.min(limit)),
        (base, limit) => limit.or(base),
    }
}

/// A lighter week. The plan's numbers have the cut taken off already; what is by feel has not.
fn eased(ask: &Ask<'_>, base: Option<Mass>) -> Found {
    let meant = match ask.planned {
        Some(_) => base,
        None => base.map(|base| lighter(base, ask.body, ask.cut.load_off)),
    };
    Found::new(ask, meant, Reason::Eased { week: ask.week })
}

/// So much less of what is moved: of the load, or of body and load.
fn lighter(load: Mass, body: Mass, off: Percent) -> Mass {
    moved_by(load, body, Percent::from_hundredths(-off.hundredths())).unwrap_or(load)
}

/// A load changed by a share of what is moved. Where body mass is not known, help alone moves
/// nothing that a share could be taken of: the load stays.
pub(super) fn moved_by(load: Mass, body: Mass, change: Percent) -> Option<Mass> {
    let moved = load.checked_add(body)?.max(Mass::ZERO);
    change.of(moved).and_then(|change| load.checked_add(change))
}

fn laid_off(ask: &Ask<'_>, base: Option<Mass>) -> Option<Found> {
    let rule = ask.lay_off.iter().rev().find(|rule| ask.days_off > rule.over_days)?;
    let (load_off, sets_off) = if rule.ease_in {
        (ask.ease_in.load_off, ask.ease_in.sets_off)
    } else {
        (rule.load_off, rule.sets_off)
    };
    let meant = base.map(|base| lighter(base, ask.body, load_off));
    let reason = Reason::LayOff { days: ask.days_off, load_off, ease_in: rule.ease_in };
    Some(Found { sets_off, ..Found::new(ask, meant, reason) })
}

fn missed(
    ask: &Ask<'_>,
    history: &[PastSession],
    last: &PastSession,
    base: Option<Mass>,
) -> Option<Found> {
    let times = misses_running(history);
    let then = *ask.misses.get(times.checked_sub(1)?).or(ask.misses.last())?;
    // The same again is what was meant, moved as the plan moves: a lighter week of the plan stays
    // lighter, and a heavier one waits.
    let again = not_above(base, last.meant);
    let reason = Reason::Missed { times: u16::try_from(times).unwrap_or(u16::MAX), then };
    let found = |meant| Found::new(ask, meant, reason);
    Some(match then {
        Miss::Repeat => found(again),
        Miss::Less(off) => found(again.map(|again| lighter(again, ask.body, off))),
        Miss::Hold => found(again).asking(Question::Missed),
    })
}
