//! One bit flipped anywhere in a store's file or its write-ahead log: what is shown is what was
//! recorded, or it is said that it is not; and recovering brings back what was recorded.

use std::io::Write;
use std::path::Path;

use barwright_app::contract::{EngineError, RefusalCode};
use barwright_app::{Engine, Recovered, recover_in, restore_in};
use barwright_faults::{Disk, Files};
use barwright_store::Place;

use crate::Outcome;
use crate::chance::Chance;
use crate::life::{Life, Shown, shown};

/// Flips made in one life; then another is lived.
pub(crate) const IN_ONE: u64 = 250;

/// The name of the backup beside a store.
const BACKUP: &str = "backup";

pub(crate) fn in_one_life(count: u64, seed: u64) -> Outcome {
    let mut all = Outcome::default();
    let mut chance = Chance::of(seed, 4);
    // A store at rest, and one whose process was killed in the midst of a session.
    let lives = [Life::lived(seed, 6, false), Life::lived(seed, 6, true)];
    let lives = lives.map(|life| {
        let files = life.disk.files();
        (life, files)
    });
    let backup = Backup::made(seed);
    for number in 0..count {
        let open = number % 2;
        // A backup is a neighbour that is seldom read.
        let (name, bit, found) = if number % 10 == 9 {
            let bit = chance.below(backup.files[BACKUP].len() as u64 * 8);
            (BACKUP, bit, backup.flipped(bit))
        } else {
            let (life, files) = &lives[open as usize];
            // Half of them in the log, where there is one: it is the smaller.
            let names: Vec<&String> =
                files.keys().filter(|name| !files[*name].is_empty()).collect();
            let name = names[chance.below(names.len() as u64) as usize];
            let bit = chance.below(files[name].len() as u64 * 8);
            (name.as_str(), bit, flipped(life, files, name, bit, number % 8 == 3))
        };
        if !found.is_clean() {
            let _ = writeln!(
                std::io::stderr(),
                "bit {bit} of {name}, life {seed}, open {open}: {found:?}"
            );
        }
        all = all.and(found);
    }
    all
}

/// A store that went on after a backup of it was made.
struct Backup {
    life: Life,
    files: Files,
    /// The tap that the backup was made after.
    tap: usize,
}

impl Backup {
    fn made(seed: u64) -> Self {
        let mut life = Life::lived(seed, 3, false);
        let tap = life.entries.len() - 1;
        let to = life.disk.place().named(Path::new(BACKUP));
        life.engine.back_up_in(to).expect("the disk is well");
        life.session(false);
        let files = life.disk.files();
        Self { life, files, tap }
    }

    /// Restores from one with a flipped bit: all of it, or nothing changes; and what is not restored
    /// is recovered.
    fn flipped(&self, bit: u64) -> Outcome {
        let mut found = Outcome::default();
        let disk = with_flip(&self.files, BACKUP, bit);
        let restored = restore_in(Path::new(BACKUP), &disk.place(), "en-GB");
        let last = self.life.entries.len() - 1;
        let tap = if restored.is_ok() { self.tap } else { last };
        found.and_as_after(&disk.place(), &Right { life: &self.life, tap });
        if restored.is_err() {
            found.recovered += 1;
            let backup = disk.place().named(Path::new(BACKUP));
            match recover_in(&backup, "en-GB") {
                Ok(_) => {
                    found.and_as_after(&backup, &Right { life: &self.life, tap: self.tap });
                }
                Err(error) => {
                    let _ = writeln!(std::io::stderr(), "{error:?}");
                    found.dead_ends += 1;
                }
            }
        }
        found
    }
}

impl Outcome {
    /// Opens, and holds all that is there against what was.
    fn and_as_after(&mut self, place: &Place, right: &Right<'_>) {
        match Engine::open_in(place.clone(), "en") {
            Ok(engine) => self.and_shown(&engine, right),
            Err(error) => {
                let _ = writeln!(std::io::stderr(), "{error:?}");
                self.dead_ends += 1;
            }
        }
    }

    fn and_shown(&mut self, engine: &Engine, right: &Right<'_>) {
        let entries = engine.count_records().unwrap_or(0);
        self.acknowledged_lost += right.entries().saturating_sub(entries);
        self.duplicated += entries.saturating_sub(right.entries());
        if entries == right.entries() {
            match right.is_shown(engine) {
                Some(true) => {}
                Some(false) => self.silently_wrong += 1,
                None => self.dead_ends += 1,
            }
        }
    }
}

/// A disk with such files, one bit of them flipped.
fn with_flip(files: &Files, name: &str, bit: u64) -> Disk {
    let mut files = files.clone();
    let bytes = files.get_mut(name).expect("it was chosen from them");
    bytes[(bit / 8) as usize] ^= 1 << (bit % 8);
    let disk = Disk::new();
    disk.set_tracing(false);
    disk.load(&files);
    disk
}

/// What is known to be right at the end of a life.
struct Right<'a> {
    life: &'a Life,
    /// The tap that stands.
    tap: usize,
}

impl Right<'_> {
    fn entries(&self) -> u64 {
        self.life.entries[self.tap]
    }

    fn is_shown(&self, engine: &Engine) -> Option<bool> {
        let seen: Shown = shown(engine, &self.life.times[self.tap]);
        if seen.failed() {
            return None;
        }
        Some(seen == self.life.shown[self.tap])
    }
}

fn flipped(life: &Life, files: &Files, name: &str, bit: u64, all_doors: bool) -> Outcome {
    let last = Right { life, tap: life.entries.len() - 1 };
    let found = opened(&with_flip(files, name, bit), &last, all_doors);
    if found.acknowledged_lost == 0 && found.silently_wrong == 0 {
        return found;
    }
    // A flip in the last commit, not sealed yet, may cost that commit: it looks like one that the
    // power cut short.
    let before = Right { life, tap: last.tap - 1 };
    let again = opened(&with_flip(files, name, bit), &before, all_doors);
    if name.ends_with("-wal") && again.is_clean() {
        return Outcome { last_commits: 1, ..again };
    }
    found
}

/// Opens what a flip left, looks at everything, and recovers where that is offered. With `all_doors`
/// what was found whole is held against what recovering says of it.
fn opened(disk: &Disk, right: &Right<'_>, all_doors: bool) -> Outcome {
    let mut found = Outcome::default();
    match Engine::open_in(disk.place(), "en") {
        Ok(engine) => {
            match right.is_shown(&engine) {
                Some(true) => {}
                Some(false) => found.silently_wrong += 1,
                // It was said; checking says it too, or has mended it.
                None => {}
            }
            match engine.examine_records() {
                Ok(examined) => {
                    found.mended += u64::from(examined.mended > 0);
                    found.acknowledged_lost += right.entries().saturating_sub(examined.entries);
                    found.duplicated += examined.entries.saturating_sub(right.entries());
                    match right.is_shown(&engine) {
                        Some(true) => {}
                        Some(false) => found.silently_wrong += 1,
                        None => found.dead_ends += 1,
                    }
                    drop(engine);
                    if all_doors && !is_nothing_wrong(&recover_in(&disk.place(), "en-GB")) {
                        found.silently_wrong += 1;
                    }
                    return found;
                }
                Err(EngineError::Storage { .. }) => drop(engine),
                Err(error) => {
                    let _ = writeln!(std::io::stderr(), "{error:?}");
                    return Outcome { dead_ends: 1, ..found };
                }
            }
        }
        Err(EngineError::Storage { .. }) => {}
        Err(error) => {
            let _ = writeln!(std::io::stderr(), "{error:?}");
            return Outcome { dead_ends: 1, ..found };
        }
    }
    found.recovered += 1;
    let recovered = match recover_in(&disk.place(), "en-GB") {
        Ok(recovered) => recovered,
        Err(error) => {
            let _ = writeln!(std::io::stderr(), "{error:?}");
            return Outcome { dead_ends: 1, ..found };
        }
    };
    found.duplicated += recovered.kept.saturating_sub(right.entries());
    found.and_as_after(&disk.place(), right);
    found
}

/// Whether recovering says that there is nothing to recover.
fn is_nothing_wrong(recovered: &Result<Recovered, EngineError>) -> bool {
    matches!(recovered, Err(EngineError::Refused { code: RefusalCode::AlreadySo, .. }))
}
