//! Tempo: lowering – pause – lifting – pause.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::bounds;
use super::decimal::{self, Numerals};
use super::unreadable::{Kind, Problem, Unreadable};

/// One phase of a repetition.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Phase {
    /// So many tenths of a second, to 60 s.
    Tenths(u16),
    /// As fast as possible, written `X`; counted as one second.
    Fast,
}

/// Lowering, pause at the bottom, lifting, pause at the top: `3-0-1-0`, `2-1-X-0`
/// (textbook convention; Wilk et al. 2018, J Hum Kinet 62:241–250).
///
/// Serialised as written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Tempo {
    /// Lowering.
    pub lowering: Phase,
    /// Pause after lowering.
    pub low_pause: Phase,
    /// Lifting.
    pub lifting: Phase,
    /// Pause after lifting.
    pub high_pause: Phase,
}

impl Phase {
    const fn tenths(self) -> u32 {
        match self {
            Self::Tenths(tenths) => tenths as u32,
            Self::Fast => 10,
        }
    }
}

impl Tempo {
    /// Reads four phases with dashes or slashes between.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem.
    pub fn read(text: &str) -> Result<Self, Unreadable> {
        let mut phases = [Phase::Tenths(0); 4];
        let mut slots = phases.iter_mut();
        let mut place = text;
        let err = |place: &str, problem| Unreadable::at(Kind::Tempo, text, place, problem);
        if text.trim().is_empty() {
            return Err(err(text, Problem::Empty));
        }
        loop {
            let cut = place.find(['-', '/', '\u{2013}']).unwrap_or(place.len());
            let (part, rest) = place.split_at_checked(cut).unwrap_or((place, ""));
            let slot = slots.next().ok_or_else(|| err(place, Problem::FourPhases))?;
            *slot = phase(part.trim()).map_err(|problem| err(place, problem))?;
            let mut chars = rest.chars();
            if chars.next().is_none() {
                break;
            }
            place = chars.as_str();
        }
        if slots.next().is_some() {
            return Err(err("", Problem::FourPhases));
        }
        let [lowering, low_pause, lifting, high_pause] = phases;
        Ok(Self { lowering, low_pause, lifting, high_pause })
    }

    /// Tenths of a second that one repetition takes; `X` counts as a second.
    pub const fn rep_tenths(self) -> u32 {
        self.lowering.tenths()
            + self.low_pause.tenths()
            + self.lifting.tenths()
            + self.high_pause.tenths()
    }
}

fn phase(part: &str) -> Result<Phase, Problem> {
    if part.eq_ignore_ascii_case("x") {
        return Ok(Phase::Fast);
    }
    if part.is_empty() {
        return Err(Problem::Empty);
    }
    let (number, rest) = decimal::take(part, Numerals::Point)?;
    if !rest.is_empty() {
        return Err(Problem::Trailing);
    }
    let tenths = number.scaled(1).ok_or(Problem::TooFine)?;
    if !bounds::PHASE.holds(tenths) {
        return Err(Problem::TooLarge { greatest: "60".into() });
    }
    u16::try_from(tenths).map(Phase::Tenths).map_err(|_| Problem::NotANumber)
}

impl fmt::Display for Phase {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Fast => f.write_str("X"),
            Self::Tenths(tenths) => {
                f.write_str(&decimal::print(i128::from(*tenths), 1, 0, Numerals::Point))
            }
        }
    }
}

impl fmt::Display for Tempo {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{}-{}-{}", self.lowering, self.low_pause, self.lifting, self.high_pause)
    }
}

impl Serialize for Tempo {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Tempo {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::read(&text).map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn prints_what_it_read() {
        for text in ["3-0-1-0", "2-1-X-0", "4-0.5-1-0"] {
            assert_eq!(Tempo::read(text).unwrap().to_string(), text);
        }
        assert_eq!(Tempo::read("2/0/2/0").unwrap().to_string(), "2-0-2-0");
    }

    #[test]
    fn refuses_with_the_place() {
        for (text, at, problem) in [
            ("3-0-1", 5, Problem::FourPhases),
            ("3-0-1-0-2", 8, Problem::FourPhases),
            ("3--1-0", 2, Problem::Empty),
            ("3-0-fast-0", 4, Problem::NotANumber),
            ("3-0-1-99", 6, Problem::TooLarge { greatest: "60".into() }),
        ] {
            let err = Tempo::read(text).unwrap_err();
            assert_eq!((err.at, &err.problem), (at, &problem), "{text}");
        }
    }
}
