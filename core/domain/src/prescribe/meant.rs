//! What a plan's own number comes to today, before any cut and before this gym has its say.

use super::lifter::Need;
use super::slot::Slot;
use crate::call::{EffortTarget, HowMany, LoadCall, MaxOf};
use crate::catalogue::Counting;
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

/// The lift whose max owns a load in percent, and whether it is of its working max.
pub(super) fn lift_of<'a>(slot: &Slot<'a>, of: &'a MaxOf) -> (&'a str, bool) {
    match of {
        MaxOf::Own => (slot.exercise.slug.as_ref(), false),
        MaxOf::Working => (slot.exercise.slug.as_ref(), true),
        MaxOf::Lift(lift) => (lift, false),
        MaxOf::WorkingOf(lift) => (lift, true),
    }
}

/// What a load call comes to by the plan and the maxes alone.
pub(super) fn said(slot: &Slot<'_>, call: &LoadCall) -> Said {
    let stated = |mass: Mass| {
        Said::Figure(Planned { figure: mass, up_to: None, why: vec![Because::PlanSays(mass)] })
    };
    match call {
        _ if slot.here.counting == Counting::Unnumbered => Said::Open,
        LoadCall::Percent { share, of } => {
            let (lift, working) = lift_of(slot, of);
            let Some((max, day)) = max_of(slot, lift) else {
                return Said::Missing(Need::Max(lift.to_owned()));
            };
            let named = (lift != slot.exercise.slug).then(|| name_of(slot, lift));
            let working = working.then(|| working_share(slot, lift));
            match of_max(slot, (max, day), working, share.from, named) {
                Some(mut planned) => {
                    if !share.is_single() {
                        planned.raise_to(slot, share.to);
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

fn max_of(slot: &Slot<'_>, lift: &str) -> Option<(Mass, i32)> {
    slot.lifter.desk.owners.max(lift).now.map(|(mass, day, _)| (mass, day))
}

fn name_of(slot: &Slot<'_>, slug: &str) -> String {
    let catalogue = slot.source.catalogue;
    catalogue.get(slug).map_or(slug, |found| found.name_in(catalogue.tongue())).to_owned()
}

/// The share of a lift's reference max that is its working max.
fn working_share(slot: &Slot<'_>, lift: &str) -> Percent {
    let own = slot.source.plan.maxes.iter().find(|rule| rule.lift == lift);
    own.and_then(|rule| rule.working).unwrap_or(slot.source.plan.working_max)
}

/// The figure of a mass moved.
fn figure(slot: &Slot<'_>, moved: Mass) -> Option<Mass> {
    if slot.moves_body() { moved.checked_sub(slot.body_part()?) } else { Some(moved) }
}

fn of_max(
    slot: &Slot<'_>,
    (mut max, day): (Mass, i32),
    working: Option<Percent>,
    share: Percent,
    of: Option<String>,
) -> Option<Planned> {
    let mut why = Vec::new();
    if let Some(working) = working {
        let gives = working.of(max)?;
        why.push(Because::WorkingMax { share: working, of: max, gives });
        max = gives;
    }
    let gives = share.of(max)?;
    why.push(Because::ShareOfMax { share, max, day, of, gives });
    let figure = figure(slot, gives)?;
    if figure != gives {
        why.push(Because::LessBody { moved: gives, body: slot.body_part()?, gives: figure });
    }
    Some(Planned { figure, up_to: None, why })
}

impl Planned {
    /// Makes it a range, up to another share of the same max.
    fn raise_to(&mut self, slot: &Slot<'_>, share: Percent) {
        let max = self.why.iter().find_map(|why| match why {
            Because::ShareOfMax { max, .. } => Some(*max),
            _ => None,
        });
        let Some(gives) = max.and_then(|max| share.of(max)) else { return };
        self.up_to = figure(slot, gives);
        self.why.push(Because::UpTo { share, gives });
    }
}

/// What the table of percentages gives for the effort asked, for a barbell main lift whose max is
/// known: by the most repetitions and the most left, so that it errs to the light side.
pub(super) fn by_effort(
    slot: &Slot<'_>,
    how_many: &HowMany,
    effort: Option<EffortTarget>,
) -> Option<Planned> {
    if !slot.exercise.main_lift || slot.here.counting != Counting::Total {
        return None;
    }
    let HowMany::Reps(reps) = how_many else { return None };
    let max = max_of(slot, &slot.exercise.slug)?;
    let (reps, left) = (reps.to, effort?.left.to);
    let row = percent::for_reps(reps, left)?;
    let because =
        Because::PercentForReps { reps, left, share: row.percent, interpolated: row.interpolated };
    let mut planned = of_max(slot, max, None, row.percent, None)?;
    planned.why.insert(0, because);
    Some(planned)
}
