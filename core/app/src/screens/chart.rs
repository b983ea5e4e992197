//! Charts as data: axes with round ticks, series, a sentence to be read aloud.

use barwright_domain::call::Amount;
use barwright_domain::catalogue::Exercise;
use barwright_domain::progress::estimate::Estimate;
use barwright_domain::quantity::{Mass, MassUnit};

use crate::contract::{Chart, ChartAxis, ChartPoint, ChartSeries, ChartTick, SeriesKind};
use crate::phrase::Words;

/// What figures are said in.
pub(super) struct Say<'a> {
    pub(super) exercise: &'a Exercise,
    pub(super) unit: MassUnit,
    pub(super) words: Words,
}

impl Say<'_> {
    /// Whether an estimate is of all that is moved, the body's part in it.
    pub(super) fn moves_body(&self) -> bool {
        self.exercise.body_share.hundredths() > 0
    }
}

/// What a chart shows of one session.
pub(super) struct Day {
    /// Days since 1970-01-01.
    pub(super) day: i32,
    /// The heaviest work load: all that was moved, where the body's part counts.
    pub(super) figure: Option<Mass>,
    /// The heaviest try that failed.
    pub(super) failed: Option<Mass>,
    /// The best estimate of the session.
    pub(super) estimate: Option<Estimate>,
    /// The most in one set.
    pub(super) most: Option<Amount>,
}

/// Loads of a lift over time, its estimates behind them as a band; where no load tells anything,
/// the most in one set. None with fewer than two sessions to show.
pub(super) fn of_lift(name: &str, days: &[Day], say: &Say<'_>) -> Option<Chart> {
    let mut loads: Vec<Mass> = days.iter().filter_map(|day| day.figure).collect();
    loads.sort_unstable();
    loads.dedup();
    let estimated = days.iter().any(|day| day.estimate.is_some());
    if loads.len() > 1 || estimated {
        of_loads(name, days, say)
    } else {
        of_amounts(name, days, say)
    }
    .or_else(|| of_loads(name, days, say))
}

fn of_loads(name: &str, days: &[Day], say: &Say<'_>) -> Option<Chart> {
    let (words, today) = (say.words.chart(), say.words.today);
    let (unit, numerals) = (say.unit, say.words.numerals);
    let grams = |mass: Mass| mass.nanograms() / 1_000_000_000;
    let loads: Vec<ChartPoint> = days
        .iter()
        .filter_map(|day| {
            let figure = day.figure?;
            let label = words.load(day.day, today, figure, unit, numerals);
            Some(point(day.day, grams(figure), grams(figure), label))
        })
        .collect();
    let aloud = from_to(name, &loads, say.words)?;
    let estimates: Vec<(i32, _)> =
        days.iter().filter_map(|day| Some((day.day, day.estimate?))).collect();
    let band = estimates
        .iter()
        .map(|(day, estimate)| {
            let label = words.range(*day, today, estimate, unit, numerals);
            point(*day, grams(estimate.low), grams(estimate.high), label)
        })
        .collect();
    let line = estimates
        .iter()
        .map(|(day, estimate)| {
            let label = words.estimate(*day, today, estimate, unit, numerals);
            point(*day, grams(estimate.max), grams(estimate.max), label)
        })
        .collect();
    let mut series = Vec::new();
    if !estimates.is_empty() {
        series.push(of(words.band(), SeriesKind::Band, band));
        series.push(of(words.estimates(), SeriesKind::Line, line));
    }
    series.push(of(words.heaviest(say.moves_body()), SeriesKind::Marks, loads));
    let failed: Vec<ChartPoint> = days
        .iter()
        .filter_map(|day| {
            let load = day.failed?;
            let label = words.failed_at(day.day, today, load, unit, numerals);
            Some(point(day.day, grams(load), grams(load), label))
        })
        .collect();
    if !failed.is_empty() {
        series.push(of(words.failed(), SeriesKind::Failed, failed));
    }
    chart(name, series, aloud, say.words, |low, high| masses(low, high, unit))
}

/// Body mass over time, the last of each day; none with fewer than two days.
pub(super) fn of_body_mass(
    name: &str,
    weighed: &[(Mass, i32)],
    unit: MassUnit,
    words: Words,
) -> Option<Chart> {
    let grams = |mass: Mass| mass.nanograms() / 1_000_000_000;
    let mut days: Vec<(Mass, i32)> = Vec::new();
    for (mass, day) in weighed {
        days.retain(|(_, known)| known != day);
        days.push((*mass, *day));
    }
    days.sort_by_key(|(_, day)| *day);
    // Years are told from the last day.
    let last = days.last().map(|(_, day)| *day);
    let points: Vec<ChartPoint> = days
        .iter()
        .map(|(mass, day)| {
            let label = words.chart().load(*day, last, *mass, unit, words.numerals);
            point(*day, grams(*mass), grams(*mass), label)
        })
        .collect();
    let aloud = from_to(name, &points, words)?;
    let series = vec![of(name, SeriesKind::Line, points)];
    chart(name, series, aloud, words, |low, high| masses(low, high, unit))
}

/// The most of one set, where no load tells the sessions apart: repetitions, seconds or metres.
fn of_amounts(name: &str, days: &[Day], say: &Say<'_>) -> Option<Chart> {
    let (words, today) = (say.words.chart(), say.words.today);
    let first = days.iter().find_map(|day| day.most)?;
    // Metres are charted as whole ones.
    let value = |amount: Amount| match (first, amount) {
        (Amount::Reps(_), Amount::Reps(reps)) => Some(i64::from(reps)),
        (Amount::Seconds(_), Amount::Seconds(seconds)) => Some(i64::from(seconds.count())),
        (Amount::Metres(_), Amount::Metres(far)) => Some(i64::from(far.millimetres() / 1_000)),
        _ => None,
    };
    let points: Vec<ChartPoint> = days
        .iter()
        .filter_map(|day| {
            let value = value(day.most?)?;
            Some(point(day.day, value, value, words.amount(day.day, today, value, &first)))
        })
        .collect();
    let aloud = from_to(name, &points, say.words)?;
    let series = vec![of(words.most(), SeriesKind::Marks, points)];
    let unit = say.words.words().unit(&first);
    chart(name, series, aloud, say.words, |low, high| round(low, high, |count| count, unit))
}

/// None with fewer than two points.
fn from_to(name: &str, points: &[ChartPoint], words: Words) -> Option<String> {
    let (first, last) = points.first().zip(points.last()).filter(|_| points.len() > 1)?;
    Some(words.chart().from_to(name, points.len(), &first.label, &last.label))
}

fn chart(
    name: &str,
    series: Vec<ChartSeries>,
    aloud: String,
    words: Words,
    up: impl Fn(i64, i64) -> ChartAxis,
) -> Option<Chart> {
    let all = || series.iter().flat_map(|series| &series.points);
    let (left, right) = (all().map(|p| p.x).min()?, all().map(|p| p.x).max()?);
    let (low, high) = (all().map(|p| p.low).min()?, all().map(|p| p.high).max()?);
    Some(Chart {
        title: name.to_owned(),
        across: dates(left, right.max(left + 1), words),
        up: up(low, high.max(low + 1)),
        series,
        aloud,
    })
}

fn point(day: i32, low: i64, high: i64, label: String) -> ChartPoint {
    ChartPoint { x: i64::from(day), low, high, label }
}

fn of(label: &str, kind: SeriesKind, points: Vec<ChartPoint>) -> ChartSeries {
    ChartSeries { label: label.to_owned(), kind, points }
}

/// An axis of dates: up to five ticks, whole weeks apart.
fn dates(from: i64, to: i64, words: Words) -> ChartAxis {
    let weeks = ((to - from) / 7 + 1).max(1);
    let step = 7 * ((weeks + 3) / 4).max(1);
    let mut ticks = Vec::new();
    let mut at = from;
    while at <= to {
        let label = words.date().dated(i32::try_from(at).unwrap_or(0), words.today);
        ticks.push(ChartTick { at, label });
        at += step;
    }
    ChartAxis { label: words.chart().dates().to_owned(), from, to, ticks }
}

/// An axis of masses in grams.
fn masses(low: i64, high: i64, unit: MassUnit) -> ChartAxis {
    // A pound is 453.59237 g: a tick is where its figure is.
    round(low, high, |units| units * unit.nanograms() / 1_000_000_000, unit.symbol())
}

/// An axis with steps of 1, 2 or 5 times a power of ten of its unit, four to eight of them; `place`
/// says where so many units lie.
fn round(low: i64, high: i64, place: impl Fn(i64) -> i64, symbol: &str) -> ChartAxis {
    let in_units = |value: i64| value.div_euclid(place(1).max(1));
    let span = (in_units(high) - in_units(low)).max(1);
    let mut step = 1_i64;
    'found: loop {
        for times in [1, 2, 5] {
            if span <= step * times * 6 {
                step *= times;
                break 'found;
            }
        }
        step *= 10;
    }
    let first = in_units(low).div_euclid(step) * step;
    let mut ticks = Vec::new();
    let mut at = first;
    loop {
        ticks.push(ChartTick { at: place(at), label: at.to_string() });
        if place(at) >= high {
            break;
        }
        at += step;
    }
    let ends = ticks.first().zip(ticks.last()).map(|(first, last)| (first.at, last.at));
    let (from, to) = ends.unwrap_or((low, high));
    ChartAxis { label: symbol.to_owned(), from, to, ticks }
}
