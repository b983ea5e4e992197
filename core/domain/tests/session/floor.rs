//! A gym floor to test on: sheets in a few words, taps at a clock that only moves when told.

use barwright_domain::call::{EffortTarget, Flow, HowMany, Manner, Side, Structure, WeekKind};
use barwright_domain::catalogue::Counting;
use barwright_domain::equipment::{self, Fit};
use barwright_domain::quantity::{Mass, MassUnit, Numerals, RepRange, Reserve, Seconds};
use barwright_domain::session::{
    Block, Call, CallLoad, Command, Cursor, Entry, EntryId, Event, Load, Reading, Reason,
    RecordedSet, Refusal, Run, SetKind, Sheet, Stamped, State, decide,
};

pub(crate) fn kg(text: &str) -> Mass {
    Mass::read(&format!("{text} kg"), Numerals::Point).unwrap()
}

pub(crate) fn load(figure: &str) -> Load {
    let gym = equipment::builtin_in(MassUnit::Kilogram);
    let made = gym.make("barbell", kg(figure), Fit::Nearest).unwrap();
    assert_eq!(made.made, kg(figure), "the gym of the tests makes it exactly");
    Load {
        meant: Some(kg(figure)),
        figure: Some(kg(figure)),
        counting: Counting::Total,
        rig: made.rig,
        body: None,
        set_up: None,
    }
}

/// A straight work set of reps at a load, with three minutes of rest.
pub(crate) fn call(round: u16, figure: &str, reps: &str) -> Call {
    Call {
        kind: SetKind::Work,
        row: 0,
        round,
        flow: Flow::Listed,
        side: None,
        load: CallLoad::Known(load(figure)),
        part_loads: Vec::new(),
        how_many: HowMany::Reps(RepRange::read(reps).unwrap()),
        aim: None,
        effort: None,
        structure: Structure::Straight,
        manner: Manner::default(),
        rest: Seconds::new(180),
        reason: Reason::default(),
    }
}

pub(crate) fn left(from: u8, to: u8) -> EffortTarget {
    let whole = |reps: u8| Reserve::from_halves(reps * 2).unwrap();
    EffortTarget::left(whole(from), whole(to))
}

pub(crate) fn entry(id: u16, name: &str, calls: Vec<Call>) -> Entry {
    Entry {
        id: EntryId(id),
        exercise: name.to_lowercase().replace(' ', "-"),
        name: name.to_owned(),
        implement: "barbell".to_owned(),
        optional: false,
        instead: Vec::new(),
        set_up: Vec::new(),
        wear: Vec::new(),
        lacks: Vec::new(),
        rest_between_sides: Seconds::new(30),
        main: false,
        keep: false,
        terms: Vec::new(),
        pain: None,
        calls,
        last: None,
        over_body: false,
        supported: None,
        liked: barwright_domain::equipment::Liked::default(),
        stands_in_for: None,
        test: None,
    }
}

pub(crate) fn alone(entry: Entry) -> Block {
    Block {
        entries: vec![entry],
        rest_within: Seconds::default(),
        rest_after_round: Seconds::default(),
    }
}

pub(crate) fn sheet(blocks: Vec<Block>) -> Sheet {
    Sheet {
        title: "Test".to_owned(),
        place: None,
        week_kind: WeekKind::Ordinary,
        warm_up: None,
        rest_step: Seconds::new(20),
        seconds_a_rep: 3,
        again_after: None,
        blocks,
    }
}

pub(crate) fn sides(calls: Vec<Call>, first: Side) -> Vec<Call> {
    calls
        .into_iter()
        .flat_map(|call| {
            [first, first.other()].map(|side| Call { side: Some(side), ..call.clone() })
        })
        .collect()
}

/// The floor: a state, and a clock.
pub(crate) struct Floor {
    pub(crate) state: State,
    pub(crate) now: Reading,
    seq: u64,
}

impl Floor {
    pub(crate) fn begin(sheet: Sheet) -> Self {
        let now = Reading {
            wall_ms: 1_795_000_000_000,
            offset_minutes: 60,
            boot_ms: Some(5_000_000),
            boot_id: Some("first".to_owned()),
        };
        let mut floor = Self { state: State::default(), now, seq: 1 };
        let equipment = equipment::builtin_in(MassUnit::Kilogram);
        floor.tap(Command::Begin { sheet, equipment, body_mass: None, paper: None });
        floor
    }

    pub(crate) fn try_tap(&mut self, command: Command) -> Result<Vec<Event>, Refusal> {
        let events = decide(&self.state, &command, &self.now)?;
        let tap = self.seq;
        for event in &events {
            let event = event.clone();
            self.state.apply(Stamped { seq: self.seq, tap, at: self.now.clone(), event });
            self.seq += 1;
        }
        // Whatever was folded step by step is what the log gives again.
        let again = State::replay(self.state.log().to_vec());
        assert_eq!(again.run(), self.state.run());
        Ok(events)
    }

    pub(crate) fn tap(&mut self, command: Command) -> Vec<Event> {
        self.try_tap(command.clone()).unwrap_or_else(|refusal| panic!("{command:?}: {refusal}"))
    }

    pub(crate) fn wait(&mut self, seconds: i64) {
        self.now.wall_ms += seconds * 1000;
        self.now.boot_ms = self.now.boot_ms.map(|ms| ms + seconds * 1000);
    }

    /// As called, without a word on effort.
    pub(crate) fn racked(&mut self) {
        self.tap(Command::Record(RecordedSet::default()));
    }

    pub(crate) fn reps(&mut self, reps: u16) {
        self.tap(Command::Record(RecordedSet {
            amount: Some(barwright_domain::call::Amount::Reps(reps)),
            ..RecordedSet::default()
        }));
    }

    pub(crate) fn run(&self) -> &Run {
        self.state.run().unwrap()
    }

    pub(crate) fn cursor(&self) -> Cursor {
        self.run().cursor().unwrap()
    }

    /// "entry.set.part" of what is to be done now; nothing when all is done.
    pub(crate) fn at(&self) -> String {
        self.run().cursor().map_or_else(String::new, |cursor| {
            format!("{}.{}.{}", cursor.set.entry.0, cursor.set.set, cursor.part)
        })
    }

    /// Seconds of rest left.
    pub(crate) fn rest(&self) -> Option<i64> {
        let run = self.run();
        let rest = run.rest.as_ref()?;
        Some(rest.standing(Some(&run.seen), &self.now).left_ms.div_euclid(1000))
    }

    /// The figure called now.
    pub(crate) fn called(&self) -> Mass {
        self.run().load_at(&self.cursor()).unwrap().figure.unwrap()
    }
}
