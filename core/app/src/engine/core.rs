//! The core behind the lock: what stands, and one tap through it.

use std::panic::AssertUnwindSafe;

use barwright_domain::desk::{Desk, DeskEvent};
use barwright_domain::history::{Change, DoneSet, SessionRow};
use barwright_domain::owners::Owner;
use barwright_domain::session::{self, Event, Reading, Run, Stamped};
use barwright_log::{encode_desk, encode_session};
use barwright_store::{NewEvent, Store, StoreError};

use super::came;
use super::codec::{self, DESK, SESSION, VERSION};
use super::derive;
use super::effects::{self, Watched};
use super::export;
use super::guarded;
use super::intents::{self, Appends};
use super::standing::{self, SESSION_KEY};
use crate::contract::{
    Action, Answer, Draft, Edit, Effect, FormOf, HowEnded, Intent, Look, Screen,
};
use crate::facts::form::FormField;
use crate::facts::part;
use crate::facts::{self, Facts, Held, Of};
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
    /// A file of records that a shell opened last: its text, by its checksum.
    pub(super) opened: Option<(u32, String)>,
}

impl Core {
    /// Reads everything back from a store.
    pub(super) fn load(mut store: Store, locale: Locale) -> Result<Self, Fault> {
        let (desk, state) = derive::up_to_date(&mut store)?;
        let held = Held::new(locale, desk, state);
        Ok(Self { store, held, stale: false, opened: None })
    }

    /// The same, in a language.
    pub(super) fn speaking(mut self: Box<Self>, locale: Locale) -> Box<Self> {
        self.held.locale = locale;
        self
    }

    /// Reads everything back again, after a panic or a failed disk.
    pub(super) fn rebuild(&mut self) -> Result<(), Fault> {
        self.stale = true;
        self.store.reopen()?;
        self.read_back()
    }

    /// Reads back what is held, where the log has become more than what a tap adds: the file is opened
    /// again only where a failure closed it.
    pub(super) fn catch_up(&mut self) -> Result<(), Fault> {
        if self.store.is_closed() {
            return self.rebuild();
        }
        self.stale = true;
        self.read_back()
    }

    fn read_back(&mut self) -> Result<(), Fault> {
        let (desk, state) = derive::up_to_date(&mut self.store)?;
        let demo = self.held.demo;
        self.held = Held::new(self.held.locale, desk, state);
        self.held.demo = demo;
        self.stale = false;
        Ok(())
    }

    /// What a key does.
    pub(super) fn act(&mut self, action: Action, at: &Reading) -> Result<Answer, Fault> {
        self.sound(at)?;
        match action {
            Action::Show { look } => self.shown(look, at),
            Action::Do { intent, session, then } => {
                self.writable()?;
                self.tap(intent, session, then, at)
            }
        }
    }

    /// A reading that no clock gives is refused.
    pub(super) fn sound(&self, at: &Reading) -> Result<(), Fault> {
        if at.is_sound() {
            return Ok(());
        }
        Err(self.refused(session::Refusal::BadReading).into())
    }

    /// What could only be looked at may be written again.
    pub(super) fn writable(&mut self) -> Result<(), Fault> {
        if self.store.is_read_only() { self.rebuild() } else { Ok(()) }
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
        let leads = then.or_else(|| leads_to(&intent)).or_else(|| self.lift_of(&intent));
        let meant = intents::all_the_same(&intent);
        let appends =
            self.mended(|core| intents::appends(&core.store, &core.held, intent.clone(), at));
        match appends.map_err(|fault| asking(fault, meant, session))? {
            Appends::Session(events) => self.record_session(events, at)?,
            Appends::Desk(events) => self.record_desk(events, at)?,
        }
        let effects = effects::between(&before, &self.held, at, self.words());
        let look = leads.unwrap_or_else(|| self.usual_look(at));
        Ok(self.after_tap(look, effects, |core, look| core.shown(look, at)))
    }

    /// Runs `work`; where it meets derived rows that are spoiled, makes them anew from the log and
    /// runs it again.
    pub(super) fn mended<T>(
        &mut self,
        work: impl Fn(&mut Self) -> Result<T, Fault>,
    ) -> Result<T, Fault> {
        let answer = work(self);
        if answer.is_ok() || !self.store.is_spoiled() {
            return answer;
        }
        derive::derive_anew(&mut self.store).inspect_err(|_| self.stale = true)?;
        work(self)
    }

    /// A working load is written on the screen of its exercise: it is shown again.
    fn lift_of(&self, intent: &Intent) -> Option<Look> {
        let Intent::Write { field, .. } = intent else { return None };
        let owner = field.strip_prefix("working:").and_then(Owner::of_name)?;
        let rows = self.held.desk.plan.iter().flat_map(|plan| &plan.rows);
        let row = rows.into_iter().find(|row| Owner::Track(row.track) == owner)?;
        let session = self.held.plan.as_deref()?.sessions.get(usize::from(row.session))?;
        let exercise = session.exercises.get(usize::from(row.slot))?.exercise.clone();
        Some(Look::Lift { exercise, page: 0, all: false })
    }

    /// The answer to a tap that is on disk: where its screen can't be made, it says that.
    pub(super) fn after_tap(
        &mut self,
        look: Look,
        effects: Vec<Effect>,
        show: impl FnOnce(&mut Self, Look) -> Result<Answer, Fault>,
    ) -> Answer {
        let asked = look.clone();
        let shown = guarded(AssertUnwindSafe(|| show(self, look))).and_then(|shown| shown);
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
        self.mended(|core| core.shown_from_rows(look.clone(), at))
    }

    /// As [`Core::shown`], from the derived rows as they are.
    fn shown_from_rows(&mut self, look: Look, at: &Reading) -> Result<Answer, Fault> {
        if let Look::Floor { .. } = look {
            gather::paces(&self.store, &mut self.held)?;
        }
        let ended = match look {
            Look::Today { .. } => self.held.when_next_begins(at),
            _ => None,
        };
        let held = ended.as_ref().unwrap_or(&self.held);
        let (look, facts) = match look {
            // What goes out is written as it is for a program: it needs more than is gathered.
            Look::Form { of: FormOf::Records, at: part, text } => {
                let came = came::last(&self.store)?;
                let handed = export::handed(&self.store, &self.held.desk, &part, at, came)?;
                let look = Look::Form { of: FormOf::Records, at: part, text };
                (look, Facts { held, at, of: Of::Handed(handed) })
            }
            look => gather::of(&self.store, held, look, at)?,
        };
        let screen = screens::show(&facts, &look, self.words());
        let wakes_at = screens::wakes_at(&facts, &look);
        Ok(Answer { look, screen, effects: Vec::new(), wakes_at })
    }

    /// The screen that answers "what now?".
    fn usual_look(&self, at: &Reading) -> Look {
        match self.held.state.run() {
            // One that nobody ended is no answer on another day.
            Some(run) if run.finished.is_none() && session::abandoned(run, at).is_some() => {
                Look::Today { session: None, minutes: None }
            }
            Some(Run { finished: None, .. }) => Look::Floor { draft: Draft::default() },
            // The evening's tally stays up for the evening; another day asks what is on.
            Some(Run { finished: Some(end), .. }) if end.local_day() == at.local_day() => {
                Look::Tally
            }
            Some(_) | None => Look::Today { session: None, minutes: None },
        }
    }

    pub(super) fn words(&self) -> Words {
        self.held.locale.words()
    }

    fn refused(&self, refusal: session::Refusal) -> Refused {
        Refused::BySession(refusal, self.held.load_unit())
    }

    /// Records what a session tap comes to: its events, and in the same transaction what the owners
    /// of loads are told where a session is over, or is no longer.
    pub(super) fn record_session(&mut self, events: Vec<Event>, at: &Reading) -> Result<(), Fault> {
        if events.is_empty() {
            return Ok(());
        }
        let finishes = events.iter().any(|event| matches!(event, Event::Finished { .. }));
        let mut tap = Tap::new(self.store.next_seq(), at);
        for event in events {
            if let Event::Began { .. } = event {
                // From here on the session before can't be undone any more: it is settled.
                self.close(&mut tap);
            }
            let seq = tap.log(SESSION, encode_session(at, &event));
            let stamped = Stamped { seq, tap: tap.first, at: at.clone(), event };
            self.held.state.apply(stamped);
        }
        self.decide(&mut tap);
        self.append(tap)?;
        if finishes {
            // A quiet moment: from here on a loss of the session is known. One that fails is met
            // again, and told, by the next tap.
            let _ = self.store.checkpoint();
        }
        Ok(())
    }

    /// Records facts of the desk.
    pub(super) fn record_desk(
        &mut self,
        events: Vec<DeskEvent>,
        at: &Reading,
    ) -> Result<(), Fault> {
        if events.is_empty() {
            return Ok(());
        }
        let mut tap = Tap::new(self.store.next_seq(), at);
        for event in &events {
            let accounts = match event {
                DeskEvent::PlanTakenUp { plan, .. } => {
                    self.mended(|core| standing::of_kept(&core.store, &core.held.desk, *plan))?
                }
                // The session may be of any plan that was.
                DeskEvent::SessionDated { .. } => {
                    self.mended(|core| standing::not_held(&core.store, &core.held.desk))?
                }
                _ => Vec::new(),
            };
            for (owner, account) in accounts {
                self.held.desk.owners.put(owner, account);
            }
            if let DeskEvent::SessionDated { session, day } = event {
                tap.changes.extend(self.dated_rows(*session, *day)?);
            }
            self.apply(&mut tap, event);
        }
        self.append(tap)?;
        if events.iter().any(DeskEvent::changes_plan) {
            self.held.read_plan();
        }
        Ok(())
    }

    /// The rows of a session that is past, of another date.
    fn dated_rows(&self, session: u64, day: i32) -> Result<Vec<Change>, StoreError> {
        let history = self.store.history()?;
        let sets = history.sets_in(session)?.into_iter();
        let sets = sets.map(|set| Change::PutSet(DoneSet { day, ..set }));
        let row = history.session(session)?.map(|row| SessionRow { day, ..row });
        Ok(sets.chain(row.map(Change::PutSession)).collect())
    }

    /// Ends the session that was: what it comes to is told, and what it leaves behind is taken over.
    fn close(&mut self, tap: &mut Tap<'_>) {
        // What was done under an earlier plan is counted by that one: it stands as it is.
        if !tap.bodies.is_empty() {
            self.decide(tap);
        }
        let Some(run) = self.held.state.run() else { return tap.begins() };
        tap.desk_was.get_or_insert_with(|| self.held.desk.clone());
        self.held.desk.settle(run);
        tap.begins();
    }

    /// The rows of history as the session stands, and what that says to the owners.
    fn decide(&mut self, tap: &mut Tap<'_>) {
        let held = &mut self.held;
        let next = held.rows_after(&held.rows);
        tap.changes.extend(held.rows.changes_to(&next));
        held.rows = next;
        let decided = facts::decided(&held.state, &held.rows, &held.desk, &held.catalogue);
        if let Some(event) = decided {
            self.apply(tap, &event);
        }
    }

    fn apply(&mut self, tap: &mut Tap<'_>, event: &DeskEvent) {
        tap.desk_was.get_or_insert_with(|| self.held.desk.clone());
        let seq = tap.log(DESK, encode_desk(tap.at, event));
        self.held.desk.apply(seq, event);
    }

    /// Appends a tap. What is held is ahead of the log until it is there; where it can't be appended,
    /// all is read back from the log, before anything else is answered.
    fn append(&mut self, tap: Tap<'_>) -> Result<(), Fault> {
        let rows: Vec<NewEvent<'_>> = tap
            .bodies
            .iter()
            .map(|(kind, body)| NewEvent { kind, version: VERSION, body })
            .collect();
        let (mut written, mut gone) = (Vec::new(), Vec::new());
        if let Some(was) = &tap.desk_was {
            written = standing::written(was, &self.held.desk);
            match standing::gone(&self.store, was, &self.held.desk) {
                Ok(keys) => gone = keys,
                Err(error) => return self.after_append(Err(error)),
            }
        }
        written.extend(tap.began.map(|began| (SESSION_KEY.to_owned(), began.to_string())));
        let put = written.iter().map(|(key, body)| (key.as_str(), Some(body.as_str())));
        let facts: Vec<_> = put.chain(gone.iter().map(|key| (key.as_str(), None))).collect();
        let appended = self.store.append(codec::stamp(tap.at), &rows, &tap.changes, &facts);
        self.after_append(appended.map(|_| ()))
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

/// What one tap appends, as it is gathered.
struct Tap<'a> {
    at: &'a Reading,
    /// The number of its first event.
    first: u64,
    /// Its events, each with its kind.
    bodies: Vec<(&'static str, String)>,
    changes: Vec<Change>,
    /// The desk before it, where it changes.
    desk_was: Option<Desk>,
    /// The number of the event that begins a session, where one does.
    began: Option<u64>,
}

impl<'a> Tap<'a> {
    fn new(first: u64, at: &'a Reading) -> Self {
        let (bodies, changes) = (Vec::new(), Vec::new());
        Self { at, first, bodies, changes, desk_was: None, began: None }
    }

    /// The number of the next event.
    fn next(&self) -> u64 {
        self.first.saturating_add(u64::try_from(self.bodies.len()).unwrap_or(u64::MAX))
    }

    /// Adds an event and answers its number.
    fn log(&mut self, kind: &'static str, body: String) -> u64 {
        let seq = self.next();
        self.bodies.push((kind, body));
        seq
    }

    /// The next event begins a session.
    fn begins(&mut self) {
        self.began = Some(self.next());
    }
}

/// Where a tap leads, whatever runs: those that come from a list show it again.
fn leads_to(intent: &Intent) -> Option<Look> {
    match intent {
        // What was made shows among its kind; a step shows where it was taken.
        Intent::Edit { of: FormOf::Gym, edit: Edit::TakeUp | Edit::Drop, .. } => {
            Some(Look::Equipment)
        }
        // What was taken shows in the file.
        Intent::Edit { of: FormOf::Changes, edit: Edit::Put { text }, .. } => {
            Some(Look::Form { of: FormOf::Changes, at: String::new(), text: text.clone() })
        }
        Intent::Edit { of, .. } => {
            Some(Look::Form { of: *of, at: String::new(), text: String::new() })
        }
        Intent::Write { field, text, .. } => FormField::named(field)
            .map(|field| field.leads_to(text))
            .or_else(|| part::found_in(field, text)),
        Intent::AddGym { .. } | Intent::ChooseGym { .. } => Some(Look::Equipment),
        Intent::AdoptPlan { .. }
        | Intent::Arrange { .. }
        | Intent::LayAnew { .. }
        | Intent::DateSession { session: Some(_), .. }
        | Intent::TakeUpPlan { .. } => Some(Look::Weeks),
        Intent::HoldBack { .. } | Intent::Accept { .. } | Intent::AnswerPain { .. } => {
            Some(Look::Tally)
        }
        Intent::Minor { .. } => Some(Look::Care),
        Intent::EnterPaper { .. } => Some(Look::Floor {
            draft: Draft { panel: Some("order".to_owned()), ..Draft::default() },
        }),
        Intent::DateSession { session: None, .. } => Some(Look::Tally),
        Intent::WasIll => Some(Look::Today { session: None, minutes: None }),
        // What to do about it is asked at once.
        Intent::Record { ended: HowEnded::Pain, .. }
        | Intent::Correct { ended: HowEnded::Pain, .. }
        | Intent::PainOfJoint { .. } => Some(Look::Floor {
            draft: Draft { panel: Some("pain".to_owned()), ..Draft::default() },
        }),
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
            Fault::Asks(refused, Box::new(Action::Do { intent, session, then: None }))
        }
        (fault, _) => fault,
    }
}
