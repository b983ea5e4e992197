//! Generated seasons through the engine, as a shell sees them: good and bad days, pain, absence, taps
//! taken back, and a plan that is read again with another cue in mid-block.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use barwright_app::contract::{EngineError, HowEnded, Intent, Look, Reading, Row};
use barwright_app::{Engine, Export};
use barwright_player::clock::wall;
use barwright_player::{Plan, Player, intents, screens};
use proptest::prelude::*;

/// The same lift in three sessions a week: one track, however it is spread.
fn plan(cue: &str) -> String {
    let lines = format!(
        "sets = 3\nreps = 5\nleft = \"1-3\"\nload = \"60 kg\"\nramp = \"none\"\n\
         next = {{ rule = \"add when made\", step = \"2.5 kg\" }}\ncues = [\"{cue}\"]"
    );
    let mut plan = Plan::new("Off-season", 20);
    for day in ["Monday", "Wednesday", "Friday"] {
        plan = plan.session(day).with(&format!("day = \"{day}\"")).exercise("Back squat", &lines);
    }
    plan.text()
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Day {
    Made,
    Missed,
    Hurt,
    Interrupted,
    Away(u8),
    /// The plan is read again with another cue.
    Read(u8),
    /// The end of the last session is taken back, and brought back.
    TakenBack,
}

fn day() -> impl Strategy<Value = Day> {
    prop_oneof![
        6 => Just(Day::Made),
        2 => Just(Day::Missed),
        1 => Just(Day::Hurt),
        1 => Just(Day::Interrupted),
        1 => (0_u8..45).prop_map(Day::Away),
        1 => (0_u8..9).prop_map(Day::Read),
        1 => Just(Day::TakenBack),
    ]
}

fn set_up() -> Player {
    Player::at(wall(1_795_424_400_000, 60)).taking(60).takes_up(&plan("Chest up"))
}

/// The rows of each session of the week that is on, as they would be today.
fn sheets(lifter: &Player) -> Vec<Vec<(String, Vec<String>)>> {
    let week = lifter.see_weeks().subtitle.split_whitespace().nth(1).unwrap_or("1").to_owned();
    let sheet = |session: u8| {
        let session = Some(format!("{week}.{session}"));
        let today = screens::today(lifter.see(Look::Today { session, minutes: None }));
        today.rows.into_iter().map(|row| (row.text, row.why)).collect()
    };
    [1, 2, 3].map(sheet).to_vec()
}

fn today(lifter: &Player) -> Row {
    lifter.see_today().rows.into_iter().find(|row| row.id == "sets-0-0").unwrap()
}

/// The session that is on: three sets, as the day is.
fn session(lifter: &mut Player, day: Day) {
    lifter.dispatch(Intent::Begin { session: None, minutes: None, sure: true });
    // A cut may have left sets out.
    for set in 0.. {
        if lifter.to_do().is_none() {
            break;
        }
        let (amount, ended) = match (day, set) {
            (Day::Missed, 1) => (Some(3), HowEnded::Failed),
            (Day::Hurt, 1) => (Some(2), HowEnded::Pain),
            (Day::Interrupted, 1) => (Some(2), HowEnded::Interrupted),
            _ => (None, HowEnded::AsCalled),
        };
        let left = (ended == HowEnded::AsCalled).then_some(4);
        lifter.dispatch(intents::done(amount, left, ended));
    }
    lifter.finish();
}

/// A season, whatever its days say of it.
fn played(days: &[Day]) -> Player {
    let mut lifter = set_up();
    for (nth, day) in days.iter().enumerate() {
        match *day {
            Day::Away(days) => lifter.days(days.into()),
            Day::Read(cue) => {
                lifter.dispatch(Intent::adopt(plan(&format!("Cue {cue}"))));
            }
            Day::TakenBack => {
                let grams = 80_000 + 100 * nth;
                let text = format!("{}.{:03} kg", grams / 1000, grams % 1000);
                lifter.dispatch(Intent::Write { field: "body-mass".into(), text, sure: true });
            }
            day => {
                session(&mut lifter, day);
                lifter.days(2);
            }
        }
    }
    lifter
}

/// What is seen of records at a moment.
fn seen_of(engine: &Engine, now: &Reading) -> Vec<String> {
    let looks = [
        Look::Today { session: None, minutes: None },
        Look::Tally,
        Look::Weeks,
        Look::Balance { weeks: Some(8) },
        Look::Lift { exercise: "back-squat".into(), page: 0, all: true },
        Look::Equipment,
        Look::Care,
    ];
    looks.map(|look| format!("{:?}", engine.view(look, now.clone()).map(|seen| seen.screen))).into()
}

fn exported(engine: &Engine, what: Export) -> Vec<u8> {
    let mut file = Vec::new();
    engine.export_records(what, &mut file).unwrap();
    file
}

/// What a reason's first line says: the owner's load, what is left of it, and whether a cut holds.
fn said(row: &Row) -> (f64, bool) {
    let first = &row.why[0];
    let own = first
        .trim_start_matches("The plan says ")
        .trim_start_matches("Working load ")
        .split(" kg")
        .next()
        .unwrap()
        .parse()
        .unwrap();
    // More than an owner and what is made: a cut is named after it.
    let made = first.split("; ").skip(1).all(|part| part.starts_with("rounded to"));
    (own, !made)
}

fn load(row: &Row) -> f64 {
    let figure = row.text.split(" · ").find(|part| part.ends_with(" kg")).unwrap();
    figure.trim_end_matches(" kg").parse().unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    /// Start + step × sessions that were made with no cut, pain or miss on them; under a cut never more
    /// than the owner's load; a plan read again changes no later call, and neither does a tap that is
    /// taken back and brought back.
    #[test]
    fn a_step_for_each_session_made(days in proptest::collection::vec(day(), 1..24)) {
        let mut lifter = set_up();
        let (mut made, mut trained) = (0.0, false);
        for day in days {
            match day {
                Day::Away(days) => lifter.days(days.into()),
                Day::Read(cue) => {
                    let before = sheets(&lifter);
                    lifter.dispatch(Intent::adopt(plan(&format!("Cue {cue}"))));
                    prop_assert_eq!(sheets(&lifter), before);
                }
                Day::TakenBack if trained => {
                    let before = sheets(&lifter);
                    lifter.dispatch(Intent::Undo);
                    lifter.dispatch(Intent::Redo);
                    prop_assert_eq!(sheets(&lifter), before);
                }
                Day::TakenBack => {}
                day => {
                    let row = today(&lifter);
                    let (own, cut) = said(&row);
                    prop_assert_eq!(own, 60.0 + 2.5 * made, "{:?}", row.why);
                    prop_assert!(load(&row) <= own + 1.25, "{row:?}");
                    // What is rounded to is what is shown.
                    if let Some((_, here)) = row.why[0].split_once("rounded to ") {
                        prop_assert!(here.starts_with(&format!("{} kg", load(&row))), "{row:?}");
                    }
                    session(&mut lifter, day);
                    made += f64::from(u8::from(day == Day::Made && !cut));
                    trained = true;
                    lifter.days(2);
                }
            }
        }
    }

    /// Out and in again: the same events, number for number, the same screens, and taps go on; as a
    /// whole file, as one that goes on from an older one, and to be looked at only.
    #[test]
    fn a_season_goes_out_and_comes_in_again(
        days in proptest::collection::vec(day(), 1..16),
        more in proptest::collection::vec(day(), 0..4),
    ) {
        let mut lifter = played(&days);
        let older = exported(&lifter.engine, Export::default());
        for day in more {
            if let Day::Made | Day::Missed | Day::Hurt | Day::Interrupted = day {
                session(&mut lifter, day);
                lifter.days(2);
            }
        }
        let file = exported(&lifter.engine, Export::default());
        let seen = seen_of(&lifter.engine, &lifter.now);

        let looked = Engine::read_records(file.as_slice(), "en-GB").unwrap();
        prop_assert_eq!(seen_of(&looked, &lifter.now), seen.clone());

        let other = Engine::in_memory("en-GB".into()).unwrap();
        let first = other.import_records(older.as_slice(), false).unwrap();
        prop_assert!(first.taken && first.same == 0);
        let look = other.import_records(file.as_slice(), true).unwrap();
        let rest = other.import_records(file.as_slice(), false).unwrap();
        prop_assert_eq!((look.same, look.new), (rest.same, rest.new));
        prop_assert_eq!(rest.same, first.new);
        prop_assert_eq!(other.import_records(file.as_slice(), false).unwrap().new, 0);
        prop_assert_eq!(exported(&other, Export::default()), file);
        prop_assert_eq!(seen_of(&other, &lifter.now), seen);
        let found = other.examine_records().unwrap();
        prop_assert_eq!(found.mended, 0);

        // Each goes on for itself from here.
        for engine in [&other, &lifter.engine] {
            let begin = Intent::Begin { session: None, minutes: None, sure: true };
            engine.dispatch(begin, lifter.now.clone()).unwrap();
        }
        let later = Reading { wall_ms: lifter.now.wall_ms + 60_000, ..lifter.now.clone() };
        prop_assert_eq!(seen_of(&other, &later), seen_of(&lifter.engine, &later));
        other.dispatch(Intent::Pause, later.clone()).unwrap();
        let last = Reading { wall_ms: later.wall_ms + 60_000, ..later };
        lifter.engine.dispatch(Intent::SkipSet, last.clone()).unwrap();
        let apart = exported(&other, Export::default());
        let before = exported(&lifter.engine, Export::default());
        let refused = lifter.engine.import_records(apart.as_slice(), false);
        prop_assert!(matches!(refused, Err(EngineError::Refused { .. })), "{refused:?}");
        prop_assert_eq!(exported(&lifter.engine, Export::default()), before);
    }

    /// A return is read as it stood: with all since the first day everything is as at home; since a
    /// later day what is next, and its loads with their reasons, are.
    #[test]
    fn a_return_shows_what_stands(
        days in proptest::collection::vec(day(), 1..16),
        ago in 0_i64..60,
    ) {
        let lifter = played(&days);
        let today = lifter.day();
        let all = Export { since: Some(0), body_mass: true, notes: true };
        let read = Engine::read_records(exported(&lifter.engine, all).as_slice(), "en-GB").unwrap();
        prop_assert_eq!(seen_of(&read, &lifter.now), seen_of(&lifter.engine, &lifter.now));

        let since = Some(today - i32::try_from(ago).unwrap());
        let part = exported(&lifter.engine, Export { since, ..Export::default() });
        let read = Engine::read_records(part.as_slice(), "en-GB").unwrap();
                let maxes = Look::Lift { exercise: "back-squat".into(), page: 0, all: false };
        prop_assert!(read.view(maxes, lifter.now.clone()).is_ok());
        prop_assert!(!String::from_utf8_lossy(&part).contains("body_mass_kept"));
        // Nothing of it is taken for all that was recorded.
        let taken = Engine::in_memory("en-GB".into()).unwrap().import_records(part.as_slice(), false);
        prop_assert!(matches!(taken, Err(EngineError::Refused { .. })), "{taken:?}");
    }
}

/// A file from a lifter of decades has high numbers and few events: it costs what is in it, not what
/// was left out.
#[test]
fn what_was_left_out_of_a_file_costs_nothing() {
    let mut lifter = played(&[Day::Made, Day::Missed]);
    lifter.type_in("max:back-squat", "150 kg");
    let all = Export { since: Some(0), body_mass: true, notes: true };
    let file = String::from_utf8(exported(&lifter.engine, all)).unwrap();
    let last = lifter.engine.count_records().unwrap();
    let late = 4_999_990;
    let moved = file.replace(&format!("\"last\":{last}"), &format!("\"last\":{late}")).replace(
        &format!("{{\"seq\":{last},\"tap\":{last},"),
        &format!("{{\"seq\":{late},\"tap\":{late},"),
    );
    assert_ne!(moved, file);
    let read = Engine::read_records(moved.as_bytes(), "en-GB").unwrap();
    assert_eq!(read.count_records().unwrap(), late);
    assert_eq!(seen_of(&read, &lifter.now), seen_of(&lifter.engine, &lifter.now));
    assert_eq!(read.examine_records().unwrap().entries, late);
    // A session by a number that no event has here is none.
    let dated = Intent::DateSession { session: Some(late / 2), day: 20_780 };
    let refused = read.dispatch(dated, lifter.now.clone());
    assert!(matches!(refused, Err(EngineError::Refused { .. })), "{refused:?}");
    read.dispatch(Intent::Begin { session: None, minutes: None, sure: true }, lifter.now).unwrap();
    assert!(read.count_records().unwrap() > late);
}

/// A clock that ran ahead and was set right dates what was said later earlier: the return is in the
/// log's order all the same, and is read.
#[test]
fn a_return_over_a_clock_set_back_is_read() {
    let mut lifter = set_up();
    lifter.days(40);
    lifter.type_in("max:back-squat", "150 kg");
    lifter.days(-40);
    lifter.dispatch(Intent::adopt(plan("Chest low")));
    session(&mut lifter, Day::Made);
    let since = Some(lifter.day() + 20);
    let part = exported(&lifter.engine, Export { since, ..Export::default() });
    let read = Engine::read_records(part.as_slice(), "en-GB").unwrap();
    // The plan, the max, and the plan as it was mended after that.
    assert_eq!(read.count_records().unwrap(), 3);
}
