//! What a coach changed, taken up by the lifter: once, and never over what they did since unasked.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use std::sync::Arc;

use barwright_app::contract::{
    Action, Edit, EngineError, FormOf, FormScreen, Intent, Look, RefusalCode, Screen,
};
use barwright_app::{Change, Engine, Export};
use barwright_player::clock::wednesday;
use barwright_player::{Plan, Player, intents};

const STEP: &str = "next = { rule = \"add when made\", step = \"2.5 kg\" }";

fn plan(cue: &str) -> String {
    let press = format!("sets = 2\nreps = 5\nload = \"40 kg\"\nramp = \"none\"\n{STEP}");
    let squat = format!("sets = 2\nreps = 5\nload = \"70 %\"\ncues = [\"{cue}\"]");
    let plan = Plan::new("Off-season", 8).session("One");
    plan.exercise("Overhead press", &press).exercise("Back squat", &squat).text()
}

/// Two weeks done, with a max.
fn set_up() -> Player {
    let mut lifter = Player::at(wednesday()).taking(60).takes_up(&plan("Brace"));
    lifter.dispatch(intents::write("max:back-squat", "140"));
    for _ in 0..2 {
        lifter.train(None);
        lifter.days(7);
    }
    lifter
}

/// What the coach writes, at a desk of their own: from what the lifter sent.
fn written(lifter: &Player, changes: &[Change]) -> Result<String, EngineError> {
    let mut sent = Vec::new();
    let since = Export { since: Some(lifter.day() - 60), body_mass: false, notes: false };
    lifter.engine.export_records(since, &mut sent).unwrap();
    let desk: Arc<Engine> = Engine::read_records(sent.as_slice(), "en-GB").unwrap();
    desk.changes_file("anna", changes, lifter.now.clone())
}

fn said(lifter: &Player, changes: &[&str]) -> String {
    let changes: Vec<Change> = changes.iter().map(|said| Change::Said((*said).into())).collect();
    written(lifter, &changes).unwrap()
}

fn form(screen: Screen) -> FormScreen {
    match screen {
        Screen::Form { form } => form,
        other => panic!("{other:?}"),
    }
}

/// As a shell opens a file.
fn opened(lifter: &Player, text: &str) -> FormScreen {
    form(lifter.see(Look::Plan { text: Some(text.to_owned()), week: None }))
}

fn lines(form: &FormScreen) -> Vec<String> {
    let line = |text: &str, value: &str| match value {
        "" => text.to_owned(),
        value => format!("{text}: {value}"),
    };
    form.rows.iter().map(|row| line(&row.text, &row.value)).collect()
}

fn details(form: &FormScreen) -> Vec<&str> {
    form.rows.iter().map(|row| row.detail.as_str()).collect()
}

/// The key of the form, or of a row of it.
fn action(form: &FormScreen, id: &str) -> Action {
    let all = form.keys.iter().chain(form.rows.iter().flat_map(|row| &row.keys));
    let key = all.into_iter().find(|key| key.id == id && key.enabled);
    key.unwrap_or_else(|| panic!("no {id} in {form:?}")).action.clone()
}

fn put(lifter: &mut Player, text: &str, which: &str) -> Result<FormScreen, EngineError> {
    let edit = Edit::Put { text: text.to_owned() };
    let (of, place) = (FormOf::Changes, which.to_owned());
    lifter.try_dispatch(Intent::Edit { of, place, edit, step: None }).map(form)
}

fn code(refused: Result<FormScreen, EngineError>) -> RefusalCode {
    match refused {
        Err(EngineError::Refused { code, .. }) => code,
        other => panic!("{other:?}"),
    }
}

/// The loads of the next session, as its sheet has them.
fn called(lifter: &Player) -> Vec<String> {
    let today = lifter.see_today();
    let sets = today.rows.iter().filter(|row| row.id.starts_with("sets-"));
    sets.map(|row| row.text.split(" · ").nth(1).unwrap().to_owned()).collect()
}

fn maxes(lifter: &Player) -> FormScreen {
    let (of, at, text) = (FormOf::Maxes, String::new(), String::new());
    form(lifter.see(Look::Form { of, at, text }))
}

#[test]
fn what_fits_is_taken_once_and_each_load_can_be_taken_back() {
    let mut lifter = set_up();
    let before = called(&lifter);
    assert_eq!(before, ["45 kg", "97.5 kg"]);
    let week = lifter.see_weeks().subtitle;
    let text = said(&lifter, &["max back squat -10 %", "load overhead press 42.5 kg"]);
    let shown = opened(&lifter, &text);
    assert_eq!(
        lines(&shown),
        [
            "Back squat: reference max: 140 kg → 126 kg",
            "Overhead press: working load: 45 kg → 42.5 kg"
        ]
    );
    assert_eq!(called(&lifter), before, "looking changes nothing");
    lifter.act(&action(&shown, "take-up")).unwrap();
    // As when the lifter writes the max by hand.
    let mut by_hand = set_up();
    by_hand.dispatch(intents::write("max:back-squat", "126"));
    let squat = called(&by_hand)[1].clone();
    assert_ne!(squat, before[1]);
    assert_eq!(called(&lifter), ["42.5 kg", squat.as_str()]);
    // The week goes on where it was.
    assert_eq!(lifter.see_weeks().subtitle, week);
    // Once: of the file as it is.
    let again = opened(&lifter, &text);
    assert_eq!(details(&again), ["taken", "taken"]);
    assert!(again.keys.iter().any(|key| key.id == "take-up" && !key.enabled));
    for which in ["", "1", "2"] {
        assert_eq!(code(put(&mut lifter, &text, which)), RefusalCode::AlreadySo, "{which}");
    }
    // What was said can be taken back, and is not taken anew by itself.
    for left in [["45 kg", squat.as_str()], ["45 kg", "97.5 kg"]] {
        lifter.act(&action(&maxes(&lifter), "undo")).unwrap();
        assert_eq!(called(&lifter), left);
    }
    assert_eq!(code(put(&mut lifter, &text, "")), RefusalCode::AlreadySo);
    lifter.act(&action(&maxes(&lifter), "redo")).unwrap();
    assert_eq!(called(&lifter), ["45 kg", squat.as_str()]);
    // What is remembered is what the log comes to.
    lifter.engine.check_records().unwrap();
    assert_eq!(details(&opened(&lifter, &text)), ["taken", "taken"]);
}

#[test]
fn the_same_changes_are_the_same_file() {
    let lifter = set_up();
    let one = said(&lifter, &["hold overhead press"]);
    assert_eq!(said(&lifter, &["hold overhead-press"]), one);
    assert_ne!(said(&lifter, &["load overhead press 47.5"]), one);
}

#[test]
fn where_the_lifter_went_on_since_it_is_shown_and_taken_only_if_they_say_so() {
    let mut lifter = set_up();
    let text = said(&lifter, &["max back squat 150 kg", "hold overhead press", "week 1"]);
    assert_eq!(lines(&opened(&lifter, &text))[1], "Overhead press: working load: stays 45 kg");
    // One more session: the press went up, another session is next; and another max was tested.
    lifter.train(None);
    lifter.days(7);
    lifter.dispatch(intents::write("max:back-squat", "145"));
    let shown = opened(&lifter, &text);
    let since =
        |now: &str| format!("You went on since: it is {now} now. It is taken only if you say so.");
    assert_eq!(
        details(&shown),
        [
            &since("145 kg"),
            &since("47.5 kg"),
            "When it was decided session 1 of week 3 came next. It is taken only if you say so."
        ]
    );
    assert!(shown.rows.iter().all(|row| row.warns));
    let before = called(&lifter);
    assert_eq!(code(put(&mut lifter, &text, "")), RefusalCode::AlreadySo);
    assert_eq!(called(&lifter), before);
    // The lifter says so of one of them.
    let key = shown.rows[1].keys.iter().find(|key| key.id == "take").unwrap();
    lifter.act(&key.action).unwrap();
    assert_eq!(called(&lifter)[0], "45 kg");
    let after = opened(&lifter, &text);
    assert_eq!(details(&after)[1], "taken");
    assert_eq!(details(&after)[0], since("145 kg"));
}

#[test]
fn a_swap_and_a_mended_plan_keep_the_week_and_what_was_loaded() {
    let mut lifter = set_up();
    let week = lifter.see_weeks().subtitle;
    let swap = said(&lifter, &["swap back squat with goblet squat"]);
    let mended = written(&lifter, &[Change::Plan(plan("Big breath \\\"low\\\""))]).unwrap();
    put(&mut lifter, &swap, "").unwrap();
    let today = lifter.see_today();
    assert!(today.rows.iter().any(|row| row.text.starts_with("Goblet squat")), "{today:?}");
    assert_eq!((lifter.see_weeks().subtitle, called(&lifter)[0].as_str()), (week.clone(), "45 kg"));
    // The plan is another one since: that it is mended as well is asked.
    assert_eq!(code(put(&mut lifter, &mended, "")), RefusalCode::AlreadySo);
    put(&mut lifter, &mended, "1").unwrap();
    let today = lifter.see_today();
    assert!(today.rows.iter().any(|row| row.text.starts_with("Back squat")), "{today:?}");
    assert_eq!((lifter.see_weeks().subtitle, called(&lifter)[0].as_str()), (week, "45 kg"));
    // Another plan is no mending of this one.
    let other = Plan::new("Another", 8).session("One").exercise("Plank", "seconds = 30").text();
    assert!(matches!(
        written(&lifter, &[Change::Plan(other)]),
        Err(EngineError::Refused { code: RefusalCode::BadValue, .. })
    ));
}

#[test]
fn a_week_is_done_once_more() {
    let mut lifter = set_up();
    assert!(lifter.see_weeks().subtitle.contains("week 3 of 8"), "{}", lifter.see_weeks().subtitle);
    let text = said(&lifter, &["week 2"]);
    put(&mut lifter, &text, "").unwrap();
    let weeks = lifter.see_weeks();
    assert!(weeks.subtitle.contains("week 2 of 8"), "{}", weeks.subtitle);
    lifter.train(None);
    lifter.days(7);
    assert!(lifter.see_weeks().subtitle.contains("week 3 of 8"));
}

#[test]
fn nothing_is_taken_while_a_session_runs_or_of_others_or_of_a_file_with_faults() {
    let mut lifter = set_up();
    let text = said(&lifter, &["max back squat 150 kg"]);
    let mut other = set_up();
    let store = |text: &str| text.lines().find(|line| line.starts_with("store")).map(str::to_owned);
    assert_ne!(store(&text), store(&said(&other, &["max back squat 150 kg"])));
    assert_eq!(code(put(&mut other, &text, "")), RefusalCode::BadValue);
    let faults = text.replace("to = ", "two = ");
    assert_eq!(code(put(&mut lifter, &faults, "")), RefusalCode::Faults);
    let shown = opened(&lifter, &faults);
    assert!(shown.rows.is_empty() && !shown.notes.is_empty(), "{shown:?}");
    // What is not here is said, and can't be taken even so.
    let nothing = text.replace("max = \"back-squat\"", "max = \"no-such-lift\"");
    assert_eq!(
        details(&opened(&lifter, &nothing)),
        ["There is nothing here that it could change."]
    );
    for which in ["", "1", "9", "../1"] {
        assert!(put(&mut lifter, &nothing, which).is_err(), "{which}");
    }
    lifter.begin();
    assert_eq!(code(put(&mut lifter, &text, "")), RefusalCode::SessionRunning);
    for said in [
        "",
        "max",
        "max back squat",
        "max back squat -80 %",
        "load plank 20 kg",
        "week 9",
        "week 0",
        "week -1",
        "swap back squat",
        "swap back squat with back squat",
        "hold nobody",
        "erase everything",
    ] {
        assert!(written(&lifter, &[Change::Said(said.into())]).is_err(), "{said}");
    }
    assert!(written(&lifter, &[]).is_err());
}

#[test]
fn a_lift_without_a_load_of_its_own_is_held_by_its_max_and_one_with_several_is_asked_about() {
    let lifter = set_up();
    let text = said(&lifter, &["hold back squat"]);
    assert_eq!(lines(&opened(&lifter, &text)), ["Back squat: reference max: stays 140 kg"]);
    let press = format!("sets = 2\nreps = 5\nload = \"40 kg\"\nramp = \"none\"\n{STEP}");
    let plan = Plan::new("Two", 8).session("Light").exercise("Overhead press", &press);
    let press = press.replace("reps = 5", "reps = 8");
    let plan = plan.session("Heavy").exercise("Overhead press", &press).text();
    let two = Player::at(wednesday()).takes_up(&plan);
    let asked = written(&two, &[Change::Said("hold overhead press".into())]);
    let Err(EngineError::Refused { reason, .. }) = asked else { panic!("{asked:?}") };
    assert!(reason.contains("(Light)") && reason.contains("(Heavy)"), "{reason}");
    let name = reason.split([' ', ',']).find(|word| word.starts_with("track:")).unwrap();
    let text = said(&two, &[&format!("load {name} 35")]);
    assert_eq!(lines(&opened(&two, &text)), ["Overhead press: working load: 40 kg → 35 kg"]);
}
