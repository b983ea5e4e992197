//! Local days as dates.

use chrono::NaiveDate;

/// The date of a day since 1970-01-01.
pub fn date(day: i32) -> Option<NaiveDate> {
    NaiveDate::from_ymd_opt(1970, 1, 1)?
        .checked_add_signed(chrono::TimeDelta::try_days(i64::from(day))?)
}
