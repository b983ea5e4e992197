//! What is made and mended by hand: rows, with what is wrong beside each.

pub(super) mod coming;
pub(super) mod exercises;
pub(super) mod gym;
pub(super) mod liked;
pub(super) mod maxes;
pub(super) mod plan;
mod plan_words;
pub(super) mod records;
pub(super) mod sent;
pub(super) mod session;
pub(super) mod start;

use barwright_domain::desk::Draft;
use barwright_domain::text::{Fault, place_at};

use super::key::{does, shows};
use crate::contract::{Edit, Field, FormOf, FormRow, FormScreen, Intent, Key, Look};
use crate::facts::form::FormField;
use crate::phrase::Words;

/// A form, and the part of it that is open: what its keys and fields carry.
#[derive(Clone, Copy)]
pub(super) struct Form<'a> {
    of: FormOf,
    at: &'a str,
    /// The step of the draft.
    step: u64,
    words: Words,
}

impl<'a> Form<'a> {
    /// Of a draft.
    pub(super) fn of_draft(of: FormOf, draft: &Draft, at: &'a str, words: Words) -> Self {
        Self { of, at, step: draft.step, words }
    }

    /// Of what stands, without a draft.
    pub(super) const fn of_what_stands(of: FormOf, at: &'a str, words: Words) -> Self {
        Self { of, at, step: 0, words }
    }

    /// The look at a part of it; empty is the whole.
    pub(super) fn look(&self, at: &str) -> Look {
        Look::Form { of: self.of, at: at.to_owned(), text: String::new() }
    }

    /// A key that changes it at a place, and shows the same part again.
    pub(super) fn edits(
        &self,
        id: impl Into<String>,
        said: impl Into<super::key::Said>,
        place: &str,
        edit: Edit,
    ) -> Key {
        self.key(id, said, place, edit, Some(self.step))
    }

    /// A key that changes what stands, and shows the same part again.
    pub(super) fn puts(
        &self,
        id: impl Into<String>,
        said: impl Into<super::key::Said>,
        place: &str,
        edit: Edit,
    ) -> Key {
        self.key(id, said, place, edit, None)
    }

    /// A key that edits, and shows the same part again.
    fn key(
        &self,
        id: impl Into<String>,
        said: impl Into<super::key::Said>,
        place: &str,
        edit: Edit,
        step: Option<u64>,
    ) -> Key {
        let (of, place) = (self.of, place.to_owned());
        does(id, said, Intent::Edit { of, place, edit, step }).then(self.look(self.at))
    }

    /// Keys one step down and up, of a line that says a number: to this, or to that.
    pub(super) fn steps(
        &self,
        place: &str,
        what: &str,
        down: Option<String>,
        up: Option<String>,
    ) -> (Option<Key>, Option<Key>) {
        let say = self.words.by_hand();
        let key = |is_up: bool, text: Option<String>| {
            let id = if is_up { "up" } else { "down" };
            let enabled = text.is_some();
            let edit = Edit::Put { text: text.unwrap_or_default() };
            Some(self.edits(id, say.step(is_up, what), place, edit).enabled(enabled))
        };
        (key(false, down), key(true, up))
    }

    /// A field that writes at a place.
    pub(super) fn field(
        &self,
        place: &str,
        (label, hint): (impl Into<String>, impl Into<String>),
        value: impl Into<String>,
        numeric: bool,
    ) -> Field {
        let (of, at) = (self.of, self.at.to_owned());
        let id = FormField { of, at, place: place.to_owned(), step: self.step }.id();
        Field { id, label: label.into(), value: value.into(), hint: hint.into(), numeric }
    }

    /// A key that opens a part of it.
    pub(super) fn opens(&self, at: &str) -> Key {
        shows("open", self.words.by_hand().open(), self.look(at))
    }

    /// The keys of a draft: use it, drop it, steps back and forth, and to the whole where a part of it
    /// is open.
    pub(super) fn keys(&self, draft: &Draft, sound: bool) -> Vec<Key> {
        let say = self.words.by_hand();
        let does = |id: &str, said, edit: Edit| {
            let (of, step) = (self.of, Some(self.step));
            does(id, said, Intent::Edit { of, place: String::new(), edit, step })
        };
        let mut keys = Vec::new();
        if !self.at.is_empty() {
            let whole = self.at.rsplit_once('/').map_or("", |(outer, _)| outer);
            keys.push(shows("leave", say.back(), self.look(whole)));
        } else {
            keys.push(does("take-up", say.take_up(), Edit::TakeUp).enabled(sound));
            keys.push(does("drop", say.drop_it(), Edit::Drop));
        }
        let again = self.look(self.at);
        let (back, forth) = (!draft.back.is_empty(), !draft.forth.is_empty());
        keys.push(does("undo", say.undo(), Edit::Undo).then(again.clone()).enabled(back));
        keys.push(does("redo", say.redo(), Edit::Redo).then(again).enabled(forth));
        keys
    }
}

/// A line of a form.
pub(super) fn form_row(id: impl Into<String>, depth: u8, text: impl Into<String>) -> FormRow {
    FormRow {
        id: id.into(),
        depth,
        text: text.into(),
        detail: String::new(),
        value: String::new(),
        warns: false,
        faults: Vec::new(),
        remarks: Vec::new(),
        down: None,
        up: None,
        field: None,
        keys: Vec::new(),
    }
}

impl FormRow {
    /// With a second, quieter line.
    pub(super) fn detail(mut self, detail: impl Into<String>) -> Self {
        self.detail = detail.into();
        self
    }

    /// With what it says.
    pub(super) fn value(mut self, value: impl Into<String>) -> Self {
        self.value = value.into();
        self
    }

    /// With steps down and up.
    pub(super) fn steps(mut self, (down, up): (Option<Key>, Option<Key>)) -> Self {
        (self.down, self.up) = (down, up);
        self
    }

    /// With its value typed.
    pub(super) fn field(mut self, field: Field) -> Self {
        self.field = Some(field);
        self
    }

    /// With keys.
    pub(super) fn keys(mut self, keys: Vec<Key>) -> Self {
        self.keys = keys;
        self
    }
}

/// A form of lines, with its keys; what else it has is the caller's.
fn form_screen(
    title: impl Into<String>,
    subtitle: impl Into<String>,
    rows: Vec<FormRow>,
    keys: Vec<Key>,
    words: Words,
) -> FormScreen {
    let (title, subtitle) = (title.into(), subtitle.into());
    FormScreen {
        aloud: aloud(&title, &subtitle, &rows, words),
        title,
        subtitle,
        rows,
        notes: Vec::new(),
        chart: None,
        plan_file: false,
        file: None,
        keys,
    }
}

/// A file's name out of what something is called.
pub(super) fn file_name(name: &str, usual: &str) -> String {
    let plain: String = name
        .chars()
        .map(|one| if one.is_alphanumeric() { one } else { '-' })
        .flat_map(char::to_lowercase)
        .collect();
    let parts: Vec<&str> = plain.split('-').filter(|part| !part.is_empty()).collect();
    format!("{}.toml", if parts.is_empty() { usual.to_owned() } else { parts.join("-") })
}

/// Puts each fault of a draft beside the row of its place, or of the part that has its place. Answers
/// those that have none.
pub(super) fn beside(
    rows: &mut [FormRow],
    text: &str,
    faults: &[Fault],
    words: Words,
) -> Vec<String> {
    let mut others = Vec::new();
    for fault in faults {
        let said = words.by_hand().said(&words.faults().in_place(fault, text));
        let place = place_at(text, fault.span.start);
        let holds = |id: &str| {
            place.strip_prefix(id).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
        };
        let row = rows.iter_mut().filter(|row| holds(&row.id)).max_by_key(|row| row.id.len());
        match row {
            Some(row) => {
                row.warns = true;
                row.faults.push(said);
            }
            None => others.push(said),
        }
    }
    others
}

/// A form read aloud: each line with what it says and what is wrong with it.
pub(super) fn aloud(title: &str, subtitle: &str, rows: &[FormRow], words: Words) -> String {
    let said = words.words();
    let lines: Vec<String> = rows
        .iter()
        .map(|row| {
            let wrong = row.faults.iter().chain(&row.remarks).map(String::as_str);
            let all = [row.text.as_str(), &row.value, &row.detail].into_iter().chain(wrong);
            said.spoken(&all.collect::<Vec<_>>())
        })
        .collect();
    let lines = lines.iter().map(String::as_str);
    said.spoken(&[title, subtitle].into_iter().chain(lines).collect::<Vec<_>>())
}
