//! Loads decided on the floor: changed for the sets left, taken from the top set, dropped.

use super::super::event::{Event, LoadForSet};
use super::super::made::{Rack, dropped, make_in_steps};
use super::super::reason::{Because, Reason};
use super::super::refusal::Refusal;
use super::super::sheet::{BodyPart, CallLoad, Load};
use super::super::state::{EntryRun, Run, SetRun};
use super::pending;
use crate::call::{EntryId, SetId};
use crate::call::{SetKind, Structure};
use crate::catalogue::Counting;
use crate::equipment::{Fit, Liked, Rig};
use crate::quantity::{Mass, Percent, Rounding};

/// A load of an exercise whose figure is given, made by this gym.
///
/// `said` loads were on the bar already, so they are taken as they are; others are made, by the
/// nearest.
pub(super) fn load_of(
    run: &Run,
    entry: &EntryRun,
    figure: Mass,
    said: bool,
    like: Option<&Load>,
) -> Result<Load, Refusal> {
    let (counting, body) = how_counted(entry, like);
    // What was on the bar was on it; a try at a max goes by the protocol's steps.
    let liked = entry.entry.liked;
    let liked = if said || entry.entry.test.is_some() { Liked::default() } else { liked };
    let of = (entry.entry.implement.as_str(), counting);
    let fit = (Fit::Nearest, false);
    let made = make_in_steps(&liked.of(&run.equipment), of, figure, fit, liked.step);
    let (made_figure, rig) = match made {
        Ok((made, rig)) if made == figure || !said => (made, rig),
        Err(refused) if !said => return Err(Refusal::CannotMake(refused)),
        Ok(_) | Err(_) => (figure, Rig::Said),
    };
    Ok(Load {
        meant: Some(figure),
        figure: Some(made_figure),
        counting,
        rig,
        body,
        set_up: like.and_then(|load| load.set_up.clone()),
    })
}

fn how_counted(entry: &EntryRun, like: Option<&Load>) -> (Counting, Option<BodyPart>) {
    if let Some(load) = like.or_else(|| entry.sets.iter().find_map(SetRun::first_load)) {
        return (load.counting, load.body);
    }
    entry
        .sets
        .iter()
        .find_map(|set| match &set.call.load {
            CallLoad::Chosen { counting, body } => Some((*counting, *body)),
            CallLoad::Known(_) | CallLoad::AfterTop { .. } => None,
        })
        .unwrap_or((Counting::Total, None))
}

/// Changes the load for the sets left: the next one gets the new figure, those with another figure
/// move by the same difference.
pub(super) fn change(
    run: &Run,
    id: EntryId,
    to: Mass,
    only_next: bool,
    sure: bool,
) -> Result<Vec<Event>, Refusal> {
    let entry = pending(run, id)?;
    if let Some(supported) = entry.entry.supported
        && !sure
    {
        // Asked above a tenth over what the last four weeks' estimates support.
        let over = to.ratio(10, 11, Rounding::Up).ok_or(Refusal::OutOfRange)?;
        if over > supported {
            return Err(Refusal::OverSupported { supported });
        }
    }
    let left = || {
        entry
            .sets
            .iter()
            .enumerate()
            .filter(|(_, set)| set.pending() && !set.begun() && set.call.kind != SetKind::Ramp)
    };
    let first = left().next().ok_or(Refusal::NothingLeftOf)?;
    let from = first.1.first_load().and_then(|load| load.figure);
    let exact = load_of(run, entry, to, false, first.1.first_load())?;
    if let Some(nearest) = exact.figure
        && nearest != to
    {
        return Err(Refusal::NotExact { nearest });
    }
    let mut loads = Vec::new();
    for (at, set) in left().take(if only_next { 1 } else { usize::MAX }) {
        let figure = match (set.first_load().and_then(|load| load.figure), from) {
            (Some(own), Some(from)) => own
                .checked_sub(from)
                .and_then(|over| to.checked_add(over))
                .ok_or(Refusal::OutOfRange)?,
            _ => to,
        };
        let load = load_of(run, entry, figure, false, set.first_load())?;
        let part_loads = drops(run, entry, set, &load);
        loads.push(LoadForSet {
            set: SetId { entry: id, set: u16::try_from(at).map_err(|_| Refusal::TooMany)? },
            load,
            part_loads,
            reason: Reason(vec![Because::LifterChose(figure)]),
        });
    }
    Ok(vec![Event::LoadsSet { loads }])
}

/// A place on an unnumbered stack for the work sets left.
pub(super) fn choose_pin(run: &Run, id: EntryId, label: &str) -> Result<Vec<Event>, Refusal> {
    let entry = pending(run, id)?;
    let (counting, body) = how_counted(entry, None);
    if counting != Counting::Unnumbered {
        return Err(Refusal::WrongKind);
    }
    let stacks = run.equipment.stacks_for(&entry.entry.implement);
    let mut places = stacks.flat_map(|stack| stack.pins.iter().map(move |pin| (stack, pin)));
    let (stack, pin) =
        places.find(|(_, pin)| pin.label == label.trim()).ok_or(Refusal::NoSuchPin)?;
    let load = Load {
        meant: None,
        figure: None,
        counting,
        rig: Rig::Stack { stack: stack.name.clone(), pin: pin.label.clone(), add_ons: Vec::new() },
        body,
        set_up: None,
    };
    let left = (0_u16..)
        .zip(&entry.sets)
        .filter(|(_, set)| set.pending() && !set.begun() && set.call.kind != SetKind::Ramp);
    let loads: Vec<LoadForSet> = left
        .map(|(set, _)| LoadForSet {
            set: SetId { entry: id, set },
            load: load.clone(),
            part_loads: Vec::new(),
            reason: Reason(vec![Because::LifterChosePin(pin.label.clone())]),
        })
        .collect();
    if loads.is_empty() {
        return Err(Refusal::NothingLeftOf);
    }
    Ok(vec![Event::LoadsSet { loads }])
}

/// Loads of the parts after the first, for a set that starts at `load`.
pub(super) fn drops(run: &Run, entry: &EntryRun, set: &SetRun, load: &Load) -> Vec<Load> {
    let Structure::Drop { off } = &set.call.structure else { return set.call.part_loads.clone() };
    let mut from = load.clone();
    // A part keeps its number, whatever its load.
    off.iter()
        .map(|off| {
            from = drop_from(run, entry, &from, *off).unwrap_or_else(|| from.clone());
            from.clone()
        })
        .collect()
}

/// The load after a share is taken off what was on.
pub(super) fn drop_from(run: &Run, entry: &EntryRun, from: &Load, off: Percent) -> Option<Load> {
    let rack = Rack { equipment: &run.equipment, liked: entry.entry.liked };
    dropped(rack, &entry.entry.implement, from, off)
}

/// Loads of the sets that are a share of the top set, now that it is done.
pub(super) fn after_top(run: &Run, id: EntryId, top: &Load) -> Option<Event> {
    let entry = run.entries.get(&id)?;
    let figure = top.figure?;
    let loads: Vec<LoadForSet> = entry
        .sets
        .iter()
        .enumerate()
        .filter(|(_, set)| set.pending() && !set.begun())
        .filter_map(|(at, set)| {
            let CallLoad::AfterTop { share } = set.call.load else { return None };
            let gives = share.of(figure)?;
            let load = load_of(run, entry, gives, false, Some(top)).ok()?;
            let mut reason = vec![Because::ShareOfTop { share, top: figure, gives }];
            if let Some(made) = load.figure
                && made != gives
            {
                reason.push(Because::Made { asked: gives, made });
            }
            Some(LoadForSet {
                set: SetId { entry: id, set: u16::try_from(at).ok()? },
                part_loads: drops(run, entry, set, &load),
                load,
                reason: Reason(reason),
            })
        })
        .collect();
    (!loads.is_empty()).then_some(Event::LoadsSet { loads })
}
