//! Records that come in from a file: interrupted at any moment, all of them are there or none.

use std::sync::Arc;

use barwright_app::contract::{Intent, Reading};
use barwright_app::{Engine, Export};
use barwright_faults::{Call, Disk, Fault, Files};

const PLAN: &str = "name = \"Short\"\nweeks = 4\n[[session]]\nname = \"One\"\n\
                    [[session.exercise]]\nname = \"Overhead press\"\nsets = 2\nreps = 5\n\
                    load = \"40 kg\"\nramp = \"none\"\n";

fn at(tap: i64) -> Reading {
    let passed = tap * 60_000;
    Reading {
        wall_ms: 1_795_500_000_000 + passed,
        offset_minutes: 60,
        boot_ms: Some(5_000_000 + passed),
        boot_id: Some("a".into()),
    }
}

fn exported(engine: &Engine) -> Vec<u8> {
    let mut file = Vec::new();
    engine.export_records(Export::default(), &mut file).expect("nothing fails");
    file
}

/// A session, as called.
fn train(engine: &Engine, day: i64) {
    let record = || Intent::Record {
        part: None,
        amount: None,
        left_halves: Some(4),
        ended: barwright_app::contract::HowEnded::AsCalled,
        helped: 0,
        last: false,
    };
    let begin = Intent::Begin { session: None, minutes: None, sure: true };
    for (minute, intent) in (0..).zip([begin, record(), record(), Intent::Finish]) {
        engine.dispatch(intent, at(day * 1_440 + minute * 3)).expect("it can be done");
    }
}

/// The records of a phone that went on, and a disk with those of the one that it came from, which
/// went on too where `apart`.
fn phones(apart: bool) -> (Vec<u8>, Files) {
    let disk = Disk::new();
    let old = Engine::open_in(disk.place(), "en").expect("a new store");
    old.dispatch(Intent::adopt(PLAN), at(0)).expect("a plan");
    train(&old, 1);
    let new = Engine::in_memory("en".to_owned()).expect("memory");
    new.import_records(exported(&old).as_slice(), false).expect("it becomes the old one");
    for day in [3, 5, 9] {
        train(&new, day);
    }
    if apart {
        train(&old, 7);
    }
    let file = exported(&new);
    old.shut_down().expect("nothing fails");
    drop(old);
    (file, disk.files())
}

/// Takes the file in, in the way that fits.
fn comes(engine: &Engine, file: &[u8], apart: bool) -> bool {
    if apart {
        engine.join_records(file, at(20_000), false).is_ok()
    } else {
        engine.import_records(file, false).is_ok()
    }
}

#[track_caller]
fn opened(disk: &Disk) -> Arc<Engine> {
    Engine::open_in(disk.place(), "en").expect("what is left opens")
}

/// What is there after opening again, which is sound in itself.
#[track_caller]
fn found(disk: &Disk) -> Vec<u8> {
    let engine = opened(disk);
    let examined = engine.examine_records().expect("it is sound");
    assert_eq!(examined.mended, 0, "{examined:?}");
    exported(&engine)
}

#[test]
fn whatever_call_fails_all_of_it_came_or_nothing() {
    for apart in [false, true] {
        let (file, files) = phones(apart);
        let before = {
            let disk = Disk::new();
            disk.load(&files);
            found(&disk)
        };
        let (mut failed, mut refused) = (0, 0);
        for call in [Call::Write, Call::Sync] {
            for after in 0.. {
                let disk = Disk::new();
                disk.load(&files);
                let engine = opened(&disk);
                let calls = disk.count(call);
                disk.fail(Some(Fault { call, after, times: 1 }));
                let came = comes(&engine, &file, apart);
                let met = disk.count(call) - calls > after;
                disk.fail(None);
                drop(engine);
                let there = found(&disk);
                refused += u32::from(!came);
                // What failed after all was written is met by the next tap: it came all the same.
                assert!(!came || there != before, "{call:?} {after}: said to be here, and is not");
                if there != before {
                    let disk = Disk::new();
                    disk.load(&files);
                    let engine = opened(&disk);
                    assert!(comes(&engine, &file, apart));
                    assert_eq!(there, exported(&engine), "{call:?} {after}: half of it");
                }
                if !met {
                    break;
                }
                failed += 1;
            }
        }
        assert!(failed > 20 && refused > 5, "{failed} calls failed, {refused} refused");
    }
}

#[test]
fn wherever_the_power_goes_all_of_it_came_or_nothing() {
    for apart in [false, true] {
        let (file, files) = phones(apart);
        let disk = Disk::new();
        disk.load(&files);
        let before = found(&disk);
        let disk = Disk::new();
        disk.load(&files);
        let engine = opened(&disk);
        assert!(comes(&engine, &file, apart));
        let after = exported(&engine);
        disk.acknowledge(1);
        engine.shut_down().expect("nothing fails");
        drop(engine);
        let trace = disk.trace();
        let images = Disk::new();
        for steps in 0..=trace.steps.len() {
            for seed in [77, u64::MAX] {
                let (left, acknowledged) = trace.after_power_cut(steps, seed);
                images.load(&left);
                let there = found(&images);
                assert!(there == before || there == after, "step {steps}, seed {seed}: half of it");
                assert!(acknowledged.is_none() || there == after, "step {steps}: gone");
            }
        }
    }
}
