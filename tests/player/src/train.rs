//! Sets and sessions without a hand at each key.

use barwright_app::contract::{EngineError, FloorScreen, HowEnded, Intent, RefusalCode, Screen};

use crate::screens::at_floor;
use crate::{Player, intents};

impl Player {
    /// The floor, while it has a part to do.
    #[must_use]
    pub fn to_do(&self) -> Option<FloorScreen> {
        match self.see(at_floor(None)) {
            Screen::Floor { floor } if floor.part.is_some() => Some(floor),
            _ => None,
        }
    }

    /// Begins the session that is on.
    pub fn begin(&mut self) -> Screen {
        self.dispatch(intents::begin())
    }

    /// Records what is called, with how it ended.
    pub fn record(&mut self, ended: HowEnded) -> Screen {
        self.dispatch(intents::done(None, None, ended))
    }

    /// Does the ramp that stands before the work.
    pub fn ramp(&mut self) {
        while self.to_do().is_some_and(|floor| floor.call.sentence.starts_with("Ramp set")) {
            self.record(HowEnded::AsCalled);
        }
    }

    /// Ends the session that runs.
    pub fn finish(&mut self) -> Screen {
        self.dispatch(Intent::Finish)
    }

    /// Does a session whole, as called: what is on, or one by its row. Answers each set's exercise
    /// and load.
    pub fn train(&mut self, row: Option<&str>) -> Vec<String> {
        self.dispatch(row.map_or_else(intents::begin, intents::begin_row));
        let mut called = Vec::new();
        while let Some(floor) = self.to_do() {
            called.push(format!("{} {}", floor.call.exercise, floor.bar.total));
            self.record(HowEnded::AsCalled);
        }
        self.finish();
        called
    }
}

/// Records the part that is called, so many half repetitions left, by taps of the test's own. A load
/// that nobody knows yet is said first, for one entry after another, and what can't be loaded is left
/// out. False where there is nothing to record.
pub fn record_by(
    mut tap: impl FnMut(Intent) -> Result<(), EngineError>,
    left_halves: u8,
    load: impl Fn(u32) -> String,
) -> bool {
    let record = || intents::done(None, Some(left_halves), HowEnded::AsCalled);
    match tap(record()) {
        Ok(()) => return true,
        Err(EngineError::Refused { code: RefusalCode::LoadNeeded, .. }) => {}
        Err(_) => return false,
    }
    let told = (0..20).any(|entry| {
        let load = load(entry);
        let change = Intent::ChangeLoad { entry, load, only_next: false, sure: true };
        tap(change).is_ok() && tap(record()).is_ok()
    });
    told || tap(Intent::SkipSet).is_ok()
}
