//! Whether the files under an open store are still the ones that were opened: the system goes on
//! writing to a file that was renamed or replaced, and nobody would find again what is written.

use crate::error::StoreError;
use crate::files::Found;
use crate::place::{Place, log_of};

/// What lay at the two names when the store last wrote to them.
#[derive(Debug, Clone)]
pub(crate) struct Watch {
    file: Found,
    log: Option<Found>,
    log_place: Place,
}

impl Watch {
    /// Takes both as they are; none in memory, or where there is no file.
    pub(crate) fn begin(place: &Place) -> Result<Option<Self>, StoreError> {
        let log_place = log_of(place);
        let Some(file) = look(place)? else { return Ok(None) };
        Ok(Some(Self { file, log: look(&log_place)?, log_place }))
    }

    /// Before something is written: nobody else wrote to either, and both can be written.
    pub(crate) fn before(&self, place: &Place) -> Result<(), StoreError> {
        let (file, log) = (look(place)?, look(&self.log_place)?);
        let read_only = |found: Option<Found>| found.is_some_and(|found| found.read_only);
        if read_only(file) || read_only(log) {
            return Err(StoreError::ReadOnly { path: place.path().to_path_buf() });
        }
        if file != Some(self.file) || (self.log.is_some() && log != self.log) {
            return Err(moved(place));
        }
        Ok(())
    }

    /// After the write-ahead log was written: it is where it was, and so is the file.
    pub(crate) fn after(&mut self, place: &Place) -> Result<(), StoreError> {
        let (file, log) = (look(place)?, look(&self.log_place)?);
        let same = |log: Found| self.log.is_none_or(|before| before.identity == log.identity);
        if file != Some(self.file) || !log.is_some_and(same) {
            return Err(moved(place));
        }
        self.log = log;
        Ok(())
    }

    /// After the file was written, at a checkpoint: it is where it was.
    pub(crate) fn moved_in(&mut self, place: &Place) -> Result<(), StoreError> {
        let Some(file) = look(place)? else { return Err(moved(place)) };
        if file.identity != self.file.identity {
            return Err(moved(place));
        }
        self.file = file;
        self.log = look(&self.log_place)?;
        Ok(())
    }

    /// After a write of ours that failed: it may have written a part.
    pub(crate) fn refresh(&mut self, place: &Place) {
        let same = |before: Found, now: Found| before.identity == now.identity;
        if let Ok(Some(file)) = look(place)
            && same(self.file, file)
        {
            self.file = file;
        }
        match (self.log, look(&self.log_place)) {
            (Some(before), Ok(Some(log))) if same(before, log) => self.log = Some(log),
            (None, Ok(log)) => self.log = log,
            _ => {}
        }
    }

    /// Whether the file lies elsewhere now, so that writing to it harms nobody.
    pub(crate) fn is_elsewhere(&self, place: &Place) -> bool {
        let identity = |found: Option<Found>| found.map(|found| found.identity);
        look(place).is_ok_and(|found| identity(found) != Some(self.file.identity))
    }

    /// Whether the write-ahead log is still where it was.
    pub(crate) fn has_its_log(&self) -> bool {
        let identity = |found: Option<Found>| found.map(|found| found.identity);
        look(&self.log_place).is_ok_and(|found| identity(found) == identity(self.log))
    }
}

fn look(place: &Place) -> Result<Option<Found>, StoreError> {
    place.on().files.look(place.path()).map_err(|error| StoreError::from_io(place.path(), &error))
}

fn moved(place: &Place) -> StoreError {
    StoreError::Moved { path: place.path().to_path_buf() }
}
