//! `barwright gym`: gyms as files.

use std::io::Write;
use std::path::{Path, PathBuf};

use barwright_app::contract::{EquipmentScreen, Intent, Look, Screen};
use barwright_app::{Engine, Locale};

use super::bar::gym_in;
use super::{Failure, Records, say};
use crate::words::{self, Own};
use crate::{clock, files};

/// What is asked of gyms.
#[derive(Debug, clap::Subcommand)]
pub(crate) enum Asked {
    /// Print the gym that is trained in, as a file.
    #[command(after_help = "Example:\n  barwright gym show")]
    Show,
    /// Save the gym that is trained in as a new file, with its comments where it came with them.
    #[command(after_help = "Example:\n  barwright gym save boathouse.toml")]
    Save {
        /// The file; one that is there already is left as it is.
        file: PathBuf,
    },
    /// Say everything that is wrong with a gym file, each in its place.
    #[command(after_help = "Example:\n  barwright gym check boathouse.toml")]
    Check {
        /// The gym file.
        file: PathBuf,
    },
    /// Add a gym from a file, or put the one of its name right, and train there from now on.
    #[command(after_help = "Example:\n  barwright gym add boathouse.toml")]
    Add {
        /// The gym file.
        file: PathBuf,
    },
    /// Train in another gym from now on; without a name, say which there are.
    #[command(after_help = "Examples:\n  barwright gym use\n  barwright gym use Boathouse")]
    Use {
        /// Its name.
        name: Option<String>,
    },
}

impl Asked {
    /// Does it.
    pub(crate) fn run(&self, records: &Records, out: &mut impl Write) -> Result<(), Failure> {
        let locale = records.said_in();
        let own = records.own();
        match self {
            Self::Show => say(out, &file(&equipment(&*records.open_to_look()?)?)),
            Self::Save { file: path } => {
                let text = file(&equipment(&*records.open_to_look()?)?);
                say(out, &format!("{}\n", files::save(path, &text, own).map_err(Failure::here)?))
            }
            Self::Check { file } => {
                let gym = gym_in(file, &locale)?;
                say(out, &format!("{}\n", (own.no_fault)(&gym.name)))
            }
            Self::Add { file } => add(&*records.open()?, file, &locale, out),
            Self::Use { name: None } => {
                let equipment = equipment(&*records.open_to_look()?)?;
                let lines = equipment.gyms.iter().map(|key| match key.chosen {
                    true => format!("{} ({})\n", key.label, own.trained_in),
                    false => format!("{}\n", key.label),
                });
                say(out, &lines.collect::<String>())
            }
            Self::Use { name: Some(name) } => choose(&*records.open()?, name, own, out),
        }
    }
}

fn equipment(engine: &Engine) -> Result<EquipmentScreen, Failure> {
    match engine.view(Look::Equipment, clock::read())?.screen {
        Screen::Equipment { equipment } => Ok(equipment),
        _ => Err(Failure::here("What the gym has could not be shown.")),
    }
}

fn file(equipment: &EquipmentScreen) -> String {
    equipment.file.as_ref().map(|file| file.text.clone()).unwrap_or_default()
}

fn add(engine: &Engine, path: &Path, locale: &Locale, out: &mut impl Write) -> Result<(), Failure> {
    let own = words::of(locale);
    let gym = gym_in(path, locale)?;
    let text = files::read(path, own).map_err(Failure::here)?;
    engine.dispatch(Intent::AddGym { text }, clock::read())?;
    choose(engine, &gym.name, own, out)
}

fn choose(engine: &Engine, name: &str, own: Own, out: &mut impl Write) -> Result<(), Failure> {
    let known = equipment(engine)?.gyms;
    // A gym that comes with the program is called otherwise in each language; its file's name, which
    // the key is named after, does as well.
    let id = format!("gym-{name}");
    let Some(key) = known.iter().find(|key| key.label == name || key.id == id) else {
        let names: Vec<&str> = known.iter().map(|key| key.label.as_str()).collect();
        return Err(Failure::asked((own.no_gym)(name, &names.join(", "))));
    };
    engine.act(key.action.clone(), clock::read())?;
    engine.shut_down()?;
    say(out, &format!("{}\n", (own.trains_in)(&key.label)))
}
