//! Invented sessions as rows and events, the same for the same seed.

use barwright_domain::call::{Amount, HowMany, WeekKind};
use barwright_domain::catalogue::{Counting, Muscle};
use barwright_domain::history::{
    Change, DonePart, DoneSet, MuscleTally, Outcome, SessionRow, SetKey,
};
use barwright_domain::quantity::{Mass, Range, Reserve};
use barwright_domain::session::{Ending, EntryId, PlanPlace, SetId, SetKind};
use barwright_domain::volume::{Count, Sides, Tally};

/// One tap: its events by kind and body, and its changes.
pub type TapRows = (Vec<(&'static str, String)>, Vec<Change>);

/// A lifter's sessions, one after another.
#[derive(Debug)]
pub struct Sessions {
    chance: u64,
    number: u32,
}

const EXERCISES: u64 = 50;

impl Sessions {
    /// Those of a seed.
    pub fn new(seed: u64) -> Self {
        Self { chance: seed, number: 0 }
    }

    fn below(&mut self, bound: u64) -> u64 {
        self.chance ^= self.chance << 13;
        self.chance ^= self.chance >> 7;
        self.chance ^= self.chance << 17;
        self.chance % bound
    }

    /// The taps of the next session, whose first event gets this number.
    pub fn next_session(&mut self, session: u64) -> Vec<TapRows> {
        self.number += 1;
        let day = 16_000 + self.number as i32 * 7 / 6;
        let mut row = SessionRow {
            session,
            day,
            title: "Legs and back".into(),
            place: Some(PlanPlace {
                plan: 1,
                week: (self.number / 3 % 12 + 1) as u16,
                session: (self.number % 3 + 1) as u16,
            }),
            week_kind: WeekKind::Ordinary,
            outcome: None,
        };
        // A sheet of eight exercises with reasons and plates is some tens of kilobytes.
        let sheet = "x".repeat(24_000 + self.below(12_000) as usize);
        let mut taps = vec![(vec![("began", sheet)], vec![Change::PutSession(row.clone())])];
        for entry in 0..5 {
            let exercise = format!("exercise-{:02}", self.below(EXERCISES));
            for set in 0..5 {
                let set = self.set(session, day, entry, set, &exercise);
                let part = "x".repeat(300 + self.below(400) as usize);
                let events = vec![("part_done", part), ("rest_began", "x".repeat(220))];
                taps.push((events, vec![Change::PutSet(set)]));
            }
        }
        let count = Count { direct: 5, indirect: 3 };
        let sides = Sides { left: count, right: count };
        let tally = Tally { sets: sides, under_six: sides };
        let volume =
            Muscle::ALL.iter().take(9).map(|muscle| MuscleTally { muscle: *muscle, tally });
        let volume = volume.collect();
        row.outcome = Some(Outcome { seconds: 3_900, owed: 20, done: 20, volume });
        taps.push((vec![("finished", "{}".into())], vec![Change::PutSession(row)]));
        taps
    }

    fn set(&mut self, session: u64, day: i32, entry: u16, set: u16, exercise: &str) -> DoneSet {
        let key = SetKey { session, set: SetId { entry: EntryId(entry), set } };
        DoneSet {
            day,
            exercise: exercise.to_owned(),
            kind: if set == 0 { SetKind::Ramp } else { SetKind::Work },
            left: Reserve::from_halves(self.below(8) as u8),
            ..plain(key, 40_000 + 2_500 * self.below(50) as i64, 3 + self.below(8) as u16)
        }
    }
}

/// The set that tap `number` of one long session did.
pub(crate) fn done_set(number: u64) -> DoneSet {
    let (entry, set) = ((number / 100) as u16, (number % 100) as u16);
    let key = SetKey { session: 1, set: SetId { entry: EntryId(entry), set } };
    plain(key, 60_000 + 500 * number as i64, (number % 9) as u16)
}

fn plain(key: SetKey, grams: i64, reps: u16) -> DoneSet {
    let figure = Mass::from_grams(grams);
    DoneSet {
        key,
        day: 20_780,
        exercise: "front-squat".into(),
        kind: SetKind::Work,
        row: 0,
        round: key.set.set,
        side: None,
        asked: HowMany::Reps(Range { from: 5, to: 8 }),
        target: None,
        meant: figure,
        figure,
        counting: Counting::Total,
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
