//! Weeks that come out right: one session's outcome is the next one's load. Worked cases in words
//! that a coach can check, and what holds for any season.

#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

mod absence;
mod any;
mod effort;
mod maxes;
mod mended;
mod misses;
mod pain;
mod play;
mod steps;
