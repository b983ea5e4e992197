//! Generated seasons through the engine, as a shell sees them: good and bad days, pain, absence, taps
//! taken back, and a plan that is read again with another cue in mid-block.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use barwright_app::contract::{HowEnded, Intent, Look, Row};
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
}
