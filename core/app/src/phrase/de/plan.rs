//! A plan in a coach's shorthand: what it says, before anything is worked out for a day.

use barwright_domain::call::{EffortTarget, Flow, HowMany, LoadCall, MaxOf, Side, WeekKind};
use barwright_domain::catalogue::Catalogue;
use barwright_domain::plan::{
    Block, Cut, Entry, Gear, Plan, Ramp, RampStep, Rule, RuleKind, SetCall, Sides, Step,
    Substitute, WarmUp, WeekSession, Weeks,
};
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Percent, Range, Seconds};
use chrono::Weekday;

use super::{date, sheet, words};
use crate::contract::FileFault;
use crate::phrase::written::figures;
use crate::phrase::written::plates::label;
use crate::phrase::written::rows::{joined, made_alike};

/// The words of one plan: its exercises by name, numbers as the lifter writes them.
struct PlanWords<'a> {
    /// The built-in exercises and the plan's own.
    catalogue: &'a Catalogue,
    /// Decimal point or comma.
    numerals: Numerals,
}

impl PlanWords<'_> {
    /// The name of an exercise.
    fn name(&self, slug: &str) -> String {
        name(self.catalogue, slug)
    }

    /// The rows of sets of an exercise, a line for sets that are made alike: "4 × 5 · 77.5 % ·
    /// rest 2:30".
    fn lines(&self, entry: &Entry) -> Vec<String> {
        let compound =
            self.catalogue.get(&entry.exercise).is_none_or(|exercise| exercise.is_compound());
        let usual_rest = entry.goal.rest(compound);
        let mut lines = Vec::new();
        for block in &entry.blocks {
            let mut rest = block.sets.as_slice();
            while let Some(first) = rest.first() {
                let alike = rest.iter().take_while(|set| made_alike(set, first)).count();
                let (group, others) = rest.split_at(alike.max(1));
                lines.push(self.line(block, group, entry, usual_rest));
                rest = others;
            }
        }
        lines
    }

    fn line(&self, block: &Block, sets: &[SetCall], entry: &Entry, usual_rest: Seconds) -> String {
        let Some(first) = sets.first() else { return String::new() };
        let mut parts = vec![self.work(&block.flow, sets, entry.sides)];
        let load = self.loads(sets);
        parts.push(match block.flow {
            Flow::Climb { .. } | Flow::Test { .. } if first.load != LoadCall::ByFeel => {
                format!("ab {load}")
            }
            _ => load,
        });
        if first.effort.is_some() {
            let effort = |target: &EffortTarget| words::effort(target, self.numerals);
            let efforts = joined(sets, |set| set.effort.as_ref().map(effort).unwrap_or_default());
            let until = matches!(block.flow, Flow::Repeat { .. });
            parts.push(if until { format!("bis {efforts}") } else { efforts });
        }
        match block.flow {
            Flow::Climb { step, most, .. } => {
                let step = self.percent(step);
                parts.push(format!("Schritte von {step}, {}", at_most(most)));
            }
            Flow::Test { step, most } => {
                parts.push(format!(
                    "Schritte von {}, höchstens {most} Versuche",
                    self.percent(step)
                ));
            }
            Flow::Repeat { most, .. } | Flow::Total { most, .. } => {
                parts.push(at_most(most));
            }
            Flow::Clock { every } => parts.push(format!("alle {}", every.print())),
            Flow::Listed => {}
        }
        parts.extend(first.speed.then(|| "auf Schnelligkeit".to_owned()));
        parts.extend(first.manner.tempo.map(|tempo| format!("Tempo {tempo}")));
        parts.extend(first.manner.technique.clone());
        if !first.manner.part_techniques.is_empty() {
            parts.push(first.manner.part_techniques.join(", dann "));
        }
        if !matches!(block.flow, Flow::Clock { .. }) {
            parts.push(rest(first, entry, usual_rest));
        }
        parts.extend(first.manner.cues.iter().map(|cue| format!("„{cue}“")));
        parts.join(" · ")
    }

    /// How many sets of how many: "4 × 5", "8, 6, 4, 2", "24 insgesamt, 4+ je Satz".
    fn work(&self, flow: &Flow, sets: &[SetCall], sides: Option<Sides>) -> String {
        let Some(first) = sets.first() else { return String::new() };
        let how_many = |set: &SetCall| {
            let own = words::how_many_short(&set.how_many, self.numerals);
            sheet::parts(&set.structure, own, self.numerals)
        };
        let work = match flow {
            Flow::Climb { .. } => format!("hinauf zu einem Topsatz mit {}", how_many(first)),
            Flow::Test { .. } => "Einzelwiederholungen hinauf zum Maximum".to_owned(),
            Flow::Repeat { .. } => format!("Sätze zu {}", how_many(first)),
            Flow::Total { reps, .. } => format!("{reps} insgesamt, {} je Satz", how_many(first)),
            Flow::Listed | Flow::Clock { .. } => {
                if sets.iter().all(|set| set.how_many == first.how_many) {
                    format!("{} × {}", sets.len(), how_many(first))
                } else {
                    joined(sets, how_many)
                }
            }
        };
        let side = match (first.side, sides) {
            (Some(side), _) => format!(", nur {}", words::side(side)),
            (None, Some(Sides::WeakerFirst | Sides::LeftFirst | Sides::RightFirst)) => {
                " je Seite".to_owned()
            }
            (None, _) => String::new(),
        };
        let stop = match &first.how_many {
            HowMany::Open { stop, .. } => format!(", {}", words::stop_rule(stop, self.numerals)),
            _ => String::new(),
        };
        format!("{work}{side}{stop}")
    }

    /// The loads of sets: one for all, or each in turn, of a max that is named once.
    fn loads(&self, sets: &[SetCall]) -> String {
        let shares: Option<Vec<_>> = sets
            .iter()
            .map(|set| match &set.load {
                LoadCall::Percent { share, of } => Some((share.from, share.is_single(), of)),
                _ => None,
            })
            .collect();
        let shares = shares.unwrap_or_default();
        let differ = shares.windows(2).any(|pair| match pair {
            [one, other] => one.0 != other.0,
            _ => false,
        });
        match shares.split_last() {
            Some(((last, _, of), before))
                if differ && shares.iter().all(|(_, single, own)| *single && own == of) =>
            {
                let figures = before
                    .iter()
                    .map(|(share, ..)| self.percent(*share).trim_end_matches(" %").to_owned());
                let last = LoadCall::Percent { share: Range::just(*last), of: (*of).clone() };
                figures::in_a_row(&figures.chain([self.load(&last)]).collect::<Vec<_>>())
            }
            _ => joined(sets, |set| self.load(&set.load)),
        }
    }

    fn percent(&self, share: Percent) -> String {
        share.print(self.numerals)
    }

    /// A mass in the unit it is a short number of, which is the one it was written in.
    fn mass(&self, mass: Mass) -> String {
        let exact = [MassUnit::Kilogram, MassUnit::Pound]
            .into_iter()
            .find(|unit| mass.prints_exactly(*unit));
        mass.print(exact.unwrap_or_default(), self.numerals)
    }

    /// A load as the plan says it.
    fn load(&self, load: &LoadCall) -> String {
        match load {
            LoadCall::Percent { share, of } => {
                let share = if share.is_single() {
                    self.percent(share.from)
                } else {
                    let from = self.percent(share.from);
                    format!("{}–{}", from.trim_end_matches(" %"), self.percent(share.to))
                };
                match of {
                    MaxOf::Own => share,
                    MaxOf::Working => format!("{share} vom Trainingsmaximum"),
                    MaxOf::Lift(lift) => format!("{share} von {}", self.name(lift)),
                    MaxOf::WorkingOf(lift) => {
                        format!("{share} vom Trainingsmaximum {}", self.name(lift))
                    }
                }
            }
            LoadCall::Mass(mass) => self.mass(*mass),
            LoadCall::Body => "Körpergewicht".to_owned(),
            LoadCall::Added(more) => format!("Körpergewicht + {}", self.mass(*more)),
            LoadCall::Assisted(less) => format!("Körpergewicht − {}", self.mass(*less)),
            LoadCall::OfTopSet(share) => format!("{} des Topsatzes", self.percent(*share)),
            LoadCall::Pin(pin) => format!("Stift {}", label(pin, self.numerals)),
            LoadCall::SetUp { name, load: None } => format!("mit {name}"),
            LoadCall::SetUp { name, load: Some(load) } => {
                format!("{} mit {name}", self.mass(*load))
            }
            LoadCall::ByFeel => "Gewicht wählen".to_owned(),
        }
    }

    /// What else the plan says of an exercise, in one line; empty where it says no more.
    fn detail(&self, entry: &Entry, superset: Option<&str>) -> String {
        let mut parts = Vec::new();
        parts.extend(entry.optional.then(|| "freiwillig".to_owned()));
        parts.extend(superset.map(|name| format!("Supersatz „{name}“")));
        parts.extend(entry.sides.map(|sides| {
            match sides {
                Sides::Together => "beide Seiten zugleich",
                Sides::WeakerFirst => "eine Seite nach der anderen, die schwächere zuerst",
                Sides::LeftFirst => "eine Seite nach der anderen, die linke zuerst",
                Sides::RightFirst => "eine Seite nach der anderen, die rechte zuerst",
            }
            .to_owned()
        }));
        parts.extend(entry.ramp.as_ref().map(|steps| self.ramp(steps)));
        let set_up = |(key, how)| Some(format!("{} {how}", words::part_set_up(key)?));
        parts.extend(entry.set_up.parts().filter_map(set_up));
        parts.extend(entry.wear.iter().map(|gear| {
            match gear {
                Gear::Belt => "Gürtel",
                Gear::Wraps => "Bandagen",
                Gear::Straps => "Zughilfen",
                Gear::Sleeves => "Stulpen",
            }
            .to_owned()
        }));
        parts.extend(entry.cues.iter().map(|cue| format!("„{cue}“")));
        if !entry.substitutes.is_empty() {
            let all: Vec<_> = entry.substitutes.iter().map(|one| self.substitute(one)).collect();
            parts.push(format!("oder {}", all.join(", oder ")));
        }
        if !entry.next.is_empty() {
            let all: Vec<_> = entry.next.iter().map(|rule| self.rule(rule)).collect();
            parts.push(format!("nächstes Mal {}", all.join(", dann ")));
        }
        parts.join(" · ")
    }

    fn substitute(&self, other: &Substitute) -> String {
        let mut says = Vec::new();
        says.extend(other.sets.map(|sets| words::count(usize::from(sets), "Satz", "Sätze")));
        says.extend(other.how_many.map(|many| words::how_many(&many, self.numerals)));
        says.extend(other.load.as_ref().map(|load| self.load(load)));
        says.extend(other.effort.as_ref().map(|target| words::effort(target, self.numerals)));
        let name = self.name(&other.exercise);
        if says.is_empty() { name } else { format!("{name} ({})", says.join(", ")) }
    }

    fn rule(&self, rule: &Rule) -> String {
        let word = match rule.kind {
            RuleKind::AsPlanned => "wie geplant",
            RuleKind::AddWhenMade => "mehr Gewicht, wenn alle Sätze geschafft sind",
            RuleKind::DoubleProgression => "mit doppelter Steigerung",
            RuleKind::TwoForTwo => "nach der Zwei-für-zwei-Regel",
            RuleKind::ByEffort => "nach Anstrengung",
            RuleKind::LessAssistance => "mit weniger Unterstützung",
            RuleKind::MoreAddedLoad => "mit mehr Zusatzgewicht",
        };
        match rule.step {
            None => word.to_owned(),
            Some(Step::Mass(step)) => format!("{word}, jeweils {}", self.mass(step)),
            Some(Step::Share(step)) => format!("{word}, jeweils {}", self.percent(step)),
        }
    }

    /// A warm-up in one line; empty where the plan says nothing.
    fn warm_up(&self, warm_up: &WarmUp) -> String {
        let minutes = warm_up.minutes.map(|minutes| format!("{minutes} min allgemein"));
        let ramp = warm_up.ramp.as_ref().map(|steps| self.ramp(steps));
        minutes.into_iter().chain(ramp).collect::<Vec<_>>().join(", dann ")
    }

    fn ramp(&self, ramp: &Ramp) -> String {
        let steps = |steps: &[RampStep]| {
            let all: Vec<_> = steps
                .iter()
                .map(|step| {
                    let load =
                        step.share.map_or_else(|| "Stange".to_owned(), |at| self.percent(at));
                    format!("{load} × {}", step.reps)
                })
                .collect();
            format!("Aufwärmen {}", all.join(", "))
        };
        match ramp {
            Ramp::None => "ohne Aufwärmsätze".to_owned(),
            Ramp::Short => "ein Aufwärmsatz".to_owned(),
            Ramp::Usual => "Aufwärmsätze bis zum Arbeitsgewicht verteilt".to_owned(),
            Ramp::Steps(own) => steps(own),
        }
    }

    /// What a week takes off what is not written week by week.
    fn cut(&self, cut: Cut) -> String {
        let off = |share: Percent, of: &str| {
            (share.hundredths() != 0).then(|| format!("{} weniger {of}", self.percent(share)))
        };
        let more = (cut.more_left > 0).then(|| format!("{} mehr in Reserve", cut.more_left));
        [off(cut.sets_off, "Sätze"), off(cut.load_off, "Gewicht"), more]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join(", ")
    }
}

/// The name of an exercise.
pub fn name(catalogue: &Catalogue, slug: &str) -> String {
    catalogue.get(slug).map_or_else(|| slug.to_owned(), words::exercise)
}

/// The rows of sets of an exercise, a line for sets that are made alike: "4 × 5 · 77.5 % · rest
/// 2:30".
pub fn lines(catalogue: &Catalogue, entry: &Entry, numerals: Numerals) -> Vec<String> {
    PlanWords { catalogue, numerals }.lines(entry)
}

/// What else the plan says of an exercise, in one line; empty where it says no more.
pub fn detail(
    catalogue: &Catalogue,
    entry: &Entry,
    superset: Option<&str>,
    numerals: Numerals,
) -> String {
    PlanWords { catalogue, numerals }.detail(entry, superset)
}

/// What a week takes off what is not written week by week.
pub fn cut(catalogue: &Catalogue, cut: Cut, numerals: Numerals) -> String {
    PlanWords { catalogue, numerals }.cut(cut)
}

/// The quieter line below a session: its day, its weeks, its minutes, its warm-up.
pub fn session_detail(
    catalogue: &Catalogue,
    session: &WeekSession,
    day: Option<Weekday>,
    of: Option<&Weeks>,
    numerals: Numerals,
) -> String {
    // A session that is named after its day need not say it twice.
    let day = day
        .map(date::weekday)
        .filter(|day| !session.name.to_lowercase().contains(&day.to_lowercase()))
        .map(str::to_owned);
    let weeks = of.map(session_weeks).filter(|text| !text.is_empty());
    let minutes = session.minutes.map(|minutes| format!("{minutes} min"));
    let warm_up = PlanWords { catalogue, numerals }.warm_up(&session.warm_up);
    let warm_up = Some(warm_up).filter(|text| !text.is_empty());
    let detail: Vec<_> = [day, weeks, minutes, warm_up].into_iter().flatten().collect();
    detail.join(" · ")
}

/// A line of a plan that only some weeks have: "Wochen 1–3: 4 × 5".
pub fn in_weeks(numbers: &[usize], line: &str) -> String {
    format!("{}: {line}", weeks(numbers))
}

/// A week and how many there are: "Woche 4: Entlastung (von 8)".
pub fn one_of(title: &str, weeks: usize) -> String {
    format!("{title} (von {weeks})")
}

/// The title of a plan with faults.
pub fn has_faults(faults: usize) -> String {
    format!("Der Plan hat {}", words::count(faults, "Fehler", "Fehler"))
}

/// Below that title.
pub fn nothing_changed() -> &'static str {
    "Nichts wurde geändert."
}

/// A fault read aloud.
pub fn fault_aloud(fault: &FileFault) -> String {
    format!("Zeile {}: {}. {}", fault.line, fault.problem, fault.advice)
}

/// A remark read aloud.
pub fn remark_aloud(remark: &FileFault) -> String {
    format!("{}, Zeile {}: {}.", remark.label, remark.line, remark.problem)
}

/// The plan in short with how many remarks there are.
pub fn with_remarks(in_short: &str, remarks: usize) -> String {
    format!("{in_short} · {}", words::count(remarks, "Hinweis", "Hinweise"))
}

/// A heading.
pub fn accepted() -> &'static str {
    "Angenommene Hinweise"
}

/// A key.
pub fn adopt() -> &'static str {
    "Übernehmen"
}

/// Over what a plan mended changes: rows that stay, and rows that start anew.
pub fn mends(stay: usize, anew: usize) -> String {
    let stay = words::count(stay, "Zeile behält ihr Gewicht", "Zeilen behalten ihre Gewichte");
    let anew = match anew {
        0 => "keine fängt neu an".to_owned(),
        anew => words::count(anew, "fängt neu an", "fangen neu an"),
    };
    format!("Das ändert den laufenden Plan: Woche und Termine bleiben. {stay}, {anew}.")
}

/// A row of a plan: "Beine: Kniebeuge, Zeile 2".
pub fn row_of(session: &str, name: &str, line: usize) -> String {
    if line > 1 { format!("{session}: {name}, Zeile {line}") } else { format!("{session}: {name}") }
}

/// A row that starts anew.
pub fn anew(of: &str) -> String {
    format!("{of}: fängt neu an, mit der Zahl aus dem Plan.")
}

/// A row whose number was changed alone, of several that share a load.
pub fn asks(of: &str) -> String {
    format!("{of}: Andere Einheiten teilen dieses Gewicht und behalten ihres. Alle ändern?")
}

/// A key.
pub fn mend() -> &'static str {
    "Plan ändern"
}

/// A key: all rows that share a load start at the new number.
pub fn mend_all() -> &'static str {
    "In allen Einheiten ändern, die das Gewicht teilen"
}

/// A key.
pub fn adopt_new() -> &'static str {
    "Als neuen Plan beginnen"
}

/// A key.
pub fn week_by_week() -> &'static str {
    "Woche für Woche"
}

/// A key.
pub fn week_before() -> &'static str {
    "Woche davor"
}

/// A key.
pub fn week_after() -> &'static str {
    "Woche danach"
}

/// A key.
pub fn whole() -> &'static str {
    "Der ganze Plan"
}

/// "8 Wochen · 4 Einheiten · je etwa 75 min".
pub fn in_short(plan: &Plan) -> String {
    let mut parts = vec![
        words::count(plan.weeks.len(), "Woche", "Wochen"),
        words::count(plan.sessions.len(), "Einheit", "Einheiten"),
    ];
    parts.extend(plan.minutes.map(|minutes| format!("je etwa {minutes} min")));
    parts.join(" · ")
}

/// "Woche 4: Entlastung", with its name where it has one.
pub fn week(number: usize, kind: WeekKind, name: Option<&str>) -> String {
    match (kind, name) {
        (WeekKind::Ordinary, None) => format!("Woche {number}"),
        (WeekKind::Ordinary, Some(name)) => format!("Woche {number}: {name}"),
        (kind, None) => format!("Woche {number}: {}", words::week_kind(kind)),
        (kind, Some(name)) => format!("Woche {number}: {}, {name}", words::week_kind(kind)),
    }
}

/// "Wochen 1–3, 5" of weeks from 1, rising.
pub fn weeks(numbers: &[usize]) -> String {
    let mut runs: Vec<(usize, usize)> = Vec::new();
    for number in numbers {
        match runs.last_mut() {
            Some((_, to)) if *to + 1 == *number => *to = *number,
            _ => runs.push((*number, *number)),
        }
    }
    let runs: Vec<_> = runs
        .into_iter()
        .map(|(from, to)| if from == to { from.to_string() } else { format!("{from}–{to}") })
        .collect();
    format!("{} {}", if numbers.len() == 1 { "Woche" } else { "Wochen" }, runs.join(", "))
}

/// The weeks of a session in words; empty for all of them.
fn session_weeks(of: &Weeks) -> String {
    match of {
        Weeks::All => String::new(),
        Weeks::These(numbers) => {
            weeks(&numbers.iter().map(|number| usize::from(*number)).collect::<Vec<_>>())
        }
    }
}

/// "höchstens 3 Sätze".
fn at_most(sets: u8) -> String {
    format!("höchstens {}", words::count(usize::from(sets), "Satz", "Sätze"))
}

fn rest(set: &SetCall, entry: &Entry, usual: Seconds) -> String {
    let rest = set.rest;
    let own = rest.after_set.unwrap_or(usual);
    let work = if entry.superset.is_some() {
        let within = rest.in_superset.unwrap_or(Seconds::new(0));
        let after = rest.after_superset.unwrap_or(own);
        format!("Pause {} in der Runde, {} danach", within.print(), after.print())
    } else {
        format!("Pause {}", own.print())
    };
    match (rest.between_sides, set.side, entry.sides) {
        (
            Some(between),
            None::<Side>,
            Some(Sides::WeakerFirst | Sides::LeftFirst | Sides::RightFirst),
        ) => format!("{work}, {} zwischen den Seiten", between.print()),
        _ => work,
    }
}
