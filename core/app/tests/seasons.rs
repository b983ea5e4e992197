//! Generated seasons through the engine, as a shell sees them: good and bad days, pain, absence, taps
//! taken back, and a plan that is read again with another cue in mid-block.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{HowEnded, Intent, Look, Reading, Row, Screen};
use proptest::prelude::*;

const DAY_MS: i64 = 86_400_000;

/// The same lift in three sessions a week: one track, however it is spread.
fn plan(cue: &str) -> String {
    let session = |day: &str| {
        format!(
            "[[session]]\nname = \"{day}\"\nday = \"{day}\"\n[[session.exercise]]\nname = \"Back squat\"\nsets \
             = 3\nreps = 5\nleft = \"1-3\"\nload = \"60 kg\"\nramp = \"none\"\nnext = {{ rule = \"add when \
             made\", step = \"2.5 kg\" }}\ncues = [\"{cue}\"]\n"
        )
    };
    let sessions: String = ["Monday", "Wednesday", "Friday"].map(session).concat();
    format!("name = \"Off-season\"\nweeks = 20\n{sessions}")
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Day {
    Made,
    Missed,
    Hurt,
    Interrupted,
    Away(u8),
    /// The plan is read again with another cue.
    Read(u8),
    /// The end of the last session is taken back, and brought back.
    TakenBack,
}

fn day() -> impl Strategy<Value = Day> {
    prop_oneof![
        6 => Just(Day::Made),
        2 => Just(Day::Missed),
        1 => Just(Day::Hurt),
        1 => Just(Day::Interrupted),
        1 => (0_u8..45).prop_map(Day::Away),
        1 => (0_u8..9).prop_map(Day::Read),
        1 => Just(Day::TakenBack),
    ]
}

struct Lifter {
    engine: Arc<Engine>,
    now: Reading,
}

impl Lifter {
    fn new() -> Self {
        let now = Reading {
            wall_ms: 1_795_424_400_000,
            offset_minutes: 60,
            boot_ms: None,
            boot_id: None,
        };
        let mut lifter = Self { engine: Engine::in_memory("en-GB".into()).unwrap(), now };
        lifter.tap(Intent::adopt(plan("Chest up")));
        lifter
    }

    fn tap(&mut self, intent: Intent) {
        self.now.wall_ms += 60_000;
        self.engine.dispatch(intent, self.now.clone()).unwrap();
    }

    fn see(&self, look: Look) -> Screen {
        self.engine.view(look, self.now.clone()).unwrap().screen
    }

    /// The rows of each session of the week that is on, as they would be today.
    fn sheets(&self) -> Vec<Vec<(String, Vec<String>)>> {
        let Screen::Weeks { weeks } = self.see(Look::Weeks) else { panic!() };
        let week = weeks.subtitle.split_whitespace().nth(1).unwrap_or("1").to_owned();
        let sheet = |session: u8| {
            let session = Some(format!("{week}.{session}"));
            let Screen::Today { today } = self.see(Look::Today { session, minutes: None }) else {
                panic!()
            };
            today.rows.into_iter().map(|row| (row.text, row.why)).collect()
        };
        [1, 2, 3].map(sheet).to_vec()
    }

    fn today(&self) -> Row {
        let Screen::Today { today } = self.see(Look::Today { session: None, minutes: None }) else {
            panic!()
        };
        today.rows.into_iter().find(|row| row.id == "sets-0-0").unwrap()
    }

    /// The session that is on: three sets, as the day is.
    fn session(&mut self, day: Day) {
        self.tap(Intent::Begin { session: None, minutes: None, sure: true });
        // A cut may have left sets out.
        for set in 0.. {
            let look = Look::Floor { draft: <_>::default() };
            match self.see(look) {
                Screen::Floor { floor } if floor.part.is_some() => {}
                _ => break,
            }
            let (amount, ended) = match (day, set) {
                (Day::Missed, 1) => (Some(3), HowEnded::Failed),
                (Day::Hurt, 1) => (Some(2), HowEnded::Pain),
                (Day::Interrupted, 1) => (Some(2), HowEnded::Interrupted),
                _ => (None, HowEnded::AsCalled),
            };
            self.tap(Intent::Record {
                part: None,
                amount,
                left_halves: (ended == HowEnded::AsCalled).then_some(4),
                ended,
                helped: 0,
                last: false,
            });
        }
        self.tap(Intent::Finish);
    }
}

/// What a reason's first line says: the owner's load, what is left of it, and whether a cut holds.
fn said(row: &Row) -> (f64, bool) {
    let first = &row.why[0];
    let own = first
        .trim_start_matches("The plan says ")
        .trim_start_matches("Working load ")
        .split(" kg")
        .next()
        .unwrap()
        .parse()
        .unwrap();
    // More than an owner and what is made: a cut is named after it.
    let made = first.split("; ").skip(1).all(|part| part.starts_with("rounded to"));
    (own, !made)
}

fn load(row: &Row) -> f64 {
    let figure = row.text.split(" · ").find(|part| part.ends_with(" kg")).unwrap();
    figure.trim_end_matches(" kg").parse().unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    /// Start + step × sessions that were made with no cut, pain or miss on them; under a cut never more
    /// than the owner's load; a plan read again changes no later call, and neither does a tap that is
    /// taken back and brought back.
    #[test]
    fn a_step_for_each_session_made(days in proptest::collection::vec(day(), 1..24)) {
        let mut lifter = Lifter::new();
        let (mut made, mut trained) = (0.0, false);
        for day in days {
            match day {
                Day::Away(days) => lifter.now.wall_ms += i64::from(days) * DAY_MS,
                Day::Read(cue) => {
                    let before = lifter.sheets();
                    lifter.tap(Intent::adopt(plan(&format!("Cue {cue}"))));
                    prop_assert_eq!(lifter.sheets(), before);
                }
                Day::TakenBack if trained => {
                    let before = lifter.sheets();
                    lifter.tap(Intent::Undo);
                    lifter.tap(Intent::Redo);
                    prop_assert_eq!(lifter.sheets(), before);
                }
                Day::TakenBack => {}
                day => {
                    let row = lifter.today();
                    let (own, cut) = said(&row);
                    prop_assert_eq!(own, 60.0 + 2.5 * made, "{:?}", row.why);
                    prop_assert!(load(&row) <= own + 1.25, "{row:?}");
                    // What is rounded to is what is shown.
                    if let Some((_, here)) = row.why[0].split_once("rounded to ") {
                        prop_assert!(here.starts_with(&format!("{} kg", load(&row))), "{row:?}");
                    }
                    lifter.session(day);
                    made += f64::from(u8::from(day == Day::Made && !cut));
                    trained = true;
                    lifter.now.wall_ms += 2 * DAY_MS;
                }
            }
        }
    }
}
