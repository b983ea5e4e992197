//! A file that a coach sent, read and put beside what stands.

use barwright_domain::desk::Sent;
use barwright_domain::text::Fault as TextFault;
use barwright_store::Store;

use super::calendar::next_place;
use crate::facts::{Held, SentFile, sent};
use crate::fault::{Fault, Refused};

/// The file of a text, or what is wrong with it. One for another lifter is refused.
pub(crate) fn sent_file(
    store: &Store,
    held: &Held,
    text: &str,
) -> Result<Result<SentFile, Vec<TextFault>>, Fault> {
    let file = match Sent::read(text) {
        Ok(file) => file,
        Err(faults) => return Ok(Err(faults)),
    };
    if file.store != store.uuid() {
        return Err(Refused::SentToOther(file.lifter).into());
    }
    Ok(Ok(sent(held, next_place(store, held)?, file)))
}
