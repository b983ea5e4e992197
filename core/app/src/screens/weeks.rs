//! The plan as weeks: where we are, what was missed, and what can be arranged otherwise.

use barwright_domain::desk::{At, Calendar, Dated, Standing};
use barwright_domain::session::Reading;

use super::key::{arranges, does, shows};
use super::row::{aloud, row};
use crate::contract::{Arrange, Intent, Key, Look, WeekOfPlan, WeeksScreen};
use crate::facts::{Held, Weeks, place};
use crate::phrase::Words;

/// The adopted plan's weeks.
pub(super) fn screen(held: &Held, of: &Weeks<'_>, at: &Reading, words: Words) -> WeeksScreen {
    let (plan, calendar) = (of.plan, &of.calendar);
    let today = at.local_day();
    let around = calendar.next.map_or(plan.weeks.len(), |next| usize::from(next.week));
    let name = |at: At| place::called(plan, at).unwrap_or_default().to_owned();
    let weeks: Vec<WeekOfPlan> = (1_u16..)
        .zip(&plan.weeks)
        .map(|(week, of)| {
            let away = away(held, week);
            let sessions = calendar.sessions.iter().filter(|dated| dated.at.week == week);
            let rows = sessions.enumerate().map(|(nth, dated)| {
                let session = Some(place::name(dated.at));
                let look = Look::Today { session, minutes: None };
                let mut keys = vec![shows("lay-out", words.weeks().lay_out(), look)];
                // What is far off is only laid out or gone to: a list of keys for each of a hundred
                // sessions helps nobody.
                if usize::from(week).abs_diff(around) <= 1 {
                    keys.extend(arranging(calendar, dated, today, name, words));
                    if nth == 0 {
                        keys.extend(travelling(dated.at, away, words));
                    }
                }
                if calendar.next != Some(dated.at) {
                    let enter = words.weeks().enter();
                    keys.push(arranges("enter", enter, dated.at, Arrange::Enter));
                }
                let done = matches!(dated.standing, Standing::Done(_) | Standing::DoneWith(..));
                row(place::name(dated.at), 1, name(dated.at))
                    .detail(words.weeks().state(dated, today, name))
                    .done(done)
                    .warns(dated.standing == Standing::Missed)
                    .keys(keys)
            });
            WeekOfPlan {
                title: words.weeks().title(week, of.kind, away),
                current: calendar.next.is_some_and(|next| next.week == week),
                rows: rows.collect(),
            }
        })
        .collect();
    let next = calendar.next.and_then(|next| {
        let dated = calendar.sessions.iter().find(|one| one.at == next)?;
        Some((dated, place::called(plan, next)?))
    });
    let subtitle = words.weeks().where_we_are(next, plan.weeks.len(), today);
    let rows = weeks.iter().filter(|week| week.current).flat_map(|week| &week.rows);
    let spoken = words.weeks().aloud(&plan.name, &subtitle, &aloud(rows, words));
    let kept = held.desk.kept.iter().rev().map(|kept| {
        let plan = kept.seq.to_string();
        does(
            format!("plan-{plan}"),
            words.weeks().back_to(kept, words.today),
            Intent::TakeUpPlan { plan },
        )
        .enabled(held.state.running().is_none())
    });
    WeeksScreen { title: plan.name.clone(), subtitle, weeks, keys: kept.collect(), aloud: spoken }
}

/// Weeks away before a week.
fn away(held: &Held, week: u16) -> u16 {
    held.desk.arranged().travel.get(&week).copied().unwrap_or(0)
}

/// What can be done with a session, by how it stands.
fn arranging(
    calendar: &Calendar,
    dated: &Dated,
    today: i32,
    name: impl Fn(At) -> String,
    words: Words,
) -> Vec<Key> {
    let (say, at) = (words.weeks(), dated.at);
    let mut keys = Vec::new();
    match dated.standing {
        Standing::Next | Standing::ToCome => {
            keys.push(arranges(
                "leave-out",
                say.leave_out(),
                at,
                Arrange::LeaveOut { left_out: true },
            ));
            let move_to = |day: i32| Arrange::Move { day: Some(day) };
            let due = dated.due.unwrap_or(today);
            if due != today {
                keys.push(arranges("today", say.do_today(), at, move_to(today)));
            }
            let later = due.max(today).saturating_add(1);
            keys.push(arranges("later", say.to_day(later), at, move_to(later)));
            if dated.moved {
                keys.push(arranges("own-day", say.own_day(), at, Arrange::Move { day: None }));
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
            if let Some(to) = after.map(|one| one.at) {
                let row = place::name(to);
                let label = say.join(&name(to), &row);
                keys.push(arranges("join", label, at, Arrange::Join { with: Some(row) }));
            }
        }
        Standing::With(_) => {
            keys.push(arranges("apart", say.apart(), at, Arrange::Join { with: None }));
        }
        Standing::LeftOut => keys.push(arranges(
            "bring-back",
            say.bring_back(),
            at,
            Arrange::LeaveOut { left_out: false },
        )),
        Standing::Done(_) | Standing::DoneWith(..) => {
            keys.push(arranges("again", say.again(), at, Arrange::Again { again: true }));
        }
        Standing::Missed => {
            keys.push(arranges("again", say.make_up(), at, Arrange::Again { again: true }));
        }
        Standing::Again => {
            keys.push(arranges("not-again", say.not_again(), at, Arrange::Again { again: false }))
        }
        Standing::Before => {}
    }
    keys
}

/// Weeks away before a week: one more, or none.
fn travelling(at: At, away: u16, words: Words) -> Vec<Key> {
    let (say, weeks) = (words.weeks(), u32::from(away));
    let mut keys = vec![arranges(
        "travel",
        say.travel(away),
        at,
        Arrange::Travel { weeks: weeks.saturating_add(1) },
    )];
    if away > 0 {
        keys.push(arranges("no-travel", say.no_travel(), at, Arrange::Travel { weeks: 0 }));
    }
    keys
}
