//! Panels of the floor: what is seldom needed, a tap away.

use barwright_domain::call::{Amount, HowMany, Stop};
use barwright_domain::catalogue::Counting;
use barwright_domain::equipment::Rig;
use barwright_domain::prescribe::Candidate;
use barwright_domain::progress::pace::STOP_AT;
use barwright_domain::quantity::Mass;
use barwright_domain::session::{
    CallLoad, Cursor, Ending, Entry, EntryId, EntryRun, Guard, Kit, Load, Offer, SetId, SetKind,
    SetRun,
};

use super::guard::asks_guard;
use super::hand::{self, Floor, figure, shown};
use super::key::{drafts, opens, taps};
use super::name;
use super::row::row;
use crate::contract::{
    Draft, Field, GuardChoice, HowEnded, Intent, Key, KitChoice, Look, Panel, Row, SwapReason,
};
use crate::facts::{candidates, part};

/// The panel that the draft asks for; none for a name that is no panel here.
pub(super) fn open(floor: &Floor<'_>, cursor: Option<&Cursor>) -> Option<Panel> {
    let Floor { run, draft, words, .. } = floor;
    let name = draft.panel.as_deref()?;
    let (kind, of) = name.split_once(':').unwrap_or((name, ""));
    // What was looked for stands behind what it is looked for.
    let (of, text) = of.split_once(':').unwrap_or((of, ""));
    let entry = || -> Option<(EntryId, &EntryRun)> {
        let id = match of {
            "" => cursor?.set.entry,
            of => EntryId(of.parse().ok()?),
        };
        run.entries.get(&id).map(|entry| (id, entry.as_ref()))
    };
    let builder = match kind {
        "more" => more(floor, cursor),
        "ended" => ended(floor, cursor?)?,
        hand::PAD => pad(floor, cursor, of)?,
        "bar" => bar_holds(floor, cursor?)?,
        "load" => {
            let (id, entry) = entry()?;
            load(floor, id, entry)?
        }
        "swap" | "swap-pain" => {
            let (id, entry) = entry()?;
            swap(floor, id, entry, (kind == "swap-pain", text))
        }
        "add" => add(floor, text),
        "pain" => pain(floor)?,
        "pace" => pace(floor, cursor?)?,
        "order" => order(floor, cursor),
        "earlier" => earlier(floor),
        "notes" => notes(floor, cursor),
        "kit" => {
            let (id, entry) = entry()?;
            kit(floor, id, entry)
        }
        "guard" => guard(floor, cursor?.set.entry),
        "helped" => helped(floor, cursor?)?,
        _ => return None,
    };
    let close = drafts("close", words.panel().back(), Draft { panel: None, ..(*draft).clone() });
    // The digits typed so far are no other panel.
    let id = if kind == hand::PAD { kind } else { name };
    Some(Panel {
        id: id.to_owned(),
        title: builder.title,
        rows: builder.rows,
        keys: builder.keys,
        fields: builder.fields,
        close,
    })
}

/// This panel again, with what is being entered.
fn stays(floor: &Floor<'_>) -> Look {
    Look::Floor { draft: floor.draft.clone() }
}

#[derive(Default)]
struct Builder {
    title: String,
    rows: Vec<Row>,
    keys: Vec<Key>,
    fields: Vec<Field>,
}

fn titled(title: impl Into<String>) -> Builder {
    Builder { title: title.into(), ..Builder::default() }
}

fn more(floor: &Floor<'_>, cursor: Option<&Cursor>) -> Builder {
    let Floor { run, words, .. } = floor;
    let say = words.panel();
    let mut panel = titled(say.more());
    if let Some(cursor) = cursor {
        let id = u32::from(cursor.set.entry.0);
        let entry = run.entries.get(&cursor.set.entry);
        let set = run.set(cursor.set);
        if let (Some(entry), Some(set)) = (entry, set) {
            if asks_guard(entry, set) {
                panel.keys.push(opens("guard", say.open_guard(), "guard"));
            }
            let loaded =
                set.first_load().is_none_or(|load| load.figure.is_some()) || unnumbered(set);
            if loaded && set.call.kind != SetKind::Ramp {
                panel.keys.push(opens("load", say.open_load(), "load"));
            }
        }
        let postpone = Intent::Postpone { entry: id };
        panel.keys.extend([
            taps(run, "skip-set", say.skip_set(), Intent::SkipSet),
            taps(run, "add-set", say.add_set(), Intent::AddSet { entry: id }),
            opens("swap", say.open_swap(), "swap"),
            taps(run, "postpone", say.postpone(), postpone),
            taps(run, "skip", say.skip_exercise(), Intent::SkipExercise { entry: id }),
            opens("helped", say.open_helped(), "helped"),
            opens("kit", say.open_kit(), "kit"),
        ]);
    }
    panel.keys.extend([
        opens("order", say.open_order(), "order"),
        opens("earlier", say.open_earlier(), "earlier"),
        opens("notes", say.open_notes(), "notes"),
    ]);
    if cursor.and_then(|cursor| pace(floor, cursor)).is_some() {
        panel.keys.push(opens("pace", words.pace().open(), "pace"));
    }
    panel.keys.push(match run.paused {
        None => taps(run, "pause", say.pause(), Intent::Pause),
        Some(_) => taps(run, "resume", words.floor().resume(), Intent::Resume),
    });
    panel.keys.push(taps(run, "finish", say.finish_here(), Intent::Finish));
    panel
}

/// Digits for what is far from the call: of the part that is on, or of the one that is put right.
fn pad(floor: &Floor<'_>, cursor: Option<&Cursor>, digits: &str) -> Option<Builder> {
    let Floor { run, draft, words, .. } = floor;
    let (say, numerals) = (words.floor(), words.numerals);
    let corrected = draft.correct.as_deref().and_then(part::named).and_then(|(at, _)| {
        let set = run.set(at.set)?;
        Some(set.parts.get(usize::from(at.part))?.done.amount)
    });
    let kind = match corrected {
        Some(amount) => amount,
        None => shown(floor, cursor?)?,
    };
    let typed = hand::typed(&kind, digits);
    let mut panel = titled(match &typed {
        Some(amount) => words.words().amount(amount, numerals),
        None => say.type_it().to_owned(),
    });
    let shows = |digits: String| Draft {
        panel: Some(format!("{}:{digits}", hand::PAD)),
        ..(*draft).clone()
    };
    let key = |digit: char| {
        let more = hand::one_more(digits, digit);
        drafts(format!("digit-{digit}"), digit.to_string(), shows(more))
    };
    // In the order of a pad that is three keys wide, the nought at its foot between the two others.
    panel.keys.extend(('1'..='9').map(key));
    let fewer: String = digits.chars().take(digits.chars().count().saturating_sub(1)).collect();
    panel.keys.push(drafts("rub-out", say.rub_out(), shows(fewer)).enabled(!digits.is_empty()));
    panel.keys.push(key('0'));
    let said = typed.map(|amount| words.words().amount(&amount, numerals)).unwrap_or_default();
    let number = typed.map(|amount| hand::step_and_number(&amount).1);
    let set = Draft { amount: number.or(draft.amount), panel: None, ..(*draft).clone() };
    panel.keys.push(drafts("set", say.set_to(&said), set).enabled(typed.is_some()));
    Some(panel)
}

fn ended(floor: &Floor<'_>, cursor: &Cursor) -> Option<Builder> {
    let Floor { run, draft, words, .. } = floor;
    let (say, numerals) = (words.panel(), words.numerals);
    let amount = shown(floor, cursor)?;
    // Of a single that failed nothing was done, whatever the figure shows.
    let single = draft.amount.is_none() && amount == Amount::Reps(1);
    let mut panel = titled(say.ended(&amount, numerals));
    let figure = figure(&amount, floor);
    panel.keys.extend([figure.down, figure.up]);
    let ways = [
        ("failed", Ending::Failed, HowEnded::Failed),
        ("form", Ending::Form, HowEnded::Form),
        ("pain", Ending::Pain, HowEnded::Pain),
        ("interrupted", Ending::Interrupted, HowEnded::Interrupted),
        ("equipment", Ending::Equipment, HowEnded::Equipment),
    ];
    panel.keys.extend(ways.map(|(id, ending, ended)| {
        let intent = Intent::Record {
            part: Some(part::name(run, cursor)),
            amount: draft.amount,
            left_halves: None,
            ended,
            helped: draft.helped,
            last: true,
        };
        let none_done = single && ending == Ending::Failed;
        let done = if none_done { Amount::Reps(0) } else { amount };
        taps(run, id, say.way(ending, &done, numerals), intent)
    }));
    Some(panel)
}

/// What is really on: one press takes the outermost plate off or puts one on.
fn bar_holds(floor: &Floor<'_>, cursor: &Cursor) -> Option<Builder> {
    let Floor { run, words, .. } = floor;
    let say = words.panel();
    let called = run.load_at(cursor).map(|load| &load.rig);
    let same = |on: &&Rig| {
        called.is_none_or(|called| std::mem::discriminant(*on) == std::mem::discriminant(called))
    };
    let rig = run.on.as_ref().filter(same).or(called).filter(|rig| rig.holds_plates())?;
    let on: Vec<String> = rig.side().iter().map(|plate| plate.label.clone()).collect();
    let empty = run.on.is_none();
    let mut panel = titled(say.bar_holds());
    let held = (!empty && !on.is_empty()).then(|| words.bar().labels(rig.side(), words.numerals));
    panel.rows.push(row("on", 1, say.each_side(held.as_deref())));
    let now = if empty { Vec::new() } else { on };
    // Plates come and go one by one.
    let key = |id: String, label: String, side: Vec<String>| {
        taps(run, id, label, Intent::BarHolds { side }).then(stays(floor))
    };
    // Each key keeps its place while plates come and go.
    let (outer, inner) =
        now.split_last().map_or(("", [].as_slice()), |(outer, inner)| (outer, inner));
    let bare = now.is_empty();
    panel.keys.push(
        key("off".to_owned(), say.take_off(outer, words.numerals), inner.to_vec()).enabled(!bare),
    );
    panel.keys.push(key("empty".to_owned(), say.empty().to_owned(), Vec::new()).enabled(!bare));
    if let Some(called) = called {
        let side: Vec<String> = called.side().iter().map(|plate| plate.label.clone()).collect();
        let differs = side != now;
        let as_called = key("called".to_owned(), say.as_called().to_owned(), side);
        panel.keys.push(as_called.enabled(differs));
    }
    for stock in &run.equipment.plates {
        let mut side = now.clone();
        side.push(stock.label.clone());
        panel.keys.push(key(
            format!("on-{}", stock.label),
            say.put_on(&stock.label, words.numerals),
            side,
        ));
    }
    Some(panel)
}

/// Neighbouring loads that this gym makes, and a field for any other.
fn load(floor: &Floor<'_>, id: EntryId, entry: &EntryRun) -> Option<Builder> {
    let Floor { held, run, words, .. } = floor;
    let (say, unit, numerals) = (words.panel(), run.equipment.unit, words.numerals);
    let mut panel = titled(say.load(&name::entry(held, entry, *words)));
    let next = entry
        .sets
        .iter()
        .find(|set| set.pending() && !set.begun() && set.call.kind != SetKind::Ramp)?;
    let figure = next.first_load().and_then(|load| load.figure);
    if unnumbered(next) {
        let pins = run.equipment.stacks_for(&entry.entry.implement);
        panel.keys.extend(pins.flat_map(|stack| &stack.pins).map(|pin| {
            let (field, text) = (part::field(run, "pin", Some(id)), pin.label.clone());
            let write = Intent::Write { field, text, sure: false };
            taps(run, format!("pin-{}", pin.label), say.pin(&pin.label, numerals), write)
        }));
        return Some(panel);
    }
    if let Some(figure) = figure.filter(|figure| *figure >= Mass::ZERO) {
        let implement = &entry.entry.implement;
        let mut below = Vec::new();
        let (mut low, mut high) = (figure, figure);
        for _ in 0..3 {
            if let Some(made) = run.equipment.step_below(implement, low) {
                low = made.made;
                below.push(low);
            }
        }
        below.reverse();
        let mut above = Vec::new();
        for _ in 0..3 {
            if let Some(made) = run.equipment.step_above(implement, high) {
                high = made.made;
                above.push(high);
            }
        }
        let choice = |mass: &Mass| {
            let intent = Intent::ChangeLoad {
                entry: u32::from(id.0),
                load: mass.kilograms(),
                only_next: false,
                sure: false,
            };
            taps(run, format!("load-{}", mass.kilograms()), mass.print(unit, numerals), intent)
        };
        panel.keys.extend(below.iter().map(choice));
        panel.keys.push(choice(&figure).chosen(true).enabled(false));
        panel.keys.extend(above.iter().map(choice));
    }
    let (label, hint) = say.load_field(unit, numerals);
    panel.fields.push(Field {
        id: part::field(run, "load", Some(id)),
        label: label.to_owned(),
        value: figure.map(|figure| figure.figure(unit, numerals)).unwrap_or_default(),
        hint,
        numeric: true,
    });
    let moved = next.first_load().filter(|load| load.counting == Counting::Added);
    if let Some(moved) = moved.and_then(Load::moved) {
        let (label, hint) = say.all_field(unit, numerals);
        panel.fields.push(Field {
            id: part::field(run, "all", Some(id)),
            label: label.to_owned(),
            value: moved.figure(unit, numerals),
            hint,
            numeric: true,
        });
    }
    Some(panel)
}

/// Whether a set is done on a stack without numbers.
fn unnumbered(set: &SetRun) -> bool {
    match (set.first_load(), &set.call.load) {
        (Some(load), _) => load.counting == Counting::Unnumbered,
        (None, CallLoad::Chosen { counting, .. }) => *counting == Counting::Unnumbered,
        (None, _) => false,
    }
}

/// After pain, in their order: stop, swap, lighter, go on.
fn pain(floor: &Floor<'_>) -> Option<Builder> {
    let Floor { held, run, words, .. } = floor;
    let (say, unit, numerals) = (words.panel(), run.equipment.unit, words.numerals);
    let (id, lighter, go_on) = run.offers().into_iter().find_map(|offer| match offer {
        Offer::Pain { entry, lighter, go_on } => Some((entry, lighter, go_on)),
        Offer::Lighter { .. } | Offer::Skip { .. } => None,
    })?;
    let entry = run.entries.get(&id)?;
    let mut panel = titled(say.pain(&name::entry(held, entry, *words)));
    panel.rows.push(row("clinician", 1, words.cautions().pain()).warns(true));
    let number = u32::from(id.0);
    panel.keys.push(taps(run, "stop", say.stop(), Intent::SkipExercise { entry: number }));
    panel.keys.push(opens("swap", say.open_swap(), format!("swap-pain:{}", id.0)));
    if let Some(load) = lighter {
        let label = say.lighter(&load.print(unit, numerals));
        let load = load.kilograms();
        let intent = Intent::ChangeLoad { entry: number, load, only_next: false, sure: true };
        panel.keys.push(taps(run, "lighter", label, intent));
    }
    if go_on {
        panel.keys.push(drafts("go-on", say.go_on(), Draft::default()));
    }
    let exercise = &entry.entry.exercise;
    let of_joint = run.pain_of_joint.contains(exercise);
    let intent = Intent::PainOfJoint { exercise: exercise.clone(), of_joint: !of_joint };
    panel.keys.push(taps(run, "joint", say.of_joint(), intent).chosen(of_joint));
    Some(panel)
}

/// The most exercises that are offered in the place of one.
const MOST_INSTEAD: usize = 8;

/// What could be done in the place of an exercise: the plan's own substitutes, then the likeliest; or
/// what has the words that were looked for.
fn swap(floor: &Floor<'_>, id: EntryId, entry: &EntryRun, (pain, text): (bool, &str)) -> Builder {
    let Floor { held, run, words, .. } = floor;
    let say = words.panel();
    let mut panel = titled(say.swap(&name::entry(held, entry, *words)));
    let why = match (pain, entry.entry.lacks.is_empty()) {
        (true, _) => SwapReason::Pain,
        (false, true) => SwapReason::Wish,
        (false, false) => SwapReason::Lacking,
    };
    let label = |one: &Candidate<'_>| {
        let name = words.words().exercise(one.exercise);
        if one.possible() { name } else { say.not_here(&name) }
    };
    let found = instead(floor, Some(&entry.entry), text);
    panel.keys.extend(found.iter().map(|one| {
        let exercise = one.exercise.slug.to_string();
        let intent = Intent::Swap { entry: u32::from(id.0), exercise, why };
        let key = format!("swap-{}", one.exercise.slug);
        taps(run, key, label(one), intent).enabled(one.possible())
    }));
    if found.is_empty() {
        panel.rows.push(row("none", 1, words.change().none_found(text)));
    }
    // Why matters to what is careful of it alone, and where some of it was done.
    if !pain && entry.sets.iter().any(SetRun::begun) {
        panel.keys.push(opens("hurts", say.it_hurts(), format!("swap-pain:{}", id.0)));
    }
    let kind = if pain { "find-swap-pain" } else { "find-swap" };
    panel.fields.push(find(floor, part::field(run, kind, Some(id)), text));
    panel
}

/// What could be added to the session.
fn add(floor: &Floor<'_>, text: &str) -> Builder {
    let Floor { run, words, .. } = floor;
    let mut panel = titled(words.change().add_title());
    let found = instead(floor, None, text);
    panel.keys.extend(found.iter().filter(|one| one.possible()).map(|one| {
        let exercise = one.exercise.slug.to_string();
        let key = format!("add-{exercise}");
        taps(run, key, words.words().exercise(one.exercise), Intent::AddExercise { exercise })
    }));
    if found.is_empty() {
        panel.rows.push(row("none", 1, words.change().none_found(text)));
    }
    panel.fields.push(find(floor, part::field(run, "find-add", None), text));
    panel
}

/// Exercises that the session has not, the likeliest in the place of an entry first.
fn instead<'a>(floor: &Floor<'a>, entry: Option<&Entry>, text: &str) -> Vec<Candidate<'a>> {
    let Floor { held, run, .. } = *floor;
    let here = run.entries.values().filter(|entry| entry.swapped_for.is_none());
    let here: Vec<String> = here.map(|entry| entry.entry.exercise.clone()).collect();
    let mut all = candidates(held, &run.equipment, entry, &here);
    if !text.is_empty() {
        let found = held.catalogue.search(text).exercises;
        all.retain(|one| found.iter().any(|found| found.slug == one.exercise.slug));
    }
    all.truncate(MOST_INSTEAD);
    all
}

fn find(floor: &Floor<'_>, id: String, text: &str) -> Field {
    let (label, hint) = floor.words.change().find();
    let (label, hint) = (label.to_owned(), hint.to_owned());
    Field { id, label, value: text.to_owned(), hint, numeric: false }
}

/// A partner's taps, and what they show at once.
fn pace(floor: &Floor<'_>, cursor: &Cursor) -> Option<Builder> {
    let Floor { run, words, .. } = floor;
    let say = words.pace();
    let set = run.set(cursor.set)?;
    let asked = run.how_many_at(cursor)?;
    matches!(asked, HowMany::Reps(_) | HowMany::Open { .. }).then_some(())?;
    let mut panel = titled(say.title());
    panel.rows.push(row("who", 1, say.who()));
    let tapped = set.tapped();
    match tapped {
        None => panel.rows.push(row("how", 1, say.how())),
        Some((reps, slowing)) => {
            panel.rows.push(row("tapped", 1, say.count(reps)));
            panel.rows.extend(slowing.map(|slowing| row("slowed", 1, say.slowed(slowing))));
            let by_pace = matches!(asked, HowMany::Open { stop: Stop::Pace, .. });
            if by_pace && slowing.is_some_and(|slowing| slowing >= STOP_AT) {
                panel.rows.push(row("stop", 1, say.stop()).warns(true));
            }
        }
    }
    let part = part::name(run, cursor);
    let label = say.key(tapped.map(|(reps, _)| reps));
    panel.keys.push(taps(run, "rep", label, Intent::TapRep { part }));
    if tapped.is_some() {
        // The partner's thumb stays where it is.
        panel.keys.push(taps(run, "undo", say.undo(), Intent::Undo).then(stays(floor)));
    }
    Some(panel)
}

fn order(floor: &Floor<'_>, cursor: Option<&Cursor>) -> Builder {
    let Floor { held, run, words, .. } = floor;
    let say = words.panel();
    let mut panel = titled(say.order());
    if run.paper && cursor.is_some() {
        let all = Intent::AllAsCalled { entry: None };
        panel.keys.push(taps(run, "all-as-called", words.change().everything_as_called(), all));
    }
    for (_, id, entry) in run.in_order().filter(|(_, _, entry)| entry.pending()) {
        let left = entry.sets.iter().filter(|set| set.pending()).count();
        let now = cursor.is_some_and(|cursor| cursor.set.entry == id);
        let text = say.sets_left(&name::entry(held, entry, *words), left);
        let key = taps(run, "up", say.do_now(), Intent::TakeUp { entry: u32::from(id.0) });
        let mut keys = if now { Vec::new() } else { vec![key] };
        if run.paper {
            let name = name::entry(held, entry, *words);
            let intent = Intent::AllAsCalled { entry: Some(u32::from(id.0)) };
            let key = taps(run, "as-called", words.change().as_called(&name), intent);
            keys.push(key.then(stays(floor)));
        }
        panel.rows.push(row(format!("entry-{}", id.0), 1, text).keys(keys));
    }
    panel.keys.push(opens("add", words.change().add(), "add"));
    panel
}

/// Every part done, the last first, each with a key to put it right.
fn earlier(floor: &Floor<'_>) -> Builder {
    let Floor { held, run, words, .. } = floor;
    let say = words.panel();
    let mut panel = titled(say.earlier());
    let mut parts = Vec::new();
    for (_, id, entry) in run.in_order() {
        for (at, set) in (0_u16..).zip(&entry.sets) {
            for (part, done) in (0_u16..).zip(&set.parts) {
                let cursor = Cursor { set: SetId { entry: id, set: at }, part };
                parts.push((done.at.wall_ms, cursor, entry, set, done));
            }
        }
    }
    parts.sort_by_key(|(at, ..)| std::cmp::Reverse(*at));
    for (_, cursor, entry, set, part) in parts.into_iter().take(40) {
        let id = part::name(run, &cursor);
        let name = name::entry(held, entry, *words);
        let text = say.part(&name, entry, set, part, run.equipment.unit, words.numerals);
        let draft = Draft { correct: Some(id.clone()), ..Draft::default() };
        panel.rows.push(row(id, 1, text).keys(vec![drafts("correct", say.put_right(), draft)]));
    }
    panel
}

fn notes(floor: &Floor<'_>, cursor: Option<&Cursor>) -> Builder {
    let Floor { held, run, words, .. } = floor;
    let say = words.panel();
    let mut panel = titled(say.notes());
    for (at, note) in run.notes.iter().enumerate() {
        panel.rows.push(row(format!("note-{at}"), 1, note.text.clone()));
    }
    let field = |id: String, label: &str, value: String, hint: &str| Field {
        id,
        label: label.to_owned(),
        value,
        hint: hint.to_owned(),
        numeric: false,
    };
    let (label, hint) = say.session_note();
    panel.fields.push(field(part::field(run, "note", None), label, String::new(), hint));
    let current = cursor.and_then(|cursor| run.entries.get_key_value(&cursor.set.entry));
    if let Some((id, entry)) = current {
        let name = name::entry(held, entry, *words);
        let (label, hint) = say.exercise_note(&name);
        let id_of = |what| part::field(run, what, Some(*id));
        panel.fields.push(field(id_of("note"), &label, String::new(), hint));
        let (label, hint) = say.set_up(&name);
        let lines = name::set_up(&entry.set_up, *words).join("; ");
        panel.fields.push(field(id_of("set-up"), &label, lines, hint));
    }
    panel
}

fn kit(floor: &Floor<'_>, id: EntryId, entry: &EntryRun) -> Builder {
    let Floor { held, run, words, .. } = floor;
    let say = words.panel();
    let mut panel = titled(say.worn(&name::entry(held, entry, *words)));
    let all = [
        ("kit-belt", Kit::Belt),
        ("kit-wraps", Kit::Wraps),
        ("kit-straps", Kit::Straps),
        ("kit-sleeves", Kit::Sleeves),
    ];
    let choice = |kit: &Kit| match kit {
        Kit::Belt => KitChoice::Belt,
        Kit::Wraps => KitChoice::Wraps,
        Kit::Straps => KitChoice::Straps,
        Kit::Sleeves => KitChoice::Sleeves,
    };
    for (key, one) in all {
        let worn = entry.kit.contains(&one);
        let mut kit: Vec<Kit> = entry.kit.iter().copied().filter(|kit| *kit != one).collect();
        if !worn {
            kit.push(one);
        }
        let intent =
            Intent::UseKit { entry: u32::from(id.0), kit: kit.iter().map(choice).collect() };
        let wear = taps(run, key, say.wear(one, worn), intent);
        panel.keys.push(wear.then(stays(floor)).chosen(worn));
    }
    panel
}

fn guard(floor: &Floor<'_>, entry: EntryId) -> Builder {
    let Floor { run, words, .. } = floor;
    let mut panel = titled(words.cautions().guarded());
    let ways = [
        ("pins", Guard::Pins, GuardChoice::Pins),
        ("spotter", Guard::Spotter, GuardChoice::Spotter),
        ("neither", Guard::Neither, GuardChoice::Neither),
    ];
    panel.keys.extend(ways.map(|(id, of, guard)| {
        let intent = Intent::GuardedBy { entry: u32::from(entry.0), guard };
        taps(run, id, words.panel().guard(of), intent)
    }));
    panel
}

/// Repetitions with help are counted apart and estimate nothing.
fn helped(floor: &Floor<'_>, cursor: &Cursor) -> Option<Builder> {
    let Floor { draft, words, .. } = floor;
    let (say, numerals) = (words.panel(), words.numerals);
    let amount = shown(floor, cursor)?;
    let mut panel = titled(say.helped(&amount, numerals));
    for count in 1..=5_u16 {
        let help = Amount::Reps(count);
        let draft = Draft { helped: u32::from(count), panel: None, ..(*draft).clone() };
        let said = say.with_help(&help, numerals);
        panel.keys.push(drafts(format!("helped-{count}"), said, draft));
    }
    let none = Draft { helped: 0, panel: None, ..(*draft).clone() };
    panel.keys.push(drafts("helped-0", say.no_help(), none));
    Some(panel)
}
