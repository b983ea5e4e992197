//! The only reader of the store: fills the facts that a look is shown from, and no more of them.
//!
//! A read that fails is an error, never an empty list. The floor reads nothing: what it says of a
//! partner's taps is read once in a session, by [`paces`].

mod balance;
mod calendar;
mod lift;
mod maxes;
mod pace;
mod past;
mod printed;
mod returned;
mod sent;
mod sheet;
mod tally;

pub(crate) use calendar::{anew, calendar_of, next_place, place};
pub(crate) use lift::{CHARTED, PAGE};
pub(crate) use maxes::tracks;
pub(crate) use pace::paces;
pub(crate) use printed::{next as printed_next, week as printed_week};
pub(crate) use returned::returned;
pub(crate) use sent::sent_file;
pub(crate) use sheet::{laid_out, substitute};

use barwright_domain::desk::{At, DraftOf, ForOnce, Sent};
use barwright_domain::plan::by_hand;
use barwright_domain::session::Reading;
use barwright_store::Store;

use crate::contract::{FormOf, Look};
use crate::facts::{
    Anew, Days, Facts, Held, LikedForm, LikedOf, Of, SessionForm, SessionPart, Today, Weeks,
    place as places,
};
use crate::fault::{Fault, Refused};

/// Gathers for a look. Answers the look that is shown, too: another one where this has nothing to
/// show.
pub(crate) fn of<'a>(
    store: &Store,
    held: &'a Held,
    look: Look,
    at: &'a Reading,
) -> Result<(Look, Facts<'a>), Fault> {
    let on = held.plan.as_deref();
    let (look, of) = match look {
        Look::Today { session, minutes } => {
            let of = today(store, held, session.as_deref(), minutes, at)?;
            (Look::Today { session, minutes }, of)
        }
        // The floor is where a session runs; without one, what is on today says how to begin.
        Look::Floor { draft } => match held.state.running() {
            Some(run) => (Look::Floor { draft }, Of::Floor(run)),
            None => (TODAY, today(store, held, None, None, at)?),
        },
        Look::Tally => match held.state.run() {
            Some(run) => (Look::Tally, Of::Tally(tally::of(store, held, run, at)?)),
            None => (TODAY, today(store, held, None, None, at)?),
        },
        Look::Weeks => {
            let plan = on.ok_or(Refused::NothingToGoBy)?;
            let calendar = calendar::on(store, held)?;
            (Look::Weeks, Of::Weeks(Weeks { plan, calendar }))
        }
        Look::Anew { how } => {
            let plan = on.ok_or(Refused::NothingToGoBy)?;
            let of = anew(store, held, how, at)?;
            (Look::Anew { how }, Of::Anew(Anew { plan, of }))
        }
        Look::Lift { exercise, page, all } => {
            let lift = lift::of(store, held, &exercise, page, all)?;
            let exercise = lift.exercise.slug.to_string();
            (Look::Lift { exercise, page, all }, Of::Lift(lift))
        }
        Look::Balance { weeks } => {
            let plan = on.ok_or(Refused::NothingToGoBy)?;
            (Look::Balance { weeks }, Of::Balance(balance::of(store, held, plan, weeks)?))
        }
        Look::Equipment => (Look::Equipment, Of::Equipment),
        Look::Form { of: FormOf::Maxes, at: place, text } => {
            let of = Of::Maxes(maxes::of(store, held, &place, &text, at)?);
            (Look::Form { of: FormOf::Maxes, at: place, text }, of)
        }
        Look::Form { of, at: part, text } => form(store, held, (of, part, text), at)?,
        Look::Care => (Look::Care, Of::Care),
        // A shell opens files as plans: one that is none is shown as what it means to be.
        Look::Plan { text: Some(text), .. } if Sent::is_meant(&text) => {
            form(store, held, (FormOf::Changes, String::new(), text), at)?
        }
        Look::Plan { text: Some(text), week } => {
            (Look::Plan { text: Some(text), week }, Of::PlanFile)
        }
        Look::Plan { text: None, week } => {
            (Look::Plan { text: None, week }, Of::PlanOn(on.ok_or(Refused::NothingToGoBy)?))
        }
    };
    Ok((look, Facts { held, at, of }))
}

/// A form. One of a draft that is none shows where one is begun.
fn form<'a>(
    store: &Store,
    held: &'a Held,
    (of, at, text): (FormOf, String, String),
    now: &Reading,
) -> Result<(Look, Of<'a>), Fault> {
    match of {
        FormOf::Gym => Ok(match held.desk.drafts.get(&DraftOf::Gym) {
            Some(draft) => (Look::Form { of, at, text }, Of::GymForm(draft)),
            None => (Look::Equipment, Of::Equipment),
        }),
        FormOf::Session => session_form(store, held, (at, text), now),
        FormOf::Exercises => Ok((Look::Form { of, at, text }, Of::Exercises)),
        FormOf::Liked => {
            let of = LikedOf::named(&at).ok_or(Refused::NotHere)?;
            let place = match held.plan {
                Some(_) => next_place(store, held)?,
                None => None,
            };
            let next = place.map(|place| laid_out(store, held, place, None, now)).transpose()?;
            let form = Of::LikedForm(LikedForm { of, next });
            Ok((Look::Form { of: FormOf::Liked, at, text }, form))
        }
        // A shell that keeps no long text over its end shows what is on.
        FormOf::Changes if text.is_empty() => Ok((TODAY, today(store, held, None, None, now)?)),
        FormOf::Changes => {
            let of = Of::Sent(sent_file(store, held, &text)?);
            Ok((Look::Form { of: FormOf::Changes, at, text }, of))
        }
        FormOf::Start => Ok((Look::Form { of, at, text }, Of::Start)),
        FormOf::Plan => match held.desk.drafts.get(&DraftOf::Plan) {
            Some(draft) => Ok((Look::Form { of, at, text }, Of::PlanForm(draft))),
            None if held.plan.is_some() => {
                let (plan, calendar) = (
                    held.plan.as_deref().ok_or(Refused::NothingToGoBy)?,
                    calendar::on(store, held)?,
                );
                Ok((Look::Weeks, Of::Weeks(Weeks { plan, calendar })))
            }
            None => Ok((TODAY, Of::NothingOn)),
        },
        // Gathered before, or written by the engine.
        FormOf::Maxes | FormOf::Records => Err(Refused::NotHere.into()),
    }
}

/// A session that is changed: for once, or where a key asks for it from now on, as the plan mended.
fn session_form<'a>(
    store: &Store,
    held: &'a Held,
    (at, text): (String, String),
    now: &Reading,
) -> Result<(Look, Of<'a>), Fault> {
    let mut parts = at.split(':');
    let named = parts.next().filter(|name| !name.is_empty());
    if at == ":date" {
        // Of the last session, wherever it stood.
        let run = held.state.run().ok_or(Refused::NotHere)?;
        let place = run.sheet.place.as_ref().map(places::of_plan).ok_or(Refused::NotHere)?;
        let part = SessionPart::Date(run.session, days(Some(run.day), &text, now));
        let form = SessionForm { place, laid_out: None, part };
        return Ok((Look::Form { of: FormOf::Session, at, text }, Of::SessionForm(form)));
    }
    let place = place(store, held, named)?;
    let part = match (parts.next(), parts.next(), parts.next()) {
        (None, ..) => SessionPart::Whole,
        (Some("swap"), Some(slug), None) => SessionPart::Instead(slug.to_owned()),
        (Some("add"), None, None) => SessionPart::Add,
        (Some("paper"), None, None) => {
            let calendar = calendar::on(store, held)?;
            let due = calendar.sessions.iter().find(|one| one.at == place);
            SessionPart::Paper(days(due.and_then(|one| one.due), &text, now))
        }
        (Some("date"), None, None) => {
            let plan = held.plan.as_deref().ok_or(Refused::NothingToGoBy)?;
            let on = held.desk.plan.as_ref().ok_or(Refused::NothingToGoBy)?;
            let trained = calendar::trained(store, held, on.seq, plan)?;
            let done = trained.iter().rev().find(|one| one.at == place).ok_or(Refused::NotHere)?;
            SessionPart::Date(done.session, days(Some(done.day), &text, now))
        }
        (Some("always"), Some(of), Some(exercise)) => {
            let text = exchanged(held, place, of, exercise)?;
            return Ok((Look::Plan { text: Some(text), week: None }, Of::PlanFile));
        }
        _ => return Err(Refused::NotHere.into()),
    };
    let laid_out = match part {
        SessionPart::Paper(_) | SessionPart::Date(..) => None,
        SessionPart::Whole | SessionPart::Instead(_) | SessionPart::Add => {
            Some(laid_out(store, held, place, None, now)?)
        }
    };
    let form = SessionForm { place, laid_out, part };
    Ok((Look::Form { of: FormOf::Session, at, text }, Of::SessionForm(form)))
}

/// Days that are offered before a date has to be typed.
const DAYS: i32 = 10;

/// The days on which a session may have been: the one that was typed, the one it is meant for, and
/// those before today.
fn days(own: Option<i32>, text: &str, now: &Reading) -> Days {
    let today = now.local_day();
    let typed = (!text.is_empty()).then(|| places::day_of(text));
    let all = typed.flatten().into_iter().chain(own.filter(|day| *day <= today));
    let all = all.chain((0..DAYS).map(|back| today.saturating_sub(back)));
    let mut days: Vec<i32> = Vec::new();
    for day in all {
        if !days.contains(&day) {
            days.push(day);
        }
    }
    Days { days, own, unreadable: typed == Some(None) }
}

/// The plan's text with another exercise in the place of one of a session, from now on.
fn exchanged(held: &Held, at: At, of: &str, exercise: &str) -> Result<String, Fault> {
    let plan = held.plan.as_deref().ok_or(Refused::NothingToGoBy)?;
    let on = held.desk.plan.as_ref().ok_or(Refused::NothingToGoBy)?;
    let (week, session) = at.nth();
    let session = plan.session(week, session).ok_or(Refused::NotHere)?;
    // What stands in for the plan's own for once is exchanged where the plan's own stands.
    let changes = held.desk.arranged();
    let own = changes.changes_of(at).iter().rev().fold(of, |of, change| match change {
        ForOnce::Instead { of: own, exercise } if exercise == of => own,
        _ => of,
    });
    let entry = session.exercises.iter().find(|entry| entry.exercise == own);
    let slot = entry.ok_or(Refused::NotHere)?.slot;
    let found = held.catalogue.get(exercise).ok_or(Refused::NotHere)?;
    Ok(by_hand::exchange(&on.text, (session.session, slot), found, &held.known)
        .map_err(|_| Refused::NotHere)?)
}

/// What is on.
const TODAY: Look = Look::Today { session: None, minutes: None };

fn today<'a>(
    store: &Store,
    held: &'a Held,
    session: Option<&str>,
    minutes: Option<u32>,
    at: &Reading,
) -> Result<Of<'a>, Fault> {
    let Some(plan) = held.plan.as_deref() else { return Ok(Of::NothingOn) };
    let place = match session {
        Some(_) => place(store, held, session)?,
        // The plan is through: what it was stands in its weeks.
        None => match next_place(store, held)? {
            Some(next) => next,
            None => return Ok(Of::PlanIsOver(plan)),
        },
    };
    let laid_out = laid_out(store, held, place, minutes, at)?;
    let behind = calendar::on(store, held)?.behind(at.local_day());
    Ok(Of::Today(Today { plan, place, laid_out, behind }))
}
