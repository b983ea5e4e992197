//! The pool as SQLite asks it.

use std::rc::Rc;

use rsqlite_vfs::{
    AccessMode, DeviceCharacteristics, LockLevel, OpenAccess, OpenOptions, OpenRequest, OpenedFile,
    SQLiteIoMethods, SQLiteVfs, SyncOptions, VfsError, VfsErrorCode, VfsFile, VfsResult, VfsStore,
    register_vfs,
};
use sqlite_wasm_rs::WasmOsCallback;

use crate::pool::{self, Failure, Slot};

/// The name that SQLite knows it by.
pub(crate) const NAME: &str = "browser";

/// Makes it known to SQLite, once.
pub(crate) fn register() {
    // SAFETY: the default constructor and file layout are used, and `Names` and `Methods` agree on the
    // app data. The registration is kept for the life of the worker (SQLite's list points to it), and
    // WebAssembly here has one thread.
    let registered = unsafe { register_vfs::<Methods, Vfs>(NAME, (), true) };
    if let Ok(registered) = registered {
        registered.into_raw();
    }
}

fn failed(failure: Failure, code: VfsErrorCode) -> VfsError {
    let code = if failure == Failure::Full { VfsErrorCode::Full } else { code };
    VfsError::new(code, "the browser's file".into())
}

struct Open {
    slot: Rc<Slot>,
    read_only: bool,
}

impl VfsFile for Open {
    fn device_characteristics(&self) -> DeviceCharacteristics {
        // What is beside a write stays as it was: the browser writes to an ordinary file of the system.
        DeviceCharacteristics::POWERSAFE_OVERWRITE
    }

    fn read(&mut self, buffer: &mut [u8], offset: u64) -> VfsResult<usize> {
        self.slot.read_at(offset, buffer).map_err(|why| failed(why, VfsErrorCode::IoRead))
    }

    fn write(&mut self, buffer: &[u8], offset: u64) -> VfsResult<()> {
        if self.read_only {
            return Err(failed(Failure::Other, VfsErrorCode::ReadOnly));
        }
        self.slot.write_at(offset, buffer).map_err(|why| failed(why, VfsErrorCode::IoWrite))
    }

    fn truncate(&mut self, size: u64) -> VfsResult<()> {
        self.slot.truncate(size).map_err(|why| failed(why, VfsErrorCode::IoTruncate))
    }

    fn sync(&mut self, _: SyncOptions) -> VfsResult<()> {
        self.slot.flush().map_err(|why| failed(why, VfsErrorCode::IoSync))
    }

    fn size(&self) -> VfsResult<u64> {
        Ok(self.slot.bytes())
    }

    // The browser gives a file to one worker, and there is one store in it.
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

struct Names;

impl VfsStore for Names {
    type File = Open;
    type AppData = ();

    fn open_file(_: &(), request: OpenRequest<'_>) -> VfsResult<OpenedFile<Open>> {
        let cannot = |why| failed(why, VfsErrorCode::CantOpen);
        // Temporary files are kept in memory.
        let name = request.filename.ok_or_else(|| cannot(Failure::Other))?;
        let slot = match pool::find(name.path()) {
            Some(_) if request.options.exclusive() => return Err(cannot(Failure::Taken)),
            Some(slot) => slot,
            None if request.options.create() => pool::make(name.path()).map_err(cannot)?,
            None => return Err(cannot(Failure::NotThere)),
        };
        slot.opened();
        let access = request.options.access();
        let file = Open { slot, read_only: access == OpenAccess::ReadOnly };
        Ok(OpenedFile { file, access })
    }

    fn close_file(_: &(), name: Option<&str>, file: Open, options: OpenOptions) -> VfsResult<()> {
        pool::closed(&file.slot);
        match name {
            Some(name) if options.delete_on_close() => Self::delete_file(&(), name, false),
            _ => Ok(()),
        }
    }

    fn access(_: &(), name: &str, _: AccessMode) -> VfsResult<bool> {
        Ok(pool::find(name).is_some())
    }

    fn full_pathname(_: &(), name: &str) -> VfsResult<String> {
        Ok(name.into())
    }

    fn delete_file(_: &(), name: &str, _: bool) -> VfsResult<()> {
        match pool::remove(name) {
            Err(Failure::NotThere) => Err(failed(Failure::NotThere, VfsErrorCode::IoDeleteNoEntry)),
            removed => removed.map_err(|why| failed(why, VfsErrorCode::IoDelete)),
        }
    }
}

struct Methods;

impl SQLiteIoMethods for Methods {
    type Store = Names;
}

struct Vfs;

impl SQLiteVfs<Methods> for Vfs {
    type Os = WasmOsCallback;

    fn os(_: &()) -> &WasmOsCallback {
        &WasmOsCallback
    }
}
