//! Making the derived rows anew from the log.

use std::collections::BTreeSet;
use std::fmt::Write as _;

use barwright_domain::history::Change;
use rusqlite::Connection;

use super::fresh::Fresh;
use super::{HISTORY_VERSION, History, carry_out};
use crate::error::StoreError;
use crate::event::Event;
use crate::marks::Marks;
use crate::store::Store;
use crate::{schema, standing};

/// Folds the log into what is derived from it.
pub trait Derive {
    /// What its own readers of events answer.
    type Error: From<StoreError>;

    /// Takes the next event of the log and answers with the changes it makes.
    ///
    /// # Errors
    /// For an event that it can't read.
    fn event(&mut self, event: Event) -> Result<Vec<Change>, Self::Error>;

    /// What is left to say after the last event.
    ///
    /// # Errors
    /// For facts that it can't write.
    fn end(&mut self) -> Result<AtEnd, Self::Error>;
}

/// What a fold of the log comes to at its end.
#[derive(Debug, Default)]
pub struct AtEnd {
    /// Changes that no event was answered with.
    pub changes: Vec<Change>,
    /// The standing facts, by key.
    pub standing: Vec<(String, String)>,
}

impl Store {
    /// Whether the derived rows are of the version that this release makes. Where they are not
    /// (after an update, or in a file read from a damaged one), [`Store::rebuild`] makes them.
    #[must_use]
    pub fn history_is_current(&self) -> bool {
        self.marks().history == HISTORY_VERSION && !self.is_spoiled()
    }

    /// Makes all that is derived anew from the whole log, in one transaction: all of it or nothing.
    ///
    /// # Errors
    /// What `derive` answers, or what reading and writing do; what was there before stays.
    pub fn rebuild<D: Derive>(&mut self, derive: &mut D) -> Result<(), D::Error> {
        self.about_to_write()?;
        match self.rebuild_in_transaction(derive) {
            Ok(marks) => {
                self.made_anew(marks);
                Ok(self.unmoved_after()?)
            }
            Err(Failed::Derive(error)) => {
                self.roll_back();
                Err(error)
            }
            Err(Failed::Sqlite(error)) => Err(self.failed(error).into()),
        }
    }

    /// Appends events of another file of the same log, each with its checksum, and makes all that is
    /// derived anew, in one transaction: all of it or nothing. An empty store takes the other's id
    /// over with them, and is that store from then on.
    ///
    /// # Errors
    /// [`StoreError::Corrupt`] for the first event that does not join on to the one before, what
    /// `derive` answers, or what reading and writing do; what was there before stays.
    pub fn take_in<D: Derive>(
        &mut self,
        uuid: Option<String>,
        rows: &[(Event, u32)],
        derive: &mut D,
    ) -> Result<(), D::Error> {
        if let Some(why) = self.refuses() {
            return Err(why.into());
        }
        let before = self.head();
        let mut head = before;
        for (event, sum) in rows {
            head.follow(event, *sum).map_err(|damage| self.damaged(damage))?;
        }
        self.about_to_write()?;
        self.will_come(head.seq)?;
        let inserted = self.connection()?.execute_batch("BEGIN IMMEDIATE");
        let inserted = inserted
            .map_err(|error| self.sorted(error))
            .and_then(|()| self.insert_as_they_were(rows).map_err(|error| self.sorted(error)));
        if let Err(error) = inserted {
            return Err(self.failed_as(error).into());
        }
        self.set_head(head);
        let uuid = uuid.unwrap_or_else(|| self.marks().uuid.clone());
        match self.derive_in_transaction(uuid, derive) {
            Ok(marks) => {
                self.made_anew(marks);
                self.unmoved_after()?;
                // A failed one is met again by the next tap.
                let _ = self.checkpoint();
                Ok(())
            }
            Err(failed) => {
                self.set_head(before);
                match failed {
                    Failed::Derive(error) => {
                        self.roll_back();
                        Err(error)
                    }
                    Failed::Sqlite(error) => Err(self.failed(error).into()),
                }
            }
        }
    }

    fn rebuild_in_transaction<D: Derive>(&self, derive: &mut D) -> Result<Marks, Failed<D::Error>> {
        let connection = self.connection().map_err(|error| Failed::Derive(error.into()))?;
        connection.execute_batch("BEGIN IMMEDIATE")?;
        self.derive_in_transaction(self.marks().uuid.clone(), derive)
    }

    /// Makes all that is derived anew in the open transaction, and ends it.
    fn derive_in_transaction<D: Derive>(
        &self,
        uuid: String,
        derive: &mut D,
    ) -> Result<Marks, Failed<D::Error>> {
        let connection = self.connection().map_err(|error| Failed::Derive(error.into()))?;
        connection.execute_batch(
            "DELETE FROM pending; DELETE FROM done_set; DELETE FROM session;
             DELETE FROM week_volume; DELETE FROM exercise; DELETE FROM record;
             DELETE FROM standing; DELETE FROM total;",
        )?;
        connection.execute_batch(schema::NOTHING_YET)?;
        self.fold_into(connection, derive)?;
        let known = self.marks().clone();
        let marks = Marks { uuid, history: HISTORY_VERSION, coming: 0, ..known };
        marks.write(connection)?;
        connection.execute_batch("COMMIT")?;
        Ok(marks)
    }

    /// Writes what the log comes to into a connection whose derived rows are empty.
    fn fold_into<D: Derive>(
        &self,
        connection: &Connection,
        derive: &mut D,
    ) -> Result<(), Failed<D::Error>> {
        let mut fresh = Fresh::into(connection);
        self.each_event(1, |event| {
            for change in derive.event(event).map_err(Failed::Derive)? {
                fresh.apply(&change)?;
            }
            Ok::<(), Failed<D::Error>>(())
        })?;
        let rest = derive.end().map_err(Failed::Derive)?;
        for change in &rest.changes {
            fresh.apply(change)?;
        }
        fresh.end()?;
        for (key, body) in rest.standing {
            standing::put(connection, &key, Some(&body), self.last_seq())?;
        }
        Ok(())
    }

    /// Folds the whole log beside the file, in memory, and compares all that is derived with what
    /// comes out, row by row. Nothing is written.
    ///
    /// # Errors
    /// What `derive` answers, or what reading does.
    pub fn differing<D: Derive>(&mut self, derive: &mut D) -> Result<Differing, D::Error> {
        let mut found = Differing { looked_at: 0, differing: 0 };
        let fresh = Store::in_memory()?;
        let other = fresh.connection()?;
        let begun = other.execute_batch("BEGIN").map_err(|error| fresh.sorted(error));
        begun.map_err(D::Error::from)?;
        match self.fold_into(other, derive) {
            Ok(()) => {}
            Err(Failed::Derive(error)) => return Err(error),
            Err(Failed::Sqlite(error)) => return Err(fresh.sorted(error).into()),
        }
        // As they stand once what is queued is carried out.
        let carried_out = match CarriedOut::begin(self) {
            Err(StoreError::Spoiled { .. }) => {
                return Ok(Differing { differing: 1, ..found });
            }
            carried_out => carried_out?,
        };
        let history = carried_out.history();
        for (table, columns, key) in COMPARED {
            let sql = format!("SELECT {columns} FROM {table} ORDER BY {key}");
            let [here, there] = [history.whole(&sql), fresh.whole(&sql)];
            let there = there?;
            found.looked_at += there.len() as u64;
            found.differing += match here {
                Ok(here) => apart(&here, &there),
                Err(StoreError::Corrupt { .. } | StoreError::Spoiled { .. }) => 1,
                Err(error) => return Err(error.into()),
            };
        }
        // And as readers look them up.
        if history.check_all().is_err() {
            found.differing = found.differing.max(1);
        }
        Ok(found)
    }

    /// All rows of a query, each as one text that says its values.
    pub(super) fn whole(&self, sql: &str) -> Result<Vec<String>, StoreError> {
        let read = |row: &rusqlite::Row<'_>| {
            let mut text = String::new();
            let mut at = 0;
            while let Ok(value) = row.get_ref(at) {
                let _ = write!(text, "{value:?} ");
                at += 1;
            }
            Ok(text)
        };
        self.connection()?
            .prepare(sql)
            .and_then(|mut statement| statement.query_map([], read)?.collect())
            .map_err(|error| self.sorted(error))
    }
}

/// The derived rows with what is queued carried out, in a transaction that is taken back when it has
/// been looked at.
struct CarriedOut<'a>(&'a Store);

impl<'a> CarriedOut<'a> {
    fn begin(store: &'a mut Store) -> Result<Self, StoreError> {
        if store.is_spoiled() {
            return Err(store.spoiled("rows"));
        }
        if store.pending() == 0 {
            return Ok(Self(store));
        }
        let connection = store.connection()?;
        let carried_out =
            connection.execute_batch("BEGIN IMMEDIATE").and_then(|()| carry_out(connection));
        if let Err(error) = carried_out {
            return Err(match store.sorted(error) {
                StoreError::Corrupt { .. } => {
                    store.roll_back();
                    store.spoiled("queued changes")
                }
                _ if store.is_read_only() => store.spoiled("queued changes"),
                error => store.failed_as(error),
            });
        }
        Ok(Self(store))
    }

    fn history(&self) -> History<'_> {
        History::of_tables(self.0)
    }
}

impl Drop for CarriedOut<'_> {
    fn drop(&mut self) {
        if let Ok(connection) = self.0.connection()
            && !connection.is_autocommit()
        {
            // Where it fails the transaction is still open, and the next tap's start says so.
            let _ = connection.execute_batch("ROLLBACK");
        }
    }
}

/// What is compared: every table with its columns and its order. A standing fact's number is that
/// of the tap that wrote it, which a fold of the log does not know.
const COMPARED: [(&str, &str, &str); 6] = [
    ("standing WHERE key <> ''", "key, body", "key"),
    ("session", "*", "session"),
    ("week_volume", "*", "week"),
    ("done_set", "*", "session, entry, number"),
    ("exercise", "*", "exercise"),
    ("record", "*", "exercise, apart, measure"),
];

/// Rows that are in one of two lists only.
fn apart(here: &[String], there: &[String]) -> u64 {
    if here == there {
        return 0;
    }
    let known: BTreeSet<&String> = there.iter().collect();
    let extra = here.iter().filter(|row| !known.contains(row)).count();
    let known: BTreeSet<&String> = here.iter().collect();
    let missing = there.iter().filter(|row| !known.contains(row)).count();
    extra.max(missing).max(1) as u64
}

/// What [`Store::differing`] found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Differing {
    /// Derived rows and standing facts that the log comes to.
    pub looked_at: u64,
    /// Those that the file says otherwise, lacks, or has beside them; at least so many.
    pub differing: u64,
}

enum Failed<E> {
    Derive(E),
    Sqlite(rusqlite::Error),
}

impl<E> From<rusqlite::Error> for Failed<E> {
    fn from(error: rusqlite::Error) -> Self {
        Self::Sqlite(error)
    }
}

impl<E: From<StoreError>> From<StoreError> for Failed<E> {
    fn from(error: StoreError) -> Self {
        Self::Derive(error.into())
    }
}
