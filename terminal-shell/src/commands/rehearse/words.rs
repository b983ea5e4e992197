//! A rehearsal in words and tables, in 80 columns.

use std::fmt::Write;

use barwright_app::phrase::Words;
use barwright_domain::call::WeekKind;
use barwright_domain::catalogue::Measure;
use barwright_domain::plan::Plan;
use barwright_domain::quantity::{Mass, MassUnit, Numerals};
use barwright_rehearsal::{Cause, Finding, Line, LineWeek, Report};

/// Columns of a line.
const WIDE: usize = 79;
/// Columns of a bar from the 10th to the 90th.
const BAR: usize = 15;
/// Weeks of a row of figures.
const WEEKS: usize = 12;

/// Fewer lifters than this have shares that chance makes.
const FEW: u32 = 50;

/// "1 lifter", "200 lifters".
fn count(number: usize, one: &str, many: &str) -> String {
    format!("{number} {}", if number == 1 { one } else { many })
}

/// How figures are written.
struct Figures {
    unit: MassUnit,
    words: Words,
}

impl Figures {
    /// A figure to one place, without it where it is nothing.
    fn tenths(&self, figure: f64) -> String {
        let text = format!("{figure:.1}");
        let text = text.strip_suffix(".0").unwrap_or(&text);
        if self.words.numerals == Numerals::Comma {
            text.replace('.', ",")
        } else {
            text.to_owned()
        }
    }
}

/// The whole of it.
pub(super) fn report(plan: &Plan, report: &Report, unit: MassUnit, words: Words) -> String {
    let figures = Figures { unit, words };
    let mut text = String::new();
    let mut say = |line: &str| {
        text.push_str(line.trim_end());
        text.push('\n');
    };
    say(&plan.name);
    say(&in_short(report, &figures));
    say("");
    say("What stands out");
    for line in stands_out(report, &figures) {
        say(&line);
    }
    say("");
    say("Loads");
    for line in paragraph(
        "The heaviest load of the first row of sets: of a hundred lifters the 10th, the 50th and \
         the 90th; and what a set of the 50th comes to. Missed: a set came to less than asked. \
         Held: the rules kept the load or took some off. Stalled: no better in three full \
         sessions than before them.",
    ) {
        say(&line);
    }
    for line in &report.lines {
        say("");
        for row in load_table(line, report, &figures) {
            say(&row);
        }
    }
    say("");
    for row in minutes_table(report) {
        say(&row);
    }
    say("");
    for row in volume_table(report, &figures) {
        say(&row);
    }
    say("");
    for line in paragraph(
        "The lifters are invented, by a simple model: it shows what the plan's rules do, not what \
         people will. A load written in kilograms is taken to be right for a \
         lifter within some 4 %, and entered maxes within 3 %. Nobody is hurt in it. Coach and lifter decide.",
    ) {
        say(&line);
    }
    text
}

fn in_short(report: &Report, figures: &Figures) -> String {
    let sessions = report.trained + report.missed;
    let missed = percent(report.missed as f64 / sessions.max(1) as f64);
    format!(
        "{} by {}, seed {}; {missed} of the sessions missed.",
        figures.words.words().weeks(report.weeks.len()),
        count(report.lifters as usize, "invented lifter", "invented lifters"),
        report.seed,
    )
}

fn percent(share: f64) -> String {
    format!("{:.0} %", 100.0 * share)
}

/// A paragraph indented by two.
fn paragraph(text: &str) -> Vec<String> {
    let options = textwrap::Options::new(WIDE).initial_indent("  ").subsequent_indent("  ");
    textwrap::wrap(text, options).into_iter().map(|line| line.into_owned()).collect()
}

/// A sentence for each finding, with a dash before it.
fn stands_out(report: &Report, figures: &Figures) -> Vec<String> {
    let mut lines = Vec::new();
    if report.refused > 0 {
        lines.push(format!(
            "{} taps of the invented lifters were refused, which should not be: believe nothing \
             of what follows.",
            report.refused
        ));
    }
    if report.lifters < FEW {
        lines.push(format!("With fewer than {FEW} lifters shares mean little."));
    }
    let before = lines.len();
    lines.extend(report.findings.iter().map(|found| sentence(found, report, figures)));
    if lines.len() == before {
        lines.push("Nothing: no rule stalls or runs away, and sessions keep their time.".into());
    }
    let options = textwrap::Options::new(WIDE).initial_indent("- ").subsequent_indent("  ");
    lines
        .iter()
        .flat_map(|line| textwrap::wrap(line, &options))
        .map(|line| line.into_owned())
        .collect()
}

/// What a finding says, where, and what could be done.
fn sentence(finding: &Finding, report: &Report, figures: &Figures) -> String {
    let at = |line: &usize| {
        report
            .lines
            .get(*line)
            .map_or_else(String::new, |line| format!("{} ({})", line.name, line.session))
    };
    match finding {
        Finding::Stalls { line, from_week, share, cause } => format!(
            "{}: from week {from_week} on, {} of lifters get no further: {}",
            at(line),
            percent(*share),
            why(cause, figures)
        ),
        Finding::RunsAway { line, from_week, share } => format!(
            "{}: from week {from_week} on, the load called is more than {} of lifters have, even \
             fresh. Smaller steps, or a load that follows the effort called, would mend it.",
            at(line),
            percent(*share)
        ),
        Finding::Missed { line, weeks, share } => format!(
            "{}: {} of lifters miss a set in {}. Fewer repetitions or less load there would be \
             done.",
            at(line),
            percent(*share),
            in_weeks(weeks, "the worst of them", figures)
        ),
        Finding::TooLight { line, from_week, share } => format!(
            "{}: from week {from_week} on, {} of lifters end with three more in reserve than asked: the \
             load falls behind them.",
            at(line),
            percent(*share)
        ),
        Finding::TooLong { session, weeks, minutes } => {
            let (name, planned) = report
                .sessions
                .get(*session)
                .map(|session| (session.name.as_str(), session.planned.unwrap_or_default()))
                .unwrap_or_default();
            format!(
                "{name}: takes {minutes} minutes in {}, and the plan has {planned}.",
                in_weeks(weeks, "the longest of them", figures)
            )
        }
        Finding::FallsShort { muscle, share } => format!(
            "{}: {} of the hard sets planned are done and hard enough.",
            figures.words.muscle().name(*muscle),
            percent(*share)
        ),
        Finding::Lacking { exercise } => format!(
            "{exercise}: this gym lacks something for it, and the plan names nothing to do \
             instead. Nobody did it."
        ),
    }
}

/// "week 4", "the worst of them, of weeks 4–6".
fn in_weeks(weeks: &[usize], one: &str, figures: &Figures) -> String {
    let named = figures.words.plan().weeks(weeks).to_lowercase();
    if weeks.len() > 1 { format!("{one} ({named})") } else { named }
}

fn why(cause: &Cause, figures: &Figures) -> String {
    let step = |step: Mass, percent: f64| {
        format!("{} ({percent:.0} %)", step.print(figures.unit, figures.words.numerals))
    };
    match cause {
        Cause::StepTooBig { step: by, percent } => format!(
            "the step of {} would fall below the range, so the load stays. A smaller step or a wider \
             range would let them go on.",
            step(by.0, *percent)
        ),
        Cause::MissedAfterSteps { step: by, percent } => format!(
            "most misses come right after a step up; {} is too much for the range. A smaller step \
             or a wider range would let them go on.",
            step(by.0, *percent)
        ),
        Cause::Missed => {
            "sets are missed, and the load is repeated or taken down. A lighter start \
                          or fewer sets would let them go on."
                .to_owned()
        }
        Cause::NothingHeavier => "this gym makes nothing heavier.".to_owned(),
        Cause::BelowTop => "not every set reaches the top of the range. A narrower range, fewer \
                            sets or longer rests would let them go on."
            .to_owned(),
        Cause::NotYetTwo => {
            "two over the goal do not come in two sessions in a row. A lower goal or \
                             fewer sets would let them go on."
                .to_owned()
        }
        Cause::Other => "load and repetitions stay where they are.".to_owned(),
    }
}

/// Week by week: loads with their spread drawn, and the shares.
fn load_table(line: &Line, report: &Report, figures: &Figures) -> Vec<String> {
    let loads = || line.weeks.iter().filter_map(|week| week.load);
    let ends = loads()
        .map(|load| load.low.0)
        .min()
        .zip(loads().map(|load| load.high.0).max())
        .filter(|(low, high)| low < high);
    let loaded = loads().any(|load| load.high.0 != Mass::ZERO || load.low.0 != Mass::ZERO);
    let each = match line.measure {
        Measure::Reps => "reps",
        Measure::Seconds => "secs",
        Measure::Metres => "metres",
    };
    let unit = if loaded { figures.unit.symbol() } else { each };
    let mut rows = vec![
        format!("  {} ({}), {unit}", line.name, line.session),
        format!(
            "    week         10th   50th   90th {:BAR$} {:>6} missed  held stalled",
            "",
            if loaded { each } else { "" }
        ),
    ];
    for week in &line.weeks {
        let spread = if loaded { loads_of(week, figures) } else { amounts_of(week, figures) };
        let drawn = match (week.load, ends) {
            (Some(load), Some(ends)) if loaded => {
                bar([load.low.0, load.middle.0, load.high.0], ends)
            }
            _ => String::new(),
        };
        let each = if loaded { figures.tenths(week.amount.middle) } else { String::new() };
        let stalled = week.stalled.map_or_else(|| "–".to_owned(), percent);
        rows.push(format!(
            "    {:>2} {:<7} {spread} {drawn:BAR$} {each:>6} {:>6} {:>5} {stalled:>7}",
            week.week,
            kind(report, week.week, figures),
            percent(week.missed),
            percent(week.held),
        ));
    }
    rows
}

fn kind(report: &Report, week: usize, figures: &Figures) -> &'static str {
    match week.checked_sub(1).and_then(|at| report.weeks.get(at)) {
        Some(WeekKind::Ordinary) | None => "",
        Some(other) => figures.words.words().week_kind(*other),
    }
}

fn loads_of(week: &LineWeek, figures: &Figures) -> String {
    let Some(load) = week.load else { return format!("{:>6} {:>6} {:>6}", "–", "–", "–") };
    let one = |mass: Mass| mass.figure(figures.unit, figures.words.numerals);
    format!("{:>6} {:>6} {:>6}", one(load.low.0), one(load.middle.0), one(load.high.0))
}

fn amounts_of(week: &LineWeek, figures: &Figures) -> String {
    let each = week.amount;
    let [low, middle, high] = [each.low, each.middle, each.high].map(|each| figures.tenths(each));
    format!("{low:>6} {middle:>6} {high:>6}")
}

/// A bar from the 10th to the 90th with the 50th in it, where all weeks lie between two ends.
fn bar([low, middle, high]: [Mass; 3], (least, most): (Mass, Mass)) -> String {
    let span = i128::from(most.nanograms()) - i128::from(least.nanograms());
    let place = |mass: Mass| {
        let over = i128::from(mass.nanograms()) - i128::from(least.nanograms());
        let cells = BAR as i128 - 1;
        usize::try_from((over * cells + span / 2) / span.max(1)).unwrap_or_default().min(BAR - 1)
    };
    let (low, middle, high) = (place(low), place(middle), place(high));
    (0..=high)
        .map(|at| match at {
            _ if at == middle => '●',
            _ if at < low => ' ',
            _ if at == low => '├',
            _ if at == high => '┤',
            _ => '─',
        })
        .collect()
}

/// Runs of weeks that fit a row, both ends from 1.
fn rows_of_weeks(count: usize) -> impl Iterator<Item = (usize, usize)> {
    (0..count.div_ceil(WEEKS)).map(move |row| (row * WEEKS + 1, ((row + 1) * WEEKS).min(count)))
}

fn minutes_table(report: &Report) -> Vec<String> {
    let mut rows = vec!["Minutes: the 50th lifter, and the 90th".to_owned()];
    for (from, to) in rows_of_weeks(report.weeks.len()) {
        let head: String = (from..=to).map(|week| format!("{week:>5}")).collect();
        rows.push(format!("    {:<12}{head}", "week"));
        for session in &report.sessions {
            let planned =
                session.planned.map_or_else(String::new, |minutes| format!(", {minutes} planned"));
            rows.push(format!("  {}{planned}", session.name));
            type Of = fn(&barwright_rehearsal::SessionWeek) -> u32;
            let row = |name: &str, of: Of| {
                let mut row = format!("    {name:<12}");
                for week in from..=to {
                    let cell = session.weeks.iter().find(|one| one.week == week).map(of);
                    let cell = cell.map_or_else(|| "–".to_owned(), |minutes| minutes.to_string());
                    let _ = write!(row, "{cell:>5}");
                }
                row
            };
            rows.push(row("50th", |week| week.took.middle));
            rows.push(row("90th", |week| week.took.high));
        }
    }
    rows
}

fn volume_table(report: &Report, figures: &Figures) -> Vec<String> {
    let mut rows = vec!["Hard sets a week: the 50th lifter".to_owned()];
    for (from, to) in rows_of_weeks(report.weeks.len()) {
        let head: String = (from..=to).map(|week| format!("{week:>5}")).collect();
        rows.push(format!("  {:<16}{head}", "week"));
        for volume in &report.muscles {
            let weeks = volume.weeks.iter().skip(from - 1).take(to + 1 - from);
            let done: String =
                weeks.map(|week| format!("{:>5}", figures.tenths(week.done.middle))).collect();
            rows.push(format!("  {:<16}{done}", figures.words.muscle().name(volume.muscle)));
        }
    }
    rows
}
