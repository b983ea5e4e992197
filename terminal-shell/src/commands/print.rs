//! `--print`: a week or a session as a page to print.

use std::io::Write;
use std::path::Path;

use barwright_app::contract::{EngineError, RefusalCode};
use barwright_app::{Engine, PaperOf, plan_in_file};

use super::{Failure, Records, say};
use crate::{clock, files, paper};

/// Prints what is asked for from the records.
pub(crate) fn run(engine: &Engine, of: PaperOf, out: &mut impl Write) -> Result<(), Failure> {
    let found = engine.paper(of, clock::read())?;
    say(out, &paper::page(&found))
}

/// Prints a week: of the plan that is on, or of a file as it would be if it were adopted now. A file
/// can be printed without records; what its loads lack is said then.
pub(crate) fn week(
    records: &Records,
    file: Option<&Path>,
    week: Option<u32>,
    out: &mut impl Write,
) -> Result<(), Failure> {
    // A week past every plan is none that this one has.
    let week = week.map(|week| u16::try_from(week).unwrap_or(u16::MAX));
    let Some(path) = file else {
        return run(&*records.open_begun()?, PaperOf::Week(week), out);
    };
    let text = files::read(path, records.own()).map_err(Failure::here)?;
    let engine = records.open_to_look()?;
    match engine.paper(PaperOf::File { text: text.clone(), week }, clock::read()) {
        Ok(found) => say(out, &paper::page(&found)),
        Err(EngineError::Refused { code: RefusalCode::Faults, .. }) => {
            let locale = records.said_in();
            let screen = plan_in_file(text.as_bytes(), None, &locale);
            Err(super::plan::refused(&screen, path, locale.words()))
        }
        Err(error) => Err(error.into()),
    }
}
