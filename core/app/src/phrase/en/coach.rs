//! What a coach would say of a plan: each finding, and what would mend it.

use barwright_domain::catalogue::Catalogue;
use barwright_domain::coach::{About, Check, Figure, Finding, Level};
use barwright_domain::plan::Plan;
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Percent};
use barwright_domain::text;

use super::{muscle, words};
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

/// A finding in its place of the file's text. `catalogue` has the plan's own exercises, and `unit` is
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

/// How much a finding matters: "look at", "change".
fn level(level: Level) -> &'static str {
    match level {
        Level::LookAt => "look at",
        Level::Change => "change",
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
            let keep = format!("Or accept {} with a reason.", finding.check.slug());
            (problem, format!("{advice} {keep}"))
        } else {
            (problem, advice)
        }
    }

    fn about_it(&self, about: &About) -> (String, String) {
        match about {
            About::LoadJump { weeks: (one, other), loads: (from, to), rise } => (
                format!(
                    "from week {one} to week {other} the load goes from {} to {}: {} harder with \
                     its repetitions",
                    self.figure(*from),
                    self.figure(*to),
                    Self::about(*rise)
                ),
                "Loads usually rise by 2 to 10 % at a time: put a step between, or take \
                 repetitions off."
                    .to_owned(),
            ),
            About::VolumeJump { weeks: (one, other), muscles } => {
                let each = muscles.iter().take(3).map(|(of, from, to)| {
                    let (from, to) = (self.sets(from * 5), self.sets(to * 5));
                    format!("{} from {from} to {to} hard sets", muscle::name(*of).to_lowercase())
                });
                let more = match muscles.len() {
                    0..=3 => String::new(),
                    count => format!(", and {} more", count - 3),
                };
                (
                    format!(
                        "from week {one} to week {other} there is much more to do: {}{more}",
                        each.collect::<Vec<_>>().join(", ")
                    ),
                    "Add the sets over several weeks.".to_owned(),
                )
            }
            About::Muscle { muscle: of, tenths, middle } => {
                let (gets, rest) = (self.sets(*tenths), self.sets(*middle));
                let problem = format!(
                    "{}: {gets} hard sets in a full week; half of the large muscles get {rest} or \
                     more",
                    muscle::name(*of)
                );
                if tenths < middle {
                    (problem, "Give it a set or two in a session that has time.".to_owned())
                } else {
                    (problem, "Over 20 a week is high: move some to what gets less.".to_owned())
                }
            }
            About::TooLong { week, seconds, minutes } => (
                format!(
                    "{} in week {week}, and there are {minutes} (worked out for maxes of 100 kg)",
                    words::minutes(*seconds)
                ),
                "Shorten rests, pair exercises, drop a set or give it more minutes.".to_owned(),
            ),
            About::TooHeavy { week, share, reps, table } => (
                format!(
                    "week {week} asks for {} at {}; to failure that many are usual at {}",
                    words::count(usize::from(*reps), "rep", "reps"),
                    self.percent(*share),
                    self.percent(*table)
                ),
                format!("Write {} or less, or fewer repetitions.", self.percent(*table)),
            ),
            About::EffortApart { week, share, reps, left, table, heavy } => (
                format!(
                    "week {week} asks for {} at {} with {} in reserve; {} is usual for that",
                    words::count(usize::from(*reps), "rep", "reps"),
                    self.percent(*share),
                    left.print(self.numerals),
                    self.percent(*table)
                ),
                if *heavy {
                    "Take load off, or ask for fewer in reserve.".to_owned()
                } else {
                    "Add load, ask for more repetitions, or for more in reserve.".to_owned()
                },
            ),
            About::Coarse { load, step, share } => (
                format!(
                    "at {} the next step here is {}, {} of it",
                    self.mass(*load),
                    self.mass(*step),
                    Self::about(share.hundredths())
                ),
                "Steps of 2 to 10 % can be followed: widen the range of repetitions, or use \
                 something that steps finer."
                    .to_owned(),
            ),
            About::StepUnmade { asked, step, load } => (
                format!(
                    "its step is {}, and at {} this gym's smallest is {}",
                    self.mass(*asked),
                    self.mass(*load),
                    self.mass(*step)
                ),
                format!("Write a step of {}, or bring smaller plates.", self.mass(*step)),
            ),
            About::MadeTheSame { weeks: (one, other), loads: (from, to), made } => (
                format!(
                    "{} in week {one} and {} in week {other} both come to {} here",
                    self.mass(*from),
                    self.mass(*to),
                    self.mass(*made)
                ),
                "Write steps that this gym can make.".to_owned(),
            ),
            About::NoTarget => (
                "its rule goes by effort, and no effort is asked".to_owned(),
                "Write left or rpe, or another rule.".to_owned(),
            ),
            About::NoFigure => (
                "its rule steps a load, and bands or chains alone have no figure".to_owned(),
                "Write a bar load beside them, or leave the rule out.".to_owned(),
            ),
            About::NothingHeavier { load } => (
                format!("nothing heavier than {} can be made here", self.mass(*load)),
                "Ask for more repetitions, name a substitute, or leave the rule out.".to_owned(),
            ),
            About::StepTooFar { load, step } => (
                format!(
                    "its step is {}, and nothing here is that much over {}",
                    self.mass(*step),
                    self.mass(*load)
                ),
                "Write a smaller step, or bring more plates.".to_owned(),
            ),
            About::RangeOfOne => (
                "double progression fills a range, and a single number is asked".to_owned(),
                "Write a range (reps = \"8-10\"), or next = \"add when made\".".to_owned(),
            ),
            About::Rare { needs, lacking } => {
                let needs: Vec<String> = needs.iter().map(|need| need.replace('-', " ")).collect();
                let needs = needs.join(" and ");
                (
                    if *lacking {
                        format!("this gym has no {needs}, and nothing is named instead")
                    } else {
                        format!("many gyms have no {needs}, and nothing is named instead")
                    },
                    "Name what to do instead: substitutes = [\"…\"].".to_owned(),
                )
            }
            About::HeavyBefore { session, exercise, muscles } => {
                let muscles: Vec<String> =
                    muscles.iter().map(|of| muscle::name(*of).to_lowercase()).collect();
                (
                    format!(
                        "heavy for {} the day after {} in “{session}”",
                        muscles.join(", "),
                        self.name(exercise)
                    ),
                    "Leave a day between, or make one of them lighter.".to_owned(),
                )
            }
            About::Deload { weeks: (before, deload), sets: (then, now), load } => {
                let load = match load {
                    Some(load) => format!(", with {} of the load", Self::about(*load)),
                    None => String::new(),
                };
                (
                    format!(
                        "this deload asks for {now} work sets after {then} in week {before}{load}"
                    ),
                    format!(
                        "A deload usually takes 40 to 50 % of the sets and up to 10 % of the load \
                         off. What is written week by week is not cut by itself: write less in \
                         week {deload}."
                    ),
                )
            }
            About::DeloadSame { weeks: (before, deload) } => (
                format!("in the deload of week {deload} it stays as it was in week {before}"),
                "Write less for that week: what is written week by week is not cut by itself."
                    .to_owned(),
            ),
            About::UnknownCheck { name, nearest } => (
                format!("no check is called “{name}”"),
                match nearest {
                    Some(nearest) => format!("Write \"{nearest}\"."),
                    None => {
                        let all = Check::ALL.into_iter().filter(|check| check.can_be_accepted());
                        let all: Vec<_> = all.map(Check::slug).collect();
                        format!("Write one of {}.", all.join(", "))
                    }
                },
            ),
            About::UnknownSession { name } => (
                format!("no session is called “{name}”"),
                "Write the session's name as it stands there.".to_owned(),
            ),
            About::Unused => {
                ("nothing is left that this accepts".to_owned(), "Take it out.".to_owned())
            }
        }
    }
}
