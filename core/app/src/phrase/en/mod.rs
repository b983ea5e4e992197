//! English.

pub mod cautions;
pub mod date;
pub mod faults;
pub mod floor;
pub mod quantity;
pub mod refusal;
pub mod sheet;
pub mod storage;
pub mod words;

/// Stands in until the words land.
pub mod reason {
    use barwright_domain::quantity::{MassUnit, Numerals};
    /// stub
    pub fn lines(_: &barwright_domain::session::Reason, _: MassUnit, _: Numerals) -> Vec<String> {
        Vec::new()
    }
}
