//! What a coach would say of a plan: each finding, and what would mend it.

use barwright_domain::catalogue::Catalogue;
use barwright_domain::coach::{About, Check, Figure, Finding, Level};
use barwright_domain::plan::Plan;
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Percent};
use barwright_domain::text;

use super::{muscle, named, words};
use crate::contract::FileFault;
use crate::phrase::written::files::in_place as placed;

/// The words of the findings of one plan.
struct CoachWords<'a> {
    /// The plan.
    plan: &'a Plan,
    /// The built-in exercises and the plan's own.
    catalogue: &'a Catalogue,
    /// The gym's unit.
    unit: MassUnit,
    /// Decimal point or comma.
    numerals: Numerals,
}

/// A finding in its place of the file's text. `catalogue` has the plan's own exercises, and `unit`
/// is
/// the gym's.
pub fn in_place(
    finding: &Finding,
    file: &str,
    plan: &Plan,
    catalogue: &Catalogue,
    unit: MassUnit,
    numerals: Numerals,
) -> FileFault {
    CoachWords { plan, catalogue, unit, numerals }.in_place(finding, file)
}

/// What was accepted and why: "no-substitute, Sled push: The sled is ours." None for what was not.
pub fn accepted(finding: &Finding, plan: &Plan, catalogue: &Catalogue) -> Option<String> {
    let (unit, numerals) = <_>::default();
    CoachWords { plan, catalogue, unit, numerals }.accepted(finding)
}

/// How much a finding matters: "ansehen", "ändern".
fn level(level: Level) -> &'static str {
    match level {
        Level::LookAt => "ansehen",
        Level::Change => "ändern",
    }
}

impl CoachWords<'_> {
    /// A finding in its place of the file's text.
    fn in_place(&self, finding: &Finding, file: &str) -> FileFault {
        let at = text::at(file, finding.span.clone());
        FileFault {
            advises: true,
            check: finding.check.slug().to_owned(),
            ..placed((at.line, at.column), at.span, file, self.of(finding), level(finding.level))
        }
    }

    /// What was accepted and why: "no-substitute, Sled push: The sled is ours."
    fn accepted(&self, finding: &Finding) -> Option<String> {
        let because = finding.accepted.as_deref()?;
        let session = finding.session.and_then(|at| self.plan.sessions.get(at));
        let slot = session.zip(finding.exercise).and_then(|(of, at)| of.exercises.get(at));
        let of = match (slot, session) {
            (Some(slot), _) => format!(", {}", self.name(&slot.exercise)),
            (None, Some(session)) => format!(", {}", session.name),
            (None, None) => String::new(),
        };
        Some(format!("{}{of}: {because}", finding.check.slug()))
    }

    fn name(&self, slug: &str) -> String {
        self.catalogue.get(slug).map_or_else(|| slug.to_owned(), words::exercise)
    }

    fn mass(&self, mass: Mass) -> String {
        mass.print(self.unit, self.numerals)
    }

    fn percent(&self, share: Percent) -> String {
        share.print(self.numerals)
    }

    /// A share of hundredths of a percent as a whole percentage: "13 %".
    fn about(hundredths: i32) -> String {
        format!("{} %", (hundredths + 50) / 100)
    }

    fn figure(&self, figure: Figure) -> String {
        match figure {
            Figure::Share(share) => self.percent(share),
            Figure::Mass(mass) => self.mass(mass),
        }
    }

    /// Tenths of sets.
    fn sets(&self, tenths: u32) -> String {
        muscle::tenths(u64::from(tenths), self.numerals)
    }

    /// What was found, and what would mend it.
    fn of(&self, finding: &Finding) -> (String, String) {
        let (problem, advice) = self.about_it(&finding.about);
        if finding.check.can_be_accepted() {
            let keep = format!("Oder nimm {} mit einem Grund an (accept).", finding.check.slug());
            (problem, format!("{advice} {keep}"))
        } else {
            (problem, advice)
        }
    }

    fn about_it(&self, about: &About) -> (String, String) {
        match about {
            About::LoadJump { weeks: (one, other), loads: (from, to), rise } => (
                format!(
                    "von Woche {one} auf Woche {other} geht das Gewicht von {} auf {}: mit den \
                     Wiederholungen {} schwerer",
                    self.figure(*from),
                    self.figure(*to),
                    Self::about(*rise)
                ),
                "Gewichte steigen meist um 2 bis 10 % auf einmal: Setz einen Schritt dazwischen \
                 oder nimm Wiederholungen weg."
                    .to_owned(),
            ),
            About::VolumeJump { weeks: (one, other), muscles } => {
                let each = muscles.iter().take(3).map(|(of, from, to)| {
                    let (from, to) = (self.sets(from * 5), self.sets(to * 5));
                    format!("{} von {from} auf {to} harte Sätze", muscle::in_line(*of))
                });
                let more = match muscles.len() {
                    0..=3 => String::new(),
                    count => format!(", und {} weitere", count - 3),
                };
                (
                    format!(
                        "von Woche {one} auf Woche {other} ist viel mehr zu tun: {}{more}",
                        each.collect::<Vec<_>>().join(", ")
                    ),
                    "Verteil die zusätzlichen Sätze auf mehrere Wochen.".to_owned(),
                )
            }
            About::Muscle { muscle: of, tenths, middle } => {
                let (gets, rest) = (self.sets(*tenths), self.sets(*middle));
                let problem = format!(
                    "{}: {gets} harte Sätze in einer vollen Woche; die Hälfte der großen Muskeln \
                     bekommt {rest} oder mehr",
                    muscle::name(*of)
                );
                if tenths < middle {
                    (
                        problem,
                        "Gib ihm einen oder zwei Sätze in einer Einheit, die Zeit hat.".to_owned(),
                    )
                } else {
                    (
                        problem,
                        "Über 20 je Woche ist viel: Gib einige dem, was weniger bekommt."
                            .to_owned(),
                    )
                }
            }
            About::TooLong { week, seconds, minutes } => (
                format!(
                    "{} in Woche {week}, und es gibt {minutes} (gerechnet mit Maxima von 100 kg)",
                    words::minutes(*seconds)
                ),
                "Kürze Pausen, leg Übungen zusammen, streich einen Satz oder gib mehr Minuten."
                    .to_owned(),
            ),
            About::TooHeavy { week, share, reps, table } => (
                format!(
                    "Woche {week} verlangt {} bei {}; bis zum Muskelversagen sind so viele bei {} \
                     üblich",
                    words::reps_of(*reps),
                    self.percent(*share),
                    self.percent(*table)
                ),
                format!(
                    "Schreib {} oder weniger, oder weniger Wiederholungen.",
                    self.percent(*table)
                ),
            ),
            About::EffortApart { week, share, reps, left, table, heavy } => (
                format!(
                    "Woche {week} verlangt {} bei {} mit {} in Reserve; dafür sind {} üblich",
                    words::reps_of(*reps),
                    self.percent(*share),
                    left.print(self.numerals),
                    self.percent(*table)
                ),
                if *heavy {
                    "Nimm Gewicht weg oder verlange weniger in Reserve.".to_owned()
                } else {
                    "Leg Gewicht dazu, verlange mehr Wiederholungen oder mehr in Reserve."
                        .to_owned()
                },
            ),
            About::Coarse { load, step, share } => (
                format!(
                    "bei {} ist der nächste Schritt hier {}, {} davon",
                    self.mass(*load),
                    self.mass(*step),
                    Self::about(share.hundredths())
                ),
                "Schritten von 2 bis 10 % kann man folgen: Erweitere den Bereich der \
                 Wiederholungen oder nimm etwas, das feiner stuft."
                    .to_owned(),
            ),
            About::StepUnmade { asked, step, load } => (
                format!(
                    "der Schritt ist {}, und bei {} ist der kleinste hier {}",
                    self.mass(*asked),
                    self.mass(*load),
                    self.mass(*step)
                ),
                format!(
                    "Schreib einen Schritt von {} oder bring kleinere Scheiben mit.",
                    self.mass(*step)
                ),
            ),
            About::MadeTheSame { weeks: (one, other), loads: (from, to), made } => (
                format!(
                    "{} in Woche {one} und {} in Woche {other} ergeben hier beide {}",
                    self.mass(*from),
                    self.mass(*to),
                    self.mass(*made)
                ),
                "Schreib Schritte, die in diesem Kraftraum möglich sind.".to_owned(),
            ),
            About::NoTarget => (
                "die Regel geht nach Anstrengung, und keine ist verlangt".to_owned(),
                "Schreib left oder rpe, oder eine andere Regel.".to_owned(),
            ),
            About::NoFigure => (
                "die Regel steigert ein Gewicht, und Bänder oder Ketten allein haben keine Zahl"
                    .to_owned(),
                "Schreib ein Stangengewicht dazu oder lass die Regel weg.".to_owned(),
            ),
            About::NothingHeavier { load } => (
                format!("schwerer als {} geht es hier nicht", self.mass(*load)),
                "Verlange mehr Wiederholungen, nenne eine Ersatzübung oder lass die Regel weg."
                    .to_owned(),
            ),
            About::StepTooFar { load, step } => (
                format!(
                    "der Schritt ist {}, und so viel mehr als {} geht hier nicht",
                    self.mass(*step),
                    self.mass(*load)
                ),
                "Schreib einen kleineren Schritt oder bring mehr Scheiben mit.".to_owned(),
            ),
            About::RangeOfOne => (
                "die doppelte Steigerung füllt einen Bereich, und verlangt ist eine einzelne Zahl"
                    .to_owned(),
                "Schreib einen Bereich (reps = \"8-10\") oder next = \"add when made\".".to_owned(),
            ),
            About::Rare { needs, lacking } => {
                let needs: Vec<String> = needs.iter().map(|need| named::thing(need)).collect();
                let needs = needs.join(" und ");
                (
                    if *lacking {
                        format!("hier fehlt {needs}, und kein Ersatz ist genannt")
                    } else {
                        format!("in vielen Krafträumen fehlt {needs}, und kein Ersatz ist genannt")
                    },
                    "Nenne eine Ersatzübung: substitutes = [\"…\"].".to_owned(),
                )
            }
            About::HeavyBefore { session, exercise, muscles } => {
                let muscles: Vec<&str> = muscles.iter().map(|of| muscle::in_line(*of)).collect();
                (
                    format!(
                        "schwer für {} am Tag nach {} in „{session}“",
                        muscles.join(", "),
                        self.name(exercise)
                    ),
                    "Lass einen Tag dazwischen oder mach eins davon leichter.".to_owned(),
                )
            }
            About::Deload { weeks: (before, deload), sets: (then, now), load } => {
                let load = match load {
                    Some(load) => format!(", mit {} des Gewichts", Self::about(*load)),
                    None => String::new(),
                };
                (
                    format!(
                        "diese Entlastung verlangt {now} Arbeitssätze nach {then} in Woche \
                         {before}{load}"
                    ),
                    format!(
                        "Eine Entlastung nimmt meist 40 bis 50 % der Sätze und bis zu 10 % des \
                         Gewichts weg. Was Woche für Woche geschrieben ist, wird nicht von selbst \
                         gekürzt: Schreib weniger in Woche {deload}."
                    ),
                )
            }
            About::DeloadSame { weeks: (before, deload) } => (
                format!("in der Entlastung von Woche {deload} bleibt es wie in Woche {before}"),
                "Schreib für diese Woche weniger: Was Woche für Woche geschrieben ist, wird nicht \
                 von selbst gekürzt."
                    .to_owned(),
            ),
            About::UnknownCheck { name, nearest } => (
                format!("keine Prüfung heißt „{name}“"),
                match nearest {
                    Some(nearest) => format!("Schreib \"{nearest}\"."),
                    None => {
                        let all = Check::ALL.into_iter().filter(|check| check.can_be_accepted());
                        let all: Vec<_> = all.map(Check::slug).collect();
                        format!("Schreib eine von {}.", all.join(", "))
                    }
                },
            ),
            About::UnknownSession { name } => (
                format!("keine Einheit heißt „{name}“"),
                "Schreib den Namen der Einheit, wie er dort steht.".to_owned(),
            ),
            About::Unused => {
                ("nichts ist übrig, was das annimmt".to_owned(), "Nimm es heraus.".to_owned())
            }
        }
    }
}
