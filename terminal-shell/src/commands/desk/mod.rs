//! `barwright desk`: what many lifters sent back, a line each, worst first, then one of them in full.

mod list;
mod returns;

use std::io::{self, IsTerminal, Write};
use std::path::{Path, PathBuf};

use barwright_app::contract::Look;
use barwright_app::phrase::Words;
use barwright_app::{Change, Locale};
use serde_json::json;
use unicode_width::UnicodeWidthStr;

use self::returns::{Line, Returns, opened, read};
use super::{Failure, say, sent};
use crate::app::App;
use crate::palette::Palette;
use crate::words::{self, Own};
use crate::{clock, files, screens, terminal};

/// Whose returns are looked at.
#[derive(Debug, clap::Args)]
pub(crate) struct Asked {
    /// The folder of returns, a file each, as `records export --jsonl` writes them.
    folder: PathBuf,
    /// One lifter in full, by the name of the file without its ending.
    #[arg(long, value_name = "NAME")]
    lifter: Option<String>,
    /// A change for that lifter, written to a file that they take up: `max back-squat -5 %`,
    /// `load bench-press 80 kg`, `hold bench-press`, `swap LIFT with LIFT`, `week 3`.
    #[arg(long, value_name = "CHANGE", requires = "lifter", requires = "out")]
    change: Vec<String>,
    /// The plan mended for that lifter, to go into the file: its own file.
    #[arg(long, value_name = "FILE", requires = "lifter", requires = "out")]
    plan: Option<PathBuf>,
    /// The new file of changes; there must be none of that name.
    #[arg(long, value_name = "FILE", requires = "lifter", conflicts_with = "json")]
    out: Option<PathBuf>,
    /// As JSON.
    #[arg(long)]
    json: bool,
}

impl Asked {
    /// Shows them: on a terminal as screens, else as text or JSON.
    pub(crate) fn run(&self, tag: &str, out: &mut impl Write) -> Result<(), Failure> {
        let (words, own) = spoken(tag);
        let found = read(&self.folder, tag, own)?;
        if let Some(name) = &self.lifter {
            let line = found.lifters.iter().find(|line| line.lifter == *name);
            let line = line.ok_or_else(|| found.lacks(name, words))?;
            return match &self.out {
                Some(file) => self.changes(line, file, tag, out),
                None => self.one(line, tag, out),
            };
        }
        let dumb = std::env::var_os("TERM").is_none_or(|term| term == "dumb");
        let shows = io::stdout().is_terminal() && io::stdin().is_terminal() && !dumb;
        match (self.json, shows) {
            (true, _) => say(out, &format!("{:#}\n", json!(found))),
            (false, true) if !found.lifters.is_empty() => on_terminal(&found, tag),
            (false, _) => say(out, &text(&found, words)),
        }
    }

    /// Writes what is changed for a lifter to a file, and shows it.
    fn changes(
        &self,
        line: &Line,
        file: &Path,
        tag: &str,
        out: &mut impl Write,
    ) -> Result<(), Failure> {
        let (_, own) = spoken(tag);
        let engine = opened(&line.path, tag).map_err(Failure::here)?;
        let plan = self.plan.iter().map(|path| files::read(path, own).map(Change::Plan));
        let said = self.change.iter().map(|said| Ok(Change::Said(said.clone())));
        let changes: Vec<Change> =
            plan.chain(said).collect::<Result<_, String>>().map_err(Failure::here)?;
        let text = engine.changes_file(&line.lifter, &changes, clock::read())?;
        let shown = sent::shown(&engine, &text)?;
        let saved = files::save(file, &text, own).map_err(Failure::asked)?;
        say(out, &format!("{}{saved}\n", screens::text(&shown, own)))
    }

    fn one(&self, line: &Line, tag: &str, out: &mut impl Write) -> Result<(), Failure> {
        let (words, own) = spoken(tag);
        let engine = opened(&line.path, tag).map_err(Failure::here)?;
        let view = |look| engine.view(look, clock::read()).map(|answer| answer.screen);
        let (weeks, balance) = (view(Look::Weeks)?, view(Look::Balance { weeks: None })?);
        if self.json {
            let found = json!({ "lifter": line, "weeks": weeks, "balance": balance });
            return say(out, &format!("{found:#}\n"));
        }
        let one = Returns { lifters: vec![line.clone()], unread: Vec::new() };
        let mut told = table(&one, words);
        told.extend(line.week.says.iter().map(|text| format!("  {text}\n")));
        told.push(format!("\n{}\n{}", screens::text(&weeks, own), screens::text(&balance, own)));
        say(out, &told.concat())
    }
}

/// The words of a locale, and the terminal's own.
fn spoken(tag: &str) -> (Words, Own) {
    let locale = Locale::read(tag);
    (locale.words(), words::of(&locale))
}

/// Each lifter's line, and the screens of whichever is opened.
fn on_terminal(found: &Returns, tag: &str) -> Result<(), Failure> {
    let (words, own) = spoken(tag);
    let palette = Palette::of(|name| std::env::var(name).ok());
    let mut at = 0;
    while let Some(line) = list::choose(found, &mut at, palette, words)? {
        let engine = opened(&line.path, tag).map_err(Failure::here)?;
        let mut app = App::start(engine, Some(own.looked_at), own, clock::read())?;
        terminal::run(&mut app, palette)?;
    }
    Ok(())
}

fn text(found: &Returns, words: Words) -> String {
    let mut told = vec![format!("{}\n\n", found.in_short(words))];
    if !found.lifters.is_empty() {
        told.extend(table(found, words));
    }
    if !found.unread.is_empty() {
        told.push("\n".to_owned());
    }
    told.extend(found.unread.iter().map(|one| format!("{}: {}\n", one.file, one.why)));
    told.concat()
}

/// A line a lifter under its columns.
fn table(found: &Returns, words: Words) -> Vec<String> {
    let columns = words.returned().columns().into_iter().map(str::to_owned).collect();
    let lines: Vec<Vec<String>> = std::iter::once(columns)
        .chain(found.lifters.iter().map(|line| line.cells(words)))
        .collect();
    let widths: Vec<usize> = (0..lines.first().map_or(0, Vec::len))
        .map(|at| lines.iter().filter_map(|line| line.get(at)).map(|cell| cell.width()).max())
        .map(Option::unwrap_or_default)
        .collect();
    let padded = |(cell, wide): (&String, &usize)| {
        format!("{cell}{}", " ".repeat(wide.saturating_sub(cell.width())))
    };
    let line = |cells: &Vec<String>| {
        let cells: Vec<String> = cells.iter().zip(&widths).map(padded).collect();
        format!("{}\n", cells.join("  ").trim_end())
    };
    lines.iter().map(line).collect()
}
