//! Dates in words.

use chrono::{Datelike, NaiveDate};

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

fn date(day: i32) -> Option<NaiveDate> {
    NaiveDate::from_ymd_opt(1970, 1, 1)?
        .checked_add_signed(chrono::TimeDelta::try_days(i64::from(day))?)
}
