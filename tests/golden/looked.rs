//! Every screen of the golden log, at fixed times.

use std::collections::BTreeSet;
use std::sync::Arc;

use barwright_app::contract::{FormOf, Intent, Look, Reading};
use barwright_app::{Engine, PaperOf};
use barwright_player::clock::pass;
use barwright_player::screens::{at_floor, at_lift, at_today};
use serde::Serialize;
use serde_json::{Map, Value, json};

/// What is looked at, by name: first while the session runs that the story ends in, then after it.
pub(crate) fn screens(log: &str) -> Value {
    let engine = super::imported(log);
    let mut now = after(log);
    let mut all = Map::new();
    for (name, look) in looks() {
        all.insert(name, shown(&engine, look, &now));
    }
    // Panels open panels: one of each kind, since some are of a row alone and there are hundreds.
    let mut open: Vec<String> = panels(&all["floor"]).into_iter().collect();
    while let Some(panel) = open.pop() {
        let kind = panel.split(':').next().unwrap_or(&panel);
        let name = format!("floor, {kind}");
        if !all.contains_key(&name) {
            let floor = shown(&engine, at_floor(Some(&panel)), &now);
            open.extend(panels(&floor));
            all.insert(name, floor);
        }
    }
    for exercise in exercises(log) {
        all.insert(format!("lift {exercise}"), shown(&engine, at_lift(&exercise), &now));
    }
    pass(&mut now, 60_000);
    let finished = engine.dispatch(Intent::Finish, now.clone());
    finished.unwrap_or_else(|error| panic!("the story ends in a session: {error:?}"));
    for (name, look) in [("today", at_today()), ("weeks", Look::Weeks), ("tally", Look::Tally)] {
        all.insert(format!("after, {name}"), shown(&engine, look, &now));
    }
    printed(&engine, &now, &mut all);
    Value::Object(all)
}

fn looks() -> Vec<(String, Look)> {
    let form = |of: FormOf, at: &str| Look::Form { of, at: at.into(), text: String::new() };
    let all = [
        ("today", at_today()),
        ("weeks", Look::Weeks),
        ("floor", at_floor(None)),
        ("tally", Look::Tally),
        ("balance of the week", Look::Balance { weeks: None }),
        ("balance of six weeks", Look::Balance { weeks: Some(6) }),
        ("equipment", Look::Equipment),
        ("care", Look::Care),
        ("plan", Look::Plan { text: None, week: None }),
        ("plan, week 2", Look::Plan { text: None, week: Some(2) }),
        ("maxes", form(FormOf::Maxes, "")),
        ("own exercise", form(FormOf::Exercises, super::story::OWN_EXERCISE)),
    ];
    all.into_iter().map(|(name, look)| (name.to_owned(), look)).collect()
}

/// What a coach prints and reads: the week in short, the next session and the week on paper. Paper is
/// no screen and has no JSON; it stands as its fields are listed.
fn printed(engine: &Engine, now: &Reading, all: &mut Map<String, Value>) {
    let week = engine.week_in_short(now.clone()).unwrap_or_else(|error| panic!("{error:?}"));
    all.insert("the coach's week in short".into(), value(&week));
    for (name, of) in [("next", PaperOf::Next), ("week", PaperOf::Week(None))] {
        let paper = engine.paper(of, now.clone()).unwrap_or_else(|error| panic!("{error:?}"));
        let listed = format!("{paper:#?}");
        all.insert(format!("on paper, {name}"), listed.lines().map(str::trim).collect());
    }
}

fn value(of: &impl Serialize) -> Value {
    serde_json::to_value(of).expect("plain data")
}

fn shown(engine: &Arc<Engine>, look: Look, now: &Reading) -> Value {
    let said = format!("{look:?}");
    let answer = engine.view(look, now.clone());
    let answer = answer.unwrap_or_else(|error| panic!("{said}: {error:?}"));
    without_keys(json!({ "screen": answer.screen, "wakes_at": answer.wakes_at }))
}

/// A key's name, label and state say what it is; what it sends is the contract's and stands in the
/// vectors. Without it the file is a third as large.
fn without_keys(mut value: Value) -> Value {
    match &mut value {
        Value::Object(fields) => {
            if fields.contains_key("label") && fields.contains_key("enabled") {
                // What opens a panel is looked for by its name.
                if let Some(panel) = fields["action"].pointer("/show/look/floor/draft/panel") {
                    let panel = panel.clone();
                    fields.insert("panel".into(), panel);
                }
                fields.remove("action");
                fields.remove("says");
            }
            fields.retain(|_, one| !matches!(one, Value::Null));
            for one in fields.values_mut() {
                *one = without_keys(one.take());
            }
        }
        Value::Array(all) => all.iter_mut().for_each(|one| *one = without_keys(one.take())),
        _ => {}
    }
    value
}

/// The panels that keys of the floor open.
fn panels(floor: &Value) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    let mut next = vec![floor];
    while let Some(value) = next.pop() {
        match value {
            Value::Object(fields) => {
                found.extend(fields.get("panel").and_then(Value::as_str).map(str::to_owned));
                next.extend(fields.values());
            }
            Value::Array(all) => next.extend(all),
            _ => {}
        }
    }
    found
}

/// The exercises that were on a sheet, by their slugs.
fn exercises(log: &str) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    for line in super::events(log) {
        let event = &line["body"]["event"];
        let blocks = event.pointer("/began/sheet/blocks").and_then(Value::as_array);
        let entries = blocks.into_iter().flatten().filter_map(|block| block["entries"].as_array());
        let began = entries.flatten();
        let others = ["/swapped/to", "/entry_added/entry"].map(|at| event.pointer(at));
        let all = began.chain(others.into_iter().flatten());
        found.extend(all.filter_map(|entry| entry["exercise"].as_str().map(str::to_owned)));
    }
    found
}

/// A minute after the log's last line.
fn after(log: &str) -> Reading {
    let last = super::events(log).pop().expect("the log has lines");
    let whole = |of: &Value| of.as_i64();
    let minutes = whole(&last["offset_min"]).and_then(|minutes| i32::try_from(minutes).ok());
    let mut now = Reading {
        wall_ms: whole(&last["wall_ms"]).expect("a time"),
        offset_minutes: minutes.expect("an offset"),
        boot_ms: whole(&last["body"]["boot_ms"]),
        boot_id: last["body"]["boot_id"].as_str().map(str::to_owned),
    };
    pass(&mut now, 60_000);
    now
}

/// A value as it is committed: a line for each value, one space a level.
pub(crate) fn pretty(value: &Value) -> String {
    let mut text = Vec::new();
    let formatter = serde_json::ser::PrettyFormatter::with_indent(b" ");
    let mut writer = serde_json::Serializer::with_formatter(&mut text, formatter);
    value.serialize(&mut writer).expect("plain data");
    String::from_utf8(text).expect("JSON is UTF-8")
}

/// The first line in which a screen differs, with what it was.
pub(crate) fn first_difference(name: &str, was: Option<String>, is: Option<String>) -> String {
    let (Some(was), Some(is)) = (&was, &is) else {
        return format!("  {name}: {}", if is.is_some() { "is new" } else { "is gone" });
    };
    let lines = was.lines().zip(is.lines()).find(|(was, is)| was != is);
    let (was, is) = lines.unwrap_or(("", "it has more or fewer lines"));
    format!("  {name}: was {}\n    is {}", was.trim(), is.trim())
}
