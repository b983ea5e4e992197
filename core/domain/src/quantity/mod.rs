//! Quantities of the gym floor, exact and bounded.
//!
//! Each type has one reader from text and one printer; what a reader refuses it refuses with an
//! [`Unreadable`] that keeps the text, the place and what was expected there. Bounds stand in one
//! table ([`bounds`]), which checks, errors and the generators of the tests share.

pub mod bounds;
mod decimal;
mod distance;
mod effort;
mod length;
mod mass;
mod percent;
mod reps;
mod tempo;
mod time;
mod unreadable;

pub use decimal::Numerals;
pub(crate) use decimal::{Decimal, take};
pub use distance::Distance;
pub use effort::{Reserve, Rpe};
pub use length::Length;
pub(crate) use mass::divide;
pub use mass::{Mass, MassUnit, Rounding};
pub use percent::Percent;
pub use reps::{Range, RepRange, Reps};
pub use tempo::{Phase, Tempo};
pub use time::Seconds;
pub use unreadable::{Kind, Problem, Unreadable};
