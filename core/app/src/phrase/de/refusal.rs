//! Refusals: what is wrong, what was kept, what to do.

use barwright_domain::quantity::{MassUnit, Numerals, Unreadable};
use barwright_domain::session::Refusal;

use super::{date, words};

/// A refusal of the session in words.
pub fn of(refusal: &Refusal, unit: MassUnit, numerals: Numerals) -> String {
    let mass = |mass| words::mass(mass, unit, numerals);
    match refusal {
        Refusal::BadReading => {
            "The device's clock shows a time that can't be. Set its date and time, then tap again."
                .into()
        }
        Refusal::NoSession => "No session is running. Begin one.".into(),
        Refusal::SessionRunning => {
            "A session is running. Finish it first; it keeps what was done.".into()
        }
        Refusal::NothingLeft => {
            "Every set is done or skipped. Finish the session, or add a set.".into()
        }
        Refusal::EmptySheet => "That session has no sets. Choose another.".into(),
        Refusal::SheetTooLarge => {
            "The session has more exercises or sets than a session can hold.".into()
        }
        Refusal::WrongKind => {
            "This set is counted in another unit. Enter it in the unit that is asked for.".into()
        }
        Refusal::OutOfRange => "That is out of range. Nothing was changed.".into(),
        Refusal::NothingDone => "Nothing was done. Say why the set was cut short.".into(),
        Refusal::LoadNeeded => "Choose a load first: there is none on record yet.".into(),
        Refusal::NoSuchEntry => "There is no such exercise in this session.".into(),
        Refusal::NoSuchPart => "There is no such set yet.".into(),
        Refusal::NothingLeftOf => "No sets of this exercise are left.".into(),
        Refusal::AlreadyThere => "That is what is on now.".into(),
        Refusal::TooMany => "That is as many as there can be.".into(),
        Refusal::CannotMake(_) => {
            "This gym can't make that load. Choose another, or swap the exercise.".into()
        }
        Refusal::NotExact { nearest } => {
            format!("This gym can't make that load. The nearest is {}.", mass(*nearest))
        }
        Refusal::OverSupported { supported } => format!(
            "That is more than a tenth over what the last four weeks support ({}). Load it all \
                 the same?",
            words::whole(*supported, unit, numerals)
        ),
        Refusal::BelowNothing => "No load can be that small. Nothing was changed.".into(),
        Refusal::FarFromRecorded { recorded } => {
            format!("That is far from the {} that were recorded. Is it right?", mass(*recorded))
        }
        Refusal::NoSuchPin => "The stack here has no such pin. Choose one of its own.".into(),
        Refusal::NoRest => "No rest is running.".into(),
        Refusal::AlreadySo | Refusal::AlreadyStarted => "It is so already.".into(),
        Refusal::BadText => "The text is empty or too long. Nothing was changed.".into(),
        Refusal::NothingToUndo => "Nothing to undo.".into(),
        Refusal::NothingToRedo => "Nothing to redo.".into(),
    }
}

/// No exercise has that name; those it may mean.
pub fn no_exercise(name: &str, near: &[String]) -> String {
    let name: String = name.chars().take(60).collect();
    let near = match near {
        [] => "Its name stands on the Weeks and Plan screens.".to_owned(),
        near => format!("Near it: {}.", near.join(", ")),
    };
    format!("No exercise is called “{name}”. {near}")
}

/// The tap was meant for another part, or another session.
pub fn stale() -> &'static str {
    "That set is recorded already. Nothing was added."
}

/// The tap was meant for a session that is past.
pub fn stale_session() -> &'static str {
    "That belongs to a session that is past. Nothing was changed."
}

/// There is no such thing.
pub fn not_here() -> &'static str {
    "There is no such thing here. Nothing was changed."
}

/// There is no plan.
pub fn nothing_to_go_by() -> &'static str {
    "There is no plan yet. Adopt one first."
}

/// A figure that could not be read.
pub fn unreadable(unreadable: &Unreadable) -> String {
    super::quantity::unreadable(unreadable)
}

/// Every session of the plan is done.
pub fn plan_is_over() -> &'static str {
    "Every session of the plan is done. Adopt the next one, or choose a session from the weeks."
}

/// Something is being made already.
pub fn draft_open() -> &'static str {
    "Something of the kind is being made already. Take it up or drop it first; it was kept."
}

/// The tap was meant for another step of what is being made.
pub fn stale_draft() -> &'static str {
    "That was changed meanwhile. Nothing was changed again."
}

/// Nothing to take back of what is being made, or to bring again.
pub fn no_step() -> &'static str {
    "There is no step to take back or to bring again."
}

/// What is being made would be too large to be read.
pub fn draft_too_large() -> &'static str {
    "That would be more than is read of one file. Nothing was changed; take something out first."
}

/// Another gym has this name.
pub fn gym_there(name: &str) -> String {
    format!("Another gym is called “{name}”. Both were kept; give this one another name.")
}

/// Nothing stands there yet.
pub fn nothing_stands() -> &'static str {
    "Nothing stands there yet to be more or less than. Write the load itself."
}

/// More than by half.
pub fn too_many_percent() -> &'static str {
    "That is more than half of it. Write the load itself, so that nothing is meant by mistake."
}

/// The clock is far from the last session's date.
pub fn clock_far(last: i32, now: i32) -> String {
    let (then, today) = (date::in_full(last), date::in_full(now));
    let apart = words::count(usize::try_from(last.abs_diff(now)).unwrap_or(0), "day", "days");
    let how = if now < last { "before" } else { "after" };
    format!(
        "The last session was on {then}; this device says it is {today}, {apart} {how}. Nothing was \
         recorded. If its date is wrong, set it first. Is it right?"
    )
}

/// Another exercise has this name.
pub fn exercise_there(name: &str) -> String {
    format!("Another exercise is called “{name}”. Both were kept; give this one another name.")
}
