//! What is made and mended by hand, through the public door: by the keys of the screens alone.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use std::path::PathBuf;
use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{
    Action, Answer, EngineError, FormRow, FormScreen, Intent, Key, Look, Reading, RefusalCode,
    Screen,
};

/// A hand at the screens: what is shown, and the keys that were pressed.
struct Hand {
    engine: Arc<Engine>,
    path: PathBuf,
    now: Reading,
    shown: Answer,
    presses: u32,
}

fn reading() -> Reading {
    Reading { wall_ms: 1_795_000_000_000, offset_minutes: 60, boot_ms: None, boot_id: None }
}

impl Hand {
    fn new(folder: &tempfile::TempDir) -> Self {
        let path = folder.path().join("records.db");
        let engine = open(&path);
        let shown = engine.view(Look::Equipment, reading()).unwrap();
        Self { engine, path, now: reading(), shown, presses: 0 }
    }

    /// The process ends, and another one opens the file.
    fn reopened(&mut self) {
        let look = self.shown.look.clone();
        self.engine.shut_down().unwrap();
        self.engine = open(&self.path);
        self.shown = self.engine.view(look, self.now.clone()).unwrap();
    }

    fn act(&mut self, action: &Action) -> Result<(), EngineError> {
        self.now.wall_ms += 1_000;
        self.presses += 1;
        self.shown = self.engine.act(action.clone(), self.now.clone())?;
        Ok(())
    }

    fn press(&mut self, key: &Key) {
        assert!(key.enabled, "{key:?}");
        self.act(&key.action.clone()).unwrap();
    }

    fn view(&mut self, look: Look) {
        self.shown = self.engine.view(look, self.now.clone()).unwrap();
    }

    fn form(&self) -> &FormScreen {
        match &self.shown.screen {
            Screen::Form { form } => form,
            other => panic!("{other:#?}"),
        }
    }

    /// A key of the screen, by its id.
    fn key(&self, id: &str) -> Key {
        let keys: Vec<Key> = match &self.shown.screen {
            Screen::Form { form } => form.keys.clone(),
            Screen::Equipment { equipment } => {
                equipment.gyms.iter().chain(&equipment.keys).cloned().collect()
            }
            Screen::Today { today } => today.keys.clone(),
            other => panic!("{other:#?}"),
        };
        keys.iter().find(|key| key.id == id).cloned().unwrap_or_else(|| panic!("{id}: {keys:#?}"))
    }

    fn tap(&mut self, id: &str) {
        let key = self.key(id);
        self.press(&key);
    }

    fn row(&self, text: &str) -> FormRow {
        let form = self.form();
        let row = form.rows.iter().find(|row| row.text == text);
        row.cloned().unwrap_or_else(|| panic!("{text}: {form:#?}"))
    }

    fn up(&mut self, row: &str) {
        let key = self.row(row).up.expect("it steps");
        self.press(&key);
    }

    fn down(&mut self, row: &str) {
        let key = self.row(row).down.expect("it steps");
        self.press(&key);
    }

    fn write(&mut self, row: &str, text: &str) {
        let field = self.row(row).field.expect("it is written").id;
        let intent = Intent::Write { field, text: text.into(), sure: false };
        self.act(&Action::Do { intent, session: None, then: None }).unwrap();
    }

    /// The gym's title as Equipment shows it, and its rows.
    fn equipment(&mut self) -> (String, Vec<String>) {
        self.view(Look::Equipment);
        match &self.shown.screen {
            Screen::Equipment { equipment } => {
                let rows = equipment.rows.iter().map(|row| row.text.clone()).collect();
                (equipment.title.clone(), rows)
            }
            other => panic!("{other:#?}"),
        }
    }
}

fn open(path: &std::path::Path) -> Arc<Engine> {
    Engine::open(path.to_str().unwrap().into(), "en-GB".into()).unwrap()
}

#[test]
fn a_gym_is_made_by_its_keys_and_holds_once_it_is_used() {
    let folder = tempfile::tempdir().unwrap();
    let mut hand = Hand::new(&folder);
    let before = hand.equipment();
    hand.tap("usual-kg");
    let from = hand.row("25 kg").value;
    hand.up("25 kg");
    assert_ne!(hand.row("25 kg").value, from);
    hand.write("Name", "Boathouse");
    assert_eq!(hand.form().title, "Gym: Boathouse");
    assert_eq!(hand.form().file.as_ref().unwrap().name, "boathouse.toml");
    // Nothing goes by it yet.
    assert_eq!(hand.equipment(), before);
    hand.tap("go-on");
    hand.tap("take-up");
    let (title, rows) = hand.equipment();
    assert_eq!(title, "Boathouse");
    assert_eq!(rows.len(), before.1.len());
    // Its file keeps its comments, and the gym is mended from there.
    hand.tap("mend");
    assert!(hand.form().file.as_ref().unwrap().text.starts_with("# "));
    hand.write("Name", "Old boathouse");
    hand.tap("take-up");
    assert_eq!(hand.equipment().0, "Old boathouse");
    let Screen::Equipment { equipment } = &hand.shown.screen else { panic!() };
    assert_eq!(equipment.gyms.len(), 3, "the same gym under its new name");
}

#[test]
fn a_draft_outlives_the_process_and_each_step_goes_back_and_forth() {
    let folder = tempfile::tempdir().unwrap();
    let mut hand = Hand::new(&folder);
    hand.tap("usual-lb");
    let begun = hand.form().clone();
    assert!(!hand.key("undo").enabled);
    hand.up("45 lb");
    let stepped = hand.form().clone();
    hand.down("2.5 lb");
    hand.reopened();
    hand.tap("undo");
    assert_eq!(hand.form().rows.len(), stepped.rows.len());
    let values = |form: &FormScreen| -> Vec<String> {
        form.rows.iter().map(|row| row.value.clone()).collect()
    };
    assert_eq!(values(hand.form()), values(&stepped));
    hand.tap("undo");
    assert_eq!(values(hand.form()), values(&begun));
    hand.reopened();
    hand.tap("redo");
    assert_eq!(values(hand.form()), values(&stepped));
    hand.tap("drop");
    let Screen::Equipment { equipment } = &hand.shown.screen else { panic!() };
    assert!(equipment.keys.iter().all(|key| key.id != "go-on"));
    hand.reopened();
    hand.tap("usual-lb");
}

#[test]
fn what_is_wrong_stands_beside_its_row_and_is_not_used() {
    let folder = tempfile::tempdir().unwrap();
    let mut hand = Hand::new(&folder);
    hand.tap("usual-kg");
    hand.write("25 kg", "a lot");
    let row = hand.row("25 kg");
    assert!(row.warns);
    assert_eq!(row.faults.len(), 1, "{row:#?}");
    assert_eq!(hand.form().rows.iter().filter(|row| row.warns).count(), 1);
    assert!(!hand.key("take-up").enabled);
    let refused = hand.act(&hand.key("take-up").action).unwrap_err();
    assert!(matches!(refused, EngineError::Refused { code: RefusalCode::Faults, .. }));
    hand.write("25 kg", "3");
    assert!(hand.form().rows.iter().all(|row| !row.warns));
    hand.tap("take-up");
}

#[test]
fn a_tap_that_was_meant_for_another_step_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let mut hand = Hand::new(&folder);
    hand.tap("usual-kg");
    let remove = hand.row("25 kg").keys.into_iter().find(|key| key.id == "remove").unwrap();
    let field = hand.row("20 kg").field.unwrap().id;
    hand.press(&remove);
    let shown = hand.form().clone();
    // The same tap twice takes no second plate away.
    let twice = hand.act(&remove.action).unwrap_err();
    assert!(matches!(twice, EngineError::Refused { code: RefusalCode::Stale, .. }), "{twice:?}");
    let intent = Intent::Write { field, text: "9".into(), sure: false };
    let late = hand.act(&Action::Do { intent, session: None, then: None }).unwrap_err();
    assert!(matches!(late, EngineError::Refused { code: RefusalCode::Stale, .. }), "{late:?}");
    hand.view(hand.shown.look.clone());
    assert_eq!(*hand.form(), shown);
    // One that is being made is not lost by beginning another.
    hand.view(Look::Equipment);
    hand.tap("go-on");
    assert_eq!(*hand.form(), shown);
}
