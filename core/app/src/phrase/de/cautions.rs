//! Cautions, where they matter and in a place of their own. The tool advises; lifter, coach and
//! clinician decide.

/// Who asks first, how to brace, when to stop: before a first session, on test days, after a lay-off.
pub fn before_all() -> &'static [&'static str] {
    &[CLINICIAN_FIRST, BRACE, STOP]
}

const CLINICIAN_FIRST: &str = "Ask a clinician first with a heart condition, high blood pressure, an \
                               eye condition, a hernia, a pregnancy, or joints that hurt.";
const BRACE: &str = "A brief brace is usual on heavy loads; breathe between reps.";
const STOP: &str = "Stop and get help at chest pain or pressure, faintness, sudden severe headache, \
                    numbness or unusual breathlessness.";
const MAX_TRY: &str = "Max try: brace, breathe out past the hardest point, stop if you feel dizzy.";
const DARK_URINE: &str = "Dark urine in the days after hard work: see a clinician at once.";
const PAIN: &str = "Sharp or lasting pain is for a clinician, not for another set.";
const NO_COLLARS: &str = "Alone on the bench without pins: no collars.";

/// Everything, under headings, with the answers to pain in their order.
///
/// Minors: Lloyd, Faigenbaum, Stone et al. 2014, Br J Sports Med 48(7):498–505 (seen in its
/// abstract). The rest is common practice.
pub fn all() -> Vec<(&'static str, Vec<&'static str>)> {
    vec![
        (
            "Before you train",
            vec![
                CLINICIAN_FIRST,
                "After an illness of a week or more start with an easy session; with a fever, chest pain \
             or breathlessness see a clinician first.",
            ],
        ),
        ("Heavy loads", vec![BRACE, MAX_TRY]),
        (
            "Under a bar",
            vec![
                "Near failure, from 85 % of your max, or on a max try: set the pins or have a spotter.",
                "With neither: keep two in reserve or swap the exercise, and try no max.",
                NO_COLLARS,
            ],
        ),
        ("Stop", vec![STOP]),
        ("Pain", vec!["In this order: stop, swap the exercise, go lighter, go on.", PAIN]),
        ("The days after", vec![DARK_URINE]),
        (
            "Under 18",
            vec![
                "Train supervised, and test a max only with a coach there (Lloyd et al. 2014, British \
             Journal of Sports Medicine).",
            ],
        ),
    ]
}

/// The title of the place that has them all.
pub fn title() -> &'static str {
    "Take care"
}

/// Below that title.
pub fn who_decides() -> &'static str {
    "Barwright advises; lifter, coach and clinician decide."
}

/// A switch, as it is read aloud.
pub fn under_18(on: bool) -> (&'static str, &'static str) {
    ("Under 18", if on { "Under 18: on" } else { "Under 18: off" })
}

/// A switch, as it is read aloud.
pub fn coach_there(on: bool) -> (&'static str, &'static str) {
    ("A coach is here today", if on { "A coach is here: yes" } else { "A coach is here: no" })
}

/// On every sheet of a minor.
pub fn supervised() -> &'static str {
    "Under 18: train supervised."
}

/// Where a minor's test is left out.
pub fn no_test(name: &str) -> String {
    format!("{name}: no test without a coach. If one is here, say so under Take care.")
}

/// Before each try of a max.
pub fn max_try() -> &'static str {
    MAX_TRY
}

/// For the days after a session.
pub fn after() -> &'static str {
    DARK_URINE
}

/// Asked before a hard set with a bar over the body.
pub fn guarded() -> &'static str {
    "A hard set under a bar: pins or a spotter?"
}

/// After pain.
pub fn pain() -> &'static str {
    PAIN
}

/// Said where neither guards the lifter; what a bench asks beside it is said of the bench alone.
pub fn unguarded(bench: bool) -> String {
    let collars = if bench { format!(" {NO_COLLARS}") } else { String::new() };
    format!("Neither pins nor a spotter: keep two in reserve, or swap.{collars}")
}
