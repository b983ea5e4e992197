//! A plan played through by invented lifters, to show a coach the spread of loads, time and volume
//! over the weeks, and where the rules stall or run away, before anybody lifts it.
//!
//! The rules are the real ones: every session is laid out by the domain's own sheet, played tap by
//! tap through its session, and its rows are the history that the next sheet is laid out from. What
//! is invented is the lifter. This crate is for the desk: no device's library has it in it.
//!
//! # The model
//!
//! It is as simple as shows what a rule does, and no proof of anything. Its numbers stand in one
//! place, the module `model`, each with its source or the word *assumed*.
//!
//! - **Strength.** A lifter has a max in each exercise. Where the plan takes shares of the lift's own
//!   max, or a load is found by feel, the max follows body mass (a table by movement, assumed) and
//!   the lifter (one spread for all lifts, one for each; assumed). Where the plan writes kilograms,
//!   or shares of another lift, they are right for the lifter within some 4 % (assumed). Entered
//!   maxes are 3 % off the true ones (assumed).
//! - **Repetitions.** To failure a lifter makes one at the max and, on free weights, 8.8 at 80 %
//!   (Nuzzo et al. 2024, published at second hand), on a straight line against max ÷ load; the
//!   spread between people is that source's 2.51 at 80 %. Machines have their own slope.
//! - **Calls.** What is felt to be left is off by about one repetition at up to five left, and by
//!   more than two from seven on (Hackett et al. 2017, published); a part of it is the lifter's own
//!   habit (assumed). Lifters call when the plan asks for effort, and never otherwise.
//! - **How far a set goes.** A fixed number is done or failed. In a range a lifter goes on as long
//!   as they feel the fewest asked are left (one, where nothing is asked), to its top. The last set
//!   under "two for two" goes past its goal while one is left.
//! - **Days.** Fitness and fatigue of each muscle grow with its sets and decay by exponentials of 42
//!   and 7 days, a set's fatigue twice its fitness (Banister et al. 1975, from memory). How much a
//!   set gives is assumed, and so is that twice the sets give not twice as much. A lifter trained 40 %
//!   of the plan's volume before it (assumed). Days differ by 2 % (assumed).
//! - **Within a session** a set to failure takes 5 % off its muscles, which a rest gives back with
//!   240 s to 37 % (assumed). Pauses in a set give back a part of the repetitions spent (assumed).
//! - **What goes wrong.** 6 % of sessions are missed, and in 1.5 % of the weeks a lifter goes away
//!   for one or two (assumed). What the gym lacks is swapped as the plan says. Nobody is hurt, nobody cheats,
//!   tempo costs time but no repetitions, and body mass stays: none of it is in the model.
//! - **Time.** Rests are kept as the session gives them; a repetition takes what the plan says.
//!   Warm-up sets are counted in the time and not played.
//!
//! Chance is the same for a seed whatever the number of cores: each lifter has a stream of their own.
#![deny(clippy::unwrap_used, clippy::indexing_slicing, clippy::string_slice, clippy::panic)]

mod body;
mod calendar;
mod capacity;
mod chance;
mod effort;
mod finding;
mod gather;
mod model;
mod person;
mod played;
mod report;

use barwright_domain::catalogue::{Catalogue, Muscle};
use barwright_domain::equipment::Equipment;
use barwright_domain::plan::Plan;
use rayon::iter::{IntoParallelIterator, ParallelIterator};

use capacity::Lifts;
use gather::Followed;
pub use played::{Done, Tap, TapByTap};
use played::{Keep, Played, Stage};
pub use report::{
    Cause, Finding, Kilograms, Line, LineWeek, Report, Session, SessionWeek, Spread, Volume,
    VolumeWeek,
};

/// The most lifters of one rehearsal: what they did is held in memory, some 25 kB a lifter in twelve
/// full weeks.
pub const MOST_LIFTERS: u32 = 20_000;

/// Who rehearses.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cast {
    /// How many lifters, at least one and at most [`MOST_LIFTERS`].
    pub lifters: u32,
    /// What their chance is drawn from.
    pub seed: u64,
}

/// Plays a plan through in a gym, on as many threads as the pool has; `one_more` is told of each
/// lifter who is done.
pub fn rehearse(plan: &Plan, gym: &Equipment, cast: Cast, one_more: &(dyn Fn() + Sync)) -> Report {
    let catalogue = Catalogue::builtin().with_own(plan.exercises.iter().cloned());
    let stage = stage(plan, &catalogue, gym);
    let lifters = cast.lifters.clamp(1, MOST_LIFTERS);
    let all: Vec<Played> = (0..lifters)
        .into_par_iter()
        .map(|number| {
            let played = played::play(&stage, cast.seed, number);
            one_more();
            played
        })
        .collect();
    report(&stage, &all, Cast { lifters, ..cast })
}

/// One lifter of a rehearsal tap by tap: what a device that is tapped so has to come to as well.
pub fn tap_by_tap(plan: &Plan, gym: &Equipment, seed: u64, number: u32) -> TapByTap {
    let catalogue = Catalogue::builtin().with_own(plan.exercises.iter().cloned());
    let played = played::playing(&stage(plan, &catalogue, gym), seed, number, Keep::Taps);
    played.tap_by_tap.unwrap_or_default()
}

/// Plays the lifters of a rehearsal in `shards` runs, on as many threads as the pool has, and hands
/// each lifter's work sets to the run's own `write`, with the lifter's number: nothing is held of a
/// lifter who is done. A lifter is in the run that the number leaves over, so that the same seed
/// gives the same runs whatever the number of cores.
///
/// # Errors
/// The first that `write` answers.
pub fn each_set<W, E: Send>(
    plan: &Plan,
    gym: &Equipment,
    cast: Cast,
    shards: u32,
    open: impl Fn(u32) -> Result<W, E> + Sync,
    write: impl Fn(&mut W, u32, Vec<Done>) -> Result<(), E> + Sync,
) -> Result<(), E> {
    let catalogue = Catalogue::builtin().with_own(plan.exercises.iter().cloned());
    let stage = stage(plan, &catalogue, gym);
    let lifters = cast.lifters.clamp(1, MOST_LIFTERS);
    let shards = shards.clamp(1, lifters);
    (0..shards).into_par_iter().try_for_each(|shard| {
        let mut to = open(shard)?;
        for number in (shard..lifters).step_by(shards as usize) {
            let played = played::playing(&stage, cast.seed, number, Keep::Sets);
            write(&mut to, number, played.sets.unwrap_or_default())?;
        }
        Ok(())
    })
}

fn stage<'a>(plan: &'a Plan, catalogue: &'a Catalogue, gym: &'a Equipment) -> Stage<'a> {
    let (dates, sessions) = calendar::dates(plan)
        .into_iter()
        .filter_map(|date| Some((date, plan.session(date.week, date.index)?)))
        .unzip();
    let lifts = Lifts::of(plan, catalogue, gym);
    let mut stage =
        Stage { plan, catalogue, gym, lifts, dates, sessions, weekly: [0.0; Muscle::ALL.len()] };
    let weeks = plan.weeks.len();
    for muscle in Muscle::ALL {
        let halves: u32 = (0..weeks).map(|week| gather::planned(&stage, week, muscle)).sum();
        if let Some(weekly) = stage.weekly.get_mut(muscle as usize) {
            *weekly = f64::from(halves) / 2.0 / weeks.max(1) as f64;
        }
    }
    stage
}

fn report(stage: &Stage<'_>, all: &[Played], cast: Cast) -> Report {
    let followed = gather::followed(stage, all);
    let lines: Vec<(Line, &Followed)> = followed
        .iter()
        .filter_map(|(key, followed)| Some((gather::line(stage, *key, followed)?, followed)))
        .collect();
    let (lines, followed): (Vec<Line>, Vec<&Followed>) = lines.into_iter().unzip();
    let sum = |one: fn(&Played) -> u64| all.iter().map(one).sum();
    let mut report = Report {
        lifters: cast.lifters,
        seed: cast.seed,
        weeks: stage.plan.weeks.iter().map(|week| week.kind).collect(),
        trained: sum(|played| played.trained.len() as u64),
        missed: sum(|played| played.missed.into()),
        refused: sum(|played| played.refused.into()),
        findings: Vec::new(),
        lines,
        sessions: gather::sessions(stage, all),
        muscles: gather::volume(stage, all),
    };
    let names = |slug: &str| {
        let found = stage.catalogue.get(slug);
        found.map_or(slug, |found| found.name_in(stage.catalogue.tongue())).to_owned()
    };
    report.findings = finding::findings(&report, &followed, all, names);
    report
}
