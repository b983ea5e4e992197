//! The session on the floor: commands in, events out, state folded from events.
//!
//! [`decide`] checks a command against the state and answers with events that carry every resolved
//! fact (loads, plates, deadlines, reasons) or with a [`Refusal`]; [`State::apply`] folds an event
//! in and cannot fail. What comes next is a pure question to the state ([`Run::cursor`]); how a
//! rest stands is one to the [`Rest`] and a [`Reading`].

mod bounds;
mod command;
mod decide;
mod event;
mod fold;
mod guard;
pub(crate) mod here;
mod made;
mod next;
mod offer;
mod reading;
mod reason;
mod refusal;
mod rest;
mod sheet;
mod state;

pub use crate::call::{Ending, EntryId, SetId, SetKind};
pub use bounds::{MOST_ENTRIES, MOST_NOTE, MOST_SET_UP, MOST_SETS};
pub use command::{Command, Set as RecordedSet};
pub use decide::{abandoned, decide, left_behind};
pub use event::{Done, Event, Guard, LoadForSet, PartDone, Stamped, SwapCause};
pub use made::{Rack, dropped, made};
pub use next::Cursor;
pub use offer::Offer;
pub use reading::{EARLIEST_MS, LATEST_MS, Passed, Reading};
pub use reason::{Because, Reason};
pub use refusal::Refusal;
pub use rest::{Rest, RestKind, Standing};
pub use sheet::{
    Block, BodyPart, Call, CallLoad, Entry, EntryPain, Expected, Kit, LastTime, Load, PlanPlace,
    Sheet, Substitute,
};
pub use state::{EntryRun, Lane, Note, PartRun, Run, SetRun, State};
