//! In by a screen: a file that a shell opened is held, looked at, and taken when its key is tapped.
//!
//! It can be some megabytes long, so it crosses once: looks and keys name it by its checksum.

use barwright_domain::session::Reading;
use barwright_log::form::{BadLine, Wrong};

use super::super::came;
use super::super::core::Core;
use super::super::effects::{self, Watched};
use super::super::export::MOST_CARRIED;
use super::read::File;
use super::{bring, take_in};
use crate::contract::{Action, Answer, Edit, FormOf, Intent, Look};
use crate::facts::{Coming, ComingPart, Done, Facts, Found, Of, Taking};
use crate::fault::{Fault, Refused};
use crate::screens;

/// What a key does, and what a shell opens: records that come in are shown and taken here, all else by
/// the core.
pub(in crate::engine) fn act(
    core: &mut Core,
    action: Action,
    at: &Reading,
) -> Result<Answer, Fault> {
    match action {
        Action::Show { look } => match part_of(core, look) {
            Ok(part) => {
                core.sound(at)?;
                show(core, part, at)
            }
            Err(look) => core.act(Action::Show { look }, at),
        },
        Action::Do { intent: Intent::Edit { of: FormOf::Records, place, edit, .. }, .. } => {
            core.sound(at)?;
            core.writable()?;
            let before = Watched::of(core.held.state.run());
            let (done, changes) = take(core, (&place, &edit), at)?;
            let effects = effects::between(&before, &core.held, at, core.words());
            let part = ComingPart::Done(done);
            Ok(core.after_tap(look_at(part, changes.clone()), effects, |core, _| {
                show(core, (part, changes), at)
            }))
        }
        action => {
            // Whoever goes on with something else is done with the file; a device that only woke is not.
            if !matches!(action, Action::Do { intent: Intent::Wake, .. }) {
                core.opened = None;
            }
            core.act(action, at)
        }
    }
}

/// The part of what comes in that a look is at, with its text; else the look. What a shell opens as a
/// plan and is records, is held, and shown as what it is.
fn part_of(core: &mut Core, look: Look) -> Result<(ComingPart, String), Look> {
    match look {
        Look::Plan { text: Some(text), .. } if barwright_log::form::is_meant(&text) => {
            let file = barwright_store::checksum(&text);
            core.opened = Some((file, text));
            Ok((ComingPart::File(file), String::new()))
        }
        Look::Form { of: FormOf::Records, at, text } => match ComingPart::named(&at) {
            Some(part) => Ok((part, text)),
            None => Err(Look::Form { of: FormOf::Records, at, text }),
        },
        look => Err(look),
    }
}

fn show(
    core: &mut Core,
    (part, text): (ComingPart, String),
    at: &Reading,
) -> Result<Answer, Fault> {
    let coming = core.mended(|core| coming(core, (part, &text), at))?;
    let facts = Facts { held: &core.held, at, of: Of::Coming(coming) };
    let look = look_at(part, text);
    let screen = screens::show(&facts, &look, core.words());
    Ok(Answer { look, screen, effects: Vec::new(), wakes_at: None })
}

fn look_at(part: ComingPart, text: String) -> Look {
    Look::Form { of: FormOf::Records, at: part.name(), text }
}

/// What there is to show of a part; `text` is the look's.
fn coming(
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
            Ok(Coming::Done { done, changes: text.to_owned(), came: came::last(&core.store)? })
        }
    }
}

/// Works with the open file of a checksum; none where that is no longer open.
fn holding<T>(
    core: &mut Core,
    file: u32,
    work: impl FnOnce(&mut Core, &str) -> Result<T, Fault>,
) -> Result<Option<T>, Fault> {
    let Some((file, text)) = core.opened.take_if(|(opened, _)| *opened == file) else {
        return Ok(None);
    };
    let answer = work(core, &text);
    core.opened = Some((file, text));
    answer.map(Some)
}

/// What a file comes to beside what is here: nothing is taken.
fn found(core: &mut Core, text: &str, at: &Reading) -> Result<Found, Fault> {
    let file = match read(text) {
        Ok(file) => file,
        Err(fault) => return refused(fault).map(Found::Refused),
    };
    let why = match take_in::found(core, &file) {
        Ok(take_in::Imported { same, new, sessions, .. }) => {
            return Ok(Found::GoesOn { same, new, sessions });
        }
        Err(fault) => refused(fault)?,
    };
    let bring::Joined { new, same, open, .. } = bring::bring_file(core, file, at, true)?;
    Ok(Found::Apart { why, new, same, open })
}

/// What is wrong with a file is said on the screen; that it can't be looked at is no answer.
fn refused(fault: Fault) -> Result<Refused, Fault> {
    match fault {
        Fault::Refused(refused) => Ok(refused),
        fault => Err(fault),
    }
}

fn read(text: &str) -> Result<File, Fault> {
    if text.len() > MOST_CARRIED {
        return Err(Wrong::Line { line: 1, what: BadLine::FileTooLarge }.into());
    }
    File::read_whole(text.as_bytes())
}

/// Does what a key of the form says. Answers what was done, and the file that tells what stands
/// otherwise there.
fn take(
    core: &mut Core,
    (place, edit): (&str, &Edit),
    at: &Reading,
) -> Result<(Done, String), Fault> {
    if core.held.demo {
        // Invented records take none of one's own.
        return Err(Refused::NotHere.into());
    }
    let (done, changes) = match (Taking::at(place), edit) {
        (Some(Taking::GoOn(file)), Edit::TakeUp) => {
            let taken =
                holding(core, file, |core, text| take_in::take_in(core, read(text)?, false))?;
            let take_in::Imported { same, new, sessions, .. } = taken.ok_or(Refused::NotHere)?;
            (Done::GoneOn { same, new, sessions }, String::new())
        }
        (Some(Taking::AsHistory(file)), Edit::TakeUp) => {
            let joined =
                holding(core, file, |core, text| bring::bring_file(core, read(text)?, at, false))?;
            let bring::Joined { new, same, open, differing, changes, .. } =
                joined.ok_or(Refused::NotHere)?;
            (Done::AsHistory { new, same, open, differing }, changes.unwrap_or_default())
        }
        (Some(Taking::Withdraw(tap)), Edit::Remove) => {
            // A second tap of one key does not take out what came before.
            let last = came::last(&core.store)?.filter(|came| came.tap == tap);
            let sessions = bring::withdraw(core, last.ok_or(Refused::NotHere)?, at)?;
            (Done::Withdrawn { sessions }, String::new())
        }
        _ => return Err(Refused::NotHere.into()),
    };
    Ok((done, changes))
}
