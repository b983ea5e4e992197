//! The sets of one row, resolved.

use super::lifter::Need;
use super::meant::{Planned, Said, by_effort, said};
use super::past;
use super::slot::Slot;
use crate::call::{Flow, HowMany, LoadCall, Manner, Structure, WeekKind};
use crate::catalogue::Counting;
use crate::equipment::{Fit, Rig, Stack};
use crate::plan::{Block, Cut, RuleKind, SetCall};
use crate::progress::estimate::Formula;
use crate::progress::history::PastSession;
use crate::progress::next::{self, Ask, Next};
use crate::progress::test_day::FIRST_SINGLE;
use crate::quantity::{Mass, Percent, Rounding};
use crate::session::{Because, Call, CallLoad, Load, Reason, SetKind, Start, dropped};

/// The calls of a row in the order they are done.
pub(super) fn calls(slot: &Slot<'_>, block: &Block, needs: &mut Vec<Need>) -> Vec<Call> {
    let Some(first) = block.sets.first() else { return Vec::new() };
    let row = Row::new(slot, block, first);
    let off = Cut { sets_off: row.next.sets_off, ..Cut::default() };
    let flow = row.flow(off);
    let listed = matches!(flow, Flow::Listed | Flow::Clock { .. });
    let count = u16::try_from(block.sets.len()).unwrap_or(u16::MAX);
    let count = if listed { usize::from(off.count(count)) } else { block.sets.len() };
    let turns = slot.turns();
    let mut calls = Vec::new();
    for (round, set) in (1_u16..).zip(block.sets.iter().take(count)) {
        let resolved = row.load(usize::from(round) - 1, set, needs);
        let part_loads = part_loads(slot, &set.structure, &resolved.load, needs);
        let one = set.side.map(|side| vec![Some(side)]);
        for side in one.as_ref().unwrap_or(&turns) {
            calls.push(Call {
                kind: kind(&flow, &set.load),
                row: u16::try_from(block.line).unwrap_or(u16::MAX),
                round,
                flow,
                side: *side,
                load: resolved.load.clone(),
                part_loads: part_loads.clone(),
                how_many: row.how_many(set),
                aim: row.next.aim.filter(|_| row.is_like_first(set)),
                effort: set.effort.filter(|_| !speed(slot, set)),
                structure: set.structure.clone(),
                manner: manner(slot, set),
                rest: slot.rest_after(block),
                reason: Reason(resolved.why.clone()),
            });
        }
    }
    calls
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

struct Resolved {
    load: CallLoad,
    why: Vec<Because>,
}

/// A row with what its history and its rule say of it.
struct Row<'a> {
    slot: &'a Slot<'a>,
    block: &'a Block,
    first: &'a SetCall,
    /// What the plan's number for the first set comes to.
    planned: Said,
    next: Next,
    last: Option<PastSession>,
    /// The session that the rules start from.
    start: Option<Start>,
}

impl<'a> Row<'a> {
    fn new(slot: &'a Slot<'a>, block: &'a Block, first: &'a SetCall) -> Self {
        let history = past::sessions(slot, block);
        let mut planned = said(slot.source, slot.lifter, &slot.today(), &first.load);
        if planned == Said::Open && first.load == LoadCall::ByFeel && history.is_empty() {
            let by_table = by_effort(slot.lifter, &slot.today(), &first.how_many, first.effort);
            planned = by_table.map_or(Said::Open, Said::Figure);
        }
        let tests = matches!(block.flow, Flow::Test { .. });
        // Where the plan says no load, the protocol does: nobody tests the body alone.
        if tests && matches!(first.load, LoadCall::ByFeel | LoadCall::Body) {
            planned = first_single(slot).map_or(Said::Open, Said::Figure);
        }
        // The plan's own number stands by the lifter's training; a load that comes from the last
        // time alone, by how long ago that was.
        let days_off = match &planned {
            Said::Figure(_) => slot.lifter.days_since(slot.lifter.last_day),
            Said::Open | Said::Missing(_) => {
                let last = history.last().map(|(day, _)| *day);
                slot.lifter.days_since(last.or(slot.lifter.last_day))
            }
        };
        let plan = slot.source.plan;
        let ask = Ask {
            // A test is as the plan and the protocol say, whatever the week is called.
            week: if tests { WeekKind::Test } else { slot.session.kind },
            cut: plan.cut(slot.source.week),
            planned: match &planned {
                Said::Figure(planned) => Some(planned.figure),
                Said::Open | Said::Missing(_) => None,
            },
            how_many: first.how_many,
            target: first.effort,
            body: slot.body_mass(),
            days_off,
            rules: &slot.entry.next,
            misses: &slot.entry.misses,
            lay_off: &plan.lay_off,
            ease_in: plan.ease_in,
            held_back: slot.lifter.desk.held_back.contains(&slot.entry.exercise),
            formula: Formula::default(),
        };
        let start = start(&ask, &history);
        let sessions: Vec<PastSession> = history.into_iter().map(|(_, past)| past).collect();
        let next = next::next(&ask, &sessions, &slot.here);
        Self { slot, block, first, planned, next, last: sessions.last().cloned(), start }
    }

    /// The row's flow, with what a lay-off leaves out of it.
    fn flow(&self, off: Cut) -> Flow {
        let fewer = |most: u8| u8::try_from(off.count(most.into())).unwrap_or(most);
        match self.block.flow {
            Flow::Repeat { until, most } => Flow::Repeat { until, most: fewer(most) },
            Flow::Total { reps, most } => Flow::Total { reps: off.count(reps), most },
            flow @ (Flow::Listed | Flow::Clock { .. } | Flow::Climb { .. } | Flow::Test { .. }) => {
                flow
            }
        }
    }

    /// How many a set asks for: as the rule widens it, for the sets that ask what the first does.
    fn how_many(&self, set: &SetCall) -> HowMany {
        if self.is_like_first(set) { self.next.how_many } else { set.how_many }
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
            LoadCall::Pin(label) => return self.pin(label),
            _ => {}
        }
        if slot.here.counting == Counting::Unnumbered {
            return match &set.load {
                LoadCall::SetUp { name, .. } => self.bare(Some(name.clone())),
                _ => self.chosen(self.found(None)),
            };
        }
        let own = if at == 0 { self.planned.clone() } else { self.said(set) };
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
        let Some((meant, mut why)) = self.meant(at, set, own.as_ref()) else {
            return self.chosen(vec![Because::NothingToGoBy]);
        };
        let up_to = own.filter(|own| own.figure == meant).and_then(|own| own.up_to);
        match self.make(meant, up_to) {
            Some((figure, rig)) => {
                if figure != meant {
                    why.push(Because::Made { asked: meant, made: figure });
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

    fn said(&self, set: &SetCall) -> Said {
        let slot = self.slot;
        let said = said(slot.source, slot.lifter, &slot.today(), &set.load);
        // Where the table stood in for the first set, it does for the others.
        if said == Said::Open && matches!(self.planned, Said::Figure(_)) && self.last.is_none() {
            return by_effort(slot.lifter, &slot.today(), &set.how_many, set.effort)
                .map_or(Said::Open, Said::Figure);
        }
        said
    }

    /// What is meant for a set, moved as the first set's is, and why.
    fn meant(
        &self,
        at: usize,
        set: &SetCall,
        own: Option<&Planned>,
    ) -> Option<(Mass, Vec<Because>)> {
        let mut why = own.map(|own| own.why.clone()).unwrap_or_default();
        let first = match &self.planned {
            Said::Figure(planned) => Some(planned.figure),
            Said::Open | Said::Missing(_) => None,
        };
        let meant = match (own, first, self.next.meant) {
            (Some(own), Some(was), Some(is)) => shifted(own.figure, was, is),
            (Some(own), _, _) => own.figure,
            (None, _, _) if set.load != LoadCall::ByFeel => return None,
            (None, Some(_), _) => return None,
            (None, None, is) => self.as_last_time(at, is?),
        };
        let from = own.map(|own| own.figure);
        why.extend(self.found(Some((from, meant)).filter(|_| from != Some(meant))));
        Some((meant, why))
    }

    /// By feel: where the sets of a row differ, each set's own load of last time, moved as the
    /// first set's is.
    fn as_last_time(&self, at: usize, first: Mass) -> Mass {
        let straight = self.block.sets.iter().all(|set| set.how_many == self.first.how_many);
        let Some(last) = self.last.as_ref().filter(|_| !straight) else { return first };
        let place = u8::try_from(at).unwrap_or(u8::MAX);
        let then = last.sets.iter().find(|set| set.place == place).and_then(|set| set.made);
        let moved = then
            .zip(last.made)
            .and_then(|(then, was)| then.checked_sub(was))
            .and_then(|by| first.checked_add(by));
        moved.unwrap_or(first)
    }

    /// What the rules found, where it says more than the plan's own number does; `moved` is what
    /// the plan says and what is meant instead.
    fn found(&self, moved: Option<(Option<Mass>, Mass)>) -> Vec<Because> {
        let found = self.next.reason;
        let silent = matches!(
            found,
            next::Reason::FirstTime
                | next::Reason::AsPlanned
                | next::Reason::ByFeel
                | next::Reason::Test
        );
        let mut why = Vec::new();
        match moved {
            Some((None, meant)) if silent => why.push(Because::AsLastTime(meant)),
            Some((from, meant)) => {
                let start = self.start;
                why.push(Because::NextTime { found, from, to: Some(meant), start });
            }
            None if !silent => {
                why.push(Because::NextTime { found, from: None, to: None, start: None });
            }
            None => {}
        }
        why.extend(self.next.aim.map(Because::Aim));
        why
    }

    /// The nearest load; of a range the lightest within it, if there is one.
    fn make(&self, meant: Mass, up_to: Option<Mass>) -> Option<(Mass, Rig)> {
        let here = self.slot.here;
        let within = up_to
            .and_then(|most| here.make(meant, Fit::Over, false).filter(|(made, _)| *made <= most));
        within.or_else(|| here.make(meant, Fit::Nearest, false))
    }

    /// The place written, on whatever stack here has it; else the lifter's to find.
    fn pin(&self, label: &str) -> Resolved {
        let slot = self.slot;
        let of_kind = |stack: &&Stack| stack.kind == slot.exercise.implement;
        let stacks = slot.source.equipment.stacks.iter().filter(of_kind);
        let mut places = stacks.flat_map(|stack| stack.pins.iter().map(move |pin| (stack, pin)));
        let Some((stack, pin)) = places.find(|(_, pin)| pin.label == label) else {
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
        Resolved { load: CallLoad::Known(load), why: self.found(None) }
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
        Resolved { load: CallLoad::Known(load), why: self.found(None) }
    }

    fn chosen(&self, why: Vec<Because>) -> Resolved {
        let why = if why.is_empty() { vec![Because::NothingToGoBy] } else { why };
        let load = CallLoad::Chosen { counting: self.slot.here.counting, body: self.slot.body };
        Resolved { load, why }
    }
}

/// Where the rules start from, as they do: the last ordinary session, else the last of any kind.
fn start(ask: &Ask<'_>, history: &[(i32, PastSession)]) -> Option<Start> {
    let by_rule = ask.rules.iter().any(|rule| rule.kind != RuleKind::AsPlanned);
    if !by_rule && ask.planned.is_some() {
        return None;
    }
    let ordinary = history.iter().rev().find(|(_, past)| past.kind == WeekKind::Ordinary);
    let (day, then) = ordinary.or(history.last())?;
    let from = next::carried(then, ask.planned)?;
    Some(Start {
        day: *day,
        meant: then.meant?,
        made: then.made,
        plan: then.planned.zip(ask.planned).filter(|(was, is)| was != is),
        from,
    })
}

/// The first single of a test, by the protocol; none where nothing is known of the max.
fn first_single(slot: &Slot<'_>) -> Option<Planned> {
    let (moved, why) = past::expected(slot)?.share(FIRST_SINGLE)?;
    let body = slot.body_mass();
    let mut why = vec![why];
    let figure = moved.checked_sub(body)?;
    if slot.exercise.body_share.hundredths() > 0 {
        // Without the body's mass a share of what is moved says nothing of what to add.
        slot.body?;
        why.push(Because::LessBody { moved, body, gives: figure });
    }
    Some(Planned { figure, up_to: None, why })
}

/// A figure moved as another went: by the same ratio, or by the same difference where help or
/// nothing has no ratio.
fn shifted(figure: Mass, was: Mass, is: Mass) -> Mass {
    if was == is {
        figure
    } else if was > Mass::ZERO && is > Mass::ZERO {
        figure.ratio(is.nanograms(), was.nanograms(), Rounding::HalfEven).unwrap_or(figure)
    } else {
        is.checked_sub(was).and_then(|by| figure.checked_add(by)).unwrap_or(figure)
    }
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

/// A share off again and again; the same again where this gym makes nothing lighter, so that each
/// load keeps its part.
fn drops(slot: &Slot<'_>, off: &[Percent], first: &Load) -> Vec<Load> {
    let implement = &slot.exercise.implement;
    let mut from = first.clone();
    let mut loads = Vec::with_capacity(off.len());
    for off in off {
        if let Some(lighter) = dropped(slot.source.equipment, implement, &from, *off) {
            from = lighter;
        }
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
    let planned = match said(part.source, part.lifter, &part.today(), load) {
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
