//! What is taken of a file of a coach's changes: what it says beside the plan's text, and that text.

use barwright_domain::desk::{Arrangement, At, DeskEvent, SentWhat};
use barwright_domain::owners::Owner;

use crate::facts::{Held, SentFile, SentNow, SentState, says, swapped};
use crate::fault::Refused;

/// What is taken of a file.
pub(super) struct Taking<'a> {
    pub(super) held: &'a Held,
    pub(super) file: &'a SentFile,
    pub(super) day: i32,
}

impl Taking<'_> {
    /// What is taken: the one that is named, whatever stands; else all that fit.
    pub(super) fn chosen(&self, which: &str) -> Result<Vec<&SentNow>, Refused> {
        if which.is_empty() {
            let fit = self.file.changes.iter().filter(|one| one.state == SentState::Fits);
            let fit: Vec<&SentNow> = fit.collect();
            return if fit.is_empty() { Err(Refused::NothingToTake) } else { Ok(fit) };
        }
        let named = self.file.changes.iter().find(|one| one.change.id == which);
        let named = named.ok_or(Refused::NotHere)?;
        match named.state {
            SentState::Taken | SentState::Nothing => Err(Refused::NothingToTake),
            SentState::Fits | SentState::Apart => Ok(vec![named]),
        }
    }

    /// The plan's text after them; none where it stays.
    pub(super) fn plan(&self, chosen: &[&SentNow]) -> Result<Option<String>, Refused> {
        let mut text: Option<String> = None;
        for one in chosen {
            match &one.change.what {
                SentWhat::Plan { text: mended, .. } => text = Some(mended.clone()),
                SentWhat::Swap { exercise, with, .. } => {
                    let on = self.held.desk.plan.as_ref().ok_or(Refused::NothingToGoBy)?;
                    let before = text.as_deref().unwrap_or(&on.text);
                    let after = swapped(self.held, before, exercise, with);
                    text = Some(after.ok_or(Refused::NotHere)?);
                }
                SentWhat::Max { .. } | SentWhat::Load { .. } | SentWhat::Week { .. } => {}
            }
        }
        Ok(text)
    }

    /// What they say beside the plan's text, and that they were taken.
    pub(super) fn events(&self, chosen: &[&SentNow]) -> Result<Vec<DeskEvent>, Refused> {
        let mut events = Vec::new();
        for one in chosen {
            let (at, mass) = match &one.change.what {
                SentWhat::Max { exercise, to, .. } => (Owner::Max(exercise.clone()).name(), *to),
                SentWhat::Load { track, to, .. } => {
                    (format!("working:{}", Owner::Track(*track).name()), *to)
                }
                SentWhat::Week { week, .. } => {
                    let on = self.held.desk.plan.as_ref().ok_or(Refused::NothingToGoBy)?;
                    let at = At { week: *week, session: 1 };
                    let what = Arrangement::Entered { at, day: self.day };
                    events.push(DeskEvent::Arranged { plan: on.seq, what });
                    continue;
                }
                SentWhat::Swap { .. } | SentWhat::Plan { .. } => continue,
            };
            let (owner, changes) = says(self.held, &at, mass).ok_or(Refused::NotHere)?;
            events.push(DeskEvent::Said { owner, changes, day: self.day });
        }
        let ids = chosen.iter().map(|one| one.change.id.clone()).collect();
        events.push(DeskEvent::ChangesTaken { file: self.file.file.id.clone(), ids });
        Ok(events)
    }
}
