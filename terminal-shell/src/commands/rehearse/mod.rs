//! `barwright rehearse`: a plan played through by invented lifters.

mod sets;
mod words;

use std::io::Write;
use std::path::PathBuf;

use barwright_app::phrase::Language;
use barwright_app::{Locale, plan_in_file};
use barwright_domain::catalogue::Catalogue;
use barwright_domain::equipment::{Equipment, builtin_in};
use barwright_domain::plan::Plan;
use barwright_rehearsal::{Cast, MOST_LIFTERS, rehearse};
use indicatif::{ProgressBar, ProgressStyle};

use super::plan::refused;
use super::{Failure, bar, say};
use crate::files;

/// What is rehearsed.
#[derive(Debug, clap::Args)]
pub(crate) struct Asked {
    /// The plan file.
    file: PathBuf,
    /// How many invented lifters.
    #[arg(long, value_name = "N", default_value_t = 1_000,
        value_parser = clap::value_parser!(u32).range(1..=i64::from(MOST_LIFTERS)))]
    lifters: u32,
    /// What their chance is drawn from: the same number, the same lifters.
    #[arg(long, value_name = "N", default_value_t = 1)]
    seed: u64,
    /// The equipment file; without it a gym that comes with the program.
    #[arg(long, value_name = "FILE")]
    equipment: Option<PathBuf>,
    /// As JSON, masses in exact kilograms.
    #[arg(long)]
    json: bool,
    /// Write every work set into a new folder instead, as files of comma-separated values.
    #[arg(long, value_name = "FOLDER", conflicts_with = "json")]
    sets: Option<PathBuf>,
}

/// Rehearses, and says what came of it.
pub(crate) fn run(asked: &Asked, locale: &Locale, out: &mut impl Write) -> Result<(), Failure> {
    let text = files::read(&asked.file, crate::words::of(locale)).map_err(Failure::here)?;
    let Ok(file) = Plan::read(&text, &Catalogue::builtin()) else {
        let screen = plan_in_file(text.as_bytes(), None, locale);
        return Err(refused(&screen, &asked.file, locale.words()));
    };
    let gym: Equipment = match &asked.equipment {
        Some(path) => bar::gym_in(path, locale)?,
        None => builtin_in(locale.unit),
    };
    let cast = Cast { lifters: asked.lifters, seed: asked.seed };
    let progress = progress(asked.lifters);
    if let Some(folder) = &asked.sets {
        let written = sets::write(folder, &file.plan, &gym, cast, &|| progress.inc(1));
        progress.finish_and_clear();
        let rows = written?;
        return say(
            out,
            &format!("{}: {rows} sets of {} lifters\n", folder.display(), cast.lifters),
        );
    }
    let report = rehearse(&file.plan, &gym, cast, &|| progress.inc(1));
    progress.finish_and_clear();
    if asked.json {
        let text = serde_json::to_string(&report).map_err(|why| Failure::here(why.to_string()))?;
        return say(out, &format!("{text}\n"));
    }
    // It is worked out for whoever writes plans, and said in English whole: only numbers are written
    // as the locale has them.
    let english = Locale { language: Language::English, ..*locale };
    say(out, &words::report(&file.plan, &report, gym.unit, english.words()))
}

/// A line on standard error that counts the lifters; none where that is no terminal.
fn progress(lifters: u32) -> ProgressBar {
    let bar = ProgressBar::new(lifters.into());
    match ProgressStyle::with_template("{bar:40} {pos} of {len} lifters") {
        Ok(style) => bar.with_style(style),
        Err(_) => bar,
    }
}
