//! A row of a table, read as a set or refused.

use std::collections::BTreeMap;

use super::bounds;
use super::cell::{self, Loaded};
use super::date::{Undated, clock};
use super::model::{Column, Columns, Field};
use crate::call::{Amount, Ending, SetKind, Side};
use crate::catalogue::find::key;
use crate::catalogue::{Catalogue, Counting, Exercise, Measure};
use crate::quantity::{Mass, MassUnit, Reserve, Rounding};
use crate::shown::{excerpt, plain};

/// A set that a row tells of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lifted {
    /// Local date, in days since 1970-01-01.
    pub day: i32,
    /// The minute of that day at which the session began, where the table has it.
    pub minute: Option<u16>,
    /// The session's title, where the table has one.
    pub title: Option<String>,
    /// The exercise, by its slug.
    pub exercise: String,
    /// What it was for.
    pub kind: SetKind,
    /// Its number among the sets of its exercise, where the table has it.
    pub number: Option<u16>,
    /// How many such sets, one at least.
    pub times: u16,
    /// The side.
    pub side: Option<Side>,
    /// How much was done.
    pub amount: Amount,
    /// What was on, counted as `counting` says.
    pub figure: Option<Mass>,
    /// How the figure is meant.
    pub counting: Counting,
    /// What was moved, where that is known.
    pub moved: Option<Mass>,
    /// What was left; of several sets after the last.
    pub left: Option<Reserve>,
    /// How it ended.
    pub ending: Ending,
}

/// Why a row is not taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum BadRow {
    /// Not text in UTF-8.
    NotText,
    /// A cell that must say something is empty.
    Empty(Field),
    /// A cell that can't be read, cut to 80 characters.
    Unread(Field, String),
    /// A cell of more characters than are read.
    TooLong(Field),
    /// A word that is not known, cut to 80 characters.
    UnknownWord(Field, String),
    /// A date before 1970.
    TooEarly(String),
    /// A date after today.
    Future(String),
    /// No exercise has this name; one that is near it, as it is written.
    NoExercise(String, Option<String>),
    /// Nothing says how much was done.
    NoAmount,
    /// A load of an exercise whose load has no number.
    NoNumber,
    /// Less than nothing on what carries no help.
    BelowNothing(String),
    /// More sets in a session than are taken.
    TooManySets(usize),
    /// More sessions on a day than are taken.
    TooManySessions(usize),
}

/// A column that a table does not have.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NoColumn {
    /// What it was to be.
    pub field: Field,
    /// How it was named, cut to 80 characters.
    pub named: String,
    /// The columns that there are, each cut to 80 characters.
    pub there: Vec<String>,
}

/// Reads the rows of one table.
#[derive(Debug)]
pub struct Reader<'a> {
    columns: &'a Columns,
    at: BTreeMap<Field, usize>,
    catalogue: &'a Catalogue,
    today: i32,
    /// What each name came to, so that it is looked for once.
    names: BTreeMap<String, Meant<'a>>,
}

/// The exercise that a name means and what its loads count there; else a name that is near it.
type Meant<'a> = Result<(&'a Exercise, Option<Counting>), Option<String>>;

/// Names that are remembered; a table of nothing but names is read all the same.
const NAMES: usize = 5_000;

impl<'a> Reader<'a> {
    /// Of a table whose first line is `first`. Exercises are those of `catalogue`; no day is after
    /// `today`, in days since 1970-01-01.
    ///
    /// # Errors
    /// [`NoColumn`] for the first column that the table lacks.
    pub fn new(
        columns: &'a Columns,
        first: &[&str],
        catalogue: &'a Catalogue,
        today: i32,
    ) -> Result<Self, NoColumn> {
        let mut at = BTreeMap::new();
        for (field, column) in &columns.at {
            let (found, named) = match column {
                Column::Nth(nth) => {
                    let nth = usize::from(*nth);
                    ((nth <= first.len()).then(|| nth.saturating_sub(1)), nth.to_string())
                }
                Column::Named(name) => (place(first, name), excerpt(name)),
            };
            let there = || first.iter().take(bounds::CELLS).map(|name| excerpt(name)).collect();
            let field = *field;
            at.insert(field, found.ok_or_else(|| NoColumn { field, named, there: there() })?);
        }
        Ok(Self { columns, at, catalogue, today, names: BTreeMap::new() })
    }

    /// The set that a row tells of; none where the row is empty.
    ///
    /// # Errors
    /// [`BadRow`]: the row is left out.
    pub fn row(&mut self, cells: &[&str]) -> Result<Option<Lifted>, BadRow> {
        if cells.iter().all(|cell| cell.trim().is_empty()) {
            return Ok(None);
        }
        let (day, minute) = self.date(cells)?;
        let title = self.cell(cells, Field::Title)?.map(plain);
        let (exercise, counted) = self.exercise(cells)?;
        let (kind, number) = self.kind(cells)?;
        let side = self.word(cells, Field::Side, |text| {
            let words = &self.columns.words;
            cell::side(text, &words.left, &words.right)
        })?;
        let times = self.read(cells, Field::Sets, |text| {
            let count = cell::count(text, self.columns.numerals)?;
            (1..=bounds::SETS_OF_A_ROW).contains(&count).then_some(count)
        })?;
        let amount = self.amount(cells, exercise.measure)?;
        let (figure, counting) = self.load(cells, exercise, counted)?;
        let left = self.read(cells, Field::Left, cell::left)?;
        // The scale begins at one: a nothing on it is none that was said.
        let rpe = self.read(cells, Field::Rpe, |text| match cell::rpe(text) {
            None if cell::is_nothing(text) => Some(None),
            rpe => rpe.map(|rpe| Some(rpe.reserve())),
        })?;
        let nothing = amount.reps() == Some(0);
        // What hangs on a body of unknown mass says nothing of what was moved.
        let bodily = counting == Counting::Added || exercise.body_share != Default::default();
        Ok(Some(Lifted {
            day,
            minute,
            title,
            exercise: exercise.slug.to_string(),
            kind,
            number,
            times: times.unwrap_or(1),
            side: side.flatten(),
            amount,
            figure,
            counting,
            moved: figure.filter(|_| !bodily),
            left: left.or(rpe.flatten()),
            ending: if nothing { Ending::Failed } else { Ending::AsCalled },
        }))
    }

    /// What a column's cell says; none where there is no such column, or nothing in it.
    fn cell<'c>(&self, cells: &[&'c str], field: Field) -> Result<Option<&'c str>, BadRow> {
        let text = self.at.get(&field).and_then(|at| cells.get(*at)).map(|text| text.trim());
        let most = match field {
            Field::Title | Field::Exercise => bounds::NAME,
            _ => bounds::CELL,
        };
        match text {
            Some(text) if text.chars().nth(most).is_some() => Err(BadRow::TooLong(field)),
            text => Ok(text.filter(|text| !text.is_empty() && !cell::is_dash(text))),
        }
    }

    fn read<T>(
        &self,
        cells: &[&str],
        field: Field,
        reader: impl FnOnce(&str) -> Option<T>,
    ) -> Result<Option<T>, BadRow> {
        let Some(text) = self.cell(cells, field)? else { return Ok(None) };
        reader(text).map(Some).ok_or_else(|| BadRow::Unread(field, excerpt(text)))
    }

    fn word<T>(
        &self,
        cells: &[&str],
        field: Field,
        reader: impl FnOnce(&str) -> Option<T>,
    ) -> Result<Option<T>, BadRow> {
        self.read(cells, field, reader).map_err(|bad| match bad {
            BadRow::Unread(field, text) => BadRow::UnknownWord(field, text),
            other => other,
        })
    }

    /// The day, and the minute where the table has a column for it.
    fn date(&self, cells: &[&str]) -> Result<(i32, Option<u16>), BadRow> {
        let text = self.cell(cells, Field::Date)?.ok_or(BadRow::Empty(Field::Date))?;
        let read = self.columns.dates.read(text, self.today);
        let (day, _) = read.map_err(|why| match why {
            Undated::Unread => BadRow::Unread(Field::Date, excerpt(text)),
            Undated::TooEarly => BadRow::TooEarly(excerpt(text)),
            Undated::Future => BadRow::Future(excerpt(text)),
        })?;
        // One column may hold both.
        let minute = self.read(cells, Field::Time, |text| {
            let dated = self.columns.dates.read(text, self.today).ok();
            clock(text).or_else(|| dated.and_then(|(_, minute)| minute))
        })?;
        Ok((day, minute))
    }

    fn exercise(&mut self, cells: &[&str]) -> Result<(&'a Exercise, Option<Counting>), BadRow> {
        let text = self.cell(cells, Field::Exercise)?.ok_or(BadRow::Empty(Field::Exercise))?;
        let name = key(&plain(text));
        let found = match self.names.get(&name) {
            Some(found) => found.clone(),
            None => {
                let found = self.find(text, &name);
                if self.names.len() < NAMES {
                    self.names.insert(name, found.clone());
                }
                found
            }
        };
        found.map_err(|near| BadRow::NoExercise(excerpt(text), near))
    }

    /// The file's names go before those of the catalogue.
    fn find(&self, text: &str, name: &str) -> Meant<'a> {
        let (columns, catalogue) = (self.columns, self.catalogue);
        if let Some(named) = columns.exercises.iter().find(|named| key(&named.name) == name) {
            let exercise = catalogue.get(&named.is).ok_or(None)?;
            return Ok((exercise, named.counted.or(columns.counted)));
        }
        if let Some(exercise) = catalogue.find(&plain(text)) {
            return Ok((exercise, columns.counted));
        }
        // Once so many names are known, what was meant is looked for no more.
        let near = if self.names.len() < NAMES { catalogue.nearest(text) } else { None };
        Err(near.map(|near| catalogue.written(near).to_owned()))
    }

    /// What the set was for, by either column, and its number.
    fn kind(&self, cells: &[&str]) -> Result<(SetKind, Option<u16>), BadRow> {
        let words = &self.columns.words;
        let of = |text: &str| cell::kind(text, &words.warm_up, &words.work);
        let kind = self.word(cells, Field::Kind, of)?;
        // "3", or "W" among the numbers.
        let number = self.word(cells, Field::Set, |text| {
            let number = cell::count(text, self.columns.numerals);
            number.map(Ok).or_else(|| of(text).map(Err))
        })?;
        let by_number = number.and_then(Result::err);
        Ok((kind.or(by_number).unwrap_or(SetKind::Work), number.and_then(Result::ok)))
    }

    /// How much was done, in the exercise's own measure where the row has it; what is nothing counts
    /// only where there is no other.
    fn amount(&self, cells: &[&str], measure: Measure) -> Result<Amount, BadRow> {
        let numerals = self.columns.numerals;
        let reps = self.read(cells, Field::Reps, |text| cell::reps(text, numerals))?;
        let seconds = self.read(cells, Field::Seconds, |text| cell::seconds(text, numerals))?;
        let distance = self.read(cells, Field::Distance, |text| {
            cell::distance(text, self.columns.distance_unit, numerals)
        })?;
        let none = reps == Some(0);
        let reps = reps.filter(|reps| *reps > 0).map(Amount::Reps);
        let seconds = seconds.filter(|held| held.count() > 0).map(Amount::Seconds);
        let metres = distance.filter(|far| far.millimetres() > 0).map(Amount::Metres);
        let found = match measure {
            Measure::Reps => reps.or(seconds).or(metres),
            Measure::Seconds => seconds.or(reps).or(metres),
            Measure::Metres => metres.or(reps).or(seconds),
        };
        let tried = none && measure == Measure::Reps;
        found.or(tried.then_some(Amount::Reps(0))).ok_or(BadRow::NoAmount)
    }

    /// The load and how it is counted. Where the table counts both hands or both sides of a machine
    /// together, it is halved to what the exercise counts.
    fn load(
        &self,
        cells: &[&str],
        exercise: &Exercise,
        counted: Option<Counting>,
    ) -> Result<(Option<Mass>, Counting), BadRow> {
        let unit = self.word(cells, Field::Unit, cell::mass_unit)?;
        let unit = unit.or(self.columns.unit).unwrap_or(MassUnit::Kilogram);
        let numerals = self.columns.numerals;
        let loaded = self.read(cells, Field::Load, |text| cell::load(text, unit, numerals))?;
        let counting = counted.unwrap_or(exercise.counting);
        let figure = match (loaded.unwrap_or(Loaded::Empty), counting) {
            (Loaded::Body(mass), Counting::Added) | (Loaded::Mass(mass), Counting::Added) => {
                Some(mass)
            }
            (Loaded::Empty, Counting::Added) => Some(Mass::ZERO),
            // Many tables write a nothing where no load was said.
            (Loaded::Empty | Loaded::Mass(Mass::ZERO) | Loaded::Body(Mass::ZERO), _) => None,
            (_, Counting::Unnumbered) => return Err(BadRow::NoNumber),
            (Loaded::Body(_), _) => {
                let text = self.cell(cells, Field::Load)?.unwrap_or_default();
                return Err(BadRow::Unread(Field::Load, excerpt(text)));
            }
            (Loaded::Mass(mass), _) if mass < Mass::ZERO => {
                let text = self.cell(cells, Field::Load)?.unwrap_or_default();
                return Err(BadRow::BelowNothing(excerpt(text)));
            }
            (Loaded::Mass(mass), _) => Some(mass),
        };
        let one_of_two = matches!(exercise.counting, Counting::EachHand | Counting::EachSide);
        if counting == Counting::Total && one_of_two {
            let half = figure.and_then(|all| all.ratio(1, 2, Rounding::HalfEven));
            return Ok((half, exercise.counting));
        }
        Ok((figure, counting))
    }
}

/// The place of the column that the first line calls so, whatever the case.
fn place(first: &[&str], name: &str) -> Option<usize> {
    let first = first.get(..first.len().min(bounds::CELLS)).unwrap_or(first);
    let exact = first.iter().position(|there| there.trim() == name.trim());
    exact.or_else(|| {
        let wanted = key(&plain(name));
        first.iter().position(|there| key(&plain(there)) == wanted)
    })
}
