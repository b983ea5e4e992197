//! What a screen is made from, as plain values: gathered by `gather`, shown by `screens`.

mod adoption;
mod coming;
mod fitted;
pub(crate) mod form;
mod gym;
mod handed;
mod held;
mod liked;
mod maxes;
pub(crate) mod part;
pub(crate) mod place;
mod plan;
mod sent;

pub(crate) use adoption::{adopted, mended};
pub(crate) use coming::{Arrived, Coming, ComingPart, Done, Found, Taking};
pub(crate) use fitted::{candidates, fitted};
pub(crate) use gym::GymFrom;
pub(crate) use handed::{Handed, HandedPart};
pub(crate) use held::{Held, catalogue_of, decided, read_plan, rows_of};
pub(crate) use liked::{LikedOf, plates as liked_plates, steps as liked_steps};
pub(crate) use maxes::{Entered, MaxOf, Maxes, TrackOf, entered, says, standing};
pub(crate) use plan::PlanFrom;
pub(crate) use sent::{SentFile, SentNow, SentState, sent, swapped};

use std::collections::BTreeMap;

use barwright_domain::catalogue::{Exercise, Muscle};
use barwright_domain::coach::Close;
use barwright_domain::desk::{At, Calendar, Dated, Dates, Draft};
use barwright_domain::history::{DoneSet, Record};
use barwright_domain::owners::{MaxOrigin, Outcome};
use barwright_domain::plan::Plan;
use barwright_domain::prescribe::{LeftOut, MovedLoad, Need};
use barwright_domain::quantity::Mass;
use barwright_domain::session::{Entry, Reading, Run, Sheet};
use barwright_domain::text;
use barwright_domain::volume::Tally;

use crate::contract::LayAnew;

/// What one look is shown from.
pub(crate) struct Facts<'a> {
    pub(crate) held: &'a Held,
    /// When it is looked at.
    pub(crate) at: &'a Reading,
    pub(crate) of: Of<'a>,
}

/// What is shown, with what was gathered for it.
pub(crate) enum Of<'a> {
    /// Today without a plan.
    NothingOn,
    /// Today when every session of the plan is done.
    PlanIsOver(&'a Plan),
    /// Today's sheet.
    Today(Today<'a>),
    /// The floor of the session that runs.
    Floor(&'a Run),
    /// The end of a session, or how it stands.
    Tally(TallyOf<'a>),
    /// The plan's weeks.
    Weeks(Weeks<'a>),
    /// The plan's weeks as they would be.
    Anew(Anew<'a>),
    /// One exercise over time.
    Lift(Lift<'a>),
    /// Each muscle, planned and done.
    Balance(Balance<'a>),
    /// What the gym has.
    Equipment,
    /// A gym that is being made.
    GymForm(&'a Draft),
    /// A plan that is being made.
    PlanForm(&'a Draft),
    /// A session that is changed for once.
    SessionForm(SessionForm),
    /// The general cautions.
    Care,
    /// Maxes, working loads and body mass.
    Maxes(Maxes),
    /// The exercises there are.
    Exercises,
    /// Which loads are liked, with the next session laid out so.
    LikedForm(LikedForm),
    /// Changes that a coach sent, or what is wrong with the file.
    Sent(Result<SentFile, Vec<text::Fault>>),
    /// The records as a file to be handed on.
    Handed(Handed),
    /// Records that come in.
    Coming(Coming),
    /// How to begin.
    Start,
    /// The plan file whose text the look has.
    PlanFile,
    /// The plan that is on.
    PlanOn(&'a Plan),
}

/// A session laid out.
pub(crate) struct Today<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) place: At,
    pub(crate) laid_out: LaidOut,
    /// Sessions still to come whose date has passed.
    pub(crate) behind: usize,
}

/// Which loads are liked of something.
pub(crate) struct LikedForm {
    pub(crate) of: LikedOf,
    /// The next session; none where none is on.
    pub(crate) next: Option<LaidOut>,
}

/// A session that is changed for once, laid out as it stands.
pub(crate) struct SessionForm {
    pub(crate) place: At,
    /// As it is laid out; none where its days alone are asked.
    pub(crate) laid_out: Option<LaidOut>,
    pub(crate) part: SessionPart,
}

/// What of it is open.
pub(crate) enum SessionPart {
    /// The session.
    Whole,
    /// What could be done in the place of an exercise, by its slug.
    Instead(String),
    /// What could be added.
    Add,
    /// On which day it was done without the tool.
    Paper(Days),
    /// On which day it was done, whatever the clock said.
    Date(u64, Days),
}

/// Days to choose from.
pub(crate) struct Days {
    /// Local dates, the likeliest first.
    pub(crate) days: Vec<i32>,
    /// The one that it counts for now, or is meant for.
    pub(crate) own: Option<i32>,
    /// A date was typed that can't be read.
    pub(crate) unreadable: bool,
}

/// Sessions of a week, laid out to be printed.
pub(crate) struct PrintedWeek<'a> {
    pub(crate) plan: &'a Plan,
    /// From 1.
    pub(crate) week: u16,
    pub(crate) sessions: Vec<PrintedSession>,
}

/// One of them.
pub(crate) struct PrintedSession {
    /// How it stands, where the calendar has it.
    pub(crate) dated: Option<Dated>,
    pub(crate) laid_out: LaidOut,
}

/// A lifter's week, as whoever wrote the plan asks for it.
pub(crate) struct Returned<'a> {
    pub(crate) plan: &'a Plan,
    /// From 1.
    pub(crate) week: u16,
    pub(crate) calendar: Calendar,
    /// Work sets of the week.
    pub(crate) sets: Vec<DoneSet>,
    /// What its sessions told the owners.
    pub(crate) outcomes: Vec<Outcome>,
    /// The local date of the last session.
    pub(crate) last: Option<i32>,
    pub(crate) today: i32,
}

/// A sheet, and what was left out or is missing for it.
pub(crate) struct LaidOut {
    pub(crate) sheet: Sheet,
    pub(crate) needs: Vec<Need>,
    pub(crate) left_out: Vec<LeftOut>,
}

/// A session, and what it changes.
pub(crate) struct TallyOf<'a> {
    pub(crate) run: &'a Run,
    pub(crate) came: Vec<Came>,
    pub(crate) maxes: Vec<MaxMoved>,
}

/// What an exercise of the session came to.
pub(crate) struct Came {
    pub(crate) exercise: String,
    /// What the session calls it.
    pub(crate) name: String,
    /// As it will be the next time the plan has it; none where the plan has it no more.
    pub(crate) next: Option<Entry>,
    /// What its owners are told, a row of it after the other; its max apart.
    pub(crate) outcomes: Vec<Outcome>,
    /// Pain stood on it, it was done, and whether it hurt is the lifter's to say.
    pub(crate) no_pain: Option<bool>,
}

/// A reference max that a session changes, with what that moves.
pub(crate) struct MaxMoved {
    pub(crate) exercise: String,
    /// What it is told: it may ask, or say why it stays.
    pub(crate) outcome: Outcome,
    pub(crate) before: Option<Mass>,
    /// What it is now, where that is new.
    pub(crate) after: Option<(Mass, MaxOrigin)>,
    /// Loads of the sessions to come; of the plan done again where nothing of it is left.
    pub(crate) loads: Vec<MovedLoad>,
    pub(crate) again: bool,
}

/// The plan's dates.
pub(crate) struct Weeks<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) calendar: Calendar,
}

/// The plan's rest as it would be laid anew.
pub(crate) struct Anew<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) of: AnewOf,
}

/// What laying it anew comes to.
pub(crate) struct AnewOf {
    pub(crate) how: LayAnew,
    pub(crate) dates: Dates,
    pub(crate) before: Calendar,
    pub(crate) after: Calendar,
    /// What comes heavy on neighbouring days.
    pub(crate) close: Vec<Close>,
}

/// An exercise's history.
pub(crate) struct Lift<'a> {
    pub(crate) exercise: &'a Exercise,
    /// The work sets of its sessions, the newest session first: those that are charted, and the page
    /// with one session more.
    pub(crate) sets: Vec<DoneSet>,
    pub(crate) records: Vec<Record>,
    /// The exercises that have a history, each with the day it was last done.
    pub(crate) done: Vec<(String, i32)>,
}

/// Volume over a span of weeks.
pub(crate) struct Balance<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) calendar: Calendar,
    /// The first week and the last, from 1.
    pub(crate) span: (u16, u16),
    /// Hard sets done, by week from 1; the running session's among them.
    pub(crate) done: BTreeMap<u16, Tallies>,
}

/// A tally for each muscle that has any.
pub(crate) type Tallies = BTreeMap<Muscle, Tally>;
