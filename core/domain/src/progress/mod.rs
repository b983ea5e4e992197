//! What the sets done say: estimates of a max, percentages for repetitions, and what each lift
//! should be next time.
//!
//! [`next`](next::next) is a pure function from an exercise's history to its next call. Each
//! answer carries its [`Reason`](next::Reason) as data; the words stand in the app crate.

pub mod estimate;
mod evidence;
pub mod history;
pub mod makes;
pub mod next;
pub mod pace;
pub mod percent;
pub mod reference;
mod rules;
pub mod test_day;
