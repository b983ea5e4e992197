//! The `barwright` program: the screens in a terminal, and commands for the desk.

mod app;
mod clock;
mod commands;
mod editor;
mod files;
mod keys;
mod metronome;
mod palette;
mod place;
mod screens;
mod terminal;

use std::io::{self, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use barwright_app::Locale;
use barwright_app::contract::Look;
use clap::{Parser, Subcommand};

use commands::{Failure, Records};

/// A strength session on the gym floor: what goes on the bar, the call, the rest. Without a command
/// it shows the screens; on a pipe it prints today's sheet.
#[derive(Debug, Parser)]
#[command(name = "barwright", version, about)]
struct Line {
    #[command(flatten)]
    records: Records,
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Print today's sheet.
    Today {
        /// Minutes there are: what to leave out is said.
        #[arg(long, value_name = "N")]
        minutes: Option<u32>,
        /// The whole screen as JSON.
        #[arg(long)]
        json: bool,
    },
    /// Show one exercise over time: a chart, its records, every session.
    Lift {
        /// The exercise: "back squat".
        name: String,
        /// The whole screen as JSON.
        #[arg(long)]
        json: bool,
    },
    /// Show hard sets for each muscle, planned and done, and what falls behind.
    Balance {
        /// Over so many weeks of the plan, the current one last; without it this week.
        #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=52))]
        weeks: Option<u32>,
        /// The whole screen as JSON.
        #[arg(long)]
        json: bool,
    },
    /// Show the plan as weeks and sessions: what was done, what was missed, what is next.
    Weeks {
        /// The whole screen as JSON.
        #[arg(long)]
        json: bool,
    },
    /// Say what goes on the bar for a load.
    Load(commands::bar::Load),
    /// Plan what to change on the bar across a ramp, from the empty bar.
    Changes(commands::bar::Changes),
    /// Plan files.
    #[command(subcommand)]
    Plan(Plan),
    /// Estimate a max from one set.
    Estimate(commands::estimate::Asked),
    /// The file that the records are in: check it, copy it, read it back after damage.
    #[command(subcommand)]
    Records(commands::records::Asked),
    /// Play a plan through with invented lifters: the spread of loads, time and volume over the
    /// weeks, and where its rules stall or run away.
    Rehearse(commands::rehearse::Asked),
    /// Drive the core from another program: JSON lines in, JSON lines out.
    Drive {
        /// Print the JSON Schema of the lines, and nothing else.
        #[arg(long)]
        describe: bool,
    },
}

#[derive(Debug, Subcommand)]
enum Plan {
    /// Say everything that is wrong with a plan file, each in its place; of one in order, what a
    /// coach would look at or change.
    ///
    /// Ends with 0 where it has no fault, 2 with faults, 1 where it can't be read, and 3 where it
    /// is held to remarks and has some.
    Check(commands::plan::Check),
    /// Show a plan file as a coach's sheet.
    Show {
        /// The plan file.
        file: PathBuf,
        /// One week with its own numbers; without it the whole plan.
        #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..))]
        week: Option<u32>,
    },
    /// Adopt a plan: what is on comes from it from now on.
    Adopt {
        /// The plan file.
        file: PathBuf,
    },
}

fn main() -> ExitCode {
    match run(Line::parse()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(Failure { text, status }) => {
            if !text.is_empty() {
                // Nothing is left to do where not even this can be written.
                let _ = writeln!(io::stderr(), "{text}");
            }
            ExitCode::from(status)
        }
    }
}

fn run(line: Line) -> Result<(), Failure> {
    let Line { records, command } = line;
    let mut out = io::stdout();
    match command {
        None => commands::start::run(records),
        Some(Command::Today { minutes, json }) => {
            let look = Look::Today { session: None, minutes };
            commands::screen::run(&*records.open_begun()?, look, json, &mut out)
        }
        Some(Command::Lift { name, json }) => {
            let look = Look::Lift { exercise: name, page: 0, all: false };
            commands::screen::run(&*records.open_begun()?, look, json, &mut out)
        }
        Some(Command::Balance { weeks, json }) => {
            let look = Look::Balance { weeks };
            commands::screen::run(&*records.open_begun()?, look, json, &mut out)
        }
        Some(Command::Weeks { json }) => {
            commands::screen::run(&*records.open_begun()?, Look::Weeks, json, &mut out)
        }
        Some(Command::Plan(Plan::Check(check))) => {
            check.run(&Locale::read(&records.locale()), &mut out)
        }
        Some(Command::Plan(Plan::Show { file, week })) => {
            commands::plan::show(&file, week, &Locale::read(&records.locale()), &mut out)
        }
        Some(Command::Load(load)) => load.run(&records.locale(), &mut out),
        Some(Command::Changes(changes)) => changes.run(&records.locale(), &mut out),
        Some(Command::Plan(Plan::Adopt { file })) => {
            let engine = records.open()?;
            commands::plan::adopt(&engine, &file, &mut out)?;
            Ok(engine.shut_down()?)
        }
        Some(Command::Estimate(asked)) => {
            commands::estimate::run(&asked, &records.locale(), &mut out)
        }
        Some(Command::Records(asked)) => asked.run(&records, &mut out),
        Some(Command::Rehearse(asked)) => {
            commands::rehearse::run(&asked, &Locale::read(&records.locale()), &mut out)
        }
        Some(Command::Drive { describe: true }) => Ok(commands::drive::describe(&mut out)?),
        Some(Command::Drive { describe: false }) => {
            let engine = records.open()?;
            commands::drive::run(&engine, io::stdin().lock(), &mut out)?;
            Ok(engine.shut_down()?)
        }
    }
}
