//! A plan looked over: each check on the plan it is for, and on one it must leave alone.
#![allow(clippy::unwrap_used, reason = "a test that fails says where")]

use barwright_domain::catalogue::{Catalogue, Muscle};
use barwright_domain::coach::{About, Check, Finding, Level, look_over};
use barwright_domain::equipment::{Equipment, builtin_in};
use barwright_domain::plan::Plan;
use barwright_domain::quantity::{Mass, MassUnit, Percent};

const PAGE: &str = include_str!("../../../docs/plan-format.md");

fn found_in(text: &str, gym: &Equipment) -> Vec<Finding> {
    let file = Plan::read(text, &Catalogue::builtin()).unwrap_or_else(|f| panic!("{f:#?}\n{text}"));
    look_over(&file, &Catalogue::builtin(), gym)
}

fn found(text: &str) -> Vec<Finding> {
    found_in(text, &builtin_in(MassUnit::Kilogram))
}

/// A plan of so many weeks with one session on Monday.
fn plan(weeks: usize, exercises: &str) -> String {
    format!(
        "name = \"Off-season\"\nweeks = {weeks}\n[[session]]\nname = \"Monday\"\nday = \"Monday\"\n\
         {exercises}"
    )
}

/// What one check found: levels, and the text of the places.
fn of<'a>(text: &'a str, found: &[Finding], check: Check) -> Vec<(Level, &'a str)> {
    let of_check = found.iter().filter(|finding| finding.check == check);
    of_check.map(|finding| (finding.level, &text[finding.span.clone()])).collect()
}

/// One check on a plan of one session.
fn checked(weeks: usize, exercises: &str, check: Check) -> Vec<(Level, String)> {
    let text = plan(weeks, exercises);
    let found = found(&text);
    of(&text, &found, check).into_iter().map(|(level, at)| (level, at.to_owned())).collect()
}

const SQUAT: &str = "[[session.exercise]]\nname = \"Back squat\"\nsets = 3\n";

#[test]
fn a_load_that_jumps_is_found_where_it_is_written() {
    let jump = |loads: &str, reps: &str| {
        checked(4, &format!("{SQUAT}reps{reps}\nload.by_week = {loads}\n"), Check::LoadJump)
    };
    // 60 to 70 % is a rise of 16.7 %, 60 to 75 % one of 25 %.
    let loads = "[\"55 %\", \"60 %\", \"70 %\", \"72.5 %\"]";
    assert_eq!(jump(loads, " = 5"), [(Level::LookAt, format!("load.by_week = {loads}"))]);
    let far = "[\"60 %\", \"75 %\", \"75 %\", \"75 %\"]";
    assert_eq!(jump(far, " = 5")[0].0, Level::Change);
    // 75 to 82.5 % is a tenth exactly.
    assert_eq!(jump("[\"70 %\", \"72.5 %\", \"75 %\", \"82.5 %\"]", " = 5"), []);
    // Eight repetitions go with 80 % and three with 93 %: 70 and 80 % are alike.
    let wave = "[\"70 %\", \"80 %\", \"70 %\", \"80 %\"]";
    assert_eq!(jump(wave, ".by_week = [8, 3]"), []);
    assert_eq!(jump(wave, " = 5").len(), 1);
}

#[test]
fn a_lighter_week_is_no_week_to_jump_from() {
    let text =
        plan(3, &format!("{SQUAT}reps = 5\nload.by_week = [\"75 %\", \"60 %\", \"77.5 %\"]\n"));
    let deload = format!("{text}[[week]]\nnumber = 2\nkind = \"deload\"\n");
    assert_eq!(of(&deload, &found(&deload), Check::LoadJump), []);
    assert_eq!(of(&text, &found(&text), Check::LoadJump).len(), 1);
}

#[test]
fn a_percentage_and_repetitions_that_do_not_go_together() {
    let apart = |rest: &str| checked(1, &format!("{SQUAT}{rest}\n"), Check::PercentAndReps);
    // By the table six repetitions go with 85 %.
    let at_95 = apart("reps = 6\nload = \"95 %\"");
    assert_eq!(at_95, [(Level::Change, "load = \"95 %\"".to_owned())]);
    assert_eq!(apart("reps = 6\nload = \"87.5 %\""), []);
    // 86 % of a working max of 95 % is 81.7 %; of the whole max it would be too much for eight.
    assert_eq!(apart("reps = 8\nload = \"86 % of working max\""), []);
    assert_eq!(apart("reps = 8\nload = \"86 %\"").len(), 1);
    // Five with three left are eight: 80 %. 87.5 % is far over it, 60 % far under.
    for (load, count) in [("87.5 %", 1), ("85 %", 0), ("65 %", 0), ("62.5 %", 1)] {
        let effort = apart(&format!("reps = 5\nload = \"{load}\"\nleft = 3"));
        assert_eq!(effort.len(), count, "{load}");
        assert!(effort.iter().all(|(level, _)| *level == Level::LookAt));
    }
    // A cluster's blocks are what is done in one go; a climb begins light.
    assert_eq!(apart("load = \"90 %\"\ncluster = { blocks = [2, 2, 2] }"), []);
    let climb = "[[session.exercise]]\nname = \"Back squat\"\nreps = 3\nrpe = 9\nload = \"50 %\"\n\
                 climb = { step = \"5 %\" }\n";
    assert_eq!(checked(1, climb, Check::PercentAndReps), []);
    // Machines and single joints differ far too much.
    let press =
        "[[session.exercise]]\nname = \"Leg press\"\nsets = 3\nreps = 15\nload = \"95 %\"\n";
    assert_eq!(checked(1, press, Check::PercentAndReps), []);
}

#[test]
fn sets_that_grow_too_fast_are_found_at_the_exercise() {
    let grow = |sets: &str| {
        let more = format!(
            "[[session.exercise]]\nname = \"Leg extension\"\nsets.by_week = {sets}\nreps = 12\n"
        );
        let text = plan(2, &format!("{SQUAT}reps = 8\n{more}"));
        let found = found(&text);
        let about = found.iter().find(|finding| finding.check == Check::VolumeJump).cloned();
        about.map(|finding| (finding.level, text[finding.span].to_owned(), finding.about))
    };
    let (level, at, about) = grow("[2, 7]").unwrap();
    assert_eq!((level, at.as_str()), (Level::LookAt, "sets.by_week = [2, 7]"));
    // Three sets of squats and two of the extension, then seven.
    let muscles = vec![(Muscle::Quadriceps, 10, 20)];
    assert_eq!(about, About::VolumeJump { weeks: (1, 2), muscles });
    // Eight sets more, and more than twice as many.
    assert_eq!(grow("[1, 9]").unwrap().0, Level::Change);
    assert_eq!(grow("[2, 4]"), None);
}

/// A whole-body plan with so many sets of chest and of quadriceps.
fn whole_body(chest: usize, legs: usize) -> String {
    let row = |name: &str, sets: usize| {
        format!("[[session.exercise]]\nname = \"{name}\"\nsets = {sets}\nreps = 8\n")
    };
    let press = if chest > 0 { row("Bench press", chest) } else { String::new() };
    let rest = row("Barbell row", 10) + &row("Romanian deadlift", 10) + &row("Leg extension", legs);
    plan(1, &(press + &rest))
}

#[test]
fn a_muscle_far_from_the_rest_is_named() {
    let muscles = |text: &str| -> Vec<(Check, Level, Muscle, u32)> {
        let found = found(text).into_iter();
        found
            .filter_map(|finding| match finding.about {
                About::Muscle { muscle, tenths, .. } => {
                    Some((finding.check, finding.level, muscle, tenths))
                }
                _ => None,
            })
            .collect()
    };
    assert_eq!(muscles(&whole_body(8, 10)), []);
    assert_eq!(muscles(&whole_body(3, 10)), [(Check::MuscleLow, Level::LookAt, Muscle::Chest, 30)]);
    assert_eq!(muscles(&whole_body(0, 10)), [(Check::MuscleLow, Level::Change, Muscle::Chest, 0)]);
    assert_eq!(
        muscles(&whole_body(8, 24)),
        [(Check::MuscleHigh, Level::LookAt, Muscle::Quadriceps, 240)]
    );
    // A plan for the legs leaves the rest out on purpose.
    assert_eq!(muscles(&plan(1, &format!("{SQUAT}reps = 8\n"))), []);
}

#[test]
fn a_session_is_held_against_its_minutes() {
    // Six sets of ten: five rests of five minutes, and more.
    let long = |minutes: &str| {
        let text = plan(1, &format!("{SQUAT}reps = 10\nload = \"60 kg\"\nrest = \"10:00\"\n"));
        let text = text.replace("day = \"Monday\"", &format!("minutes = {minutes}"));
        let found = found(&text);
        of(&text, &found, Check::TooLong).into_iter().map(|(l, at)| (l, at.to_owned())).next()
    };
    assert_eq!(long("20"), Some((Level::Change, "minutes = 20".to_owned())));
    assert_eq!(long("90"), None);
    // Without minutes there is nothing to hold it against.
    assert_eq!(checked(1, &format!("{SQUAT}reps = 10\nrest = \"10:00\"\n"), Check::TooLong), []);
}

/// Dumbbells two kilograms apart, and a bar whose smallest pair is 2.5 kg.
const CELLAR: &str = "name = \"Cellar\"\nalso = [\"rack\", \"bench\"]\n[[bar]]\nname = \"Bar\"\n\
    mass = \"20 kg\"\n[[plate]]\nmass = \"20 kg\"\npairs = 3\n[[plate]]\nmass = \"5 kg\"\n\
    pairs = 3\n[[plate]]\nmass = \"2.5 kg\"\npairs = 1\n\
    [[dumbbells]]\nname = \"Dumbbells\"\nfrom = \"4 kg\"\nto = \"30 kg\"\nstep = \"2 kg\"\n";

#[test]
fn steps_that_the_gym_can_not_make() {
    let gym = Equipment::read(CELLAR).unwrap();
    let kg = |count| Mass::whole(count, MassUnit::Kilogram);
    let coarse = |exercise: &str| -> Option<(Level, String, About)> {
        let text = plan(2, exercise);
        let mut all = found_in(&text, &gym).into_iter();
        let one = all.find(|finding| finding.check == Check::CoarseSteps)?;
        Some((one.level, text[one.span].to_owned(), one.about))
    };
    let raise = |reps: &str, load: &str| {
        coarse(&format!(
            "[[session.exercise]]\nname = \"Lateral raise\"\nsets = 3\nreps = \"{reps}\"\n\
             load = \"{load}\"\nnext = \"double progression\"\n"
        ))
    };
    // From 8 to 10 kg is a quarter: after twelve the estimate leaves 30·(42/30·8/10 − 1) = 3.6.
    let (_, at, about) = raise("10-12", "8 kg").unwrap();
    assert_eq!(at, "next = \"double progression\"");
    let share = Percent::whole(25);
    assert_eq!(about, About::Coarse { load: kg(8), step: kg(2), share });
    // A range wide enough carries the step: after twenty-four 30·(54/30·8/10 − 1) = 13.2.
    assert_eq!(raise("12-24", "8 kg"), None);
    assert_eq!(raise("10-12", "26 kg"), None);
    let squat = |more: &str| coarse(&format!("{SQUAT}reps = 5\n{more}\n"));
    let (_, _, about) =
        squat("load = \"60 kg\"\nnext = { rule = \"two for two\", step = \"2.5 kg\" }").unwrap();
    let asked = Mass::from_grams(2_500).unwrap();
    assert_eq!(about, About::StepUnmade { asked, step: kg(5), load: kg(60) });
    assert_eq!(squat("load = \"60 kg\"\nnext = { rule = \"two for two\", step = \"5 kg\" }"), None);
    // Two weeks that come to the same on this bar.
    let (_, at, about) = squat("load.by_week = [\"60 kg\", \"61 kg\"]").unwrap();
    assert_eq!(at, "load.by_week = [\"60 kg\", \"61 kg\"]");
    let made = kg(60);
    assert_eq!(about, About::MadeTheSame { weeks: (1, 2), loads: (kg(60), kg(61)), made });
    assert_eq!(squat("load.by_week = [\"60 kg\", \"65 kg\"]"), None);
}

#[test]
fn rare_equipment_wants_a_substitute() {
    let sled = "[[session.exercise]]\nname = \"Sled push\"\nsets = 3\nmetres = 20\n";
    let named = format!("{sled}substitutes = [\"Farmer's carry\"]\n");
    let optional = format!("{sled}optional = true\n");
    let expected = [(Level::LookAt, "name = \"Sled push\"".to_owned())];
    assert_eq!(checked(1, sled, Check::NoSubstitute), expected);
    for fine in [named.as_str(), &optional, &format!("{SQUAT}reps = 5\n")] {
        assert_eq!(checked(1, fine, Check::NoSubstitute), [], "{fine}");
    }
    // What every gym has, and this one has not.
    let text = plan(1, "[[session.exercise]]\nname = \"Lat pulldown\"\nsets = 3\nreps = 10\n")
        .replace("Lat pulldown", "Pulldown");
    let lacking = found_in(&text, &Equipment::read(CELLAR).unwrap());
    assert_eq!(of(&text, &lacking, Check::NoSubstitute), [(Level::LookAt, "name = \"Pulldown\"")]);
    assert!(matches!(&lacking[0].about, About::Rare { lacking: true, .. }), "{lacking:?}");
}

#[test]
fn heavy_on_the_same_muscles_the_next_day() {
    let two = |day: &str, second: &str| {
        let text = format!(
            "{}[[session]]\nname = \"Second\"\nday = \"{day}\"\n[[session.exercise]]\n{second}\n",
            plan(2, &format!("{SQUAT}reps = 3\nload = \"87.5 %\"\n"))
        );
        let found = found(&text);
        of(&text, &found, Check::HeavyNeighbours)
            .into_iter()
            .map(|(_, at)| at.to_owned())
            .collect::<Vec<_>>()
    };
    let front = "name = \"Front squat\"\nsets = 3\nreps = 5\nleft = 1";
    assert_eq!(two("Tuesday", front), ["name = \"Front squat\""]);
    assert!(two("Wednesday", front).is_empty());
    // Sunday is the day before the next week's Monday; the finding is at the later session.
    assert_eq!(two("Sunday", front), ["name = \"Back squat\""]);
    assert!(two("Tuesday", "name = \"Front squat\"\nsets = 3\nreps = 10\nleft = 1").is_empty());
    assert!(two("Tuesday", "name = \"Bench press\"\nsets = 3\nreps = 3\nleft = 1").is_empty());
}

#[test]
fn a_deload_that_takes_nothing_off() {
    let deload = |squat: &str, week: &str| {
        let text = format!(
            "{}[[week]]\nnumber = 2\nkind = \"deload\"\n{week}",
            plan(2, &format!("[[session.exercise]]\nname = \"Back squat\"\nreps = 5\n{squat}\n"))
        );
        let all = found(&text);
        of(&text, &all, Check::DeloadNotLighter)
            .into_iter()
            .map(|(level, at)| (level, at.to_owned()))
            .collect::<Vec<_>>()
    };
    // What is not written week by week is cut by itself.
    assert_eq!(deload("sets = 5\nload = \"75 %\"", ""), []);
    assert_eq!(
        deload("sets = 5\nload = \"75 %\"", "sets_off = \"0 %\"\nload_off = \"10 %\"\n"),
        []
    );
    let same = "sets.by_week = [5, 5]\nload.by_week = [\"75 %\", \"75 %\"]";
    assert_eq!(deload(same, ""), [(Level::Change, "kind = \"deload\"".to_owned())]);
    let hardly = "sets.by_week = [5, 5]\nload.by_week = [\"75 %\", \"72.5 %\"]";
    assert_eq!(deload(hardly, ""), [(Level::LookAt, "kind = \"deload\"".to_owned())]);
    // The week is lighter, one lift in it is not.
    let one = "sets.by_week = [2, 2]\nload.by_week = [\"75 %\", \"75 %\"]\n[[session.exercise]]\n\
               name = \"Bench press\"\nsets.by_week = [8, 4]\nreps = 5\nload = \"70 %\"";
    assert_eq!(deload(one, ""), [(Level::LookAt, "sets.by_week = [2, 2]".to_owned())]);
}

#[test]
fn a_coach_who_means_it_so_says_why() {
    let sled = "[[session.exercise]]\nname = \"Sled push\"\nsets = 3\nmetres = 20\n\
                [[session.exercise]]\nname = \"Back squat\"\nsets = 3\nreps = 6\nload = \"95 %\"\n";
    let accept = |what: &str| {
        let text = format!("{}[[accept]]\n{what}\nbecause = \"We mean it.\"\n", plan(1, sled));
        let all = found(&text);
        let open: Vec<_> = all
            .iter()
            .filter(|finding| finding.accepted.is_none())
            .map(|finding| (finding.check, finding.level, text[finding.span.clone()].to_owned()))
            .collect();
        let accepted = all.iter().filter_map(|finding| finding.accepted.clone()).count();
        (open, accepted)
    };
    let heavy = (Check::PercentAndReps, Level::Change, "load = \"95 %\"".to_owned());
    let whole = "check = \"no-substitute\"\nsession = \"Monday\"\nexercise = \"Sled push\"";
    assert_eq!(accept(whole), (vec![heavy.clone()], 1));
    // Without session and exercise it holds for all of the plan; of another exercise for none.
    assert_eq!(accept("check = \"no-substitute\"").1, 1);
    assert_eq!(accept("check = \"no-substitute\"\nexercise = \"Back squat\"").1, 0);
    // What names nothing is said.
    let (open, _) = accept("check = \"no-substitutes\"");
    let unknown = (Check::AcceptUnknown, Level::Change, "check = \"no-substitutes\"".to_owned());
    assert!(open.contains(&unknown), "{open:?}");
    let (open, _) = accept("check = \"percent-and-reps\"\nsession = \"Tuesday\"");
    let unknown = (Check::AcceptUnknown, Level::Change, "session = \"Tuesday\"".to_owned());
    assert!(open.contains(&unknown) && open.contains(&heavy), "{open:?}");
    // So is what nothing needs any more.
    let (open, _) = accept("check = \"load-jump\"");
    let unused = (Check::AcceptUnused, Level::LookAt, "check = \"load-jump\"".to_owned());
    assert!(open.contains(&unused), "{open:?}");
    // What is said of acceptances can't be accepted.
    let (open, _) = accept("check = \"accept-unused\"");
    assert!(open.iter().any(|(check, ..)| *check == Check::AcceptUnknown), "{open:?}");
}

#[test]
fn what_is_looked_for_has_a_name_of_its_own_and_stands_in_the_page() {
    for check in Check::ALL {
        let row = format!("| `{}` |", check.slug());
        assert_eq!(PAGE.contains(&row), check.can_be_accepted(), "{row}");
        assert_eq!(Check::ALL.iter().filter(|other| other.slug() == check.slug()).count(), 1);
        assert_eq!(serde_json::to_value(check).unwrap(), check.slug());
    }
}

#[test]
fn a_row_that_its_own_rule_can_never_move() {
    let stuck =
        |rest: &str| checked(1, &format!("[[session.exercise]]\n{rest}\n"), Check::CannotProgress);
    let change = |at: &str| vec![(Level::Change, at.to_owned())];
    // The heaviest dumbbells here are 50 kg.
    let press = "name = \"Dumbbell bench press\"\nreps = \"6-9\"\nnext = \"double progression\"";
    assert_eq!(
        stuck(&format!("{press}\nload = \"50 kg\"")),
        change("next = \"double progression\"")
    );
    assert_eq!(stuck(&format!("{press}\nload = \"47.5 kg\"")), []);
    // A step that nothing reaches.
    let far = "next = { rule = \"add when made\", step = \"20 kg\" }";
    let heavy = format!("name = \"Dumbbell bench press\"\nreps = 6\nload = \"40 kg\"\n{far}");
    assert_eq!(stuck(&heavy), change(far));
    // A range of a single number.
    let row = "name = \"Barbell row\"\nload = \"60 kg\"\nnext = \"double progression\"";
    assert_eq!(stuck(&format!("{row}\nreps = 9")).len(), 1);
    assert_eq!(stuck(&format!("{row}\nreps = \"9-11\"")), []);
    // By effort, and none is asked.
    let row = "name = \"Barbell row\"\nload = \"60 kg\"\nreps = 9\nnext = \"by effort\"";
    assert_eq!(stuck(row).len(), 1);
    assert_eq!(stuck(&format!("{row}\nrpe = 8")), []);
    // Bands alone.
    let row = "name = \"Face pull\"\nreps = 14\nnext = \"add when made\"\nload = ";
    assert_eq!(stuck(&format!("{row}\"with red band\"")).len(), 1);
    assert_eq!(stuck(&format!("{row}\"20 kg\"")), []);
}

#[test]
fn bands_and_chains_are_needed_too() {
    let text = plan(
        1,
        "[[session.exercise]]\nname = \"Box squat\"\nsets = 4\nreps = 2\nload = \"80 kg with light \
         chains\"\n[[session.exercise]]\nname = \"Barbell row\"\nreps = 9\nload = \"40 kg with red \
         band, doubled\"\n",
    );
    let needs = |also: &[&str]| {
        let mut gym = builtin_in(MassUnit::Kilogram);
        gym.also.retain(|one| one != "band");
        gym.also.extend(also.iter().map(|one| (*one).to_owned()));
        let found = found_in(&text, &gym);
        let about = found.into_iter().filter_map(|finding| match finding.about {
            About::Rare { needs, lacking: true } => Some(needs),
            _ => None,
        });
        about.flatten().collect::<Vec<_>>()
    };
    assert_eq!(needs(&[]), ["light-chain", "red-band"]);
    // Of bands in general each is there; of bands by name those.
    assert_eq!(needs(&["band"]), ["light-chain"]);
    assert_eq!(needs(&["chains", "red-band"]), [""; 0]);
    assert_eq!(needs(&["chains", "blue-band"]), ["red-band"]);
}

#[test]
fn sessions_that_take_turns_are_told_once() {
    let session = |name: &str, weeks: &str| {
        format!(
            "[[session]]\nname = \"{name}\"\nweeks = {weeks}\n[[session.exercise]]\nname = \"Sled \
             push\"\nsets = 3\nmetres = 20\n"
        )
    };
    let told = |one: &str, other: &str| {
        let text =
            format!("name = \"A\"\nweeks = 4\n{}{}", session("One", one), session("Other", other));
        of(&text, &found(&text), Check::NoSubstitute).len()
    };
    assert_eq!(told("[1, 3]", "[2, 4]"), 1);
    assert_eq!(told("[1, 2, 3]", "[3, 4]"), 2);
}
