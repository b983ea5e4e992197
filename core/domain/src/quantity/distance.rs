//! Distances of carries and sleds.

use serde::{Deserialize, Serialize};

use super::bounds;
use super::decimal::{self, Numerals};
use super::reps::{Range, split_range};
use super::unreadable::{Kind, Problem, Unreadable};

/// A distance in whole millimetres, to 100 km.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize,
)]
#[serde(transparent)]
pub struct Distance(u32);

impl Distance {
    /// So many millimetres; 100 km at most, more is cut to it.
    pub const fn from_millimetres(millimetres: u32) -> Self {
        let most = bounds::DISTANCE.greatest as u32;
        Self(if millimetres > most { most } else { millimetres })
    }

    /// Millimetres.
    pub const fn millimetres(self) -> u32 {
        self.0
    }

    /// Reads `40 m`, `12.5m`.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem.
    pub fn read(text: &str, numerals: Numerals) -> Result<Self, Unreadable> {
        one(text, text, 0, false, numerals)
    }

    /// Reads `40 m` or `30-40 m`; the unit may stand once, at the end.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem.
    pub fn read_range(text: &str, numerals: Numerals) -> Result<Range<Self>, Unreadable> {
        let (low, high) = split_range(text);
        let Some(high) = high else { return Self::read(text, numerals).map(Range::just) };
        let to = one(text, high, 0, false, numerals)?;
        let from = one(text, low, text.len() - low.len(), true, numerals)?;
        if to < from {
            return Err(Unreadable::at(Kind::Distance, text, high, Problem::Backwards));
        }
        Ok(Range { from, to })
    }

    /// `40 m`.
    pub fn print(self, numerals: Numerals) -> String {
        format!("{} m", decimal::print(i128::from(self.0), 3, 0, numerals))
    }
}

fn one(
    text: &str,
    part: &str,
    tail: usize,
    unit_optional: bool,
    numerals: Numerals,
) -> Result<Distance, Unreadable> {
    let offset = text.len().saturating_sub(tail + part.trim_start().len());
    let place = text.get(offset..).unwrap_or_default();
    let err = |place: &str, problem| Unreadable::at(Kind::Distance, text, place, problem);
    let part = part.trim();
    if part.is_empty() {
        return Err(err(place, Problem::Empty));
    }
    let (number, rest) = decimal::take(part, numerals).map_err(|problem| err(place, problem))?;
    let unit_place = place.get(part.len() - rest.len()..).unwrap_or_default();
    match rest.trim() {
        "m" | "metres" | "meters" => {}
        "" if unit_optional => {}
        "" => return Err(err(unit_place, Problem::MissingUnit)),
        _ => return Err(err(unit_place.trim_start(), Problem::UnknownUnit)),
    }
    let millimetres = number.scaled(3).ok_or_else(|| err(place, Problem::TooFine))?;
    if millimetres < 0 {
        return Err(err(place, Problem::TooSmall { least: "0 m".into() }));
    }
    match u32::try_from(millimetres) {
        Ok(value) if bounds::DISTANCE.holds(millimetres) => Ok(Distance(value)),
        _ => Err(err(place, Problem::TooLarge { greatest: "100000 m".into() })),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_and_prints() {
        let read = |text| Distance::read(text, Numerals::Point);
        assert_eq!(read("40 m").unwrap().millimetres(), 40_000);
        assert_eq!(read("12.5m").unwrap().print(Numerals::Comma), "12,5 m");
        let range = Distance::read_range("30-40 m", Numerals::Point).unwrap();
        assert_eq!(range.from.millimetres(), 30_000);
        assert_eq!(read("40 km").unwrap_err().problem, Problem::UnknownUnit);
        assert_eq!(read("40").unwrap_err().problem, Problem::MissingUnit);
        assert_eq!(read("-4 m").unwrap_err().problem, Problem::TooSmall { least: "0 m".into() });
    }
}
