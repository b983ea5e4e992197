//! What a table's columns are, guessed from its first line and its cells.

use std::collections::BTreeMap;

use super::bounds;
use super::cell;
use super::date::{Dates, clock};
use super::header::Called;
use super::model::{DistanceUnit, Field, Separator};
use super::names::{exercises, unknown_words};
use crate::catalogue::find::key;
use crate::catalogue::{Catalogue, Exercise};
use crate::quantity::{MassUnit, Numerals};
use crate::shown::{excerpt, plain};

/// What was found in a table. It is written as a file of columns ([`Guess::write`]): a person looks
/// at it, puts it right and decides what can't be guessed.
#[derive(Debug)]
pub struct Guess<'a> {
    pub(super) separator: Separator,
    pub(super) header: bool,
    pub(super) rows: usize,
    /// The columns, each with its place and whether its header says so.
    pub(super) at: BTreeMap<Field, (usize, bool)>,
    pub(super) columns: Vec<Seen>,
    pub(super) dates: Found<Dates>,
    pub(super) numerals: Found<Numerals>,
    pub(super) unit: Found<MassUnit>,
    pub(super) distance: DistanceUnit,
    /// Names of exercises that are known, with how many rows have them.
    pub(super) known: Vec<(String, &'a Exercise, usize)>,
    /// Those that are not, with the nearest that are.
    pub(super) unknown: Vec<(String, Vec<&'a Exercise>, usize)>,
    /// Words of sets and sides that are not known.
    pub(super) words: Vec<(Field, Vec<String>)>,
}

/// What was found out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Found<T> {
    /// It is this, and a cell shows it.
    So(T, String),
    /// It is this by the usual way: nothing speaks for another.
    Usual(T),
    /// A cell could be either: a person decides.
    Either(String),
}

/// A column as it was seen.
#[derive(Debug)]
pub(super) struct Seen {
    /// What the first line calls it, cut to 80 characters; empty where nothing does.
    pub(super) name: String,
    /// Some of its cells.
    pub(super) shown: String,
    /// Whether another column has the same name, so that its number tells it.
    pub(super) by_number: bool,
}

/// What stands beside a line of a guess, as data.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Note {
    /// Guessed from so many rows: look at it before the table is taken.
    Head(usize),
    /// The first line says so, as it calls the column; some of its cells.
    ByHeader(String, String),
    /// Nothing but its cells says so; its number, and some of them.
    ByCells(u16, String),
    /// Which column is it? It must be named.
    Missing(Field),
    /// None of repetitions, seconds and distance was found: one must be named.
    NoAmount,
    /// This cell shows how dates are written.
    DatesShown(String),
    /// This date could be read either way.
    DatesEither(String),
    /// This cell shows how numbers are written.
    DecimalsShown(String),
    /// This number could be thousands.
    DecimalsEither(String),
    /// This shows the unit.
    UnitShown(String),
    /// Nothing says the unit.
    UnitEither,
    /// A column that is not read, by its number and name, and some of its cells.
    NotRead(u16, String, String),
    /// Words of the table that are not known.
    UnknownWords(Field, Vec<String>),
    /// Exercises that are known follow.
    KnownExercises,
    /// A name of the table, the exercise, and the rows that have it.
    Known(String, String, usize),
    /// Exercises follow that are not known.
    UnknownExercises,
    /// So many rows have the name that follows.
    Unknown(usize),
    /// So many more names are left out.
    More(usize),
}

impl<'a> Guess<'a> {
    /// From a table's first line, or its first row, and the rows after it; exercises are those of
    /// `catalogue`, `today` is in days since 1970-01-01.
    #[must_use]
    pub fn of(
        separator: Separator,
        first: &[String],
        rows: &[Vec<String>],
        catalogue: &'a Catalogue,
        today: i32,
    ) -> Self {
        let header = !first.iter().any(|cell| is_data(cell, today));
        let mut all: Vec<&[String]> = rows.iter().map(Vec::as_slice).collect();
        if !header {
            all.insert(0, first);
        }
        let width = all.iter().map(|row| row.len()).max().unwrap_or(0).max(first.len());
        let cells: Vec<Vec<&str>> = (0..width.min(bounds::CELLS))
            .map(|at| {
                let column = all.iter().filter_map(|row| row.get(at));
                column.map(|cell| cell.trim()).filter(|cell| !cell.is_empty()).collect()
            })
            .collect();
        let name = |at: usize| if header { first.get(at).map(String::as_str) } else { None };
        let names: Vec<&str> = (0..cells.len()).map(|at| name(at).unwrap_or_default()).collect();
        let columns = seen(&names, &cells);
        let at = placed(&names, &cells, &all, catalogue, today);
        let of = |field: Field| at.get(&field).and_then(|(at, _)| cells.get(*at));
        let none = Vec::new();
        let dates = dates(of(Field::Date).unwrap_or(&none), today);
        let numbers = [Field::Load, Field::Reps, Field::Distance, Field::Seconds];
        let numerals = numerals(numbers.into_iter().filter_map(of));
        let called = |field| {
            let (at, _) = at.get(&field)?;
            names.get(*at).map(|name| Called::of(name))
        };
        let unit = unit(called(Field::Load).and_then(|it| it.mass), of(Field::Load));
        let distance = called(Field::Distance).and_then(|it| it.distance).unwrap_or_default();
        let (known, unknown) = exercises(of(Field::Exercise).unwrap_or(&none), catalogue);
        let kinds = [Field::Kind, Field::Set, Field::Side].into_iter();
        let words = kinds.filter_map(|field| Some((field, unknown_words(field, of(field)?))));
        let words = words.filter(|(_, words)| !words.is_empty()).collect();
        Self {
            separator,
            header,
            rows: all.len(),
            at,
            columns,
            dates,
            numerals,
            unit,
            distance,
            known,
            unknown,
            words,
        }
    }
}

/// Whether a cell is of a set and no name of a column.
fn is_data(cell: &str, today: i32) -> bool {
    let cell = cell.trim();
    let number = cell::decimal(cell, Numerals::Point).or(cell::decimal(cell, Numerals::Comma));
    number.is_some()
        || [Dates::Iso, Dates::DayFirst, Dates::MonthFirst]
            .iter()
            .any(|dates| dates.read(cell, today).is_ok())
}

fn seen(names: &[&str], cells: &[Vec<&str>]) -> Vec<Seen> {
    let each = names.iter().zip(cells).map(|(name, cells)| {
        let mut shown: Vec<&str> = Vec::new();
        for cell in cells {
            if shown.len() < bounds::SHOWN && !shown.contains(cell) {
                shown.push(cell);
            }
        }
        let same = names.iter().filter(|other| key(other) == key(name)).count();
        Seen {
            name: plain(name.trim()).chars().take(bounds::NAME).collect(),
            shown: excerpt(&shown.join(" · ")),
            by_number: name.trim().is_empty()
                || same > 1
                || name.trim().chars().count() > bounds::NAME,
        }
    });
    each.collect()
}

/// Which column is what: those whose header says it best first, each with cells that can be it; then
/// what cells alone show.
fn placed(
    names: &[&str],
    cells: &[Vec<&str>],
    rows: &[&[String]],
    catalogue: &Catalogue,
    today: i32,
) -> BTreeMap<Field, (usize, bool)> {
    let called: Vec<Called> = names.iter().map(|name| Called::of(name)).collect();
    let mut scored: Vec<(usize, Field, usize)> = Vec::new();
    for (at, called) in called.iter().enumerate() {
        let named =
            Field::ALL.into_iter().filter_map(|field| Some((called.names(field)?, field, at)));
        scored.extend(named);
    }
    // Stable: of equals the order of fields, then that of the columns stands.
    scored.sort_by_key(|(score, field, _)| (std::cmp::Reverse(*score), *field));
    let mut at: BTreeMap<Field, (usize, bool)> = BTreeMap::new();
    let taken = |at: &BTreeMap<Field, (usize, bool)>, column: usize| {
        at.values().any(|(taken, _)| *taken == column)
    };
    for (_, field, column) in scored {
        let can_be = cells.get(column).is_some_and(|cells| can_be(field, cells, today));
        if can_be && !at.contains_key(&field) && !taken(&at, column) {
            at.insert(field, (column, true));
        }
    }
    for field in [Field::Date, Field::Exercise, Field::Unit] {
        if at.contains_key(&field) {
            continue;
        }
        let known = |cells: &[&str]| {
            cells.iter().filter(|cell| catalogue.find(&plain(cell)).is_some()).count()
        };
        let found = cells.iter().enumerate().find(|(column, cells)| {
            let cells: &[&str] = cells.get(..cells.len().min(200)).unwrap_or_default();
            // Few names are known before somebody says what they are.
            let is = match field {
                Field::Exercise => known(cells) * 4 >= cells.len(),
                _ => can_be(field, cells, today),
            };
            // A column of times may have the dates, too.
            let timed = field == Field::Date
                && at.get(&Field::Time).is_some_and(|(time, _)| time == column);
            !cells.is_empty() && is && (timed || !taken(&at, *column))
        });
        if let Some((column, _)) = found {
            at.insert(field, (column, false));
        }
    }
    if let (Some((date, by_header)), None) = (at.get(&Field::Date).copied(), at.get(&Field::Time))
        && cells.get(date).is_some_and(|cells| can_be(Field::Time, cells, today))
    {
        at.insert(Field::Time, (date, by_header));
    }
    as_numbered(&mut at, rows);
    // What is no time of a session, or no duration of a set, is left out.
    if at.get(&Field::Time).is_some_and(|(time, _)| {
        at.get(&Field::Date).is_none_or(|(date, _)| !begins_sessions(rows, *date, *time))
    }) && let Some((time, _)) = at.remove(&Field::Time)
        && !at.contains_key(&Field::Seconds)
        && called.get(time).is_some_and(|called| called.names(Field::Seconds).is_some())
        && cells.get(time).is_some_and(|cells| can_be(Field::Seconds, cells, today))
    {
        at.insert(Field::Seconds, (time, true));
    }
    if let (Some((seconds, _)), Some((reps, _))) = (at.get(&Field::Seconds), at.get(&Field::Reps))
        && both(rows, *seconds, *reps)
    {
        at.remove(&Field::Seconds);
    }
    // A table has one of both.
    if at.contains_key(&Field::Rpe) {
        at.remove(&Field::Left);
    }
    at
}

/// Whether a time is that of a session: few of them on each day.
fn begins_sessions(rows: &[&[String]], date: usize, time: usize) -> bool {
    let mut days: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for row in rows {
        if let (Some(date), Some(time)) = (row.get(date), row.get(time)) {
            // The date alone, where a time stands behind it.
            let date = date.split([' ', 'T']).next().unwrap_or_default();
            let times = days.entry(date).or_default();
            if times.len() < 4 && !times.contains(&time.as_str()) {
                times.push(time);
            }
        }
    }
    days.values().all(|times| times.len() < 4)
}

/// "Sets" may be how many, or which: numbers that count the rows of an exercise on a day are which,
/// and where each has one row they are how many.
fn as_numbered(at: &mut BTreeMap<Field, (usize, bool)>, rows: &[&[String]]) {
    let of = |field: Field| at.get(&field).map(|(at, _)| *at);
    let (Some(date), Some(exercise)) = (of(Field::Date), of(Field::Exercise)) else { return };
    let (field, column) = match (of(Field::Set), of(Field::Sets)) {
        (Some(set), None) => (Field::Set, set),
        (None, Some(sets)) => (Field::Sets, sets),
        _ => return,
    };
    let mut groups: BTreeMap<(&str, &str), Vec<u16>> = BTreeMap::new();
    for row in rows {
        let cell = |at: usize| row.get(at).map(|cell| cell.trim()).filter(|cell| !cell.is_empty());
        if let (Some(date), Some(exercise), Some(number)) =
            (cell(date), cell(exercise), cell(column))
            && let Some(number) = cell::count(number, Numerals::Point)
        {
            groups.entry((date, exercise)).or_default().push(number);
        }
    }
    let several = groups.values().filter(|numbers| numbers.len() > 1);
    let counts = |numbers: &Vec<u16>| {
        numbers.is_sorted_by(|one, next| one < next) || numbers.is_sorted_by(|one, next| one > next)
    };
    let (all, counting) = several.fold((0_usize, 0_usize), |(all, counting), numbers| {
        (all + 1, counting + usize::from(counts(numbers)))
    });
    let many = groups.values().flatten().any(|number| *number > 1);
    let is = match field {
        Field::Sets if all > 0 && counting * 2 > all => Field::Set,
        Field::Set if all == 0 && many => Field::Sets,
        same => same,
    };
    if let Some(found) = at.remove(&field) {
        at.insert(is, found);
    }
}

/// Whether half the rows have something in both columns: then the one says nothing of the other.
fn both(rows: &[&[String]], one: usize, other: usize) -> bool {
    let says = |row: &[String], at: usize| {
        row.get(at).is_some_and(|cell| cell.chars().any(|c| c.is_ascii_digit() && c != '0'))
    };
    let count = rows.iter().filter(|row| says(row, one) && says(row, other)).count();
    count * 2 > rows.len()
}

/// Whether most cells can be of a field that the first line names; a table has slips.
fn can_be(field: Field, cells: &[&str], today: i32) -> bool {
    let cells = cells.get(..cells.len().min(1_000)).unwrap_or_default();
    let most = |is: &dyn Fn(&str) -> bool| {
        let count = cells.iter().filter(|cell| is(cell)).count();
        count * 2 > cells.len()
    };
    let both = [Numerals::Point, Numerals::Comma];
    let number = |cell: &str| both.iter().any(|numerals| cell::decimal(cell, *numerals).is_some());
    let text = |cell: &str| cell.chars().any(char::is_alphabetic);
    match field {
        Field::Date => !matches!(dates(cells, today), Found::Usual(_)),
        Field::Time => most(&|cell| {
            let dated =
                |dates: &Dates| dates.read(cell, today).is_ok_and(|(_, time)| time.is_some());
            clock(cell).is_some()
                || [Dates::Iso, Dates::DayFirst, Dates::MonthFirst].iter().any(dated)
        }),
        Field::Title => most(&|cell| text(cell) && cell::mass_unit(cell).is_none()),
        Field::Exercise => most(&text),
        // A type may be anything's: one word at least is a set's.
        Field::Kind => {
            most(&|cell| !number(cell))
                && cells.iter().any(|cell| cell::kind(cell, &[], &[]).is_some())
        }
        Field::Set => most(&|cell| {
            cell::count(cell, Numerals::Point).is_some() || cell::kind(cell, &[], &[]).is_some()
        }),
        Field::Side => most(&|cell| cell::side(cell, &[], &[]).is_some()),
        Field::Sets => most(&|cell| {
            let count = cell::count(cell, Numerals::Point);
            count.is_some_and(|count| (1..=bounds::SETS_OF_A_ROW).contains(&count))
        }),
        Field::Reps => most(&|cell| both.iter().any(|it| cell::reps(cell, *it).is_some())),
        Field::Seconds => most(&|cell| both.iter().any(|it| cell::seconds(cell, *it).is_some())),
        Field::Distance => most(&|cell| {
            both.iter().any(|it| cell::distance(cell, DistanceUnit::Metre, *it).is_some())
        }),
        Field::Load => {
            most(&|cell| both.iter().any(|it| cell::load(cell, MassUnit::Kilogram, *it).is_some()))
        }
        Field::Unit => most(&|cell| cell::mass_unit(cell).is_some()),
        Field::Rpe => most(&|cell| cell::rpe(cell).is_some()),
        Field::Left => most(&|cell| cell::left(cell).is_some()),
    }
}

/// How dates are written; the usual way where the cells are none.
fn dates(cells: &[&str], today: i32) -> Found<Dates> {
    let cells = cells.get(..cells.len().min(bounds::LOOKED_AT)).unwrap_or_default();
    let most = |dates: &Dates| {
        cells.iter().filter(|cell| dates.read(cell, today).is_ok()).count() * 2 > cells.len()
    };
    let shown = |cell: &str| excerpt(cell);
    let first = cells.first().copied().unwrap_or_default();
    if most(&Dates::Iso) {
        return Found::So(Dates::Iso, shown(first));
    }
    let (mut day, mut month, mut either) = (None, None, None);
    let (mut readable, mut same) = (0_usize, None);
    for cell in cells {
        let of = |dates: Dates| dates.read(cell, today).ok().map(|(day, _)| day);
        readable += 1;
        match (of(Dates::DayFirst), of(Dates::MonthFirst)) {
            (Some(one), Some(other)) if one == other => same = same.or(Some(cell)),
            (Some(_), Some(_)) => either = either.or(Some(cell)),
            (Some(_), None) => day = day.or(Some(cell)),
            (None, Some(_)) => month = month.or(Some(cell)),
            (None, None) => readable -= 1,
        }
    }
    if readable * 2 <= cells.len() {
        let digits = Dates::pattern("%Y%m%d").filter(&most);
        return digits.map_or(Found::Usual(Dates::Iso), |dates| Found::So(dates, shown(first)));
    }
    match (day, month, either, same) {
        (Some(cell), None, ..) => Found::So(Dates::DayFirst, shown(cell)),
        (None, Some(cell), ..) => Found::So(Dates::MonthFirst, shown(cell)),
        // Points stand between a day, a month and a year in that order alone (DIN 5008, from memory).
        (None, None, Some(cell), _) if cell.contains('.') => {
            Found::So(Dates::DayFirst, shown(cell))
        }
        (None, None, None, Some(cell)) => Found::So(Dates::DayFirst, shown(cell)),
        (_, _, Some(cell), _) => Found::Either(shown(cell)),
        (Some(cell), ..) => Found::Either(shown(cell)),
        _ => Found::Usual(Dates::Iso),
    }
}

/// How numbers are written.
fn numerals<'c>(columns: impl Iterator<Item = &'c Vec<&'c str>>) -> Found<Numerals> {
    let (mut point, mut either) = (None, None);
    for cell in columns.flatten() {
        let digits = |mark: char| {
            let (whole, part) = cell.split_once(mark)?;
            let part = part.chars().take_while(char::is_ascii_digit).count();
            whole.ends_with(|c: char| c.is_ascii_digit()).then_some(part).filter(|part| *part > 0)
        };
        match (digits(','), digits('.')) {
            (Some(3), None) => either = either.or(Some(cell)),
            (Some(_), None) => return Found::So(Numerals::Comma, excerpt(cell)),
            (None, Some(_)) => point = point.or(Some(cell)),
            _ => {}
        }
    }
    match (point, either) {
        (Some(cell), None) => Found::So(Numerals::Point, excerpt(cell)),
        (_, Some(cell)) => Found::Either(excerpt(cell)),
        (None, None) => Found::Usual(Numerals::Point),
    }
}

/// The unit of loads: as the header says, or as all of them have it beside them.
fn unit(by_header: Option<MassUnit>, loads: Option<&Vec<&str>>) -> Found<MassUnit> {
    if let Some(unit) = by_header {
        return Found::So(unit, unit.symbol().to_owned());
    }
    let units = loads.into_iter().flatten().map(|cell| {
        let word = cell.find(char::is_alphabetic).and_then(|at| cell.get(at..));
        (cell, word.and_then(cell::mass_unit))
    });
    let mut first = None;
    for (cell, unit) in units {
        let Some(unit) = unit else { return Found::Either(String::new()) };
        first = first.or(Some((unit, excerpt(cell))));
    }
    first.map_or(Found::Either(String::new()), |(unit, cell)| Found::So(unit, cell))
}
