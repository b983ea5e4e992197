//! What a plan can get wrong, and what a week makes of what repeats.

use barwright_domain::call::{EffortTarget, Flow, HowMany, LoadCall, MaxOf, Structure, WeekKind};
use barwright_domain::catalogue::Catalogue;
use barwright_domain::plan::{Plan, WeekSession};
use barwright_domain::quantity::{Percent, Problem as Unread, Range, Reserve, Seconds};
use barwright_domain::text::{Expected, Found, Problem, Syntax};

fn whole(exercise: &str) -> String {
    format!("name = \"A\"\nweeks = 4\n[[session]]\nname = \"B\"\n[[session.exercise]]\n{exercise}")
}

/// What is underlined and why, of an exercise in a plan of four weeks.
fn faults(exercise: &str) -> Vec<(String, Problem)> {
    let text = whole(exercise);
    let faults = Plan::read(&text, &Catalogue::builtin()).err().unwrap_or_default();
    faults
        .into_iter()
        .map(|fault| (text.get(fault.span).unwrap_or_default().to_string(), fault.problem))
        .collect()
}

fn session(exercise: &str, week: usize, weeks: &str) -> WeekSession {
    let text = format!("{weeks}\n{}", whole(exercise).replacen("weeks = 4\n", "", 1));
    let file = Plan::read(&text, &Catalogue::builtin()).expect("the plan is in order");
    file.plan.session(week, 0).expect("the week has a session")
}

#[test]
fn each_fault_underlines_what_is_wrong() {
    let quantity = |found: &Problem| match found {
        Problem::Quantity(unreadable) => Some(unreadable.problem.clone()),
        _ => None,
    };
    for (line, underlined, problem) in [
        ("load = \"body + 10\"", "", Unread::MissingUnit),
        ("load = \"body - 10 stone\"", "stone", Unread::UnknownUnit),
        ("load = \"82-76 %\"", "76 %", Unread::Backwards),
        ("load = \"76.25 % of working max\"", "76.25 % of working max", Unread::NotAHalf),
        ("load = \"60 kilo with light chains\"", "kilo with light chains", Unread::UnknownUnit),
        ("left = 2.25", "2.25", Unread::NotAHalf),
        ("rpe = \"8-11\"", "11", Unread::TooLarge { greatest: "10".into() }),
        ("tempo = \"3-0-1\"", "", Unread::FourPhases),
        ("rest = \"90\"", "", Unread::MissingUnit),
    ] {
        let text = format!("name = \"Back squat\"\nreps = 5\n{line}");
        let found = faults(&text);
        let [(place, found)] = found.as_slice() else { panic!("{line}: {found:?}") };
        assert_eq!(quantity(found), Some(problem), "{line}");
        assert!(place.starts_with(underlined), "{line}: {place}");
    }
    for (line, underlined, problem) in [
        ("load = \"heavy\"", "heavy", Problem::Unread { expected: Expected::Load }),
        (
            "load = \"70-80 % of top set\"",
            "70-80 % of top set",
            Problem::Unread { expected: Expected::Load },
        ),
        ("load.by_week = [\"70 %\", \"75 %\", \"80 %\"]", "[\"70 %\", \"75 %\", \"80 %\"]", {
            Problem::WrongCount { expected: 4, found: 3 }
        }),
        (
            "sets = 4\nload = [\"70 %\", \"75 %\", \"80 %\"]",
            "load",
            Problem::WrongCount { expected: 4, found: 3 },
        ),
        ("sets = \"4\"", "4", Problem::WrongType { expected: Expected::Whole, found: Found::Text }),
        ("left = 2\nrpe = 8", "left", Problem::Clash { key: "left", with: "rpe" }),
        ("climb = {}", "climb", Problem::MissingOneOf { keys: &["left", "rpe"] }),
        ("weeks = \"2-5\"", "2-5", Problem::OutOfRange { least: 1, greatest: 4 }),
        (
            "on_sets = \"last\"",
            "on_sets",
            Problem::MissingOneOf {
                keys: &["cluster", "rest_pause", "drop", "ranges", "continued"],
            },
        ),
        ("cues = [\"a\", \"b\", \"c\", \"d\"]", "[\"a\", \"b\", \"c\", \"d\"]", {
            Problem::TooMany { most: 3 }
        }),
        (
            "cluster = { blocks = [2, 2], pause = \"20 s\" }",
            "reps",
            Problem::Clash { key: "reps", with: "cluster" },
        ),
        ("load = 77.5 %", "%", Problem::Syntax(Syntax::Unexpected('%'))),
    ] {
        let found = faults(&format!("name = \"Back squat\"\nreps = 5\n{line}"));
        let [(place, found)] = found.as_slice() else { panic!("{line}: {found:?}") };
        assert_eq!(found, &problem, "{line}");
        assert!(place.starts_with(underlined), "{line}: {place}");
    }
    let found = faults("name = \"Back squat\"\nsets = 3");
    assert_eq!(found[0].1, Problem::MissingOneOf { keys: &["reps", "seconds", "metres"] });
}

#[test]
fn a_lighter_week_takes_off_what_is_not_written_for_it() {
    let exercise = "name = \"Back squat\"\nsets = 5\nreps = 5\nload = \"80 %\"\nleft = \"1-2\"";
    let weeks = "weeks = 4\nweek = [{ number = 4, kind = \"deload\" }]";
    let sets = |week: usize, exercise: &str| {
        let session = session(exercise, week, weeks);
        let block = session.exercises[0].blocks[0].clone();
        assert_eq!(block.flow, Flow::Listed);
        (session.kind, block.sets)
    };
    let own = |hundredths| LoadCall::Percent {
        share: Range::just(Percent::from_hundredths(hundredths)),
        of: MaxOf::Own,
    };
    let left = |from: u8, to: u8| {
        let halves = |reps: u8| Reserve::from_halves(reps * 2).expect("20 at most");
        Some(EffortTarget::left(halves(from), halves(to)))
    };
    let (kind, ordinary) = sets(2, exercise);
    assert_eq!((kind, ordinary.len()), (WeekKind::Ordinary, 5));
    assert_eq!((&ordinary[0].load, ordinary[0].effort), (&own(8_000), left(1, 2)));
    // 40 % of 5 sets off leaves 3; 10 % of 80 % off leaves 72 %; two more left.
    let (kind, lighter) = sets(3, exercise);
    assert_eq!((kind, lighter.len()), (WeekKind::Deload, 3));
    assert_eq!((&lighter[0].load, lighter[0].effort), (&own(7_200), left(3, 4)));
    // What is written for the week stands.
    let by_week = exercise.replace("load = \"80 %\"", "load.by_week = [\"80 %\", \"65 %\"]");
    let (_, written) = sets(3, &by_week);
    assert_eq!((written.len(), &written[0].load), (3, &own(6_500)));
}

#[test]
fn rests_come_from_the_nearest_that_says_them() {
    let exercise = "name = \"Deadlift\"\nload = \"85 %\"\nrest = { between_sides = \"10 s\" }\n\
                    [[session.exercise.set]]\nsets = 2\ncluster = { blocks = [2, 2, 1] }\n\
                    [[session.exercise.set]]\nreps = 5\nrest = \"60 s\"";
    let session =
        session(exercise, 0, "weeks = 4\nrest = { after_set = \"2:00\", in_set = \"25 s\" }");
    let [cluster, straight] = session.exercises[0].blocks.as_slice() else {
        panic!("two rows: {session:?}")
    };
    let cluster = &cluster.sets[0];
    let pause = Seconds::new(25);
    assert_eq!(cluster.structure, Structure::Cluster { blocks: vec![2, 2, 1], pause });
    assert_eq!(cluster.how_many, HowMany::Reps(Range::just(5)));
    assert_eq!(cluster.rest.after_set, Some(Seconds::new(120)));
    assert_eq!(cluster.rest.between_sides, Some(Seconds::new(10)));
    assert_eq!(straight.sets[0].rest.after_set, Some(Seconds::new(60)));
}
