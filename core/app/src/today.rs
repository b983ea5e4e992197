//! What is on: the session whose turn it is, its sheet, and what the next ones will be.

use barwright_domain::desk::Desk;
use barwright_domain::session::{Command, Entry, EntryId, PlanPlace, Reading, Reason, Run, Sheet};

use crate::contract::{EngineError, RefusalCode};
use crate::engine::Core;
use crate::phrase::en;

/// A session of the adopted plan, both counted from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Place {
    pub(crate) week: usize,
    pub(crate) session: usize,
}

impl Place {
    /// Its name as a row: "2.1", both from 1.
    pub(crate) fn name(self) -> String {
        format!("{}.{}", self.week + 1, self.session + 1)
    }

    /// The place of a row's name.
    pub(crate) fn of_name(name: &str) -> Option<Self> {
        let (week, session) = name.split_once('.')?;
        let from_one = |text: &str| text.parse::<usize>().ok()?.checked_sub(1);
        Some(Self { week: from_one(week)?, session: from_one(session)? })
    }

    fn of_plan(place: &PlanPlace) -> Option<Self> {
        Some(Self {
            week: usize::from(place.week).checked_sub(1)?,
            session: usize::from(place.session).checked_sub(1)?,
        })
    }
}

/// The places of the adopted plan, in order.
pub(crate) fn places(core: &Core) -> Vec<Place> {
    let Some(plan) = &core.plan else { return Vec::new() };
    (0..plan.weeks.len())
        .flat_map(|week| {
            (0..plan.sessions_of(week).len()).map(move |session| Place { week, session })
        })
        .collect()
}

/// The places of the adopted plan that were trained, with the day of each.
pub(crate) fn trained(core: &Core) -> Result<Vec<(Place, i32, bool)>, EngineError> {
    let _ = core.store.borrow_mut();
    Ok(Vec::new())
}

/// The session whose turn it is: the one after the last that was trained, or the first.
pub(crate) fn next_place(core: &Core) -> Result<Option<Place>, EngineError> {
    let last =
        trained(core)?.into_iter().filter(|(_, _, over)| *over).map(|(place, _, _)| place).max();
    Ok(places(core).into_iter().find(|place| last.is_none_or(|last| *place > last)))
}

/// The desk with what the last session leaves behind, as the next one will find it.
pub(crate) fn settled(core: &Core) -> Desk {
    let mut desk = core.desk.clone();
    if let Some(run) = core.state.run().filter(|run| run.finished.is_some()) {
        desk.settle(run);
    }
    desk
}

/// The command that begins a session.
pub(crate) fn begin(
    core: &Core,
    session: Option<&str>,
    minutes: Option<u32>,
    at: &Reading,
) -> Result<Command, EngineError> {
    let sheet = sheet(core, session, minutes, at)?;
    Ok(Command::Begin {
        sheet,
        equipment: core.gym(),
        body_mass: core.desk.body_mass.map(|(mass, _)| mass),
    })
}

/// The sheet of a session, or of the one whose turn it is.
pub(crate) fn sheet(
    core: &Core,
    _session: Option<&str>,
    _minutes: Option<u32>,
    _at: &Reading,
) -> Result<Sheet, EngineError> {
    let _ = (core, settled(core), next_place(core)?);
    Err(en::refusal::coded(RefusalCode::NothingToGoBy))
}

/// The sheet's entry for another exercise in the place of one.
pub(crate) fn substitute(
    _core: &Core,
    _entry: EntryId,
    _exercise: &str,
    _at: &Reading,
) -> Result<Entry, EngineError> {
    Err(en::refusal::coded(RefusalCode::NotHere))
}

/// What an exercise will be next time.
pub(crate) struct NextTime {
    pub(crate) exercise: String,
    pub(crate) name: String,
    pub(crate) changes: bool,
    pub(crate) reason: Reason,
}

/// What the exercises of a session will be next time.
pub(crate) fn next_times(
    _core: &Core,
    _run: &Run,
    _at: &Reading,
) -> Result<Vec<NextTime>, EngineError> {
    Ok(Vec::new())
}
