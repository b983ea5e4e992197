//! The ramp: steps up to the first work load, fewer repetitions as it gets heavy.

use super::here::Here;
use crate::call::{Flow, HowMany, Manner, Structure};
use crate::equipment::{Fit, Rig};
use crate::plan::{Ramp, RampStep, USUAL_RAMP};
use crate::quantity::{Mass, Percent, RepRange, Seconds};
use crate::session::{Because, Call, CallLoad, Load, Reason, SetKind, make};

/// Rest after a step: plates are changed in it (common practice).
const REST: Seconds = Seconds::new(60);
/// The one step of a short ramp (common practice).
const SHORT: [RampStep; 1] = [RampStep { share: Some(Percent::whole(60)), reps: 5 }];

/// The steps before a work load; none where there is nothing to ramp up to. Steps that this gym
/// can't tell from the one before, or from the work load, are left out.
pub(super) fn calls(here: &Here<'_>, ramp: &Ramp, work: &Load, manner: &Manner) -> Vec<Call> {
    let steps: &[RampStep] = match ramp {
        Ramp::None => &[],
        Ramp::Short => &SHORT,
        Ramp::Usual => &USUAL_RAMP,
        Ramp::Steps(steps) => steps,
    };
    let Some(figure) = work.figure.filter(|figure| *figure > Mass::ZERO) else {
        return Vec::new();
    };
    let meant = work.meant.unwrap_or(figure);
    // A bar on the floor is at its height only with full-size plates on.
    let from_floor = here.exercise.from_floor && matches!(work.rig, Rig::Bar { .. });
    let mut calls: Vec<Call> = Vec::new();
    let mut heaviest = Mass::from_nanograms(-1);
    for step in steps {
        let asked = match step.share {
            None => Mass::ZERO,
            Some(share) => share.of(meant).unwrap_or(Mass::ZERO),
        };
        let empty = step.share.is_none();
        if empty && (from_floor || !matches!(work.rig, Rig::Bar { .. })) {
            continue;
        }
        let fit = if empty { Fit::Over } else { Fit::Nearest };
        let made =
            make(here.equipment, &here.exercise.implement, here.counting, asked, fit, from_floor);
        let Ok((made, rig)) = made else { continue };
        if made <= heaviest || made >= figure {
            continue;
        }
        heaviest = made;
        let mut because = match step.share {
            None => vec![Because::EmptyBar],
            Some(share) => vec![Because::RampShare { share, of: meant, gives: asked }],
        };
        if made != asked && !empty {
            because.push(Because::Made { asked, made });
        }
        calls.push(Call {
            kind: SetKind::Ramp,
            row: 0,
            round: 0,
            flow: Flow::Listed,
            side: None,
            load: CallLoad::Known(Load {
                meant: Some(asked),
                figure: Some(made),
                rig,
                ..work.clone()
            }),
            part_loads: Vec::new(),
            how_many: HowMany::Reps(RepRange::just(step.reps)),
            effort: None,
            structure: Structure::Straight,
            manner: Manner { cues: Vec::new(), ..manner.clone() },
            rest: REST,
            reason: Reason(because),
        });
    }
    calls
}
