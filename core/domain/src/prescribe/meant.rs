//! What a plan's own number comes to today, before this gym has its say.

use super::here::Here;
use super::lifter::{Lifter, Need};
use super::session::Source;
use crate::call::{EffortTarget, HowMany, LoadCall, MaxOf};
use crate::catalogue::Counting;
use crate::desk::MaxFact;
use crate::progress::percent;
use crate::quantity::{Mass, Percent};
use crate::session::Because;

/// A figure that the plan gives, counted as the exercise counts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Planned {
    pub(super) figure: Mass,
    /// The top of a range; the figure is its bottom.
    pub(super) up_to: Option<Mass>,
    pub(super) why: Vec<Because>,
}

/// What a plan says of a load.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Said {
    Figure(Planned),
    /// No figure: by feel, a pin, a share of the top set, bands alone.
    Open,
    /// A figure that can't be worked out for want of this.
    Missing(Need),
}

/// The exercise and the day that a load is worked out for.
#[derive(Debug, Clone, Copy)]
pub(super) struct For<'a> {
    pub(super) here: Here<'a>,
    pub(super) day: i32,
    /// A session that is past: its own sets changed no max that it was made with.
    pub(super) past: bool,
    /// The body's part, where it is known.
    pub(super) body: Option<Mass>,
}

impl For<'_> {
    /// The figure of a mass moved.
    fn figure(&self, moved: Mass) -> Option<Mass> {
        if self.moves_body() { moved.checked_sub(self.body?) } else { Some(moved) }
    }

    fn max<'a>(&self, lifter: &'a Lifter, lift: &str) -> Option<&'a MaxFact> {
        if self.past {
            lifter.desk.max_before(lift, self.day)
        } else {
            lifter.desk.max_on(lift, self.day)
        }
    }

    fn moves_body(&self) -> bool {
        self.here.exercise.body_share.hundredths() > 0
    }
}

/// What a load call comes to.
pub(super) fn said(source: Source<'_>, lifter: &Lifter, on: &For<'_>, call: &LoadCall) -> Said {
    let stated = |mass: Mass| {
        Said::Figure(Planned { figure: mass, up_to: None, why: vec![Because::PlanSays(mass)] })
    };
    match call {
        _ if on.here.counting == Counting::Unnumbered => Said::Open,
        LoadCall::Percent { share, of } => {
            let (lift, working) = match of {
                MaxOf::Own => (on.here.exercise.slug.as_ref(), false),
                MaxOf::Working => (on.here.exercise.slug.as_ref(), true),
                MaxOf::Lift(lift) => (lift.as_str(), false),
                MaxOf::WorkingOf(lift) => (lift.as_str(), true),
            };
            let Some(fact) = on.max(lifter, lift) else {
                return Said::Missing(Need::Max(lift.to_owned()));
            };
            let named = (lift != on.here.exercise.slug).then(|| name_of(source, lift));
            let working = working.then(|| working_share(source, lift));
            match of_max(on, fact, working, share.from, named) {
                Some(mut planned) => {
                    if !share.is_single() {
                        planned.raise_to(on, share.to);
                    }
                    Said::Figure(planned)
                }
                None => Said::Missing(Need::BodyMass),
            }
        }
        LoadCall::Mass(mass) | LoadCall::Added(mass) => stated(*mass),
        LoadCall::Body => {
            Said::Figure(Planned { figure: Mass::ZERO, up_to: None, why: Vec::new() })
        }
        LoadCall::Assisted(help) => stated(Mass::ZERO.checked_sub(*help).unwrap_or(Mass::ZERO)),
        LoadCall::SetUp { load: Some(load), .. } => stated(*load),
        LoadCall::SetUp { load: None, .. }
        | LoadCall::OfTopSet(_)
        | LoadCall::Pin(_)
        | LoadCall::ByFeel => Said::Open,
    }
}

fn name_of(source: Source<'_>, slug: &str) -> String {
    source.catalogue.get(slug).map_or_else(|| slug.to_owned(), |found| found.name.to_string())
}

/// The share of a lift's reference max that is its working max.
fn working_share(source: Source<'_>, lift: &str) -> Percent {
    let own = source.plan.maxes.iter().find(|rule| rule.lift == lift);
    own.and_then(|rule| rule.working).unwrap_or(source.plan.working_max)
}

fn of_max(
    on: &For<'_>,
    fact: &MaxFact,
    working: Option<Percent>,
    share: Percent,
    of: Option<String>,
) -> Option<Planned> {
    let mut why = Vec::new();
    let mut max = fact.mass;
    if let Some(working) = working {
        let gives = working.of(max)?;
        why.push(Because::WorkingMax { share: working, of: max, gives });
        max = gives;
    }
    let gives = share.of(max)?;
    why.push(Because::ShareOfMax { share, max, day: fact.day, of, gives });
    let figure = on.figure(gives)?;
    if figure != gives {
        why.push(Because::LessBody { moved: gives, body: on.body?, gives: figure });
    }
    Some(Planned { figure, up_to: None, why })
}

impl Planned {
    /// Makes it a range, up to another share of the same max.
    fn raise_to(&mut self, on: &For<'_>, share: Percent) {
        let max = self.why.iter().find_map(|why| match why {
            Because::ShareOfMax { max, .. } => Some(*max),
            _ => None,
        });
        let Some(gives) = max.and_then(|max| share.of(max)) else { return };
        self.up_to = on.figure(gives);
        self.why.push(Because::UpTo { share, gives });
    }
}

/// What the table of percentages gives for the effort asked, for a barbell main lift whose max is
/// known: by the most repetitions and the most left, so that it errs to the light side.
pub(super) fn by_effort(
    lifter: &Lifter,
    on: &For<'_>,
    how_many: &HowMany,
    effort: Option<EffortTarget>,
) -> Option<Planned> {
    if !on.here.exercise.main_lift || on.here.counting != Counting::Total {
        return None;
    }
    let HowMany::Reps(reps) = how_many else { return None };
    let fact = on.max(lifter, &on.here.exercise.slug)?;
    let (reps, left) = (reps.to, effort?.left.to);
    let row = percent::for_reps(reps, left)?;
    let because =
        Because::PercentForReps { reps, left, share: row.percent, interpolated: row.interpolated };
    let mut planned = of_max(on, fact, None, row.percent, None)?;
    planned.why.insert(0, because);
    Some(planned)
}
