//! Old records from a table of any make: which column is what, and its rows as sets.
//!
//! A small TOML file says what a table's columns are ([`Columns`], `docs/columns-format.md`); it can
//! be guessed from the table ([`Guess`]) and is then a person's to put right. With it each row is read
//! as a set or refused with a reason ([`Reader`]), and what was done on one day becomes a session
//! ([`Sessions`]). Taking a table apart into cells is left to whoever has the file.

mod cell;
mod date;
mod guess;
mod header;
mod model;
mod names;
mod read;
mod row;
mod sessions;
mod shapes;
mod write;

pub use date::{Dates, Undated};
pub use guess::{Guess, Note};
pub use model::{Column, Columns, DistanceUnit, Field, Named, Separator, SetWords};
pub use row::{BadRow, Lifted, NoColumn, Reader};
pub use sessions::Sessions;
pub use shapes::COLUMNS;

pub mod bounds {
    //! The most that is read of a table from outside.

    /// Bytes of a whole table.
    pub const BYTES: u64 = 64 << 20;
    /// Rows of a table.
    pub const ROWS: u64 = 300_000;
    /// Rows that a guess looks at.
    pub const LOOKED_AT: usize = 20_000;
    /// Columns of a table; cells beyond are not read.
    pub const CELLS: usize = 256;
    /// Characters of a name or a title.
    pub const NAME: usize = 120;
    /// Characters of any other cell that is read.
    pub const CELL: usize = 60;
    /// Sets of a session.
    pub const SETS: usize = 500;
    /// Sessions of a day.
    pub const SESSIONS: usize = 20;
    /// Sets that one row may stand for.
    pub const SETS_OF_A_ROW: u16 = 30;
    /// Exercises that a file of columns may name.
    pub const EXERCISES: usize = 300;
    /// Names of each kind, known and not, that a guess tells of: its file stays one that is read.
    pub const TOLD: usize = 150;
    /// Cells of a column that a guess shows, and exercises that are near a name.
    pub const SHOWN: usize = 3;
    /// Words of one kind that a file of columns may name.
    pub const WORDS: usize = 40;
}
