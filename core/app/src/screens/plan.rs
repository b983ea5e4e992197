//! A plan read: what it says, or what is wrong with it and where.

use barwright_domain::catalogue::Catalogue;
use barwright_domain::coach::{self, Finding, Level};
use barwright_domain::equipment::{self, Equipment};
use barwright_domain::plan::{Entry, Plan, PlanFile, WeekSession};
use barwright_domain::quantity::Numerals;

use super::key::{does, shows};
use super::row::{aloud, row};
use crate::Locale;
use crate::contract::{EngineError, Intent, Key, Look, PlanScreen, RefusalCode, Row};
use crate::engine::Core;
use crate::phrase::en::coach::CoachWords;
use crate::phrase::en::plan::{self as words, PlanWords};
use crate::phrase::en::{self, words as small};

/// A plan file as the Plan screen shows it, with no store and nothing adopted: the whole of it, or
/// one week, from 1.
pub fn plan_in_file(bytes: &[u8], week: Option<u32>, locale: &Locale) -> PlanScreen {
    let gym = equipment::builtin_in(locale.unit);
    plan_checked(bytes, week, locale, &gym).0
}

/// As [`plan_in_file`], looked over for a gym; with how much the weightiest remark matters that the
/// file does not accept.
pub fn plan_checked(
    bytes: &[u8],
    week: Option<u32>,
    locale: &Locale,
    gym: &Equipment,
) -> (PlanScreen, Option<Level>) {
    match Plan::read_bytes(bytes, &Catalogue::builtin()) {
        Ok(file) => {
            let text = String::from_utf8_lossy(bytes);
            let mut screen = plan(&file.plan, week, locale.numerals, Some(&text));
            let worst = match week {
                None => remarks(&mut screen, &file, &text, locale.numerals, gym),
                Some(_) => None,
            };
            screen.keys.push(does("adopt", "Adopt it", Intent::AdoptPlan { text: text.into() }));
            (screen, worst)
        }
        Err(faults) => {
            let text = String::from_utf8_lossy(bytes);
            let faults: Vec<_> =
                faults.iter().map(|fault| en::faults::in_place(fault, &text)).collect();
            let title = format!("The plan has {}", small::count(faults.len(), "fault", "faults"));
            let spoken: Vec<_> = faults
                .iter()
                .map(|fault| format!("Line {}: {}. {}", fault.line, fault.problem, fault.advice))
                .collect();
            let screen = PlanScreen {
                aloud: format!("{title}. {}", spoken.join(" ")),
                title,
                subtitle: "Nothing was changed.".to_owned(),
                rows: Vec::new(),
                faults,
                keys: Vec::new(),
            };
            (screen, None)
        }
    }
}

/// Adds what a coach would say of the plan, and what the file accepts of it.
fn remarks(
    screen: &mut PlanScreen,
    file: &PlanFile,
    text: &str,
    numerals: Numerals,
    gym: &Equipment,
) -> Option<Level> {
    let found = coach::look_over(file, &Catalogue::builtin(), gym);
    let catalogue = Catalogue::builtin().with_own(file.plan.exercises.iter().cloned());
    let words = CoachWords { plan: &file.plan, catalogue: &catalogue, unit: gym.unit, numerals };
    let open: Vec<&Finding> = found.iter().filter(|one| one.accepted.is_none()).collect();
    screen.faults = open.iter().map(|finding| words.in_place(finding, text)).collect();
    if !open.is_empty() {
        let count = small::count(open.len(), "remark", "remarks");
        screen.subtitle = format!("{} · {count}", screen.subtitle);
        let spoken: Vec<String> = screen
            .faults
            .iter()
            .map(|one| format!("{}, line {}: {}.", one.label, one.line, one.problem))
            .collect();
        screen.aloud = format!("{} {}", screen.aloud, spoken.join(" "));
    }
    let accepted: Vec<String> = found.iter().filter_map(|one| words.accepted(one)).collect();
    if !accepted.is_empty() {
        screen.rows.push(row("accepted", 0, "Accepted"));
        let each = accepted.into_iter().enumerate();
        screen.rows.extend(each.map(|(at, text)| row(format!("accepted.{at}"), 1, text)));
    }
    open.iter().map(|finding| finding.level).max()
}

/// The plan in a text, or the one that is on.
pub(super) fn screen(
    core: &Core,
    text: Option<&str>,
    week: Option<u32>,
) -> Result<PlanScreen, EngineError> {
    match (text, &core.plan) {
        (Some(text), _) => {
            let (mut screen, _) = plan_checked(text.as_bytes(), week, &core.locale, &core.gym());
            let running = core.state.running().is_some();
            for key in screen.keys.iter_mut().filter(|key| key.id == "adopt") {
                key.enabled = !running;
            }
            Ok(screen)
        }
        (None, Some(own)) => Ok(plan(own, week, core.locale.numerals, None)),
        (None, None) => Err(en::refusal::coded(RefusalCode::NothingToGoBy)),
    }
}

/// A plan laid out; `text` is its file's, where it is not the one that is on.
fn plan(plan: &Plan, week: Option<u32>, numerals: Numerals, text: Option<&str>) -> PlanScreen {
    let catalogue = Catalogue::builtin().with_own(plan.exercises.iter().cloned());
    let words = PlanWords { catalogue: &catalogue, numerals };
    let last = plan.weeks.len();
    // A week that the plan doesn't have is the nearest one that it has.
    let week =
        week.and_then(|week| usize::try_from(week).ok()).map(|week| week.clamp(1, last.max(1)));
    let (subtitle, rows) = match week {
        Some(week) => one_week(plan, &words, week),
        None => (words::in_short(plan), whole(plan, &words)),
    };
    PlanScreen {
        title: plan.name.clone(),
        aloud: format!("{}. {subtitle}. {}", plan.name, aloud(&rows)),
        subtitle,
        rows,
        faults: Vec::new(),
        keys: keys(week, last, text),
    }
}

fn keys(week: Option<usize>, last: usize, text: Option<&str>) -> Vec<Key> {
    let look = |week: Option<usize>| Look::Plan {
        text: text.map(str::to_owned),
        week: week.and_then(|week| u32::try_from(week).ok()),
    };
    match week {
        None => vec![shows("week", "Week by week", look(Some(1)))],
        Some(week) => vec![
            shows("before", "Week before", look(Some(week.saturating_sub(1)))).enabled(week > 1),
            shows("after", "Week after", look(Some(week + 1))).enabled(week < last),
            shows("whole", "The whole plan", look(None)),
        ],
    }
}

/// One week, counted from 1: its sessions with its own numbers.
fn one_week(plan: &Plan, words: &PlanWords<'_>, week: usize) -> (String, Vec<Row>) {
    let at = week.saturating_sub(1);
    let mut rows = Vec::new();
    for index in 0..plan.sessions_of(at).len() {
        let Some(session) = plan.session(at, index) else { continue };
        let place = session.session;
        rows.push(session_row(plan, &session, words, place, ""));
        for entry in &session.exercises {
            let id = format!("{place}.{}", entry.slot);
            rows.push(exercise_row(plan, words, entry, place, &id));
            let lines = words.lines(entry).into_iter().enumerate();
            rows.extend(lines.map(|(line, text)| row(format!("{id}.{line}"), 2, text)));
        }
    }
    let of = plan.weeks.get(at);
    let title = of.map_or_else(String::new, |of| words::week(week, of.kind, of.name.as_deref()));
    (format!("{title}, of {}", plan.weeks.len()), rows)
}

/// The whole plan: weeks of their own kind, then each session once, with what weeks change beside
/// it.
fn whole(plan: &Plan, words: &PlanWords<'_>) -> Vec<Row> {
    let mut rows = Vec::new();
    for (at, week) in plan.weeks.iter().enumerate() {
        if *week != barwright_domain::plan::Week::default() {
            let text = words::week(at + 1, week.kind, week.name.as_deref());
            rows.push(row(format!("week {}", at + 1), 0, text).detail(words.cut(plan.cut(at))));
        }
    }
    for (place, session) in plan.sessions.iter().enumerate() {
        let weeks: Vec<(usize, WeekSession)> = (0..plan.weeks.len())
            .filter_map(|week| {
                let index = plan.sessions_of(week).iter().position(|at| *at == place)?;
                Some((week + 1, plan.session(week, index)?))
            })
            .collect();
        let Some((_, first)) = weeks.first() else { continue };
        rows.push(session_row(plan, first, words, place, &words::session_weeks(&session.weeks)));
        for slot in 0..session.exercises.len() {
            let entry_in = |session: &WeekSession| -> Option<Entry> {
                session.exercises.iter().find(|entry| entry.slot == slot).cloned()
            };
            let Some(entry) = weeks.iter().find_map(|(_, session)| entry_in(session)) else {
                continue;
            };
            let id = format!("{place}.{slot}");
            rows.push(exercise_row(plan, words, &entry, place, &id));
            // Weeks that say the same stand together.
            let mut groups: Vec<(Vec<usize>, Vec<String>)> = Vec::new();
            for (week, session) in &weeks {
                let Some(entry) = entry_in(session) else { continue };
                let lines = words.lines(&entry);
                match groups.iter_mut().find(|(_, known)| *known == lines) {
                    Some((numbers, _)) => numbers.push(*week),
                    None => groups.push((vec![*week], lines)),
                }
            }
            let alone = groups.len() == 1 && groups.iter().all(|(on, _)| on.len() == weeks.len());
            for (numbers, lines) in groups {
                for (line, text) in lines.into_iter().enumerate() {
                    let first = numbers.first().copied().unwrap_or_default();
                    let text =
                        if alone { text } else { format!("{}: {text}", words::weeks(&numbers)) };
                    rows.push(row(format!("{id}.{first}.{line}"), 2, text));
                }
            }
        }
    }
    rows
}

fn session_row(
    plan: &Plan,
    session: &WeekSession,
    words: &PlanWords<'_>,
    place: usize,
    weeks: &str,
) -> Row {
    let day = plan.sessions.get(place).and_then(|own| own.day);
    // A session that is named after its day need not say it twice.
    let day = day
        .map(en::date::weekday)
        .filter(|day| !session.name.to_lowercase().contains(&day.to_lowercase()))
        .map(str::to_owned);
    let minutes = session.minutes.map(|minutes| format!("{minutes} min"));
    let warm_up = Some(words.warm_up(&session.warm_up)).filter(|text| !text.is_empty());
    let weeks = Some(weeks.to_owned()).filter(|text| !text.is_empty());
    let detail: Vec<_> = [day, weeks, minutes, warm_up].into_iter().flatten().collect();
    row(place.to_string(), 0, session.name.clone()).detail(detail.join(" · "))
}

fn exercise_row(plan: &Plan, words: &PlanWords<'_>, entry: &Entry, place: usize, id: &str) -> Row {
    let slot = plan.sessions.get(place).and_then(|session| session.exercises.get(entry.slot));
    let superset = slot.and_then(|slot| slot.superset.as_deref());
    row(id, 1, words.name(&entry.exercise)).detail(words.detail(entry, superset))
}
