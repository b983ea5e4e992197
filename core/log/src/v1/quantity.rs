//! Quantities: whole numbers of a small unit, masses in kilograms as an exact decimal text.

use std::fmt;

use barwright_domain::progress::estimate;
use barwright_domain::quantity::{self, bounds};
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::de::value::Error as NeverSaid;
use serde::de::{IntoDeserializer, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::mirror::{Mirror, OutOfRange};

/// A mass: kilograms as a decimal text with a point, exact to a nanogram (12 decimals).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Mass {
    /// Nanograms.
    pub nanograms: i64,
}

/// Nanograms of a kilogram.
const KILOGRAM: u64 = 1_000_000_000_000;
/// The greatest mass that is read, either way, in nanograms: four times what can be entered.
const MOST: u64 = 4 * bounds::MASS.greatest.unsigned_abs();
/// Decimals of a kilogram that a nanogram takes.
const DECIMALS: usize = 12;

impl Mass {
    fn print(self) -> String {
        let sign = if self.nanograms < 0 { "-" } else { "" };
        let size = self.nanograms.unsigned_abs();
        let (whole, part) = (size / KILOGRAM, size % KILOGRAM);
        if part == 0 {
            return format!("{sign}{whole}");
        }
        let part = format!("{part:0DECIMALS$}");
        format!("{sign}{whole}.{}", part.trim_end_matches('0'))
    }

    /// Reads what [`Mass::print`] writes and nothing else, so that a mass has one text. A log
    /// has very many: none takes memory of its own to be read.
    fn read(text: &str) -> Option<Self> {
        let (negative, size) = match text.strip_prefix('-') {
            Some(size) => (true, size),
            None => (false, text),
        };
        let (whole, part) = match size.split_once('.') {
            Some((_, part)) if part.ends_with('0') || !(1..=DECIMALS).contains(&part.len()) => {
                return None;
            }
            Some(parts) => parts,
            None => (size, ""),
        };
        if whole.is_empty() || (whole.starts_with('0') && whole.len() > 1) {
            return None;
        }
        let zeros = std::iter::repeat_n(b'0', DECIMALS - part.len());
        let size =
            whole.bytes().chain(part.bytes()).chain(zeros).try_fold(0_u64, |size, byte| {
                let digit = byte.is_ascii_digit().then(|| u64::from(byte - b'0'))?;
                size.checked_mul(10)?.checked_add(digit)
            })?;
        let nanograms = match negative {
            true if size == 0 => return None,
            true => 0_i64.checked_sub_unsigned(size)?,
            false => i64::try_from(size).ok()?,
        };
        Some(Self { nanograms })
    }
}

/// Reads a mass from a text as it lies in what is read.
struct Kilograms;

impl Visitor<'_> for Kilograms {
    type Value = Mass;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a string")
    }

    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Mass, E> {
        Mass::read(text).ok_or_else(|| E::custom(format!("not kilograms: {text:?}")))
    }
}

impl Serialize for Mass {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.print())
    }
}

impl<'de> Deserialize<'de> for Mass {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_str(Kilograms)
    }
}

#[cfg(any(test, feature = "schema"))]
impl JsonSchema for Mass {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Mass".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "description": "A mass: kilograms as a decimal text with a point, exact to a nanogram (12 decimals).",
            "type": "string",
            "pattern": "^-?(0|[1-9][0-9]*)(\\.[0-9]{0,11}[1-9])?$",
        })
    }
}

impl Mirror for Mass {
    type Of = quantity::Mass;

    fn of(it: &Self::Of) -> Self {
        Self { nanograms: it.nanograms() }
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        // Bars, plates and the body together: what can't be under any bar is no mass of a log.
        if self.nanograms.unsigned_abs() > MOST {
            return Err(OutOfRange {
                quantity: "mass",
                found: format!("{} kg", self.print()),
                wanted: "20 tonnes at the most".to_owned(),
            });
        }
        Ok(quantity::Mass::from_nanograms(self.nanograms))
    }
}

/// A mass unit that plates are stamped in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum MassUnit {
    /// Kilogram.
    Kilogram,
    /// Avoirdupois pound.
    Pound,
}

mirror!(enum MassUnit = quantity::MassUnit { Kilogram, Pound });

/// Repetitions of one set or part.
pub type Reps = u16;

/// From least to most, both included.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[cfg_attr(any(test, feature = "schema"), schemars(rename = "Range_of_{T}"))]
#[serde(deny_unknown_fields)]
pub struct Range<T> {
    /// Least.
    pub from: T,
    /// Most.
    pub to: T,
}

impl<T: Mirror> Mirror for Range<T> {
    type Of = quantity::Range<T::Of>;

    fn of(it: &Self::Of) -> Self {
        let quantity::Range { from, to } = it;
        Self { from: T::of(from), to: T::of(to) }
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        let Self { from, to } = self;
        Ok(quantity::Range { from: from.back()?, to: to.back()? })
    }
}

/// A percentage, in hundredths of a percent.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(transparent)]
pub struct Percent(pub i32);

impl Mirror for Percent {
    type Of = quantity::Percent;

    fn of(it: &Self::Of) -> Self {
        Self(it.hundredths())
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        Ok(quantity::Percent::from_hundredths(self.0))
    }
}

/// A number as the domain takes it, where it lies within its bounds.
fn within<T: Copy + Into<i64>, Of>(
    quantity: &'static str,
    it: T,
    bounds: bounds::Bounds,
    of: impl FnOnce(T) -> Option<Of>,
) -> Result<Of, OutOfRange> {
    let found: i64 = it.into();
    bounds.holds(found.into()).then(|| of(it)).flatten().ok_or_else(|| OutOfRange {
        quantity,
        found: found.to_string(),
        wanted: format!("{} to {}", bounds.least, bounds.greatest),
    })
}

/// Repetitions left, in halves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(transparent)]
pub struct Reserve(pub u8);

impl Mirror for Reserve {
    type Of = quantity::Reserve;

    fn of(it: &Self::Of) -> Self {
        Self(it.halves())
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        let of = quantity::Reserve::from_halves;
        within("number of half repetitions left", self.0, bounds::RESERVE, of)
    }
}

/// A duration in whole seconds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(transparent)]
pub struct Seconds(pub u32);

impl Mirror for Seconds {
    type Of = quantity::Seconds;

    fn of(it: &Self::Of) -> Self {
        Self(it.count())
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        let of = |count| Some(quantity::Seconds::new(count));
        within("duration in seconds", self.0, bounds::SECONDS, of)
    }
}

/// A distance in millimetres.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(transparent)]
pub struct Distance(pub u32);

impl Mirror for Distance {
    type Of = quantity::Distance;

    fn of(it: &Self::Of) -> Self {
        Self(it.millimetres())
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        let of = |millimetres| Some(quantity::Distance::from_millimetres(millimetres));
        within("distance in millimetres", self.0, bounds::DISTANCE, of)
    }
}

/// A length on the bar, in tenths of a millimetre.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(transparent)]
pub struct Length(pub u16);

impl Mirror for Length {
    type Of = quantity::Length;

    fn of(it: &Self::Of) -> Self {
        Self(it.tenths())
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        let of = |tenths| Some(quantity::Length::from_tenths(tenths));
        within("length in tenths of a millimetre", self.0, bounds::LENGTH, of)
    }
}

/// Lowering, pause, lifting, pause in seconds, `X` as fast as possible: `3-0-X-0`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(transparent)]
pub struct Tempo(pub String);

impl Mirror for Tempo {
    type Of = quantity::Tempo;

    fn of(it: &Self::Of) -> Self {
        Self(it.to_string())
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        quantity::Tempo::read(&self.0).map_err(|unreadable| OutOfRange {
            quantity: "tempo",
            found: self.0,
            wanted: unreadable.to_string(),
        })
    }
}

/// Repetitions that a load allows by an estimate, in hundredths.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(transparent)]
pub struct EstimatedReps(pub u16);

impl Mirror for EstimatedReps {
    type Of = estimate::EstimatedReps;

    fn of(it: &Self::Of) -> Self {
        Self(it.hundredths())
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        // The domain makes one by estimating, or by reading it: there is no other door.
        let hundredths = IntoDeserializer::<NeverSaid>::into_deserializer(self.0);
        estimate::EstimatedReps::deserialize(hundredths).map_err(|error| OutOfRange {
            quantity: "number of hundredths of a repetition",
            found: self.0.to_string(),
            wanted: error.to_string(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mass_has_one_text_and_it_is_the_domains() {
        for nanograms in [
            0,
            1,
            -1,
            20_000_000_000_000,
            20_411_656_650_000,
            -142_500_000_000_000,
            i64::MAX,
            i64::MIN,
        ] {
            let mass = Mass { nanograms };
            assert_eq!(mass.print(), quantity::Mass::from_nanograms(nanograms).kilograms());
            assert_eq!(Mass::read(&mass.print()), Some(mass));
        }
    }

    #[test]
    fn what_is_no_mass_is_refused() {
        for text in [
            "",
            "-",
            ".",
            "20.",
            ".5",
            "20.0",
            "020",
            "+20",
            "-0",
            "20,5",
            "20 kg",
            "2e1",
            "1.5.5",
            "0.0000000000001",
            "9223373",
            "٢٠",
        ] {
            assert_eq!(Mass::read(text), None, "{text:?}");
        }
    }

    #[test]
    fn a_value_out_of_range_is_named() {
        let error = Reserve(41).back().unwrap_err();
        assert_eq!(error.to_string(), "41 is no number of half repetitions left: 0 to 40");
        assert!(Seconds(86_401).back().is_err());
        assert!(Distance(100_000_001).back().is_err());
        assert!(Length(50_001).back().is_err());
        assert!(Tempo("3-0-1".into()).back().is_err());
    }
}
