//! Taps, a line of JSON each, through the whole engine in memory: each is taken or refused, none is a
//! defect, and a refused one records nothing.
#![no_main]

use barwright_app::Engine;
use barwright_app::contract::{Draft, EngineError, Intent, Look, Reading};
use libfuzzer_sys::fuzz_target;

const PLAN: &str = include_str!("../../../core/app/src/engine/demo/plan.toml");

fn at(minute: i64) -> Reading {
    let wall_ms = 1_795_500_000_000 + minute * 60_000;
    Reading { wall_ms, offset_minutes: 60, boot_ms: None, boot_id: None }
}

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let intents: Vec<Intent> =
        text.lines().take(40).filter_map(|line| serde_json::from_str(line).ok()).collect();
    if intents.is_empty() {
        return;
    }
    let engine = Engine::in_memory("en".to_owned()).expect("memory");
    engine.dispatch(Intent::adopt(PLAN), at(0)).expect("the demo's plan");
    for (minute, intent) in (1..).zip(intents) {
        // The demo is a file of its own.
        if matches!(intent, Intent::Demo { .. }) {
            continue;
        }
        let before = engine.count_records().expect("it counts");
        match engine.dispatch(intent.clone(), at(minute)) {
            Ok(_) => {}
            Err(EngineError::Refused { .. }) => {
                assert_eq!(engine.count_records().expect("it counts"), before, "{intent:?}");
            }
            Err(error) => panic!("{intent:?}: {error:?}"),
        }
        for look in [Look::Floor { draft: Draft::default() }, Look::Weeks] {
            match engine.view(look, at(minute)) {
                Ok(_) | Err(EngineError::Refused { .. }) => {}
                Err(error) => panic!("after {intent:?}: {error:?}"),
            }
        }
    }
});
