//! Scripted sessions, the same for every language: what is asked of an engine, step by step, and the
//! whole answer to each step.
//!
//! A script is one JSON file:
//!
//! ```json
//! {
//!   "about": "what it shows",
//!   "locale": "en-GB",
//!   "steps": [
//!     { "name": "look", "look": { … }, "reading": { … }, "expected": { "answer": { … } } },
//!     { "name": "tap", "intent": { … }, "reading": { … }, "expected": { "answer": { … } } },
//!     { "name": "a key", "action": { … }, "reading": { … }, "expected": { "answer": { … } } },
//!     { "name": "refused", "intent": { … }, "reading": { … }, "expected": { "error": { … } } },
//!     { "name": "the device takes the file", "suspend": true },
//!     { "name": "the device ends the process", "kill": true }
//!   ]
//! }
//! ```
//!
//! `kill` drops the engine and opens its file anew; in memory, where nothing outlives an engine, it
//! changes nothing. The answers are written by the engine under `BARWRIGHT_WRITE_VECTORS=1` and read
//! by a person before they are committed.

use barwright_app::contract::{Action, Answer, EngineError, Intent, Look, Reading};
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// A scripted session.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Script {
    /// What it shows.
    pub about: String,
    /// The locale that the engine is opened with.
    pub locale: String,
    /// Its steps, in order.
    pub steps: Vec<Step>,
}

/// One step.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Step {
    /// What happens.
    pub name: String,
    /// A tap.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub intent: Option<Intent>,
    /// What a key says.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub action: Option<Action>,
    /// A look at a screen.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub look: Option<Look>,
    /// The clocks at the tap or the look.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reading: Option<Reading>,
    /// The engine gives its file up.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub suspend: bool,
    /// The process ends without a word, and a new one opens the file.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub kill: bool,
    /// The whole answer; left out where nothing is answered.
    #[serde(default, skip_serializing_if = "Value::is_null")]
    pub expected: Value,
}

/// What a step asks of the engine.
#[derive(Debug, Clone)]
pub enum Ask {
    /// A tap.
    Dispatch(Intent, Reading),
    /// What a key says.
    Act(Action, Reading),
    /// A look at a screen.
    View(Look, Reading),
    /// Give the file up.
    Suspend,
    /// End without a word and begin again.
    Kill,
}

/// What the engine answered.
// One at a time is made and written.
#[allow(clippy::large_enum_variant)]
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Reply {
    /// It did what was asked.
    Answer(Answer),
    /// It did not do what was asked.
    Error(EngineError),
}

impl Reply {
    /// The answer as JSON with keys in order: equal answers give equal text, in every language.
    #[must_use]
    pub fn canonical(&self) -> String {
        canonical(&serde_json::to_value(self).expect("answers are plain data"))
    }
}

/// JSON with keys in order.
#[must_use]
pub fn canonical(value: &Value) -> String {
    serde_json::to_string_pretty(value).expect("a value is plain data")
}

impl Script {
    /// Reads a script.
    ///
    /// # Errors
    /// In words, with the step.
    pub fn read(json: &str) -> Result<Self, String> {
        let script: Self = serde_json::from_str(json).map_err(|error| error.to_string())?;
        for step in &script.steps {
            step.ask()?;
        }
        Ok(script)
    }
}

impl Step {
    /// What it asks.
    ///
    /// # Errors
    /// In words, when it asks nothing or more than one thing.
    pub fn ask(&self) -> Result<Ask, String> {
        let wrong = |what: &str| Err(format!("step “{}”: {what}", self.name));
        let asks = (self.intent.clone(), self.action.clone(), self.look.clone());
        match (asks, self.reading.clone(), self.suspend, self.kill) {
            ((Some(intent), None, None), Some(reading), false, false) => {
                Ok(Ask::Dispatch(intent, reading))
            }
            ((None, Some(action), None), Some(reading), false, false) => {
                Ok(Ask::Act(action, reading))
            }
            ((None, None, Some(look)), Some(reading), false, false) => Ok(Ask::View(look, reading)),
            ((None, None, None), None, true, false) => Ok(Ask::Suspend),
            ((None, None, None), None, false, true) => Ok(Ask::Kill),
            (_, None, false, false) => wrong("a tap or a look needs a reading"),
            _ => wrong("one of intent, action, look, suspend and kill is wanted"),
        }
    }
}
