//! One exercise of the sheet: its rows of sets resolved, its sides, its parts, its ramp.

use super::here::Here;
use super::lifter::{Lifter, Need, Past};
use super::load::{self, Planned};
use super::ramp;
use super::session::Source;
use crate::call::{Amount, Flow, HowMany, LoadCall, Manner, Side, Structure};
use crate::catalogue::Exercise;
use crate::plan::{self, Block, Ramp, SetCall, Sides, WeekSession};
use crate::progress::estimate::{Formula, is_estimated};
use crate::progress::history::{Called, PastSession};
use crate::progress::next::{Ask, Next, next};
use crate::progress::reference;
use crate::quantity::{Mass, Reserve, Seconds};
use crate::session::{
    Because, BodyPart, Call, CallLoad, Entry, EntryId, Kit, LastTime, Load, Reason, SetKind,
    Substitute, dropped,
};

/// Rest between sides where nothing says it: none, since one side rests while the other works.
const BETWEEN_SIDES: Seconds = Seconds::new(0);

/// A row with what the rules say of it.
struct Row {
    next: Option<Next>,
    planned: Option<Mass>,
}

/// Resolves one exercise of a session.
pub(super) struct Builder<'a> {
    pub(super) source: Source<'a>,
    pub(super) lifter: &'a Lifter,
    pub(super) session: &'a WeekSession,
    pub(super) exercise: &'a Exercise,
    pub(super) entry: &'a plan::Entry,
    pub(super) needs: &'a mut Vec<Need>,
}

impl<'a> Builder<'a> {
    fn here(&self) -> Here<'a> {
        Here::new(self.source.equipment, self.exercise, self.entry.counting)
    }

    /// The entry, with the ramp that `warm` leaves of what is asked.
    pub(super) fn build(mut self, id: EntryId, ramp: &Ramp) -> Entry {
        let here = self.here();
        let lacks = here.lacks();
        let body = load::body_part(&here, self.lifter);
        if self.exercise.body_share.hundredths() > 0 && body.is_none() {
            self.needs.push(Need::BodyMass);
        }
        let mut calls = Vec::new();
        let has_back_offs =
            self.entry.blocks.iter().any(|block| {
                block.sets.iter().any(|set| matches!(set.load, LoadCall::OfTopSet(_)))
            });
        let mut supported = None;
        for (at, block) in self.entry.blocks.iter().enumerate() {
            let number = u16::try_from(at).unwrap_or(u16::MAX);
            let row = self.row(at, block, body);
            supported = supported.or_else(|| self.supported(block, body));
            let mut sets = self.row_calls(number, block, &row, body);
            let leads = self.entry.blocks.get(at + 1).is_some_and(|next| {
                next.sets.iter().any(|set| matches!(set.load, LoadCall::OfTopSet(_)))
            });
            if has_back_offs
                && leads
                && matches!(block.flow, Flow::Listed)
                && let Some(last) = sets.last_mut()
            {
                last.kind = SetKind::Top;
            }
            calls.append(&mut sets);
        }
        let first = calls.iter().find_map(|call| match &call.load {
            CallLoad::Known(load) => Some(load.clone()),
            CallLoad::AfterTop { .. } | CallLoad::Chosen { .. } => None,
        });
        if let Some(work) = first {
            let manner = calls.first().map(|call| call.manner.clone()).unwrap_or_default();
            let mut all = ramp::calls(&here, ramp, &work, &manner);
            all.append(&mut calls);
            calls = all;
        }
        let slug = self.exercise.slug.to_string();
        let set_up = match self.lifter.desk.set_ups.get(&slug) {
            Some(lines) => lines.clone(),
            None => set_up_lines(&self.entry.set_up),
        };
        Entry {
            id,
            name: self.exercise.name.to_string(),
            implement: self.exercise.implement.to_string(),
            optional: self.entry.optional,
            instead: self.substitutes(),
            wear: self.entry.wear.iter().map(|gear| kit(*gear)).collect(),
            set_up,
            lacks,
            rest_between_sides: self
                .entry
                .blocks
                .iter()
                .flat_map(|block| &block.sets)
                .find_map(|set| set.rest.between_sides)
                .unwrap_or(BETWEEN_SIDES),
            calls,
            last: last_time(self.lifter.past(&slug)),
            over_body: self.exercise.over_body,
            supported,
            stands_in_for: None,
            exercise: slug,
        }
    }

    /// What the rules say of a row.
    fn row(&mut self, at: usize, block: &Block, body: Option<BodyPart>) -> Row {
        let Some(first) = block.sets.first() else { return Row { next: None, planned: None } };
        let today = self.lifter.today;
        let planned = match self.planned(first, today) {
            Planned::Figure(figure, _) => Some(figure),
            Planned::Nothing => None,
            // What has no figure of its own has nothing for a rule to move.
            Planned::AfterTop(_) | Planned::Pin(_) | Planned::SetUp(..) => {
                return Row { next: None, planned: None };
            }
        };
        let number = u16::try_from(at).unwrap_or(u16::MAX);
        let history: Vec<PastSession> = self
            .lifter
            .past(&self.exercise.slug)
            .iter()
            .rev()
            .filter_map(|past| self.past_row(past, at, number))
            .collect();
        let plan = self.source.plan;
        let ask = Ask {
            week: self.session.kind,
            cut: plan.cut(self.source.week),
            planned,
            how_many: first.how_many,
            target: first.effort,
            body: load::body_mass(body),
            days_off: self.lifter.days_off(),
            rules: &self.entry.next,
            misses: &self.entry.misses,
            lay_off: &plan.lay_off,
            ease_in: plan.ease_in,
            held_back: self.lifter.desk.held_back.iter().any(|slug| *slug == self.exercise.slug),
            formula: Formula::default(),
        };
        Row { next: Some(next(&ask, &history, &self.here())), planned }
    }

    /// A past session of a row as the rules read it; none where it has no set of it.
    fn past_row(&mut self, past: &Past, at: usize, number: u16) -> Option<PastSession> {
        let sets = || past.sets.iter().filter(|set| set.row == number && set.is_work());
        let first = sets().next()?;
        let then = past
            .place
            .as_ref()
            .filter(|place| Some(place.plan) == self.source.adopted)
            .and_then(|place| self.block_then(place.week, place.session, at));
        let planned = then.as_ref().and_then(|block| {
            let set = block.sets.first()?;
            match self.planned(set, past.day) {
                Planned::Figure(figure, _) => Some(figure),
                _ => None,
            }
        });
        let rounds = sets().map(|set| set.round).max().unwrap_or(1);
        let called = Called {
            kind: past.week_kind,
            planned,
            sets: then.map_or_else(
                || u8::try_from(rounds).unwrap_or(u8::MAX),
                |block| u8::try_from(block.sets.len()).unwrap_or(u8::MAX),
            ),
            each_side: first.side.is_some(),
            all_parts: self.entry.blocks.get(at).is_some_and(|block| {
                block.sets.iter().any(|set| matches!(set.structure, Structure::Cluster { .. }))
            }),
        };
        Some(PastSession::of(called, sets()))
    }

    /// The same row of the same exercise as the plan called it in another week.
    fn block_then(&self, week: u16, session: u16, at: usize) -> Option<Block> {
        let week = usize::from(week).checked_sub(1)?;
        let index = usize::from(session).checked_sub(1)?;
        let then = self.source.plan.session(week, index)?;
        let entry =
            then.exercises.into_iter().find(|entry| entry.exercise == self.exercise.slug)?;
        entry.blocks.into_iter().nth(at)
    }

    fn planned(&mut self, set: &SetCall, day: i32) -> Planned {
        load::planned(
            self.source.plan,
            self.source.catalogue,
            &self.lifter.desk,
            &self.exercise.slug,
            &set.load,
            day,
            self.needs,
        )
    }

    /// The calls of a row, each side its own.
    fn row_calls(
        &mut self,
        number: u16,
        block: &Block,
        row: &Row,
        body: Option<BodyPart>,
    ) -> Vec<Call> {
        let off = row.next.map_or(0, |next| next.sets_off.hundredths()).clamp(0, 10_000);
        let keep = usize::try_from(10_000 - off).unwrap_or(10_000);
        let count = (block.sets.len() * keep + 5_000) / 10_000;
        let sides = self.sides();
        let mut calls = Vec::new();
        for (round, set) in (1_u16..).zip(block.sets.iter().take(count.max(1))) {
            let call = self.call(number, round, block.flow, set, row, body);
            match (set.side, sides) {
                (Some(side), _) => calls.push(Call { side: Some(side), ..call }),
                (None, Some(first)) => {
                    calls.push(Call { side: Some(first), ..call.clone() });
                    calls.push(Call { side: Some(first.other()), ..call });
                }
                (None, None) => calls.push(call),
            }
        }
        calls
    }

    /// The side that works first, where each works for itself.
    fn sides(&self) -> Option<Side> {
        match self.entry.sides {
            Some(Sides::Together) => None,
            Some(Sides::LeftFirst) => Some(Side::Left),
            Some(Sides::RightFirst) => Some(Side::Right),
            Some(Sides::WeakerFirst) => Some(self.weaker()),
            None if self.exercise.one_sided => Some(self.weaker()),
            None => None,
        }
    }

    /// The side that did less last time; the left where nothing tells.
    fn weaker(&self) -> Side {
        let Some(last) = self.lifter.past(&self.exercise.slug).first() else { return Side::Left };
        let done = |side| -> i64 {
            last.sets
                .iter()
                .filter(|set| set.is_work() && set.side == Some(side))
                .map(|set| amount(&set.amount()))
                .sum()
        };
        if done(Side::Right) < done(Side::Left) { Side::Right } else { Side::Left }
    }

    fn call(
        &mut self,
        number: u16,
        round: u16,
        flow: Flow,
        set: &SetCall,
        row: &Row,
        body: Option<BodyPart>,
    ) -> Call {
        let here = self.here();
        let planned = self.planned(set, self.lifter.today);
        let mut because = Vec::new();
        let load = match planned {
            Planned::AfterTop(share) => CallLoad::AfterTop { share },
            Planned::Pin(pin) => CallLoad::Known(load::pin(&here, &pin)),
            Planned::SetUp(name, figure) => {
                CallLoad::Known(load::set_up(&here, body, &name, figure))
            }
            Planned::Figure(figure, steps) => {
                because = steps;
                self.by_rule(&here, figure, row, body, &mut because)
            }
            Planned::Nothing => match row.next.and_then(|next| Some((next.meant?, next))) {
                Some((meant, next)) => {
                    because.push(Because::NextTime {
                        found: next.reason,
                        from: None,
                        to: Some(meant),
                    });
                    load::known(&here, body, meant, &mut because)
                }
                None => {
                    because.push(Because::NothingToGoBy);
                    CallLoad::Chosen { counting: here.counting, body }
                }
            },
        };
        let part_loads = self.part_loads(&here, &load, &set.structure);
        let kind = match (flow, &load) {
            (Flow::Test { .. }, _) => SetKind::Test,
            (Flow::Climb { .. }, _) => SetKind::Top,
            (_, CallLoad::AfterTop { .. }) => SetKind::BackOff,
            _ => SetKind::Work,
        };
        // A range that a rule extends is extended for the sets that ask the row's own.
        let how_many = match row.next {
            Some(next) if !matches!(set.structure, Structure::Cluster { .. }) => {
                match (set.how_many, next.how_many) {
                    (HowMany::Reps(own), HowMany::Reps(now)) if now.to > own.to => next.how_many,
                    _ => set.how_many,
                }
            }
            _ => set.how_many,
        };
        let rest =
            set.rest.after_set.unwrap_or_else(|| self.entry.goal.rest(self.exercise.is_compound()));
        let cues = if set.manner.cues.is_empty() { &self.entry.cues } else { &set.manner.cues };
        Call {
            kind,
            row: number,
            round,
            flow,
            side: None,
            load,
            part_loads,
            how_many,
            effort: if set.speed { None } else { set.effort },
            structure: set.structure.clone(),
            manner: Manner { cues: cues.clone(), ..set.manner.clone() },
            rest,
            reason: Reason(because),
        }
    }

    /// The plan's number as the rules have moved it.
    fn by_rule(
        &self,
        here: &Here<'_>,
        figure: Mass,
        row: &Row,
        body: Option<BodyPart>,
        because: &mut Vec<Because>,
    ) -> CallLoad {
        let moved = row.next.and_then(|next| {
            let to = load::moved_alike(figure, row.planned?, next.meant?)?;
            Some((next, to))
        });
        let meant = match moved {
            Some((next, to)) => {
                let told = matches!(
                    next.reason,
                    crate::progress::next::Reason::AsPlanned
                        | crate::progress::next::Reason::FirstTime
                );
                if to != figure || !told {
                    because.push(Because::NextTime {
                        found: next.reason,
                        from: Some(figure),
                        to: Some(to),
                    });
                }
                to
            }
            None => figure,
        };
        load::known(here, body, meant, because)
    }

    /// Loads of the parts after the first, for drops and easier variations.
    fn part_loads(&mut self, here: &Here<'_>, load: &CallLoad, structure: &Structure) -> Vec<Load> {
        match (structure, load) {
            (Structure::Drop { off }, CallLoad::Known(load)) => {
                let mut from = load.clone();
                let mut loads = Vec::new();
                for off in off {
                    match dropped(here.equipment, &here.exercise.implement, &from, *off) {
                        Some(next) => {
                            loads.push(next.clone());
                            from = next;
                        }
                        None => loads.push(from.clone()),
                    }
                }
                loads
            }
            (Structure::Continued { parts }, _) => parts
                .iter()
                .filter_map(|part| {
                    let exercise = self.source.catalogue.get(&part.exercise)?;
                    let here = Here::new(self.source.equipment, exercise, None);
                    let body = load::body_part(&here, self.lifter);
                    let planned = load::planned(
                        self.source.plan,
                        self.source.catalogue,
                        &self.lifter.desk,
                        &part.exercise,
                        &part.load,
                        self.lifter.today,
                        self.needs,
                    );
                    Some(match planned {
                        Planned::Figure(figure, mut because) => {
                            match load::known(&here, body, figure, &mut because) {
                                CallLoad::Known(load) => load,
                                _ => load::set_up(&here, body, &exercise.name, None),
                            }
                        }
                        Planned::Pin(pin) => load::pin(&here, &pin),
                        Planned::SetUp(name, figure) => load::set_up(&here, body, &name, figure),
                        Planned::AfterTop(_) | Planned::Nothing => {
                            load::set_up(&here, body, &exercise.name, None)
                        }
                    })
                })
                .collect(),
            _ => Vec::new(),
        }
    }

    /// What the last four weeks' estimates support for a row's repetitions.
    fn supported(&self, block: &Block, body: Option<BodyPart>) -> Option<Mass> {
        if !is_estimated(self.exercise) {
            return None;
        }
        let set = block.sets.first()?;
        let HowMany::Reps(reps) = set.how_many else { return None };
        let since = self.lifter.today.saturating_sub(28);
        let estimates = self
            .lifter
            .past(&self.exercise.slug)
            .iter()
            .filter(|past| past.day >= since)
            .flat_map(|past| &past.sets)
            .filter_map(|set| reference::estimate(set, Formula::default()));
        let left = set.effort.map_or(Reserve::NONE, |target| target.left.from);
        reference::supported(estimates, reps.from, left, load::body_mass(body))
    }

    fn substitutes(&self) -> Vec<Substitute> {
        self.entry
            .substitutes
            .iter()
            .filter_map(|substitute| {
                let exercise = self.source.catalogue.get(&substitute.exercise)?;
                let here = Here::new(self.source.equipment, exercise, None);
                Some(Substitute {
                    exercise: exercise.slug.to_string(),
                    name: exercise.name.to_string(),
                    possible: here.lacks().is_empty(),
                })
            })
            .collect()
    }
}

fn amount(amount: &Amount) -> i64 {
    match amount {
        Amount::Reps(reps) => i64::from(*reps),
        Amount::Seconds(seconds) => i64::from(seconds.count()),
        Amount::Metres(distance) => i64::from(distance.millimetres()),
    }
}

fn kit(gear: plan::Gear) -> Kit {
    match gear {
        plan::Gear::Belt => Kit::Belt,
        plan::Gear::Wraps => Kit::Wraps,
        plan::Gear::Straps => Kit::Straps,
        plan::Gear::Sleeves => Kit::Sleeves,
    }
}

/// The plan's settings as the lines that a lifter would note, in the plan's own words.
fn set_up_lines(set_up: &plan::SetUp) -> Vec<String> {
    [
        ("pins", &set_up.pins),
        ("seat", &set_up.seat),
        ("attachment", &set_up.attachment),
        ("bench", &set_up.bench),
    ]
    .into_iter()
    .filter_map(|(what, how)| how.as_ref().map(|how| format!("{what} {how}")))
    .collect()
}

/// Last time's line: the work sets of the most recent session.
fn last_time(past: &[Past]) -> Option<LastTime> {
    let last = past.first()?;
    let work: Vec<_> = last.sets.iter().filter(|set| set.is_work()).collect();
    Some(LastTime {
        day: last.day,
        figure: work.iter().filter_map(|set| set.figure).max(),
        amounts: work.iter().map(|set| set.amount()).collect(),
        left_halves: work.last()?.left.map(Reserve::halves),
    })
}
