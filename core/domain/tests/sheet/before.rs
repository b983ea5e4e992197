//! What was done before, in today's loads.

use barwright_domain::call::{Amount, HowMany};
use barwright_domain::history::DoneSet;
use barwright_domain::prescribe;
use barwright_domain::progress::next::Reason;
use barwright_domain::quantity::{Percent, RepRange, Reserve};
use barwright_domain::session::{Because, CallLoad, Ending};

use crate::desk::{Table, asking, done, figure, figures, kg, load, why, work};

const CURL: &str = r#"
    [[session.exercise]]
    name = "Dumbbell curl"
    sets = 2
    reps = "8-10"
    left = 2
    next = "double progression"
    "#;

fn curls(reps: [u16; 2]) -> Vec<DoneSet> {
    let set = |round: u16, reps| asking(done("dumbbell-curl", round, Some("12.5"), reps), 8, 10);
    vec![set(1, reps[0]), set(2, reps[1])]
}

#[test]
fn by_feel_goes_on_from_last_time() {
    let table = Table::of(CURL);
    let chosen = table.first();
    assert!(work(&chosen).iter().all(|call| matches!(call.load, CallLoad::Chosen { .. })));
    assert_eq!(chosen.last, None);

    // Below the top: the same load, one repetition more than the weakest set.
    let entry = Table::of(CURL).did(3, Some(1), curls([10, 9])).first();
    assert_eq!(figures(&entry), [Some(kg("12.5")); 2]);
    assert!(why(work(&entry)[0]).contains(&Because::Aim(Amount::Reps(10))));
    let last = entry.last.unwrap();
    assert_eq!(
        (last.figure, last.amounts),
        (Some(kg("12.5")), vec![Amount::Reps(10), Amount::Reps(9)])
    );

    // At the top in every set: the next dumbbell.
    let entry = Table::of(CURL).did(3, Some(1), curls([10, 10])).first();
    assert_eq!(figures(&entry), [Some(kg("15")); 2]);
    assert!(matches!(
        why(work(&entry)[0]),
        [Because::NextTime { found: Reason::TopReached { .. }, from: None, to: Some(to), .. }]
            if *to == kg("15")
    ));
}

#[test]
fn a_change_held_back_stays_away() {
    let mut table = Table::of(CURL).did(3, Some(1), curls([10, 10]));
    table.lifter.desk.held_back.push("dumbbell-curl".to_owned());
    assert_eq!(figures(&table.first()), [Some(kg("12.5")); 2]);
}

#[test]
fn a_load_for_fewer_repetitions_is_not_carried_to_more() {
    let by_feel = |reps| {
        let table = Table::of(
            r#"
            [[session.exercise]]
            name = "Pulldown"
            sets = 1
            reps = 12
            "#,
        );
        figure(work(&table.did(3, None, vec![done("pulldown", 1, Some("50"), reps)]).first())[0])
    };
    assert_eq!(by_feel(6), None);
    assert_eq!(by_feel(12), Some(kg("50")));
    assert_eq!(by_feel(15), Some(kg("50")));
}

#[test]
fn rounding_is_not_progress() {
    // 77.5 % of 142.5 was meant as 110.4375 and made 110: by effort it steps from what was meant.
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Back squat"
        sets = 1
        reps = 5
        load = "77.5 %"
        left = 2
        next = ["as planned", "by effort"]
        "#,
    )
    .max("back-squat", "142.5");
    let set = DoneSet {
        meant: Some(kg("110.4375")),
        left: Reserve::from_halves(6),
        target: Some(crate::desk::left(2, 2)),
        ..done("back-squat", 1, Some("110"), 5)
    };
    let entry = table.did(7, Some(1), vec![set]).first();
    // One more left than targeted: 4 % more of 110.4375 = 114.855, and 115 is nearest.
    let set = work(&entry)[0];
    assert_eq!((load(set).unwrap().meant, figure(set)), (Some(kg("114.855")), Some(kg("115"))));
    assert!(why(set).iter().any(|why| matches!(
        why,
        Because::NextTime { found: Reason::OffTarget { change, .. }, .. }
            if *change == Percent::whole(4)
    )));
}

#[test]
fn a_rule_moves_every_set_of_a_row_alike() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Bench press"
        reps = [5, 3]
        load = ["80 %", "90 %"]
        misses = ["5 % less"]
        "#,
    )
    .max("bench-press", "100");
    assert_eq!(figures(&table.first()), [Some(kg("80")), Some(kg("90"))]);
    let short = |round, figure, reps: u16| {
        asking(done("bench-press", round, Some(figure), reps - 1), reps, reps)
    };
    let entry = table.did(3, Some(1), vec![short(1, "80", 5), short(2, "90", 3)]).first();
    // 5 % less of 80 is 76, and the second set goes the same way: 90 · 76 / 80 = 85.5.
    assert_eq!(load(work(&entry)[1]).unwrap().meant, Some(kg("85.5")));
    assert_eq!(figures(&entry), [Some(kg("76")), Some(kg("85"))]);
}

#[test]
fn pain_holds_the_load() {
    let hurt = |set: DoneSet| DoneSet { ending: Ending::Pain, ..set };
    let sets = curls([10, 10]).into_iter().map(hurt).collect();
    let entry = Table::of(CURL).did(3, Some(1), sets).first();
    assert_eq!(figures(&entry), [Some(kg("12.5")); 2]);
    assert!(matches!(why(work(&entry)[0]), [Because::NextTime { found: Reason::Pain, .. }, ..]));
}

#[test]
fn after_two_weeks_off_less_load_and_half_the_sets() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Back squat"
        sets = 4
        reps = 5
        load = "80 %"
        "#,
    )
    .max("back-squat", "150");
    let entry = table.did(14, Some(1), vec![done("back-squat", 1, Some("120"), 5)]).first();
    // Over 10 days: 10 % off 120, and half of four sets (common practice).
    let meant: Vec<_> = work(&entry).iter().map(|call| load(call).unwrap().meant).collect();
    assert_eq!(meant, [Some(kg("108")); 2]);
}

#[test]
fn the_last_four_weeks_estimates_support_so_much() {
    let table = |days| {
        let table = Table::of(
            r#"
            [[session.exercise]]
            name = "Bench press"
            sets = 3
            reps = 5
            load = "75 %"
            left = 2
            "#,
        );
        let hard = DoneSet { left: Some(Reserve::NONE), ..done("bench-press", 1, Some("120"), 5) };
        table.max("bench-press", "130").did(days, None, vec![hard])
    };
    // Epley: 120 · (1 + 5/30) = 140; five with two left are seven to failure: 140 / (1 + 7/30).
    let supported = table(7).first().supported.unwrap();
    assert!(supported.distance(kg("113.513514")) < kg("0.001"), "{supported:?}");
    assert_eq!(table(40).first().supported, None);
}

#[test]
fn what_it_will_be_next_time() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Back squat"
        sets = 1
        reps = 5
        load.by_week = ["70 %", "75 %", "80 %", "60 %"]
        "#,
    )
    .max("back-squat", "100");
    let next = |week| {
        prescribe::next_time(table.source(week, 0), &table.lifter, "back-squat")
            .map(|entry| figure(work(&entry)[0]).unwrap())
    };
    assert_eq!((next(0), next(2), next(3)), (Some(kg("75")), Some(kg("60")), None));
}

#[test]
fn where_the_smallest_step_is_too_big_the_range_goes_on() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Dumbbell bench press"
        sets = 1
        reps = "8-10"
        load = "10 kg"
        next = "double progression"
        "#,
    );
    let set = DoneSet {
        left: Some(Reserve::NONE),
        ..asking(done("dumbbell-bench-press", 1, Some("10"), 10), 8, 10)
    };
    let entry = table.did(3, Some(1), vec![set]).first();
    // Ten at 10 kg is a max of 13.33 (Epley): at 12.5 kg that is two repetitions, not eight.
    let call = work(&entry)[0];
    assert_eq!(figure(call), Some(kg("10")));
    assert_eq!(call.how_many, HowMany::Reps(RepRange { from: 8, to: 11 }));
}
