//! What is written into a field, and loads that are taken up as they are offered.

use barwright_domain::desk::DeskEvent;
use barwright_domain::owners::{Change, MaxOrigin, Outcome, Owner, Question, TrackId};
use barwright_domain::quantity::{Mass, MassUnit};
use barwright_domain::session::{Command, Refusal, SetRun};
use barwright_domain::shown::plain;

use super::super::by_hand;
use super::{Appends, Deciding};
use crate::facts::form::{BODY_MASS, FormField};
use crate::facts::part;
use crate::fault::{Fault, Refused};

impl Deciding<'_> {
    /// What is written into a field.
    pub(super) fn write(&self, field: &str, text: &str, sure: bool) -> Result<Appends, Fault> {
        if let Some(field) = FormField::named(field) {
            if field.place == BODY_MASS {
                return self.write(BODY_MASS, text, sure);
            }
            return Ok(Appends::Desk(by_hand::write(self.held, &field, text)?));
        }
        let (name, session) = part::of_session(field);
        if session.is_some() && session != self.held.state.run().map(|run| run.session) {
            return Err(Refused::StaleSession.into());
        }
        let (name, of) = name.split_once(':').unwrap_or((name, ""));
        let day = self.at.local_day();
        match name {
            // What is looked for shows, and records nothing.
            "find-swap" | "find-swap-pain" | "find-add" => {
                self.running()?;
                Ok(Appends::Session(Vec::new()))
            }
            "note" => {
                let entry = match of {
                    "" => None,
                    of => Some(self.entry_named(of)?),
                };
                self.decide(&Command::Note { entry, text: plain(text) })
            }
            "set-up" => {
                let set_up = text.split([';', '\n']).map(|line| self.kept(&plain(line.trim())));
                let set_up = set_up.filter(|line| !line.is_empty()).collect();
                self.decide(&Command::NoteSetUp { entry: self.entry_named(of)?, set_up })
            }
            "load" => {
                let load = self.typed_mass(text, self.held.load_unit())?;
                let entry = self.entry_named(of)?;
                self.decide(&Command::ChangeLoad { entry, load, only_next: false, sure })
            }
            // More than the body, typed as all that is moved.
            "all" => {
                let all = self.typed_mass(text, self.held.load_unit())?;
                let entry = self.entry_named(of)?;
                let run = self.running()?;
                let loads = run.entries.get(&entry).into_iter().flat_map(|entry| &entry.sets);
                let body = loads
                    .filter_map(SetRun::first_load)
                    .find_map(|load| load.moved()?.checked_sub(load.figure?));
                let load = body.and_then(|body| all.checked_sub(body)).ok_or(Refused::NotHere)?;
                self.decide(&Command::ChangeLoad { entry, load, only_next: false, sure })
            }
            "pin" => {
                let pin = text.to_owned();
                self.decide(&Command::ChoosePin { entry: self.entry_named(of)?, pin })
            }
            BODY_MASS => {
                let mass = self.typed_mass(text, self.held.locale.unit)?;
                let (least, greatest) =
                    (Mass::whole(20, MassUnit::Kilogram), Mass::whole(400, MassUnit::Kilogram));
                if mass < least || mass > greatest {
                    return Err(self.refused(Refusal::OutOfRange).into());
                }
                Ok(Appends::Desk(vec![DeskEvent::BodyMassKept { mass, day }]))
            }
            "max" => {
                let found = self.held.catalogue.find(of).ok_or(Refused::NotHere)?;
                let mass = self.typed_mass(text, self.held.load_unit())?;
                if mass <= Mass::ZERO {
                    return Err(self.refused(Refusal::OutOfRange).into());
                }
                let owner = Owner::Max(found.slug.to_string());
                let changes = vec![Change::Max { mass, origin: MaxOrigin::Entered }];
                Ok(Appends::Desk(vec![DeskEvent::Said { owner, changes, day }]))
            }
            "working" => {
                let owner = Owner::of_name(of).ok_or(Refused::NotHere)?;
                let load = self.typed_mass(text, self.held.load_unit())?;
                Ok(Appends::Desk(vec![self.carries(owner, load)?]))
            }
            _ => Err(Refused::NotHere.into()),
        }
    }

    /// A track carries this from now on, said by a person.
    pub(super) fn carries(&self, owner: Owner, load: Mass) -> Result<DeskEvent, Fault> {
        let track = self.held.desk.owners.track(&owner);
        let (counting, asked) = track.counting.zip(track.asked).ok_or(Refused::NotHere)?;
        let changes = vec![Change::Load { load, counting, asked }];
        Ok(DeskEvent::Said { owner, changes, day: self.at.local_day() })
    }

    /// Yes to what the last session asks of an owner.
    pub(super) fn accept(&self, owner: &str) -> Result<Appends, Fault> {
        let (held, day) = (self.held, self.at.local_day());
        let owner = Owner::of_name(owner).ok_or(Refused::NotHere)?;
        let run = held.state.run().ok_or_else(|| self.refused(Refusal::NoSession))?;
        let word = held.desk.owners.account(&owner).and_then(|account| account.words().last());
        let word = word.filter(|word| word.session == Some(run.session)).ok_or(Refused::NotHere)?;
        let Outcome { proposal: Some(proposal), held: false, .. } = &word.outcome else {
            return Err(Refused::NotHere.into());
        };
        let track = held.desk.owners.track(&owner);
        let event = match (proposal.question, proposal.to) {
            (Question::Test, Some(mass)) => {
                let changes = vec![Change::Max { mass, origin: MaxOrigin::Tested }];
                DeskEvent::Said { owner, changes, day }
            }
            (Question::OwnTrack(row), to) => {
                let load = to.or(track.load);
                let load = load.zip(track.counting).zip(track.asked);
                let load =
                    load.map(|((load, counting), asked)| Change::Load { load, counting, asked });
                let changes = std::iter::once(Change::Fresh).chain(load).collect();
                let track = TrackId(held.desk.next_track.saturating_add(1));
                DeskEvent::TrackParted { row, track, changes, day }
            }
            (Question::Jump | Question::WellOff | Question::Missed, Some(load)) => {
                self.carries(owner, load)?
            }
            (Question::Jump | Question::WellOff | Question::Missed | Question::Test, None) => {
                return Err(Refused::NotHere.into());
            }
        };
        Ok(Appends::Desk(vec![event]))
    }
}
