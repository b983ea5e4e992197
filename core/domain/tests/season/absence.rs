//! Days without a lift, deloads, and what does not multiply.

use barwright_domain::owners::{Cutting, Why};
use barwright_domain::session::Because;

use crate::play::{Season, kg, meant, of, plan, why, work};

const TWO: &str = r#"
    [[session.exercise]]
    name = "Back squat"
    weeks = "1-2"
    sets = 4
    reps = 5
    load = "80 %"
    ramp = "none"
    [[session.exercise]]
    name = "Leg curl"
    sets = 2
    reps = 10
    load = "pin 5"
    "#;

/// 31 days without the squat while other training went on: the squat is cut by its own days, beyond
/// the week that the plan itself lets pass, and comes back over four sessions that are made. The leg
/// curl, which was trained, is not.
#[test]
fn a_lay_off_goes_by_the_lifts_own_days() {
    let mut season = Season::of(&["Monday"], &TWO.replace("    weeks = \"1-2\"\n", ""));
    season.max("back-squat", "150");
    season.session(1, 1, &[]);
    season.days(29);
    // Something else in between.
    let curl: Vec<_> = season.sheet(1, 1).blocks.split_off(1);
    let mut sheet = season.sheet(1, 1);
    sheet.blocks = curl;
    season.days(-2);
    season.play(sheet, &[], true);
    season.days(2);
    let entry = season.entry(2, 1, "back-squat");
    assert_eq!(meant(work(&entry)[0]), Some(kg("96")));
    assert!(
        why(&entry).iter().any(|why| matches!(
            why,
            Because::Cut { cut, .. } if cut.why == Cutting::LayOff { days: Some(31) }
        )),
        "{:?}",
        why(&entry)
    );
    assert_eq!(season.loads(2, 1, "leg-curl"), ["pin 5", "pin 5"]);
    // 20 % comes back in four sessions: 85, 90, 95 and all of 120.
    for (week, load) in (3..).zip(["102", "107.5", "113.5", "120"]) {
        season.session(week - 1, 1, &[]);
        assert_eq!(season.load(week, 1, "back-squat"), load);
    }
}

/// A session that is missed brings nothing back.
#[test]
fn it_comes_back_only_where_it_is_made() {
    let mut season = Season::of(&["Monday"], &TWO.replace("    weeks = \"1-2\"\n", ""));
    season.max("back-squat", "150");
    season.session(1, 1, &[]);
    season.days(20);
    // 22 days are 15 beyond the plan's own seven: a tenth less, and half the sets.
    assert_eq!(season.loads(2, 1, "back-squat"), ["107.5", "107.5"]);
    season.session(2, 1, &[("back-squat", &[crate::play::reps(3)])]);
    assert_eq!(season.load(3, 1, "back-squat"), "107.5");
    season.session(3, 1, &[]);
    assert_eq!(season.load(4, 1, "back-squat"), "113.5");
}

/// A deload after pain or days off: of cuts that hold at once the deepest counts, for load and sets
/// each.
#[test]
fn cuts_do_not_multiply() {
    let text = plan(
        &["Monday"],
        "[[session.exercise]]\nname = \"Barbell row\"\nsets = 5\nreps = 8\nload = \"100 kg\"\nramp = \"none\"",
    ) + "[deload]\nsets_off = \"40 %\"\nload_off = \"5 %\"\n[[week]]\nnumber = 2\nkind = \"deload\"\n";
    let mut season = Season::new(&text);
    season.session(1, 1, &[]);
    assert_eq!(season.loads(2, 1, "barbell-row"), ["95", "95", "95"]);
    season.days(18);
    // Days off take a tenth and half the sets (2.5, so 3 stay): deeper than the deload in both.
    assert_eq!(season.loads(2, 1, "barbell-row"), ["90", "90", "90"]);
}

/// A deload takes the drops first, and leaves a cluster its pauses.
#[test]
fn a_deload_takes_parts_first() {
    use barwright_domain::call::Structure;
    let text = plan(
        &["Monday"],
        "[[session.exercise]]\nname = \"Leg extension\"\nsets = 2\nreps = 12\nload = \"42 kg\"\ndrop = [\"20 \
         %\"]\n[[session.exercise]]\nname = \"Deadlift\"\nsets = 1\nload = \"150 kg\"\nramp = \"none\"\ncluster = \
         { blocks = [2, 2, 2, 2], pause = \"30 s\" }",
    ) + "[[week]]\nnumber = 2\nkind = \"deload\"\nsets_off = \"50 %\"\n";
    let season = Season::new(&text);
    let extension = season.entry(2, 1, "leg-extension");
    assert!(work(&extension).iter().all(|call| call.structure == Structure::Straight));
    let deadlift = season.entry(2, 1, "deadlift");
    let Structure::Cluster { blocks, pause } = &work(&deadlift)[0].structure else { panic!() };
    assert_eq!((blocks.as_slice(), pause.count()), (&[2, 2][..], 30));
}

/// A light week is no evidence: nothing steps in it, and nothing is lost by it.
#[test]
fn a_light_week_neither_steps_nor_takes() {
    let text = plan(
        &["Monday"],
        "[[session.exercise]]\nname = \"Barbell row\"\nsets = 2\nreps = \"8-10\"\nload = \"60 kg\"\nramp = \
         \"none\"\nnext = \"double progression\"",
    ) + "[[week]]\nnumber = 2\nkind = \"deload\"\n";
    let mut season = Season::new(&text);
    season.session(1, 1, &[("barbell-row", &[crate::play::reps(10), crate::play::reps(10)])]);
    assert_eq!(season.load(2, 1, "barbell-row"), "56");
    let light = season.session(2, 1, &[("barbell-row", &[crate::play::reps(10)])]);
    assert_eq!(of(&light, "track").why, Why::UnderCut);
    assert_eq!(season.load(3, 1, "barbell-row"), "62.5");
}
