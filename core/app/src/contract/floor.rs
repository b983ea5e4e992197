//! The floor: the bar, the call, the thumb.

use serde::{Deserialize, Serialize};

use super::{Key, Panel};

/// What goes on the bar now, the call, and one thumb zone to record it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FloorScreen {
    /// The session's title.
    pub title: String,
    /// The part to be done now, by name; none when nothing is left.
    pub part: Option<String>,
    /// Zone one.
    pub bar: BarZone,
    /// Zone two.
    pub call: CallZone,
    /// Zone three.
    pub thumb: ThumbZone,
    /// The running rest; it takes the large type.
    pub rest: Option<RunningRest>,
    /// The list that is open over the thumb zone.
    pub panel: Option<Panel>,
    /// The beats of one repetition, where the set has a tempo: a shell that is asked to ticks at each.
    #[serde(default)]
    #[cfg_attr(feature = "uniffi", uniffi(default))]
    pub beats: Vec<Beat>,
    /// Lines that a lifter must see now: the device restarted, the session is paused.
    pub notices: Vec<String>,
    /// The whole screen read aloud.
    pub aloud: String,
}

/// One beat of a repetition's tempo, for a metronome.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Beat {
    /// What is said: "lower", "pause", "lift".
    pub says: String,
    /// Milliseconds it takes; 0 is as fast as possible, and waits for the next repetition.
    pub ms: u32,
}

/// A plate to draw.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlateDrawing {
    /// Its number.
    pub label: String,
    /// Colour as `#RRGGBB`, from the equipment; empty for neutral.
    pub colour: String,
    /// Colour of its number on it.
    pub ink: String,
    /// Diameter in thousandths of the largest plate's.
    pub height: u32,
    /// Thickness in thousandths of the sleeve's length.
    pub width: u32,
}

/// The bar, or what stands for it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BarZone {
    /// The load in the largest type: "110 kg"; empty where there is none.
    pub total: String,
    /// What to do to what is on now: "take off 10 · put on 5, 2.5 each side"; empty for nothing.
    pub change: String,
    /// What the figure counts: "each side", "each hand"; empty where it is plain.
    pub counts: String,
    /// A bar is drawn; otherwise `line` stands in large type.
    pub drawn: bool,
    /// Dumbbells, stack or machine in a line; empty with a drawing.
    pub line: String,
    /// The bar's name and mass.
    pub bar: String,
    /// The plates of one side from the inside out.
    pub plates: Vec<PlateDrawing>,
    /// A collar is drawn.
    pub collar: bool,
    /// "The bar holds…".
    pub holds: Option<Key>,
}

/// The call.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CallZone {
    /// The exercise.
    pub exercise: String,
    /// One sentence: "Set 2 of 4: 5 reps, 1–2 in reserve."
    pub sentence: String,
    /// Last time's line; empty for none.
    pub last: String,
    /// Tempo, technique, range: a line each.
    pub manner: Vec<String>,
    /// Set-up, at the exercise's first set.
    pub set_up: Vec<String>,
    /// Cues.
    pub cues: Vec<String>,
    /// Cautions, where they matter.
    pub cautions: Vec<String>,
    /// Why this load: the derivation in words, a line a step.
    pub why: Vec<String>,
    /// How many sets and minutes are left.
    pub to_go: String,
}

/// The big figure of what was done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Figure {
    /// As shown.
    pub text: String,
    /// Its unit: "reps", "s", "m".
    pub unit: String,
    /// One step down.
    pub down: Key,
    /// One step up.
    pub up: Key,
    /// A tap on it: what is far from the call is typed.
    pub pad: Key,
    /// It changes by itself: a hold is running.
    pub runs: bool,
}

/// A recording key that is the effort.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EffortKey {
    /// Tapped.
    pub key: Key,
    /// Held: half a repetition more.
    pub half: Option<Key>,
}

/// Everything that records.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ThumbZone {
    /// What was done, already at what was called; none where there is nothing to count.
    pub figure: Option<Figure>,
    /// "Racked, in reserve", over the effort keys; empty without them.
    pub prompt: String,
    /// The effort keys, fewest left first; empty where the call asks for none.
    pub effort: Vec<EffortKey>,
    /// The wide key that says what it does; none where the effort keys record.
    pub main: Option<Key>,
    /// Beside it: "short", "without a call".
    pub beside: Vec<Key>,
    /// "Set cut short".
    pub ended: Option<Key>,
    /// Undo, saying what it takes back.
    pub undo: Option<Key>,
    /// Redo, saying what it brings back.
    pub redo: Option<Key>,
    /// Opens what is seldom needed.
    pub more: Option<Key>,
}

/// A rest.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RunningRest {
    /// What it is: "Rest", "Pause in the set", "Next start".
    pub label: String,
    /// Milliseconds left at the reading; negative when over.
    pub left_ms: i64,
    /// The figures: "1:23", or "+0:12" when over.
    pub text: String,
    /// It is over.
    pub over: bool,
    /// The deadline as wall time.
    pub deadline_wall_ms: i64,
    /// The deadline on the boot clock, where it holds.
    pub deadline_boot_ms: Option<i64>,
    /// Shorter.
    pub shorter: Key,
    /// Longer.
    pub longer: Key,
}
