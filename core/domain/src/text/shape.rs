//! The keys of a table, declared once: the reader refuses any other, and the schema for editors
//! is made from the same declaration.

use crate::quantity::Kind;

/// The keys of one kind of table.
#[derive(Debug, Clone, Copy)]
pub struct Shape {
    /// The kind's name, unique in its format.
    pub name: &'static str,
    /// Its keys, in the order they are printed.
    pub keys: &'static [Key],
}

/// One key of a table.
#[derive(Debug, Clone, Copy)]
pub struct Key {
    /// The key.
    pub name: &'static str,
    /// What may stand behind it.
    pub holds: Holds,
    /// Whether the table is refused without it.
    pub required: bool,
}

/// What may stand behind a key.
#[derive(Debug, Clone, Copy)]
pub enum Holds {
    /// A text of at most so many characters.
    Text(usize),
    /// One of these words.
    Word(&'static [&'static str]),
    /// A whole number, least and greatest.
    Whole(i64, i64),
    /// True or false.
    Flag,
    /// A quantity in quotes; counts and efforts also as bare numbers.
    Quantity(Kind),
    /// A table.
    Table(&'static Shape),
    /// A list of at most so many of the same.
    List(&'static Holds, usize),
    /// Any of these.
    Any(&'static [Holds]),
}

impl Key {
    /// A key that may be left out.
    pub const fn may(name: &'static str, holds: Holds) -> Self {
        Self { name, holds, required: false }
    }

    /// A key that must be there.
    pub const fn must(name: &'static str, holds: Holds) -> Self {
        Self { name, holds, required: true }
    }
}
