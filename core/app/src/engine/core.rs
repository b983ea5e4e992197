//! The core behind the lock: what stands, and one tap through it.

use std::panic::AssertUnwindSafe;

use barwright_domain::desk::DeskEvent;
use barwright_domain::session::{self, Event, Reading, Run, Stamped, State};
use barwright_store::{NewEvent, Store, StoreError};

use super::codec::{self, DESK, SESSION, VERSION};
use super::effects::{self, Watched};
use super::guarded;
use super::intents::{self, Appends};
use super::storage::{self, DESK_KEY, SESSION_KEY};
use crate::contract::{Action, Answer, Draft, Effect, Intent, Look, Screen};
use crate::facts::Held;
use crate::fault::{Fault, Refused};
use crate::gather;
use crate::locale::Locale;
use crate::phrase::Words;
use crate::screens;

/// The store, and everything that is held of it.
#[derive(Debug)]
pub(super) struct Core {
    pub(super) store: Store,
    pub(super) held: Held,
    /// Reading everything back did not come to its end: what is held here may not be what the log
    /// says, and is read back before anything else is answered.
    pub(super) stale: bool,
}

impl Core {
    /// Reads everything back from a store.
    pub(super) fn load(mut store: Store, locale: Locale) -> Result<Self, Fault> {
        storage::bring_up_to_date(&mut store)?;
        let held = Held::new(locale, storage::desk(&store)?, storage::session(&store)?);
        Ok(Self { store, held, stale: false })
    }

    /// Reads everything back again, after a panic or a failed disk.
    pub(super) fn rebuild(&mut self) -> Result<(), Fault> {
        self.stale = true;
        self.store.reopen()?;
        let (desk, state) = (storage::desk(&self.store)?, storage::session(&self.store)?);
        self.held = Held::new(self.held.locale, desk, state);
        self.stale = false;
        Ok(())
    }

    /// What a key does.
    pub(super) fn act(&mut self, action: Action, at: &Reading) -> Result<Answer, Fault> {
        if !at.is_sound() {
            return Err(self.refused(session::Refusal::BadReading).into());
        }
        match action {
            Action::Show { look } => self.shown(look, at),
            Action::Do { intent, session, then } => self.tap(intent, session, then, at),
        }
    }

    /// One tap: decided, appended, folded in, shown.
    fn tap(
        &mut self,
        intent: Intent,
        session: Option<u64>,
        then: Option<Look>,
        at: &Reading,
    ) -> Result<Answer, Fault> {
        let current = self.held.state.run().map(|run| run.session);
        if session.is_some() && session != current {
            return Err(Refused::StaleSession.into());
        }
        let before = match intent {
            // A device that woke may have lost its alarm and its screen's state: both are said again.
            Intent::Wake => Watched::of(self.held.state.run()).lost(),
            _ => Watched::of(self.held.state.run()),
        };
        let leads = then.or_else(|| leads_to(&intent));
        let meant = intents::all_the_same(&intent);
        let appends = intents::appends(&self.store, &self.held, intent, at);
        match appends.map_err(|fault| asking(fault, meant, session))? {
            Appends::Session(events) => self.record_session(events, at)?,
            Appends::Desk(events) => self.record_desk(events, at)?,
        }
        let effects = effects::between(&before, &self.held, at, self.words());
        let look = leads.unwrap_or_else(|| self.usual_look(at));
        Ok(self.after_tap(look, effects, at))
    }

    /// The answer to a tap that is on disk: where its screen can't be made, it says that.
    fn after_tap(&mut self, look: Look, effects: Vec<Effect>, at: &Reading) -> Answer {
        let asked = look.clone();
        let shown = guarded(AssertUnwindSafe(|| self.shown(look, at))).and_then(|shown| shown);
        match shown {
            Ok(answer) => Answer { effects, ..answer },
            Err(fault) => {
                let running = self.held.state.running().is_some();
                let failed = fault.said(self.words());
                let not_shown = screens::not_shown::screen(&failed, running, self.words());
                let screen = Screen::NotShown { not_shown };
                Answer { look: asked, screen, effects, wakes_at: None }
            }
        }
    }

    /// Any screen. Nothing is recorded.
    fn shown(&mut self, look: Look, at: &Reading) -> Result<Answer, Fault> {
        if let Look::Floor { .. } = look {
            gather::paces(&self.store, &mut self.held)?;
        }
        let (look, facts) = gather::of(&self.store, &self.held, look, at)?;
        let screen = screens::show(&facts, &look, self.words());
        let wakes_at = screens::wakes_at(&facts, &look);
        Ok(Answer { look, screen, effects: Vec::new(), wakes_at })
    }

    /// The screen that answers "what now?".
    fn usual_look(&self, at: &Reading) -> Look {
        match self.held.state.run() {
            Some(Run { finished: None, .. }) => Look::Floor { draft: Draft::default() },
            // The evening's tally stays up for the evening; another day asks what is on.
            Some(Run { finished: Some(end), .. }) if end.local_day() == at.local_day() => {
                Look::Tally
            }
            Some(_) | None => Look::Today { session: None, minutes: None },
        }
    }

    fn words(&self) -> Words {
        self.held.locale.words()
    }

    fn refused(&self, refusal: session::Refusal) -> Refused {
        Refused::BySession(refusal, self.held.load_unit())
    }

    pub(super) fn record_session(&mut self, events: Vec<Event>, at: &Reading) -> Result<(), Fault> {
        if events.is_empty() {
            return Ok(());
        }
        let mut bodies: Vec<(&str, String)> =
            events.iter().map(|event| (SESSION, codec::body(at, event))).collect();
        let held = &mut self.held;
        let first = self.store.next_seq();
        let begins = matches!(events.first(), Some(Event::Began { .. }));
        let mut standing: Vec<(&str, Option<&str>)> = Vec::new();
        let (began, desk);
        if begins {
            // From here on the session before can't be undone any more: it is settled, and the
            // maxes it changed become facts.
            let mut settled = held.desk.clone();
            if let Some(run) = held.state.run() {
                settled.settle(run);
                let maxes = held.maxes_changed(run);
                for event in &maxes {
                    settled.apply(first, event);
                    bodies.push((DESK, codec::body(at, event)));
                }
            }
            began = first.to_string();
            standing.push((SESSION_KEY, Some(&began)));
            // The plan's text is in it: it is only written where it changed.
            if settled != held.desk {
                held.desk = settled;
                desk = codec::desk_body(&held.desk);
                standing.push((DESK_KEY, Some(&desk)));
            }
        }
        // The rows on disk follow from the state as it will be; where the tap can't be recorded,
        // the state goes back to what it was.
        let known = held.state.log().len();
        let before = begins.then(|| std::mem::take(&mut held.state));
        for (seq, event) in (first..).zip(events) {
            held.state.apply(Stamped { seq, tap: first, at: at.clone(), event });
        }
        let next = held.rows_after(&held.rows);
        let changes = held.rows.changes_to(&next);
        let rows: Vec<NewEvent<'_>> =
            bodies.iter().map(|(kind, body)| NewEvent { kind, version: VERSION, body }).collect();
        let appended = self.store.append(codec::stamp(at), &rows, &changes, &standing);
        match &appended {
            Ok(_) => held.rows = next,
            Err(_) => {
                held.state = before.unwrap_or_else(|| {
                    State::replay(held.state.log().iter().take(known).cloned().collect())
                });
            }
        }
        self.after_append(appended.map(|_| ()))
    }

    pub(super) fn record_desk(
        &mut self,
        events: Vec<DeskEvent>,
        at: &Reading,
    ) -> Result<(), Fault> {
        if events.is_empty() {
            return Ok(());
        }
        let first = self.store.next_seq();
        let mut desk = self.held.desk.clone();
        for (seq, event) in (first..).zip(&events) {
            desk.apply(seq, event);
        }
        let bodies: Vec<String> = events.iter().map(|event| codec::body(at, event)).collect();
        let rows: Vec<NewEvent<'_>> =
            bodies.iter().map(|body| NewEvent { kind: DESK, version: VERSION, body }).collect();
        let was = std::mem::replace(&mut self.held.desk, desk);
        let body = codec::desk_body(&self.held.desk);
        let standing = [(DESK_KEY, Some(body.as_str()))];
        let appended = self.store.append(codec::stamp(at), &rows, &[], &standing);
        if appended.is_err() {
            self.held.desk = was;
        }
        self.after_append(appended.map(|_| ()))?;
        if events.iter().any(DeskEvent::changes_plan) {
            self.held.read_plan();
        }
        Ok(())
    }

    /// After a failed append the log tells what stands: it is never tried again blindly.
    fn after_append(&mut self, appended: Result<(), StoreError>) -> Result<(), Fault> {
        let Err(error) = appended else { return Ok(()) };
        // The first failure is the one to tell; one that fails while reading back is met again, and
        // told, by the next call.
        let _ = self.rebuild();
        Err(error.into())
    }
}

/// Where a tap leads, whatever runs: those that come from a list show it again.
fn leads_to(intent: &Intent) -> Option<Look> {
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

/// A refusal that asks, with the yes to it.
fn asking(fault: Fault, meant: Option<Intent>, session: Option<u64>) -> Fault {
    match (fault, meant) {
        (Fault::Refused(refused), Some(intent)) if refused.asks() => {
            Fault::Asks(refused, Action::Do { intent, session, then: None })
        }
        (fault, _) => fault,
    }
}
