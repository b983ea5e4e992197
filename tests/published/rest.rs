//! Tempo seconds and the rest arithmetic of published set layouts.

use barwright_domain::quantity::Tempo;

/// Textbook convention, and Wilk et al. 2018, J Hum Kinet 62:241–250, published: 2/0/2/0, 5/0/3/0
/// and 6/0/4/0 are 4, 8 and 10 s a repetition; 3-0-1-0 is 4 s.
#[test]
fn seconds_of_a_tempo() {
    for (tempo, seconds) in [("2/0/2/0", 4), ("5/0/3/0", 8), ("6/0/4/0", 10), ("3-0-1-0", 4)] {
        assert_eq!(Tempo::read(tempo).unwrap().rep_tenths(), seconds * 10, "{tempo}");
    }
}
