//! What a tap costs and survives through the whole engine, on sessions of the demo's plan.

use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{EngineError, HowEnded, Intent, Look, Reading, Screen};
use barwright_faults::{Call, Disk, ELSEWHERE, Fault};
use barwright_player::screens::{at_floor, at_today};
use barwright_player::{intents, record_by};

const PLAN: &str = include_str!("../../../core/app/src/engine/demo/plan.toml");

fn at(tap: u64) -> Reading {
    let passed = tap as i64 * 60_000;
    Reading {
        wall_ms: 1_795_500_000_000 + passed,
        offset_minutes: 60,
        boot_ms: Some(5_000_000 + passed),
        boot_id: Some("a".into()),
    }
}

fn record() -> Intent {
    intents::done(None, Some(4), HowEnded::AsCalled)
}

/// An engine on a disk, and the number of taps it took.
struct Lifter {
    // Before the disk that it is on.
    engine: Arc<Engine>,
    disk: Disk,
    taps: u64,
    /// Syncs beside its own that the next tap comes with: after opening the file is marked as in use
    /// (log and file), and the write-ahead log begins anew with a header of its own.
    beside: u64,
}

impl Lifter {
    fn new() -> Self {
        let disk = Disk::new();
        let engine = Engine::open_in(disk.place(), "en").expect("a new store");
        Self { disk, engine, taps: 0, beside: 3 }
    }

    /// A tap, with its syncs and frames: one and few, or none where it is refused.
    fn tap(&mut self, intent: Intent) -> Result<(), EngineError> {
        let counted = |disk: &Disk| (disk.count(Call::Sync), disk.count(Call::Write));
        let before = counted(&self.disk);
        let answer = self.engine.dispatch(intent.clone(), at(self.taps + 1));
        let after = counted(&self.disk);
        let (syncs, writes) = (after.0 - before.0, after.1 - before.1);
        match &answer {
            Ok(_) => {
                // The end of a session is a quiet moment too: the log is sealed.
                let ends = intent == Intent::Finish;
                let expected = 1 + self.beside + if ends { 3 } else { 0 };
                assert_eq!(syncs, expected, "{intent:?}");
                // A frame is a header and a page.
                let most = if ends || self.beside > 1 { 100 } else { 16 };
                self.beside = u64::from(ends);
                assert!((2..=most).contains(&writes), "{} frames: {intent:?}", writes / 2);
                self.taps += 1;
                self.disk.acknowledge(self.taps);
            }
            Err(_) => assert_eq!((syncs, writes), (0, 0), "refused, but written: {intent:?}"),
        }
        answer.map(drop)
    }

    /// Adopts the plan and begins its first session.
    fn begin(&mut self) {
        self.tap(Intent::adopt(PLAN)).expect("the demo's plan");
        self.tap(intents::begin()).expect("its first session");
    }

    /// Records the next part, after saying a load that nobody knows yet; false when none is left.
    fn record(&mut self) -> bool {
        record_by(|intent| self.tap(intent), 4, |_| "40 kg".to_owned())
    }
}

#[test]
fn a_tap_is_one_sync_and_few_frames() {
    let mut lifter = Lifter::new();
    lifter.begin();
    let mut recorded = 0;
    for number in 0.. {
        if number % 7 == 3 {
            lifter.tap(Intent::Undo).expect("there is something to undo");
            lifter.tap(Intent::Redo).expect("and to bring back");
        }
        if !lifter.record() {
            break;
        }
        recorded += 1;
    }
    assert!(recorded > 10, "{recorded}");
    lifter.tap(Intent::Finish).expect("it runs");
    let writes = lifter.disk.count(Call::Write);
    for look in [Look::Tally, Look::Weeks, at_today()] {
        lifter.engine.view(look, at(lifter.taps)).expect("it shows");
    }
    assert_eq!(lifter.disk.count(Call::Write), writes, "looking is not acting");
}

/// A disk that fails for a while, even at reading back: every call is refused until it is well, and
/// then the same engine goes on from what the log says.
#[test]
fn an_engine_goes_on_when_its_disk_is_well_again() {
    let mut lifter = Lifter::new();
    lifter.begin();
    assert!(lifter.record());
    let now = at(lifter.taps);
    let before = lifter.engine.view(at_floor(None), now.clone()).expect("nothing fails yet").screen;

    lifter.disk.fail(Some(Fault { call: Call::Sync, after: 0, times: u64::MAX }));
    for _ in 0..2 {
        let tap = lifter.engine.dispatch(Intent::SkipSet, now.clone());
        assert!(matches!(tap, Err(EngineError::Storage { .. })), "{tap:?}");
        let look = lifter.engine.view(at_floor(None), now.clone());
        assert!(matches!(look, Err(EngineError::Storage { .. })), "{look:?}");
    }

    lifter.disk.fail(None);
    // What was refused may be in the log all the same; taken back, all is as it was.
    let after =
        lifter.engine.view(at_floor(None), now.clone()).expect("it is read back by itself").screen;
    if after != before {
        lifter.engine.dispatch(Intent::Undo, now.clone()).expect("taps are taken again");
    }
    let part = |screen: &Screen| match screen {
        Screen::Floor { floor } => floor.part.clone(),
        other => panic!("another screen than the floor: {other:?}"),
    };
    let back = lifter.engine.view(at_floor(None), now).expect("the disk is well").screen;
    assert_eq!(part(&back), part(&before));
    assert!(lifter.record(), "taps are taken again");
}

/// The end of a session is a quiet moment: where sealing fails, the tap is recorded all the same, and
/// what is looked at next is read back.
#[test]
fn a_quiet_moment_that_fails_takes_the_screens_from_nobody() {
    let mut lifter = Lifter::new();
    lifter.begin();
    assert!(lifter.record());
    let now = at(lifter.taps);
    // The tap's own sync succeeds, the seal's does not.
    lifter.disk.fail(Some(Fault { call: Call::Sync, after: 1, times: 1 }));
    lifter.engine.dispatch(Intent::Finish, now.clone()).expect("it is recorded");
    lifter.disk.fail(None);
    let tally = lifter.engine.view(Look::Tally, now).expect("it is read back by itself");
    assert!(matches!(tally.screen, Screen::Tally { .. }), "{tally:?}");
}

#[test]
fn a_power_cut_brings_back_the_screen_of_the_last_tap() {
    let mut lifter = Lifter::new();
    let show = |engine: &Engine, tap| Some(engine.view(at_floor(None), at(tap)).ok()?.screen);
    lifter.begin();
    while lifter.taps < 12 {
        assert!(lifter.record());
    }
    // What the floor showed after each tap from here on.
    let first = lifter.taps;
    let mut screens: Vec<Option<Screen>> = vec![show(&lifter.engine, first)];
    for number in 0..18 {
        let step = [record(), Intent::Undo, Intent::RestBy { seconds: 15 }, Intent::SkipSet];
        let step = step
            .into_iter()
            .cycle()
            .skip(number * 5 % 7)
            .find(|step| lifter.tap(step.clone()).is_ok());
        assert!(step.is_some());
        screens.push(show(&lifter.engine, lifter.taps));
    }
    let trace = lifter.disk.trace();
    let disk = Disk::new();
    for steps in (0..=trace.steps.len()).rev().step_by(3) {
        let (files, acknowledged) = trace.after_power_cut(steps, steps as u64 * 31 + 7);
        let tap = acknowledged.unwrap_or(0);
        if tap < first {
            break;
        }
        disk.load(&files);
        let engine = Engine::open_in(disk.place(), "en").expect("what is left opens");
        let back = |tap: u64| {
            let before = screens.get((tap - first) as usize);
            before.is_some_and(|before| *before == show(&engine, tap))
        };
        // The tap that was under way may be there too, whole.
        assert!(back(tap) || back(tap + 1), "after tap {tap}, step {steps}");
        engine.shut_down().expect("it closes");
    }
}

#[test]
fn a_full_disk_is_looked_at_checked_and_taps_again_when_there_is_room() {
    let mut lifter = Lifter::new();
    lifter.begin();
    assert!(lifter.record());
    let now = at(lifter.taps);
    let before = lifter.engine.view(at_floor(None), now.clone()).expect("nothing fails");
    lifter.engine.suspend().expect("nothing fails");
    // Not a byte more.
    lifter.disk.set_capacity(Some(lifter.disk.used()));
    assert_eq!(lifter.engine.view(at_floor(None), now.clone()).expect("it shows"), before);
    lifter.engine.check_records().expect("it is whole");
    let refused = lifter.engine.dispatch(Intent::SkipSet, now.clone());
    let Err(EngineError::Storage { reason, .. }) = refused else { panic!("{refused:?}") };
    assert!(reason.starts_with("No room is left"), "{reason}");
    assert_eq!(lifter.engine.view(at_floor(None), now.clone()).expect("it shows"), before);
    // The records go to another disk, whole.
    let entries = lifter.engine.count_records().expect("it counts");
    let elsewhere = lifter.disk.place().named(format!("{ELSEWHERE}/backup"));
    let copied = lifter.engine.back_up_in(elsewhere.clone()).expect("there is room elsewhere");
    assert_eq!(copied, entries);
    let here = lifter.engine.back_up_in(lifter.disk.place().named("backup"));
    assert!(matches!(here, Err(EngineError::Storage { .. })), "{here:?}");
    lifter.disk.set_capacity(None);
    let copy = Engine::open_in(elsewhere, "en").expect("a backup opens");
    assert_eq!(copy.view(at_floor(None), now.clone()).expect("it shows"), before);
    copy.shut_down().expect("it closes");
    lifter.disk.set_capacity(Some(lifter.disk.used()));
    lifter.engine.suspend().expect("giving it up loses nothing");
    // A file or a folder that can't be written is shown too, and is not called a failed disk.
    for folder in [false, true] {
        lifter.disk.set_capacity(None);
        lifter.disk.set_file_read_only(!folder);
        lifter.disk.set_folder_read_only(folder);
        assert_eq!(lifter.engine.view(at_floor(None), now.clone()).expect("it shows"), before);
        lifter.engine.check_records().expect("it is whole");
        let refused = lifter.engine.dispatch(Intent::SkipSet, now.clone());
        let Err(EngineError::Storage { reason, .. }) = refused else { panic!("{refused:?}") };
        assert!(reason.contains("can only be looked at"), "{reason}");
        // A tap that was refused takes the screens away from nobody.
        assert_eq!(lifter.engine.view(at_floor(None), now.clone()).expect("it shows"), before);
        // The second time it stays open: taps are taken as soon as they can be.
        if !folder {
            lifter.engine.suspend().expect("giving it up loses nothing");
        }
        lifter.disk.set_file_read_only(false);
        lifter.disk.set_folder_read_only(false);
    }
    assert_eq!(lifter.engine.view(at_floor(None), now.clone()).expect("it shows"), before);
    lifter.engine.dispatch(Intent::SkipSet, now).expect("there is room again");
}
