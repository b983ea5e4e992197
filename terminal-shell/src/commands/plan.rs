//! `barwright plan`: a plan file adopted.

use std::io::Write;
use std::path::Path;

use barwright_app::Engine;
use barwright_app::contract::{EngineError, Intent, Look, RefusalCode, Screen};

use super::{Failure, Records, say};
use crate::{clock, files, screens};

/// Adopts a plan, or prints what is wrong with it.
pub(crate) fn adopt(engine: &Engine, path: &Path, out: &mut impl Write) -> Result<(), Failure> {
    let text = files::read(path).map_err(Failure::here)?;
    let plan = |text: Option<String>| engine.view(Look::Plan { text, week: None }, clock::read());
    match engine.dispatch(Intent::AdoptPlan { text: text.clone() }, clock::read()) {
        Ok(_) => {
            if let Screen::Plan { plan } = plan(None)? {
                say(out, &format!("Adopted: {}\n{}\n", plan.title, plan.subtitle))?;
            }
            Ok(())
        }
        Err(error @ EngineError::Refused { code: RefusalCode::Faults, .. }) => {
            say(out, &screens::text(&plan(Some(text))?))?;
            Err(error.into())
        }
        Err(error) => Err(error.into()),
    }
}

/// Adopts the first plan: the records are made only where it has no fault.
pub(crate) fn read_first(
    path: &Path,
    records: &Records,
    out: &mut impl Write,
) -> Result<(), Failure> {
    // Tried in memory first, where nothing is left behind.
    let tried = Engine::in_memory(String::new())?;
    adopt(&tried, path, out)?;
    let engine = records.open()?;
    adopt(&engine, path, &mut std::io::sink())?;
    Ok(engine.shut_down()?)
}
