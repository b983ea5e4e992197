//! Repetitions, and ranges of anything that is counted.

use serde::{Deserialize, Serialize};

use super::bounds;
use super::unreadable::{Kind, Problem, Unreadable};

/// A number of repetitions of one set or part, 0 to 1000.
pub type Reps = u16;

/// From least to most, both included; a single value is a range of one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Range<T> {
    /// Least.
    pub from: T,
    /// Most.
    pub to: T,
}

/// A range of repetitions.
pub type RepRange = Range<Reps>;

impl<T: Copy + PartialOrd> Range<T> {
    /// A range of one value.
    pub const fn just(value: T) -> Self {
        Self { from: value, to: value }
    }

    /// Whether it is a single value.
    pub fn is_single(&self) -> bool {
        self.from >= self.to
    }

    /// Whether the value lies within.
    pub fn contains(&self, value: T) -> bool {
        value >= self.from && value <= self.to
    }
}

/// Splits `6-10` or `6–10` at its dash; the places stay slices of the text. A dash at the very
/// front is a sign, not a range.
pub(crate) fn split_range(text: &str) -> (&str, Option<&str>) {
    let dash = text
        .char_indices()
        .skip_while(|(_, c)| c.is_whitespace())
        .skip(1)
        .find(|(_, c)| matches!(c, '-' | '\u{2013}'));
    match dash {
        Some((at, c)) => (text.get(..at).unwrap_or_default(), text.get(at + c.len_utf8()..)),
        None => (text, None),
    }
}

impl RepRange {
    /// Reads `5`, `6-10` or `6–10`.
    ///
    /// # Errors
    /// [`Unreadable`] with the place and the problem; past 1000 too.
    pub fn read(text: &str) -> Result<Self, Unreadable> {
        let err = |place: &str, problem| Unreadable::at(Kind::Reps, text, place, problem);
        let one = |part: &str, tail: usize| -> Result<Reps, Unreadable> {
            // The place is counted from the end of the text, so what follows the part counts too.
            let offset = text.len() - tail - part.trim_start().len();
            let place = text.get(offset..).unwrap_or_default();
            let figures = part.trim();
            if figures.is_empty() {
                return Err(err(place, Problem::Empty));
            }
            if !figures.chars().all(|c| c.is_ascii_digit()) {
                return Err(err(place, Problem::NotANumber));
            }
            match figures.parse::<i64>() {
                Ok(value) if value <= bounds::REPS.greatest => {
                    Reps::try_from(value).map_err(|_| err(place, Problem::NotANumber))
                }
                _ => Err(err(
                    place,
                    Problem::TooLarge { greatest: bounds::REPS.greatest.to_string() },
                )),
            }
        };
        let (low, high) = split_range(text);
        match high {
            None => one(low, 0).map(Self::just),
            Some(high) => {
                let from = one(low, text.len() - low.len())?;
                let to = one(high, 0)?;
                if to < from {
                    return Err(err(high, Problem::Backwards));
                }
                Ok(Self { from, to })
            }
        }
    }

    /// `5` or `6–10`.
    pub fn print(self) -> String {
        if self.is_single() {
            self.from.to_string()
        } else {
            format!("{}–{}", self.from, self.to)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_single_and_range() {
        assert_eq!(RepRange::read("5"), Ok(Range::just(5)));
        assert_eq!(RepRange::read(" 6 - 10 "), Ok(Range { from: 6, to: 10 }));
        assert_eq!(RepRange::read("6–10").unwrap().print(), "6–10");
    }

    #[test]
    fn refuses_with_the_place() {
        for (text, at, problem) in [
            ("", 0, Problem::Empty),
            ("10-6", 3, Problem::Backwards),
            ("6-", 2, Problem::Empty),
            ("6-x", 2, Problem::NotANumber),
            ("x-6", 0, Problem::NotANumber),
            ("99999999999999999999", 0, Problem::TooLarge { greatest: "1000".into() }),
            ("-5", 0, Problem::NotANumber),
        ] {
            let err = RepRange::read(text).unwrap_err();
            assert_eq!((err.at, &err.problem), (at, &problem), "{text}");
        }
    }
}
