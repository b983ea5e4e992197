//! The Plan screen: a file read, its faults in place, its weeks in a coach's shorthand.

use barwright_app::contract::{Action, Intent, PlanScreen};
use barwright_app::{Locale, demo, plan_in_file};

fn lines(screen: &PlanScreen) -> Vec<String> {
    screen
        .rows
        .iter()
        .map(|row| format!("{}{}", "  ".repeat(usize::from(row.depth)), row.text))
        .collect()
}

const PLAN: &str = r#"
name = "Boathouse"
weeks = 4
[[week]]
number = 4
kind = "deload"
[[session]]
name = "Monday"
day = "Monday"
[[session.exercise]]
name = "Back squat"
sets = 4
reps = 5
load.by_week = ["72.5 %", "75 %", "77.5 %", "65 %"]
rest = "2:30"
[[session.exercise]]
name = "Bench press"
reps = [8, 6, 4]
load = ["65 %", "72.5 %", "80 %"]
[[session.exercise]]
name = "Dip"
sets = 2
reps = "6-8"
left = "1-2"
load = "body + 10 kg"
drop = ["25 %"]
on_sets = "last"
"#;

#[test]
fn a_week_stands_in_a_coachs_shorthand() {
    let screen = plan_in_file(PLAN.as_bytes(), Some(3), &Locale::read("en-GB"));
    assert_eq!(screen.subtitle, "Week 3, of 4");
    assert_eq!(
        lines(&screen),
        [
            "Monday",
            "  Back squat",
            "    4 × 5 · 77.5 % · rest 2:30",
            "  Bench press",
            "    8, 6, 4 · 65, 72.5, 80 % · rest 3:00",
            "  Dip",
            "    1 × 6–8 · bodyweight + 10 kg · 1–2 in reserve · rest 3:00",
            "    1 × 6–8, drop 25 % · bodyweight + 10 kg · 1–2 in reserve · rest 3:00",
        ]
    );
    // The deload takes two sets of four off, and nothing off a load that is written for the week.
    let deload = plan_in_file(PLAN.as_bytes(), Some(4), &Locale::read("nl-NL"));
    let lines = lines(&deload);
    assert_eq!(lines[2], "    2 × 5 · 65 % · rest 2:30");
    assert_eq!(lines[4], "    8, 6 · 58,5; 65,25 % · rest 3:00");
}

#[test]
fn the_whole_plan_says_each_session_once_with_what_weeks_change() {
    let screen = plan_in_file(PLAN.as_bytes(), None, &Locale::read("en-GB"));
    let lines = lines(&screen);
    assert_eq!(lines[0], "Week 4: deload");
    assert_eq!(lines.iter().filter(|line| **line == "  Back squat").count(), 1);
    assert!(lines.contains(&"    week 2: 4 × 5 · 75 % · rest 2:30".to_owned()), "{lines:#?}");
    assert!(
        lines.contains(&"    weeks 1–3: 8, 6, 4 · 65, 72.5, 80 % · rest 3:00".to_owned()),
        "{lines:#?}"
    );
    let adopt = screen.keys.iter().find(|key| key.id == "adopt").expect("a plan can be adopted");
    let expected = Action::Do { intent: Intent::adopt(PLAN), session: None, then: None };
    assert_eq!((adopt.enabled, &adopt.action), (true, &expected));
}

#[test]
fn a_fault_is_shown_in_its_place_and_nothing_can_be_adopted() {
    let text = PLAN.replace("Bench press", "Bench pres").replace("reps = 5", "rep = 5");
    let screen = plan_in_file(text.as_bytes(), None, &Locale::read("en-GB"));
    assert_eq!(screen.title, "The plan has 2 faults");
    assert!(screen.keys.is_empty() && screen.rows.is_empty());
    let shown: Vec<_> = screen
        .faults
        .iter()
        .map(|fault| (fault.line, fault.underline.as_str(), fault.advice.as_str()))
        .collect();
    assert_eq!(
        shown,
        [
            (13, "^^^", "Write reps."),
            (17, "        ^^^^^^^^^^", "Write \"Bench press\", or add your own to the file."),
        ]
    );
}

#[test]
fn every_week_of_the_demo_is_laid_out() {
    for week in 1..=8 {
        let screen = plan_in_file(demo::PLAN.as_bytes(), Some(week), &Locale::read("en-GB"));
        assert!(screen.faults.is_empty());
        assert!(screen.rows.len() > 20, "week {week}");
        for row in &screen.rows {
            assert!(!row.text.trim().is_empty() && !row.text.contains("  "), "{row:?}");
        }
        let mut ids: Vec<_> = screen.rows.iter().map(|row| &row.id).collect();
        ids.sort();
        ids.dedup();
        assert_eq!(ids.len(), screen.rows.len(), "each row has an id of its own");
    }
}
