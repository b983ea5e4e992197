//! The player: an engine, a clock that goes when it is told to, and what is shown.

use std::path::Path;
use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{
    Action, Answer, CareScreen, EngineError, FloorScreen, Intent, LiftScreen, Look, Reading,
    Screen, TallyScreen, TodayScreen, WeeksScreen,
};
use tempfile::TempDir;

use crate::clock::{DAY_MS, at_day, pass};
use crate::screens::{self, at_floor, at_lift, at_today};
use crate::{clock, gyms};

/// Somebody at a device: what is shown, and what was pressed.
pub struct Player {
    /// The engine that is played on.
    pub engine: Arc<Engine>,
    /// What the device's clocks say.
    pub now: Reading,
    /// The last answer of a tap or of a look that turned to it.
    pub shown: Answer,
    /// Taps so far.
    pub presses: u32,
    tap_ms: i64,
    /// The folder with the store, where it is on disk; and what it was opened in.
    folder: Option<TempDir>,
    locale: String,
}

impl Default for Player {
    fn default() -> Self {
        Self::new()
    }
}

impl Player {
    /// On a store in memory, at 18:00 on [`clock::MONDAY`]; each tap takes a second.
    #[must_use]
    pub fn new() -> Self {
        Self::at(at_day(clock::MONDAY))
    }

    /// On a store in memory, at a time.
    #[must_use]
    pub fn at(now: Reading) -> Self {
        let engine = Engine::in_memory("en-GB".into()).unwrap_or_else(|error| panic!("{error}"));
        Self::on(engine, now)
    }

    /// On an engine that is there already.
    #[must_use]
    pub fn on(engine: Arc<Engine>, now: Reading) -> Self {
        let shown = engine.view(at_today(), now.clone());
        let shown = shown.unwrap_or_else(|error| panic!("{error}"));
        let locale = "en-GB".to_owned();
        Self { engine, now, shown, presses: 0, tap_ms: 1_000, folder: None, locale }
    }

    /// On a new store in a folder of its own, which goes with the player.
    #[must_use]
    pub fn stored(now: Reading, locale: &str) -> Self {
        let folder = tempfile::tempdir().unwrap_or_else(|error| panic!("{error}"));
        let mut player = Self::on(open(folder.path(), locale), now);
        player.locale = locale.to_owned();
        player.folder = Some(folder);
        player
    }

    /// As [`Player::new`], with a plan that is on.
    #[must_use]
    pub fn with(plan: &str) -> Self {
        Self::new().takes_up(plan)
    }

    /// So many seconds pass before each tap.
    #[must_use]
    pub fn taking(mut self, seconds: i64) -> Self {
        self.tap_ms = seconds * 1_000;
        self
    }

    /// Takes a plan up, and looks at its sheet.
    #[must_use]
    pub fn takes_up(mut self, plan: &str) -> Self {
        self.dispatch(Intent::adopt(plan));
        self.today();
        self
    }

    /// Trains in a gym from here on.
    #[must_use]
    pub fn trains_in(mut self, gym: &str) -> Self {
        self.dispatch(Intent::AddGym { text: gym.into() });
        self.dispatch(Intent::ChooseGym { name: gyms::name(gym).into() });
        self
    }

    /// The folder that the store lies in.
    ///
    /// # Panics
    /// Where it is in memory.
    #[must_use]
    pub fn folder(&self) -> &Path {
        self.folder.as_ref().unwrap_or_else(|| panic!("the store is in memory")).path()
    }

    /// The process ends in order, something happens to the file, and another process opens it.
    pub fn reopened_after(&mut self, meanwhile: impl FnOnce(&Path)) {
        self.engine.shut_down().unwrap_or_else(|error| panic!("{error}"));
        meanwhile(&self.folder().join(STORE));
        self.engine = open(self.folder(), &self.locale);
        self.view(self.shown.look.clone());
    }

    /// The process ends in order, and another one opens the file.
    pub fn reopened(&mut self) {
        self.reopened_after(|_| ());
    }

    /// The process ends without a word, and another one opens the file and waits for the first call:
    /// what was shown is not looked at again.
    pub fn killed(&mut self) {
        // The file is let go of before it is opened again.
        let other = Engine::in_memory(self.locale.clone());
        self.engine = other.unwrap_or_else(|error| panic!("{error}"));
        self.engine = open(self.folder(), &self.locale);
    }

    /// The day by the wall clock and UTC, in days since 1970-01-01.
    #[must_use]
    pub fn day(&self) -> i32 {
        i32::try_from(self.now.wall_ms / DAY_MS).unwrap_or_else(|error| panic!("{error}"))
    }

    /// The clock goes to 18:00 of another day.
    pub fn on_day(&mut self, day: i32) {
        self.now = at_day(day);
    }

    /// Seconds pass.
    pub fn wait(&mut self, seconds: i64) {
        pass(&mut self.now, seconds * 1_000);
    }

    /// Days pass.
    pub fn days(&mut self, days: i64) {
        pass(&mut self.now, days * DAY_MS);
    }

    /// Does what a key says; or what it was refused with.
    ///
    /// # Errors
    /// As the engine's.
    pub fn act(&mut self, action: &Action) -> Result<(), EngineError> {
        pass(&mut self.now, self.tap_ms);
        self.presses += 1;
        self.shown = self.engine.act(action.clone(), self.now.clone())?;
        Ok(())
    }

    /// A tap that is taken, or what it was refused with.
    ///
    /// # Errors
    /// As the engine's.
    pub fn try_dispatch(&mut self, intent: Intent) -> Result<Screen, EngineError> {
        self.act(&Action::Do { intent, session: None, then: None })?;
        Ok(self.shown.screen.clone())
    }

    /// A tap that is taken, and the screen after it.
    ///
    /// # Panics
    /// With the refusal and what was shown.
    pub fn dispatch(&mut self, intent: Intent) -> Screen {
        let said = format!("{intent:?}");
        match self.try_dispatch(intent) {
            Ok(screen) => screen,
            Err(error) => panic!("{said}: {error:?} on {:#?}", self.shown.screen),
        }
    }

    /// Turns to a screen.
    pub fn view(&mut self, look: Look) {
        let shown = self.engine.view(look, self.now.clone());
        self.shown = shown.unwrap_or_else(|error| panic!("{error:?}"));
    }

    /// A screen as it would be now; what is shown stays.
    #[must_use]
    pub fn see(&self, look: Look) -> Screen {
        let seen = self.engine.view(look, self.now.clone());
        seen.unwrap_or_else(|error| panic!("{error:?}")).screen
    }

    /// The sheet of the session that is on, as it would be now.
    #[must_use]
    pub fn see_today(&self) -> TodayScreen {
        screens::today(self.see(at_today()))
    }

    /// The floor as it would be now, with a panel open where one is named.
    #[must_use]
    pub fn see_floor(&self, panel: Option<&str>) -> FloorScreen {
        screens::floor(self.see(at_floor(panel)))
    }

    /// The weeks as they would be now.
    #[must_use]
    pub fn see_weeks(&self) -> WeeksScreen {
        screens::weeks(self.see(Look::Weeks))
    }

    /// The tally as it would be now.
    #[must_use]
    pub fn see_tally(&self) -> TallyScreen {
        screens::tally(self.see(Look::Tally))
    }

    /// A lift as it would be now.
    #[must_use]
    pub fn see_lift(&self, exercise: &str) -> LiftScreen {
        screens::lift(self.see(at_lift(exercise)))
    }

    /// What stands under Care now.
    #[must_use]
    pub fn see_care(&self) -> CareScreen {
        screens::care(self.see(Look::Care))
    }
}

const STORE: &str = "records.db";

fn open(folder: &Path, locale: &str) -> Arc<Engine> {
    let path = folder.join(STORE).display().to_string();
    Engine::open(path, locale.to_owned()).unwrap_or_else(|error| panic!("{error}"))
}
