//! Where the plan stands.

use barwright_domain::coach::{Anew, Rest};
use barwright_domain::desk::{self, At, Calendar, TrainedAt};
use barwright_domain::plan::Plan;
use barwright_domain::session::Reading;
use barwright_store::{Store, StoreError};

use crate::contract::LayAnew;
use crate::facts::{AnewOf, Held, place as places};
use crate::fault::{Fault, Refused};

/// The calendar of the plan that is on; an empty one without a plan.
pub(super) fn on(store: &Store, held: &Held) -> Result<Calendar, StoreError> {
    match (&held.desk.plan, &held.plan) {
        (Some(adopted), Some(plan)) => calendar_of(store, held, adopted.seq, adopted.day, plan),
        _ => Ok(Calendar::default()),
    }
}

/// The calendar of a plan that is on, or was.
pub(crate) fn calendar_of(
    store: &Store,
    held: &Held,
    seq: u64,
    day: i32,
    plan: &Plan,
) -> Result<Calendar, StoreError> {
    let trained = trained(store, held, seq, plan)?;
    let arranged = held.desk.arranged.get(&seq).cloned().unwrap_or_default();
    Ok(desk::calendar(plan, day, &arranged, &trained))
}

/// The sessions of a plan that were trained, in the log's order.
pub(super) fn trained(
    store: &Store,
    held: &Held,
    seq: u64,
    plan: &Plan,
) -> Result<Vec<TrainedAt>, StoreError> {
    let turns = store.history()?.turns_of_plan(seq)?;
    // One that was left open may be taken as over before the log says so.
    let over = held.state.run().filter(|run| run.finished.is_some()).map(|run| run.session);
    let trained = turns
        .into_iter()
        .filter(|turn| turn.over || over == Some(turn.session))
        .filter_map(|turn| {
            let at = places::in_plan(plan, places::of_plan(turn.place.as_ref()?), &turn.title);
            Some(TrainedAt { at, day: turn.day, session: turn.session })
        });
    Ok(trained.collect())
}

/// The rest of the plan that is on as it would be laid anew.
pub(crate) fn anew(
    store: &Store,
    held: &Held,
    how: LayAnew,
    at: &Reading,
) -> Result<AnewOf, Fault> {
    let plan = held.plan.as_deref().ok_or(Refused::NothingToGoBy)?;
    let on = held.desk.plan.as_ref().ok_or(Refused::NothingToGoBy)?;
    let trained = trained(store, held, on.seq, plan)?;
    let arranged = held.desk.arranged();
    let today = at.local_day();
    let (adopted, catalogue) = (on.day, &held.catalogue);
    let arranged = &arranged;
    let rest = Rest { plan, catalogue, adopted, arranged, trained: &trained, today };
    let dates = rest.anew(match how {
        LayAnew::PushBack => Anew::PushBack,
        LayAnew::Drop => Anew::Drop,
        LayAnew::Squeeze => Anew::Squeeze,
        LayAnew::SqueezeClose => Anew::SqueezeClose,
    });
    let before = desk::calendar(plan, on.day, arranged, &trained);
    Ok(AnewOf { how, before, after: rest.with(&dates), close: rest.close(&dates), dates })
}

/// The session whose turn it is.
pub(crate) fn next_place(store: &Store, held: &Held) -> Result<Option<At>, StoreError> {
    Ok(on(store, held)?.next)
}

/// The place of a row's name, or the session whose turn it is.
pub(crate) fn place(store: &Store, held: &Held, session: Option<&str>) -> Result<At, Fault> {
    let plan = held.plan.as_deref().ok_or(Refused::NothingToGoBy)?;
    match session {
        Some(name) => {
            Ok(places::named(name).filter(|at| places::is_in(plan, *at)).ok_or(Refused::NotHere)?)
        }
        None => Ok(next_place(store, held)?.ok_or(Refused::PlanIsOver)?),
    }
}
