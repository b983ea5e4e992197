//! What a session came to, as words: what an owner is told, why, and what only a person can answer.

use barwright_domain::owners::{Outcome, Owner, Proposal, Question, Why};
use barwright_domain::plan::Miss;
use barwright_domain::progress::estimate::EstimatedReps;
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Percent};

use super::words;

/// Why, as the rest of a sentence: "all sets made", "the weakest set reached 8 of 10 reps".
pub(super) fn why(why: &Why, unit: MassUnit, numerals: Numerals) -> String {
    Say { unit, numerals }.why(why)
}

/// An outcome in a sentence; one that is held back says so.
pub fn sentence(outcome: &Outcome, unit: MassUnit, numerals: Numerals) -> String {
    let why = Say { unit, numerals }.why(&outcome.why);
    let why = match &outcome.owner {
        Owner::Max(_) => format!("max: {why}"),
        Owner::Track(_) | Owner::Loose(_) | Owner::Care(_) => why,
    };
    let why = words::sentence_case(&why);
    if outcome.held { format!("Held back. {why}.") } else { format!("{why}.") }
}

/// What is asked, and the key that says yes.
pub fn proposal(proposal: &Proposal, unit: MassUnit, numerals: Numerals) -> (String, String) {
    let to = proposal.to.map(|to| words::or_help(to, unit, numerals));
    let take = |to: Option<&String>| match to {
        Some(to) => format!("Take {to}"),
        None => "Take it".to_owned(),
    };
    let asks = match (proposal.question, &to) {
        (Question::Jump, Some(to)) => {
            format!("The range went on as far as it may. The next here is {to}: take it?")
        }
        (Question::Jump, None) => {
            "The range went on as far as it may. Take the next place?".to_owned()
        }
        (Question::WellOff, Some(to)) => {
            format!("Two sessions were well off their target. Go to {to}?")
        }
        (Question::WellOff, None) => {
            "Two sessions were well off their target. Change the load?".to_owned()
        }
        (Question::Missed, Some(to)) => format!("Missed again and again. Go down to {to}?"),
        (Question::Missed, None) => "Missed again and again. Go down?".to_owned(),
        (Question::OwnTrack(_), _) => {
            let asks = "Missed twice in this session and made in the others. A load of its own?";
            return (asks.to_owned(), "A load of its own".to_owned());
        }
        (Question::Test, Some(to)) => {
            format!("The test came to {to}, below the max. Take it as the max all the same?")
        }
        (Question::Test, None) => {
            "The test was not ended. Take it as the max all the same?".to_owned()
        }
    };
    (asks, take(to.as_ref()))
}

/// What is asked where pain stands and a session of it was done, and the key that says yes.
pub fn no_pain() -> (&'static str, &'static str) {
    ("Was this without pain?", "Without pain")
}

#[derive(Clone, Copy)]
struct Say {
    unit: MassUnit,
    numerals: Numerals,
}

impl Say {
    fn load(self, load: Mass) -> String {
        words::or_help(load, self.unit, self.numerals)
    }

    /// "2.5 % less", "4 % more", "nothing to change".
    fn change(self, change: Percent) -> String {
        if change == Percent::default() {
            return "nothing to change".to_owned();
        }
        let more = change.hundredths() >= 0;
        let size = Percent::from_hundredths(change.hundredths().saturating_abs());
        let size = size.print(self.numerals);
        format!("{size} {}", if more { "more" } else { "less" })
    }

    fn why(self, why: &Why) -> String {
        let amount = |amount| words::amount(amount, self.numerals);
        match why {
            Why::Entered => "entered by hand".into(),
            Why::PlanSays => "the plan's own number".into(),
            Why::Silent => "says nothing, what was carried stays".into(),
            Why::TooFew { done, of } => {
                format!("{done} of {of} sets, too few to step on: the same again")
            }
            Why::LessLoad => "done with less than called: the same again".into(),
            Why::UnderCut => "done under a cut: no step, and the load comes back after it".into(),
            Why::MoreLoad => "made with more than called: that is the load now".into(),
            Why::Found => "the load you found is kept".into(),
            Why::AsPlanned => "made: the plan's own numbers go on".into(),
            Why::NoRule => "made, and no rule says more: the same again".into(),
            Why::AllMade => "all sets made".into(),
            Why::TopReached { top, .. } => format!("every set reached {}: a step on", amount(top)),
            Why::BelowTop { done, top, .. } => format!(
                "the weakest set reached {} of {}: the same load, more of it",
                words::figure(done, self.numerals),
                amount(top)
            ),
            Why::NoPlace { top } => {
                format!("every set reached {}: the next place is yours to choose", amount(top))
            }
            Why::StepTooBig { step_to, expected, floor, formula } => format!(
                "the next load here is {}, good for about {} reps by {}, and {floor} are asked: \
                 hold the load and add reps",
                self.load(*step_to),
                self.reps(*expected),
                words::sentence_case(formula.slug())
            ),
            Why::Rough { step_to } => format!(
                "the next load here is {}, a jump beyond what any formula reaches: hold the load \
                 and add reps, roughly judged",
                self.load(*step_to)
            ),
            Why::NothingHeavier => {
                "nothing here is heavier: hold the load and add to the set".into()
            }
            Why::TwoForTwo { goal, done: [before, last] } => format!(
                "{before} and {last} reps in the last sets of two sessions, {goal} asked: a step on"
            ),
            Why::NotYetTwo { goal, done, times } => {
                let more = if *times > 0 { "once more and it is a step on" } else { "the same" };
                format!("{done} reps in the last set, {goal} asked: {more}")
            }
            Why::OffTarget { called, edge, change } => format!(
                "your sets were called {}, the target ends at {}: {}",
                words::left(*called, self.numerals),
                words::left(*edge, self.numerals),
                self.change(*change)
            ),
            Why::OnTarget { called } => {
                format!(
                    "your sets were called {}, as targeted: nothing to change",
                    words::left(*called, self.numerals)
                )
            }
            Why::NotCalled => "no effort was called: nothing to change".into(),
            Why::Missed { times, then } => {
                let missed = match times {
                    1 => "missed".to_owned(),
                    times => format!("missed {times} times running"),
                };
                match then {
                    Miss::Repeat => {
                        format!("{missed}: no heavier in that session until it is made")
                    }
                    Miss::Less(off) => format!("{missed}: {} less", off.print(self.numerals)),
                    Miss::Hold => format!("{missed}: held, ask the coach"),
                }
            }
            Why::MissMade => "what was missed is made".into(),
            Why::Tested => "lifted in a test".into(),
            Why::AboveOnce { estimate } => format!(
                "this session estimates {}, more than is known; one more such session raises it",
                words::tenth(*estimate, self.unit, self.numerals)
            ),
            Why::AboveTwice { estimate } => format!(
                "two sessions estimate {} at the least: raised, by 2.5 % at the most",
                words::tenth(*estimate, self.unit, self.numerals)
            ),
            Why::NotAbove { estimate } => {
                format!(
                    "this session estimates {}, not above it: it stays",
                    words::tenth(*estimate, self.unit, self.numerals)
                )
            }
            Why::Pain => "pain: lighter until a session without it".into(),
            Why::PainFree => "no pain: it comes back, by a tenth a session at the most".into(),
            Why::Back => "back after days without it".into(),
            Why::LaterWord => "entered for an earlier day: what was said since stays".into(),
        }
    }

    /// An expectation to a tenth: more would be a fiction.
    fn reps(self, reps: EstimatedReps) -> String {
        let tenths = reps.hundredths() / 10;
        let mark = match self.numerals {
            Numerals::Point => '.',
            Numerals::Comma => ',',
        };
        format!("{}{mark}{}", tenths / 10, tenths % 10)
    }
}
