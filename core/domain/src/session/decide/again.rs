//! One warm-up step again after a long pause.

use super::super::event::Event;
use super::super::made::made;
use super::super::reading::{Passed, Reading};
use super::super::reason::{Because, Reason};
use super::super::sheet::{Call, CallLoad, Load};
use super::super::state::{Run, SetRun};
use crate::call::{Flow, HowMany, Manner, SetKind, Structure};
use crate::catalogue::Counting;
use crate::quantity::{Percent, RepRange, Reps, Seconds};

/// The step (common practice).
const SHARE: Percent = Percent::whole(60);
const MOST_REPS: Reps = 5;
const REST: Seconds = Seconds::new(60);

/// The step before the next set, where the pause that ends now was longer than the sheet says and
/// the exercise was already under way. It may be left out like any other.
pub(super) fn step(run: &Run, at: &Reading) -> Option<Event> {
    let paused = run.paused.as_ref()?;
    let pause = Seconds::new(u32::try_from(Passed::between(paused, at).ms() / 1000).ok()?);
    if pause.count() <= run.sheet.again_after?.count() {
        return None;
    }
    let cursor = run.cursor().filter(|cursor| cursor.part == 0)?;
    let entry = run.entries.get(&cursor.set.entry)?;
    let set = run.set(cursor.set)?;
    let reps = set.call.how_many.as_called().reps()?;
    if set.call.round == 0 || !entry.sets.iter().any(SetRun::begun) {
        return None;
    }
    let load = set.first_load().filter(|load| load.counting != Counting::Added)?;
    let of = load.figure?;
    let gives = SHARE.of(of)?;
    let implement = &entry.entry.implement;
    let (figure, rig) = made(&run.equipment, implement, load.counting, gives).ok()?;
    if figure >= of {
        return None;
    }
    let mut because =
        vec![Because::AfterPause { pause }, Because::RampShare { share: SHARE, of, gives }];
    if figure != gives {
        because.push(Because::Made { asked: gives, made: figure });
    }
    let load = Load { meant: Some(gives), figure: Some(figure), rig, set_up: None, ..load.clone() };
    let call = Call {
        kind: SetKind::Ramp,
        row: set.call.row,
        round: 0,
        flow: Flow::Listed,
        side: None,
        load: CallLoad::Known(load),
        part_loads: Vec::new(),
        how_many: HowMany::Reps(RepRange::just(reps.clamp(1, MOST_REPS))),
        aim: None,
        effort: None,
        structure: Structure::Straight,
        manner: Manner { technique: set.call.manner.technique.clone(), ..Manner::default() },
        rest: REST.min(set.call.rest),
        reason: Reason(because),
    };
    let set = entry.next_set().filter(|next| usize::from(next.set) < super::MOST_SETS)?;
    Some(Event::SetAdded { set, call })
}
