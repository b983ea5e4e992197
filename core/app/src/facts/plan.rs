//! What a plan that is made by hand begins from.

/// What it begins from, as a place names it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum PlanFrom {
    /// An empty sheet.
    Nothing,
    /// The plan that is on, mended.
    Own,
    /// A copy of it under another name.
    Copy,
}

impl PlanFrom {
    /// The place.
    pub(crate) const fn place(self) -> &'static str {
        match self {
            Self::Nothing => "nothing",
            Self::Own => "own",
            Self::Copy => "copy",
        }
    }

    /// What a place names.
    pub(crate) fn named(place: &str) -> Option<Self> {
        [Self::Nothing, Self::Own, Self::Copy].into_iter().find(|from| from.place() == place)
    }
}
