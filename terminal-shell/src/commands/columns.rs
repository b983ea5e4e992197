//! `barwright records columns`, and `import --columns`: old records from a table of any make.

use std::fs::File;
use std::io::{Read as _, Write};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use barwright_app::Engine;
use barwright_domain::columns::bounds;
use indicatif::{ProgressBar, ProgressStyle};

use super::{Failure, Records, say};
use crate::words::Own;
use crate::{clock, files};

/// A table whose columns are guessed.
#[derive(Debug, clap::Args)]
pub(crate) struct Columns {
    /// The table: a CSV of any make, a row a set.
    file: PathBuf,
    /// Write what is guessed into this new file; without it, it is printed.
    #[arg(long, value_name = "NEW FILE")]
    out: Option<PathBuf>,
}

impl Columns {
    /// Carries it out. Nothing is recorded, and no records are made.
    pub(crate) fn run(&self, records: &Records, out: &mut impl Write) -> Result<(), Failure> {
        let own = records.own();
        let table = table(&self.file, own)?;
        let name = self.file.file_stem().unwrap_or_default().to_string_lossy();
        let engine = records.open_to_look()?;
        let text = engine.guess_columns(&table, &name, clock::read())?;
        engine.shut_down()?;
        let Some(path) = &self.out else { return say(out, &text) };
        let saved = files::save(path, &text, own).map_err(Failure::here)?;
        let (file, path) = (self.file.display().to_string(), path.display().to_string());
        say(out, &format!("{saved}\n{}\n", (own.look_at_columns)(&file, &path)))
    }
}

/// The sets of a table come into the history, by a file of columns.
pub(super) fn import(
    file: &Path,
    columns: &Path,
    dry_run: bool,
    records: &Records,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let own = records.own();
    let text = files::read(columns, own).map_err(Failure::here)?;
    let table = table(file, own)?;
    // A table that can't be taken makes no records.
    let engine = if dry_run { records.open_to_look()? } else { tried(&table, &text, records)? };
    let faults = engine.check_columns(&text)?;
    if !faults.is_empty() {
        let words = records.words();
        let name = columns.display().to_string();
        let told: String = faults.iter().map(|one| words.faults().lines(one, &name)).collect();
        let count = words.columns().faults(faults.len());
        return Err(Failure::asked(format!("{told}{count}")));
    }
    let bar = progress(table.len());
    let read = |bytes| bar.set_position(bytes);
    let found = engine.import_table(&table, &text, clock::read(), dry_run, &read);
    bar.finish_and_clear();
    let found = found?;
    engine.shut_down()?;
    say(out, &format!("{}\n", found.said(records.words())))?;
    if found.joined.taken { say(out, &format!("{}\n", own.way_out)) } else { Ok(()) }
}

/// The records that a table comes into. Where there are none, it is looked at in memory first.
fn tried(table: &[u8], columns: &str, records: &Records) -> Result<Arc<Engine>, Failure> {
    if records.demo || records.path()?.exists() {
        return records.open();
    }
    let looked = Engine::in_memory(records.locale())?;
    let sound = looked.check_columns(columns)?.is_empty();
    let look = || looked.import_table(table, columns, clock::read(), true, &|_| {});
    if sound && look()?.joined.new > 0 { records.open() } else { Ok(looked) }
}

/// The bytes of a table, and no more than are read.
fn table(path: &Path, own: Own) -> Result<Vec<u8>, Failure> {
    let failed = |error| Failure::here((own.not_read)(&path.display().to_string(), &error));
    let mut bytes = Vec::new();
    // One more than is read, so that the reader can say itself what is too much.
    let mut file = File::open(path).map_err(failed)?.take(bounds::BYTES + 1);
    file.read_to_end(&mut bytes).map_err(failed)?;
    Ok(bytes)
}

/// A line on standard error that says how much is read; none where that is no terminal.
fn progress(bytes: usize) -> ProgressBar {
    let bar = ProgressBar::new(u64::try_from(bytes).unwrap_or(u64::MAX));
    match ProgressStyle::with_template("{bar:40} {percent} %") {
        Ok(style) => bar.with_style(style),
        Err(_) => bar,
    }
}
