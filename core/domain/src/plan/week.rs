//! One session of one week, with what the week changes applied: nothing after this sees
//! variations.

use chrono::Weekday;

use super::line::{Course, Line, Rests};
use super::model::{Gear, Goal, Plan, Ramp, Session, SetUp, Sides, Slot, Substitute, WarmUp};
use super::rules::{Cut, Miss, Rule};
use crate::call::{EffortTarget, Flow, HowMany, LoadCall, Manner, Side, Structure, WeekKind};
use crate::catalogue::Counting;
use crate::quantity::{Percent, Range};

/// A session of a week.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WeekSession {
    /// Its name.
    pub name: String,
    /// Its place in the plan's list of sessions.
    pub session: usize,
    /// What the week is for.
    pub kind: WeekKind,
    /// The day it is meant for.
    pub day: Option<Weekday>,
    /// Minutes it should take.
    pub minutes: Option<u16>,
    /// Its warm-up.
    pub warm_up: WarmUp,
    /// Its exercises in order.
    pub exercises: Vec<Entry>,
}

/// An exercise of a session of a week.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// The exercise's slug.
    pub exercise: String,
    /// Its place in the session's list of exercises.
    pub slot: usize,
    /// What it is for.
    pub goal: Goal,
    /// The superset it belongs to: neighbours of the same number are done back to back.
    pub superset: Option<usize>,
    /// Left out without a mark.
    pub optional: bool,
    /// Kept whole when there is little time.
    pub keep: bool,
    /// How sides are done; where nothing is said, as the exercise is.
    pub sides: Option<Sides>,
    /// How the number is meant, where not as in the catalogue.
    pub counting: Option<Counting>,
    /// Its ramp, where it says one.
    pub ramp: Option<Ramp>,
    /// How it is set up.
    pub set_up: SetUp,
    /// What is worn.
    pub wear: Vec<Gear>,
    /// Cues of the exercise.
    pub cues: Vec<String>,
    /// What to do instead, in order of preference.
    pub substitutes: Vec<Substitute>,
    /// What changes next time.
    pub next: Vec<Rule>,
    /// What follows misses.
    pub misses: Vec<Miss>,
    /// Its sets, row by row.
    pub blocks: Vec<Block>,
}

/// A row of sets of a week.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Block {
    /// Its place in the exercise's list of rows, the same in every week.
    pub line: usize,
    /// Where the number of sets comes from.
    pub flow: Flow,
    /// The sets: all of them where they are listed or by the clock, otherwise the one that is
    /// repeated.
    pub sets: Vec<SetCall>,
    /// What the week takes off it still: nothing of what is written week by week.
    pub cut: Cut,
    /// Its load is written week by week.
    pub by_week: bool,
}

/// The call of one set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetCall {
    /// How many.
    pub how_many: HowMany,
    /// The load as the plan says it.
    pub load: LoadCall,
    /// How hard.
    pub effort: Option<EffortTarget>,
    /// What it is made of.
    pub structure: Structure,
    /// In what way.
    pub manner: Manner,
    /// The one side it is for; none where both do it or each does.
    pub side: Option<Side>,
    /// No effort is asked for, and nothing is estimated.
    pub speed: bool,
    /// Rests by kind, as far as the plan says them; [`Goal::rest`] is what is left.
    pub rest: Rests,
}

impl Plan {
    /// The sessions of a week, counted from 0: their places in the plan's list.
    pub fn sessions_of(&self, week: usize) -> Vec<usize> {
        if week >= self.weeks.len() {
            return Vec::new();
        }
        let sessions = self.sessions.iter().enumerate();
        sessions.filter(|(_, session)| session.weeks.contain(week)).map(|(at, _)| at).collect()
    }

    /// The session at `index` among those of a week, both counted from 0, with the week's changes
    /// applied. `None` where there is none.
    pub fn session(&self, week: usize, index: usize) -> Option<WeekSession> {
        let mut session = self.session_as_written(week, index)?;
        for block in session.exercises.iter_mut().flat_map(|entry| &mut entry.blocks) {
            *block = block.eased();
        }
        Some(session)
    }

    /// As [`Plan::session`], with what a lighter week takes off left to take off ([`Block::cut`]): a
    /// sheet takes the deepest of several cuts, and says which.
    pub fn session_as_written(&self, week: usize, index: usize) -> Option<WeekSession> {
        let at = self.sessions_of(week).get(index).copied()?;
        let session = self.sessions.get(at)?;
        let kind = self.weeks.get(week)?.kind;
        let cut = self.cut(week);
        let mut exercises: Vec<Entry> = Vec::new();
        let mut last_superset: Option<&str> = None;
        let mut number = 0;
        for (place, slot) in session.exercises.iter().enumerate() {
            if !slot.weeks.contain(week) {
                continue;
            }
            let blocks = self.blocks(session, slot, week, cut);
            if blocks.is_empty() {
                continue;
            }
            if slot.superset.as_deref() != last_superset {
                number += 1;
            }
            last_superset = slot.superset.as_deref();
            exercises.push(Entry {
                superset: slot.superset.as_ref().map(|_| number),
                ..entry(self, slot, place, blocks)
            });
        }
        Some(WeekSession {
            name: session.name.clone(),
            session: at,
            kind,
            day: session.day,
            minutes: session.minutes.or(self.minutes),
            warm_up: session.warm_up.or(&self.warm_up),
            exercises,
        })
    }

    /// The rows of an exercise of a session in a week.
    fn blocks(&self, session: &Session, slot: &Slot, week: usize, cut: Cut) -> Vec<Block> {
        let rest = slot.rest.or(session.rest).or(self.rest);
        let lines = slot.lines.iter().enumerate().filter(|(_, line)| line.weeks.contain(week));
        lines.filter_map(|(at, line)| block(at, line, week, cut, rest)).collect()
    }

    /// What a week, counted from 0, takes off of what is not written week by week.
    pub fn cut(&self, week: usize) -> Cut {
        let Some(week) = self.weeks.get(week) else { return Cut::default() };
        week.cut.unwrap_or(match week.kind {
            WeekKind::Deload => self.deload,
            WeekKind::EaseIn => self.ease_in,
            WeekKind::Ordinary | WeekKind::Test => Cut::default(),
        })
    }
}

fn entry(plan: &Plan, slot: &Slot, place: usize, blocks: Vec<Block>) -> Entry {
    Entry {
        exercise: slot.exercise.clone(),
        slot: place,
        goal: slot.goal.unwrap_or(plan.goal),
        superset: None,
        optional: slot.optional,
        keep: slot.keep,
        sides: slot.sides,
        counting: slot.counting,
        ramp: slot.ramp.clone(),
        set_up: slot.set_up.clone(),
        wear: slot.wear.clone(),
        cues: slot.cues.clone(),
        substitutes: slot.substitutes.clone(),
        next: slot.next.clone(),
        misses: slot.misses.clone().unwrap_or_else(|| plan.misses.clone()),
        blocks,
    }
}

impl Block {
    /// The row with the week's cut taken off.
    #[must_use]
    pub fn eased(&self) -> Self {
        let cut = self.cut;
        let mut eased = self.sets_off(cut.sets_off);
        for set in &mut eased.sets {
            set.load = lighter(&set.load, cut);
            set.effort = set.effort.map(|target| EffortTarget {
                left: Range { from: cut.left(target.left.from), to: cut.left(target.left.to) },
                ..target
            });
        }
        eased.flow = match eased.flow {
            Flow::Climb { to, step, most } => {
                let left = Range { from: cut.left(to.left.from), to: cut.left(to.left.to) };
                Flow::Climb { to: EffortTarget { left, ..to }, step, most }
            }
            Flow::Repeat { until, most } => {
                let left = Range { from: cut.left(until.left.from), to: cut.left(until.left.to) };
                Flow::Repeat { until: EffortTarget { left, ..until }, most }
            }
            flow => flow,
        };
        Self { cut: Cut::default(), ..eased }
    }

    /// The row with a share of its sets taken off: drops, short parts and continuations first, then
    /// sets. Of one cluster alone blocks go, never its pauses.
    #[must_use]
    pub fn sets_off(&self, off: Percent) -> Self {
        let cut = Cut { sets_off: off, ..Cut::default() };
        if off <= Percent::default() {
            return self.clone();
        }
        let mut less = self.clone();
        less.flow = match self.flow {
            Flow::Repeat { until, most } => Flow::Repeat { until, most: cut.count_u8(most) },
            Flow::Total { reps, most } => Flow::Total { reps: cut.count(reps), most },
            flow @ (Flow::Listed | Flow::Clock { .. } | Flow::Climb { .. } | Flow::Test { .. }) => {
                flow
            }
        };
        for set in &mut less.sets {
            if matches!(
                set.structure,
                Structure::Drop { .. } | Structure::RestPause { .. } | Structure::Continued { .. }
            ) {
                set.structure = Structure::Straight;
            }
        }
        if matches!(self.flow, Flow::Listed | Flow::Clock { .. }) {
            let count = u16::try_from(less.sets.len()).unwrap_or(u16::MAX);
            less.sets.truncate(usize::from(cut.count(count)));
        }
        if let ([only], [was]) = (less.sets.as_mut_slice(), self.sets.as_slice())
            && self.sets.len() == 1
            && let Structure::Cluster { blocks, .. } = &was.structure
        {
            let keep = cut.count(u16::try_from(blocks.len()).unwrap_or(u16::MAX));
            if let Structure::Cluster { blocks, .. } = &mut only.structure {
                blocks.truncate(usize::from(keep));
            }
            only.how_many = only.structure.opening().unwrap_or(only.how_many);
        }
        less
    }
}

/// A row in a week; `None` where it has no sets in it.
fn block(at: usize, line: &Line, week: usize, cut: Cut, rest: Rests) -> Option<Block> {
    // What is written week by week is what that week asks: a lighter week takes nothing off it.
    let cut = Cut {
        sets_off: if line.sets.by_week() { Percent::default() } else { cut.sets_off },
        load_off: if line.load.by_week() { Percent::default() } else { cut.load_off },
        more_left: match &line.effort {
            Some(effort) if effort.by_week() => 0,
            _ => cut.more_left,
        },
    };
    let efforts = line.effort.as_ref().and_then(|effort| effort.at(week));
    let effort_at = |index: usize| cycle(efforts?, index).copied();
    let written = *line.sets.at(week)?;
    let (flow, count) = match line.course {
        Course::Listed => (Flow::Listed, written),
        Course::Clock { every } => (Flow::Clock { every }, written),
        Course::Climb { step, most_sets } => {
            (Flow::Climb { to: effort_at(0)?, step, most: most_sets }, 1)
        }
        Course::Repeat { most_sets } => (Flow::Repeat { until: effort_at(0)?, most: most_sets }, 1),
        Course::Total { reps, most_sets } => (Flow::Total { reps, most: most_sets }, 1),
        Course::Test { step, most_tries } => (Flow::Test { step, most: most_tries }, 1),
    };
    let (how_many, loads) = (line.how_many.at(week)?, line.load.at(week)?);
    let count = usize::from(count);
    let mut sets = Vec::with_capacity(count);
    for index in 0..count {
        let structure = structure_of(line, index, count);
        sets.push(SetCall {
            how_many: structure.opening().unwrap_or(*cycle(how_many, index)?),
            load: cycle(loads, index)?.clone(),
            effort: effort_at(index),
            structure,
            manner: line.manner.clone(),
            side: line.side,
            speed: line.speed,
            rest: line.rest.or(rest),
        });
    }
    let by_week = line.load.by_week();
    (!sets.is_empty()).then_some(Block { line: at, flow, sets, cut, by_week })
}

fn cycle<T>(list: &[T], index: usize) -> Option<&T> {
    index.checked_rem(list.len()).and_then(|at| list.get(at))
}

fn structure_of(line: &Line, index: usize, count: usize) -> Structure {
    if line.on_sets.contain(index, count) { line.structure.clone() } else { Structure::Straight }
}

/// A lighter load. Help, pins and set-ups stay: less of them is not a share of them.
fn lighter(load: &LoadCall, cut: Cut) -> LoadCall {
    match load {
        LoadCall::Percent { share, of } => LoadCall::Percent {
            share: Range { from: cut.share(share.from), to: cut.share(share.to) },
            of: of.clone(),
        },
        LoadCall::Mass(mass) => LoadCall::Mass(cut.load(*mass)),
        LoadCall::Added(mass) => LoadCall::Added(cut.load(*mass)),
        LoadCall::Body
        | LoadCall::Assisted(_)
        | LoadCall::OfTopSet(_)
        | LoadCall::Pin(_)
        | LoadCall::SetUp { .. }
        | LoadCall::ByFeel => load.clone(),
    }
}
