//! What is in hand on the floor: the set, what is being entered of it, and how a press steps it.

use barwright_domain::call::{Amount, HowMany};
use barwright_domain::catalogue::Exercise;
use barwright_domain::quantity::{Distance, Reps, Seconds};
use barwright_domain::session::{Cursor, EntryRun, Passed, Reading, Run};

use super::key::drafts;
use crate::contract::{Draft, Figure};
use crate::facts::Held;
use crate::phrase::Words;

/// What every zone is made from.
pub(super) struct Floor<'a> {
    pub(super) held: &'a Held,
    pub(super) run: &'a Run,
    pub(super) draft: &'a Draft,
    pub(super) at: &'a Reading,
    pub(super) words: Words,
}

/// The panel on which an amount is typed.
pub(super) const PAD: &str = "pad";
/// A metre in the unit of amounts.
const METRE: u32 = 1_000;
/// The most digits of an amount.
const DIGITS: usize = 4;

/// Amounts of an open set that are offered at once: further from its floor than a step.
pub(super) const NEAR: [u32; 5] = [2, 3, 4, 5, 6];

/// An amount of the kind of another out of the digits that were typed; none where they are none.
pub(super) fn typed(amount: &Amount, digits: &str) -> Option<Amount> {
    let number: u32 = digits.parse().ok()?;
    Some(match amount {
        Amount::Metres(_) => like(amount, number.saturating_mul(METRE)),
        Amount::Reps(_) | Amount::Seconds(_) => like(amount, number),
    })
}

/// Digits with one more; the same where there is no room for it.
pub(super) fn one_more(digits: &str, digit: char) -> String {
    let mut more = digits.trim_start_matches('0').to_owned();
    if more.len() < DIGITS {
        more.push(digit);
    }
    more
}

/// How much one press moves a figure, and the figure itself.
pub(super) fn step_and_number(amount: &Amount) -> (u32, u32) {
    match amount {
        Amount::Reps(reps) => (1, u32::from(*reps)),
        Amount::Seconds(seconds) => (5, seconds.count()),
        Amount::Metres(distance) => (5_000, distance.millimetres()),
    }
}

/// An amount of the kind of another.
pub(super) fn like(amount: &Amount, number: u32) -> Amount {
    match amount {
        Amount::Reps(_) => Amount::Reps(Reps::try_from(number).unwrap_or(Reps::MAX)),
        Amount::Seconds(_) => Amount::Seconds(Seconds::new(number)),
        Amount::Metres(_) => Amount::Metres(Distance::from_millimetres(number)),
    }
}

/// The amount a draft shows: what was entered, or what is as called or as it runs.
pub(super) fn shown(floor: &Floor<'_>, cursor: &Cursor) -> Option<Amount> {
    let Floor { run, draft, at, .. } = floor;
    let asked = run.how_many_at(cursor)?;
    if let Some(number) = draft.amount {
        return Some(like(&asked.as_called(), number));
    }
    Some(match holds(run, cursor) {
        Some(started) => {
            let seconds = Passed::between(started, at).ms() / 1000;
            Amount::Seconds(Seconds::new(u32::try_from(seconds).unwrap_or(u32::MAX)))
        }
        None => run.as_called_at(cursor)?,
    })
}

/// The big figure with a step either way, which keep what else is being entered.
pub(super) fn figure(amount: &Amount, floor: &Floor<'_>) -> Figure {
    let (by, now) = step_and_number(amount);
    let to = |number: u32| Draft { amount: Some(number), ..floor.draft.clone() };
    let (less, more) = (now.saturating_sub(by), now.saturating_add(by));
    let (say, small) = (floor.words.floor(), floor.words.words());
    let numerals = floor.words.numerals;
    let aloud = |number| small.amount(&like(amount, number), numerals);
    Figure {
        text: small.figure(amount, numerals),
        unit: small.unit(amount).to_owned(),
        down: drafts("down", ("−", say.down_to(&aloud(less))), to(less)).enabled(now > 0),
        up: drafts("up", ("+", say.up_to(&aloud(more))), to(more)),
        pad: drafts("pad", say.pad(), Draft { panel: Some(PAD.to_owned()), ..floor.draft.clone() }),
        runs: false,
    }
}

/// Whether the bar of an exercise goes back to a rack after a set; a plan's own that is known no more
/// goes nowhere.
pub(super) fn racks(held: &Held, entry: &EntryRun) -> bool {
    held.catalogue.get(&entry.entry.exercise).is_some_and(Exercise::is_racked)
}

/// When the hold began that runs at a cursor; none where none runs.
pub(super) fn holds<'a>(run: &'a Run, cursor: &Cursor) -> Option<&'a Reading> {
    let holds = matches!(run.how_many_at(cursor), Some(HowMany::Seconds(_)));
    let (_, started) = run.started.as_ref().filter(|(set, _)| holds && *set == cursor.set)?;
    Some(started)
}
