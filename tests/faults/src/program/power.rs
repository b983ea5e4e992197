//! Power cuts in some weeks of a lifter: whatever the moment and whatever part of the unsynced bytes
//! reached the disk, the engine opens and shows what it showed after the last tap that was
//! acknowledged, or after the one that was under way.

use std::io::Write;

use barwright_app::Engine;
use barwright_faults::{Disk, Machine};

use crate::Outcome;
use crate::chance::Chance;
use crate::life::{Life, shown};

/// Cuts made in one life; then another is lived.
pub(crate) const IN_ONE: u64 = 250;

pub(crate) fn in_one_life(count: u64, seed: u64) -> Outcome {
    let mut all = Outcome::default();
    let life = Life::lived(seed, 4, seed.is_multiple_of(2));
    let trace = life.disk.trace();
    let mut chance = Chance::of(seed, 3);
    let mut cuts: Vec<(usize, u64)> = (0..count)
        .map(|number| {
            let step = chance.below(trace.steps.len() as u64 + 1) as usize;
            // All and nothing of what was not synced are the likeliest of all.
            let sectors = match number % 8 {
                0 => 0,
                1 => u64::MAX,
                _ => chance.next(),
            };
            (step, sectors)
        })
        .collect();
    cuts.sort_unstable();
    let mut machine = Machine::new(&trace.from);
    let mut played = 0;
    for (step, sectors) in cuts {
        while played < step {
            machine.play(&trace.steps[played]);
            played += 1;
        }
        let (files, acknowledged) = machine.power_cut(sectors);
        let disk = Disk::new();
        disk.set_tracing(false);
        disk.load(&files);
        let found = after(&disk, &life, acknowledged.unwrap_or(0));
        if !found.is_clean() {
            let _ = writeln!(
                std::io::stderr(),
                "power cut at step {step}, sectors {sectors}, life {seed}: {found:?}"
            );
        }
        all = all.and(found);
    }
    all
}

fn after(disk: &Disk, life: &Life, acknowledged: u64) -> Outcome {
    let mut found = Outcome::default();
    let engine = match Engine::open_in(disk.place(), "en") {
        Ok(engine) => engine,
        Err(error) => {
            let _ = writeln!(std::io::stderr(), "{error:?}");
            return Outcome { dead_ends: 1, ..found };
        }
    };
    let entries = match engine.examine_records() {
        Ok(examined) => {
            // No power cut spoils a derived row.
            found.silently_wrong += u64::from(examined.mended > 0);
            examined.entries
        }
        Err(error) => {
            let _ = writeln!(std::io::stderr(), "{error:?}");
            return Outcome { dead_ends: 1, ..found };
        }
    };
    let tap = acknowledged as usize;
    let last = life.entries.get(tap + 1).or(life.entries.last()).copied().unwrap_or(0);
    found.acknowledged_lost += life.entries[tap].saturating_sub(entries);
    found.duplicated += entries.saturating_sub(last);
    let as_after = |tap: usize| {
        life.shown.get(tap).is_some_and(|before| *before == shown(&engine, &life.times[tap]))
    };
    let as_it_was = match entries {
        entries if entries == life.entries[tap] => as_after(tap),
        entries if entries == last => as_after(tap + 1),
        _ => false,
    };
    found.silently_wrong += u64::from(!as_it_was);
    found
}
