//! Today's sheet through its door: worked examples by hand, every kind of set run to its end, and
//! what holds for any plan in any gym.

#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

mod desk;
mod loads;
mod made;
mod minutes;
mod ramp;
mod to_the_end;
