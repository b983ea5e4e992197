//! The plan that is on, its sessions and their days.

use barwright_domain::desk::{Arrangement, At, DeskEvent, DraftOf, ForOnce, MOST_FOR_ONCE, Shared};
use barwright_domain::plan::Plan;
use barwright_domain::session::{self, Command, Refusal};

use super::super::codec;
use super::super::taken::Taking;
use super::{Appends, Deciding};
use crate::contract::{Arrange, LayAnew, SessionChange};
use crate::facts::{adopted, fitted, mended, place};
use crate::fault::{Fault, Refused};
use crate::gather;

/// The most weeks away at once.
const MOST_AWAY: u32 = 8;
/// Days around today that a session can be moved to.
const NEAR_DAYS: i32 = 366;

impl Deciding<'_> {
    /// A plan read from a file: the one that is on, mended, where it has its name.
    pub(super) fn adopt(
        &self,
        text: String,
        from: Option<&str>,
        as_new: bool,
        all_rows: bool,
    ) -> Result<Appends, Fault> {
        let plan = Plan::read(&text, &self.held.known)
            .map_err(|faults| Refused::Faults(faults.len()))?
            .plan;
        if self.held.state.running().is_some() {
            return Err(self.refused(Refusal::SessionRunning).into());
        }
        let made = text.clone();
        let day = self.at.local_day();
        let from = from.map(|row| place::named(row).ok_or(Refused::NotHere)).transpose()?;
        if from.is_some_and(|at| !place::is_in(&plan, at)) {
            return Err(Refused::NotHere.into());
        }
        let shared = if all_rows { Shared::All } else { Shared::ThisOne };
        let before = mended(self.held, &plan, as_new);
        let found = adopted(self.held, &plan, before, shared);
        let (rows, said) = (found.rows, found.said);
        let (seq, event) = match (before, &self.held.desk.plan) {
            (Some(_), Some(on)) => {
                let plan = on.seq;
                (plan, DeskEvent::PlanMended { plan, text, day, rows, said })
            }
            _ => {
                let name = plan.name.clone();
                (self.store.next_seq(), DeskEvent::PlanAdopted { text, name, day, rows, said })
            }
        };
        let entered = from.map(|at| {
            let what = Arrangement::Entered { at, day };
            DeskEvent::Arranged { plan: seq, what }
        });
        // What was made by hand is taken up with it.
        let of = DraftOf::Plan;
        let made = self.held.desk.drafts.get(&of).is_some_and(|draft| draft.text == made);
        let dropped = made.then_some(DeskEvent::DraftDropped { of });
        Ok(Appends::Desk(std::iter::once(event).chain(entered).chain(dropped).collect()))
    }

    /// What a coach sent: all that fit, or the one that is named.
    pub(super) fn take_sent(&self, text: &str, which: &str) -> Result<Appends, Fault> {
        let file = gather::sent_file(self.store, self.held, text)?;
        let file = file.map_err(|faults| Refused::Faults(faults.len()))?;
        if self.held.state.running().is_some() {
            return Err(self.refused(Refusal::SessionRunning).into());
        }
        let taking = Taking { held: self.held, file: &file, day: self.at.local_day() };
        let chosen = taking.chosen(which)?;
        let mut events = match taking.plan(&chosen)? {
            Some(text) => match self.adopt(text, None, false, false)? {
                Appends::Desk(events) => events,
                session @ Appends::Session(_) => return Ok(session),
            },
            None => Vec::new(),
        };
        events.extend(taking.events(&chosen)?);
        Ok(Appends::Desk(events))
    }

    pub(super) fn arrange(&self, session: &str, how: &Arrange) -> Result<Appends, Fault> {
        let adopted = self.held.desk.plan.as_ref().map(|plan| plan.seq);
        let plan = adopted.ok_or(Refused::NothingToGoBy)?;
        let place_of = |name: &str| gather::place(self.store, self.held, Some(name));
        let here = place_of(session)?;
        let today = self.at.local_day();
        let what = match how {
            Arrange::Enter => Arrangement::Entered { at: here, day: today },
            Arrange::LeaveOut { left_out } => {
                Arrangement::LeftOut { at: here, left_out: *left_out }
            }
            Arrange::Move { day: Some(day) } if day.abs_diff(today) > NEAR_DAYS.unsigned_abs() => {
                return Err(self.refused(Refusal::OutOfRange).into());
            }
            Arrange::Move { day } => Arrangement::Moved { at: here, day: *day },
            Arrange::Join { with } => {
                let other = with.as_deref().map(place_of).transpose()?;
                let arranged = self.held.desk.arranged();
                // A session that is itself joined to one takes no other, nor itself.
                let chained = |other: At| {
                    other == here
                        || arranged.with.iter().any(|(at, to, _)| *at == other || *to == here)
                };
                if other.is_some_and(chained) {
                    return Err(Refused::NotHere.into());
                }
                Arrangement::With { at: here, other }
            }
            Arrange::Again { again } => Arrangement::Again { at: here, again: *again },
            Arrange::Change { change } => {
                let changes = self.changed_for_once(here, change)?;
                Arrangement::ForOnce { at: here, changes }
            }
            Arrange::Travel { weeks } => {
                let few = u16::try_from(*weeks).ok().filter(|_| *weeks <= MOST_AWAY);
                let weeks = few.ok_or_else(|| self.refused(Refusal::OutOfRange))?;
                Arrangement::Travel { week: here.week, weeks }
            }
        };
        Ok(Appends::Desk(vec![DeskEvent::Arranged { plan, what }]))
    }

    /// Nothing runs, or what runs was left open.
    pub(super) fn none_runs(&self) -> Result<(), Fault> {
        let running = self.held.state.running();
        if running.is_some_and(|run| session::abandoned(run, self.at).is_none()) {
            return Err(self.refused(Refusal::SessionRunning).into());
        }
        Ok(())
    }

    /// A session is of another date. The last one says so itself, and can be undone.
    pub(super) fn date_session(&self, session: Option<u64>, day: i32) -> Result<Appends, Fault> {
        let last = self.held.state.run().map(|run| run.session);
        let Some(session) = session.filter(|session| last != Some(*session)) else {
            return self.decide(&Command::Date(day));
        };
        let row = self.store.history()?.session(session)?.ok_or(Refused::NotHere)?;
        if row.day == day {
            return Err(self.refused(Refusal::AlreadySo).into());
        }
        if !(0..=2 * NEAR_DAYS).contains(&self.at.local_day().saturating_sub(day)) {
            return Err(self.refused(Refusal::OutOfRange).into());
        }
        Ok(Appends::Desk(vec![DeskEvent::SessionDated { session, day }]))
    }

    /// The rest of the plan laid anew, or as it was before that.
    pub(super) fn lay_anew(&self, how: Option<LayAnew>) -> Result<Appends, Fault> {
        let on = self.held.desk.plan.as_ref().ok_or(Refused::NothingToGoBy)?;
        let arranged = self.held.desk.arranged();
        let to = match how {
            Some(how) => gather::anew(self.store, self.held, how, self.at)?.dates,
            None => arranged.back.clone(),
        };
        if to.is_empty() {
            return Err(self.refused(Refusal::AlreadySo).into());
        }
        let back = how.map(|_| arranged.standing(&to)).unwrap_or_default();
        let what = Arrangement::LaidAnew { to, back };
        Ok(Appends::Desk(vec![DeskEvent::Arranged { plan: on.seq, what }]))
    }

    /// What is changed in a session for once, with this.
    pub(super) fn changed_for_once(
        &self,
        at: At,
        change: &SessionChange,
    ) -> Result<Vec<ForOnce>, Fault> {
        let mut changes = self.held.desk.arranged().changes_of(at).to_vec();
        let known = |slug: &String| {
            let found = self.held.catalogue.get(slug).map(|found| found.slug.to_string());
            found.ok_or(Refused::NotHere)
        };
        match change {
            SessionChange::Instead { of, exercise } => {
                changes.push(ForOnce::Instead { of: of.clone(), exercise: known(exercise)? });
            }
            SessionChange::Add { exercise } => {
                changes.push(ForOnce::Added { exercise: known(exercise)? });
            }
            SessionChange::Leave { exercise } => {
                changes.push(ForOnce::LeftOut { exercise: exercise.clone() });
            }
            SessionChange::Earlier { exercise } => {
                changes.push(ForOnce::Earlier { exercise: exercise.clone() });
            }
            SessionChange::Fit => {
                let laid_out = gather::laid_out(self.store, self.held, at, None, self.at)?;
                changes.extend(fitted(self.held, &laid_out.sheet));
            }
            SessionChange::Back => {
                changes.pop();
            }
            SessionChange::AsPlanned => changes.clear(),
        }
        if changes.len() > MOST_FOR_ONCE {
            return Err(self.refused(Refusal::TooMany).into());
        }
        Ok(changes)
    }

    /// A plan that was kept goes on where it stood, its dates from today.
    pub(super) fn take_up(&self, plan: &str) -> Result<Appends, Fault> {
        let Self { store, held, at } = self;
        if held.state.running().is_some() {
            return Err(self.refused(Refusal::SessionRunning).into());
        }
        let seq: u64 = plan.parse().map_err(|_| Refused::NotHere)?;
        let kept = held.desk.kept.iter().find(|kept| kept.seq == seq).ok_or(Refused::NotHere)?;
        let event = codec::desk(&store.event(kept.text_seq)?.ok_or(Refused::NotHere)?);
        let event = event.map_err(|_| Fault::UnreadableEvent(kept.text_seq))?;
        let (DeskEvent::PlanAdopted { text, .. } | DeskEvent::PlanMended { text, .. }) = event
        else {
            return Err(Refused::NotHere.into());
        };
        let (name, day) = (kept.name.clone(), kept.day);
        let file =
            Plan::read(&text, &held.known).map_err(|faults| Refused::Faults(faults.len()))?;
        let next = gather::calendar_of(store, held, seq, day, &file.plan)?.next;
        let mut events = vec![DeskEvent::PlanTakenUp { plan: seq, text, name, day }];
        events.extend(next.map(|next| DeskEvent::Arranged {
            plan: seq,
            what: Arrangement::Entered { at: next, day: at.local_day() },
        }));
        Ok(Appends::Desk(events))
    }
}
