//! A thousand returns looked over.

use std::sync::atomic::{AtomicU32, Ordering};

use barwright_app::{Engine, Export};

use crate::clock::micros;
use crate::lifter;
use crate::measure::{Measure, Outcome};
use crate::records::{Past, copy_of, open};

/// Returns of one run.
const RETURNS: u32 = 1_000;
/// 2026-10-26, in days since 1970-01-01: the Monday four weeks before today.
const SINCE: i32 = 20_752;

/// How fast a desk goes over what lifters sent back.
pub(crate) const RETURNS_READ: Measure = Measure {
    name: "desk",
    unit: "lifters/s",
    against: "a thousand returns of four weeks, each checked, read and its week put in short, on all cores",
    bar: None,
    run: || {
        let engine = open(&copy_of(Past::Month));
        let mut file = Vec::new();
        let since = Export { since: Some(SINCE), ..Export::default() };
        engine.export_records(since, &mut file).expect("memory takes it");
        let now = lifter::today();
        let next = AtomicU32::new(0);
        let work = || {
            while next.fetch_add(1, Ordering::Relaxed) < RETURNS {
                let read = Engine::read_records(&file[..], "en").expect("a return of ours");
                let week = read.week_in_short(now.clone()).expect("it has a plan");
                assert!(week.sessions.done > 0 && week.hard_sets.done > 0);
            }
        };
        let threads = std::thread::available_parallelism().map_or(1, usize::from);
        let took = micros(|| {
            std::thread::scope(|scope| {
                for _ in 0..threads {
                    scope.spawn(work);
                }
            });
        });
        Outcome { value: f64::from(RETURNS) / took * 1e6 }
    },
};
