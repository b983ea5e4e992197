//! What of the records is handed on.

use super::Arrived;

/// A part of the records.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum HandedPart {
    /// All of them, without a loss.
    All,
    /// What a lifter sends to a coach.
    SinceADay {
        /// With body mass.
        body_mass: bool,
        /// With notes.
        notes: bool,
    },
}

impl Default for HandedPart {
    fn default() -> Self {
        Self::SinceADay { body_mass: false, notes: false }
    }
}

impl HandedPart {
    /// Its name in a look.
    pub(crate) fn name(self) -> String {
        let name = match self {
            Self::All => "all",
            Self::SinceADay { body_mass: false, notes: false } => "",
            Self::SinceADay { body_mass: true, notes: false } => "body-mass",
            Self::SinceADay { body_mass: false, notes: true } => "notes",
            Self::SinceADay { body_mass: true, notes: true } => "body-mass-notes",
        };
        name.to_owned()
    }

    /// The one of a name.
    pub(crate) fn named(name: &str) -> Option<Self> {
        let both = [false, true];
        let parts = both
            .into_iter()
            .flat_map(|body_mass| both.map(|notes| Self::SinceADay { body_mass, notes }));
        parts.chain([Self::All]).find(|part| part.name() == name)
    }
}

/// It as a file.
pub(crate) struct Handed {
    pub(crate) part: HandedPart,
    /// The local date from which on a coach gets it, in days since 1970-01-01.
    pub(crate) since: i32,
    /// Sessions in it.
    pub(crate) sessions: u64,
    /// Bytes of it.
    pub(crate) bytes: usize,
    /// The file's text; none where it is too large to be handed on so.
    pub(crate) text: Option<String>,
    /// What came in last and can go again.
    pub(crate) came: Option<Arrived>,
}
