//! Each muscle and side, planned and done.

use std::collections::BTreeMap;

use barwright_domain::call::WeekKind;
use barwright_domain::catalogue::Muscle;
use barwright_domain::desk::{Dated, Standing};
use barwright_domain::plan::Plan;
use barwright_domain::quantity::Numerals;
use barwright_domain::session::Reading;
use barwright_domain::volume::{Tally, behind, behind_side, places, planned};

use super::key::shows;
use super::row::{aloud, row};
use crate::contract::{BalanceScreen, EngineError, Key, Look, MuscleBar, RefusalCode, Row};
use crate::engine::Core;
use crate::phrase::en::{self, muscle as phrases, words};
use crate::today::{self, Place, done_volume};

/// The most weeks that are laid together.
const MOST_WEEKS: usize = 52;

/// A tally for each muscle that has any.
type Tallies = BTreeMap<Muscle, Tally>;

/// Over so many weeks of the plan, the current one last.
pub(super) fn screen(
    core: &Core,
    weeks: Option<u32>,
    _at: &Reading,
) -> Result<BalanceScreen, EngineError> {
    let plan = core.plan.as_ref().ok_or_else(|| en::refusal::coded(RefusalCode::NothingToGoBy))?;
    let numerals = core.locale.numerals;
    let next = today::next_place(core)?;
    let last = next.map_or(plan.weeks.len().saturating_sub(1), |next| next.week);
    let count = usize::try_from(weeks.unwrap_or(1)).unwrap_or(1).clamp(1, MOST_WEEKS).min(last + 1);
    let first = last + 1 - count;
    let by_week: Vec<OneWeek> = {
        let mut done = done_volume(core, first..=last)?;
        let asked = |week, sessions| asked(core, plan, week, sessions);
        (first..=last)
            .map(|week| OneWeek {
                kind: plan.weeks.get(week).map(|week| week.kind).unwrap_or_default(),
                // What is planned is outlined whole; what is not due yet is no reason to be behind.
                asked: asked(week, usize::MAX),
                due: match next {
                    Some(next) if next.week == week => asked(week, next.session),
                    _ => asked(week, usize::MAX),
                },
                over: next.is_none_or(|next| next.week > week),
                done: done.remove(&week).unwrap_or_default(),
            })
            .collect()
    };
    let sum = |of: fn(&OneWeek) -> &Tallies| together(by_week.iter().map(of));
    let (asked, due) = (sum(|week| &week.asked), sum(|week| &week.due));
    let done = sum(|week| &week.done);
    // A week of which nothing was done yet would make every average less than it was.
    let begun = by_week.iter().filter(|week| week.over || !week.done.is_empty()).count();
    let open = still_to_train(core, plan, last)?;
    let mut bars = Vec::new();
    let mut sentences: Vec<Row> = Vec::new();
    for muscle in Muscle::ALL {
        let of = |tallies: &Tallies| tallies.get(&muscle).copied().unwrap_or_default();
        let (asked, due, done) = (of(&asked), of(&due), of(&done));
        if asked == Tally::default() && done == Tally::default() {
            continue;
        }
        let lags = behind(muscle, due, done);
        bars.push(bar(muscle, asked, done, lags.is_some(), begun, numerals));
        if let Some(lags) = lags {
            let where_to = where_to(core, muscle, &open, false);
            let text = phrases::behind(&lags, &where_to, numerals);
            sentences.push(row(format!("behind-{}", muscle.slug()), 1, text).warns(true));
        }
        if let Some(lags) = behind_side(muscle, due, done) {
            let where_to = where_to(core, muscle, &open, true);
            let text = phrases::behind_side(&lags, &where_to, numerals);
            sentences.push(row(format!("side-{}", muscle.slug()), 1, text).warns(true));
        }
    }
    let widest = bars.iter().map(|bar| bar.planned_halves.max(bar.done_halves)).max();
    let subtitle = if count == 1 {
        format!("{}, week {} of {}", plan.name, last + 1, plan.weeks.len())
    } else {
        format!("{}, weeks {} to {}", plan.name, first + 1, last + 1)
    };
    let texts: Vec<&str> = bars.iter().map(|bar| bar.text.as_str()).collect();
    let spoken = format!("Balance, {subtitle}. {}. {}", texts.join(". "), aloud(&sentences));
    Ok(BalanceScreen {
        title: "Balance".to_owned(),
        subtitle,
        full_halves: widest.unwrap_or(0).max(2),
        bars,
        sentences,
        kinds: kinds(&by_week, numerals),
        keys: keys(count, last + 1),
        aloud: spoken,
    })
}

/// One week of the span.
struct OneWeek {
    kind: WeekKind,
    asked: Tallies,
    due: Tallies,
    /// Nothing more of it is to come.
    over: bool,
    done: Tallies,
}

fn asked(core: &Core, plan: &Plan, week: usize, sessions: usize) -> Tallies {
    let ledger = planned(plan, week, sessions, &core.catalogue, plan.hard_at_left);
    let number = i32::try_from(week).unwrap_or(i32::MAX);
    Muscle::ALL.into_iter().map(|muscle| (muscle, ledger.week(number, muscle))).collect()
}

fn together<'a>(each: impl Iterator<Item = &'a Tallies>) -> Tallies {
    let mut sum = Tallies::new();
    for (muscle, tally) in each.flatten() {
        let known = sum.entry(*muscle).or_default();
        *known = known.and(*tally);
    }
    sum
}

/// Where a set could go: the exercises of what is still to be trained of a week, by session.
fn still_to_train(
    core: &Core,
    plan: &Plan,
    week: usize,
) -> Result<Vec<(String, String)>, EngineError> {
    let calendar = today::calendar(core)?;
    let mut open = Vec::new();
    for (index, at) in plan.sessions_of(week).into_iter().enumerate() {
        let place = Place { week, session: index };
        let to_train = |one: &Dated| {
            place.at() == Some(one.at)
                && matches!(one.standing, Standing::Next | Standing::ToCome | Standing::Again)
        };
        if !calendar.sessions.iter().any(to_train) {
            continue;
        }
        let (Some(session), Some(laid)) = (plan.sessions.get(at), plan.session(week, index)) else {
            continue;
        };
        let exercises = laid.exercises.into_iter();
        open.extend(exercises.map(|entry| (session.name.clone(), entry.exercise)));
    }
    Ok(open)
}

/// The sessions that a set for the muscle could go into; for one side alone, those that train it
/// one side at a time.
fn where_to(
    core: &Core,
    muscle: Muscle,
    open: &[(String, String)],
    one_sided: bool,
) -> Vec<String> {
    let exercises = open.iter().filter_map(|(name, slug)| Some((name, core.catalogue.get(slug)?)));
    let fit = exercises.filter(|(_, exercise)| exercise.one_sided || !one_sided);
    let mut names: Vec<String> = places(muscle, fit).cloned().collect();
    names.dedup();
    names
}

/// A week of each kind on average: the kinds in the order they first come, each muscle below. Of
/// weeks that are over, since one that runs would make its kind look behind.
fn kinds(by_week: &[OneWeek], numerals: Numerals) -> Vec<Row> {
    let over: Vec<&OneWeek> = by_week.iter().filter(|week| week.over).collect();
    let mut of: Vec<WeekKind> = Vec::new();
    for week in &over {
        if !of.contains(&week.kind) {
            of.push(week.kind);
        }
    }
    if of.len() < 2 {
        return Vec::new();
    }
    let mut rows = Vec::new();
    for kind in of {
        let alike: Vec<&&OneWeek> = over.iter().filter(|week| week.kind == kind).collect();
        let id = words::week_kind(kind);
        rows.push(row(format!("kind-{id}"), 1, phrases::week_kind(kind, alike.len())));
        let asked = together(alike.iter().map(|week| &week.asked));
        let done = together(alike.iter().map(|week| &week.done));
        for muscle in Muscle::ALL {
            let of = |tallies: &Tallies| halves(tallies.get(&muscle).copied().unwrap_or_default());
            let (asked, done) = (of(&asked), of(&done));
            if (asked, done) != (0, 0) {
                let text = phrases::week_of_kind(muscle, asked, done, alike.len(), numerals);
                rows.push(row(format!("kind-{id}-{}", muscle.slug()), 2, text));
            }
        }
    }
    rows
}

fn halves(tally: Tally) -> u32 {
    tally.sets.and(tally.under_six).both().halves()
}

fn keys(count: usize, most: usize) -> Vec<Key> {
    [1_u32, 4, 8]
        .into_iter()
        .filter(|span| *span == 1 || usize::try_from(*span).is_ok_and(|span| span <= most))
        .map(|span| {
            let label = words::count(span as usize, "week", "weeks");
            shows(format!("weeks-{span}"), label, Look::Balance { weeks: Some(span) })
                .chosen(count == span as usize)
        })
        .collect()
}

fn bar(
    muscle: Muscle,
    asked: Tally,
    done: Tally,
    behind: bool,
    weeks: usize,
    numerals: Numerals,
) -> MuscleBar {
    let asked = asked.sets.and(asked.under_six);
    let all = done.sets.and(done.under_six);
    let (planned_halves, done_halves) = (asked.both().halves(), all.both().halves());
    let apart = all.left != all.right || asked.left != asked.right;
    let (direct, total) = (all.both().direct, all.both().total());
    let under_six_halves = done.under_six.both().halves().min(done_halves);
    MuscleBar {
        muscle: phrases::name(muscle),
        planned_halves,
        done_halves,
        left_halves: apart.then(|| all.left.halves()),
        right_halves: apart.then(|| all.right.halves()),
        direct,
        total,
        under_six_halves,
        text: phrases::bar(muscle, planned_halves, done_halves, numerals),
        detail: if done_halves == 0 {
            String::new()
        } else {
            let sides = apart.then(|| (all.left.halves(), all.right.halves()));
            phrases::counts(done_halves, (direct, total), under_six_halves, sides, weeks, numerals)
        },
        behind,
    }
}
