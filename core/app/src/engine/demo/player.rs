//! An invented lifter who goes through sessions by the keys of the screens.

use crate::contract::{
    Action, Draft, EngineError, FloorScreen, HowEnded, Intent, Look, Reading, Screen,
};
use crate::engine::Engine;

/// Loads the lifter starts with where there is nothing to go by, by exercise.
const FOUND: &[(&str, &str)] = &[
    ("Rear-foot-raised split squat", "14 kg"),
    ("Seated cable row", "50 kg"),
    ("Leg press", "120 kg"),
    ("Goblet squat", "24 kg"),
    ("Leg extension", "42 kg"),
];

/// The lifter and the clock on the wall.
pub(super) struct Player<'a> {
    engine: &'a Engine,
    now: Reading,
    /// Counts taps: what differs from day to day follows from it, the same on every device.
    taps: u32,
}

impl<'a> Player<'a> {
    pub(super) fn new(engine: &'a Engine, now: Reading) -> Self {
        Self { engine, now, taps: 0 }
    }

    pub(super) fn set_clock(&mut self, now: Reading) {
        self.now = now;
    }

    pub(super) fn tap(&mut self, intent: Intent) -> Result<(), EngineError> {
        self.engine.dispatch(intent, self.now.clone()).map(|_| ())
    }

    pub(super) fn write(&mut self, field: &str, text: &str) -> Result<(), EngineError> {
        self.tap(Intent::Write { field: field.to_owned(), text: text.to_owned(), sure: false })
    }

    /// A whole session, from its first set to its tally.
    pub(super) fn session(&mut self, row: &str) -> Result<(), EngineError> {
        self.tap(Intent::Begin { session: Some(row.to_owned()), minutes: None, sure: false })?;
        self.wait(360);
        while let Some(floor) = self.floor()? {
            self.part(&floor)?;
        }
        Ok(())
    }

    fn wait(&mut self, seconds: i64) {
        self.now.wall_ms += seconds * 1000;
    }

    /// The floor, as long as the session runs.
    fn floor(&self) -> Result<Option<FloorScreen>, EngineError> {
        let look = Look::Floor { draft: Draft::default() };
        match self.engine.view(look, self.now.clone())?.screen {
            Screen::Floor { floor } => Ok(Some(floor)),
            _ => Ok(None),
        }
    }

    /// One part: rest, work, and the key that says so.
    fn part(&mut self, floor: &FloorScreen) -> Result<(), EngineError> {
        self.taps = self.taps.wrapping_add(1);
        let rest = floor.rest.as_ref().map_or(20, |rest| rest.left_ms.max(0) / 1000);
        self.wait(rest + 18 + i64::from(self.dice() % 25));
        let Some(part) = &floor.part else { return self.tap(Intent::Finish) };
        let entry = part.split('.').next().unwrap_or_default();
        if self.swaps(floor)? {
            return Ok(());
        }
        if floor.bar.total.is_empty() {
            let found = FOUND.iter().find(|(name, _)| *name == floor.call.exercise);
            if let Some((_, load)) = found {
                return self.write(&format!("load:{entry}"), load);
            }
        }
        if let Some(main) = &floor.thumb.main
            && main.id == "start"
        {
            return self.press(&main.action);
        }
        let record = |amount, left_halves, ended| Intent::Record {
            part: Some(part.clone()),
            amount,
            left_halves,
            ended,
            helped: 0,
            last: false,
        };
        let dice = self.dice();
        // Once in a while a set falls short, or form goes.
        if dice % 41 == 7 && !floor.thumb.effort.is_empty() {
            let called = floor.thumb.figure.as_ref().and_then(|figure| figure.text.parse().ok());
            let short: u32 = called.unwrap_or(5).max(2) - 1;
            let ended = if dice.is_multiple_of(2) { HowEnded::Form } else { HowEnded::Failed };
            return self.tap(record(Some(short), None, ended));
        }
        let left = format!("left-{}", self.left(floor));
        match floor.thumb.effort.iter().find(|effort| effort.key.id == left) {
            Some(effort) => self.press(&effort.key.action),
            None => match &floor.thumb.main {
                Some(main) => self.press(&main.action),
                None => self.tap(record(None, None, HowEnded::AsCalled)),
            },
        }
    }

    fn press(&mut self, action: &Action) -> Result<(), EngineError> {
        self.engine.act(action.clone(), self.now.clone()).map(|_| ())
    }

    /// What the gym lacks is swapped for the plan's first substitute that it has.
    fn swaps(&mut self, floor: &FloorScreen) -> Result<bool, EngineError> {
        if floor.call.exercise != "Leg extension" {
            return Ok(false);
        }
        let draft = Draft { panel: Some("swap".to_owned()), ..Draft::default() };
        let look = Look::Floor { draft };
        let Screen::Floor { floor } = self.engine.view(look, self.now.clone())?.screen else {
            return Ok(false);
        };
        let key = floor.panel.and_then(|panel| panel.keys.into_iter().find(|key| key.enabled));
        match key {
            Some(key) => self.press(&key.action).map(|()| true),
            None => Ok(false),
        }
    }

    /// How many are left: about what was asked, a day's form apart.
    fn left(&self, floor: &FloorScreen) -> usize {
        let asked: Vec<usize> = floor
            .call
            .sentence
            .split(|c: char| !c.is_ascii_digit())
            .filter_map(|digits| digits.parse().ok())
            .collect();
        let target = match floor.call.sentence.rfind("in reserve") {
            Some(_) => asked.last().copied().unwrap_or(2),
            None => 10_usize.saturating_sub(asked.last().copied().unwrap_or(8)),
        };
        match self.dice() % 5 {
            0 => target.saturating_sub(1),
            4 => (target + 1).min(5),
            _ => target.min(5),
        }
    }

    /// A number that looks like chance and never is.
    fn dice(&self) -> u32 {
        let mut x = self.taps.wrapping_mul(0x9E37_79B9) ^ 0x5bd1_e995;
        x ^= x >> 15;
        x = x.wrapping_mul(0x2c1b_3c6d);
        x ^ (x >> 12)
    }
}
