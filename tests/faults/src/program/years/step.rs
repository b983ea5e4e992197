//! What happens in a year, as a list of steps. Each has a seed of its own, so that a list that is
//! made shorter leaves the other steps as they were.

use crate::chance::Chance;

/// One thing that happens.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum What {
    /// Days pass, and the next session begins.
    Begin,
    /// The next thing at the bar.
    Lift,
    /// The session ends.
    End,
    /// A screen is looked at.
    Look,
    /// A key of any screen.
    Press,
    /// A key that was kept from earlier.
    Stale,
    /// An intent of any kind with anything in it.
    Absurd,
    /// A field is written, with sense or without.
    Write,
    /// A plan is adopted: mended, another one, or one with faults.
    Plan,
    /// The clock of the wall is set, forward or back, to sense or without.
    SetClock,
    /// Another zone, or summer time.
    Zone,
    /// The device starts anew.
    Reboot,
    /// The file is given up for a while.
    Suspend,
    /// The process ends in the midst of a tap.
    Kill,
    /// The power goes in the midst of a tap.
    PowerCut,
    /// Calls to the disk fail during a tap.
    Fault,
    /// The disk is full during a tap.
    Full,
    /// File or folder can't be written for a while.
    ReadOnly,
    /// Another file lies in the place of the open one.
    Swap,
    /// A backup is made; now and then the records come back from it.
    Backup,
    /// The records are checked.
    Check,
}

/// A step with its seed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Step {
    pub(super) what: What,
    pub(super) seed: u64,
}

/// What happens beside the training, and how often.
const BESIDE: [(What, u64); 17] = [
    (What::Look, 10),
    (What::Press, 14),
    (What::Stale, 4),
    (What::Absurd, 14),
    (What::Write, 8),
    (What::Plan, 1),
    (What::SetClock, 2),
    (What::Zone, 1),
    (What::Reboot, 2),
    (What::Suspend, 3),
    (What::Kill, 6),
    (What::PowerCut, 6),
    (What::Fault, 8),
    (What::Full, 2),
    (What::ReadOnly, 1),
    (What::Swap, 1),
    (What::Backup, 1),
];

/// A year: three sessions a week, and what comes between.
pub(super) fn year(seed: u64) -> Vec<Step> {
    let mut chance = Chance::of(seed, 5);
    let mut steps = Vec::new();
    let all: u64 = BESIDE.iter().map(|(_, often)| often).sum();
    let push = |what, chance: &mut Chance, steps: &mut Vec<Step>| {
        steps.push(Step { what, seed: chance.next() });
    };
    push(What::Plan, &mut chance, &mut steps);
    for session in 0..52 * 3 {
        push(What::Begin, &mut chance, &mut steps);
        for _ in 0..5 + chance.below(12) {
            push(What::Lift, &mut chance, &mut steps);
            if chance.below(3) == 0 {
                let mut left = chance.below(all);
                let what = BESIDE.into_iter().find(|(_, often)| {
                    let this = left < *often;
                    left = left.saturating_sub(*often);
                    this
                });
                push(what.map_or(What::Look, |(what, _)| what), &mut chance, &mut steps);
            }
        }
        push(What::End, &mut chance, &mut steps);
        if session % 26 == 25 {
            push(What::Check, &mut chance, &mut steps);
        }
    }
    steps
}
