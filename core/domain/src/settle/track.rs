//! The outcome of a session for one track.

use super::evidence::Row;
use super::ground::{Ground, outcome as empty};
use super::rules::{self, Ask, Verdict};
use crate::call::{EntryId, SetId};
use crate::owners::{
    Change, Cut, Cutting, Outcome, Owner, Proposal, Question, RowId, Terms, Track, Why,
};
use crate::plan::Miss;
use crate::quantity::{Mass, Percent};
use crate::session::here::Here;
use crate::session::{EntryRun, Run};

/// What the rows of a track that stood in a session come to, and the sets that are spent by it: no
/// max is raised by them as well. None where none of them was called.
pub(super) fn outcome(
    run: &Run,
    owner: &Owner,
    rows: &[(EntryId, &EntryRun, &Terms)],
    ground: &Ground<'_>,
) -> Option<(Outcome, Vec<SetId>)> {
    let state = ground.owners.track(owner);
    let all: Vec<(Row<'_>, &EntryRun)> =
        rows.iter().map(|(id, entry, terms)| (Row::of(*id, entry, terms), *entry)).collect();
    let said: Vec<&(Row<'_>, &EntryRun)> = all.iter().filter(|(row, _)| !row.silent()).collect();
    if said.is_empty() {
        // Nothing was begun of it: nothing to say, but where it was called at all.
        return (!all.is_empty() && all.iter().any(|(row, _)| row.load.is_some()))
            .then(|| (Outcome { silent: true, ..empty(owner, Why::Silent) }, Vec::new()));
    }
    let sets: Vec<SetId> =
        said.iter().flat_map(|(row, _)| row.sets.iter().map(|set| set.id)).collect();
    let mut result = Outcome { sets: sets.clone(), ..empty(owner, Why::Silent) };
    // A row that stands twice in a session speaks once: by what went worst.
    let (row, entry) = said.iter().find(|(row, _)| row.missed()).or(said.first())?;
    let exercise = ground.catalogue.get(&entry.entry.exercise)?;
    // A step goes to the next load that the lifter likes.
    let liked = entry.entry.liked;
    let equipment = liked.of(&run.equipment);
    let (counting, step) = (row.terms.counting, liked.step);
    let here = Here { equipment: &equipment, exercise, counting, step };
    let verdict = judge(run, row, &said, &state, &here, ground);
    let up = verdict
        .changes
        .iter()
        .any(|change| matches!(change, Change::NextTime(share) if *share > Percent::WHOLE));
    result.changes = verdict.changes;
    result.why = verdict.why;
    result.silent = verdict.silent;
    result.proposal =
        verdict.proposal.map(|proposal| of_max(proposal, row.terms, &verdict.why, ground));
    Some((result, if up { sets } else { Vec::new() }))
}

/// What is proposed for a row in percent is another max.
fn of_max(proposal: Proposal, terms: &Terms, why: &Why, ground: &Ground<'_>) -> Proposal {
    match (proposal.question, &terms.load, why) {
        (Question::WellOff, Owner::Max(lift), Why::OffTarget { change, .. }) => {
            let max = ground.owners.max(lift).now.map(|(mass, ..)| mass);
            let to = max.and_then(|max| max.checked_add(change.of(max)?));
            Proposal { to, ..proposal }
        }
        _ => proposal,
    }
}

fn judge(
    run: &Run,
    row: &Row<'_>,
    said: &[&(Row<'_>, &EntryRun)],
    state: &Track,
    here: &Here<'_>,
    ground: &Ground<'_>,
) -> Verdict {
    let terms = row.terms;
    if let Some(row) = said.iter().map(|(row, _)| row).find(|row| row.missed()) {
        return missed(row, state, ground);
    }
    // What was missed there and is made now is cleared there, and nowhere else.
    let made_up: Vec<RowId> = said
        .iter()
        .filter(|(row, _)| row.made())
        .filter_map(|(row, _)| row.terms.id)
        .filter(|row| state.missed_at(Some(*row)).is_some())
        .collect();
    let cleared = || made_up.iter().map(|row| Change::Cleared(*row));
    // A cut that takes nothing off today is none: what is repeated at its whole load and made steps.
    let cut =
        terms.cut.filter(|cut| cut.keep < Percent::WHOLE || cut.sets_off > Percent::default());
    let verdict = if row.lighter() {
        Verdict { silent: true, ..Verdict::says(Why::LessLoad) }
    } else if let Some(found) = found(run, row, state) {
        found
    } else if row.heavier() && row.made() && owns(terms) && over_own(row, state, cut) {
        more(row)
    } else {
        match cut.map(|cut| cut.why) {
            // What was called harder is judged again, from what was called.
            Some(Cutting::Effort) | None => {
                let ask = Ask { row, state, here, body: body(row) };
                rules::verdict(&ask)
            }
            Some(Cutting::Missed { .. }) if !made_up.is_empty() => Verdict::says(Why::MissMade),
            Some(_) => Verdict { silent: true, ..Verdict::says(Why::UnderCut) },
        }
    };
    let cut = cut.is_some_and(|cut| cut.why != Cutting::Effort);
    if made_up.is_empty() {
        return verdict;
    }
    let changes = verdict.changes.into_iter().filter(|_| !cut).chain(cleared()).collect();
    Verdict { changes, silent: false, ..verdict }
}

/// Whether more than was called is more than the track's own too: under a cut it may be less.
fn over_own(row: &Row<'_>, state: &Track, cut: Option<Cut>) -> bool {
    let own = state.load.or(row.terms.own);
    cut.is_none() || row.load.as_ref().and_then(|load| load.figure) > own
}

/// Whether the track carries the load itself.
fn owns(terms: &Terms) -> bool {
    terms.load == terms.track && !terms.by_week
}

/// The body's part of what was moved.
fn body(row: &Row<'_>) -> Mass {
    let load = row.load.as_ref();
    load.and_then(|load| load.moved()?.checked_sub(load.figure?)).unwrap_or_default()
}

/// A load that the lifter found where the track had none, or a place on a stack: it is the track's.
fn found(run: &Run, row: &Row<'_>, state: &Track) -> Option<Verdict> {
    use crate::catalogue::Counting;
    use crate::equipment::Rig;
    let terms = row.terms;
    if !owns(terms) {
        return None;
    }
    let load = row.load.as_ref()?;
    if let (None, Rig::Stack { pin, .. }) = (state.load, &load.rig)
        && (load.figure.is_none() || terms.counting == Counting::Unnumbered)
    {
        let gym = run.equipment.name.clone();
        let called = row.called.as_ref().map(|load| &load.rig);
        if called == Some(&load.rig) {
            return None;
        }
        let changes = vec![Change::Place { gym, place: pin.clone() }];
        return Some(Verdict { changes, ..Verdict::says(Why::Found) });
    }
    // A load by the table or found on the floor, where nothing was carried yet.
    if state.load.is_none() && terms.own.is_none() {
        let change =
            Change::Load { load: load.figure?, counting: load.counting, asked: terms.asked };
        return Some(Verdict { changes: vec![change], ..Verdict::says(Why::Found) });
    }
    None
}

/// More load than called, and made: the track takes it, and no step is added.
fn more(row: &Row<'_>) -> Verdict {
    let load = row.load.as_ref();
    let change = load.and_then(|load| {
        Some(Change::Load { load: load.figure?, counting: load.counting, asked: row.terms.asked })
    });
    Verdict { changes: change.into_iter().collect(), ..Verdict::says(Why::MoreLoad) }
}

/// A miss stands in the row's own session: next time there never above what was missed.
fn missed(row: &Row<'_>, state: &Track, ground: &Ground<'_>) -> Verdict {
    let terms = row.terms;
    let before = state.missed_at(terms.id).map_or(0, |missed| missed.times);
    let times = before.saturating_add(1);
    let at = usize::from(times).saturating_sub(1);
    let then = terms.misses.get(at).or(terms.misses.last()).copied().unwrap_or(Miss::Repeat);
    let load = row.meant.or(row.load.as_ref().and_then(|load| load.figure));
    let changes = terms.id.map(|at| Change::Missed { at, load, then }).into_iter().collect();
    let shared = terms.id.filter(|id| shares(ground, *id));
    let proposal = match (times, then, shared) {
        (2, _, Some(row)) => Some(Proposal { question: Question::OwnTrack(row), to: None }),
        (3.., Miss::Hold, _) => {
            Some(Proposal { question: Question::Missed, to: lower(terms, ground) })
        }
        _ => None,
    };
    Verdict { changes, proposal, ..Verdict::says(Why::Missed { times, then }) }
}

/// What an owner would be if it went down for good: 5 % (common practice).
fn lower(terms: &Terms, ground: &Ground<'_>) -> Option<Mass> {
    let from = match &terms.load {
        Owner::Max(lift) => ground.owners.max(lift).now.map(|(mass, ..)| mass)?,
        owner => ground.owners.track(owner).load?,
    };
    Percent::whole(95).of(from)
}

/// Whether other rows carry the same track.
fn shares(ground: &Ground<'_>, row: RowId) -> bool {
    let track = ground.rows.iter().find(|one| one.row == row).map(|one| one.track);
    ground.rows.iter().any(|one| one.row != row && Some(one.track) == track)
}
