//! Exercises go by their names in every language, and by one key.

use barwright_domain::catalogue::{Catalogue, Exercise, Tongue};
use barwright_domain::plan::Plan;
use barwright_domain::text::Problem;

fn session(name: impl Fn(&Exercise) -> String) -> String {
    let catalogue = Catalogue::builtin();
    let called = |slug: &str| name(catalogue.get(slug).expect("it is built in"));
    format!(
        r#"
name = "Winter block"
weeks = 4
[[max]]
lift = "{press}"
working = "90 %"
[[exercise]]
name = "Tempo squat"
like = "{squat}"
[[session]]
name = "One"
[[session.exercise]]
name = "{squat}"
sets = 3
reps = 6
load = "47.5 kg"
substitutes = ["{deadlift}", "{plank}"]
[[session.exercise]]
name = "{close}"
sets = 3
reps = 8
load = "70 % of {press}"
[[session.exercise]]
name = "{over}"
sets = 3
reps = 8
load = "40 % of {press} working max"
[[session.exercise]]
name = "{carry}"
sets = 2
metres = 30
load = "20 kg"
[[session.exercise]]
name = "{swing}"
sets = 2
reps = 15
load = "16 kg"
"#,
        press = called("bench-press"),
        squat = called("back-squat"),
        deadlift = called("deadlift"),
        plank = called("plank"),
        close = called("close-grip-bench-press"),
        over = called("overhead-press"),
        carry = called("farmer-carry"),
        swing = called("kettlebell-swing"),
    )
}

fn read(text: &str) -> Plan {
    let file = Plan::read(text, &Catalogue::builtin());
    file.unwrap_or_else(|faults| panic!("{faults:#?}\n{text}")).plan
}

/// As a keyboard without umlauts writes it.
fn without_umlauts(name: &str) -> String {
    [("ä", "ae"), ("ö", "oe"), ("ü", "ue"), ("Ü", "Ue"), ("ß", "ss")]
        .iter()
        .fold(name.to_owned(), |name, (from, to)| name.replace(from, to))
}

#[test]
fn a_plan_is_the_same_in_either_language() {
    let english = read(&session(|one| one.name_in(Tongue::English).to_owned()));
    let german = session(|one| one.name_in(Tongue::German).to_owned());
    assert!(german.contains("\"70 % of Bankdrücken\""), "{german}");
    assert_eq!(read(&german), english);
    let plain = session(|one| without_umlauts(one.name_in(Tongue::German)).to_lowercase());
    assert!(plain.contains("\"70 % of bankdruecken\""), "{plain}");
    assert_eq!(read(&plain), english);
    // What the plan keeps is the key.
    let exercises: Vec<_> =
        english.session(0, 0).unwrap().exercises.iter().map(|one| one.exercise.clone()).collect();
    let keys = [
        "back-squat",
        "close-grip-bench-press",
        "overhead-press",
        "farmer-carry",
        "kettlebell-swing",
    ];
    assert_eq!(exercises, keys);
}

/// Every exercise by each of its names, itself and as the lift that a load is a share of.
#[test]
fn every_name_is_read_in_a_plan() {
    for exercise in Catalogue::builtin().iter() {
        let mut text = "name = \"P\"\nweeks = 1\n[[session]]\nname = \"S\"\n".to_owned();
        for name in exercise.names() {
            text.push_str(&format!(
                "[[session.exercise]]\nname = \"{name}\"\nsets = 1\nreps = 5\n\
                 [[session.exercise]]\nname = \"Front squat\"\nsets = 1\nreps = 5\nload = \"60 % \
                 of {name}\"\n"
            ));
        }
        let plan = read(&text);
        let session = plan.session(0, 0).unwrap();
        for (pair, name) in session.exercises.chunks(2).zip(exercise.names()) {
            assert_eq!(pair[0].exercise, exercise.slug, "{name}");
            let load = format!("{:?}", pair[1].blocks);
            let of = if exercise.slug == "front-squat" { "percent" } else { &exercise.slug };
            assert!(load.to_lowercase().contains(of), "{name}: {load}");
        }
    }
}

#[test]
fn a_printed_plan_is_in_the_language_and_is_read_back() {
    let plan = read(&session(|one| one.slug.to_string()));
    let english = plan.print(&Catalogue::builtin());
    let german = plan.print(&Catalogue::builtin().speaking(Tongue::German));
    for (one, other) in
        [("Back squat", "Kniebeuge"), ("70 % of Bench press", "70 % of Bankdrücken")]
    {
        assert!(english.contains(one) && !english.contains(other), "{english}");
        assert!(german.contains(other) && !german.contains(one), "{german}");
    }
    assert_eq!(read(&english), plan);
    assert_eq!(read(&german), plan);
}

#[test]
fn a_near_miss_is_answered_in_the_language() {
    let offered = |written: &str, tongue: Tongue| {
        let text = session(|one| one.slug.to_string()).replace("\"farmer-carry\"", written);
        let faults = Plan::read(&text, &Catalogue::builtin().speaking(tongue)).err();
        let problem = faults.and_then(|faults| Some(faults.first()?.problem.clone()));
        match problem {
            Some(Problem::UnknownName { nearest, .. }) => nearest,
            other => panic!("{other:?}"),
        }
    };
    for (written, english, german) in [
        ("\"Bankdrüken\"", "Bench press", "Bankdrücken"),
        ("\"bench pres\"", "Bench press", "Bankdrücken"),
        ("\"Klimzug\"", "Pull-up", "Klimmzug"),
    ] {
        assert_eq!(offered(written, Tongue::English).as_deref(), Some(english));
        assert_eq!(offered(written, Tongue::German).as_deref(), Some(german));
    }
    assert_eq!(offered("\"Radfahren\"", Tongue::German), None);
}

/// An exercise of the plan's own keeps a name that a built-in one goes by in another language.
#[test]
fn a_plans_own_name_stands_before_the_built_in_ones() {
    let own = "name = \"P\"\nweeks = 1\n[[exercise]]\nname = \"Kniebeuge\"\nlike = \"Back \
               squat\"\n[[session]]\nname = \"S\"\n[[session.exercise]]\nname = \
               \"Kniebeuge\"\nsets = 1\nreps = 5\nload = \"60 kg\"\n[[session.exercise]]\nname = \
               \"Back squat\"\nsets = 1\nreps = 5\nload = \"60 kg\"\n";
    let plan = read(own);
    let slugs = |plan: &Plan| -> Vec<String> {
        let session = plan.session(0, 0).unwrap();
        session.exercises.iter().map(|one| one.exercise.clone()).collect()
    };
    assert_eq!(slugs(&plan), ["kniebeuge", "back-squat"]);
    // Written in German, the built-in one's name is taken: its key is written.
    let printed = plan.print(&Catalogue::builtin().speaking(Tongue::German));
    assert_eq!(slugs(&read(&printed)), ["kniebeuge", "back-squat"], "{printed}");
}
