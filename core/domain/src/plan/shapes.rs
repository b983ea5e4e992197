//! Every key of the plan format, and what may stand behind it.

use super::bounds::*;
use crate::catalogue::{Movement, Muscle};
use crate::quantity::Kind;
use crate::text::Holds::{Any, Flag, List, Quantity, Table, Text, Whole, Word};
use crate::text::{Holds, Key, Shape};

pub(super) const GOALS: &[&str] = &["strength", "size"];
pub(super) const KINDS: &[&str] = &["ordinary", "ease-in", "deload", "test"];
pub(super) const RAISES: &[&str] = &["never", "tests", "estimates"];
pub(super) const DAYS: &[&str] =
    &["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];
pub(super) const SIDES: &[&str] = &["together", "weaker first", "left first", "right first"];
pub(super) const SIDE: &[&str] = &["left", "right"];
pub(crate) const COUNTINGS: &[&str] =
    &["total", "each hand", "one", "stack", "each side", "added", "unnumbered"];
pub(super) const MEASURES: &[&str] = &["reps", "seconds", "metres"];
pub(super) const GEAR: &[&str] = &["belt", "wraps", "straps", "sleeves"];
pub(super) const RULES_KNOWN: &[&str] = &[
    "as planned",
    "double progression",
    "two for two",
    "add when made",
    "by effort",
    "less assistance",
    "more added load",
];
pub(super) const RAMPS: &[&str] = &["none", "short", "usual"];
pub(super) const MOVEMENTS: &[&str] = &{
    let mut words = [""; Movement::ALL.len()];
    let mut at = 0;
    while at < words.len() {
        #[expect(clippy::indexing_slicing, reason = "worked out by the compiler, which checks it")]
        {
            words[at] = Movement::ALL[at].slug();
        }
        at += 1;
    }
    words
};
pub(super) const MUSCLES: &[&str] = &{
    let mut words = [""; Muscle::ALL.len()];
    let mut at = 0;
    while at < words.len() {
        #[expect(clippy::indexing_slicing, reason = "worked out by the compiler, which checks it")]
        {
            words[at] = Muscle::ALL[at].slug();
        }
        at += 1;
    }
    words
};

const MASS: Holds = Quantity(Kind::Mass);
const PERCENT: Holds = Quantity(Kind::Percent);
const SECONDS: Holds = Quantity(Kind::Seconds);
const LEFT: Holds = Quantity(Kind::Reserve);
const RPE: Holds = Quantity(Kind::Rpe);
const SHORT_TEXT: Holds = Text(SHORT);
const NAME_TEXT: Holds = Text(NAME);
/// Repetitions: `5`, `"6-10"`, `"8 or more, stop at 1 left"`.
const REPS: Holds = Any(&[Whole(0, 1_000), SHORT_TEXT]);
const SECONDS_WORK: Holds = Any(&[Whole(0, 86_400), SECONDS]);
const METRES_WORK: Holds = Any(&[Whole(0, 100_000), Quantity(Kind::Distance)]);
/// A load: `"77.5 %"`, `"100 kg"`, `"body + 10 kg"`, `"by feel"`.
const A_LOAD: Holds = Text(LOAD);
const SET_COUNT: Holds = Whole(0, SETS as i64);
const CUE_LIST: Holds = List(&SHORT_TEXT, CUES);
const NAME_LIST: Holds = List(&NAME_TEXT, NAMES);
const MUSCLE_LIST: Holds = List(&Word(MUSCLES), NAMES);
const WEEK_LIST: Holds =
    Any(&[Whole(1, WEEKS as i64), Text(SHORT), List(&Whole(1, WEEKS as i64), WEEKS)]);

/// Declares a value that may vary by set and by week, with the shape of its table by week.
macro_rules! varied {
    ($holds:ident, $shape:ident, $name:literal, $one:expr) => {
        pub(super) static $shape: Shape = Shape {
            name: $name,
            keys: &[Key::must("by_week", List(&Any(&[$one, List(&$one, SETS)]), WEEKS))],
        };
        const $holds: Holds = Any(&[$one, List(&$one, SETS), Table(&$shape)]);
    };
}

pub(super) static SETS_BY_WEEK: Shape =
    Shape { name: "sets by week", keys: &[Key::must("by_week", List(&SET_COUNT, WEEKS))] };
const SETS_VARIED: Holds = Any(&[SET_COUNT, Table(&SETS_BY_WEEK)]);
varied!(REPS_VARIED, REPS_BY_WEEK, "reps by week", REPS);
varied!(SECONDS_VARIED, SECONDS_BY_WEEK, "seconds by week", SECONDS_WORK);
varied!(METRES_VARIED, METRES_BY_WEEK, "metres by week", METRES_WORK);
varied!(LOAD_VARIED, LOAD_BY_WEEK, "load by week", A_LOAD);
varied!(LEFT_VARIED, LEFT_BY_WEEK, "left by week", LEFT);
varied!(RPE_VARIED, RPE_BY_WEEK, "rpe by week", RPE);

pub(super) static REST: Shape = Shape {
    name: "rest",
    keys: &[
        Key::may("after_set", SECONDS),
        Key::may("in_set", SECONDS),
        Key::may("between_sides", SECONDS),
        Key::may("in_superset", SECONDS),
        Key::may("after_superset", SECONDS),
    ],
};
const REST_OR_TABLE: Holds = Any(&[SECONDS, Table(&REST)]);

pub(super) static RAMP_STEP: Shape = Shape {
    name: "ramp step",
    keys: &[Key::must("load", SHORT_TEXT), Key::must("reps", Whole(1, 100))],
};
const RAMP: Holds = Any(&[Word(RAMPS), List(&Table(&RAMP_STEP), STEPS)]);

pub(super) static WARM_UP: Shape = Shape {
    name: "warm-up",
    keys: &[
        Key::may("minutes", Whole(1, MINUTES as i64)),
        Key::may("ramp", RAMP),
        Key::may("again_after", SECONDS),
        Key::may("slack", PERCENT),
    ],
};

pub(super) static CLUSTER: Shape = Shape {
    name: "cluster",
    keys: &[Key::must("blocks", List(&Whole(1, 100), PARTS)), Key::may("pause", SECONDS)],
};
pub(super) static REST_PAUSE: Shape = Shape {
    name: "rest-pause",
    keys: &[
        Key::must("each", Whole(1, 100)),
        Key::may("pause", SECONDS),
        Key::may("total", Whole(1, 1_000)),
        Key::may("most_parts", Whole(1, PARTS as i64)),
    ],
};
pub(super) static RANGE_PART: Shape = Shape {
    name: "range",
    keys: &[Key::must("name", NAME_TEXT), Key::must("reps", Quantity(Kind::Reps))],
};
pub(super) static CONTINUED_PART: Shape = Shape {
    name: "continued part",
    keys: &[
        Key::must("name", NAME_TEXT),
        Key::may("load", A_LOAD),
        Key::may("reps", REPS),
        Key::may("seconds", SECONDS_WORK),
        Key::may("metres", METRES_WORK),
        Key::may("pause", SECONDS),
    ],
};
pub(super) static CLIMB: Shape = Shape {
    name: "climb",
    keys: &[Key::may("step", PERCENT), Key::may("most_sets", Whole(1, SETS as i64))],
};
pub(super) static REPEAT: Shape =
    Shape { name: "repeat", keys: &[Key::must("most_sets", Whole(1, SETS as i64))] };
pub(super) static TOTAL: Shape = Shape {
    name: "total",
    keys: &[Key::must("reps", Whole(1, 1_000)), Key::may("most_sets", Whole(1, SETS as i64))],
};
pub(super) static TEST: Shape =
    Shape { name: "test", keys: &[Key::may("step", PERCENT), Key::may("most_tries", Whole(3, 5))] };

/// The keys that an exercise and each of its rows share, after those that only one has.
macro_rules! with_line_keys {
    ($($own:expr),* $(,)?) => {
        &[
            $($own,)*
            Key::may("sets", SETS_VARIED),
            Key::may("reps", REPS_VARIED),
            Key::may("seconds", SECONDS_VARIED),
            Key::may("metres", METRES_VARIED),
            Key::may("load", LOAD_VARIED),
            Key::may("left", LEFT_VARIED),
            Key::may("rpe", RPE_VARIED),
            Key::may("tempo", Quantity(Kind::Tempo)),
            Key::may("technique", SHORT_TEXT),
            Key::may("part_techniques", List(&SHORT_TEXT, PARTS)),
            Key::may("cues", CUE_LIST),
            Key::may("rest", REST_OR_TABLE),
            Key::may("speed", Flag),
            Key::may("climb", Table(&CLIMB)),
            Key::may("repeat", Table(&REPEAT)),
            Key::may("total", Table(&TOTAL)),
            Key::may("every", SECONDS),
            Key::may("test", Table(&TEST)),
            Key::may("cluster", Table(&CLUSTER)),
            Key::may("rest_pause", Table(&REST_PAUSE)),
            Key::may("drop", List(&PERCENT, PARTS)),
            Key::may("ranges", List(&Table(&RANGE_PART), PARTS)),
            Key::may("continued", List(&Table(&CONTINUED_PART), PARTS)),
            Key::may("on_sets", Any(&[Word(&["last"]), List(&Whole(1, SETS as i64), SETS)])),
        ]
    };
}

pub(super) static SET: Shape = Shape {
    name: "set",
    keys: with_line_keys![Key::may("weeks", WEEK_LIST), Key::may("side", Word(SIDE))],
};

pub(super) static SET_UP: Shape = Shape {
    name: "set-up",
    keys: &[
        Key::may("pins", SHORT_TEXT),
        Key::may("seat", SHORT_TEXT),
        Key::may("attachment", SHORT_TEXT),
        Key::may("bench", SHORT_TEXT),
    ],
};
pub(super) static SUBSTITUTE: Shape = Shape {
    name: "substitute",
    keys: &[
        Key::must("name", NAME_TEXT),
        Key::may("sets", Whole(1, SETS as i64)),
        Key::may("reps", REPS),
        Key::may("seconds", SECONDS_WORK),
        Key::may("metres", METRES_WORK),
        Key::may("load", A_LOAD),
        Key::may("left", LEFT),
        Key::may("rpe", RPE),
    ],
};
pub(super) static RULE: Shape = Shape {
    name: "rule",
    keys: &[
        Key::must("rule", Word(RULES_KNOWN)),
        Key::may("step", Any(&[MASS, PERCENT])),
        Key::may("up", Flag),
    ],
};
const ONE_RULE: Holds = Any(&[Word(RULES_KNOWN), Table(&RULE)]);
const MISSES: Holds = List(&SHORT_TEXT, STEPS);

pub(super) static SLOT: Shape = Shape {
    name: "exercise of a session",
    keys: with_line_keys![
        Key::must("name", NAME_TEXT),
        Key::may("weeks", WEEK_LIST),
        Key::may("goal", Word(GOALS)),
        Key::may("superset", NAME_TEXT),
        Key::may("optional", Flag),
        Key::may("keep", Flag),
        Key::may("track", NAME_TEXT),
        Key::may("sides", Word(SIDES)),
        Key::may("counted", Word(COUNTINGS)),
        Key::may("percent_of", A_LOAD),
        Key::may("ramp", RAMP),
        Key::may("set_up", Table(&SET_UP)),
        Key::may("wear", List(&Word(GEAR), 4)),
        Key::may("substitutes", List(&Any(&[NAME_TEXT, Table(&SUBSTITUTE)]), SUBSTITUTES)),
        Key::may("next", Any(&[Word(RULES_KNOWN), Table(&RULE), List(&ONE_RULE, RULES)])),
        Key::may("misses", MISSES),
        Key::may("set", List(&Table(&SET), LINES)),
    ],
};

pub(super) static SESSION: Shape = Shape {
    name: "session",
    keys: &[
        Key::must("name", NAME_TEXT),
        Key::may("day", Word(DAYS)),
        Key::may("weeks", WEEK_LIST),
        Key::may("minutes", Whole(1, MINUTES as i64)),
        Key::may("warm_up", Table(&WARM_UP)),
        Key::may("rest", REST_OR_TABLE),
        Key::must("exercise", List(&Table(&SLOT), EXERCISES)),
    ],
};

pub(super) static OWN_EXERCISE: Shape = Shape {
    name: "exercise of the plan's own",
    keys: &[
        Key::must("name", NAME_TEXT),
        Key::may("like", NAME_TEXT),
        Key::may("also", NAME_LIST),
        Key::may("movement", Word(MOVEMENTS)),
        Key::may("implement", NAME_TEXT),
        Key::may("needs", NAME_LIST),
        Key::may("direct", MUSCLE_LIST),
        Key::may("indirect", MUSCLE_LIST),
        Key::may("one_sided", Flag),
        Key::may("body_share", PERCENT),
        Key::may("counted", Word(COUNTINGS)),
        Key::may("measured_in", Word(MEASURES)),
        Key::may("main_lift", Flag),
        Key::may("from_floor", Flag),
        Key::may("over_body", Flag),
    ],
};

pub(super) static CUT: Shape = Shape {
    name: "lighter week",
    keys: &[
        Key::may("sets_off", PERCENT),
        Key::may("load_off", PERCENT),
        Key::may("more_left", Whole(0, 10)),
    ],
};
pub(super) static WEEK: Shape = Shape {
    name: "week",
    keys: &[
        Key::must("number", Any(&[Whole(1, WEEKS as i64), List(&Whole(1, WEEKS as i64), WEEKS)])),
        Key::may("kind", Word(KINDS)),
        Key::may("name", NAME_TEXT),
        Key::may("sets_off", PERCENT),
        Key::may("load_off", PERCENT),
        Key::may("more_left", Whole(0, 10)),
    ],
};
pub(super) static MAX: Shape = Shape {
    name: "max",
    keys: &[
        Key::must("lift", NAME_TEXT),
        Key::may("working", PERCENT),
        Key::may("raise", Word(RAISES)),
    ],
};
pub(super) static LAY_OFF: Shape = Shape {
    name: "lay-off",
    keys: &[
        Key::must("over_days", Whole(1, 1_000)),
        Key::may("sets_off", PERCENT),
        Key::may("load_off", PERCENT),
        Key::may("ease_in", Flag),
    ],
};
pub(super) static ACCEPT: Shape = Shape {
    name: "accepted finding",
    keys: &[
        Key::must("check", NAME_TEXT),
        Key::may("session", NAME_TEXT),
        Key::may("exercise", NAME_TEXT),
        Key::must("because", Text(ABOUT)),
    ],
};

/// A whole plan.
pub(super) static PLAN: Shape = Shape {
    name: "plan",
    keys: &[
        Key::must("name", NAME_TEXT),
        Key::may("about", Text(ABOUT)),
        Key::may("goal", Word(GOALS)),
        Key::must("weeks", Whole(1, WEEKS as i64)),
        Key::may("minutes", Whole(1, MINUTES as i64)),
        Key::may("rest", REST_OR_TABLE),
        Key::may("rest_step", SECONDS),
        Key::may("working_max", PERCENT),
        Key::may("raise_max", Word(RAISES)),
        Key::may("misses", MISSES),
        Key::may("hard_at_left", LEFT),
        Key::may("seconds_a_rep", Whole(1, 20)),
        Key::may("warm_up", Table(&WARM_UP)),
        Key::may("deload", Table(&CUT)),
        Key::may("ease_in", Table(&CUT)),
        Key::may("lay_off", List(&Table(&LAY_OFF), STEPS)),
        Key::may("max", List(&Table(&MAX), NAMES)),
        Key::may("week", List(&Table(&WEEK), WEEKS)),
        Key::may("exercise", List(&Table(&OWN_EXERCISE), OWN_EXERCISES)),
        Key::must("session", List(&Table(&SESSION), SESSIONS)),
        Key::may("accept", List(&Table(&ACCEPT), ACCEPTED)),
    ],
};
