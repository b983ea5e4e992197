//! Hard sets a muscle a week.

use barwright_domain::catalogue::{Catalogue, Muscle};
use barwright_domain::quantity::{Reps, Reserve};
use barwright_domain::volume::{Closeness, EASIEST_HARD, Ledger, Level, Set};

use crate::play::Season;

/// A worked week. A set counts 1 for a muscle trained directly; for one trained indirectly 1 in
/// the total, a half in the fractional count and none in the direct one (Pelland, Remmert, Robinson
/// et al. 2024, "The resistance training dose response" (title and further authors from memory),
/// SportRxiv osf.io/6z3xu, published; which muscles an exercise trains is the catalogue's, common
/// practice). All sets end with one left. By hand:
///
/// | | sets × reps | direct | indirect |
/// |---|---|---|---|
/// | bench press | 3 × 8 | chest, triceps | front deltoid |
/// | pull-up | 3 × 8 | lats, upper back | biceps, rear deltoid, forearms |
/// | dumbbell incline press | 3 × 10 | chest, front deltoid | triceps |
/// | barbell row | 3 × 8 | upper back, lats | biceps, rear deltoid, … |
/// | overhead press | 3 × 6 | front deltoid, triceps | side deltoid, … |
/// | triceps pushdown | 2 × 12 | triceps | |
/// | back squat | 4 × 5, under six | quadriceps, glutes | adductors, … |
///
/// Triceps: direct 3 + 3 + 2 = 8, indirect 3; total 11, fractional 8 + 1.5 = 9.5.
/// Front deltoid: direct 3 + 3 = 6, indirect 3; total 9, fractional 7.5.
/// Biceps: direct 0, indirect 3 + 3 = 6; total 6, fractional 3.
/// Chest 6 direct; lats 6 direct. Quadriceps: none of six repetitions or more, 4 of fewer.
#[test]
fn a_worked_week() {
    let catalogue = Catalogue::builtin();
    let week: [(&str, usize, Reps); 7] = [
        ("bench-press", 3, 8),
        ("pull-up", 3, 8),
        ("dumbbell-incline-press", 3, 10),
        ("barbell-row", 3, 8),
        ("overhead-press", 3, 6),
        ("triceps-pushdown", 2, 12),
        ("back-squat", 4, 5),
    ];
    let one_left = Closeness::Called(Reserve::from_halves(2).unwrap());
    let sets = week.into_iter().flat_map(|(slug, sets, reps)| {
        let exercise = catalogue.get(slug).unwrap();
        let set = Set { week: 1, exercise, side: None, reps: Some(reps), closeness: one_left };
        std::iter::repeat_n(set, sets)
    });
    let ledger = Ledger::of(EASIEST_HARD, sets);
    for (muscle, direct, total, halves) in [
        (Muscle::Triceps, 8, 11, 19),
        (Muscle::FrontDeltoid, 6, 9, 15),
        (Muscle::Biceps, 0, 6, 6),
        (Muscle::Chest, 6, 6, 12),
        (Muscle::Lats, 6, 6, 12),
        (Muscle::Quadriceps, 0, 0, 0),
    ] {
        let count = ledger.week(1, muscle).sets.both();
        assert_eq!((count.direct, count.total(), count.halves()), (direct, total, halves));
    }
    assert_eq!(ledger.week(1, Muscle::Quadriceps).under_six.both().direct, 4);
}

/// Weekly sets under 12 low, 12 to 20 moderate, over 20 high: Baz-Valle, Balsalobre-Fernández,
/// Alix-Fages, Santos-Concejero 2022, "A systematic review of the effects of different resistance
/// training volumes on muscle hypertrophy", J Hum Kinet 81:199–210, published.
#[test]
fn levels_of_weekly_sets() {
    for (sets, level) in
        [(11, Level::Low), (12, Level::Moderate), (20, Level::Moderate), (21, Level::High)]
    {
        assert_eq!(Level::of_halves(sets * 2), level, "{sets}");
    }
}

/// Baz-Valle, Fontes-Villalba, Santos-Concejero 2021, "Total number of sets as a training volume
/// quantification method for muscle hypertrophy: a systematic review", JSCR 35(3):870–878, published:
/// counting sets near failure is valid from 6 to 20 repetitions and more. Fewer than six stand apart.
#[test]
fn sets_count_from_six_repetitions() {
    let catalogue = Catalogue::builtin();
    let exercise = catalogue.get("bench-press").unwrap();
    let closeness = Closeness::Called(Reserve::from_halves(2).unwrap());
    for (reps, counted) in [(5, 0), (6, 1), (20, 1), (25, 1)] {
        let set = Set { week: 1, exercise, side: None, reps: Some(reps), closeness };
        let chest = Ledger::of(EASIEST_HARD, [set]).week(1, Muscle::Chest);
        assert_eq!(chest.sets.both().direct, counted, "{reps}");
        assert_eq!(chest.under_six.both().direct, 1 - counted, "{reps}");
    }
}

/// How many sets a session of one row comes to in history.
fn sets_done(row: &str, slug: &str) -> usize {
    let row = format!("[[session.exercise]]\nramp = \"none\"\n{row}");
    let mut season = Season::of(&["Monday"], &row);
    season.session(1, 1, &[]);
    season.lifter.past[slug][0].sets.len()
}

/// Tufano, Brown, Haff 2017, "Theoretical and practical aspects of different cluster set structures: a
/// systematic review", JSCR 31(3):848–867, published: a cluster set has its rests inside one set. It
/// is counted once, however many blocks it has.
#[test]
fn a_cluster_is_one_set() {
    let cluster =
        "name = \"Deadlift\"\nsets = 2\nload = \"100 kg\"\ncluster = { blocks = [2, 2, 2] }";
    assert_eq!(sets_done(cluster, "deadlift"), 2);
}

/// Coleman, Harrison, Arias et al. 2022, "Muscular adaptations in drop set vs. traditional training: a
/// meta-analysis" (title from memory), Int J Strength Cond 2(1), published (five studies): drop sets do for size as
/// much as ordinary sets, 0.08 apart. A set with its drops is counted as one hard set, neither as
/// three nor as none.
#[test]
fn a_drop_set_is_one_set() {
    let drops = "name = \"Leg extension\"\nsets = 2\nreps = 10\nload = \"49 kg\"\ndrop = [\"20 %\", \
                 \"20 %\"]";
    assert_eq!(sets_done(drops, "leg-extension"), 2);
}
