//! Why a number is what it is: a derivation as lines of words.

use barwright_domain::call::WeekKind;
use barwright_domain::plan::Miss;
use barwright_domain::progress::estimate::EstimatedReps;
use barwright_domain::progress::next::Reason as Found;
use barwright_domain::progress::test_day;
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Percent, Reserve, Rounding};
use barwright_domain::session::{Because, Reason, Start};

use super::{date, words};

/// A derivation, a line a step: "77.5 % of the max, 142.5 kg (Wed 25 Nov): 110.44 kg".
pub fn lines(reason: &Reason, unit: MassUnit, numerals: Numerals) -> Vec<String> {
    let say = Say { unit, numerals };
    let mut before = None;
    let mut lines = Vec::new();
    for because in &reason.0 {
        lines.extend(say.step(because, before));
        before = Some(because);
    }
    lines
}

/// What the rules found, in a sentence.
pub fn found(found: &Found, unit: MassUnit, numerals: Numerals) -> String {
    Say { unit, numerals }.found(found)
}

#[derive(Clone, Copy)]
struct Say {
    unit: MassUnit,
    numerals: Numerals,
}

impl Say {
    fn mass(self, mass: Mass) -> String {
        mass.print(self.unit, self.numerals)
    }

    /// A load that may be help, or nothing at all.
    fn load(self, load: Mass) -> String {
        match load.cmp(&Mass::ZERO) {
            std::cmp::Ordering::Less => {
                format!("{} of help", self.mass(load.distance(Mass::ZERO)))
            }
            std::cmp::Ordering::Equal => "no load".to_owned(),
            std::cmp::Ordering::Greater => self.mass(load),
        }
    }

    fn percent(self, percent: Percent) -> String {
        percent.print(self.numerals)
    }

    /// "2.5 % less", "4 % more".
    fn change(self, change: Percent) -> String {
        let more = change.hundredths() >= 0;
        let size = Percent::from_hundredths(change.hundredths().saturating_abs());
        format!("{} {}", self.percent(size), if more { "more" } else { "less" })
    }

    fn left(self, left: Reserve) -> String {
        match left {
            Reserve::NONE => "nothing left".to_owned(),
            left => format!("{} left", left.print(self.numerals)),
        }
    }

    fn step(self, because: &Because, before: Option<&Because>) -> Option<String> {
        Some(match because {
            Because::PlanSays(Mass::ZERO) => "The plan says no load.".to_owned(),
            Because::PlanSays(load) => format!("The plan says {}.", self.load(*load)),
            Because::ShareOfMax { share, max, day, of, gives } => {
                let share = self.percent(*share);
                let max_is = self.mass(*max);
                let gives = self.mass(*gives);
                let whose =
                    of.as_ref().map_or_else(|| "the".to_owned(), |lift| format!("the {lift}"));
                if matches!(before, Some(Because::WorkingMax { .. })) {
                    format!("{share} of {whose} working max, {max_is}: {gives}.")
                } else {
                    let day = date::day(*day);
                    format!("{share} of {whose} max, {max_is} ({day}): {gives}.")
                }
            }
            Because::ShareOfEstimate { share, max, day, gives } => format!(
                "{} of what your sets estimate, {} ({}): {}.",
                self.percent(*share),
                self.tenth(*max),
                date::day(*day),
                self.mass(*gives)
            ),
            Because::Single { rule, last, gives } => self.single(*rule, *last, *gives),
            Because::WorkingMax { share, of, gives } => format!(
                "Working max: {} of {} is {}.",
                self.percent(*share),
                self.mass(*of),
                self.mass(*gives)
            ),
            Because::UpTo { share, gives } => {
                format!("Up to {}: {}.", self.percent(*share), self.mass(*gives))
            }
            Because::LessBody { moved, body, gives } => format!(
                "{} moved, {} of it the body: {}.",
                self.mass(*moved),
                self.mass(*body),
                self.load(*gives)
            ),
            Because::PercentForReps { reps, left, share, interpolated } => {
                let between = if *interpolated { ", between two rows of the table" } else { "" };
                format!(
                    "{} with {}: {} by the percent table{between}.",
                    words::count(usize::from(*reps), "rep", "reps"),
                    self.left(*left),
                    self.percent(*share)
                )
            }
            Because::RampShare { share, of, gives } => format!(
                "Warm-up: {} of {} is {}.",
                self.percent(*share),
                self.mass(*of),
                self.mass(*gives)
            ),
            Because::EmptyBar => "Warm-up: the empty bar.".to_owned(),
            Because::FullSizePlates => {
                "Warm-up: the lightest with full-size plates, which set the bar's height."
                    .to_owned()
            }
            Because::BodyAlone => "Warm-up: the body alone.".to_owned(),
            Because::MovedWithinSlack { asked } => {
                format!("Moved from {} to save handling plates.", self.mass(*asked))
            }
            Because::ShareOfTop { share, top, gives } => format!(
                "{} of the top set's {}: {}.",
                self.percent(*share),
                self.load(*top),
                self.load(*gives)
            ),
            Because::DropOff { off, gives } => {
                format!("{} off: {}.", self.percent(*off), self.load(*gives))
            }
            Because::Made { asked, made } => {
                let miss = self.mass(made.distance(*asked));
                let way = if made < asked { "lighter" } else { "heavier" };
                format!("Nearest made here: {}, {miss} {way}.", self.load(*made))
            }
            Because::AsLastTime(load) => format!("As last time: {}.", self.load(*load)),
            Because::NextTime { found, from, to, start } => {
                let start = start.as_ref().filter(|_| to.is_some());
                let start = start.map(|start| self.start(start)).unwrap_or_default();
                let found = format!("{start}{}", self.found(found));
                match (from, to) {
                    (Some(from), Some(to)) if from != to => format!(
                        "{found} {} in place of the plan's {}.",
                        words::sentence_case(&self.load(*to)),
                        self.load(*from)
                    ),
                    (None, Some(to)) => {
                        format!("{found} {}.", words::sentence_case(&self.load(*to)))
                    }
                    _ => found,
                }
            }
            Because::Aim(amount) => {
                format!("Try for {}.", words::amount(amount, self.numerals))
            }
            Because::LifterChose(load) => format!("Your choice: {}.", self.load(*load)),
            Because::LifterChosePin(pin) => format!("Your choice: pin {pin}."),
            Because::ClimbStep { step, from } => {
                format!("{} than {}.", self.change(*step), self.load(*from))
            }
            Because::NothingToGoBy => {
                "Nothing to go by yet: find a load that leaves what is asked.".to_owned()
            }
            Because::AfterPause { pause } => {
                format!("One step again after a pause of {}.", pause.print())
            }
            // A step of a later release: the figures beside it still stand.
            _ => return None,
        })
    }

    /// Where a rule starts from: "Wed 4 Nov: 110.4 kg was meant, 110 kg was lifted. The plan went from
    /// 121.1 kg to 117.56 kg since: 109.33 kg. "
    fn start(self, start: &Start) -> String {
        let mut words = format!("{}: {}", date::day(start.day), self.load(start.meant));
        match start.made {
            Some(made) if made != start.meant => {
                words = format!("{words} was meant, {} was lifted.", self.load(made));
            }
            _ => words.push('.'),
        }
        if let Some((was, is)) = start.plan.filter(|_| start.from != start.meant) {
            words = format!(
                "{words} The plan went from {} to {} since: {}.",
                self.load(was),
                self.load(is),
                self.load(start.from)
            );
        }
        words.push(' ');
        words
    }

    /// The single after the one that was tried last.
    fn single(self, rule: test_day::Because, last: Mass, gives: Mass) -> String {
        use test_day::Because as Rule;
        let [last, gives] = [last, gives].map(|mass| self.mass(mass));
        match rule {
            Rule::First(share) => format!("{} of the max: {gives}.", self.percent(share)),
            Rule::Lifted(step) => {
                format!("{last} went up: {} more is {gives}.", self.percent(step))
            }
            Rule::Missed(off) => {
                format!("{last} was missed: {} less is {gives}.", self.percent(off))
            }
            Rule::Between { lifted, missed } => format!(
                "{} went up and {} did not: halfway is {gives}.",
                self.mass(lifted),
                self.mass(missed)
            ),
            Rule::Next { lifted } => {
                format!("The next made here above the {} that went up.", self.mass(lifted))
            }
        }
    }

    /// An estimate to a tenth of its unit: more would be a fiction.
    fn tenth(self, mass: Mass) -> String {
        let step = Mass::from_nanograms(self.unit.nanograms() / 10);
        self.mass(mass.to_multiple(step, Rounding::HalfEven).unwrap_or(mass))
    }

    fn found(self, found: &Found) -> String {
        let amount = |amount| words::amount(amount, self.numerals);
        match found {
            Found::FirstTime => "The first time: the plan's own number.".to_owned(),
            Found::ByFeel => "By feel: nothing was done before to go by.".to_owned(),
            Found::AsPlanned => "As planned.".to_owned(),
            Found::Eased { week: WeekKind::EaseIn } => "A first week, kept light.".to_owned(),
            Found::Eased { .. } => "A light week.".to_owned(),
            Found::Test => "A week of testing: the plan's own number.".to_owned(),
            Found::Pain => "Pain last time: no heavier. Go on, go lighter, or swap it.".to_owned(),
            Found::LayOff { days, load_off, ease_in } => {
                let off = self.percent(*load_off);
                let start = if *ease_in { ", begun again as a first week" } else { "" };
                format!("{days} days without training: {off} off{start}.")
            }
            Found::Missed { times, then } => {
                let missed = match times {
                    1 => "Missed last time".to_owned(),
                    times => format!("Missed {times} sessions running"),
                };
                match then {
                    Miss::Repeat => format!("{missed}: the same again."),
                    Miss::Less(off) => format!("{missed}: {} less.", self.percent(*off)),
                    Miss::Hold => format!("{missed}: hold it, and ask the coach."),
                }
            }
            Found::HeldBack => "You hold the change back.".to_owned(),
            Found::NoEvidence => "Last time says nothing for a change: the same.".to_owned(),
            Found::TopReached { top, .. } => {
                format!("Every set reached {}: a step on.", amount(top))
            }
            Found::BelowTop { done, top, .. } => format!(
                "The weakest set reached {} of {}: the same load, more of it.",
                words::figure(done, self.numerals),
                amount(top)
            ),
            Found::NextPlace { top } => {
                format!("Every set reached {}: the next place is yours to choose.", amount(top))
            }
            Found::StepTooBig { step_to, expected, floor, formula } => format!(
                "The next load here is {}, good for about {} reps by {}, and {floor} are asked: \
                 hold the load and add reps.",
                self.load(*step_to),
                self.reps(*expected),
                words::sentence_case(formula.slug())
            ),
            Found::NothingHeavier => {
                "Nothing here is heavier: hold the load and add to the set.".to_owned()
            }
            Found::TwoForTwo { goal, done: [before, last] } => format!(
                "{before} and {last} reps in the last sets of two sessions, {goal} asked: a step \
                 on."
            ),
            Found::NotYetTwo { goal, done, times } => {
                let more = if *times > 0 { "once more and it is a step on" } else { "the same" };
                format!("{done} reps in the last set, {goal} asked: {more}.")
            }
            Found::OffTarget { called, edge, change, set } => format!(
                "{} {}, the target ends at {}: {}.",
                match set {
                    0 => "You called".to_owned(),
                    set => format!("Set {set} was called"),
                },
                self.left(*called),
                self.left(*edge),
                self.change(*change)
            ),
            Found::OnTarget { called } => {
                format!("You called {}, as targeted: the same.", self.left(*called))
            }
            Found::NotCalled => "No effort was called: the same.".to_owned(),
            _ => String::new(),
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

#[cfg(test)]
mod tests {
    use barwright_domain::call::Amount;
    use barwright_domain::plan::RuleKind;

    use super::*;

    fn kg(text: &str) -> Mass {
        Mass::read(&format!("{text} kg"), Numerals::Point).unwrap()
    }

    fn say(steps: Vec<Because>) -> Vec<String> {
        lines(&Reason(steps), MassUnit::Kilogram, Numerals::Point)
    }

    fn share(max: &str, of: Option<&str>, gives: &str) -> Because {
        Because::ShareOfMax {
            share: Percent::from_hundredths(7_750),
            max: kg(max),
            day: 20_417,
            of: of.map(str::to_owned),
            gives: kg(gives),
        }
    }

    #[test]
    fn a_share_of_a_max_as_the_plates_make_it() {
        let made = Because::Made { asked: kg("110.4375"), made: kg("110") };
        assert_eq!(
            say(vec![share("142.5", None, "110.4375"), made]),
            [
                "77.5 % of the max, 142.5 kg (Tue 25 Nov): 110.44 kg.",
                "Nearest made here: 110 kg, 0.44 kg lighter.",
            ]
        );
        let working =
            Because::WorkingMax { share: Percent::whole(90), of: kg("200"), gives: kg("180") };
        assert_eq!(
            say(vec![working, share("180", Some("Deadlift"), "139.5")]),
            [
                "Working max: 90 % of 200 kg is 180 kg.",
                "77.5 % of the Deadlift working max, 180 kg: 139.5 kg.",
            ]
        );
    }

    #[test]
    fn comma_and_pounds_follow_the_locale() {
        let reason = Reason(vec![Because::PlanSays(kg("102.05828325"))]);
        assert_eq!(lines(&reason, MassUnit::Pound, Numerals::Comma), ["The plan says 225 lb."]);
        let reason = Reason(vec![Because::PlanSays(kg("102.5"))]);
        assert_eq!(
            lines(&reason, MassUnit::Kilogram, Numerals::Comma),
            ["The plan says 102,5 kg."]
        );
    }

    #[test]
    fn help_is_said_as_help() {
        assert_eq!(say(vec![Because::PlanSays(kg("-20"))]), ["The plan says 20 kg of help."]);
        assert_eq!(say(vec![Because::PlanSays(kg("0"))]), ["The plan says no load."]);
    }

    #[test]
    fn what_the_rules_found_and_what_it_moves() {
        let top = Amount::Reps(10);
        let found = Found::TopReached { rule: RuleKind::DoubleProgression, top };
        let step =
            Because::NextTime { found, from: Some(kg("24")), to: Some(kg("26")), start: None };
        assert_eq!(
            say(vec![step]),
            ["Every set reached 10 reps: a step on. 26 kg in place of the plan's 24 kg."]
        );
        let found = Found::OffTarget {
            called: Reserve::NONE,
            edge: Reserve::from_halves(2).unwrap(),
            change: Percent::whole(-4),
            set: 2,
        };
        let start = Some(Start {
            day: 20_417,
            meant: kg("101.5"),
            made: Some(kg("102.5")),
            plan: Some((kg("101.5"), kg("100"))),
            from: kg("100"),
        });
        let step = Because::NextTime { found, from: None, to: Some(kg("96")), start };
        assert_eq!(
            say(vec![step]),
            ["Tue 25 Nov: 101.5 kg was meant, 102.5 kg was lifted. The plan went from 101.5 kg \
                 to 100 kg since: 100 kg. Set 2 was called nothing left, the target ends at 1 left: \
                 4 % less. 96 kg."]
        );
        let missed = Found::Missed { times: 2, then: Miss::Less(Percent::whole(5)) };
        let step = Because::NextTime { found: missed, from: None, to: None, start: None };
        assert_eq!(say(vec![step]), ["Missed 2 sessions running: 5 % less."]);
    }
}
