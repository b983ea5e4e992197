//! Mass in whole nanograms, so that kilograms and pounds add up exactly.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::bounds;
use super::decimal::{self, Decimal, Numerals};
use super::unreadable::{Kind, Problem, Unreadable};

/// A mass unit that plates and plans are written in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MassUnit {
    /// Kilogram.
    #[default]
    Kilogram,
    /// Avoirdupois pound, 0.453 592 37 kg exactly (NIST SP 811, App. B.8).
    Pound,
}

impl MassUnit {
    /// Nanograms in one unit.
    pub const fn nanograms(self) -> i64 {
        match self {
            Self::Kilogram => 1_000_000_000_000,
            Self::Pound => 453_592_370_000,
        }
    }

    /// `kg` or `lb`.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Kilogram => "kg",
            Self::Pound => "lb",
        }
    }
}

/// How a mass that falls between two multiples is rounded; every rounding names its mode.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rounding {
    /// To the nearer multiple; exactly half goes to the even one (NIST SP 811, App. B.7.1).
    HalfEven,
    /// Toward minus infinity.
    Down,
    /// Toward plus infinity.
    Up,
}

/// A mass in nanograms, or a difference of masses: negative values are assistance and misses.
///
/// The range is that of an `i64`, some ±9 223 tonnes; readers take ±5 t. Arithmetic is checked
/// and answers `None` past the range.
///
/// Serialised as kilograms in an exact decimal string: 45 lb is `"20.41165665"`.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Mass(i64);

impl Mass {
    /// Nothing.
    pub const ZERO: Self = Self(0);

    /// A mass of so many nanograms.
    pub const fn from_nanograms(nanograms: i64) -> Self {
        Self(nanograms)
    }

    /// The mass in nanograms.
    pub const fn nanograms(self) -> i64 {
        self.0
    }

    /// Whole grams; `None` past the range.
    pub const fn from_grams(grams: i64) -> Option<Self> {
        match grams.checked_mul(1_000_000_000) {
            Some(ng) => Some(Self(ng)),
            None => None,
        }
    }

    /// Whole units.
    pub const fn whole(count: i32, unit: MassUnit) -> Self {
        // An i32 of kilograms is at most 2.15e9 · 1e12 and would overflow: saturate, as bounds do.
        Self((count as i64).saturating_mul(unit.nanograms()))
    }

    /// The sum; `None` past the range.
    #[must_use]
    pub const fn checked_add(self, other: Self) -> Option<Self> {
        match self.0.checked_add(other.0) {
            Some(ng) => Some(Self(ng)),
            None => None,
        }
    }

    /// The difference; `None` past the range.
    #[must_use]
    pub const fn checked_sub(self, other: Self) -> Option<Self> {
        match self.0.checked_sub(other.0) {
            Some(ng) => Some(Self(ng)),
            None => None,
        }
    }

    /// So many times the mass; `None` past the range.
    #[must_use]
    pub const fn checked_mul(self, times: i64) -> Option<Self> {
        match self.0.checked_mul(times) {
            Some(ng) => Some(Self(ng)),
            None => None,
        }
    }

    /// The distance between two masses; the range's end past the range.
    #[must_use]
    pub const fn distance(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0).saturating_abs())
    }

    /// `numerator / denominator` of the mass, rounded to a nanogram by `rounding`.
    /// `None` past the range or for a denominator of nothing.
    #[must_use]
    pub fn ratio(self, numerator: i64, denominator: i64, rounding: Rounding) -> Option<Self> {
        let product = i128::from(self.0) * i128::from(numerator);
        divide(product, i128::from(denominator), rounding)
            .and_then(|ng| i64::try_from(ng).ok())
            .map(Self)
    }

    /// The nearest multiple of `step` by the mode; `None` for a step that is not above nothing.
    #[must_use]
    pub fn to_multiple(self, step: Self, rounding: Rounding) -> Option<Self> {
        if step.0 <= 0 {
            return None;
        }
        let count = divide(i128::from(self.0), i128::from(step.0), rounding)?;
        i64::try_from(count * i128::from(step.0)).ok().map(Self)
    }

    /// Reads a mass with its unit: `142.5 kg`, `45lb`, `1,25 kg` where a comma is the custom.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem; past ±5 t too.
    pub fn read(text: &str, numerals: Numerals) -> Result<Self, Unreadable> {
        Self::read_as_written(text, numerals).map(|(mass, _)| mass)
    }

    /// As [`Mass::read`], with the unit it was written in.
    ///
    /// # Errors
    /// As [`Mass::read`].
    pub fn read_as_written(text: &str, numerals: Numerals) -> Result<(Self, MassUnit), Unreadable> {
        let err = |place: &str, problem| Unreadable::at(Kind::Mass, text, place, problem);
        let start = text.trim_start();
        if start.is_empty() {
            return Err(err(start, Problem::Empty));
        }
        let (number, rest) = decimal::take(start, numerals).map_err(|problem| match problem {
            Problem::CommaHere => {
                let comma = start.find(',').and_then(|at| start.get(at..)).unwrap_or(start);
                err(comma, problem)
            }
            other => err(start, other),
        })?;
        let place = rest.trim_start();
        let unit = match place.trim_end() {
            "" => return Err(err(place, Problem::MissingUnit)),
            "kg" | "KG" | "Kg" => MassUnit::Kilogram,
            "lb" | "lbs" | "LB" => MassUnit::Pound,
            _ => return Err(err(place, Problem::UnknownUnit)),
        };
        let mass = Self::from_decimal(number, unit).ok_or_else(|| err(start, Problem::TooFine))?;
        if mass < i128::from(bounds::MASS.least) {
            let least = Self(bounds::MASS.least).print(unit, numerals);
            return Err(err(start, Problem::TooSmall { least }));
        }
        if mass > i128::from(bounds::MASS.greatest) {
            let greatest = Self(bounds::MASS.greatest).print(unit, numerals);
            return Err(err(start, Problem::TooLarge { greatest }));
        }
        i64::try_from(mass).map(|ng| (Self(ng), unit)).map_err(|_| err(start, Problem::TooFine))
    }

    fn from_decimal(number: Decimal, unit: MassUnit) -> Option<i128> {
        let product = number.value.checked_mul(i128::from(unit.nanograms()))?;
        Decimal { value: product, decimals: number.decimals }.scaled(0)
    }

    /// Exact kilograms without the unit, as few decimals as it takes: `"20.41165665"`.
    pub fn kilograms(self) -> String {
        decimal::print(i128::from(self.0), 12, 0, Numerals::Point)
    }

    /// As [`Mass::kilograms`], with at least so many decimals (12 at most): `"126.00000"`.
    pub fn kilograms_with(self, decimals: usize) -> String {
        decimal::print(i128::from(self.0), 12, decimals, Numerals::Point)
    }

    /// The mass in a unit, at most two decimals, half to even: `142.5 kg`, `313.06 lb`.
    ///
    /// For people; what must stay exact goes by [`Mass::kilograms`].
    pub fn print(self, unit: MassUnit, numerals: Numerals) -> String {
        format!("{} {}", self.figure(unit, numerals), unit.symbol())
    }

    /// As [`Mass::print`], without the unit.
    pub fn figure(self, unit: MassUnit, numerals: Numerals) -> String {
        let hundredths =
            divide(i128::from(self.0) * 100, i128::from(unit.nanograms()), Rounding::HalfEven)
                .unwrap_or_default();
        decimal::print(hundredths, 2, 0, numerals)
    }

    /// Whether the mass is a whole number of hundredths of the unit, so that [`Mass::print`] is
    /// exact.
    pub fn prints_exactly(self, unit: MassUnit) -> bool {
        (i128::from(self.0) * 100) % i128::from(unit.nanograms()) == 0
    }
}

/// Integer division with a named rounding; `None` for a divisor of nothing.
pub(crate) fn divide(numerator: i128, denominator: i128, rounding: Rounding) -> Option<i128> {
    let down = numerator.checked_div_euclid(denominator)?;
    let over = numerator.checked_rem_euclid(denominator)?;
    let twice = over.checked_mul(2)?.cmp(&denominator.checked_abs()?);
    // `div_euclid` rounds down for a positive denominator, which is all that is asked here.
    let up = match rounding {
        Rounding::Down => false,
        Rounding::Up => over != 0,
        Rounding::HalfEven => match twice {
            std::cmp::Ordering::Less => false,
            std::cmp::Ordering::Equal => down % 2 != 0,
            std::cmp::Ordering::Greater => true,
        },
    };
    Some(if up { down + 1 } else { down })
}

impl fmt::Debug for Mass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} kg", self.kilograms())
    }
}

impl Serialize for Mass {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.kilograms())
    }
}

impl<'de> Deserialize<'de> for Mass {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        let refused = || serde::de::Error::custom(format!("not kilograms: {text:?}"));
        match decimal::take(&text, Numerals::Point) {
            Ok((number, "")) => number
                .scaled(12)
                .and_then(|ng| i64::try_from(ng).ok())
                .map(Self)
                .ok_or_else(refused),
            _ => Err(refused()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn kg(text: &str) -> Mass {
        Mass::read(text, Numerals::Point).unwrap()
    }

    #[test]
    fn reads_what_a_person_types() {
        for (text, kilograms) in [
            ("142.5 kg", "142.5"),
            ("142.5kg", "142.5"),
            (" 45lb ", "20.41165665"),
            ("45 lbs", "20.41165665"),
            ("1.25 kg", "1.25"),
            ("-20 kg", "-20"),
            ("+7.5 kg", "7.5"),
            ("0.000000000001 kg", "0.000000000001"),
        ] {
            assert_eq!(kg(text).kilograms(), kilograms, "{text}");
        }
        assert_eq!(Mass::read("1,25 kg", Numerals::Comma).unwrap(), kg("1.25 kg"));
        assert_eq!(Mass::read("1.25 kg", Numerals::Comma).unwrap(), kg("1.25 kg"));
    }

    #[test]
    fn refuses_with_the_place() {
        for (text, at, problem) in [
            ("", 0, Problem::Empty),
            ("142,5 kg", 3, Problem::CommaHere),
            ("142.5", 5, Problem::MissingUnit),
            ("142.5 stone", 6, Problem::UnknownUnit),
            ("heavy", 0, Problem::NotANumber),
            ("12. kg", 0, Problem::NotANumber),
            ("0.00001 lb", 0, Problem::TooFine),
            ("9999999999999 kg", 0, Problem::TooFine),
            ("5001 kg", 0, Problem::TooLarge { greatest: "5000 kg".into() }),
            ("５ stone", 0, Problem::NotANumber),
        ] {
            let err = Mass::read(text, Numerals::Point).unwrap_err();
            assert_eq!((err.at, &err.problem), (at, &problem), "{text}");
        }
    }

    #[test]
    fn half_goes_to_even() {
        let step = kg("2.5 kg");
        assert_eq!(kg("101.25 kg").to_multiple(step, Rounding::HalfEven), Some(kg("100 kg")));
        assert_eq!(kg("103.75 kg").to_multiple(step, Rounding::HalfEven), Some(kg("105 kg")));
        assert_eq!(kg("-1.25 kg").to_multiple(step, Rounding::HalfEven), Some(kg("0 kg")));
        assert_eq!(kg("101 kg").to_multiple(step, Rounding::Up), Some(kg("102.5 kg")));
        assert_eq!(kg("101 kg").to_multiple(step, Rounding::Down), Some(kg("100 kg")));
    }

    #[test]
    fn prints_in_either_unit() {
        assert_eq!(kg("142.5 kg").print(MassUnit::Kilogram, Numerals::Comma), "142,5 kg");
        assert_eq!(kg("142 kg").print(MassUnit::Pound, Numerals::Point), "313.06 lb");
        assert!(kg("45 lb").prints_exactly(MassUnit::Pound));
        assert!(!kg("45 lb").prints_exactly(MassUnit::Kilogram));
    }

    #[test]
    fn survives_json() {
        for text in ["45 lb", "0 kg", "-12.5 kg", "4999.999 kg"] {
            let mass = kg(text);
            let json = serde_json::to_string(&mass).unwrap();
            assert_eq!(serde_json::from_str::<Mass>(&json).unwrap(), mass);
        }
        assert!(serde_json::from_str::<Mass>("\"12 kg\"").is_err());
    }
}
