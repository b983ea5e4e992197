//! The process is killed, as a system does that wants the memory: on real files, with real locks.

use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Child, ChildStdout, Command, Stdio};

use barwright_faults::{replay, tap};
use barwright_store::{Store, StoreError};

/// Names the store to the process that is to be killed.
const STORE: &str = "BARWRIGHT_TAP_INTO";

fn main() -> std::io::Result<()> {
    if let Some(path) = std::env::var_os(STORE) {
        return tap_until_killed(Path::new(&path));
    }
    what_was_acknowledged_outlives_the_process();
    two_processes_exclude_each_other();
    Ok(())
}

/// Taps without end, one line on standard output for each tap that is recorded; an error that keeps
/// it from opening is told there too.
fn tap_until_killed(path: &Path) -> std::io::Result<()> {
    let mut out = std::io::stdout().lock();
    let mut store = match Store::open(path) {
        Ok(store) => store,
        Err(error) => return writeln!(out, "{error:?}"),
    };
    for number in replay(&mut store) + 1.. {
        tap(&mut store, number).expect("nothing fails here but the process");
        writeln!(out, "{number}")?;
        out.flush()?;
    }
    Ok(())
}

fn tapper(path: &Path) -> (Child, BufReader<ChildStdout>) {
    let mut child = Command::new(std::env::current_exe().expect("it runs"))
        .env(STORE, path)
        .stdout(Stdio::piped())
        .spawn()
        .expect("it starts");
    let out = BufReader::new(child.stdout.take().expect("it was asked for"));
    (child, out)
}

fn line(out: &mut BufReader<ChildStdout>) -> String {
    let mut line = String::new();
    out.read_line(&mut line).expect("it writes lines");
    line.trim().to_owned()
}

fn what_was_acknowledged_outlives_the_process() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("log.barwright");
    let mut there = 0;
    for round in 0..6 {
        let (mut child, mut out) = tapper(&path);
        let mut acknowledged: u64 = 0;
        for _ in 0..1 + round * 7 {
            acknowledged = line(&mut out).parse().expect("a number");
        }
        assert!(acknowledged > there);
        child.kill().expect("it runs");
        child.wait().expect("it ended");
        let mut store = Store::open(&path).expect("what is left opens");
        there = replay(&mut store);
        assert!(there >= acknowledged, "{acknowledged} but {there}");
        if round % 2 == 1 {
            store.close().expect("nothing fails");
        }
    }
}

fn two_processes_exclude_each_other() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("log.barwright");
    let (mut child, mut out) = tapper(&path);
    assert_eq!(line(&mut out), "1");
    let refused = Store::open(&path).expect_err("another has it");
    assert_eq!(refused, StoreError::InUse { path: path.clone() });
    child.kill().expect("it runs");
    child.wait().expect("it ended");

    let store = Store::open(&path).expect("nobody has it");
    let (mut child, mut out) = tapper(&path);
    assert!(line(&mut out).starts_with("InUse"));
    assert!(child.wait().expect("it ends by itself").success());
    drop(store);
}
