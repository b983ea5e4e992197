//! Days without a lift, and lighter weeks.

use barwright_domain::plan::Cut;
use barwright_domain::quantity::Mass;

use crate::play::{Season, kg, meant, work};

const SQUAT: &str = "[[session.exercise]]\nname = \"Back squat\"\nsets = 4\nreps = 5\nload = \"100 kg\"\nramp = \
                     \"none\"";

/// The load that is meant, and the sets, after so many days without it.
fn after(days: i32) -> (Mass, usize) {
    let mut season = Season::of(&["Monday"], SQUAT);
    season.session(1, 1, &[]);
    season.days(days - 2);
    let entry = season.entry(2, 1, "back-squat");
    let calls = work(&entry);
    (meant(calls[0]).unwrap(), calls.len())
}

/// McMaster, Gill, Cronin, McGuigan 2013, "The development, retention and decay rates of strength and
/// power in elite rugby union, rugby league and American football", Sports Med 43(5):367–384 (title
/// from memory), abstract at second hand: up to two to three weeks without training cost trained
/// people little or no strength. So nothing comes off in the first ten days, and a tenth at the most
/// in three weeks.
#[test]
fn little_comes_off_within_three_weeks() {
    assert_eq!(after(7), (kg("100"), 4));
    assert_eq!(after(10), (kg("100"), 4));
    assert!(after(14).0 >= kg("90") && after(21).0 >= kg("90"));
}

/// The same: more after that.
#[test]
fn more_comes_off_after_three_weeks() {
    assert!(after(35).0 < after(21).0);
    assert!(after(70).0 <= after(35).0);
}

/// Rogerson, Nolan, Androulakis Korakakis, Immonen, Wolf, Bell 2024, "Deloading practices in strength
/// and physique sports: a cross-sectional survey", Sports Med Open 10 (title, authors and journal
/// from memory), abstract: a deload takes volume, load and effort off.
#[test]
fn a_deload_takes_off_volume_load_and_effort() {
    let deload = Cut::DELOAD;
    assert!(deload.count(5) < 5 && deload.load(kg("100")) < kg("100"));
    assert!(deload.more_left > 0);
}
