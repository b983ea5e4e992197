//! Dates in words.

use chrono::Datelike;

use crate::phrase::written::days::date;

/// As [`day`], with its year where it lies more than eleven months from today: "Wed 25 Nov 2025".
pub fn dated(of: i32, today: Option<i32>) -> String {
    let far = today.is_some_and(|today| of.abs_diff(today) > ELEVEN_MONTHS);
    match date(of).filter(|_| far) {
        Some(date) => format!("{} {}", day(of), date.year()),
        None => day(of),
    }
}

/// In days, the shortest that eleven months can be: from then on a month may be either year's.
const ELEVEN_MONTHS: u32 = 334;

/// "Wed 25 Nov" for days since 1970-01-01.
pub fn day(day: i32) -> String {
    match date(day) {
        Some(date) => format!(
            "{} {} {}",
            WEEKDAYS.get(date.weekday().num_days_from_monday() as usize).unwrap_or(&""),
            date.day(),
            MONTHS.get(date.month0() as usize).unwrap_or(&"")
        ),
        None => String::new(),
    }
}

/// "Wed 25 Nov 2026".
pub fn in_full(of: i32) -> String {
    date(of).map(|date| format!("{} {}", day(of), date.year())).unwrap_or_default()
}

/// "Monday".
pub fn weekday(day: chrono::Weekday) -> &'static str {
    match day {
        chrono::Weekday::Mon => "Monday",
        chrono::Weekday::Tue => "Tuesday",
        chrono::Weekday::Wed => "Wednesday",
        chrono::Weekday::Thu => "Thursday",
        chrono::Weekday::Fri => "Friday",
        chrono::Weekday::Sat => "Saturday",
        chrono::Weekday::Sun => "Sunday",
    }
}

const WEEKDAYS: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
const MONTHS: [&str; 12] =
    ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_date_far_off_has_its_year() {
        // 2026-11-25 is the 20 782nd day.
        let today = Some(20_782);
        assert_eq!(dated(20_782, today), "Wed 25 Nov");
        assert_eq!(dated(20_782 - 334, today), "Fri 26 Dec");
        assert_eq!(dated(20_782 - 335, today), "Thu 25 Dec 2025");
        assert_eq!(dated(20_782 + 365, today), "Thu 25 Nov 2027");
        assert_eq!(dated(20_782 - 3_650, None), "Sun 27 Nov");
    }
}
