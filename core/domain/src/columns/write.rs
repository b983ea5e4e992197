//! A guess, written as a file of columns with its reasons beside it.

use super::bounds;
use super::date::Dates;
use super::guess::{Found, Guess, Note, Seen};
use super::model::{DistanceUnit, Field, Separator};
use super::shapes::{DATES, DECIMALS, DISTANCES, SEPARATORS};
use crate::catalogue::Catalogue;
use crate::quantity::Numerals;
use crate::text::quoted;

/// What a person decides stands so until they did, and is read as a fault.
const UNDECIDED: &str = "?";

/// Columns that are not read and are told of.
const MOST_OTHERS: usize = 40;

/// The file as it grows.
struct Lines<'s> {
    out: String,
    say: &'s dyn Fn(&Note) -> String,
}

impl Lines<'_> {
    fn line(&mut self, line: &str) {
        self.out.push_str(line);
        self.out.push('\n');
    }

    fn note(&mut self, note: &Note) {
        let said = (self.say)(note);
        for line in said.lines() {
            self.line(&format!("# {}", crate::shown::plain(line)));
        }
    }

    fn key(&mut self, key: &str, text: &str) {
        self.line(&format!("{key} = {}", quoted(text)));
    }
}

impl Guess<'_> {
    /// The guess as a file of columns called `name`, exercises as `catalogue` writes them. What was
    /// guessed from what stands beside it as a comment, in the words of `say`.
    #[must_use]
    pub fn write(
        &self,
        name: &str,
        catalogue: &Catalogue,
        say: &dyn Fn(&Note) -> String,
    ) -> String {
        let mut to = Lines { out: String::new(), say };
        to.note(&Note::Head(self.rows));
        self.head(name, &mut to);
        self.at(&mut to);
        self.words(&mut to);
        self.exercises(catalogue, &mut to);
        to.out
    }

    fn head(&self, name: &str, to: &mut Lines<'_>) {
        let name: String = crate::shown::plain(name).trim().chars().take(bounds::NAME).collect();
        to.key("name", if name.is_empty() { "table" } else { &name });
        let separator = Separator::ALL.iter().position(|one| *one == self.separator);
        to.key("separator", word(SEPARATORS, separator));
        to.line(&format!("header = {}", self.header));
        let mark = |numerals| word(DECIMALS, Some(usize::from(numerals == Numerals::Comma)));
        match &self.numerals {
            Found::So(numerals, cell) => {
                to.note(&Note::DecimalsShown(cell.clone()));
                to.key("decimals", mark(*numerals));
            }
            Found::Usual(numerals) => to.key("decimals", mark(*numerals)),
            Found::Either(cell) => {
                to.note(&Note::DecimalsEither(cell.clone()));
                to.key("decimals", UNDECIDED);
            }
        }
        let written = |dates: &Dates| match dates {
            Dates::Iso => word(DATES, Some(0)).to_owned(),
            Dates::DayFirst => word(DATES, Some(1)).to_owned(),
            Dates::MonthFirst => word(DATES, Some(2)).to_owned(),
            Dates::Pattern(pattern) => pattern.clone(),
        };
        match &self.dates {
            Found::So(dates, cell) => {
                to.note(&Note::DatesShown(cell.clone()));
                to.key("dates", &written(dates));
            }
            Found::Usual(_) => to.key("dates", UNDECIDED),
            Found::Either(cell) => {
                to.note(&Note::DatesEither(cell.clone()));
                to.key("dates", UNDECIDED);
            }
        }
        if self.at.contains_key(&Field::Load) && !self.at.contains_key(&Field::Unit) {
            match &self.unit {
                Found::So(unit, shown) => {
                    to.note(&Note::UnitShown(shown.clone()));
                    to.key("unit", unit.symbol());
                }
                Found::Usual(unit) => to.key("unit", unit.symbol()),
                Found::Either(_) => {
                    to.note(&Note::UnitEither);
                    to.key("unit", UNDECIDED);
                }
            }
        }
        if self.at.contains_key(&Field::Distance) {
            let unit = DistanceUnit::ALL.iter().position(|one| *one == self.distance);
            to.key("distance_unit", word(DISTANCES, unit));
        }
    }

    fn at(&self, to: &mut Lines<'_>) {
        to.line("\n[columns]");
        for field in Field::ALL {
            let Some((at, by_header)) = self.at.get(&field) else {
                if matches!(field, Field::Date | Field::Exercise) {
                    to.note(&Note::Missing(field));
                    to.line(&format!("# {} = 1", field.key()));
                }
                continue;
            };
            let Some(column) = self.columns.get(*at) else { continue };
            let number = u16::try_from(at + 1).unwrap_or(u16::MAX);
            if *by_header {
                to.note(&Note::ByHeader(column.name.clone(), column.shown.clone()));
            } else {
                to.note(&Note::ByCells(number, column.shown.clone()));
            }
            if column.by_number {
                to.line(&format!("{} = {number}", field.key()));
            } else {
                to.key(field.key(), &column.name);
            }
        }
        let amounts = [Field::Reps, Field::Seconds, Field::Distance];
        if !amounts.iter().any(|field| self.at.contains_key(field)) {
            to.note(&Note::NoAmount);
            to.line("# reps = 1");
        }
        let read = |at: usize| self.at.values().any(|(taken, _)| *taken == at);
        let columns = self.columns.iter().enumerate().filter(|(at, _)| !read(*at));
        let others: Vec<(usize, &Seen)> = columns.collect();
        for (at, column) in others.iter().take(MOST_OTHERS) {
            let number = u16::try_from(at + 1).unwrap_or(u16::MAX);
            to.note(&Note::NotRead(number, column.name.clone(), column.shown.clone()));
        }
        if others.len() > MOST_OTHERS {
            to.note(&Note::More(others.len() - MOST_OTHERS));
        }
    }

    /// Words that are not known are a person's to put under what they mean.
    fn words(&self, to: &mut Lines<'_>) {
        if self.words.is_empty() {
            return;
        }
        to.line("");
        for (field, words) in &self.words {
            to.note(&Note::UnknownWords(*field, words.clone()));
        }
        let list = |side: bool| {
            let of = self.words.iter().filter(|(field, _)| (*field == Field::Side) == side);
            let words: Vec<String> = of.flat_map(|(_, words)| words.iter().map(quoted)).collect();
            words.join(", ")
        };
        to.line("# [words]");
        for (side, keys) in [(false, ["warm_up", "work"]), (true, ["left", "right"])] {
            let words = list(side);
            if !words.is_empty() {
                keys.iter().for_each(|key| to.line(&format!("# {key} = [{words}]")));
            }
        }
    }

    fn exercises(&self, catalogue: &Catalogue, to: &mut Lines<'_>) {
        if !self.unknown.is_empty() {
            to.line("");
            to.note(&Note::UnknownExercises);
        }
        for (name, near, rows) in self.unknown.iter().take(bounds::TOLD) {
            to.line("");
            to.note(&Note::Unknown(*rows));
            to.line("# [[exercise]]");
            to.line(&format!("# name = {}", quoted(name)));
            let near: Vec<String> = near.iter().map(|one| quoted(catalogue.written(one))).collect();
            if near.is_empty() {
                to.line("# is = \"\"");
            }
            near.iter().for_each(|near| to.line(&format!("# is = {near}")));
        }
        if self.unknown.len() > bounds::TOLD {
            to.note(&Note::More(self.unknown.len() - bounds::TOLD));
        }
        if !self.known.is_empty() {
            to.line("");
            to.note(&Note::KnownExercises);
        }
        for (name, exercise, rows) in self.known.iter().take(bounds::TOLD) {
            let exercise = catalogue.written(exercise).to_owned();
            to.note(&Note::Known(name.clone(), exercise, *rows));
        }
        if self.known.len() > bounds::TOLD {
            to.note(&Note::More(self.known.len() - bounds::TOLD));
        }
    }
}

fn word(words: &'static [&'static str], at: Option<usize>) -> &'static str {
    at.and_then(|at| words.get(at)).copied().unwrap_or_default()
}
