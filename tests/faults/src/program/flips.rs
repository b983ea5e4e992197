//! One bit flipped anywhere in a store's file or its write-ahead log: what is shown is what was
//! recorded, or it is said that it is not; and recovering brings back what was recorded.

use std::io::Write;

use barwright_app::contract::EngineError;
use barwright_app::{Engine, recover_in};
use barwright_faults::{Disk, Files};

use crate::Outcome;
use crate::chance::Chance;
use crate::life::{Life, Shown, shown};

/// Flips made in one life; then another is lived.
const IN_ONE: u64 = 500;

pub(crate) fn run(count: u64, seed: u64) -> Outcome {
    let mut all = Outcome::default();
    let mut done = 0;
    while done < count {
        let flips = (count - done).min(IN_ONE);
        all = all.and(in_one_life(flips, seed.wrapping_add(done)));
        done += flips;
    }
    all
}

fn in_one_life(count: u64, seed: u64) -> Outcome {
    let mut all = Outcome::default();
    let mut chance = Chance::of(seed, 4);
    // A store at rest, and one whose process was killed in the midst of a session.
    let lives = [Life::lived(seed, 6, false), Life::lived(seed, 6, true)];
    let lives = lives.map(|life| {
        let files = life.disk.files();
        (life, files)
    });
    for number in 0..count {
        let (life, files) = &lives[(number % 2) as usize];
        // Half of them in the log, where there is one: it is the smaller.
        let names: Vec<&String> = files.keys().filter(|name| !files[*name].is_empty()).collect();
        let name = names[chance.below(names.len() as u64) as usize];
        let bit = chance.below(files[name].len() as u64 * 8);
        let found = flipped(life, files, name, bit);
        if !found.is_clean() {
            let _ = writeln!(
                std::io::stderr(),
                "bit {bit} of {name}, life {seed}, open {}: {found:?}",
                number % 2
            );
        }
        all = all.and(found);
    }
    all
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

fn flipped(life: &Life, files: &Files, name: &str, bit: u64) -> Outcome {
    let mut files = files.clone();
    let bytes = files.get_mut(name).expect("it was chosen from them");
    bytes[(bit / 8) as usize] ^= 1 << (bit % 8);
    let disk = Disk::new();
    disk.set_tracing(false);
    disk.load(&files);
    let last = Right { life, tap: life.entries.len() - 1 };
    let found = opened(&disk, &last);
    if found.acknowledged_lost == 0 && found.silently_wrong == 0 {
        return found;
    }
    // A flip in the last commit, not sealed yet, may cost that commit: it looks like one that the
    // power cut short.
    let before = Right { life, tap: last.tap - 1 };
    let disk = Disk::new();
    disk.set_tracing(false);
    disk.load(&files);
    let again = opened(&disk, &before);
    if name.ends_with("-wal") && again.is_clean() {
        return Outcome { last_commits: 1, ..again };
    }
    found
}

/// Opens what a flip left, looks at everything, and recovers where that is offered.
fn opened(disk: &Disk, right: &Right<'_>) -> Outcome {
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
    let recovered = match recover_in(&disk.place()) {
        Ok(recovered) => recovered,
        Err(error) => {
            let _ = writeln!(std::io::stderr(), "{error:?}");
            return Outcome { dead_ends: 1, ..found };
        }
    };
    let engine = match Engine::open_in(disk.place(), "en") {
        Ok(engine) => engine,
        Err(error) => {
            let _ = writeln!(std::io::stderr(), "{error:?}");
            return Outcome { dead_ends: 1, ..found };
        }
    };
    found.acknowledged_lost += right.entries().saturating_sub(recovered.kept);
    found.duplicated += recovered.kept.saturating_sub(right.entries());
    if found.acknowledged_lost == 0 && found.duplicated == 0 {
        match right.is_shown(&engine) {
            Some(true) => {}
            Some(false) => found.silently_wrong += 1,
            None => found.dead_ends += 1,
        }
    }
    found
}
