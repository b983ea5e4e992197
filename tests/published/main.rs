//! Checks against published values. Each names its source beside it, with one of three words:
//! *published* (seen in the source or in an independent transcription of it), *from memory*, or
//! *common practice*. "Computed" is arithmetic from a source's own formula.
//!
//! The figure, the first author, the year, the journal and its pages are what was seen; titles and
//! further authors are from memory throughout, and "not noted" where nobody here remembers them.
//!
//! A default that was taken from a source agrees with it by making. Such a check holds our sums and
//! our reading; those of `time`, `ramp` and the second protocol of a test hold a figure of ours
//! against a source that it does not come from.
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
