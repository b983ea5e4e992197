//! The tree as a reader walks it: tables that know their keys, items that know their place.

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::ops::Range;

use toml_span::value::{Table as RawTable, Value, ValueInner};

use super::bounds;
use super::fault::{Expected, Fault, Found, Problem};
use super::places::Places;
use super::shape::Shape;
use crate::quantity::{
    Distance, Length, Mass, MassUnit, Numerals, Percent, Range as Span, RepRange, Reserve, Rpe,
    Seconds, Tempo, Unreadable,
};
use crate::shown::{excerpt, is_hidden};

/// The faults found so far.
pub(super) struct Faults {
    pub(super) places: Places,
    found: RefCell<Vec<Fault>>,
    set_aside: Cell<bool>,
}

impl Faults {
    pub(super) fn new(places: Places) -> Self {
        Self { places, found: RefCell::default(), set_aside: Cell::new(false) }
    }

    pub(super) fn add(&self, span: Range<usize>, problem: Problem) {
        let mut found = self.found.borrow_mut();
        if found.len() <= bounds::FAULTS {
            found.push(self.places.fault(span, problem));
        }
    }

    /// Whether looking for what a wrong word was meant to be is still worth it.
    fn open(&self) -> bool {
        self.found.borrow().len() < bounds::FAULTS
    }

    /// A line was set aside: what seems missing may have stood in it.
    pub(super) fn set_aside(&self) {
        self.set_aside.set(true);
    }

    pub(super) fn sorted(self) -> Vec<Fault> {
        let mut found = self.found.into_inner();
        found.sort_by_key(|fault| (fault.span.start, fault.span.end == fault.span.start));
        if found.len() > bounds::FAULTS {
            found.truncate(bounds::FAULTS);
            if let Some(last) = found.last_mut() {
                last.problem = Problem::MoreFaults { shown: bounds::FAULTS - 1 };
            }
        }
        found
    }
}

/// A table and the keys it may have.
pub struct Table<'a> {
    table: &'a RawTable<'a>,
    span: Range<usize>,
    source: &'a str,
    faults: &'a Faults,
    shape: &'static Shape,
}

impl<'a> Table<'a> {
    pub(super) fn new(
        table: &'a RawTable<'a>,
        span: Range<usize>,
        source: &'a str,
        faults: &'a Faults,
        shape: &'static Shape,
    ) -> Self {
        Self { table, span, source, faults, shape }
    }

    /// Where the table stands, to note a fault of the whole.
    pub fn span(&self) -> Range<usize> {
        self.span.clone()
    }

    /// The item behind a key that the shape declares; `None` where it is not given.
    pub fn get(&self, key: &'static str) -> Option<Item<'a>> {
        debug_assert!(
            self.shape.keys.iter().any(|known| known.name == key),
            "{key} is read but not declared in {}",
            self.shape.name
        );
        self.table.get(key).map(|value| Item { value, source: self.source, faults: self.faults })
    }

    /// As [`Table::get`]; notes a fault where the key is missing.
    pub fn need(&self, key: &'static str) -> Option<Item<'a>> {
        let item = self.get(key);
        if item.is_none() {
            self.missing(Problem::MissingKey { key });
        }
        item
    }

    /// Each key with its value: the bytes from the one to the end of the other.
    pub fn key_spans(&self) -> BTreeMap<String, Range<usize>> {
        let each = self.table.iter().map(|(key, value)| {
            let end = value.span.end.max(key.span.end);
            // A text's place lies within its quotes.
            let quote = self.source.get(end..).is_some_and(|rest| rest.starts_with(['"', '\'']));
            let end = if quote { end + 1 } else { end };
            (key.name.to_string(), key.span.start..end)
        });
        each.collect()
    }

    /// The tables of a list of tables, as they are; none where it is something else.
    pub fn tables(&self, key: &'static str) -> Vec<Table<'a>> {
        let list = self.table.get(key).and_then(|value| value.as_array());
        let tables = list.into_iter().flatten().filter_map(|value| {
            let span = value.span.start..value.span.end;
            Some(Table::new(value.as_table()?, span, self.source, self.faults, self.shape))
        });
        tables.collect()
    }

    /// Whether the key is given.
    pub fn has(&self, key: &str) -> bool {
        self.table.contains_key(key)
    }

    /// Notes that something is missing from the table; not where a misspelt key seems to be it,
    /// which is a fault already.
    pub fn missing(&self, problem: Problem) {
        let keys: &[&'static str] = match &problem {
            Problem::MissingKey { key } => std::slice::from_ref(key),
            Problem::MissingOneOf { keys } => keys,
            _ => &[],
        };
        let meant = self
            .unknown_keys()
            .any(|key| self.nearest_key(&key.name).is_some_and(|nearest| keys.contains(&nearest)));
        if !self.faults.set_aside.get() && !meant {
            self.faults.add(self.span(), problem);
        }
    }

    /// Notes a fault at a key, or at the table where the key is not given.
    pub fn fault_at(&self, key: &str, problem: Problem) {
        let span = self
            .table
            .get_key_value(key)
            .map_or(self.span(), |(key, _)| key.span.start..key.span.end);
        self.faults.add(span, problem);
    }

    /// Notes a fault where `key` stands together with any of `others`.
    pub fn clash(&self, key: &'static str, others: &[&'static str]) {
        if self.has(key) {
            for with in others.iter().filter(|other| self.has(other)) {
                self.fault_at(key, Problem::Clash { key, with });
            }
        }
    }

    pub(super) fn refuse_unknown_keys(&self) {
        for key in self.unknown_keys() {
            let problem = Problem::UnknownKey {
                key: excerpt(&key.name),
                nearest: self.nearest_key(&key.name),
                known: self.shape.keys.iter().map(|known| known.name).collect(),
            };
            self.faults.add(key.span.start..key.span.end, problem);
        }
    }

    fn unknown_keys(&self) -> impl Iterator<Item = &toml_span::value::Key<'a>> {
        let known = |name: &str| self.shape.keys.iter().any(|known| known.name == name);
        self.table.keys().filter(move |key| !known(&key.name))
    }

    fn nearest_key(&self, name: &str) -> Option<&'static str> {
        if !self.faults.open() {
            return None;
        }
        let known: Vec<_> = self.shape.keys.iter().map(|known| known.name).collect();
        nearest(name, &known)
    }
}

/// A value and its place.
#[derive(Clone, Copy)]
pub struct Item<'a> {
    value: &'a Value<'a>,
    source: &'a str,
    faults: &'a Faults,
}

impl<'a> Item<'a> {
    /// Its bytes in the file.
    pub fn span(&self) -> Range<usize> {
        self.value.span.start..self.value.span.end
    }

    /// Its line in the file, from 1.
    pub fn line(&self) -> usize {
        self.faults.places.line_column(self.value.span.start).0
    }

    /// What stands here.
    pub fn found(&self) -> Found {
        match self.value.as_ref() {
            ValueInner::String(_) => Found::Text,
            ValueInner::Integer(_) => Found::Whole,
            ValueInner::Float(_) => Found::Decimal,
            ValueInner::Boolean(_) => Found::Flag,
            ValueInner::Array(_) => Found::List,
            ValueInner::Table(_) => Found::Table,
        }
    }

    /// Notes a fault of the item.
    pub fn fault(&self, problem: Problem) {
        self.faults.add(self.span(), problem);
    }

    /// Notes that something else is read here.
    pub fn wrong_type(&self, expected: Expected) {
        self.fault(Problem::WrongType { expected, found: self.found() });
    }

    /// A text of 1 to `most` characters.
    pub fn text(&self, most: usize) -> Option<&'a str> {
        let text = self.any_text(Expected::Text)?;
        if text.trim().is_empty() {
            self.fault(Problem::Empty);
            None
        } else if text.chars().nth(most).is_some() {
            self.fault(Problem::TooLong { most });
            None
        } else {
            Some(text)
        }
    }

    /// A text of lines, of 1 to `most` characters: what a file holds of another file.
    pub fn lines(&self, most: usize) -> Option<&'a str> {
        let Some(text) = self.value.as_str() else {
            self.wrong_type(Expected::Text);
            return None;
        };
        let hidden = text.chars().find(|c| is_hidden(*c) && !matches!(c, '\t' | '\n' | '\r'));
        let problem = match hidden {
            Some(character) => Problem::Hidden { character },
            None if text.trim().is_empty() => Problem::Empty,
            None if text.chars().nth(most).is_some() => Problem::TooLong { most },
            None => return Some(text),
        };
        self.fault(problem);
        None
    }

    /// A text of any length; where it is none, a fault says what is read here.
    pub fn any_text(&self, expected: Expected) -> Option<&'a str> {
        let text = self.value.as_str();
        let Some(text) = text else {
            self.wrong_type(expected);
            return None;
        };
        // A tab is a space to whoever shows it.
        if let Some(character) = text.chars().find(|c| is_hidden(*c) && *c != '\t') {
            self.fault(Problem::Hidden { character });
            return None;
        }
        Some(text)
    }

    /// A whole number within bounds.
    pub fn whole(&self, least: i64, greatest: i64) -> Option<i64> {
        let Some(value) = self.value.as_integer() else {
            self.wrong_type(Expected::Whole);
            return None;
        };
        if value < least || value > greatest {
            self.fault(Problem::OutOfRange { least, greatest });
            return None;
        }
        Some(value)
    }

    /// True or false.
    pub fn flag(&self) -> Option<bool> {
        let flag = self.value.as_bool();
        if flag.is_none() {
            self.wrong_type(Expected::Flag);
        }
        flag
    }

    /// A list of 1 to `most` items.
    pub fn list(&self, most: usize) -> Option<Vec<Item<'a>>> {
        let Some(list) = self.value.as_array() else {
            self.wrong_type(Expected::List);
            return None;
        };
        if list.is_empty() {
            self.fault(Problem::Empty);
        }
        if list.len() > most {
            self.fault(Problem::TooMany { most });
        }
        let (source, faults) = (self.source, self.faults);
        Some(list.iter().take(most).map(|value| Item { value, source, faults }).collect())
    }

    /// A list, or one item that stands for a list of itself.
    pub fn one_or_list(&self, most: usize) -> Option<Vec<Item<'a>>> {
        if self.found() == Found::List { self.list(most) } else { Some(vec![*self]) }
    }

    /// A table: `reader` takes it, and keys that `shape` doesn't declare are refused.
    pub fn table<T>(
        &self,
        shape: &'static Shape,
        reader: impl FnOnce(&Table<'a>) -> Option<T>,
    ) -> Option<T> {
        let Some(table) = self.value.as_table() else {
            self.wrong_type(Expected::Table);
            return None;
        };
        let table = Table::new(table, self.span(), self.source, self.faults, shape);
        let made = reader(&table);
        table.refuse_unknown_keys();
        made
    }

    /// One of the words, as its place in `words`.
    pub fn word(&self, words: &'static [&'static str]) -> Option<usize> {
        let word = self.any_text(Expected::Text)?;
        let place = words.iter().position(|known| *known == word);
        if place.is_none() {
            self.fault(Problem::UnknownWord {
                word: excerpt(word),
                nearest: self.nearest(word, words.iter().copied()),
                known: words.to_vec(),
            });
        }
        place
    }

    /// A name among those known: `find` gives what has it; where nothing has, a fault offers what
    /// `nearest` gives.
    pub fn name<T>(
        &self,
        what: &'static str,
        find: impl FnOnce(&str) -> Option<T>,
        nearest: impl FnOnce(&str) -> Option<String>,
    ) -> Option<T> {
        let name = self.text(bounds::TEXT)?;
        let made = find(name);
        if made.is_none() {
            self.unknown_name(what, name, nearest);
        }
        made
    }

    /// Notes that nothing has a name that stands in this item, and offers what `nearest` gives.
    pub fn unknown_name(
        &self,
        what: &'static str,
        name: &str,
        nearest: impl FnOnce(&str) -> Option<String>,
    ) {
        // Once no more faults are kept, the search for what was meant is saved too: a file of
        // nothing but wrong names takes no longer.
        let nearest = if self.faults.open() { nearest(name) } else { None };
        let name = excerpt(name);
        self.fault(Problem::UnknownName { name, nearest, what });
    }

    fn nearest<'n>(&self, word: &str, known: impl Iterator<Item = &'n str>) -> Option<String> {
        if !self.faults.open() {
            return None;
        }
        let known: Vec<_> = known.collect();
        nearest(word, &known).map(str::to_string)
    }

    /// A text read by `reader`; a place it names is underlined within the text.
    pub fn quantity<T>(
        &self,
        expected: Expected,
        reader: impl FnOnce(&str) -> Result<T, Unreadable>,
    ) -> Option<T> {
        let text = self.any_text(expected)?;
        self.noted(text, reader(text))
    }

    /// As [`Item::quantity`], also from a bare number.
    pub fn number_or_text<T>(
        &self,
        expected: Expected,
        reader: impl FnOnce(&str) -> Result<T, Unreadable>,
    ) -> Option<T> {
        match self.found() {
            Found::Whole | Found::Decimal => {
                let text = self.source.get(self.span()).unwrap_or_default();
                self.noted(text, reader(text))
            }
            _ => self.quantity(expected, reader),
        }
    }

    fn noted<T>(&self, text: &str, read: Result<T, Unreadable>) -> Option<T> {
        read.map_err(|unreadable| self.unreadable(text, unreadable)).ok()
    }

    /// Notes what could not be read of a text, at its place within the item.
    pub fn unreadable(&self, text: &str, unreadable: Unreadable) {
        let span = self.span();
        let skip = text.char_indices().nth(unreadable.at).map_or(text.len(), |(at, _)| at);
        // With escapes in the text its bytes in the file are others: then the whole is underlined.
        let source = self.source.get(span.clone()).unwrap_or_default();
        let narrowed = source.find(text).map(|start| {
            let start = span.start + start;
            start + skip..start + text.len()
        });
        let narrowed = match narrowed {
            Some(place) if place.is_empty() => place.start..span.end.max(place.start),
            Some(place) => place,
            None => span,
        };
        self.faults.add(narrowed, Problem::Quantity(unreadable));
    }

    /// `"142.5 kg"`
    pub fn mass(&self) -> Option<Mass> {
        self.mass_as_written().map(|(mass, _)| mass)
    }

    /// As [`Item::mass`], with the unit it was written in.
    pub fn mass_as_written(&self) -> Option<(Mass, MassUnit)> {
        self.quantity(Expected::Mass, |text| Mass::read_as_written(text, Numerals::Point))
    }

    /// `"67.5 %"`
    pub fn percent(&self) -> Option<Percent> {
        self.quantity(Expected::Percent, |text| Percent::read(text, Numerals::Point))
    }

    /// `5` or `"6-10"`
    pub fn reps(&self) -> Option<RepRange> {
        self.number_or_text(Expected::Reps, RepRange::read)
    }

    /// `2`, `1.5` or `"1-2"`
    pub fn reserve(&self) -> Option<Span<Reserve>> {
        self.number_or_text(Expected::Reserve, |text| Reserve::read_range(text, Numerals::Point))
    }

    /// `8`, `8.5` or `"7-8"`
    pub fn rpe(&self) -> Option<Span<Rpe>> {
        self.number_or_text(Expected::Rpe, |text| Rpe::read_range(text, Numerals::Point))
    }

    /// `"3-0-1-0"`
    pub fn tempo(&self) -> Option<Tempo> {
        self.quantity(Expected::Tempo, Tempo::read)
    }

    /// `"90 s"`, `"2:30"`
    pub fn seconds(&self) -> Option<Seconds> {
        self.quantity(Expected::Seconds, Seconds::read)
    }

    /// `"30-40 s"`
    pub fn seconds_range(&self) -> Option<Span<Seconds>> {
        self.quantity(Expected::Seconds, Seconds::read_range)
    }

    /// `"415 mm"`
    pub fn length(&self) -> Option<Length> {
        self.quantity(Expected::Length, |text| Length::read(text, Numerals::Point))
    }

    /// `"40 m"`
    pub fn distance(&self) -> Option<Distance> {
        self.quantity(Expected::Distance, |text| Distance::read(text, Numerals::Point))
    }

    /// `"30-40 m"`
    pub fn distance_range(&self) -> Option<Span<Distance>> {
        self.quantity(Expected::Distance, |text| Distance::read_range(text, Numerals::Point))
    }
}

/// The known word that `word` most resembles, if it is near enough to have been meant.
fn nearest<'n>(word: &str, known: &[&'n str]) -> Option<&'n str> {
    let length = word.chars().count();
    if length > 60 {
        return None;
    }
    let word = word.to_lowercase();
    known
        .iter()
        .map(|known| (strsim::osa_distance(&word, &known.to_lowercase()), *known))
        .filter(|(distance, known)| *distance <= 1 + length.max(known.len()) / 4)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, known)| known)
}
