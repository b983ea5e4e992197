//! The write-ahead log as it lies on the disk, looked at before SQLite takes it over: SQLite reads
//! it up to the first frame that does not fit and forgets the rest without a word.
//!
//! The layout is that of <https://www.sqlite.org/fileformat2.html#the_write_ahead_log>: a header of
//! 32 bytes, then frames of 24 bytes and a page, each with a running checksum.

use crate::bytes::{PAGE_BYTES, be_u32, part};
use crate::error::StoreError;
use crate::place::{Place, log_of};

const HEADER: usize = 32;
const FRAME_HEADER: usize = 24;
const FRAME: usize = FRAME_HEADER + PAGE_BYTES as usize;

/// A write-ahead log, whole.
#[derive(Debug)]
pub(crate) struct Log {
    bytes: Vec<u8>,
}

/// A page as a frame holds it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Frame<'a> {
    /// Its page's number, from 1.
    pub(crate) page: u32,
    /// Pages of the file after the transaction that this frame ends; 0 in the midst of one.
    pub(crate) ends: u32,
    salts: [u32; 2],
    sums: [u32; 2],
    head: &'a [u8],
    pub(crate) bytes: &'a [u8],
}

impl Log {
    /// Reads the one beside a file; none where there is none or it is empty.
    pub(crate) fn read(place: &Place) -> Result<Option<Self>, StoreError> {
        let log = log_of(place);
        let failed = |error| StoreError::from_io(log.path(), &error);
        let files = log.on().files;
        let Some(found) = files.look(log.path()).map_err(failed)? else { return Ok(None) };
        let length = usize::try_from(found.bytes).unwrap_or(usize::MAX);
        let mut bytes = vec![0; length];
        let read = files.read_at(log.path(), 0, &mut bytes).map_err(failed)?;
        bytes.truncate(read);
        Ok((bytes.len() >= HEADER).then_some(Self { bytes }))
    }

    /// What stays the same from a log's first beginning to its removal, however often it begins
    /// anew: each time, its first salt and its count go up by one.
    pub(crate) fn born(&self) -> u32 {
        be_u32(&self.bytes, 16).wrapping_sub(be_u32(&self.bytes, 12))
    }

    /// All frames that fit into its length, good or not.
    pub(crate) fn frames(&self) -> impl Iterator<Item = Frame<'_>> {
        let frames = self.bytes.get(HEADER..).unwrap_or_default();
        frames.chunks_exact(FRAME).map(|frame| Frame {
            page: be_u32(frame, 0),
            ends: be_u32(frame, 4),
            salts: [be_u32(frame, 8), be_u32(frame, 12)],
            sums: [be_u32(frame, 16), be_u32(frame, 20)],
            head: part(frame, 0, 8),
            bytes: part(frame, FRAME_HEADER, PAGE_BYTES as usize),
        })
    }

    fn salts(&self) -> [u32; 2] {
        [be_u32(&self.bytes, 16), be_u32(&self.bytes, 20)]
    }

    /// Whether checksums take the numbers of a page as big-endian.
    fn big(&self) -> bool {
        be_u32(&self.bytes, 0) & 1 == 1
    }

    /// How many of the frames SQLite takes: the whole transactions from the first on.
    pub(crate) fn taken(&self) -> usize {
        let header = part(&self.bytes, 0, 24);
        let mut sums = sum(self.big(), [0, 0], header);
        let sound = be_u32(&self.bytes, 0) & !1 == 0x377f_0682
            && be_u32(&self.bytes, 4) == 3_007_000
            && be_u32(&self.bytes, 8) == PAGE_BYTES
            && sums == [be_u32(&self.bytes, 24), be_u32(&self.bytes, 28)];
        let mut taken = 0;
        if !sound {
            return taken;
        }
        for (at, frame) in self.frames().enumerate() {
            sums = sum(self.big(), sum(self.big(), sums, frame.head), frame.bytes);
            if frame.salts != self.salts() || frame.sums != sums || frame.page == 0 {
                break;
            }
            if frame.ends > 0 {
                taken = at + 1;
            }
        }
        taken
    }

    /// How many of the frames were written whole, up to the last that ends a transaction and
    /// follows the one before it: a transaction may be so although a frame before it is spoiled.
    pub(crate) fn written(&self) -> usize {
        let mut before = None;
        let mut written = 0;
        for (at, frame) in self.frames().enumerate() {
            let seed = before.unwrap_or([be_u32(&self.bytes, 24), be_u32(&self.bytes, 28)]);
            let sums = sum(self.big(), sum(self.big(), seed, frame.head), frame.bytes);
            let [one, two] = self.salts();
            let ours = frame.salts.first() == Some(&one) || frame.salts.last() == Some(&two);
            if ours && frame.sums == sums && frame.ends > 0 {
                written = at + 1;
            }
            before = Some(frame.sums);
        }
        written
    }
}

/// SQLite's running checksum over whole pairs of numbers.
fn sum(big: bool, [mut one, mut two]: [u32; 2], bytes: &[u8]) -> [u32; 2] {
    for pair in bytes.chunks_exact(8) {
        let (Some((first, rest)), true) = (pair.split_first_chunk::<4>(), pair.len() == 8) else {
            continue;
        };
        let Some(second) = rest.first_chunk::<4>() else { continue };
        let number = |bytes: &[u8; 4]| {
            if big { u32::from_be_bytes(*bytes) } else { u32::from_le_bytes(*bytes) }
        };
        one = one.wrapping_add(number(first)).wrapping_add(two);
        two = two.wrapping_add(number(second)).wrapping_add(one);
    }
    [one, two]
}
