//! `barwright records`: care for the file that all records are in.

use std::io::Write;
use std::path::{Path, PathBuf};

use barwright_app::{Engine, recover, restore};
use clap::Subcommand;

use super::columns::Columns;
use super::exchange::{Export, Import};
use super::sent::Changes;
use super::{Failure, Records, say};
use crate::words::Own;
use crate::{clock, place};

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
    /// Make a backup in a folder if the last one there is old enough, check it, and remove the oldest
    /// beyond those that are kept.
    #[command(after_help = "Example:\n  barwright records keep backups --every 7 --count 8")]
    Keep {
        /// The folder of the backups.
        folder: PathBuf,
        /// Days from one backup to the next.
        #[arg(long, value_name = "DAYS", default_value_t = 1, value_parser = clap::value_parser!(u32).range(1..=366))]
        every: u32,
        /// How many are kept.
        #[arg(long, value_name = "COUNT", default_value_t = 14, value_parser = clap::value_parser!(u32).range(1..=1000))]
        count: u32,
    },
    /// Put a backup in the place of the records, after checking all of it; what was there is kept.
    #[command(after_help = "Example:\n  barwright records restore backups/2026-11-21.db")]
    Restore {
        /// The backup.
        file: PathBuf,
    },
    /// Write the records out for elsewhere: JSON Lines that have all of them, to be read in again; or
    /// only what was recorded since a day, to be handed to a coach.
    #[command(
        after_help = "Examples:\n  barwright records export --jsonl records.jsonl\n  barwright records export --csv tables\n  barwright records export --jsonl for-the-coach.jsonl --since 2026-10-01 --with-notes"
    )]
    Export(Export),
    /// Take in the records of a file that `export` wrote: into a place that has none yet, or where
    /// the file goes on from those that are here. What is here already is taken no second time. Where
    /// both went on, its sessions can come into the history.
    #[command(
        after_help = "Examples:\n  barwright records import records.jsonl --dry-run\n  barwright records import records.jsonl --store new.db\n  barwright records import old-phone.jsonl --as-history --changes loads.toml\n  barwright records import notebook.csv --columns notebook.toml\n  barwright records import --take-back"
    )]
    Import(Import),
    /// Guess what the columns of a table of old sets are, a CSV of any make, and write it as a file to
    /// look at, to put right and to import the table by.
    #[command(
        after_help = "Examples:\n  barwright records columns notebook.csv\n  barwright records columns notebook.csv --out notebook.toml"
    )]
    Columns(Columns),
    /// Take up what a coach changed, from the file that they sent: shown first, and taken with
    /// --yes or --take.
    #[command(
        after_help = "Examples:\n  barwright records changes for-anna.toml\n  barwright records changes for-anna.toml --yes\n  barwright records changes for-anna.toml --take 2"
    )]
    Changes(Changes),
    /// Read what is good in a damaged file into a new one, and keep the damaged one beside it.
    #[command(after_help = "Example:\n  barwright records recover")]
    Recover,
}

impl Asked {
    /// Carries it out.
    pub(crate) fn run(&self, records: &Records, out: &mut impl Write) -> Result<(), Failure> {
        let own = records.own();
        match self {
            Self::Check => {
                let engine = records.open_begun()?;
                let found = engine.examine_records()?;
                engine.shut_down()?;
                say(
                    out,
                    &format!("{}: {}\n", records.path()?.display(), found.said(records.words())),
                )
            }
            Self::Backup { file } => backup(&*records.open_begun()?, file, own, out),
            Self::Keep { folder, every, count } => {
                let folder = place::text(folder, own).map_err(Failure::here)?;
                let engine = records.open_begun()?;
                let said = engine.keep_backups(folder, *every, *count, clock::read())?;
                engine.shut_down()?;
                say(out, &format!("{said}\n"))
            }
            Self::Restore { file } => {
                let path = records.path()?;
                place::make_folder(&path, own).map_err(Failure::here)?;
                let backup = place::text(file, own).map_err(Failure::here)?;
                let to = place::text(&path, own).map_err(Failure::here)?;
                let said = restore(backup, to, records.locale())?;
                say(out, &format!("{}: {said}\n", path.display()))
            }
            Self::Export(export) => export.run(records, out),
            Self::Import(import) => import.run(records, out),
            Self::Columns(columns) => columns.run(records, out),
            Self::Changes(changes) => changes.run(records, out),
            Self::Recover => {
                let path = place::text(&records.path()?, own).map_err(Failure::here)?;
                let recovered = recover(path, records.locale())?;
                say(out, &format!("{}\n", recovered.reason))
            }
        }
    }
}

fn backup(engine: &Engine, file: &Path, own: Own, out: &mut impl Write) -> Result<(), Failure> {
    let entries = engine.back_up(place::text(file, own).map_err(Failure::here)?)?;
    engine.shut_down()?;
    say(out, &format!("{}\n", (own.copied)(&file.display().to_string(), entries)))
}
