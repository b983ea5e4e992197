//! In by a screen: a file that a shell opened is held, looked at, and taken when its key is tapped.
//!
//! It can be some megabytes long, so it crosses once: looks and keys name it by its checksum.

use barwright_domain::session::Reading;
use barwright_log::form::{BadLine, Wrong};

use super::super::core::Core;
use super::super::export::MOST_CARRIED;
use super::{bring, take_in};
use crate::contract::{Edit, FormOf, Look};
use crate::facts::{Coming, ComingPart, Done, Found, Taking};
use crate::fault::{Fault, NotTaken, Refused};

/// A file that a shell opened.
#[derive(Debug)]
pub(in crate::engine) struct Opened {
    /// What tells it apart.
    file: u32,
    text: String,
}

/// Holds what a shell opened, where that is records: it is shown as what it is.
pub(in crate::engine) fn hold(core: &mut Core, look: Look) -> Look {
    match look {
        Look::Plan { text: Some(text), .. } if barwright_log::form::is_meant(&text) => {
            let file = barwright_store::checksum(&text);
            core.opened = Some(Opened { file, text });
            look_at(ComingPart::File(file), String::new())
        }
        look => look,
    }
}

fn look_at(part: ComingPart, text: String) -> Look {
    Look::Form { of: FormOf::Records, at: part.name(), text }
}

/// What there is to show of a part; `text` is the look's.
pub(in crate::engine) fn coming(
    core: &mut Core,
    (part, text): (ComingPart, &str),
    at: &Reading,
) -> Result<Coming, Fault> {
    match part {
        ComingPart::Ask => Ok(Coming::Asked),
        ComingPart::File(file) => {
            let found = holding(core, file, |core, text| found(core, text, at))?;
            Ok(found.map_or(Coming::Closed, |found| Coming::Open { file, found }))
        }
        ComingPart::Done(done) => {
            Ok(Coming::Done { done, changes: text.to_owned(), came: bring::last(&core.store)? })
        }
    }
}

/// Works with the open file of a checksum; none where that is no longer open.
fn holding<T>(
    core: &mut Core,
    file: u32,
    work: impl FnOnce(&mut Core, &str) -> Result<T, Fault>,
) -> Result<Option<T>, Fault> {
    let Some(opened) = core.opened.take_if(|opened| opened.file == file) else { return Ok(None) };
    let answer = work(core, &opened.text);
    core.opened = Some(opened);
    answer.map(Some)
}

/// What a file comes to beside what is here: nothing is taken.
fn found(core: &mut Core, text: &str, at: &Reading) -> Result<Found, Fault> {
    let refused = match bounded(text).and_then(|file| take_in::take_in(core, file, true)) {
        Ok(take_in::Imported { same, new, sessions, .. }) => {
            return Ok(Found::GoesOn { same, new, sessions });
        }
        Err(Fault::Refused(refused)) => refused,
        Err(fault) => return Err(fault),
    };
    if !matches!(refused, Refused::NotTaken(NotTaken::Others | NotTaken::Apart { .. })) {
        return Ok(Found::Refused(refused));
    }
    let bring::Joined { new, same, open, .. } = bring::bring_file(core, text.as_bytes(), at, true)?;
    Ok(Found::Apart { why: refused, new, same, open })
}

fn bounded(text: &str) -> Result<&[u8], Fault> {
    if text.len() > MOST_CARRIED {
        return Err(Wrong::Line { line: 1, what: BadLine::FileTooLarge }.into());
    }
    Ok(text.as_bytes())
}

/// Does what a key of the form says. Answers the look that says what came of it.
pub(in crate::engine) fn take(
    core: &mut Core,
    (place, edit): (&str, &Edit),
    at: &Reading,
) -> Result<Look, Fault> {
    if core.held.demo {
        // Invented records take none of one's own.
        return Err(Refused::NotHere.into());
    }
    let (done, changes) = match (Taking::at(place), edit) {
        (Some(Taking::GoOn(file)), Edit::TakeUp) => {
            let taken =
                holding(core, file, |core, text| take_in::take_in(core, bounded(text)?, false))?;
            let take_in::Imported { same, new, sessions, .. } = taken.ok_or(Refused::NotHere)?;
            (Done::GoneOn { same, new, sessions }, String::new())
        }
        (Some(Taking::AsHistory(file)), Edit::TakeUp) => {
            let joined = holding(core, file, |core, text| {
                bring::bring_file(core, bounded(text)?, at, false)
            })?;
            let bring::Joined { new, same, open, differing, changes, .. } =
                joined.ok_or(Refused::NotHere)?;
            (Done::AsHistory { new, same, open, differing }, changes.unwrap_or_default())
        }
        (Some(Taking::Withdraw(tap)), Edit::Remove) => {
            // A second tap of one key does not take out what came before.
            let last = bring::last(&core.store)?;
            last.filter(|came| came.tap == tap).ok_or(Refused::NotHere)?;
            (Done::Withdrawn { sessions: bring::withdraw(core, at)? }, String::new())
        }
        _ => return Err(Refused::NotHere.into()),
    };
    Ok(look_at(ComingPart::Done(done), changes))
}
