//! The small texts of a plan: loads, repetitions, weeks, misses.

use super::super::bounds;
use super::super::line::Weeks;
use super::super::rules::{Miss, Step};
use super::Names;
use crate::call::{HowMany, LoadCall, MaxOf, Stop};
use crate::quantity::{
    Distance, Mass, Numerals, Percent, Range, RepRange, Reps, Reserve, Seconds, Unreadable,
};
use crate::shown::excerpt;
use crate::text::{Expected, Found, Item, Problem};

const POINT: Numerals = Numerals::Point;

/// Reads `part`, a slice of `text`; places it names are those of the text.
fn within<T>(
    item: &Item<'_>,
    text: &str,
    part: &str,
    reader: impl FnOnce(&str) -> Result<T, Unreadable>,
) -> Option<T> {
    match reader(part) {
        Ok(made) => Some(made),
        Err(unreadable) => {
            let offset = (part.as_ptr() as usize).saturating_sub(text.as_ptr() as usize);
            let before = text.get(..offset).map_or(0, |before| before.chars().count());
            item.unreadable(text, Unreadable { at: unreadable.at + before, ..unreadable });
            None
        }
    }
}

/// A load. A percentage that names no max is of `own`.
pub(super) fn load(item: &Item<'_>, names: &Names<'_>, own: &MaxOf) -> Option<LoadCall> {
    let text = item.any_text(Expected::Load)?;
    let bare = text.trim();
    if text.chars().nth(bounds::LOAD).is_some() {
        item.fault(Problem::TooLong { most: bounds::LOAD });
        return None;
    }
    if bare == "body" {
        return Some(LoadCall::Body);
    }
    if bare == "by feel" {
        return Some(LoadCall::ByFeel);
    }
    let amount = |part: &str| within(item, text, part, positive);
    if let Some(rest) = bare.strip_prefix("body") {
        let rest = rest.trim_start();
        if let Some(more) = rest.strip_prefix('+') {
            return amount(more_text(text, more)).map(LoadCall::Added);
        }
        if let Some(less) = rest.strip_prefix(['-', '\u{2212}', '\u{2013}']) {
            return amount(more_text(text, less)).map(LoadCall::Assisted);
        }
    }
    if let Some(pin) = bare.strip_prefix("pin ") {
        return named(item, pin).map(LoadCall::Pin);
    }
    if let Some(name) = bare.strip_prefix("with ") {
        return named(item, name).map(|name| LoadCall::SetUp { name, load: None });
    }
    if let Some((mass, name)) = bare.split_once(" with ") {
        let load = amount(mass);
        let name = named(item, name);
        return Some(LoadCall::SetUp { name: name?, load: Some(load?) });
    }
    if !bare.starts_with(|c: char| c.is_ascii_digit()) {
        item.fault(Problem::Unread { expected: Expected::Load });
        return None;
    }
    if !bare.contains('%') {
        return amount(bare).map(LoadCall::Mass);
    }
    let (share, of) = match bare.split_once(" of ") {
        Some((share, of)) => (share, Some(of.trim())),
        None => (bare, None),
    };
    let share = within(item, text, share, |part| Percent::read_range(part, POINT));
    match of {
        Some("top set") => {
            let share = share?;
            if share.is_single() {
                Some(LoadCall::OfTopSet(share.from))
            } else {
                item.fault(Problem::Unread { expected: Expected::Load });
                None
            }
        }
        Some(of) => {
            let of = max_of(item, of, names);
            Some(LoadCall::Percent { share: share?, of: of? })
        }
        None => Some(LoadCall::Percent { share: share?, of: own.clone() }),
    }
}

/// The part of the text from `part` on, so that its place is known.
fn more_text<'t>(text: &'t str, part: &'t str) -> &'t str {
    if part.trim().is_empty() { text.get(text.len()..).unwrap_or(part) } else { part }
}

fn positive(text: &str) -> Result<Mass, Unreadable> {
    let mass = Mass::read(text, POINT)?;
    if mass.nanograms() < 0 {
        let start = text.len() - text.trim_start().len();
        let at = text.get(..start).map_or(0, |before| before.chars().count());
        let problem = crate::quantity::Problem::TooSmall { least: "0 kg".into() };
        let text = excerpt(text);
        return Err(Unreadable { kind: crate::quantity::Kind::Mass, text, at, problem });
    }
    Ok(mass)
}

fn named(item: &Item<'_>, name: &str) -> Option<String> {
    let name = name.trim();
    if name.is_empty() {
        item.fault(Problem::Unread { expected: Expected::Load });
        return None;
    }
    if name.chars().nth(bounds::SHORT).is_some() {
        item.fault(Problem::TooLong { most: bounds::SHORT });
        return None;
    }
    Some(name.to_string())
}

/// `working max`, `Front squat`, `Front squat working max`.
pub(super) fn max_of(item: &Item<'_>, text: &str, names: &Names<'_>) -> Option<MaxOf> {
    let text = text.trim();
    if text == "working max" {
        return Some(MaxOf::Working);
    }
    match text.strip_suffix(" working max") {
        Some(lift) => names.slug(item, lift).map(MaxOf::WorkingOf),
        None => names.slug(item, text).map(MaxOf::Lift),
    }
}

/// Repetitions: `5`, `"6-10"`, `"8 or more"`, `"8 or more, stop at 1 left"`.
pub(super) fn reps(item: &Item<'_>) -> Option<HowMany> {
    let text = match item.found() {
        Found::Text => item.any_text(Expected::RepsOrOpen)?,
        Found::Whole => return item.reps().map(HowMany::Reps),
        _ => {
            item.wrong_type(Expected::RepsOrOpen);
            return None;
        }
    };
    let Some((least, rest)) = text.split_once(" or more") else {
        return within(item, text, text, RepRange::read).map(HowMany::Reps);
    };
    let range = within(item, text, least, RepRange::read);
    let stop = match rest.trim() {
        "" | ", stop when form goes" => Some(Stop::Form),
        ", stop when the pace drops" => Some(Stop::Pace),
        other => {
            if let Some(left) =
                other.strip_prefix(", stop at ").and_then(|rest| rest.strip_suffix(" left"))
            {
                within(item, text, left, |part| Reserve::read(part, POINT)).map(Stop::Reserve)
            } else if let Some(time) = other.strip_prefix(", stop after ") {
                within(item, text, time, Seconds::read).map(Stop::Time)
            } else {
                item.fault(Problem::Unread { expected: Expected::RepsOrOpen });
                None
            }
        }
    };
    let range = range?;
    if !range.is_single() {
        item.fault(Problem::Unread { expected: Expected::RepsOrOpen });
        return None;
    }
    Some(HowMany::Open { at_least: range.from, stop: stop? })
}

/// Seconds: `30`, `"30 s"`, `"30-45 s"`.
pub(super) fn seconds(item: &Item<'_>) -> Option<HowMany> {
    if item.found() == Found::Whole {
        let count = item.whole(0, crate::quantity::bounds::SECONDS.greatest)?;
        let seconds = Seconds::new(u32::try_from(count).ok()?);
        return Some(HowMany::Seconds(Range::just(seconds)));
    }
    item.seconds_range().map(HowMany::Seconds)
}

/// Metres: `40`, `"40 m"`, `"30-40 m"`.
pub(super) fn metres(item: &Item<'_>) -> Option<HowMany> {
    if item.found() == Found::Whole {
        let count = item.whole(0, crate::quantity::bounds::DISTANCE.greatest / 1_000)?;
        let metres = Distance::from_millimetres(u32::try_from(count * 1_000).ok()?);
        return Some(HowMany::Metres(Range::just(metres)));
    }
    item.distance_range().map(HowMany::Metres)
}

/// Weeks: `3`, `[1, 2]`, `"1-3, 5"`; within a plan of so many.
pub(super) fn weeks(item: &Item<'_>, count: usize) -> Option<Weeks> {
    let greatest = i64::try_from(count).unwrap_or(i64::MAX);
    let mut weeks: Vec<u16> = Vec::new();
    let mut fine = true;
    let number = |value: i64| u16::try_from(value).ok();
    match item.found() {
        Found::Text => {
            let text = item.any_text(Expected::Weeks)?;
            for part in text.split(',') {
                let range = within(item, text, part, RepRange::read);
                match range {
                    Some(range) if range.from >= 1 && usize::from(range.to) <= count => {
                        weeks.extend(range.from..=range.to);
                    }
                    Some(_) => {
                        item.fault(Problem::OutOfRange { least: 1, greatest });
                        fine = false;
                    }
                    None => fine = false,
                }
                if weeks.len() > bounds::WEEKS {
                    item.fault(Problem::TooMany { most: bounds::WEEKS });
                    return None;
                }
            }
        }
        Found::Whole | Found::List => {
            for each in item.one_or_list(bounds::WEEKS)? {
                match each.whole(1, greatest).and_then(number) {
                    Some(week) => weeks.push(week),
                    None => fine = false,
                }
            }
        }
        _ => {
            item.wrong_type(Expected::Weeks);
            return None;
        }
    }
    weeks.sort_unstable();
    weeks.dedup();
    (fine && !weeks.is_empty()).then_some(Weeks::These(weeks))
}

/// `repeat`, `hold`, `5 % less`.
pub(super) fn miss(item: &Item<'_>) -> Option<Miss> {
    let text = item.any_text(Expected::Miss)?;
    match text.trim() {
        "repeat" => Some(Miss::Repeat),
        "hold" => Some(Miss::Hold),
        other => match other.strip_suffix(" less") {
            Some(share) => {
                within(item, text, share, |part| Percent::read(part, POINT)).map(Miss::Less)
            }
            None => {
                item.fault(Problem::Unread { expected: Expected::Miss });
                None
            }
        },
    }
}

/// `2.5 kg` or `2 %`.
pub(super) fn step(item: &Item<'_>) -> Option<Step> {
    let text = item.any_text(Expected::Mass)?;
    if text.contains('%') {
        item.percent().map(Step::Share)
    } else {
        within(item, text, text, positive).map(Step::Mass)
    }
}

/// `bar` (none) or a share.
pub(super) fn ramp_load(item: &Item<'_>) -> Option<Option<Percent>> {
    if item.any_text(Expected::RampLoad)? == "bar" {
        return Some(None);
    }
    item.percent().map(Some)
}

/// A whole number as repetitions.
pub(super) fn count(item: &Item<'_>, least: i64, greatest: i64) -> Option<Reps> {
    item.whole(least, greatest).and_then(|value| Reps::try_from(value).ok())
}
