//! Care for the file of the records: checked whole, copied, and read back after damage.

use std::path::Path;

use barwright_store::{
    Place, Store, StoreError, discard, is_at, move_aside, salvage, take_its_place,
};

use crate::contract::{EngineError, RefusalCode};
use crate::engine::{Verdict, derive_anew, examine, guarded, verdict};
use crate::fault::Fault;
use crate::locale::Locale;
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

/// Reads what is good in a damaged file, page by page, into a new one at `path`, and keeps the
/// damaged one under a name of its own beside it. Nothing is deleted. No engine may have the file
/// open. What happened is said as the locale speaks.
///
/// # Errors
/// [`EngineError::Refused`] when there is no such file ([`RefusalCode::NotHere`]) or nothing is wrong
/// with it ([`RefusalCode::AlreadySo`]), and [`EngineError::Storage`] when it can't be read, the new
/// one can't be written, or nothing at all could be read: what was kept lies where the error says.
#[cfg_attr(feature = "uniffi", uniffi::export)]
pub fn recover(path: String, locale: String) -> Result<Recovered, EngineError> {
    recover_in(&Place::file(path), &locale)
}

/// As [`recover`], in a place of the store's kind.
///
/// # Errors
/// As there.
pub fn recover_in(place: &Place, locale: &str) -> Result<Recovered, EngineError> {
    let words = Locale::read(locale).words();
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
    match verdict(Store::open_in(place.clone())) {
        Verdict::Good(store, found) => {
            store.close().map_err(failed)?;
            let reason = say.nothing_damaged(found.mended);
            return Err(EngineError::refused(RefusalCode::AlreadySo, reason));
        }
        Verdict::Other(fault) => return Err(fault.said(words)),
        Verdict::Damaged => {}
    }
    let (mut store, read) = salvage(place).map_err(failed)?;
    if read.kept == 0 {
        // An empty file in its place would say that nothing was ever recorded.
        discard(store).map_err(failed)?;
        let aside = move_aside(place).map_err(failed)?;
        return Err(say.nothing_read(aside.path(), read.beyond));
    }
    derive_anew(&mut store).map_err(|fault: Fault| fault.said(words))?;
    let aside = take_its_place(store, place).map_err(failed)?;
    let aside = aside.path().display().to_string();
    let reason = say.recovered(&aside, &read);
    Ok(Recovered { aside, kept: read.kept, reason })
}

/// Puts a backup in the place of the records at `path`, after a copy of it was checked whole. The
/// file that was there is kept under a name of its own. No engine may have it open. Answers what
/// happened, in words of the locale.
///
/// # Errors
/// [`EngineError::Storage`] when there is no such backup, it is damaged, or the copy can't be
/// written: what was there is there still.
#[cfg_attr(feature = "uniffi", uniffi::export)]
pub fn restore(backup: String, path: String, locale: String) -> Result<String, EngineError> {
    restore_in(Path::new(&backup), &Place::file(path), &locale)
}

/// As [`restore`], in a place of the store's kind; the backup is on the same file system.
///
/// # Errors
/// As there.
pub fn restore_in(backup: &Path, to: &Place, locale: &str) -> Result<String, EngineError> {
    let words = Locale::read(locale).words();
    guarded(std::panic::AssertUnwindSafe(|| {
        let mended = |store: &mut Store| examine(store).map(drop);
        let (verified, aside) = barwright_store::restore(backup, to, mended)?;
        let aside = aside.map(|aside| aside.path().display().to_string());
        Ok(words.storage().restored(verified.events, aside.as_deref()))
    }))
    .and_then(|restored: Result<String, Fault>| restored)
    .map_err(|fault| fault.said(words))
}
