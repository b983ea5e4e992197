//! Cautions, once and where they matter. The tool advises; lifter, coach and clinician decide.

/// Shown on a first sheet, and whenever it is asked for.
pub fn before_all() -> &'static [&'static str] {
    &[
        "Ask a clinician first with a heart condition, high blood pressure, an eye condition, a \
         hernia, a pregnancy, or joints that hurt.",
        "A brief brace is usual on heavy loads; breathe between reps.",
        "Stop and get help at chest pain or pressure, faintness, sudden severe headache, numbness \
         or unusual breathlessness.",
    ]
}

/// For the days after a session.
pub fn after() -> &'static str {
    "Dark urine in the days after hard work: see a clinician at once."
}

/// Asked before failure work or a test with a bar over the body.
pub fn guarded() -> &'static str {
    "A bar over the body, near failure: pins or a spotter?"
}

/// After pain.
pub fn pain() -> &'static str {
    "Sharp or lasting pain is for a clinician, not for another set."
}

/// Said where neither guards the lifter.
pub fn unguarded() -> &'static str {
    "Neither pins nor a spotter: keep two in reserve, or swap. No collars on a lone bench press."
}
