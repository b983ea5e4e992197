//! Every work set of many invented lifters, in files of comma-separated values: what a general
//! library reads (`docs/many-lifters.md`).

use std::fs::File;
use std::io::BufWriter;
use std::path::Path;
use std::sync::atomic::{AtomicU64, Ordering};

use barwright_domain::call::Amount;
use barwright_domain::catalogue::Catalogue;
use barwright_domain::equipment::Equipment;
use barwright_domain::plan::{Plan, RuleKind};
use barwright_domain::progress::estimate::{Estimate, Formula, Nearness};
use barwright_domain::quantity::Mass;
use barwright_domain::session::{Ending, SetKind};
use barwright_domain::volume::is_hard;
use barwright_rehearsal::{Cast, Done, each_set};
use csv::Writer;
use serde::Serialize;

use crate::commands::Failure;

/// Files that the sets of all lifters are spread over, by the lifter.
const PARTS: u32 = 16;
/// Days from 0001-01-01 to 1970-01-01.
const TO_1970: i32 = 719_163;

/// A work set. Masses are decimal kilograms, exact.
#[derive(Debug, Serialize)]
struct Row<'a> {
    /// Who: the seed, and the number within it.
    lifter: &'a str,
    /// The part that the lifter belongs to.
    part: u32,
    plan: &'a str,
    week: usize,
    session: usize,
    /// Local date, ISO 8601.
    day: String,
    exercise: &'a str,
    rule: Option<RuleKind>,
    kind: SetKind,
    row: u16,
    round: u16,
    side: &'a str,
    load_kg: Option<String>,
    moved_kg: Option<String>,
    /// Repetitions, over all parts; empty for what is held or carried.
    reps: Option<u16>,
    /// Repetitions that the lifter called to be left.
    left: Option<f64>,
    ending: Ending,
    /// It came to less than asked, and was not cut short.
    missed: bool,
    hard: bool,
    /// One-rep max by Epley, where the set lies in the formula's range.
    estimate_kg: Option<String>,
}

/// How much of a hard set a muscle gets from an exercise.
#[derive(Debug, Serialize)]
struct Share<'a> {
    exercise: &'a str,
    muscle: &'a str,
    /// A direct one whole, an indirect one half.
    sets: f64,
}

/// Writes the sets into a new folder and answers how many there are.
pub(super) fn write(
    folder: &Path,
    plan: &Plan,
    gym: &Equipment,
    cast: Cast,
    one_more: &(dyn Fn() + Sync),
) -> Result<u64, Failure> {
    // A folder that is there may hold another run's files: nothing is mixed or written over.
    std::fs::create_dir(folder)
        .map_err(|why| Failure::here(format!("{} can't be made: {why}.", folder.display())))?;
    let catalogue = Catalogue::builtin().with_own(plan.exercises.iter().cloned());
    muscles(folder, &catalogue)?;
    let rows = AtomicU64::new(0);
    let open = |part| Ok((part, writer(folder, &format!("sets-{part:02}.csv"))?));
    each_set(plan, gym, cast, PARTS, open, |(part, to), number, sets| {
        rows.fetch_add(sets.len() as u64, Ordering::Relaxed);
        let lifter = format!("{}-{number:05}", cast.seed);
        for done in &sets {
            let speed = catalogue
                .get(&done.set.exercise)
                .is_some_and(|exercise| exercise.movement.is_speed_work());
            to.serialize(row(done, plan, &lifter, *part, speed)).map_err(failed)?;
        }
        one_more();
        to.flush().map_err(failed)
    })?;
    Ok(rows.into_inner())
}

fn failed(why: impl std::fmt::Display) -> Failure {
    Failure::here(format!("A file of sets can't be written: {why}."))
}

fn writer(folder: &Path, name: &str) -> Result<Writer<BufWriter<File>>, Failure> {
    Ok(Writer::from_writer(BufWriter::new(File::create_new(folder.join(name)).map_err(failed)?)))
}

fn muscles(folder: &Path, catalogue: &Catalogue) -> Result<(), Failure> {
    let mut to = writer(folder, "muscles.csv")?;
    for exercise in catalogue.iter() {
        let direct = exercise.direct.iter().map(|muscle| (muscle, 1.0));
        for (muscle, sets) in direct.chain(exercise.indirect.iter().map(|muscle| (muscle, 0.5))) {
            let share = Share { exercise: &exercise.slug, muscle: muscle.slug(), sets };
            to.serialize(share).map_err(failed)?;
        }
    }
    to.flush().map_err(failed)
}

fn row<'a>(done: &'a Done, plan: &'a Plan, lifter: &'a str, part: u32, speed: bool) -> Row<'a> {
    let set = &done.set;
    let reps = match set.amount() {
        Amount::Reps(reps) => Some(reps),
        Amount::Seconds(_) | Amount::Metres(_) => None,
    };
    let exact = |mass: Mass| mass.kilograms();
    let hard = !speed
        && set.kind != SetKind::Speed
        && set.made()
        && is_hard(set.closeness(), plan.hard_at_left);
    Row {
        lifter,
        part,
        plan: &plan.name,
        week: done.place.0 + 1,
        session: done.place.1 + 1,
        day: date(set.day),
        exercise: &set.exercise,
        rule: done.rule,
        kind: set.kind,
        row: set.row,
        round: set.round,
        side: match set.side {
            None => "",
            Some(barwright_domain::call::Side::Left) => "left",
            Some(barwright_domain::call::Side::Right) => "right",
        },
        load_kg: set.figure.map(exact),
        moved_kg: set.moved.map(exact),
        reps,
        left: set.left.map(|left| f64::from(left.halves()) / 2.0),
        ending: set.ending,
        missed: set.ending.is_evidence() && !set.asked.reached_by(&set.amount()),
        hard,
        estimate_kg: estimate(done).map(|estimate| exact(estimate.max)),
    }
}

/// Of a set of one part, by what was called or by its failure.
fn estimate(done: &Done) -> Option<Estimate> {
    let set = &done.set;
    let [part] = set.parts.as_slice() else { return None };
    let nearness = match (set.left, set.ending) {
        (_, Ending::Failed) => Nearness::Failed,
        (Some(left), _) => Nearness::Called(left),
        (None, _) => return None,
    };
    Estimate::of(set.moved?, part.amount.reps()?, nearness, Formula::Epley).ok()
}

fn date(day: i32) -> String {
    chrono::NaiveDate::from_num_days_from_ce_opt(day.saturating_add(TO_1970))
        .map(|date| date.to_string())
        .unwrap_or_default()
}
