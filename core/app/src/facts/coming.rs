//! What of a file of records that comes in is shown.

use crate::fault::Refused;

/// Sessions that came into the history from elsewhere, by the tap that brought them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Arrived {
    pub(crate) tap: u64,
    pub(crate) sessions: u64,
}

/// A file of records that was opened, or what came of it.
pub(crate) enum Coming {
    /// One is asked for.
    Asked,
    /// A file was opened and is open no longer.
    Closed,
    /// An open one, by what tells it apart, beside what is here. Nothing is taken yet.
    Open { file: u32, found: Found },
    /// What was taken, and the file of changes that tells loads that stand otherwise there.
    Done { done: Done, changes: String, came: Option<Arrived> },
}

/// What an open file comes to.
pub(crate) enum Found {
    /// Its log goes on from the one that is here.
    GoesOn { same: u64, new: u64, sessions: u64 },
    /// It does not, and says why; its sessions can come in as history.
    Apart { why: Refused, new: u64, same: u64, open: u64 },
    /// Nothing of it can be taken.
    Refused(Refused),
}

/// What was done with a file, in numbers of entries and of sessions.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Done {
    /// Its log was gone on with.
    GoneOn { same: u64, new: u64, sessions: u64 },
    /// Its sessions came in as history; so many loads stand otherwise there.
    AsHistory { new: u64, same: u64, open: u64, differing: u64 },
    /// Sessions that had come went again.
    Withdrawn { sessions: u64 },
}

/// A part of the look at records that is not handed on but comes in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum ComingPart {
    /// A file is asked for.
    Ask,
    /// An open file.
    File(u32),
    /// What was done.
    Done(Done),
}

/// The name of the part that asks for a file.
const ASK: &str = "from-file";

impl ComingPart {
    /// Its name in a look.
    pub(crate) fn name(self) -> String {
        match self {
            Self::Ask => ASK.to_owned(),
            Self::File(file) => format!("file:{file}"),
            Self::Done(Done::GoneOn { same, new, sessions }) => {
                format!("gone-on:{same}:{new}:{sessions}")
            }
            Self::Done(Done::AsHistory { new, same, open, differing }) => {
                format!("as-history:{new}:{same}:{open}:{differing}")
            }
            Self::Done(Done::Withdrawn { sessions }) => format!("withdrawn:{sessions}"),
        }
    }

    /// The one of a name.
    pub(crate) fn named(name: &str) -> Option<Self> {
        if name == ASK {
            return Some(Self::Ask);
        }
        let (kind, numbers) = name.split_once(':')?;
        let numbers: Vec<u64> =
            numbers.split(':').map(str::parse).collect::<Result<_, _>>().ok()?;
        Some(match (kind, numbers.as_slice()) {
            ("file", &[file]) => Self::File(u32::try_from(file).ok()?),
            ("gone-on", &[same, new, sessions]) => Self::Done(Done::GoneOn { same, new, sessions }),
            ("as-history", &[new, same, open, differing]) => {
                Self::Done(Done::AsHistory { new, same, open, differing })
            }
            ("withdrawn", &[sessions]) => Self::Done(Done::Withdrawn { sessions }),
            _ => return None,
        })
    }
}

/// What a key does with records that come in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Taking {
    /// An open file's log is gone on with.
    GoOn(u32),
    /// An open file's sessions come in as history.
    AsHistory(u32),
    /// What a tap brought goes again.
    Withdraw(u64),
}

impl Taking {
    /// The place that its key names.
    pub(crate) fn place(self) -> String {
        match self {
            Self::GoOn(file) => format!("go-on:{file}"),
            Self::AsHistory(file) => format!("as-history:{file}"),
            Self::Withdraw(tap) => format!("came:{tap}"),
        }
    }

    /// The one of a place.
    pub(crate) fn at(place: &str) -> Option<Self> {
        let (kind, number) = place.split_once(':')?;
        match kind {
            "go-on" => number.parse().ok().map(Self::GoOn),
            "as-history" => number.parse().ok().map(Self::AsHistory),
            "came" => number.parse().ok().map(Self::Withdraw),
            _ => None,
        }
    }
}
