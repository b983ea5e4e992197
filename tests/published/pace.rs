//! The robust fit of calls against slowing, against a general library.

use barwright_domain::progress::pace::{PaceFit, Point, STOP_AT, Slowing};
use barwright_domain::quantity::Reserve;

/// scipy 1.17.1 (PyPI), `scipy.stats.theilslopes(y, x, method="joint")` on the same twelve sets,
/// seen: slope −0.013461538461538462, intercept 9.548076923076923. `x` is the slowing in
/// thousandths, `y` half repetitions left.
#[test]
fn the_same_line_as_a_general_library() {
    let x = [120, 180, 260, 300, 340, 410, 450, 520, 610, 700, 90, 240];
    let y = [8, 7, 6, 6, 5, 4, 4, 3, 1, 0, 8, 9];
    let points: Vec<_> = x
        .into_iter()
        .zip(y)
        .map(|(x, y)| Point { slowing: Slowing(x), left: Reserve::from_halves(y).unwrap() })
        .collect();
    let fit = PaceFit::of(&points).unwrap();
    assert!((fit.slope() - -0.013_461_538_461_538_462).abs() < 1e-15);
    assert!((fit.intercept() - 9.548_076_923_076_923).abs() < 1e-12);
    // At 415 thousandths: 9.548 − 5.587 = 3.96 halves, 19.8 tenths of a repetition.
    assert_eq!(fit.estimate(Slowing(415)).left_tenths, 20);
}

/// Pareja-Blanco, Rodríguez-Rosell, Sánchez-Medina et al. 2017, "Effects of velocity loss during
/// resistance training on athletic performance, strength gains and muscle adaptations", Scand J Med
/// Sci Sports 27:724–735, published: sets stopped at 20 % of velocity lost came to fewer repetitions
/// than sets stopped at 40 %. In durations that is a quarter longer against two thirds (computed:
/// 1 / 0.8 and 1 / 0.6, over the same way); that the lowering, which is in our taps, slows as much is
/// assumed. Where we stop comes from this study, so what is checked is what a set comes to: the earlier
/// of the two stops it, and neither more nor less than a quarter does.
#[test]
fn velocity_lost_is_time_gained() {
    let after = |last: u32| Slowing::of(&[1_200, 1_200, 1_400, last, last]).unwrap();
    let (a_fifth, two_fifths) = (after(1_500), after(2_000));
    assert_eq!((a_fifth, two_fifths), (Slowing(250), Slowing(666)));
    assert!(a_fifth >= STOP_AT && after(1_498) < STOP_AT && two_fifths > a_fifth);
}

/// International Journal of Sports Physiology and Performance 2020, doi 10.1123/ijspp.2020-0214
/// (authors and title not seen), published at second hand: the velocity lost tracks the share of the possible
/// repetitions that were done. A lifter's own line falls the same way: slower is nearer failure.
#[test]
fn slower_is_nearer_failure() {
    let points: Vec<_> = (0..12_u8)
        .map(|set| Point {
            slowing: Slowing(600 - 50 * i32::from(set)),
            left: Reserve::from_halves(set).unwrap(),
        })
        .collect();
    let fit = PaceFit::of(&points).unwrap();
    assert!(fit.slope() < 0.0);
    let left = |slowing| fit.estimate(Slowing(slowing)).left_tenths;
    assert!(left(100) > left(300) && left(300) > left(550));
}
