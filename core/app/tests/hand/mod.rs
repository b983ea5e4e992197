//! A hand at the screens: what is shown, the keys that were pressed, and nothing else.
#![allow(clippy::unwrap_used, dead_code, unreachable_pub)] // helpers outside #[test] functions

use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{
    Action, Answer, EngineError, FloorScreen, FormRow, FormScreen, Intent, Key, Look, Panel,
    PlanScreen, Reading, Row, Screen, TallyScreen, TodayScreen, WeeksScreen,
};

/// 2026-11-23, a Monday, at 18:00 local.
pub const MONDAY: i32 = 20_780;
const DAY_MS: i64 = 86_400_000;

pub struct Hand {
    pub engine: Arc<Engine>,
    pub now: Reading,
    pub shown: Answer,
    pub presses: u32,
}

pub fn at_day(day: i32) -> Reading {
    let wall_ms = i64::from(day) * DAY_MS + 18 * 3_600_000;
    Reading { wall_ms, offset_minutes: 0, boot_ms: None, boot_id: None }
}

impl Hand {
    pub fn new() -> Self {
        let engine = Engine::in_memory("en-GB".into()).unwrap();
        let now = at_day(MONDAY);
        let shown = engine.view(Look::Today { session: None, minutes: None }, now.clone()).unwrap();
        Self { engine, now, shown, presses: 0 }
    }

    /// With a plan that is on.
    pub fn with(plan: &str) -> Self {
        let mut hand = Self::new();
        hand.dispatch(Intent::adopt(plan));
        hand.today();
        hand
    }

    pub fn day(&self) -> i32 {
        i32::try_from(self.now.wall_ms / DAY_MS).unwrap()
    }

    /// The clock goes to 18:00 of another day.
    pub fn on_day(&mut self, day: i32) {
        self.now = at_day(day);
    }

    pub fn dispatch(&mut self, intent: Intent) {
        self.act(&Action::Do { intent, session: None, then: None }).unwrap();
    }

    pub fn act(&mut self, action: &Action) -> Result<(), EngineError> {
        self.now.wall_ms += 1_000;
        self.presses += 1;
        self.shown = self.engine.act(action.clone(), self.now.clone())?;
        Ok(())
    }

    pub fn press(&mut self, key: &Key) {
        assert!(key.enabled, "{key:?}");
        self.act(&key.action.clone()).unwrap_or_else(|error| panic!("{key:?}: {error:?}"));
    }

    pub fn view(&mut self, look: Look) {
        self.shown = self.engine.view(look, self.now.clone()).unwrap();
    }

    pub fn today(&mut self) -> TodayScreen {
        self.view(Look::Today { session: None, minutes: None });
        self.as_today()
    }

    pub fn as_today(&self) -> TodayScreen {
        match &self.shown.screen {
            Screen::Today { today } => today.clone(),
            other => panic!("{other:#?}"),
        }
    }

    pub fn floor(&self) -> FloorScreen {
        match &self.shown.screen {
            Screen::Floor { floor } => floor.clone(),
            other => panic!("{other:#?}"),
        }
    }

    pub fn tally(&self) -> TallyScreen {
        match &self.shown.screen {
            Screen::Tally { tally } => tally.clone(),
            other => panic!("{other:#?}"),
        }
    }

    pub fn weeks(&mut self) -> WeeksScreen {
        self.view(Look::Weeks);
        self.as_weeks()
    }

    pub fn as_weeks(&self) -> WeeksScreen {
        match &self.shown.screen {
            Screen::Weeks { weeks } => weeks.clone(),
            other => panic!("{other:#?}"),
        }
    }

    pub fn form(&self) -> FormScreen {
        match &self.shown.screen {
            Screen::Form { form } => form.clone(),
            other => panic!("{other:#?}"),
        }
    }

    pub fn plan(&self) -> PlanScreen {
        match &self.shown.screen {
            Screen::Plan { plan } => plan.clone(),
            other => panic!("{other:#?}"),
        }
    }

    pub fn panel(&self) -> Panel {
        self.floor().panel.expect("a panel is open")
    }

    /// The screen's keys, those of rows apart.
    pub fn keys(&self) -> Vec<Key> {
        match &self.shown.screen {
            Screen::Form { form } => form.keys.clone(),
            Screen::Equipment { equipment } => {
                equipment.gyms.iter().chain(&equipment.keys).cloned().collect()
            }
            Screen::Today { today } => today.keys.clone(),
            Screen::Weeks { weeks } => weeks.keys.clone(),
            Screen::Plan { plan } => plan.keys.clone(),
            Screen::Tally { tally } => tally.keys.clone(),
            Screen::Floor { floor } => match &floor.panel {
                Some(panel) => panel.keys.iter().chain([&panel.close]).cloned().collect(),
                None => {
                    let thumb = &floor.thumb;
                    let figure = thumb.figure.iter().flat_map(|figure| [&figure.down, &figure.up]);
                    let effort = thumb.effort.iter().map(|key| &key.key);
                    let single = [&thumb.main, &thumb.ended, &thumb.undo, &thumb.redo, &thumb.more];
                    figure
                        .chain(effort)
                        .chain(single.into_iter().flatten())
                        .chain(&thumb.beside)
                        .cloned()
                        .collect()
                }
            },
            other => panic!("{other:#?}"),
        }
    }

    pub fn has(&self, id: &str) -> bool {
        self.keys().iter().any(|key| key.id == id)
    }

    pub fn key(&self, id: &str) -> Key {
        let keys = self.keys();
        keys.iter().find(|key| key.id == id).cloned().unwrap_or_else(|| panic!("{id}: {keys:#?}"))
    }

    pub fn tap(&mut self, id: &str) {
        let key = self.key(id);
        self.press(&key);
    }

    /// A key of a row, by the row's text and the key's id.
    pub fn tap_row(&mut self, text: &str, id: &str) {
        let rows: Vec<(String, Vec<Key>)> = match &self.shown.screen {
            Screen::Form { form } => {
                form.rows.iter().map(|row| (row.text.clone(), row.keys.clone())).collect()
            }
            Screen::Today { today } => texts(&today.rows),
            Screen::Weeks { weeks } => {
                weeks.weeks.iter().flat_map(|week| texts(&week.rows)).collect()
            }
            Screen::Floor { floor } => texts(&floor.panel.as_ref().unwrap().rows),
            other => panic!("{other:#?}"),
        };
        let keys = rows.iter().find(|(found, _)| found == text);
        let keys = keys.unwrap_or_else(|| panic!("{text}: {rows:#?}")).1.clone();
        let key = keys.iter().find(|key| key.id == id);
        let key = key.unwrap_or_else(|| panic!("{id}: {keys:#?}")).clone();
        self.press(&key);
    }

    pub fn row(&self, text: &str) -> FormRow {
        let form = self.form();
        let row = form.rows.iter().find(|row| row.text == text);
        row.cloned().unwrap_or_else(|| panic!("{text}: {form:#?}"))
    }

    /// Steps a form's row up.
    pub fn up(&mut self, row: &str) {
        let key = self.row(row).up.expect("it steps");
        self.press(&key);
    }

    /// Writes into a form's row.
    pub fn write(&mut self, row: &str, text: &str) {
        let field = self.row(row).field.expect("it is written").id;
        self.type_in(&field, text);
    }

    pub fn type_in(&mut self, field: &str, text: &str) {
        let intent = Intent::Write { field: field.into(), text: text.into(), sure: false };
        self.dispatch(intent);
    }

    /// Exercises of Today's sheet.
    pub fn exercises(&mut self) -> Vec<String> {
        let today = self.today();
        today
            .rows
            .iter()
            .filter(|row| row.id.starts_with("entry-"))
            .map(|r| r.text.clone())
            .collect()
    }
}

fn texts(rows: &[Row]) -> Vec<(String, Vec<Key>)> {
    rows.iter().map(|row| (row.text.clone(), row.keys.clone())).collect()
}
