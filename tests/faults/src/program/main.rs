//! Kills, power cuts and flipped bits in any number, each chosen by a seed:
//!
//! `cargo run --release -p barwright-faults -- --kills N --power-cuts N --flips N [--seed S] [--json]`
//!
//! `--years N` lives so many years of a device beside them. `--jobs N` sets how many processors are
//! taken, all of them without it; what is found does not hang on it.
//!
//! The last line is JSON with what was done and what came of it; anything but four zeros ends with
//! a failure, and says how to see it again.

mod chance;
mod flips;
mod kills;
mod life;
mod power;
mod years;

use std::io::Write;
use std::process::ExitCode;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Mutex, PoisonError};
use std::time::Instant;

use serde_json::json;
use years::Years;

/// What came of it.
#[derive(Debug, Default, Clone, Copy)]
struct Outcome {
    /// Entries that were acknowledged and are gone, after recovering where that was offered; the
    /// last commit, where it was not sealed and its own bytes were hit, apart.
    acknowledged_lost: u64,
    /// Entries that are there twice, or that nobody made.
    duplicated: u64,
    /// Something was shown, or called good, that is not what was recorded.
    silently_wrong: u64,
    /// Neither opening nor recovering went on.
    dead_ends: u64,
    /// Last commits lost to a flip in their own bytes, before they were sealed: the one loss that
    /// is allowed.
    last_commits: u64,
    /// Files that were called damaged, and recovered.
    recovered: u64,
    /// Files whose derived rows were made anew.
    mended: u64,
}

impl Outcome {
    fn and(self, other: Self) -> Self {
        Self {
            acknowledged_lost: self.acknowledged_lost + other.acknowledged_lost,
            duplicated: self.duplicated + other.duplicated,
            silently_wrong: self.silently_wrong + other.silently_wrong,
            dead_ends: self.dead_ends + other.dead_ends,
            last_commits: self.last_commits + other.last_commits,
            recovered: self.recovered + other.recovered,
            mended: self.mended + other.mended,
        }
    }

    fn is_clean(&self) -> bool {
        (self.acknowledged_lost, self.duplicated, self.silently_wrong, self.dead_ends)
            == (0, 0, 0, 0)
    }
}

/// Does `count` things in parts of `most`, each part with a seed of its own, so that what one finds
/// is found again whatever number of processors there is.
fn spread<T: Copy + Default + Send>(
    count: u64,
    seed: u64,
    threads: usize,
    most: u64,
    work: impl Fn(u64, u64) -> T + Sync,
    and: impl Fn(T, T) -> T + Sync,
) -> T {
    let next = AtomicU64::new(0);
    let all = Mutex::new(T::default());
    let goes_on = || loop {
        let done = next.fetch_add(most, Ordering::Relaxed);
        if done >= count {
            return;
        }
        let found = work(most.min(count - done), seed.wrapping_add(done));
        let mut all = all.lock().unwrap_or_else(PoisonError::into_inner);
        *all = and(*all, found);
    };
    std::thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(goes_on);
        }
    });
    all.into_inner().unwrap_or_else(PoisonError::into_inner)
}

struct Asked {
    kills: u64,
    power_cuts: u64,
    flips: u64,
    years: u64,
    seed: u64,
    jobs: usize,
    json: bool,
}

fn asked() -> Result<Asked, String> {
    let jobs = std::thread::available_parallelism().map_or(1, usize::from);
    let mut asked =
        Asked { kills: 100, power_cuts: 100, flips: 100, years: 0, seed: 1, jobs, json: false };
    let mut words = std::env::args().skip(1);
    while let Some(word) = words.next() {
        if word == "--json" {
            asked.json = true;
            continue;
        }
        let number = words.next().and_then(|text| text.parse().ok());
        let number = number.ok_or_else(|| format!("{word} wants a number"))?;
        match word.as_str() {
            "--kills" => asked.kills = number,
            "--power-cuts" => asked.power_cuts = number,
            "--flips" => asked.flips = number,
            "--years" => asked.years = number,
            "--seed" => asked.seed = number,
            "--jobs" => asked.jobs = usize::try_from(number).unwrap_or(jobs).max(1),
            _ => return Err(format!("{word} is not known")),
        }
    }
    Ok(asked)
}

fn main() -> ExitCode {
    if kills::is_child() {
        kills::taps();
        return ExitCode::SUCCESS;
    }
    let mut out = std::io::stdout();
    let asked = match asked() {
        Ok(asked) => asked,
        Err(wrong) => {
            let _ = writeln!(std::io::stderr(), "{wrong}");
            return ExitCode::from(2);
        }
    };
    let say = |what: &str, count: u64, found: Outcome| {
        if !asked.json {
            let _ = writeln!(std::io::stdout(), "{count} {what}: {found:?}");
        }
        found
    };
    // A process that is killed is waited for, and so are the syncs of its disk.
    let (seed, jobs) = (asked.seed, asked.jobs);
    let kills =
        spread(asked.kills, seed, jobs * 2, kills::IN_ONE, kills::in_one_file, Outcome::and);
    let kills = say("kills", asked.kills, kills);
    let power =
        spread(asked.power_cuts, seed, jobs, power::IN_ONE, power::in_one_life, Outcome::and);
    let power = say("power cuts", asked.power_cuts, power);
    let flips = spread(asked.flips, seed, jobs, flips::IN_ONE, flips::in_one_life, Outcome::and);
    let flips = say("flips", asked.flips, flips);
    let all = kills.and(power).and(flips);
    #[expect(clippy::disallowed_methods, reason = "years a minute are told, not tested")]
    let began = Instant::now();
    let years = spread(asked.years, seed, jobs, 1, years::one, Years::and);
    let minutes = began.elapsed().as_secs_f64() / 60.0;
    let a_minute = years.lived as f64 / minutes.max(0.001);
    if asked.years > 0 && !asked.json {
        let _ = writeln!(out, "{} years: {years:?}, {a_minute:.1} a minute", asked.years);
    }
    let line = json!({
        "kills": asked.kills,
        "power_cuts": asked.power_cuts,
        "flips": asked.flips,
        "seed": asked.seed,
        "acknowledged_lost": all.acknowledged_lost,
        "duplicated": all.duplicated,
        "silently_wrong": all.silently_wrong,
        "dead_ends": all.dead_ends,
        "last_commits": all.last_commits,
        "recovered": all.recovered,
        "mended": all.mended,
        "years": years.lived,
        "years_failed": years.failed,
        "year_steps": years.steps,
        "years_a_minute": (a_minute * 10.0).round() / 10.0,
    });
    let _ = writeln!(out, "{line}");
    if all.is_clean() && years.failed == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
