//! What is made by hand, from a tap to what it appends: a step of a draft, or a draft taken up.

mod exercise;
mod gym;
mod plan;

use barwright_domain::desk::{DeskEvent, Draft, DraftOf, Splice};
use barwright_domain::text::bounds::FILE_BYTES;
use barwright_domain::text::edit::NotEdited;

use crate::contract::{Edit, FormOf};
use crate::facts::Held;
use crate::facts::form::{FormField, draft_of};
use crate::fault::{Fault, Refused};

/// What is written into a field of a form appends.
pub(super) fn write(held: &Held, field: &FormField, text: &str) -> Result<Vec<DeskEvent>, Fault> {
    if field.shows_only() {
        // What can't be read is refused where it was typed.
        if field.of == FormOf::Maxes {
            crate::facts::entered(held, &field.place, text)?;
        }
        return Ok(Vec::new());
    }
    let edit = Edit::Put { text: text.to_owned() };
    edited(held, field.of, &field.place, &edit, Some(field.step))
}

/// What a change by hand appends; `step` is the one of the draft that it was meant for.
pub(super) fn edited(
    held: &Held,
    of: FormOf,
    place: &str,
    edit: &Edit,
    step: Option<u64>,
) -> Result<Vec<DeskEvent>, Fault> {
    if of == FormOf::Maxes {
        return said(held, edit, step);
    }
    let of = draft_of(of).ok_or(Refused::NotHere)?;
    if *edit == Edit::Open {
        // What was begun is dropped by a tap of its own, never by another one's beginning.
        if held.desk.drafts.contains_key(&of) {
            return Err(Refused::DraftOpen.into());
        }
        let (from, text) = begun(held, of, place)?;
        return Ok(vec![DeskEvent::DraftBegun { of, from, text }]);
    }
    // What was dropped, or taken up, is gone on with.
    if *edit == Edit::Redo && !held.desk.drafts.contains_key(&of) {
        let dropped = held.desk.dropped.contains_key(&of);
        let events = vec![DeskEvent::DraftTurned { of, back: false }];
        return if dropped { Ok(events) } else { Err(Refused::NoStep.into()) };
    }
    let draft = held.desk.drafts.get(&of).ok_or(Refused::NotHere)?;
    if step.is_some_and(|step| step != draft.step) {
        return Err(Refused::StaleDraft.into());
    }
    let turned = |back: bool, steps: &[Splice]| match steps {
        [] => Err(Refused::NoStep.into()),
        _ => Ok(vec![DeskEvent::DraftTurned { of, back }]),
    };
    match edit {
        Edit::Open => Ok(Vec::new()),
        Edit::Undo => turned(true, &draft.back),
        Edit::Redo => turned(false, &draft.forth),
        Edit::Drop => Ok(vec![DeskEvent::DraftDropped { of }]),
        Edit::TakeUp => {
            let mut events = taken_up(held, of, draft)?;
            events.push(DeskEvent::DraftDropped { of });
            Ok(events)
        }
        Edit::Put { .. } | Edit::Add { .. } | Edit::Remove | Edit::Move { .. } => {
            let text = changed(held, of, draft, place, edit)?;
            if text.len() > FILE_BYTES {
                return Err(Refused::DraftTooLarge.into());
            }
            let splice = Splice::between(&draft.text, &text);
            Ok(splice.map(|splice| DeskEvent::DraftChanged { of, splice }).into_iter().collect())
        }
    }
}

/// What a person said of maxes, loads and body mass, taken back or said again.
fn said(held: &Held, edit: &Edit, step: Option<u64>) -> Result<Vec<DeskEvent>, Fault> {
    let last = match edit {
        Edit::Undo => held.desk.to_take_back(),
        Edit::Redo => held.desk.unsaid.last(),
        _ => return Err(Refused::NotHere.into()),
    };
    let seq = last.map(|said| said.seq).ok_or(Refused::NoStep)?;
    if step.is_some_and(|step| step != seq) {
        return Err(Refused::StaleDraft.into());
    }
    Ok(vec![match edit {
        Edit::Undo => DeskEvent::TakenBack { seq },
        _ => DeskEvent::BroughtBack { seq },
    }])
}

/// What a draft is begun from, by name, and its text.
fn begun(held: &Held, of: DraftOf, place: &str) -> Result<(String, String), Fault> {
    match of {
        DraftOf::Gym => gym::begun(held, place),
        DraftOf::Exercise => exercise::begun(held, place),
        DraftOf::Plan => plan::begun(held, place),
    }
}

/// A draft's text after a change.
fn changed(
    held: &Held,
    of: DraftOf,
    draft: &Draft,
    place: &str,
    edit: &Edit,
) -> Result<String, Fault> {
    match of {
        DraftOf::Gym => gym::changed(held, draft, place, edit),
        DraftOf::Exercise => exercise::changed(draft, place, edit),
        DraftOf::Plan => plan::changed(held, draft, place, edit),
    }
}

/// What a draft that is taken up appends, without its end.
fn taken_up(held: &Held, of: DraftOf, draft: &Draft) -> Result<Vec<DeskEvent>, Fault> {
    match of {
        DraftOf::Gym => gym::taken_up(held, draft),
        DraftOf::Exercise => exercise::taken_up(held, draft),
        // A plan is adopted once it was seen.
        DraftOf::Plan => Err(Refused::NotHere.into()),
    }
}

/// A change that the text has no place for.
fn not_edited(_: NotEdited) -> Fault {
    Refused::NotHere.into()
}
