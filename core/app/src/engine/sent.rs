//! A file of a coach's changes for a lifter, written from a return.

use barwright_domain::desk::{At, MOST_CHANGES, Sent, SentChange, SentWhat};
use barwright_domain::owners::Owner;
use barwright_domain::plan::Plan;
use barwright_domain::session::Reading;

use super::Engine;
use super::core::Core;
use crate::contract::{self, EngineError};
use crate::facts::{entered, mended, place, standing, swapped};
use crate::fault::{Fault, Refused};
use crate::gather;

/// What a coach changes for a lifter.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Change {
    /// In a few words: `max back-squat -5 %`, `load bench-press 80 kg`, `hold bench-press`,
    /// `swap back-squat with front-squat`, `week 3`.
    Said(String),
    /// The plan, mended: its text.
    Plan(String),
}

impl Engine {
    /// A file of changes for the lifter whose records these are, each with what it is decided on:
    /// what stands here. Nothing is recorded.
    ///
    /// # Errors
    /// [`EngineError::Refused`] for a change that can't be read or has nothing to change; else as
    /// [`Engine::view`].
    pub fn changes_file(
        &self,
        lifter: &str,
        changes: &[Change],
        reading: contract::Reading,
    ) -> Result<String, EngineError> {
        let at = Reading::from(reading);
        self.with(|core| core.changes_file(lifter, changes, &at))
    }
}

impl Core {
    fn changes_file(&self, lifter: &str, asked: &[Change], at: &Reading) -> Result<String, Fault> {
        if asked.is_empty() || asked.len() > MOST_CHANGES {
            return Err(Refused::UnknownChange(String::new()).into());
        }
        let mut changes = Vec::with_capacity(asked.len());
        for (nth, change) in (1..).zip(asked) {
            let what = match change {
                Change::Said(said) => self.change(said)?,
                Change::Plan(text) => self.plan_change(text)?,
            };
            changes.push(SentChange { id: nth.to_string(), what });
        }
        let mut sent = Sent {
            id: String::new(),
            lifter: lifter.to_owned(),
            store: self.store.uuid().to_owned(),
            entry: self.store.last_seq().max(1),
            day: at.local_day(),
            changes,
        };
        name(&mut sent);
        let text = sent.write();
        // What can't be read back is not sent: a name or a plan that is too long.
        Sent::read(&text).map_err(|faults| Refused::Faults(faults.len()))?;
        Ok(text)
    }

    fn change(&self, said: &str) -> Result<SentWhat, Fault> {
        let unknown = || Refused::UnknownChange(said.to_owned());
        let (kind, rest) = said.trim().split_once(char::is_whitespace).ok_or_else(unknown)?;
        let rest = rest.trim();
        match kind {
            "max" => {
                let (name, amount) = amount_of(rest).ok_or_else(unknown)?;
                let exercise = self.slug(name)?;
                let at = Owner::Max(exercise.clone()).name();
                let (was, to) = (standing(&self.held, &at), entered(&self.held, &at, amount)?);
                Ok(SentWhat::Max { exercise, was, to })
            }
            "load" => {
                let (name, amount) = amount_of(rest).ok_or_else(unknown)?;
                self.working_load(name, Some(amount))
            }
            "hold" => match self.working_load(rest, None) {
                // What has no load of its own goes by its max.
                Err(Fault::Refused(Refused::NoLoad(_))) => self.held_max(rest),
                load => load,
            },
            "swap" => {
                let (one, other) = rest.split_once(" with ").ok_or_else(unknown)?;
                let (exercise, with) = (self.slug(one.trim())?, self.slug(other.trim())?);
                let on = self.held.desk.plan.as_ref().ok_or(Refused::NothingToGoBy)?;
                swapped(&self.held, &on.text, &exercise, &with).ok_or(Refused::NotHere)?;
                Ok(SentWhat::Swap { exercise, with, on: on.text_seq })
            }
            "week" => {
                let week = rest.parse().map_err(|_| unknown())?;
                let plan = self.held.plan.as_deref().ok_or(Refused::NothingToGoBy)?;
                if week == 0 || !place::is_in(plan, At { week, session: 1 }) {
                    return Err(Refused::NotHere.into());
                }
                let next = gather::next_place(&self.store, &self.held)?;
                Ok(SentWhat::Week { week, next: next.map(place::name) })
            }
            _ => Err(unknown().into()),
        }
    }

    fn plan_change(&self, text: &str) -> Result<SentWhat, Fault> {
        let held = &self.held;
        let on = held.desk.plan.as_ref().ok_or(Refused::NothingToGoBy)?;
        let read = Plan::read(text, &held.known).map_err(|faults| Refused::Faults(faults.len()))?;
        mended(held, &read.plan, false).ok_or_else(|| Refused::OtherPlan(on.name.clone()))?;
        Ok(SentWhat::Plan { text: text.to_owned(), on: on.text_seq })
    }

    /// The exercise that a coach means, by its slug.
    fn slug(&self, name: &str) -> Result<String, Fault> {
        let found = self.held.catalogue.get(name).or_else(|| self.held.catalogue.find(name));
        let none = || Refused::NoExercise(name.to_owned(), Vec::new());
        Ok(found.map(|found| found.slug.to_string()).ok_or_else(none)?)
    }

    /// The max of an exercise stays.
    fn held_max(&self, name: &str) -> Result<SentWhat, Fault> {
        let none = || Refused::NoLoad(name.to_owned());
        let exercise = self.slug(name)?;
        let stands = standing(&self.held, &Owner::Max(exercise.clone()).name());
        let to = stands.ok_or_else(none)?;
        Ok(SentWhat::Max { exercise, was: Some(to), to })
    }

    /// The name of a working load, with the sessions that have it: "track:3 (Monday)".
    fn named(&self, owner: &Owner) -> String {
        let rows = self.held.desk.plan.iter().flat_map(|plan| &plan.rows);
        let rows = rows.filter(|row| Owner::Track(row.track) == *owner);
        let plan = self.held.plan.as_deref();
        let mut sessions: Vec<&str> = rows
            .filter_map(|row| plan?.sessions.get(usize::from(row.session)))
            .map(|session| session.name.as_str())
            .collect();
        sessions.dedup();
        format!("{} ({})", owner.name(), sessions.join(", "))
    }

    /// A working load, by its exercise or its own name; without an amount it is held.
    fn working_load(&self, name: &str, amount: Option<&str>) -> Result<SentWhat, Fault> {
        let named = Owner::of_name(name);
        let slug = if named.is_some() { String::new() } else { self.slug(name)? };
        let mut found = gather::tracks(&self.held);
        found
            .retain(|track| named.as_ref().map_or(track.exercise == slug, |it| *it == track.owner));
        let track = match (found.pop(), found.is_empty()) {
            (Some(track), true) => track,
            (None, _) => return Err(Refused::NoLoad(name.to_owned()).into()),
            (Some(last), false) => {
                let names = found.iter().chain([&last]).map(|track| self.named(&track.owner));
                return Err(Refused::SeveralLoads(name.to_owned(), names.collect()).into());
            }
        };
        let Owner::Track(id) = track.owner else { return Err(Refused::NotHere.into()) };
        let at = format!("working:{}", track.owner.name());
        let to = amount.map(|amount| entered(&self.held, &at, amount)).transpose()?;
        let (was, to) = (track.load, to.unwrap_or(track.load));
        Ok(SentWhat::Load { track: id, exercise: track.exercise, was, to })
    }
}

/// A name, and the amount after it: what begins with a digit or a sign.
fn amount_of(said: &str) -> Option<(&str, &str)> {
    let begins = |word: &str| word.starts_with(|c: char| c.is_ascii_digit() || "+-−–".contains(c));
    let at = said
        .match_indices(' ')
        .map(|(at, _)| at)
        .find(|at| said.get(at + 1..).is_some_and(begins))?;
    let (name, amount) = said.split_at_checked(at)?;
    Some((name.trim(), amount.trim()))
}

/// Names a file of changes: the same ones, decided on the same, are the same file, and are taken once.
pub(super) fn name(sent: &mut Sent) {
    sent.id = format!("{}-{:016x}", sent.entry, mark(&sent.write()));
}

/// A mark of a text that is the same wherever it is made: FNV-1a of 64 bits.
fn mark(text: &str) -> u64 {
    text.bytes().fold(0xcbf2_9ce4_8422_2325, |mark, byte| {
        (mark ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
    })
}
