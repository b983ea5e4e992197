//! A lifter, a gym and a plan to lay sheets out with.

use barwright_domain::call::{Amount, EffortTarget, HowMany, Side};
use barwright_domain::catalogue::{Catalogue, Counting};
use barwright_domain::desk::{At, DeskEvent};
use barwright_domain::equipment::{Equipment, builtin_in};
use barwright_domain::history::{DonePart, DoneSet, SetKey};
use barwright_domain::owners::{Change, MaxOrigin, Owner};
use barwright_domain::plan::Plan;
use barwright_domain::prescribe::{self, Lifter, Past, Prescribed, Source};
use barwright_domain::quantity::{Mass, MassUnit, Numerals, RepRange, Reps, Reserve};
use barwright_domain::session::{
    Because, Call, CallLoad, Ending, Entry, EntryId, Load, SetId, SetKind,
};

/// The adoption that the tests' plan is known by.
pub(crate) const ADOPTED: u64 = 7;
/// Today, in days since 1970-01-01.
pub(crate) const TODAY: i32 = 20_500;

pub(crate) fn kg(text: &str) -> Mass {
    Mass::read(&format!("{text} kg"), Numerals::Point).unwrap()
}

/// A plan of four weeks with one session of these exercises.
pub(crate) fn exercises(body: &str) -> Plan {
    plan(&format!("name = \"Example\"\nweeks = 4\n[[session]]\nname = \"One\"\n{body}"))
}

pub(crate) fn plan(text: &str) -> Plan {
    Plan::read(text, &Catalogue::builtin()).unwrap_or_else(|f| panic!("{f:#?}")).plan
}

/// What a sheet is laid out from.
pub(crate) struct Table {
    pub(crate) plan: Plan,
    pub(crate) catalogue: Catalogue,
    pub(crate) gym: Equipment,
    pub(crate) lifter: Lifter,
}

impl Table {
    pub(crate) fn new(plan: Plan) -> Self {
        let catalogue = Catalogue::builtin().with_own(plan.exercises.iter().cloned());
        let lifter = Lifter { today: TODAY, ..Lifter::default() };
        Self { plan, catalogue, gym: builtin_in(MassUnit::Kilogram), lifter }
    }

    pub(crate) fn of(body: &str) -> Self {
        Self::new(exercises(body))
    }

    pub(crate) fn max(mut self, exercise: &str, mass: &str) -> Self {
        let owner = Owner::Max(exercise.to_owned());
        let changes = vec![Change::Max { mass: kg(mass), origin: MaxOrigin::Tested }];
        self.lifter.desk.apply(1, &DeskEvent::Said { owner, changes, day: TODAY - 30 });
        self
    }

    pub(crate) fn weighs(mut self, mass: &str) -> Self {
        self.lifter.desk.body_mass = Some((kg(mass), TODAY));
        self
    }

    /// A past session, the latest of all so far: `days` ago.
    pub(crate) fn did(mut self, days: i32, sets: Vec<DoneSet>) -> Self {
        let day = TODAY - days;
        for slug in
            sets.iter().map(|set| set.exercise.clone()).collect::<std::collections::BTreeSet<_>>()
        {
            let of = sets.iter().filter(|set| set.exercise == slug).cloned();
            let past = Past { day, sets: of.map(|set| DoneSet { day, ..set }).collect() };
            self.lifter.past.entry(slug).or_default().insert(0, past);
        }
        self
    }

    pub(crate) fn source(&self, week: usize, index: usize) -> Source<'_> {
        Source {
            plan: &self.plan,
            adopted: Some(ADOPTED),
            at: At::of_nth(week, index).unwrap(),
            catalogue: &self.catalogue,
            equipment: &self.gym,
        }
    }

    pub(crate) fn week(&self, week: usize) -> Prescribed {
        prescribe::sheet(self.source(week, 0), &self.lifter).unwrap()
    }

    /// The sheet's exercises in the first week.
    pub(crate) fn entries(&self) -> Vec<Entry> {
        self.week(0).sheet.entries().cloned().collect()
    }

    pub(crate) fn first(&self) -> Entry {
        self.entries().swap_remove(0)
    }
}

/// A set that was done as called.
pub(crate) fn done(exercise: &str, round: u16, figure: Option<&str>, reps: Reps) -> DoneSet {
    let figure = figure.map(kg);
    let catalogue = Catalogue::builtin();
    DoneSet {
        key: SetKey { session: 1, set: SetId { entry: EntryId(0), set: round } },
        day: TODAY,
        exercise: exercise.to_owned(),
        kind: SetKind::Work,
        row: 0,
        round,
        side: None,
        asked: HowMany::Reps(RepRange::just(reps)),
        target: None,
        meant: figure,
        figure,
        counting: catalogue.get(exercise).map_or(Counting::Total, |exercise| exercise.counting),
        moved: figure,
        bands: None,
        technique: None,
        set_up: Vec::new(),
        kit: Vec::new(),
        parts: vec![DonePart { amount: Amount::Reps(reps), figure, slowing: None }],
        left: None,
        helped: 0,
        ending: Ending::AsCalled,
    }
}

pub(crate) fn on_side(set: DoneSet, side: Side) -> DoneSet {
    DoneSet { side: Some(side), ..set }
}

pub(crate) fn left(from: u8, to: u8) -> EffortTarget {
    let whole = |reps: u8| Reserve::from_halves(reps * 2).unwrap();
    EffortTarget::left(whole(from), whole(to))
}

/// The work sets of an exercise.
pub(crate) fn work(entry: &Entry) -> Vec<&Call> {
    entry.calls.iter().filter(|call| call.kind != SetKind::Ramp).collect()
}

/// The ramp's loads and repetitions.
pub(crate) fn ramp(entry: &Entry) -> Vec<(Mass, Reps)> {
    let ramp = entry.calls.iter().filter(|call| call.kind == SetKind::Ramp);
    ramp.map(|call| (figure(call).unwrap(), call.how_many.as_called().reps().unwrap())).collect()
}

pub(crate) fn load(call: &Call) -> Option<&Load> {
    match &call.load {
        CallLoad::Known(load) => Some(load),
        CallLoad::AfterTop { .. } | CallLoad::Chosen { .. } => None,
    }
}

pub(crate) fn figure(call: &Call) -> Option<Mass> {
    load(call)?.figure
}

pub(crate) fn figures(entry: &Entry) -> Vec<Option<Mass>> {
    work(entry).into_iter().map(figure).collect()
}

pub(crate) fn why(call: &Call) -> &[Because] {
    &call.reason.0
}
