//! The core behind the lock: what stands, and one tap through it.

use std::cell::RefCell;
use std::sync::Arc;

use barwright_domain::catalogue::Catalogue;
use barwright_domain::desk::{Desk, DeskEvent};
use barwright_domain::equipment::{self, Equipment};
use barwright_domain::history::{self, Rows};
use barwright_domain::plan::Plan;
use barwright_domain::progress::reference;
use barwright_domain::quantity::MassUnit;
use barwright_domain::session::{self, Command, Event, Reading, Run, Stamped, State};
use barwright_domain::volume::EASIEST_HARD;
use barwright_store::{NewEvent, Store, StoreError};

use super::codec::{self, DESK, SESSION, VERSION};
use super::effects::{self, Watched};
use super::storage::{self, DESK_KEY, SESSION_KEY};
use crate::contract::{Draft, EngineError, Intent, Look, Screen, Update};
use crate::locale::Locale;
use crate::phrase::en;
use crate::screens;

/// Everything the engine knows; all of it can be read back from the store.
#[derive(Debug)]
pub(crate) struct Core {
    /// Reading derived rows may first write queued ones, so even a look needs it whole.
    pub(crate) store: RefCell<Store>,
    pub(crate) locale: Locale,
    pub(crate) desk: Desk,
    pub(crate) state: State,
    /// The rows of the session, as they are on disk.
    rows: Rows,
    /// The adopted plan, read; none where there is none.
    pub(crate) plan: Option<Arc<Plan>>,
    /// The built-in exercises and the plan's own.
    pub(crate) catalogue: Catalogue,
    /// Reading everything back did not come to its end: what is held here may not be what the log
    /// says, and is read back before anything else is answered.
    pub(super) stale: bool,
}

/// What a tap is to append.
pub(super) enum Facts {
    /// Of the session.
    Session(Vec<Event>),
    /// Of the desk.
    Desk(Vec<DeskEvent>),
}

impl Core {
    /// Reads everything back from a store.
    pub(super) fn load(mut store: Store, locale: Locale) -> Result<Self, EngineError> {
        storage::bring_up_to_date(&mut store)?;
        let desk = storage::desk(&store)?;
        let state = storage::session(&store)?;
        let mut core = Self {
            store: RefCell::new(store),
            locale,
            desk,
            state,
            rows: Rows::default(),
            plan: None,
            catalogue: Catalogue::builtin(),
            stale: false,
        };
        core.read_plan();
        core.rows = core.rows_now();
        Ok(core)
    }

    /// Reads everything back again, after a panic or a failed disk.
    pub(super) fn rebuild(&mut self) -> Result<(), EngineError> {
        self.stale = true;
        self.store.get_mut().reopen().map_err(|error| en::storage::error(&error))?;
        self.desk = storage::desk(self.store.get_mut())?;
        self.state = storage::session(self.store.get_mut())?;
        self.read_plan();
        self.rows = self.rows_now();
        self.stale = false;
        Ok(())
    }

    /// The rows of the session as it stands.
    fn rows_now(&self) -> Rows {
        rows_of(&Rows::default(), &self.state, self.plan.as_deref(), &self.catalogue)
    }

    /// The maxes that the session changes, as the plan's rules say: facts when the next one begins.
    pub(crate) fn maxes_changed(&self, run: &Run) -> Vec<DeskEvent> {
        let Some(plan) = self.plan.as_deref() else { return Vec::new() };
        let step = reference::step_in(run.equipment.unit);
        let sets = self.rows.sets.values().map(AsRef::as_ref);
        reference::changed_by(plan, &self.catalogue, &self.desk, sets, step)
    }

    fn read_plan(&mut self) {
        self.plan = read_plan(&self.desk).map(Arc::new);
        self.catalogue = catalogue_of(self.plan.as_deref());
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

    /// One tap: decided, appended, folded in, shown.
    pub(super) fn dispatch(&mut self, intent: Intent, at: Reading) -> Result<Update, EngineError> {
        if !at.is_sound() {
            return Err(en::refusal::of(&session::Refusal::BadReading, self));
        }
        let before = match intent {
            // A device that woke may have lost its alarm and its screen's state: both are said again.
            Intent::Wake => Watched::of(self.state.run()).lost(),
            _ => Watched::of(self.state.run()),
        };
        let shows = intent_shows(&intent);
        match super::intents::facts(self, intent, &at)? {
            Facts::Session(events) => self.record_session(events, &at)?,
            Facts::Desk(events) => self.record_desk(events, &at)?,
        }
        let effects = effects::between(&before, self.state.run(), &at);
        let look = shows.unwrap_or_else(|| self.usual_look(&at));
        let screen = self.view(&look, &at)?;
        Ok(Update { screen, effects })
    }

    /// Any screen. Nothing changes.
    pub(super) fn view(&self, look: &Look, at: &Reading) -> Result<Screen, EngineError> {
        if !at.is_sound() {
            return Err(en::refusal::of(&session::Refusal::BadReading, self));
        }
        screens::show(self, look, at)
    }

    /// The screen that answers "what now?".
    fn usual_look(&self, at: &Reading) -> Look {
        match self.state.run() {
            Some(Run { finished: None, .. }) => Look::Floor { draft: Draft::default() },
            // The evening's tally stays up for the evening; another day asks what is on.
            Some(Run { finished: Some(end), .. }) if end.local_day() == at.local_day() => {
                Look::Tally
            }
            Some(_) => Look::Today { session: None, minutes: None },
            None => Look::Today { session: None, minutes: None },
        }
    }

    /// The decision on a command, in the words of a refusal.
    pub(super) fn decide(&self, command: &Command, at: &Reading) -> Result<Facts, EngineError> {
        session::decide(&self.state, command, at)
            .map(Facts::Session)
            .map_err(|refusal| en::refusal::of(&refusal, self))
    }

    pub(super) fn record_session(
        &mut self,
        events: Vec<Event>,
        at: &Reading,
    ) -> Result<(), EngineError> {
        if events.is_empty() {
            return Ok(());
        }
        let mut bodies: Vec<(&str, String)> =
            events.iter().map(|event| (SESSION, codec::body(at, event))).collect();
        let first = self.store.get_mut().next_seq();
        let begins = matches!(events.first(), Some(Event::Began { .. }));
        let mut standing: Vec<(&str, Option<&str>)> = Vec::new();
        let (began, desk);
        if begins {
            // From here on the session before can't be undone any more: it is settled, and the
            // maxes it changed become facts.
            let mut settled = self.desk.clone();
            if let Some(run) = self.state.run() {
                settled.settle(run);
                let maxes = self.maxes_changed(run);
                for event in &maxes {
                    settled.apply(first, event);
                    bodies.push((DESK, codec::body(at, event)));
                }
            }
            began = first.to_string();
            standing.push((SESSION_KEY, Some(&began)));
            // The plan's text is in it: it is only written where it changed.
            if settled != self.desk {
                self.desk = settled;
                desk = codec::desk_body(&self.desk);
                standing.push((DESK_KEY, Some(&desk)));
            }
        }
        // The rows on disk follow from the state as it will be; where the tap can't be recorded,
        // the state goes back to what it was.
        let known = self.state.log().len();
        let before = begins.then(|| std::mem::take(&mut self.state));
        for (seq, event) in (first..).zip(events) {
            self.state.apply(Stamped { seq, tap: first, at: at.clone(), event });
        }
        let plan = self.plan.as_deref();
        let next = rows_of(&self.rows, &self.state, plan, &self.catalogue);
        let changes = self.rows.changes_to(&next);
        let rows: Vec<NewEvent<'_>> =
            bodies.iter().map(|(kind, body)| NewEvent { kind, version: VERSION, body }).collect();
        let appended = self.store.get_mut().append(codec::stamp(at), &rows, &changes, &standing);
        match &appended {
            Ok(_) => self.rows = next,
            Err(_) => {
                self.state = before.unwrap_or_else(|| {
                    State::replay(self.state.log().iter().take(known).cloned().collect())
                });
            }
        }
        self.after_append(appended.map(|_| ()))
    }

    pub(super) fn record_desk(
        &mut self,
        events: Vec<DeskEvent>,
        at: &Reading,
    ) -> Result<(), EngineError> {
        if events.is_empty() {
            return Ok(());
        }
        let first = self.store.get_mut().next_seq();
        let mut desk = self.desk.clone();
        for (seq, event) in (first..).zip(&events) {
            desk.apply(seq, event);
        }
        let bodies: Vec<String> = events.iter().map(|event| codec::body(at, event)).collect();
        let rows: Vec<NewEvent<'_>> =
            bodies.iter().map(|body| NewEvent { kind: DESK, version: VERSION, body }).collect();
        let was = std::mem::replace(&mut self.desk, desk);
        let body = codec::desk_body(&self.desk);
        let appended = self.store.get_mut().append(
            codec::stamp(at),
            &rows,
            &[],
            &[(DESK_KEY, Some(body.as_str()))],
        );
        if appended.is_err() {
            self.desk = was;
        }
        self.after_append(appended.map(|_| ()))?;
        if events.iter().any(DeskEvent::changes_plan) {
            self.read_plan();
        }
        Ok(())
    }

    /// After a failed append the log tells what stands: it is never tried again blindly.
    fn after_append(&mut self, appended: Result<(), StoreError>) -> Result<(), EngineError> {
        let Err(error) = appended else { return Ok(()) };
        // The first failure is the one to tell; one that fails while reading back is met again, and
        // told, by the next call.
        let _ = self.rebuild();
        Err(en::storage::error(&error))
    }
}

/// The adopted plan. Its text was read without a fault when it was adopted; a release that reads it
/// otherwise shows it as a plan to be put right instead of failing to open.
pub(super) fn read_plan(desk: &Desk) -> Option<Plan> {
    let text = &desk.plan.as_ref()?.text;
    Plan::read(text, &Catalogue::builtin()).ok().map(|file| file.plan)
}

/// The built-in exercises and a plan's own.
pub(super) fn catalogue_of(plan: Option<&Plan>) -> Catalogue {
    match plan {
        Some(plan) => Catalogue::builtin().with_own(plan.exercises.clone()),
        None => Catalogue::builtin(),
    }
}

/// The rows of a session as it stands, after those of an earlier moment.
pub(super) fn rows_of(
    before: &Rows,
    state: &State,
    plan: Option<&Plan>,
    catalogue: &Catalogue,
) -> Rows {
    let easiest = plan.map_or(EASIEST_HARD, |plan| plan.hard_at_left);
    history::rows_after(before, state.run(), catalogue, easiest)
}

/// Taps that come from a list show it again, whatever runs.
fn intent_shows(intent: &Intent) -> Option<Look> {
    match intent {
        Intent::AddGym { .. } | Intent::ChooseGym { .. } => Some(Look::Equipment),
        Intent::AdoptPlan { .. } | Intent::Arrange { .. } | Intent::TakeUpPlan { .. } => {
            Some(Look::Weeks)
        }
        Intent::HoldBack { .. } => Some(Look::Tally),
        // The partner's thumb stays where it is.
        Intent::TapRep { .. } => Some(Look::Floor {
            draft: Draft { panel: Some("pace".to_owned()), ..Draft::default() },
        }),
        _ => None,
    }
}
