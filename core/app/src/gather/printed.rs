//! Sessions laid out to be printed.

use barwright_domain::desk::{At, Standing};
use barwright_domain::session::Reading;
use barwright_store::Store;

use super::{calendar, laid_out, place};
use crate::facts::{Held, PrintedSession, PrintedWeek};
use crate::fault::{Fault, Refused};

/// The session whose turn it is.
pub(crate) fn next<'a>(
    store: &Store,
    held: &'a Held,
    at: &Reading,
) -> Result<PrintedWeek<'a>, Fault> {
    let plan = held.plan.as_deref().ok_or(Refused::NothingToGoBy)?;
    let place = place(store, held, None)?;
    let dated = calendar::on(store, held)?.sessions.into_iter().find(|one| one.at == place);
    let laid_out = laid_out(store, held, place, None, at)?;
    Ok(PrintedWeek { plan, week: place.week, sessions: vec![PrintedSession { dated, laid_out }] })
}

/// A week, from 1; without one the week of the session whose turn it is. What is done with another
/// session, or left out, has no sheet of its own.
pub(crate) fn week<'a>(
    store: &Store,
    held: &'a Held,
    week: Option<u16>,
    at: &Reading,
) -> Result<PrintedWeek<'a>, Fault> {
    let plan = held.plan.as_deref().ok_or(Refused::NothingToGoBy)?;
    let calendar = calendar::on(store, held)?;
    let week = match week {
        Some(week) => week,
        None => calendar.next.ok_or(Refused::PlanIsOver)?.week,
    };
    let index = usize::from(week).checked_sub(1).filter(|index| *index < plan.weeks.len());
    let index = index.ok_or(Refused::NotHere)?;
    let mut sessions = Vec::new();
    for session in 0..plan.sessions_of(index).len() {
        let Some(place) = At::of_nth(index, session) else { continue };
        let dated = calendar.sessions.iter().find(|one| one.at == place).copied();
        let apart = dated.is_none_or(|one| {
            !matches!(one.standing, Standing::With(_) | Standing::DoneWith(..) | Standing::LeftOut)
        });
        if apart {
            let laid_out = laid_out(store, held, place, None, at)?;
            sessions.push(PrintedSession { dated, laid_out });
        }
    }
    Ok(PrintedWeek { plan, week, sessions })
}
