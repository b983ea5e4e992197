//! Writes what a general library is to work out for itself, and what we make of it: rows of ten
//! invented years as they are read from a store, fits, estimates and percentages.
//!
//! `outside FOLDER` writes `sets.jsonl`, `exercises.json`, `volume.json`, `fits.jsonl`,
//! `estimates.jsonl`, `percents.json` and `timing.json` there. `tests/outside/check` runs it.
#![allow(clippy::unwrap_used, reason = "a check that can't run must end loudly")]

use std::fs::File;
use std::hint::black_box;
use std::io::{BufWriter, Write};
use std::path::{Path, PathBuf};
use std::time::Instant;

use barwright_domain::call::{Amount, EffortTarget, HowMany, Side, WeekKind};
use barwright_domain::catalogue::{Catalogue, Counting};
use barwright_domain::history::{
    Change, DonePart, DoneSet, Outcome, SessionRow, SetKey, session_volume, week_of,
};
use barwright_domain::progress::estimate::Formula;
use barwright_domain::progress::pace::{PaceFit, Point, Slowing};
use barwright_domain::progress::percent;
use barwright_domain::quantity::{Distance, Mass, MassUnit, RepRange, Reserve, Seconds};
use barwright_domain::session::{Ending, EntryId, SetId, SetKind};
use barwright_domain::volume::EASIEST_HARD;
use barwright_store::{NewEvent, Stamp, Store};
use serde_json::{Value, json};

/// Three sessions a week for ten years, and the sets of each: 78 000.
const WEEKS: i32 = 520;
const SESSIONS: i32 = 3;
const SETS: u16 = 50;
/// The first Monday, in days since 1970-01-01.
const FIRST_DAY: i32 = 16_804;
const FITS: u32 = 200;

/// The same numbers each time: a 64-bit linear congruence (Knuth's constants), its upper half.
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, bound: u32) -> u32 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        u32::try_from((self.0 >> 32) % u64::from(bound)).unwrap()
    }

    fn of<T: Copy>(&mut self, from: &[T]) -> T {
        from[self.below(u32::try_from(from.len()).unwrap()) as usize]
    }
}

fn main() {
    let folder = PathBuf::from(std::env::args().nth(1).expect("outside FOLDER"));
    std::fs::create_dir_all(&folder).unwrap();
    let mut numbers = Numbers(20_261_127);
    let file = folder.join("ten-years.barwright");
    let _ = std::fs::remove_file(&file);
    let sessions = ten_years(&file, &mut numbers);
    rows(&folder, &file, &sessions);
    exercises(&folder);
    fits(&folder, &mut numbers);
    estimates(&folder);
    percents(&folder);
}

fn writer(folder: &Path, name: &str) -> BufWriter<File> {
    BufWriter::new(File::create(folder.join(name)).unwrap())
}

fn write(folder: &Path, name: &str, value: &Value) {
    let mut out = writer(folder, name);
    serde_json::to_writer(&mut out, value).unwrap();
    out.flush().unwrap();
}

/// Plays rows into a store, as taps hand them over, and answers the names of the sessions.
fn ten_years(path: &Path, numbers: &mut Numbers) -> Vec<u64> {
    let catalogue = Catalogue::builtin();
    let slugs: Vec<String> = catalogue.iter().map(|own| own.slug.to_string()).collect();
    // In memory a sync costs nothing.
    let mut store = Store::in_memory().unwrap();
    let mut names = Vec::new();
    for nth in 0..WEEKS * SESSIONS {
        let session = store.next_seq();
        let day = FIRST_DAY + nth / SESSIONS * 7 + nth % SESSIONS * 2;
        let sets: Vec<DoneSet> = (0..SETS)
            .map(|number| {
                let slug = &slugs[numbers.below(u32::try_from(slugs.len()).unwrap()) as usize];
                set(session, day, number, slug, numbers)
            })
            .collect();
        let outcome = Outcome {
            seconds: 4_000,
            owed: SETS,
            done: SETS,
            volume: session_volume(&sets, &catalogue, EASIEST_HARD),
        };
        let row = SessionRow {
            session,
            day,
            title: "Invented".to_owned(),
            place: None,
            week_kind: WeekKind::Ordinary,
            outcome: Some(outcome),
        };
        let mut changes: Vec<Change> = sets.into_iter().map(Change::PutSet).collect();
        changes.push(Change::PutSession(row));
        let at = Stamp { wall_ms: i64::from(day) * 86_400_000, offset_minutes: 0 };
        let event = NewEvent { kind: "invented", version: 1, body: "{}" };
        store.append(at, &[event], &changes, &[]).unwrap();
        names.push(session);
    }
    store.checkpoint().unwrap();
    store.backup(path).unwrap();
    names
}

/// A set of some shape: ramps, sides, holds, calls and none, all ways to end.
fn set(session: u64, day: i32, number: u16, slug: &str, numbers: &mut Numbers) -> DoneSet {
    let halves = |numbers: &mut Numbers, most| Reserve::from_halves(numbers.below(most) as u8);
    let amount = match numbers.below(10) {
        0 => Amount::Seconds(Seconds::new(20 + numbers.below(60))),
        1 => Amount::Metres(Distance::from_millimetres(20_000)),
        _ => Amount::Reps(numbers.below(16) as u16),
    };
    let figure = Some(Mass::whole(40 + numbers.below(100) as i32, MassUnit::Kilogram));
    let mut parts = vec![DonePart { amount, figure, slowing: None }];
    if let (Amount::Reps(_), 0) = (amount, numbers.below(8)) {
        parts.push(DonePart {
            amount: Amount::Reps(numbers.below(6) as u16),
            figure,
            slowing: None,
        });
    }
    let target = (numbers.below(3) > 0).then(|| {
        let from = halves(numbers, 6).unwrap();
        let to = Reserve::from_halves(from.halves() + numbers.below(8) as u8).unwrap();
        EffortTarget::left(from, to)
    });
    let left = if numbers.below(2) == 0 { halves(numbers, 16) } else { None };
    DoneSet {
        key: SetKey { session, set: SetId { entry: EntryId(number / 4), set: number % 4 } },
        day,
        exercise: slug.to_owned(),
        kind: numbers.of(&[SetKind::Ramp, SetKind::Work, SetKind::Work, SetKind::Top]),
        row: number / 4,
        round: number % 4 + 1,
        side: numbers.of(&[None, None, Some(Side::Left), Some(Side::Right)]),
        asked: HowMany::Reps(RepRange::just(8)),
        target,
        meant: None,
        figure,
        counting: Counting::Total,
        moved: figure,
        bands: None,
        technique: None,
        set_up: Vec::new(),
        kit: Vec::new(),
        parts,
        left,
        helped: 0,
        ending: numbers.of(&[
            Ending::AsCalled,
            Ending::AsCalled,
            Ending::AsCalled,
            Ending::Failed,
            Ending::Form,
            Ending::Pain,
            Ending::Interrupted,
            Ending::Equipment,
        ]),
    }
}

/// The sets as they are read back, the weekly sums as the projections have them, and how long those
/// take to read.
fn rows(folder: &Path, path: &Path, sessions: &[u64]) {
    let store = Store::open(path).unwrap();
    let history = store.history().unwrap();
    let mut out = writer(folder, "sets.jsonl");
    for session in sessions {
        for set in history.sets_in(*session).unwrap() {
            let line = json!({
                "week": week_of(set.day),
                "exercise": set.exercise,
                "kind": set.kind,
                "side": set.side,
                "reps": set.amount().reps(),
                "left_halves": set.left.map(Reserve::halves),
                "target_halves": set.target.map(|target| target.left.to.halves()),
                "ending": set.ending,
            });
            writeln!(out, "{line}").unwrap();
        }
    }
    out.flush().unwrap();
    let (first, last) = (week_of(FIRST_DAY), week_of(FIRST_DAY) + WEEKS);
    let mut seconds = Vec::new();
    for _ in 0..7 {
        // A check that measures may ask for the time.
        #[allow(clippy::disallowed_methods)]
        let begun = Instant::now();
        black_box(history.volume(first..=last).unwrap());
        seconds.push(begun.elapsed().as_secs_f64());
    }
    let weeks: Vec<Value> = history
        .volume(first..=last)
        .unwrap()
        .into_iter()
        .map(|week| json!({ "week": week.week, "muscles": week.muscles }))
        .collect();
    write(folder, "volume.json", &json!(weeks));
    let profile = if cfg!(debug_assertions) { "debug" } else { "release" };
    write(folder, "timing.json", &json!({ "seconds": seconds, "profile": profile }));
}

fn exercises(folder: &Path) {
    let each: Vec<Value> = Catalogue::builtin()
        .iter()
        .map(|own| {
            json!({
                "slug": own.slug,
                "direct": own.direct,
                "indirect": own.indirect,
                "speed": own.movement.is_speed_work(),
            })
        })
        .collect();
    write(folder, "exercises.json", &json!(each));
}

/// Lines of calls against slowing, noisy and with ties; where we give none, so be it said.
fn fits(folder: &Path, numbers: &mut Numbers) {
    let mut out = writer(folder, "fits.jsonl");
    for nth in 0..FITS {
        let count = 10 + numbers.below(50);
        let points: Vec<(i32, u8)> = (0..count)
            .map(|_| {
                let slowing = numbers.below(if nth % 4 == 0 { 12 } else { 900 }) as i32;
                let line = 16 - (slowing / 60).min(14);
                let noise = numbers.below(5) as i32 - 2;
                (slowing, u8::try_from((line + noise).clamp(0, 40)).unwrap())
            })
            .collect();
        let made: Vec<Point> = points
            .iter()
            .map(|(slowing, halves)| Point {
                slowing: Slowing(*slowing),
                left: Reserve::from_halves(*halves).unwrap(),
            })
            .collect();
        let fit = PaceFit::of(&made).map(|fit| {
            let estimate = fit.estimate(Slowing(415));
            json!({
                "slope": fit.slope(),
                "intercept": fit.intercept(),
                "left_tenths": estimate.left_tenths,
                "off_tenths": estimate.off_tenths,
            })
        });
        let x: Vec<i32> = points.iter().map(|(x, _)| *x).collect();
        let y: Vec<u8> = points.iter().map(|(_, y)| *y).collect();
        writeln!(out, "{}", json!({ "x": x, "y": y, "at": 415, "fit": fit })).unwrap();
    }
    out.flush().unwrap();
}

fn estimates(folder: &Path) {
    let mut out = writer(folder, "estimates.jsonl");
    for formula in Formula::ALL {
        for reps in 1..=15_u16 {
            for kilograms in [20, 61, 100, 142, 305] {
                let load = Mass::whole(kilograms, MassUnit::Kilogram);
                let max = formula.published(load, reps).unwrap().kilograms();
                let line = json!({
                    "formula": formula.slug(), "reps": reps, "load": kilograms, "max": max,
                });
                writeln!(out, "{line}").unwrap();
            }
        }
    }
    out.flush().unwrap();
}

fn percents(folder: &Path) {
    let all: Vec<Value> = (2..=30_u8)
        .map(|halves| {
            let left = Reserve::from_halves(halves - 2).unwrap();
            let percent = percent::for_reps(1, left).unwrap().percent.hundredths();
            json!({ "halves": halves, "hundredths": percent })
        })
        .collect();
    write(folder, "percents.json", &json!(all));
}
