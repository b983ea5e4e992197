//! What was done to a disk, and what a power cut would have left of it.

use std::collections::BTreeMap;

/// The unit in which unsynced bytes reach a disk or don't.
pub const SECTOR: usize = 512;

/// Files by name.
pub type Files = BTreeMap<String, Vec<u8>>;

/// The kinds of call that can be counted and failed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Call {
    /// Opening or creating a file.
    Open,
    /// Reading.
    Read,
    /// Writing.
    Write,
    /// Cutting a file short.
    Truncate,
    /// Syncing a file.
    Sync,
    /// Deleting a file.
    Delete,
}

/// One thing done to the disk.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Step {
    /// A file came to be under a name. Files are numbered as they come.
    Create {
        /// Its name.
        name: String,
        /// Its number.
        file: usize,
    },
    /// Bytes were written.
    Write {
        /// The file.
        file: usize,
        /// Where.
        at: usize,
        /// Them.
        bytes: Vec<u8>,
    },
    /// A file was cut short.
    Truncate {
        /// The file.
        file: usize,
        /// Its length from then on.
        length: usize,
    },
    /// A file was synced.
    Sync {
        /// The file.
        file: usize,
    },
    /// A sync failed: what was not synced before it may be lost even though a later sync succeeds,
    /// since the system holds it to be clean (as Linux does).
    FailedSync {
        /// The file.
        file: usize,
    },
    /// A name was deleted.
    Delete {
        /// It.
        name: String,
    },
    /// A name was changed.
    Rename {
        /// The old one.
        from: String,
        /// The new one.
        to: String,
    },
    /// All names were synced.
    SyncNames,
    /// The program acknowledged something to its user, by a number of its own.
    Acknowledged(u64),
}

/// All that was done to a disk, in order.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Trace {
    /// What the disk held at first, all of it synced; its files have the first numbers, in order.
    pub from: Files,
    /// The steps.
    pub steps: Vec<Step>,
}

/// A file as a power cut may find it.
#[derive(Debug, Clone, Default)]
struct Inode {
    /// What is on the disk for certain, where nothing unsynced lies over it.
    bytes: Vec<u8>,
    /// What was done since the last sync, in order.
    unsynced: Vec<Unsynced>,
    /// It was synced since it came to be.
    synced: bool,
}

#[derive(Debug, Clone)]
enum Unsynced {
    Write { at: usize, bytes: Vec<u8> },
    Truncate { length: usize },
}

/// A small generator (SplitMix64), so that a power cut is a function of its seed.
struct Chance(u64);

impl Chance {
    fn of(&mut self, seed: u64) -> bool {
        match seed {
            0 => false,
            u64::MAX => true,
            _ => self.bit(),
        }
    }

    fn bit(&mut self) -> bool {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (z ^ (z >> 31)) & 1 == 1
    }
}

impl Trace {
    /// The files that are left when the power goes after so many steps, and the last number
    /// acknowledged by then. `seed` chooses which sectors that were not synced got there; 0 is
    /// none of them, `u64::MAX` all of them.
    pub fn after_power_cut(&self, steps: usize, seed: u64) -> (Files, Option<u64>) {
        let mut chance = Chance(seed);
        let mut chosen = || chance.of(seed);
        let mut machine = Machine::new(&self.from);
        for step in self.steps.iter().take(steps) {
            machine.take(step, &mut chosen);
        }
        (machine.left(&mut chosen), machine.acknowledged)
    }
}

/// A trace played on, step by step, with a power cut at any.
#[derive(Debug)]
pub struct Machine {
    names: BTreeMap<String, usize>,
    inodes: Vec<Inode>,
    unsynced_deletes: Vec<(String, usize)>,
    acknowledged: Option<u64>,
}

impl Machine {
    /// One with files that are synced.
    pub fn new(from: &Files) -> Self {
        let mut machine = Self {
            names: BTreeMap::new(),
            inodes: Vec::new(),
            unsynced_deletes: Vec::new(),
            acknowledged: None,
        };
        for (name, bytes) in from {
            machine.names.insert(name.clone(), machine.inodes.len());
            machine.inodes.push(Inode { bytes: bytes.clone(), unsynced: Vec::new(), synced: true });
        }
        machine
    }

    /// Plays a step of a trace in which no sync failed.
    pub fn play(&mut self, step: &Step) {
        self.take(step, &mut || true);
    }

    /// The files that are left when the power goes now, as in [`Trace::after_power_cut`], and the
    /// last number acknowledged.
    pub fn power_cut(&self, seed: u64) -> (Files, Option<u64>) {
        let mut chance = Chance(seed);
        (self.left(&mut || chance.of(seed)), self.acknowledged)
    }

    fn take(&mut self, step: &Step, chosen: &mut impl FnMut() -> bool) {
        let Self { names, inodes, unsynced_deletes, acknowledged } = self;
        match step {
            Step::Create { name, file } => {
                assert_eq!(*file, inodes.len(), "files are numbered in order");
                names.insert(name.clone(), *file);
                inodes.push(Inode::default());
            }
            Step::Write { file, at, bytes } => {
                inodes[*file].unsynced.push(Unsynced::Write { at: *at, bytes: bytes.clone() })
            }
            Step::Truncate { file, length } => {
                inodes[*file].unsynced.push(Unsynced::Truncate { length: *length });
            }
            Step::Sync { file } => {
                inodes[*file].settle(&mut || true);
                // With a new file SQLite syncs the folder, and so every name in it.
                if !std::mem::replace(&mut inodes[*file].synced, true) {
                    unsynced_deletes.clear();
                }
            }
            Step::FailedSync { file } => inodes[*file].settle(chosen),
            Step::Delete { name } => {
                if let Some(file) = names.remove(name) {
                    unsynced_deletes.push((name.clone(), file));
                }
            }
            // Renames are not torn here: what depends on one syncs the names at once.
            Step::Rename { from, to } => {
                if let Some(file) = names.remove(from) {
                    names.insert(to.clone(), file);
                }
            }
            Step::SyncNames => unsynced_deletes.clear(),
            Step::Acknowledged(number) => *acknowledged = Some(*number),
        }
    }

    fn left(&self, chosen: &mut impl FnMut() -> bool) -> Files {
        let mut names = self.names.clone();
        // A deleted name may come back, where no new file took it.
        for (name, file) in &self.unsynced_deletes {
            if !names.contains_key(name) && !chosen() {
                names.insert(name.clone(), *file);
            }
        }
        let files = names.into_iter().map(|(name, file)| {
            let mut inode = self.inodes[file].clone();
            inode.settle(chosen);
            (name, inode.bytes)
        });
        files.collect()
    }
}

impl Inode {
    /// Brings what is unsynced to the disk, sector by sector, as chosen.
    fn settle(&mut self, chosen: &mut impl FnMut() -> bool) {
        for change in std::mem::take(&mut self.unsynced) {
            match change {
                Unsynced::Truncate { length } => {
                    if chosen() {
                        self.bytes.truncate(length);
                    }
                }
                Unsynced::Write { at, bytes } => {
                    let mut done = 0;
                    while done < bytes.len() {
                        let start = at + done;
                        let end = ((start / SECTOR + 1) * SECTOR).min(at + bytes.len());
                        if chosen() {
                            if self.bytes.len() < end {
                                self.bytes.resize(end, 0);
                            }
                            self.bytes[start..end].copy_from_slice(&bytes[done..end - at]);
                        }
                        done = end - at;
                    }
                }
            }
        }
    }
}
