//! Where a store is kept, and the files that lie there.

use std::path::{Path, PathBuf};

use crate::error::{Damage, Foreign, StoreError};
use crate::files::{FileSystem, folder_of};

/// Where a store is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Place {
    /// In memory, gone with the value.
    Memory,
    /// In a file.
    File {
        /// Its path.
        path: PathBuf,
        /// The file system that it is on.
        on: FileSystem,
    },
}

impl Place {
    /// A file on the system's own file system.
    pub fn file(path: impl Into<PathBuf>) -> Self {
        Self::File { path: path.into(), on: FileSystem::native() }
    }

    /// A file with another name on the same file system; on the system's own, seen from memory.
    #[must_use]
    pub fn named(&self, path: impl Into<PathBuf>) -> Self {
        Self::File { path: path.into(), on: self.on() }
    }

    /// The file beside this one with something added to its name.
    pub(crate) fn beside(&self, end: &str) -> Self {
        let mut name = self.path().as_os_str().to_owned();
        name.push(end);
        self.named(name)
    }

    /// The file system it is on; the system's own for memory.
    pub(crate) fn on(&self) -> FileSystem {
        match self {
            Self::Memory => FileSystem::native(),
            Self::File { on, .. } => on.clone(),
        }
    }

    /// Whether a file, or a folder, is there.
    pub(crate) fn is_there(&self) -> Result<bool, StoreError> {
        let found = self.on().files.look(self.path());
        found.map(|found| found.is_some()).map_err(|error| StoreError::from_io(self.path(), &error))
    }

    /// The path; a name in brackets for memory.
    pub fn path(&self) -> &Path {
        match self {
            Self::Memory => Path::new("(memory)"),
            Self::File { path, .. } => path,
        }
    }
}

/// A path as SQLite takes it for a file, whatever it is called: not for an address, nor for memory.
pub(crate) fn as_file(path: &Path) -> PathBuf {
    if path.is_absolute() { path.to_path_buf() } else { Path::new(".").join(path) }
}

/// The write-ahead log beside a file.
pub(crate) fn log_of(place: &Place) -> Place {
    place.beside("-wal")
}

/// Tells apart what SQLite calls by one code.
pub(crate) fn look_before_opening(place: &Place) -> Result<(), StoreError> {
    let (files, path) = (place.on().files, place.path());
    let look = |path: &Path| files.look(path).map_err(|error| StoreError::from_io(path, &error));
    let there = look(path)?;
    if there.is_some_and(|found| found.folder) {
        let found = Foreign::Folder;
        return Err(StoreError::NotAStore { path: path.to_path_buf(), found });
    }
    if there.is_some() {
        return Ok(());
    }
    if look(folder_of(path))?.is_none() {
        return Err(StoreError::NoFolder { path: path.to_path_buf() });
    }
    if log_of(place).is_there()? {
        return Err(StoreError::Corrupt { path: path.to_path_buf(), damage: Damage::LogAlone });
    }
    Ok(())
}

/// Removes an unfinished file of this call's own making.
pub(crate) fn remove(part: &Place) {
    let files = part.on().files;
    // Where there is none there is nothing to do; where it can't be removed, writing will say so.
    let _ = files.remove(part.path());
    let _ = files.remove(log_of(part).path());
}
