//! Why something was not done, as data: it becomes words in one place, where it leaves the crate.

use barwright_domain::columns::NoColumn;
use barwright_domain::quantity::{MassUnit, Unreadable};
use barwright_domain::session::Refusal;
use barwright_log::form::Wrong;
use barwright_store::StoreError;

use crate::contract::{Action, EngineError, RefusalCode};
use crate::phrase::Words;

/// Why something was not done.
#[derive(Debug)]
pub(crate) enum Fault {
    /// It was refused: nothing changed.
    Refused(Refused),
    /// It asks, and this is the yes to it.
    Asks(Refused, Box<Action>),
    /// The file could not be read or written.
    Store(StoreError),
    /// An event that this release can't read, by its number.
    UnreadableEvent(u64),
    /// A defect, by a fixed text: a formatted one could hold what a lifter wrote.
    Broken(&'static str),
}

/// Why something was refused.
#[derive(Debug)]
pub(crate) enum Refused {
    /// By the session; loads are said in this unit.
    BySession(Refusal, MassUnit),
    /// The tap was meant for another part.
    Stale,
    /// The tap was meant for another session.
    StaleSession,
    /// There is no such thing.
    NotHere,
    /// There is no plan.
    NothingToGoBy,
    /// Every session of the plan is done.
    PlanIsOver,
    /// No exercise has that name; these are near it.
    NoExercise(String, Vec<String>),
    /// A figure that can't be read.
    Unreadable(Unreadable),
    /// Something is being made already; dropping it is a tap of its own.
    DraftOpen,
    /// The tap was meant for another step of what is being made.
    StaleDraft,
    /// What is being made has no step to take back, or to bring again.
    NoStep,
    /// What is being made would be larger than what is read.
    DraftTooLarge,
    /// Nothing stands there yet to be more or less than.
    NothingStands,
    /// More than by half.
    TooManyPercent,
    /// Another gym has this name.
    GymThere(String),
    /// The clock is far from the last session's: its local date, and the clock's.
    ClockFar { last: i32, now: i32 },
    /// Another exercise has this name.
    ExerciseThere(String),
    /// A file of changes is for this lifter, and these are another's records.
    SentToOther(String),
    /// Nothing of a file of changes can be taken so.
    NothingToTake,
    /// These words are no change.
    UnknownChange(String),
    /// An exercise has no working load.
    NoLoad(String),
    /// An exercise has several working loads, of these names.
    SeveralLoads(String, Vec<String>),
    /// A plan that is meant to mend the one of this name is another.
    OtherPlan(String),
    /// A file has so many faults.
    Faults(usize),
    /// A file of records can't be taken, or written.
    Records(Wrong),
    /// A file of records is in order, but not taken in.
    NotTaken(NotTaken),
    /// A table of old records is none that can be read.
    Table(NoTable),
}

/// Why a table of old records is not read.
#[derive(Debug)]
pub(crate) enum NoTable {
    /// It has more bytes, or rows, than are read.
    TooLarge,
    /// It is no text: another kind of file, or text in another encoding than UTF-8.
    NotText,
    /// It has no row.
    Empty,
    /// It lacks a column.
    Lacks(NoColumn),
    /// The file of columns has so many faults.
    Columns(usize),
}

/// Why a file of records is not taken in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum NotTaken {
    /// It is a part of somebody's records, not all of them.
    Part,
    /// It is of other records than those that are here.
    Others,
    /// Both went on after entry number `after`.
    Apart {
        /// The last entry that both have.
        after: u64,
    },
}

impl From<Refused> for Fault {
    fn from(refused: Refused) -> Self {
        Self::Refused(refused)
    }
}

impl From<StoreError> for Fault {
    fn from(error: StoreError) -> Self {
        Self::Store(error)
    }
}

impl Refused {
    /// Whether it is carried out all the same when it is said again as meant.
    pub(crate) fn asks(&self) -> bool {
        self.code() == RefusalCode::Ask
    }

    /// For programs.
    pub(crate) fn code(&self) -> RefusalCode {
        match self {
            Self::BySession(refusal, _) => code_of(refusal),
            Self::Stale | Self::StaleSession | Self::StaleDraft => RefusalCode::Stale,
            Self::DraftOpen | Self::GymThere(_) | Self::ExerciseThere(_) => RefusalCode::AlreadySo,
            Self::NoStep => RefusalCode::NothingToUndo,
            Self::NothingStands => RefusalCode::NothingToGoBy,
            Self::TooManyPercent => RefusalCode::BadValue,
            Self::DraftTooLarge => RefusalCode::TooMany,
            Self::NotHere | Self::NoExercise(..) => RefusalCode::NotHere,
            Self::Table(NoTable::Columns(_)) => RefusalCode::Faults,
            Self::Table(NoTable::TooLarge) => RefusalCode::TooMany,
            Self::Table(NoTable::NotText | NoTable::Empty | NoTable::Lacks(_))
            | Self::NotTaken(_)
            | Self::SentToOther(_)
            | Self::UnknownChange(_)
            | Self::NoLoad(_)
            | Self::SeveralLoads(..)
            | Self::OtherPlan(_) => RefusalCode::BadValue,
            Self::NothingToTake => RefusalCode::AlreadySo,
            Self::NothingToGoBy | Self::PlanIsOver => RefusalCode::NothingToGoBy,
            Self::Unreadable(_) => RefusalCode::BadValue,
            Self::ClockFar { .. } => RefusalCode::Ask,
            Self::Faults(_) | Self::Records(_) => RefusalCode::Faults,
        }
    }

    /// For people.
    pub(crate) fn reason(&self, words: Words) -> String {
        let say = words.refusal();
        match self {
            Self::BySession(refusal, unit) => say.of(refusal, *unit, words.numerals),
            Self::Stale => say.stale().to_owned(),
            Self::StaleSession => say.stale_session().to_owned(),
            Self::NotHere => say.not_here().to_owned(),
            Self::DraftOpen => say.draft_open().to_owned(),
            Self::StaleDraft => say.stale_draft().to_owned(),
            Self::NoStep => say.no_step().to_owned(),
            Self::NothingStands => say.nothing_stands().to_owned(),
            Self::TooManyPercent => say.too_many_percent().to_owned(),
            Self::DraftTooLarge => say.draft_too_large().to_owned(),
            Self::GymThere(name) => say.gym_there(name),
            Self::ExerciseThere(name) => say.exercise_there(name),
            Self::NothingToGoBy => say.nothing_to_go_by().to_owned(),
            Self::PlanIsOver => say.plan_is_over().to_owned(),
            Self::NoExercise(name, near) => say.no_exercise(name, near),
            Self::Unreadable(unreadable) => say.unreadable(unreadable),
            Self::ClockFar { last, now } => say.clock_far(*last, *now),
            Self::SentToOther(lifter) => words.sent().of_other(lifter),
            Self::NothingToTake => words.sent().nothing_to_take().to_owned(),
            Self::UnknownChange(said) => words.sent().unknown_change(said),
            Self::NoLoad(name) => words.sent().no_load(name),
            Self::SeveralLoads(name, loads) => words.sent().several_loads(name, loads),
            Self::OtherPlan(name) => words.sent().other_plan(name),
            Self::Faults(count) => words.faults().refused(*count),
            Self::Records(wrong) => words.records().wrong(wrong),
            Self::Table(NoTable::TooLarge) => words.columns().too_large(),
            Self::Table(NoTable::NotText) => words.columns().not_text().to_owned(),
            Self::Table(NoTable::Empty) => words.columns().no_table().to_owned(),
            Self::Table(NoTable::Lacks(lacks)) => words.columns().no_column(lacks),
            Self::Table(NoTable::Columns(faults)) => words.columns().faults(*faults),
            Self::NotTaken(NotTaken::Part) => words.records().part_only().to_owned(),
            Self::NotTaken(NotTaken::Others) => words.records().of_others().to_owned(),
            Self::NotTaken(NotTaken::Apart { after }) => words.records().went_apart(*after),
        }
    }
}

impl Fault {
    /// As a shell is told.
    pub(crate) fn said(self, words: Words) -> EngineError {
        match self {
            Self::Refused(refused) => EngineError::refused(refused.code(), refused.reason(words)),
            Self::Asks(refused, yes) => EngineError::Refused {
                code: refused.code(),
                reason: refused.reason(words),
                ask: Some(*yes),
            },
            Self::Store(error) => words.storage().error(&error),
            Self::UnreadableEvent(seq) => words.storage().unreadable_event(seq),
            Self::Broken(what) => words.storage().broken(what),
        }
    }
}

/// What a program can go by in a refusal of the session.
fn code_of(refusal: &Refusal) -> RefusalCode {
    match refusal {
        Refusal::BadReading => RefusalCode::BadReading,
        Refusal::NoSession => RefusalCode::NoSession,
        Refusal::SessionRunning => RefusalCode::SessionRunning,
        Refusal::NothingLeft | Refusal::EmptySheet | Refusal::NothingLeftOf => {
            RefusalCode::NothingLeft
        }
        Refusal::SheetTooLarge | Refusal::TooMany => RefusalCode::TooMany,
        Refusal::WrongKind
        | Refusal::OutOfRange
        | Refusal::NothingDone
        | Refusal::BadText
        | Refusal::BelowNothing => RefusalCode::BadValue,
        Refusal::LoadNeeded => RefusalCode::LoadNeeded,
        Refusal::NoSuchEntry | Refusal::NoSuchPart => RefusalCode::NotHere,
        Refusal::CannotMake(_) | Refusal::NotExact { .. } | Refusal::NoSuchPin => {
            RefusalCode::CannotMake
        }
        Refusal::OverSupported { .. } | Refusal::FarFromRecorded { .. } => RefusalCode::Ask,
        Refusal::AlreadyThere | Refusal::NoRest | Refusal::AlreadySo | Refusal::AlreadyStarted => {
            RefusalCode::AlreadySo
        }
        Refusal::NothingToUndo | Refusal::NothingToRedo => RefusalCode::NothingToUndo,
    }
}
