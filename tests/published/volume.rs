//! Hard sets a muscle a week.

use barwright_domain::catalogue::{Catalogue, Muscle};
use barwright_domain::quantity::{Reps, Reserve};
use barwright_domain::volume::{Closeness, EASIEST_HARD, Ledger, Level, Set};

/// A worked week. A set counts 1 for a muscle trained directly; for one trained indirectly 1 in
/// the total, a half in the fractional count and none in the direct one (Pelland et al. 2024,
/// SportRxiv osf.io/6z3xu, published). All sets end with one left. By hand:
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

/// Weekly sets under 12 low, 12 to 20 moderate, over 20 high: Baz-Valle et al. 2022, J Hum Kinet
/// 81:199–210, published.
#[test]
fn levels_of_weekly_sets() {
    for (sets, level) in
        [(11, Level::Low), (12, Level::Moderate), (20, Level::Moderate), (21, Level::High)]
    {
        assert_eq!(Level::of_halves(sets * 2), level, "{sets}");
    }
}
