//! From nothing to the first screen, with the file in the system's cache.

use std::path::Path;

use barwright_player::screens::at_today;

use crate::clock::{median, micros};
use crate::lifter;
use crate::measure::{Measure, Outcome};
use crate::records::{self, Past};

/// Ten years against a month.
pub(crate) const RATIO: Measure = Measure {
    name: "open-ten-years",
    unit: "ratio",
    against: "open to the first screen with ten years of history, to one month",
    bar: Some(1.1),
    run: ratio,
};

/// Ten years.
pub(crate) const WARM: Measure = Measure {
    name: "open-ms",
    unit: "ms",
    against: "open to the first screen with ten years of history, the file read before",
    bar: Some(10.0),
    run: warm,
};

const TIMES: usize = 41;

/// Opens a store and shows what is on.
fn first_screen(path: &Path) -> f64 {
    let mut opened = None;
    let took = micros(|| {
        let engine = opened.insert(records::open(path));
        engine.view(at_today(), lifter::today()).expect("what is on is shown").screen
    });
    opened.expect("it was opened").shut_down().expect("it is closed");
    took
}

fn warm() -> Outcome {
    let path = records::copy_of(Past::TenYears);
    Outcome { value: median((0..TIMES).map(|_| first_screen(&path)).collect()) / 1e3 }
}

fn ratio() -> Outcome {
    let (long, short) = (records::copy_of(Past::TenYears), records::copy_of(Past::Month));
    let pair = |_| {
        let long = first_screen(&long);
        long / first_screen(&short)
    };
    // The first pair warms both up.
    Outcome { value: median((0..=TIMES).map(pair).skip(1).collect()) }
}
