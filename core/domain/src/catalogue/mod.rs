//! Exercises: what moves, with what, which muscles, and how the load is counted.
//!
//! Some 120 are built in ([`Catalogue::builtin`]); a plan adds its own. The built-in anatomy is
//! that of textbooks, simplified to prime movers and helpers: common practice, with no one source.
//! Each has names in English and in German, and any of them is read as it; histories keep its slug.
//! The table is constant data: nothing is read or built when the program starts.

mod exercise;
pub(crate) mod find;
mod german;
mod movement;
mod muscle;
mod search;
mod table;
mod tongue;

pub use exercise::{Counting, Exercise, Measure, Names};
pub use find::Catalogue;
pub use movement::{Joint, Movement, Region};
pub use muscle::Muscle;
pub use search::Searched;
pub use tongue::Tongue;

/// The implements that the built-in exercises use. The set is open: equipment and a plan's own
/// exercises may name others (letters, digits and hyphens).
pub const IMPLEMENTS: &[&str] = &[
    "barbell",
    "trap-bar",
    "ez-bar",
    "dumbbell",
    "kettlebell",
    "plate",
    "landmine",
    "medicine-ball",
    "sled",
    "ab-wheel",
    "band",
    "bodyweight",
    "cable",
    "pulldown",
    "low-row",
    "leg-press",
    "hack-squat",
    "leg-extension",
    "leg-curl",
    "calf-machine",
    "hip-adduction",
    "hip-abduction",
    "chest-press",
    "shoulder-press",
    "row-machine",
    "pec-deck",
    "assisted-pull-up",
];

/// The supports that the built-in exercises need beside their implement. An open set likewise.
pub const SUPPORTS: &[&str] = &[
    "rack",
    "bench",
    "incline-bench",
    "pull-up-bar",
    "dip-bars",
    "rings",
    "box",
    "back-extension-bench",
];
