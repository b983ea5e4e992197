//! The ramp.

use barwright_domain::equipment::{Fit, Rig, builtin_in};
use barwright_domain::quantity::{Mass, MassUnit, Reps, Seconds};
use barwright_domain::session::{Because, SetKind};

use crate::desk::{Table, kg, load, ramp, why};

fn squat(load: &str) -> Table {
    Table::of(&format!(
        "[[session.exercise]]\nname = \"Back squat\"\nsets = 3\nreps = 5\nload = \"{load} kg\""
    ))
}

fn near(steps: &[(Mass, Reps)], asked: &[(&str, Reps)], slack: &str) {
    assert_eq!(steps.len(), asked.len(), "{steps:?}");
    for ((made, reps), (figure, asked)) in steps.iter().zip(asked) {
        assert_eq!(reps, asked, "{steps:?}");
        assert!(made.distance(kg(figure)) <= kg(slack), "{steps:?}");
    }
}

#[test]
fn the_usual_steps_and_fewer_when_it_is_light() {
    // Bar × 8, 40 % × 5, 60 % × 3, 75 % × 2, 90 % × 1 (common practice), each within 2.5 %.
    let heavy = squat("140").first();
    let asked = [("20", 8), ("56", 5), ("84", 3), ("105", 2), ("126", 1)];
    near(&ramp(&heavy), &asked, "3.5");
    assert_eq!(why(&heavy.calls[0]), [Because::EmptyBar]);
    assert!(ramp(&heavy).windows(2).all(|pair| pair[0].0 < pair[1].0));
    // Rests are short, and longer as it gets heavy.
    let rests: Vec<_> = heavy.calls.iter().take(5).map(|call| call.rest.count()).collect();
    assert_eq!(rests, [60, 60, 60, 90, 120]);

    near(&ramp(&squat("60").first()), &[("20", 8), ("36", 3), ("54", 1)], "1.5");
    near(&ramp(&squat("25").first()), &[("20", 8)], "0");
    assert!(ramp(&squat("20").first()).is_empty());
}

#[test]
fn ramp_and_work_are_planned_together_for_few_changes() {
    let entry = squat("102.5").first();
    let side = |rig: &Rig| rig.side().iter().map(|plate| plate.mass).collect::<Vec<_>>();
    let mut moves = 0;
    let mut on: Vec<Mass> = Vec::new();
    for call in &entry.calls {
        let next = side(&load(call).unwrap().rig);
        let kept = on.iter().zip(&next).take_while(|(a, b)| a == b).count();
        moves += on.len() + next.len() - 2 * kept;
        // The heavier lie inside.
        assert!(next.windows(2).all(|pair| pair[0] >= pair[1]), "{next:?}");
        on = next;
    }
    // Each step as near as these plates make it would take more.
    let nearest: usize = {
        let mut on: Vec<Mass> = Vec::new();
        let mut moves = 0;
        for call in &entry.calls {
            let meant = load(call).unwrap().meant.unwrap();
            let made = builtin_in(MassUnit::Kilogram).make("barbell", meant, Fit::Nearest).unwrap();
            let next = side(&made.rig);
            let kept = on.iter().zip(&next).take_while(|(a, b)| a == b).count();
            moves += on.len() + next.len() - 2 * kept;
            on = next;
        }
        moves
    };
    assert!(moves < nearest, "{moves} against {nearest}");
    assert!(entry.calls.iter().any(|call| {
        why(call).iter().any(|why| matches!(why, Because::MovedWithinSlack { .. }))
    }));
    // Work loads never move.
    let works = entry.calls.iter().filter(|call| call.kind == SetKind::Work);
    assert!(works.into_iter().all(|call| load(call).unwrap().figure == Some(kg("102.5"))));
}

#[test]
fn from_the_floor_it_starts_at_full_size_plates() {
    let table = Table::of(
        "[[session.exercise]]\nname = \"Deadlift\"\nsets = 1\nreps = 5\nload = \"180 kg\"",
    );
    let entry = table.first();
    // The bar and a pair of tens, which are full size here, then 40, 60, 75 and 90 %.
    let asked = [("40", 5), ("72", 5), ("108", 3), ("135", 2), ("162", 1)];
    near(&ramp(&entry), &asked, "4.5");
    assert_eq!(why(&entry.calls[0]), [Because::FullSizePlates]);
    let full = |call: &barwright_domain::session::Call| {
        load(call).unwrap().rig.side().iter().any(|plate| plate.mass >= kg("10"))
    };
    assert!(entry.calls.iter().all(full));
}

#[test]
fn later_lifts_on_warm_muscles_have_one_step_or_none() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Back squat"
        reps = 5
        load = "100 kg"
        [[session.exercise]]
        name = "Front squat"
        reps = 5
        load = "80 kg"
        [[session.exercise]]
        name = "Leg press"
        reps = 10
        load = "120 kg"
        [[session.exercise]]
        name = "Dumbbell bench press"
        reps = 8
        load = "30 kg"
        [[session.exercise]]
        name = "Lateral raise"
        reps = 12
        load = "10 kg"
        [[session.exercise]]
        name = "Bench press"
        reps = 5
        load = "80 kg"
        ramp = "none"
        [[session.exercise]]
        name = "Box jump"
        reps = 3
        "#,
    );
    let entries = table.entries();
    let steps: Vec<usize> = entries.iter().map(|entry| ramp(entry).len()).collect();
    assert_eq!(steps, [5, 1, 0, 2, 0, 0, 0]);
    near(&ramp(&entries[1]), &[("48", 5)], "2");
}

#[test]
fn jumps_before_a_lift_do_not_warm_it_up() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Box jump"
        reps = 3
        [[session.exercise]]
        name = "Back squat"
        reps = 5
        load = "100 kg"
        "#,
    );
    assert_eq!(ramp(&table.entries()[1]).len(), 5);
}

#[test]
fn a_test_is_warmed_up_for_by_the_protocol() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Back squat"
        load = "92.5 %"
        test = { step = "2.5 %", most_tries = 4 }
        "#,
    )
    .max("back-squat", "160");
    let entry = table.first();
    // NSCA Essentials, 1RM protocol (published): 15 % steps below the first single.
    near(&ramp(&entry), &[("97.3", 5), ("111.9", 3), ("128.7", 2)], "4");
    let single = entry.calls.last().unwrap();
    assert_eq!((single.kind, single.rest), (SetKind::Test, Seconds::new(240)));
}

#[test]
fn the_body_alone_before_load_on_the_body() {
    let table =
        Table::of("[[session.exercise]]\nname = \"Pull-up\"\nreps = 5\nload = \"body + 20 kg\"")
            .weighs("80");
    assert_eq!(ramp(&table.first()), [(kg("0"), 5)]);
}
