//! Figures, and what is counted, as any language here writes them: numerals and units come with them.

use barwright_domain::call::{Amount, EffortScale, HowMany};
use barwright_domain::quantity::{
    Mass, MassUnit, Numerals, Percent, Range, Reserve, Rounding, Seconds,
};

/// A mass with its unit.
pub fn mass(mass: Mass, unit: MassUnit, numerals: Numerals) -> String {
    mass.print(unit, numerals)
}

/// An estimate to a tenth of its unit: more would be a fiction.
pub fn tenth(estimate: Mass, unit: MassUnit, numerals: Numerals) -> String {
    let step = Mass::from_nanograms(unit.nanograms() / 10);
    mass(estimate.to_multiple(step, Rounding::HalfEven).unwrap_or(estimate), unit, numerals)
}

/// An estimate in whole units, as it is said in a breath.
pub fn whole(estimate: Mass, unit: MassUnit, numerals: Numerals) -> String {
    let step = Mass::from_nanograms(unit.nanograms());
    mass(estimate.to_multiple(step, Rounding::HalfEven).unwrap_or(estimate), unit, numerals)
}

/// "1 set", "3 sets".
pub fn count(number: usize, one: &str, many: &str) -> String {
    format!("{number} {}", if number == 1 { one } else { many })
}

/// Figures one after the other, with a comma between; a semicolon where one of them has a comma
/// itself: "5; 2,5".
pub fn in_a_row(all: &[String]) -> String {
    let within = all.iter().any(|one| one.contains(','));
    all.join(if within { "; " } else { ", " })
}

/// The figure alone: "5", "30", "40".
pub fn figure(amount: &Amount, numerals: Numerals) -> String {
    match amount {
        Amount::Reps(reps) => reps.to_string(),
        Amount::Seconds(seconds) => seconds.count().to_string(),
        Amount::Metres(distance) => distance.print(numerals).trim_end_matches(" m").to_owned(),
    }
}

/// One value, or from least to most with the unit once: "30–45 s".
pub fn spread<T: Copy + PartialOrd>(range: Range<T>, print: impl Fn(T) -> String) -> String {
    let to = print(range.to);
    if range.is_single() {
        return to;
    }
    let from = print(range.from);
    match (from.rsplit_once(' '), to.rsplit_once(' ')) {
        (Some((figure, unit)), Some((_, same))) if unit == same => format!("{figure}–{to}"),
        _ => format!("{from}–{to}"),
    }
}

/// As [`how_many`], in the shorthand of a sheet: "5", "6–10", "30 s", "5+".
pub fn how_many_short(asked: &HowMany, numerals: Numerals) -> String {
    match asked {
        HowMany::Reps(range) => range.print(),
        HowMany::Seconds(range) => spread(*range, Seconds::print),
        HowMany::Metres(range) => spread(*range, |metres| metres.print(numerals)),
        HowMany::Open { at_least, .. } => format!("{at_least}+"),
    }
}

/// A countdown: "1:23", "0:05"; "+0:12" when over.
pub fn countdown(left_ms: i64) -> String {
    // A rest that is not over never shows nothing left: the last second counts as one.
    let over = left_ms <= 0;
    let seconds =
        if over { left_ms.unsigned_abs() / 1000 } else { left_ms.unsigned_abs().div_ceil(1000) };
    let sign = if over && seconds > 0 { "+" } else { "" };
    format!("{sign}{}:{:02}", seconds / 60, seconds % 60)
}

/// A text with its first letter large.
pub fn sentence_case(text: &str) -> String {
    let mut chars = text.chars();
    match chars.next() {
        Some(first) => first.to_uppercase().chain(chars).collect(),
        None => String::new(),
    }
}

/// The label of an effort key: "2", "5+"; in RPE "8", "5 or less" as "≤5".
pub fn effort_label(left: Reserve, most: bool, scale: EffortScale, numerals: Numerals) -> String {
    match (scale, most) {
        (EffortScale::Left, false) => left.print(numerals),
        (EffortScale::Left, true) => format!("{}+", left.print(numerals)),
        (EffortScale::Rpe, false) => left.rpe().print(numerals),
        (EffortScale::Rpe, true) => format!("≤{}", left.rpe().print(numerals)),
    }
}

/// Tenths, with their decimal place even where it is nought: "3.0", "3,5".
pub fn decimal(tenths: u64, numerals: Numerals) -> String {
    let mark = match numerals {
        Numerals::Point => '.',
        Numerals::Comma => ',',
    };
    format!("{}{mark}{}", tenths / 10, tenths % 10)
}

/// Tenths, with their decimal place where they have one: "3", "3.5", "2,7".
pub fn tenths(tenths: u64, numerals: Numerals) -> String {
    match tenths % 10 {
        0 => (tenths / 10).to_string(),
        _ => decimal(tenths, numerals),
    }
}

/// A change with its sign: "−2.5 %", "+4 %".
pub fn change(change: Percent, numerals: Numerals) -> String {
    let sign = if change.hundredths() < 0 { '\u{2212}' } else { '+' };
    let size = Percent::from_hundredths(change.hundredths().saturating_abs());
    format!("{sign}{}", size.print(numerals))
}

/// Half sets over so many weeks as sets a week, to the nearest tenth.
pub fn a_week(halves: u32, weeks: usize, numerals: Numerals) -> String {
    let weeks = u64::try_from(weeks).unwrap_or(1).max(1);
    tenths((u64::from(halves) * 10 + weeks) / (2 * weeks), numerals)
}

/// Half sets as sets: "3", "3.5".
pub fn sets(halves: u32, numerals: Numerals) -> String {
    tenths(u64::from(halves) * 5, numerals)
}
