//! Care for the file of the records: checked whole, copied, and read back after damage.

use std::path::Path;

use barwright_store::{Store, StoreError, is_at, quarantine, salvage};

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
    let words = Words::default();
    guarded(|| read_back(Path::new(&path), words)).map_err(|broken| broken.said(words))?
}

fn read_back(path: &Path, words: Words) -> Result<Recovered, EngineError> {
    let say = words.storage();
    if !is_at(path) {
        let reason = say.no_file(&path.display().to_string());
        return Err(EngineError::refused(RefusalCode::NotHere, reason));
    }
    let failed = |error: StoreError| say.error(&error);
    if !is_damaged(path).map_err(failed)? {
        return Err(EngineError::refused(RefusalCode::AlreadySo, say.nothing_damaged()));
    }
    let aside = quarantine(path).map_err(failed)?.path;
    // A log whose file is gone has nothing that could be read by itself: a new file begins.
    if !aside.exists() {
        Store::open(path).and_then(Store::close).map_err(failed)?;
        return Ok(recovered(&aside, 0, 0, words));
    }
    let kept_aside = |error: StoreError| say.kept_aside(&error, &aside);
    let (mut store, read) = salvage(&aside, path).map_err(kept_aside)?;
    derive_anew(&mut store).map_err(|fault: Fault| fault.said(words))?;
    store.close().map_err(kept_aside)?;
    Ok(recovered(&aside, read.kept, read.beyond, words))
}

/// Whether the file is a store of ours that is damaged.
fn is_damaged(path: &Path) -> Result<bool, StoreError> {
    let found = Store::open(path).and_then(|store| {
        store.verify()?;
        store.close()
    });
    match found {
        Ok(()) => Ok(false),
        Err(StoreError::Corrupt { .. }) => Ok(true),
        Err(error) => Err(error),
    }
}

fn recovered(aside: &Path, kept: u64, beyond: u64, words: Words) -> Recovered {
    let aside = aside.display().to_string();
    let reason = words.storage().recovered(&aside, kept, beyond);
    Recovered { aside, kept, reason }
}
