//! What has no words in it, for every language: figures, plates, a place in a file. A language takes
//! what it writes in the same way, and says the rest itself.

pub mod days;
pub mod figures;
pub mod files;
pub mod plates;
pub mod rows;
pub mod sets;
