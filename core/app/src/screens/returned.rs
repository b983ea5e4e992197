//! One lifter's week in short, as whoever wrote the plan looks over many of them.

use barwright_domain::call::{Ending, SetKind};
use barwright_domain::catalogue::Catalogue;
use barwright_domain::desk::{At, Standing};
use barwright_domain::history::DoneSet;
use barwright_domain::owners::{Outcome, Owner, Why};
use barwright_domain::plan::{Plan, Sides};
use barwright_domain::volume::{Closeness, is_hard};
use serde::Serialize;

use super::name;
use crate::facts::{Held, Returned, place};
use crate::phrase::Words;

/// So many of so many.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
pub struct OutOf {
    /// Done.
    pub done: u32,
    /// Planned.
    pub planned: u32,
}

/// A lifter's week in short: the week of the plan in which a session was done last.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LifterWeek {
    /// The plan's name.
    pub plan: String,
    /// The week, from 1.
    pub week: u16,
    /// How many weeks the plan has.
    pub weeks: usize,
    /// Sessions of it.
    pub sessions: OutOf,
    /// Hard sets of it, each side's apart; what is optional is not planned. A row whose number of
    /// sets the day decides is planned with one.
    pub hard_sets: OutOf,
    /// Rows that were done with less load than called, or with more.
    pub loads_off: u32,
    /// Work sets whose effort was called outside what was asked.
    pub effort_off: u32,
    /// Work sets that came to less than asked and were not cut short.
    pub misses: u32,
    /// Exercises that hurt in this week, or on which pain still stands.
    pub pain: u32,
    /// Days since the last session; none before the first one.
    pub days_off: Option<u32>,
    /// Sessions still to come whose date has passed.
    pub behind: usize,
    /// What comes next, in words.
    pub next: String,
    /// What stands out, a sentence each.
    pub says: Vec<String>,
}

impl LifterWeek {
    /// The order in which weeks are to be looked at, worst first: pain, then sessions that lie
    /// behind, then misses, efforts and loads off, then who was away for longest. Common practice
    /// weighs them so; it is no more than an order.
    #[must_use]
    pub fn worse(&self, other: &Self) -> std::cmp::Ordering {
        let weight = |one: &Self| {
            (one.pain, one.behind, one.misses, one.effort_off + one.loads_off, one.days_off)
        };
        weight(other).cmp(&weight(self))
    }
}

/// The week in short.
pub(crate) fn week(held: &Held, of: &Returned<'_>, words: Words) -> LifterWeek {
    let words = words.on(of.today);
    let named = |at: At| place::called(of.plan, at).unwrap_or_default().to_owned();
    let here = of.calendar.sessions.iter().filter(|one| one.at.week == of.week);
    let owed: Vec<Standing> = here
        .map(|one| one.standing)
        .filter(|standing| !matches!(standing, Standing::LeftOut | Standing::Before))
        .collect();
    let done = owed.iter().filter(|one| matches!(one, Standing::Done(_) | Standing::DoneWith(..)));
    let hard = of.sets.iter().filter(|set| hard(set, of.plan, &held.catalogue));
    let next = of.calendar.next.and_then(|next| {
        let dated = of.calendar.sessions.iter().find(|one| one.at == next)?;
        let state = words.weeks().state(dated, of.today, named);
        Some(words.returned().next(&named(next), &state))
    });
    let mut week = LifterWeek {
        plan: of.plan.name.clone(),
        week: of.week,
        weeks: of.plan.weeks.len(),
        sessions: OutOf { done: count(done.count()), planned: count(owed.len()) },
        hard_sets: OutOf {
            done: count(hard.count()),
            planned: planned(of.plan, of.week, &held.catalogue),
        },
        loads_off: 0,
        effort_off: 0,
        misses: 0,
        pain: 0,
        days_off: of.last.and_then(|last| u32::try_from(of.today.saturating_sub(last)).ok()),
        behind: of.calendar.behind(of.today),
        next: next.unwrap_or_else(|| words.refusal().plan_is_over().to_owned()),
        says: Vec::new(),
    };
    stands_out(held, of, &mut week, words);
    week
}

fn count(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}

/// What stands out, counted and said.
fn stands_out(held: &Held, of: &Returned<'_>, week: &mut LifterWeek, words: Words) {
    let (say, unit) = (words.returned(), held.gym().unit);
    let called = |slug: &str| name::exercise(held, slug, slug, words);
    let mut hurt: Vec<&str> = Vec::new();
    for set in of.sets.iter().filter(|set| set.ending == Ending::Pain) {
        if !hurt.contains(&set.exercise.as_str()) {
            hurt.push(&set.exercise);
        }
    }
    for (owner, _) in held.desk.owners.iter() {
        let Owner::Care(slug) = owner else { continue };
        let stands = held.desk.owners.care(slug).pain.is_some_and(|pain| pain.back.is_none());
        if stands && !hurt.contains(&slug.as_str()) {
            hurt.push(slug);
        }
    }
    week.pain = count(hurt.len());
    week.says.extend(hurt.into_iter().map(|slug| say.hurt(&called(slug))));
    for set in &of.sets {
        let amount = set.amount();
        if set.ending.is_evidence() && !set.asked.reached_by(&amount) {
            week.misses += 1;
            let line = say.missed(&called(&set.exercise), set, unit, words.numerals);
            week.says.push(line);
        }
        if let (Some(left), Some(target)) = (set.left, set.target)
            && (left < target.left.from || left > target.left.to)
        {
            week.effort_off += 1;
            let line = say.effort_off(&called(&set.exercise), left, &target, words.numerals);
            week.says.push(line);
        }
    }
    for outcome in &of.outcomes {
        if matches!(outcome.why, Why::LessLoad | Why::MoreLoad) {
            week.loads_off += 1;
            let exercise = of_outcome(held, of.plan, outcome).map(|slug| called(&slug));
            let why = words.outcome().sentence(
                outcome,
                barwright_domain::call::EffortScale::default(),
                unit,
                words.numerals,
            );
            week.says.push(say.about(&exercise.unwrap_or_default(), &why));
        }
    }
}

/// The exercise that an outcome is of, by its slug.
fn of_outcome(held: &Held, plan: &Plan, outcome: &Outcome) -> Option<String> {
    match &outcome.owner {
        Owner::Max(slug) | Owner::Loose(slug) | Owner::Care(slug) => Some(slug.clone()),
        Owner::Track(track) => {
            let rows = &held.desk.plan.as_ref()?.rows;
            let row = rows.iter().find(|row| row.track == *track)?;
            let session = plan.sessions.get(usize::from(row.session))?;
            Some(session.exercises.get(usize::from(row.slot))?.exercise.clone())
        }
    }
}

/// Whether a set counts as hard, whatever muscle it is for.
fn hard(set: &DoneSet, plan: &Plan, catalogue: &Catalogue) -> bool {
    let speed = set.kind == SetKind::Speed
        || catalogue.get(&set.exercise).is_some_and(|of| of.movement.is_speed_work());
    !speed && set.made() && is_hard(set.closeness(), plan.hard_at_left)
}

/// Hard sets that a week asks for, each side's apart.
fn planned(plan: &Plan, week: u16, catalogue: &Catalogue) -> u32 {
    let week = usize::from(week).saturating_sub(1);
    let mut sum = 0_usize;
    for index in 0..plan.sessions_of(week).len() {
        let Some(session) = plan.session(week, index) else { continue };
        for entry in session.exercises.iter().filter(|entry| !entry.optional) {
            let Some(exercise) = catalogue.get(&entry.exercise) else { continue };
            if exercise.movement.is_speed_work() {
                continue;
            }
            let each = match entry.sides {
                Some(Sides::Together) => false,
                Some(_) => true,
                None => exercise.one_sided,
            };
            let sets = entry.blocks.iter().flat_map(|block| &block.sets);
            let sets = sets.filter(|set| {
                let closeness = Closeness::NotCalled { target: set.effort };
                !set.speed && is_hard(closeness, plan.hard_at_left)
            });
            sum += sets.map(|set| if each && set.side.is_none() { 2 } else { 1 }).sum::<usize>();
        }
    }
    count(sum)
}
