//! What the tests of the bindings need beside the library itself: values from and to JSON, so that
//! no codec is written by hand in Kotlin or Swift, a defect on demand, and a tap timed in Rust. No app
//! carries this.

use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{Action, Answer, EngineError, Intent, Look, Reading};
use barwright_tests::vectors::{self, Reply, Script};

barwright_app::uniffi_reexport_scaffolding!();
uniffi::setup_scaffolding!("barwright_testing");

/// What a test handed over can't be read.
#[derive(Debug, Clone, thiserror::Error, uniffi::Error)]
pub enum Unreadable {
    /// Text that is not what was asked for.
    #[error("{reason}")]
    Text {
        /// In words.
        reason: String,
    },
}

fn unreadable(reason: impl ToString) -> Unreadable {
    Unreadable::Text { reason: reason.to_string() }
}

/// A scripted session.
#[derive(Debug, Clone, uniffi::Record)]
pub struct ScriptedSession {
    /// The locale that the engine is opened with.
    pub locale: String,
    /// Its steps, in order.
    pub steps: Vec<ScriptedStep>,
}

/// One step of it.
#[derive(Debug, Clone, uniffi::Record)]
pub struct ScriptedStep {
    /// What happens.
    pub name: String,
    /// What is asked of the engine.
    pub ask: Ask,
    /// The whole answer, in canonical JSON; empty where nothing is answered.
    pub expected: String,
}

/// What a step asks of the engine.
// One step at a time crosses.
#[allow(clippy::large_enum_variant)]
#[derive(Debug, Clone, uniffi::Enum)]
pub enum Ask {
    /// A tap.
    Dispatch {
        /// The tap.
        intent: Intent,
        /// The clocks.
        reading: Reading,
    },
    /// What a key says.
    Act {
        /// The key's action.
        action: Action,
        /// The clocks.
        reading: Reading,
    },
    /// A look at a screen.
    View {
        /// The screen.
        look: Look,
        /// The clocks.
        reading: Reading,
    },
    /// Give the file up.
    Suspend,
    /// End without a word and begin again.
    Kill,
}

/// A script of `tests/vectors`, from its text.
///
/// # Errors
/// [`Unreadable`].
#[uniffi::export]
pub fn scripted_session(json: String) -> Result<ScriptedSession, Unreadable> {
    let script = Script::read(&json).map_err(unreadable)?;
    let steps = script.steps.into_iter().map(|step| {
        Ok(ScriptedStep {
            ask: match step.ask().map_err(unreadable)? {
                vectors::Ask::Dispatch(intent, reading) => Ask::Dispatch { intent, reading },
                vectors::Ask::Act(action, reading) => Ask::Act { action, reading },
                vectors::Ask::View(look, reading) => Ask::View { look, reading },
                vectors::Ask::Suspend => Ask::Suspend,
                vectors::Ask::Kill => Ask::Kill,
            },
            expected: match &step.expected {
                serde_json::Value::Null => String::new(),
                expected => vectors::canonical(expected),
            },
            name: step.name,
        })
    });
    Ok(ScriptedSession { locale: script.locale, steps: steps.collect::<Result<_, _>>()? })
}

/// An intent, from its JSON.
///
/// # Errors
/// [`Unreadable`].
#[uniffi::export]
pub fn intent_from_json(json: String) -> Result<Intent, Unreadable> {
    serde_json::from_str(&json).map_err(unreadable)
}

/// An intent as JSON.
///
/// # Errors
/// None.
#[uniffi::export]
pub fn intent_to_json(intent: Intent) -> Result<String, Unreadable> {
    serde_json::to_string(&intent).map_err(unreadable)
}

/// An answer, as canonical JSON.
///
/// # Errors
/// None.
#[uniffi::export]
pub fn answer_to_json(answer: Answer) -> Result<String, Unreadable> {
    Ok(Reply::Answer(answer).canonical())
}

/// An error, as canonical JSON.
///
/// # Errors
/// None.
#[uniffi::export]
pub fn error_to_json(error: EngineError) -> Result<String, Unreadable> {
    Ok(Reply::Error(error).canonical())
}

/// Panics inside the engine, in the middle of its work, with its state in memory spoilt.
///
/// # Errors
/// [`EngineError::Broken`], always.
#[uniffi::export]
pub fn break_inside(engine: Arc<Engine>) -> Result<(), EngineError> {
    engine.break_inside()
}

/// What a key came to, and how long the engine took over it.
#[derive(Debug, Clone, uniffi::Record)]
pub struct TimedAnswer {
    /// The answer.
    pub answer: Answer,
    /// Nanoseconds of this thread's processor time between the engine's door and its answer, in Rust.
    pub nanos: u64,
}

/// A tap as [`Engine::act`] takes it, timed inside: what it takes from a host over that is the way
/// across.
///
/// # Errors
/// As [`Engine::act`].
#[uniffi::export]
pub fn timed_act(
    engine: Arc<Engine>,
    action: Action,
    reading: Reading,
) -> Result<TimedAnswer, EngineError> {
    let start = processor_nanos();
    let answer = engine.act(action, reading)?;
    Ok(TimedAnswer { answer, nanos: processor_nanos().saturating_sub(start) })
}

/// What this thread has taken of the processor; what else the machine does is not in it.
fn processor_nanos() -> u64 {
    let at = rustix::time::clock_gettime(rustix::time::ClockId::ThreadCPUTime);
    let (seconds, nanos) = (u64::try_from(at.tv_sec), u64::try_from(at.tv_nsec));
    seconds.unwrap_or(0) * 1_000_000_000 + nanos.unwrap_or(0)
}
