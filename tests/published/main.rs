//! Checks against published values. Each names its source beside it, with one of three words:
//! *published* (seen in the source or in an independent transcription of it), *from memory*, or
//! *common practice*. "Computed" is arithmetic from a source's own formula.
//!
//! The figure, the first author, the year, the journal and its pages are what was seen; a title, a
//! further author or a page that was not is marked "from memory", or "not seen" where nobody here
//! remembers it.
//!
//! A default that was taken from a source is not held against that source: a check holds what a rule
//! of the source comes to in a session, a sum of it, or a figure of ours against another source.
#![allow(clippy::unwrap_used, reason = "a test that fails says where")]

mod bar;
mod coach;
mod estimates;
mod lay_off;
mod pace;
mod percent_for_reps;
mod progress;
mod ramp;
mod rest;
mod solver;
mod time;
mod volume;

/// The domain's own season of sessions: laid out, done and settled as a device does.
#[allow(dead_code, reason = "what these checks don't ask of it, the domain's tests do")]
#[path = "../../core/domain/tests/season/play.rs"]
mod play;
