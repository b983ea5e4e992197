//! The program itself with ten years of history: what it holds in memory, and that it rests.

use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};
use std::time::Duration;

use barwright_app::contract::{Answer, Intent, Look, Screen};
use barwright_player::screens::{at_floor, at_lift, at_today};
use serde_json::{Value, json};

use crate::lifter::{Lifter, floor};
use crate::measure::{Measure, Outcome};
use crate::records::{self, Past};

/// The most that `drive` holds over a session.
pub(crate) const MEMORY: Measure = Measure {
    name: "memory",
    unit: "MB",
    against: "peak of what drive holds over a session and every screen, ten years behind it",
    bar: Some(20.0),
    run: memory,
};

/// What it does while a lifter rests.
pub(crate) const RESTING: Measure = Measure {
    name: "resting-syscalls",
    unit: "calls",
    against: "times that drive was run in ten seconds of rest: what is not run calls nothing",
    bar: Some(0.0),
    run: resting,
};

/// `barwright drive` on a store.
struct Drive {
    child: Child,
    to: ChildStdin,
    from: BufReader<ChildStdout>,
}

/// Builds the program as it ships from this workspace, and says where it is.
fn program() -> PathBuf {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let built = Command::new(cargo)
        .args(["build", "--release", "--quiet", "--package", "barwright"])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .status()
        .expect("cargo runs");
    assert!(built.success(), "the program can't be built");
    let bench = std::env::current_exe().expect("where this program is");
    let program = bench.with_file_name("barwright");
    assert!(program.exists(), "{} is not there: the bench runs in release", program.display());
    program
}

impl Drive {
    fn on(store: &Path) -> Self {
        let mut child = Command::new(program())
            .args(["drive", "--locale", "en", "--store"])
            .arg(store)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .expect("the program runs");
        let to = child.stdin.take().expect("it was piped");
        let from = BufReader::new(child.stdout.take().expect("it was piped"));
        Self { child, to, from }
    }

    fn say(&mut self, line: &Value) -> Value {
        writeln!(self.to, "{line}").and_then(|()| self.to.flush()).expect("it takes a line");
        let mut answer = String::new();
        self.from.read_line(&mut answer).expect("it answers a line");
        serde_json::from_str(&answer).expect("it answers JSON")
    }

    fn dispatch(&mut self, lifter: &Lifter, intent: &Intent) -> Screen {
        let answer = self.say(&json!({ "reading": lifter.now(), "intent": intent }));
        let answer = answer.get("answer").unwrap_or_else(|| panic!("{answer}"));
        let answer: Answer = serde_json::from_value(answer.clone()).expect("it is an answer");
        answer.screen
    }

    fn view(&mut self, lifter: &Lifter, look: &Look) {
        let answer = self.say(&json!({ "reading": lifter.now(), "view": look }));
        assert!(answer.get("answer").is_some(), "{answer}");
    }

    /// The process's own files in the system's account of it.
    fn account(&self) -> PathBuf {
        Path::new("/proc").join(self.child.id().to_string())
    }

    fn end(mut self) {
        drop(self.to);
        let ended = self.child.wait().expect("it ends");
        assert!(ended.success(), "{ended}");
    }
}

/// A line of a status file, as a number.
fn figure(status: &Path, name: &str) -> u64 {
    let text = std::fs::read_to_string(status)
        .unwrap_or_else(|error| panic!("only Linux can be asked: {}: {error}", status.display()));
    text.lines()
        .find_map(|line| line.strip_prefix(name)?.strip_prefix(':'))
        .and_then(|rest| rest.split_whitespace().next()?.parse().ok())
        .unwrap_or_else(|| panic!("no {name} in {}", status.display()))
}

fn memory() -> Outcome {
    // The lifter's own engine is not asked: it only makes the taps up.
    let asleep = records::open(&records::copy_of(Past::Nothing));
    let mut lifter = Lifter::returning(asleep);
    let mut drive = Drive::on(&records::copy_of(Past::TenYears));
    drive.dispatch(&lifter, &Intent::Wake);
    drive.view(&lifter, &at_today());
    let mut on = floor(drive.dispatch(&lifter, &Lifter::beginning(4, 0)));
    while let Some(before) = on {
        let intent = lifter.next(&before);
        on = floor(drive.dispatch(&lifter, &intent));
    }
    for look in [
        Look::Tally,
        Look::Weeks,
        Look::Today { session: None, minutes: Some(45) },
        at_lift("barbell-row"),
        Look::Balance { weeks: Some(8) },
        Look::Equipment,
        Look::Plan { text: None, week: None },
        at_floor(None),
    ] {
        drive.view(&lifter, &look);
    }
    let kibibytes = figure(&drive.account().join("status"), "VmHWM");
    drive.end();
    Outcome { value: kibibytes as f64 * 1_024.0 / 1e6 }
}

fn resting() -> Outcome {
    let mut lifter = Lifter::returning(records::open(&records::copy_of(Past::Nothing)));
    let mut drive = Drive::on(&records::copy_of(Past::TenYears));
    let on = floor(drive.dispatch(&lifter, &Lifter::beginning(4, 0))).expect("a floor");
    let intent = lifter.next(&on);
    let after = floor(drive.dispatch(&lifter, &intent)).expect("a floor");
    assert!(after.rest.is_some(), "a rest began");
    // What answers is done a moment after it is read here.
    std::thread::sleep(Duration::from_millis(500));
    let before = runs(&drive);
    std::thread::sleep(Duration::from_secs(10));
    let runs = runs(&drive) - before;
    drive.end();
    Outcome { value: runs as f64 }
}

/// How often the threads of the process gave the processor up, by themselves or not, since it
/// began. A call to the system is made by a thread that runs, and a thread that ran gives up.
fn runs(drive: &Drive) -> u64 {
    let threads = std::fs::read_dir(drive.account().join("task")).expect("its threads");
    threads
        .map(|thread| {
            let status = thread.expect("a thread").path().join("status");
            figure(&status, "voluntary_ctxt_switches")
                + figure(&status, "nonvoluntary_ctxt_switches")
        })
        .sum()
}
