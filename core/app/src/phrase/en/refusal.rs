//! Refusals: what is wrong, what was kept, what to do.

use barwright_domain::quantity::Unreadable;
use barwright_domain::session::Refusal;

use super::words;
use crate::contract::{EngineError, RefusalCode};
use crate::engine::Core;

/// A refusal of the session in words.
pub(crate) fn of(refusal: &Refusal, core: &Core) -> EngineError {
    let mass = |mass| words::mass(mass, core.load_unit(), core.locale.numerals);
    let (code, reason): (_, String) = match refusal {
        Refusal::BadReading => (
            RefusalCode::BadReading,
            "The device's clock shows a time that can't be. Set its date and time, then tap again."
                .into(),
        ),
        Refusal::NoSession => (RefusalCode::NoSession, "No session is running. Begin one.".into()),
        Refusal::SessionRunning => (
            RefusalCode::SessionRunning,
            "A session is running. Finish it first; it keeps what was done.".into(),
        ),
        Refusal::NothingLeft => (
            RefusalCode::NothingLeft,
            "Every set is done or left out. Finish the session, or add a set.".into(),
        ),
        Refusal::EmptySheet => {
            (RefusalCode::NothingLeft, "There is no set in it. Choose another session.".into())
        }
        Refusal::SheetTooLarge => (
            RefusalCode::TooMany,
            "The session has more exercises or sets than a session can hold.".into(),
        ),
        Refusal::WrongKind => (
            RefusalCode::BadValue,
            "This set counts something else. Say it in the unit that is asked for.".into(),
        ),
        Refusal::OutOfRange => {
            (RefusalCode::BadValue, "That is out of range. Nothing was changed.".into())
        }
        Refusal::NothingDone => (
            RefusalCode::BadValue,
            "Nothing was done, so it did not end as called. Say how it ended.".into(),
        ),
        Refusal::LoadNeeded => {
            (RefusalCode::LoadNeeded, "Say the load first: there is nothing to go by yet.".into())
        }
        Refusal::NoSuchEntry => {
            (RefusalCode::NotHere, "There is no such exercise in this session.".into())
        }
        Refusal::NoSuchPart => (RefusalCode::NotHere, "There is no such set yet.".into()),
        Refusal::NothingLeftOf => {
            (RefusalCode::NothingLeft, "Nothing is left of this exercise.".into())
        }
        Refusal::AlreadyThere => (RefusalCode::AlreadySo, "That is what is on now.".into()),
        Refusal::TooMany => (RefusalCode::TooMany, "There is no room for more.".into()),
        Refusal::CannotMake(_) => (
            RefusalCode::CannotMake,
            "This gym can't make that load. Choose another, or swap the exercise.".into(),
        ),
        Refusal::NotExact { nearest } => (
            RefusalCode::CannotMake,
            format!("This gym can't make that load. The nearest is {}.", mass(*nearest)),
        ),
        Refusal::OverSupported { supported } => (
            RefusalCode::Ask,
            format!(
                "That is more than a tenth over what the last four weeks support ({}). Load it all \
                 the same?",
                mass(*supported)
            ),
        ),
        Refusal::NoSuchPin => (
            RefusalCode::CannotMake,
            "The stack here has no such pin. Choose one of its own.".into(),
        ),
        Refusal::NoRest => (RefusalCode::AlreadySo, "No rest is running.".into()),
        Refusal::AlreadySo | Refusal::AlreadyStarted => {
            (RefusalCode::AlreadySo, "It is so already.".into())
        }
        Refusal::BadText => {
            (RefusalCode::BadValue, "The text is empty or too long. Nothing was changed.".into())
        }
        Refusal::NothingToUndo => {
            (RefusalCode::NothingToUndo, "There is nothing to take back.".into())
        }
        Refusal::NothingToRedo => {
            (RefusalCode::NothingToUndo, "There is nothing to bring back.".into())
        }
        _ => (RefusalCode::BadValue, "That can't be done now. Nothing was changed.".into()),
    };
    EngineError::Refused { code, reason }
}

/// No exercise has that name; those it may mean.
pub(crate) fn no_exercise(name: &str, near: &[&str]) -> EngineError {
    let name: String = name.chars().take(60).collect();
    let near = match near {
        [] => "Its name stands on the Weeks and Plan screens.".to_owned(),
        near => format!("Near it: {}.", near.join(", ")),
    };
    EngineError::Refused {
        code: RefusalCode::NotHere,
        reason: format!("No exercise is called “{name}”. {near}"),
    }
}

/// A refusal that needs no figures.
pub(crate) fn coded(code: RefusalCode) -> EngineError {
    let reason = match code {
        RefusalCode::Stale => "That set is recorded already. Nothing was added.",
        RefusalCode::NotHere => "There is no such thing here. Nothing was changed.",
        RefusalCode::NothingToGoBy => "There is no plan yet. Adopt one first.",
        RefusalCode::BadReading
        | RefusalCode::NoSession
        | RefusalCode::SessionRunning
        | RefusalCode::NothingLeft
        | RefusalCode::BadValue
        | RefusalCode::CannotMake
        | RefusalCode::LoadNeeded
        | RefusalCode::Ask
        | RefusalCode::TooMany
        | RefusalCode::AlreadySo
        | RefusalCode::NothingToUndo
        | RefusalCode::Faults => "That can't be done now. Nothing was changed.",
    };
    EngineError::Refused { code, reason: reason.to_owned() }
}

/// A figure that could not be read.
pub(crate) fn unreadable(unreadable: &Unreadable) -> EngineError {
    EngineError::Refused {
        code: RefusalCode::BadValue,
        reason: super::quantity::unreadable(unreadable),
    }
}

/// Every session of the plan is done.
pub(crate) fn plan_is_over() -> EngineError {
    EngineError::Refused {
        code: RefusalCode::NothingToGoBy,
        reason: "Every session of the plan is done. Adopt the next one, or choose a session from \
                 the weeks."
            .to_owned(),
    }
}
