//! Care for the file of the records: checked whole, copied, and read back after damage.

use barwright_store::{Place, Store, StoreError, is_at, quarantine, salvage};

use crate::contract::{EngineError, RefusalCode};
use crate::engine::{derive_anew, guarded};
use crate::fault::Fault;
use crate::phrase::Words;

/// What was read back from a damaged file.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Recovered {
    /// Where the damaged file lies now, as it was.
    pub aside: String,
    /// Entries of the log that are in the new file: the first ones, without a gap.
    pub kept: u64,
    /// What happened, in words.
    pub reason: String,
}

/// Sets a damaged file aside, under a name of its own beside it, and reads what is good in it into
/// a new one at `path`. Nothing is deleted. No engine may have the file open.
///
/// # Errors
/// [`EngineError::Refused`] when there is no such file ([`RefusalCode::NotHere`]) or nothing is wrong
/// with it ([`RefusalCode::AlreadySo`]), and [`EngineError::Storage`] when it can't be read or the new
/// one can't be written: what was kept lies where the error says.
#[cfg_attr(feature = "uniffi", uniffi::export)]
pub fn recover(path: String) -> Result<Recovered, EngineError> {
    recover_in(&Place::file(path))
}

/// As [`recover`], in a place of the store's kind.
///
/// # Errors
/// As there.
pub fn recover_in(place: &Place) -> Result<Recovered, EngineError> {
    let words = Words::default();
    guarded(std::panic::AssertUnwindSafe(|| read_back(place, words)))
        .map_err(|broken| broken.said(words))?
}

fn read_back(place: &Place, words: Words) -> Result<Recovered, EngineError> {
    let say = words.storage();
    let failed = |error: StoreError| say.error(&error);
    if !is_at(place).map_err(failed)? {
        let reason = say.no_file(&place.path().display().to_string());
        return Err(EngineError::refused(RefusalCode::NotHere, reason));
    }
    if !is_damaged(place).map_err(failed)? {
        return Err(EngineError::refused(RefusalCode::AlreadySo, say.nothing_damaged()));
    }
    let aside = quarantine(place).map_err(failed)?;
    // A log whose file is gone has nothing that could be read by itself: a new file begins.
    if !aside.file {
        Store::open_in(place.clone()).and_then(Store::close).map_err(failed)?;
        return Ok(recovered(aside.place.path(), 0, 0, words));
    }
    let aside = aside.place;
    let kept_aside = |error: StoreError| say.kept_aside(&error, aside.path());
    let (mut store, read) = salvage(&aside, place).map_err(kept_aside)?;
    derive_anew(&mut store).map_err(|fault: Fault| fault.said(words))?;
    store.close().map_err(kept_aside)?;
    Ok(recovered(aside.path(), read.kept, read.beyond, words))
}

/// Whether the file is a store of ours that is damaged.
fn is_damaged(place: &Place) -> Result<bool, StoreError> {
    let found = Store::open_in(place.clone()).and_then(|store| {
        store.verify()?;
        store.close()
    });
    match found {
        Ok(()) => Ok(false),
        Err(StoreError::Corrupt { .. }) => Ok(true),
        Err(error) => Err(error),
    }
}

fn recovered(aside: &std::path::Path, kept: u64, beyond: u64, words: Words) -> Recovered {
    let aside = aside.display().to_string();
    let reason = words.storage().recovered(&aside, kept, beyond);
    Recovered { aside, kept, reason }
}
