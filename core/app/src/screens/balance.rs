//! Each muscle and side, planned and done.

use std::collections::BTreeMap;

use barwright_domain::catalogue::Muscle;
use barwright_domain::session::Reading;
use barwright_domain::volume::{Tally, behind, behind_side, places, planned};

use super::key::shows;
use super::row::{aloud, row};
use crate::contract::{BalanceScreen, EngineError, Look, MuscleBar, RefusalCode, Row};
use crate::engine::Core;
use crate::phrase::en::{self, muscle as phrases, words};
use crate::today::{self, done_volume};

/// The most weeks that are laid together.
const MOST_WEEKS: usize = 52;

/// Over so many weeks of the plan, the current one last.
pub(super) fn screen(
    core: &Core,
    weeks: Option<u32>,
    _at: &Reading,
) -> Result<BalanceScreen, EngineError> {
    let plan = core.plan.as_ref().ok_or_else(|| en::refusal::coded(RefusalCode::NothingToGoBy))?;
    let easiest = plan.hard_at_left;
    let next = today::next_place(core)?;
    let last = next.map_or(plan.weeks.len().saturating_sub(1), |next| next.week);
    let count = usize::try_from(weeks.unwrap_or(1)).unwrap_or(1).clamp(1, MOST_WEEKS).min(last + 1);
    let first = last + 1 - count;
    let done = done_volume(core, first..=last)?;
    // What is planned is outlined whole; what is not due yet is no reason to be behind.
    let planned_to = |due: bool| {
        let mut asked: BTreeMap<Muscle, Tally> = BTreeMap::new();
        for week in first..=last {
            let sessions = match next {
                Some(next) if due && next.week == week => next.session,
                _ => usize::MAX,
            };
            let ledger = planned(plan, week, sessions, &core.catalogue, easiest);
            for muscle in Muscle::ALL {
                let tally = ledger.week(i32::try_from(week).unwrap_or(i32::MAX), muscle);
                let sum = asked.entry(muscle).or_default();
                *sum = sum.and(tally);
            }
        }
        asked
    };
    let (asked, due) = (planned_to(false), planned_to(true));
    // Where a set could go: what is still to be trained of the week.
    let trained = today::trained(core)?;
    let mut open = Vec::new();
    for (index, at) in plan.sessions_of(last).into_iter().enumerate() {
        let place = today::Place { week: last, session: index };
        if trained.iter().any(|one| one.place == place && one.over) {
            continue;
        }
        let (Some(session), Some(laid)) = (plan.sessions.get(at), plan.session(last, index)) else {
            continue;
        };
        for entry in laid.exercises {
            if let Some(exercise) = core.catalogue.get(&entry.exercise) {
                open.push((session.name.clone(), exercise));
            }
        }
    }
    let mut bars = Vec::new();
    let mut sentences: Vec<Row> = Vec::new();
    for muscle in Muscle::ALL {
        let asked = asked.get(&muscle).copied().unwrap_or_default();
        let done = done.get(&muscle).copied().unwrap_or_default();
        if asked == Tally::default() && done == Tally::default() {
            continue;
        }
        let due = due.get(&muscle).copied().unwrap_or_default();
        let lags = behind(muscle, due, done);
        bars.push(bar(muscle, asked, done, lags.is_some()));
        if let Some(lags) = lags {
            let mut where_to: Vec<String> =
                places(muscle, open.iter().map(|(name, exercise)| (name.clone(), *exercise)))
                    .collect();
            where_to.dedup();
            let text = phrases::behind(&lags, &where_to);
            sentences.push(row(format!("behind-{}", muscle.slug()), 1, text).warns(true));
        }
        if let Some(lags) = behind_side(muscle, due, done) {
            let text = phrases::behind_side(&lags);
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
    let keys = [1_u32, 4, 8]
        .into_iter()
        .filter(|span| *span == 1 || usize::try_from(*span).is_ok_and(|span| span <= last + 1))
        .map(|span| {
            let label = words::count(span as usize, "week", "weeks");
            shows(format!("weeks-{span}"), label, Look::Balance { weeks: Some(span) })
                .chosen(count == span as usize)
        })
        .collect();
    Ok(BalanceScreen {
        title: "Balance".to_owned(),
        subtitle,
        full_halves: widest.unwrap_or(0).max(2),
        bars,
        sentences,
        keys,
        aloud: spoken,
    })
}

fn bar(muscle: Muscle, asked: Tally, done: Tally, behind: bool) -> MuscleBar {
    let asked = asked.sets.and(asked.under_six);
    let all = done.sets.and(done.under_six);
    let (planned_halves, done_halves) = (asked.both().halves(), all.both().halves());
    let apart = all.left != all.right || asked.left != asked.right;
    MuscleBar {
        muscle: phrases::name(muscle),
        planned_halves,
        done_halves,
        left_halves: apart.then(|| all.left.halves()),
        right_halves: apart.then(|| all.right.halves()),
        text: phrases::bar(
            muscle,
            planned_halves,
            done_halves,
            done.under_six.both().halves().min(done_halves),
        ),
        behind,
    }
}
