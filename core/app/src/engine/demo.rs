//! To the demo and back: another store in the place of the lifter's own, which stays as it is.

use std::path::{Path, PathBuf};
use std::sync::PoisonError;

use barwright_store::{FileSystem, Place};

use super::{Engine, Slot, load};
use crate::contract::{EngineError, Reading, RefusalCode};
use crate::demo;

impl Engine {
    /// Shows the demo in the place of the records, or the records again.
    pub(super) fn turn_demo(&self, on: bool, reading: &Reading) -> Result<(), EngineError> {
        let refused =
            |code: RefusalCode, reason: &str| Err(EngineError::refused(code, reason.to_owned()));
        let say = self.words().start();
        if self.in_demo() == on {
            return refused(RefusalCode::AlreadySo, say.so_already(on));
        }
        if !on {
            let mut slot = self.lock();
            let home = self.home.lock().unwrap_or_else(PoisonError::into_inner).take();
            let Some(home) = home else { return Ok(()) };
            if let Slot::Open(core) = std::mem::replace(&mut *slot, home) {
                // What was played is on disk or nowhere; a file that can't be closed is left.
                let _ = core.store.close();
            }
            return Ok(());
        }
        // A session that runs has its rests to ring: it is finished first.
        if self.with(|core| Ok(core.held.state.running().is_some()))? {
            return refused(RefusalCode::SessionRunning, say.finish_first());
        }
        let mut slot = self.lock();
        let Slot::Open(core) = &*slot else { return Err(self.words().storage().closed()) };
        let place = core.store.place().clone();
        let mut demo = match file_of(&place) {
            Some(path) => self.demo_in(&path, reading)?,
            None => self.demo_in_memory(reading)?,
        };
        demo.held.demo = true;
        let own = std::mem::replace(&mut *slot, Slot::Open(demo));
        let own = match own {
            Slot::Open(core) if file_of(&place).is_some() => {
                core.store.close().map_err(|error| self.said(error))?;
                Slot::Suspended(place)
            }
            own => own,
        };
        *self.home.lock().unwrap_or_else(PoisonError::into_inner) = Some(own);
        Ok(())
    }

    /// Whether the demo is shown.
    pub(super) fn in_demo(&self) -> bool {
        self.home.lock().unwrap_or_else(PoisonError::into_inner).is_some()
    }

    /// The demo in a file of its own, made where it is not there yet.
    fn demo_in(&self, path: &Path, reading: &Reading) -> Result<Box<super::Core>, EngineError> {
        if !path.exists() {
            let made = self.played(reading)?;
            made.back_up(path.display().to_string())?;
        }
        let core =
            load(Place::file(path), self.locale).map_err(|fault| fault.said(self.words()))?;
        Ok(Box::new(core))
    }

    fn demo_in_memory(&self, reading: &Reading) -> Result<Box<super::Core>, EngineError> {
        let made = self.played(reading)?;
        match std::mem::replace(&mut *made.lock(), Slot::Closed) {
            Slot::Open(core) => Ok(core),
            Slot::Suspended(_) | Slot::Closed => Err(self.words().storage().closed()),
        }
    }

    fn played(&self, reading: &Reading) -> Result<std::sync::Arc<Self>, EngineError> {
        let engine = Self::speaking(Place::Memory, self.locale)?;
        demo::play_in(&engine, reading)?;
        Ok(engine)
    }
}

/// The demo's file beside the records; none where those are in memory, or on a file system that is not
/// the system's own.
fn file_of(place: &Place) -> Option<PathBuf> {
    match place {
        Place::File { path, on } if *on == FileSystem::native() => {
            let mut name = std::ffi::OsString::from("demo-");
            name.push(path.file_name()?);
            Some(path.with_file_name(name))
        }
        Place::File { .. } | Place::Memory => None,
    }
}
