//! Records of another phone come in by the screen: a shell opens a file as it opens a plan, what is new
//! is shown, and a key takes it.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use barwright_app::contract::{
    Action, EngineError, FormOf, FormScreen, Intent, Key, Look, RefusalCode,
};
use barwright_app::{Engine, Export};
use barwright_player::clock::wednesday;
use barwright_player::{Plan, Player, intents};

fn plan() -> String {
    let press = "sets = 2\nreps = 5\nload = \"40 kg\"\nramp = \"none\"\n\
                 next = { rule = \"add when made\", step = \"2.5 kg\" }";
    Plan::new("Off-season", 8).session("One").exercise("Overhead press", press).text()
}

fn file_of(player: &Player) -> String {
    let mut file = Vec::new();
    player.engine.export_records(Export::default(), &mut file).unwrap();
    String::from_utf8(file).unwrap()
}

/// A phone with two sessions, on which records can be opened.
fn trained() -> Player {
    let mut old = Player::at(wednesday()).taking(60).takes_up(&plan());
    old.train(None);
    old.days(7);
    old.train(None);
    old
}

fn empty(like: &Player) -> Player {
    let engine = Engine::in_memory("en-GB".into()).unwrap();
    Player::on(engine, like.now.clone()).taking(60)
}

/// As a shell opens a file.
fn opens(player: &mut Player, text: &str) -> FormScreen {
    player.view(Look::Plan { text: Some(text.to_owned()), week: None });
    player.form()
}

fn said(form: &FormScreen) -> String {
    form.rows.iter().map(|row| row.text.as_str()).collect::<Vec<_>>().join(" ")
}

fn key(form: &FormScreen, id: &str) -> Key {
    form.keys.iter().find(|key| key.id == id).unwrap_or_else(|| panic!("{form:?}")).clone()
}

fn refused(player: &mut Player, key: &Key) -> RefusalCode {
    match player.act(&key.action) {
        Err(EngineError::Refused { code, .. }) => code,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_new_phone_goes_on_from_the_old_one() {
    let old = trained();
    let file = file_of(&old);
    let mut new = empty(&old);
    // What begins says that it can be done, and with what.
    let start = Look::Form { of: FormOf::Start, at: String::new(), text: String::new() };
    new.view(start);
    assert!(new.form().plan_file && new.form().rows.iter().any(|row| row.id == "records"));

    let form = opens(&mut new, &file);
    assert!(said(&form).contains("2 sessions") && said(&form).contains("Nothing was changed"));
    assert_eq!(new.engine.count_records().unwrap(), 0, "a look takes nothing");
    let take = key(&form, "go-on");
    new.press(&take);
    assert!(said(&new.form()).starts_with("Taken in: "), "{:?}", new.form());
    assert_eq!(file_of(&new), file);
    assert_eq!(new.see_lift("overhead-press"), old.see_lift("overhead-press"));

    // The key tapped once more takes nothing a second time, and the file opened again is known.
    new.press(&take);
    assert_eq!(file_of(&new), file);
    let again = opens(&mut new, &file);
    assert!(said(&again).starts_with("Nothing is new"), "{again:?}");
    assert!(!key(&again, "go-on").enabled);
}

#[test]
fn sessions_of_both_phones_come_together_and_go_apart_again() {
    let mut old = trained();
    let mut new = empty(&old);
    let form = opens(&mut new, &file_of(&old));
    new.press(&key(&form, "go-on"));
    new.days(7);
    new.train(None);
    old.days(14);
    old.train(None);
    old.days(1);
    let before = old.see_lift("overhead-press");

    let form = opens(&mut old, &file_of(&new));
    assert!(said(&form).contains("both went on") && said(&form).contains("1 session"), "{form:?}");
    let take = key(&form, "as-history");
    old.press(&take);
    let done = old.form();
    assert!(said(&done).starts_with("Come into the history: 1 session."), "{done:?}");
    assert_eq!(old.see_lift("overhead-press").sessions.len(), before.sessions.len() + 1);
    let (goes, count) = (key(&done, "withdraw"), old.engine.count_records().unwrap());
    old.press(&take);
    assert_eq!(old.engine.count_records().unwrap(), count, "no session comes twice");

    // What can go again stands where records are handed on, too; one key takes out one coming.
    let key_of_today = old.today().keys.into_iter().find(|key| key.id == "records").unwrap();
    old.press(&key_of_today);
    assert_eq!(key(&old.form(), "withdraw"), goes);
    old.press(&goes);
    assert!(said(&old.form()).contains("1 session"), "{:?}", old.form());
    assert_eq!(old.see_lift("overhead-press"), before);
    assert_eq!(refused(&mut old, &goes), RefusalCode::NotHere);
    assert_eq!(old.engine.examine_records().unwrap().mended, 0);
}

#[test]
fn a_load_that_stands_otherwise_there_is_looked_at_from_what_came() {
    let mut old = trained();
    let mut new = empty(&old);
    let form = opens(&mut new, &file_of(&old));
    new.press(&key(&form, "go-on"));
    new.days(7);
    new.dispatch(intents::write("max:overhead-press", "61"));
    new.train(None);
    old.days(9);
    old.dispatch(intents::write("body-mass", "80"));
    let form = opens(&mut old, &file_of(&new));
    old.press(&key(&form, "as-history"));
    let differs = key(&old.form(), "differing");
    assert_eq!(differs.label, "2 loads differ");
    old.press(&differs);
    let form = format!("{:?}", old.form());
    assert!(form.contains("61") && form.contains("45"), "{form}");
}

#[test]
fn what_is_no_whole_file_of_records_says_why_and_offers_nothing() {
    let old = trained();
    let whole = file_of(&old);
    let mut part = Vec::new();
    let since = Export { since: Some(0), body_mass: true, notes: true };
    old.engine.export_records(since, &mut part).unwrap();
    let long = format!("{whole}{}", " ".repeat(17 << 20));
    for (text, why) in [
        (String::from_utf8(part).unwrap(), "only a part"),
        (whole.lines().next().unwrap().to_owned(), "it was cut off"),
        (whole.replacen("\"kind\":\"desk\"", "\"kind\":\"task\"", 1), "Line 2 of the file"),
        (long, "too large"),
    ] {
        let mut new = empty(&old);
        let form = opens(&mut new, &text);
        assert!(said(&form).contains(why), "{why}: {form:?}");
        assert_eq!(form.keys.len(), 1, "only the way back: {form:?}");
        assert_eq!(new.engine.count_records().unwrap(), 0);
    }
}

#[test]
fn a_key_of_a_file_that_is_open_no_longer_takes_none() {
    let old = trained();
    let mut new = empty(&old);
    let form = opens(&mut new, &file_of(&old));
    let (look, take) = (new.shown.look.clone(), key(&form, "go-on"));
    assert!(matches!(&look, Look::Form { text, .. } if text.is_empty()), "it crosses once");
    // The app's process ended in between, or another file was opened.
    let mut fresh = empty(&old);
    fresh.view(look.clone());
    assert!(said(&fresh.form()).contains("no longer open") && fresh.form().plan_file);
    assert_eq!(refused(&mut fresh, &take), RefusalCode::NotHere);
    let mut other = trained();
    other.dispatch(intents::write("body-mass", "80"));
    opens(&mut new, &file_of(&other));
    assert_eq!(refused(&mut new, &take), RefusalCode::NotHere);
    assert_eq!(new.engine.count_records().unwrap(), 0);
}

#[test]
fn a_file_stays_open_while_the_device_sleeps_and_no_longer_than_it_is_wanted() {
    let old = trained();
    let mut new = empty(&old);
    opens(&mut new, &file_of(&old));
    let look = new.shown.look.clone();
    new.dispatch(Intent::Wake);
    new.view(look.clone());
    assert!(said(&new.form()).contains("2 sessions"), "{:?}", new.form());
    new.dispatch(intents::write("body-mass", "80"));
    new.view(look);
    assert!(said(&new.form()).contains("no longer open"), "{:?}", new.form());
}

#[test]
fn a_session_that_runs_there_goes_on_here_with_its_rest() {
    let mut old = trained();
    old.days(7);
    old.begin();
    old.dispatch(intents::as_called());
    let mut new = empty(&old);
    let form = opens(&mut new, &file_of(&old));
    let answer = new.engine.act(key(&form, "go-on").action, new.now.clone()).unwrap();
    assert!(!answer.effects.is_empty(), "the rest rings here: {answer:?}");
    assert_eq!(new.see_floor(None), old.see_floor(None));
}

#[test]
fn the_demo_takes_no_records_of_ones_own() {
    let old = trained();
    let mut hand = Player::stored(old.now.clone(), "en-GB");
    hand.dispatch(Intent::Demo { on: true });
    let form = opens(&mut hand, &file_of(&old));
    let keys = form.keys.iter().filter(|key| matches!(key.action, Action::Do { .. }));
    assert!(keys.into_iter().all(|key| !key.enabled), "{form:?}");
}
