//! The whole file looked at, and the one verdict on it.

use barwright_store::{Store, StoreError};

use super::derive::{Anew, derive_in};
use super::standing::Failure;
use crate::fault::Fault;
use crate::phrase::Words;

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
    /// It in the words of a language.
    #[must_use]
    pub fn said(&self, words: Words) -> String {
        let Self { entries, derived, mended, sealed } = *self;
        words.storage().examined(entries, derived, mended, sealed)
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
pub(crate) fn verdict(opened: Result<Store, StoreError>) -> Verdict {
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
    let found = store.differing(&mut Anew::of(store)?)?;
    if found.differing > 0 {
        derive_in(store)?;
        let again = store.differing(&mut Anew::of(store)?)?;
        if again.differing > 0 {
            return Err(Unfit::Other(Fault::Broken("rows made anew differ from themselves")));
        }
        mended = found.differing;
    }
    Ok(Examined { entries: whole.events, derived: found.looked_at, mended, sealed: store.sealed() })
}
