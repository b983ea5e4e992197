//! One lifter through the whole plan, by the domain's own sheet, session and rules.

use std::collections::BTreeMap;

use barwright_domain::call::{Amount, Flow, HowMany, Structure};
use barwright_domain::catalogue::{Catalogue, Counting, Exercise, Muscle};
use barwright_domain::desk::{At, Desk, DeskEvent, Shared, adoption};
use barwright_domain::equipment::Equipment;
use barwright_domain::history::{self, DoneSet};
use barwright_domain::owners::{Change, MaxOrigin, Owner, Why};
use barwright_domain::plan::{Entry, Plan, RuleKind, WeekSession};
use barwright_domain::prescribe::{
    self, ENOUGH_PAST, Lifter, MOST_PAST, Past, RECENT_DAYS, Source,
};
use barwright_domain::quantity::Mass;
use barwright_domain::session::{
    Call, CallLoad, Command, Cursor, Ending, EntryId, EntryRun, Reading, RecordedSet, Refusal, Run,
    SetKind, Sheet, Stamped, State, SwapCause, decide, made,
};
use barwright_domain::settle::{Ground, settle};

use crate::body::{Body, Each};
use crate::calendar::{self, Date};
use crate::capacity::{Capacity, Lifts, for_later, halves, kg, reps_at, reps_of};
use crate::chance::Chance;
use crate::effort::{self, Asked, Judgement};
use crate::model;
use crate::person::Person;

const DAY_MS: i64 = 86_400_000;
/// The hour at which a session begins.
const HOUR: i64 = 18;
/// What the invented lifters' plan is called in the log that nobody keeps.
const ADOPTED: u64 = 1;

/// What is the same for every lifter.
#[derive(Debug)]
pub(crate) struct Stage<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) catalogue: &'a Catalogue,
    pub(crate) gym: &'a Equipment,
    pub(crate) lifts: Lifts<'a>,
    pub(crate) dates: Vec<Date>,
    /// The session of each date, as the plan has it.
    pub(crate) sessions: Vec<WeekSession>,
    /// Hard sets a week of each muscle that the plan has in the mean.
    pub(crate) weekly: Each,
}

/// One exercise of one session as one lifter did it: its first row.
#[derive(Debug, Clone)]
pub(crate) struct Seen {
    /// The date, by its place in [`Stage::dates`], and the exercise's place in its session.
    pub(crate) date: u32,
    pub(crate) slot: u16,
    /// What the rules said of it before it was done, where they said anything.
    pub(crate) found: Option<Why>,
    /// The heaviest figure that was on.
    pub(crate) load: Option<Mass>,
    /// The mean amount of a set: repetitions, seconds or metres, in hundredths.
    pub(crate) each: u32,
    /// A set came to less than asked.
    pub(crate) missed: bool,
    /// Fresh, the first set could not have been done as asked.
    pub(crate) too_heavy: bool,
    /// The last set left far more than was asked.
    pub(crate) too_light: bool,
}

/// One session as one lifter did it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Trained {
    pub(crate) date: u32,
    /// Seconds that the sheet takes as the engine reckons them, and that it took.
    pub(crate) reckoned: u32,
    pub(crate) took: u32,
}

/// A tap of a lifter, as the session took it.
#[derive(Debug, Clone)]
pub struct Tap {
    /// When.
    pub at: Reading,
    /// The week and the session of the week, from 0.
    pub place: (usize, usize),
    /// What was tapped.
    pub command: Command,
    /// The load that was called for the part it came on, counted as the exercise counts; none where
    /// there was no part or no number.
    pub load: Option<Mass>,
}

/// One lifter tap by tap, to be played by something else.
#[derive(Debug, Clone, Default)]
pub struct TapByTap {
    /// Body mass, from the first day on.
    pub body_mass: Mass,
    /// Maxes entered on the first day, by slug.
    pub maxes: Vec<(String, Mass)>,
    /// The first day, in days since 1970-01-01.
    pub day: i32,
    /// The taps.
    pub taps: Vec<Tap>,
}

/// A work set of one lifter.
#[derive(Debug, Clone)]
pub struct Done {
    /// The week and the session of the week, from 0.
    pub place: (usize, usize),
    /// The first rule that the plan names for its exercise; none for one that stands in for another.
    pub rule: Option<RuleKind>,
    /// It.
    pub set: DoneSet,
}

/// All that one lifter did.
#[derive(Debug, Clone, Default)]
pub(crate) struct Played {
    /// Tap by tap, where that is asked for.
    pub(crate) tap_by_tap: Option<TapByTap>,
    /// Every work set, where that is asked for.
    pub(crate) sets: Option<Vec<Done>>,
    pub(crate) seen: Vec<Seen>,
    pub(crate) trained: Vec<Trained>,
    /// Half sets of each muscle in each week.
    pub(crate) volume: Vec<[u32; Muscle::ALL.len()]>,
    /// Sessions that were missed.
    pub(crate) missed: u32,
    /// Exercises that this gym lacks something for and the plan names nothing else.
    pub(crate) lacking: Vec<String>,
    /// Taps that the session refused; a rehearsal with any is not to be believed.
    pub(crate) refused: u32,
}

/// Plays one lifter through.
pub(crate) fn play(stage: &Stage<'_>, seed: u64, number: u32) -> Played {
    playing(stage, seed, number, Keep::Report)
}

/// What is kept of a lifter beside what the report is made from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Keep {
    /// Nothing.
    Report,
    /// Every tap.
    Taps,
    /// Every work set.
    Sets,
}

/// As [`play`], and what is asked for beside it.
pub(crate) fn playing(stage: &Stage<'_>, seed: u64, number: u32, keep: Keep) -> Played {
    let mut chance = Chance::of(seed, number);
    let person = Person::drawn(&mut chance);
    let (capacities, maxes) = stage.lifts.drawn(&person, &mut chance);
    let mut desk =
        Desk { body_mass: Some((halves(person.body_kg), calendar::BEGINS)), ..Desk::default() };
    let day = calendar::BEGINS;
    let sets = (keep == Keep::Sets).then(Vec::new);
    let mut out = Played { sets, ..Played::default() };
    if keep == Keep::Taps {
        let (body_mass, maxes) = (halves(person.body_kg), maxes.to_vec());
        out.tap_by_tap = Some(TapByTap { body_mass, maxes, day, taps: Vec::new() });
    }
    for (exercise, mass) in maxes {
        let changes = vec![Change::Max { mass, origin: MaxOrigin::Entered }];
        desk.apply(0, &DeskEvent::Said { owner: Owner::Max(exercise), changes, day });
    }
    let adopted = adoption(stage.plan, None, &desk, stage.catalogue, Shared::ThisOne);
    let (rows, said) = (adopted.rows, adopted.said);
    let (text, name) = (String::new(), stage.plan.name.clone());
    desk.apply(ADOPTED, &DeskEvent::PlanAdopted { text, name, day, rows, said });
    let lifter = Lifter { desk, ..Lifter::default() };
    let body = Body::rested(&stage.weekly, calendar::BEGINS);
    let mut player = Player {
        stage,
        person,
        capacities,
        body,
        chance,
        lifter,
        said: BTreeMap::new(),
        day: 1.0,
        out,
    };
    player.out.volume = vec![[0; Muscle::ALL.len()]; stage.plan.weeks.len()];
    player.all();
    player.out
}

struct Player<'a> {
    stage: &'a Stage<'a>,
    person: Person,
    capacities: BTreeMap<String, Capacity>,
    body: Body,
    chance: Chance,
    lifter: Lifter,
    /// What the last session that said anything found, by track.
    said: BTreeMap<Owner, Why>,
    /// The day's form.
    day: f64,
    out: Played,
}

impl Player<'_> {
    fn all(&mut self) {
        let mut back_in = 0;
        let mut week = None;
        let stage = self.stage;
        for ((number, date), plan) in (0_u32..).zip(&stage.dates).zip(&stage.sessions) {
            if week != Some(date.week) {
                week = Some(date.week);
                if date.week >= back_in && date.week > 0 && self.chance.happens(model::AWAY_SHARE) {
                    back_in = date.week + if self.chance.happens(0.5) { 1 } else { 2 };
                }
            }
            let misses = self.chance.happens(self.person.misses);
            self.day = self.chance.factor(model::DAY_DEVIATION);
            if misses || date.week < back_in {
                self.out.missed += 1;
                continue;
            }
            self.session(number, *date, plan);
        }
    }

    /// One session from its sheet to what it leaves behind.
    fn session(&mut self, number: u32, date: Date, plan: &WeekSession) {
        let stage = self.stage;
        self.lifter.today = date.day;
        self.forget();
        self.body.wake(date.day);
        let Some(at) = At::of_nth(date.week, date.index) else { return };
        let source = Source {
            plan: stage.plan,
            adopted: Some(ADOPTED),
            at,
            catalogue: stage.catalogue,
            equipment: stage.gym,
        };
        let Some(prescribed) = prescribe::sheet(source, &self.lifter) else { return };
        let mut sheet = prescribed.sheet;
        let reckoned = prescribe::duration(&sheet).total();
        let ramps = without_ramps(&mut sheet, reckoned);
        if sheet.blocks.is_empty() {
            return;
        }
        let warm_up = sheet.warm_up.map_or(0, |seconds| seconds.count());
        let midnight = i64::from(date.day) * DAY_MS;
        let mut floor = Floor {
            state: State::default(),
            at: reading(midnight + HOUR * 3_600_000),
            seq: u64::from(number) * 10_000 + 1,
            refused: 0,
            place: (date.week, date.index),
            taps: self.out.tap_by_tap.as_ref().map(|_| Vec::new()),
        };
        let body_mass = self.lifter.desk.body_mass.map(|(mass, _)| mass);
        let equipment = stage.gym.clone();
        floor.tap(&Command::Begin { sheet, equipment, body_mass, paper: None });
        floor.wait(f64::from(warm_up) + ramps as f64);
        self.body.rest(floor.at.wall_ms);
        self.arrange(&mut floor, source);
        let mut on = Followed::of(plan);
        while let Some(cursor) = floor.run().and_then(Run::cursor) {
            self.part(&mut floor, &cursor, &mut on);
        }
        floor.tap(&Command::Finish);
        self.out.refused += floor.refused;
        if let Some((all, taps)) = self.out.tap_by_tap.as_mut().zip(floor.taps.take()) {
            all.taps.extend(taps);
        }
        let Some(run) = floor.state.run().cloned() else { return };
        let took = floor.at.wall_ms.saturating_sub(run.began.wall_ms) / 1_000;
        self.out.trained.push(Trained {
            date: number,
            reckoned: u32::try_from(reckoned).unwrap_or(u32::MAX),
            took: u32::try_from(took).unwrap_or(u32::MAX),
        });
        self.leave_behind(&run, number, date, &on);
    }

    /// Only as much of the past as a device reads is there for the sheet.
    fn forget(&mut self) {
        let since = self.lifter.today.saturating_sub(RECENT_DAYS);
        let (enough, most) = (ENOUGH_PAST as usize, MOST_PAST as usize);
        for past in self.lifter.past.values_mut() {
            let read = past.iter().enumerate().take(most);
            let read = read.take_while(|(at, work)| *at < enough || work.day >= since).count();
            past.truncate(read);
        }
    }

    /// What the gym lacks is swapped for what the plan says, or left out; what is optional is done
    /// or not.
    fn arrange(&mut self, floor: &mut Floor, source: Source<'_>) {
        let Some(run) = floor.run() else { return };
        let entries: Vec<(EntryId, bool, bool, String, Option<String>)> = run
            .in_order()
            .map(|(_, id, entry)| {
                let entry = &entry.entry;
                let instead = entry.instead.iter().find(|other| other.possible);
                let instead = instead.map(|other| other.exercise.clone());
                (id, entry.optional, !entry.lacks.is_empty(), entry.exercise.clone(), instead)
            })
            .collect();
        for (id, optional, lacks, exercise, instead) in entries {
            if optional && !self.chance.happens(model::OPTIONAL_SHARE) {
                floor.tap(&Command::SkipEntry(id));
            } else if lacks {
                let to = instead.and_then(|other| {
                    prescribe::substitute(source, &self.lifter, &exercise, &other)
                });
                match to {
                    Some(mut to) => {
                        to.calls.retain(|call| call.kind != SetKind::Ramp);
                        let cause = SwapCause::Lacking;
                        floor.tap(&Command::Swap { entry: id, to, cause });
                    }
                    None => {
                        if !self.out.lacking.contains(&exercise) {
                            self.out.lacking.push(exercise);
                        }
                        floor.tap(&Command::SkipEntry(id));
                    }
                }
            }
        }
    }

    /// One part: the rest before it, the work, and the tap after it.
    fn part(&mut self, floor: &mut Floor, cursor: &Cursor, on: &mut Followed<'_>) {
        let skip = |floor: &mut Floor| {
            floor.refused += 1;
            floor.tap(&Command::SkipSet);
        };
        let Some(run) = floor.run() else { return };
        let Some((entry, set)) = run.entries.get(&cursor.set.entry).zip(run.set(cursor.set)) else {
            return skip(floor);
        };
        let Some(how_many) = run.how_many_at(cursor) else { return skip(floor) };
        let call = set.call.clone();
        let slug = match (&call.structure, usize::from(cursor.part).checked_sub(1)) {
            (Structure::Continued { parts }, Some(further)) => {
                parts.get(further).map_or(&entry.entry.exercise, |part| &part.exercise)
            }
            _ => &entry.entry.exercise,
        };
        let Some(exercise) = self.stage.catalogue.get(slug) else { return skip(floor) };
        let last_of_row = entry
            .sets
            .iter()
            .filter(|other| other.call.row == call.row && other.call.side == call.side)
            .map(|other| other.call.round)
            .max();
        let pause = run
            .rest
            .as_ref()
            .map_or(0.0, |rest| rest.standing(Some(&run.seen), &floor.at).left_ms as f64 / 1e3)
            .max(0.0);
        let called = run.load_at(cursor).cloned();
        let setting_up = entry.sets.iter().all(|set| !set.begun());
        let implement = entry.entry.implement.clone();
        let before = entry.sets.iter().rev().find_map(|set| set.parts.last());
        let before = before.map(|part| part.done.load.clone());
        let target = run.effort_at(cursor.set);
        let asked = Asked {
            how_many,
            target,
            goes_on: Some(call.round) == last_of_row
                && cursor.part == 0
                && on.two_for_two(cursor.set.entry),
            sets: usize::from(last_of_row.unwrap_or(1)),
            as_it_goes: cursor.part > 0
                && matches!(
                    call.structure,
                    Structure::Drop { .. }
                        | Structure::RestPause { .. }
                        | Structure::Continued { .. }
                ),
            a_rep: call.manner.tempo.map_or(f64::from(run.sheet.seconds_a_rep), |tempo| {
                f64::from(tempo.rep_tenths()) / 10.0
            }),
        };
        floor.wait(pause + if setting_up { model::SETTING_UP } else { 0.0 });
        self.body.rest(floor.at.wall_ms);

        // A load that the lifter finds, where the sheet has none and none was found before.
        let (load, found) = match (called, before) {
            (Some(load), _) | (None, Some(load)) => (Some(load), None),
            (None, None) => {
                let found = self.find(exercise, &call, &asked, &implement);
                (None, found)
            }
        };
        let moved = match (&load, found) {
            (Some(load), _) => load.moved().map(kg),
            (None, Some((_, moved))) => Some(moved),
            (None, None) => None,
        };
        let work = self.work(exercise, &asked, moved, cursor, pause, on);
        floor.wait(work.seconds);
        let said = RecordedSet {
            amount: Some(work.came.amount),
            load: found.map(|(figure, _)| figure),
            left: work.came.called,
            ending: work.came.ending,
            // A part that comes to nothing can only be the last.
            last: work.came.amount == Amount::Reps(0),
            ..RecordedSet::default()
        };
        on.worked(cursor, &call, &work, &asked);
        if !floor.tap(&Command::Record(said)) {
            floor.tap(&Command::SkipSet);
        }
        // A set counts once, however many parts it has.
        let worth = match (cursor.part, work.came.left <= model::HARD_AT_LEFT) {
            (0, true) => 1.0,
            (0, false) => 0.5,
            _ => 0.0,
        };
        self.body.work(exercise, work.taken, worth);
    }

    /// The figure that the lifter finds right, and what is moved with it.
    fn find(
        &mut self,
        exercise: &Exercise,
        call: &Call,
        asked: &Asked,
        implement: &str,
    ) -> Option<(Mass, f64)> {
        let CallLoad::Chosen { counting, body } = &call.load else { return None };
        if *counting == Counting::Unnumbered {
            return None;
        }
        let body_kg = body.and_then(|body| body.share.of(body.mass)).map_or(0.0, kg);
        let wanted = match self.capacities.get(exercise.slug.as_ref())? {
            Capacity::Max { kg, slope } => {
                let reps = match asked.how_many {
                    HowMany::Reps(range) => f64::from(range.from + range.to) / 2.0,
                    HowMany::Open { at_least, .. } => f64::from(at_least) + 2.0,
                    HowMany::Seconds(_) | HowMany::Metres(_) => 10.0,
                };
                let left =
                    asked.target.map_or(model::LEFT_MEANT, |target| reps_of(target.left.from))
                        + for_later(asked.sets);
                let strength = self.body.strength(exercise, self.person.answers) * self.day;
                let slope = slope * self.person.enduring;
                let share = 1.0 / (1.0 + (reps + left - 1.0).max(0.0) / slope);
                // A climb begins well below its top.
                let share =
                    if matches!(call.flow, Flow::Climb { .. }) { 0.85 * share } else { share };
                kg * strength * share * self.chance.factor(model::FOUND_DEVIATION)
            }
            // What is held or carried is no limit here: a load to walk with.
            Capacity::Seconds(_) | Capacity::Metres(_) | Capacity::Reps(_) => {
                0.3 * self.person.body_kg * self.person.strong
            }
        };
        let figure = wanted - body_kg;
        let asked = if figure < 0.0 {
            Mass::ZERO.checked_sub(halves(-figure)).unwrap_or_default()
        } else {
            halves(figure)
        };
        let (figure, _) = made(self.stage.gym, implement, *counting, asked).ok()?;
        Some((figure, kg(figure) + body_kg))
    }

    /// What the lifter makes of a part.
    fn work(
        &mut self,
        exercise: &Exercise,
        asked: &Asked,
        moved: Option<f64>,
        cursor: &Cursor,
        pause: f64,
        on: &mut Followed<'_>,
    ) -> Work {
        if cursor.part == 0 {
            on.spent = 0.0;
            on.judgement = Some(Judgement::of(&self.person, &mut self.chance));
        } else {
            on.spent *= 1.0 - model::PAUSE_GIVES * (1.0 - libm::exp(-pause / model::PAUSE_SECONDS));
        }
        let strength = self.body.strength(exercise, self.person.answers) * self.day;
        let capacity = self.capacities.get(exercise.slug.as_ref()).copied();
        if let HowMany::Seconds(_) | HowMany::Metres(_) = asked.how_many {
            let possible = match capacity {
                Some(Capacity::Seconds(possible) | Capacity::Metres(possible)) => possible,
                _ => 40.0,
            };
            let possible = possible * strength * strength;
            let came = effort::lasting(asked.how_many, possible);
            let (seconds, done) = match came.amount {
                Amount::Seconds(seconds) => {
                    (f64::from(seconds.count()), f64::from(seconds.count()))
                }
                Amount::Metres(metres) => {
                    let metres = f64::from(metres.millimetres()) / 1_000.0;
                    (metres / model::WALK, metres)
                }
                Amount::Reps(_) => (0.0, 0.0),
            };
            let fresh = possible;
            return Work { came, seconds, taken: done / possible.max(1.0), fresh };
        }
        let fresh = match (capacity, moved) {
            (Some(Capacity::Max { kg, slope }), Some(moved)) => {
                reps_at(moved / (kg * strength), slope, self.person.enduring)
            }
            (Some(Capacity::Reps(reps)), _) => 1.0 + (reps - 1.0) * strength,
            // Nothing is known of what it weighs: as called.
            _ => f64::from(asked.how_many.as_called().reps().unwrap_or(10)) + 3.0,
        };
        let speed = exercise.movement.is_speed_work();
        let possible = if speed { fresh.max(30.0) } else { (fresh - on.spent).max(0.0) };
        let judgement = on.judgement.unwrap_or(Judgement::of(&self.person, &mut self.chance));
        // Blocks of a cluster are not taken near failure, and speed work not judged at all.
        let came = effort::reps(asked, possible, judgement);
        let reps = f64::from(came.amount.reps().unwrap_or(0));
        on.spent += reps;
        let failed = came.ending == Ending::Failed;
        let taken =
            if failed { 1.1 } else { 1.0 - came.left / possible.max(came.left + 1.0).max(1.0) };
        Work { came, seconds: reps * asked.a_rep, taken: if speed { 0.1 } else { taken }, fresh }
    }

    /// What the session leaves: history, maxes, what is followed.
    fn leave_behind(&mut self, run: &Run, number: u32, date: Date, on: &Followed<'_>) {
        let stage = self.stage;
        let rows = history::rows(Some(run), stage.catalogue, stage.plan.hard_at_left);
        let volume = rows.session.and_then(|row| row.outcome).map(|outcome| outcome.volume);
        if let Some(week) = self.out.volume.get_mut(date.week) {
            for row in volume.into_iter().flatten() {
                if let Some(sum) = week.get_mut(row.muscle as usize) {
                    *sum += row.tally.sets.and(row.tally.under_six).both().halves();
                }
            }
        }
        let sets: Vec<DoneSet> = rows.sets.values().map(|set| DoneSet::clone(set)).collect();
        for (id, entry) in &run.entries {
            if entry.entry.stands_in_for.is_some() || entry.swapped_for.is_some() {
                continue;
            }
            self.out.seen.extend(on.seen(*id, number, &sets, entry, &self.said));
        }
        if let Some(all) = &mut self.out.sets {
            all.extend(sets.iter().filter(|set| set.is_work()).map(|set| {
                let entry = on.entry(set.key.set.entry).filter(|own| own.exercise == set.exercise);
                let rule = entry.and_then(|own| own.next.first()).map(|rule| rule.kind);
                Done { place: (date.week, date.index), rule, set: set.clone() }
            }));
        }
        // Settled when it is over, as on a device.
        self.lifter.desk.settle(run);
        let desk = &self.lifter.desk;
        let rows = desk.plan.as_ref().map(|plan| plan.rows.as_slice()).unwrap_or_default();
        let catalogue = stage.catalogue;
        let ground = Ground { owners: &desk.owners, catalogue, rows, late: false };
        let outcomes = settle(run, &sets, &ground);
        for outcome in outcomes.iter().filter(|outcome| !outcome.silent) {
            self.said.insert(outcome.owner.clone(), outcome.why);
        }
        let decided = DeskEvent::Decided { session: run.session, day: date.day, outcomes };
        self.lifter.desk.apply(0, &decided);
        let mut by_exercise: BTreeMap<String, Vec<DoneSet>> = BTreeMap::new();
        for set in sets {
            by_exercise.entry(set.exercise.clone()).or_default().push(set);
        }
        for (exercise, sets) in by_exercise {
            let past = self.lifter.past.entry(exercise).or_default();
            past.insert(0, Past { day: date.day, sets });
        }
    }
}

/// Takes the warm-up sets off a sheet, and says how many seconds they take.
fn without_ramps(sheet: &mut Sheet, whole: u64) -> u64 {
    for entry in sheet.blocks.iter_mut().flat_map(|block| &mut block.entries) {
        entry.calls.retain(|call| call.kind != SetKind::Ramp);
    }
    for block in &mut sheet.blocks {
        block.entries.retain(|entry| !entry.calls.is_empty());
    }
    sheet.blocks.retain(|block| !block.entries.is_empty());
    whole.saturating_sub(prescribe::duration(sheet).total())
}

fn reading(wall_ms: i64) -> Reading {
    Reading { wall_ms, offset_minutes: 0, boot_ms: None, boot_id: None }
}

/// A session under way, and the clock on the wall.
struct Floor {
    state: State,
    at: Reading,
    seq: u64,
    refused: u32,
    place: (usize, usize),
    /// What was tapped, where it is asked for.
    taps: Option<Vec<Tap>>,
}

impl Floor {
    fn run(&self) -> Option<&Run> {
        self.state.running()
    }

    fn wait(&mut self, seconds: f64) {
        self.at.wall_ms += libm::rint(seconds.max(0.0) * 1_000.0) as i64;
    }

    /// One tap; whether it was taken.
    fn tap(&mut self, command: &Command) -> bool {
        match decide(&self.state, command, &self.at) {
            Ok(events) => {
                let load = self.run().and_then(|run| run.load_at(&run.cursor()?)?.figure);
                let (at, place) = (self.at.clone(), self.place);
                if let Some(taps) = &mut self.taps {
                    taps.push(Tap { at, place, command: command.clone(), load });
                }
                let tap = self.seq;
                for event in events {
                    self.state.apply(Stamped { seq: self.seq, tap, at: self.at.clone(), event });
                    self.seq += 1;
                }
                true
            }
            Err(Refusal::NothingLeftOf) => true,
            Err(_) => {
                self.refused += 1;
                false
            }
        }
    }
}

/// What one part came to.
struct Work {
    came: effort::Came,
    seconds: f64,
    /// Share of what there was to give.
    taken: f64,
    /// Repetitions to failure without what the set itself had cost before.
    fresh: f64,
}

/// What is followed through a session.
struct Followed<'a> {
    plan: &'a WeekSession,
    /// Repetitions spent in the set that is under way.
    spent: f64,
    judgement: Option<Judgement>,
    /// Of an exercise's first row: whether its first set could not be done as asked even fresh, and
    /// whether its last left far more than was asked.
    weight: BTreeMap<EntryId, (bool, bool)>,
}

impl<'a> Followed<'a> {
    fn of(plan: &'a WeekSession) -> Self {
        Self { plan, spent: 0.0, judgement: None, weight: BTreeMap::new() }
    }

    /// The exercise as the plan has it; none for one that stands in.
    fn entry(&self, id: EntryId) -> Option<&'a Entry> {
        self.plan.exercises.get(usize::from(id.0))
    }

    /// Whether the exercise's rule looks at how far the last set goes.
    fn two_for_two(&self, id: EntryId) -> bool {
        let rules = self.entry(id).map(|entry| entry.next.as_slice()).unwrap_or_default();
        rules.iter().any(|rule| rule.kind == RuleKind::TwoForTwo)
    }

    /// The number of the exercise's first row.
    fn first_row(&self, id: EntryId) -> Option<u16> {
        u16::try_from(self.entry(id)?.blocks.first()?.line).ok()
    }

    fn worked(&mut self, cursor: &Cursor, call: &Call, work: &Work, asked: &Asked) {
        let id = cursor.set.entry;
        if cursor.part > 0 || self.first_row(id) != Some(call.row) {
            return;
        }
        let least = match asked.how_many {
            HowMany::Reps(range) => f64::from(range.from),
            HowMany::Open { at_least, .. } => f64::from(at_least),
            HowMany::Seconds(_) | HowMany::Metres(_) => 0.0,
        };
        // Where no effort is asked there is nothing to be too light for.
        let enough = asked.target.map(|target| reps_of(target.left.to));
        let light = least > 0.0
            && enough.is_some_and(|enough| work.came.left >= enough + model::FAR_MORE_LEFT);
        let heavy = self.weight.get(&id).map_or(work.fresh < least, |(heavy, _)| *heavy);
        self.weight.insert(id, (heavy, light));
    }

    /// The exercise's first row as it was done.
    fn seen(
        &self,
        id: EntryId,
        date: u32,
        sets: &[DoneSet],
        run: &EntryRun,
        said: &BTreeMap<Owner, Why>,
    ) -> Option<Seen> {
        let row = self.first_row(id)?;
        let of_row = |set: &&DoneSet| set.is_work() && set.key.set.entry == id && set.row == row;
        let done: Vec<_> = sets.iter().filter(of_row).collect();
        let count = u32::try_from(done.len()).ok().filter(|count| *count > 0)?;
        let all: u32 = done.iter().map(|set| hundredths(set.amount())).sum();
        let terms = run.entry.terms.iter().find(|terms| terms.row == row);
        let found = terms.and_then(|terms| said.get(&terms.track).copied());
        // As the rules read it: a cluster's blocks together, of any other set the first part.
        let block = self.entry(id)?.blocks.first()?;
        let all_parts = block
            .sets
            .first()
            .is_some_and(|set| matches!(set.structure, Structure::Cluster { .. }));
        let reached = |set: &&DoneSet| {
            let first = set.parts.first().map_or_else(|| set.amount(), |part| part.amount);
            set.asked.reached_by(&if all_parts { set.amount() } else { first })
        };
        let (too_heavy, too_light) = self.weight.get(&id).copied().unwrap_or_default();
        Some(Seen {
            date,
            slot: u16::try_from(self.entry(id)?.slot).ok()?,
            found,
            load: done.iter().filter_map(|set| set.figure).max(),
            each: all / count,
            missed: !done.iter().all(reached),
            too_heavy,
            too_light,
        })
    }
}

/// An amount in hundredths of its unit.
fn hundredths(amount: Amount) -> u32 {
    match amount {
        Amount::Reps(reps) => u32::from(reps) * 100,
        Amount::Seconds(seconds) => seconds.count().saturating_mul(100),
        Amount::Metres(metres) => metres.millimetres() / 10,
    }
}
