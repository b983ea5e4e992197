//! What a session that is over says to each owner: at most one outcome, and each piece of evidence
//! used once.
//!
//! [`settle`] is a pure function of the session and of the owners as they stood before it. What was
//! asked stands in the session's own sheet ([`Terms`]), so neither a plan nor a max is read again;
//! putting a set right, an undo or a change held back simply settles anew.

mod care;
mod evidence;
mod ground;
mod max;
mod rules;
mod track;

pub(crate) use care::after_pain;
pub use ground::Ground;

use std::collections::BTreeMap;

use crate::call::EntryId;
use crate::history::DoneSet;
use crate::owners::{Outcome, Owner, Owners, Terms, Why};
use crate::session::{EntryRun, Run};

/// The outcomes of a session, an owner each. `sets` are its rows of history.
pub fn settle(run: &Run, sets: &[DoneSet], ground: &Ground<'_>) -> Vec<Outcome> {
    let mut outcomes = Vec::new();
    let mut tracks: BTreeMap<&Owner, Vec<(EntryId, &EntryRun, &Terms)>> = BTreeMap::new();
    for (id, entry) in &run.entries {
        for terms in &entry.entry.terms {
            tracks.entry(&terms.track).or_default().push((*id, entry, terms));
        }
    }
    let mut spent = Vec::new();
    for (owner, rows) in tracks {
        let Some((outcome, used)) = track::outcome(run, owner, &rows, ground) else { continue };
        // What moves a row of percentages up is not evidence for its max as well.
        spent.extend(used);
        outcomes.push(outcome);
    }
    outcomes.extend(max::outcomes(run, sets, &spent, ground));
    outcomes.extend(care::outcomes(run, ground));
    for outcome in &mut outcomes {
        outcome.held = run.held_back.contains(&outcome.owner);
        if ground.late && has_later_word(ground.owners, &outcome.owner, run) {
            outcome.changes.clear();
            (outcome.why, outcome.silent, outcome.proposal) = (Why::LaterWord, true, None);
        }
    }
    outcomes
}

fn has_later_word(owners: &Owners, owner: &Owner, run: &Run) -> bool {
    let day = run.day;
    let account = owners.account(owner);
    account.is_some_and(|account| account.words().iter().any(|word| word.day > day))
}
