//! `barwright records export` and `import`: the records as files for elsewhere, and in again.

use std::fs::{File, OpenOptions};
use std::io::{BufReader, BufWriter, Write};
use std::path::{Path, PathBuf};

use barwright_app::{Engine, Table};
use chrono::{Datelike, NaiveDate};

use super::{Failure, Records, columns, say};
use crate::words::Own;
use crate::{clock, place};

/// Days from year 1 to 1970-01-01, as chrono counts them.
const TO_1970: i32 = 719_163;

/// What is written out, and where.
#[derive(Debug, clap::Args)]
pub(crate) struct Export {
    /// The new file of JSON Lines; there must be none of that name.
    #[arg(long, value_name = "FILE", required_unless_present = "csv")]
    jsonl: Option<PathBuf>,
    /// The folder of the tables of sets, sessions, maxes and body mass; it is made where there is
    /// none, and must have none of them.
    #[arg(long, value_name = "FOLDER", conflicts_with = "jsonl")]
    csv: Option<PathBuf>,
    /// Only what was recorded from this day on, with plan and maxes as they stand: 2026-10-01.
    #[arg(long, value_name = "DAY")]
    since: Option<NaiveDate>,
    /// Since a day: with body mass.
    #[arg(long, requires = "since", conflicts_with = "csv")]
    with_body_mass: bool,
    /// Since a day: with notes.
    #[arg(long, requires = "since", conflicts_with = "csv")]
    with_notes: bool,
}

impl Export {
    /// Carries it out.
    pub(crate) fn run(&self, records: &Records, out: &mut impl Write) -> Result<(), Failure> {
        let own = records.own();
        let engine = records.open_begun()?;
        let since = self.since.map(|day| day.num_days_from_ce() - TO_1970);
        if let Some(folder) = &self.csv {
            tables(&engine, folder, since, own, out)?;
        }
        if let Some(file) = &self.jsonl {
            let (body_mass, notes) = (self.with_body_mass, self.with_notes);
            let what = barwright_app::Export { since, body_mass, notes };
            let found = written(file, own, |to| Ok(engine.export_records(what, to)?))?;
            let path = file.display().to_string();
            say(out, &format!("{}\n", (own.exported)(&path, found.events, found.sessions)))?;
        }
        Ok(engine.shut_down()?)
    }
}

/// All tables, or none.
fn tables(
    engine: &Engine,
    folder: &Path,
    since: Option<i32>,
    own: Own,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let shown = folder.display().to_string();
    std::fs::create_dir_all(folder)
        .map_err(|error| Failure::here((own.no_folder)(&shown, &error)))?;
    for table in Table::ALL {
        free(&folder.join(table.file()), own)?;
    }
    for table in Table::ALL {
        let path = folder.join(table.file());
        let rows = written(&path, own, |to| Ok(engine.export_table(table, since, to)?))?;
        say(out, &format!("{}\n", (own.rows)(&path.display().to_string(), rows)))?;
    }
    Ok(())
}

/// A file of records, and whether it is only looked at.
#[derive(Debug, clap::Args)]
pub(crate) struct Import {
    /// The file: JSON Lines that `records export` wrote, of all records; with `--columns` a CSV of any
    /// make.
    #[arg(required_unless_present = "take_back")]
    file: Option<PathBuf>,
    /// Say what is new and what is here already, and change nothing.
    #[arg(long)]
    dry_run: bool,
    /// Where both went on, or it is of other records: its sessions come into the history, each once;
    /// loads and plan stay as they are here.
    #[arg(long)]
    as_history: bool,
    /// With `--as-history`: loads that stand otherwise there go into this new file, to be looked at
    /// and taken one by one with `records changes`.
    #[arg(long, value_name = "NEW FILE", requires = "as_history")]
    changes: Option<PathBuf>,
    /// The file is a table of old sets, and this one says what its columns are: `records columns`
    /// guesses it. Its sets come into the history as sessions, each once.
    #[arg(long, value_name = "FILE", conflicts_with = "as_history")]
    columns: Option<PathBuf>,
    /// The sessions that came into the history last go out of it again.
    #[arg(long, conflicts_with_all = ["file", "dry_run", "as_history", "columns"])]
    take_back: bool,
}

impl Import {
    /// Carries it out.
    pub(crate) fn run(&self, records: &Records, out: &mut impl Write) -> Result<(), Failure> {
        match (&self.file, &self.columns) {
            (None, _) => taken_back(records, out),
            (Some(file), Some(by)) => columns::import(file, by, self.dry_run, records, out),
            (Some(file), None) if self.as_history => self.joined(file, records, out),
            (Some(file), None) => self.taken_in(file, records, out),
        }
    }

    /// Records that go on from those that are here. Those are copied first: the copy is the way back.
    fn taken_in(
        &self,
        file: &Path,
        records: &Records,
        out: &mut impl Write,
    ) -> Result<(), Failure> {
        let from = || opened(file, records.own());
        let begun = records.path()?.exists();
        if !begun {
            // A file that can't be taken makes no records.
            let found = Engine::in_memory(records.locale())?.import_records(from()?, true)?;
            if self.dry_run || found.new == 0 {
                return say(out, &format!("{}\n", found.said(records.words())));
            }
        }
        let engine = records.open()?;
        let found = engine.import_records(from()?, true)?;
        if self.dry_run || found.new == 0 {
            engine.shut_down()?;
            return say(out, &format!("{}\n", found.said(records.words())));
        }
        let before =
            if engine.count_records()? > 0 { Some(copied(&engine, records)?) } else { None };
        let found = engine.import_records(from()?, false)?;
        engine.shut_down()?;
        say(out, &format!("{}\n", found.said(records.words())))?;
        match before {
            Some(copy) => {
                let way_back = (records.own().way_back)(&copy.display().to_string());
                say(out, &format!("{way_back}\n"))
            }
            None => Ok(()),
        }
    }

    /// Its sessions as history.
    fn joined(&self, file: &Path, records: &Records, out: &mut impl Write) -> Result<(), Failure> {
        let own = records.own();
        if let Some(changes) = &self.changes {
            free(changes, own)?;
        }
        let engine = records.open()?;
        let found = engine.join_records(opened(file, own)?, clock::read(), self.dry_run)?;
        engine.shut_down()?;
        say(out, &format!("{}\n", found.said(records.words())))?;
        let Some(text) = found.changes else { return Ok(()) };
        say(out, &format!("{}\n", (own.loads_differ)(found.differing)))?;
        let Some(path) = &self.changes else { return Ok(()) };
        written(path, own, |to| {
            to.write_all(text.as_bytes()).map_err(|error| {
                Failure::here((own.not_written)(&path.display().to_string(), &error))
            })
        })?;
        say(out, &format!("{}\n", (own.loads_written)(&path.display().to_string())))
    }
}

/// What came into the history last goes out of it again.
fn taken_back(records: &Records, out: &mut impl Write) -> Result<(), Failure> {
    let engine = records.open_begun()?;
    let gone = engine.withdraw_sessions(clock::read())?;
    engine.shut_down()?;
    say(out, &format!("{}\n", (records.own().taken_back)(gone)))
}

/// A file to be read.
fn opened(file: &Path, own: Own) -> Result<BufReader<File>, Failure> {
    let opened = File::open(file).map(BufReader::new);
    opened.map_err(|error| Failure::here((own.not_read)(&file.display().to_string(), &error)))
}

/// A copy of the records under a name of its own beside them.
fn copied(engine: &Engine, records: &Records) -> Result<PathBuf, Failure> {
    let path = records.path()?;
    let named = |number: u32| {
        let mut name = path.as_os_str().to_owned();
        name.push(format!(".before-import-{number}"));
        PathBuf::from(name)
    };
    let free = (1_u32..).map(named).find(|copy| !copy.exists());
    let copy = free.ok_or_else(|| Failure::here("no name is free for a copy"))?;
    engine.back_up(place::text(&copy, records.own()).map_err(Failure::here)?)?;
    Ok(copy)
}

/// Nothing of this name is there.
fn free(path: &Path, own: Own) -> Result<(), Failure> {
    match path.exists() {
        true => Err(Failure::asked((own.name_another)(&path.display().to_string()))),
        false => Ok(()),
    }
}

/// Writes a new file under another name, and gives it its own when all of it is on disk: nothing
/// half written is ever there, and nothing is written over.
fn written<T>(
    path: &Path,
    own: Own,
    write: impl FnOnce(&mut BufWriter<File>) -> Result<T, Failure>,
) -> Result<T, Failure> {
    free(path, own)?;
    let mut part = path.as_os_str().to_owned();
    part.push(".part");
    let part = PathBuf::from(part);
    let failed = |error: std::io::Error| {
        Failure::here((own.not_written)(&path.display().to_string(), &error))
    };
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt as _;
        // What a lifter recorded is theirs alone to read.
        options.mode(0o600);
    }
    let mut to = BufWriter::new(options.open(&part).map_err(failed)?);
    let done = write(&mut to).and_then(|done| {
        let file = to.into_inner().map_err(|error| failed(error.into_error()))?;
        file.sync_all().map_err(failed)?;
        Ok(done)
    });
    let done = done.and_then(|done| {
        // Made by another meanwhile, it is theirs.
        free(path, own)?;
        std::fs::rename(&part, path).map_err(failed)?;
        Ok(done)
    });
    if done.is_err() {
        // What can't be removed is met by the next attempt.
        let _ = std::fs::remove_file(&part);
    }
    done
}
