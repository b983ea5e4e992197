//! A gym's text: it is read or it has faults, each in its place; an engine takes it, shows it, and
//! lays a session out in it.
#![no_main]

use barwright_app::Engine;
use barwright_app::contract::{EngineError, Intent, Look, Reading};
use barwright_domain::equipment::Equipment;
use libfuzzer_sys::fuzz_target;

const PLAN: &str = include_str!("../../../core/app/src/engine/demo/plan.toml");

fn at(minute: i64) -> Reading {
    let wall_ms = 1_795_500_000_000 + minute * 60_000;
    Reading { wall_ms, offset_minutes: 60, boot_ms: None, boot_id: None }
}

fn is_no_defect<T>(answer: Result<T, EngineError>) {
    if let Err(error @ (EngineError::Broken { .. } | EngineError::Storage { .. })) = answer {
        panic!("{error:?}");
    }
}

fuzz_target!(|bytes: &[u8]| {
    match Equipment::read_bytes(bytes) {
        Err(faults) => {
            assert!(!faults.is_empty());
            if let Ok(text) = std::str::from_utf8(bytes) {
                for fault in faults {
                    assert!(text.get(fault.span.clone()).is_some(), "{fault:?}");
                }
            }
        }
        Ok(gym) => {
            let text = String::from_utf8(bytes.to_vec()).expect("it was read as a text");
            let engine = Engine::in_memory("en".to_owned()).expect("memory");
            is_no_defect(engine.dispatch(Intent::adopt(PLAN), at(0)));
            is_no_defect(engine.dispatch(Intent::AddGym { text }, at(1)));
            let name = gym.name.clone();
            is_no_defect(engine.dispatch(Intent::ChooseGym { name }, at(2)));
            is_no_defect(engine.view(Look::Equipment, at(3)));
            let begin = Intent::Begin { session: None, minutes: None, sure: true };
            is_no_defect(engine.dispatch(begin, at(4)));
        }
    }
});
