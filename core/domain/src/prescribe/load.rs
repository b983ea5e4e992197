//! Loads: from what the plan says to what is meant, and from that to what is on.

use super::here::Here;
use super::lifter::{Lifter, Need};
use crate::call::{LoadCall, MaxOf};
use crate::catalogue::{Catalogue, Counting};
use crate::desk::Desk;
use crate::equipment::Rig;
use crate::plan::Plan;
use crate::quantity::{Mass, Percent, Rounding};
use crate::session::{Because, BodyPart, CallLoad, Load, made};

/// What the plan's own number comes to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Planned {
    /// A figure, with its derivation.
    Figure(Mass, Vec<Because>),
    /// A share of the top set.
    AfterTop(Percent),
    /// A place on an unnumbered stack.
    Pin(String),
    /// Named bands or chains, with a figure beside them where there is one.
    SetUp(String, Option<Mass>),
    /// None: by feel, or for want of a max.
    Nothing,
}

/// The plan's own number for a load call on a day.
pub(super) fn planned(
    plan: &Plan,
    catalogue: &Catalogue,
    desk: &Desk,
    exercise: &str,
    call: &LoadCall,
    day: i32,
    needs: &mut Vec<Need>,
) -> Planned {
    let says = |figure| Planned::Figure(figure, vec![Because::PlanSays(figure)]);
    match call {
        LoadCall::Percent { share, of } => {
            let lift = match of {
                MaxOf::Own | MaxOf::Working => exercise,
                MaxOf::Lift(lift) | MaxOf::WorkingOf(lift) => lift,
            };
            let Some(fact) = desk.max_on(lift, day) else {
                needs.push(Need::Max(lift.to_owned()));
                return Planned::Nothing;
            };
            let mut because = Vec::new();
            let mut max = fact.mass;
            if matches!(of, MaxOf::Working | MaxOf::WorkingOf(_)) {
                let share = working_share(plan, lift);
                let Some(gives) = share.of(max) else { return Planned::Nothing };
                because.push(Because::WorkingMax { share, of: max, gives });
                max = gives;
            }
            // A range is begun in its middle.
            let middle = (share.from.hundredths() + share.to.hundredths()) / 2;
            let share = Percent::from_hundredths(middle);
            let Some(gives) = share.of(max) else { return Planned::Nothing };
            let other = (lift != exercise)
                .then(|| catalogue.get(lift).map_or(lift, |lift| lift.name.as_ref()).to_owned());
            because.push(Because::ShareOfMax { share, max, day: fact.day, of: other, gives });
            Planned::Figure(gives, because)
        }
        LoadCall::Mass(mass) | LoadCall::Added(mass) => says(*mass),
        LoadCall::Body => says(Mass::ZERO),
        LoadCall::Assisted(help) => match Mass::ZERO.checked_sub(*help) {
            Some(figure) => says(figure),
            None => Planned::Nothing,
        },
        LoadCall::OfTopSet(share) => Planned::AfterTop(*share),
        LoadCall::Pin(pin) => Planned::Pin(pin.clone()),
        LoadCall::SetUp { name, load } => Planned::SetUp(name.clone(), *load),
        LoadCall::ByFeel => Planned::Nothing,
    }
}

/// The share of a reference max that is a lift's working max.
fn working_share(plan: &Plan, lift: &str) -> Percent {
    plan.maxes
        .iter()
        .find(|rule| rule.lift == lift)
        .and_then(|rule| rule.working)
        .unwrap_or(plan.working_max)
}

/// The body's part in the loads of an exercise.
pub(super) fn body_part(here: &Here<'_>, lifter: &Lifter) -> Option<BodyPart> {
    let share = here.exercise.body_share;
    let (mass, _) = lifter.desk.body_mass?;
    (share.hundredths() > 0).then_some(BodyPart { mass, share })
}

/// Mass of the body's part; nothing where none is moved or it is not known.
pub(super) fn body_mass(body: Option<BodyPart>) -> Mass {
    body.and_then(|body| body.share.of(body.mass)).unwrap_or(Mass::ZERO)
}

/// A load that is meant, made by this gym; a reason where it had to be another. Where the gym can't
/// make it, the lifter finds one.
pub(super) fn known(
    here: &Here<'_>,
    body: Option<BodyPart>,
    meant: Mass,
    because: &mut Vec<Because>,
) -> CallLoad {
    match made(here.equipment, &here.exercise.implement, here.counting, meant) {
        Ok((figure, rig)) => {
            if figure != meant {
                because.push(Because::Made { asked: meant, made: figure });
            }
            CallLoad::Known(Load {
                meant: Some(meant),
                figure: Some(figure),
                counting: here.counting,
                rig,
                body,
                set_up: None,
            })
        }
        Err(_) => CallLoad::Chosen { counting: here.counting, body },
    }
}

/// A load by its pin, on whatever stack of the exercise has one of that name.
pub(super) fn pin(here: &Here<'_>, label: &str) -> Load {
    let stack = here
        .equipment
        .stacks
        .iter()
        .filter(|stack| stack.kind == here.exercise.implement)
        .find(|stack| stack.pins.iter().any(|pin| pin.label == label));
    let rig = match stack {
        Some(stack) => {
            Rig::Stack { stack: stack.name.clone(), pin: label.to_owned(), add_ons: Vec::new() }
        }
        None => Rig::Said,
    };
    Load {
        meant: None,
        figure: None,
        counting: Counting::Unnumbered,
        rig,
        body: None,
        set_up: stack.is_none().then(|| format!("pin {label}")),
    }
}

/// A load of named bands or chains.
pub(super) fn set_up(
    here: &Here<'_>,
    body: Option<BodyPart>,
    name: &str,
    figure: Option<Mass>,
) -> Load {
    let made = figure.and_then(|figure| {
        made(here.equipment, &here.exercise.implement, here.counting, figure).ok()
    });
    let (made, rig) = match made {
        Some((made, rig)) => (Some(made), rig),
        None => (None, Rig::Body),
    };
    Load {
        meant: figure,
        figure: made,
        counting: if made.is_some() { here.counting } else { Counting::Unnumbered },
        rig,
        body,
        set_up: Some(name.to_owned()),
    }
}

/// What is meant for a set of a row whose first set's meaning has been moved by a rule: moved
/// alike.
pub(super) fn moved_alike(own: Mass, first: Mass, first_now: Mass) -> Option<Mass> {
    if own == first {
        return Some(first_now);
    }
    if first > Mass::ZERO && own > Mass::ZERO && first_now > Mass::ZERO {
        own.ratio(first_now.nanograms(), first.nanograms(), Rounding::HalfEven)
    } else {
        own.checked_add(first_now.checked_sub(first)?)
    }
}
