//! The engine object: a lock, and what survives a panic.

mod by_hand;
mod came;
mod codec;
mod core;
pub mod demo;
mod derive;
mod effects;
mod examine;
mod exchange;
mod export;
mod intents;
mod paper;
mod returned;
mod sent;
mod standing;
mod taken;
#[cfg(test)]
mod tests;

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;
use std::sync::{Arc, Mutex, MutexGuard};

use barwright_store::{Place, SCHEMA_VERSION, Schedule, Store, StoreError, is_at};

use crate::contract::{Action, Answer, CONTRACT_VERSION, EngineError, Intent, Look, Reading};
use crate::fault::Fault;
use crate::locale::Locale;
use crate::phrase::Words;

use self::core::Core;
use self::exchange::coming;
pub(crate) use derive::derive_anew;
pub use examine::Examined;
pub(crate) use examine::{Verdict, examine, verdict};
pub use exchange::{Imported, Joined, OldTable, Table};
pub use export::{Export, Exported};
pub use paper::PaperOf;
pub use sent::Change;

/// The versions a shell may want to show or compare.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Versions {
    /// Of the program.
    pub program: String,
    /// Of the contract.
    pub contract: u32,
    /// Of the store's format.
    pub store: u32,
}

/// The one object a shell holds: a store, and the session that runs in it.
///
/// Calls from any thread are taken one after the other. They touch the disk: call off the main
/// thread. There is one engine to a store; a second open of the same file is refused.
#[derive(Debug)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Object))]
pub struct Engine {
    locale: Locale,
    slot: Mutex<Slot>,
    /// The lifter's own records while the demo is shown; none otherwise. Taken after `slot`.
    home: Mutex<Option<Slot>>,
}

/// Whether the engine has its file.
#[derive(Debug)]
enum Slot {
    /// It has.
    Open(Box<Core>),
    /// It gave it up; the next call takes it again.
    Suspended(Place),
    /// It was shut down.
    Closed,
}

#[cfg_attr(feature = "uniffi", uniffi::export)]
impl Engine {
    /// Opens the store at `path`, or makes a new one there. `locale` is a tag such as `de-DE`: it
    /// decides the decimal mark and the unit; one that is not known writes a point and kilograms.
    ///
    /// # Errors
    /// [`EngineError::NewerFile`] for a file of a newer release, [`EngineError::Storage`] for every
    /// other file that can't be opened. The file is left as it is.
    #[cfg_attr(feature = "uniffi", uniffi::constructor)]
    pub fn open(path: String, locale: String) -> Result<Arc<Self>, EngineError> {
        Self::open_in(Place::file(path), &locale)
    }

    /// An engine in memory: for tests, and for a look without leaving anything behind.
    ///
    /// # Errors
    /// [`EngineError::Storage`] when memory is short.
    #[cfg_attr(feature = "uniffi", uniffi::constructor)]
    pub fn in_memory(locale: String) -> Result<Arc<Self>, EngineError> {
        Self::open_in(Place::Memory, &locale)
    }

    /// Does what a key says: carries its intent out, or shows its screen.
    ///
    /// # Errors
    /// As [`Engine::dispatch`] and [`Engine::view`].
    pub fn act(&self, action: Action, reading: Reading) -> Result<Answer, EngineError> {
        let action = match action {
            Action::Do { intent: Intent::Demo { on }, .. } => {
                self.turn_demo(on, &reading)?;
                Action::Show { look: Look::Today { session: None, minutes: None } }
            }
            action => action,
        };
        self.with(|core| coming::act(core, action, &reading.into()))
    }

    /// Carries a tap out. What it answers is on disk: where the screen after it can't be made, the
    /// answer says so in a screen of its own, with the tap's effects.
    ///
    /// # Errors
    /// [`EngineError`]; nothing was recorded then.
    pub fn dispatch(&self, intent: Intent, reading: Reading) -> Result<Answer, EngineError> {
        self.act(Action::Do { intent, session: None, then: None }, reading)
    }

    /// Shows a screen. Nothing is recorded.
    ///
    /// # Errors
    /// [`EngineError`].
    pub fn view(&self, look: Look, reading: Reading) -> Result<Answer, EngineError> {
        self.act(Action::Show { look }, reading)
    }

    /// Gives the file up, for a device that may end the process; the next call takes it again by
    /// itself.
    ///
    /// # Errors
    /// [`EngineError::Closed`] after shut-down, [`EngineError::Storage`] when the disk failed; what
    /// was acknowledged is safe all the same.
    pub fn suspend(&self) -> Result<(), EngineError> {
        let mut slot = self.lock();
        match std::mem::replace(&mut *slot, Slot::Closed) {
            Slot::Open(core) => {
                let place = core.store.place().clone();
                if place == Place::Memory {
                    *slot = Slot::Open(core);
                    return Ok(());
                }
                *slot = Slot::Suspended(place);
                core.store.close().map_err(|error| self.said(error))
            }
            Slot::Suspended(place) => {
                *slot = Slot::Suspended(place);
                Ok(())
            }
            Slot::Closed => Err(self.words().storage().closed()),
        }
    }

    /// Gives the file up for good: every later call answers [`EngineError::Closed`].
    ///
    /// # Errors
    /// As [`Engine::suspend`].
    pub fn shut_down(&self) -> Result<(), EngineError> {
        let was = std::mem::replace(&mut *self.lock(), Slot::Closed);
        let home = self.home.lock().unwrap_or_else(std::sync::PoisonError::into_inner).take();
        if let Some(Slot::Open(core)) = home {
            core.store.close().map_err(|error| self.said(error))?;
        }
        match was {
            Slot::Open(core) => core.store.close().map_err(|error| self.said(error)),
            Slot::Suspended(_) => Ok(()),
            Slot::Closed => Err(self.words().storage().closed()),
        }
    }

    /// Copies the records whole to another file and checks the copy, entry by entry. Answers how
    /// many entries it has.
    ///
    /// # Errors
    /// [`EngineError::Storage`] when it can't be written, or is there already.
    pub fn back_up(&self, path: String) -> Result<u64, EngineError> {
        self.with(|core| {
            let copied = core.store.backup(Path::new(&path))?;
            Ok(copied.events)
        })
    }

    /// Makes a backup in a folder where the last one there is `every_days` old by the reading's date,
    /// checks it, and keeps no more than `keep` of them. Answers what happened, in words.
    ///
    /// # Errors
    /// [`EngineError::Storage`] when it can't be written; nothing was removed then.
    pub fn keep_backups(
        &self,
        folder: String,
        every_days: u32,
        keep: u32,
        reading: Reading,
    ) -> Result<String, EngineError> {
        let today = barwright_domain::session::Reading::from(reading).local_day();
        let schedule = Schedule { every: every_days, keep };
        self.with(|core| {
            let kept = core.store.keep_backup(Path::new(&folder), schedule, today)?;
            Ok(self.words().storage().kept_backup(&kept))
        })
    }

    /// Checks the whole file: its structure, every entry of the log, and all that is derived from
    /// them, which is made anew where it does not fit. Opening checks no more than the last entries.
    /// Answers how many entries there are.
    ///
    /// # Errors
    /// [`EngineError::Storage`] with what is damaged; [`crate::recover`] reads what is good.
    pub fn check_records(&self) -> Result<u64, EngineError> {
        self.examine_records().map(|found| found.entries)
    }

    /// The versions of program, contract and store.
    ///
    /// # Errors
    /// [`EngineError::Closed`] after shut-down, as every call.
    pub fn versions(&self) -> Result<Versions, EngineError> {
        if matches!(*self.lock(), Slot::Closed) {
            return Err(self.words().storage().closed());
        }
        Ok(Versions {
            program: env!("CARGO_PKG_VERSION").to_owned(),
            contract: CONTRACT_VERSION,
            store: SCHEMA_VERSION,
        })
    }
}

impl Engine {
    /// Opens in a place of the store's kind: a file, one on another virtual file system, memory.
    ///
    /// # Errors
    /// As [`Engine::open`].
    pub fn open_in(place: Place, locale: &str) -> Result<Arc<Self>, EngineError> {
        Self::speaking(place, Locale::read(locale))
    }

    /// Opens in a place, with a locale that is read already.
    fn speaking(place: Place, locale: Locale) -> Result<Arc<Self>, EngineError> {
        let said = |fault: Fault| fault.said(locale.words());
        let core = guarded(AssertUnwindSafe(|| load(place, locale)))
            .and_then(|core| core)
            .map_err(said)?;
        Ok(Arc::new(Self::holding(Box::new(core), locale)))
    }

    /// Of what is open, in a language.
    fn holding(core: Box<Core>, locale: Locale) -> Self {
        let core = core.speaking(locale);
        Self { locale, slot: Mutex::new(Slot::Open(core)), home: Mutex::new(None) }
    }

    /// As [`Engine::back_up`], to another place of the store's kind: what is in memory has no file
    /// system of its own.
    ///
    /// # Errors
    /// As there.
    pub fn back_up_in(&self, to: Place) -> Result<u64, EngineError> {
        self.with(|core| Ok(core.store.backup_in(to)?.events))
    }

    /// How many entries the log has.
    ///
    /// # Errors
    /// As every call.
    pub fn count_records(&self) -> Result<u64, EngineError> {
        self.with(|core| Ok(core.store.last_seq()))
    }

    /// As [`Engine::check_records`], and what was looked at.
    ///
    /// # Errors
    /// As there.
    pub fn examine_records(&self) -> Result<Examined, EngineError> {
        self.with(|core| {
            let found = examine::examine(&mut core.store)?;
            if found.mended > 0 {
                // What is held was read before it was mended.
                core.rebuild()?;
            }
            Ok(found)
        })
    }

    /// Runs `work` on the core under the lock. A panic is caught: the state is rebuilt from the log
    /// before anything is answered again.
    fn with<T>(&self, work: impl FnOnce(&mut Core) -> Result<T, Fault>) -> Result<T, EngineError> {
        let mut slot = self.lock();
        let said = |fault: Fault| fault.said(self.words());
        if let Slot::Suspended(place) = &*slot {
            // A new file in its place would say that nothing was ever recorded.
            if !is_at(place).map_err(|error| self.said(error))? {
                let path = place.path().to_path_buf();
                return Err(self.said(StoreError::Moved { path }));
            }
            let opened = guarded(AssertUnwindSafe(|| load(place.clone(), self.locale)))
                .and_then(|core| core);
            let mut opened = opened.map_err(said)?;
            opened.held.demo = self.in_demo();
            *slot = Slot::Open(Box::new(opened));
        }
        let Slot::Open(core) = &mut *slot else { return Err(self.words().storage().closed()) };
        // What failed in a quiet moment closes the store too: looking goes on as tapping does.
        if core.stale || core.store.is_closed() {
            rebuild(core).map_err(said)?;
        }
        match guarded(AssertUnwindSafe(|| work(core))) {
            Ok(answer) => answer.map_err(said),
            Err(broken) => {
                // The store's transaction was rolled back with the panic; the log is the truth.
                rebuild(core).map_err(said)?;
                Err(said(broken))
            }
        }
    }

    fn words(&self) -> Words {
        self.locale.words()
    }

    fn said(&self, fault: impl Into<Fault>) -> EngineError {
        fault.into().said(self.words())
    }

    /// Spoils what is in memory and panics, for the tests of the bindings.
    ///
    /// # Errors
    /// [`EngineError::Broken`], always.
    #[cfg(feature = "defects")]
    pub fn break_inside(&self) -> Result<(), EngineError> {
        self.with(|core| {
            core.held.desk = barwright_domain::desk::Desk::default();
            core.held.state = barwright_domain::session::State::default();
            core.held.plan = None;
            panic!("a defect on demand")
        })
    }

    fn lock(&self) -> MutexGuard<'_, Slot> {
        // Panics are caught inside the lock, so a poisoned one still holds a whole slot.
        self.slot.lock().unwrap_or_else(std::sync::PoisonError::into_inner)
    }
}

fn load(place: Place, locale: Locale) -> Result<Core, Fault> {
    // What can't be written can be looked at, and copied to where there is room.
    Core::load(Store::open_or_read(place)?, locale)
}

fn rebuild(core: &mut Core) -> Result<(), Fault> {
    guarded(AssertUnwindSafe(|| core.rebuild())).and_then(|rebuilt| rebuilt)
}

/// Catches a panic and makes a fault of it. It has no more than a fixed text: a formatted message
/// could hold what a lifter wrote.
pub(crate) fn guarded<T>(work: impl FnOnce() -> T + std::panic::UnwindSafe) -> Result<T, Fault> {
    catch_unwind(work).map_err(|payload| {
        let fixed = payload.downcast_ref::<&'static str>().copied();
        Fault::Broken(fixed.unwrap_or("a defect without a fixed text"))
    })
}
