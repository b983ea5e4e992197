//! Lengths on the bar: sleeves and the thickness of plates.

use serde::{Deserialize, Serialize};

use super::bounds;
use super::decimal::{self, Numerals};
use super::unreadable::{Kind, Problem, Unreadable};

/// A length in tenths of a millimetre, to 5 m.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize,
)]
#[serde(transparent)]
pub struct Length(u16);

impl Length {
    /// So many tenths of a millimetre; more than 5 m is cut to it.
    pub const fn from_tenths(tenths: u16) -> Self {
        let most = bounds::LENGTH.greatest as u16;
        Self(if tenths > most { most } else { tenths })
    }

    /// Tenths of a millimetre.
    pub const fn tenths(self) -> u16 {
        self.0
    }

    /// Reads `415 mm`, `22.5mm`.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem.
    pub fn read(text: &str, numerals: Numerals) -> Result<Self, Unreadable> {
        let err = |place: &str, problem| Unreadable::at(Kind::Length, text, place, problem);
        let start = text.trim_start();
        if start.is_empty() {
            return Err(err(start, Problem::Empty));
        }
        let (number, rest) =
            decimal::take(start, numerals).map_err(|problem| err(start, problem))?;
        let place = rest.trim_start();
        match place.trim_end() {
            "mm" => {}
            "" => return Err(err(place, Problem::MissingUnit)),
            _ => return Err(err(place, Problem::UnknownUnit)),
        }
        let tenths = number.scaled(1).ok_or_else(|| err(start, Problem::TooFine))?;
        if tenths < i128::from(bounds::LENGTH.least) {
            return Err(err(start, Problem::TooSmall { least: "0 mm".into() }));
        }
        match u16::try_from(tenths) {
            Ok(value) if bounds::LENGTH.holds(tenths) => Ok(Self(value)),
            _ => Err(err(start, Problem::TooLarge { greatest: "5000 mm".into() })),
        }
    }

    /// `22.5 mm`.
    pub fn print(self, numerals: Numerals) -> String {
        format!("{} mm", decimal::print(i128::from(self.0), 1, 0, numerals))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_and_prints() {
        for (text, tenths) in [("415 mm", 4_150), ("22.5mm", 225), ("0 mm", 0)] {
            assert_eq!(Length::read(text, Numerals::Point).unwrap().tenths(), tenths, "{text}");
        }
        assert_eq!(Length::from_tenths(225).print(Numerals::Comma), "22,5 mm");
        for (text, problem) in [
            ("41.5", Problem::MissingUnit),
            ("41.5 cm", Problem::UnknownUnit),
            ("22.25 mm", Problem::TooFine),
            ("-1 mm", Problem::TooSmall { least: "0 mm".into() }),
            ("5001 mm", Problem::TooLarge { greatest: "5000 mm".into() }),
        ] {
            let err = Length::read(text, Numerals::Point).unwrap_err();
            assert_eq!(err.problem, problem, "{text}");
        }
    }
}
