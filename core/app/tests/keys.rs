//! Keys: the session they belong to, the yes they carry, and what is shown after them.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use std::collections::BTreeMap;

use barwright_app::contract::{
    Action, Draft, EngineError, Field, Intent, Key, Look, RefusalCode, Screen,
};
use barwright_player::clock::{booted, pass};
use barwright_player::screens::{at_floor, at_lift, at_today};
use barwright_player::{Player, intents, screens};

const PLAN: &str = r#"
name = "Every key"
weeks = 8

[[session]]
name = "Mixed"

[[session.exercise]]
name = "Back squat"
sets = 4
reps = 5
load = "100 kg"
rpe = 8
substitutes = ["Front squat"]

[[session.exercise]]
name = "Plank"
sets = 2
seconds = 30
"#;

fn set_up() -> Player {
    Player::at(booted()).taking(0).takes_up(PLAN)
}

/// Every key and field of the floor with its panels, of a correction, and of the tally.
fn everything(lifter: &Player) -> (BTreeMap<String, Key>, Vec<Field>) {
    let (mut keys, mut fields) = (BTreeMap::new(), Vec::new());
    let mut keep = |place: &str, more: Vec<Key>| {
        for key in more {
            keys.insert(format!("{place} {}", key.id), key);
        }
    };
    let drafts = [
        "", "more", "ended", "bar", "load:0", "swap", "pace", "order", "earlier", "notes", "kit",
        "guard", "helped",
    ];
    let mut corrections = Vec::new();
    for panel in drafts {
        let floor = lifter.see_floor(Some(panel));
        let thumb = floor.thumb;
        let effort = thumb.effort.into_iter().flat_map(|one| [Some(one.key), one.half]);
        let others = [thumb.main, thumb.ended, thumb.undo, thumb.redo, thumb.more];
        let mut all: Vec<Key> = effort.chain(others).flatten().chain(thumb.beside).collect();
        all.extend(floor.rest.into_iter().flat_map(|rest| [rest.shorter, rest.longer]));
        if let Some(open) = floor.panel {
            all.extend(open.rows.into_iter().flat_map(|row| row.keys).chain(open.keys));
            fields.extend(open.fields);
        }
        corrections.extend(all.iter().filter(|key| key.id == "correct").cloned());
        keep(panel, all);
    }
    for key in corrections {
        let Action::Show { look } = key.action else { continue };
        let floor = screens::floor(lifter.see(look));
        keep("correct", floor.thumb.main.into_iter().collect());
    }
    let tally = lifter.see_tally();
    keep("tally", tally.keys);
    keep("tally", tally.changes.into_iter().flat_map(|row| row.keys).collect());
    fields.extend(tally.fields);
    (keys, fields)
}

#[test]
fn a_key_kept_from_an_earlier_session_is_refused() {
    let mut lifter = set_up();
    lifter.begin();
    lifter.wait(60);
    while let Screen::Floor { floor } = lifter.see(at_floor(None)) {
        let Some(effort) = floor.thumb.effort.first() else {
            lifter.act(&floor.thumb.main.unwrap().action).unwrap();
            lifter.wait(30);
            continue;
        };
        lifter.act(&effort.key.action).unwrap();
        break;
    }
    let (keys, fields) = everything(&lifter);
    lifter.wait(30);
    lifter.finish();
    lifter.wait(2 * 86_400);
    lifter.begin();
    // The same place of the same exercise: only the session is another.
    let before = lifter.see(at_floor(None));
    let mut tried = 0;
    for (name, key) in &keys {
        let Action::Do { .. } = &key.action else { continue };
        tried += 1;
        let refused = lifter.act(&key.action);
        assert!(
            matches!(refused, Err(EngineError::Refused { code: RefusalCode::Stale, .. })),
            "{name}: {refused:?}"
        );
    }
    assert!(tried > 40, "{tried} of {:?}", keys.keys());
    for field in &fields {
        let refused = lifter.try_dispatch(intents::write(&field.id, "50"));
        assert!(
            matches!(refused, Err(EngineError::Refused { code: RefusalCode::Stale, .. })),
            "{field:?}: {refused:?}"
        );
    }
    assert!(fields.len() > 3, "{fields:?}");
    assert_eq!(lifter.see(at_floor(None)), before);
}

#[test]
fn a_part_of_an_earlier_session_is_refused_by_its_name_alone() {
    let mut lifter = set_up();
    let part = |lifter: &Player| lifter.see_floor(None).part.unwrap();
    lifter.begin();
    let kept = part(&lifter);
    lifter.finish();
    lifter.wait(86_400);
    lifter.begin();
    assert_ne!(part(&lifter), kept);
    let record = |part: String| Intent::Record {
        part: Some(part),
        amount: None,
        left_halves: None,
        ended: Default::default(),
        helped: 0,
        last: false,
    };
    for intent in [record(kept.clone()), Intent::TapRep { part: kept }] {
        let refused = lifter.try_dispatch(intent);
        let stale = matches!(refused, Err(EngineError::Refused { code: RefusalCode::Stale, .. }));
        assert!(stale, "{refused:?}");
    }
    lifter.dispatch(record(part(&lifter)));
}

#[test]
fn what_asks_carries_the_yes() {
    let mut lifter = set_up();
    // Weeks of squats that support some 120 kg.
    for _ in 0..3 {
        lifter.begin();
        while let Screen::Floor { floor } = lifter.see(at_floor(None)) {
            lifter.wait(200);
            let two_left = floor.thumb.effort.get(2).map(|effort| effort.key.clone());
            lifter.act(&two_left.or(floor.thumb.main).unwrap().action).unwrap();
        }
        lifter.wait(2 * 86_400);
    }
    lifter.begin();
    let mut asks = |intent: Intent| match lifter.try_dispatch(intent) {
        Err(EngineError::Refused { code: RefusalCode::Ask, ask: Some(yes), .. }) => yes,
        other => panic!("{other:?}"),
    };
    let write = |sure| Intent::Write { field: "load:0".into(), text: "200 kg".into(), sure };
    let (load, only_next) = ("200".to_owned(), true);
    let change = Intent::ChangeLoad { entry: 0, load, only_next, sure: false };
    assert_eq!(asks(write(false)), Action::Do { intent: write(true), session: None, then: None });
    let yes = asks(change);
    lifter.act(&yes).unwrap();
    while lifter.see_floor(None).bar.total != "200 kg" {
        lifter.dispatch(Intent::SkipSet);
    }
    // What is refused without asking has no yes to it.
    let refused = lifter.try_dispatch(Intent::Redo).unwrap_err();
    assert!(matches!(refused, EngineError::Refused { ask: None, .. }), "{refused:?}");
}

#[test]
fn a_key_says_what_is_shown_after_it() {
    let mut lifter = set_up();
    lifter.begin();
    lifter.dispatch(Intent::SkipSet);
    let draft = Draft { amount: Some(7), ..Draft::default() };
    lifter.wait(60);
    while let Screen::Floor { floor } = lifter.see(Look::Floor { draft: draft.clone() }) {
        // What is being entered outlives a longer rest.
        if let Some(rest) = floor.rest {
            lifter.press(&rest.longer);
            assert_eq!(lifter.shown.look, Look::Floor { draft: draft.clone() });
            let floor = lifter.floor();
            assert_eq!(floor.thumb.figure.unwrap().text, "7");
            return;
        }
        let key = floor.thumb.effort.first().map(|one| one.key.clone()).or(floor.thumb.main);
        lifter.act(&key.unwrap().action).unwrap();
    }
    panic!("no rest was run");
}

#[test]
fn a_look_with_nothing_to_show_answers_what_is_shown_instead() {
    let mut lifter = set_up();
    for look in [at_floor(None), Look::Tally] {
        let answer = lifter.engine.view(look, lifter.now.clone()).unwrap();
        assert_eq!(answer.look, at_today());
        assert!(matches!(answer.screen, Screen::Today { .. }));
        assert!(answer.effects.is_empty());
    }
    lifter.begin();
    let answer = lifter.engine.view(at_lift(""), lifter.now.clone()).unwrap();
    assert_eq!(answer.look, at_lift("back-squat"));
}

#[test]
fn an_answer_says_when_to_look_again() {
    let mut lifter = set_up();
    // What goes by the day changes at the next midnight here.
    let weeks = lifter.engine.view(Look::Weeks, lifter.now.clone()).unwrap();
    let midnight = weeks.wakes_at.unwrap();
    assert_eq!((midnight + 3_600_000).rem_euclid(86_400_000), 0);
    assert!((1..=86_400_000).contains(&(midnight - lifter.now.wall_ms)));
    let equipment = lifter.engine.view(Look::Equipment, lifter.now.clone()).unwrap();
    assert_eq!(equipment.wakes_at, None);
    lifter.begin();
    let floor = at_floor(None);
    assert_eq!(lifter.engine.view(floor.clone(), lifter.now.clone()).unwrap().wakes_at, None);
    // A rest changes with its seconds: what is shown until then is what was shown.
    let mut rests = false;
    for _ in 0..6 {
        lifter.wait(20);
        let answer = lifter.engine.view(floor.clone(), lifter.now.clone()).unwrap();
        let Screen::Floor { floor: shown } = &answer.screen else { panic!() };
        if let Some(rest) = &shown.rest {
            rests = true;
            pass(&mut lifter.now, 300);
            let look = || lifter.engine.view(floor.clone(), lifter.now.clone()).unwrap();
            let now = look();
            let wakes_at = now.wakes_at.unwrap();
            assert!((1..=1000).contains(&(wakes_at - lifter.now.wall_ms)), "{wakes_at}");
            let text = screens::floor(now.screen).rest.unwrap().text;
            let later = |ms: i64| {
                let mut at = lifter.now.clone();
                pass(&mut at, ms);
                let answer = lifter.engine.view(floor.clone(), at).unwrap();
                screens::floor(answer.screen).rest.unwrap().text
            };
            let left = wakes_at - lifter.now.wall_ms;
            assert_eq!(later(left - 1), text);
            assert_ne!(later(left), text, "from {}", rest.text);
            break;
        }
        let key = shown.thumb.effort.first().map(|one| one.key.clone());
        lifter.act(&key.or(shown.thumb.main.clone()).unwrap().action).unwrap();
    }
    assert!(rests, "a rest ran");
}
