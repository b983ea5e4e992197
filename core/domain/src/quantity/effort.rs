//! How near failure a set was: repetitions left in reserve, and the rating that mirrors it.

use serde::{Deserialize, Serialize};

use super::bounds::{self, Bounds};
use super::decimal::{self, Numerals};
use super::reps::{Range, split_range};
use super::unreadable::{Kind, Problem, Unreadable};

/// Repetitions left, in halves, 0 to 20.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Reserve(u8);

/// Rating of perceived exertion for resistance training, in halves, 1 to 10.
///
/// RPE 10 leaves nothing, 9 one repetition, 8 two (Zourdos et al. 2016, JSCR 30(1):267–275,
/// Fig. 1): from 5 upward, RPE = 10 − reserve.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Rpe(u8);

impl Reserve {
    /// Nothing left.
    pub const NONE: Self = Self(0);

    /// So many half repetitions; `None` past 20 repetitions.
    pub const fn from_halves(halves: u8) -> Option<Self> {
        if halves as i64 <= bounds::RESERVE.greatest { Some(Self(halves)) } else { None }
    }

    /// Half repetitions.
    pub const fn halves(self) -> u8 {
        self.0
    }

    /// The rating that goes with it: 10 − reserve, never under 1.
    pub const fn rpe(self) -> Rpe {
        let halves = 20_u8.saturating_sub(self.0);
        Rpe(if halves < 2 { 2 } else { halves })
    }

    /// Reads `2` or `1.5`.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem.
    pub fn read(text: &str, numerals: Numerals) -> Result<Self, Unreadable> {
        halves(text, text, 0, Kind::Reserve, bounds::RESERVE, numerals).map(Self)
    }

    /// Reads `2`, `1-2` or `0.5–1`.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem.
    pub fn read_range(text: &str, numerals: Numerals) -> Result<Range<Self>, Unreadable> {
        let range = halves_range(text, Kind::Reserve, bounds::RESERVE, numerals)?;
        Ok(Range { from: Self(range.from), to: Self(range.to) })
    }

    /// `2` or `1.5`.
    pub fn print(self, numerals: Numerals) -> String {
        decimal::print(i128::from(self.0) * 5, 1, 0, numerals)
    }
}

impl Rpe {
    /// So many half points; `None` outside 1 to 10.
    pub const fn from_halves(halves: u8) -> Option<Self> {
        if bounds::RPE.holds(halves as i128) { Some(Self(halves)) } else { None }
    }

    /// Half points.
    pub const fn halves(self) -> u8 {
        self.0
    }

    /// The repetitions left that go with it: 10 − RPE.
    pub const fn reserve(self) -> Reserve {
        Reserve(20_u8.saturating_sub(self.0))
    }

    /// Reads `8` or `8.5`.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem.
    pub fn read(text: &str, numerals: Numerals) -> Result<Self, Unreadable> {
        halves(text, text, 0, Kind::Rpe, bounds::RPE, numerals).map(Self)
    }

    /// Reads `8`, `6-7` or `7.5–8`.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem.
    pub fn read_range(text: &str, numerals: Numerals) -> Result<Range<Self>, Unreadable> {
        let range = halves_range(text, Kind::Rpe, bounds::RPE, numerals)?;
        Ok(Range { from: Self(range.from), to: Self(range.to) })
    }

    /// `8` or `8.5`.
    pub fn print(self, numerals: Numerals) -> String {
        decimal::print(i128::from(self.0) * 5, 1, 0, numerals)
    }
}

/// Reads one value in halves; `tail` bytes of `text` follow `part`.
fn halves(
    text: &str,
    part: &str,
    tail: usize,
    kind: Kind,
    bounds: Bounds,
    numerals: Numerals,
) -> Result<u8, Unreadable> {
    let offset = text.len().saturating_sub(tail + part.trim_start().len());
    let place = text.get(offset..).unwrap_or_default();
    let err = |problem| Unreadable::at(kind, text, place, problem);
    let start = part.trim();
    if start.is_empty() {
        return Err(err(Problem::Empty));
    }
    let (number, rest) = decimal::take(start, numerals).map_err(err)?;
    if !rest.is_empty() {
        return Err(err(Problem::Trailing));
    }
    let tenths = number.scaled(1).ok_or_else(|| err(Problem::NotAHalf))?;
    if tenths % 5 != 0 {
        return Err(err(Problem::NotAHalf));
    }
    let value = tenths / 5;
    let written = |halves: i64| decimal::print(i128::from(halves) * 5, 1, 0, numerals);
    if value < i128::from(bounds.least) {
        return Err(err(Problem::TooSmall { least: written(bounds.least) }));
    }
    if value > i128::from(bounds.greatest) {
        return Err(err(Problem::TooLarge { greatest: written(bounds.greatest) }));
    }
    u8::try_from(value).map_err(|_| err(Problem::NotANumber))
}

fn halves_range(
    text: &str,
    kind: Kind,
    bounds: Bounds,
    numerals: Numerals,
) -> Result<Range<u8>, Unreadable> {
    let (low, high) = split_range(text);
    match high {
        None => halves(text, low, 0, kind, bounds, numerals).map(Range::just),
        Some(high) => {
            let from = halves(text, low, text.len() - low.len(), kind, bounds, numerals)?;
            let to = halves(text, high, 0, kind, bounds, numerals)?;
            if to < from {
                return Err(Unreadable::at(kind, text, high, Problem::Backwards));
            }
            Ok(Range { from, to })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rating_mirrors_reserve() {
        let rpe = |text| Rpe::read(text, Numerals::Point).unwrap();
        assert_eq!(rpe("10").reserve(), Reserve::NONE);
        assert_eq!(rpe("8.5").reserve().halves(), 3);
        assert_eq!(Reserve::read("1.5", Numerals::Point).unwrap().rpe(), rpe("8.5"));
    }

    #[test]
    fn refuses_with_the_place() {
        for (text, at, problem) in [
            ("8.25", 0, Problem::NotAHalf),
            ("11", 0, Problem::TooLarge { greatest: "10".into() }),
            ("8-7", 2, Problem::Backwards),
            ("8-", 2, Problem::Empty),
            ("8 hard", 0, Problem::Trailing),
            ("0.5", 0, Problem::TooSmall { least: "1".into() }),
        ] {
            let err = Rpe::read_range(text, Numerals::Point).unwrap_err();
            assert_eq!((err.at, &err.problem), (at, &problem), "{text}");
        }
    }
}
