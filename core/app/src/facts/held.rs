//! What is held in memory between calls: all of it can be read back from the log.

use std::collections::BTreeMap;
use std::sync::Arc;

use barwright_domain::catalogue::Catalogue;
use barwright_domain::desk::{Desk, DeskEvent};
use barwright_domain::equipment::{self, Equipment};
use barwright_domain::history::Rows;
use barwright_domain::plan::Plan;
use barwright_domain::progress::pace::Point;
use barwright_domain::progress::reference;
use barwright_domain::quantity::MassUnit;
use barwright_domain::session::{Run, State};

use crate::locale::Locale;

/// What stands.
#[derive(Debug)]
pub(crate) struct Held {
    pub(crate) locale: Locale,
    pub(crate) desk: Desk,
    pub(crate) state: State,
    /// The rows of the session.
    pub(crate) rows: Rows,
    /// The adopted plan, read; none where there is none.
    pub(crate) plan: Option<Arc<Plan>>,
    /// The built-in exercises and the plan's own.
    pub(crate) catalogue: Catalogue,
    pub(crate) paces: Paces,
}

/// What past sets of an exercise say of slowing, oldest first: read once in a session, where a
/// partner taps.
#[derive(Debug, Default)]
pub(crate) struct Paces {
    /// The session that they were read for.
    pub(crate) session: u64,
    /// By exercise.
    pub(crate) of: BTreeMap<String, Vec<Point>>,
}

impl Held {
    /// Of a desk and a session, with the plan that is on read.
    pub(crate) fn new(locale: Locale, desk: Desk, state: State) -> Self {
        let mut held = Self {
            locale,
            desk,
            state,
            rows: Rows::default(),
            plan: None,
            catalogue: Catalogue::builtin(),
            paces: Paces::default(),
        };
        held.read_plan();
        held.rows = held.rows_after(&Rows::default());
        held
    }

    /// Reads the plan that is on. Its text was read without a fault when it was adopted; a release
    /// that reads it otherwise shows it as a plan to be put right instead of failing to open.
    pub(crate) fn read_plan(&mut self) {
        self.plan = read_plan(&self.desk).map(Arc::new);
        self.catalogue = catalogue_of(self.plan.as_deref());
    }

    /// The rows of the session as it stands, after those of an earlier moment.
    pub(crate) fn rows_after(&self, before: &Rows) -> Rows {
        rows_of(before, &self.state, self.plan.as_deref(), &self.catalogue)
    }

    /// The gym that is trained in.
    pub(crate) fn gym(&self) -> Equipment {
        let named = self.desk.gym.as_ref().and_then(|name| {
            self.desk
                .gyms
                .iter()
                .find(|gym| gym.name == *name)
                .cloned()
                .or_else(|| equipment::builtin().into_iter().find(|gym| gym.name == *name))
        });
        named.unwrap_or_else(|| {
            let unit = self.locale.unit;
            equipment::builtin_in(unit)
        })
    }

    /// The unit that loads are shown in: the gym's, of the running session or the chosen one.
    pub(crate) fn load_unit(&self) -> MassUnit {
        match self.state.running() {
            Some(run) => run.equipment.unit,
            None => self.gym().unit,
        }
    }

    /// The maxes that the session changes, as the plan's rules say: facts when the next one begins.
    pub(crate) fn maxes_changed(&self, run: &Run) -> Vec<DeskEvent> {
        let Some(plan) = self.plan.as_deref() else { return Vec::new() };
        let step = reference::step_in(run.equipment.unit);
        let sets = self.rows.sets.values().map(AsRef::as_ref);
        reference::changed_by(plan, &self.catalogue, &self.desk, sets, step)
    }

    /// The desk as it stands with what a session leaves behind: set-ups, what was held back, and
    /// maxes.
    pub(crate) fn desk_after(&self, run: &Run) -> Desk {
        let mut desk = self.desk.clone();
        desk.settle(run);
        for event in self.maxes_changed(run) {
            desk.apply(0, &event);
        }
        desk
    }

    /// The desk as it stands with what the last session leaves behind, where it is over.
    pub(crate) fn desk_now(&self) -> Desk {
        match self.state.run().filter(|run| run.finished.is_some()) {
            Some(run) => self.desk_after(run),
            None => self.desk.clone(),
        }
    }
}

/// The adopted plan, read.
pub(crate) fn read_plan(desk: &Desk) -> Option<Plan> {
    let text = &desk.plan.as_ref()?.text;
    Plan::read(text, &Catalogue::builtin()).ok().map(|file| file.plan)
}

/// The built-in exercises and a plan's own.
pub(crate) fn catalogue_of(plan: Option<&Plan>) -> Catalogue {
    match plan {
        Some(plan) => Catalogue::builtin().with_own(plan.exercises.clone()),
        None => Catalogue::builtin(),
    }
}

/// The rows of a session as it stands, after those of an earlier moment.
pub(crate) fn rows_of(
    before: &Rows,
    state: &State,
    plan: Option<&Plan>,
    catalogue: &Catalogue,
) -> Rows {
    let easiest = plan.map_or(barwright_domain::volume::EASIEST_HARD, |plan| plan.hard_at_left);
    barwright_domain::history::rows_after(before, state.run(), catalogue, easiest)
}
