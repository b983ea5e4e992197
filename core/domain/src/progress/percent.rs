//! Percent of the max for repetitions, from one published table.
//!
//! NSCA Essentials of Strength Training and Conditioning, 4th ed. (Haff & Triplett 2016), Table
//! 17.7: 1 to 10 repetitions, and 15. Copies disagree on the two rows between (11: 70 or 73 %, 12:
//! 67 or 70 %, from memory; the association's own training load chart has 70 % for 12 and no row
//! for 11), so 11 to 14 are interpolated here between 10 and 15, and halves between their
//! neighbours; a value says whether it was. Twelve come to 71 %, a point from the chart. Between people the repetitions at a percentage differ widely (6 to 26 at 70 % in the
//! squat, Cooke et al. 2019), and machines differ more: for barbell main lifts only.

use serde::{Deserialize, Serialize};

use crate::quantity::{Percent, Reps, Reserve};

/// The rows of the table: repetitions to failure and whole percent.
pub const TABLE: [(Reps, i16); 11] = [
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
];

/// The most repetitions to failure that the table has a percentage for.
pub const MOST_REPS: Reps = 15;

/// A percentage and where it comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct RepsPercent {
    /// Of the max.
    pub percent: Percent,
    /// Whether it lies between rows of the table.
    pub interpolated: bool,
}

/// The percentage at which so many repetitions leave so many: that of their sum to failure.
/// `None` for no repetitions, and past fifteen.
///
/// An RPE goes in by its [`reserve`](crate::quantity::Rpe::reserve): the chart of percentages by
/// RPE is derived from the table, not copied.
pub fn for_reps(reps: Reps, left: Reserve) -> Option<RepsPercent> {
    if reps == 0 {
        return None;
    }
    let halves = i32::from(reps) * 2 + i32::from(left.halves());
    let mut below: Option<(i32, i32)> = None;
    for (row, percent) in TABLE {
        let (row, percent) = (i32::from(row) * 2, i32::from(percent) * 100);
        if halves == row {
            let percent = Percent::from_hundredths(percent);
            return Some(RepsPercent { percent, interpolated: false });
        }
        if let Some((low, high_percent)) = below.filter(|_| halves < row) {
            // Every step of the table is a whole number of hundredths a half repetition.
            let fall = (high_percent - percent) * (halves - low) / (row - low);
            let percent = Percent::from_hundredths(high_percent - fall);
            return Some(RepsPercent { percent, interpolated: true });
        }
        below = Some((row, percent));
    }
    None
}

/// The most repetitions to failure that the table allows at a percentage: none above 100 %, and
/// `None` where it is more than fifteen.
pub fn most_reps_at(percent: Percent) -> Option<Reps> {
    let allowed = (1..=MOST_REPS)
        .take_while(|reps| for_reps(*reps, Reserve::NONE).is_some_and(|row| row.percent >= percent))
        .last()
        .unwrap_or(0);
    let last = for_reps(MOST_REPS, Reserve::NONE)?;
    (percent >= last.percent).then_some(allowed)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hundredths(reps: Reps, halves_left: u8) -> Option<i32> {
        for_reps(reps, Reserve::from_halves(halves_left)?).map(|row| row.percent.hundredths())
    }

    #[test]
    fn what_is_left_counts_as_repetitions() {
        assert_eq!(hundredths(5, 4), Some(8_300));
        assert_eq!(hundredths(5, 3), Some(8_400));
        assert_eq!(hundredths(1, 0), Some(10_000));
        assert_eq!(hundredths(1, 1), Some(9_750));
    }

    #[test]
    fn between_the_rows_it_says_so() {
        let row = for_reps(12, Reserve::NONE).unwrap();
        assert_eq!((row.percent.hundredths(), row.interpolated), (7_100, true));
        assert!(!for_reps(15, Reserve::NONE).unwrap().interpolated);
        assert_eq!(hundredths(14, 1), Some(6_600));
    }

    #[test]
    fn past_the_table_there_is_none() {
        assert_eq!(hundredths(0, 0), None);
        assert_eq!(hundredths(15, 1), None);
        assert_eq!(hundredths(1000, 40), None);
    }

    #[test]
    fn repetitions_at_a_percentage() {
        for (percent, reps) in [
            (101, Some(0)),
            (100, Some(1)),
            (95, Some(2)),
            (94, Some(2)),
            (80, Some(8)),
            (65, Some(15)),
        ] {
            assert_eq!(most_reps_at(Percent::whole(percent)), reps, "{percent}");
        }
        assert_eq!(most_reps_at(Percent::whole(64)), None);
    }

    #[test]
    fn more_repetitions_never_ask_for_more_load() {
        let all: Vec<_> = (2..=30).map(|halves| hundredths(1, halves - 2).unwrap()).collect();
        assert!(all.windows(2).all(|pair| pair[0] > pair[1]));
    }
}
