//! What a tap costs of the processor: a set recorded as called, through the Engine, on disk.

use barwright_app::contract::{FloorScreen, Intent};

use crate::clock::{cpu_micros, median};
use crate::durable::Bare;
use crate::lifter::{Lifter, floor};
use crate::measure::{Measure, Outcome};
use crate::records::{self, Past};

/// A tap, ten years behind it.
pub(crate) const CPU: Measure = Measure {
    name: "tap-cpu",
    unit: "us",
    against: "processor time of one recorded set, ten years behind it, less that of a bare durable insert",
    bar: Some(100.0),
    run: own,
};

/// The same with what any durable insert takes: SQLite's and the system's work for the disk.
pub(crate) const WHOLE: Measure = Measure {
    name: "tap-cpu-whole",
    unit: "us",
    against: "processor time of one recorded set, ten years behind it, SQLite and system with it",
    bar: None,
    run: whole,
};

/// The same, against no history.
pub(crate) const TEN_YEARS: Measure = Measure {
    name: "ten-years",
    unit: "ratio",
    against: "processor time of a tap with ten years of history, to one with none",
    bar: Some(1.05),
    run: ten_years,
};

/// A lifter in the middle of a session.
struct Under {
    lifter: Lifter,
    floor: Option<FloorScreen>,
}

impl Under {
    fn way(past: Past) -> Self {
        let engine = records::open(&records::copy_of(past));
        Self { lifter: Lifter::returning(engine), floor: None }
    }

    /// The processor time of the next set; none for a tap that begins or ends a session.
    fn tap(&mut self, week: u32, session: u32) -> Option<f64> {
        let Some(on) = self.floor.take() else {
            self.floor = self.lifter.begin(week, session);
            return None;
        };
        let intent = self.lifter.next(&on);
        let records = matches!(intent, Intent::Record { .. });
        let now = self.lifter.now();
        let (update, micros) = cpu_micros(|| self.lifter.player.engine.dispatch(intent, now));
        self.floor = floor(update.expect("the bench's lifter is never refused").screen);
        records.then_some(micros)
    }
}

/// Sessions that are gone through, by their place in the plan: the ones that are on next.
const SESSIONS: [(u32, u32); 6] = [(4, 0), (4, 1), (4, 2), (5, 0), (5, 1), (5, 2)];

/// Times that the same sessions are gone through: of each tap the best counts, so that what else
/// the machine does counts for little.
const TIMES: usize = 5;

/// Of each tap the best time, and the best of the bare inserts between them.
fn best() -> (Vec<f64>, f64) {
    let mut best: Vec<f64> = Vec::new();
    let (bare, body) = (Bare::new(), Bare::body());
    let mut least = f64::INFINITY;
    for _ in 0..TIMES {
        let mut under = Under::way(Past::TenYears);
        let mut times = Vec::new();
        for (week, session) in SESSIONS {
            under.tap(week, session);
            while under.floor.is_some() {
                times.extend(under.tap(week, session));
                least = least.min(cpu_micros(|| bare.put(&body)).1);
            }
        }
        best = match best.as_slice() {
            [] => times,
            best => best.iter().zip(times).map(|(best, time)| best.min(time)).collect(),
        };
    }
    (best, least)
}

fn own() -> Outcome {
    let (taps, least) = best();
    Outcome { value: median(taps) - least }
}

fn whole() -> Outcome {
    Outcome { value: median(best().0) }
}

fn ten_years() -> Outcome {
    let (mut old, mut young) = (Under::way(Past::TenYears), Under::way(Past::Nothing));
    let mut ratios = Vec::new();
    for (week, session) in SESSIONS {
        old.tap(week, session);
        young.tap(week, session);
        let mut turn = false;
        while old.floor.is_some() && young.floor.is_some() {
            turn = !turn;
            let (long, short) = if turn {
                let long = old.tap(week, session);
                (long, young.tap(week, session))
            } else {
                let short = young.tap(week, session);
                (old.tap(week, session), short)
            };
            ratios.extend(long.zip(short).map(|(long, short)| long / short));
        }
        // Where one had fewer sets to do, both still end the session.
        for under in [&mut old, &mut young] {
            while under.floor.is_some() {
                under.tap(week, session);
            }
        }
    }
    Outcome { value: median(ratios) }
}
