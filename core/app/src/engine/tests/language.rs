//! Every screen in a language of nobody's: what still reads as English was not said by a phrase.

use std::collections::BTreeSet;
use std::sync::Arc;

use barwright_store::Place;
use serde::Serialize;
use serde_json::Value;

use super::super::Engine;
use crate::contract::{
    Action, Answer, Draft, Edit, Effect, EngineError, FloorScreen, FormOf, Intent, Key, Look,
    Reading, Screen,
};
use crate::locale::Locale;
use crate::phrase::Language;

const PLAN: &str = include_str!("plan.toml");
const GYM: &str = include_str!("gym.toml");

/// Fields that no lifter reads: names for programs, places in a file and its own lines.
const UNREAD: &[&str] = &[
    "id",
    "action",
    "part",
    "colour",
    "ink",
    "underline",
    "check",
    "row",
    "exercise",
    "before",
    "after",
    "code",
    "kind",
    "report",
    "kept_at",
    "look",
    "ask",
    "file",
];

/// A lifter to whom nobody speaks English.
pub(super) struct Abroad {
    engine: Arc<Engine>,
    now: Reading,
    /// All that was read, each text once for the field it stood in.
    pub(super) texts: BTreeSet<(String, String)>,
    /// Letters that were read in all.
    pub(super) letters: usize,
}

impl Abroad {
    pub(super) fn new(locale: Locale) -> Self {
        let now = Reading {
            wall_ms: 1_795_000_000_000,
            offset_minutes: 60,
            boot_ms: Some(5_000),
            boot_id: Some("boot".into()),
        };
        let engine = Engine::speaking(Place::Memory, locale).unwrap();
        Self { engine, now, texts: BTreeSet::new(), letters: 0 }
    }

    fn wait(&mut self, seconds: i64) {
        self.now.wall_ms += seconds * 1000;
        self.now.boot_ms = self.now.boot_ms.map(|ms| ms + seconds * 1000);
    }

    /// Reads every text that a lifter does.
    fn read(&mut self, said: &impl Serialize) {
        let said = serde_json::to_value(said).unwrap();
        self.texts("", &said);
    }

    fn texts(&mut self, field: &str, value: &Value) {
        match value {
            Value::Object(fields) => {
                // A file's own line stands beside what is wrong with it; what a max moves is said
                // as data, too; what stands in a field is as it is typed.
                let beside = [("underline", "text"), ("row", "exercise"), ("numeric", "value")];
                let own = |name: &str| {
                    beside.iter().any(|(mark, of)| fields.contains_key(*mark) && name == *of)
                };
                // A panel is read; which one a look opens is a name for programs.
                let opens = |name: &str, value: &Value| name == "panel" && value.is_string();
                let fields = fields.iter().filter(|(name, value)| {
                    !UNREAD.contains(&name.as_str()) && !opens(name, value) && !own(name)
                });
                fields.for_each(|(name, value)| self.texts(name, value));
            }
            Value::Array(values) => values.iter().for_each(|value| self.texts(field, value)),
            Value::String(text) => self.text(field, text),
            Value::Null | Value::Bool(_) | Value::Number(_) => {}
        }
    }

    fn text(&mut self, field: &str, text: &str) {
        self.letters += text.chars().filter(|one| one.is_alphabetic()).count();
        self.texts.insert((field.to_owned(), text.to_owned()));
    }

    fn keep(&mut self, answer: Result<Answer, EngineError>) -> Option<Answer> {
        match answer {
            Ok(answer) => {
                self.read(&answer.screen);
                for effect in &answer.effects {
                    if let Effect::RingAt { text, next, .. } = effect {
                        self.read(&[text, next]);
                    }
                }
                Some(answer)
            }
            Err(error) => {
                self.read(&error);
                None
            }
        }
    }

    pub(super) fn view(&mut self, look: Look) -> Option<Screen> {
        let answer = self.engine.view(look, self.now.clone());
        self.keep(answer).map(|answer| answer.screen)
    }

    pub(super) fn tap(&mut self, intent: Intent) -> Option<Answer> {
        let answer = self.engine.dispatch(intent, self.now.clone());
        self.keep(answer)
    }

    fn act(&mut self, action: &Action) -> Option<Answer> {
        let answer = self.engine.act(action.clone(), self.now.clone());
        self.keep(answer)
    }

    fn write(&mut self, field: &str, text: &str) -> Option<Answer> {
        self.tap(Intent::Write { field: field.into(), text: text.into(), sure: false })
    }

    fn floor(&mut self, panel: Option<&str>) -> Option<FloorScreen> {
        let draft = Draft { panel: panel.map(str::to_owned), ..Draft::default() };
        match self.view(Look::Floor { draft })? {
            Screen::Floor { floor } => Some(floor),
            _ => None,
        }
    }

    /// A gym by its form, with every part of it open once, and something wrong in it.
    fn a_gym_by_hand(&mut self) {
        let of = FormOf::Gym;
        let edit = |place: &str, edit: Edit| {
            let place = place.to_owned();
            Intent::Edit { of, place, edit, step: None }
        };
        let look = |at: &str| Look::Form { of, at: at.into(), text: String::new() };
        self.tap(edit("nothing:kg", Edit::Open)).unwrap();
        for (list, what) in [
            ("bar", "barbell"),
            ("bar", "ez-bar"),
            ("plate", "set"),
            ("dumbbells", "dumbbell"),
            ("dumbbells", "kettlebell"),
            ("stack", "pulldown"),
            ("machine", "leg-press"),
            ("also", "rack"),
        ] {
            self.tap(edit(list, Edit::Add { what: what.into() })).unwrap();
        }
        for at in ["", "bar.0", "plate.1", "dumbbells.0", "dumbbells.1", "stack.0", "machine.0"] {
            self.view(look(at)).unwrap();
        }
        let put = |text: &str| Edit::Put { text: text.into() };
        self.tap(edit("name", put("Qqclub"))).unwrap();
        self.tap(edit("stack.0.by", put("pins"))).unwrap();
        self.tap(edit("plate.0.weighs", put("19.5"))).unwrap();
        self.tap(edit("plate.2.pairs", Edit::Remove)).unwrap();
        self.view(look("stack.0")).unwrap();
        self.tap(edit("plate.1.pairs", put("qq"))).unwrap();
        self.tap(edit("", Edit::TakeUp));
        for intent in [Edit::Undo, Edit::Undo, Edit::Redo, Edit::Drop] {
            self.tap(edit("", intent)).unwrap();
        }
        self.view(Look::Equipment);
    }

    /// One's own exercise by its form, with every part of it open once.
    fn an_exercise_by_hand(&mut self) {
        let of = FormOf::Exercises;
        let edit = |place: &str, edit: Edit| {
            let place = place.to_owned();
            Intent::Edit { of, place, edit, step: None }
        };
        let look = |at: &str| Look::Form { of, at: at.into(), text: String::new() };
        self.tap(edit("like:back-squat", Edit::Open)).unwrap();
        self.tap(edit("name", Edit::Put { text: "Qqsquat".into() })).unwrap();
        for part in ["", "/movement", "/direct", "/indirect", "/counted", "/measured_in"] {
            self.view(look(&format!("draft{part}"))).unwrap();
        }
        self.tap(edit("", Edit::TakeUp)).unwrap();
        self.view(look("qqsquat")).unwrap();
    }

    fn panels(&mut self) {
        for panel in [
            "more", "ended", "bar", "load:0", "load", "swap", "pace", "order", "earlier", "notes",
            "kit", "guard", "helped",
        ] {
            let Some(floor) = self.floor(Some(panel)) else { continue };
            let rows = floor.panel.into_iter().flat_map(|panel| panel.rows);
            let puts_right = |key: &Key| key.id == "correct";
            let correct = rows.flat_map(|row| row.keys).find(puts_right);
            if let Some(key) = correct {
                self.act(&key.action);
            }
        }
    }

    /// A whole session by its keys, with every panel at every exercise.
    fn session(&mut self) {
        self.tap(Intent::Begin { session: None, minutes: None, sure: false });
        let mut exercise = String::new();
        for nth in 0..400_u32 {
            let Some(floor) = self.floor(None) else { return };
            if floor.call.exercise != exercise {
                exercise.clone_from(&floor.call.exercise);
                self.panels();
            }
            self.wait(if nth.is_multiple_of(3) { 10 } else { 95 });
            let part = floor.part.clone().unwrap_or_default();
            if nth.is_multiple_of(4) {
                for _ in 0..6 {
                    self.tap(Intent::TapRep { part: part.clone() });
                    self.wait(2 + i64::from(nth % 3));
                }
                self.panels();
            }
            let effort = floor.thumb.effort.get(1).map(|effort| effort.key.clone());
            let Some(key) = effort.or(floor.thumb.main) else { return };
            if self.act(&key.action).is_none() {
                let entry = part.split('.').next().unwrap_or_default().to_owned();
                let field = format!("load:{entry}");
                let found =
                    ["20 kg", "40 kg"].iter().any(|load| self.write(&field, load).is_some());
                if !found {
                    self.tap(Intent::SkipSet);
                }
            }
            if nth == 3 {
                for intent in [Intent::Undo, Intent::Redo, Intent::Pause] {
                    self.tap(intent);
                    self.floor(None);
                }
                self.tap(Intent::Resume);
                self.now.boot_id = Some("another boot".into());
                self.tap(Intent::Wake);
                self.write("note", "qqtired");
                self.write("set-up:0", "qqpins");
            }
        }
    }
}

/// Every screen there is: from nothing to eight sessions, with what is made by hand and what goes wrong.
pub(super) fn play(lifter: &mut Abroad) {
    // Before there is anything.
    let lift = |exercise: &str, page| Look::Lift { exercise: exercise.into(), page, all: false };
    let today = |minutes| Look::Today { session: None, minutes };
    for look in [today(None), Look::Weeks, Look::Equipment, lift("qqnone", 0)] {
        lifter.view(look);
    }
    lifter.view(Look::Form { of: FormOf::Start, at: String::new(), text: String::new() }).unwrap();
    lifter.a_gym_by_hand();
    lifter.an_exercise_by_hand();
    lifter.tap(Intent::AddGym { text: GYM.into() }).unwrap();
    lifter.tap(Intent::ChooseGym { name: "Qqcellar".into() }).unwrap();
    let in_hand = |text: String, week| Look::Plan { text: Some(text), week };
    for week in [None, Some(1), Some(3)] {
        let Some(Screen::Plan { plan }) = lifter.view(in_hand(PLAN.into(), week)) else { panic!() };
        assert!(plan.faults.iter().all(|fault| fault.advises), "{:?}", plan.faults);
    }
    lifter.view(in_hand(PLAN.replace("77.5 %", "qq %").replace("goal", "gaol"), None));
    lifter.view(in_hand("name = ".into(), None));
    lifter.tap(Intent::adopt(PLAN)).unwrap();
    lifter.tap(Intent::adopt("name = 1"));
    lifter.view(today(None));
    lifter.write("body-mass", "qq");
    lifter.write("body-mass", "80 kg").unwrap();
    for max in ["back-squat", "power-clean", "deadlift", "bench-press", "overhead-press"] {
        lifter.write(&format!("max:{max}"), "100 kg").unwrap();
    }
    let maxes = |at: &str, text: &str| {
        let (of, at, text) = (FormOf::Maxes, at.to_owned(), text.to_owned());
        Look::Form { of, at, text }
    };
    for (at, text) in [("", ""), ("max:back-squat", "-5 %"), ("max:deadlift", "-60 %")] {
        lifter.view(maxes(at, text));
    }
    for session in 0..8 {
        for minutes in [None, Some(30)] {
            lifter.view(today(minutes));
        }
        lifter.session();
        for look in [Look::Tally, Look::Weeks, today(None)] {
            lifter.view(look);
        }
        for intent in [Intent::Undo, Intent::Redo, Intent::Redo, Intent::Start] {
            lifter.tap(intent);
        }
        lifter.wait(if session == 3 { 20 * 86_400 } else { 3 * 86_400 });
    }
    for (_, exercise) in [0, 1].into_iter().zip(["back-squat", "plank"]) {
        lifter.view(lift(exercise, 0));
    }
    for exercise in ["chin-up", "front-squat", "qqsquat", "rear-foot-raised-split-squat", ""] {
        lifter.view(lift(exercise, 0));
    }
    lifter.write("body-mass", "81 kg").unwrap();
    lifter.view(maxes("", "")).unwrap();
    for weeks in [None, Some(4)] {
        lifter.view(Look::Balance { weeks });
    }
    for look in [Look::Weeks, Look::Plan { text: None, week: None }, today(None)] {
        lifter.view(look);
    }
    assert!(lifter.letters > 100_000, "{} letters were read", lifter.letters);
}

#[test]
fn no_screen_says_a_word_that_is_no_phrase() {
    let locale = Locale { language: Language::MadeUp, ..Locale::read("en-GB") };
    let mut lifter = Abroad::new(locale);
    play(&mut lifter);
    let mut english = BTreeSet::new();
    for (field, text) in &lifter.texts {
        for word in text.split(|one: char| !one.is_ascii_alphabetic()) {
            // The lifter's own words, and the units that plates are stamped in.
            let own = word.to_ascii_lowercase().starts_with("qq") || ["kg", "lb"].contains(&word);
            if !word.is_empty() && !own {
                english.insert(format!("{field}: {word} in “{text}”"));
            }
        }
    }
    assert!(english.is_empty(), "{english:#?}");
}
