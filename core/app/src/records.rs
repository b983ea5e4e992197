//! Care for the file of the records: checked whole, copied, and read back after damage.

use barwright_store::{
    Place, Store, StoreError, discard, is_at, move_aside, salvage, take_its_place,
};

use crate::contract::{EngineError, RefusalCode};
use crate::engine::{Anew, Failure, derive_anew, derive_in, guarded};
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

/// Reads what is good in a damaged file, page by page, into a new one at `path`, and keeps the
/// damaged one under a name of its own beside it. Nothing is deleted. No engine may have the file
/// open.
///
/// # Errors
/// [`EngineError::Refused`] when there is no such file ([`RefusalCode::NotHere`]) or nothing is wrong
/// with it ([`RefusalCode::AlreadySo`]), and [`EngineError::Storage`] when it can't be read, the new
/// one can't be written, or nothing at all could be read: what was kept lies where the error says.
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
/// happened, in words.
///
/// # Errors
/// [`EngineError::Storage`] when there is no such backup, it is damaged, or the copy can't be
/// written: what was there is there still.
#[cfg_attr(feature = "uniffi", uniffi::export)]
pub fn restore(backup: String, path: String) -> Result<String, EngineError> {
    let words = Words::default();
    guarded(std::panic::AssertUnwindSafe(|| {
        let to = Place::file(path);
        let (verified, aside) = barwright_store::restore(std::path::Path::new(&backup), &to)?;
        let aside = aside.map(|aside| aside.path().display().to_string());
        Ok(words.storage().restored(verified.events, aside.as_deref()))
    }))
    .and_then(|restored: Result<String, Fault>| restored)
    .map_err(|fault| fault.said(words))
}

/// What a whole file was looked at for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Examined {
    /// Entries of the log, each with its checksum.
    pub entries: u64,
    /// Rows and facts derived from them, each compared with what the log comes to.
    pub derived: u64,
    /// Of those, how many did not fit and were made anew; at least so many.
    pub mended: u64,
    /// The entry that the log was last sealed at: a loss of it, or of one before it, is known.
    pub sealed: u64,
}

impl Examined {
    /// It in words.
    #[must_use]
    pub fn said(&self) -> String {
        let Self { entries, derived, mended, sealed } = *self;
        Words::default().storage().examined(entries, derived, mended, sealed)
    }
}

/// What a file is. There is one such word for one file, and opening, checking and recovering all say
/// it: what opening does not look at, it does not speak of.
pub(crate) enum Verdict {
    /// The log is whole, and all that is derived from it fits, now.
    Good(Box<Store>, Examined),
    /// The log is damaged, or its file: recovering reads what is good.
    Damaged,
    /// It can't be told: the file is another's, in use, or can't be read.
    Other(Fault),
}

/// The verdict on a file that was opened, or was not.
fn verdict(opened: Result<Store, StoreError>) -> Verdict {
    let examined = opened.map_err(Unfit::Store).and_then(|mut store| {
        let found = examine(&mut store)?;
        Ok((store, found))
    });
    match examined {
        Ok((store, found)) => Verdict::Good(Box::new(store), found),
        Err(Unfit::Store(StoreError::Corrupt { .. })) => Verdict::Damaged,
        Err(unfit) => Verdict::Other(unfit.into()),
    }
}

/// Why a file did not pass.
pub(crate) enum Unfit {
    /// By the store.
    Store(StoreError),
    /// Otherwise.
    Other(Fault),
}

impl From<StoreError> for Unfit {
    fn from(error: StoreError) -> Self {
        Self::Store(error)
    }
}

impl From<Failure> for Unfit {
    fn from(failure: Failure) -> Self {
        match failure {
            Failure::Store(error) => Self::Store(error),
            failure => Self::Other(failure.into()),
        }
    }
}

impl From<Unfit> for Fault {
    fn from(unfit: Unfit) -> Self {
        match unfit {
            Unfit::Store(error) => Self::Store(error),
            Unfit::Other(fault) => fault,
        }
    }
}

/// Looks at everything in an open store: the file's structure, every entry of the log, and all that
/// is derived from it, row by row. Derived rows that do not fit are made anew.
pub(crate) fn examine(store: &mut Store) -> Result<Examined, Unfit> {
    let mut mended = 0;
    let whole = match store.verify() {
        // Where only derived rows are spoiled, making them anew mends the file's structure too.
        Err(damaged @ StoreError::Corrupt { .. }) => {
            if derive_in(store).is_err() {
                return Err(damaged.into());
            }
            mended = 1;
            store.verify()?
        }
        whole => whole?,
    };
    let found = store.differing(&mut Anew::new())?;
    if found.differing > 0 {
        derive_in(store)?;
        let again = store.differing(&mut Anew::new())?;
        if again.differing > 0 {
            return Err(Unfit::Other(Fault::Broken("rows made anew differ from themselves")));
        }
        mended = found.differing;
    }
    Ok(Examined { entries: whole.events, derived: found.looked_at, mended, sealed: store.sealed() })
}
