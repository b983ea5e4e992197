//! The story that the golden log tells: one invented lifter, a little more than four weeks, by the keys
//! and fields that a shell has. One function a subject; each leaves things so that the next can go on.
//! It ends while a session runs, so that the floor has something to show.

use std::sync::Arc;

use barwright_app::contract::{
    Action, Arrange, Edit, FormOf, GuardChoice, HowEnded, Intent, KitChoice, Look, Reading,
    SessionChange, SwapReason,
};
use barwright_app::{Change, Engine, Export};
use barwright_player::clock::{DAY_MS, MONDAY, at_day};
use barwright_player::gyms::CELLAR;
use barwright_player::{Plan, Player, intents};

use super::plan::base;

/// The exercise that the lifter makes, by its slug.
pub(crate) const OWN_EXERCISE: &str = "cellar-press";

/// The store that the story is told in.
const STORE: &str = "5f0c8a52-6d1e-4b0f-9a57-2f6f0c1d7e11";

/// Day of the story, from 0: a Monday.
fn on(lifter: &mut Player, day: i32) {
    let was = lifter.now.clone();
    lifter.on_day(MONDAY + day);
    // The device's other clock goes on by as much; it was not restarted.
    let passed = lifter.now.wall_ms - was.wall_ms;
    lifter.now.boot_ms = was.boot_ms.map(|boot| boot + passed);
    lifter.now.boot_id = was.boot_id;
}

/// All of it.
pub(crate) fn played() -> Player {
    let mut now = at_day(MONDAY);
    (now.boot_ms, now.boot_id) = (Some(1_000_000), Some("first".into()));
    let mut lifter = Player::on(named(now.clone()), now).taking(20);
    gym_by_hand(&mut lifter);
    own_exercise(&mut lifter);
    plan_and_first_words(&mut lifter);
    ordinary_session(&mut lifter);
    on(&mut lifter, 2);
    parts_of_sets(&mut lifter);
    on(&mut lifter, 4);
    turned_about(&mut lifter);
    on(&mut lifter, 5);
    seldom_called(&mut lifter);
    on(&mut lifter, 7);
    missed_and_hurt(&mut lifter);
    arranged(&mut lifter);
    on(&mut lifter, 9);
    on_paper_and_dated(&mut lifter);
    on(&mut lifter, 14);
    missed_again_and_parted(&mut lifter);
    body_and_care(&mut lifter);
    plans_to_and_fro(&mut lifter);
    on(&mut lifter, 16);
    sent_by_the_coach(&mut lifter);
    from_another_phone(&mut lifter);
    on(&mut lifter, 28);
    laid_anew(&mut lifter);
    left_running(&mut lifter);
    lifter
}

/// The records on a device, with a gym's file taken in. A store is named by chance; one that takes a log in
/// has the name that the log gives it.
fn named(now: Reading) -> Arc<Engine> {
    let mut first = Player::at(now);
    first.dispatch(Intent::AddGym { text: CELLAR.into() });
    let log = String::from_utf8(exported(&first)).expect("JSON is UTF-8");
    let (head, events) = log.split_once('\n').expect("it has a first line");
    let mut head: serde_json::Value = serde_json::from_str(head).expect("a line of JSON");
    head["store"] = STORE.into();
    let engine = Engine::in_memory("en-GB".into()).unwrap_or_else(|error| panic!("{error:?}"));
    let taken = engine.import_records(format!("{head}\n{events}").as_bytes(), false);
    taken.unwrap_or_else(|error| panic!("{error:?}"));
    engine
}

fn exported(player: &Player) -> Vec<u8> {
    let mut file = Vec::new();
    let all = player.engine.export_records(Export::default(), &mut file);
    all.unwrap_or_else(|error| panic!("{error:?}"));
    file
}

/// A gym is begun from the usual one, stepped, turned back, dropped, gone on with, taken up, and given
/// another name; the one that came as a file is chosen, and left again.
fn gym_by_hand(lifter: &mut Player) {
    lifter.view(Look::Equipment);
    lifter.tap("usual-kg");
    lifter.up("25 kg");
    lifter.tap("undo");
    lifter.tap("redo");
    lifter.write("Name", "Boathouse");
    lifter.tap("drop");
    lifter.view(Look::Equipment);
    lifter.tap("usual-kg");
    lifter.write("Name", "Boathouse");
    lifter.tap("take-up");
    lifter.view(Look::Equipment);
    lifter.tap("mend");
    lifter.write("Name", "Old boathouse");
    lifter.tap("take-up");
    lifter.dispatch(Intent::ChooseGym { name: "Cellar".into() });
    lifter.dispatch(Intent::ChooseGym { name: "Old boathouse".into() });
    for (place, text) in [("gym:Old boathouse/step", "2.5 kg"), ("lift:deadlift/smallest", "5 kg")]
    {
        let (of, edit) = (FormOf::Liked, Edit::Put { text: text.into() });
        lifter.dispatch(Intent::Edit { of, place: place.into(), edit, step: None });
    }
}

/// An exercise like the bench press, under a name of its own.
fn own_exercise(lifter: &mut Player) {
    let (of, text) = (FormOf::Exercises, String::new());
    lifter.view(Look::Form { of, at: "bench-press".into(), text });
    lifter.tap("like");
    lifter.write("Name", "Cellar press");
    lifter.tap("take-up");
}

/// The plan is taken up, and the sheet told what it needs.
fn plan_and_first_words(lifter: &mut Player) {
    lifter.dispatch(Intent::adopt(base("Brace")));
    lifter.type_in("body-mass", "82.4 kg");
    lifter.type_in("max:back-squat", "140 kg");
    lifter.type_in("max:back-squat", "150 kg");
    maxes(lifter);
    lifter.tap("undo");
    lifter.tap("redo");
    lifter.tap("undo");
}

fn maxes(lifter: &mut Player) {
    lifter.view(Look::Form { of: FormOf::Maxes, at: String::new(), text: String::new() });
}

/// The part that is to be done, as the floor names it.
fn part(lifter: &Player) -> String {
    let floor = lifter.see_floor(None);
    floor.part.unwrap_or_else(|| panic!("nothing is left to do"))
}

/// Records what is called until the floor calls another exercise.
fn rest_of_exercise(lifter: &mut Player) {
    let of = |lifter: &Player| lifter.to_do().map(|floor| floor.call.exercise);
    let exercise = of(lifter);
    while exercise.is_some() && of(lifter) == exercise {
        lifter.record(HowEnded::AsCalled);
    }
}

/// Presses, a ramp and squats by effort, a hold, a carry; the lifter's own calls, helped and failed
/// repetitions, a correction, a note, set-up, kit, rests made longer, and the device restarted in one.
fn ordinary_session(lifter: &mut Player) {
    lifter.begin();
    let first = part(lifter);
    lifter.record(HowEnded::AsCalled);
    lifter.dispatch(Intent::RestBy { seconds: 30 });
    lifter.record(HowEnded::AsCalled);
    lifter.dispatch(Intent::Correct {
        part: first,
        amount: Some(6),
        load: None,
        left_halves: Some(4),
        ended: HowEnded::AsCalled,
        helped: 0,
        sure: false,
    });
    lifter.type_in("set-up:1", "Pins at 7; heels on plates");
    let kit = vec![KitChoice::Belt, KitChoice::Sleeves];
    lifter.dispatch(Intent::UseKit { entry: 1, kit });
    lifter.dispatch(Intent::GuardedBy { entry: 1, guard: GuardChoice::Pins });
    lifter.ramp();
    lifter.dispatch(intents::done(None, Some(5), HowEnded::AsCalled));
    // The device restarts within the rest.
    (lifter.now.boot_ms, lifter.now.boot_id) = (Some(5_000), Some("second".into()));
    lifter.dispatch(Intent::Wake);
    let ended = HowEnded::Failed;
    let (amount, left_halves) = (Some(4), None);
    let record = Intent::Record { part: None, amount, left_halves, ended, helped: 1, last: false };
    lifter.dispatch(record);
    lifter.dispatch(Intent::Start);
    lifter.wait(40);
    lifter.dispatch(intents::done(Some(38), None, HowEnded::Form));
    lifter.record(HowEnded::Interrupted);
    lifter.record(HowEnded::AsCalled);
    lifter.type_in("note:1", "Knees out");
    lifter.type_in("note", "Slept well");
    lifter.finish();
}

/// A cluster left in its middle, rest-pause to failure without a guard, drops, sides; a set left out
/// and one more.
fn parts_of_sets(lifter: &mut Player) {
    lifter.begin();
    lifter.record(HowEnded::AsCalled);
    lifter.dispatch(Intent::SkipSet);
    lifter.dispatch(Intent::AddSet { entry: 0 });
    rest_of_exercise(lifter);
    lifter.dispatch(Intent::GuardedBy { entry: 1, guard: GuardChoice::Neither });
    lifter.dispatch(intents::done(Some(9), Some(2), HowEnded::AsCalled));
    lifter.dispatch(Intent::GuardedBy { entry: 1, guard: GuardChoice::Spotter });
    rest_of_exercise(lifter);
    lifter.dispatch(Intent::SkipSet);
    rest_of_exercise(lifter);
    rest_of_exercise(lifter);
    lifter.finish();
}

/// Exercises swapped, put off, taken up, added and left out; loads changed, plates that the bar holds,
/// taps of a partner, a pause, and taps taken back and brought back.
fn turned_about(lifter: &mut Player) {
    lifter.begin();
    lifter.dispatch(Intent::Postpone { entry: 0 });
    let add = |exercise: &str| Intent::AddExercise { exercise: exercise.into() };
    lifter.dispatch(add("bench-press"));
    lifter.dispatch(add("plank"));
    lifter.dispatch(add(OWN_EXERCISE));
    lifter.dispatch(Intent::TakeUp { entry: 0 });
    let load = |load: &str, only_next| Intent::ChangeLoad {
        entry: 0,
        load: load.into(),
        only_next,
        sure: true,
    };
    lifter.dispatch(load("42.5 kg", true));
    lifter.dispatch(Intent::BarHolds { side: vec!["10 kg".into()] });
    let tapped = part(lifter);
    for _ in 0..6 {
        lifter.dispatch(Intent::TapRep { part: tapped.clone() });
        lifter.wait(3);
    }
    lifter.record(HowEnded::AsCalled);
    lifter.dispatch(Intent::Pause);
    lifter.wait(300);
    lifter.dispatch(Intent::Resume);
    lifter.dispatch(Intent::Undo);
    lifter.dispatch(Intent::Undo);
    lifter.dispatch(Intent::Redo);
    lifter.dispatch(Intent::Redo);
    rest_of_exercise(lifter);
    let why = SwapReason::Taken;
    lifter.dispatch(Intent::Swap { entry: 1, exercise: "low-row".into(), why });
    lifter.dispatch(intents::write("load:5", "45 kg"));
    rest_of_exercise(lifter);
    lifter.dispatch(Intent::SkipExercise { entry: 2 });
    rest_of_exercise(lifter);
    lifter.dispatch(intents::write("load:4", "30 kg"));
    rest_of_exercise(lifter);
    lifter.finish();
}

/// What is seldom called: neighbours back to back, a series by the clock, a total, an open set, a place
/// on a stack, a band, chains.
fn seldom_called(lifter: &mut Player) {
    lifter.train(None);
}

/// The first miss of the press in the heavy session; the squat hurts, and it is the joint; what comes of
/// it for the press is held back and let go.
fn missed_and_hurt(lifter: &mut Player) {
    lifter.begin();
    miss_the_press(lifter);
    lifter.ramp();
    lifter.dispatch(intents::done(Some(3), None, HowEnded::Pain));
    let exercise = || "back-squat".to_owned();
    lifter.dispatch(Intent::PainOfJoint { exercise: exercise(), of_joint: true });
    lifter.dispatch(Intent::SkipExercise { entry: 1 });
    lifter.finish();
    for _ in 0..2 {
        let action = tally_key(lifter, |intent| matches!(intent, Intent::HoldBack { .. }));
        lifter.act(&action).unwrap_or_else(|error| panic!("{error:?}"));
    }
}

fn miss_the_press(lifter: &mut Player) {
    for amount in [4, 3] {
        lifter.dispatch(intents::done(Some(amount), None, HowEnded::Failed));
    }
}

/// The first key of the tally's changes that does such a thing.
fn tally_key(lifter: &Player, which: impl Fn(&Intent) -> bool) -> Action {
    let tally = lifter.see_tally();
    let keys = tally.changes.iter().flat_map(|row| &row.keys).map(|key| &key.action);
    let mut found =
        keys.filter(|action| matches!(action, Action::Do { intent, .. } if which(intent)));
    found.next().unwrap_or_else(|| panic!("no such key in {:#?}", tally.changes)).clone()
}

/// Sessions to come are arranged in every way that there is, and set right again where the story needs
/// them.
fn arranged(lifter: &mut Player) {
    let mut arrange = |session: &str, how: Arrange| {
        lifter.dispatch(Intent::Arrange { session: session.into(), how });
    };
    let change = |change: SessionChange| Arrange::Change { change };
    let exercise = |slug: &str| slug.to_owned();
    arrange("2.4", Arrange::LeaveOut { left_out: true });
    arrange("4.1", Arrange::LeaveOut { left_out: true });
    arrange("4.1", Arrange::LeaveOut { left_out: false });
    arrange("4.2", Arrange::Move { day: Some(MONDAY + 24) });
    arrange("4.3", Arrange::Join { with: Some("4.2".into()) });
    arrange("4.3", Arrange::Join { with: None });
    arrange("1.3", Arrange::Again { again: true });
    arrange("1.3", Arrange::Again { again: false });
    arrange("5.1", Arrange::Travel { weeks: 1 });
    let instead =
        SessionChange::Instead { of: exercise("barbell-row"), exercise: exercise(OWN_EXERCISE) };
    arrange("5.3", change(instead));
    arrange("5.3", change(SessionChange::Add { exercise: exercise("plank") }));
    arrange("5.3", change(SessionChange::Earlier { exercise: exercise("plank") }));
    arrange("5.3", change(SessionChange::Leave { exercise: exercise("overhead-press") }));
}

/// A session that was done on paper the day before, all as called, and put right; and one of the
/// week before, which was a day earlier.
fn on_paper_and_dated(lifter: &mut Player) {
    let day = lifter.day() - 1;
    lifter.dispatch(Intent::EnterPaper { session: None, day });
    lifter.dispatch(Intent::AllAsCalled { entry: None });
    lifter.finish();
    lifter.dispatch(Intent::DateSession { session: None, day: day + 1 });
    on(lifter, 11);
    lifter.train(None);
    // The light one of the first week, by its row in the weeks.
    lifter.weeks();
    lifter.tap_row("Light", "date");
    lifter.tap_row("Thu 26 Nov 2026", "day");
}

/// The second miss of the press in the same session: it gets a load of its own. The squat is done
/// without pain.
fn missed_again_and_parted(lifter: &mut Player) {
    lifter.begin();
    miss_the_press(lifter);
    let free = Intent::AnswerPain { exercise: "back-squat".into(), free: true };
    lifter.ramp();
    rest_of_exercise(lifter);
    lifter.dispatch(free);
    lifter.finish();
    let action = tally_key(lifter, |intent| matches!(intent, Intent::Accept { .. }));
    lifter.act(&action).unwrap_or_else(|error| panic!("{error:?}"));
}

/// Body mass again, an illness that is over, and the lifter's age, which a coach may be there for.
fn body_and_care(lifter: &mut Player) {
    lifter.type_in("body-mass", "81.9 kg");
    lifter.dispatch(Intent::WasIll);
    lifter.dispatch(Intent::Minor { under_18: true, coached: true });
    lifter.dispatch(Intent::Minor { under_18: false, coached: false });
}

/// The plan is mended, another one taken up, and the lifter goes back.
fn plans_to_and_fro(lifter: &mut Player) {
    lifter.dispatch(Intent::adopt(base("Big breath")));
    let other = Plan::new("A week off", 1).session("Easy").exercise("Plank", "seconds = 30");
    lifter.dispatch(Intent::adopt(other.text()));
    lifter.weeks();
    let goes_back =
        |action: &Action| matches!(action, Action::Do { intent: Intent::TakeUpPlan { .. }, .. });
    let key = lifter.keys().into_iter().find(|key| goes_back(&key.action));
    lifter
        .press(&key.unwrap_or_else(|| panic!("no plan to go back to: {:#?}", lifter.shown.screen)));
    let session = "3.2".into();
    lifter.dispatch(Intent::Arrange { session, how: Arrange::Enter });
}

/// The coach reads what was sent and answers with changes, which the lifter takes.
fn sent_by_the_coach(lifter: &mut Player) {
    let mut sent = Vec::new();
    let since = Export { since: Some(MONDAY), body_mass: false, notes: false };
    lifter.engine.export_records(since, &mut sent).unwrap_or_else(|error| panic!("{error:?}"));
    let desk = Engine::read_records(sent.as_slice(), "en-GB");
    let desk = desk.unwrap_or_else(|error| panic!("{error:?}"));
    let changes = [Change::Said("max back squat -5 %".into())];
    let text = desk.changes_file("anna", &changes, lifter.now.clone());
    let edit = Edit::Put { text: text.unwrap_or_else(|error| panic!("{error:?}")) };
    let (of, place) = (FormOf::Changes, String::new());
    lifter.dispatch(Intent::Edit { of, place, edit, step: None });
}

/// The lifter has a second phone for some days: what was done there comes into the history, goes again,
/// and comes for good.
fn from_another_phone(lifter: &mut Player) {
    let other = Engine::in_memory("en-GB".into()).unwrap_or_else(|error| panic!("{error:?}"));
    let taken = other.import_records(exported(lifter).as_slice(), false);
    taken.unwrap_or_else(|error| panic!("{error:?}"));
    let mut other = Player::on(other, lifter.now.clone()).taking(20);
    other.now.wall_ms += 2 * DAY_MS;
    (other.now.boot_ms, other.now.boot_id) = (Some(9_000_000), Some("another".into()));
    other.train(None);
    on(lifter, 20);
    let file = exported(&other);
    for withdraws in [true, false] {
        lifter.wait(60);
        let joined = lifter.engine.join_records(file.as_slice(), lifter.now.clone(), false);
        assert_eq!(joined.unwrap_or_else(|error| panic!("{error:?}")).new, 1);
        if withdraws {
            lifter.wait(60);
            let gone = lifter.engine.withdraw_sessions(lifter.now.clone());
            assert_eq!(gone.unwrap_or_else(|error| panic!("{error:?}")), 1);
        }
    }
}

/// After an absence the rest is pushed back, as the weeks offer it.
fn laid_anew(lifter: &mut Player) {
    lifter.weeks();
    lifter.tap("anew-push-back");
    lifter.tap("lay-so");
}

/// A session that was forgotten is ended by the next one's beginning, which is left in its first rest.
fn left_running(lifter: &mut Player) {
    lifter.begin();
    lifter.record(HowEnded::AsCalled);
    on(lifter, 30);
    lifter.begin();
    lifter.record(HowEnded::AsCalled);
}
