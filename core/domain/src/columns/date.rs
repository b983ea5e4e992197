//! Dates and times as tables write them.

use chrono::format::{Item, Parsed, StrftimeItems, parse_and_remainder};
use chrono::{NaiveDate, NaiveTime};

/// How a table writes dates. A month by its name, in English or German, stands in any place where
/// the day or the month comes first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Dates {
    /// `2026-03-04`
    Iso,
    /// `04.03.2026`
    DayFirst,
    /// `03/04/2026`
    MonthFirst,
    /// A pattern of chrono's, as `strftime` has them: `%d.%m.%y`.
    Pattern(String),
}

/// Why a date is none that can be taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Undated {
    /// It is none in this form.
    Unread,
    /// It lies before 1970.
    TooEarly,
    /// It lies after today.
    Future,
}

/// Beginnings of the months' names, English and German.
const MONTHS: [&[&str]; 12] = [
    &["jan", "jän"],
    &["feb"],
    &["mar", "mär", "mrz", "maer"],
    &["apr"],
    &["may", "mai"],
    &["jun"],
    &["jul"],
    &["aug"],
    &["sep"],
    &["oct", "okt"],
    &["nov"],
    &["dec", "dez"],
];

impl Dates {
    /// A pattern; none where it is no pattern of a day.
    pub(super) fn pattern(pattern: &str) -> Option<Self> {
        let sound = StrftimeItems::new(pattern).all(|item| item != Item::Error);
        sound.then(|| Self::Pattern(pattern.to_owned()))
    }

    /// The local day, in days since 1970-01-01, and the minute of that day where the cell has a time.
    /// A year of two digits is the last such one that is not after `today`.
    ///
    /// # Errors
    /// [`Undated`].
    pub fn read(&self, text: &str, today: i32) -> Result<(i32, Option<u16>), Undated> {
        let text = text.trim();
        let (date, minute) = match self {
            Self::Pattern(pattern) => by_pattern(text, pattern),
            Self::Iso | Self::DayFirst | Self::MonthFirst => self.by_order(text, today),
        }
        .ok_or(Undated::Unread)?;
        match date.to_epoch_days() {
            day if day < 0 => Err(Undated::TooEarly),
            day if day > today => Err(Undated::Future),
            day => Ok((day, minute)),
        }
    }

    fn by_order(&self, text: &str, today: i32) -> Option<(NaiveDate, Option<u16>)> {
        let (parts, rest) = three_parts(text)?;
        let minute = match rest.trim_matches(|c: char| c.is_whitespace() || c == 'T' || c == ',') {
            "" => None,
            time => Some(clock(time)?),
        };
        let [one, two, three] = parts;
        let year = |part: &str| year(part, today);
        let named = parts.iter().position(|part| month_named(part).is_some());
        let date = match (self, named) {
            (Self::DayFirst | Self::MonthFirst, Some(at)) => {
                let month = month_named(parts.get(at)?)?;
                // Four digits are the year; otherwise it is the last.
                let (day, of) = match at {
                    0 => (two, three),
                    1 if one.len() == 4 => (three, one),
                    1 => (one, three),
                    _ => return None,
                };
                NaiveDate::from_ymd_opt(year(of)?, month, number(day)?)
            }
            (Self::Iso, None) if one.len() == 4 => {
                NaiveDate::from_ymd_opt(year(one)?, number(two)?, number(three)?)
            }
            (Self::DayFirst, None) => {
                NaiveDate::from_ymd_opt(year(three)?, number(two)?, number(one)?)
            }
            (Self::MonthFirst, None) => {
                NaiveDate::from_ymd_opt(year(three)?, number(one)?, number(two)?)
            }
            (Self::Iso | Self::Pattern(_), _) => None,
        }?;
        Some((date, minute))
    }
}

fn by_pattern(text: &str, pattern: &str) -> Option<(NaiveDate, Option<u16>)> {
    let mut parsed = Parsed::new();
    let rest = parse_and_remainder(&mut parsed, text, StrftimeItems::new(pattern)).ok()?;
    let date = parsed.to_naive_date().ok()?;
    let minute = match rest.trim() {
        "" => parsed.to_naive_time().ok().and_then(minute_of),
        time => Some(clock(time)?),
    };
    Some((date, minute))
}

fn minute_of(time: NaiveTime) -> Option<u16> {
    let seconds = time.signed_duration_since(NaiveTime::MIN).num_seconds();
    u16::try_from(seconds / 60).ok()
}

/// The three parts of a date, and what stands behind them.
fn three_parts(text: &str) -> Option<([&str; 3], &str)> {
    // A weekday before it says nothing more: "Mon, 2 Mar 2026".
    let text = match text.split_once([' ', ',']) {
        Some((word, rest))
            if word.chars().all(|c| c.is_alphabetic() || c == '.')
                && month_named(word).is_none() =>
        {
            rest.trim_start_matches([' ', ','])
        }
        _ => text,
    };
    let mut rest = text;
    let mut part = || {
        rest = rest.trim_start_matches(|c: char| c == ' ' || "./-,".contains(c));
        let digits = rest.starts_with(|c: char| c.is_ascii_digit());
        let end =
            rest.find(|c: char| if digits { !c.is_ascii_digit() } else { !c.is_alphabetic() });
        let (part, behind) = rest.split_at_checked(end.unwrap_or(rest.len()))?;
        rest = behind;
        (!part.is_empty()).then_some(part)
    };
    let parts = [part()?, part()?, part()?];
    Some((parts, rest))
}

fn number(part: &str) -> Option<u32> {
    (part.len() <= 2).then(|| part.parse().ok()).flatten()
}

/// A year of four digits, or of two: the last such one that is not after today's.
fn year(part: &str, today: i32) -> Option<i32> {
    let number: i32 = part.parse().ok()?;
    match part.len() {
        4 => Some(number),
        2 => {
            let now = i32::try_from(1970 + i64::from(today) / 365).ok()?;
            let of_now = now - now.rem_euclid(100) + number;
            Some(if of_now > now { of_now - 100 } else { of_now })
        }
        _ => None,
    }
}

fn month_named(part: &str) -> Option<u32> {
    let part = part.to_lowercase();
    let at = MONTHS.iter().position(|names| {
        names.iter().any(|name| part.starts_with(name)) && part.chars().all(char::is_alphabetic)
    })?;
    u32::try_from(at + 1).ok()
}

/// The minute of the day of `18:05`, `18:05:30`, `18.05 Uhr`, `6:05 pm`, `18:05:00Z`.
pub(super) fn clock(text: &str) -> Option<u16> {
    let text = text.trim();
    let (hour, rest) = text.split_once([':', '.'])?;
    let pointed = text.get(hour.len()..).is_some_and(|mark| mark.starts_with('.'));
    let minute = rest.get(..2)?;
    let behind = rest.get(2..)?.to_lowercase();
    // "04.03.2026" is a date.
    if hour.len() > 2
        || (pointed && behind.starts_with(['.', ':']))
        || !minute.chars().all(|c| c.is_ascii_digit())
    {
        return None;
    }
    let (mut hour, minute): (u16, u16) = (hour.parse().ok()?, minute.parse().ok()?);
    // Seconds, their parts and the zone say nothing of the day's minute.
    let behind = behind.trim_start_matches(|c: char| c.is_ascii_digit() || ":.".contains(c)).trim();
    let zone = behind == "z"
        || behind
            .strip_prefix(['+', '-'])
            .is_some_and(|zone| zone.chars().all(|c| c.is_ascii_digit() || c == ':'));
    match behind {
        "" | "uhr" | "h" => {}
        "am" | "a.m." if (1..=12).contains(&hour) => hour %= 12,
        "pm" | "p.m." if (1..=12).contains(&hour) => hour = hour % 12 + 12,
        _ if zone => {}
        _ => return None,
    }
    (hour < 24 && minute < 60).then_some(hour * 60 + minute)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 2026-11-28.
    const TODAY: i32 = 20_785;
    /// 2026-03-04.
    const FOURTH: i32 = 20_516;

    #[test]
    fn dates_are_read_as_they_are_said_to_be_written() {
        let pattern = |text| Dates::pattern(text).unwrap();
        for (dates, text, minute) in [
            (Dates::Iso, "2026-03-04", None),
            (Dates::Iso, "2026/3/4", None),
            (Dates::Iso, "2026-03-04T18:05:30Z", Some(1085)),
            (Dates::Iso, "2026-03-04 18:05:00+01:00", Some(1085)),
            (Dates::DayFirst, "04.03.2026", None),
            (Dates::DayFirst, "4.3.26", None),
            (Dates::DayFirst, "Mi., 4. März 2026", None),
            (Dates::DayFirst, "4 Mar 2026, 18:05", Some(1085)),
            (Dates::MonthFirst, "03/04/2026", None),
            (Dates::MonthFirst, "Mar 4, 2026 6:05 PM", Some(1085)),
            (Dates::MonthFirst, "4 March 2026", None),
            (pattern("%d|%m|%Y"), "04|03|2026", None),
            (pattern("%Y%m%d"), "20260304", None),
            (pattern("%Y%m%d %H%M"), "20260304 1805", Some(1085)),
        ] {
            assert_eq!(dates.read(text, TODAY), Ok((FOURTH, minute)), "{dates:?} {text}");
        }
    }

    #[test]
    fn what_is_no_date_that_can_be_is_refused() {
        for (dates, text, why) in [
            (Dates::Iso, "04.03.2026", Undated::Unread),
            (Dates::Iso, "2026-13-04", Undated::Unread),
            (Dates::Iso, "2026-03", Undated::Unread),
            (Dates::Iso, "2026-03-04 soon", Undated::Unread),
            (Dates::DayFirst, "31.02.2026", Undated::Unread),
            (Dates::DayFirst, "04.03.999999999999", Undated::Unread),
            (Dates::DayFirst, "", Undated::Unread),
            (Dates::Iso, "1969-12-31", Undated::TooEarly),
            (Dates::Iso, "2026-11-29", Undated::Future),
            (Dates::Iso, "9999-01-01", Undated::Future),
        ] {
            assert_eq!(dates.read(text, TODAY), Err(why), "{dates:?} {text}");
        }
        // Two digits are never a year to come.
        assert_eq!(Dates::DayFirst.read("04.03.98", TODAY), Ok((10_289, None)));
        assert_eq!(Dates::pattern("%d.%Q"), None);
    }

    #[test]
    fn clocks_of_every_kind() {
        for (text, minute) in [
            ("00:00", Some(0)),
            ("6:05", Some(365)),
            ("12:30 am", Some(30)),
            ("12:30 PM", Some(750)),
            ("18.05 Uhr", Some(1085)),
            ("24:00", None),
            ("13:05 pm", None),
            ("04.03.2026", None),
            ("18", None),
            ("18:5", None),
            ("", None),
            ("::", None),
        ] {
            assert_eq!(clock(text), minute, "{text}");
        }
    }
}
