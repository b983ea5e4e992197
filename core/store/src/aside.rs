//! Files put aside under names of their own, and put in each other's place. Nothing is deleted that
//! holds anything.

use crate::chain::Chain;
use crate::error::StoreError;
use crate::files::Found;
use crate::pages::Pages;
use crate::place::{Place, log_of, remove};

/// Whether a store, or what is left of one, lies at a place: its file, or its write-ahead log alone.
///
/// # Errors
/// Where the file system does not say.
pub fn is_at(place: &Place) -> Result<bool, StoreError> {
    Ok(place.is_there()? || log_of(place).is_there()?)
}

/// The first name beside a file, by its number, that neither a store nor its log has.
fn unused(place: &Place, name: impl Fn(u32) -> String) -> Result<Place, StoreError> {
    let mut number = 1_u32;
    loop {
        let aside = place.beside(&name(number));
        if !is_at(&aside)? {
            return Ok(aside);
        }
        number = number.saturating_add(1);
    }
}

/// Copies a file and its write-ahead log to names of their own.
pub(crate) fn set_aside(place: &Place, name: &str) -> Result<Place, StoreError> {
    let files = place.on().files;
    let failed = |error| StoreError::from_io(place.path(), &error);
    let aside = unused(place, |number| format!("{name}{number}"))?;
    for (from, to) in [(place.clone(), aside.clone()), (log_of(place), log_of(&aside))] {
        if from.is_there()?
            && let Err(error) = files.copy(from.path(), to.path())
        {
            remove(&aside);
            return Err(failed(error));
        }
    }
    files.sync_names(place.path()).map_err(failed)?;
    Ok(aside)
}

/// Puts a closed store in the place of another file that was set aside.
pub(crate) fn replace(from: &Place, place: &Place) -> Result<(), StoreError> {
    let files = place.on().files;
    let failed = |error| StoreError::from_io(place.path(), &error);
    files.rename(from.path(), place.path()).map_err(failed)?;
    // Were it left, it would be told from the new file's own.
    if log_of(place).is_there()? {
        files.remove(log_of(place).path()).map_err(failed)?;
    }
    files.sync_names(place.path()).map_err(failed)
}

/// Gives the write-ahead log beside a file a name of its own.
pub(crate) fn put_log_aside(place: &Place) -> Result<(), StoreError> {
    let files = place.on().files;
    let failed = |error| StoreError::from_io(place.path(), &error);
    let aside = unused(place, |number| format!(".left-{number}-wal"))?;
    files.rename(log_of(place).path(), aside.path()).map_err(failed)?;
    files.sync_names(place.path()).map_err(failed)
}

/// Puts a write-ahead log aside that is not the file's own, where all that it says is in the file:
/// the file took another's place, and the log was left. Answers whether it was so.
pub(crate) fn put_left_log_aside(place: &Place) -> Result<bool, StoreError> {
    if !Pages::read(place)?.log_says_nothing_new() {
        return Ok(false);
    }
    put_log_aside(place)?;
    Ok(true)
}

/// Where nothing at all could be read, moves a file and its write-ahead log out of the way, so that
/// a new one can begin. Answers where they lie.
///
/// # Errors
/// What renaming answers.
pub fn move_aside(place: &Place) -> Result<Place, StoreError> {
    let files = place.on().files;
    let failed = |error| StoreError::from_io(place.path(), &error);
    let aside = set_aside(place, ".damaged-")?;
    for place in [place.clone(), log_of(place)] {
        if place.is_there()? {
            files.remove(place.path()).map_err(failed)?;
        }
    }
    files.sync_names(place.path()).map_err(failed)?;
    Ok(aside)
}

/// Whether a file that SQLite, or its header, calls something else holds a log of ours.
pub(crate) fn holds_a_log(place: &Place) -> bool {
    let small = |found: Found| !found.folder && found.bytes < 1 << 30;
    place.on().files.look(place.path()).ok().flatten().is_some_and(small)
        && Pages::read(place).is_ok_and(|pages| {
            pages.marks().is_some() && pages.rows().next(Chain::default()).is_some()
        })
}
