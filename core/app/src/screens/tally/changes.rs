//! What changes next time and why, what only the lifter can answer, and what another max moves.

use barwright_domain::call::EffortScale;
use barwright_domain::owners::{Outcome, Owner, Word};
use barwright_domain::session::{Call, Run, SetKind};

use crate::contract::{Intent, Key, MovedLoadData, Row};
use crate::facts::{Came, Held, MaxMoved, TallyOf, place};
use crate::phrase::Words;
use crate::screens::key::taps;
use crate::screens::name;
use crate::screens::row::{row, why};

/// A row for each exercise: what it will be, and what was said to what owns its load; further owners
/// below it.
pub(super) fn rows(held: &Held, tally: &TallyOf<'_>, words: Words) -> Vec<Row> {
    let say = Say { held, run: tally.run, words };
    tally.came.iter().flat_map(|came| say.came(came)).collect()
}

struct Say<'a> {
    held: &'a Held,
    run: &'a Run,
    words: Words,
}

impl Say<'_> {
    fn came(&self, came: &Came) -> Vec<Row> {
        let Self { held, run, words } = self;
        let (unit, numerals) = (run.equipment.unit, words.numerals);
        let name = name::exercise(held, &came.exercise, &came.name, *words);
        let next = came.next.iter().flat_map(|entry| &entry.calls);
        let work: Vec<&Call> = next
            .filter(|call| call.kind != SetKind::Ramp)
            .take_while(|call| call.row == 0)
            .collect();
        let text = if work.is_empty() {
            name
        } else {
            words.tally().next_time(&name, &words.sheet().line(&work, unit, numerals))
        };
        let called = came.next.as_ref().zip(work.first());
        let why = called.map(|(entry, call)| why(held, entry, call, unit, *words));
        let why = why.unwrap_or_default();
        let scale = work.first().and_then(|call| call.effort).map(|effort| effort.scale);
        let told = |outcome: &Outcome| self.told(outcome, scale.unwrap_or_default());
        let mut outcomes = came.outcomes.iter();
        let first = outcomes.next();
        let heading = row(format!("next-{}", came.exercise), 1, text)
            .why(why)
            .detail(first.map(told).unwrap_or_default())
            .keys(first.map(|outcome| self.keys(outcome)).unwrap_or_default());
        let further = outcomes.map(|outcome| {
            let id = format!("told-{}", outcome.owner.name());
            row(id, 2, told(outcome)).keys(self.keys(outcome))
        });
        let pain = came.no_pain.map(|free| self.no_pain(&came.exercise, free));
        std::iter::once(heading).chain(further).chain(pain).collect()
    }

    /// What an owner was told, and what is asked.
    fn told(&self, outcome: &Outcome, scale: EffortScale) -> String {
        let (unit, numerals) = (self.run.equipment.unit, self.words.numerals);
        let say = self.words.outcome();
        let asks = self.asks(outcome).map(|proposal| say.proposal(proposal, unit, numerals).0);
        let told = say.sentence(outcome, scale, unit, numerals);
        std::iter::once(told).chain(asks).collect::<Vec<_>>().join(" ")
    }

    /// What is proposed and was not answered yet.
    fn asks<'o>(&self, outcome: &'o Outcome) -> Option<&'o barwright_domain::owners::Proposal> {
        let session = Some(self.run.session);
        let account = self.held.desk.owners.account(&outcome.owner)?;
        let last = account.words().last().and_then(|word: &Word| word.session);
        outcome.proposal.as_ref().filter(|_| last == session && !outcome.held)
    }

    fn keys(&self, outcome: &Outcome) -> Vec<Key> {
        let Self { run, words, .. } = self;
        let owner = || outcome.owner.name();
        let mut keys = Vec::new();
        if run.finished.is_some()
            && let Some(proposal) = self.asks(outcome)
        {
            let (_, yes) = words.outcome().proposal(proposal, run.equipment.unit, words.numerals);
            let intent = Intent::Accept { owner: owner() };
            keys.push(taps(run, format!("accept-{}", owner()), yes, intent));
        }
        if outcome.held || !outcome.changes.is_empty() {
            let back = outcome.held;
            let intent = Intent::HoldBack { owner: owner(), held: !back };
            let label = words.tally().hold_back(back);
            keys.push(taps(run, format!("hold-{}", owner()), label, intent).chosen(back));
        }
        keys
    }

    fn no_pain(&self, exercise: &str, free: bool) -> Row {
        let (asks, yes) = self.words.outcome().no_pain();
        let intent = Intent::AnswerPain { exercise: exercise.to_owned(), free: !free };
        let key = taps(self.run, format!("no-pain-{exercise}"), yes, intent).chosen(free);
        row(format!("pain-{exercise}"), 2, asks).keys(vec![key])
    }
}

/// What the session says to maxes, each with the loads that it moves, before and after: in rows, and
/// as data.
pub(super) fn maxes(
    held: &Held,
    tally: &TallyOf<'_>,
    words: Words,
) -> (Vec<Row>, Vec<MovedLoadData>) {
    let (mut rows, mut data) = (Vec::new(), Vec::new());
    let say = Say { held, run: tally.run, words };
    // One that stays as it is, and asks nothing, is no change.
    let says = |told: &Outcome| !told.changes.is_empty() || told.proposal.is_some();
    for moved in tally.maxes.iter().filter(|moved| says(&moved.outcome)) {
        rows.push(max(&say, moved));
        for load in &moved.loads {
            let id = format!("moved-{}-{}", place::name(load.at), load.exercise);
            let name = name::exercise(held, &load.exercise, &load.name, words);
            let unit = tally.run.equipment.unit;
            rows.push(row(id.clone(), 2, words.lift().moved(load, &name, unit, words.numerals)));
            data.push(MovedLoadData {
                row: id,
                week: u32::from(load.at.week),
                exercise: load.exercise.clone(),
                before: load.before.kilograms(),
                after: load.after.kilograms(),
                again: moved.again,
            });
        }
    }
    (rows, data)
}

fn max(say: &Say<'_>, moved: &MaxMoved) -> Row {
    let Say { held, run, words } = say;
    let (unit, numerals) = (run.equipment.unit, words.numerals);
    let name = name::exercise(held, &moved.exercise, &moved.exercise, *words);
    let (text, mut detail) = match &moved.after {
        Some((mass, origin)) => (
            words.lift().max_moved(&name, moved.before, (*mass, origin), unit, numerals),
            vec![say.told(&moved.outcome, EffortScale::default())],
        ),
        None => (
            words.lift().max_of(&name, moved.before, unit, numerals),
            vec![say.told(&moved.outcome, EffortScale::default())],
        ),
    };
    if moved.again && moved.after.is_some() {
        detail.push(words.lift().again(!moved.loads.is_empty()).to_owned());
    }
    let Owner::Max(exercise) = &moved.outcome.owner else { return row("max", 1, text) };
    row(format!("max-{exercise}"), 1, text).detail(detail.join(" ")).keys(say.keys(&moved.outcome))
}
