//! English.

pub mod cautions;
pub mod coach;
pub mod date;
pub mod equipment;
pub mod estimate;
pub mod faults;
pub mod floor;
pub mod lift;
pub mod muscle;
pub mod pace;
pub mod plan;
pub mod quantity;
pub mod reason;
pub mod refusal;
pub mod sheet;
pub mod storage;
pub mod weeks;
pub mod words;
