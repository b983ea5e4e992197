//! Records that a lifter hands on from the screen: to a coach, and all of them.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use barwright_app::contract::{FormOf, FormScreen, Look, Screen};
use barwright_app::{Engine, Export};
use barwright_player::clock::wednesday;
use barwright_player::{Plan, Player, intents};

fn set_up() -> Player {
    let lines = "sets = 2\nreps = 5\nload = \"40 kg\"\nramp = \"none\"";
    let plan = Plan::new("Off-season", 8).session("One").exercise("Overhead press", lines).text();
    let mut lifter = Player::at(wednesday()).taking(60).takes_up(&plan);
    lifter.dispatch(intents::write("body-mass", "82.4 kg"));
    lifter.begin();
    lifter.dispatch(intents::write("note:0", "left shoulder stiff"));
    lifter.record(barwright_app::contract::HowEnded::AsCalled);
    lifter.record(barwright_app::contract::HowEnded::AsCalled);
    lifter.finish();
    lifter.days(2);
    lifter
}

/// The form, as the key of Today leads to it and its own keys turn it.
fn form(lifter: &Player, keys: &[&str]) -> FormScreen {
    let mut look = Look::Form { of: FormOf::Records, at: String::new(), text: String::new() };
    for id in keys {
        let Screen::Form { form } = lifter.see(look) else { panic!("no form") };
        let row = form.rows.into_iter().find(|row| row.id == *id).unwrap();
        let barwright_app::contract::Action::Show { look: next } = row.keys[0].action.clone()
        else {
            panic!("{row:?}")
        };
        look = next;
    }
    match lifter.see(look) {
        Screen::Form { form } => form,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_coach_gets_what_the_lifter_puts_in() {
    let mut lifter = set_up();
    let key = lifter.today().keys.into_iter().find(|key| key.id == "records").unwrap();
    lifter.press(&key);
    assert!(matches!(lifter.shown.screen, Screen::Form { .. }));

    let before = lifter.engine.count_records().unwrap();
    for (keys, body_mass, notes) in [
        (&[][..], false, false),
        (&["body-mass"][..], true, false),
        (&["notes"], false, true),
        (&["body-mass", "notes"], true, true),
        (&["body-mass", "notes", "body-mass"], false, true),
    ] {
        let form = form(&lifter, keys);
        let file = form.file.unwrap();
        assert!(file.name.ends_with(".jsonl") && form.subtitle.starts_with("1 session, "));
        assert_eq!(file.text.contains("82.4"), body_mass, "{keys:?}");
        assert_eq!(file.text.contains("shoulder stiff"), notes, "{keys:?}");
        let chosen = |id: &str| {
            let row = form.rows.iter().find(|row| row.id == id).unwrap();
            row.keys[0].chosen
        };
        assert_eq!((chosen("body-mass"), chosen("notes")), (body_mass, notes));
        // The coach reads it.
        let desk = Engine::read_records(file.text.as_bytes(), "en-GB").unwrap();
        let lift = Look::Lift { exercise: "overhead-press".into(), page: 0, all: false };
        assert_eq!(desk.view(lift.clone(), lifter.now.clone()).unwrap().screen, lifter.see(lift));
    }
    // Nothing is recorded by it.
    assert_eq!(lifter.engine.count_records().unwrap(), before);
}

#[test]
fn all_of_it_goes_out_without_a_loss() {
    let lifter = set_up();
    let form = form(&lifter, &["all"]);
    let mut whole = Vec::new();
    lifter.engine.export_records(Export::default(), &mut whole).unwrap();
    assert_eq!(form.file.unwrap().text.as_bytes(), whole);
    assert!(form.rows.iter().all(|row| row.id != "notes"), "all is all");
}
