//! A screen that panics loses nothing and blocks nothing.

use barwright_store::Place;

use super::super::Engine;
use crate::contract::{Draft, Effect, EngineError, Intent, Look, Reading, Screen};
use crate::engine::demo;
use crate::screens::PANICS;

fn at(minute: i64) -> Reading {
    Reading {
        wall_ms: 1_795_000_000_000 + minute * 60_000,
        offset_minutes: 60,
        boot_ms: None,
        boot_id: None,
    }
}

#[test]
fn a_tap_is_recorded_though_its_screen_panics() {
    let engine = Engine::open_in(Place::Memory, "en-GB").unwrap();
    let tap = |minute, intent| engine.dispatch(intent, at(minute)).unwrap();
    tap(0, Intent::adopt(demo::PLAN));
    PANICS.set(true);
    let begun = tap(1, Intent::Begin { session: None, minutes: None, sure: false });
    let looked = engine.view(Look::Weeks, at(1));
    let skipped = tap(2, Intent::SkipSet);
    PANICS.set(false);
    for answer in [&begun, &skipped] {
        let Screen::NotShown { not_shown } = &answer.screen else { panic!("{answer:?}") };
        assert!(not_shown.report.contains("a screen that panics"), "{not_shown:?}");
    }
    assert_eq!(begun.effects, [Effect::KeepAwake { on: true }]);
    assert!(matches!(looked, Err(EngineError::Broken { .. })), "a look recorded nothing");
    // Both taps are in the log, and the next works.
    assert!(engine.dispatch(Intent::Undo, at(3)).is_ok());
    let floor = engine.view(Look::Floor { draft: Draft::default() }, at(4)).unwrap();
    let Screen::Floor { floor } = floor.screen else { panic!("the session runs") };
    assert!(floor.thumb.redo.is_some());
}

/// A defect is said in the lifter's language, with what to do; the developers' text is in it as a
/// quotation.
#[cfg(feature = "german")]
#[test]
fn a_defect_is_said_in_german() {
    let engine = Engine::open_in(Place::Memory, "de-DE").unwrap();
    engine.dispatch(Intent::adopt(demo::PLAN), at(0)).unwrap();
    PANICS.set(true);
    let looked = engine.view(Look::Weeks, at(1));
    PANICS.set(false);
    let Err(EngineError::Broken { reason, report }) = looked else { panic!("{looked:?}") };
    assert_eq!(
        reason,
        "Im Programm ging etwas schief. Was eingetragen war, ist behalten, und du kannst \
         weitermachen. Geschieht es wieder, mach eine Kopie der Aufzeichnungen und lass sie prüfen."
    );
    let told = "Für die Entwickler, auf Englisch: „barwright ";
    assert!(report.starts_with(told) && report.ends_with("“"), "{report}");
}
