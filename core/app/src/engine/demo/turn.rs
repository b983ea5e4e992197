//! To the demo and back: another store in the place of the lifter's own, which stays as it is.

use std::ffi::OsString;
use std::sync::PoisonError;

use barwright_store::Place;

use super::super::{Core, Engine, Slot, load};
use super::{ENGLISH, create_in, played};
use crate::contract::{EngineError, Reading, RefusalCode};

impl Engine {
    /// Shows the demo in the place of the records, or the records again.
    pub(in crate::engine) fn turn_demo(
        &self,
        on: bool,
        reading: &Reading,
    ) -> Result<(), EngineError> {
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
        let mut demo = match beside(&place) {
            Some(file) => self.demo_in(file, reading)?,
            None => played(reading)?.speaking(self.locale),
        };
        demo.held.demo = true;
        let own = std::mem::replace(&mut *slot, Slot::Open(demo));
        let own = match own {
            Slot::Open(core) if place != Place::Memory => {
                core.store.close().map_err(|error| self.said(error))?;
                Slot::Suspended(place)
            }
            own => own,
        };
        *self.home.lock().unwrap_or_else(PoisonError::into_inner) = Some(own);
        Ok(())
    }

    /// Whether the demo is shown.
    pub(in crate::engine) fn in_demo(&self) -> bool {
        self.home.lock().unwrap_or_else(PoisonError::into_inner).is_some()
    }

    /// The demo in a file of its own, made where it is not there yet.
    fn demo_in(&self, file: Place, reading: &Reading) -> Result<Box<Core>, EngineError> {
        let there = match &file {
            Place::File { path, on } => matches!(on.files.look(path), Ok(Some(_))),
            Place::Memory => false,
        };
        if !there {
            create_in(file.clone(), ENGLISH, reading)?.shut_down()?;
        }
        let core = load(file, self.locale).map_err(|fault| fault.said(self.words()))?;
        Ok(Box::new(core))
    }
}

/// The demo's file beside the records, on the same file system; none where those are in memory.
fn beside(records: &Place) -> Option<Place> {
    let Place::File { path, on } = records else { return None };
    let mut name = OsString::from("demo-");
    name.push(path.file_name()?);
    Some(Place::File { path: path.with_file_name(name), on: on.clone() })
}
