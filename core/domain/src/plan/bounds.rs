//! How much a plan may hold, beside the bounds of any file ([`crate::text::bounds`]).

/// Weeks.
pub const WEEKS: usize = 104;
/// Sessions, all weeks together.
pub const SESSIONS: usize = 40;
/// Exercises of one session.
pub const EXERCISES: usize = 30;
/// Exercises that the plan adds to the catalogue.
pub const OWN_EXERCISES: usize = 100;
/// Rows of sets of one exercise.
pub const LINES: usize = 20;
/// Sets of one row.
pub const SETS: usize = 30;
/// Parts of one set.
pub const PARTS: usize = 20;
/// Substitutes of one exercise.
pub const SUBSTITUTES: usize = 8;
/// Cues of one exercise or set.
pub const CUES: usize = 3;
/// Rules of one exercise.
pub const RULES: usize = 4;
/// Steps of a ramp, a miss rule or a lay-off rule.
pub const STEPS: usize = 10;
/// Minutes of a session or of general warm-up.
pub const MINUTES: usize = 300;
/// Muscles, supports or other names of one exercise.
pub const NAMES: usize = 12;
/// Characters of a name.
pub const NAME: usize = 60;
/// Characters of a cue, a technique or a setting.
pub const SHORT: usize = 60;
/// Characters of a load, with the name in it.
pub const LOAD: usize = 160;
/// Characters of a plan's description.
pub const ABOUT: usize = 600;
/// Checks of a plan that are accepted as they are, with a reason.
pub const ACCEPTED: usize = 100;
