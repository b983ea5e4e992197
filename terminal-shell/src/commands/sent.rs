//! `barwright records changes`: what a coach changed, shown, and taken up.

use std::io::Write;
use std::path::PathBuf;

use barwright_app::Engine;
use barwright_app::contract::{Edit, FormOf, Intent, Look, Screen};

use super::{Failure, Records, say};
use crate::{clock, files, screens};

/// A file of changes, and what is taken of it.
#[derive(Debug, clap::Args)]
pub(crate) struct Changes {
    /// The file, as `desk --out` writes it.
    file: PathBuf,
    /// Take all that still fit what they were decided on.
    #[arg(long)]
    yes: bool,
    /// Take the one of this id, even where you went on since. May be said several times.
    #[arg(long, value_name = "ID")]
    take: Vec<String>,
}

impl Changes {
    /// Carries it out.
    pub(crate) fn run(&self, records: &Records, out: &mut impl Write) -> Result<(), Failure> {
        let own = records.own();
        let text = files::read(&self.file, own).map_err(Failure::here)?;
        let engine = records.open_begun()?;
        let mut screen = shown(&engine, &text)?;
        if let Screen::Form { form } = &screen
            && form.rows.is_empty()
        {
            let faults = form.notes.join("\n");
            return Err(Failure::asked(format!("{faults}\n{}", form.subtitle)));
        }
        let all = self.yes.then(String::new);
        let mut taken = false;
        for place in all.iter().chain(&self.take) {
            let edit = Edit::Put { text: text.clone() };
            let (of, place) = (FormOf::Changes, place.clone());
            let intent = Intent::Edit { of, place, edit, step: None };
            screen = engine.dispatch(intent, clock::read())?.screen;
            taken = true;
        }
        engine.shut_down()?;
        say(out, &screens::text(&screen, own))?;
        if taken { Ok(()) } else { say(out, &format!("{}\n", own.none_taken)) }
    }
}

/// A file of changes beside what stands in some records.
pub(super) fn shown(engine: &Engine, text: &str) -> Result<Screen, Failure> {
    let look = Look::Form { of: FormOf::Changes, at: String::new(), text: text.to_owned() };
    Ok(engine.view(look, clock::read())?.screen)
}
