//! The cells of a row: numbers, loads, units, words.

use super::model::DistanceUnit;
use crate::call::Side;
use crate::quantity::{Decimal, divide, take};
use crate::quantity::{
    Distance, Mass, MassUnit, Numerals, Reps, Reserve, Rounding, Rpe, Seconds, bounds,
};
use crate::session::SetKind;

/// Decimals that a table's number is rounded to: what a spreadsheet adds beyond them is noise.
const DECIMALS: u32 = 4;

/// What stands for the body alone.
const BODY: &[&str] =
    &["bodyweight", "body weight", "body", "bw", "körpergewicht", "eigengewicht", "kgw"];

const KILOGRAM: &[&str] =
    &["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramm", "kilogramme"];
const POUND: &[&str] = &["lb", "lbs", "pound", "pounds"];

const WARM_UP: &[&str] = &[
    "w",
    "wu",
    "warm-up",
    "warm up",
    "warmup",
    "warm-up set",
    "warm up set",
    "ramp",
    "ramp-up",
    "aufwärmen",
    "aufwärmsatz",
    "aufwärmsätze",
    "aw",
];
const WORK: &[&str] = &[
    "work",
    "working",
    "work set",
    "working set",
    "normal",
    "regular",
    "top",
    "top set",
    "back-off",
    "back_off",
    "back off",
    "backoff",
    "test",
    "speed",
    "drop",
    "drop set",
    "dropset",
    "failure",
    "arbeit",
    "arbeitssatz",
    "arbeitssätze",
    "topsatz",
    "back-off-satz",
    "dropsatz",
];
const LEFT: &[&str] = &["left", "l", "links", "li"];
const RIGHT: &[&str] = &["right", "r", "rechts", "re"];
const BOTH: &[&str] = &["both", "together", "beide", "beidseitig", "b"];

/// The unit that a word names.
pub(super) fn mass_unit(text: &str) -> Option<MassUnit> {
    let word = text.trim().trim_end_matches('.').to_lowercase();
    match word.as_str() {
        unit if KILOGRAM.contains(&unit) => Some(MassUnit::Kilogram),
        unit if POUND.contains(&unit) => Some(MassUnit::Pound),
        _ => None,
    }
}

/// What a load's cell says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Loaded {
    /// Nothing.
    Empty,
    /// The body, with so much more or less.
    Body(Mass),
    /// So much.
    Mass(Mass),
}

/// `80`, `80,5`, `175 lb`, `BW`, `BW+10`: in `unit` where none stands beside it.
pub(super) fn load(text: &str, unit: MassUnit, numerals: Numerals) -> Option<Loaded> {
    let text = text.trim();
    if text.is_empty() {
        return Some(Loaded::Empty);
    }
    let small = text.to_lowercase();
    for word in BODY {
        if let Some(more) = small.strip_prefix(word) {
            let more = more.trim();
            if more.is_empty() {
                return Some(Loaded::Body(Mass::ZERO));
            }
            if more.starts_with(['+', '-', '\u{2212}']) {
                // A sign may stand apart from its number.
                let more: String = more.chars().filter(|c| !c.is_whitespace()).collect();
                return mass(&more, unit, numerals).map(Loaded::Body);
            }
        }
    }
    mass(text, unit, numerals).map(Loaded::Mass)
}

fn mass(text: &str, unit: MassUnit, numerals: Numerals) -> Option<Mass> {
    let end = text.find(char::is_alphabetic).unwrap_or(text.len());
    let (number, word) = text.split_at_checked(end)?;
    let unit = if word.is_empty() { unit } else { mass_unit(word)? };
    let number = decimal(number, numerals)?;
    let nanograms = number.value.checked_mul(unit.nanograms().into())?;
    let nanograms = divide(nanograms, 10_i128.checked_pow(number.decimals)?, Rounding::HalfEven)?;
    bounds::MASS
        .holds(nanograms)
        .then(|| i64::try_from(nanograms).ok())
        .flatten()
        .map(Mass::from_nanograms)
}

/// Whether a cell has a number that is nothing.
pub(super) fn is_nothing(text: &str) -> bool {
    decimal(&halves(text), Numerals::Point).is_some_and(|number| number.value == 0)
}

/// Whether a cell has nothing but a dash, which says that there is nothing.
pub(super) fn is_dash(text: &str) -> bool {
    ["-", "–", "—", "−"].contains(&text)
}

/// A number to [`DECIMALS`] decimals. With a decimal comma, a point before three last digits could
/// be either: it is not read.
pub(super) fn decimal(text: &str, numerals: Numerals) -> Option<Decimal> {
    let text = text.trim();
    let thousands = |part: &str| part.len() == 3 && part.chars().all(|c| c.is_ascii_digit());
    if numerals == Numerals::Comma && text.rsplit_once('.').is_some_and(|(_, end)| thousands(end)) {
        return None;
    }
    // No more digits than are read: those of a spreadsheet's float go on for ever.
    let mark = text.find(['.', ',']);
    let kept = mark.and_then(|mark| text.get(..mark + 13)).filter(|_| {
        let digits = mark.and_then(|mark| text.get(mark + 1..)).unwrap_or_default();
        !digits.is_empty() && digits.chars().all(|c| c.is_ascii_digit())
    });
    let (number, rest) = take(kept.unwrap_or(text), numerals).ok()?;
    if !rest.is_empty() {
        return None;
    }
    if number.decimals <= DECIMALS {
        return Some(number);
    }
    let by = 10_i128.checked_pow(number.decimals - DECIMALS)?;
    let value = divide(number.value, by, Rounding::HalfEven)?;
    Some(Decimal { value, decimals: DECIMALS })
}

/// A whole number, also as a spreadsheet writes it: `5.0`.
fn whole(text: &str, numerals: Numerals) -> Option<u32> {
    u32::try_from(decimal(text, numerals)?.scaled(0)?).ok()
}

/// Repetitions.
pub(super) fn reps(text: &str, numerals: Numerals) -> Option<Reps> {
    let reps = whole(text, numerals)?;
    bounds::REPS.holds(reps.into()).then(|| Reps::try_from(reps).ok()).flatten()
}

/// How many sets.
pub(super) fn count(text: &str, numerals: Numerals) -> Option<u16> {
    u16::try_from(whole(text, numerals)?).ok()
}

/// A duration: bare numbers are seconds.
pub(super) fn seconds(text: &str, numerals: Numerals) -> Option<Seconds> {
    let text = text.trim();
    match decimal(text, numerals) {
        Some(number) => {
            let one = 10_i128.checked_pow(number.decimals)?;
            let seconds = divide(number.value, one, Rounding::HalfEven)?;
            bounds::SECONDS
                .holds(seconds)
                .then(|| u32::try_from(seconds).ok())
                .flatten()
                .map(Seconds::new)
        }
        None => Seconds::read(text).ok(),
    }
}

/// A distance: `40`, `40 m`.
pub(super) fn distance(text: &str, unit: DistanceUnit, numerals: Numerals) -> Option<Distance> {
    let end = text.find(char::is_alphabetic).unwrap_or(text.len());
    let (number, word) = text.split_at_checked(end)?;
    let unit = match word.trim().to_lowercase().as_str() {
        "" => unit,
        "m" | "metres" | "meters" | "meter" | "metre" => DistanceUnit::Metre,
        "km" => DistanceUnit::Kilometre,
        "ft" | "feet" => DistanceUnit::Foot,
        "yd" | "yds" | "yards" => DistanceUnit::Yard,
        "mi" | "miles" => DistanceUnit::Mile,
        _ => return None,
    };
    let number = decimal(number, numerals)?;
    let tenths = number.value.checked_mul(unit.tenths().into())?;
    let by = 10_i128.checked_pow(number.decimals)?.checked_mul(10)?;
    let millimetres = divide(tenths, by, Rounding::HalfEven)?;
    bounds::DISTANCE
        .holds(millimetres)
        .then(|| u32::try_from(millimetres).ok())
        .flatten()
        .map(Distance::from_millimetres)
}

/// A decimal comma is read as what it is whatever else numbers have: halves are never thousands.
fn halves(text: &str) -> String {
    text.trim().replace(',', ".")
}

/// Repetitions left, by halves.
pub(super) fn left(text: &str) -> Option<Reserve> {
    Reserve::read(&halves(text), Numerals::Point).ok()
}

/// An RPE, by halves.
pub(super) fn rpe(text: &str) -> Option<Rpe> {
    Rpe::read(&halves(text), Numerals::Point).ok()
}

/// Whether a word is among others, however it is written.
fn among<'a>(word: &str, mut words: impl Iterator<Item = &'a str>) -> bool {
    let word = word.trim().to_lowercase();
    words.any(|known| known.trim().to_lowercase() == word)
}

/// What a word says that a set was for.
pub(super) fn kind(text: &str, warm_up: &[String], work: &[String]) -> Option<SetKind> {
    let known = |known: &[&str]| among(text, known.iter().copied());
    let own = |own: &[String]| among(text, own.iter().map(String::as_str));
    // What the lifter says of a word goes before what is usual.
    match () {
        () if own(warm_up) => Some(SetKind::Ramp),
        () if own(work) => Some(SetKind::Work),
        () if known(WARM_UP) => Some(SetKind::Ramp),
        () if known(WORK) => Some(SetKind::Work),
        () => None,
    }
}

/// The side that a word names; none within for both.
pub(super) fn side(text: &str, left: &[String], right: &[String]) -> Option<Option<Side>> {
    let own = |own: &[String]| among(text, own.iter().map(String::as_str));
    let known = |known: &[&str]| among(text, known.iter().copied());
    match () {
        () if text.trim().is_empty() => Some(None),
        () if own(left) || (!own(right) && known(LEFT)) => Some(Some(Side::Left)),
        () if own(right) || known(RIGHT) => Some(Some(Side::Right)),
        () if known(BOTH) => Some(None),
        () => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn kg(text: &str) -> Mass {
        Mass::read(text, Numerals::Point).unwrap()
    }

    #[test]
    fn loads_as_people_write_them() {
        let (point, comma) = (Numerals::Point, Numerals::Comma);
        for (text, unit, numerals, is) in [
            ("80", MassUnit::Kilogram, point, Some(Loaded::Mass(kg("80 kg")))),
            ("80,5", MassUnit::Kilogram, comma, Some(Loaded::Mass(kg("80.5 kg")))),
            ("80.5 kg", MassUnit::Pound, comma, Some(Loaded::Mass(kg("80.5 kg")))),
            ("175lbs", MassUnit::Kilogram, point, Some(Loaded::Mass(kg("175 lb")))),
            ("82.50000000000001", MassUnit::Kilogram, point, Some(Loaded::Mass(kg("82.5 kg")))),
            ("82.49999999999999", MassUnit::Kilogram, point, Some(Loaded::Mass(kg("82.5 kg")))),
            ("-20", MassUnit::Kilogram, point, Some(Loaded::Mass(kg("-20 kg")))),
            ("", MassUnit::Kilogram, point, Some(Loaded::Empty)),
            ("BW", MassUnit::Kilogram, point, Some(Loaded::Body(Mass::ZERO))),
            ("Körpergewicht + 10 kg", MassUnit::Pound, comma, Some(Loaded::Body(kg("10 kg")))),
            ("80,5", MassUnit::Kilogram, point, None),
            ("1.250", MassUnit::Kilogram, comma, None),
            ("1.250,5", MassUnit::Kilogram, comma, None),
            ("80 stone", MassUnit::Kilogram, point, None),
            ("5001", MassUnit::Kilogram, point, None),
            ("99999999999999999999999999", MassUnit::Kilogram, point, None),
            ("heavy", MassUnit::Kilogram, point, None),
            ("=80+2", MassUnit::Kilogram, point, None),
        ] {
            assert_eq!(load(text, unit, numerals), is, "{text}");
        }
    }

    #[test]
    fn amounts_and_efforts() {
        let point = Numerals::Point;
        assert_eq!(reps("5.0", point), Some(5));
        assert_eq!(["5.5", "1001", "-1", "8/8", ""].map(|text| reps(text, point)), [None; 5]);
        assert_eq!(seconds("90", point), Some(Seconds::new(90)));
        assert_eq!(seconds("1:30", point), Some(Seconds::new(90)));
        assert_eq!(seconds("90000", point), None);
        let metres = |text| distance(text, DistanceUnit::Mile, point).map(Distance::millimetres);
        assert_eq!(
            [metres("1"), metres("0.4 km"), metres("40m")],
            [Some(1_609_344), Some(400_000), Some(40_000)]
        );
        assert_eq!([metres("40 parsecs"), metres("100")], [None, None]);
        assert_eq!(rpe("8,5").map(Rpe::reserve), Reserve::from_halves(3));
        assert_eq!([rpe("0"), rpe("8.3"), rpe("11")], [None; 3]);
        assert_eq!(["0", "0,0", "1", ""].map(is_nothing), [true, true, false, false]);
        assert_eq!(left("1.5"), Reserve::from_halves(3));
    }

    #[test]
    fn words_of_sets_and_sides() {
        let own = ["x".to_owned()];
        assert_eq!(kind("Aufwärmsatz", &[], &[]), Some(SetKind::Ramp));
        assert_eq!(kind("Back-Off", &[], &[]), Some(SetKind::Work));
        assert_eq!(kind("x", &[], &[]), None);
        assert_eq!(kind("X", &own, &[]), Some(SetKind::Ramp));
        assert_eq!(kind("w", &[], &["W".to_owned()]), Some(SetKind::Work));
        assert_eq!(side("Links", &[], &[]), Some(Some(Side::Left)));
        assert_eq!(side("l", &[], &["L".to_owned()]), Some(Some(Side::Right)));
        assert_eq!(side("", &[], &[]), Some(None));
        assert_eq!(side("up", &[], &[]), None);
    }
}
