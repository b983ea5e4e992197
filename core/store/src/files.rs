//! The file system, as far as the store asks for it: beside what SQLite does by its own, which a
//! name of one of its file systems (a "VFS") stands for.
//!
//! Nothing else here touches a file, so that the store runs wherever somebody answers these
//! questions: in a browser too, where a rename is a copy and a removal, and where room for a file
//! is set apart before the store is opened.

use std::fmt::Debug;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// What is at a path.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Found {
    /// It is a folder.
    pub folder: bool,
    /// Which file it is, whatever its name: a file that took another's name has another.
    pub identity: Identity,
    /// Its length in bytes.
    pub bytes: u64,
    /// When it was last written to, in nanoseconds of the system's own count; 0 where nobody says.
    pub written: i128,
    /// Nobody may write to it.
    pub read_only: bool,
}

/// Which file it is, by the system's own numbers; all zero where it has none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Identity {
    /// Of the device.
    pub device: u64,
    /// Of the file on it.
    pub file: u64,
}

/// A file system. Errors are the system's own: [`io::ErrorKind`] tells them apart.
pub trait Files: Debug + Send + Sync {
    /// What is at a path; none where nothing is. It asks for the name alone: on most systems,
    /// opening and closing a file beside SQLite would give up the locks that this process has on it.
    ///
    /// # Errors
    /// Where it can't be known.
    fn look(&self, path: &Path) -> io::Result<Option<Found>>;

    /// Reads bytes from a place in a file on, as many as there are; answers how many.
    ///
    /// # Errors
    /// Of opening and reading.
    fn read_at(&self, path: &Path, offset: u64, buffer: &mut [u8]) -> io::Result<usize>;

    /// Makes an empty file that only its owner may read, where there is none; answers whether it
    /// did.
    ///
    /// # Errors
    /// Of making it.
    fn create(&self, path: &Path) -> io::Result<bool>;

    /// Takes from everybody but its owner the right to read a file.
    ///
    /// # Errors
    /// Where it is another's.
    fn make_private(&self, path: &Path) -> io::Result<()>;

    /// Copies a file whole to a name that is not taken, for its owner alone, and makes it durable.
    ///
    /// # Errors
    /// Of reading and writing, and where the name is taken.
    fn copy(&self, from: &Path, to: &Path) -> io::Result<()>;

    /// Gives a file another name on the same disk.
    ///
    /// # Errors
    /// As there; a file of the new name may be replaced.
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()>;

    /// Removes a file.
    ///
    /// # Errors
    /// As there, also where there is none.
    fn remove(&self, path: &Path) -> io::Result<()>;

    /// Makes the names in a file's folder durable, where the system can.
    ///
    /// # Errors
    /// As there.
    fn sync_names(&self, file: &Path) -> io::Result<()>;

    /// The files in a folder, in no order.
    ///
    /// # Errors
    /// As there, also where there is no such folder.
    fn list(&self, folder: &Path) -> io::Result<Vec<PathBuf>>;
}

/// Where files are kept: SQLite's file system and ours, which mean the same files.
#[derive(Debug, Clone)]
pub struct FileSystem {
    /// The name of SQLite's, where it is not its own choice.
    pub vfs: Option<String>,
    /// Ours.
    pub files: Arc<dyn Files>,
}

impl FileSystem {
    /// The system's own.
    #[must_use]
    pub fn native() -> Self {
        Self { vfs: None, files: Arc::new(Native) }
    }
}

impl PartialEq for FileSystem {
    fn eq(&self, other: &Self) -> bool {
        self.vfs == other.vfs
    }
}

impl Eq for FileSystem {}

/// The folder that a file lies in.
pub(crate) fn folder_of(file: &Path) -> &Path {
    let folder = file.parent().filter(|folder| !folder.as_os_str().is_empty());
    folder.unwrap_or(Path::new("."))
}

/// The system's own files.
#[derive(Debug)]
struct Native;

impl Files for Native {
    fn look(&self, path: &Path) -> io::Result<Option<Found>> {
        match path.metadata() {
            Ok(metadata) => Ok(Some(found(&metadata))),
            Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
            Err(error) => Err(error),
        }
    }

    fn read_at(&self, path: &Path, offset: u64, buffer: &mut [u8]) -> io::Result<usize> {
        use std::io::{Read, Seek, SeekFrom};
        let mut file = std::fs::File::open(path)?;
        file.seek(SeekFrom::Start(offset))?;
        let mut read = 0;
        while let Some(rest) = buffer.get_mut(read..).filter(|rest| !rest.is_empty()) {
            match file.read(rest) {
                Ok(0) => break,
                Ok(some) => read += some,
                Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
                Err(error) => return Err(error),
            }
        }
        Ok(read)
    }

    fn create(&self, path: &Path) -> io::Result<bool> {
        match private().create_new(true).open(path) {
            Ok(_) => Ok(true),
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => Ok(false),
            Err(error) => Err(error),
        }
    }

    #[cfg(unix)]
    fn make_private(&self, path: &Path) -> io::Result<()> {
        use std::os::unix::fs::PermissionsExt;
        let mode = path.metadata()?.permissions().mode() & 0o777;
        if mode & 0o077 == 0 {
            return Ok(());
        }
        std::fs::set_permissions(path, std::fs::Permissions::from_mode(mode & 0o700))
    }

    #[cfg(not(unix))]
    fn make_private(&self, _: &Path) -> io::Result<()> {
        // Such a system keeps each user's files apart by the folder they lie in.
        Ok(())
    }

    fn copy(&self, from: &Path, to: &Path) -> io::Result<()> {
        let mut from = std::fs::File::open(from)?;
        let mut to = private().create_new(true).open(to)?;
        io::copy(&mut from, &mut to)?;
        to.sync_all()
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        std::fs::rename(from, to)
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        std::fs::remove_file(path)
    }

    fn sync_names(&self, file: &Path) -> io::Result<()> {
        if cfg!(unix) { std::fs::File::open(folder_of(file))?.sync_all() } else { Ok(()) }
    }

    fn list(&self, folder: &Path) -> io::Result<Vec<PathBuf>> {
        std::fs::read_dir(folder)?.map(|entry| entry.map(|entry| entry.path())).collect()
    }
}

/// To write a file that its owner alone may read.
fn private() -> std::fs::OpenOptions {
    let mut options = std::fs::OpenOptions::new();
    options.write(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options
}

#[cfg(unix)]
fn found(metadata: &std::fs::Metadata) -> Found {
    use std::os::unix::fs::MetadataExt;
    Found {
        folder: metadata.is_dir(),
        identity: Identity { device: metadata.dev(), file: metadata.ino() },
        bytes: metadata.len(),
        written: i128::from(metadata.mtime()) * 1_000_000_000 + i128::from(metadata.mtime_nsec()),
        read_only: metadata.mode() & 0o222 == 0,
    }
}

#[cfg(not(unix))]
fn found(metadata: &std::fs::Metadata) -> Found {
    let since = |time: io::Result<std::time::SystemTime>| {
        let time = time.ok()?.duration_since(std::time::UNIX_EPOCH).ok()?;
        i128::try_from(time.as_nanos()).ok()
    };
    Found {
        folder: metadata.is_dir(),
        // The moment it was made stands in for a number.
        identity: Identity {
            device: 0,
            file: since(metadata.created()).and_then(|at| u64::try_from(at).ok()).unwrap_or(0),
        },
        bytes: metadata.len(),
        written: since(metadata.modified()).unwrap_or(0),
        read_only: metadata.permissions().readonly(),
    }
}
