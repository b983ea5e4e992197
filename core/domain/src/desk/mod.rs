//! What stands between sessions: the adopted plan and its owners, the gyms, the body mass.
//!
//! [`Desk`] is a fold of [`DeskEvent`]s, small enough to be kept beside the log, so that opening
//! never reads ten years of them.

mod adopt;
mod anew;
mod arranged;
mod at;
mod calendar;
mod draft;
mod event;
mod for_once;
mod said;
mod sent;
mod state;

pub use adopt::{Adoption, Shared, adoption};
pub use anew::Dates;
pub use arranged::{Arranged, Arrangement};
pub use at::At;
pub use calendar::{Calendar, Dated, Standing, TrainedAt, calendar};
pub use draft::{Draft, DraftOf, MOST_STEPS, Splice};
pub use event::DeskEvent;
pub use for_once::{ForOnce, MOST_FOR_ONCE};
pub use said::{MOST_SAID, MOST_WEIGHED, Said, SaidOf};
pub use sent::{MOST_CHANGES, MOST_SENT, Sent, SentChange, SentWhat};
pub use state::{Adopted, Desk, Kept, MOST_EXERCISES, MOST_GYMS, MOST_KEPT, OwnExercise};
