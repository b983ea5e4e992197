//! `barwright load` and `barwright changes`: what goes on the bar.

use std::io::Write;
use std::path::{Path, PathBuf};

use barwright_app::Locale;
use barwright_app::phrase::Words;
use barwright_domain::equipment::changes::{self, Ramp, Wanted};
use barwright_domain::equipment::{Ask, BARBELL, Equipment, Fit, Plate, builtin_in};
use barwright_domain::quantity::{Mass, MassUnit, Percent, Unreadable};
use clap::{Args, ValueEnum};
use serde_json::{Value, json};

use super::{Failure, say};
use crate::{files, words};

/// What both commands take.
#[derive(Debug, Args)]
struct Gym {
    /// The equipment file; without it a gym that comes with the program, in the unit asked in.
    #[arg(long, value_name = "FILE")]
    equipment: Option<PathBuf>,
    /// What is loaded: barbell, trap-bar, dumbbell, cable, leg-press.
    #[arg(long, value_name = "KIND", default_value = BARBELL)]
    implement: String,
    /// Only with a full-size plate on, for a bar that is lifted from the floor.
    #[arg(long)]
    from_floor: bool,
    /// As JSON, masses in exact kilograms.
    #[arg(long)]
    json: bool,
}

/// One load.
#[derive(Debug, Args)]
pub(crate) struct Load {
    /// The load with its unit: 142.5kg, 315lb.
    #[arg(value_name = "LOAD", allow_hyphen_values = true)]
    load: String,
    /// Which load to make when this one can't be.
    #[arg(long, value_enum, default_value_t = FitArg::Nearest)]
    fit: FitArg,
    #[command(flatten)]
    gym: Gym,
}

/// A ramp.
#[derive(Debug, Args)]
pub(crate) struct Changes {
    /// The loads in order, each with its unit; the last is the work load.
    #[arg(value_name = "LOAD", required = true)]
    loads: Vec<String>,
    /// How far an earlier load may lie from what is asked, as a share of the last: 2.5%.
    #[arg(long, value_name = "PERCENT", default_value = "2.5%")]
    slack: String,
    /// How many loads at the end are work loads, which stay as they are.
    #[arg(long, value_name = "N", default_value_t = 1)]
    work: usize,
    #[command(flatten)]
    gym: Gym,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum FitArg {
    /// The smaller miss, and of two as small the lighter load.
    Nearest,
    /// The heaviest that is not heavier.
    Under,
    /// The lightest that is not lighter.
    Over,
}

impl From<FitArg> for Fit {
    fn from(fit: FitArg) -> Self {
        match fit {
            FitArg::Nearest => Self::Nearest,
            FitArg::Under => Self::Under,
            FitArg::Over => Self::Over,
        }
    }
}

impl Load {
    /// Says what goes on.
    pub(crate) fn run(&self, locale: &str, out: &mut impl Write) -> Result<(), Failure> {
        let locale = Locale::read(locale);
        let words = locale.words();
        let numerals = words.numerals;
        let (load, unit) = mass(&self.load, words)?;
        let gym = self.gym.read(unit, &locale)?;
        let ask = Ask { full_size: self.gym.from_floor, ..Ask::new(load, self.fit.into()) };
        let made = gym
            .make_as(&self.gym.implement, ask)
            .map_err(|why| Failure::asked(words.equipment().cannot_make(&why, unit, numerals)))?;
        if self.gym.json {
            return print(
                out,
                &json!({
                    "target_kg": made.asked.kilograms(),
                    "made_kg": made.made.kilograms(),
                    "off_by_kg": made.off_by().kilograms(),
                    "side": labels(made.rig.side()),
                    "rig": made.rig,
                }),
            );
        }
        say(out, &words.equipment().made(&made, unit, numerals))
    }
}

impl Changes {
    /// Says what to change before each set.
    pub(crate) fn run(&self, locale: &str, out: &mut impl Write) -> Result<(), Failure> {
        let locale = Locale::read(locale);
        let words = locale.words();
        let numerals = words.numerals;
        let loads: Vec<(Mass, MassUnit)> =
            self.loads.iter().map(|load| mass(load, words)).collect::<Result<_, _>>()?;
        let slack =
            Percent::read(&self.slack, numerals).map_err(|error| unreadable(&error, words))?;
        let (last, unit) = loads.last().copied().unwrap_or_default();
        let slack = slack
            .of(last)
            .filter(|slack| *slack >= Mass::ZERO)
            .ok_or_else(|| Failure::asked(words.equipment().slack_below_nothing()))?;
        let first_work = loads.len().saturating_sub(self.work.max(1));
        let sets: Vec<Wanted> = (loads.iter().enumerate())
            .map(|(at, (load, _))| Wanted { load: *load, firm: at >= first_work })
            .collect();
        let gym = self.gym.read(unit, &locale)?;
        let ramp = Ramp {
            on_now: None,
            sets: &sets,
            slack,
            full_size: self.gym.from_floor,
            one_side: false,
        };
        let plan = changes::plan(&gym, &self.gym.implement, &ramp)
            .map_err(|why| Failure::asked(words.equipment().cannot_make(&why, unit, numerals)))?;
        if !self.gym.json {
            return say(out, &words.equipment().changes(&plan, unit, numerals));
        }
        let steps = plan.steps.iter().map(|step| {
            json!({
                "asked_kg": step.made.asked.kilograms(),
                "made_kg": step.made.made.kilograms(),
                "off_by_kg": step.made.off_by().kilograms(),
                "off": labels(&step.off),
                "on": labels(&step.on),
                "side": labels(step.made.rig.side()),
                "moves": step.moves(),
            })
        });
        let steps: Vec<Value> = steps.collect();
        print(
            out,
            &json!({
                "slack_kg": slack.kilograms(),
                "steps": steps,
                "moves": plan.moves,
                "fewest": plan.fewest,
            }),
        )
    }
}

impl Gym {
    /// Reads the file, or takes the built-in gym of a unit.
    fn read(&self, unit: MassUnit, locale: &Locale) -> Result<Equipment, Failure> {
        let Some(path) = &self.equipment else { return Ok(builtin_in(unit)) };
        gym_in(path, locale)
    }
}

/// The gym of an equipment file, or everything that is wrong with it.
pub(super) fn gym_in(path: &Path, locale: &Locale) -> Result<Equipment, Failure> {
    let text = files::read(path, words::of(locale)).map_err(Failure::here)?;
    let words = locale.words();
    let name = path.display().to_string();
    Equipment::read(&text).map_err(|faults| {
        let shown: Vec<String> = faults
            .iter()
            .map(|fault| words.faults().lines(&words.faults().in_place(fault, &text), &name))
            .collect();
        Failure::asked(shown.join("\n").trim_end())
    })
}

fn mass(text: &str, words: Words) -> Result<(Mass, MassUnit), Failure> {
    Mass::read_as_written(text, words.numerals).map_err(|error| unreadable(&error, words))
}

fn unreadable(error: &Unreadable, words: Words) -> Failure {
    Failure::asked(words.quantity().underlined(error))
}

fn labels(plates: &[Plate]) -> Vec<&str> {
    plates.iter().map(|plate| plate.label.as_str()).collect()
}

fn print(out: &mut impl Write, value: &Value) -> Result<(), Failure> {
    say(out, &format!("{value:#}\n"))
}
