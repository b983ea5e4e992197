//! `barwright plan`: a plan file checked, shown, adopted.

use std::io::Write;
use std::path::{Path, PathBuf};

use barwright_app::contract::{
    EngineError, FileFault, Intent, Look, PlanScreen, RefusalCode, Screen,
};
use barwright_app::phrase::Words;
use barwright_app::{Engine, Locale, plan_checked, plan_in_file};
use barwright_domain::coach::Level;
use barwright_domain::equipment::builtin_in;
use clap::ValueEnum;
use serde_json::json;

use super::{Failure, Records, say};
use crate::{clock, files, screens, words};

/// The exit status where a plan has remarks that it is held to.
const HELD_TO: u8 = 3;

/// What a plan file is checked for.
#[derive(Debug, clap::Args)]
pub(crate) struct Check {
    /// The plan file.
    file: PathBuf,
    /// The equipment file of the gym it is for; without it a gym that comes with the program.
    #[arg(long, value_name = "FILE")]
    equipment: Option<PathBuf>,
    /// End with 3 where a coach would change something in it, or so much as look at it. Without it
    /// remarks alone are no failure.
    #[arg(long, value_enum, value_name = "LEVEL")]
    hold_to: Option<HoldTo>,
    /// As JSON.
    #[arg(long)]
    json: bool,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum HoldTo {
    /// What hardly any plan means so.
    Change,
    /// That, and what is worth a look.
    LookAt,
}

impl Check {
    /// Says everything that is wrong with a plan, or that it is in order and what a coach would say
    /// of it.
    pub(crate) fn run(&self, locale: &Locale, out: &mut impl Write) -> Result<(), Failure> {
        let own = words::of(locale);
        let text = files::read(&self.file, own).map_err(Failure::here)?;
        let gym = match &self.equipment {
            Some(path) => super::bar::gym_in(path, locale)?,
            None => builtin_in(locale.unit),
        };
        let (plan, worst) = plan_checked(text.as_bytes(), None, locale, &gym);
        let (remarks, faults): (Vec<&FileFault>, Vec<&FileFault>) =
            plan.faults.iter().partition(|fault| fault.advises);
        let accepted: Vec<&str> = plan
            .rows
            .iter()
            .filter(|row| row.id.starts_with("accepted."))
            .map(|row| row.text.as_str())
            .collect();
        let name = self.file.display().to_string();
        if self.json {
            let found = json!({
                "file": name,
                "title": plan.title,
                "subtitle": plan.subtitle,
                "faults": faults,
                "remarks": remarks,
                "accepted": accepted,
            });
            say(out, &format!("{found:#}\n"))?;
        } else if faults.is_empty() {
            let faults = locale.words().faults();
            let mut told: String = remarks.iter().map(|one| faults.lines(one, &name)).collect();
            if !accepted.is_empty() {
                told.push_str(own.accepted);
                told.push('\n');
            }
            told.extend(accepted.iter().map(|text| format!("  {text}\n")));
            let said = (own.plan_no_fault)(&plan.title, &plan.subtitle);
            say(out, &format!("{told}{said}\n"))?;
        }
        if !faults.is_empty() {
            return Err(refused(&plan, &self.file, locale.words()));
        }
        let least = match self.hold_to {
            None => return Ok(()),
            Some(HoldTo::Change) => Level::Change,
            Some(HoldTo::LookAt) => Level::LookAt,
        };
        match worst.filter(|worst| *worst >= least) {
            Some(_) => Err(Failure { text: String::new(), status: HELD_TO }),
            None => Ok(()),
        }
    }
}

/// Prints a plan as a sheet: the whole of it, or one week.
pub(crate) fn show(
    path: &Path,
    week: Option<u32>,
    locale: &Locale,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let plan = in_order(path, week, locale)?;
    say(out, &screens::text(&Screen::Plan { plan }, words::of(locale)))
}

/// The plan of a file; where it has faults, they are the refusal.
fn in_order(path: &Path, week: Option<u32>, locale: &Locale) -> Result<PlanScreen, Failure> {
    let text = files::read(path, words::of(locale)).map_err(Failure::here)?;
    let mut plan = plan_in_file(text.as_bytes(), week, locale);
    if plan.faults.iter().any(|fault| !fault.advises) {
        return Err(refused(&plan, path, locale.words()));
    }
    // A sheet says what is asked; what is to be said of it is the check's.
    plan.faults.clear();
    Ok(plan)
}

/// A plan that has faults, as the refusal that names them in their places.
pub(super) fn refused(plan: &PlanScreen, path: &Path, words: Words) -> Failure {
    let name = path.display().to_string();
    let faults: Vec<_> =
        plan.faults.iter().map(|fault| words.faults().lines(fault, &name)).collect();
    Failure::asked(format!("{}\n{}", faults.join("\n"), plan.title))
}

/// Adopts a plan, or prints what is wrong with it.
pub(crate) fn adopt(
    engine: &Engine,
    path: &Path,
    locale: &Locale,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let own = words::of(locale);
    let text = files::read(path, own).map_err(Failure::here)?;
    let plan = |text: Option<String>| {
        engine.view(Look::Plan { text, week: None }, clock::read()).map(|answer| answer.screen)
    };
    // What it does to the plan that is on is worked out before it is adopted.
    let mends = match plan(Some(text.clone()))? {
        Screen::Plan { plan } => plan.rows.into_iter().take_while(|row| row.id != "accepted"),
        Screen::Form { form } => {
            let (title, file) = (form.title, path.display());
            let how = format!("{title}: barwright records changes {file}");
            return Err(Failure::asked(how));
        }
        _ => return Err(Failure::here("a plan is shown as a plan")),
    };
    let mends =
        mends.filter(|row| ["mends", "anew", "asks"].iter().any(|id| row.id.starts_with(id)));
    let mends: Vec<String> = mends.map(|row| format!("{}\n", row.text)).collect();
    match engine.dispatch(Intent::adopt(text.clone()), clock::read()) {
        Ok(_) => {
            say(out, &mends.concat())?;
            if let Screen::Plan { plan } = plan(None)? {
                say(out, &format!("{}\n", (own.adopted)(&plan.title, &plan.subtitle)))?;
            }
            Ok(())
        }
        Err(error @ EngineError::Refused { code: RefusalCode::Faults, .. }) => {
            match plan(Some(text))? {
                Screen::Plan { plan } => Err(refused(&plan, path, locale.words())),
                _ => Err(error.into()),
            }
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
    let locale = records.said_in();
    let tried = Engine::in_memory(records.locale())?;
    adopt(&tried, path, &locale, out)?;
    let engine = records.open()?;
    adopt(&engine, path, &locale, &mut std::io::sink())?;
    Ok(engine.shut_down()?)
}
