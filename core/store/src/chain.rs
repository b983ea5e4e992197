//! The chain of checksums that runs through the log.

use crate::error::Damage;
use crate::event::{ABSENT, Event, Seq};

/// Follows the chain of checksums along rows in the log's order.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Chain {
    /// The last number that was found good.
    pub(crate) seq: Seq,
    /// Its checksum.
    pub(crate) checksum: u32,
}

impl Chain {
    /// Checks the next row and moves on to it.
    pub(crate) fn follow(&mut self, event: &Event, sum: u32) -> Result<(), Damage> {
        let next = self.seq + 1;
        if event.seq != next && !(event.kind == ABSENT && event.seq > next) {
            return Err(Damage::Missing { seq: next });
        }
        if event.sum(self.checksum) != sum {
            return Err(Damage::Checksum { seq: event.seq });
        }
        *self = Self { seq: event.seq, checksum: sum };
        Ok(())
    }
}
