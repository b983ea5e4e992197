//! Checks against published values. Each names its source beside it, with one of three words:
//! *published* (seen in the source or in an independent transcription of it), *from memory*, or
//! *common practice*. "Computed" is arithmetic from a source's own formula.
#![allow(clippy::unwrap_used, reason = "a test that fails says where")]

mod bar;
mod coach;
mod estimates;
mod pace;
mod percent_for_reps;
mod progress;
mod rest;
mod solver;
mod volume;
