//! The disk itself: files in memory behind SQLite's interface.

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::io;
use std::path::{Path, PathBuf};
use std::rc::Rc;
use std::sync::Arc;
use std::sync::atomic::{AtomicU32, Ordering};
use std::time::Duration;

use barwright_store::{FileSystem, Found, Identity, Place, Store, StoreError};
use rsqlite_vfs::{
    AccessMode, DeviceCharacteristics, FileKind, LockLevel, OpenAccess, OpenOptions, OpenRequest,
    OpenedFile, OsCallback, SQLiteIoMethods, SQLiteVfs, SyncOptions, VfsError, VfsErrorCode,
    VfsFile, VfsResult, VfsStore, register_vfs,
};

use crate::trace::{Call, Files, Step, Trace};

/// A failure to come.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fault {
    /// Which kind of call fails.
    pub call: Call,
    /// How many of that kind still succeed.
    pub after: u64,
    /// How many fail then.
    pub times: u64,
}

#[derive(Debug, Default)]
struct Inner {
    files: RefCell<BTreeMap<String, (usize, Bytes)>>,
    trace: RefCell<Trace>,
    silent: Cell<bool>,
    made: Cell<usize>,
    calls: RefCell<BTreeMap<Call, u64>>,
    fault: Cell<Option<Fault>>,
    capacity: Cell<Option<usize>>,
    file_read_only: Cell<bool>,
    folder_read_only: Cell<bool>,
}

/// The folder of what lies on another disk, which has room.
pub const ELSEWHERE: &str = "elsewhere";

type Bytes = Rc<RefCell<Vec<u8>>>;

thread_local! {
    /// The disks of this thread, by name: what a store holds of one must be able to go anywhere.
    static DISKS: RefCell<BTreeMap<String, Rc<Inner>>> = const { RefCell::new(BTreeMap::new()) };
    /// Those that were given back: SQLite never forgets a file system, so that a run of ten thousand
    /// disks takes the same few again.
    static FREE: RefCell<Vec<(String, Rc<Inner>)>> = const { RefCell::new(Vec::new()) };
}

/// A disk in memory with one store on it. It serves the thread that made it; what is on it goes with
/// it, so it outlives every store and engine that is on it.
#[derive(Debug)]
pub struct Disk {
    name: String,
    inner: Rc<Inner>,
}

impl Disk {
    /// An empty disk.
    pub fn new() -> Self {
        if let Some((name, inner)) = FREE.with_borrow_mut(Vec::pop) {
            inner.clear();
            return Self { name, inner };
        }
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let name = format!("disk-{}", COUNT.fetch_add(1, Ordering::Relaxed));
        let inner = Rc::<Inner>::default();
        // SAFETY: the default constructor and file layout are used, and `Namespace` and `Methods`
        // agree on the app data. The registration is kept for the life of the process (SQLite's
        // list points to it); the value does not leave this thread, so neither do its callbacks.
        let registered = unsafe { register_vfs::<Methods, Vfs>(&name, Rc::clone(&inner), false) };
        let registered = registered.expect("the name is new");
        registered.into_raw();
        DISKS.with_borrow_mut(|disks| disks.insert(name.clone(), Rc::clone(&inner)));
        Self { name, inner }
    }

    /// Where the store on this disk is.
    pub fn place(&self) -> Place {
        Place::File { path: "store".into(), on: self.file_system() }
    }

    /// This disk, as a store asks it.
    pub fn file_system(&self) -> FileSystem {
        let files = Arc::new(Names { disk: self.name.clone() });
        FileSystem { vfs: Some(self.name.clone()), files }
    }

    /// Opens the store on this disk.
    ///
    /// # Errors
    /// As [`Store::open_in`].
    pub fn open(&self) -> Result<Store, StoreError> {
        Store::open_in(self.place())
    }

    /// Puts files in place of what is there, and begins the trace with them.
    pub fn load(&self, files: &Files) {
        let numbered = files.iter().enumerate().map(|(number, (name, bytes))| {
            (name.clone(), (number, Rc::new(RefCell::new(bytes.clone()))))
        });
        *self.inner.files.borrow_mut() = numbered.collect();
        self.inner.made.set(files.len());
        self.inner.begin_trace(|| files.clone());
    }

    /// Puts what another disk holds now in place of what is there, likewise.
    pub fn load_from(&self, other: &Self) {
        let theirs = other.inner.files.borrow();
        let numbered = theirs.iter().enumerate().map(|(number, (name, (_, bytes)))| {
            (name.clone(), (number, Rc::new(RefCell::new(bytes.borrow().clone()))))
        });
        *self.inner.files.borrow_mut() = numbered.collect();
        self.inner.made.set(theirs.len());
        self.inner.begin_trace(|| other.files());
    }

    /// The files as the running system sees them.
    pub fn files(&self) -> Files {
        let files = self.inner.files.borrow();
        files.iter().map(|(name, (_, bytes))| (name.clone(), bytes.borrow().clone())).collect()
    }

    /// What was done so far.
    pub fn trace(&self) -> Trace {
        self.read_trace(Trace::clone)
    }

    /// The same, looked at where it is.
    pub fn read_trace<T>(&self, read: impl FnOnce(&Trace) -> T) -> T {
        read(&self.inner.trace.borrow())
    }

    /// Whether what is done is written down; it is, unless this says no, for runs too long to keep.
    pub fn set_tracing(&self, tracing: bool) {
        self.inner.silent.set(!tracing);
    }

    /// Writes down that the program acknowledged something.
    pub fn acknowledge(&self, number: u64) {
        self.inner.step(Step::Acknowledged(number));
    }

    /// How many calls of a kind there were.
    pub fn count(&self, call: Call) -> u64 {
        self.inner.calls.borrow().get(&call).copied().unwrap_or(0)
    }

    /// Sets the next failure, counted from now; none takes it away.
    pub fn fail(&self, fault: Option<Fault>) {
        self.inner.fault.set(fault);
    }

    /// The bytes that fit in all files together, those in the folder [`ELSEWHERE`] apart; none for any
    /// number.
    pub fn set_capacity(&self, bytes: Option<usize>) {
        self.inner.capacity.set(bytes);
    }

    /// Bytes in all files together, likewise.
    pub fn used(&self) -> usize {
        self.inner.used()
    }

    /// Makes the store's file one that can't be written.
    pub fn set_file_read_only(&self, read_only: bool) {
        self.inner.file_read_only.set(read_only);
    }

    /// Makes the folder one that no file can be made in.
    pub fn set_folder_read_only(&self, read_only: bool) {
        self.inner.folder_read_only.set(read_only);
    }
}

impl Drop for Disk {
    fn drop(&mut self) {
        self.inner.clear();
        let again = (self.name.clone(), Rc::clone(&self.inner));
        // Where the thread ends, so does its list.
        let _ = FREE.try_with(|free| free.borrow_mut().push(again));
    }
}

impl Default for Disk {
    fn default() -> Self {
        Self::new()
    }
}

impl Inner {
    /// As a new disk is.
    fn clear(&self) {
        let Self { files, trace, silent, made, calls, fault, capacity, .. } = self;
        files.borrow_mut().clear();
        *trace.borrow_mut() = Trace::default();
        silent.set(false);
        made.set(0);
        calls.borrow_mut().clear();
        fault.set(None);
        capacity.set(None);
        self.file_read_only.set(false);
        self.folder_read_only.set(false);
    }

    /// What is written down begins anew, from these files.
    fn begin_trace(&self, from: impl FnOnce() -> Files) {
        let from = if self.silent.get() { Files::new() } else { from() };
        *self.trace.borrow_mut() = Trace { from, steps: Vec::new() };
    }

    fn step(&self, step: Step) {
        if self.silent.get() {
            return;
        }
        self.trace.borrow_mut().steps.push(step);
    }

    /// Makes an empty file.
    fn make(&self, name: String) -> (usize, Bytes) {
        let made = (self.made.get(), Bytes::default());
        self.made.set(made.0 + 1);
        self.step(Step::Create { name: name.clone(), file: made.0 });
        self.files.borrow_mut().insert(name, made.clone());
        made
    }

    fn used(&self) -> usize {
        let files = self.files.borrow();
        let own = files.iter().filter(|(name, _)| !name.starts_with(ELSEWHERE));
        own.map(|(_, (_, bytes))| bytes.borrow().len()).sum()
    }

    /// Whether so many bytes more fit.
    fn has_room(&self, bytes: usize) -> bool {
        self.capacity.get().is_none_or(|most| self.used() + bytes <= most)
    }

    /// Counts a call, and answers whether it is to fail.
    fn fails(&self, call: Call) -> bool {
        *self.calls.borrow_mut().entry(call).or_default() += 1;
        let Some(mut fault) = self.fault.get().filter(|fault| fault.call == call) else {
            return false;
        };
        if fault.after > 0 {
            fault.after -= 1;
            self.fault.set(Some(fault));
            return false;
        }
        fault.times = fault.times.saturating_sub(1);
        self.fault.set((fault.times > 0).then_some(fault));
        true
    }
}

fn failure(code: VfsErrorCode) -> VfsError {
    VfsError::new(code, "the disk was told to fail".into())
}

/// An open file.
#[derive(Debug)]
struct Open {
    disk: Rc<Inner>,
    file: usize,
    bytes: Bytes,
    read_only: bool,
    /// It is not on this disk, but on one with room.
    elsewhere: bool,
}

/// The disk by its names, for what a store does beside SQLite.
#[derive(Debug)]
struct Names {
    disk: String,
}

fn no_such() -> io::Error {
    io::ErrorKind::NotFound.into()
}

impl Names {
    /// The disk's own, as a device has one.
    fn number(&self) -> u64 {
        let digits = self.disk.rsplit('-').next().and_then(|digits| digits.parse().ok());
        digits.unwrap_or(0) + 1
    }

    fn disk(&self) -> io::Result<Rc<Inner>> {
        let disk = DISKS.with_borrow(|disks| disks.get(&self.disk).cloned());
        disk.ok_or_else(|| io::Error::other("a disk of another thread"))
    }

    fn bytes(&self, path: &Path) -> io::Result<Bytes> {
        let disk = self.disk()?;
        let files = disk.files.borrow();
        files.get(&*path.to_string_lossy()).map(|(_, bytes)| Rc::clone(bytes)).ok_or_else(no_such)
    }
}

impl barwright_store::Files for Names {
    fn look(&self, path: &Path) -> io::Result<Option<Found>> {
        let disk = self.disk()?;
        if matches!(path.to_str(), Some("" | "." | ELSEWHERE)) {
            let (identity, bytes) = (Identity::default(), 0);
            return Ok(Some(Found { folder: true, identity, bytes, written: 0, read_only: false }));
        }
        let files = disk.files.borrow();
        Ok(files.get(&*path.to_string_lossy()).map(|(file, bytes)| Found {
            folder: false,
            identity: Identity { device: self.number(), file: *file as u64 + 1 },
            bytes: bytes.borrow().len() as u64,
            written: 0,
            read_only: false,
        }))
    }

    fn read_at(&self, path: &Path, offset: u64, buffer: &mut [u8]) -> io::Result<usize> {
        if self.disk()?.fails(Call::Read) {
            return Err(io::Error::other("the disk was told to fail"));
        }
        let bytes = self.bytes(path)?;
        let bytes = bytes.borrow();
        let start = bytes.len().min(offset as usize);
        let length = buffer.len().min(bytes.len() - start);
        buffer[..length].copy_from_slice(&bytes[start..start + length]);
        Ok(length)
    }

    fn create(&self, path: &Path) -> io::Result<bool> {
        let disk = self.disk()?;
        let name = path.to_string_lossy().into_owned();
        if disk.files.borrow().contains_key(&name) {
            return Ok(false);
        }
        if disk.folder_read_only.get() {
            return Err(io::ErrorKind::PermissionDenied.into());
        }
        disk.make(name);
        Ok(true)
    }

    fn make_private(&self, _: &Path) -> io::Result<()> {
        Ok(())
    }

    fn copy(&self, from: &Path, to: &Path) -> io::Result<()> {
        let bytes = self.bytes(from)?.borrow().clone();
        if !self.create(to)? {
            return Err(io::ErrorKind::AlreadyExists.into());
        }
        let disk = self.disk()?;
        if !disk.has_room(bytes.len()) && !to.starts_with(ELSEWHERE) {
            return Err(io::ErrorKind::StorageFull.into());
        }
        let (file, made) = {
            let files = disk.files.borrow();
            files.get(&*to.to_string_lossy()).cloned().ok_or_else(no_such)?
        };
        disk.step(Step::Write { file, at: 0, bytes: bytes.clone() });
        disk.step(Step::Sync { file });
        *made.borrow_mut() = bytes;
        Ok(())
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        let disk = self.disk()?;
        let (from, to) = (from.to_string_lossy().into_owned(), to.to_string_lossy().into_owned());
        let moved = disk.files.borrow_mut().remove(&from).ok_or_else(no_such)?;
        disk.files.borrow_mut().insert(to.clone(), moved);
        disk.step(Step::Rename { from, to });
        Ok(())
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        let disk = self.disk()?;
        let name = path.to_string_lossy().into_owned();
        disk.files.borrow_mut().remove(&name).ok_or_else(no_such)?;
        disk.step(Step::Delete { name });
        Ok(())
    }

    fn sync_names(&self, _: &Path) -> io::Result<()> {
        self.disk()?.step(Step::SyncNames);
        Ok(())
    }

    fn list(&self, _: &Path) -> io::Result<Vec<PathBuf>> {
        Ok(self.disk()?.files.borrow().keys().map(PathBuf::from).collect())
    }
}

impl VfsFile for Open {
    fn device_characteristics(&self) -> DeviceCharacteristics {
        // As SQLite takes every unix disk to be.
        DeviceCharacteristics::POWERSAFE_OVERWRITE
    }

    fn read(&mut self, buffer: &mut [u8], offset: u64) -> VfsResult<usize> {
        if self.disk.fails(Call::Read) {
            return Err(failure(VfsErrorCode::IoRead));
        }
        let bytes = self.bytes.borrow();
        let start = bytes.len().min(offset as usize);
        let length = buffer.len().min(bytes.len() - start);
        buffer[..length].copy_from_slice(&bytes[start..start + length]);
        Ok(length)
    }

    fn write(&mut self, buffer: &[u8], offset: u64) -> VfsResult<()> {
        if self.read_only {
            return Err(failure(VfsErrorCode::ReadOnly));
        }
        let end = offset as usize + buffer.len();
        let growth = end.saturating_sub(self.bytes.borrow().len());
        if growth > 0 && !self.elsewhere && !self.disk.has_room(growth) {
            return Err(failure(VfsErrorCode::Full));
        }
        let fails = self.disk.fails(Call::Write);
        // A write that fails may have written a part.
        let length = if fails { buffer.len() / 2 } else { buffer.len() };
        let written = &buffer[..length];
        let mut bytes = self.bytes.borrow_mut();
        let end = offset as usize + length;
        if bytes.len() < end {
            bytes.resize(end, 0);
        }
        bytes[offset as usize..end].copy_from_slice(written);
        let (file, at) = (self.file, offset as usize);
        self.disk.step(Step::Write { file, at, bytes: written.to_vec() });
        if fails { Err(failure(VfsErrorCode::IoWrite)) } else { Ok(()) }
    }

    fn truncate(&mut self, size: u64) -> VfsResult<()> {
        if self.disk.fails(Call::Truncate) {
            return Err(failure(VfsErrorCode::IoTruncate));
        }
        self.bytes.borrow_mut().truncate(size as usize);
        self.disk.step(Step::Truncate { file: self.file, length: size as usize });
        Ok(())
    }

    fn sync(&mut self, _: SyncOptions) -> VfsResult<()> {
        if self.disk.fails(Call::Sync) {
            self.disk.step(Step::FailedSync { file: self.file });
            return Err(failure(VfsErrorCode::IoSync));
        }
        self.disk.step(Step::Sync { file: self.file });
        Ok(())
    }

    fn size(&self) -> VfsResult<u64> {
        Ok(self.bytes.borrow().len() as u64)
    }

    // One store at a time: that two exclude each other is tested on real files.
    fn lock(&mut self, _: LockLevel) -> VfsResult<()> {
        Ok(())
    }

    fn unlock(&mut self, _: LockLevel) -> VfsResult<()> {
        Ok(())
    }

    fn check_reserved_lock(&self) -> VfsResult<bool> {
        Ok(false)
    }
}

struct Namespace;

impl VfsStore for Namespace {
    type File = Open;
    type AppData = Rc<Inner>;

    fn open_file(disk: &Rc<Inner>, request: OpenRequest<'_>) -> VfsResult<OpenedFile<Open>> {
        if disk.fails(Call::Open) {
            return Err(failure(VfsErrorCode::CantOpen));
        }
        let options = request.options;
        let Some(name) = request.filename.map(|name| name.path().to_owned()) else {
            return Err(failure(VfsErrorCode::CantOpen));
        };
        let elsewhere = name.starts_with(ELSEWHERE);
        let found = disk.files.borrow().get(&name).cloned();
        let (file, bytes) = match found {
            Some(found) => found,
            None if options.create() && !disk.folder_read_only.get() => disk.make(name),
            None => return Err(failure(VfsErrorCode::CantOpen)),
        };
        let read_only = options.access() == OpenAccess::ReadOnly
            || (options.kind() == Some(FileKind::MainDb) && disk.file_read_only.get());
        let access = if read_only { OpenAccess::ReadOnly } else { OpenAccess::ReadWrite };
        let file = Open { disk: Rc::clone(disk), file, bytes, read_only, elsewhere };
        Ok(OpenedFile { file, access })
    }

    fn close_file(_: &Rc<Inner>, _: Option<&str>, _: Open, _: OpenOptions) -> VfsResult<()> {
        Ok(())
    }

    fn access(disk: &Rc<Inner>, name: &str, _: AccessMode) -> VfsResult<bool> {
        Ok(disk.files.borrow().contains_key(name))
    }

    fn full_pathname(_: &Rc<Inner>, name: &str) -> VfsResult<String> {
        Ok(name.into())
    }

    fn delete_file(disk: &Rc<Inner>, name: &str, _: bool) -> VfsResult<()> {
        if disk.fails(Call::Delete) {
            return Err(failure(VfsErrorCode::IoDelete));
        }
        disk.files.borrow_mut().remove(name);
        disk.step(Step::Delete { name: name.into() });
        Ok(())
    }
}

struct Methods;

impl SQLiteIoMethods for Methods {
    type Store = Namespace;
}

struct Os;

impl OsCallback for Os {
    fn sleep(&self, _: Duration) {}

    fn random(&self, _: &mut [u8]) -> usize {
        0
    }

    fn epoch_timestamp_in_ms(&self) -> VfsResult<i64> {
        // Nothing here asks for the time.
        Err(failure(VfsErrorCode::Error))
    }
}

struct Vfs;

impl SQLiteVfs<Methods> for Vfs {
    type Os = Os;

    fn os(_: &Rc<Inner>) -> &Os {
        &Os
    }
}
