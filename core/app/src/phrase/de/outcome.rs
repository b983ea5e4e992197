//! What a session came to, as words: what an owner is told, why, and what only a person can answer.

use barwright_domain::call::{Amount, EffortScale};
use barwright_domain::owners::{Change, Outcome, Owner, Proposal, Question, Why};
use barwright_domain::plan::{Miss, RuleKind};
use barwright_domain::progress::estimate::EstimatedReps;
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Percent};

use super::words;
use crate::phrase::written::figures;

/// Why, as the rest of a sentence with its exact numbers: "alle Sätze geschafft", "schwächster Satz
/// 8 von 10 Wdh.".
pub(super) fn why(why: &Why, scale: EffortScale, unit: MassUnit, numerals: Numerals) -> String {
    Say { scale, unit, numerals, exact: true }.why(why)
}

/// An outcome in a sentence, with what it adds; one that is kept back says so. Numbers are rounded
/// to
/// what is said in a breath: the exact ones stand under why.
pub fn sentence(
    outcome: &Outcome,
    scale: EffortScale,
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    let say = Say { scale, unit, numerals, exact: false };
    let why = say.why(&outcome.why);
    let why = match &outcome.owner {
        Owner::Max(_) => format!("Maximum: {why}"),
        Owner::Track(_) | Owner::Loose(_) | Owner::Care(_) => why,
    };
    let why = words::sentence_case(&why);
    if outcome.held {
        return format!("Bleibt, wie es war. {}", words::end(why));
    }
    let by = outcome.changes.iter().find_map(|change| match change {
        Change::Step(by) => Some(*by),
        _ => None,
    });
    let step = by.map(|by| step(&outcome.why, by, unit, numerals));
    words::end(format!("{why}{}", step.unwrap_or_default()))
}

/// What is added to the load, as the rest of a sentence: ": 2,5 kg mehr", ": 5 kg weniger
/// Unterstützung";
/// nothing where nothing is.
pub(super) fn step(why: &Why, by: Mass, unit: MassUnit, numerals: Numerals) -> String {
    let much = words::mass(by.distance(Mass::ZERO), unit, numerals);
    let assisted = matches!(why, Why::TopReached { rule: RuleKind::LessAssistance, .. });
    match by.cmp(&Mass::ZERO) {
        std::cmp::Ordering::Equal => String::new(),
        std::cmp::Ordering::Greater if assisted => format!(": {much} weniger Unterstützung"),
        std::cmp::Ordering::Greater => format!(": {much} mehr"),
        std::cmp::Ordering::Less => format!(": {much} weniger"),
    }
}

/// What is asked, and the key that says yes.
pub fn proposal(proposal: &Proposal, unit: MassUnit, numerals: Numerals) -> (String, String) {
    let to = proposal.to.map(|to| words::or_help(to, unit, numerals));
    let take = |to: Option<&String>| match to {
        Some(to) => format!("{to} nehmen"),
        None => "Nehmen".to_owned(),
    };
    let asks = match (proposal.question, &to) {
        (Question::Jump, Some(to)) => {
            format!(
                "Mehr Wiederholungen sind nicht vorgesehen. Das nächste Gewicht hier ist \
                     {to}: nehmen?"
            )
        }
        (Question::Jump, None) => "Mehr Wiederholungen sind nicht vorgesehen. Den nächsten Stift \
                                   nehmen?"
            .to_owned(),
        (Question::WellOff, Some(to)) => {
            format!("Zwei Einheiten deutlich neben dem Ziel. Auf {to} gehen?")
        }
        (Question::WellOff, None) => {
            "Zwei Einheiten deutlich neben dem Ziel. Das Gewicht ändern?".to_owned()
        }
        (Question::Missed, Some(to)) => format!(
            "Mehrmals in Folge verfehlt. Auf {to} \
                                                 heruntergehen?"
        ),
        (Question::Missed, None) => "Mehrmals in Folge verfehlt. Heruntergehen?".to_owned(),
        (Question::OwnTrack(_), _) => {
            let asks = "In dieser Einheit zweimal verfehlt, in den anderen geschafft. Bekommt sie \
                        ihr eigenes Gewicht?";
            return (asks.to_owned(), "Eigenes Gewicht".to_owned());
        }
        (Question::Test, Some(to)) => {
            format!("Der Test ergab {to}, weniger als das Maximum. Trotzdem als Maximum nehmen?")
        }
        (Question::Test, None) => {
            "Der Test wurde nicht beendet. Trotzdem als Maximum nehmen?".to_owned()
        }
    };
    (asks, take(to.as_ref()))
}

/// What is asked where pain stands and a session of it was done, and the key that says yes.
pub fn no_pain() -> (&'static str, &'static str) {
    ("War das ohne Schmerzen?", "Ohne Schmerzen")
}

#[derive(Clone, Copy)]
struct Say {
    scale: EffortScale,
    unit: MassUnit,
    numerals: Numerals,
    /// To the last digit that is known, and with the formula.
    exact: bool,
}

impl Say {
    fn load(self, load: Mass) -> String {
        words::or_help(load, self.unit, self.numerals)
    }

    /// An estimate: whole units in a sentence, a tenth under why.
    fn estimate(self, estimate: Mass) -> String {
        if self.exact {
            return words::tenth(estimate, self.unit, self.numerals);
        }
        words::whole(estimate, self.unit, self.numerals)
    }

    /// ": 2,5 % weniger", ": 4 % mehr"; nothing where nothing changes.
    fn change(self, change: Percent) -> String {
        if change == Percent::default() {
            return String::new();
        }
        let more = change.hundredths() >= 0;
        let size = Percent::from_hundredths(change.hundredths().saturating_abs());
        let size = size.print(self.numerals);
        format!(": {size} {}", if more { "mehr" } else { "weniger" })
    }

    /// "gleiches Gewicht, mehr Wiederholungen", or more seconds or metres.
    fn more_of(of: &Amount) -> &'static str {
        match of {
            Amount::Reps(_) => "gleiches Gewicht, mehr Wiederholungen",
            Amount::Seconds(_) => "gleiches Gewicht, länger",
            Amount::Metres(_) => "gleiches Gewicht, weiter",
        }
    }

    fn why(self, why: &Why) -> String {
        let amount = |amount| words::amount(amount, self.numerals);
        let effort = |left| words::reserve(left, self.scale, self.numerals);
        match why {
            Why::Entered => "von Hand eingegeben".into(),
            Why::PlanSays => "wie der Plan sagt".into(),
            Why::Silent => "nichts zu beurteilen: keine Änderung".into(),
            Why::TooFew { done, of } => format!(
                "{done} von {of} Sätzen, zu wenig für mehr \
                                                 Gewicht"
            ),
            Why::LessLoad => "leichter als vorgegeben: kein Gewicht dazu".into(),
            Why::UnderCut => "mit verringertem Gewicht: kein Gewicht dazu".into(),
            Why::MoreLoad => "mit mehr als vorgegeben geschafft: Das ist jetzt das Gewicht".into(),
            Why::Found => "das Gewicht, das du gewählt hast, bleibt".into(),
            Why::AsPlanned => "geschafft: weiter nach Plan".into(),
            Why::NoRule => "geschafft, und der Plan legt nichts drauf".into(),
            Why::AllMade => "alle Sätze geschafft".into(),
            Why::TopReached { top, .. } => format!("jeder Satz erreichte {}", amount(top)),
            Why::BelowTop { done, top, .. } => format!(
                "schwächster Satz {} von {}: {}",
                words::figure(done, self.numerals),
                amount(top),
                Self::more_of(top)
            ),
            Why::NoPlace { top } => {
                format!("jeder Satz erreichte {}: den nächsten Stift wählen", amount(top))
            }
            Why::StepTooBig { step_to, expected, floor, formula } => {
                let (to, reps) = (self.load(*step_to), self.reps(*expected));
                let by = if self.exact {
                    format!(" nach {}", words::sentence_case(formula.slug()))
                } else {
                    String::new()
                };
                format!(
                    "das nächste Gewicht hier ist {to}, gut für etwa {reps} Wdh.{by}, verlangt \
                     sind {floor}: gleiches Gewicht, mehr Wiederholungen"
                )
            }
            Why::Rough { step_to } => format!(
                "das nächste Gewicht hier ist {}, ein zu großer Sprung: gleiches Gewicht, mehr \
                 Wiederholungen",
                self.load(*step_to)
            ),
            Why::NothingHeavier => {
                "hier gibt es nichts Schwereres: gleiches Gewicht, mehr davon".into()
            }
            Why::TwoForTwo { goal, done: [before, last] } => {
                format!(
                    "{before} und {last} Wdh. in den letzten Sätzen zweier Einheiten, \
                         verlangt {goal}"
                )
            }
            Why::NotYetTwo { goal, done, times } => {
                let more = if *times > 0 { ": noch einmal, dann mehr Gewicht" } else { "" };
                format!("{done} Wdh. im letzten Satz, verlangt {goal}{more}")
            }
            Why::OffTarget { called, edge, change } => {
                format!("{}, Ziel {}{}", effort(*called), effort(*edge), self.change(*change))
            }
            Why::OnTarget { called } => format!("{}, im Ziel", effort(*called)),
            Why::NotCalled => "keine Angabe zur Anstrengung: keine Änderung".into(),
            Why::Missed { times, then } => {
                let missed = match times {
                    1 => "verfehlt".to_owned(),
                    times => format!("{times}-mal in Folge verfehlt"),
                };
                match then {
                    Miss::Repeat => format!("{missed}: nicht schwerer, bis es geschafft ist"),
                    Miss::Less(off) => format!("{missed}: {} weniger", off.print(self.numerals)),
                    Miss::Hold => format!("{missed}: keine Änderung, frag den Trainer"),
                }
            }
            Why::MissMade => "was verfehlt war, ist geschafft".into(),
            Why::Tested => "im Test gehoben".into(),
            Why::AboveOnce { estimate } => format!(
                "diese Einheit lässt {} schätzen, mehr als das Maximum; eine zweite solche hebt \
                 es an",
                self.estimate(*estimate)
            ),
            Why::AboveTwice { estimate } => format!(
                "zwei Einheiten lassen mindestens {} schätzen: angehoben, um höchstens {}",
                self.estimate(*estimate),
                Percent::from_hundredths(250).print(self.numerals)
            ),
            Why::NotAbove { estimate } => {
                format!(
                    "diese Einheit lässt {} schätzen, nicht mehr als das Maximum",
                    self.estimate(*estimate)
                )
            }
            Why::Pain => "Schmerz: leichter, bis eine Einheit ohne Schmerzen war".into(),
            Why::PainFree => {
                "ohne Schmerzen: Das Gewicht kommt zurück, höchstens 10 % je Einheit".into()
            }
            Why::Back => "zurück nach einer Trainingspause".into(),
            Why::LaterWord => "für einen früheren Tag eingegeben: Was später kam, gilt".into(),
        }
    }

    /// Expected repetitions: whole in a sentence; to a tenth under why, more would be a fiction.
    fn reps(self, reps: EstimatedReps) -> String {
        if !self.exact {
            return ((reps.hundredths() + 50) / 100).to_string();
        }
        figures::decimal((reps.hundredths() / 10).into(), self.numerals)
    }
}
