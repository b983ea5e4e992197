//! The floor: the bar, the call, the thumb.

use barwright_domain::call::{Amount, EffortScale, Flow, HowMany, Structure};
use barwright_domain::history::{DoneSet, SetKey};
use barwright_domain::progress::pace::PaceFit;
use barwright_domain::quantity::Reserve;
use barwright_domain::session::{
    Cursor, Ending, EntryRun, Event, Load, Offer, PartRun, Reading, Run, SetId, SetKind, SetRun,
};

use super::hand::{Floor, NEAR, figure, holds, like, racks, shown};
use super::key::{drafts, opens, taps};
use super::row::why;
use super::{bar, guard, name, panel};
use crate::contract::{
    Beat, CallZone, Draft, EffortKey, Figure, FloorScreen, HowEnded, Intent, Key, Look,
    RunningRest, ThumbZone,
};
use crate::facts::{Held, part};
use crate::phrase::Words;

/// The floor of a running session.
pub(super) fn screen(
    held: &Held,
    run: &Run,
    draft: &Draft,
    at: &Reading,
    words: Words,
) -> FloorScreen {
    let floor = Floor { held, run, draft, at, words };
    let cursor = run.cursor();
    let bar = bar::zone(run, cursor.as_ref(), words);
    let mut call = call_zone(&floor, cursor.as_ref());
    let correcting = draft.correct.as_deref().and_then(|name| Correcting::of(run, name));
    if let Some(correcting) = &correcting {
        // What is corrected is named, where the next call would stand.
        call = CallZone { to_go: call.to_go, ..correcting.call(&floor) };
    }
    let thumb = match (&correcting, &cursor) {
        (Some(correcting), _) => correcting.zone(&floor),
        (None, Some(cursor)) => recording(&floor, cursor),
        (None, None) => nothing_left(&floor),
    };
    let rest = rest_view(&floor);
    let mut notices = notices(&floor);
    notices.extend(slowed(&floor));
    notices.extend(lacking(&floor, cursor.as_ref()));
    notices.extend(run.paper.then(|| words.change().paper(&words.date().in_full(run.day))));
    let aloud = aloud(&bar.total, &call, rest.as_ref(), &notices, words);
    FloorScreen {
        title: run.sheet.title.clone(),
        part: cursor.as_ref().map(|cursor| part::name(run, cursor)),
        panel: panel::open(&floor, cursor.as_ref()),
        bar,
        call,
        thumb,
        rest,
        beats: beats(run, cursor.as_ref(), words),
        notices,
        aloud,
    }
}

fn call_zone(floor: &Floor<'_>, cursor: Option<&Cursor>) -> CallZone {
    let Floor { held, run, words, .. } = floor;
    let (say, unit, numerals) = (words.floor(), run.equipment.unit, words.numerals);
    let to_go = say.to_go(run);
    let current = cursor.and_then(|cursor| {
        Some((cursor, run.entries.get(&cursor.set.entry)?, run.set(cursor.set)?))
    });
    let Some((cursor, entry, set)) = current else {
        return CallZone { to_go, ..said(String::new(), say.nothing_left().to_owned()) };
    };
    let scale = scale(run, cursor);
    let first = !entry.sets.iter().any(SetRun::begun);
    let geared = run
        .load_at(cursor)
        .and_then(|load| words.bar().geared(load, bar::ratio(run, load)?, unit, numerals));
    let last = entry.entry.last.as_ref();
    CallZone {
        exercise: name::entry(held, entry, *words),
        sentence: say.sentence(run, cursor, numerals),
        last: last.map(|last| say.last_time(last, scale, unit, numerals)).unwrap_or_default(),
        manner: say.manner(entry, set),
        set_up: if first { name::set_up(&entry.set_up, *words) } else { Vec::new() },
        cues: set.call.manner.cues.clone(),
        cautions: guard::before_set(held, entry, set, *words),
        why: why(held, &entry.entry, &set.call, unit, *words).into_iter().chain(geared).collect(),
        to_go,
    }
}

/// An exercise and a sentence alone.
fn said(exercise: String, sentence: String) -> CallZone {
    CallZone {
        exercise,
        sentence,
        last: String::new(),
        manner: Vec::new(),
        set_up: Vec::new(),
        cues: Vec::new(),
        cautions: Vec::new(),
        why: Vec::new(),
        to_go: String::new(),
    }
}

/// The scale in which the plan asks for the effort of the set that is on.
fn scale(run: &Run, cursor: &Cursor) -> EffortScale {
    run.effort_at(cursor.set).map(|target| target.scale).unwrap_or_default()
}

/// The thumb zone that records the current part.
fn recording(floor: &Floor<'_>, cursor: &Cursor) -> ThumbZone {
    let Floor { held, run, draft, words, .. } = floor;
    let (say, numerals) = (words.floor(), words.numerals);
    let parts = run.set(cursor.set).zip(run.how_many_at(cursor)).zip(shown(floor, cursor));
    let Some(((set, asked), amount)) = parts else { return nothing_left(floor) };
    if run.paused.is_some() {
        let resume = taps(run, "resume", say.resume(), Intent::Resume);
        return ThumbZone { main: Some(resume), ..bare(floor) };
    }
    let waits = waits_for_start(run, cursor, set, &asked);
    if waits == Waits::Clock && !run.paper {
        let start = taps(run, "start", say.start_clock(), Intent::Start);
        return ThumbZone { main: Some(start), ..bare(floor) };
    }
    let record = |left_halves: Option<u8>, last: bool| Intent::Record {
        part: Some(part::name(run, cursor)),
        // What is as called stays unsaid, so that a hold is measured and not guessed.
        amount: draft.amount,
        left_halves,
        ended: HowEnded::AsCalled,
        helped: draft.helped,
        last,
    };
    let said = words.words().amount(&amount, numerals);
    let next = next_part(run, cursor, set, *words);
    let mut beside = offered(floor);
    if run.paper {
        let name = run.entries.get(&cursor.set.entry).map(|of| name::entry(floor.held, of, *words));
        let entry = Some(u32::from(cursor.set.entry.0));
        let said = words.change().as_called(&name.unwrap_or_default());
        beside.push(taps(run, "as-called", said, Intent::AllAsCalled { entry }));
    } else if waits == Waits::Hold {
        beside.push(taps(run, "start", say.start_hold(), Intent::Start));
    }
    if next.is_some() && cursor.part > 0 {
        beside.push(taps(run, "short", say.short(&said), record(None, true)));
    }
    if let HowMany::Open { at_least, .. } = asked {
        beside.extend(near(floor, at_least));
    }
    let runs = holds(run, cursor).is_some() && draft.amount.is_none();
    let figure = Figure { runs, ..figure(&amount, floor) };
    let zone = ThumbZone { figure: Some(figure), ..bare(floor) };
    let racks = run.entries.get(&cursor.set.entry).is_some_and(|entry| racks(held, entry));
    let asks = run.effort_at(cursor.set).is_some() && set.call.kind != SetKind::Ramp;
    if asks && next.is_none() {
        let scale = scale(run, cursor);
        let effort = effort_keys(floor, scale, &said, |halves| record(Some(halves), false));
        beside.push(taps(run, "uncalled", say.uncalled(&said), record(None, false)));
        let prompt = say.prompt(racks, scale).to_owned();
        return ThumbZone { prompt, effort, beside, ..zone };
    }
    let label = if next.is_some() && nothing_lighter(run, cursor, set) {
        say.nothing_lighter().to_owned()
    } else {
        say.main_key(set, cursor.part, &asked, next.as_deref(), racks)
    };
    let main = taps(run, "record", (label, say.record(&said)), record(None, false));
    ThumbZone { main: Some(main), beside, ..zone }
}

/// Amounts of an open set a press away: as many as possible is seldom as many as called.
fn near(floor: &Floor<'_>, at_least: u16) -> Vec<Key> {
    let Floor { draft, words, .. } = floor;
    let more = NEAR.map(|more| u32::from(at_least).saturating_add(more));
    let keys = more.map(|amount| {
        let said = words.words().amount(&like(&Amount::Reps(0), amount), words.numerals);
        let chosen = draft.amount == Some(amount);
        let draft = Draft { amount: Some(amount), ..(*draft).clone() };
        drafts(format!("near-{amount}"), said, draft).chosen(chosen)
    });
    keys.into()
}

/// What the last set asks for at once: lighter after one that was too much, the answers to pain.
fn offered(floor: &Floor<'_>) -> Vec<Key> {
    let Floor { run, words, .. } = floor;
    let (say, unit, numerals) = (words.panel(), run.equipment.unit, words.numerals);
    let offers = run.offers().into_iter().map(|offer| match offer {
        Offer::Lighter { entry, load, .. } => {
            let label = say.lighter(&load.print(unit, numerals));
            let (entry, load) = (u32::from(entry.0), load.kilograms());
            let intent = Intent::ChangeLoad { entry, load, only_next: false, sure: true };
            taps(run, "lighter", label, intent)
        }
        Offer::Skip { entry } => {
            let intent = Intent::SkipExercise { entry: u32::from(entry.0) };
            taps(run, "leave-rest", say.leave_rest(), intent)
        }
        Offer::Pain { .. } => opens("pain", say.it_hurt(), "pain"),
    });
    offers.collect()
}

/// Keys for none to five and more in reserve, or for an RPE of five and less to ten: rising either
/// way, with the half above each behind a long press.
fn effort_keys(
    floor: &Floor<'_>,
    scale: EffortScale,
    said: &str,
    intent: impl Fn(u8) -> Intent,
) -> Vec<EffortKey> {
    let (say, numerals) = (floor.words.floor(), floor.words.numerals);
    let key = |halves: u8, most: bool| {
        let left = Reserve::from_halves(halves)?;
        let half = if halves.is_multiple_of(2) { "" } else { "-half" };
        let label = say.effort_label(left, most, scale, numerals);
        let says = say.effort_says(left, scale, said, numerals);
        let id = format!("left-{}{half}", halves / 2);
        Some(taps(floor.run, id, (label, says), intent(halves)))
    };
    let each = |left: u8| {
        // Half a repetition more in reserve, or half a point harder.
        let half = match scale {
            EffortScale::Left => Some(left * 2 + 1).filter(|_| left < 5),
            EffortScale::Rpe => (left * 2).checked_sub(1),
        };
        Some(EffortKey {
            key: key(left * 2, left == 5)?,
            half: half.and_then(|half| key(half, false)),
        })
    };
    match scale {
        EffortScale::Left => (0..=5).filter_map(each).collect(),
        EffortScale::Rpe => (0..=5).rev().filter_map(each).collect(),
    }
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
fn next_part(run: &Run, cursor: &Cursor, set: &SetRun, words: Words) -> Option<String> {
    let more = run.part_after(cursor)?;
    match &set.call.structure {
        Structure::Drop { .. } => {
            let load = run.load_after(cursor)?;
            Some(words.bar().total(load, run.equipment.unit, words.numerals))
        }
        _ => Some(words.words().how_many_short(&more, words.numerals)),
    }
}

/// Whether a drop stays at its load, for want of anything lighter here.
fn nothing_lighter(run: &Run, cursor: &Cursor, set: &SetRun) -> bool {
    let figure = |load: Option<&Load>| load.and_then(|load| load.figure);
    let next = figure(run.load_after(cursor));
    matches!(set.call.structure, Structure::Drop { .. })
        && next.is_some()
        && next == figure(run.load_at(cursor))
}

/// What every thumb zone has: the other endings, undo, and what is seldom needed.
fn bare(floor: &Floor<'_>) -> ThumbZone {
    let Floor { held, run, words, .. } = floor;
    let (undo, redo) = undo_keys(held, run, *words);
    let pending = run.cursor().is_some() && run.paused.is_none();
    ThumbZone {
        figure: None,
        prompt: String::new(),
        effort: Vec::new(),
        main: None,
        beside: Vec::new(),
        ended: pending.then(|| opens("ended", words.floor().ended(), "ended")),
        undo,
        redo,
        more: Some(opens("more", words.floor().more(), "more")),
    }
}

fn nothing_left(floor: &Floor<'_>) -> ThumbZone {
    let finish = taps(floor.run, "finish", floor.words.floor().finish(), Intent::Finish);
    ThumbZone { main: Some(finish), ..bare(floor) }
}

/// Undo and redo, where there is something to take back or to bring back.
pub(super) fn undo_keys(held: &Held, run: &Run, words: Words) -> (Option<Key>, Option<Key>) {
    let undo = || taps(run, "undo", words.floor().undo(), Intent::Undo);
    let redo = || taps(run, "redo", words.floor().redo(), Intent::Redo);
    (held.state.can_undo().then(undo), held.state.can_redo().then(redo))
}

/// An earlier part that is corrected.
struct Correcting<'a> {
    name: &'a str,
    entry: &'a EntryRun,
    set: &'a SetRun,
    part: &'a PartRun,
}

impl<'a> Correcting<'a> {
    /// None where the name is of no part, or of another session's.
    fn of(run: &'a Run, name: &'a str) -> Option<Self> {
        let (cursor, session) = part::named(name)?;
        let set = run.set(cursor.set).filter(|_| session.is_none_or(|of| of == run.session))?;
        let part = set.parts.get(usize::from(cursor.part))?;
        Some(Self { name, entry: run.entries.get(&cursor.set.entry)?, set, part })
    }

    /// Which set it is, and what it says now.
    fn call(&self, floor: &Floor<'_>) -> CallZone {
        let Floor { held, run, words, .. } = floor;
        let (unit, numerals) = (run.equipment.unit, words.numerals);
        let of = words.floor().correcting(self.entry, self.set, self.part, unit, numerals);
        said(name::entry(held, self.entry, *words), of)
    }

    fn zone(&self, floor: &Floor<'_>) -> ThumbZone {
        let Floor { run, draft, words, .. } = floor;
        let (say, done) = (words.floor(), &self.part.done);
        let amount = draft.amount.map_or(done.amount, |number| like(&done.amount, number));
        let said = words.words().amount(&amount, words.numerals);
        let correct = |left_halves: Option<u8>| Intent::Correct {
            part: self.name.to_owned(),
            amount: draft.amount,
            load: draft.load.clone(),
            sure: false,
            left_halves,
            ended: ended(done.ending),
            helped: u32::from(done.helped),
        };
        let keep = done.left.map(Reserve::halves);
        let scale = self.set.call.effort.map(|effort| effort.scale);
        ThumbZone {
            figure: Some(figure(&amount, floor)),
            prompt: scale.map(|scale| say.really_left(scale).to_owned()).unwrap_or_default(),
            effort: scale
                .map(|scale| effort_keys(floor, scale, &said, |halves| correct(Some(halves))))
                .unwrap_or_default(),
            main: Some(taps(run, "correct", say.put_right(&said), correct(keep))),
            beside: vec![drafts("leave", say.leave(), Draft::default())],
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

fn rest_view(floor: &Floor<'_>) -> Option<RunningRest> {
    let Floor { run, draft, at, words, .. } = floor;
    let rest = run.rest.as_ref().filter(|_| run.paused.is_none())?;
    let left_ms = rest.standing(Some(&run.seen), at).left_ms;
    let over = left_ms <= 0;
    let step = i32::try_from(run.sheet.rest_step.count()).unwrap_or(20);
    let same_boot = rest.began.boot_id.is_some() && rest.began.boot_id == at.boot_id;
    let say = words.floor();
    // What is being entered is about the part, not the rest before it: it stays.
    let by = |id: &str, said: (String, String), seconds| {
        let stays = Look::Floor { draft: (*draft).clone() };
        taps(run, id, said, Intent::RestBy { seconds }).then(stays)
    };
    Some(RunningRest {
        label: say.rest_label(rest.kind).to_owned(),
        left_ms,
        text: words.words().countdown(left_ms),
        over,
        deadline_wall_ms: at.wall_ms.saturating_add(left_ms),
        deadline_boot_ms: rest.deadline_boot_ms().filter(|_| same_boot),
        shorter: by("shorter", say.shorter(step), -step).enabled(!over),
        longer: by("longer", say.longer(step), step),
    })
}

/// While resting after a set that a partner tapped: how it slowed, and what the lifter's own calls
/// make of that.
fn slowed(floor: &Floor<'_>) -> Vec<String> {
    let Floor { held, run, words, .. } = floor;
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
    let mut lines = vec![words.pace().slowed(slowing)];
    // Where no effort is asked for, there are no calls to make anything of.
    if run.set(id).is_none_or(|set| set.call.effort.is_none()) {
        return lines;
    }
    let exercise = &entry.entry.exercise;
    // Past sessions, then this one; the set itself says nothing of itself.
    let mut points = held.paces.of.get(exercise).cloned().unwrap_or_default();
    let key = SetKey { session: run.session, set: id };
    let own = held.rows.sets.values().map(AsRef::as_ref);
    let own = own.filter(|set: &&DoneSet| set.exercise == *exercise && set.key != key);
    points.extend(own.filter_map(DoneSet::pace));
    let estimate = PaceFit::of(&points).map(|fit| fit.estimate(slowing));
    lines.push(words.pace().estimate(estimate, points.len(), words.numerals));
    lines
}

/// The beats of a repetition of the set that is on.
fn beats(run: &Run, cursor: Option<&Cursor>, words: Words) -> Vec<Beat> {
    let tempo = cursor.and_then(|cursor| run.set(cursor.set)?.call.manner.tempo);
    let beats = tempo.map(|tempo| words.pace().beats(tempo)).unwrap_or_default();
    beats.into_iter().map(|(says, ms)| Beat { says: says.to_owned(), ms }).collect()
}

/// What a lifter must know now.
fn notices(floor: &Floor<'_>) -> Vec<String> {
    let Floor { held, run, at, words, .. } = floor;
    let standing = run.rest.as_ref().map(|rest| rest.standing(Some(&run.seen), at));
    // A shell that woke the core, in the dark perhaps, had the rest put on the clock there is now.
    // That stays said until the lifter taps: they had it before their eyes then.
    let since = held.state.log().iter().rev().map_while(|stamped| match &stamped.event {
        Event::RestRebased { was, rest } => Some(was.began.boot_id != rest.began.boot_id),
        _ => None,
    });
    let rebased: Vec<bool> = since.collect();
    let said = |restarted| run.rest.is_some() && rebased.contains(&restarted);
    let restarted = standing.is_some_and(|rest| rest.restarted) || said(true);
    let back = standing.is_some_and(|rest| rest.clock_went_back) || said(false);
    [
        run.paused.as_ref().map(|_| words.floor().paused()),
        restarted.then(|| words.floor().restarted()),
        back.then(|| words.floor().clock_went_back()),
    ]
    .into_iter()
    .flatten()
    .map(str::to_owned)
    .collect()
}

/// What the gym lacks for the exercise that is on, before its first set, and what is done instead.
fn lacking(floor: &Floor<'_>, cursor: Option<&Cursor>) -> Option<String> {
    let Floor { held, run, words, .. } = floor;
    let entry = run.entries.get(&cursor?.set.entry)?;
    let lacks = &entry.entry.lacks;
    if lacks.is_empty() || entry.sets.iter().any(SetRun::begun) {
        return None;
    }
    let instead = entry.entry.instead.iter().find(|substitute| substitute.possible);
    let instead = instead.map(|one| name::exercise(held, &one.exercise, &one.name, *words));
    Some(words.floor().lacking(lacks, instead.as_deref()))
}

fn aloud(
    total: &str,
    call: &CallZone,
    rest: Option<&RunningRest>,
    notices: &[String],
    words: Words,
) -> String {
    let say = words.floor();
    let mut lines: Vec<String> = notices.to_vec();
    if let Some(rest) = rest {
        lines.push(say.rest_aloud(&rest.label, (!rest.over).then_some(rest.text.as_str())));
    }
    if !call.exercise.is_empty() {
        lines.push(say.exercise_aloud(&call.exercise, total));
    }
    lines.push(call.sentence.clone());
    lines.extend(call.cautions.iter().cloned());
    lines.join(" ")
}
