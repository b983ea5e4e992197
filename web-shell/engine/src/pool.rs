//! Files by name, in a pool of the browser's file handles.
//!
//! The browser makes and opens files in its own time, and SQLite can't wait. So a number of them
//! stands ready, opened, under numbers that say nothing; which file has which name is written at its
//! head. A name goes to a file by writing that head, and leaves it the same way: what a rename has
//! done is decided by one write, and where two files claim a name the later claim counts.

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::rc::Rc;

use crc::{CRC_32_ISO_HDLC, Crc};
use wasm_bindgen::prelude::*;

#[wasm_bindgen]
extern "C" {
    /// A file that is open for this worker alone.
    #[wasm_bindgen(js_name = FileSystemSyncAccessHandle)]
    pub type Handle;
    #[wasm_bindgen(method, catch)]
    fn read(this: &Handle, into: &mut [u8], options: &Options) -> Result<f64, JsValue>;
    #[wasm_bindgen(method, catch)]
    fn write(this: &Handle, from: &[u8], options: &Options) -> Result<f64, JsValue>;
    #[wasm_bindgen(method, catch)]
    fn truncate(this: &Handle, bytes: f64) -> Result<(), JsValue>;
    #[wasm_bindgen(method, catch)]
    fn flush(this: &Handle) -> Result<(), JsValue>;
    #[wasm_bindgen(method, catch, js_name = getSize)]
    fn get_size(this: &Handle) -> Result<f64, JsValue>;

    /// Where in a file.
    #[wasm_bindgen(js_name = Object)]
    type Options;
    #[wasm_bindgen(constructor, js_class = "Object")]
    fn new() -> Options;
    #[wasm_bindgen(method, setter)]
    fn set_at(this: &Options, at: f64);

    /// What a browser throws.
    type Thrown;
    #[wasm_bindgen(method, getter)]
    fn name(this: &Thrown) -> Option<String>;
}

/// Bytes before a file's own begin.
const HEAD: u64 = 4096;
/// The longest name, with what SQLite adds to it.
const NAME: usize = 256;
/// How a head that holds a name begins.
const MARK: &[u8; 8] = b"barwrt01";
/// What a head is held against.
static SUM: Crc<u32> = Crc::<u32>::new(&CRC_32_ISO_HDLC);
/// The furthest that a browser's numbers go without gaps.
const FURTHEST: u64 = 1 << 53;

/// Why something could not be done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Failure {
    /// No room: the browser gives no more, or the pool has no file left.
    Full,
    /// There is no such file.
    NotThere,
    /// The name is taken.
    Taken,
    /// Anything else.
    Other,
}

impl From<JsValue> for Failure {
    fn from(thrown: JsValue) -> Self {
        let name = thrown.is_object().then(|| thrown.unchecked_ref::<Thrown>().name()).flatten();
        if name.as_deref() == Some("QuotaExceededError") { Self::Full } else { Self::Other }
    }
}

/// One of the browser's files.
pub(crate) struct Slot {
    handle: Handle,
    /// Tells it from the others of this run.
    pub(crate) number: u64,
    /// Bytes after the head.
    bytes: Cell<u64>,
    /// How many have it open.
    opens: Cell<u32>,
    /// It has a name.
    named: Cell<bool>,
}

// A place in a file is a whole number below 2^53: as exact for the browser as it is here.
#[allow(clippy::cast_precision_loss)]
fn number(whole: u64) -> f64 {
    whole as f64
}

fn options(at: u64) -> Options {
    let options = Options::new();
    options.set_at(number(at));
    options
}

/// A count that the browser gave.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
fn whole(count: f64) -> Result<u64, Failure> {
    let sound = count.is_finite() && count >= 0.0 && count <= number(FURTHEST);
    if sound { Ok(count as u64) } else { Err(Failure::Other) }
}

impl Slot {
    pub(crate) fn bytes(&self) -> u64 {
        self.bytes.get()
    }

    /// Reads as many bytes as there are; answers how many.
    pub(crate) fn read_at(&self, offset: u64, into: &mut [u8]) -> Result<usize, Failure> {
        let there = self.bytes().saturating_sub(offset);
        let length = usize::try_from(there).unwrap_or(usize::MAX).min(into.len());
        let Some(into) = into.get_mut(..length).filter(|into| !into.is_empty()) else {
            return Ok(0);
        };
        let read = whole(self.handle.read(into, &options(HEAD.saturating_add(offset)))?)?;
        if read == length as u64 { Ok(length) } else { Err(Failure::Other) }
    }

    pub(crate) fn write_at(&self, offset: u64, from: &[u8]) -> Result<(), Failure> {
        let end = offset.checked_add(from.len() as u64).filter(|end| *end < FURTHEST / 2);
        let end = end.ok_or(Failure::Full)?;
        let written = self.handle.write(from, &options(HEAD + offset)).map_err(Failure::from);
        // It may have written a part: whoever reads it finds what is there.
        let now = whole(self.handle.get_size()?)?;
        self.bytes.set(now.saturating_sub(HEAD));
        if whole(written?)? == from.len() as u64 && self.bytes() >= end {
            Ok(())
        } else {
            Err(Failure::Full)
        }
    }

    pub(crate) fn truncate(&self, bytes: u64) -> Result<(), Failure> {
        self.handle.truncate(number(HEAD.saturating_add(bytes)))?;
        self.bytes.set(bytes);
        Ok(())
    }

    pub(crate) fn flush(&self) -> Result<(), Failure> {
        Ok(self.handle.flush()?)
    }

    pub(crate) fn opened(&self) {
        self.opens.set(self.opens.get().saturating_add(1));
    }

    /// Writes the head, durably.
    fn claim(&self, name: &str, claim: u64) -> Result<(), Failure> {
        let mut head = Vec::with_capacity(MARK.len() + 14 + NAME);
        head.extend_from_slice(MARK);
        head.extend_from_slice(&claim.to_be_bytes());
        let length = u16::try_from(name.len()).ok().filter(|length| usize::from(*length) <= NAME);
        head.extend_from_slice(&length.ok_or(Failure::Other)?.to_be_bytes());
        head.extend_from_slice(name.as_bytes());
        head.extend_from_slice(&SUM.checksum(&head).to_be_bytes());
        self.put_head(&head)?;
        self.named.set(true);
        Ok(())
    }

    fn put_head(&self, head: &[u8]) -> Result<(), Failure> {
        let written = whole(self.handle.write(head, &options(0))?)?;
        if written != head.len() as u64 {
            return Err(Failure::Full);
        }
        self.flush()
    }

    /// Takes its name away, durably, and then what is in it.
    fn forget(&self) -> Result<(), Failure> {
        self.put_head(&[0; 512])?;
        self.named.set(false);
        self.truncate(0)
    }

    /// The name and the claim at its head; none where it has none. A head that can't be read is an
    /// error: what follows it may be somebody's records.
    fn head(&self) -> Result<Option<(String, u64)>, Failure> {
        let mut head = [0; 512];
        let read = whole(self.handle.read(&mut head, &options(0))?)?;
        if read < 512 && self.bytes() > 0 {
            return Err(Failure::Other);
        }
        if head.iter().all(|byte| *byte == 0) {
            return Ok(None);
        }
        let understood = || {
            let (mark, rest) = head.split_first_chunk::<8>()?;
            let (claim, rest) = rest.split_first_chunk::<8>()?;
            let (length, rest) = rest.split_first_chunk::<2>()?;
            let (name, rest) = rest.split_at_checked(usize::from(u16::from_be_bytes(*length)))?;
            let (sum, _) = rest.split_first_chunk::<4>()?;
            let summed = head.get(..18 + name.len())?;
            let sound = mark == MARK && u32::from_be_bytes(*sum) == SUM.checksum(summed);
            let name = String::from_utf8(name.to_vec()).ok().filter(|_| sound)?;
            Some((name, u64::from_be_bytes(*claim)))
        };
        understood().map(Some).ok_or(Failure::Other)
    }
}

#[derive(Default)]
struct Pool {
    named: BTreeMap<String, Rc<Slot>>,
    free: Vec<Rc<Slot>>,
    /// Files whose head can't be read: they are left as they are.
    unread: Vec<Rc<Slot>>,
    /// The last claim on a name.
    claim: u64,
    /// The last number given.
    number: u64,
    /// Claims that were read while files came in.
    claims: BTreeMap<String, u64>,
}

thread_local! {
    static POOL: RefCell<Pool> = RefCell::default();
}

/// Takes a file of the browser's into the pool.
pub(crate) fn take(handle: Handle) -> Result<(), Failure> {
    let size = whole(handle.get_size()?)?;
    POOL.with_borrow_mut(|pool| {
        pool.number += 1;
        let slot = Rc::new(Slot {
            handle,
            number: pool.number,
            bytes: Cell::new(size.saturating_sub(HEAD)),
            opens: Cell::new(0),
            named: Cell::new(false),
        });
        let Ok(head) = slot.head() else {
            pool.unread.push(slot);
            return Ok(());
        };
        let Some((name, claim)) = head else {
            // An earlier run may have ended between the two steps of forgetting.
            slot.truncate(0)?;
            pool.free.push(slot);
            return Ok(());
        };
        slot.named.set(true);
        pool.claim = pool.claim.max(claim);
        let earlier = pool.claims.get(&name).is_some_and(|other| *other > claim);
        let lost = if earlier {
            Some(slot)
        } else {
            pool.claims.insert(name.clone(), claim);
            pool.named.insert(name, slot)
        };
        if let Some(lost) = lost {
            lost.forget()?;
            pool.free.push(lost);
        }
        Ok(())
    })
}

/// How many files are free, and how many can't be read.
pub(crate) fn count() -> (usize, usize) {
    POOL.with_borrow(|pool| (pool.free.len(), pool.unread.len()))
}

/// The file of a name.
pub(crate) fn find(name: &str) -> Option<Rc<Slot>> {
    POOL.with_borrow(|pool| pool.named.get(name).cloned())
}

/// The names there are.
pub(crate) fn names() -> Vec<String> {
    POOL.with_borrow(|pool| pool.named.keys().cloned().collect())
}

/// Makes an empty file.
pub(crate) fn make(name: &str) -> Result<Rc<Slot>, Failure> {
    POOL.with_borrow_mut(|pool| {
        if pool.named.contains_key(name) {
            return Err(Failure::Taken);
        }
        let slot = pool.free.pop().ok_or(Failure::Full)?;
        pool.claim += 1;
        if let Err(failure) = slot.claim(name, pool.claim) {
            // Whether it has the name is not known: it is left alone until the next run.
            pool.unread.push(slot);
            return Err(failure);
        }
        pool.named.insert(name.to_owned(), Rc::clone(&slot));
        Ok(slot)
    })
}

/// Removes a file. Whoever has it open keeps it until it is closed.
pub(crate) fn remove(name: &str) -> Result<(), Failure> {
    POOL.with_borrow_mut(|pool| {
        let slot = pool.named.remove(name).ok_or(Failure::NotThere)?;
        pool.give_back(slot)
    })
}

/// Gives a file another name, which takes it from the file that had it.
pub(crate) fn rename(from: &str, to: &str) -> Result<(), Failure> {
    if from == to {
        return find(from).map(|_| ()).ok_or(Failure::NotThere);
    }
    POOL.with_borrow_mut(|pool| {
        let slot = pool.named.get(from).cloned().ok_or(Failure::NotThere)?;
        pool.claim += 1;
        // From here on the name is this file's, whatever happens.
        slot.claim(to, pool.claim)?;
        pool.named.remove(from);
        match pool.named.insert(to.to_owned(), slot) {
            Some(replaced) => pool.give_back(replaced),
            None => Ok(()),
        }
    })
}

/// Copies a file to a name that is not taken, durably.
pub(crate) fn copy(from: &str, to: &str) -> Result<(), Failure> {
    let from = find(from).ok_or(Failure::NotThere)?;
    let made = make(to)?;
    let copied = || {
        let mut buffer = vec![0; 1 << 18];
        let mut at = 0;
        loop {
            let read = from.read_at(at, &mut buffer)?;
            let Some(part) = buffer.get(..read).filter(|part| !part.is_empty()) else {
                return made.flush();
            };
            made.write_at(at, part)?;
            at += read as u64;
        }
    };
    copied().inspect_err(|_| {
        // What is left of it would be taken for a whole one.
        let _ = remove(to);
    })
}

/// One that had a file open no longer has.
pub(crate) fn closed(slot: &Rc<Slot>) {
    slot.opens.set(slot.opens.get().saturating_sub(1));
    if slot.opens.get() == 0 && !slot.named.get() {
        POOL.with_borrow_mut(|pool| {
            // What can't be emptied is not used again.
            if slot.truncate(0).is_ok() {
                pool.free.push(Rc::clone(slot));
            }
        });
    }
}

impl Pool {
    fn give_back(&mut self, slot: Rc<Slot>) -> Result<(), Failure> {
        if slot.opens.get() > 0 {
            slot.put_head(&[0; 512])?;
            slot.named.set(false);
            return Ok(());
        }
        slot.forget()?;
        self.free.push(slot);
        Ok(())
    }
}
