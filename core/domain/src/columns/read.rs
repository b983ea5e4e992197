//! A file of columns, read.

use std::collections::BTreeMap;

use super::bounds;
use super::date::Dates;
use super::model::{Column, Columns, DistanceUnit, Field, Named, Separator, SetWords};
use super::shapes::{AT, COLUMNS, DATES, DECIMALS, DISTANCES, EXERCISE, SEPARATORS, UNITS, WORDS};
use crate::catalogue::{Catalogue, Counting};
use crate::plan::COUNTINGS;
use crate::quantity::{MassUnit, Numerals};
use crate::text::{self, Expected, Fault, Found, Item, Problem, Table};

/// What says how much was done: one of them has a column.
const AMOUNTS: &[&str] = &["reps", "seconds", "distance"];

impl Columns {
    /// Reads a file of columns; exercises are those of `catalogue`, by any of their names.
    ///
    /// # Errors
    /// Every fault at once, in the file's order.
    pub fn read(text: &str, catalogue: &Catalogue) -> Result<Self, Vec<Fault>> {
        text::read(text, &COLUMNS, |root| columns(root, catalogue))
    }
}

fn columns(root: &Table<'_>, catalogue: &Catalogue) -> Option<Columns> {
    let name = root.need("name").and_then(|item| item.text(bounds::NAME));
    let separator = one_of(root, "separator", SEPARATORS, &Separator::ALL);
    let header = root.get("header").map_or(Some(true), |item| item.flag());
    let decimals = one_of(root, "decimals", DECIMALS, &[Numerals::Point, Numerals::Comma]);
    let dates = root.need("dates").and_then(dates);
    let unit = one_of(root, "unit", UNITS, &[MassUnit::Kilogram, MassUnit::Pound]);
    let distance = one_of(root, "distance_unit", DISTANCES, &DistanceUnit::ALL);
    let counted = one_of(root, "counted", COUNTINGS, &Counting::ALL);
    let at = root.need("columns").and_then(|item| item.table(&AT, |at| fields(at, header)));
    if let (Some(at), None) = (&at, root.get("unit"))
        && at.contains_key(&Field::Load)
        && !at.contains_key(&Field::Unit)
    {
        root.missing(Problem::MissingKey { key: "unit" });
        return None;
    }
    let words = root.get("words").map_or_else(
        || Some(SetWords::default()),
        |item| {
            item.table(&WORDS, |words| {
                let (warm_up, work) = (list(words, "warm_up")?, list(words, "work")?);
                Some(SetWords {
                    warm_up,
                    work,
                    left: list(words, "left")?,
                    right: list(words, "right")?,
                })
            })
        },
    );
    let exercises = exercises(root, catalogue);
    Some(Columns {
        name: name?.to_owned(),
        separator: separator?.unwrap_or_default(),
        header: header?,
        numerals: decimals?.unwrap_or_default(),
        dates: dates?,
        unit: unit?,
        distance_unit: distance?.unwrap_or_default(),
        counted: counted?,
        at: at?,
        words: words?,
        exercises: exercises?,
    })
}

/// A word of a key that may be left out.
fn one_of<T: Copy>(
    table: &Table<'_>,
    key: &'static str,
    words: &'static [&'static str],
    all: &[T],
) -> Option<Option<T>> {
    let Some(item) = table.get(key) else { return Some(None) };
    all.get(item.word(words)?).copied().map(Some)
}

fn dates(item: Item<'_>) -> Option<Dates> {
    let text = item.any_text(Expected::Dates)?;
    let found = match DATES.iter().position(|word| *word == text) {
        Some(0) => Some(Dates::Iso),
        Some(1) => Some(Dates::DayFirst),
        Some(_) => Some(Dates::MonthFirst),
        None if text.contains('%') => Some(item.text(bounds::CELL)?).and_then(Dates::pattern),
        None => None,
    };
    if found.is_none() {
        item.fault(Problem::Unread { expected: Expected::Dates });
    }
    found
}

/// Columns go by name only where the first line names them.
fn fields(at: &Table<'_>, header: Option<bool>) -> Option<BTreeMap<Field, Column>> {
    let mut found = BTreeMap::new();
    let mut whole = true;
    for field in Field::ALL {
        let item = match field {
            Field::Date | Field::Exercise => at.need(field.key()),
            _ => at.get(field.key()),
        };
        let Some(item) = item else {
            whole &= !matches!(field, Field::Date | Field::Exercise);
            continue;
        };
        let column = match item.found() {
            Found::Text if header == Some(false) => {
                item.fault(Problem::Unread { expected: Expected::Whole });
                None
            }
            Found::Text => item.text(bounds::NAME).map(|name| Column::Named(name.to_owned())),
            Found::Whole => {
                let nth = item.whole(1, bounds::CELLS as i64);
                nth.and_then(|nth| u16::try_from(nth).ok()).map(Column::Nth)
            }
            _ => {
                item.wrong_type(Expected::WholeOrText);
                None
            }
        };
        whole &= column.is_some();
        found.extend(column.map(|column| (field, column)));
    }
    if !AMOUNTS.iter().any(|key| at.has(key)) {
        at.missing(Problem::MissingOneOf { keys: AMOUNTS });
        return None;
    }
    at.clash("rpe", &["left"]);
    whole.then_some(found)
}

fn list(table: &Table<'_>, key: &'static str) -> Option<Vec<String>> {
    let Some(item) = table.get(key) else { return Some(Vec::new()) };
    let items = item.list(bounds::WORDS)?;
    let texts: Option<Vec<String>> =
        items.iter().map(|item| item.text(bounds::NAME).map(str::to_owned)).collect();
    texts
}

fn exercises(root: &Table<'_>, catalogue: &Catalogue) -> Option<Vec<Named>> {
    let Some(item) = root.get("exercise") else { return Some(Vec::new()) };
    let mut found: Vec<Named> = Vec::new();
    let mut whole = true;
    for item in item.list(bounds::EXERCISES)? {
        let named = item.table(&EXERCISE, |table| {
            let name = table.need("name").and_then(|item| item.text(bounds::NAME));
            let is = table.need("is").and_then(|item| {
                let nearest = |name: &str| {
                    catalogue.nearest(name).map(|found| catalogue.written(found).to_owned())
                };
                let slug = |name: &str| catalogue.find(name).map(|found| found.slug.to_string());
                item.name("exercise", slug, nearest)
            });
            let counted = one_of(table, "counted", COUNTINGS, &Counting::ALL);
            Some(Named { name: name?.to_owned(), is: is?, counted: counted? })
        });
        whole &= named.is_some();
        found.extend(named);
    }
    whole.then_some(found)
}
