//! The plan as weeks: where we are, what was missed.

use barwright_domain::session::Reading;

use super::key::shows;
use super::row::{aloud, row};
use crate::contract::{EngineError, Look, RefusalCode, WeekOfPlan, WeeksScreen};
use crate::engine::Core;
use crate::phrase::en::{self, words};
use crate::today::{Place, next_place, trained};

/// The adopted plan's weeks.
pub(super) fn screen(core: &Core, _at: &Reading) -> Result<WeeksScreen, EngineError> {
    let plan = core.plan.as_ref().ok_or_else(|| en::refusal::coded(RefusalCode::NothingToGoBy))?;
    let trained = trained(core)?;
    let next = next_place(core)?;
    let weeks: Vec<WeekOfPlan> = plan
        .weeks
        .iter()
        .enumerate()
        .map(|(week, of)| {
            let rows = plan
                .sessions_of(week)
                .into_iter()
                .enumerate()
                .filter_map(|(session, at)| {
                    let place = Place { week, session };
                    let name = &plan.sessions.get(at)?.name;
                    let done = trained.iter().rev().find(|one| one.place == place && one.over);
                    let missed = done.is_none() && next.is_none_or(|next| place < next);
                    let state = match done {
                        Some(done) => en::date::day(done.day),
                        None if next == Some(place) => "next".to_owned(),
                        None if missed => "missed".to_owned(),
                        None => String::new(),
                    };
                    let look = Look::Today { session: Some(place.name()), minutes: None };
                    Some(
                        row(place.name(), 1, name.clone())
                            .detail(state)
                            .done(done.is_some())
                            .warns(missed)
                            .keys(vec![shows("lay-out", "Lay it out", look)]),
                    )
                })
                .collect();
            WeekOfPlan {
                title: format!("Week {}: {}", week + 1, words::week_kind(of.kind)),
                current: next.is_some_and(|next| next.week == week),
                rows,
            }
        })
        .collect();
    let subtitle = match next {
        Some(next) => format!("week {} of {}", next.week + 1, plan.weeks.len()),
        None => "every session is done".to_owned(),
    };
    let spoken = format!(
        "{}, {subtitle}. {}",
        plan.name,
        aloud(weeks.iter().filter(|week| week.current).flat_map(|week| &week.rows))
    );
    Ok(WeeksScreen { title: plan.name.clone(), subtitle, weeks, keys: Vec::new(), aloud: spoken })
}
