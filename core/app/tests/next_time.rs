//! From one session to the next by the engine: what was done decides what is called.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{HowEnded, Intent, Look, Reading, Screen};

struct Lifter {
    engine: Arc<Engine>,
    now: Reading,
}

impl Lifter {
    fn new(plan: &str) -> Self {
        let now = Reading {
            wall_ms: 1_795_000_000_000,
            offset_minutes: 60,
            boot_ms: Some(1_000_000),
            boot_id: Some("boot".into()),
        };
        let mut lifter = Self { engine: Engine::in_memory("en-GB".into()).unwrap(), now };
        lifter.tap(Intent::adopt(plan));
        lifter
    }

    fn tap(&mut self, intent: Intent) {
        self.engine.dispatch(intent, self.now.clone()).unwrap();
        self.now.wall_ms += 60_000;
        self.now.boot_ms = self.now.boot_ms.map(|ms| ms + 60_000);
    }

    fn write(&mut self, field: &str, text: &str) {
        self.tap(Intent::Write { field: field.into(), text: text.into(), sure: false });
    }

    /// A session of these sets, each with its repetitions and half repetitions left; then two days.
    fn session(&mut self, sets: &[(u32, Option<u8>, HowEnded)]) {
        self.tap(Intent::Begin { session: None, minutes: None, sure: false });
        for (amount, left_halves, ended) in sets {
            self.tap(Intent::Record {
                part: None,
                amount: Some(*amount),
                left_halves: *left_halves,
                ended: *ended,
                helped: 0,
                last: false,
            });
        }
        self.tap(Intent::Finish);
        self.now.wall_ms += 2 * 86_400_000;
        self.now.boot_ms = self.now.boot_ms.map(|ms| ms + 2 * 86_400_000);
    }

    /// The work of today's one exercise, as the sheet says it, with its reasons.
    fn called(&self) -> (String, String) {
        let look = Look::Today { session: None, minutes: None };
        let Screen::Today { today } = self.engine.view(look, self.now.clone()).unwrap().screen
        else {
            panic!("today is asked for")
        };
        let text = today.rows.iter().map(|row| row.text.clone()).collect::<Vec<_>>().join("\n");
        let why = today.rows.iter().flat_map(|row| row.why.clone()).collect::<Vec<_>>();
        (text, why.join("\n"))
    }

    fn max(&self, lift: &str) -> String {
        let look = Look::Lift { exercise: lift.into(), page: 0, all: false };
        match self.engine.view(look, self.now.clone()).unwrap().screen {
            Screen::Lift { lift } => lift.subtitle,
            other => panic!("{other:?}"),
        }
    }
}

fn plan(lines: &str) -> String {
    format!(
        "name = \"Off-season\"\nweeks = 8\nraise_max = \"estimates\"\n[[session]]\nname = \
         \"One\"\n[[session.exercise]]\n{lines}\nramp = \"none\"\n"
    )
}

const DONE: HowEnded = HowEnded::AsCalled;

/// 75 % of 160 is 120, called RPE 8 for 6–7: 115.2, made 115. Five with two left at 120 estimate
/// 148, and so the max stays.
#[test]
fn front_squat_by_effort() {
    let mut lifter = Lifter::new(&plan(
        "name = \"Front squat\"\nsets = 1\nreps = 5\nload = \"75 %\"\nrpe = \"6-7\"\nnext = [\"as \
         planned\", \"by effort\"]",
    ));
    lifter.write("max:front-squat", "160 kg");
    assert!(lifter.called().0.contains("120 kg"), "{:?}", lifter.called());
    lifter.session(&[(5, Some(4), DONE)]);
    let (text, why) = lifter.called();
    assert!(text.contains("115 kg"), "{text}");
    assert!(why.contains("115.2"), "{why}");
    assert!(lifter.max("front-squat").contains("160 kg, entered"));
    // A max that stays is no change.
    let Screen::Tally { tally } =
        lifter.engine.view(Look::Tally, lifter.now.clone()).unwrap().screen
    else {
        panic!()
    };
    assert!(tally.changes.iter().all(|row| !row.id.starts_with("max-")), "{:?}", tally.changes);
}

/// Five with three left at 120 (80 % of 150) estimate 120 · (1 + 8/30) = 152. Once is not enough; the
/// second session running raises the max, and 80 % of it is 121.6, made 122. It is a fact with the
/// session's end.
#[test]
fn an_estimate_raises_the_max_and_the_next_loads() {
    let mut lifter = Lifter::new(&plan(
        "name = \"Back squat\"\nsets = 1\nreps = 5\nload = \"80 %\"\nnext = \"as planned\"",
    ));
    lifter.write("max:back-squat", "150 kg");
    assert!(lifter.called().0.contains("120 kg"), "{:?}", lifter.called());
    lifter.session(&[(5, Some(6), DONE)]);
    assert!(lifter.called().0.contains("120 kg"), "{:?}", lifter.called());
    assert!(lifter.max("back-squat").contains("150 kg, entered"));
    lifter.session(&[(5, Some(6), DONE)]);
    let (text, why) = lifter.called();
    assert!(text.contains("122 kg"), "{text}");
    assert!(why.contains("Max 152 kg since"), "{why}");
    assert!(lifter.max("back-squat").contains("152 kg, raised from estimates"));
}

/// Floor press 4 × 7 at 60 kg: nine in the last set twice, one session cut short between: 62.5.
#[test]
fn floor_press_two_for_two() {
    let mut lifter = Lifter::new(&plan(
        "name = \"Floor press\"\nsets = 4\nreps = 7\nload = \"60 kg\"\nnext = \"two for two\"",
    ));
    let nine = [(7, None, DONE), (7, None, DONE), (7, None, DONE), (9, None, DONE)];
    lifter.session(&nine);
    assert!(lifter.called().0.contains("60 kg"));
    lifter.session(&nine[..2]);
    assert!(lifter.called().0.contains("60 kg"));
    lifter.session(&nine);
    let (text, _) = lifter.called();
    assert!(text.contains("62.5 kg"), "{text}");
    lifter.session(&[(7, None, HowEnded::Pain)]);
    let (text, why) = lifter.called();
    // A tenth less than what hurt, until a session without pain.
    assert!(text.contains("56 kg"), "{text}");
    assert!(why.contains("62.5 kg since") && why.contains("pain since"), "{why}");
}

const CELLAR: &str = r#"
name = "Cellar"
unit = "kg"
also = ["rack", "bench"]

[[bar]]
name = "Long bar"
mass = "20 kg"

[[plate]]
mass = "25 kg"
pairs = 2

[[plate]]
mass = "10 kg"
pairs = 2

[[plate]]
mass = "5 kg"
pairs = 1

[[plate]]
mass = "2.5 kg"
pairs = 1

[[plate]]
mass = "1.25 kg"
pairs = 1

[[stack]]
name = "Help"
kind = "assisted-pull-up"
from = "5 kg"
to = "60 kg"
step = "5 kg"
"#;

impl Lifter {
    fn in_the_cellar(plan: &str) -> Self {
        let mut lifter = Self::new(plan);
        lifter.tap(Intent::AddGym { text: CELLAR.into() });
        lifter.tap(Intent::ChooseGym { name: "Cellar".into() });
        lifter
    }

    fn total(&self) -> String {
        let look = Look::Floor { draft: <_>::default() };
        match self.engine.view(look, self.now.clone()).unwrap().screen {
            Screen::Floor { floor } => floor.bar.total,
            other => panic!("{other:?}"),
        }
    }

    /// The tally's row of an exercise next time.
    fn next_time(&self, exercise: &str) -> barwright_app::contract::Row {
        match self.engine.view(Look::Tally, self.now.clone()).unwrap().screen {
            Screen::Tally { tally } => {
                let id = format!("next-{exercise}");
                tally.changes.into_iter().find(|row| row.id == id).unwrap()
            }
            other => panic!("{other:?}"),
        }
    }
}

const SQUAT: &str = "name = \"Front squat\"\nsets = 1\nreps = 5\nload = \"75 %\"\nrpe = \"6-7\"\nnext = \
                     [\"as planned\", \"by effort\"]";

/// No effort called: 120 again, and the tally says why.
#[test]
fn front_squat_without_a_call() {
    let mut lifter = Lifter::in_the_cellar(&plan(SQUAT));
    lifter.write("max:front-squat", "160 kg");
    lifter.session(&[(5, None, DONE)]);
    let (text, _) = lifter.called();
    assert!(text.contains("120 kg"), "{text}");
    let row = lifter.next_time("front-squat");
    assert_eq!(row.detail, "No effort called: no change.");
}

/// A back-off at 90 % of the 120 lifted is 108, made 107.5 by steps of 2.5 kg.
#[test]
fn a_back_off_follows_the_set_that_was_lifted() {
    let rows = "name = \"Front squat\"\nramp = \"none\"\n[[session.exercise.set]]\nreps = 5\nload = \
                \"75 %\"\n[[session.exercise.set]]\nsets = 2\nreps = 5\nload = \"90 % of top set\"";
    let rows = plan(rows).replace("\nramp = \"none\"\n\n", "\n");
    let rows = rows.trim_end().trim_end_matches("ramp = \"none\"");
    let mut lifter = Lifter::in_the_cellar(rows);
    lifter.write("max:front-squat", "160 kg");
    lifter.tap(Intent::Begin { session: None, minutes: None, sure: false });
    assert_eq!(lifter.total(), "120 kg");
    lifter.tap(Intent::Record {
        part: None,
        amount: None,
        left_halves: None,
        ended: DONE,
        helped: 0,
        last: false,
    });
    assert_eq!(lifter.total(), "107.5 kg");
}

/// Body 82.4 kg with 20 of help, 62.4 moved for ten with none left; with 15 of help 67.4 is good for 7.0
/// by Epley: enough for 6–10, and held where 8 are asked at least.
#[test]
fn assisted_pull_up_steps_only_where_the_range_allows_it() {
    for (reps, help, says) in [
        ("6-10", "15 kg assistance", "every set reached 10 reps: 5 kg less assistance"),
        ("8-10", "20 kg assistance", "good for about 7.0 reps by Epley, and 8 are asked"),
    ] {
        let rows = format!(
            "name = \"Assisted pull-up\"\nsets = 1\nreps = \"{reps}\"\nleft = 0\nload = \"body - 20 kg\"\n\
             next = \"less assistance\""
        );
        let mut lifter = Lifter::in_the_cellar(&plan(&rows));
        lifter.write("body-mass", "82.4 kg");
        lifter.session(&[(10, Some(0), DONE)]);
        let (text, why) = lifter.called();
        assert!(text.contains(help), "{reps}: {text}");
        assert!(why.contains(says), "{reps}: {why}");
    }
}

/// The tally says what changes and from what; held back, it stays, today and next time; let go, it
/// changes again.
#[test]
fn a_change_is_held_back_from_the_tally() {
    let mut lifter = Lifter::in_the_cellar(&plan(SQUAT));
    lifter.write("max:front-squat", "160 kg");
    lifter.tap(Intent::Begin { session: None, minutes: None, sure: false });
    lifter.tap(Intent::Record {
        part: None,
        amount: None,
        left_halves: Some(4),
        ended: DONE,
        helped: 0,
        last: false,
    });
    lifter.tap(Intent::Finish);
    let press = |lifter: &mut Lifter| {
        let key = lifter.next_time("front-squat").keys.remove(0);
        let barwright_app::contract::Action::Do { intent, .. } = key.action else { panic!() };
        lifter.tap(intent);
    };
    let row = lifter.next_time("front-squat");
    assert!(row.text.contains("115 kg"), "{row:?}");
    assert_eq!(
        row.why,
        [
            "Max 160 kg since Wed 18 Nov × 75 % = 120 kg; \u{2212}4 % for one session: 115.2 kg; rounded to \
             115 kg.",
            "Wed 18 Nov: RPE 8, target RPE 7: 4 % less.",
        ]
    );
    press(&mut lifter);
    let row = lifter.next_time("front-squat");
    assert!(row.text.contains("120 kg"), "{row:?}");
    assert!(row.detail.starts_with("Kept as it was."), "{row:?}");
    press(&mut lifter);
    assert!(lifter.next_time("front-squat").text.contains("115 kg"));
    press(&mut lifter);
    lifter.tap(Intent::Begin { session: None, minutes: None, sure: false });
    assert_eq!(lifter.total(), "120 kg");
}

/// A stack without numbers: the lifter finds the place, the floor and the tally say it, and one the stack
/// has not is refused.
#[test]
fn a_pin_is_the_lifters_to_choose() {
    let gym = CELLAR.replace(
        "name = \"Help\"\nkind = \"assisted-pull-up\"\nfrom = \"5 kg\"\nto = \"60 kg\"\nstep = \"5 kg\"",
        "name = \"Curl\"\nkind = \"leg-curl\"\npins = [\"1\", \"2\", \"3\"]",
    );
    let mut lifter = Lifter::new(&plan("name = \"Leg curl\"\nsets = 2\nreps = 10"));
    lifter.tap(Intent::AddGym { text: gym });
    lifter.tap(Intent::ChooseGym { name: "Cellar".into() });
    lifter.tap(Intent::Begin { session: None, minutes: None, sure: false });
    let draft = barwright_app::contract::Draft { panel: Some("load".into()), ..<_>::default() };
    let look = Look::Floor { draft };
    let Screen::Floor { floor } = lifter.engine.view(look, lifter.now.clone()).unwrap().screen
    else {
        panic!()
    };
    let mut keys = floor.panel.unwrap().keys;
    assert_eq!(
        keys.iter().map(|key| key.label.as_str()).collect::<Vec<_>>(),
        ["Pin 1", "Pin 2", "Pin 3"]
    );
    let barwright_app::contract::Action::Do { intent, .. } = keys.remove(1).action else {
        panic!()
    };
    lifter.tap(intent);
    assert_eq!(lifter.total(), "Pin 2");
    let none = Intent::Write { field: "pin:0".into(), text: "9".into(), sure: false };
    assert!(lifter.engine.dispatch(none, lifter.now.clone()).is_err());
    lifter.tap(Intent::Record {
        part: None,
        amount: None,
        left_halves: None,
        ended: DONE,
        helped: 0,
        last: false,
    });
    assert_eq!(lifter.total(), "Pin 2");
    lifter.tap(Intent::Finish);
    let Screen::Tally { tally } =
        lifter.engine.view(Look::Tally, lifter.now.clone()).unwrap().screen
    else {
        panic!()
    };
    assert!(tally.done.iter().any(|row| row.text == "Set 1 of 2: pin 2 × 10"), "{:?}", tally.done);
}
