//! The languages that exercises have names in.

/// A language that the built-in exercises have names in. Names in every one are read; this says
/// which is written and shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Tongue {
    /// English.
    #[default]
    English,
    /// German.
    German,
}
