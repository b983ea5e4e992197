//! The store's one row about itself: who it is, how far the log is sealed, whether it is in use.

use rusqlite::{Connection, Result, params};

use crate::digest;
use crate::event::Seq;

/// The row of the table `store`.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct Marks {
    pub(crate) uuid: String,
    /// The format's version, as the file's header says it too.
    pub(crate) format: u32,
    /// Version of the derived rows; 0 when they are to be made anew.
    pub(crate) history: u32,
    /// The last event that was there, for certain, at the last seal, and its checksum.
    pub(crate) sealed: Seq,
    pub(crate) sealed_sum: u32,
    /// Somebody opened the file and has not closed it: a write-ahead log lies beside it.
    pub(crate) in_use: bool,
    /// Chance, made anew when the file is given up: a log whose first transaction has it began then.
    pub(crate) token: u32,
    /// Which write-ahead log that is (see [`crate::wal::Log::born`]); none until it is known.
    pub(crate) log_born: Option<u32>,
    /// The last event of a file that was being taken in, 0 where none is: all of it is one
    /// transaction, so that events far ahead in a write-ahead log tell of no tap that is gone.
    pub(crate) coming: Seq,
}

const COLUMNS: &str = "uuid, format, history, sealed, sealed_sum, in_use, token, log_born, coming";
/// How many those are.
const COUNT: usize = 9;

impl Marks {
    /// Reads the row. An error of conversion where it does not match its digest.
    pub(crate) fn read(connection: &Connection) -> Result<Self> {
        let sql = format!("SELECT {COLUMNS}, sum FROM store WHERE id = 1");
        connection.prepare_cached(&sql)?.query_row([], |row| {
            if digest::of_row(row, COUNT)? != row.get::<_, u32>(COUNT)? {
                return Err(digest::mismatch("the store's own row"));
            }
            Ok(Self {
                uuid: row.get(0)?,
                format: row.get(1)?,
                history: row.get(2)?,
                sealed: row.get(3)?,
                sealed_sum: row.get(4)?,
                in_use: row.get(5)?,
                token: row.get(6)?,
                log_born: row.get(7)?,
                coming: row.get(8)?,
            })
        })
    }

    /// Writes the row, within the caller's transaction or in one of its own.
    pub(crate) fn write(&self, connection: &Connection) -> Result<()> {
        let values = params![
            self.uuid,
            self.format,
            self.history,
            self.sealed,
            self.sealed_sum,
            self.in_use,
            self.token,
            self.log_born,
            self.coming
        ];
        let sum = digest::of(values)?;
        let sql = format!(
            "INSERT OR REPLACE INTO store (id, {COLUMNS}, sum)
             VALUES (1, ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)"
        );
        digest::execute(connection, &sql, values, &[&sum])
    }

    /// The same with another token, of SQLite's own source of chance.
    pub(crate) fn with_new_token(self, connection: &Connection) -> Result<Self> {
        let token = connection.query_row("SELECT random() & 0xffffffff", [], |row| row.get(0))?;
        Ok(Self { token, ..self })
    }
}

/// What can be told of the row from its page alone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Glimpse {
    pub(crate) uuid: String,
    pub(crate) sealed: Seq,
    pub(crate) token: u32,
    pub(crate) log_born: Option<u32>,
}
