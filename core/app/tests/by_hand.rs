//! What is made and mended by hand, through the public door: by the keys of the screens alone.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use barwright_app::Engine;
use barwright_app::contract::{Action, EngineError, FormScreen, Intent, Look, RefusalCode, Screen};
use barwright_player::clock::wednesday;
use barwright_player::{Player, screens};

fn hand() -> Player {
    let mut hand = Player::stored(wednesday(), "en-GB");
    hand.view(Look::Equipment);
    hand
}

/// The gym's title as Equipment shows it, and its rows.
fn equipment(hand: &mut Player) -> (String, Vec<String>) {
    hand.view(Look::Equipment);
    let equipment = screens::equipment(hand.shown.screen.clone());
    (equipment.title, equipment.rows.into_iter().map(|row| row.text).collect())
}

#[test]
fn a_gym_is_made_by_its_keys_and_holds_once_it_is_used() {
    let mut hand = hand();
    let before = equipment(&mut hand);
    hand.tap("usual-kg");
    let from = hand.row("25 kg").value;
    hand.up("25 kg");
    assert_ne!(hand.row("25 kg").value, from);
    hand.write("Name", "Boathouse");
    assert_eq!(hand.form().title, "Gym: Boathouse");
    assert_eq!(hand.form().file.as_ref().unwrap().name, "boathouse.toml");
    // Nothing goes by it yet.
    assert_eq!(equipment(&mut hand), before);
    hand.tap("go-on");
    hand.tap("take-up");
    let (title, rows) = equipment(&mut hand);
    assert_eq!(title, "Boathouse");
    assert_eq!(rows.len(), before.1.len());
    // Its file keeps its comments, and the gym is mended from there.
    hand.tap("mend");
    assert!(hand.form().file.as_ref().unwrap().text.starts_with("# "));
    hand.write("Name", "Old boathouse");
    hand.tap("take-up");
    assert_eq!(equipment(&mut hand).0, "Old boathouse");
    let Screen::Equipment { equipment } = &hand.shown.screen else { panic!() };
    assert_eq!(equipment.gyms.len(), 3, "the same gym under its new name");
}

#[test]
fn a_draft_outlives_the_process_and_each_step_goes_back_and_forth() {
    let mut hand = hand();
    hand.tap("usual-lb");
    let begun = hand.form();
    assert!(!hand.key("undo").enabled);
    hand.up("45 lb");
    let stepped = hand.form();
    hand.down("2.5 lb");
    hand.reopened();
    hand.tap("undo");
    assert_eq!(hand.form().rows.len(), stepped.rows.len());
    let values = |form: &FormScreen| -> Vec<String> {
        form.rows.iter().map(|row| row.value.clone()).collect()
    };
    assert_eq!(values(&hand.form()), values(&stepped));
    hand.tap("undo");
    assert_eq!(values(&hand.form()), values(&begun));
    hand.reopened();
    hand.tap("redo");
    assert_eq!(values(&hand.form()), values(&stepped));
    hand.tap("drop");
    let Screen::Equipment { equipment } = &hand.shown.screen else { panic!() };
    assert!(equipment.keys.iter().all(|key| key.id != "go-on"));
    hand.reopened();
    hand.tap("usual-lb");
}

#[test]
fn what_is_wrong_stands_beside_its_row_and_is_not_used() {
    let mut hand = hand();
    hand.tap("usual-kg");
    hand.write("25 kg", "a lot");
    let row = hand.row("25 kg");
    assert!(row.warns);
    assert_eq!(row.faults.len(), 1, "{row:#?}");
    assert_eq!(hand.form().rows.iter().filter(|row| row.warns).count(), 1);
    assert!(!hand.key("take-up").enabled);
    let refused = hand.act(&hand.key("take-up").action).unwrap_err();
    assert!(matches!(refused, EngineError::Refused { code: RefusalCode::Faults, .. }));
    hand.write("25 kg", "3");
    assert!(hand.form().rows.iter().all(|row| !row.warns));
    hand.tap("take-up");
}

#[test]
fn a_tap_that_was_meant_for_another_step_is_refused() {
    let mut hand = hand();
    hand.tap("usual-kg");
    let remove = hand.row("25 kg").keys.into_iter().find(|key| key.id == "remove").unwrap();
    let field = hand.row("20 kg").field.unwrap().id;
    hand.press(&remove);
    let shown = hand.form();
    // The same tap twice takes no second plate away.
    let twice = hand.act(&remove.action).unwrap_err();
    assert!(matches!(twice, EngineError::Refused { code: RefusalCode::Stale, .. }), "{twice:?}");
    let intent = Intent::Write { field, text: "9".into(), sure: false };
    let late = hand.act(&Action::Do { intent, session: None, then: None }).unwrap_err();
    assert!(matches!(late, EngineError::Refused { code: RefusalCode::Stale, .. }), "{late:?}");
    hand.view(hand.shown.look.clone());
    assert_eq!(hand.form(), shown);
    // One that is being made is not lost by beginning another.
    hand.view(Look::Equipment);
    hand.tap("go-on");
    assert_eq!(hand.form(), shown);
}

#[test]
fn a_small_gym_is_made_from_an_empty_room_in_few_presses() {
    let mut hand = hand();
    hand.tap("empty-kg");
    hand.tap_row("Add a bar", "add-barbell");
    // A bar alone makes what it weighs.
    assert_eq!(hand.row("Long bar").detail, "20 kg and nothing else");
    hand.tap_row("Add a size of plate", "add-set");
    assert_eq!(hand.row("Long bar").detail, "20 kg to 167.5 kg, every 2.5 kg");
    // What can't be made is said while stepping.
    hand.down("2.5 kg");
    assert_eq!(hand.row("2.5 kg").value, "no pair");
    let detail = hand.row("Long bar").detail;
    assert!(detail.starts_with("20 kg to 162.5 kg, every 10 kg"), "{detail}");
    hand.up("2.5 kg");
    for support in ["Rack", "Bench", "Pull-up bar", "Bands"] {
        hand.tap_row(support, "toggle");
        assert_eq!(hand.row(support).value, "here");
    }
    hand.tap_row("Add what is held in the hand", "add-dumbbell");
    assert_eq!(hand.row("Dumbbells").detail, "2 kg to 30 kg, every 2 kg");
    hand.tap("take-up");
    assert!(hand.presses <= 12, "{} presses", hand.presses);
    let (title, rows) = equipment(&mut hand);
    assert_eq!(title, "My gym");
    assert!(rows.contains(&"rack, bench, pull up bar, band".to_owned()), "{rows:?}");
}

#[test]
fn a_rack_has_gaps_a_stack_numbers_and_a_plate_its_true_mass() {
    let mut hand = hand();
    hand.tap("usual-kg");
    hand.tap_row("Dumbbells", "open");
    let all = hand.form().rows.len();
    // One that is missing leaves a gap, and the range is a list from there on.
    let gone = hand.form().rows.iter().find(|row| row.depth == 2).unwrap().text.clone();
    let third = hand.form().rows.iter().filter(|row| row.depth == 2).nth(2).unwrap().text.clone();
    hand.tap_row(&third, "remove");
    assert_ne!(gone, third);
    assert_eq!(hand.form().rows.len(), all - 4, "three of the range, and one load");
    let reach = &hand.form().rows[0].text;
    assert!(reach.contains(&format!("{} can't be made", third.trim_end_matches(" kg"))), "{reach}");
    hand.write("Add a load", "7");
    assert!(hand.form().rows.iter().any(|row| row.text == "7 kg"));
    hand.tap("leave");
    hand.tap_row("Low row", "open");
    hand.tap_row("Loads are known", "pins");
    assert_eq!(hand.row("Pins").value, "10");
    hand.up("Pins");
    hand.tap("leave");
    assert_eq!(hand.row("Low row").detail, "11 pins, no loads known");
    // A plate that weighs less than what stands on it.
    hand.tap_row("25 kg", "open");
    hand.down("Weighed, one is really");
    assert_eq!(hand.row("Weighed, one is really").value, "24.9 kg");
    hand.write("Weighed, one is really", "24.75");
    hand.tap("leave");
    assert_eq!(hand.row("25 kg").detail, "weighs 24.75 kg");
    // A part that went closes.
    hand.tap_row("Curl bar", "open");
    let open = hand.shown.look.clone();
    hand.tap("leave");
    hand.tap_row("Curl bar", "remove");
    hand.view(open);
    assert!(hand.form().rows.iter().any(|row| row.id == "plates"), "the whole");
    hand.tap("take-up");
}

const PLAN: &str = "name = \"Two lifts\"\nweeks = 2\n\n[[session]]\nname = \"A\"\n\n\
                    [[session.exercise]]\nname = \"Back squat\"\nsets = 3\nreps = 5\n\
                    load = \"61 kg\"\nsubstitutes = [\"Goblet squat\"]\n";

#[test]
fn a_gym_is_chosen_in_one_press_on_today_and_the_sheet_follows() {
    let mut hand = hand();
    hand.dispatch(Intent::adopt(PLAN));
    for (begin, name) in [("usual-kg", "Club"), ("empty-kg", "Hotel")] {
        hand.view(Look::Equipment);
        hand.tap(begin);
        hand.write("Name", name);
        if name == "Hotel" {
            hand.tap_row("Add what is held in the hand", "add-dumbbell");
        }
        hand.tap("take-up");
    }
    let today = Look::Today { session: None, minutes: None };
    hand.view(today.clone());
    let sheet = |hand: &Player| {
        let Screen::Today { today } = &hand.shown.screen else { panic!() };
        let said = |row: &barwright_app::contract::Row| format!("{} {}", row.text, row.detail);
        (today.subtitle.clone(), today.rows.iter().map(said).collect::<Vec<_>>().join("\n"))
    };
    let (subtitle, rows) = sheet(&hand);
    assert!(subtitle.contains("Hotel"), "{subtitle}");
    assert!(rows.contains("Goblet squat"), "{rows}");
    let presses = hand.presses;
    hand.tap("gym-Club");
    assert_eq!(hand.presses, presses + 1);
    assert_eq!(hand.shown.look, today);
    let (subtitle, rows) = sheet(&hand);
    assert!(subtitle.contains("Club") && !rows.contains("Goblet squat"), "{subtitle}\n{rows}");
    assert!(rows.contains("kg"), "{rows}");
}

#[test]
fn masses_are_typed_as_the_lifter_writes_them() {
    let mut hand = Player::stored(wednesday(), "nl-NL");
    hand.view(Look::Equipment);
    hand.tap("usual-kg");
    hand.write("Add a size of plate", "0,75");
    assert_eq!(hand.row("0,75 kg").value, "1 pair");
    assert_eq!(hand.row("1,25 kg").faults.len(), 0);
    hand.tap_row("Long bar", "open");
    hand.write("Mass", "20,35");
    assert_eq!(hand.row("Mass").value, "20,35 kg");
    hand.up("Mass");
    assert_eq!(hand.row("Mass").value, "21,35 kg");
    hand.write("Mass", "twenty");
    assert_eq!(hand.row("Mass").faults.len(), 1);
    hand.write("Mass", "45 lb");
    assert_eq!(hand.row("Mass").value, "45 lb");
    assert!(hand.form().file.as_ref().unwrap().text.contains("mass = \"45 lb\""));
}

/// A plan in percent and in kilograms, taken up, with a max and a working load.
const PERCENT: &str = "name = \"Two lifts\"\nweeks = 3\n\n[[session]]\nname = \"A\"\n\n\
                       [[session.exercise]]\nname = \"Bench press\"\nsets = 3\nreps = 5\n\
                       load = \"80 %\"\n\n[[session.exercise]]\nname = \"Barbell row\"\nsets = 3\n\
                       reps = 8\nload = \"60 kg\"\n";

fn with_maxes() -> Player {
    let mut hand = hand();
    hand.dispatch(Intent::adopt(PERCENT));
    hand.type_in("max:bench-press", "100 kg");
    hand.today();
    hand
}

#[test]
fn a_max_is_changed_by_a_percentage_with_its_loads_shown_first() {
    let mut hand = with_maxes();
    hand.presses = 0;
    hand.tap("maxes");
    assert_eq!(hand.row("Bench press").value, "100 kg");
    assert!(hand.row("Bench press").detail.starts_with("entered "));
    hand.tap_row("Bench press", "by-5");
    assert_eq!(hand.row("Bench press").value, "95 kg");
    let moved: Vec<String> = hand
        .form()
        .rows
        .iter()
        .filter(|row| row.id.starts_with("moved-"))
        .map(|row| row.text.clone())
        .collect();
    assert_eq!(moved.len(), 3, "{moved:?}");
    assert_eq!(moved[0], "Week 1, A: Bench press 76 kg, was 80 kg");
    // Nothing counts yet.
    hand.today();
    let loads = |hand: &Player| {
        let Screen::Today { today } = &hand.shown.screen else { panic!() };
        today.rows.iter().map(|row| row.text.clone()).collect::<Vec<_>>().join("\n")
    };
    assert!(loads(&hand).contains("80 kg"), "{}", loads(&hand));
    hand.tap("maxes");
    hand.tap_row("Bench press", "by-5");
    hand.presses = 2;
    hand.tap_row("95 kg, was 100 kg", "take");
    assert!(hand.presses <= 4, "open, less, take: {} presses", hand.presses);
    assert_eq!(hand.row("Bench press").value, "95 kg");
    hand.reopened();
    assert_eq!(hand.row("Bench press").value, "95 kg");
    // Taken back, said again, and taken back for good.
    hand.tap("undo");
    assert_eq!(hand.row("Bench press").value, "100 kg");
    hand.tap("redo");
    assert_eq!(hand.row("Bench press").value, "95 kg");
    hand.reopened();
    hand.tap("undo");
    hand.tap("undo");
    assert_eq!(hand.row("Bench press").value, "none yet");
    assert!(!hand.key("undo").enabled);
}

#[test]
fn a_percentage_and_a_load_are_typed_and_what_can_not_be_is_refused() {
    let mut hand = with_maxes();
    hand.tap("maxes");
    for (typed, becomes) in
        [("-5 %", "95 kg"), ("\u{2212}2.5%", "97.5 kg"), ("+ 5%", "105 kg"), ("112.5", "112.5 kg")]
    {
        hand.write("Bench press", typed);
        assert_eq!(hand.row("Bench press").value, becomes, "{typed}");
        hand.tap("leave");
    }
    let field = hand.row("Bench press").field.unwrap().id;
    for wrong in ["-60 %", "five", "% 5", ""] {
        let intent = Intent::Write { field: field.clone(), text: wrong.into(), sure: false };
        let refused = hand.act(&Action::Do { intent, session: None, then: None });
        let code = match refused {
            Err(EngineError::Refused { code, .. }) => code,
            other => panic!("{wrong}: {other:?}"),
        };
        assert_eq!(code, RefusalCode::BadValue, "{wrong}");
    }
    hand.view(hand.shown.look.clone());
    assert_eq!(hand.row("Bench press").value, "100 kg");
}

#[test]
fn a_working_load_moves_its_rows_and_body_mass_is_a_chart() {
    let mut hand = with_maxes();
    hand.tap("maxes");
    let row = "Barbell row, 8 reps";
    assert_eq!(hand.row(row).value, "60 kg");
    hand.up(row);
    hand.up(row);
    assert_eq!(hand.row(row).value, "65 kg");
    assert!(hand.form().rows.iter().any(|row| row.text.contains("Barbell row 65 kg, was 60 kg")));
    hand.tap_row("65 kg, was 60 kg", "take");
    assert_eq!(hand.row(row).value, "65 kg");
    assert!(hand.form().chart.is_none());
    for (day, mass) in [(0, "82.4 kg"), (7, "82"), (14, "81.6")] {
        hand.now.wall_ms = wednesday().wall_ms + day * 86_400_000;
        hand.write("Body mass", mass);
        assert!(matches!(hand.shown.look, Look::Form { .. }));
    }
    let chart = hand.form().chart.clone().unwrap();
    assert_eq!(chart.series[0].points.len(), 3);
    assert_eq!(hand.row("Body mass").value, "81.6 kg");
    hand.tap("undo");
    assert_eq!(hand.row("Body mass").value, "82 kg");
    assert_eq!(hand.form().chart.as_ref().unwrap().series[0].points.len(), 2);
}

fn exercises(at: &str) -> Look {
    let of = barwright_app::contract::FormOf::Exercises;
    Look::Form { of, at: at.into(), text: String::new() }
}

#[test]
fn every_exercise_is_read_and_found_by_what_it_is() {
    let mut hand = hand();
    hand.view(exercises(""));
    let all = hand.form().rows.len();
    assert!(all > 100, "{all}");
    hand.write("Look for", "triceps dumbbell");
    let found: Vec<String> = hand.form().rows.iter().skip(1).map(|row| row.text.clone()).collect();
    assert!(!found.is_empty() && found.len() < 20, "{found:?}");
    assert!(hand.form().subtitle.ends_with("for “triceps dumbbell”"), "{}", hand.form().subtitle);
    // A near miss is answered with the likely ones.
    hand.write("Look for", "bakc sqat");
    assert_eq!(hand.form().rows[1].text, "Back squat");
    assert!(hand.form().subtitle.starts_with("None for"), "{}", hand.form().subtitle);
    hand.tap_row("Back squat", "open");
    assert_eq!(hand.form().title, "Back squat");
    assert_eq!(hand.row("Needs").value, "Rack");
    find_nothing(&mut hand, "zzzz");
}

/// A search that finds nothing says so and what to look for.
fn find_nothing(hand: &mut Player, words: &str) {
    hand.view(exercises(""));
    hand.write("Look for", words);
    assert_eq!(hand.form().rows.len(), 1);
    assert!(hand.form().subtitle.contains("Look for a name"), "{}", hand.form().subtitle);
}

#[test]
fn an_exercise_of_ones_own_is_made_in_any_script_and_has_its_own_history() {
    let mut hand = hand();
    // Two that differ in nothing but letters that are not Latin, and a number.
    for name in ["Присед 2", "Выпады 2", "深蹲"] {
        hand.view(exercises("back-squat"));
        hand.tap("like");
        hand.write("Name", name);
        assert!(hand.form().notes.is_empty());
        hand.tap("take-up");
    }
    hand.reopened();
    hand.write("Look for", "присед");
    assert_eq!(hand.form().rows[1].text, "Присед 2");
    assert_eq!(hand.form().rows.len(), 2);
    // A plan names it, and its history is its own.
    let plan = "name = \"План\"\nweeks = 1\n\n[[session]]\nname = \"А\"\n\n[[session.exercise]]\n\
                name = \"присед 2\"\nsets = 1\nreps = 5\nload = \"60 kg\"\nramp = \"none\"\n\n\
                [[session.exercise]]\nname = \"Выпады 2\"\nsets = 1\nreps = 5\nload = \"40 kg\"\n\
                ramp = \"none\"\n";
    hand.dispatch(Intent::adopt(plan));
    hand.begin();
    for _ in 0..2 {
        let Screen::Floor { floor } = &hand.shown.screen else { panic!() };
        let key =
            floor.thumb.main.clone().or(floor.thumb.effort.first().map(|one| one.key.clone()));
        let key = key.unwrap();
        hand.press(&key);
    }
    hand.finish();
    for (name, load) in [("Присед 2", "60 kg"), ("Выпады 2", "40 kg")] {
        hand.view(Look::Lift { exercise: name.into(), page: 0, all: false });
        let Screen::Lift { lift } = &hand.shown.screen else { panic!() };
        assert_eq!(lift.title, name);
        assert_eq!(lift.sessions.len(), 1, "{lift:#?}");
        assert!(lift.sessions[0].text.contains(load), "{:?}", lift.sessions);
    }
    // Under another name it is the same exercise, and the plan still means it.
    hand.view(exercises("присед-2"));
    hand.tap("mend");
    hand.write("Name", "Присед с паузой");
    hand.tap("take-up");
    hand.reopened();
    hand.view(Look::Lift { exercise: "Присед с паузой".into(), page: 0, all: false });
    let Screen::Lift { lift } = &hand.shown.screen else { panic!() };
    assert_eq!((lift.title.as_str(), lift.sessions.len()), ("Присед с паузой", 1));
    hand.view(Look::Weeks);
    assert!(matches!(hand.shown.screen, Screen::Weeks { .. }));
}

#[test]
fn what_an_exercise_is_can_be_changed_and_a_name_means_one() {
    let mut hand = hand();
    hand.view(exercises("bench-press"));
    hand.tap("like");
    hand.tap_row("Trains", "open");
    hand.tap_row("Front deltoid", "toggle");
    assert_eq!(hand.row("Front deltoid").value, "yes");
    hand.tap("leave");
    assert!(hand.row("Trains").value.contains("front deltoid"), "{:?}", hand.row("Trains"));
    hand.tap_row("The load is", "open");
    hand.tap_row("what each hand holds", "choose");
    assert_eq!(hand.row("The load is").value, "what each hand holds");
    hand.tap_row("One side at a time", "toggle");
    assert_eq!(hand.row("One side at a time").value, "yes");
    hand.write("Name", "Bench press");
    let refused = hand.act(&hand.key("take-up").action).unwrap_err();
    assert!(matches!(refused, EngineError::Refused { code: RefusalCode::AlreadySo, .. }));
    hand.view(exercises("draft"));
    hand.write("Like", "Bench pres");
    assert_eq!(hand.row("Like").faults.len(), 1);
    assert!(!hand.key("take-up").enabled);
    hand.tap("undo");
    hand.write("Name", "Cellar press");
    hand.tap("take-up");
    hand.view(exercises("cellar-press"));
    assert_eq!(hand.form().title, "Cellar press");
    assert_eq!(hand.row("The load is").value, "what each hand holds");
}

#[test]
fn the_demo_is_another_file_and_leaving_it_is_one_press() {
    let mut hand = hand();
    let today = Look::Today { session: None, minutes: None };
    hand.view(today.clone());
    hand.tap("start");
    // Each way says what it does.
    assert!(hand.form().rows.len() >= 3 && hand.form().plan_file);
    assert!(hand.form().rows.iter().all(|row| row.detail.len() > 40));
    hand.tap_row("Look at the demo", "demo");
    let Screen::Today { today: sheet } = &hand.shown.screen else { panic!() };
    assert!(!sheet.rows.is_empty());
    assert!(sheet.cautions[0].contains("invented"), "{:?}", sheet.cautions);
    // It is given up and taken again as any records are.
    hand.engine.suspend().unwrap();
    hand.view(Look::Weeks);
    hand.view(today.clone());
    hand.presses = 0;
    hand.tap("leave-demo");
    assert_eq!(hand.presses, 1);
    let Screen::Today { today: sheet } = &hand.shown.screen else { panic!() };
    assert!(sheet.rows.is_empty(), "nothing of the demo is in the records");
    assert_eq!(hand.engine.count_records().unwrap(), 0);
    assert!(hand.folder().join("demo-records.db").exists());
    // In memory too, where there is no file to lie beside.
    let engine = Engine::in_memory("en-GB".into()).unwrap();
    let intent = |on| Intent::Demo { on };
    engine.dispatch(Intent::adopt(PLAN), wednesday()).unwrap();
    engine.dispatch(intent(true), wednesday()).unwrap();
    assert!(engine.count_records().unwrap() > 100);
    let again = engine.dispatch(intent(true), wednesday()).unwrap_err();
    assert!(matches!(again, EngineError::Refused { code: RefusalCode::AlreadySo, .. }));
    engine.dispatch(intent(false), wednesday()).unwrap();
    assert_eq!(engine.count_records().unwrap(), 1);
    engine
        .dispatch(Intent::Begin { session: None, minutes: None, sure: false }, wednesday())
        .unwrap();
    let runs = engine.dispatch(intent(true), wednesday()).unwrap_err();
    assert!(matches!(runs, EngineError::Refused { code: RefusalCode::SessionRunning, .. }));
}

/// Whoever types a German word for what the file names in English means that: the plan's exercises
/// find it by the file's word. What is no word of the file's stays as it was typed.
#[cfg(feature = "german")]
#[test]
fn what_a_gym_has_is_typed_in_german() {
    let mut hand = Player::stored(wednesday(), "de-DE");
    hand.view(Look::Equipment);
    hand.tap("empty-kg");
    let file = |hand: &Player| hand.form().file.as_ref().unwrap().text.clone();
    for (row, typed, word) in [
        ("Stange hinzufügen", "langhantel", "kind = \"barbell\""),
        ("Stange hinzufügen", "Safety-Stange", "kind = \"safety-bar\""),
        ("Stange hinzufügen", "Dicke Stange", "kind = \"Dicke Stange\""),
        ("In der Hand Gehaltenes hinzufügen", "Kurzhanteln", "kind = \"dumbbell\""),
        ("Gewichtsblock mit Stift hinzufügen", "Latzug", "kind = \"pulldown\""),
        ("Etwas anderes, das es hier gibt", "Klimmzugstange", "\"pull-up-bar\""),
    ] {
        hand.write(row, typed);
        let text = file(&hand);
        assert!(text.contains(word), "{typed}: {text}");
    }
    hand.write("Scheibengröße hinzufügen", "1,25");
    let plate = |hand: &mut Player| {
        let (of, at) = (barwright_app::contract::FormOf::Gym, "plate.0".to_owned());
        hand.view(Look::Form { of, at, text: String::new() });
    };
    plate(&mut hand);
    hand.write("Farbe", "Grün");
    let text = file(&hand);
    assert!(text.contains("mass = \"1.25 kg\"") && text.contains("colour = \"green\""), "{text}");
    plate(&mut hand);
    assert_eq!(hand.row("Farbe").value, "grün");
}
