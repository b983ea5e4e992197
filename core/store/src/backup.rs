//! Backups: a whole store in one file, checked before it is called a backup.

use std::path::Path;

use crate::error::{Damage, StoreError};
use crate::store::{Place, Store, Verified, as_file, log_of, look_before_opening};

impl Store {
    /// Writes a backup to a file that does not exist yet, and checks all of it.
    ///
    /// It is written under another name (`.part`) and gets its own when it is found good.
    ///
    /// # Errors
    /// [`StoreError::Exists`], or what writing and checking answer; no file is left then.
    pub fn backup(&self, to: &Path) -> Result<Verified, StoreError> {
        let to = self.place().named(to);
        let files = to.on().files;
        if to.is_there()? {
            return Err(StoreError::Exists { path: to.path().to_path_buf() });
        }
        let part = to.beside(".part");
        let written = self.write_copy(&part).and_then(|verified| {
            files
                .rename(part.path(), to.path())
                .and_then(|()| files.sync_names(to.path()))
                .map_err(|error| StoreError::from_io(to.path(), &error))?;
            Ok(verified)
        });
        if written.is_err() {
            remove(&part);
        }
        written
    }

    /// Writes the whole store to another file and checks all of it.
    pub(crate) fn write_copy(&self, part: &Place) -> Result<Verified, StoreError> {
        // One that an earlier attempt left when it was cut off.
        remove(part);
        look_before_opening(part)?;
        let connection = self.connection()?;
        // Made here, so that it is its owner's alone from the first byte on.
        let made = part.on().files.create(part.path());
        made.map_err(|error| StoreError::from_io(part.path(), &error))?;
        let name = match part.on().vfs {
            Some(_) => part.path().to_path_buf(),
            None => as_file(part.path()),
        };
        let name = name.to_str().ok_or_else(|| StoreError::Failed {
            path: part.path().to_path_buf(),
            code: 0,
            detail: "not a name in Unicode".into(),
        })?;
        connection
            .execute("VACUUM INTO ?1", [name])
            .map_err(|error| StoreError::from_sqlite(part.path(), error))?;
        let copy = Store::open_copy(part.clone())?;
        let verified = copy.verify()?;
        copy.close()?;
        if verified.events != self.last_seq() {
            return Err(self.damaged(Damage::Missing { seq: verified.events + 1 }));
        }
        Ok(verified)
    }
}

/// Removes an unfinished file of this call's own making.
pub(crate) fn remove(part: &Place) {
    let files = part.on().files;
    // Where there is none there is nothing to do; where it can't be removed, writing will say so.
    let _ = files.remove(part.path());
    let _ = files.remove(log_of(part).path());
}
