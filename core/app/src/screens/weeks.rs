//! The plan as weeks: where we are, what was missed, and what can be arranged otherwise.

use barwright_domain::desk::{Calendar, Dated, Standing};
use barwright_domain::session::Reading;

use super::key::{does, shows};
use super::row::{aloud, row};
use crate::contract::{
    Arrange, EngineError, Intent, Key, Look, RefusalCode, WeekOfPlan, WeeksScreen,
};
use crate::engine::Core;
use crate::phrase::en::{self, weeks as words};
use crate::today::{self, Place};

/// The adopted plan's weeks.
pub(super) fn screen(core: &Core, at: &Reading) -> Result<WeeksScreen, EngineError> {
    let plan = core.plan.as_ref().ok_or_else(|| en::refusal::coded(RefusalCode::NothingToGoBy))?;
    let calendar = today::calendar(core)?;
    let next = calendar.next.and_then(Place::of_at);
    let named = |place: Place| {
        let at = plan.sessions_of(place.week).get(place.session).copied()?;
        plan.sessions.get(at).map(|session| session.name.clone())
    };
    let today = at.local_day();
    let around = next.map_or(plan.weeks.len().saturating_sub(1), |next| next.week);
    let weeks: Vec<WeekOfPlan> = plan
        .weeks
        .iter()
        .enumerate()
        .map(|(week, of)| {
            let sessions = calendar.sessions.iter().filter_map(|dated| {
                Some((Place::of_at(dated.at).filter(|place| place.week == week)?, dated))
            });
            let away = away(core, week);
            let rows = sessions
                .enumerate()
                .filter_map(|(nth, (place, dated))| {
                    let other = |at| Place::of_at(at).and_then(named).unwrap_or_default();
                    let state = words::state(dated, today, other);
                    let done = matches!(dated.standing, Standing::Done(_) | Standing::DoneWith(..));
                    let look = Look::Today { session: Some(place.name()), minutes: None };
                    let mut keys = vec![shows("lay-out", "Lay it out", look)];
                    // What is far off is only laid out or gone to: a list of keys for each of a
                    // hundred sessions helps nobody.
                    if place.week.abs_diff(around) <= 1 {
                        keys.extend(arranging(&calendar, place, dated, today, other));
                        if nth == 0 {
                            keys.extend(travelling(place, away));
                        }
                    }
                    if next != Some(place) {
                        keys.push(arranges("enter", words::ENTER, place, Arrange::Enter));
                    }
                    Some(
                        row(place.name(), 1, named(place)?)
                            .detail(state)
                            .done(done)
                            .warns(dated.standing == Standing::Missed)
                            .keys(keys),
                    )
                })
                .collect();
            WeekOfPlan {
                title: words::title(week, of.kind, away),
                current: next.is_some_and(|next| next.week == week),
                rows,
            }
        })
        .collect();
    let next = next.and_then(|next| {
        let dated = calendar.sessions.iter().find(|one| Place::of_at(one.at) == Some(next))?;
        Some((next.week, plan.weeks.len(), named(next)?, *dated))
    });
    let subtitle = words::where_we_are(next, today);
    let spoken = format!(
        "{}, {subtitle}. {}",
        plan.name,
        aloud(weeks.iter().filter(|week| week.current).flat_map(|week| &week.rows))
    );
    let kept = core.desk.kept.iter().rev().map(|kept| {
        let plan = kept.seq.to_string();
        does(format!("plan-{plan}"), words::back_to(&kept.name), Intent::TakeUpPlan { plan })
            .says(words::back_to_says(kept))
            .enabled(core.state.running().is_none())
    });
    let keys = kept.collect();
    Ok(WeeksScreen { title: plan.name.clone(), subtitle, weeks, keys, aloud: spoken })
}

/// Weeks away before a week.
fn away(core: &Core, week: usize) -> u16 {
    let arranged = core.desk.arranged();
    u16::try_from(week + 1).ok().and_then(|week| arranged.travel.get(&week).copied()).unwrap_or(0)
}

fn arranges(id: &str, label: impl Into<String>, place: Place, how: Arrange) -> Key {
    does(id, label, Intent::Arrange { session: place.name(), how })
}

/// What can be done with a session, by how it stands.
fn arranging(
    calendar: &Calendar,
    place: Place,
    dated: &Dated,
    today: i32,
    other: impl Fn(barwright_domain::desk::At) -> String,
) -> Vec<Key> {
    let mut keys = Vec::new();
    match dated.standing {
        Standing::Next | Standing::ToCome => {
            keys.push(arranges(
                "leave-out",
                words::LEAVE_OUT,
                place,
                Arrange::LeaveOut { left_out: true },
            ));
            let move_to = |day: i32| Arrange::Move { day: Some(day) };
            let due = dated.due.unwrap_or(today);
            if due != today {
                keys.push(arranges("today", words::DO_TODAY, place, move_to(today)));
            }
            let later = due.max(today).saturating_add(1);
            keys.push(arranges("later", words::to_day(later), place, move_to(later)));
            if dated.moved {
                keys.push(arranges("own-day", words::OWN_DAY, place, Arrange::Move { day: None }));
            }
            // Joined to the one after it in the order of days, or to the one before.
            let nth = calendar.sessions.iter().position(|one| one.at == dated.at);
            let open = |one: &&Dated| matches!(one.standing, Standing::Next | Standing::ToCome);
            let after = nth.and_then(|nth| {
                calendar
                    .sessions
                    .iter()
                    .skip(nth + 1)
                    .find(open)
                    .or_else(|| calendar.sessions.iter().take(nth).rev().find(open))
            });
            if let Some((to, name)) = after.and_then(|one| Some((Place::of_at(one.at)?, one.at))) {
                let how = Arrange::Join { with: Some(to.name()) };
                keys.push(arranges("join", words::join(&other(name), to.name()), place, how));
            }
        }
        Standing::With(_) => {
            keys.push(arranges("apart", words::APART, place, Arrange::Join { with: None }));
        }
        Standing::LeftOut => keys.push(arranges(
            "bring-back",
            words::BRING_BACK,
            place,
            Arrange::LeaveOut { left_out: false },
        )),
        Standing::Done(_) | Standing::DoneWith(..) => {
            keys.push(arranges("again", words::AGAIN, place, Arrange::Again { again: true }));
        }
        Standing::Missed => {
            keys.push(arranges("again", words::MAKE_UP, place, Arrange::Again { again: true }));
        }
        Standing::Again => keys.push(arranges(
            "not-again",
            words::NOT_AGAIN,
            place,
            Arrange::Again { again: false },
        )),
        Standing::Before => {}
    }
    keys
}

/// Weeks away before a week: one more, or none.
fn travelling(place: Place, away: u16) -> Vec<Key> {
    let weeks = u32::from(away);
    let mut keys = vec![arranges(
        "travel",
        words::travel(away),
        place,
        Arrange::Travel { weeks: weeks.saturating_add(1) },
    )];
    if away > 0 {
        keys.push(arranges("no-travel", words::NO_TRAVEL, place, Arrange::Travel { weeks: 0 }));
    }
    keys
}
