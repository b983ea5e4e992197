//! The general cautions, with a place of their own: they can be opened at any time.

use barwright_domain::session::Reading;

use super::key::does;
use super::row::{aloud, row};
use crate::contract::{CareScreen, Intent, Key, Row};
use crate::facts::Held;
use crate::phrase::Words;

/// Everything to take care of, and the switch for minors.
pub(super) fn screen(held: &Held, at: &Reading, words: Words) -> CareScreen {
    let say = words.cautions();
    let rows: Vec<Row> = (0_u8..)
        .zip(say.all())
        .flat_map(|(group, (heading, lines))| {
            let lines = (0_u8..).zip(lines);
            let lines = lines.map(move |(at, line)| row(format!("care-{group}-{at}"), 1, line));
            std::iter::once(row(format!("care-{group}"), 0, heading)).chain(lines)
        })
        .collect();
    let (title, subtitle) = (say.title().to_owned(), say.who_decides().to_owned());
    CareScreen {
        aloud: words.words().spoken(&[&title, &subtitle, &aloud(&rows, words)]),
        title,
        subtitle,
        rows,
        keys: keys(held, at, words),
    }
}

fn keys(held: &Held, at: &Reading, words: Words) -> Vec<Key> {
    let say = words.cautions();
    let under_18 = held.desk.under_18;
    let coached = under_18 && held.desk.coached == Some(at.local_day());
    let minor = Intent::Minor { under_18: !under_18, coached: false };
    let mut keys = vec![does("under-18", say.under_18(under_18), minor).chosen(under_18)];
    if under_18 {
        let coach = Intent::Minor { under_18, coached: !coached };
        keys.push(does("coach", say.coach_there(coached), coach).chosen(coached));
    }
    keys
}
