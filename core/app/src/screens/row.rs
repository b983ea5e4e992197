//! Rows in short.

use barwright_domain::catalogue::Catalogue;
use barwright_domain::prescribe::tenth_under;
use barwright_domain::quantity::MassUnit;
use barwright_domain::session::{Because, Call, Entry};

use crate::contract::{Key, Row};
use crate::facts::Held;
use crate::phrase::Words;

/// A row of a sheet.
pub(super) fn row(id: impl Into<String>, depth: u8, text: impl Into<String>) -> Row {
    Row {
        id: id.into(),
        depth,
        text: text.into(),
        detail: String::new(),
        why: Vec::new(),
        keys: Vec::new(),
        warns: false,
        done: false,
    }
}

impl Row {
    /// With a second, quieter line.
    pub(super) fn detail(mut self, detail: impl Into<String>) -> Self {
        self.detail = detail.into();
        self
    }

    /// With its derivation.
    pub(super) fn why(mut self, why: Vec<String>) -> Self {
        self.why = why;
        self
    }

    /// With keys.
    pub(super) fn keys(mut self, keys: Vec<Key>) -> Self {
        self.keys = keys;
        self
    }

    /// Marked as missing, missed or wrong.
    pub(super) fn warns(mut self, warns: bool) -> Self {
        self.warns = warns;
        self
    }

    /// Marked as done.
    pub(super) fn done(mut self, done: bool) -> Self {
        self.done = done;
        self
    }
}

/// Why a call's load is what it is, efforts in the scale that it asks in.
pub(super) fn why(
    held: &Held,
    entry: &Entry,
    call: &Call,
    unit: MassUnit,
    words: Words,
) -> Vec<String> {
    let scale = call.effort.map(|effort| effort.scale).unwrap_or_default();
    let mut reason = call.reason.clone();
    // A lift that is built in was kept by the name of the day's language.
    let catalogue = Catalogue::builtin();
    for because in &mut reason.0 {
        if let Because::ShareOfMax { of: Some(lift), .. } = because
            && let Some(found) = catalogue.find(lift)
        {
            *lift = found.name_in(words.tongue()).to_owned();
        }
    }
    let hurt = tenth_under(&held.desk.owners.care(&entry.exercise), entry, call);
    words.reason().lines(&reason, hurt, scale, words.today, unit, words.numerals)
}

/// Rows read aloud.
pub(super) fn aloud<'a>(rows: impl IntoIterator<Item = &'a Row>, words: Words) -> String {
    let rows: Vec<(&str, &str)> =
        rows.into_iter().map(|row| (row.text.as_str(), row.detail.as_str())).collect();
    words.words().rows(&rows)
}
