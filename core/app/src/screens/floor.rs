//! The floor: the bar, the call, the thumb.

use barwright_domain::call::{Amount, Flow, HowMany, Structure};
use barwright_domain::history::{DoneSet, SetKey};
use barwright_domain::progress::pace::PaceFit;
use barwright_domain::quantity::{Distance, Numerals, Reps, Reserve, Seconds};
use barwright_domain::session::{
    Cursor, Done, Ending, Event, Passed, Reading, Run, SetId, SetKind, SetRun,
};

use super::key::{does, drafts, opens};
use super::{bar, panel};
use crate::contract::{
    Beat, CallZone, Draft, EffortKey, Figure, FloorScreen, HowEnded, Intent, Key, RunningRest,
    ThumbZone,
};
use crate::engine::{Core, cursor_of, part_name};
use crate::phrase::en::{self, cautions, words};
use crate::today;

/// The floor of a running session.
pub(super) fn screen(core: &Core, run: &Run, draft: &Draft, at: &Reading) -> FloorScreen {
    let numerals = core.locale.numerals;
    let cursor = run.cursor();
    let bar = bar::zone(run, cursor.as_ref(), numerals);
    let call = call_zone(run, cursor.as_ref(), numerals);
    let correcting = draft.correct.as_deref().and_then(|name| Correcting::of(run, name));
    let thumb = match (&correcting, &cursor) {
        (Some(correcting), _) => correcting.zone(draft, numerals),
        (None, Some(cursor)) => recording(core, run, cursor, draft, at),
        (None, None) => nothing_left(core),
    };
    let rest = rest_view(run, at);
    let mut notices = notices(core, run, at);
    notices.extend(slowed(core, run));
    notices.extend(lacking(run, cursor.as_ref()));
    let aloud = aloud(&bar.total, &call, rest.as_ref(), &notices);
    FloorScreen {
        title: run.sheet.title.clone(),
        part: cursor.as_ref().map(part_name),
        panel: panel::open(core, run, cursor.as_ref(), draft, at),
        bar,
        call,
        thumb,
        rest,
        beats: beats(run, cursor.as_ref()),
        notices,
        aloud,
    }
}

fn call_zone(run: &Run, cursor: Option<&Cursor>, numerals: Numerals) -> CallZone {
    let to_go = en::floor::to_go(run);
    let current = cursor.and_then(|cursor| {
        Some((cursor, run.entries.get(&cursor.set.entry)?, run.set(cursor.set)?))
    });
    let Some((cursor, entry, set)) = current else {
        return CallZone {
            exercise: String::new(),
            sentence: en::floor::NOTHING_LEFT.to_owned(),
            last: String::new(),
            manner: Vec::new(),
            set_up: Vec::new(),
            cues: Vec::new(),
            cautions: Vec::new(),
            why: Vec::new(),
            to_go,
        };
    };
    let first = !entry.sets.iter().any(SetRun::begun);
    CallZone {
        exercise: entry.entry.name.clone(),
        sentence: en::floor::sentence(run, cursor, numerals),
        last: entry
            .entry
            .last
            .as_ref()
            .map(|last| en::floor::last_time(last, run.equipment.unit, numerals))
            .unwrap_or_default(),
        manner: en::floor::manner(entry, set),
        set_up: if first { entry.set_up.clone() } else { Vec::new() },
        cues: set.call.manner.cues.clone(),
        cautions: cautions::before_set(entry, set),
        why: en::reason::lines(&set.call.reason, run.equipment.unit, numerals),
        to_go,
    }
}

/// How much one press moves a figure, and the figure itself.
fn step_and_number(amount: &Amount) -> (u32, u32) {
    match amount {
        Amount::Reps(reps) => (1, u32::from(*reps)),
        Amount::Seconds(seconds) => (5, seconds.count()),
        Amount::Metres(distance) => (5_000, distance.millimetres()),
    }
}

/// An amount of the kind of another.
fn like(amount: &Amount, number: u32) -> Amount {
    match amount {
        Amount::Reps(_) => Amount::Reps(Reps::try_from(number).unwrap_or(Reps::MAX)),
        Amount::Seconds(_) => Amount::Seconds(Seconds::new(number)),
        Amount::Metres(_) => Amount::Metres(Distance::from_millimetres(number)),
    }
}

/// The amount a draft shows: what was entered, or what is as called or as it runs.
pub(super) fn shown(run: &Run, cursor: &Cursor, draft: &Draft, at: &Reading) -> Option<Amount> {
    let asked = run.how_many_at(cursor)?;
    if let Some(number) = draft.amount {
        return Some(like(&asked.as_called(), number));
    }
    let holds = matches!(asked, HowMany::Seconds(_));
    Some(match run.started.as_ref().filter(|(set, _)| holds && *set == cursor.set) {
        Some((_, started)) => {
            let seconds = Passed::between(started, at).ms() / 1000;
            Amount::Seconds(Seconds::new(u32::try_from(seconds).unwrap_or(u32::MAX)))
        }
        None => run.as_called_at(cursor)?,
    })
}

/// The big figure with a step either way, which keep what else is being entered.
pub(super) fn figure(amount: &Amount, draft: &Draft, numerals: Numerals) -> Figure {
    let (by, now) = step_and_number(amount);
    let to = |number: u32| Draft { amount: Some(number), ..draft.clone() };
    let (less, more) = (now.saturating_sub(by), now.saturating_add(by));
    let aloud = |number| words::amount(&like(amount, number), numerals);
    Figure {
        text: words::figure(amount, numerals),
        unit: words::unit(amount).to_owned(),
        down: drafts("down", "−", to(less))
            .says(format!("Down to {}", aloud(less)))
            .enabled(now > 0),
        up: drafts("up", "+", to(more)).says(format!("Up to {}", aloud(more))),
        next_change_ms: None,
    }
}

/// Milliseconds until the figure of a running hold changes; none for a figure that stands still.
fn next_change_ms(run: &Run, cursor: &Cursor, draft: &Draft, at: &Reading) -> Option<i64> {
    let holds = matches!(run.how_many_at(cursor), Some(HowMany::Seconds(_)));
    let (_, started) = run.started.as_ref().filter(|(set, _)| holds && *set == cursor.set)?;
    let passed = Passed::between(started, at).ms();
    draft.amount.is_none().then(|| 1000 - passed.rem_euclid(1000))
}

/// The thumb zone that records the current part.
fn recording(core: &Core, run: &Run, cursor: &Cursor, draft: &Draft, at: &Reading) -> ThumbZone {
    let numerals = core.locale.numerals;
    let parts = run.set(cursor.set).zip(run.how_many_at(cursor)).zip(shown(run, cursor, draft, at));
    let Some(((set, asked), amount)) = parts else { return nothing_left(core) };
    if run.paused.is_some() {
        let resume = does("resume", "Go on", Intent::Resume);
        return ThumbZone { main: Some(resume), ..bare(core) };
    }
    let waits = waits_for_start(run, cursor, set, &asked);
    if waits == Waits::Clock {
        let start = does("start", "Start the clock", Intent::Start)
            .says("Start the first set; every further one starts by the clock");
        return ThumbZone { main: Some(start), ..bare(core) };
    }
    let record = |left_halves: Option<u8>, last: bool| Intent::Record {
        part: Some(part_name(cursor)),
        // What is as called stays unsaid, so that a hold is measured and not guessed.
        amount: draft.amount,
        left_halves,
        ended: HowEnded::AsCalled,
        helped: draft.helped,
        last,
    };
    let said = words::amount(&amount, numerals);
    let next = next_part(run, cursor, set, numerals);
    let mut beside = Vec::new();
    if waits == Waits::Hold {
        beside
            .push(does("start", "Start the hold", Intent::Start).says("Measure the hold from now"));
    }
    if next.is_some() && cursor.part > 0 {
        beside.push(
            does("short", "Short: set over", record(None, true))
                .says(format!("Record {said} as the last part of the set")),
        );
    }
    let figure = Figure {
        next_change_ms: next_change_ms(run, cursor, draft, at),
        ..figure(&amount, draft, numerals)
    };
    let zone = ThumbZone { figure: Some(figure), ..bare(core) };
    let asks = run.effort_at(cursor.set).is_some() && set.call.kind != SetKind::Ramp;
    if asks && next.is_none() {
        let effort = effort_keys(&said, numerals, |halves| record(Some(halves), false));
        beside.push(
            does("uncalled", "Racked, no call", record(None, false))
                .says(format!("Record {said} without a judgement of effort")),
        );
        return ThumbZone { prompt: en::floor::PROMPT.to_owned(), effort, beside, ..zone };
    }
    let label = en::floor::main_key(set, cursor.part, &asked, next.as_deref());
    let main = does("record", label, record(None, false)).says(format!("Record {said}"));
    ThumbZone { main: Some(main), beside, ..zone }
}

/// Keys for nothing to five and more left, halves behind a long press.
fn effort_keys(said: &str, numerals: Numerals, intent: impl Fn(u8) -> Intent) -> Vec<EffortKey> {
    let key = |halves: u8, left: Reserve, id: String, label: String| {
        does(id, label, intent(halves)).says(en::floor::effort_says(left, said, numerals))
    };
    (0..=5_u8)
        .filter_map(|left| {
            let whole = Reserve::from_halves(left * 2)?;
            let label = if left == 5 { "5+".to_owned() } else { left.to_string() };
            let half = Reserve::from_halves(left * 2 + 1).filter(|_| left < 5);
            Some(EffortKey {
                key: key(left * 2, whole, format!("left-{left}"), label),
                half: half.map(|half| {
                    key(left * 2 + 1, half, format!("left-{left}-half"), half.print(numerals))
                }),
            })
        })
        .collect()
}

/// What has to start before it can be over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Waits {
    Nothing,
    Clock,
    Hold,
}

fn waits_for_start(run: &Run, cursor: &Cursor, set: &SetRun, asked: &HowMany) -> Waits {
    let started = run.started.as_ref().is_some_and(|(of, _)| *of == cursor.set);
    if started || set.begun() {
        Waits::Nothing
    } else if matches!(set.call.flow, Flow::Clock { .. }) && set.call.round == 1 {
        Waits::Clock
    } else if matches!(asked, HowMany::Seconds(_)) {
        Waits::Hold
    } else {
        Waits::Nothing
    }
}

/// What the next part of the set asks, when one follows this one as called.
fn next_part(run: &Run, cursor: &Cursor, set: &SetRun, numerals: Numerals) -> Option<String> {
    let more = run.part_after(cursor)?;
    match &set.call.structure {
        Structure::Drop { .. } => {
            let load = run.load_after(cursor)?;
            Some(bar::total(load, run.equipment.unit, numerals))
        }
        _ => Some(words::how_many_short(&more, numerals)),
    }
}

/// What every thumb zone has: the other endings, undo, and what is seldom needed.
fn bare(core: &Core) -> ThumbZone {
    let (undo, redo) = undo_keys(core);
    let pending =
        core.state.running().is_some_and(|run| run.cursor().is_some() && run.paused.is_none());
    ThumbZone {
        figure: None,
        prompt: String::new(),
        effort: Vec::new(),
        main: None,
        beside: Vec::new(),
        ended: pending.then(|| opens("ended", "It ended otherwise…", "ended")),
        undo,
        redo,
        more: Some(opens("more", "More…", "more")),
    }
}

fn nothing_left(core: &Core) -> ThumbZone {
    ThumbZone { main: Some(does("finish", "Finish the session", Intent::Finish)), ..bare(core) }
}

/// Undo and redo, where there is something to take back or to bring back.
pub(super) fn undo_keys(core: &Core) -> (Option<Key>, Option<Key>) {
    let undo = || does("undo", "Undo", Intent::Undo).says("Take the last tap back");
    let redo = || does("redo", "Redo", Intent::Redo).says("Bring back what was taken back");
    (core.state.can_undo().then(undo), core.state.can_redo().then(redo))
}

/// An earlier part that is put right.
struct Correcting<'a> {
    name: &'a str,
    done: &'a Done,
    effort: bool,
}

impl<'a> Correcting<'a> {
    fn of(run: &'a Run, name: &'a str) -> Option<Self> {
        let cursor = cursor_of(name)?;
        let set = run.set(cursor.set)?;
        let part = set.parts.get(usize::from(cursor.part))?;
        Some(Self { name, done: &part.done, effort: set.call.effort.is_some() })
    }

    fn zone(&self, draft: &Draft, numerals: Numerals) -> ThumbZone {
        let amount =
            draft.amount.map_or(self.done.amount, |number| like(&self.done.amount, number));
        let said = words::amount(&amount, numerals);
        let correct = |left_halves: Option<u8>| Intent::Correct {
            part: self.name.to_owned(),
            amount: draft.amount,
            load: draft.load.clone(),
            left_halves,
            ended: ended(self.done.ending),
            helped: u32::from(self.done.helped),
        };
        let keep = self.done.left.map(Reserve::halves);
        ThumbZone {
            figure: Some(figure(&amount, draft, numerals)),
            prompt: if self.effort { "Really left in you:".to_owned() } else { String::new() },
            effort: if self.effort {
                effort_keys(&said, numerals, |halves| correct(Some(halves)))
            } else {
                Vec::new()
            },
            main: Some(does("correct", "Put right", correct(keep)).says(format!("It was {said}"))),
            beside: vec![drafts("leave", "Leave as it was", Draft::default())],
            ended: None,
            undo: None,
            redo: None,
            more: None,
        }
    }
}

fn ended(ending: Ending) -> HowEnded {
    match ending {
        Ending::AsCalled => HowEnded::AsCalled,
        Ending::Failed => HowEnded::Failed,
        Ending::Form => HowEnded::Form,
        Ending::Pain => HowEnded::Pain,
        Ending::Interrupted => HowEnded::Interrupted,
        Ending::Equipment => HowEnded::Equipment,
    }
}

fn rest_view(run: &Run, at: &Reading) -> Option<RunningRest> {
    let rest = run.rest.as_ref().filter(|_| run.paused.is_none())?;
    let left_ms = rest.standing(Some(&run.seen), at).left_ms;
    let over = left_ms <= 0;
    // The figures change when the next whole second is passed.
    let next_change_ms = match left_ms.rem_euclid(1000) {
        0 => 1000,
        part => part,
    };
    let step = i32::try_from(run.sheet.rest_step.count()).unwrap_or(20);
    let same_boot = rest.began.boot_id.is_some() && rest.began.boot_id == at.boot_id;
    Some(RunningRest {
        label: en::floor::rest_label(rest.kind).to_owned(),
        left_ms,
        text: words::countdown(left_ms),
        over,
        next_change_ms,
        deadline_wall_ms: at.wall_ms.saturating_add(left_ms),
        deadline_boot_ms: rest.deadline_boot_ms().filter(|_| same_boot),
        shorter: does("shorter", format!("−{step} s"), Intent::RestBy { seconds: -step })
            .says(format!("{step} seconds shorter"))
            .enabled(!over),
        longer: does("longer", format!("+{step} s"), Intent::RestBy { seconds: step })
            .says(format!("{step} seconds longer")),
    })
}

/// While resting after a set that a partner tapped: how it slowed, and what the lifter's own calls
/// make of that.
fn slowed(core: &Core, run: &Run) -> Vec<String> {
    if run.rest.is_none() || run.paused.is_some() {
        return Vec::new();
    }
    let parts = run.entries.iter().flat_map(|(id, entry)| {
        let sets = (0_u16..).zip(&entry.sets);
        sets.flat_map(move |(at, set)| {
            let id = SetId { entry: *id, set: at };
            set.parts.iter().map(move |part| (id, entry, part))
        })
    });
    let last = parts.max_by_key(|(_, _, part)| part.at.wall_ms);
    let Some((id, entry, part)) = last else { return Vec::new() };
    let Some(slowing) = part.slowing() else { return Vec::new() };
    let mut lines = vec![en::pace::slowed(slowing)];
    // Where no effort is asked for, there are no calls to make anything of.
    if run.set(id).is_none_or(|set| set.call.effort.is_none()) {
        return lines;
    }
    let exercise = &entry.entry.exercise;
    let past = today::past_sets(core, exercise, PACE_SESSIONS).unwrap_or_default();
    // The newest session comes first; the fit wants the latest set last. The set itself says nothing
    // of itself.
    let key = SetKey { session: run.session, set: id };
    let mut sets: Vec<_> = past.iter().filter(|set| set.key != key).collect();
    sets.sort_by_key(|set| set.key);
    let points: Vec<_> = sets.into_iter().filter_map(DoneSet::pace).collect();
    let estimate = PaceFit::of(&points).map(|fit| fit.estimate(slowing));
    lines.push(en::pace::estimate(estimate, points.len(), core.locale.numerals));
    lines
}

/// Sessions that a fit of pace looks back over.
const PACE_SESSIONS: u32 = 60;

/// The beats of a repetition of the set that is on.
fn beats(run: &Run, cursor: Option<&Cursor>) -> Vec<Beat> {
    let tempo = cursor.and_then(|cursor| run.set(cursor.set)?.call.manner.tempo);
    let beats = tempo.map(en::pace::beats).unwrap_or_default();
    beats.into_iter().map(|(says, ms)| Beat { says: says.to_owned(), ms }).collect()
}

/// What a lifter must know now.
fn notices(core: &Core, run: &Run, at: &Reading) -> Vec<String> {
    let standing = run.rest.as_ref().map(|rest| rest.standing(Some(&run.seen), at));
    // A shell that woke the core had the rest put on the clock there is now; that stays said.
    let rebased = run.rest.as_ref().and_then(|now| {
        core.state.log().iter().rev().find_map(|stamped| match &stamped.event {
            Event::RestRebased { was, rest } if rest == now => {
                Some(was.began.boot_id != rest.began.boot_id)
            }
            _ => None,
        })
    });
    let restarted = standing.is_some_and(|rest| rest.restarted) || rebased == Some(true);
    let back = standing.is_some_and(|rest| rest.clock_went_back) || rebased == Some(false);
    [
        run.paused.as_ref().map(|_| en::floor::PAUSED),
        restarted.then_some(en::floor::RESTARTED),
        back.then_some(en::floor::CLOCK_WENT_BACK),
    ]
    .into_iter()
    .flatten()
    .map(str::to_owned)
    .collect()
}

/// What the gym lacks for the exercise that is on, before its first set, and what is done instead.
fn lacking(run: &Run, cursor: Option<&Cursor>) -> Option<String> {
    let entry = run.entries.get(&cursor?.set.entry)?;
    let lacks = &entry.entry.lacks;
    if lacks.is_empty() || entry.sets.iter().any(SetRun::begun) {
        return None;
    }
    let instead = entry.entry.instead.iter().find(|substitute| substitute.possible);
    Some(en::floor::lacking(lacks, instead.map(|substitute| substitute.name.as_str())))
}

fn aloud(total: &str, call: &CallZone, rest: Option<&RunningRest>, notices: &[String]) -> String {
    let mut lines: Vec<String> = notices.to_vec();
    if let Some(rest) = rest {
        lines.push(if rest.over {
            format!("{} over.", rest.label)
        } else {
            format!("{}, {} to go.", rest.label, rest.text)
        });
    }
    if !call.exercise.is_empty() {
        let load = if total.is_empty() { String::new() } else { format!(", {total}") };
        lines.push(format!("{}{load}.", call.exercise));
    }
    lines.push(call.sentence.clone());
    lines.extend(call.cautions.iter().cloned());
    lines.join(" ")
}
