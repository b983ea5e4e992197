//! Panels of the floor: what is seldom needed, a tap away.

use barwright_domain::call::Amount;
use barwright_domain::catalogue::Counting;
use barwright_domain::equipment::Rig;
use barwright_domain::quantity::Mass;
use barwright_domain::session::{
    CallLoad, Cursor, EntryId, EntryRun, Kit, Reading, Run, SetId, SetKind, SetRun,
};

use super::bar;
use super::floor::{figure, shown};
use super::key::{does, drafts, opens};
use super::row::row;
use crate::contract::{
    Draft, Field, GuardChoice, HowEnded, Intent, Key, KitChoice, Panel, Row, SwapReason,
};
use crate::engine::{Core, part_name};
use crate::phrase::en::{self, cautions, floor as phrases, words};

/// The panel that a draft asks for; none for a name that is no panel here.
pub(super) fn open(
    core: &Core,
    run: &Run,
    cursor: Option<&Cursor>,
    draft: &Draft,
    at: &Reading,
) -> Option<Panel> {
    let name = draft.panel.as_deref()?;
    let (kind, of) = name.split_once(':').unwrap_or((name, ""));
    let entry = || -> Option<(EntryId, &EntryRun)> {
        let id = match of {
            "" => cursor?.set.entry,
            of => EntryId(of.parse().ok()?),
        };
        run.entries.get(&id).map(|entry| (id, entry.as_ref()))
    };
    let builder = match kind {
        "more" => more(run, cursor),
        "ended" => ended(core, run, cursor?, draft, at)?,
        "bar" => bar_holds(core, run, cursor?)?,
        "load" => {
            let (id, entry) = entry()?;
            load(core, run, id, entry)?
        }
        "swap" => {
            let (id, entry) = entry()?;
            swap(id, entry)
        }
        "pace" => pace(run, cursor?)?,
        "order" => order(run, cursor),
        "earlier" => earlier(core, run),
        "notes" => notes(run, cursor),
        "kit" => {
            let (id, entry) = entry()?;
            kit(id, entry)
        }
        "guard" => guard(cursor?.set.entry),
        "helped" => helped(core, run, cursor?, draft, at)?,
        _ => return None,
    };
    let close = drafts("close", "Back", Draft { panel: None, ..draft.clone() });
    Some(Panel {
        id: name.to_owned(),
        title: builder.title,
        rows: builder.rows,
        keys: builder.keys,
        fields: builder.fields,
        close,
    })
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

fn more(run: &Run, cursor: Option<&Cursor>) -> Builder {
    let mut panel = titled("More");
    if let Some(cursor) = cursor {
        let id = u32::from(cursor.set.entry.0);
        let entry = run.entries.get(&cursor.set.entry);
        let set = run.set(cursor.set);
        if let (Some(entry), Some(set)) = (entry, set) {
            if cautions::asks_guard(entry, set) {
                panel.keys.push(opens("guard", "Pins or spotter…", "guard"));
            }
            let loaded =
                set.first_load().is_none_or(|load| load.figure.is_some()) || unnumbered(set);
            if loaded && set.call.kind != SetKind::Ramp {
                panel.keys.push(opens("load", "Another load…", "load"));
            }
        }
        panel.keys.extend([
            does("skip-set", "Leave this set out", Intent::SkipSet),
            does("add-set", "One more set", Intent::AddSet { entry: id }),
            opens("swap", "Do another exercise instead…", "swap"),
            does("postpone", "Put this exercise off to the end", Intent::Postpone { entry: id }),
            does("skip", "Leave the rest of it out", Intent::SkipExercise { entry: id }),
            opens("helped", "A spotter helped…", "helped"),
            opens("kit", "Belt, wraps, straps…", "kit"),
        ]);
    }
    panel.keys.extend([
        opens("order", "What comes next…", "order"),
        opens("earlier", "Put an earlier set right…", "earlier"),
        opens("notes", "Notes and set-up…", "notes"),
    ]);
    if cursor.and_then(|cursor| pace(run, cursor)).is_some() {
        panel.keys.push(opens("pace", en::pace::OPEN, "pace"));
    }
    panel.keys.push(match run.paused {
        None => does("pause", "Pause", Intent::Pause),
        Some(_) => does("resume", "Go on", Intent::Resume),
    });
    panel.keys.push(does("finish", "Finish the session here", Intent::Finish));
    panel
}

fn ended(core: &Core, run: &Run, cursor: &Cursor, draft: &Draft, at: &Reading) -> Option<Builder> {
    let numerals = core.locale.numerals;
    let amount = shown(run, cursor, draft, at)?;
    // Of a single that failed nothing was done, whatever the figure shows.
    let single = draft.amount.is_none() && amount == Amount::Reps(1);
    let of = |ended: HowEnded| match ended {
        HowEnded::Failed if single => Amount::Reps(0),
        _ => amount,
    };
    let mut panel =
        titled(format!("It ended otherwise, after {}", words::amount(&amount, numerals)));
    let figure = figure(&amount, draft, numerals);
    panel.keys.extend([figure.down, figure.up]);
    let ways = [
        ("failed", "Failed a rep", HowEnded::Failed),
        ("form", "Form went", HowEnded::Form),
        ("pain", "Pain", HowEnded::Pain),
        ("interrupted", "Interrupted", HowEnded::Interrupted),
        ("equipment", "Equipment", HowEnded::Equipment),
    ];
    panel.keys.extend(ways.map(|(id, label, ended)| {
        let intent = Intent::Record {
            part: Some(part_name(cursor)),
            amount: draft.amount,
            left_halves: None,
            ended,
            helped: draft.helped,
            last: true,
        };
        does(id, label, intent).says(format!(
            "Record {}: {}",
            words::amount(&of(ended), numerals),
            label.to_lowercase()
        ))
    }));
    Some(panel)
}

/// What is really on: one press takes the outermost plate off or puts one on.
fn bar_holds(core: &Core, run: &Run, cursor: &Cursor) -> Option<Builder> {
    let called = run.load_at(cursor).map(|load| &load.rig);
    let same = |on: &&Rig| {
        called.is_none_or(|called| std::mem::discriminant(*on) == std::mem::discriminant(called))
    };
    let rig = run.on.as_ref().filter(same).or(called).filter(|rig| rig.holds_plates())?;
    let on: Vec<String> = rig.side().iter().map(|plate| plate.label.clone()).collect();
    let empty = run.on.is_none();
    let mut panel = titled("The bar holds");
    let held = if empty || on.is_empty() { "nothing".to_owned() } else { bar::labels(rig.side()) };
    panel.rows.push(row("on", 1, format!("Each side: {held}")));
    let now = if empty { Vec::new() } else { on };
    if let Some((outer, inner)) = now.split_last() {
        let intent = Intent::BarHolds { side: inner.to_vec() };
        panel.keys.push(does("off", format!("Take off {outer}"), intent));
    }
    if !now.is_empty() {
        panel.keys.push(does("empty", "Empty", Intent::BarHolds { side: Vec::new() }));
    }
    if let Some(called) = called {
        let side: Vec<String> = called.side().iter().map(|plate| plate.label.clone()).collect();
        if side != now {
            panel.keys.push(does("called", "Just as called", Intent::BarHolds { side }));
        }
    }
    for stock in &run.equipment.plates {
        let mut side = now.clone();
        side.push(stock.label.clone());
        let id = format!("on-{}", stock.label);
        panel.keys.push(does(id, format!("Put on {}", stock.label), Intent::BarHolds { side }));
    }
    let _ = core;
    Some(panel)
}

/// Neighbouring loads that this gym makes, and a field for any other.
fn load(core: &Core, run: &Run, id: EntryId, entry: &EntryRun) -> Option<Builder> {
    let numerals = core.locale.numerals;
    let unit = run.equipment.unit;
    let mut panel = titled(format!("{}: another load for the sets left", entry.entry.name));
    let next = entry
        .sets
        .iter()
        .find(|set| set.pending() && !set.begun() && set.call.kind != SetKind::Ramp)?;
    let figure = next.first_load().and_then(|load| load.figure);
    let name = u32::from(id.0);
    if unnumbered(next) {
        let stacks = run.equipment.stacks.iter();
        let pins = stacks.filter(|stack| stack.kind == entry.entry.implement);
        panel.keys.extend(pins.flat_map(|stack| &stack.pins).map(|pin| {
            let text = pin.label.clone();
            let write = Intent::Write { field: format!("pin:{name}"), text, sure: false };
            does(format!("pin-{}", pin.label), format!("Pin {}", pin.label), write)
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
                entry: name,
                load: mass.kilograms(),
                only_next: false,
                sure: false,
            };
            does(format!("load-{}", mass.kilograms()), mass.print(unit, numerals), intent)
        };
        panel.keys.extend(below.iter().map(choice));
        panel.keys.push(choice(&figure).chosen(true).enabled(false));
        panel.keys.extend(above.iter().map(choice));
    }
    panel.fields.push(Field {
        id: format!("load:{name}"),
        label: "Load".to_owned(),
        value: figure.map(|figure| figure.figure(unit, numerals)).unwrap_or_default(),
        hint: Mass::whole(100, unit).print(unit, numerals),
        numeric: true,
    });
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

fn swap(id: EntryId, entry: &EntryRun) -> Builder {
    let mut panel = titled(format!("Instead of {}", entry.entry.name));
    if entry.entry.instead.is_empty() {
        panel.rows.push(row("none", 1, "The plan names no substitute."));
    }
    for substitute in &entry.entry.instead {
        let intent = Intent::Swap {
            entry: u32::from(id.0),
            exercise: substitute.exercise.clone(),
            why: if entry.entry.lacks.is_empty() { SwapReason::Taken } else { SwapReason::Lacking },
        };
        let label = if substitute.possible {
            substitute.name.clone()
        } else {
            format!("{}: not in this gym", substitute.name)
        };
        panel.keys.push(
            does(format!("swap-{}", substitute.exercise), label, intent)
                .enabled(substitute.possible),
        );
    }
    panel
}

/// A partner's taps, and what they show at once.
fn pace(run: &Run, cursor: &Cursor) -> Option<Builder> {
    use barwright_domain::call::{HowMany, Stop};
    let set = run.set(cursor.set)?;
    let asked = run.how_many_at(cursor)?;
    matches!(asked, HowMany::Reps(_) | HowMany::Open { .. }).then_some(())?;
    let mut panel = titled(en::pace::TITLE);
    panel.rows.push(row("who", 1, en::pace::WHO));
    let tapped = set.tapped();
    match tapped {
        None => panel.rows.push(row("how", 1, en::pace::HOW)),
        Some((reps, slowing)) => {
            panel.rows.push(row("tapped", 1, en::pace::count(reps)));
            panel.rows.extend(slowing.map(|slowing| row("slowed", 1, en::pace::slowed(slowing))));
            let by_pace = matches!(asked, HowMany::Open { stop: Stop::Pace, .. });
            if by_pace && slowing.is_some_and(en::pace::stops) {
                panel.rows.push(row("stop", 1, en::pace::STOP).warns(true));
            }
        }
    }
    let label = en::pace::key(tapped.map(|(reps, _)| reps));
    panel.keys.push(does("rep", label, Intent::TapRep { part: part_name(cursor) }));
    if tapped.is_some() {
        panel.keys.push(does("undo", "Undo the last tap", Intent::Undo));
    }
    Some(panel)
}

fn order(run: &Run, cursor: Option<&Cursor>) -> Builder {
    let mut panel = titled("What comes next");
    for (_, id, entry) in run.in_order().filter(|(_, _, entry)| entry.pending()) {
        let left = entry.sets.iter().filter(|set| set.pending()).count();
        let now = cursor.is_some_and(|cursor| cursor.set.entry == id);
        let text = format!("{}: {}", entry.entry.name, words::count(left, "set", "sets"));
        let key = does("up", "Do it now", Intent::TakeUp { entry: u32::from(id.0) });
        let keys = if now { Vec::new() } else { vec![key] };
        panel.rows.push(row(format!("entry-{}", id.0), 1, text).keys(keys));
    }
    panel
}

/// Every part done, the last first, each with a key to put it right.
fn earlier(core: &Core, run: &Run) -> Builder {
    let numerals = core.locale.numerals;
    let mut panel = titled("Put an earlier set right");
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
        let name = part_name(&cursor);
        let load = bar::total(&part.done.load, run.equipment.unit, numerals);
        let text = format!(
            "{}, {}: {} × {}",
            entry.entry.name,
            phrases::which_set(entry, set).to_lowercase(),
            load,
            words::amount(&part.done.amount, numerals)
        );
        let draft = Draft { correct: Some(name.clone()), ..Draft::default() };
        let key = drafts("correct", "Put right", draft);
        panel.rows.push(row(name, 1, text).keys(vec![key]));
    }
    panel
}

fn notes(run: &Run, cursor: Option<&Cursor>) -> Builder {
    let mut panel = titled("Notes and set-up");
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
    panel.fields.push(field(
        "note".to_owned(),
        "Note on the session",
        String::new(),
        "slept badly",
    ));
    let current = cursor.and_then(|cursor| run.entries.get_key_value(&cursor.set.entry));
    if let Some((id, entry)) = current {
        panel.fields.push(field(
            format!("note:{}", id.0),
            &format!("Note on {}", entry.entry.name),
            String::new(),
            "left knee stiff",
        ));
        panel.fields.push(field(
            format!("set-up:{}", id.0),
            &format!("Set-up of {}", entry.entry.name),
            entry.set_up.join("; "),
            "pins at 7; seat 4",
        ));
    }
    panel
}

fn kit(id: EntryId, entry: &EntryRun) -> Builder {
    let mut panel = titled(format!("Worn for {}", entry.entry.name));
    let all = [Kit::Belt, Kit::Wraps, Kit::Straps, Kit::Sleeves];
    let choice = |kit: &Kit| match kit {
        Kit::Belt => KitChoice::Belt,
        Kit::Wraps => KitChoice::Wraps,
        Kit::Straps => KitChoice::Straps,
        Kit::Sleeves => KitChoice::Sleeves,
    };
    for one in all {
        let worn = entry.kit.contains(&one);
        let mut kit: Vec<Kit> = entry.kit.iter().copied().filter(|kit| *kit != one).collect();
        if !worn {
            kit.push(one);
        }
        let intent =
            Intent::UseKit { entry: u32::from(id.0), kit: kit.iter().map(choice).collect() };
        let label = words::sentence_case(words::kit(one));
        let says = if worn { format!("{label} off") } else { format!("{label} on") };
        panel
            .keys
            .push(does(format!("kit-{}", words::kit(one)), label, intent).says(says).chosen(worn));
    }
    panel
}

fn guard(entry: EntryId) -> Builder {
    let mut panel = titled(cautions::GUARDED);
    let ways = [
        ("pins", "Pins", GuardChoice::Pins),
        ("spotter", "A spotter", GuardChoice::Spotter),
        ("neither", "Neither: keep two in reserve", GuardChoice::Neither),
    ];
    panel.keys.extend(ways.map(|(id, label, guard)| {
        does(id, label, Intent::GuardedBy { entry: u32::from(entry.0), guard })
    }));
    panel
}

/// Repetitions with help are counted apart and estimate nothing.
fn helped(core: &Core, run: &Run, cursor: &Cursor, draft: &Draft, at: &Reading) -> Option<Builder> {
    let numerals = core.locale.numerals;
    let amount = shown(run, cursor, draft, at)?;
    let own = words::amount(&amount, numerals);
    let mut panel = titled(format!("{own} alone, and with a spotter's help:"));
    for count in 1..=5_u32 {
        let help = Amount::Reps(u16::try_from(count).unwrap_or(1));
        let draft = Draft { helped: count, panel: None, ..draft.clone() };
        panel.keys.push(
            drafts(format!("helped-{count}"), words::amount(&help, numerals), draft)
                .says(format!("{} with help", words::amount(&help, numerals))),
        );
    }
    let none = Draft { helped: 0, panel: None, ..draft.clone() };
    panel.keys.push(drafts("helped-0", "None", none));
    Some(panel)
}
