//! From what the plan says to what is on, worked by hand.

use barwright_domain::call::{HowMany, Side};
use barwright_domain::catalogue::Counting;
use barwright_domain::desk::DeskEvent;
use barwright_domain::equipment::Rig;
use barwright_domain::owners::{Change, Owner};
use barwright_domain::prescribe::{self, Need};
use barwright_domain::quantity::{Percent, RepRange, Seconds};
use barwright_domain::session::{Because, CallLoad, Kit, SetKind};

use crate::desk::{Table, done, figure, figures, kg, left, load, on_side, why, work};

#[test]
fn a_share_of_the_max_as_these_plates_make_it() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Back squat"
        sets = 2
        reps = 5
        load = "77.5 %"
        "#,
    );
    // Without a max nothing is guessed: the lifter finds the load, and the sheet says what helps.
    let blind = table.week(0);
    assert_eq!(blind.needs, [Need::Max("back-squat".to_owned())]);
    let entry = blind.sheet.entries().next().unwrap();
    assert!(entry.calls.iter().all(|call| matches!(call.load, CallLoad::Chosen { .. })));
    assert_eq!(why(&entry.calls[0]), [Because::NothingToGoBy]);

    let table = table.max("back-squat", "142.5");
    let entry = table.first();
    // 0.775 · 142.5 = 110.4375; a pair of half kilograms is the smallest step here.
    let set = work(&entry)[0];
    assert_eq!((load(set).unwrap().meant, figure(set)), (Some(kg("110.4375")), Some(kg("110"))));
    assert_eq!(
        why(set),
        [
            Because::ShareOfMax {
                share: Percent::from_hundredths(7_750),
                max: kg("142.5"),
                day: crate::desk::TODAY - 30,
                of: None,
                gives: kg("110.4375"),
            },
            Because::Made { asked: kg("110.4375"), made: kg("110") },
        ]
    );
    assert!(table.week(0).needs.is_empty());
}

#[test]
fn working_maxes_and_other_lifts() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Overhead press"
        reps = 6
        load = "78 % of working max"
        [[session.exercise]]
        name = "Front squat"
        percent_of = "Back squat working max"
        reps = 4
        load = "66 %"
        "#,
    )
    .max("overhead-press", "70")
    .max("back-squat", "150");
    let entries = table.entries();
    // 0.95 · 70 = 66.5, of which 0.78 is 51.87; 0.95 · 150 = 142.5, of which 0.66 is 94.05.
    assert_eq!(load(work(&entries[0])[0]).unwrap().meant, Some(kg("51.87")));
    assert_eq!(load(work(&entries[1])[0]).unwrap().meant, Some(kg("94.05")));
    assert!(why(work(&entries[1])[0]).iter().any(|why| matches!(
        why,
        Because::ShareOfMax { of: Some(lift), max, .. } if lift == "Back squat" && *max == kg("142.5")
    )));
}

#[test]
fn the_lightest_within_a_range() {
    let range = |plates: &str| {
        let mut table = Table::of(
            r#"
            [[session.exercise]]
            name = "Bench press"
            reps = 6
            load = "76-82 %"
            "#,
        )
        .max("bench-press", "100");
        table.gym.plates.retain(|plate| plates.split(' ').any(|mass| kg(mass) == plate.mass));
        figure(work(&table.first())[0])
    };
    assert_eq!(range("20 10 5 2.5 0.5"), Some(kg("76")));
    // Steps of ten: 80 lies within, and 70 is below it.
    assert_eq!(range("20 10 5"), Some(kg("80")));
    // 60 or 100: neither lies within, so the nearest.
    assert_eq!(range("20"), Some(kg("60")));
}

#[test]
fn what_is_moved_is_the_body_and_the_load() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Chin-up"
        reps = 4
        load = "80 %"
        [[session.exercise]]
        name = "Push-up"
        reps = 10
        [[session.exercise]]
        name = "Assisted pull-up"
        reps = 8
        load = "body - 21 kg"
        "#,
    )
    .max("chin-up", "110");
    assert_eq!(table.week(0).needs, [Need::BodyMass]);
    let entries = table.weighs("80").entries();
    // 0.8 · 110 = 88 moved, 80 of it the body.
    assert_eq!(figure(work(&entries[0])[0]), Some(kg("8")));
    let push_up = load(work(&entries[1])[0]).unwrap();
    // The catalogue's two thirds: 0.67 · 80.
    assert_eq!((push_up.figure, push_up.moved()), (Some(kg("0")), Some(kg("53.6"))));
    assert_eq!(push_up.rig, Rig::Body);
    let assisted = load(work(&entries[2])[0]).unwrap();
    assert_eq!((assisted.figure, assisted.moved()), (Some(kg("-20")), Some(kg("60"))));
}

#[test]
fn help_that_this_gym_has_not_is_never_made_up() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Pull-up"
        reps = 5
        load = "body - 20 kg"
        "#,
    );
    assert!(matches!(work(&table.first())[0].load, CallLoad::Chosen { .. }));
}

#[test]
fn the_set_before_a_share_of_it_is_the_top_set() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Front squat"
        [[session.exercise.set]]
        reps = 1
        rpe = 8
        load = "90 %"
        [[session.exercise.set]]
        sets = 2
        reps = 5
        load = "85 % of top set"
        "#,
    )
    .max("front-squat", "120");
    let entry = table.first();
    let kinds: Vec<_> = work(&entry).iter().map(|call| (call.kind, call.row, call.round)).collect();
    assert_eq!(kinds, [(SetKind::Top, 0, 1), (SetKind::BackOff, 1, 1), (SetKind::BackOff, 1, 2)]);
    let share = Percent::whole(85);
    assert_eq!(work(&entry)[1].load, CallLoad::AfterTop { share });
}

#[test]
fn a_row_of_some_weeks_keeps_its_number() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Back squat"
        [[session.exercise.set]]
        weeks = "2-4"
        reps = 1
        load = "90 %"
        [[session.exercise.set]]
        reps = 5
        load = "75 %"
        "#,
    )
    .max("back-squat", "100");
    assert_eq!(work(&table.first()).iter().map(|call| call.row).collect::<Vec<_>>(), [1]);
    let second = table.week(1).sheet.entries().next().cloned().unwrap();
    assert_eq!(work(&second).iter().map(|call| call.row).collect::<Vec<_>>(), [0, 1]);
}

#[test]
fn each_side_has_its_own_call_the_weaker_first() {
    let body = r#"
        [[session.exercise]]
        name = "Rear-foot-raised split squat"
        load = "20 kg"
        rest = { after_set = "90 s", between_sides = "30 s" }
        [[session.exercise.set]]
        sets = 2
        reps = 8
        [[session.exercise.set]]
        side = "right"
        sets = 1
        reps = 11
        "#;
    let sides = |table: &Table| {
        let entry = table.first();
        let calls = work(&entry);
        calls.iter().map(|call| (call.row, call.round, call.side.unwrap())).collect::<Vec<_>>()
    };
    let (left, right) = (Side::Left, Side::Right);
    let table = Table::of(body);
    assert_eq!(table.first().rest_between_sides, Seconds::new(30));
    assert_eq!(
        sides(&table),
        [(0, 1, left), (0, 1, right), (0, 2, left), (0, 2, right), (1, 1, right)]
    );
    let slug = "rear-foot-raised-split-squat";
    let table = table.did(
        3,
        vec![
            on_side(done(slug, 1, Some("20"), 8), left),
            on_side(done(slug, 1, Some("20"), 6), right),
        ],
    );
    assert_eq!(
        sides(&table),
        [(0, 1, right), (0, 1, left), (0, 2, right), (0, 2, left), (1, 1, right)]
    );
}

#[test]
fn drops_and_easier_variations_have_loads_of_their_own() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Leg extension"
        reps = 12
        load = "63 kg"
        drop = ["20 %", "25 %"]
        [[session.exercise]]
        name = "Dip"
        reps = 6
        load = "body + 10 kg"
        continued = [{ name = "Push-up", load = "body", reps = "5 or more" }]
        "#,
    )
    .weighs("80");
    let entries = table.entries();
    let part_figures = |at: usize| {
        let loads = &work(&entries[at])[0].part_loads;
        loads.iter().map(|load| load.figure.unwrap()).collect::<Vec<_>>()
    };
    // 63 − 20 % = 50.4, a stack in sevens makes 49; then 50.4 − 25 % = 37.8, and 35 is nearest.
    assert_eq!(part_figures(0), [kg("49"), kg("35")]);
    assert_eq!(part_figures(1), [kg("0")]);
    let push_up = &work(&entries[1])[0].part_loads[0];
    assert_eq!(push_up.moved(), Some(kg("53.6")));
}

#[test]
fn pins_and_named_set_ups_have_no_figures() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Leg curl"
        reps = 12
        load = "pin 7"
        [[session.exercise]]
        name = "Leg curl"
        reps = 12
        load = "pin 99"
        [[session.exercise]]
        name = "Box squat"
        reps = 2
        load = "80 kg with light chains"
        "#,
    );
    let entries = table.entries();
    let pin = load(work(&entries[0])[0]).unwrap();
    assert!(matches!(&pin.rig, Rig::Stack { pin, .. } if pin == "7"));
    assert_eq!((pin.figure, pin.moved()), (None, None));
    // No stack here has such a pin.
    assert!(matches!(work(&entries[1])[0].load, CallLoad::Chosen { .. }));
    let chains = load(work(&entries[2])[0]).unwrap();
    assert_eq!(chains.set_up.as_deref(), Some("light chains"));
    assert_eq!((chains.figure, chains.moved()), (Some(kg("80")), None));
}

#[test]
fn by_effort_alone_the_percent_table_gives_a_main_lifts_load() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Back squat"
        sets = 2
        reps = 5
        left = 2
        [[session.exercise]]
        name = "Leg press"
        reps = 10
        left = 2
        "#,
    )
    .max("back-squat", "100")
    .max("leg-press", "200");
    let entries = table.entries();
    // Five with two left are seven to failure: 83 % (NSCA Essentials, 4th ed., Table 17.7,
    // published). Machines differ far too much for a table.
    assert!(work(&entries[0]).iter().all(|call| load(call).unwrap().meant == Some(kg("83"))));
    assert_eq!(work(&entries[0])[0].effort, Some(left(2, 2)));
    assert!(matches!(work(&entries[1])[0].load, CallLoad::Chosen { .. }));
}

#[test]
fn what_this_gym_lacks_and_what_to_do_instead() {
    let mut table = Table::of(
        r#"
        [[session.exercise]]
        name = "Machine row"
        reps = 11
        load = "45 kg"
        substitutes = ["Seated cable row", { name = "Barbell row", sets = 4, reps = "9-13" }]
        [[session.exercise]]
        name = "Deadlift"
        reps = 5
        load = "100 kg"
        wear = ["belt", "straps"]
        [[session.exercise]]
        name = "Pull-up"
        reps = 5
        load = "body + 10 kg"
        "#,
    );
    table.gym.machines.clear();
    table.gym.stacks.clear();
    table.gym.also.retain(|one| one != "belt");
    let entries = table.entries();
    assert_eq!(entries[0].lacks, ["row-machine"]);
    let instead: Vec<_> =
        entries[0].instead.iter().map(|one| (one.exercise.as_str(), one.possible)).collect();
    assert_eq!(instead, [("seated-cable-row", false), ("barbell-row", true)]);
    assert!(matches!(work(&entries[0])[0].load, CallLoad::Chosen { .. }));
    assert_eq!(
        (entries[1].lacks.len(), entries[1].wear.clone()),
        (0, vec![Kit::Belt, Kit::Straps])
    );
    assert_eq!(entries[2].lacks, ["belt"]);

    let instead =
        prescribe::substitute(table.source(0, 0), &table.lifter, "machine-row", "barbell-row");
    let instead = instead.unwrap();
    assert_eq!(instead.stands_in_for.as_deref(), Some("machine-row"));
    assert_eq!(work(&instead).len(), 4);
    // Its own history, and none yet: the load is never carried over.
    assert!(work(&instead).iter().all(|call| matches!(call.load, CallLoad::Chosen { .. })));
    // Found once, it is carried for the exercise itself, for as many or fewer.
    let owner = Owner::Loose("barbell-row".to_owned());
    let asked = HowMany::Reps(RepRange { from: 12, to: 13 });
    let changes = vec![Change::Load { load: kg("25"), counting: Counting::Total, asked }];
    table.lifter.desk.apply(2, &DeskEvent::Said { owner, changes, day: 1 });
    let instead =
        prescribe::substitute(table.source(0, 0), &table.lifter, "machine-row", "barbell-row");
    assert_eq!(figures(&instead.unwrap()), [Some(kg("25")); 4]);
}

#[test]
fn supersets_are_one_block_with_their_own_rests() {
    let table = Table::of(
        r#"
        [[session.exercise]]
        name = "Bench press"
        superset = "press and row"
        sets = 3
        reps = 6
        load = "60 kg"
        rest = { in_superset = "0 s", after_superset = "2:00" }
        [[session.exercise]]
        name = "Seated cable row"
        superset = "press and row"
        sets = 2
        reps = 10
        left = 2
        [[session.exercise]]
        name = "Plank"
        seconds = 45
        rest = "0 s"
        "#,
    );
    let sheet = table.week(0).sheet;
    let sizes: Vec<_> = sheet.blocks.iter().map(|block| block.entries.len()).collect();
    assert_eq!(sizes, [2, 1]);
    assert_eq!(sheet.blocks[0].rest_within, Seconds::new(0));
    assert_eq!(sheet.blocks[0].rest_after_round, Seconds::new(120));
    // A rest of nothing is allowed, and a goal's where nothing is said: strength 180 s.
    assert_eq!(sheet.blocks[1].entries[0].calls[0].rest, Seconds::new(0));
    assert_eq!(work(&sheet.blocks[0].entries[1])[0].rest, Seconds::new(180));
}
