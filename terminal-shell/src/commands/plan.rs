//! `barwright plan`: a plan file checked, shown, adopted.

use std::io::Write;
use std::path::Path;

use barwright_app::contract::{EngineError, Intent, Look, PlanScreen, RefusalCode, Screen};
use barwright_app::phrase::en::faults;
use barwright_app::{Engine, Locale, plan_in_file};

use super::{Failure, Records, say};
use crate::{clock, files, screens};

/// Says that a plan is in order, or everything that is wrong with it.
pub(crate) fn check(path: &Path, locale: &Locale, out: &mut impl Write) -> Result<(), Failure> {
    let plan = in_order(path, None, locale)?;
    say(out, &format!("{}: {}, no fault\n", plan.title, plan.subtitle))
}

/// Prints a plan as a sheet: the whole of it, or one week.
pub(crate) fn show(
    path: &Path,
    week: Option<u32>,
    locale: &Locale,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let plan = in_order(path, week, locale)?;
    say(out, &screens::text(&Screen::Plan { plan }))
}

/// The plan of a file; where it has faults, they are the refusal.
fn in_order(path: &Path, week: Option<u32>, locale: &Locale) -> Result<PlanScreen, Failure> {
    let text = files::read(path).map_err(Failure::here)?;
    let plan = plan_in_file(text.as_bytes(), week, locale);
    if plan.faults.is_empty() {
        return Ok(plan);
    }
    Err(refused(&plan, path))
}

/// A plan that has faults, as the refusal that names them in their places.
pub(super) fn refused(plan: &PlanScreen, path: &Path) -> Failure {
    let name = path.display().to_string();
    let faults: Vec<_> = plan.faults.iter().map(|fault| faults::lines(fault, &name)).collect();
    Failure::asked(format!("{}\n{}", faults.join("\n"), plan.title))
}

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
