//! For tests: a player over the engine, and the plans and gyms that several tests play by.
//!
//! A test that goes through the public door opens a [`Player`], taps keys by their ids or dispatches
//! intents, lets time pass, and reads the screens. Whatever is refused or missing ends the test with
//! what stood on the screen. Only tests of integration may use it: a crate's own unit tests would see
//! two copies of that crate.

pub mod clock;
pub mod gyms;
pub mod intents;
mod keys;
mod plans;
mod player;
mod rows;
pub mod screens;
mod train;

pub use plans::Plan;
pub use player::Player;
pub use train::record_by;
