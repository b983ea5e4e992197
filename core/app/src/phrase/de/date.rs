//! Dates in words.

use chrono::Datelike;

use crate::phrase::written::days::date;

/// As [`day`], with its year where it lies more than eleven months from today: "Mi., 25. Nov.
/// 2025".
pub fn dated(of: i32, today: Option<i32>) -> String {
    let far = today.is_some_and(|today| of.abs_diff(today) > ELEVEN_MONTHS);
    match date(of).filter(|_| far) {
        Some(date) => format!("{} {}", day(of), date.year()),
        None => day(of),
    }
}

/// In days, the shortest that eleven months can be: from then on a month may be either year's.
const ELEVEN_MONTHS: u32 = 334;

/// "Mi., 25. Nov." for days since 1970-01-01.
pub fn day(day: i32) -> String {
    match date(day) {
        Some(date) => format!(
            "{}, {}. {}",
            WEEKDAYS.get(date.weekday().num_days_from_monday() as usize).unwrap_or(&""),
            date.day(),
            MONTHS.get(date.month0() as usize).unwrap_or(&"")
        ),
        None => String::new(),
    }
}

/// "Mi., 25. Nov. 2026".
pub fn in_full(of: i32) -> String {
    date(of).map(|date| format!("{} {}", day(of), date.year())).unwrap_or_default()
}

/// "Montag".
pub fn weekday(day: chrono::Weekday) -> &'static str {
    match day {
        chrono::Weekday::Mon => "Montag",
        chrono::Weekday::Tue => "Dienstag",
        chrono::Weekday::Wed => "Mittwoch",
        chrono::Weekday::Thu => "Donnerstag",
        chrono::Weekday::Fri => "Freitag",
        chrono::Weekday::Sat => "Samstag",
        chrono::Weekday::Sun => "Sonntag",
    }
}

const WEEKDAYS: [&str; 7] = ["Mo.", "Di.", "Mi.", "Do.", "Fr.", "Sa.", "So."];
/// Short names have no point.
const MONTHS: [&str; 12] = [
    "Jan.", "Feb.", "März", "Apr.", "Mai", "Juni", "Juli", "Aug.", "Sept.", "Okt.", "Nov.", "Dez.",
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_date_far_off_has_its_year() {
        // 2026-11-25 is the 20 782nd day.
        let today = Some(20_782);
        assert_eq!(dated(20_782, today), "Mi., 25. Nov.");
        assert_eq!(dated(20_782 - 334, today), "Fr., 26. Dez.");
        assert_eq!(dated(20_782 - 335, today), "Do., 25. Dez. 2025");
        assert_eq!(dated(20_782 + 365, today), "Do., 25. Nov. 2027");
        assert_eq!(dated(20_782 - 155, today), "Di., 23. Juni");
        assert_eq!(dated(20_782 - 3_650, None), "So., 27. Nov.");
    }
}
