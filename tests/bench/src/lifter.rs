//! An invented lifter, the same in every run, who taps through the bench's plan.

use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{FloorScreen, HowEnded, Intent, Reading, Screen, TodayScreen};
use barwright_player::clock::{DAY_MS, MONDAY};
use barwright_player::{Player, intents};

use crate::random::Random;

/// The plan.
pub(crate) const PLAN: &str = include_str!("plan.toml");
/// Weeks of the plan, after which it is adopted again.
const WEEKS: u32 = 12;
/// Sessions in a week of it.
pub(crate) const SESSIONS: u32 = 3;

/// The Monday after the last week that lies behind the lifter.
const TODAY: i64 = MONDAY as i64;

/// A lifter on an engine.
pub(crate) struct Lifter {
    pub(crate) player: Player,
    random: Random,
    /// Taps that finished a set or a part of one.
    pub(crate) recorded: u32,
}

impl Lifter {
    /// One who has the plan and so many weeks of it behind them. Stands on the Monday after.
    pub(crate) fn with_past(engine: Arc<Engine>, weeks: u32) -> Self {
        let begins = TODAY - 7 * i64::from(weeks);
        let mut lifter = Self::at(engine, reading(begins * DAY_MS + 17 * 3_600_000));
        lifter.set_up();
        for week in 0..weeks {
            if week > 0 && week % WEEKS == 0 {
                lifter.player.dispatch(Intent::AdoptPlan {
                    text: PLAN.to_owned(),
                    from: None,
                    // Of the same name, it would be the old one mended, and stay at its end.
                    as_new: true,
                    all_rows: false,
                });
            }
            for session in 0..SESSIONS {
                let day = begins + i64::from(week) * 7 + i64::from(session) * 2;
                lifter.player.now = reading(day * DAY_MS + 18 * 3_600_000);
                let mut floor = lifter.begin(week % WEEKS, session);
                while let Some(next) = floor {
                    floor = lifter.part(&next);
                }
            }
        }
        lifter.player.now = today();
        lifter
    }

    /// One who comes back to what is there.
    pub(crate) fn returning(engine: Arc<Engine>) -> Self {
        Self::at(engine, today())
    }

    fn at(engine: Arc<Engine>, now: Reading) -> Self {
        // Time passes by what is lifted, not by the tap.
        let player = Player::on(engine, now).taking(0);
        Self { player, random: Random::seeded(3), recorded: 0 }
    }

    fn set_up(&mut self) {
        self.player.dispatch(Intent::adopt(PLAN));
        let facts = [
            ("body-mass", "82.4 kg"),
            ("max:back-squat", "142.5 kg"),
            ("max:bench-press", "97.5 kg"),
            ("max:deadlift", "175 kg"),
            ("max:overhead-press", "62.5 kg"),
        ];
        for (field, text) in facts {
            self.player.dispatch(intents::write(field, text));
        }
    }

    /// What is on: a sheet with exercises, or nothing was measured that a lifter looks at.
    pub(crate) fn today(&self) -> TodayScreen {
        let today = self.player.see_today();
        assert!(!today.rows.is_empty(), "no sheet is laid out: {today:?}");
        today
    }

    /// The clocks as they stand.
    pub(crate) fn now(&self) -> Reading {
        self.player.now.clone()
    }

    /// The tap that begins a session, both counted from 0.
    pub(crate) fn beginning(week: u32, session: u32) -> Intent {
        intents::begin_row(&format!("{}.{}", week + 1, session + 1))
    }

    /// Begins a session and answers with its floor.
    pub(crate) fn begin(&mut self, week: u32, session: u32) -> Option<FloorScreen> {
        floor(self.player.dispatch(Self::beginning(week, session)))
    }

    /// Does the part that the floor calls for, or ends the session where none is left. Answers
    /// with the floor after it.
    pub(crate) fn part(&mut self, on: &FloorScreen) -> Option<FloorScreen> {
        let intent = self.next(on);
        floor(self.player.dispatch(intent))
    }

    /// The tap for what the floor calls for, after the rest and the work before it.
    pub(crate) fn next(&mut self, on: &FloorScreen) -> Intent {
        let rest = on.rest.as_ref().map_or(20_000, |rest| rest.left_ms.max(0));
        let work = 25_000 + i64::try_from(self.random.below(20_000)).unwrap_or(0);
        self.player.now = reading(self.player.now.wall_ms + rest + work);
        let Some(part) = &on.part else { return Intent::Finish };
        self.recorded += 1;
        let called = on.thumb.figure.as_ref().and_then(|figure| figure.text.parse::<u32>().ok());
        // One set in forty falls a repetition short.
        let short = self.random.below(40) == 0 && !on.thumb.effort.is_empty();
        let left = u8::try_from(2 + self.random.below(5)).unwrap_or(2);
        Intent::Record {
            part: Some(part.clone()),
            amount: called.filter(|_| short).map(|called| called.max(2) - 1),
            left_halves: (!short && !on.thumb.effort.is_empty()).then_some(left),
            ended: if short { HowEnded::Failed } else { HowEnded::AsCalled },
            helped: 0,
            last: false,
        }
    }
}

/// The floor, where it is what is shown.
pub(crate) fn floor(screen: Screen) -> Option<FloorScreen> {
    match screen {
        Screen::Floor { floor } => Some(floor),
        _ => None,
    }
}

/// 18:00 on the day that a lifter comes back.
pub(crate) fn today() -> Reading {
    reading(TODAY * DAY_MS + 18 * 3_600_000)
}

/// A reading of a device that has not been started anew since.
fn reading(wall_ms: i64) -> Reading {
    Reading {
        wall_ms,
        offset_minutes: 60,
        boot_ms: Some(wall_ms - 1_400_000_000_000),
        boot_id: Some("bench".to_owned()),
    }
}
