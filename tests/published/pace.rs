//! The robust fit of calls against slowing, against a general library.

use barwright_domain::progress::pace::{PaceFit, Point, Slowing};
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
