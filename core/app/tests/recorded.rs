//! What is recorded is told apart from what is shown: a tap that is on disk says so, whatever happens
//! to its screen.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use std::path::Path;

use barwright_app::contract::{
    Action, Effect, EngineError, HowEnded, Intent, Look, Reading, Screen,
};
use barwright_player::clock::{WEDNESDAY_MS, wall};
use barwright_player::screens::at_lift;
use barwright_player::{Plan, Player, intents};

fn at(minute: i64) -> Reading {
    wall(WEDNESDAY_MS + minute * 60_000, 60)
}

/// Entries in the log of a file that nobody has open.
fn entries(path: &Path) -> u64 {
    let file = rusqlite::Connection::open(path).unwrap();
    file.query_row("SELECT count(*) FROM event", [], |row| row.get(0)).unwrap()
}

/// A file with a session behind it and one that runs. The rows of the first were spoiled, and so was
/// its entry in the log, further back than opening looks: they can't be made anew.
fn spoiled() -> Player {
    let lines = "sets = 3\nreps = 5\nload = \"100 kg\"\nramp = \"none\"";
    let plan = Plan::new("Two evenings", 4).session("Legs").exercise("Back squat", lines);
    let mut player = Player::stored(at(0), "en-GB").taking(60).takes_up(&plan.text());
    player.begin();
    (2..5).for_each(|_| drop(player.record(HowEnded::AsCalled)));
    for _ in 0..barwright_store::CHECKED_ON_OPEN / 2 {
        player.dispatch(Intent::Undo);
        player.dispatch(Intent::Redo);
    }
    player.finish();
    player.now = at(3_000);
    player.begin();
    player.record(HowEnded::AsCalled);
    player.reopened_after(spoil);
    player
}

fn spoil(path: &Path) {
    let file = rusqlite::Connection::open(path).unwrap();
    let rows = file.execute("UPDATE done_set SET asked = 'spoiled'", []).unwrap();
    assert!(rows > 0);
    let name = "event_is_never_changed";
    let guard = "SELECT sql FROM sqlite_schema WHERE name = ?1";
    let guard: String = file.query_row(guard, [name], |row| row.get(0)).unwrap();
    file.execute_batch(&format!("DROP TRIGGER {name}")).unwrap();
    let logged = file.execute("UPDATE event SET body = body || ' ' WHERE seq = 2", []).unwrap();
    assert_eq!(logged, 1);
    file.execute_batch(&guard).unwrap();
}

#[test]
fn a_tap_whose_screen_cannot_be_made_is_recorded_and_says_so() {
    let mut player = spoiled();
    let path = player.folder().join("records.db");
    player.engine.suspend().unwrap();
    let before = entries(&path);

    // The tally reads what was done before, and can't.
    player.finish();
    let answer = player.shown.clone();
    let Screen::NotShown { not_shown } = &answer.screen else { panic!("{answer:?}") };
    assert!(not_shown.reason.contains("is recorded"), "{not_shown:?}");
    assert!(not_shown.report.is_empty(), "the file is at fault, not the program");
    assert!(answer.effects.contains(&Effect::KeepAwake { on: false }), "{:?}", answer.effects);
    assert!(answer.effects.contains(&Effect::CancelRing), "{:?}", answer.effects);
    assert_eq!((answer.look, answer.wakes_at), (Look::Tally, None));
    // The end, and what it comes to for the owners of loads.
    player.engine.suspend().unwrap();
    assert_eq!(entries(&path), before + 2, "it is in the log");

    // A look has recorded nothing: it fails as such. What reads no rows is still there.
    let looked = player.engine.view(Look::Tally, player.now.clone());
    assert!(matches!(looked, Err(EngineError::Storage { .. })), "{looked:?}");
    assert!(matches!(player.see(Look::Equipment), Screen::Equipment { .. }));

    // Nothing blocks the taps that follow: the end is taken back, and the session goes on.
    for intent in [Intent::Undo, intents::as_called()] {
        let screen = player.dispatch(intent);
        assert!(matches!(screen, Screen::Floor { .. }), "{screen:?}");
    }
}

#[test]
fn from_where_nothing_is_shown_a_key_leads_on() {
    let mut player = spoiled();
    // A chart of the spoiled exercise after a tap that leads nowhere near it.
    let then = Some(at_lift("back-squat"));
    player.act(&Action::Do { intent: intents::as_called(), session: None, then }).unwrap();
    let Screen::NotShown { not_shown } = &player.shown.screen else { panic!("{:?}", player.shown) };
    let floor = not_shown.keys.iter().find(|key| key.id == "floor").unwrap().clone();
    player.press(&floor);
    assert!(matches!(player.shown.screen, Screen::Floor { .. }));
}

/// What carries the loads of a plan that is only kept is not held after a start; another date of one
/// of its sessions goes to it all the same, as it does when the log is folded anew.
#[test]
fn a_session_of_a_plan_that_was_kept_is_dated_for_its_loads_too() {
    let lines = "sets = 2\nreps = 5\nload = \"100 kg\"\nramp = \"none\"\nnext = \"two for two\"";
    let plan = |name, exercise| Plan::new(name, 4).session("Legs").exercise(exercise, lines).text();
    let (first, other) = (plan("First", "Back squat"), plan("Other", "Front squat"));
    let mut player = Player::stored(at(0), "en-GB").taking(60).takes_up(&first);
    let session = player.engine.count_records().unwrap() + 1;
    player.train(None);
    player = player.takes_up(&other);
    player.days(2);
    player.train(None);
    player.reopened();
    let day = player.day() - 1;
    player.dispatch(Intent::DateSession { session: Some(session), day });
    assert_eq!(player.engine.examine_records().unwrap().mended, 0);
}
