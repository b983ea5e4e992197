//! What a coach sends back to one lifter: changes, each with what it was decided on, as a file.

use std::fmt::{self, Write};

use chrono::NaiveDate;

use crate::equipment::exactly;
use crate::owners::TrackId;
use crate::quantity::{Kind, Mass, MassUnit};
use crate::text::{self, Expected, Fault, Holds, Item, Key, Problem, Shape, Table, quoted};

/// The most changes of a file.
pub const MOST_CHANGES: usize = 50;
/// The most files of which it is remembered what was taken.
pub const MOST_SENT: usize = 200;
/// Characters of an id, and of a name.
const NAME: usize = 80;
/// Characters of a plan's text.
const PLAN: usize = 120_000;
/// The greatest number of a log.
const LOG: i64 = i64::MAX;

/// A file of changes for one lifter.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sent {
    /// Names the file for ever: a change of it is taken once.
    pub id: String,
    /// What the coach calls the lifter.
    pub lifter: String,
    /// The id of the lifter's store.
    pub store: String,
    /// The number of the last entry that it was decided on.
    pub entry: u64,
    /// The local date on which it was decided, in days since 1970-01-01.
    pub day: i32,
    /// The changes, 1 to [`MOST_CHANGES`], in the order in which they are taken.
    pub changes: Vec<SentChange>,
}

/// A change.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SentChange {
    /// Names it within its file.
    pub id: String,
    /// What it is.
    pub what: SentWhat,
}

/// What a change is, with what it was decided on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SentWhat {
    /// A reference max is this.
    Max {
        /// The exercise, by its slug.
        exercise: String,
        /// What it was; none where there was none.
        was: Option<Mass>,
        /// What it is.
        to: Mass,
    },
    /// A working load is this; it is held where that is what it was.
    Load {
        /// What owns it.
        track: TrackId,
        /// The exercise, by its slug.
        exercise: String,
        /// What it was.
        was: Mass,
        /// What it is.
        to: Mass,
    },
    /// An exercise is exchanged from now on, wherever the plan has it.
    Swap {
        /// The one that goes, by its slug.
        exercise: String,
        /// The one that comes, by its slug.
        with: String,
        /// The log's number of the plan's text that it was decided on.
        on: u64,
    },
    /// The plan is this, mended: weeks, dates and loads stay.
    Plan {
        /// Its text.
        text: String,
        /// The log's number of the plan's text that it was decided on.
        on: u64,
    },
    /// A week of the plan is done once more: the plan goes on from it.
    Week {
        /// The week, from 1.
        week: u16,
        /// The session that came next, as its week and number: "4.1"; none after the last.
        next: Option<String>,
    },
}

const ID: Holds = Holds::Text(NAME);
const NUMBER: Holds = Holds::Whole(1, LOG);

/// The whole file.
static SENT: Shape = Shape {
    name: "changes",
    keys: &[
        Key::must("changes", ID),
        Key::must("lifter", ID),
        Key::must("store", ID),
        Key::must("entry", NUMBER),
        Key::must("day", ID),
        Key::must("change", Holds::List(&Holds::Table(&CHANGE), MOST_CHANGES)),
    ],
};

/// A change.
static CHANGE: Shape = Shape {
    name: "change",
    keys: &[
        Key::must("id", ID),
        Key::may("max", ID),
        Key::may("load", ID),
        Key::may("track", Holds::Whole(0, u32::MAX as i64)),
        Key::may("was", Holds::Quantity(Kind::Mass)),
        Key::may("to", Holds::Quantity(Kind::Mass)),
        Key::may("swap", ID),
        Key::may("with", ID),
        Key::may("plan", Holds::Text(PLAN)),
        Key::may("on", NUMBER),
        Key::may("week", Holds::Whole(1, 1_000)),
        Key::may("next", ID),
    ],
};

/// Each says what a change is.
const KINDS: &[&str] = &["max", "load", "swap", "plan", "week"];

impl Sent {
    /// Reads a file of changes.
    ///
    /// # Errors
    /// Every fault at once, in the file's order.
    pub fn read(text: &str) -> Result<Self, Vec<Fault>> {
        text::read(text, &SENT, sent)
    }

    /// Whether a text means to be such a file and no plan.
    #[must_use]
    pub fn is_meant(text: &str) -> bool {
        let begins = |line: &str| {
            line.strip_prefix("changes").is_some_and(|rest| rest.trim_start().starts_with('='))
        };
        text.lines().take_while(|line| !line.starts_with('[')).any(begins)
    }

    /// It as a TOML file that reads back the same.
    #[must_use]
    pub fn write(&self) -> String {
        let mut out = String::new();
        // Writing to a text can't fail.
        let _ = self.write_to(&mut out);
        out
    }

    fn write_to(&self, out: &mut String) -> fmt::Result {
        let date = NaiveDate::from_epoch_days(self.day).map(|date| date.to_string());
        writeln!(out, "changes = {}", quoted(&self.id))?;
        writeln!(out, "lifter = {}", quoted(&self.lifter))?;
        writeln!(out, "store = {}", quoted(&self.store))?;
        writeln!(out, "entry = {}", self.entry)?;
        writeln!(out, "day = {}", quoted(date.unwrap_or_default()))?;
        for change in &self.changes {
            writeln!(out, "\n[[change]]\nid = {}", quoted(&change.id))?;
            change.what.write_to(out)?;
        }
        Ok(())
    }
}

impl SentWhat {
    fn write_to(&self, out: &mut String) -> fmt::Result {
        let mass = |mass: &Mass| quoted(exactly(*mass, MassUnit::Kilogram));
        match self {
            Self::Max { exercise, was, to } => {
                writeln!(out, "max = {}", quoted(exercise))?;
                if let Some(was) = was {
                    writeln!(out, "was = {}", mass(was))?;
                }
                writeln!(out, "to = {}", mass(to))
            }
            Self::Load { track, exercise, was, to } => {
                writeln!(out, "load = {}", quoted(exercise))?;
                writeln!(out, "track = {}", track.0)?;
                writeln!(out, "was = {}\nto = {}", mass(was), mass(to))
            }
            Self::Swap { exercise, with, on } => {
                let (exercise, with) = (quoted(exercise), quoted(with));
                writeln!(out, "swap = {exercise}\nwith = {with}\non = {on}")
            }
            Self::Plan { text, on } => {
                // Line for line as the plan's own file; quotes and backslashes can't end it.
                let text = text.replace("\r\n", "\n").replace('\\', "\\\\").replace('"', "\\\"");
                writeln!(out, "on = {on}\nplan = \"\"\"\n{text}\"\"\"")
            }
            Self::Week { week, next } => {
                writeln!(out, "week = {week}")?;
                next.iter().try_for_each(|next| writeln!(out, "next = {}", quoted(next)))
            }
        }
    }
}

fn sent(root: &Table<'_>) -> Option<Sent> {
    let name = |key| root.need(key).and_then(|item| item.text(NAME)).map(str::to_owned);
    let (id, lifter, store) = (name("changes"), name("lifter"), name("store"));
    let entry = number(root.need("entry"));
    let day = root.need("day").and_then(|item| {
        let date = NaiveDate::parse_from_str(item.text(NAME)?, "%Y-%m-%d").ok();
        if date.is_none() {
            item.fault(Problem::Unread { expected: Expected::Text });
        }
        Some(date?.to_epoch_days())
    });
    let list = root.need("change").and_then(|item| item.list(MOST_CHANGES));
    let mut changes: Vec<(SentChange, usize)> = Vec::new();
    for item in list.unwrap_or_default() {
        let line = item.line();
        let change = item.table(&CHANGE, |table| {
            let change = change(table)?;
            let known = changes.iter().find(|(known, _)| known.id == change.id);
            if let Some((_, first_line)) = known {
                table.fault_at("id", Problem::Repeated { first_line: *first_line });
            }
            Some(change)
        });
        changes.extend(change.map(|change| (change, line)));
    }
    let changes = changes.into_iter().map(|(change, _)| change).collect();
    Some(Sent { id: id?, lifter: lifter?, store: store?, entry: entry?, day: day?, changes })
}

/// A number of the log.
fn number(item: Option<Item<'_>>) -> Option<u64> {
    u64::try_from(item?.whole(1, LOG)?).ok()
}

fn change(table: &Table<'_>) -> Option<SentChange> {
    let name = |key| table.need(key).and_then(|item| item.text(NAME)).map(str::to_owned);
    let mass = |key| table.need(key).and_then(|item| item.mass());
    let id = name("id");
    for (at, kind) in KINDS.iter().enumerate() {
        table.clash(kind, KINDS.get(at + 1..).unwrap_or_default());
    }
    let kind = KINDS.iter().find(|kind| table.has(kind));
    let what = match kind.copied() {
        Some("max") => {
            let was = table.get("was").map(|item| item.mass());
            let (exercise, to) = (name("max"), positive(table, mass("to")));
            let was = was.map_or(Some(None), |was| was.map(Some));
            Some(SentWhat::Max { exercise: exercise?, was: was?, to: to? })
        }
        Some("load") => {
            let track = table.need("track").and_then(|item| item.whole(0, u32::MAX.into()));
            let track = track.and_then(|track| u32::try_from(track).ok()).map(TrackId);
            let (exercise, was, to) = (name("load"), mass("was"), mass("to"));
            Some(SentWhat::Load { track: track?, exercise: exercise?, was: was?, to: to? })
        }
        Some("swap") => {
            let (exercise, with, on) = (name("swap"), name("with"), number(table.need("on")));
            Some(SentWhat::Swap { exercise: exercise?, with: with?, on: on? })
        }
        Some("plan") => {
            let text = table.need("plan").and_then(|item| item.lines(PLAN)).map(str::to_owned);
            let on = number(table.need("on"));
            Some(SentWhat::Plan { text: text?, on: on? })
        }
        Some(_) => {
            let week = table.need("week").and_then(|item| item.whole(1, 1_000));
            let next = table.get("next").map(|item| item.text(NAME).map(str::to_owned));
            let next = next.map_or(Some(None), |next| next.map(Some));
            let week = week.and_then(|week| u16::try_from(week).ok());
            Some(SentWhat::Week { week: week?, next: next? })
        }
        None => {
            table.missing(Problem::MissingOneOf { keys: KINDS });
            None
        }
    };
    Some(SentChange { id: id?, what: what? })
}

/// A max is more than nothing.
fn positive(table: &Table<'_>, mass: Option<Mass>) -> Option<Mass> {
    let mass = mass?;
    if mass <= Mass::ZERO {
        table.fault_at("to", Problem::Unread { expected: Expected::Mass });
        return None;
    }
    Some(mass)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn usual() -> Sent {
        let kg = |kg: i32| Mass::whole(kg, MassUnit::Kilogram);
        let pounds = Mass::whole(135, MassUnit::Pound);
        let (squat, front) = ("back-squat".to_owned(), "front-squat".to_owned());
        let plan = "name = \"Two \\\"rows\\\"\"\nweeks = 2\n\"\"\"\n".to_owned();
        let all = [
            SentWhat::Max { exercise: squat.clone(), was: Some(kg(150)), to: kg(142) },
            SentWhat::Max { exercise: front.clone(), was: None, to: pounds },
            SentWhat::Load { track: TrackId(3), exercise: front.clone(), was: kg(-20), to: pounds },
            SentWhat::Swap { exercise: squat, with: front, on: 12 },
            SentWhat::Plan { text: plan, on: 12 },
            SentWhat::Week { week: 3, next: Some("4.1".to_owned()) },
            SentWhat::Week { week: 3, next: None },
        ];
        let changes = all.into_iter().enumerate();
        let changes = changes.map(|(at, what)| SentChange { id: at.to_string(), what }).collect();
        let (lifter, store) = ("a \"name\"".to_owned(), "store".to_owned());
        Sent { id: "autumn".to_owned(), lifter, store, entry: 12, day: 20_514, changes }
    }

    #[test]
    fn what_is_written_reads_back_the_same() {
        let sent = usual();
        let text = sent.write();
        assert_eq!(Sent::read(&text).as_ref(), Ok(&sent), "{text}");
        assert!(Sent::is_meant(&text) && !Sent::is_meant("name = \"changes = 1\"\n"));
    }

    #[test]
    fn what_a_hostile_file_says_is_a_fault_and_never_read() {
        let good = usual().write();
        let spoiled = [
            good.replace("to = \"142 kg\"", "to = \"0 kg\""),
            good.replace("to = \"142 kg\"", "to = \"90000 kg\""),
            good.replace("id = \"1\"", "id = \"0\""),
            good.replace("id = \"1\"", "id = \"\\u001b[2J\""),
            good.replace("day = \"", "day = \"99999-"),
            good.replace("entry = 12", "entry = -1"),
            good.replace("track = 3", "track = 99999999999"),
            good.replace("week = 3", "week = 0"),
            good.replace("swap = ", "max = \"plank\"\nswap = "),
            good.replace("swap = ", "swop = "),
            good.replace("autumn", &"a".repeat(81)),
            format!("{good}\nrun = \"something\"\n"),
            format!("changes = {}", "[".repeat(100_000)),
            format!("{good}# {}", "x".repeat(140_000)),
            good.clone() + &"[[change]]\nid = \"x\"\nweek = 1\n".repeat(60),
        ];
        for text in spoiled {
            let head: String = text.chars().take(900).collect();
            assert!(text != good && Sent::read(&text).is_err(), "{head}");
        }
    }
}
