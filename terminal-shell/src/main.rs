//! The `barwright` program: the screens in a terminal, and commands for the desk.

mod app;
mod clock;
mod commands;
mod editor;
mod files;
mod keys;
mod metronome;
mod palette;
mod paper;
mod place;
mod screens;
mod terminal;
mod words;

use std::io::{self, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use barwright_app::PaperOf;
use barwright_app::contract::{FormOf, Look};
use clap::{CommandFactory, Parser, Subcommand};

use commands::{Failure, Records};

/// A strength session on the gym floor: what goes on the bar, the call, the rest. Without a command
/// it shows the screens; on a pipe it prints today's sheet.
#[derive(Debug, Parser)]
#[command(name = "barwright", version, about, after_help = commands::pages::CODES)]
struct Line {
    #[command(flatten)]
    records: Records,
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Print today's sheet.
    #[command(
        after_help = "Examples:\n  barwright today\n  barwright today --minutes 45\n  barwright today --print > today.html"
    )]
    Today {
        /// Minutes there are: what to skip is said.
        #[arg(long, value_name = "N")]
        minutes: Option<u32>,
        /// The whole screen as JSON.
        #[arg(long)]
        json: bool,
        /// As a page of HTML to print, with boxes to write in.
        #[arg(long, conflicts_with_all = ["minutes", "json"])]
        print: bool,
    },
    /// Show one exercise over time: a chart, its records, every session.
    #[command(
        after_help = "Examples:\n  barwright lift \"back squat\"\n  barwright lift deadlift --json"
    )]
    Lift {
        /// The exercise: "back squat".
        name: String,
        /// The whole screen as JSON.
        #[arg(long)]
        json: bool,
    },
    /// List exercises: all of them, or those that all the words are of, in English or German: a
    /// name, a muscle, the movement, what it needs. A near miss is answered with the likely ones.
    #[command(
        after_help = "Examples:\n  barwright exercises\n  barwright exercises triceps dumbbell\n  barwright exercises \"front squat\" --json"
    )]
    Exercises {
        /// The words.
        words: Vec<String>,
        /// The whole screen as JSON.
        #[arg(long)]
        json: bool,
    },
    /// Show hard sets for each muscle, planned and done, and what falls behind.
    #[command(after_help = "Examples:\n  barwright balance\n  barwright balance --weeks 4")]
    Balance {
        /// Over so many weeks of the plan, the current one last; without it this week.
        #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=52))]
        weeks: Option<u32>,
        /// The whole screen as JSON.
        #[arg(long)]
        json: bool,
    },
    /// Show the plan as weeks and sessions: what was done, what was missed, what is next.
    #[command(after_help = "Examples:\n  barwright weeks\n  barwright weeks --demo")]
    Weeks {
        /// The whole screen as JSON.
        #[arg(long)]
        json: bool,
    },
    /// Look over what many lifters sent back: a line each, worst first, then one of them in full.
    /// Nothing is recorded.
    #[command(
        after_help = "Examples:\n  barwright desk returns\n  barwright desk returns --lifter anna\n  barwright desk returns --json\n  barwright desk returns --lifter anna --change \"max back-squat -5 %\" --out for-anna.toml"
    )]
    Desk(commands::desk::Asked),
    /// Say what goes on the bar for a load.
    #[command(
        after_help = "Examples:\n  barwright load 142.5kg\n  barwright load 315lb --fit under --from-floor"
    )]
    Load(commands::bar::Load),
    /// Plan what to change on the bar across a ramp, from the empty bar.
    #[command(
        after_help = "Examples:\n  barwright changes 40kg 70kg 90kg 110kg\n  barwright changes --slack 0% 95lb 185lb 225lb --json"
    )]
    Changes(commands::bar::Changes),
    /// Plan files.
    #[command(subcommand, after_help = "Example:\n  barwright plan check winter.toml")]
    Plan(Plan),
    /// Gyms, and their files.
    #[command(subcommand, after_help = "Example:\n  barwright gym check boathouse.toml")]
    Gym(commands::gym::Asked),
    /// Estimate a max from one set.
    #[command(
        after_help = "Examples:\n  barwright estimate 100kg 8\n  barwright estimate \"225 lb\" 5 --left 2 --formula brzycki"
    )]
    Estimate(commands::estimate::Asked),
    /// The file that the records are in: check it, copy it, read it back after damage.
    #[command(subcommand, after_help = "Example:\n  barwright records backup before-the-trip.db")]
    Records(commands::records::Asked),
    /// Play a plan through with invented lifters: the spread of loads, time and volume over the
    /// weeks, and where its rules stall or run away.
    #[command(
        after_help = "Examples:\n  barwright rehearse winter.toml\n  barwright rehearse winter.toml --lifters 200 --seed 7\n  barwright rehearse winter.toml --lifters 10000 --sets many"
    )]
    Rehearse(commands::rehearse::Asked),
    /// Drive the core from another program: JSON lines in, JSON lines out.
    #[command(
        after_help = "Examples:\n  barwright drive --describe\n  barwright drive --store session.db"
    )]
    Drive {
        /// Print the JSON Schema of the lines, and nothing else.
        #[arg(long)]
        describe: bool,
    },
    /// Print completions for a shell, to be read by it when it starts.
    #[command(after_help = commands::pages::HOW_TO_COMPLETE)]
    Completions {
        /// The shell.
        shell: clap_complete::Shell,
    },
    /// Print the manual page of the program, or of one of its commands.
    #[command(
        after_help = "Examples:\n  barwright man > barwright.1\n  barwright man plan check | man -l -"
    )]
    Man {
        /// The command: plan check.
        command: Vec<String>,
    },
}

#[derive(Debug, Subcommand)]
enum Plan {
    /// Say everything that is wrong with a plan file, each in its place; of one in order, what a
    /// coach would look at or change.
    ///
    /// Ends with 0 where it has no fault, 2 with faults, 1 where it can't be read, and 3 where it
    /// is held to remarks and has some.
    #[command(
        after_help = "Examples:\n  barwright plan check winter.toml\n  barwright plan check winter.toml --hold-to change --json"
    )]
    Check(commands::plan::Check),
    /// Show a plan file as a coach's sheet, or the plan that is on.
    #[command(
        after_help = "Examples:\n  barwright plan show winter.toml\n  barwright plan show winter.toml --week 3\n  barwright plan show --print > week.html"
    )]
    Show {
        /// The plan file; without it the plan that is on.
        file: Option<PathBuf>,
        /// One week with its own numbers; without it the whole plan, and on paper the week whose turn
        /// it is.
        #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..))]
        week: Option<u32>,
        /// The week as a page of HTML to print, its loads worked out from the records, with boxes to
        /// write in.
        #[arg(long)]
        print: bool,
    },
    /// Adopt a plan: what is on comes from it from now on.
    #[command(after_help = "Example:\n  barwright plan adopt winter.toml")]
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
                let _ = writeln!(io::stderr(), "{}", commands::seen(&text));
            }
            ExitCode::from(status)
        }
    }
}

fn run(line: Line) -> Result<(), Failure> {
    let Line { records, command } = line;
    let mut out = io::stdout();
    let own = records.own();
    match command {
        None => commands::start::run(records),
        Some(Command::Today { print: true, .. }) => {
            commands::print::run(&*records.open_begun()?, PaperOf::Next, &mut out)
        }
        Some(Command::Today { minutes, json, print: false }) => {
            let look = Look::Today { session: None, minutes };
            commands::screen::run(&*records.open_begun()?, look, json, own, &mut out)
        }
        Some(Command::Lift { name, json }) => {
            let look = Look::Lift { exercise: name, page: 0, all: false };
            commands::screen::run(&*records.open_begun()?, look, json, own, &mut out)
        }
        Some(Command::Exercises { words, json }) => {
            let (of, text) = (FormOf::Exercises, words.join(" "));
            let look = Look::Form { of, at: String::new(), text };
            commands::screen::run(&*records.open_to_look()?, look, json, own, &mut out)
        }
        Some(Command::Balance { weeks, json }) => {
            let look = Look::Balance { weeks };
            commands::screen::run(&*records.open_begun()?, look, json, own, &mut out)
        }
        Some(Command::Weeks { json }) => {
            commands::screen::run(&*records.open_begun()?, Look::Weeks, json, own, &mut out)
        }
        Some(Command::Plan(Plan::Check(check))) => check.run(&records.said_in(), &mut out),
        Some(Command::Plan(Plan::Show { file, week, print: true })) => {
            commands::print::week(&records, file.as_deref(), week, &mut out)
        }
        Some(Command::Plan(Plan::Show { file: Some(file), week, print: false })) => {
            commands::plan::show(&file, week, &records.said_in(), &mut out)
        }
        Some(Command::Plan(Plan::Show { file: None, week, print: false })) => {
            let look = Look::Plan { text: None, week };
            commands::screen::run(&*records.open_begun()?, look, false, own, &mut out)
        }
        Some(Command::Desk(asked)) => asked.run(&records.locale(), &mut out),
        Some(Command::Load(load)) => load.run(&records.locale(), &mut out),
        Some(Command::Changes(changes)) => changes.run(&records.locale(), &mut out),
        Some(Command::Plan(Plan::Adopt { file })) => {
            let engine = records.open()?;
            commands::plan::adopt(&engine, &file, &records.said_in(), &mut out)?;
            Ok(engine.shut_down()?)
        }
        Some(Command::Gym(asked)) => asked.run(&records, &mut out),
        Some(Command::Estimate(asked)) => {
            commands::estimate::run(&asked, &records.locale(), &mut out)
        }
        Some(Command::Records(asked)) => asked.run(&records, &mut out),
        Some(Command::Rehearse(asked)) => {
            commands::rehearse::run(&asked, &records.said_in(), &mut out)
        }
        Some(Command::Completions { shell }) => {
            commands::pages::completions(&mut Line::command(), shell, &mut out)
        }
        Some(Command::Man { command }) => {
            commands::pages::manual(Line::command(), &command, &mut out)
        }
        Some(Command::Drive { describe: true }) => Ok(commands::drive::describe(&mut out)?),
        Some(Command::Drive { describe: false }) => {
            let engine = records.open()?;
            commands::drive::run(&engine, io::stdin().lock(), &mut out)?;
            Ok(engine.shut_down()?)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every command, with the words that lead to it.
    fn commands(of: &clap::Command, path: &str) -> Vec<(String, String)> {
        let help = of.get_after_help().map(ToString::to_string).unwrap_or_default();
        let below = of.get_subcommands().filter(|one| one.get_name() != "help");
        let below = below.flat_map(|one| commands(one, &format!("{path} {}", one.get_name())));
        [(path.to_owned(), help)].into_iter().chain(below).collect()
    }

    #[test]
    fn the_definitions_are_sound() {
        Line::command().debug_assert();
    }

    #[test]
    fn every_command_shows_an_example_that_it_understands() {
        let mut line = Line::command();
        line.build();
        for (path, help) in commands(&line, "barwright") {
            let examples: Vec<&str> =
                help.lines().map(str::trim).filter(|one| one.starts_with("barwright ")).collect();
            if path == "barwright" {
                continue;
            }
            assert!(!examples.is_empty(), "{path} shows no example");
            for example in examples {
                // What a shell does with the rest is its own.
                let asked = example.split(['>', '|']).next().unwrap_or(example).trim();
                assert!(asked.starts_with(&path), "{path}: {asked}");
                let mut words = Vec::new();
                for (nth, quoted) in asked.split('"').enumerate() {
                    if nth % 2 == 1 {
                        words.push(quoted);
                    } else {
                        words.extend(quoted.split_whitespace());
                    }
                }
                if let Err(error) = Line::try_parse_from(&words) {
                    panic!("{asked}: {error}");
                }
            }
        }
    }
}
