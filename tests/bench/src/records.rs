//! Stores to measure on: ten years, one month and no history, played tap by tap.

use std::path::{Path, PathBuf};
use std::sync::OnceLock;
use std::sync::atomic::{AtomicU32, Ordering};

use barwright_app::Engine;
use tempfile::TempDir;

use crate::lifter::{Lifter, SESSIONS};

const LOCALE: &str = "en";
/// Ten years of three sessions a week.
const TEN_YEARS: u32 = 520;
/// Sets that they come to, at the least.
const SETS: u32 = 75_000;

/// How much lies behind the lifter.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Past {
    /// A plan, and nothing done.
    Nothing,
    /// Four weeks.
    Month,
    /// Ten years.
    TenYears,
}

static FOLDER: OnceLock<TempDir> = OnceLock::new();
static MADE: [OnceLock<PathBuf>; 3] = [const { OnceLock::new() }; 3];
static COPIES: AtomicU32 = AtomicU32::new(0);

fn folder() -> &'static Path {
    FOLDER.get_or_init(|| tempfile::tempdir().expect("a folder for what is measured")).path()
}

/// Removes all that was made.
pub(crate) fn clean_up() {
    if let Some(folder) = FOLDER.get() {
        // Where it can't be removed the system will.
        let _ = std::fs::remove_dir_all(folder.path());
    }
}

/// A new file's path.
pub(crate) fn fresh() -> PathBuf {
    folder().join(format!("{}.barwright", COPIES.fetch_add(1, Ordering::Relaxed)))
}

/// A copy of a store, for one measure alone.
pub(crate) fn copy_of(past: Past) -> PathBuf {
    let made = MADE.get(past as usize).expect("one for each").get_or_init(|| make(past));
    let copy = fresh();
    std::fs::copy(made, &copy).expect("a store is copied");
    copy
}

/// Opens a store's file.
pub(crate) fn open(path: &Path) -> std::sync::Arc<Engine> {
    Engine::open(path.display().to_string(), LOCALE.to_owned()).expect("a store of ours opens")
}

/// Plays the past in memory, where a sync costs nothing, and copies it to a file.
fn make(past: Past) -> PathBuf {
    let weeks = match past {
        Past::Nothing => 0,
        Past::Month => 4,
        Past::TenYears => TEN_YEARS,
    };
    let engine = Engine::in_memory(LOCALE.to_owned()).expect("a store in memory");
    let lifter = Lifter::with_past(engine, weeks);
    if past == Past::TenYears {
        let (sets, each) = (lifter.recorded, lifter.recorded / (weeks * SESSIONS));
        assert!(sets >= SETS, "{sets} sets are no ten years: {each} a session");
    }
    let path = fresh();
    lifter.player.engine.back_up(path.display().to_string()).expect("the past is written");
    path
}
