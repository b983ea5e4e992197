//! What is written is read again as it was, is as small as it looks, and is seen when it changes.

mod any;
mod form;
mod identity;
mod samples;
mod size;
mod usual;
mod walk;
