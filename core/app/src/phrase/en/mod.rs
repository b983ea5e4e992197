//! English.

pub mod bar;
pub mod cautions;
pub mod chart;
pub mod coach;
pub mod date;
pub mod equipment;
pub mod estimate;
pub mod faults;
pub mod floor;
pub mod gym;
pub mod lift;
pub mod muscle;
pub mod not_shown;
pub mod outcome;
pub mod pace;
pub mod panel;
pub mod plan;
pub mod quantity;
pub mod reason;
pub mod refusal;
pub mod sheet;
pub mod storage;
pub mod tally;
pub mod today;
pub mod weeks;
pub mod words;
