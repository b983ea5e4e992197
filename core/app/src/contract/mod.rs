//! The contract with every shell: readings, intents and looks in, answers out.
//!
//! Declared here once. UniFFI's derives (feature `uniffi`) carry it to Kotlin and Swift, serde to
//! JSON lines, schemars (feature `schema`) to a JSON Schema. Everything is a plain value: strings are
//! finished, lists are in order, what is enabled is decided. A shell lays out and forwards: each
//! [`Key`] carries the [`Action`] to hand back when it is tapped, and an [`Answer`] says what it shows
//! and when to look again.
//!
//! Fields only ever join. Every change raises [`CONTRACT_VERSION`] and is seen in the committed
//! snapshot, `core/app/contract.txt`; a test holds the two together.

mod action;
mod balance;
mod care;
mod effect;
mod equipment;
mod error;
mod floor;
mod form;
mod intent;
mod lift;
mod not_shown;
mod plan;
mod reading;
mod tally;
mod today;
mod weeks;

pub use action::{Action, Draft, Field, Key, Look, Panel, Row};
pub use balance::{BalanceScreen, MuscleBar};
pub use care::CareScreen;
pub use effect::{Effect, HapticKind};
pub use equipment::EquipmentScreen;
pub use error::{EngineError, RefusalCode};
pub use floor::{
    BarZone, Beat, CallZone, EffortKey, Figure, FloorScreen, PlateDrawing, RunningRest, ThumbZone,
};
pub use form::{Edit, FormFile, FormOf, FormRow, FormScreen};
pub use intent::{
    Arrange, GuardChoice, HowEnded, Intent, KitChoice, LayAnew, SessionChange, SwapReason,
};
pub use lift::{Chart, ChartAxis, ChartPoint, ChartSeries, ChartTick, LiftScreen, SeriesKind};
pub use not_shown::NotShownScreen;
pub use plan::{FileFault, PlanScreen};
pub use reading::Reading;
pub use tally::{MovedLoadData, TallyScreen};
pub use today::TodayScreen;
pub use weeks::{WeekOfPlan, WeeksScreen};

use serde::{Deserialize, Serialize};

/// The version of this contract: raised by every change to what crosses to a shell, and by a change
/// of meaning that no name or type shows.
pub const CONTRACT_VERSION: u32 = 7;

/// What a call to the engine comes to: a whole screen, what it is of, and what the device is to do.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Answer {
    /// What is shown: the look that shows it again. Where a look has nothing to show, as the floor
    /// without a session, it is the one that is shown in its place.
    pub look: Look,
    /// The screen to show.
    pub screen: Screen,
    /// What to carry out, in order; nothing where nothing was tapped.
    pub effects: Vec<Effect>,
    /// When to look again, as wall time in milliseconds: the screen changes by itself then. None
    /// where it stands until something is tapped.
    pub wakes_at: Option<i64>,
}

/// A whole screen.
// One screen at a time crosses to a shell, which wants its struct and not a pointer to it.
#[allow(clippy::large_enum_variant)]
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Screen {
    /// What is on, with what loads, how long, what this gym lacks.
    Today {
        /// Its content.
        today: TodayScreen,
    },
    /// What goes on the bar now, the call, one thumb zone to record it.
    Floor {
        /// Its content.
        floor: FloorScreen,
    },
    /// What was done, what changes next time and why.
    Tally {
        /// Its content.
        tally: TallyScreen,
    },
    /// The plan as weeks and sessions.
    Weeks {
        /// Its content.
        weeks: WeeksScreen,
    },
    /// One exercise over time.
    Lift {
        /// Its content.
        lift: LiftScreen,
    },
    /// Each muscle and side, planned and done.
    Balance {
        /// Its content.
        balance: BalanceScreen,
    },
    /// What this gym has.
    Equipment {
        /// Its content.
        equipment: EquipmentScreen,
    },
    /// The general cautions, which can be opened at any time.
    Care {
        /// Its content.
        care: CareScreen,
    },
    /// A plan file read: what it says, or what is wrong with it and where.
    Plan {
        /// Its content.
        plan: PlanScreen,
    },
    /// Something that is made or mended by hand.
    Form {
        /// Its content.
        form: FormScreen,
    },
    /// A tap was recorded, and the screen that should follow it could not be made.
    NotShown {
        /// Its content.
        not_shown: NotShownScreen,
    },
}
