//! Percentages by halves, and exact shares of a mass.

use serde::{Deserialize, Serialize};

use super::bounds;
use super::decimal::{self, Numerals};
use super::mass::{Mass, Rounding};
use super::reps::{Range, split_range};
use super::unreadable::{Kind, Problem, Unreadable};
use crate::shown::excerpt;

/// A percentage in hundredths of a percent, −100 % to 300 %.
///
/// Plans are written in whole and half percents; finer steps come only from the tool's own
/// arithmetic (a rise of 0.25 % a week, say).
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize,
)]
#[serde(transparent)]
pub struct Percent(i32);

impl Percent {
    /// One hundred per cent.
    pub const WHOLE: Self = Self(10_000);

    /// A percentage of so many hundredths of a percent.
    pub const fn from_hundredths(hundredths: i32) -> Self {
        Self(hundredths)
    }

    /// A whole percentage.
    pub const fn whole(percent: i16) -> Self {
        Self(percent as i32 * 100)
    }

    /// Hundredths of a percent.
    pub const fn hundredths(self) -> i32 {
        self.0
    }

    /// What is left of the whole once this is taken off.
    pub const fn left_of_whole(self) -> Self {
        Self(Self::WHOLE.0.saturating_sub(self.0))
    }

    /// This share of another, towards nothing to the hundredth of a percent.
    pub fn of_share(self, other: Self) -> Self {
        let both = i64::from(self.0) * i64::from(other.0) / i64::from(Self::WHOLE.0);
        Self(i32::try_from(both).unwrap_or(i32::MAX))
    }

    /// One mass as a share of another, towards nothing to the hundredth of a percent; of nothing
    /// there is none.
    pub fn part_of(part: Mass, whole: Mass) -> Option<Self> {
        let scaled = i128::from(part.nanograms()) * i128::from(Self::WHOLE.0);
        let share = scaled.checked_div(i128::from(whole.nanograms()))?;
        i32::try_from(share).ok().map(Self)
    }

    /// Reads `67.5 %`, `67.5%` or `-4 %`; the sign is required, and only halves are read.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem.
    pub fn read(text: &str, numerals: Numerals) -> Result<Self, Unreadable> {
        let err = |place: &str, problem| Unreadable::at(Kind::Percent, text, place, problem);
        let start = text.trim_start();
        if start.is_empty() {
            return Err(err(start, Problem::Empty));
        }
        let (number, rest) =
            decimal::take(start, numerals).map_err(|problem| err(start, problem))?;
        let place = rest.trim_start();
        match place.trim_end() {
            "%" => {}
            "" => return Err(err(place, Problem::MissingUnit)),
            _ => return Err(err(place, Problem::UnknownUnit)),
        }
        let hundredths = number.scaled(2).ok_or_else(|| err(start, Problem::NotAHalf))?;
        if hundredths % 50 != 0 {
            return Err(err(start, Problem::NotAHalf));
        }
        if hundredths < i128::from(bounds::PERCENT.least) {
            return Err(err(start, Problem::TooSmall { least: "-100 %".into() }));
        }
        match i32::try_from(hundredths) {
            Ok(value) if bounds::PERCENT.holds(hundredths) => Ok(Self(value)),
            _ => Err(err(start, Problem::TooLarge { greatest: "300 %".into() })),
        }
    }

    /// Reads `67.5 %` or `76-82 %`; the sign may stand once, at the end.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem.
    pub fn read_range(text: &str, numerals: Numerals) -> Result<Range<Self>, Unreadable> {
        let (low, high) = split_range(text);
        let Some(high) = high else { return Self::read(text, numerals).map(Range::just) };
        // Places are characters of the part: what stands before it is added.
        let within = |unreadable: Unreadable, before: usize| Unreadable {
            at: unreadable.at + before,
            text: excerpt(text),
            ..unreadable
        };
        let before_high = text.chars().count() - high.chars().count();
        let to = Self::read(high, numerals).map_err(|u| within(u, before_high))?;
        let low = if low.contains('%') { low.to_string() } else { format!("{low}%") };
        let from = Self::read(&low, numerals).map_err(|u| within(u, 0))?;
        if to < from {
            return Err(Unreadable::at(Kind::Percent, text, high, Problem::Backwards));
        }
        Ok(Range { from, to })
    }

    /// This share of a mass, to the nanogram, half to even; `None` past the range.
    pub fn of(self, mass: Mass) -> Option<Mass> {
        mass.ratio(i64::from(self.0), 10_000, Rounding::HalfEven)
    }

    /// `67.5 %`.
    pub fn print(self, numerals: Numerals) -> String {
        format!("{} %", decimal::print(i128::from(self.0), 2, 0, numerals))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_a_range() {
        let read = |text| Percent::read_range(text, Numerals::Point);
        let range = Range { from: Percent::whole(76), to: Percent::whole(82) };
        assert_eq!(read("76-82 %"), Ok(range));
        assert_eq!(read("76 % – 82 %"), Ok(range));
        assert_eq!(read("67.5 %"), Ok(Range::just(Percent::from_hundredths(6_750))));
        for (text, at, problem) in [
            ("82-76 %", 3, Problem::Backwards),
            ("76-82", 5, Problem::MissingUnit),
            ("76.25-82 %", 0, Problem::NotAHalf),
            ("76-x %", 3, Problem::NotANumber),
        ] {
            let err = read(text).unwrap_err();
            assert_eq!((err.at, &err.problem), (at, &problem), "{text}");
        }
    }
}
