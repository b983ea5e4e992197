//! Today's sheet: what is on, with what loads, how long, what this gym lacks.

use barwright_domain::desk::At;
use barwright_domain::owners::Cutting;
use barwright_domain::plan::Plan;
use barwright_domain::prescribe::{Need, duration};
use barwright_domain::quantity::MassUnit;
use barwright_domain::session::{Because, Call, Entry, SetKind, Sheet};

use super::form::{exercises, maxes, records, start};
use super::key::{arranges, does, shows};
use super::name;
use super::row::{aloud, row, why};
use super::weeks;
use crate::contract::{
    Arrange, Draft, Field, FormOf, Intent, Key, Look, Row, SessionChange, TodayScreen,
};
use crate::facts::{Held, Today, place};
use crate::phrase::Words;

/// What is on.
pub(super) fn screen(
    held: &Held,
    today: &Today<'_>,
    minutes: Option<u32>,
    words: Words,
) -> TodayScreen {
    let sheet = &today.laid_out.sheet;
    let gym = held.gym();
    let rows = rows(held, today.place, sheet, gym.unit, words);
    let (plan, weeks) = (&today.plan.name, today.plan.weeks.len());
    let week = usize::from(today.place.week);
    let called = name::gym(held, &gym.name, words);
    let subtitle = words.today().subtitle(plan, week, weeks, sheet.week_kind, &called);
    let time = words.words().minutes(duration(sheet).total());
    let left_out = today.laid_out.left_out.iter();
    let called = |slug: &str| name::exercise(held, slug, slug, words);
    let needs = today.laid_out.needs.iter().filter_map(|need| match need {
        Need::BodyMass => Some((need, String::new())),
        Need::Max(slug) => Some((need, called(slug))),
        Need::NoPain(_) | Need::Coach(_) => None,
    });
    TodayScreen {
        title: sheet.title.clone(),
        left_out: left_out.map(|one| words.sheet().left_out(one)).collect(),
        cautions: cautions(held, today, words),
        needs: needs.map(|(need, name)| field(held, need, &name, gym.unit, words)).collect(),
        keys: keys(held, today, minutes, words),
        aloud: words.words().spoken(&[&sheet.title, &subtitle, &time, &aloud(&rows, words)]),
        subtitle,
        duration: time,
        rows,
    }
}

/// What to take care of today: the general cautions before the first session of all, on a day that
/// tests a max and after a lay-off; what a minor or a lift that hurt must wait for.
fn cautions(held: &Held, today: &Today<'_>, words: Words) -> Vec<String> {
    let say = words.cautions();
    let called = |slug: &str| name::exercise(held, slug, slug, words);
    let calls = || today.laid_out.sheet.entries().flat_map(|entry| &entry.calls);
    let tests = calls().any(|call| call.kind == SetKind::Test);
    let off = calls().flat_map(|call| &call.reason.0).any(|because| {
        matches!(because, Because::Cut { cut, .. } if matches!(cut.why, Cutting::LayOff { .. }))
    });
    let mut lines = Vec::new();
    if held.demo {
        lines.push(words.start().invented().to_owned());
    }
    if held.left_open {
        lines.push(words.today().left_open().to_owned());
    }
    if held.desk.under_18 {
        lines.push(say.supervised().to_owned());
    }
    lines.extend(today.laid_out.needs.iter().filter_map(|need| match need {
        Need::NoPain(slug) => Some(words.today().pain_first(&called(slug))),
        Need::Coach(slug) => Some(say.no_test(&called(slug))),
        Need::BodyMass | Need::Max(_) => None,
    }));
    if held.state.run().is_none() || tests || off || held.desk.was_ill.is_some() {
        lines.extend(before_all(words));
    }
    if tests {
        lines.push(say.max_try().to_owned());
    }
    // One that comes a day late is nobody's absence.
    if held.state.run().is_some() && today.behind > 1 {
        lines.push(words.weeks().behind(today.behind));
    }
    lines
}

fn before_all(words: Words) -> Vec<String> {
    words.cautions().before_all().iter().map(|line| (*line).to_owned()).collect()
}

fn keys(held: &Held, today: &Today<'_>, minutes: Option<u32>, words: Words) -> Vec<Key> {
    let say = words.today();
    let session = Some(place::name(today.place));
    let mut keys = Vec::new();
    if held.left_open {
        let begin = Intent::Begin { session: session.clone(), minutes, sure: false };
        keys.push(does("begin", say.begin(), begin));
    }
    if held.left_open || held.state.running().is_some() {
        keys.push(shows("floor", say.back_to_floor(), Look::Floor { draft: Draft::default() }));
    } else {
        let begin = Intent::Begin { session: session.clone(), minutes, sure: false };
        keys.push(does("begin", say.begin(), begin));
    }
    if held.state.running().is_none() {
        let lacks = |entry: &Entry| !entry.lacks.is_empty();
        if today.laid_out.sheet.entries().any(lacks) {
            let fit = Arrange::Change { change: SessionChange::Fit };
            let again = Look::Today { session: session.clone(), minutes };
            keys.push(arranges("fit", words.change().fit(), today.place, fit).then(again));
        }
        let (of, at) = (FormOf::Session, place::name(today.place));
        let look = Look::Form { of, at, text: String::new() };
        keys.push(shows("change", words.change().open(), look));
    }
    for choice in [30, 45, 60] {
        let look = Look::Today { session: session.clone(), minutes: Some(choice) };
        keys.push(
            shows(format!("minutes-{choice}"), say.minutes(choice), look)
                .chosen(minutes == Some(choice)),
        );
    }
    if minutes.is_some() {
        let look = Look::Today { session, minutes: None };
        keys.push(shows("minutes-all", say.all_of_it(), look));
    }
    keys.push(shows("weeks", say.another_session(), Look::Weeks));
    keys.extend(gyms(held, words));
    keys.push(shows("maxes", words.maxes().open(), maxes::look("")));
    keys.push(shows("exercises", words.exercises().open(), exercises::look("")));
    keys.push(shows("records", words.records().open(), records::look()));
    if held.demo {
        keys.push(start::demo(false, words));
    }
    keys
}

/// The most gyms that are chosen among here: of more, all of them stand on their own screen.
const MOST_GYMS: usize = 6;

/// The gyms of the lifter's own that are not trained in, a press each, and the way to all of them.
fn gyms(held: &Held, words: Words) -> Vec<Key> {
    let here = held.gym().name;
    let own = held.desk.gyms.iter().filter(|gym| gym.name != here).take(MOST_GYMS);
    let keys = own.map(|gym| {
        let intent = Intent::ChooseGym { name: gym.name.clone() };
        let (id, name) = (format!("gym-{}", gym.name), gym.name.as_str());
        does(id, words.today().in_gym(name), intent)
            .then(Look::Today { session: None, minutes: None })
    });
    let name = name::gym(held, &here, words);
    keys.chain([shows("equipment", words.today().gym(&name), Look::Equipment)]).collect()
}

/// The field that takes what the sheet needs.
pub(super) fn field(held: &Held, need: &Need, name: &str, unit: MassUnit, words: Words) -> Field {
    let (id, unit) = match need {
        Need::BodyMass => ("body-mass".to_owned(), held.locale.unit),
        Need::Max(slug) | Need::NoPain(slug) | Need::Coach(slug) => (format!("max:{slug}"), unit),
    };
    let (label, hint) = words.sheet().need(need, name, unit);
    Field { id, label, value: String::new(), hint, numeric: true }
}

/// The sheet's rows: an exercise, its warm-up, its sets in lines of what is alike.
fn rows(held: &Held, place: At, sheet: &Sheet, unit: MassUnit, words: Words) -> Vec<Row> {
    let mut rows = Vec::new();
    if let Some(warm_up) = sheet.warm_up.filter(|seconds| seconds.count() > 0) {
        rows.push(row("warm-up", 1, words.today().warm_up(warm_up)));
    }
    for (at, block) in sheet.blocks.iter().enumerate() {
        if block.entries.len() > 1 {
            let text = words.today().back_to_back(block.rest_after_round);
            rows.push(row(format!("block-{at}"), 0, text));
        }
        for entry in &block.entries {
            rows.push(heading(held, entry, words).keys(swap(held, place, entry, words)));
            if let Some(ramp) = words.sheet().ramp(entry, unit, words.numerals) {
                rows.push(row(format!("ramp-{}", entry.id.0), 2, ramp));
            }
            rows.extend(set_rows(held, entry, unit, words));
        }
    }
    rows
}

/// Another exercise in its place.
fn swap(held: &Held, at: At, entry: &Entry, words: Words) -> Vec<Key> {
    if held.state.running().is_some() {
        return Vec::new();
    }
    let name = name::exercise(held, &entry.exercise, &entry.name, words);
    let at = format!("{}:swap:{}", place::name(at), entry.exercise);
    let look = Look::Form { of: FormOf::Session, at, text: String::new() };
    vec![shows("instead", words.change().instead(&name), look)]
}

fn heading(held: &Held, entry: &Entry, words: Words) -> Row {
    let detail = if entry.lacks.is_empty() {
        name::set_up(&entry.set_up, words).join(", ")
    } else {
        let instead: Vec<String> = entry
            .instead
            .iter()
            .filter(|substitute| substitute.possible)
            .map(|one| name::exercise(held, &one.exercise, &one.name, words))
            .collect();
        words.today().lacks(&entry.lacks, &instead)
    };
    let name = name::exercise(held, &entry.exercise, &entry.name, words);
    row(format!("entry-{}", entry.id.0), 1, words.today().exercise(&name, entry.optional))
        .detail(detail)
        .warns(!entry.lacks.is_empty())
}

/// Neighbouring sets that differ in nothing but their round and side share a line.
fn set_rows(held: &Held, entry: &Entry, unit: MassUnit, words: Words) -> Vec<Row> {
    let work: Vec<&Call> = entry.calls.iter().filter(|call| call.kind != SetKind::Ramp).collect();
    let alike = |one: &&Call, other: &&Call| {
        Call { round: 0, side: None, ..(*one).clone() }
            == Call { round: 0, side: None, ..(*other).clone() }
    };
    work.chunk_by(alike)
        .enumerate()
        .map(|(at, calls)| {
            let why =
                calls.first().map(|call| why(held, entry, call, unit, words)).unwrap_or_default();
            let text = words.sheet().line(calls, unit, words.numerals);
            row(format!("sets-{}-{at}", entry.id.0), 2, text).why(why)
        })
        .collect()
}

/// The plan is through.
pub(super) fn plan_is_over(plan: &Plan, words: Words) -> TodayScreen {
    let text = words.refusal().plan_is_over();
    let keys = vec![shows("weeks", words.today().weeks(), Look::Weeks)];
    bare(&plan.name, text, keys, words)
}

/// Without a plan.
pub(super) fn nothing_on(held: &Held, words: Words) -> TodayScreen {
    let say = words.today();
    let mut keys = weeks::making(held, words);
    keys.push(shows("start", words.start().open(), start::look()));
    keys.push(start::demo(!held.demo, words));
    keys.extend(gyms(held, words));
    keys.push(shows("exercises", words.exercises().open(), exercises::look("")));
    let cautions = before_all(words);
    TodayScreen { cautions, ..bare(say.nothing_on(), say.no_plan(), keys, words) }
}

fn bare(title: &str, subtitle: &str, keys: Vec<Key>, words: Words) -> TodayScreen {
    TodayScreen {
        title: title.to_owned(),
        subtitle: subtitle.to_owned(),
        duration: String::new(),
        rows: Vec::new(),
        left_out: Vec::new(),
        cautions: Vec::new(),
        needs: Vec::new(),
        keys,
        aloud: words.words().spoken(&[title, subtitle]),
    }
}
