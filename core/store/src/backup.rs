//! Backups: a whole store in one file, checked before it is called a backup.

use std::path::Path;

use crate::error::StoreError;
use crate::store::{Store, Verified, as_file, log_of, look_before_opening};

impl Store {
    /// Writes a backup to a file that does not exist yet, and checks all of it.
    ///
    /// It is written under another name (`.part`) and gets its own when it is found good.
    ///
    /// # Errors
    /// [`StoreError::Exists`], or what writing and checking answer; no file is left then.
    pub fn backup(&self, to: &Path) -> Result<Verified, StoreError> {
        if to.exists() {
            return Err(StoreError::Exists { path: to.to_path_buf() });
        }
        let mut part = to.as_os_str().to_owned();
        part.push(".part");
        let part = Path::new(&part);
        let written = self.write_backup(part).and_then(|verified| {
            std::fs::rename(part, to).map_err(|error| StoreError::from_io(to, &error))?;
            sync_folder(to)?;
            Ok(verified)
        });
        if written.is_err() {
            remove(part);
        }
        written
    }

    fn write_backup(&self, part: &Path) -> Result<Verified, StoreError> {
        // One that an earlier attempt left when it was cut off.
        remove(part);
        look_before_opening(part)?;
        let connection = self.connection()?;
        let name = as_file(part);
        let name = name.to_str().ok_or_else(|| StoreError::Failed {
            path: part.to_path_buf(),
            code: 0,
            detail: "not a name in Unicode".into(),
        })?;
        connection
            .execute("VACUUM INTO ?1", [name])
            .map_err(|error| StoreError::from_sqlite(part, error))?;
        let copy = Store::open(part)?;
        let verified = copy.verify()?;
        copy.close()?;
        Ok(verified)
    }
}

/// Removes an unfinished file of this call's own making.
pub(crate) fn remove(part: &Path) {
    // Where there is none there is nothing to do; where it can't be removed, writing will say so.
    let _ = std::fs::remove_file(part);
    let _ = std::fs::remove_file(log_of(part));
}

/// Makes a rename in a file's folder durable, where the system can.
pub(crate) fn sync_folder(file: &Path) -> Result<(), StoreError> {
    let folder = file.parent().filter(|folder| !folder.as_os_str().is_empty());
    let folder = folder.unwrap_or(Path::new("."));
    if cfg!(unix) {
        std::fs::File::open(folder)
            .and_then(|folder| folder.sync_all())
            .map_err(|error| StoreError::from_io(file, &error))?;
    }
    Ok(())
}
