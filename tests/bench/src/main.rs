//! What things cost: `cargo run --release -p barwright-bench [-- --json] [--only NAME]`.
//!
//! Each measure prints its value beside the bar it is held to. Ratios are medians of pairs that
//! were run in turn, so that a slow machine slows both sides.

mod clock;
mod desk;
mod durable;
mod exchange;
mod lifter;
mod looks;
mod measure;
mod open;
mod plates;
mod program;
mod ramp;
mod random;
mod records;
mod rehearsal;
mod solver;
mod tap;

use std::io::Write;
use std::process::ExitCode;

use measure::Measure;

/// Every measure, in the order they run.
const MEASURES: &[Measure] = &[
    plates::USUAL,
    plates::WORST,
    ramp::MEDIAN,
    ramp::WORST,
    solver::SOLVER,
    rehearsal::SPEED,
    desk::RETURNS_READ,
    tap::CPU,
    tap::WHOLE,
    tap::TEN_YEARS,
    open::RATIO,
    open::WARM,
    looks::TODAY,
    looks::LIFT,
    looks::LIFT_WHOLE,
    exchange::OUT,
    exchange::IN,
    durable::SET_LOGGED,
    durable::BARE,
    program::MEMORY,
    program::RESTING,
];

fn main() -> ExitCode {
    let mut json = false;
    let mut only = Vec::new();
    let mut args = std::env::args().skip(1);
    while let Some(arg) = args.next() {
        match (arg.as_str(), args.len()) {
            ("--json", _) => json = true,
            ("--only", 1..) => only.extend(args.next()),
            _ => {
                let names: Vec<_> = MEASURES.iter().map(|measure| measure.name).collect();
                eprintln!("usage: barwright-bench [--json] [--only NAME]...\n{}", names.join("\n"));
                return ExitCode::from(2);
            }
        }
    }
    if let Some(name) = only.iter().find(|name| MEASURES.iter().all(|m| m.name != **name)) {
        eprintln!("no measure is called {name:?}");
        return ExitCode::from(2);
    }
    let mut kept = true;
    let mut out = std::io::stdout().lock();
    for measure in MEASURES.iter().filter(|m| only.is_empty() || only.iter().any(|n| n == m.name)) {
        let outcome = (measure.run)();
        let line = if json { outcome.json(measure) } else { outcome.line(measure) };
        if writeln!(out, "{line}").and_then(|()| out.flush()).is_err() {
            return ExitCode::FAILURE;
        }
        kept &= outcome.is_kept(measure);
    }
    records::clean_up();
    if kept { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
