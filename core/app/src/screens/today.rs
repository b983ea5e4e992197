//! Today's sheet: what is on, with what loads, how long, what this gym lacks.

use barwright_domain::prescribe::{Need, duration};
use barwright_domain::quantity::{MassUnit, Numerals};
use barwright_domain::session::{Call, Entry, Reading, SetKind, Sheet};

use super::key::{does, shows};
use super::row::{aloud, row};
use crate::contract::{Draft, EngineError, Field, Intent, Look, Row, TodayScreen};
use crate::engine::Core;
use crate::phrase::en::{self, cautions, words};
use crate::today::{self, Place};

/// What is on.
pub(super) fn screen(
    core: &Core,
    session: Option<&str>,
    minutes: Option<u32>,
    at: &Reading,
) -> Result<TodayScreen, EngineError> {
    if core.plan.is_none() {
        return Ok(without_plan(core));
    }
    let place = match today::place(core, session) {
        Ok(place) => place,
        // The plan is through: what it was stands in its weeks.
        Err(error @ EngineError::Refused { .. }) if session.is_none() => {
            return Ok(plan_is_over(core, &error));
        }
        Err(error) => return Err(error),
    };
    let laid_out = today::sheet(core, place, minutes, at)?;
    let sheet = &laid_out.sheet;
    let numerals = core.locale.numerals;
    let unit = core.gym().unit;
    let rows = rows(sheet, unit, numerals);
    let subtitle = subtitle(core, place, sheet);
    let time = en::words::minutes(duration(sheet).total());
    let spoken = format!("{}. {subtitle}. {time}. {}", sheet.title, aloud(&rows));
    Ok(TodayScreen {
        title: sheet.title.clone(),
        subtitle,
        duration: time,
        left_out: laid_out.left_out.iter().map(en::sheet::left_out).collect(),
        // Once, and where they matter: before the first session of all.
        cautions: if core.state.run().is_none() {
            cautions::BEFORE_ALL.iter().map(|line| (*line).to_owned()).collect()
        } else {
            Vec::new()
        },
        needs: laid_out.needs.iter().map(|need| field(core, need)).collect(),
        keys: keys(core, place, minutes),
        aloud: spoken,
        rows,
    })
}

fn keys(core: &Core, place: Place, minutes: Option<u32>) -> Vec<crate::contract::Key> {
    let session = Some(place.name());
    let mut keys = Vec::new();
    if core.state.running().is_some() {
        keys.push(shows("floor", "Back to the floor", Look::Floor { draft: Draft::default() }));
    } else {
        keys.push(
            does("begin", "Begin", Intent::Begin { session: session.clone(), minutes })
                .says("Begin this session"),
        );
    }
    for choice in [30, 45, 60] {
        let look = Look::Today { session: session.clone(), minutes: Some(choice) };
        keys.push(
            shows(format!("minutes-{choice}"), format!("{choice} min"), look)
                .says(format!("What to leave out for {choice} minutes"))
                .chosen(minutes == Some(choice)),
        );
    }
    if minutes.is_some() {
        let look = Look::Today { session, minutes: None };
        keys.push(shows("minutes-all", "All of it", look));
    }
    keys.push(shows("weeks", "Another session", Look::Weeks));
    keys
}

fn subtitle(core: &Core, place: Place, sheet: &Sheet) -> String {
    let plan = core.plan.as_ref().map(|plan| plan.name.clone()).unwrap_or_default();
    let weeks = core.plan.as_ref().map_or(0, |plan| plan.weeks.len());
    let kind = match sheet.week_kind {
        barwright_domain::call::WeekKind::Ordinary => String::new(),
        kind => format!(" ({})", words::week_kind(kind)),
    };
    format!("{plan} · week {} of {weeks}{kind} · {}", place.week + 1, core.gym().name)
}

fn field(core: &Core, need: &Need) -> Field {
    let (name, unit) = match need {
        Need::BodyMass => (String::new(), core.locale.unit),
        Need::Max(slug) => (
            core.catalogue.get(slug).map_or_else(|| slug.clone(), |found| found.name.to_string()),
            core.gym().unit,
        ),
    };
    let (id, label, hint) = en::sheet::need(need, &name, unit);
    Field { id, label, value: String::new(), hint, numeric: true }
}

/// The sheet's rows: an exercise, its warm-up, its sets in lines of what is alike.
pub(super) fn rows(sheet: &Sheet, unit: MassUnit, numerals: Numerals) -> Vec<Row> {
    let mut rows = Vec::new();
    if let Some(warm_up) = sheet.warm_up.filter(|seconds| seconds.count() > 0) {
        rows.push(row("warm-up", 1, format!("General warm-up · {}", warm_up.print())));
    }
    for (at, block) in sheet.blocks.iter().enumerate() {
        if block.entries.len() > 1 {
            let text =
                format!("Back to back · rest {} after the round", block.rest_after_round.print());
            rows.push(row(format!("block-{at}"), 0, text));
        }
        for entry in &block.entries {
            rows.push(heading(entry));
            if let Some(ramp) = en::sheet::ramp(entry, unit, numerals) {
                rows.push(row(format!("ramp-{}", entry.id.0), 2, ramp));
            }
            rows.extend(set_rows(entry, unit, numerals));
        }
    }
    rows
}

fn heading(entry: &Entry) -> Row {
    let optional = if entry.optional { " (optional)" } else { "" };
    let detail = if entry.lacks.is_empty() {
        entry.set_up.join(", ")
    } else {
        let lacks = en::floor::lacks_here(&entry.lacks);
        let instead: Vec<&str> = entry
            .instead
            .iter()
            .filter(|substitute| substitute.possible)
            .map(|substitute| substitute.name.as_str())
            .collect();
        match instead.as_slice() {
            [] => lacks,
            some => format!("{lacks}; instead: {}", some.join(" or ")),
        }
    };
    row(format!("entry-{}", entry.id.0), 1, format!("{}{optional}", entry.name))
        .detail(detail)
        .warns(!entry.lacks.is_empty())
}

/// Neighbouring sets that differ in nothing but their round and side share a line.
fn set_rows(entry: &Entry, unit: MassUnit, numerals: Numerals) -> Vec<Row> {
    let work: Vec<&Call> = entry.calls.iter().filter(|call| call.kind != SetKind::Ramp).collect();
    let alike = |one: &&Call, other: &&Call| {
        Call { round: 0, side: None, ..(*one).clone() }
            == Call { round: 0, side: None, ..(*other).clone() }
    };
    work.chunk_by(alike)
        .enumerate()
        .map(|(at, calls)| {
            let why = calls
                .first()
                .map(|call| en::reason::lines(&call.reason, unit, numerals))
                .unwrap_or_default();
            row(format!("sets-{}-{at}", entry.id.0), 2, en::sheet::line(calls, unit, numerals))
                .why(why)
        })
        .collect()
}

fn plan_is_over(core: &Core, error: &EngineError) -> TodayScreen {
    let title = core.plan.as_ref().map(|plan| plan.name.clone()).unwrap_or_default();
    let text = error.to_string();
    TodayScreen {
        aloud: format!("{title}. {text}"),
        title,
        subtitle: text,
        duration: String::new(),
        rows: Vec::new(),
        left_out: Vec::new(),
        cautions: Vec::new(),
        needs: Vec::new(),
        keys: vec![shows("weeks", "The plan's weeks", Look::Weeks)],
    }
}

fn without_plan(core: &Core) -> TodayScreen {
    let text = "No plan yet. Read a plan file and adopt it.";
    TodayScreen {
        title: "Nothing is on".to_owned(),
        subtitle: text.to_owned(),
        duration: String::new(),
        rows: Vec::new(),
        left_out: Vec::new(),
        cautions: cautions::BEFORE_ALL.iter().map(|line| (*line).to_owned()).collect(),
        needs: Vec::new(),
        keys: vec![
            shows("equipment", "What this gym has", Look::Equipment)
                .says(format!("What {} has", core.gym().name)),
        ],
        aloud: format!("Nothing is on. {text}"),
    }
}
