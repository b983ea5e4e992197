//! Percentages by halves, and exact shares of a mass.

use serde::{Deserialize, Serialize};

use super::bounds;
use super::decimal::{self, Numerals};
use super::mass::{Mass, Rounding};
use super::unreadable::{Kind, Problem, Unreadable};

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

    /// This share of a mass, to the nanogram, half to even; `None` past the range.
    pub fn of(self, mass: Mass) -> Option<Mass> {
        mass.ratio(i64::from(self.0), 10_000, Rounding::HalfEven)
    }

    /// `67.5 %`.
    pub fn print(self, numerals: Numerals) -> String {
        format!("{} %", decimal::print(i128::from(self.0), 2, 0, numerals))
    }
}
