//! The sets of one row, resolved: owner × share × cut, as this gym makes it.

use super::cuts;
use super::lifter::Need;
use super::meant::{Planned, Said, by_effort, lift_of, said};
use super::past;
use super::slot::Slot;
use crate::call::{Amount, Flow, HowMany, LoadCall, Manner, SetKind, Side, Structure};
use crate::catalogue::Counting;
use crate::equipment::{Fit, Liked, Rig};
use crate::owners::{Change, Cut, Cutting, Owner, RowOwner, Terms, Track, Why};
use crate::plan::{self, Block, MaxRule, RaiseMax, SetCall, Sides};
use crate::progress::test_day::FIRST_SINGLE;
use crate::quantity::{Distance, Mass, Percent, Range, RepRange, Seconds};
use crate::session::here::Here;
use crate::session::{Because, Call, CallLoad, Load, Rack, Reason, dropped};

/// The calls of a row in the order they are done, and what they are judged by.
pub(super) fn calls(
    slot: &Slot<'_>,
    block: &Block,
    needs: &mut Vec<Need>,
) -> Option<(Terms, Vec<Call>)> {
    let first = block.sets.first()?;
    if matches!(block.flow, Flow::Test { .. }) {
        let slug = || slot.exercise.slug.to_string();
        if slot.care().pain.is_some_and(|pain| pain.back.is_none()) {
            needs.push(Need::NoPain(slug()));
            return None;
        }
        if !slot.lifter.desk.tests_on(slot.lifter.today) {
            needs.push(Need::Coach(slug()));
            return None;
        }
    }
    let row = Row::new(slot, block, first);
    let sets_off = row.cut.map_or_else(Percent::default, |cut| cut.sets_off);
    // The week's more left in reserve stands beside whatever cut is the deepest.
    let week = plan::Cut { sets_off, load_off: Percent::default(), ..block.cut };
    let asked = Block { cut: week, ..block.clone() }.eased();
    let turns = turns(slot);
    let mut calls = Vec::new();
    for (round, set) in (1_u16..).zip(&asked.sets) {
        let resolved = row.load(usize::from(round) - 1, set, needs);
        let part_loads = part_loads(slot, &set.structure, &resolved.load, needs);
        let one = set.side.map(|side| vec![Some(side)]);
        for side in one.as_ref().unwrap_or(&turns) {
            calls.push(Call {
                kind: if speed(slot, set) { SetKind::Speed } else { kind(&asked.flow, &set.load) },
                row: u16::try_from(block.line).unwrap_or(u16::MAX),
                round,
                flow: asked.flow,
                side: *side,
                load: resolved.load.clone(),
                part_loads: part_loads.clone(),
                how_many: row.how_many(set),
                aim: row.aim().filter(|_| row.is_like_first(set)),
                effort: set.effort.filter(|_| !speed(slot, set)),
                structure: set.structure.clone(),
                manner: manner(slot, set),
                rest: slot.rest_after(block),
                reason: Reason(resolved.why.clone()),
            });
        }
    }
    let terms = row.terms(asked.sets.first().unwrap_or(first));
    Some((terms, calls))
}

/// Each turn at a set: both sides at once, or one and then the other.
fn turns(slot: &Slot<'_>) -> Vec<Option<Side>> {
    let first = match (slot.entry.sides, slot.exercise.one_sided) {
        (Some(Sides::Together), _) | (None, false) => return vec![None],
        (Some(Sides::LeftFirst), _) => Side::Left,
        (Some(Sides::RightFirst), _) => Side::Right,
        (Some(Sides::WeakerFirst), _) | (None, true) => {
            past::weaker(slot.past()).unwrap_or(Side::Left)
        }
    };
    vec![Some(first), Some(first.other())]
}

fn kind(flow: &Flow, load: &LoadCall) -> SetKind {
    match (flow, load) {
        (Flow::Climb { .. }, _) => SetKind::Top,
        (Flow::Test { .. }, _) => SetKind::Test,
        (_, LoadCall::OfTopSet(_)) => SetKind::BackOff,
        _ => SetKind::Work,
    }
}

fn speed(slot: &Slot<'_>, set: &SetCall) -> bool {
    set.speed || slot.exercise.movement.is_speed_work()
}

/// The set's manner, with the cues of its exercise where it has none of its own.
fn manner(slot: &Slot<'_>, set: &SetCall) -> Manner {
    let cues = if set.manner.cues.is_empty() { &slot.entry.cues } else { &set.manner.cues };
    Manner { cues: cues.clone(), ..set.manner.clone() }
}

/// What a gym makes: the nearest, or of a range the lightest within it, if there is one; never more than
/// the most that there is.
fn make(
    here: Here<'_>,
    meant: Mass,
    up_to: Option<Mass>,
    most: Option<Mass>,
) -> Option<(Mass, Rig)> {
    let within =
        up_to.and_then(|most| here.make(meant, Fit::Over, false).filter(|(made, _)| *made <= most));
    let made = within.or_else(|| here.make(meant, Fit::Nearest, false))?;
    if most.is_some_and(|most| made.0 > most) {
        return here.make(meant, Fit::Under, false);
    }
    Some(made)
}

struct Resolved {
    load: CallLoad,
    why: Vec<Because>,
}

/// A row with what its owner says of it.
struct Row<'a> {
    slot: &'a Slot<'a>,
    block: &'a Block,
    first: &'a SetCall,
    owner: Option<RowOwner>,
    track: Track,
    /// The load of the first set as its owner has it.
    own: Said,
    /// The cut that counts.
    cut: Option<Cut>,
}

impl<'a> Row<'a> {
    fn new(slot: &'a Slot<'a>, block: &'a Block, first: &'a SetCall) -> Self {
        let owner = slot.row(block);
        let track = slot.lifter.desk.owners.track(&slot.track(block));
        let own = own(slot, block, first, &track);
        let figure = match &own {
            Said::Figure(planned) => Some(planned.figure),
            Said::Open | Said::Missing(_) => None,
        };
        let cut = cuts::deepest(slot, block, owner.map(|owner| owner.row), &track, figure);
        Self { slot, block, first, owner, track, own, cut }
    }

    fn figure(&self) -> Option<Mass> {
        match &self.own {
            Said::Figure(planned) => Some(planned.figure),
            Said::Open | Said::Missing(_) => None,
        }
    }

    /// What the row is judged by when its session is over; `asked` is its first set as it is called.
    fn terms(&self, asked: &SetCall) -> Terms {
        let slot = self.slot;
        let track = slot.track(self.block);
        let load = match &self.first.load {
            LoadCall::Percent { of, .. } => Owner::Max(lift_of(slot, of).0.to_owned()),
            _ => track.clone(),
        };
        let max = slot.source.plan.maxes.iter().find(|max| max.lift == slot.exercise.slug);
        Terms {
            row: u16::try_from(self.block.line).unwrap_or(u16::MAX),
            id: self.owner.map(|owner| owner.row),
            load,
            track,
            own: self.figure(),
            cut: self.cut,
            asked: self.first.how_many,
            target: asked.effort.filter(|_| !speed(slot, asked)),
            counting: slot.here.counting,
            sets: u8::try_from(self.block.sets.len()).unwrap_or(u8::MAX),
            each_side: self.first.side.is_none() && turns(slot).len() > 1,
            all_parts: matches!(self.first.structure, Structure::Cluster { .. }),
            top_only: matches!(self.block.flow, Flow::Climb { .. }),
            rules: if slot.stands_in { Vec::new() } else { slot.entry.next.clone() },
            misses: slot.entry.misses.clone(),
            raise: raise(slot, max),
            by_week: self.block.by_week,
            speed: speed(slot, self.first),
        }
    }

    /// How many a set asks for: as far as a held load goes on, for the sets that ask what the first
    /// does.
    fn how_many(&self, set: &SetCall) -> HowMany {
        match self.track.top.filter(|_| self.is_like_first(set)) {
            Some(top) => up_to(set.how_many, top),
            None => set.how_many,
        }
    }

    fn is_like_first(&self, set: &SetCall) -> bool {
        set.how_many == self.first.how_many
            && !matches!(set.structure, Structure::Cluster { .. } | Structure::Ranges { .. })
    }

    fn load(&self, at: usize, set: &SetCall, needs: &mut Vec<Need>) -> Resolved {
        let slot = self.slot;
        match &set.load {
            LoadCall::OfTopSet(share) => {
                return Resolved { load: CallLoad::AfterTop { share: *share }, why: Vec::new() };
            }
            LoadCall::Pin(label) => return self.pin(Some(label)),
            _ => {}
        }
        if slot.here.counting == Counting::Unnumbered {
            return match &set.load {
                LoadCall::SetUp { name, .. } => self.bare(Some(name.clone())),
                _ => self.pin(None),
            };
        }
        let own = if at == 0 { self.own.clone() } else { self.further(at, set) };
        let own = match own {
            Said::Missing(need) => {
                needs.push(need);
                return self.chosen(Vec::new());
            }
            Said::Figure(planned) => Some(planned),
            Said::Open => None,
        };
        let set_up = match &set.load {
            LoadCall::SetUp { name, load: None } => return self.bare(Some(name.clone())),
            LoadCall::SetUp { name, .. } => Some(name.clone()),
            _ => None,
        };
        let Some(own) = own else { return self.chosen(vec![Because::NothingToGoBy]) };
        let mut why = own.why;
        let most = cuts::most_for_pain(slot, self.figure(), own.figure);
        let (cut, meant) = self.cut_to(own.figure, most);
        if let Some(cut) = cut.filter(|_| meant != own.figure) {
            why.push(Because::Cut { cut, gives: meant });
        }
        why.extend(self.range());
        let up_to = own.up_to.filter(|_| meant == own.figure);
        match make(slot.here, meant, up_to, most) {
            Some((figure, rig)) => {
                match self.unliked(meant, up_to, most).filter(|plain| *plain != figure) {
                    Some(_) => {
                        let Liked { smallest, step } = self.liked();
                        why.push(Because::Liked { smallest, step, made: figure });
                    }
                    None if figure != meant => {
                        why.push(Because::Made { asked: meant, made: figure });
                    }
                    None => {}
                }
                let load = Load {
                    meant: Some(meant),
                    figure: Some(figure),
                    counting: slot.here.counting,
                    rig,
                    body: slot.body,
                    set_up,
                };
                Resolved { load: CallLoad::Known(load), why }
            }
            None => self.chosen(why),
        }
    }

    /// The own load of a further set: by its own words; where a track carries the row, as far from
    /// the first set as the plan has it, or as it was last time.
    fn further(&self, at: usize, set: &SetCall) -> Said {
        let slot = self.slot;
        let written = said(slot, &set.load);
        if matches!(set.load, LoadCall::Percent { .. }) {
            return with_effort(slot, self.block, written);
        }
        if self.block.by_week {
            return written;
        }
        let Said::Figure(first) = &self.own else { return written };
        let mut own = first.clone();
        let by = match (&written, said(slot, &self.first.load)) {
            (Said::Figure(set), Said::Figure(first)) => set.figure.checked_sub(first.figure),
            (Said::Open, Said::Open) if set.load == LoadCall::ByFeel => {
                if self.track.load.is_none()
                    && let Some(by_table) = by_effort(slot, &set.how_many, set.effort)
                {
                    return Said::Figure(by_table);
                }
                self.as_last_time(at)
            }
            _ => return written,
        };
        if let Some(by) = by.filter(|by| *by != Mass::ZERO)
            && let Some(gives) = own.figure.checked_add(by)
        {
            own.why.push(Because::FromFirst { first: own.figure, gives });
            own.figure = gives;
        }
        Said::Figure(own)
    }

    /// By feel: where the sets of a row differ, as far from the first as last time.
    fn as_last_time(&self, at: usize) -> Option<Mass> {
        if self.block.sets.iter().all(|set| set.how_many == self.first.how_many) {
            return None;
        }
        let line = u16::try_from(self.block.line).ok()?;
        let of_row = |round: u16| {
            let last = self.slot.past().first()?;
            let sets = last.sets.iter().filter(|set| set.is_work() && set.row == line);
            sets.filter(|set| set.round == round).find_map(|set| set.figure)
        };
        of_row(u16::try_from(at + 1).ok()?)?.checked_sub(of_row(1)?)
    }

    /// What to try for within what is asked: nothing more than that while less is called.
    fn aim(&self) -> Option<Amount> {
        self.track.aim.filter(|_| self.cut.is_none())
    }

    /// What to try for, and how far a held load goes on.
    fn range(&self) -> Vec<Because> {
        let mut why = Vec::new();
        why.extend(self.track.top.map(Because::Extended));
        why.extend(self.aim().map(Because::Aim));
        why
    }

    /// The cut that counts for a set with this load of its own, and what it leaves of it: no more than
    /// the most that pain lets.
    fn cut_to(&self, own: Mass, most: Option<Mass>) -> (Option<Cut>, Mass) {
        let body = self.slot.body_mass();
        let gives = match self.cut {
            Some(cut) if cut.keep != Percent::WHOLE => cuts::kept(own, body, cut.keep),
            _ => own,
        };
        // A share of the first set leaves a heavier one over what hurt.
        let most = most.filter(|most| *most < gives);
        let cut = match (self.cut, self.slot.care().pain, most) {
            (Some(cut), Some(pain), Some(most)) => Some(Cut {
                keep: cuts::share(most, own, body).unwrap_or(cut.keep),
                why: Cutting::Pain { since: pain.since },
                ..cut
            }),
            (cut, ..) => cut,
        };
        let gives = most.unwrap_or(gives);
        // Less of the body cannot be moved: what has no help in it gets none by a cut.
        (cut, if own < Mass::ZERO { gives } else { gives.max(Mass::ZERO) })
    }

    fn liked(&self) -> Liked {
        self.slot.lifter.desk.liked(&self.slot.gym.name, &self.slot.exercise.slug)
    }

    /// What this gym makes where every load is liked; none where every load is.
    fn unliked(&self, meant: Mass, up_to: Option<Mass>, most: Option<Mass>) -> Option<Mass> {
        if self.liked().any() {
            return None;
        }
        let here = Here { equipment: self.slot.gym, step: None, ..self.slot.here };
        Some(make(here, meant, up_to, most)?.0)
    }

    /// A place on a stack: as it was used last in this gym, else the one written, on whatever stack
    /// here has it; else the lifter's to find.
    fn pin(&self, written: Option<&str>) -> Resolved {
        let slot = self.slot;
        let last = self.track.places.get(&slot.source.equipment.name);
        let stacks = slot.source.equipment.stacks_for(&slot.exercise.implement);
        let mut places = stacks.flat_map(|stack| stack.pins.iter().map(move |pin| (stack, pin)));
        let label = last.map(String::as_str).or(written);
        let found = label.and_then(|label| places.find(|(_, pin)| pin.label == label));
        let Some((stack, pin)) = found else {
            return self.chosen(vec![Because::NothingToGoBy]);
        };
        let figure = pin.load.map(|load| stack.ratio.at_hand(load));
        let load = Load {
            meant: figure,
            figure,
            counting: figure.map_or(Counting::Unnumbered, |_| slot.here.counting),
            rig: Rig::Stack {
                stack: stack.name.clone(),
                pin: pin.label.clone(),
                add_ons: Vec::new(),
            },
            body: slot.body,
            set_up: None,
        };
        let mut why: Vec<Because> = last.cloned().map(Because::PlaceOfLast).into_iter().collect();
        why.extend(said_last(slot, self.block));
        why.extend(self.range());
        Resolved { load: CallLoad::Known(load), why }
    }

    /// A set-up without figures.
    fn bare(&self, set_up: Option<String>) -> Resolved {
        let load = Load {
            meant: None,
            figure: None,
            counting: self.slot.here.counting,
            rig: Rig::Body,
            body: self.slot.body,
            set_up,
        };
        let why = said_last(self.slot, self.block).into_iter().chain(self.range()).collect();
        Resolved { load: CallLoad::Known(load), why }
    }

    fn chosen(&self, why: Vec<Because>) -> Resolved {
        let why = if why.is_empty() { vec![Because::NothingToGoBy] } else { why };
        let load = CallLoad::Chosen { counting: self.slot.here.counting, body: self.slot.body };
        Resolved { load, why }
    }
}

/// What may raise the exercise's max.
fn raise(slot: &Slot<'_>, own: Option<&MaxRule>) -> RaiseMax {
    own.and_then(|rule| rule.raise).unwrap_or(slot.source.plan.raise_max)
}

/// The load of a row's first set as its owner has it today: a share of a max, what the plan writes
/// for the week, or what a track carries.
fn own(slot: &Slot<'_>, block: &Block, first: &SetCall, track: &Track) -> Said {
    let written = said(slot, &first.load);
    if matches!(block.flow, Flow::Test { .. })
        && matches!(first.load, LoadCall::ByFeel | LoadCall::Body)
    {
        // Where the plan says no load, the protocol does: nobody tests the body alone.
        return first_single(slot).map_or(Said::Open, Said::Figure);
    }
    let found = |track: &Track| {
        let load = track.load.filter(|_| track.counting == Some(slot.here.counting))?;
        Some(Planned { figure: load, up_to: None, why: Vec::new() })
    };
    match &first.load {
        LoadCall::Percent { .. } => with_effort(slot, block, written),
        LoadCall::OfTopSet(_) | LoadCall::Pin(_) => Said::Open,
        _ if block.by_week || slot.here.counting == Counting::Unnumbered => written,
        LoadCall::ByFeel => {
            let loose = || {
                let owner = Owner::Loose(slot.exercise.slug.to_string());
                let loose = slot.lifter.desk.owners.track(&owner);
                // A load for fewer repetitions is none for more.
                let then = loose.asked?.as_called();
                let enough = first.how_many.same_kind(&then) && first.how_many.reached_by(&then);
                found(&loose).filter(|_| enough)
            };
            let fits = track
                .asked
                .is_none_or(|then| !slot.stands_in || first.how_many.reached_by(&then.as_called()));
            match found(track).filter(|_| fits).or_else(loose) {
                Some(mut planned) => {
                    planned.why.push(Because::Carried { load: planned.figure, since: track.since });
                    planned.why.extend(said_last(slot, block));
                    Said::Figure(planned)
                }
                None => {
                    by_effort(slot, &first.how_many, first.effort).map_or(Said::Open, Said::Figure)
                }
            }
        }
        _ => match found(track) {
            Some(mut planned) => {
                planned.why = match &written {
                    // What is carried is what is written still.
                    Said::Figure(own) if own.figure == planned.figure => own.why.clone(),
                    _ => vec![Because::Carried { load: planned.figure, since: track.since }],
                };
                planned.why.extend(said_last(slot, block));
                Said::Figure(planned)
            }
            None => written,
        },
    }
}

/// A share of a max, with the effort that was called last: it may cut the share for one session.
fn with_effort(slot: &Slot<'_>, block: &Block, written: Said) -> Said {
    let Said::Figure(mut planned) = written else { return written };
    let effort = |why: &Because| matches!(why, Because::Said { why: Why::OffTarget { .. }, .. });
    planned.why.extend(said_last(slot, block).filter(effort));
    Said::Figure(planned)
}

/// What the last session that counts said to the row's track.
fn said_last(slot: &Slot<'_>, block: &Block) -> Option<Because> {
    let account = slot.lifter.desk.owners.account(&slot.track(block))?;
    let word =
        account.words().iter().rev().find(|word| !word.outcome.silent && !word.outcome.held)?;
    word.session?;
    let by = word.outcome.changes.iter().find_map(|change| match change {
        Change::Step(by) => Some(*by),
        _ => None,
    });
    Some(Because::Said { day: word.day, why: word.outcome.why, by })
}

/// What is asked for with its most raised to an amount.
fn up_to(how_many: HowMany, most: crate::call::Amount) -> HowMany {
    use crate::call::Amount;
    match (how_many, most) {
        (HowMany::Reps(range), Amount::Reps(to)) => {
            HowMany::Reps(RepRange { to: range.to.max(to), ..range })
        }
        (HowMany::Seconds(range), Amount::Seconds(to)) => {
            let to: Seconds = range.to.max(to);
            HowMany::Seconds(Range { to, ..range })
        }
        (HowMany::Metres(range), Amount::Metres(to)) => {
            let to: Distance = range.to.max(to);
            HowMany::Metres(Range { to, ..range })
        }
        (how_many, _) => how_many,
    }
}

/// The first single of a test, by the protocol; none where nothing is known of the max.
fn first_single(slot: &Slot<'_>) -> Option<Planned> {
    let (moved, why) = past::expected(slot)?.share(FIRST_SINGLE)?;
    let body = slot.body_mass();
    let mut why = vec![why];
    let figure = moved.checked_sub(body)?;
    if slot.moves_body() {
        // Without the body's mass a share of what is moved says nothing of what to add.
        slot.body?;
        why.push(Because::LessBody { moved, body, gives: figure });
    }
    Some(Planned { figure, up_to: None, why })
}

/// Loads of the parts after the first.
fn part_loads(
    slot: &Slot<'_>,
    structure: &Structure,
    first: &CallLoad,
    needs: &mut Vec<Need>,
) -> Vec<Load> {
    match (structure, first) {
        (Structure::Drop { off }, CallLoad::Known(first)) => drops(slot, off, first),
        (Structure::Continued { parts }, _) => {
            parts.iter().map(|part| continued(slot, &part.exercise, &part.load, needs)).collect()
        }
        _ => Vec::new(),
    }
}

/// A share off again and again, so that each load keeps its part.
fn drops(slot: &Slot<'_>, off: &[Percent], first: &Load) -> Vec<Load> {
    let implement = &slot.exercise.implement;
    let liked = slot.lifter.desk.liked(&slot.gym.name, &slot.exercise.slug);
    let rack = Rack { equipment: slot.gym, liked };
    let mut from = first.clone();
    let mut loads = Vec::with_capacity(off.len());
    for off in off {
        from = dropped(rack, implement, &from, *off).unwrap_or(from);
        loads.push(from.clone());
    }
    loads
}

/// The load of an easier variation; the lifter's to find where it has no figure.
fn continued(slot: &Slot<'_>, exercise: &str, load: &LoadCall, needs: &mut Vec<Need>) -> Load {
    let Some(variation) = slot.source.catalogue.get(exercise) else {
        return Load {
            meant: None,
            figure: None,
            counting: Counting::Unnumbered,
            rig: Rig::Said,
            body: None,
            set_up: None,
        };
    };
    let entry = crate::plan::Entry { counting: None, ..slot.entry.clone() };
    let part = Slot::new(slot.source, slot.lifter, slot.session, &entry, variation);
    let planned = match said(&part, load) {
        Said::Figure(planned) => Some(planned.figure),
        Said::Open => None,
        Said::Missing(need) => {
            needs.push(need);
            None
        }
    };
    let made = planned.and_then(|figure| part.here.make(figure, Fit::Nearest, false));
    let set_up = match load {
        LoadCall::SetUp { name, .. } => Some(name.clone()),
        _ => None,
    };
    let (figure, rig) = made.map_or((None, Rig::Said), |(figure, rig)| (Some(figure), rig));
    Load { meant: planned, figure, counting: part.here.counting, rig, body: part.body, set_up }
}
