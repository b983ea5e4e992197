//! `barwright records`: care for the file that all records are in.

use std::io::Write;
use std::path::{Path, PathBuf};

use barwright_app::{Engine, recover};
use clap::Subcommand;

use super::{Failure, Records, say};
use crate::place;

/// What is asked of the file.
#[derive(Debug, Subcommand)]
pub(crate) enum Asked {
    /// Check the whole file: its structure, every entry of the log, and all that is worked out from
    /// them.
    #[command(
        after_help = "Examples:\n  barwright records check\n  barwright records check --store old.db"
    )]
    Check,
    /// Copy the records to a new file, and check the copy.
    #[command(after_help = "Example:\n  barwright records backup before-the-trip.db")]
    Backup {
        /// The new file; there must be none of that name.
        file: PathBuf,
    },
    /// Read what is good in a damaged file into a new one, and keep the damaged one beside it.
    #[command(after_help = "Example:\n  barwright records recover")]
    Recover,
}

impl Asked {
    /// Carries it out.
    pub(crate) fn run(&self, records: &Records, out: &mut impl Write) -> Result<(), Failure> {
        match self {
            Self::Check => {
                let engine = records.open_begun()?;
                let found = engine.examine_records()?;
                engine.shut_down()?;
                say(out, &format!("{}: {}\n", records.path()?.display(), found.said()))
            }
            Self::Backup { file } => backup(&*records.open_begun()?, file, out),
            Self::Recover => {
                let path = place::text(&records.path()?).map_err(Failure::here)?;
                let recovered = recover(path)?;
                say(out, &format!("{}\n", recovered.reason))
            }
        }
    }
}

fn backup(engine: &Engine, file: &Path, out: &mut impl Write) -> Result<(), Failure> {
    let entries = engine.back_up(place::text(file).map_err(Failure::here)?)?;
    engine.shut_down()?;
    say(out, &format!("{}: {entries} entries, a whole copy\n", file.display()))
}
