//! Durations in whole seconds.

use serde::{Deserialize, Serialize};

use super::bounds;
use super::reps::{Range, split_range};
use super::unreadable::{Kind, Problem, Unreadable};

/// A duration in whole seconds, to a day.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize,
)]
#[serde(transparent)]
pub struct Seconds(u32);

impl Seconds {
    /// So many seconds; a day at most, more is cut to it.
    pub const fn new(seconds: u32) -> Self {
        let most = bounds::SECONDS.greatest as u32;
        Self(if seconds > most { most } else { seconds })
    }

    /// Seconds.
    pub const fn count(self) -> u32 {
        self.0
    }

    /// Reads `90 s`, `90s`, `2:30`, `2 min` or `1:05:00`; a bare number is refused, since it
    /// could be either.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem.
    pub fn read(text: &str) -> Result<Self, Unreadable> {
        one(text, text, 0, None).map(|(seconds, _)| seconds)
    }

    /// Reads `90 s`, `20-30 s` or `2:00-3:00`; the unit may stand once, at the end.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem.
    pub fn read_range(text: &str) -> Result<Range<Self>, Unreadable> {
        let (low, high) = split_range(text);
        let Some(high) = high else { return Self::read(text).map(Range::just) };
        let (to, scale) = one(text, high, 0, None)?;
        let (from, _) = one(text, low, text.len() - low.len(), scale)?;
        if to < from {
            return Err(Unreadable::at(Kind::Seconds, text, high, Problem::Backwards));
        }
        Ok(Range { from, to })
    }

    /// `45 s` under a minute, then `2:30` and `1:05:00`.
    pub fn print(self) -> String {
        match self.0 {
            s @ 0..=59 => format!("{s} s"),
            s @ 60..=3599 => format!("{}:{:02}", s / 60, s % 60),
            s => format!("{}:{:02}:{:02}", s / 3600, s / 60 % 60, s % 60),
        }
    }
}

/// Reads one duration, with the seconds of its unit where it had one; `scale` is the unit of a
/// number without.
fn one(
    text: &str,
    part: &str,
    tail: usize,
    scale: Option<u32>,
) -> Result<(Seconds, Option<u32>), Unreadable> {
    let offset = text.len().saturating_sub(tail + part.trim_start().len());
    let place = text.get(offset..).unwrap_or_default();
    let err = |place: &str, problem| Unreadable::at(Kind::Seconds, text, place, problem);
    let part = part.trim();
    if part.is_empty() {
        return Err(err(place, Problem::Empty));
    }
    let too_large = || err(place, Problem::TooLarge { greatest: "24:00:00".into() });
    if part.contains(':') {
        let mut total: u32 = 0;
        for (nth, field) in part.split(':').enumerate() {
            let digits = field.chars().all(|c| c.is_ascii_digit()) && !field.is_empty();
            if !digits || nth > 2 || (nth > 0 && field.len() != 2) {
                return Err(err(place, Problem::NotANumber));
            }
            let value: u32 = field.parse().map_err(|_| too_large())?;
            if nth > 0 && value > 59 {
                return Err(err(place, Problem::TooLarge { greatest: "59".into() }));
            }
            total =
                total.checked_mul(60).and_then(|t| t.checked_add(value)).ok_or_else(too_large)?;
        }
        if i64::from(total) > bounds::SECONDS.greatest {
            return Err(too_large());
        }
        return Ok((Seconds(total), None));
    }
    let cut = part.find(|c: char| !c.is_ascii_digit()).unwrap_or(part.len());
    let (figures, unit) = part.split_at_checked(cut).unwrap_or((part, ""));
    if figures.is_empty() {
        return Err(err(place, Problem::NotANumber));
    }
    let unit_place = place.get(cut..).unwrap_or_default();
    let scale = match (unit.trim(), scale) {
        ("s" | "sec" | "seconds", _) => 1,
        ("min" | "minutes", _) => 60,
        ("h" | "hours", _) => 3600,
        ("", Some(scale)) => scale,
        ("", None) => return Err(err(unit_place, Problem::MissingUnit)),
        _ => return Err(err(unit_place.trim_start(), Problem::UnknownUnit)),
    };
    let value: u32 = figures.parse().map_err(|_| too_large())?;
    match value.checked_mul(scale) {
        Some(total) if i64::from(total) <= bounds::SECONDS.greatest => {
            Ok((Seconds(total), Some(scale)))
        }
        _ => Err(too_large()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_and_prints() {
        for (text, seconds, printed) in [
            ("90 s", 90, "1:30"),
            ("45s", 45, "45 s"),
            ("2:30", 150, "2:30"),
            ("2 min", 120, "2:00"),
            ("1:05:00", 3900, "1:05:00"),
            ("0 s", 0, "0 s"),
        ] {
            let read = Seconds::read(text).unwrap();
            assert_eq!((read.count(), read.print().as_str()), (seconds, printed), "{text}");
        }
        let range = Seconds::read_range("20-30 s").unwrap();
        assert_eq!((range.from.count(), range.to.count()), (20, 30));
        let range = Seconds::read_range("2-3 min").unwrap();
        assert_eq!((range.from.count(), range.to.count()), (120, 180));
    }

    #[test]
    fn refuses_with_the_place() {
        for (text, at, problem) in [
            ("90", 2, Problem::MissingUnit),
            ("90 sets", 3, Problem::UnknownUnit),
            ("2:99", 0, Problem::TooLarge { greatest: "59".into() }),
            ("2:3", 0, Problem::NotANumber),
            ("soon", 0, Problem::NotANumber),
            ("99999999 h", 0, Problem::TooLarge { greatest: "24:00:00".into() }),
        ] {
            let err = Seconds::read(text).unwrap_err();
            assert_eq!((err.at, &err.problem), (at, &problem), "{text}");
        }
        assert_eq!(Seconds::read_range("30-20 s").unwrap_err().problem, Problem::Backwards);
    }
}
