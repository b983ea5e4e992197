//! What the program is asked for on its command line.

pub(crate) mod bar;
pub(crate) mod columns;
pub(crate) mod desk;
pub(crate) mod drive;
pub(crate) mod estimate;
pub(crate) mod exchange;
pub(crate) mod gym;
pub(crate) mod pages;
pub(crate) mod plan;
pub(crate) mod print;
pub(crate) mod records;
pub(crate) mod rehearse;
pub(crate) mod screen;
pub(crate) mod sent;
pub(crate) mod start;

use std::io::{self, Write};
use std::path::PathBuf;
use std::sync::Arc;

use barwright_app::contract::EngineError;
use barwright_app::phrase::Words;
use barwright_app::{Engine, Locale, demo};
use barwright_domain::shown::plain;

use crate::words::{self, Own};
use crate::{clock, place};

/// Why a command did not do what was asked: the words for standard error, and the exit status.
#[derive(Debug)]
pub(crate) struct Failure {
    /// What is wrong.
    pub(crate) text: String,
    /// 1 for what failed here, 2 for what was asked and can't be.
    pub(crate) status: u8,
}

impl Failure {
    /// What was asked can't be.
    pub(crate) fn asked(text: impl Into<String>) -> Self {
        Self { text: text.into(), status: 2 }
    }

    /// Something failed here.
    pub(crate) fn here(text: impl Into<String>) -> Self {
        Self { text: text.into(), status: 1 }
    }
}

impl From<EngineError> for Failure {
    fn from(error: EngineError) -> Self {
        match &error {
            EngineError::Refused { .. } => Self::asked(error.to_string()),
            EngineError::Broken { report, .. } => Self::here(format!("{error}\n{report}")),
            _ => Self::here(error.to_string()),
        }
    }
}

impl From<io::Error> for Failure {
    fn from(error: io::Error) -> Self {
        // Whoever read this has read enough: nothing is wrong.
        if error.kind() == io::ErrorKind::BrokenPipe {
            return Self { text: String::new(), status: 0 };
        }
        Self::here(error.to_string())
    }
}

/// Writes a text out, line by line: nothing in it reaches the terminal but what is seen.
pub(crate) fn say(out: &mut impl Write, text: &str) -> Result<(), Failure> {
    out.write_all(seen(text).as_bytes())?;
    Ok(out.flush()?)
}

/// A text of lines as it is seen: names come from files, and could turn the terminal round.
pub(crate) fn seen(text: &str) -> String {
    text.split('\n').map(plain).collect::<Vec<_>>().join("\n")
}

/// Whose records, and how the lifter is spoken to.
#[derive(Debug, Clone, clap::Args)]
pub(crate) struct Records {
    /// The file of the records; without it BARWRIGHT_STORE, then this user's own.
    #[arg(long, global = true, value_name = "PATH")]
    pub(crate) store: Option<PathBuf>,
    /// Look at the demo: invented records in a file of their own.
    #[arg(long, global = true)]
    pub(crate) demo: bool,
    /// The language, and how numbers are written, such as en-GB or de-DE; without it as LC_ALL,
    /// LC_NUMERIC or LANG say.
    #[arg(long, global = true, value_name = "TAG")]
    pub(crate) locale: Option<String>,
}

impl Records {
    /// The file.
    pub(crate) fn path(&self) -> Result<PathBuf, Failure> {
        let found = if self.demo { place::demo } else { place::store };
        found(self.store.clone(), self.own()).map_err(Failure::here)
    }

    /// Opens the records, or makes new ones.
    pub(crate) fn open(&self) -> Result<Arc<Engine>, Failure> {
        let path = self.path()?;
        place::make_folder(&path, self.own()).map_err(Failure::here)?;
        let text = place::text(&path, self.own()).map_err(Failure::here)?;
        let locale = self.locale();
        if self.demo && !path.exists() {
            return Ok(demo::create(&path, &locale, &clock::read())?);
        }
        Ok(Engine::open(text, locale)?)
    }

    /// Opens records that are there already: looking makes none.
    pub(crate) fn open_begun(&self) -> Result<Arc<Engine>, Failure> {
        let path = self.path()?;
        if !self.demo && !path.exists() {
            return Err(Failure::asked((self.own().nothing_yet)(&path.display().to_string())));
        }
        self.open()
    }

    /// Opens records to look at what needs none: without any, at what comes with the program.
    pub(crate) fn open_to_look(&self) -> Result<Arc<Engine>, Failure> {
        if !self.demo && !self.path()?.exists() {
            return Ok(Engine::in_memory(self.locale())?);
        }
        self.open()
    }

    /// The tag of the language, and of how numbers are written.
    pub(crate) fn locale(&self) -> String {
        place::locale(self.locale.clone())
    }

    /// What that tag says.
    pub(crate) fn said_in(&self) -> Locale {
        Locale::read(&self.locale())
    }

    /// The core's words.
    pub(crate) fn words(&self) -> Words {
        self.said_in().words()
    }

    /// The terminal's own words.
    pub(crate) fn own(&self) -> Own {
        words::of(&self.said_in())
    }
}
