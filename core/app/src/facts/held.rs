//! What is held in memory between calls: all of it can be read back from the log.

use std::collections::BTreeMap;
use std::sync::Arc;

use barwright_domain::catalogue::Catalogue;
use barwright_domain::desk::{Desk, DeskEvent};
use barwright_domain::equipment::{self, Equipment};
use barwright_domain::history::{DoneSet, Rows};
use barwright_domain::owners::{Outcome, RowOwner};
use barwright_domain::plan::Plan;
use barwright_domain::progress::pace::Point;
use barwright_domain::quantity::MassUnit;
use barwright_domain::session::{Reading, Run, Stamped, State, left_behind};
use barwright_domain::settle::{Ground, settle};

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
    /// The built-in exercises and the lifter's own, which a plan may name.
    pub(crate) known: Catalogue,
    /// Those, and the plan's own before them.
    pub(crate) catalogue: Catalogue,
    pub(crate) paces: Paces,
    /// A session that nobody ended is taken as over here; the log says so when the next one begins.
    pub(crate) left_open: bool,
    /// These records are the demo's, shown in the place of the lifter's own.
    pub(crate) demo: bool,
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
            known: Catalogue::builtin(),
            catalogue: Catalogue::builtin(),
            paces: Paces::default(),
            left_open: false,
            demo: false,
        };
        held.read_plan();
        held.rows = held.rows_after(&Rows::default());
        held
    }

    /// Reads the plan that is on. Its text was read without a fault when it was adopted; a release
    /// that reads it otherwise shows it as a plan to be put right instead of failing to open.
    pub(crate) fn read_plan(&mut self) {
        self.known = self.desk.catalogue().speaking(self.locale.words().tongue());
        self.plan = read_plan(&self.desk, &self.known).map(Arc::new);
        self.catalogue = catalogue_of(self.plan.as_deref(), &self.known);
    }

    /// The rows of the session as it stands, after those of an earlier moment.
    pub(crate) fn rows_after(&self, before: &Rows) -> Rows {
        rows_of(before, &self.state, self.plan.as_deref(), &self.catalogue)
    }

    /// The gym that is trained in.
    pub(crate) fn gym(&self) -> Equipment {
        let named = self.desk.gym.as_ref().and_then(|name| {
            let mut gyms = self.desk.gyms.iter().chain(equipment::builtin());
            gyms.find(|gym| gym.name == *name).cloned()
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

    /// As it will stand when the next session begins, where one runs that nobody ended: over as of its
    /// last part. None where there is no such one.
    pub(crate) fn when_next_begins(&self, at: &Reading) -> Option<Self> {
        let events = left_behind(self.state.running()?, at);
        if events.is_empty() {
            return None;
        }
        let mut state = self.state.clone();
        let last = state.log().last().map_or(0, |stamped| stamped.seq);
        for (seq, event) in (last.saturating_add(1)..).zip(events) {
            state.apply(Stamped { seq, tap: seq, at: at.clone(), event });
        }
        let rows = rows_of(&self.rows, &state, self.plan.as_deref(), &self.catalogue);
        let mut desk = self.desk.clone();
        if let Some(event) = decided(&state, &rows, &desk, &self.catalogue) {
            desk.apply(last, &event);
        }
        Some(Self {
            locale: self.locale,
            desk,
            state,
            rows,
            plan: self.plan.clone(),
            known: self.known.clone(),
            catalogue: self.catalogue.clone(),
            paces: Paces::default(),
            left_open: true,
            demo: self.demo,
        })
    }

    /// The desk as it stands with what a session leaves behind: set-ups, and what it comes to for
    /// each owner. One that is over has told the owners; one that runs is taken as it stands.
    pub(crate) fn desk_after(&self, run: &Run) -> Desk {
        let mut desk = self.desk.clone();
        desk.settle(run);
        if run.finished.is_none() {
            let outcomes = outcomes(run, &self.rows, &self.desk, &self.catalogue);
            desk.owners.decided(run.session, run.day, &outcomes);
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

/// What a session comes to for each owner, by the owners as they stood before it.
fn outcomes(run: &Run, rows: &Rows, desk: &Desk, catalogue: &Catalogue) -> Vec<Outcome> {
    let sets: Vec<DoneSet> = rows.sets.values().map(|set| DoneSet::clone(set)).collect();
    let before = desk.owners.before(run.session);
    // Evidence as of its day, never over what was said or used since.
    let late = run.day < run.began.local_day();
    let ground = Ground { owners: &before, catalogue, rows: rows_of_plan(desk, run), late };
    let mut outcomes = settle(run, &sets, &ground);
    outcomes.sort_by(|one, other| one.owner.cmp(&other.owner));
    outcomes
}

/// The rows of the plan that a session is of.
fn rows_of_plan<'a>(desk: &'a Desk, run: &Run) -> &'a [RowOwner] {
    let plan = run.sheet.place.as_ref().map(|place| place.plan);
    let on = desk.plan.iter().map(|plan| (plan.seq, plan.rows.as_slice()));
    let kept = desk.kept.iter().map(|plan| (plan.seq, plan.rows.as_slice()));
    on.chain(kept).find(|(seq, _)| Some(*seq) == plan).map(|(_, rows)| rows).unwrap_or_default()
}

/// What a session says to the owners, where that is other than what they were told of it. Only one
/// that is over says anything.
pub(crate) fn decided(
    state: &State,
    rows: &Rows,
    desk: &Desk,
    catalogue: &Catalogue,
) -> Option<DeskEvent> {
    let run = state.run()?;
    let outcomes = match run.finished {
        Some(_) => outcomes(run, rows, desk, catalogue),
        None => Vec::new(),
    };
    let told = desk.owners.decided_in(run.session);
    if outcomes.iter().eq(told) {
        return None;
    }
    Some(DeskEvent::Decided { session: run.session, day: run.day, outcomes })
}

/// The adopted plan, read.
pub(crate) fn read_plan(desk: &Desk, known: &Catalogue) -> Option<Plan> {
    let text = &desk.plan.as_ref()?.text;
    Plan::read(text, known).ok().map(|file| file.plan)
}

/// A plan's own exercises before those that are known.
pub(crate) fn catalogue_of(plan: Option<&Plan>, known: &Catalogue) -> Catalogue {
    let own = plan.map(|plan| plan.exercises.clone()).unwrap_or_default();
    let own = Catalogue::builtin().with_own(own).with_own(known.own().iter().cloned());
    own.speaking(known.tongue())
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
