//! Backups: a whole store in one file, checked before it is called a backup.

use std::path::{Path, PathBuf};

use chrono::NaiveDate;

use crate::aside::{is_at, replace, set_aside};
use crate::error::{Damage, StoreError};
use crate::place::{Place, as_file, log_of, look_before_opening, remove};
use crate::reading::Verified;
use crate::store::Store;

impl Store {
    /// Writes a backup to a file that does not exist yet, and checks all of it.
    ///
    /// It is written under another name (`.part`) and gets its own when it is found good.
    ///
    /// # Errors
    /// [`StoreError::Exists`], or what writing and checking answer; no file is left then.
    pub fn backup(&self, to: &Path) -> Result<Verified, StoreError> {
        self.backup_in(self.place().named(to))
    }

    /// As [`Store::backup`], in a place that SQLite reaches from this store's.
    ///
    /// # Errors
    /// As there.
    pub fn backup_in(&self, to: Place) -> Result<Verified, StoreError> {
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

/// What a folder of backups has after one was kept there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept {
    /// The one that was made; none where the last is not old enough.
    pub made: Option<(PathBuf, Verified)>,
    /// The days of all that are there, in days since 1970-01-01, the oldest first.
    pub days: Vec<i32>,
    /// How many older ones were removed.
    pub removed: u32,
}

/// When backups are made, and how many are kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Schedule {
    /// Days from one to the next, from 1.
    pub every: u32,
    /// How many are kept, from 1.
    pub keep: u32,
}

/// How the names of kept backups begin and end; the day is between them.
const KEPT: (&str, &str) = ("barwright-", ".backup");

impl Store {
    /// Makes a backup in a folder where the last one there is old enough, checks it, and only then
    /// removes the oldest beyond those that are kept. Files of other names are left alone.
    ///
    /// A backup of a day to come, which a wrong clock made, delays none.
    ///
    /// # Errors
    /// As [`Store::backup`]; nothing was removed then.
    pub fn keep_backup(
        &mut self,
        folder: &Path,
        schedule: Schedule,
        today: i32,
    ) -> Result<Kept, StoreError> {
        let files = self.place().on().files;
        let failed = |error| StoreError::from_io(folder, &error);
        let mut days: Vec<i32> =
            files.list(folder).map_err(failed)?.iter().filter_map(|file| day_of(file)).collect();
        days.sort_unstable();
        let last = days.iter().rev().find(|day| **day <= today);
        let due = last.is_none_or(|last| today.abs_diff(*last) >= schedule.every.max(1));
        let mut kept = Kept { made: None, days, removed: 0 };
        if !due {
            return Ok(kept);
        }
        // What is in the copy is sealed there; a full disk here is no reason not to make one.
        let _ = self.checkpoint();
        let named = |day: i32| folder.join(format!("{}{}{}", KEPT.0, date(day), KEPT.1));
        let to = named(today);
        let verified = self.backup(&to)?;
        kept.days.push(today);
        kept.days.sort_unstable();
        while kept.days.len() > schedule.keep.max(1) as usize {
            let Some(at) = kept.days.iter().position(|day| *day != today) else { break };
            let day = kept.days.remove(at);
            files.remove(&named(day)).map_err(failed)?;
            kept.removed += 1;
        }
        files.sync_names(&to).map_err(failed)?;
        kept.made = Some((to, verified));
        Ok(kept)
    }
}

/// The day of a kept backup; none for files of other names.
fn day_of(file: &Path) -> Option<i32> {
    let name = file.file_name()?.to_str()?;
    let written = name.strip_prefix(KEPT.0)?.strip_suffix(KEPT.1)?;
    let day = NaiveDate::parse_from_str(written, "%Y-%m-%d").ok()?.to_epoch_days();
    (date(day) == written).then_some(day)
}

/// A day as `2026-11-28`.
fn date(day: i32) -> String {
    NaiveDate::from_epoch_days(day).unwrap_or(NaiveDate::MAX).to_string()
}

/// Puts a backup in the place of a store, after all of the copy was checked; the file that was there
/// is kept under a name of its own. Answers what the backup has, and where that file is.
///
/// `mended` looks at what is derived in the copy, and makes it anew where it does not fit: a backup
/// whose log is whole has all that it was made for.
///
/// No store may have the file open.
///
/// # Errors
/// What reading the backup, checking the copy and putting it in place answer; what was there is
/// there still.
pub fn restore<E: From<StoreError>>(
    from: &Path,
    to: &Place,
    mended: impl FnOnce(&mut Store) -> Result<(), E>,
) -> Result<(Verified, Option<Place>), E> {
    let from = to.named(from);
    let files = to.on().files;
    if !from.is_there()? {
        return Err(StoreError::NotThere { path: from.path().to_path_buf() }.into());
    }
    // Whoever has it keeps it.
    if to.is_there()? {
        match Store::open_in(to.clone()) {
            Err(error @ StoreError::InUse { .. }) => return Err(error.into()),
            Ok(store) => store.close()?,
            // It is damaged, or not ours: it is kept, whatever it is.
            Err(_) => {}
        }
    }
    let part = to.beside(".restoring");
    remove(&part);
    let copied = || -> Result<_, E> {
        for (from, part) in [(from.clone(), part.clone()), (log_of(&from), log_of(&part))] {
            if from.is_there()? {
                let copied = files.copy(from.path(), part.path());
                copied.map_err(|error| StoreError::from_io(part.path(), &error))?;
            }
        }
        // As a store of its own: what is missing beside it is told.
        let mut store = Store::open_in(part.clone())?;
        mended(&mut store)?;
        store.close()?;
        let copy = Store::open_copy(part.clone())?;
        let verified = copy.verify()?;
        copy.close()?;
        let aside = match is_at(to)? {
            true => Some(set_aside(to, ".before-")?),
            false => None,
        };
        replace(&part, to)?;
        Ok((verified, aside))
    };
    let restored = copied();
    if restored.is_err() {
        remove(&part);
    }
    restored
}
