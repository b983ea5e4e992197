//! Local days as dates.

use chrono::NaiveDate;

/// The date of a day since 1970-01-01.
pub fn date(day: i32) -> Option<NaiveDate> {
    NaiveDate::from_epoch_days(day)
}
