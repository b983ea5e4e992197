//! The ramp.

use barwright_domain::equipment::{Fit, Rig, builtin_in};
use barwright_domain::quantity::{Mass, MassUnit, Reps, Rounding, Seconds};
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

/// Plates taken off one end on the way through these loadings.
fn taken_off(loadings: &[Vec<Mass>]) -> usize {
    let mut on: &[Mass] = &[];
    let mut off = 0;
    for next in loadings {
        let kept = on.iter().zip(next).take_while(|(a, b)| a == b).count();
        off += on.len() - kept;
        on = next;
    }
    off
}

fn side(rig: &Rig) -> Vec<Mass> {
    rig.side().iter().map(|plate| plate.mass).collect()
}

#[test]
fn the_usual_steps_and_fewer_when_it_is_light() {
    // Spread evenly from the empty bar, each within a quarter of a step (common practice).
    let heavy = squat("140").first();
    near(&ramp(&heavy), &[("20", 8), ("44", 5), ("68", 4), ("92", 3), ("116", 2)], "6");
    assert_eq!(why(&heavy.calls[0]), [Because::EmptyBar]);
    let [Because::RampSpread { step: 1, of: 4, from, to, gives }, ..] = why(&heavy.calls[1]) else {
        panic!("{:?}", why(&heavy.calls[1]))
    };
    assert_eq!((*from, *to, *gives), (kg("20"), kg("140"), kg("44")));
    assert!(ramp(&heavy).windows(2).all(|pair| pair[0].0 < pair[1].0));
    // Rests are short, and longer as it gets heavy.
    let rests: Vec<_> = heavy.calls.iter().take(5).map(|call| call.rest.count()).collect();
    assert_eq!(rests, [60, 60, 60, 60, 90]);

    near(&ramp(&squat("60").first()), &[("20", 8), ("33.4", 3), ("46.7", 2)], "3.4");
    near(&ramp(&squat("45").first()), &[("20", 8), ("32.5", 2)], "3.2");
    near(&ramp(&squat("25").first()), &[("20", 8)], "0");
    assert!(ramp(&squat("20").first()).is_empty());
}

#[test]
fn hardly_a_plate_comes_off_again_on_the_way_up() {
    // A plate now and then is the price of an even spread; each step as near as can be costs more.
    for (work, off) in
        [("85", 1), ("100", 1), ("117.5", 1), ("140", 2), ("162.5", 1), ("190", 2), ("240", 3)]
    {
        let entry = squat(work).first();
        let made: Vec<_> = entry.calls.iter().map(|call| side(&load(call).unwrap().rig)).collect();
        let nearest = |call: &barwright_domain::session::Call| {
            let meant = load(call).unwrap().meant.unwrap();
            side(&builtin_in(MassUnit::Kilogram).make("barbell", meant, Fit::Nearest).unwrap().rig)
        };
        let nearest: Vec<_> = entry.calls.iter().map(nearest).collect();
        assert_eq!(taken_off(&made), off, "{work}: {made:?}");
        assert!(off < taken_off(&nearest), "{work}: {nearest:?}");
        let most = kg(work).ratio(9, 10, Rounding::Down).unwrap();
        assert!(ramp(&entry).iter().all(|(made, _)| *made <= most), "{work}");
    }
}

#[test]
fn steps_that_are_written_stay_as_they_are() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Back squat"
        sets = 3
        reps = 5
        load = "140 kg"
        ramp = [{ load = "bar", reps = 10 }, { load = "55 %", reps = 4 }, { load = "95 %", reps = 1 }]
        "#,
    );
    near(&ramp(&table.first()), &[("20", 10), ("77", 4), ("133", 1)], "3.5");
}

#[test]
fn ramp_and_work_are_planned_together_for_few_changes() {
    let entry = squat("102.5").first();
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
    // The bar and a pair of tens, which are full size here, then evenly up.
    let asked = [("40", 5), ("75", 4), ("110", 3), ("145", 2)];
    near(&ramp(&entry), &asked, "8.75");
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
    assert_eq!(steps, [4, 1, 0, 2, 0, 0, 0]);
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
    assert_eq!(ramp(&table.entries()[1]).len(), 4);
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
    // A light start, then NSCA Essentials, 1RM protocol (published): 15 % steps below the first
    // single of 148 kg.
    near(&ramp(&entry), &[("20", 5), ("97.3", 5), ("111.9", 3), ("128.7", 2)], "4");
    let single = entry.calls.last().unwrap();
    assert_eq!((single.kind, single.rest), (SetKind::Test, Seconds::new(240)));
}

#[test]
fn a_test_that_begins_lighter_is_warmed_up_for_lighter() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Back squat"
        load = "80 %"
        test = { step = "2.5 %" }
        "#,
    )
    .max("back-squat", "160");
    let entry = table.first();
    near(&ramp(&entry), &[("20", 5), ("84.2", 5), ("96.8", 3), ("111.3", 2)], "4");
    // Well under the first single, and few repetitions in all.
    let single = load(entry.calls.last().unwrap()).unwrap().figure.unwrap();
    let most = single.ratio(9, 10, Rounding::Down).unwrap();
    assert!(ramp(&entry).iter().all(|(made, _)| *made <= most));
    assert!(ramp(&entry).iter().map(|(_, reps)| reps).sum::<Reps>() <= 15);
}

#[test]
fn the_body_alone_before_load_on_the_body() {
    let table =
        Table::of("[[session.exercise]]\nname = \"Pull-up\"\nreps = 5\nload = \"body + 20 kg\"")
            .weighs("80");
    assert_eq!(ramp(&table.first()), [(kg("0"), 5)]);
}
