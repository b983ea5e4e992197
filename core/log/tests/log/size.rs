//! What is written most is small: a set is written every few minutes, for years.

use barwright_domain::session::{Event, Rest};
use barwright_log::{encode_desk, encode_session};

use crate::usual;

#[test]
fn a_usual_set_is_under_a_kibibyte() {
    let body = encode_session(&usual::reading(), &usual::part_done());
    assert!(body.len() < 1024, "{} bytes: {body}", body.len());
}

#[test]
fn the_rest_after_it_is_under_half_of_one() {
    for event in usual::session() {
        if let Event::RestBegan { rest: Rest { .. } } = event {
            let body = encode_session(&usual::reading(), &event);
            assert!(body.len() < 512, "{} bytes: {body}", body.len());
            return;
        }
    }
    panic!("no rest began");
}

/// What is off, empty or the usual is not written.
#[test]
fn nothing_is_written_for_nothing() {
    let at = usual::reading();
    let session = usual::session().into_iter().map(|event| encode_session(&at, &event));
    let desk = usual::desk().into_iter().map(|event| encode_desk(&at, &event));
    for body in session.chain(desk) {
        for nothing in ["null", "[]", "{}", "false", "\"as_called\"", "\"straight\"", "\"listed\""]
        {
            assert!(!body.contains(&format!(":{nothing}")), "{nothing} in {body}");
        }
    }
}
