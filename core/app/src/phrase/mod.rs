//! Every word a lifter reads. A second language is one folder beside [`en`].
//!
//! Facts come from the domain as data; here they become sentences: short, plain, a coach's.

pub mod en;
