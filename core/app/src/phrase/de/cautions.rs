//! Cautions, where they matter and in a place of their own. The tool advises; lifter, coach and
//! clinician decide.

/// Who asks first, how to brace, when to stop: before a first session, on test days, after a
/// lay-off.
pub fn before_all() -> &'static [&'static str] {
    &[CLINICIAN_FIRST, BRACE, STOP]
}

const CLINICIAN_FIRST: &str = "Frag erst einen Arzt bei Herzleiden, Bluthochdruck, Augenleiden, \
                               einer Hernie, Schwangerschaft oder schmerzenden Gelenken.";
const BRACE: &str = "Kurzes Pressen ist bei schweren Gewichten üblich; atme zwischen den \
                     Wiederholungen.";
const STOP: &str = "Hör auf und hol Hilfe bei Schmerz oder Druck in der Brust, Ohnmacht, \
                    plötzlichem starkem Kopfschmerz, Taubheit oder ungewöhnlicher Atemnot.";
const MAX_TRY: &str = "Maximalversuch: Spannung aufbauen, nach der schwersten Stelle ausatmen, \
                       bei Schwindel abbrechen.";
const DARK_URINE: &str = "Dunkler Urin in den Tagen nach hartem Training: sofort zum Arzt.";
const PAIN: &str = "Stechender oder anhaltender Schmerz gehört zum Arzt, nicht in den nächsten \
                    Satz.";
const NO_COLLARS: &str = "Allein auf der Bank ohne Ablagen: keine Verschlüsse.";

/// Everything, under headings, with the answers to pain in their order.
///
/// Minors: Lloyd, Faigenbaum, Stone et al. 2014, Br J Sports Med 48(7):498–505 (seen in its
/// abstract). The rest is common practice.
pub fn all() -> Vec<(&'static str, Vec<&'static str>)> {
    vec![
        (
            "Vor dem Training",
            vec![
                CLINICIAN_FIRST,
                "Nach einer Krankheit von einer Woche oder mehr mit einer leichten Einheit \
                 beginnen; bei Fieber, Brustschmerz oder Atemnot erst zum Arzt.",
            ],
        ),
        ("Schwere Gewichte", vec![BRACE, MAX_TRY]),
        (
            "Unter der Stange",
            vec![
                "Nahe am Muskelversagen, ab 85 % des Maximums oder beim Maximalversuch: Ablagen \
                 einstellen oder einen Helfer nehmen.",
                "Ohne beides: zwei in Reserve lassen oder die Übung tauschen, und kein \
                 Maximalversuch.",
                NO_COLLARS,
            ],
        ),
        ("Aufhören", vec![STOP]),
        (
            "Schmerz",
            vec!["In dieser Reihenfolge: aufhören, Übung tauschen, leichter, weiter.", PAIN],
        ),
        ("Die Tage danach", vec![DARK_URINE]),
        (
            "Unter 18",
            vec![
                "Trainiere unter Aufsicht und teste ein Maximum nur, wenn ein Trainer dabei ist \
                 (Lloyd et al. 2014, British Journal of Sports Medicine).",
            ],
        ),
    ]
}

/// The title of the place that has them all.
pub fn title() -> &'static str {
    "Achte auf dich"
}

/// Below that title.
pub fn who_decides() -> &'static str {
    "Barwright rät; Sportler, Trainer und Arzt entscheiden."
}

/// A switch, as it is read aloud.
pub fn under_18(on: bool) -> (&'static str, &'static str) {
    ("Unter 18", if on { "Unter 18: an" } else { "Unter 18: aus" })
}

/// A switch, as it is read aloud.
pub fn coach_there(on: bool) -> (&'static str, &'static str) {
    (
        "Heute ist ein Trainer da",
        if on {
            "Ein Trainer ist da: ja"
        } else {
            "Ein Trainer ist da: \
                                                                            nein"
        },
    )
}

/// On every sheet of a minor.
pub fn supervised() -> &'static str {
    "Unter 18: unter Aufsicht trainieren."
}

/// Where a minor's test is left out.
pub fn no_test(name: &str) -> String {
    format!("{name}: kein Test ohne Trainer. Ist einer da, sag es unter „Achte auf dich“.")
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
    "Ein harter Satz unter der Stange: Ablagen oder Helfer?"
}

/// After pain.
pub fn pain() -> &'static str {
    PAIN
}

/// Said where neither guards the lifter; what a bench asks beside it is said of the bench alone.
pub fn unguarded(bench: bool) -> String {
    let collars = if bench { format!(" {NO_COLLARS}") } else { String::new() };
    format!("Weder Ablagen noch Helfer: zwei in Reserve lassen oder tauschen.{collars}")
}
