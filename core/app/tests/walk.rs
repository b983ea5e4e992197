//! Whole sessions by the keys on the screens alone, as a shell would.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use barwright_app::contract::{Action, EngineError, Intent, Look, Reading, Screen, Update};
use barwright_app::{Engine, demo};

struct Shell {
    engine: std::sync::Arc<Engine>,
    now: Reading,
}

impl Shell {
    fn new() -> Self {
        let now = Reading {
            wall_ms: 1_795_000_000_000,
            offset_minutes: 60,
            boot_ms: Some(1_000_000),
            boot_id: Some("boot".into()),
        };
        Self { engine: Engine::in_memory("en-GB".into()).unwrap(), now }
    }

    fn wait(&mut self, seconds: i64) {
        self.now.wall_ms += seconds * 1000;
        self.now.boot_ms = self.now.boot_ms.map(|ms| ms + seconds * 1000);
    }

    fn tap(&mut self, intent: Intent) -> Result<Update, EngineError> {
        self.engine.dispatch(intent, self.now.clone())
    }

    fn write(&mut self, field: &str, text: &str) {
        self.tap(Intent::Write { field: field.into(), text: text.into() }).unwrap();
    }

    fn today(&self) -> barwright_app::contract::TodayScreen {
        let look = Look::Today { session: None, minutes: None };
        match self.engine.view(look, self.now.clone()).unwrap() {
            Screen::Today { today } => today,
            other => panic!("{other:?}"),
        }
    }
}

#[test]
fn every_session_of_the_demo_plan_is_walked_by_its_keys() {
    let mut shell = Shell::new();
    shell.tap(Intent::AdoptPlan { text: demo::PLAN.into() }).unwrap();
    shell.write("body-mass", "82.4 kg");
    for (lift, max) in [
        ("back-squat", "140 kg"),
        ("bench-press", "95 kg"),
        ("deadlift", "170"),
        ("overhead-press", "62.5 kg"),
        ("power-clean", "85 kg"),
    ] {
        shell.write(&format!("max:{lift}"), max);
    }
    let mut sessions = 0;
    while shell.today().keys.iter().any(|key| key.id == "begin") {
        let today = shell.today();
        assert!(today.needs.is_empty(), "{:?}", today.needs);
        shell.tap(Intent::Begin { session: None, minutes: None }).unwrap();
        let mut taps = 0;
        loop {
            let look = Look::Floor { draft: Default::default() };
            let Screen::Floor { floor } = shell.engine.view(look, shell.now.clone()).unwrap()
            else {
                panic!("the session is running");
            };
            let key = floor
                .thumb
                .main
                .clone()
                .or_else(|| floor.thumb.effort.get(1).map(|effort| effort.key.clone()))
                .unwrap();
            let Action::Do { intent } = key.action else { panic!("{key:?}") };
            let finish = intent == Intent::Finish;
            if let Err(error) = shell.tap(intent.clone()) {
                let EngineError::Refused { .. } = &error else { panic!("{error:?}") };
                // The lifter finds a load where there is nothing to go by.
                let entry = floor.part.as_ref().unwrap().split('.').next().unwrap().to_owned();
                let field = format!("load:{entry}");
                let found = ["20 kg", "21 kg", "80 kg"].into_iter().any(|text| {
                    let intent = Intent::Write { field: field.clone(), text: text.into() };
                    shell.tap(intent).is_ok()
                });
                assert!(found, "{}: {error:?}", floor.call.exercise);
                continue;
            }
            taps += 1;
            assert!(taps < 200, "a session ends");
            if finish {
                break;
            }
            shell.wait(45);
        }
        sessions += 1;
        shell.wait(2 * 86_400);
    }
    assert_eq!(sessions, 24);
}
