//! English.

pub mod cautions;
pub mod date;
pub mod floor;
pub mod quantity;
pub mod refusal;
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
/// Stands in until the words land.
pub mod faults {
    /// stub
    pub fn refused(count: usize) -> crate::contract::EngineError {
        crate::contract::EngineError::Refused {
            code: crate::contract::RefusalCode::Faults,
            reason: format!("{count} faults"),
        }
    }
}
