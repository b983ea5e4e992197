//! A recorded set against the least that any durable record costs on this disk.

use barwright_app::contract::Intent;
use rusqlite::Connection;

use crate::clock::{median, micros};
use crate::lifter::{Lifter, floor};
use crate::measure::{Measure, Outcome};
use crate::records::{self, Past};

/// A set against a bare insert.
pub(crate) const SET_LOGGED: Measure = Measure {
    name: "set-logged",
    unit: "ratio",
    against: "a recorded set with ten years of history, to one bare durable insert",
    bar: None,
    run: set_logged,
};

/// What the same comparison makes of two bare inserts.
pub(crate) const BARE: Measure = Measure {
    name: "bare-insert",
    unit: "ratio",
    against: "one bare durable insert to another of its kind: what the disk alone makes differ",
    bar: None,
    run: bare,
};

/// One table, written as durably as the store writes.
pub(crate) struct Bare(Connection);

impl Bare {
    pub(crate) fn new() -> Self {
        let connection = Connection::open(records::fresh()).expect("a file");
        connection
            .execute_batch(
                "PRAGMA locking_mode = EXCLUSIVE; PRAGMA journal_mode = WAL;
                 PRAGMA synchronous = FULL; PRAGMA wal_autocheckpoint = 0;
                 CREATE TABLE entry (id INTEGER PRIMARY KEY, body TEXT NOT NULL)",
            )
            .expect("a table");
        Self(connection)
    }

    fn insert(&self) -> f64 {
        let body = Self::body();
        micros(|| self.put(&body))
    }

    /// As much text as a tap writes.
    pub(crate) fn body() -> String {
        "x".repeat(400)
    }

    /// One durable insert.
    pub(crate) fn put(&self, body: &str) -> usize {
        self.0
            .prepare_cached("INSERT INTO entry (body) VALUES (?1)")
            .and_then(|mut insert| insert.execute([body]))
            .expect("it is inserted")
    }
}

fn set_logged() -> Outcome {
    let mut lifter = Lifter::returning(records::open(&records::copy_of(Past::TenYears)));
    let bare = Bare::new();
    let mut ratios = Vec::new();
    for session in 0..3 {
        let mut on = lifter.begin(4, session);
        while let Some(before) = on {
            let intent = lifter.next(&before);
            let counts = matches!(intent, Intent::Record { .. });
            let (now, mut update) = (lifter.now(), None);
            let took = micros(|| update = Some(lifter.player.engine.dispatch(intent, now)));
            let least = bare.insert();
            if counts {
                ratios.push(took / least);
            }
            let update = update.expect("it was dispatched").expect("it is never refused");
            on = floor(update.screen);
        }
    }
    Outcome { value: median(ratios) }
}

fn bare() -> Outcome {
    let (one, other) = (Bare::new(), Bare::new());
    let pair = |_| {
        let first = one.insert();
        first / other.insert()
    };
    Outcome { value: median((0..150).map(pair).collect()) }
}
