//! Which files this process has open as stores. A system that keeps its locks for a whole process
//! gives them all up when that process closes the file anywhere: what is open here must not be
//! opened again beside SQLite, not even to be looked at.

use std::sync::{Mutex, PoisonError};

use crate::error::StoreError;
use crate::files::Identity;
use crate::place::Place;

static HELD: Mutex<Vec<Identity>> = Mutex::new(Vec::new());

/// That this process has a file; given up with the value.
#[derive(Debug)]
pub(crate) struct Held(Identity);

impl Held {
    /// Takes note of a file that was just opened; none for memory, or where files have no numbers.
    pub(crate) fn take(place: &Place) -> Result<Option<Self>, StoreError> {
        let Place::File { path, on } = place else { return Ok(None) };
        let found = on.files.look(path).map_err(|error| StoreError::from_io(path, &error))?;
        let identity = found.map(|found| found.identity).unwrap_or_default();
        if identity == Identity::default() {
            return Ok(None);
        }
        HELD.lock().unwrap_or_else(PoisonError::into_inner).push(identity);
        Ok(Some(Self(identity)))
    }
}

impl Drop for Held {
    fn drop(&mut self) {
        let mut held = HELD.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(at) = held.iter().position(|identity| *identity == self.0) {
            held.swap_remove(at);
        }
    }
}

/// Whether this process has a file.
pub(crate) fn is_held(identity: Identity) -> bool {
    identity != Identity::default()
        && HELD.lock().unwrap_or_else(PoisonError::into_inner).contains(&identity)
}
