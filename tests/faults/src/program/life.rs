//! Some weeks of a lifter on the demo's plan, through the whole engine, on a disk that writes down
//! all that is done to it; and what a lifter was shown after each tap.

use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{EngineError, Intent, Look, Reading, Screen};
use barwright_faults::Disk;
use barwright_player::screens::{at_floor, at_lift, at_today};
use barwright_player::{intents, record_by};

use crate::chance::Chance;

pub(crate) const PLAN: &str = include_str!("../../../../core/app/src/engine/demo/plan.toml");

/// A lifter whose taps are counted.
pub(crate) struct Life {
    // Before the disk that it is on.
    pub(crate) engine: Arc<Engine>,
    pub(crate) disk: Disk,
    chance: Chance,
    /// Minutes since the beginning.
    minutes: i64,
    taps: u64,
    /// Entries in the log after each tap, from none.
    pub(crate) entries: Vec<u64>,
    /// What was shown after each.
    pub(crate) shown: Vec<Shown>,
    /// When each was made.
    pub(crate) times: Vec<Reading>,
}

impl Life {
    /// As many sessions as asked for, the last one left in its midst where `open`.
    pub(crate) fn lived(seed: u64, sessions: u64, open: bool) -> Self {
        let disk = Disk::new();
        let engine = Engine::open_in(disk.place(), "en").expect("a new store");
        let mut life = Self {
            disk,
            engine,
            chance: Chance::of(seed, 2),
            minutes: 0,
            taps: 0,
            entries: Vec::new(),
            times: Vec::new(),
            shown: Vec::new(),
        };
        life.note(at(0));
        life.tap(Intent::adopt(PLAN)).expect("the demo's plan");
        life.tap(intents::write("body-mass", "81 kg")).expect("a body mass");
        for session in 0..sessions {
            life.session(open && session + 1 == sessions);
        }
        life
    }

    fn tap(&mut self, intent: Intent) -> Result<(), EngineError> {
        let at = at(self.minutes);
        self.minutes += 1 + self.chance.below(3) as i64;
        self.engine.dispatch(intent, at.clone())?;
        self.taps += 1;
        self.disk.acknowledge(self.taps);
        self.note(at);
        Ok(())
    }

    /// Writes down what there is, and what is shown.
    fn note(&mut self, at: Reading) {
        self.shown.push(shown(&self.engine, &at));
        self.entries.push(self.engine.count_records().expect("it is open"));
        self.times.push(at);
    }

    pub(crate) fn session(&mut self, open: bool) {
        self.tap(intents::begin()).expect("the next session");
        let most = if open { 9 } else { 40 };
        for set in 0..most {
            if !self.record() {
                break;
            }
            match self.chance.below(12) {
                0 => {
                    let _ = self.tap(Intent::Undo).and_then(|()| self.tap(Intent::Redo));
                }
                1 => {
                    let _ = self.tap(Intent::RestBy { seconds: 15 });
                }
                _ => {}
            }
            // The device gives the file up now and then, as in a pocket.
            if set == 5 && self.chance.below(3) == 0 {
                self.engine.suspend().expect("the disk is well");
            }
        }
        if open {
            return;
        }
        self.tap(Intent::Finish).expect("it runs");
        self.engine.suspend().expect("the disk is well");
        self.minutes += 60 * 40 + self.chance.below(600) as i64;
    }

    fn record(&mut self) -> bool {
        let left = self.chance.below(7) as u8;
        record_by(|intent| self.tap(intent), left, |entry| format!("{} kg", 30 + 10 * (entry % 5)))
    }
}

/// Minutes after the beginning.
fn at(minutes: i64) -> Reading {
    Reading {
        wall_ms: 1_795_500_000_000 + minutes * 60_000,
        offset_minutes: 60,
        boot_ms: Some(5_000_000 + minutes * 60_000),
        boot_id: Some("a".into()),
    }
}

/// What a lifter may look at, at one moment.
#[derive(Debug, PartialEq)]
pub(crate) struct Shown(Vec<Result<Screen, String>>);

/// Looks at everything that is read from the log and from what is derived.
pub(crate) fn shown(engine: &Engine, at: &Reading) -> Shown {
    let looks = [
        at_floor(None),
        at_today(),
        Look::Tally,
        Look::Weeks,
        Look::Balance { weeks: Some(8) },
        at_lift("back-squat"),
        at_lift("bench-press"),
        at_lift("deadlift"),
    ];
    let show = |look| {
        let answer = engine.view(look, at.clone());
        answer.map(|answer| answer.screen).map_err(|error| words(&error))
    };
    Shown(looks.into_iter().map(show).collect())
}

fn words(error: &EngineError) -> String {
    match error {
        // There is nothing of the kind to show, which is an answer.
        EngineError::Refused { reason, .. } => reason.clone(),
        error => format!("failed: {error:?}"),
    }
}

impl Shown {
    /// One of them failed for another reason than that there is nothing to show.
    pub(crate) fn failed(&self) -> bool {
        self.0.iter().any(|shown| shown.as_ref().is_err_and(|words| words.starts_with("failed")))
    }
}
