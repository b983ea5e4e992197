//! A process that taps, killed at any moment, over and over: what it acknowledged is in its file.

use std::io::{BufRead, BufReader, Write};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Duration;

use barwright_faults::{replay, tap};
use barwright_store::Store;

use crate::Outcome;
use crate::chance::Chance;

const FILE: &str = "BARWRIGHT_FAULTS_FILE";
const MOST_TAPS: u64 = 4_000;

/// Whether this process is the one that taps.
pub(crate) fn is_child() -> bool {
    std::env::var_os(FILE).is_some()
}

/// Taps until it is killed, and says each number when it is acknowledged; a quiet moment now and
/// then.
pub(crate) fn taps() {
    let path = PathBuf::from(std::env::var_os(FILE).expect("it was asked"));
    let mut out = std::io::stdout().lock();
    let mut store = Store::open(&path).expect("what a kill leaves opens");
    let mut number = store.last_seq() / 2;
    loop {
        number += 1;
        tap(&mut store, number).expect("the disk is well");
        if writeln!(out, "{number}").and_then(|()| out.flush()).is_err() {
            return;
        }
        match number % 40 {
            11 => store.checkpoint().expect("the disk is well"),
            29 => {
                store.close().expect("the disk is well");
                store = Store::open(&path).expect("it was closed");
            }
            _ => {}
        }
    }
}

/// Kills of the processes of one file, or of few.
pub(crate) const IN_ONE: u64 = 250;

pub(crate) fn in_one_file(count: u64, seed: u64) -> Outcome {
    let mut all = Outcome::default();
    let mut chance = Chance::of(seed, 1);
    let mut folder = tempfile::tempdir().expect("a folder");
    let mut there = 0;
    for number in 0..count {
        if there > MOST_TAPS {
            folder = tempfile::tempdir().expect("a folder");
            there = 0;
        }
        let path = folder.path().join("killed.barwright");
        let acknowledged = one(&path, &mut chance).unwrap_or(there);
        // The panics of a check are what is counted here.
        let found = catch_unwind(AssertUnwindSafe(|| {
            let mut store = Store::open(&path)?;
            // Every row is looked at now and then; every time, that the end is there.
            let full = number % 16 == 0 || number + 1 == count;
            let taps = if full { replay(&mut store) } else { store.last_seq() / 2 };
            Ok::<_, barwright_store::StoreError>((taps, store.last_seq()))
        }));
        match found {
            Ok(Ok((taps, last))) => {
                all.acknowledged_lost += acknowledged.saturating_sub(taps);
                // One tap may have been under way.
                all.duplicated += taps.saturating_sub(acknowledged + 1) + last % 2;
                there = taps;
            }
            Ok(Err(error)) => {
                let _ = writeln!(std::io::stderr(), "kill {number} of seed {seed}: {error}");
                all.dead_ends += 1;
                there = MOST_TAPS + 1;
            }
            Err(_) => {
                let _ = writeln!(std::io::stderr(), "kill {number} of seed {seed}");
                all.silently_wrong += 1;
                there = MOST_TAPS + 1;
            }
        }
    }
    all
}

/// Starts one, kills it after a moment, and answers the last number that it acknowledged.
fn one(path: &Path, chance: &mut Chance) -> Option<u64> {
    let mut child = Command::new(std::env::current_exe().expect("it runs"))
        .env(FILE, path)
        .stdout(Stdio::piped())
        .spawn()
        .expect("it starts");
    // From before it has its file to some dozens of taps later.
    std::thread::sleep(Duration::from_micros(1_500 + chance.below(30_000)));
    child.kill().expect("it runs until it is killed");
    let out = BufReader::new(child.stdout.take().expect("it was asked for"));
    let last = out.lines().map_while(Result::ok).filter_map(|line| line.parse().ok()).last();
    child.wait().expect("it ended");
    last
}
