//! What a session came to, as words: what an owner is told, why, and what only a person can answer.

use barwright_domain::call::{Amount, EffortScale};
use barwright_domain::owners::{Change, Outcome, Owner, Proposal, Question, Why};
use barwright_domain::plan::{Miss, RuleKind};
use barwright_domain::progress::estimate::EstimatedReps;
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Percent};

use super::words;
use crate::phrase::written::figures;

/// Why, as the rest of a sentence with its exact numbers: "all sets made", "weakest set 8 of 10 reps".
pub(super) fn why(why: &Why, scale: EffortScale, unit: MassUnit, numerals: Numerals) -> String {
    Say { scale, unit, numerals, exact: true }.why(why)
}

/// An outcome in a sentence, with what it adds; one that is kept back says so. Numbers are rounded to
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
        Owner::Max(_) => format!("max: {why}"),
        Owner::Track(_) | Owner::Loose(_) | Owner::Care(_) => why,
    };
    let why = words::sentence_case(&why);
    if outcome.held {
        return format!("Kept as it was. {why}.");
    }
    let by = outcome.changes.iter().find_map(|change| match change {
        Change::Step(by) => Some(*by),
        _ => None,
    });
    let step = by.map(|by| step(&outcome.why, by, unit, numerals));
    format!("{why}{}.", step.unwrap_or_default())
}

/// What is added to the load, as the rest of a sentence: ": add 2.5 kg", ": 5 kg less assistance";
/// nothing where nothing is.
pub(super) fn step(why: &Why, by: Mass, unit: MassUnit, numerals: Numerals) -> String {
    let much = words::mass(by.distance(Mass::ZERO), unit, numerals);
    let assisted = matches!(why, Why::TopReached { rule: RuleKind::LessAssistance, .. });
    match by.cmp(&Mass::ZERO) {
        std::cmp::Ordering::Equal => String::new(),
        std::cmp::Ordering::Greater if assisted => format!(": {much} less assistance"),
        std::cmp::Ordering::Greater => format!(": add {much}"),
        std::cmp::Ordering::Less => format!(": {much} less"),
    }
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
            format!("The reps are as high as they go. The next load here is {to}: take it?")
        }
        (Question::Jump, None) => "The reps are as high as they go. Take the next pin?".to_owned(),
        (Question::WellOff, Some(to)) => {
            format!("Two sessions well off the target. Go to {to}?")
        }
        (Question::WellOff, None) => {
            "Two sessions well off the target. Change the load?".to_owned()
        }
        (Question::Missed, Some(to)) => format!("Missed several times in a row. Go down to {to}?"),
        (Question::Missed, None) => "Missed several times in a row. Go down?".to_owned(),
        (Question::OwnTrack(_), _) => {
            let asks = "Missed twice in this session, made in the others. Give it its own load?";
            return (asks.to_owned(), "Its own load".to_owned());
        }
        (Question::Test, Some(to)) => {
            format!("The test came to {to}, below the max. Take it as the max all the same?")
        }
        (Question::Test, None) => {
            "The test was not finished. Take it as the max all the same?".to_owned()
        }
    };
    (asks, take(to.as_ref()))
}

/// What is asked where pain stands and a session of it was done, and the key that says yes.
pub fn no_pain() -> (&'static str, &'static str) {
    ("Was this without pain?", "No pain")
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

    /// ": 2.5 % less", ": 4 % more"; nothing where nothing changes.
    fn change(self, change: Percent) -> String {
        if change == Percent::default() {
            return String::new();
        }
        let more = change.hundredths() >= 0;
        let size = Percent::from_hundredths(change.hundredths().saturating_abs());
        let size = size.print(self.numerals);
        format!(": {size} {}", if more { "more" } else { "less" })
    }

    /// "same load, more reps", or more seconds or metres.
    fn more_of(of: &Amount) -> &'static str {
        match of {
            Amount::Reps(_) => "same load, more reps",
            Amount::Seconds(_) => "same load, longer",
            Amount::Metres(_) => "same load, farther",
        }
    }

    fn why(self, why: &Why) -> String {
        let amount = |amount| words::amount(amount, self.numerals);
        let effort = |left| words::reserve(left, self.scale, self.numerals);
        match why {
            Why::Entered => "entered by hand".into(),
            Why::PlanSays => "as the plan says".into(),
            Why::Silent => "nothing to judge by: no change".into(),
            Why::TooFew { done, of } => format!("{done} of {of} sets, too few to add load"),
            Why::LessLoad => "done lighter than called: no load added".into(),
            Why::UnderCut => "done at a reduced load: no load added".into(),
            Why::MoreLoad => "made with more than called: that is the load now".into(),
            Why::Found => "the load you chose is kept".into(),
            Why::AsPlanned => "made: on with the plan".into(),
            Why::NoRule => "made, and the plan adds nothing".into(),
            Why::AllMade => "all sets made".into(),
            Why::TopReached { top, .. } => format!("every set reached {}", amount(top)),
            Why::BelowTop { done, top, .. } => format!(
                "weakest set {} of {}: {}",
                words::figure(done, self.numerals),
                amount(top),
                Self::more_of(top)
            ),
            Why::NoPlace { top } => {
                format!("every set reached {}: choose the next pin", amount(top))
            }
            Why::StepTooBig { step_to, expected, floor, formula } => {
                let (to, reps) = (self.load(*step_to), self.reps(*expected));
                let by = if self.exact {
                    format!(" by {}", words::sentence_case(formula.slug()))
                } else {
                    String::new()
                };
                format!(
                    "the next load here is {to}, good for about {reps} reps{by}, and {floor} are \
                     asked: same load, more reps"
                )
            }
            Why::Rough { step_to } => format!(
                "the next load here is {}, too big a jump: same load, more reps",
                self.load(*step_to)
            ),
            Why::NothingHeavier => "nothing heavier here: same load, do more of it".into(),
            Why::TwoForTwo { goal, done: [before, last] } => {
                format!("{before} and {last} reps in the last sets of two sessions, {goal} asked")
            }
            Why::NotYetTwo { goal, done, times } => {
                let more = if *times > 0 { ": once more, then more load" } else { "" };
                format!("{done} reps in the last set, {goal} asked{more}")
            }
            Why::OffTarget { called, edge, change } => {
                format!("{}, target {}{}", effort(*called), effort(*edge), self.change(*change))
            }
            Why::OnTarget { called } => format!("{}, on target", effort(*called)),
            Why::NotCalled => "no effort called: no change".into(),
            Why::Missed { times, then } => {
                let missed = match times {
                    1 => "missed".to_owned(),
                    times => format!("missed {times} times in a row"),
                };
                match then {
                    Miss::Repeat => format!("{missed}: no heavier until it is made"),
                    Miss::Less(off) => format!("{missed}: {} less", off.print(self.numerals)),
                    Miss::Hold => format!("{missed}: no change, ask the coach"),
                }
            }
            Why::MissMade => "what was missed is made".into(),
            Why::Tested => "lifted in a test".into(),
            Why::AboveOnce { estimate } => format!(
                "this session estimates {}, above the max; a second such session raises it",
                self.estimate(*estimate)
            ),
            Why::AboveTwice { estimate } => format!(
                "two sessions estimate at least {}: raised, by 2.5 % at most",
                self.estimate(*estimate)
            ),
            Why::NotAbove { estimate } => {
                format!("this session estimates {}, not above the max", self.estimate(*estimate))
            }
            Why::Pain => "pain: lighter until a session without it".into(),
            Why::PainFree => "no pain: the load comes back, at most 10 % a session".into(),
            Why::Back => "back from a lay-off".into(),
            Why::LaterWord => "entered for an earlier day: what came later stands".into(),
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
