//! Keys of what is shown, by their ids.

use barwright_app::contract::{
    FloorScreen, FormScreen, Key, Look, Panel, PlanScreen, Screen, TallyScreen, TodayScreen,
    WeeksScreen,
};

use crate::Player;
use crate::screens::{self, at_today};

impl Player {
    /// Turns to the sheet of the session that is on.
    pub fn today(&mut self) -> TodayScreen {
        self.view(at_today());
        self.as_today()
    }

    /// Turns to the weeks.
    pub fn weeks(&mut self) -> WeeksScreen {
        self.view(Look::Weeks);
        self.as_weeks()
    }

    /// What is shown, a sheet.
    #[must_use]
    pub fn as_today(&self) -> TodayScreen {
        screens::today(self.shown.screen.clone())
    }

    /// What is shown, the weeks.
    #[must_use]
    pub fn as_weeks(&self) -> WeeksScreen {
        screens::weeks(self.shown.screen.clone())
    }

    /// What is shown, the floor.
    #[must_use]
    pub fn floor(&self) -> FloorScreen {
        screens::floor(self.shown.screen.clone())
    }

    /// What is shown, the tally.
    #[must_use]
    pub fn tally(&self) -> TallyScreen {
        screens::tally(self.shown.screen.clone())
    }

    /// What is shown, a form.
    #[must_use]
    pub fn form(&self) -> FormScreen {
        screens::form(self.shown.screen.clone())
    }

    /// What is shown, a plan.
    #[must_use]
    pub fn plan(&self) -> PlanScreen {
        screens::plan(self.shown.screen.clone())
    }

    /// The panel that is open on the floor.
    ///
    /// # Panics
    /// With the floor, where none is.
    #[must_use]
    pub fn panel(&self) -> Panel {
        let floor = self.floor();
        floor.panel.clone().unwrap_or_else(|| panic!("no panel is open: {floor:#?}"))
    }

    /// The screen's keys, those of rows apart: on the floor those of the panel alone, where one is
    /// open.
    #[must_use]
    pub fn keys(&self) -> Vec<Key> {
        match &self.shown.screen {
            Screen::Form { form } => form.keys.clone(),
            Screen::Equipment { equipment } => {
                equipment.gyms.iter().chain(&equipment.keys).cloned().collect()
            }
            Screen::Today { today } => today.keys.clone(),
            Screen::Weeks { weeks } => weeks.keys.clone(),
            Screen::Plan { plan } => plan.keys.clone(),
            Screen::Lift { lift } => lift.keys.clone(),
            Screen::Tally { tally } => tally.keys.clone(),
            Screen::Care { care } => care.keys.clone(),
            Screen::Floor { floor } => match &floor.panel {
                Some(panel) => panel.keys.iter().chain([&panel.close]).cloned().collect(),
                None => of_floor(floor),
            },
            other => panic!("no keys are known of {other:#?}"),
        }
    }

    /// Whether the screen has a key.
    #[must_use]
    pub fn has(&self, id: &str) -> bool {
        self.keys().iter().any(|key| key.id == id)
    }

    /// A key of the screen.
    ///
    /// # Panics
    /// With the keys that there are.
    #[must_use]
    pub fn key(&self, id: &str) -> Key {
        by_id(&self.keys(), id)
    }

    /// Presses a key that can be pressed.
    ///
    /// # Panics
    /// With the key, where it can't or is refused.
    pub fn press(&mut self, key: &Key) {
        assert!(key.enabled, "{key:?}");
        self.act(&key.action.clone()).unwrap_or_else(|error| panic!("{key:?}: {error:?}"));
    }

    /// Presses a key of the screen.
    pub fn tap(&mut self, id: &str) {
        let key = self.key(id);
        self.press(&key);
    }
}

/// A key among others.
pub(crate) fn by_id(keys: &[Key], id: &str) -> Key {
    let found = keys.iter().find(|key| key.id == id);
    found.cloned().unwrap_or_else(|| panic!("no key {id} among {keys:#?}"))
}

fn of_floor(floor: &FloorScreen) -> Vec<Key> {
    let thumb = &floor.thumb;
    let figure = thumb.figure.iter().flat_map(|figure| [&figure.down, &figure.up]);
    let effort = thumb.effort.iter().flat_map(|one| std::iter::once(&one.key).chain(&one.half));
    let single = [&thumb.main, &thumb.ended, &thumb.undo, &thumb.redo, &thumb.more];
    let rest = floor.rest.iter().flat_map(|rest| [&rest.shorter, &rest.longer]);
    let keys = figure.chain(effort).chain(single.into_iter().flatten()).chain(&thumb.beside);
    keys.chain(rest).cloned().collect()
}
