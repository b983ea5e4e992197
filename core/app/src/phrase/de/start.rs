//! How to begin, and the demo.

/// The title.
pub fn title() -> &'static str {
    "How to begin"
}

/// What is here yet.
pub fn subtitle() -> &'static str {
    "Whatever you choose, nothing is lost by it."
}

/// The ways to begin.
pub fn open() -> (&'static str, &'static str) {
    ("How to begin", "Show the ways to begin, and what each does")
}

/// The demo.
pub fn demo() -> (&'static str, &'static str) {
    (
        "Look at the demo",
        "A plan, a gym and six weeks of training, all of it invented, in a file of its own. Your own \
         records stay as they are; leaving it is one press, on Today.",
    )
}

/// A plan file.
pub fn plan_file() -> (&'static str, &'static str) {
    (
        "Begin with a plan file",
        "A text file that a coach or you wrote. It is shown with all that is wrong in it, and nothing \
         changes before you adopt it.",
    )
}

/// A plan of one's own.
pub fn new_plan() -> (&'static str, &'static str) {
    (
        "Make a plan",
        "Sessions, exercises and sets, chosen step by step; what is wrong is said beside its row. It can \
         be left and gone on with, and nothing counts before you adopt it.",
    )
}

/// A gym.
pub fn gym() -> (&'static str, &'static str) {
    (
        "Say what your gym has",
        "Bars, plates, what is held in the hand. Every load is one that can be made there. It can be \
         done later: a usual gym is taken until then.",
    )
}

/// To the gym.
pub fn to_gym() -> &'static str {
    "The gym"
}

/// To the demo, or back.
pub fn turn(on: bool) -> (&'static str, &'static str) {
    if on {
        ("Look at the demo", "Look at the demo, invented records in a file of their own")
    } else {
        ("Leave the demo", "Leave the demo and show your own records")
    }
}

/// On the demo's sheets.
pub fn invented() -> &'static str {
    "This is the demo: all of it is invented. Nothing here is in your own records."
}

/// A session runs.
pub fn finish_first() -> &'static str {
    "A session is running. Finish it first; the demo waits."
}

/// So already.
pub fn so_already(on: bool) -> &'static str {
    if on { "The demo is shown already." } else { "These are your own records already." }
}
