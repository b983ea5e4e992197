//! Records out as a file and in again, against the database's own shell with the same rows.

use std::fs::File;
use std::hint::black_box;
use std::io::{BufReader, BufWriter};
use std::path::Path;
use std::process::{Command, Stdio};

use barwright_app::{Engine, Export};

use crate::clock::{median, micros};
use crate::measure::{Measure, Outcome};
use crate::records::{self, Past};

/// Out.
pub(crate) const OUT: Measure = Measure {
    name: "records-out",
    unit: "ratio",
    against: "ten years written as JSON Lines, to the sqlite3 shell's .dump of the same file",
    bar: Some(3.0),
    run: out,
};

/// In.
pub(crate) const IN: Measure = Measure {
    name: "records-in",
    unit: "ratio",
    against: "ten years taken in from JSON Lines, to the sqlite3 shell's load of its dump",
    bar: Some(3.0),
    run: taken_in,
};

const TIMES: usize = 5;

/// Runs the shell on a database with a file, or nothing, as its input, and a file as its output.
fn shell(database: &Path, command: &[&str], input: Option<&Path>, output: &Path) -> f64 {
    let input = input.map_or_else(Stdio::null, |path| {
        Stdio::from(File::open(path).expect("what was written is there"))
    });
    let output = File::create(output).expect("a file for what is written");
    micros(|| {
        let ended = Command::new("sqlite3")
            .arg(database)
            .args(command)
            .stdin(input)
            .stdout(output)
            .status()
            .expect("the sqlite3 shell is installed");
        assert!(ended.success(), "the sqlite3 shell does what it is asked");
    })
}

fn written(engine: &Engine, to: &Path) -> f64 {
    let mut to = BufWriter::new(File::create(to).expect("a file for what is written"));
    micros(|| {
        engine.export_records(Export::default(), &mut to).expect("records go out");
    })
}

fn out() -> Outcome {
    let path = records::copy_of(Past::TenYears);
    let other = records::copy_of(Past::TenYears);
    let engine = records::open(&path);
    let to = records::fresh();
    let pair = |_| written(&engine, &to) / shell(&other, &[".dump"], None, &to);
    // The first pair warms both up.
    Outcome { value: median((0..=TIMES).map(pair).skip(1).collect()) }
}

fn taken_in() -> Outcome {
    let path = records::copy_of(Past::TenYears);
    let [lines, dump, said] = [records::fresh(), records::fresh(), records::fresh()];
    let engine = records::open(&path);
    written(&engine, &lines);
    engine.shut_down().expect("it is closed");
    shell(&path, &[".dump"], None, &dump);
    let pair = |_| {
        let engine = records::open(&records::fresh());
        let from = BufReader::new(File::open(&lines).expect("what was written is there"));
        let ours = micros(|| {
            black_box(engine.import_records(from, false).expect("records come in"));
        });
        ours / shell(&records::fresh(), &[], Some(&dump), &said)
    };
    Outcome { value: median((0..=TIMES).map(pair).skip(1).collect()) }
}
