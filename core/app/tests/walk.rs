//! Whole sessions by the keys on the screens alone, as a shell would.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use barwright_app::contract::{
    Action, Answer, Effect, EngineError, Intent, Look, Reading, RefusalCode, Screen,
};
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

    fn tap(&mut self, intent: Intent) -> Result<Answer, EngineError> {
        self.engine.dispatch(intent, self.now.clone())
    }

    fn write(&mut self, field: &str, text: &str) {
        self.tap(Intent::Write { field: field.into(), text: text.into(), sure: false }).unwrap();
    }

    fn today(&self) -> barwright_app::contract::TodayScreen {
        let look = Look::Today { session: None, minutes: None };
        match self.engine.view(look, self.now.clone()).unwrap().screen {
            Screen::Today { today } => today,
            other => panic!("{other:?}"),
        }
    }
}

#[test]
fn every_session_of_the_demo_plan_is_walked_by_its_keys() {
    let mut shell = Shell::new();
    shell.tap(Intent::adopt(demo::PLAN)).unwrap();
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
        shell.tap(Intent::Begin { session: None, minutes: None, sure: false }).unwrap();
        let mut taps = 0;
        loop {
            let look = Look::Floor { draft: Default::default() };
            let Screen::Floor { floor } =
                shell.engine.view(look, shell.now.clone()).unwrap().screen
            else {
                panic!("the session is running");
            };
            let key = floor
                .thumb
                .main
                .clone()
                .or_else(|| floor.thumb.effort.get(1).map(|effort| effort.key.clone()))
                .unwrap();
            let Action::Do { intent, .. } = key.action else { panic!("{key:?}") };
            let finish = intent == Intent::Finish;
            if let Err(error) = shell.tap(intent.clone()) {
                let EngineError::Refused { .. } = &error else { panic!("{error:?}") };
                // The lifter finds a load where there is nothing to go by.
                let entry = floor.part.as_ref().unwrap().split('.').next().unwrap().to_owned();
                let field = format!("load:{entry}");
                let found = ["20 kg", "21 kg", "80 kg"].into_iter().any(|text| {
                    let intent =
                        Intent::Write { field: field.clone(), text: text.into(), sure: false };
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

/// What the floor says now, in a few words.
fn says(shell: &Shell) -> String {
    let look = Look::Floor { draft: Default::default() };
    match shell.engine.view(look, shell.now.clone()).unwrap().screen {
        Screen::Floor { floor } => {
            let rest = floor.rest.map(|rest| format!(" [{} {}]", rest.label, rest.text));
            format!(
                "{} {}: {}{}",
                floor.call.exercise,
                floor.bar.total,
                floor.call.sentence,
                rest.unwrap_or_default()
            )
        }
        Screen::Tally { .. } => "tally".into(),
        Screen::Today { .. } => "today".into(),
        other => panic!("{other:?}"),
    }
}

/// A key of the floor by its id, wherever it stands.
fn key(shell: &Shell, panel: Option<&str>, id: &str) -> barwright_app::contract::Key {
    let draft =
        barwright_app::contract::Draft { panel: panel.map(str::to_owned), ..Default::default() };
    let Screen::Floor { floor } =
        shell.engine.view(Look::Floor { draft }, shell.now.clone()).unwrap().screen
    else {
        panic!("the session runs")
    };
    let thumb = floor.thumb;
    let effort = thumb.effort.into_iter().flat_map(|effort| [Some(effort.key), effort.half]);
    let panel = floor.panel.into_iter().flat_map(|panel| {
        panel.rows.into_iter().flat_map(|row| row.keys).chain(panel.keys).collect::<Vec<_>>()
    });
    let rest = floor.rest.into_iter().flat_map(|rest| [rest.shorter, rest.longer]);
    [thumb.main, thumb.ended, thumb.undo, thumb.redo, thumb.more]
        .into_iter()
        .chain(effort)
        .flatten()
        .chain(thumb.beside)
        .chain(rest)
        .chain(panel)
        .find(|key| key.id == id)
        .unwrap_or_else(|| panic!("no key {id}"))
}

/// Taps a key that records.
fn press(shell: &mut Shell, panel: Option<&str>, id: &str) -> Vec<Effect> {
    let action = key(shell, panel, id).action;
    assert!(matches!(action, Action::Do { .. }), "{id} only shows");
    let answer = shell.engine.act(action, shell.now.clone());
    answer.unwrap_or_else(|error| panic!("{id}: {error}")).effects
}

/// One evening in the cellar, tap by tap: it reads as a lifter lives it.
#[test]
fn a_whole_session_as_a_lifter_lives_it() {
    let mut shell = Shell::new();
    let tuesday = Reading { wall_ms: 1_795_510_800_000, ..shell.now.clone() };
    shell.engine = demo::play("en-GB", &tuesday).unwrap();
    shell.now = tuesday;

    // Wednesday's sheet, begun a day early.
    let session = Some("7.2".to_owned());
    let effects = shell.tap(Intent::Begin { session, minutes: None, sure: false }).unwrap().effects;
    assert_eq!(effects, [Effect::KeepAwake { on: true }]);

    // Singles by the clock: one tap starts it, one records each.
    press(&mut shell, None, "record");
    shell.wait(40);
    assert_eq!(key(&shell, None, "start").label, "Start the clock");
    press(&mut shell, None, "start");
    shell.wait(6);
    press(&mut shell, None, "record");
    assert_eq!(says(&shell), "Power clean 57.5 kg: Speed set 2 of 8: 1 rep. [Next start 0:54]");
    press(&mut shell, Some("more"), "skip");

    // The deadlift: a warm-up, then a cluster, a tap a block.
    assert_eq!(says(&shell), "Deadlift 85 kg: Ramp set 1 of 1: 5 reps. [Next start 0:54]");
    press(&mut shell, None, "record");
    shell.wait(95);
    press(&mut shell, None, "record");
    shell.wait(10);
    assert_eq!(
        says(&shell),
        "Deadlift 140 kg: Set 1 of 2, block 2 of 3: 2 reps. [Pause in the set 0:15]"
    );
    let why = {
        let look = Look::Floor { draft: Default::default() };
        let Screen::Floor { floor } = shell.engine.view(look, shell.now.clone()).unwrap().screen
        else {
            panic!("the session runs")
        };
        floor.call.why
    };
    assert_eq!(why, ["Max 175 kg since Mon 12 Oct × 80 % = 140 kg."]);

    // The battery dies in the middle of the cluster. After charging it stands where it stood, and
    // the pause tells the truth: forty seconds have passed, by the only clock that knows.
    shell.wait(40);
    shell.now.boot_id = Some("after charging".into());
    shell.now.boot_ms = Some(9_000);
    shell.tap(Intent::Wake).unwrap();
    assert_eq!(
        says(&shell),
        "Deadlift 140 kg: Set 1 of 2, block 2 of 3: 2 reps. [Pause in the set +0:25]"
    );
    press(&mut shell, None, "record");

    // A tap too many is taken back, and its pause stands as it stood.
    shell.wait(8);
    press(&mut shell, None, "record");
    press(&mut shell, None, "undo");
    assert_eq!(
        says(&shell),
        "Deadlift 140 kg: Set 1 of 2, block 3 of 3: 1 rep. [Pause in the set 0:17]"
    );
    shell.wait(20);
    press(&mut shell, None, "record");

    // The second set ends with pain: it says so, and the rest of its blocks are not asked for.
    press(&mut shell, None, "longer");
    shell.wait(200);
    let effects = press(&mut shell, Some("ended"), "pain");
    assert!(effects.iter().any(|effect| matches!(effect, Effect::RingAt { .. })), "{effects:?}");

    // One side at a time; the effort keys record and judge in one tap.
    shell.wait(200);
    press(&mut shell, None, "left-1-half");
    assert_eq!(
        says(&shell),
        "Rear-foot-raised split squat 14 kg: Set 1 of 3, right side: 8–12 reps, 1–2 in reserve. \
         [Rest between sides 0:30]"
    );
    // A tap that comes late from a notification is refused, not written on the next set.
    let late = Intent::Record {
        part: Some("2.0.0".into()),
        amount: None,
        left_halves: None,
        ended: Default::default(),
        helped: 0,
        last: false,
    };
    let refused = shell.tap(late).unwrap_err();
    assert!(matches!(refused, EngineError::Refused { code: RefusalCode::Stale, .. }));

    // No time for more.
    press(&mut shell, Some("more"), "finish");
    let Screen::Tally { tally } = shell.engine.view(Look::Tally, shell.now.clone()).unwrap().screen
    else {
        panic!("the tally is shown")
    };
    let done: Vec<String> = tally
        .done
        .iter()
        .filter(|row| row.depth == 2)
        .map(|row| format!("{} [{}]", row.text, row.detail))
        .collect();
    assert_eq!(
        done,
        [
            "Ramp set 1 of 1: 40 kg × 5 []",
            "Speed set 1 of 8: 57.5 kg × 1 []",
            "Ramp set 1 of 1: 85 kg × 5 []",
            "Set 1 of 2: 140 kg × 2 + 2 + 1 []",
            "Set 2 of 2: 140 kg × 2 [pain]",
            "Set 1 of 3, left: 14 kg × 12 [1.5 in reserve]",
        ]
    );
    // Pain holds the load and asks; what was not begun says nothing.
    let deadlift = tally.changes.iter().find(|row| row.text.starts_with("Deadlift")).unwrap();
    assert!(deadlift.why.iter().any(|line| line.to_lowercase().contains("pain")), "{deadlift:?}");
    assert!(!tally.changes.iter().any(|row| row.text.starts_with("Overhead press")));
}
