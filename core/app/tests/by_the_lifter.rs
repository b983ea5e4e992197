//! What a person says stands above the evidence before it; what pain asks; what is mended of a plan;
//! what becomes of a session that nobody ended.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use std::path::Path;

use barwright_app::contract::{
    Action, GuardChoice, HowEnded, Intent, Look, Row, Screen, SeriesKind, SwapReason, TodayScreen,
};
use barwright_player::clock::wednesday;
use barwright_player::{Plan, Player, intents, screens};

fn plan(load: &str, cue: &str) -> String {
    let lines = |load: &str| {
        format!(
            "sets = 2\nreps = 5\nload = \"{load}\"\nramp = \"none\"\n\
             next = {{ rule = \"add when made\", step = \"2.5 kg\" }}\ncues = [\"{cue}\"]"
        )
    };
    let plan = Plan::new("Off-season", 8).session("One");
    plan.exercise("Overhead press", &lines(load)).exercise("Back squat", &lines("80 kg")).text()
}

fn set_up() -> Player {
    Player::at(wednesday()).taking(60).takes_up(&plan("40 kg", "Ribs down"))
}

/// A session with both sets of the press as called, the squat after it as well; then a week.
fn session(lifter: &mut Player) {
    lifter.train(None);
    lifter.days(7);
}

/// The press and the squat as the sheet has them.
fn called(lifter: &Player) -> [String; 2] {
    let today = lifter.see_today();
    ["sets-0-0", "sets-1-0"].map(|id| {
        let row = today.rows.iter().find(|row| row.id == id).unwrap();
        row.text.split(" · ").nth(1).unwrap().to_owned()
    })
}

fn changes(lifter: &Player) -> Vec<Row> {
    lifter.see_tally().changes
}

/// 40, made, 42.5; the lifter writes 50, on the evening of a session too, and the rule goes on from
/// there: 52.5.
#[test]
fn a_working_load_by_hand_stands_above_what_was_done_before() {
    let mut lifter = set_up();
    session(&mut lifter);
    assert_eq!(called(&lifter), ["42.5 kg", "82.5 kg"]);
    let lift = lifter.see_lift("overhead-press");
    let field = lift.fields.iter().find(|field| field.id.starts_with("working:")).unwrap();
    assert_eq!((field.label.as_str(), field.value.as_str()), ("Working load for 5 reps", "42.5"));
    assert!(matches!(lifter.dispatch(intents::write(&field.id, "50")), Screen::Lift { .. }));
    assert_eq!(called(&lifter), ["50 kg", "82.5 kg"]);
    session(&mut lifter);
    assert_eq!(called(&lifter), ["52.5 kg", "85 kg"]);
}

/// Stop, swap, lighter, go on, with the clinician's line over them; a tenth under what hurt until a
/// session without pain, and then a tenth more a session.
#[test]
fn pain_asks_in_its_order_and_stands_until_it_is_answered() {
    let mut lifter = set_up();
    lifter.begin();
    let floor = screens::floor(lifter.record(HowEnded::Pain));
    let panel = floor.panel.expect("the answers are asked for at once");
    let ids: Vec<&str> = panel.keys.iter().map(|key| key.id.as_str()).collect();
    assert_eq!(ids, ["stop", "swap", "lighter", "go-on", "joint"]);
    assert!(panel.rows[0].warns && panel.rows[0].text.contains("clinician"), "{panel:?}");
    // 10 % under 40 kg is 36.
    assert_eq!(panel.keys[2].label, "Lighter: 36 kg");
    lifter.press(&panel.keys[2]);
    assert_eq!(lifter.see_floor(None).bar.total, "36 kg");
    lifter.record(HowEnded::AsCalled);
    lifter.record(HowEnded::AsCalled);
    lifter.record(HowEnded::AsCalled);
    lifter.finish();
    let row = changes(&lifter).into_iter().find(|row| row.id == "next-overhead-press").unwrap();
    assert!(row.text.contains("36 kg") && row.detail.starts_with("Pain"), "{row:?}");
    lifter.days(7);
    // Neither weeks nor sessions take it away by themselves.
    session(&mut lifter);
    assert_eq!(called(&lifter), ["36 kg", "85 kg"]);
    // "Without pain", on the tally: a tenth more than what was done.
    lifter.begin();
    (0..4).for_each(|_| drop(lifter.record(HowEnded::AsCalled)));
    lifter.finish();
    let asks = changes(&lifter).into_iter().find(|row| row.id == "pain-overhead-press").unwrap();
    lifter.press(&asks.keys[0]);
    // 36 and a tenth of it, 39.6.
    assert_eq!(called(&lifter)[0], "39.5 kg");
}

/// A failed set: the next is offered 5 % lighter, by one press: 38, rounded to 37.5.
#[test]
fn after_a_failed_set_the_next_is_lighter_by_one_press() {
    let mut lifter = set_up();
    lifter.begin();
    let floor = screens::floor(lifter.record(HowEnded::Failed));
    let key = floor.thumb.beside.iter().find(|key| key.id == "lighter").unwrap().clone();
    assert_eq!(key.label, "Lighter: 37.5 kg");
    lifter.press(&key);
    assert_eq!(lifter.see_floor(None).bar.total, "37.5 kg");
}

/// The same plan with another cue is that plan: week and loads stay. With another number in one row,
/// that row starts anew, and the others stay; the plan's screen says so before.
#[test]
fn a_plan_mended_is_the_same_plan() {
    let mut lifter = set_up();
    session(&mut lifter);
    session(&mut lifter);
    let before = (lifter.see_today().subtitle, called(&lifter));
    assert_eq!(before.1, ["45 kg", "85 kg"]);
    lifter.dispatch(Intent::adopt(plan("40 kg", "Elbows in front")));
    assert_eq!((lifter.see_today().subtitle, called(&lifter)), before);

    let text = plan("30 kg", "Elbows in front");
    let look = Look::Plan { text: Some(text.clone()), week: None };
    let plan = screens::plan(lifter.see(look));
    let ids: Vec<&str> = plan.rows.iter().map(|row| row.id.as_str()).take(2).collect();
    assert_eq!(ids, ["mends", "anew-0"], "{:?}", plan.rows);
    assert!(plan.rows[1].text.contains("Overhead press"), "{:?}", plan.rows);
    let adopt = plan.keys.iter().find(|key| key.id == "adopt").unwrap();
    lifter.press(adopt);
    assert_eq!(lifter.see_today().subtitle, before.0);
    assert_eq!(called(&lifter), ["30 kg", "85 kg"]);
}

/// The next day asks for the next session, says that the last was never ended, and shows what it comes
/// to; beginning ends it as of its last set.
#[test]
fn a_session_that_nobody_ended_is_over_when_the_next_begins() {
    let mut lifter = set_up();
    lifter.begin();
    (0..4).for_each(|_| drop(lifter.record(HowEnded::AsCalled)));
    lifter.days(7);
    let today = lifter.see_today();
    assert!(today.cautions.iter().any(|line| line.contains("never finished")), "{today:?}");
    assert_eq!(called(&lifter), ["42.5 kg", "82.5 kg"]);
    let begin = today.keys.iter().find(|key| key.id == "begin").unwrap();
    lifter.press(begin);
    assert_eq!(lifter.see_floor(None).bar.total, "42.5 kg");
    lifter.finish();
    // It said what it had to say once.
    assert_eq!(called(&lifter), ["42.5 kg", "82.5 kg"]);
}

/// More on the body is typed as added or in all, and shown as both.
#[test]
fn a_load_on_the_body_is_typed_as_added_or_in_all() {
    let mut lifter = set_up();
    let belt = Plan::new("Belt", 2).session("One");
    let belt = belt.exercise("Pull-up", "sets = 2\nreps = 5\nload = \"body + 10 kg\"").text();
    lifter.type_in("body-mass", "80 kg");
    lifter.dispatch(Intent::adopt(belt));
    let ramp = lifter.see_today().rows.into_iter().find(|row| row.id == "ramp-0").unwrap();
    assert_eq!(ramp.text, "ramp bodyweight × 5");
    lifter.begin();
    lifter.record(HowEnded::AsCalled);
    let bar = lifter.see_floor(None).bar;
    assert_eq!((bar.total.as_str(), bar.bar.as_str()), ("+10 kg", "90 kg with bodyweight"));
    let fields = lifter.see_floor(Some("load")).panel.unwrap().fields;
    let field = fields.iter().find(|field| field.id.starts_with("all:")).unwrap();
    assert_eq!(field.value, "90");
    lifter.dispatch(Intent::Write { field: field.id.clone(), text: "95".into(), sure: true });
    assert_eq!(lifter.see_floor(None).bar.total, "+15 kg");
}

/// A plan that was kept has its loads when it is taken up again, whatever was read when the file was
/// opened; and what is read on opening is what the log comes to.
#[test]
fn a_plan_taken_up_again_has_its_loads() {
    take_up_again(|_| ());
}

/// As well where one was spoiled meanwhile, of the plan that is on or of the one that was kept: it is
/// made anew from the log.
#[test]
fn a_plan_taken_up_again_has_its_loads_though_one_was_spoiled() {
    for which in ["max(key)", "min(key)"] {
        take_up_again(|path| {
            let file = rusqlite::Connection::open(path).unwrap();
            let spoil = format!(
                "UPDATE standing SET body = body || ' ' WHERE key =
                 (SELECT {which} FROM standing WHERE key LIKE 'owner:track:%')"
            );
            assert_eq!(file.execute(&spoil, []).unwrap(), 1);
        });
    }
}

fn take_up_again(meanwhile: impl FnOnce(&Path)) {
    let mut lifter = Player::stored(wednesday(), "en-GB").taking(60);
    lifter.dispatch(Intent::adopt(plan("40 kg", "Ribs down")));
    session(&mut lifter);
    session(&mut lifter);
    assert_eq!(called(&lifter), ["45 kg", "85 kg"]);
    lifter.dispatch(Intent::adopt(plan("30 kg", "Ribs down").replace("Off-season", "Spring")));
    session(&mut lifter);
    assert_eq!(called(&lifter), ["32.5 kg", "82.5 kg"]);
    lifter.reopened_after(meanwhile);
    let weeks = lifter.see_weeks();
    let kept = weeks
        .keys
        .iter()
        .find(|key| matches!(&key.action, Action::Do { intent: Intent::TakeUpPlan { .. }, .. }));
    lifter.press(kept.unwrap());
    assert_eq!(called(&lifter), ["45 kg", "85 kg"]);
    session(&mut lifter);
    assert_eq!(called(&lifter), ["47.5 kg", "87.5 kg"]);
    let found = lifter.engine.examine_records().unwrap();
    assert_eq!(found.mended, 0, "{found:?}");
}

/// What is stopped or swapped after a set that hurt is so for pain, and the record says it.
#[test]
fn the_record_of_pain_names_it_where_a_lift_is_stopped_or_swapped() {
    let done = |lifter: &Player, id: &str| -> String {
        lifter.see_tally().done.into_iter().find(|row| row.id == id).unwrap().detail
    };
    let mut lifter = set_up();
    lifter.begin();
    let floor = screens::floor(lifter.record(HowEnded::Pain));
    let stop = floor.panel.unwrap().keys.remove(0);
    lifter.press(&stop);
    assert_eq!(done(&lifter, "entry-0"), "1 set not done · stopped: pain");
    // Taken back, and another exercise instead, whatever reason the key had.
    lifter.dispatch(Intent::Undo);
    lifter.dispatch(Intent::Swap {
        entry: 0,
        exercise: "dumbbell-shoulder-press".into(),
        why: SwapReason::Taken,
    });
    assert_eq!(
        done(&lifter, "entry-0"),
        "1 set not done · swapped for Dumbbell shoulder press: pain"
    );
    // Skipped without pain is no more than skipped.
    lifter.dispatch(Intent::SkipExercise { entry: 1 });
    assert_eq!(done(&lifter, "entry-1"), "not done");
}

/// The general cautions stand on a sheet after a lay-off, and can be opened on any day.
#[test]
fn cautions_come_back_after_a_lay_off_and_can_always_be_opened() {
    let mut lifter = set_up();
    let general =
        |today: &TodayScreen| today.cautions.iter().any(|line| line.contains("clinician"));
    assert!(general(&lifter.see_today()));
    session(&mut lifter);
    assert!(!general(&lifter.see_today()), "{:?}", lifter.see_today().cautions);
    lifter.days(28);
    assert!(general(&lifter.see_today()));
    let care = lifter.see_care();
    for said in ["clinician", "chest pain", "Dark urine", "dizzy", "stop, swap the exercise"] {
        assert!(care.rows.iter().any(|row| row.text.contains(said)), "{said}: {care:?}");
        assert!(care.aloud.contains(said), "{said}");
    }
}

/// What guards is asked of a bar over the body and not of dumbbells; collars are said of the bench.
#[test]
fn advice_on_what_guards_fits_the_lift() {
    let said = |name: &str| -> (Vec<String>, Vec<String>) {
        let lines = "sets = 1\nreps = 5\nload = \"40 kg\"\nleft = 0\nramp = \"none\"";
        let text = Plan::new("Base", 1).session("One").exercise(name, lines).text();
        let mut lifter = set_up();
        lifter.dispatch(Intent::adopt(text));
        lifter.begin();
        let asked = lifter.see_floor(None).call.cautions;
        lifter.dispatch(Intent::GuardedBy { entry: 0, guard: GuardChoice::Neither });
        (asked, lifter.see_floor(None).call.cautions)
    };
    for (name, collars) in [("Back squat", false), ("Bench press", true)] {
        let (asked, neither) = said(name);
        assert!(asked[0].contains("pins or a spotter"), "{name}: {asked:?}");
        assert!(neither[0].contains("keep two in reserve"), "{name}: {neither:?}");
        assert_eq!(neither[0].contains("collars"), collars, "{name}: {neither:?}");
    }
    for name in ["Dumbbell bench press", "Deadlift"] {
        assert_eq!(said(name), (Vec::new(), Vec::new()), "{name}");
    }
}

/// A device that restarted in a pocket wakes the core more than once: what happened stays said until
/// the lifter taps on a screen that says it.
#[test]
fn a_notice_stays_until_the_lifter_has_seen_it() {
    let mut lifter = set_up();
    let boot = |lifter: &mut Player, id: &str| {
        (lifter.now.boot_id, lifter.now.boot_ms) = (Some(id.to_owned()), Some(9_000));
    };
    boot(&mut lifter, "in the morning");
    lifter.begin();
    lifter.record(HowEnded::AsCalled);
    boot(&mut lifter, "after charging");
    lifter.dispatch(Intent::Wake);
    lifter.dispatch(Intent::Wake);
    let said = lifter.see_floor(None).notices;
    assert!(said.iter().any(|line| line.contains("restarted")), "{said:?}");
    // Looking takes nothing away, a tap does.
    assert_eq!(lifter.see_floor(None).notices, said);
    lifter.dispatch(Intent::RestBy { seconds: 20 });
    assert_eq!(lifter.see_floor(None).notices, [""; 0]);
}

/// A cable that halves has one number, at the handle; the pin's stands with the cable and under why.
#[test]
fn a_cable_has_one_number_and_its_pin_is_explained_under_why() {
    let gym = "name = \"Attic\"\nunit = \"kg\"\n[[stack]]\nname = \"Column\"\nkind = \"cable\"\nfrom = \
               \"10 kg\"\nto = \"80 kg\"\nstep = \"10 kg\"\nratio = \"1:2\"\n";
    let mut lifter = set_up().trains_in(gym);
    let lines = "sets = 1\nreps = 12\nload = \"20 kg\"\nramp = \"none\"";
    let curls = Plan::new("Base", 1).session("One").exercise("Cable curl", lines).text();
    lifter.dispatch(Intent::adopt(curls));
    assert!(lifter.see_today().rows.iter().any(|row| row.text.contains("20 kg")));
    lifter.begin();
    let floor = lifter.see_floor(None);
    assert_eq!((floor.bar.total.as_str(), floor.bar.counts.as_str()), ("20 kg", "at the handle"));
    assert_eq!(floor.bar.line, "Column: pin 40 kg");
    assert_eq!(
        floor.call.why.last().unwrap(),
        "Pin 40 kg is 20 kg at the handle: of 2 on the stack this cable gives 1."
    );
    lifter.record(HowEnded::AsCalled);
    let tally = lifter.see_tally();
    assert!(tally.done.iter().any(|row| row.text == "Set 1 of 1: 20 kg × 12"), "{:?}", tally.done);
}

/// A single that failed is a cross in the lift's picture, its own words in the list, and nobody's
/// heaviest; a drop is shown with the load of each part.
#[test]
fn the_picture_of_a_lift_charts_what_was_made() {
    let mut lifter = set_up();
    let squat = "sets = 2\nreps = 1\nload = \"140 kg\"\nramp = \"none\"";
    let press = "sets = 1\nreps = 8\nload = \"40 kg\"\nramp = \"none\"\ndrop = [\"25 %\"]";
    let plan = Plan::new("Base", 4).session("One").exercise("Back squat", squat);
    lifter.dispatch(Intent::adopt(plan.exercise("Overhead press", press).text()));
    for ended in [HowEnded::AsCalled, HowEnded::Failed] {
        lifter.begin();
        lifter.record(HowEnded::AsCalled);
        lifter.dispatch(Intent::ChangeLoad {
            entry: 0,
            load: "150".into(),
            only_next: false,
            sure: true,
        });
        let made = u32::from(ended == HowEnded::AsCalled);
        lifter.dispatch(intents::done(Some(made), None, ended));
        lifter.record(HowEnded::AsCalled);
        lifter.record(HowEnded::AsCalled);
        lifter.finish();
        lifter.days(7);
    }
    let squat = lifter.see_lift("back-squat");
    assert!(squat.sessions[0].text.ends_with("140 kg: 1 · 150 kg: failed"), "{:?}", squat.sessions);
    let chart = squat.chart.unwrap();
    let of = |kind: SeriesKind| -> Vec<i64> {
        let series = chart.series.iter().find(|series| series.kind == kind).unwrap();
        series.points.iter().map(|point| point.low).collect()
    };
    assert_eq!(of(SeriesKind::Marks), [150_000, 140_000]);
    assert_eq!(of(SeriesKind::Failed), [150_000]);
    let press = lifter.see_lift("overhead-press");
    assert!(press.sessions[0].text.ends_with("40 kg × 8, 30 kg × 8"), "{:?}", press.sessions);
}
