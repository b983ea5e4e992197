//! The log on disk.
