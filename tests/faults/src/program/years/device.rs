//! A device: its disk, its clocks, the process, and what the process must hold to at every tap.

use std::path::Path;
use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{
    Action, Answer, EngineError, Intent, Look, Reading, RefusalCode, Screen,
};
use barwright_faults::{Call, Disk};
use barwright_player::screens::at_floor;
use barwright_store::Store;

use super::clock::Clock;
use super::model::Model;
use crate::life::shown;

/// What was found to be wrong.
pub(super) type Wrong = String;

/// How a call is allowed to end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Disks {
    /// The disk is well: nothing fails.
    Well,
    /// It is not: the call may say so.
    Ill,
}

/// A rest as it stood at the tap before.
#[derive(Debug, Clone)]
struct Rested {
    left_ms: i64,
    at: Reading,
    entries: u64,
}

pub(super) struct Device {
    // Before the disk that it is on; none between two processes.
    engine: Option<Arc<Engine>>,
    pub(super) disk: Disk,
    image: Disk,
    pub(super) clock: Clock,
    pub(super) model: Model,
    /// Entries that were acknowledged.
    pub(super) entries: u64,
    rested: Option<Rested>,
}

fn open(disk: &Disk) -> Result<Arc<Engine>, Wrong> {
    Engine::open_in(disk.place(), "en").map_err(|error| format!("it does not open: {error:?}"))
}

impl Device {
    pub(super) fn new(with_boot: bool) -> Result<Self, Wrong> {
        let disk = Disk::new();
        Ok(Self {
            engine: Some(open(&disk)?),
            disk,
            image: Disk::new(),
            clock: Clock::new(with_boot),
            model: Model::default(),
            entries: 0,
            rested: None,
        })
    }

    pub(super) fn now(&self) -> Reading {
        self.clock.reading()
    }

    pub(super) fn engine(&self) -> &Engine {
        self.engine.as_deref().expect("a process runs")
    }

    fn count(&self) -> Result<u64, Wrong> {
        self.engine().count_records().map_err(|error| format!("it does not count: {error:?}"))
    }

    /// A look, which records nothing.
    pub(super) fn look(&mut self, look: Look) -> Result<Option<Answer>, Wrong> {
        let writes = self.disk.count(Call::Write);
        let answer = self.engine().view(look.clone(), self.now());
        if self.count()? != self.entries {
            return Err(format!("looking recorded: {look:?}"));
        }
        match answer {
            Ok(answer) => {
                if self.disk.count(Call::Write) != writes {
                    return Err(format!("looking wrote: {look:?}"));
                }
                self.holds_to_rest(&answer)?;
                Ok(Some(answer))
            }
            Err(EngineError::Refused { .. }) => Ok(None),
            Err(error) => Err(format!("{look:?} failed: {error:?}")),
        }
    }

    /// A tap on a well disk.
    pub(super) fn tap(&mut self, action: Action) -> Result<Result<Answer, EngineError>, Wrong> {
        let (before, writes) = (self.entries, self.disk.count(Call::Write));
        let answer = self.act(action.clone(), Disks::Well)?;
        match &answer {
            Ok(answer) => {
                if before != self.entries {
                    self.rested = None;
                }
                let again = self.engine().view(answer.look.clone(), self.now());
                if again.as_ref().map(|again| &again.screen) != Ok(&answer.screen) {
                    let again = again.map(|again| again.screen);
                    return Err(format!(
                        "after {action:?}: {:?} is shown otherwise when it is looked at: {:?}; {:?}",
                        answer.look, answer.screen, again
                    ));
                }
                self.rests(&answer.screen);
            }
            Err(_) if self.entries != before || self.disk.count(Call::Write) != writes => {
                return Err(format!("refused, but written: {action:?}"));
            }
            Err(_) => {}
        }
        Ok(answer)
    }

    pub(super) fn dispatch(
        &mut self,
        intent: Intent,
    ) -> Result<Result<Answer, EngineError>, Wrong> {
        self.tap(Action::Do { intent, session: None, then: None })
    }

    /// A tap that may be refused.
    pub(super) fn tries(&mut self, intent: Intent) -> Result<(), Wrong> {
        self.dispatch(intent).map(drop)
    }

    /// Any call, held to what it may answer. What it says to have recorded is counted.
    pub(super) fn act(
        &mut self,
        action: Action,
        disks: Disks,
    ) -> Result<Result<Answer, EngineError>, Wrong> {
        let before = self.entries;
        let answer = self.engine().act(action.clone(), self.now());
        match &answer {
            Ok(answer) => {
                let shows = matches!(action, Action::Show { .. });
                if disks == Disks::Well && matches!(answer.screen, Screen::NotShown { .. }) {
                    return Err(format!("not shown after {action:?}"));
                }
                if disks == Disks::Well {
                    self.entries = self.count()?;
                }
                if self.entries < before || (shows && self.entries != before) {
                    return Err(format!("{before} became {} by {action:?}", self.entries));
                }
            }
            Err(EngineError::Refused { .. }) => {
                if disks == Disks::Well {
                    self.entries = self.count()?;
                }
            }
            Err(EngineError::Storage { .. }) if disks == Disks::Ill => {}
            Err(error) => return Err(format!("{action:?} failed: {error:?}")),
        }
        Ok(answer)
    }

    /// After a time in which the disk was ill: what was not acknowledged is there whole, or not at
    /// all.
    pub(super) fn is_well_again(&mut self) -> Result<(), Wrong> {
        let before = self.entries;
        // The first call may be the one that reads back.
        let again = self.engine().count_records();
        let now = again.or_else(|_| self.engine().count_records());
        let now = now.map_err(|error| format!("it does not go on: {error:?}"))?;
        if now < before {
            return Err(format!("{before} entries became {now}"));
        }
        self.entries = now;
        self.rested = None;
        self.hold(false)
    }

    /// Holds the files as they are now against the model.
    pub(super) fn hold(&mut self, all: bool) -> Result<(), Wrong> {
        self.image.set_tracing(false);
        self.image.load_from(&self.disk);
        let store = Store::open_in(self.image.place());
        let store = store.map_err(|error| format!("a copy does not open: {error}"))?;
        if store.last_seq() != self.entries {
            let last = store.last_seq();
            return Err(format!("{} entries were said, {last} are there", self.entries));
        }
        self.model.hold(&store, all)
    }

    /// What the rest is at, kept for what comes: as the floor says that is shown, or one looked at.
    fn rests(&mut self, shown: &Screen) {
        let look = || self.engine().view(at_floor(None), self.now()).map(|answer| answer.screen);
        let rest = match shown {
            Screen::Floor { floor } => floor.rest.clone(),
            _ => match look() {
                Ok(Screen::Floor { floor }) => floor.rest,
                _ => None,
            },
        };
        let (at, entries) = (self.now(), self.entries);
        self.rested = rest.map(|rest| Rested { left_ms: rest.left_ms, at, entries });
    }

    /// Within one boot the boot clock rules; across boots no rest is longer than what remained.
    fn holds_to_rest(&self, answer: &Answer) -> Result<(), Wrong> {
        let (Screen::Floor { floor }, Some(before)) = (&answer.screen, &self.rested) else {
            return Ok(());
        };
        let Some(rest) = floor.rest.as_ref().filter(|_| before.entries == self.entries) else {
            return Ok(());
        };
        let (then, now) = (&before.at, self.now());
        let fits = match (then.boot_ms, now.boot_ms) {
            (Some(was), Some(is)) if then.boot_id == now.boot_id => {
                rest.left_ms == before.left_ms - (is - was)
            }
            _ => rest.left_ms <= before.left_ms,
        };
        if fits {
            return Ok(());
        }
        Err(format!("a rest of {} ms is {} ms: {then:?}, {now:?}", before.left_ms, rest.left_ms))
    }

    /// A tap in whose midst the process ends, or the power goes: what is there then opens, and shows
    /// what was shown before the tap or after it.
    pub(super) fn cut(
        &mut self,
        action: Action,
        power: bool,
        chance: &mut crate::chance::Chance,
    ) -> Result<(), Wrong> {
        let now = self.now();
        let before = (self.entries, shown(self.engine(), &now));
        let from = self.disk.read_trace(|trace| trace.steps.len());
        self.disk.acknowledge(self.entries);
        let _ = self.act(action.clone(), Disks::Well)?;
        self.disk.acknowledge(self.entries);
        let after = (self.entries, shown(self.engine(), &now));
        let to = self.disk.read_trace(|trace| trace.steps.len());
        let steps = from + 1 + chance.below((to - from) as u64) as usize;
        // The system outlives a process: all that was written is there.
        let sectors = match (power, chance.below(4)) {
            (false, _) | (true, 0) => u64::MAX,
            (true, 1) => 0,
            (true, _) => chance.next(),
        };
        let (files, acknowledged) =
            self.disk.read_trace(|trace| trace.after_power_cut(steps, sectors));
        self.comes_back(&files)?;
        let stands = self.count()?;
        // Where nothing was recorded, both show the same.
        let there = if stands == after.0 { &after } else { &before };
        if stands != there.0 || acknowledged.is_some_and(|least| stands < least) {
            return Err(format!(
                "{stands} entries after {action:?} was cut at step {} of {}: {} before, {} after",
                steps - from,
                to - from,
                before.0,
                after.0
            ));
        }
        self.entries = stands;
        if shown(self.engine(), &now) != there.1 {
            return Err(format!("other screens after {action:?} was cut"));
        }
        self.hold(false)
    }

    /// The process is gone, and another one begins with these files.
    pub(super) fn comes_back(&mut self, files: &barwright_faults::Files) -> Result<(), Wrong> {
        // What the one that is gone does to the disk in its end, the load undoes.
        drop(self.engine.take());
        self.disk.load(files);
        self.engine = Some(open(&self.disk)?);
        self.rested = None;
        Ok(())
    }

    /// A backup is made and checked; `comes_back` restores the records from it.
    pub(super) fn backs_up(&mut self, restores: bool) -> Result<(), Wrong> {
        let name = Path::new("backup");
        let copied = self.engine().back_up_in(self.disk.place().named(name));
        let copied = copied.map_err(|error| format!("no backup: {error:?}"))?;
        if copied != self.entries {
            return Err(format!("a backup of {copied} entries, of {}", self.entries));
        }
        let files = self.disk.files();
        if restores {
            self.comes_back(&files)?;
            let _ = self.engine().suspend();
            let restored = barwright_app::restore_in(name, &self.disk.place(), "en-GB");
            restored.map_err(|error| format!("not restored: {error:?}"))?;
        }
        let mut files = self.disk.files();
        files.retain(|name, _| name == "store" || name == "store-wal");
        self.comes_back(&files)?;
        self.hold(true)
    }

    /// The whole check.
    pub(super) fn check(&mut self) -> Result<(), Wrong> {
        let found = self.engine().examine_records().map_err(|error| format!("check: {error:?}"))?;
        if found.entries != self.entries || found.mended > 0 {
            return Err(format!("{found:?}, of {} entries", self.entries));
        }
        self.hold(true)
    }
}

/// Whether a key of another session was refused as such.
pub(super) fn is_stale(answer: &Result<Answer, EngineError>) -> bool {
    let stale = [RefusalCode::Stale, RefusalCode::BadReading];
    matches!(answer, Err(EngineError::Refused { code, .. }) if stale.contains(code))
}
