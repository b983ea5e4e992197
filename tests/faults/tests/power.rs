//! The power goes: whatever the moment and whatever part of the unsynced bytes reached the disk, a
//! store opens with every tap that was acknowledged, and with no half of one.

use barwright_faults::{Call, Disk, Fault, Step, Trace, replay, tap};
use proptest::prelude::*;

/// A few sessions: taps, a quiet moment now and then, the file given up and taken again.
fn sessions() -> Trace {
    let disk = Disk::new();
    let mut store = disk.open().expect("a new store");
    for number in 1..=45 {
        tap(&mut store, number).expect("nothing fails");
        disk.acknowledge(number);
        match number % 15 {
            4 | 9 => store.checkpoint().expect("nothing fails"),
            0 => {
                store.close().expect("nothing fails");
                store = disk.open().expect("nothing fails");
            }
            _ => {}
        }
    }
    drop(store);
    disk.trace()
}

/// Opens what a power cut left, and goes on with it.
fn survives(disk: &Disk, trace: &Trace, steps: usize, seed: u64) {
    let (files, acknowledged) = trace.after_power_cut(steps, seed);
    disk.load(&files);
    let mut store = disk.open().expect("what is left opens");
    let there = replay(&mut store);
    let acknowledged = acknowledged.unwrap_or(0);
    // The tap that was under way may be there too, whole.
    assert!((acknowledged..=acknowledged + 1).contains(&there), "{acknowledged} but {there}");
    tap(&mut store, there + 1).expect("it goes on");
    store.close().expect("it closes");
    assert_eq!(replay(&mut disk.open().expect("it opens again")), there + 1);
}

#[test]
fn at_every_step_with_all_or_nothing_of_the_rest() {
    let (trace, disk) = (sessions(), Disk::new());
    for steps in 0..=trace.steps.len() {
        survives(&disk, &trace, steps, 0);
        survives(&disk, &trace, steps, u64::MAX);
    }
}

#[test]
fn at_any_step_with_any_sectors_of_the_rest() {
    let (trace, disk) = (sessions(), Disk::new());
    // More by the variable PROPTEST_CASES.
    let config = ProptestConfig { failure_persistence: None, ..ProptestConfig::default() };
    proptest!(config, |(steps in 0..=trace.steps.len(), seed: u64)| {
        survives(&disk, &trace, steps, seed);
    });
}

#[test]
fn after_a_sync_that_failed() {
    // The system forgets what it could not sync and says that all is well from then on.
    let trace = sessions();
    let syncs = trace.steps.iter().filter(|step| matches!(step, Step::Sync { .. })).count() as u64;
    let images = Disk::new();
    for after in (0..syncs).step_by(5) {
        let disk = Disk::new();
        let mut store = disk.open().expect("a new store");
        disk.fail(Some(Fault { call: Call::Sync, after, times: 1 }));
        let mut number = 1;
        while number <= 40 {
            let tapped = tap(&mut store, number).is_ok();
            if tapped {
                disk.acknowledge(number);
            }
            if !tapped || (number % 15 == 0 && store.checkpoint().is_err()) {
                store.reopen().expect("it failed once only");
                number = replay(&mut store);
                disk.acknowledge(number);
            }
            number += 1;
        }
        let trace = disk.trace();
        for steps in (0..=trace.steps.len()).rev().step_by(29) {
            for seed in [0, 7, after + 1, u64::MAX] {
                survives(&images, &trace, steps, seed);
            }
        }
    }
}
