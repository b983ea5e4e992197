//! The plan as weeks: where we are, what was missed, and what can be arranged otherwise.

use barwright_domain::desk::{At, Calendar, Dated, DraftOf, Standing};
use barwright_domain::session::Reading;

use super::key::{arranges, does, shows};
use super::name;
use super::row::{aloud, row};
use crate::contract::{Arrange, Edit, FormOf, Intent, Key, LayAnew, Look, WeekOfPlan, WeeksScreen};
use crate::facts::{Anew, AnewOf, Held, PlanFrom, Weeks, place};
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
                keys.extend(on_paper(held, dated, words));
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
    let mut keys = Vec::new();
    if calendar.behind(today) > 0 {
        let say = words.weeks();
        keys.extend(WAYS.map(|(how, id)| shows(id, say.anew(how), Look::Anew { how })));
    }
    if !held.desk.arranged().back.is_empty() {
        let back = Intent::LayAnew { how: None };
        keys.push(does("take-back", words.weeks().take_back(), back));
    }
    keys.extend(making(held, words));
    keys.extend(kept);
    WeeksScreen { title: plan.name.clone(), subtitle, weeks, keys, aloud: spoken }
}

/// Plans made by hand: the one that is being made is gone on with, or one is begun.
pub(super) fn making(held: &Held, words: Words) -> Vec<Key> {
    let (say, of) = (words.plan_form(), FormOf::Plan);
    if held.desk.drafts.contains_key(&DraftOf::Plan) {
        let look = Look::Form { of, at: String::new(), text: String::new() };
        return vec![shows("go-on", say.go_on(), look)];
    }
    let begins = |id: &str, said: (&'static str, &'static str), from: PlanFrom| {
        let (place, edit) = (from.place().to_owned(), Edit::Open);
        does(id, said, Intent::Edit { of, place, edit, step: None })
    };
    let mut keys = vec![begins("make", say.make(), PlanFrom::Nothing)];
    if held.plan.is_some() {
        keys.push(begins("mend-plan", say.mend(), PlanFrom::Own));
        keys.push(begins("copy-plan", say.copy(), PlanFrom::Copy));
    }
    keys
}

/// The ways of laying the rest anew.
const WAYS: [(LayAnew, &str); 3] = [
    (LayAnew::PushBack, "anew-push-back"),
    (LayAnew::Drop, "anew-drop"),
    (LayAnew::Squeeze, "anew-squeeze"),
];

/// The weeks as they would be with the rest laid anew: what changes says what it was.
pub(super) fn anew(held: &Held, of: &Anew<'_>, at: &Reading, words: Words) -> WeeksScreen {
    let (plan, AnewOf { how, dates, before, after, close }) = (of.plan, &of.of);
    let (say, today) = (words.weeks(), at.local_day());
    let name = |at: At| place::called(plan, at).unwrap_or_default().to_owned();
    let was = |at: At| before.sessions.iter().find(|one| one.at == at);
    let over = |one: &Dated| matches!(one.standing, Standing::Done(_) | Standing::DoneWith(..));
    let differs = |one: &Dated| {
        was(one.at)
            .filter(|_| !over(one))
            .is_some_and(|was| (was.due, was.standing) != (one.due, one.standing))
    };
    let close: Vec<String> = close
        .iter()
        .map(|close| {
            let lift = name::exercise(held, &close.lift, &close.lift, words);
            say.close(&name(close.before), &name(close.after), &lift)
        })
        .collect();
    let left_out = dates.left_out.len();
    let later = |one: &&Dated| differs(one) && was(one.at).is_some_and(|was| was.due != one.due);
    let subtitle = say.laid(*how, after.sessions.iter().filter(later).count(), left_out, &close);
    let weeks: Vec<WeekOfPlan> = (1_u16..)
        .zip(&plan.weeks)
        .map(|(week, of)| {
            let sessions = after.sessions.iter().filter(|dated| dated.at.week == week);
            let rows = sessions.map(|dated| {
                let state = say.state(dated, today, name);
                let due = was(dated.at).and_then(|was| was.due).filter(|_| differs(dated));
                let was = due.map(|due| say.was(due));
                let detail: Vec<String> = std::iter::once(state).chain(was).collect();
                row(place::name(dated.at), 1, name(dated.at))
                    .detail(detail.join(" · "))
                    .done(over(dated))
                    .warns(differs(dated))
            });
            WeekOfPlan {
                title: say.title(week, of.kind, away(held, week)),
                current: after.next.is_some_and(|next| next.week == week),
                rows: rows.collect(),
            }
        })
        .collect();
    let lay = Intent::LayAnew { how: Some(*how) };
    let mut keys = vec![does("lay-so", say.lay_so(), lay).enabled(!dates.is_empty())];
    // What finds no free day may come close, where that is asked for.
    if *how == LayAnew::Squeeze && left_out > 0 {
        let look = Look::Anew { how: LayAnew::SqueezeClose };
        keys.push(shows("anew-squeeze-close", say.anew(LayAnew::SqueezeClose), look));
    }
    let others = WAYS.iter().filter(|(way, _)| way != how);
    keys.extend(others.map(|(how, id)| shows(*id, say.anew(*how), Look::Anew { how: *how })));
    keys.push(shows("leave", words.by_hand().back(), Look::Weeks));
    let changed = weeks.iter().flat_map(|week| &week.rows).filter(|row| row.warns);
    let spoken = say.aloud(&plan.name, subtitle.trim_end_matches('.'), &aloud(changed, words));
    WeeksScreen { title: plan.name.clone(), subtitle, weeks, keys, aloud: spoken }
}

/// Weeks away before a week.
fn away(held: &Held, week: u16) -> u16 {
    held.desk.arranged().travel.get(&week).copied().unwrap_or(0)
}

/// What was done without the tool, or on another date than it says.
fn on_paper(held: &Held, dated: &Dated, words: Words) -> Option<Key> {
    let (id, said, part) = match dated.standing {
        Standing::Done(_) => ("date", words.change().other_date(), "date"),
        Standing::Next | Standing::ToCome | Standing::Again | Standing::Missed => {
            ("paper", words.change().from_paper(), "paper")
        }
        Standing::DoneWith(..) | Standing::With(_) | Standing::LeftOut | Standing::Before => {
            return None;
        }
    };
    let at = format!("{}:{part}", place::name(dated.at));
    let look = Look::Form { of: FormOf::Session, at, text: String::new() };
    Some(shows(id, said, look).enabled(id == "date" || held.state.running().is_none()))
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
