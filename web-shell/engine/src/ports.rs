//! The pool as the store asks it, beside SQLite.

use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use barwright_app::{FileSystem, Files, Found, Identity, Place};

use crate::pool::{self, Failure};
use crate::vfs;

/// A store's place in the pool.
pub(crate) fn place(path: &str) -> Place {
    let on = FileSystem { vfs: Some(vfs::NAME.to_owned()), files: Arc::new(Names) };
    Place::File { path: path.into(), on }
}

impl From<Failure> for io::Error {
    fn from(failure: Failure) -> Self {
        match failure {
            Failure::Full => io::ErrorKind::StorageFull.into(),
            Failure::NotThere => io::ErrorKind::NotFound.into(),
            Failure::Taken => io::ErrorKind::AlreadyExists.into(),
            Failure::Other => Self::other("the browser's file"),
        }
    }
}

fn name(path: &Path) -> io::Result<&str> {
    path.to_str().ok_or_else(|| io::ErrorKind::InvalidFilename.into())
}

/// The names of the pool: there is one folder.
#[derive(Debug)]
struct Names;

impl Files for Names {
    fn look(&self, path: &Path) -> io::Result<Option<Found>> {
        let name = name(path)?;
        if matches!(name, "" | ".") {
            let identity = Identity::default();
            return Ok(Some(Found {
                folder: true,
                identity,
                bytes: 0,
                written: 0,
                read_only: false,
            }));
        }
        Ok(pool::find(name).map(|slot| Found {
            folder: false,
            identity: Identity { device: 1, file: slot.number },
            bytes: slot.bytes(),
            written: 0,
            read_only: false,
        }))
    }

    fn read_at(&self, path: &Path, offset: u64, buffer: &mut [u8]) -> io::Result<usize> {
        let slot = pool::find(name(path)?).ok_or(Failure::NotThere)?;
        Ok(slot.read_at(offset, buffer)?)
    }

    fn create(&self, path: &Path) -> io::Result<bool> {
        match pool::make(name(path)?) {
            Ok(_) => Ok(true),
            Err(Failure::Taken) => Ok(false),
            Err(failure) => Err(failure.into()),
        }
    }

    fn make_private(&self, _: &Path) -> io::Result<()> {
        // The browser keeps each site's files apart.
        Ok(())
    }

    fn copy(&self, from: &Path, to: &Path) -> io::Result<()> {
        Ok(pool::copy(name(from)?, name(to)?)?)
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        Ok(pool::rename(name(from)?, name(to)?)?)
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        Ok(pool::remove(name(path)?)?)
    }

    fn sync_names(&self, _: &Path) -> io::Result<()> {
        // A name is durable when it is given.
        Ok(())
    }

    fn list(&self, _: &Path) -> io::Result<Vec<PathBuf>> {
        Ok(pool::names().into_iter().map(PathBuf::from).collect())
    }
}
