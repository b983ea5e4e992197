//! Reading TOML that a person wrote: every fault at once, each with its place.
//!
//! [`read`] hands the file's root [`Table`] to a reader, which asks it for keys. A key gives an
//! [`Item`], and an item is read as what it should be: a text, a whole number, a quantity, a
//! table, a list. What can't be read is noted as a [`Fault`] and answers `None`, so the reader
//! goes on and finds the next. The keys of a table are declared once, in a [`Shape`]; any other is
//! a fault that names the nearest. [`bounds`] says how much of a file from outside is read.
//!
//! ```
//! use barwright_domain::quantity::{Kind, Mass};
//! use barwright_domain::text::{self, Holds, Key, Shape};
//!
//! static BAR: Shape = Shape {
//!     name: "bar",
//!     keys: &[
//!         Key::must("name", Holds::Text(40)),
//!         Key::may("mass", Holds::Quantity(Kind::Mass)),
//!     ],
//! };
//! let bar = text::read("name = \"long bar\"\nmass = \"20 kg\"", &BAR, |bar| {
//!     let name = bar.need("name").and_then(|item| item.text(40));
//!     let mass = bar.get("mass").and_then(|item| item.mass());
//!     Some((name?.to_string(), mass.unwrap_or(Mass::ZERO)))
//! });
//! assert!(bar.is_ok());
//! let faults = text::read("nam = \"long bar\"\nmass = \"20 stone\"", &BAR, |bar| {
//!     bar.need("name")?;
//!     Some(())
//! });
//! assert_eq!(faults.unwrap_err().len(), 1); // `nam` is no key, but `name` is
//! ```

pub mod bounds;
pub mod edit;
mod fault;
mod item;
mod places;
mod quoted;
mod read;
mod shape;
mod slug;
mod typed;

pub use fault::{Expected, Fault, Found, Piece, Problem, RowKind, Syntax};
pub use item::{Item, Table};
pub(crate) use quoted::quoted;
pub use read::{At, at, read, read_bytes};
pub use shape::{Holds, Key, Shape};
pub(crate) use slug::slug;
pub use typed::{place_at, typed};
