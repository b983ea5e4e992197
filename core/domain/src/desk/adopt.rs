//! Which row of a plan belongs to which owner: decided when the plan is adopted, a fact since.
//!
//! By the key that the plan gives; then the same exercise in the same place as before; then the same
//! line. Rows of one exercise that are written alike share a track, whatever session they stand in.
//! Where a number that was written has changed, the track starts at the new one with a clean sheet.

use std::collections::BTreeMap;

use super::state::Desk;
use crate::call::{HowMany, LoadCall};
use crate::catalogue::{Catalogue, Counting};
use crate::owners::{Change, Owner, RowId, RowOwner, TrackId};
use crate::plan::{Line, Plan, Session, Slot};
use crate::quantity::Mass;

/// What adopting a plan does to rows and tracks.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Adoption {
    /// Every row with its track.
    pub rows: Vec<RowOwner>,
    /// What the plan says to tracks that start, or start anew.
    pub said: Vec<(TrackId, Vec<Change>)>,
    /// Rows that start anew: their places in the new plan.
    pub anew: Vec<RowOwner>,
    /// Rows whose number changed while others that shared their track keep theirs: whether all of
    /// them start at the new number is asked.
    pub asks: Vec<RowOwner>,
}

/// How a row whose number changed alone, of several that share a track, is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Shared {
    /// It gets a track of its own, and the others keep theirs.
    #[default]
    ThisOne,
    /// All of them start at the new number.
    All,
}

/// A row of a plan where it stands.
#[derive(Debug, Clone, Copy)]
struct At<'a> {
    session: usize,
    slot: usize,
    line: usize,
    of_session: &'a Session,
    of_slot: &'a Slot,
    of_line: &'a Line,
}

fn rows(plan: &Plan) -> Vec<At<'_>> {
    let mut all = Vec::new();
    for (session, of_session) in plan.sessions.iter().enumerate() {
        for (slot, of_slot) in of_session.exercises.iter().enumerate() {
            for (line, of_line) in of_slot.lines.iter().enumerate() {
                all.push(At { session, slot, line, of_session, of_slot, of_line });
            }
        }
    }
    all
}

impl At<'_> {
    /// Of several of the same exercise in the session, which one this is.
    fn occurrence(&self) -> usize {
        let before = self.of_session.exercises.iter().take(self.slot);
        before.filter(|slot| slot.exercise == self.of_slot.exercise).count()
    }

    /// The same exercise in the same place: session by name, of several the same in order.
    fn same_place(&self, other: &At<'_>) -> bool {
        self.of_slot.exercise == other.of_slot.exercise
            && self.of_session.name == other.of_session.name
            && (self.line, self.occurrence()) == (other.line, other.occurrence())
    }

    fn same_key(&self, other: &At<'_>) -> bool {
        self.of_slot.track.is_some()
            && self.of_slot.track == other.of_slot.track
            && (&self.of_slot.exercise, self.line) == (&other.of_slot.exercise, other.line)
    }

    /// Written alike: the same rule, repetitions, loads by week and parts. Rests and cues may differ.
    fn alike(&self, other: &At<'_>) -> bool {
        let (one, two) = (self.of_line, other.of_line);
        let (slot, slot_two) = (self.of_slot, other.of_slot);
        slot.exercise == slot_two.exercise
            && slot.track == slot_two.track
            && (slot.counting, &slot.next, &slot.misses)
                == (slot_two.counting, &slot_two.next, &slot_two.misses)
            && (&one.sets, &one.how_many, &one.load, &one.effort, &one.course)
                == (&two.sets, &two.how_many, &two.load, &two.effort, &two.course)
            && (&one.structure, &one.on_sets, one.side, one.speed)
                == (&two.structure, &two.on_sets, two.side, two.speed)
            && (&one.manner.tempo, &one.manner.technique)
                == (&two.manner.tempo, &two.manner.technique)
    }

    /// The number that is written for its first set, where it is the same in all weeks; and the
    /// place on a stack.
    fn written(&self) -> Written {
        if self.of_line.load.by_week() {
            return Written::Nothing;
        }
        match self.of_line.load.iter().flatten().next() {
            Some(LoadCall::Mass(mass) | LoadCall::Added(mass)) => Written::Load(*mass),
            Some(LoadCall::SetUp { load: Some(mass), .. }) => Written::Load(*mass),
            Some(LoadCall::Assisted(help)) => {
                Mass::ZERO.checked_sub(*help).map_or(Written::Nothing, Written::Load)
            }
            Some(LoadCall::Body) => Written::Load(Mass::ZERO),
            Some(LoadCall::Pin(label)) => Written::Pin(label.clone()),
            Some(
                LoadCall::SetUp { load: None, .. }
                | LoadCall::Percent { .. }
                | LoadCall::OfTopSet(_)
                | LoadCall::ByFeel,
            )
            | None => Written::Nothing,
        }
    }

    fn asked(&self) -> Option<HowMany> {
        self.of_line.how_many.iter().flatten().next().copied()
    }

    fn counting(&self, catalogue: &Catalogue) -> Counting {
        let usual = catalogue.get(&self.of_slot.exercise).map(|exercise| exercise.counting);
        self.of_slot.counting.or(usual).unwrap_or(Counting::Total)
    }

    fn owner(&self, row: RowId, track: TrackId) -> Option<RowOwner> {
        Some(RowOwner {
            session: u16::try_from(self.session).ok()?,
            slot: u16::try_from(self.slot).ok()?,
            line: u16::try_from(self.line).ok()?,
            row,
            track,
        })
    }
}

#[derive(Debug, Clone, PartialEq, Eq)]
enum Written {
    Load(Mass),
    Pin(String),
    Nothing,
}

/// What adopting `plan` does; `before` is the plan that is on, where it is the same plan mended.
pub fn adoption(
    plan: &Plan,
    before: Option<&Plan>,
    desk: &Desk,
    catalogue: &Catalogue,
    shared: Shared,
) -> Adoption {
    let old_rows: &[RowOwner] =
        desk.plan.as_ref().map(|plan| plan.rows.as_slice()).unwrap_or_default();
    let old_plan: Vec<(At<'_>, RowOwner)> =
        before.map(|before| owned(before, old_rows)).unwrap_or_default();
    let mut names = Names { track: desk.next_track, row: desk.next_row };
    // First each row by itself: its name and the track it had.
    let new = rows(plan);
    let mut taken: Vec<RowId> = Vec::new();
    let mut found: Vec<(RowId, Option<(TrackId, &At<'_>)>)> = Vec::with_capacity(new.len());
    for at in &new {
        let free = |one: &&(At<'_>, RowOwner)| !taken.contains(&one.1.row);
        let old = old_plan
            .iter()
            .filter(free)
            .find(|(other, _)| at.same_key(other) && at.same_place(other))
            .or(old_plan.iter().filter(free).find(|(other, _)| at.same_place(other)));
        let row = match old {
            Some((_, old)) => old.row,
            None => names.row(),
        };
        taken.push(row);
        let by_key = old_plan.iter().find(|(other, _)| at.same_key(other));
        let by_line = || old_plan.iter().find(|(other, _)| at.alike(other));
        let track = by_key.or(old).or_else(by_line);
        found.push((row, track.map(|(other, owner)| (owner.track, other))));
    }
    // Then the rows that are one track: by the key, by what they had, by how they are written.
    let mut adoption = Adoption::default();
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for at in 0..new.len() {
        let (Some(row), Some((_, track))) = (new.get(at), found.get(at)) else { continue };
        let same = |other: &usize| {
            let (Some(two), Some((_, other))) = (new.get(*other), found.get(*other)) else {
                return false;
            };
            let had = |one: &Option<(TrackId, &At<'_>)>| one.map(|(track, _)| track);
            row.same_key(two)
                || (row.alike(two)
                    && (had(track) == had(other) || had(track).is_none() || had(other).is_none()))
        };
        match groups.iter_mut().find(|group| group.iter().any(same)) {
            Some(group) => group.push(at),
            None => groups.push(vec![at]),
        }
    }
    let mut given: BTreeMap<TrackId, usize> = BTreeMap::new();
    groups.sort_by_key(|group| std::cmp::Reverse(group.len()));
    for group in &groups {
        let members = || group.iter().filter_map(|at| Some((new.get(*at)?, found.get(*at)?)));
        let Some((first, _)) = members().next() else { continue };
        let had = members().find_map(|(at, (_, had))| had.map(|(track, old)| (track, at, old)));
        let changed = had.is_some_and(|(_, at, old)| {
            at.written() != old.written() && at.written() != Written::Nothing
        });
        let split = had.is_some_and(|(track, ..)| given.contains_key(&track));
        let track = match had {
            Some((track, ..)) if !split || shared == Shared::All => track,
            _ => names.track(),
        };
        *given.entry(track).or_default() += 1;
        let rows = members().filter_map(|(at, (row, _))| at.owner(*row, track));
        let rows: Vec<RowOwner> = rows.collect();
        let start = |load: Option<Mass>| {
            load.zip(first.asked()).map(|(load, asked)| {
                let counting = first.counting(catalogue);
                vec![Change::Fresh, Change::Load { load, counting, asked }]
            })
        };
        let said = match (had, first.written()) {
            // As it was.
            (Some(_), _) if !changed && (!split || shared == Shared::All) => None,
            // Apart from those it was with: from where they stand.
            (Some((old, ..)), _) if !changed => start(desk.owners.track(&Owner::Track(old)).load),
            (_, Written::Load(load)) => start(Some(load)),
            (Some(_), Written::Pin(_)) => Some(vec![Change::Fresh]),
            (None, Written::Pin(_)) => None,
            (_, Written::Nothing) => start(found_before(first, desk, before, catalogue)),
        };
        if changed {
            adoption.anew.extend(&rows);
            let alone = had.is_some_and(|(track, ..)| {
                groups.iter().flatten().any(|at| {
                    !group.contains(at)
                        && found
                            .get(*at)
                            .is_some_and(|(_, had)| had.map(|(had, _)| had) == Some(track))
                })
            });
            if alone {
                adoption.asks.extend(&rows);
            }
        } else if had.is_none() {
            adoption.anew.extend(&rows);
        }
        adoption.said.extend(said.map(|said| (track, said)));
        adoption.rows.extend(rows);
    }
    adoption.rows.sort_by_key(|row| (row.session, row.slot, row.line));
    adoption.said.sort_by_key(|(track, _)| *track);
    adoption
}

/// A load that was found for the exercise before, for as many or more: by another plan's row, or
/// outside any.
fn found_before(
    at: &At<'_>,
    desk: &Desk,
    before: Option<&Plan>,
    catalogue: &Catalogue,
) -> Option<Mass> {
    if before.is_some()
        || !matches!(at.of_line.load.iter().flatten().next(), Some(LoadCall::ByFeel))
    {
        return None;
    }
    let asked = at.asked()?;
    let of_plan = desk.plan.as_ref().and_then(|plan| {
        let read = Plan::read(&plan.text, &Catalogue::builtin()).ok()?.plan;
        let owned = owned(&read, &plan.rows);
        let tracks = owned.iter().filter(|(old, _)| old.of_slot.exercise == at.of_slot.exercise);
        let tracks: Vec<_> =
            tracks.map(|(_, owner)| desk.owners.track(&Owner::Track(owner.track))).collect();
        Some(tracks)
    });
    let loose = desk.owners.track(&Owner::Loose(at.of_slot.exercise.clone()));
    of_plan
        .unwrap_or_default()
        .into_iter()
        .chain([loose])
        .filter(|track| track.counting == Some(at.counting(catalogue)))
        .filter(|track| {
            track.asked.is_some_and(|then| {
                asked.same_kind(&then.as_called()) && asked.reached_by(&then.as_called())
            })
        })
        .max_by_key(|track| track.since)
        .and_then(|track| track.load)
}

/// The rows of a plan with their owners.
fn owned<'a>(plan: &'a Plan, owners: &[RowOwner]) -> Vec<(At<'a>, RowOwner)> {
    let all = rows(plan).into_iter().filter_map(|at| {
        let here = |owner: &&RowOwner| {
            (usize::from(owner.session), usize::from(owner.slot), usize::from(owner.line))
                == (at.session, at.slot, at.line)
        };
        owners.iter().find(here).map(|owner| (at, *owner))
    });
    all.collect()
}

struct Names {
    track: u32,
    row: u32,
}

impl Names {
    fn track(&mut self) -> TrackId {
        self.track = self.track.saturating_add(1);
        TrackId(self.track)
    }

    fn row(&mut self) -> RowId {
        self.row = self.row.saturating_add(1);
        RowId(self.row)
    }
}
