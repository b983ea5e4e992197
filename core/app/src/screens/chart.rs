//! Charts as data: axes with round ticks, series, a sentence to be read aloud.

use barwright_domain::quantity::{Mass, MassUnit, Numerals};

use super::lift::Day;
use crate::contract::{Chart, ChartAxis, ChartPoint, ChartSeries, ChartTick, SeriesKind};
use crate::phrase::en::date;

/// Loads of a lift over time, its estimates behind them as a band. None with fewer than two
/// sessions that have a load.
pub(super) fn of_lift(name: &str, days: &[Day], unit: MassUnit) -> Option<Chart> {
    let grams = |mass: Mass| mass.nanograms() / 1_000_000_000;
    let print = |mass: Mass| mass.print(unit, Numerals::Point);
    let loads: Vec<ChartPoint> = days
        .iter()
        .filter_map(|day| {
            let figure = day.figure?;
            let label = format!("{}: {}", date::day(day.day), print(figure));
            Some(point(day.day, grams(figure), grams(figure), label))
        })
        .collect();
    let (Some(first), Some(last)) = (loads.first(), loads.last()) else { return None };
    if loads.len() < 2 {
        return None;
    }
    let aloud = format!(
        "{name}, {} sessions: from {} to {}.",
        loads.len(),
        first.label.replace(": ", ", "),
        last.label.replace(": ", ", ")
    );
    let estimates: Vec<(i32, _)> =
        days.iter().filter_map(|day| Some((day.day, day.estimate?))).collect();
    let band = estimates
        .iter()
        .map(|(day, estimate)| {
            let label =
                format!("{}: {} to {}", date::day(*day), print(estimate.low), print(estimate.high));
            point(*day, grams(estimate.low), grams(estimate.high), label)
        })
        .collect();
    let line = estimates
        .iter()
        .map(|(day, estimate)| {
            let label = format!("{}: estimate {}", date::day(*day), print(estimate.max));
            point(*day, grams(estimate.max), grams(estimate.max), label)
        })
        .collect();
    let mut series = Vec::new();
    if !estimates.is_empty() {
        series.push(of("Estimate, its range", SeriesKind::Band, band));
        series.push(of("Estimate", SeriesKind::Line, line));
    }
    series.push(of("Heaviest work load", SeriesKind::Marks, loads));
    let all = || series.iter().flat_map(|series| &series.points);
    let (left, right) = (all().map(|p| p.x).min()?, all().map(|p| p.x).max()?);
    let (low, high) = (all().map(|p| p.low).min()?, all().map(|p| p.high).max()?);
    Some(Chart {
        title: name.to_owned(),
        across: dates(left, right.max(left + 1)),
        up: masses(low, high.max(low + 1), unit),
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
fn dates(from: i64, to: i64) -> ChartAxis {
    let weeks = ((to - from) / 7 + 1).max(1);
    let step = 7 * ((weeks + 3) / 4).max(1);
    let mut ticks = Vec::new();
    let mut at = from;
    while at <= to {
        let label = date::day(i32::try_from(at).unwrap_or(0));
        ticks.push(ChartTick { at, label });
        at += step;
    }
    ChartAxis { label: "date".to_owned(), from, to, ticks }
}

/// An axis of masses: steps of 1, 2 or 5 times a power of ten of the unit, four to eight of them.
fn masses(low: i64, high: i64, unit: MassUnit) -> ChartAxis {
    let grams = unit.nanograms() / 1_000_000_000;
    let in_units = |value: i64| value.div_euclid(grams.max(1));
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
        // A pound is 453.59237 g: the tick is where the figure is.
        let place = at * unit.nanograms() / 1_000_000_000;
        ticks.push(ChartTick { at: place, label: at.to_string() });
        if place >= high {
            break;
        }
        at += step;
    }
    let ends = ticks.first().zip(ticks.last()).map(|(first, last)| (first.at, last.at));
    let (from, to) = ends.unwrap_or((low, high));
    ChartAxis { label: unit.symbol().to_owned(), from, to, ticks }
}
