//! Decimal numbers read and printed exactly, without a float in between.

use serde::{Deserialize, Serialize};

use super::unreadable::Problem;

/// How numbers are written: with a decimal point or a decimal comma.
///
/// A point is read everywhere; a comma only where it is the custom, since elsewhere it separates
/// thousands and `1,250` would be read a thousandfold wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Numerals {
    /// `142.5`
    #[default]
    Point,
    /// `142,5`
    Comma,
}

impl Numerals {
    /// The mark between whole and part.
    pub fn mark(self) -> char {
        match self {
            Self::Point => '.',
            Self::Comma => ',',
        }
    }
}

/// A decimal number as digits and a power of ten: `value / 10^decimals`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Decimal {
    pub(crate) value: i128,
    pub(crate) decimals: u32,
}

impl Decimal {
    /// The number in units of `10^-digits`, or `None` if that would lose a digit.
    pub(crate) fn scaled(self, digits: u32) -> Option<i128> {
        if self.decimals <= digits {
            self.value.checked_mul(10_i128.checked_pow(digits - self.decimals)?)
        } else {
            let by = 10_i128.checked_pow(self.decimals - digits)?;
            (self.value % by == 0).then_some(self.value / by)
        }
    }
}

/// Reads an optional sign and a decimal number from the front of `text`; gives it and what follows.
///
/// At most 12 digits stand before the mark and 12 after it, so nothing here can overflow.
pub(crate) fn take(text: &str, numerals: Numerals) -> Result<(Decimal, &str), Problem> {
    let (negative, mut rest) = match text.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => (true, rest),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    };
    let mut value: i128 = 0;
    let (mut whole, mut decimals) = (0_u32, 0_u32);
    let mut marked = false;
    let mut chars = rest.chars();
    loop {
        let before = chars.as_str();
        let Some(c) = chars.next() else {
            rest = before;
            break;
        };
        if let Some(digit) = c.to_digit(10) {
            if marked {
                decimals += 1;
            } else {
                whole += 1;
            }
            if whole > 12 || decimals > 12 {
                return Err(Problem::TooFine);
            }
            value = value * 10 + i128::from(digit);
        } else if !marked && whole > 0 && (c == '.' || c == ',') {
            if c == ',' && numerals == Numerals::Point {
                return Err(Problem::CommaHere);
            }
            if !chars.as_str().starts_with(|next: char| next.is_ascii_digit()) {
                return Err(Problem::NotANumber);
            }
            marked = true;
        } else {
            rest = before;
            break;
        }
    }
    if whole == 0 {
        return Err(Problem::NotANumber);
    }
    Ok((Decimal { value: if negative { -value } else { value }, decimals }, rest))
}

/// Prints `value / 10^digits` with as few decimals as it takes, and at least `least` of them. At most 12 digits.
pub(crate) fn print(value: i128, digits: u32, least: usize, numerals: Numerals) -> String {
    let sign = if value < 0 { "-" } else { "" };
    let size = value.unsigned_abs();
    let scale = 10_u64.pow(digits);
    // Nearly every number fits in 64 bits, where division is many times faster.
    let (whole, mut part) = match u64::try_from(size) {
        Ok(size) => (u128::from(size / scale), size % scale),
        Err(_) => {
            let scale = u128::from(scale);
            (size / scale, u64::try_from(size % scale).unwrap_or_default())
        }
    };
    let mut kept = digits as usize;
    while kept > least && part.is_multiple_of(10) {
        part /= 10;
        kept -= 1;
    }
    if kept == 0 {
        format!("{sign}{whole}")
    } else {
        format!("{sign}{whole}{}{part:0kept$}", numerals.mark())
    }
}
