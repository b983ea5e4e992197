//! A lifter goes on with two phones: the sessions of the one come into the history of the other, each
//! once and on the day it was lived; loads and plan stay, and what differs is asked.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use barwright_app::contract::{Edit, FormOf, Intent, Look, Screen};
use barwright_app::{Engine, Export, Joined};
use barwright_player::clock::wednesday;
use barwright_player::{Plan, Player, intents};

fn plan() -> String {
    let press = "sets = 2\nreps = 5\nload = \"40 kg\"\nramp = \"none\"\n\
                 next = { rule = \"add when made\", step = \"2.5 kg\" }";
    let squat = "sets = 2\nreps = 5\nload = \"70 %\"\nramp = \"none\"";
    let plan = Plan::new("Off-season", 8).session("One").exercise("Overhead press", press);
    plan.exercise("Back squat", squat).text()
}

fn exported(player: &Player) -> Vec<u8> {
    let mut file = Vec::new();
    player.engine.export_records(Export::default(), &mut file).unwrap();
    file
}

/// The old phone after a session on day 0, and the new one that took its records in.
fn two() -> [Player; 2] {
    let mut old = Player::at(wednesday()).taking(60).takes_up(&plan());
    old.dispatch(intents::write("max:back-squat", "140"));
    old.train(None);
    let new = Engine::in_memory("en-GB".into()).unwrap();
    new.import_records(exported(&old).as_slice(), false).unwrap();
    let new = Player::on(new, old.now.clone()).taking(60);
    [old, new]
}

/// As a phone takes the sessions of a file.
fn joins(player: &Player, file: &[u8], look_only: bool) -> Joined {
    player.engine.join_records(file, player.now.clone(), look_only).unwrap()
}

/// The sessions of the press as they are listed, the latest first.
fn presses(player: &Player) -> Vec<String> {
    let lift = player.see_lift("overhead-press");
    lift.sessions.iter().map(|row| format!("{}: {}", row.text, row.detail)).collect()
}

/// What is derived is what the log comes to.
fn is_sound(player: &Player) {
    let found = player.engine.examine_records().unwrap();
    assert_eq!(found.mended, 0, "{found:?}");
}

#[test]
fn the_sessions_of_the_other_phone_come_in_once_and_where_they_were_lived() {
    let [mut old, mut new] = two();
    // The new phone on days 7 and 21, the old one on day 14.
    new.days(7);
    new.train(None);
    new.days(14);
    new.train(None);
    old.days(14);
    let called = old.train(None);
    assert_eq!(called[0], "Overhead press 42.5 kg");
    old.days(8);
    let [fourteenth, first] = <[String; 2]>::try_from(presses(&old)).unwrap();
    let before = old.see_today();

    let file = exported(&new);
    let looked = joins(&old, &file, true);
    assert_eq!((looked.new, looked.same, looked.open, looked.taken), (2, 1, 0, false));
    assert_eq!(presses(&old).len(), 2);
    let taken = joins(&old, &file, false);
    assert_eq!((taken.new, taken.same, taken.taken), (2, 1, true));

    // The latest first: day 21, 14, 7, 0.
    let all = presses(&old);
    assert_eq!((all.len(), &all[1], &all[3]), (4, &fourteenth, &first), "{all:?}");
    // Sessions of the plan that both have are done; the load is this phone's own.
    let next = old.train(None);
    assert_eq!(next[0], "Overhead press 45 kg");
    assert_ne!(old.see_today(), before);
    is_sound(&old);

    // A second time nothing comes, and of what came nothing goes back to where it was lived.
    let again = joins(&old, &exported(&new), false);
    assert_eq!((again.new, again.same, again.taken), (0, 3, false));
    let back = joins(&new, &exported(&old), false);
    assert_eq!((back.new, back.same), (2, 3));
    assert_eq!(presses(&new).len(), 5);
    assert_eq!(presses(&new), presses(&old));
    is_sound(&new);
}

#[test]
fn what_came_goes_again_by_one_step() {
    let [mut old, mut new] = two();
    new.days(7);
    new.train(None);
    old.days(14);
    let (lift, weeks) = (old.see_lift("overhead-press"), old.see_weeks());
    joins(&old, &exported(&new), false);
    assert_ne!(old.see_lift("overhead-press"), lift);
    assert_eq!(old.engine.withdraw_sessions(old.now.clone()).unwrap(), 1);
    assert_eq!((old.see_lift("overhead-press"), old.see_weeks()), (lift, weeks));
    is_sound(&old);
    assert_eq!(old.engine.withdraw_sessions(old.now.clone()).unwrap(), 0);
    // And can come once more.
    assert_eq!(joins(&old, &exported(&new), false).new, 1);
    // In and out through a file of the whole log, it is the same.
    let copy = Engine::in_memory("en-GB".into()).unwrap();
    copy.import_records(exported(&old).as_slice(), false).unwrap();
    let copy = Player::on(copy, old.now.clone());
    assert_eq!(presses(&copy), presses(&old));
}

#[test]
fn loads_that_stand_otherwise_there_are_asked_about() {
    let [mut old, mut new] = two();
    new.days(1);
    new.dispatch(intents::write("max:back-squat", "145"));
    new.days(6);
    new.train(None);
    old.days(9);
    let joined = joins(&old, &exported(&new), false);
    // The max that was said, and the press that went up.
    assert_eq!(joined.differing, 2, "{joined:?}");
    let text = joined.changes.unwrap();
    let shown = old.see(Look::Plan { text: Some(text.clone()), week: None });
    let Screen::Form { form } = shown else { panic!("{shown:?}") };
    let squat = form.rows.iter().find(|row| row.text.contains("Back squat")).unwrap();
    assert!(squat.detail.contains("145") || squat.value.contains("145"), "{squat:?}");
    assert!(old.train(None)[0].ends_with("42.5 kg"), "the load is this phone's own");
    old.days(2);
    let edit = Edit::Put { text };
    old.dispatch(Intent::Edit { of: FormOf::Changes, place: "1".into(), edit, step: None });
    let maxes = Look::Form { of: FormOf::Maxes, at: String::new(), text: String::new() };
    let maxes = format!("{:?}", old.see(maxes));
    assert!(maxes.contains("145"), "{maxes}");
}

#[test]
fn other_records_and_parts_say_so() {
    let [old, _] = two();
    let mut stranger = Player::at(wednesday()).taking(60).takes_up(&plan());
    stranger.dispatch(intents::write("max:back-squat", "90"));
    stranger.train(None);
    // A whole other log: as history it comes, and into no plan of this one.
    let joined = joins(&old, &exported(&stranger), false);
    assert_eq!((joined.new, joined.same), (1, 0));
    assert_eq!(presses(&old).len(), 2);
    is_sound(&old);
    // A part of one has no checksums to tell its sessions by.
    let mut part = Vec::new();
    let since = Export { since: Some(0), body_mass: true, notes: true };
    stranger.engine.export_records(since, &mut part).unwrap();
    let refused = old.engine.join_records(part.as_slice(), old.now.clone(), false);
    assert!(refused.is_err(), "{refused:?}");
}
