//! An exercise in a session.

use chrono::Weekday;

use super::super::bounds;
use super::super::line::{Line, Rests, Weeks};
use super::super::model::{Gear, SetUp, Sides, Slot, Substitute};
use super::super::rules::{Rule, RuleKind};
use super::super::shapes;
use super::line::{Shared, how_many, left, rpe, written};
use super::places::{Place, SlotPlace};
use super::{GOALS, Names, all, misses, ramp, rests, weeks, word, words};
use crate::call::{LoadCall, MaxOf, Side};
use crate::catalogue::Counting;
use crate::text::{Found, Item, Problem, RowKind, Table};

pub(super) const DAYS: [Weekday; 7] = [
    Weekday::Mon,
    Weekday::Tue,
    Weekday::Wed,
    Weekday::Thu,
    Weekday::Fri,
    Weekday::Sat,
    Weekday::Sun,
];
const SIDES: [Sides; 4] =
    [Sides::Together, Sides::WeakerFirst, Sides::LeftFirst, Sides::RightFirst];
const GEAR: [Gear; 4] = [Gear::Belt, Gear::Wraps, Gear::Straps, Gear::Sleeves];
const RULES: [RuleKind; 7] = [
    RuleKind::AsPlanned,
    RuleKind::DoubleProgression,
    RuleKind::TwoForTwo,
    RuleKind::AddWhenMade,
    RuleKind::ByEffort,
    RuleKind::LessAssistance,
    RuleKind::MoreAddedLoad,
];

/// Reads an exercise in a session of a plan of `count` weeks; `rest` is what session and plan say.
pub(super) fn slot(
    table: &Table<'_>,
    names: &Names<'_>,
    count: usize,
    outer: Rests,
) -> Option<Slot> {
    let exercise = table.need("name").and_then(|item| names.exercise(&item));
    let percent_of = match table.get("percent_of") {
        Some(item) => item
            .text(bounds::LOAD)
            .and_then(|text| words::max_of(&item, text, names))
            .unwrap_or_default(),
        None => MaxOf::Own,
    };
    let rest = rests(table);
    let shared = Shared { names, exercise, percent_of, weeks: count, rest: rest.or(outer) };
    let of_exercise = written(table, &shared, rest);
    let lines: Vec<Line> = match table.get("set") {
        Some(item) => {
            table.clash("sets", &["set"]);
            let list = item.list(bounds::LINES).unwrap_or_default();
            list.iter()
                .filter_map(|item| {
                    item.table(&shapes::SET, |row| {
                        let side = word(row, "side", shapes::SIDE, &[Side::Left, Side::Right]);
                        let own = (weeks(row, count), side, cues(row));
                        written(row, &shared, rests(row)).or(&of_exercise).line(row, &shared, own)
                    })
                })
                .collect()
        }
        None => {
            let mut row = of_exercise.clone();
            // The exercise's rests are kept with it, not with its one row.
            row.rest = Rests::default();
            row.line(table, &shared, (Weeks::All, None, Vec::new())).into_iter().collect()
        }
    };
    let wear = table.get("wear").and_then(|item| item.list(GEAR.len())).unwrap_or_default();
    let mut wear: Vec<Gear> = wear
        .iter()
        .filter_map(|item| item.word(shapes::GEAR))
        .filter_map(|place| GEAR.get(place).copied())
        .collect();
    wear.sort_unstable();
    wear.dedup();
    let text = |key| {
        let item: Option<Item<'_>> = table.get(key);
        item.and_then(|item| item.text(bounds::NAME)).map(str::to_string)
    };
    Some(Slot {
        weeks: weeks(table, count),
        goal: word(table, "goal", shapes::GOALS, &GOALS),
        superset: text("superset"),
        optional: table.get("optional").and_then(|item| item.flag()).unwrap_or_default(),
        keep: table.get("keep").and_then(|item| item.flag()).unwrap_or_default(),
        track: text("track"),
        sides: word(table, "sides", shapes::SIDES, &SIDES),
        counting: word(table, "counted", shapes::COUNTINGS, &Counting::ALL),
        ramp: ramp(table),
        set_up: set_up(table),
        wear,
        cues: cues(table),
        rest,
        substitutes: substitutes(table, names),
        next: next(table, &lines),
        misses: misses(table),
        exercise: exercise?.slug.to_string(),
        lines,
    })
}

/// Where an exercise and its rows stand; one row where none is written apart.
pub(super) fn place(table: &Table<'_>) -> SlotPlace {
    let rows = table.tables("set");
    SlotPlace { own: Place::of(table), rows: rows.iter().map(Place::of).collect() }
}

fn cues(table: &Table<'_>) -> Vec<String> {
    let list = table.get("cues").and_then(|item| item.list(bounds::CUES)).unwrap_or_default();
    list.iter().filter_map(|item| item.text(bounds::SHORT)).map(str::to_string).collect()
}

fn set_up(table: &Table<'_>) -> SetUp {
    table
        .get("set_up")
        .and_then(|item| {
            item.table(&shapes::SET_UP, |set_up| {
                let of = |key| {
                    let item: Option<Item<'_>> = set_up.get(key);
                    item.and_then(|item| item.text(bounds::SHORT)).map(str::to_string)
                };
                Some(SetUp {
                    pins: of("pins"),
                    seat: of("seat"),
                    attachment: of("attachment"),
                    bench: of("bench"),
                })
            })
        })
        .unwrap_or_default()
}

fn substitutes(table: &Table<'_>, names: &Names<'_>) -> Vec<Substitute> {
    let list = table
        .get("substitutes")
        .and_then(|item| item.list(bounds::SUBSTITUTES))
        .unwrap_or_default();
    list.iter().filter_map(|item| substitute(item, names)).collect()
}

fn substitute(item: &Item<'_>, names: &Names<'_>) -> Option<Substitute> {
    let bare = |exercise: String| Substitute {
        exercise,
        sets: None,
        how_many: None,
        load: None,
        effort: None,
    };
    if item.found() != Found::Table {
        return names.exercise(item).map(|exercise| bare(exercise.slug.to_string()));
    }
    item.table(&shapes::SUBSTITUTE, |table| {
        let exercise = table.need("name").and_then(|item| names.exercise(&item));
        table.clash("left", &["rpe"]);
        let sets = table
            .get("sets")
            .and_then(|item| item.whole(1, i64::try_from(bounds::SETS).unwrap_or(i64::MAX)))
            .and_then(|sets| u8::try_from(sets).ok());
        let how_many = how_many(table);
        let load = table.get("load").and_then(|item| words::load(&item, names, &MaxOf::Own));
        let of_left = table.get("left").and_then(|item| left(&item));
        let of_rpe = table.get("rpe").and_then(|item| rpe(&item));
        let exercise = exercise?.slug.to_string();
        Some(Substitute { sets, how_many, load, effort: of_left.or(of_rpe), ..bare(exercise) })
    })
}

/// Whether a rule adds load by itself.
const fn adds_load(kind: RuleKind) -> bool {
    match kind {
        RuleKind::DoubleProgression
        | RuleKind::TwoForTwo
        | RuleKind::AddWhenMade
        | RuleKind::LessAssistance
        | RuleKind::MoreAddedLoad => true,
        RuleKind::AsPlanned | RuleKind::ByEffort => false,
    }
}

/// What owns the load of a row so that no rule may add to it: a max, or the plan week by week.
fn owned(lines: &[Line]) -> Option<RowKind> {
    lines.iter().find_map(|line| {
        let percent = |load: &LoadCall| matches!(load, LoadCall::Percent { .. });
        let mass = |load: &LoadCall| {
            matches!(load, LoadCall::Mass(_) | LoadCall::Added(_) | LoadCall::Assisted(_))
        };
        if line.load.iter().flatten().any(percent) {
            Some(RowKind::Percent)
        } else if line.load.by_week() && line.load.iter().flatten().any(mass) {
            Some(RowKind::ByWeek)
        } else {
            None
        }
    })
}

fn next(table: &Table<'_>, lines: &[Line]) -> Vec<Rule> {
    let Some(list) = table.get("next").and_then(|item| item.one_or_list(bounds::RULES)) else {
        return Vec::new();
    };
    let rules = list.iter().map(|item| {
        if item.found() != Found::Table {
            let kind = item.word(shapes::RULES_KNOWN).and_then(|at| RULES.get(at).copied());
            return kind.map(|kind| Rule { kind, step: None, up: false });
        }
        item.table(&shapes::RULE, |table| {
            let kind = table
                .need("rule")
                .and_then(|item| item.word(shapes::RULES_KNOWN))
                .and_then(|at| RULES.get(at).copied());
            let step = table.get("step").and_then(|item| words::step(&item));
            let up = table.get("up").and_then(|item| item.flag()).unwrap_or_default();
            Some(Rule { kind: kind?, step, up })
        })
    });
    let rules = all(rules).unwrap_or_default();
    let owned = owned(lines);
    for (at, rule) in rules.iter().enumerate() {
        if let (Some(row), true, Some(item)) = (owned, adds_load(rule.kind), list.get(at)) {
            item.fault(Problem::TwoOwners { row });
        }
        if rules.iter().take(at).any(|earlier| earlier.kind == rule.kind)
            && let Some(item) = list.get(at)
        {
            item.fault(Problem::Repeated { first_line: item.line() });
        }
    }
    rules
}
