//! Percent of the max for repetitions, and effort.

use barwright_domain::progress::percent;
use barwright_domain::quantity::{Numerals, Percent, Reserve, Rpe};

/// NSCA Essentials, 4th ed. (Haff & Triplett 2016), Table 17.7, published. Its rows for 11 and 12
/// differ between copies and are not checked.
#[test]
fn the_textbook_table() {
    for (reps, whole) in [
        (1, 100),
        (2, 95),
        (3, 93),
        (4, 90),
        (5, 87),
        (6, 85),
        (7, 83),
        (8, 80),
        (9, 77),
        (10, 75),
        (15, 65),
    ] {
        let row = percent::for_reps(reps, Reserve::NONE).unwrap();
        assert_eq!(row.percent, Percent::whole(whole), "{reps}");
        assert!(!row.interpolated, "{reps}");
    }
    assert!(percent::for_reps(11, Reserve::NONE).unwrap().interpolated);
    assert!(percent::for_reps(12, Reserve::NONE).unwrap().interpolated);
}

/// Computed from that table and Zourdos et al. 2016: 5 repetitions with 2 left are 7 to failure,
/// 83 %.
#[test]
fn repetitions_and_what_is_left() {
    let two_left = Reserve::read("2", Numerals::Point).unwrap();
    assert_eq!(percent::for_reps(5, two_left).unwrap().percent, Percent::whole(83));
    let eight = Rpe::read("8", Numerals::Point).unwrap();
    assert_eq!(percent::for_reps(5, eight.reserve()).unwrap().percent, Percent::whole(83));
}

/// Zourdos et al. 2016, JSCR 30(1):267–275, Fig. 1, published: RPE 10 leaves nothing, 9 one, 8 two,
/// 7 three. 8.5 is one to two and 7.5 two to three: the half between.
#[test]
fn rating_and_reserve() {
    for (rpe, left) in
        [("10", "0"), ("9", "1"), ("8.5", "1.5"), ("8", "2"), ("7.5", "2.5"), ("7", "3")]
    {
        let rpe = Rpe::read(rpe, Numerals::Point).unwrap();
        assert_eq!(rpe.reserve().print(Numerals::Point), left);
    }
}
