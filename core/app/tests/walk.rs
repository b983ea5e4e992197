//! Whole sessions by the keys on the screens alone, as a shell would.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use barwright_app::contract::{
    Action, Effect, EngineError, Intent, Key, Reading, RefusalCode, Screen,
};
use barwright_app::demo;
use barwright_player::clock::booted;
use barwright_player::screens::at_floor;
use barwright_player::{Player, intents};

#[test]
fn every_session_of_the_demo_plan_is_walked_by_its_keys() {
    let mut shell = Player::at(booted()).taking(0).takes_up(demo::PLAN);
    shell.type_in("body-mass", "82.4 kg");
    for (lift, max) in [
        ("back-squat", "140 kg"),
        ("bench-press", "95 kg"),
        ("deadlift", "170"),
        ("overhead-press", "62.5 kg"),
        ("power-clean", "85 kg"),
    ] {
        shell.type_in(&format!("max:{lift}"), max);
    }
    let mut sessions = 0;
    while shell.today().keys.iter().any(|key| key.id == "begin") {
        let today = shell.as_today();
        assert!(today.needs.is_empty(), "{:?}", today.needs);
        shell.begin();
        let mut taps = 0;
        loop {
            let floor = shell.see_floor(None);
            let key = floor
                .thumb
                .main
                .clone()
                .or_else(|| floor.thumb.effort.get(1).map(|effort| effort.key.clone()))
                .unwrap();
            let Action::Do { intent, .. } = key.action else { panic!("{key:?}") };
            let finish = intent == Intent::Finish;
            if let Err(error) = shell.try_dispatch(intent.clone()) {
                let EngineError::Refused { .. } = &error else { panic!("{error:?}") };
                // The lifter finds a load where there is nothing to go by.
                let entry = floor.part.as_ref().unwrap().split('.').next().unwrap().to_owned();
                let field = format!("load:{entry}");
                let mut loads = ["20 kg", "21 kg", "80 kg"].into_iter();
                let found =
                    loads.any(|text| shell.try_dispatch(intents::write(&field, text)).is_ok());
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
        shell.days(2);
    }
    assert_eq!(sessions, 24);
}

/// What the floor says now, in a few words.
fn says(shell: &Player) -> String {
    match shell.see(at_floor(None)) {
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
fn key(shell: &mut Player, panel: Option<&str>, id: &str) -> Key {
    shell.view(at_floor(panel));
    shell.key(id)
}

/// Taps a key that records.
fn press(shell: &mut Player, panel: Option<&str>, id: &str) -> Vec<Effect> {
    let key = key(shell, panel, id);
    assert!(matches!(key.action, Action::Do { .. }), "{id} only shows");
    shell.press(&key);
    shell.shown.effects.clone()
}

/// One evening in the cellar, tap by tap: it reads as a lifter lives it.
#[test]
fn a_whole_session_as_a_lifter_lives_it() {
    let tuesday = Reading { wall_ms: 1_795_510_800_000, ..booted() };
    let mut shell = Player::on(demo::play("en-GB", &tuesday).unwrap(), tuesday).taking(0);

    // Wednesday's sheet, begun a day early.
    shell.dispatch(intents::begin_row("7.2"));
    assert_eq!(shell.shown.effects, [Effect::KeepAwake { on: true }]);

    // Singles by the clock: one tap starts it, one records each.
    press(&mut shell, None, "record");
    shell.wait(40);
    assert_eq!(key(&mut shell, None, "start").label, "Start the clock");
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
    let why = shell.see_floor(None).call.why;
    assert_eq!(why, ["Max 175 kg since Mon 12 Oct × 80 % = 140 kg."]);

    // The battery dies in the middle of the cluster. After charging it stands where it stood, and
    // the pause tells the truth: forty seconds have passed, by the only clock that knows.
    shell.wait(40);
    shell.now.boot_id = Some("after charging".into());
    shell.now.boot_ms = Some(9_000);
    shell.dispatch(Intent::Wake);
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
    let refused = shell.try_dispatch(late).unwrap_err();
    assert!(matches!(refused, EngineError::Refused { code: RefusalCode::Stale, .. }));

    // No time for more.
    press(&mut shell, Some("more"), "finish");
    let tally = shell.see_tally();
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
