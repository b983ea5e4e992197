//! A folder of returns, read: each file is someone else's, and is held to bounds.

use std::fs::File;
use std::io::BufReader;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

use barwright_app::phrase::Words;
use barwright_app::{Engine, LifterWeek, Locale};
use barwright_domain::shown::plain;
use serde::Serialize;

use crate::clock;
use crate::commands::Failure;
use crate::words::{self, Own};

/// The most files that are read of a folder.
const MOST_FILES: usize = 20_000;
/// The most characters of a file's name that are shown.
const MOST_NAME: usize = 60;

/// A lifter's line.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Line {
    /// The name of the file without its ending.
    pub(super) lifter: String,
    #[serde(skip)]
    pub(super) path: PathBuf,
    #[serde(flatten)]
    pub(super) week: LifterWeek,
}

/// A file that is no return that can be read, and why.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Unread {
    pub(super) file: String,
    pub(super) why: String,
}

/// What a folder has, worst first.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Returns {
    pub(super) lifters: Vec<Line>,
    pub(super) unread: Vec<Unread>,
}

impl Returns {
    /// How many there are.
    pub(super) fn in_short(&self, words: Words) -> String {
        words.returned().in_short(self.lifters.len(), self.unread.len())
    }

    /// There is none of that name.
    pub(super) fn lacks(&self, name: &str, words: Words) -> Failure {
        Failure::asked(words.returned().lacks(name, &self.in_short(words)))
    }
}

impl Line {
    /// Its cells, as the columns stand.
    pub(super) fn cells(&self, words: Words) -> Vec<String> {
        let (say, week) = (words.returned(), &self.week);
        let weeks = u32::try_from(week.weeks).unwrap_or(u32::MAX);
        vec![
            self.lifter.clone(),
            say.out_of(week.week.into(), weeks),
            say.out_of(week.sessions.done, week.sessions.planned),
            say.out_of(week.hard_sets.done, week.hard_sets.planned),
            week.loads_off.to_string(),
            week.effort_off.to_string(),
            week.misses.to_string(),
            week.pain.to_string(),
            week.days_off.map(|days| days.to_string()).unwrap_or_default(),
            week.next.clone(),
        ]
    }
}

/// A return as an engine in memory: its screens are as they stood where it is from.
pub(super) fn opened(path: &Path, tag: &str) -> Result<Arc<Engine>, String> {
    let own = words::of(&Locale::read(tag));
    let file = File::open(path).map_err(|why| (own.not_read)(&path.display().to_string(), &why))?;
    Engine::read_records(BufReader::new(file), tag).map_err(|why| why.to_string())
}

/// Reads a folder on all cores. A file that can't be read is said, and stops no other.
pub(super) fn read(folder: &Path, tag: &str, own: Own) -> Result<Returns, Failure> {
    let paths = files(folder, own)?;
    let next = AtomicUsize::new(0);
    let work = || {
        let mut found = Vec::new();
        while let Some(path) = paths.get(next.fetch_add(1, Ordering::Relaxed)) {
            found.push((path, short(path, tag)));
        }
        found
    };
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    let found: Vec<_> = std::thread::scope(|scope| {
        let running: Vec<_> = (0..threads).map(|_| scope.spawn(work)).collect();
        // A thread that died takes its part with it: nothing is shown as whole that is not.
        running.into_iter().map(|one| one.join().ok()).collect::<Option<Vec<_>>>()
    })
    .ok_or_else(|| Failure::here(own.reading_stopped))?;
    let (mut lifters, mut unread) = (Vec::new(), Vec::new());
    for (path, week) in found.into_iter().flatten() {
        match week {
            Ok(week) => {
                lifters.push(Line { lifter: name(path, true), path: path.clone(), week });
            }
            Err(why) => unread.push(Unread { file: name(path, false), why: plain(&why) }),
        }
    }
    lifters.sort_by(|one, two| one.week.worse(&two.week).then_with(|| one.lifter.cmp(&two.lifter)));
    unread.sort_by(|one, two| one.file.cmp(&two.file));
    Ok(Returns { lifters, unread })
}

fn short(path: &Path, tag: &str) -> Result<LifterWeek, String> {
    let engine = opened(path, tag)?;
    engine.week_in_short(clock::read()).map_err(|why| why.to_string())
}

/// The files that may be returns: no folder and no link is followed.
fn files(folder: &Path, own: Own) -> Result<Vec<PathBuf>, Failure> {
    let shown = folder.display().to_string();
    let cannot = |why: std::io::Error| Failure::here((own.folder_not_read)(&shown, &why));
    let mut paths = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(cannot)? {
        let entry = entry.map_err(cannot)?;
        let path = entry.path();
        let is_return = path.extension().is_some_and(|ending| ending == "jsonl");
        if !is_return || !entry.file_type().map_err(cannot)?.is_file() {
            continue;
        }
        if paths.len() == MOST_FILES {
            return Err(Failure::asked((own.many_returns)(&shown, MOST_FILES)));
        }
        paths.push(path);
    }
    paths.sort();
    Ok(paths)
}

/// A file's name as it is shown.
fn name(path: &Path, without_ending: bool) -> String {
    let name = if without_ending { path.file_stem() } else { path.file_name() };
    let name = name.unwrap_or_default().to_string_lossy();
    plain(&name.chars().take(MOST_NAME).collect::<String>())
}
