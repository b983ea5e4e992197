//! The screens from outside: the real program on a terminal of its own, killed and gone on with.
#![cfg(unix)]

mod support;

use std::io::{Read, Write};
use std::num::NonZero;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread::{JoinHandle, sleep};
use std::time::Duration;

use portable_pty::{Child, CommandBuilder, ExitStatus, MasterPty, PtySize, native_pty_system};
use rustix::process::{Pid, Signal, kill_process};
use support::PLAN;

fn size_of(cells: u16) -> NonZero<u16> {
    NonZero::new(cells).expect("a terminal has cells")
}

fn parser(rows: u16, cols: u16) -> vt100::Parser {
    vt100::Parser::new(size_of(rows), size_of(cols), 0)
}

/// How long anything is waited for: far more than any of it takes on a busy machine.
const PATIENCE: Duration = Duration::from_secs(60);
const LOOK_AGAIN: Duration = Duration::from_millis(20);

/// Looks again and again until something is there, and answers it; none when patience is out.
fn poll<T>(mut look: impl FnMut() -> Option<T>) -> Option<T> {
    let looks = PATIENCE.as_millis() / LOOK_AGAIN.as_millis();
    for _ in 0..looks {
        if let Some(found) = look() {
            return Some(found);
        }
        sleep(LOOK_AGAIN);
    }
    None
}

/// What the program wrote: as it came, and as it stands on the screen.
struct Written {
    raw: Vec<u8>,
    screen: vt100::Parser,
}

/// The program on a terminal.
struct Program {
    child: Box<dyn Child + Send + Sync>,
    keyboard: Box<dyn Write + Send>,
    terminal: Box<dyn MasterPty + Send>,
    written: Arc<Mutex<Written>>,
    /// Ends when all that was written has been read.
    reading: Option<JoinHandle<()>>,
}

impl Program {
    fn start(store: &Path, environment: &[(&str, &str)], arguments: &[&str]) -> Self {
        let size = PtySize { rows: 24, cols: 80, pixel_width: 0, pixel_height: 0 };
        let pair = native_pty_system().openpty(size).expect("there is a terminal");
        let mut command = CommandBuilder::new(env!("CARGO_BIN_EXE_barwright"));
        command.args(arguments);
        command.env_clear();
        command.env("TERM", "xterm-256color");
        command.env("LANG", "en_GB.UTF-8");
        command.env("BARWRIGHT_STORE", store);
        let home = store.ancestors().find(|folder| folder.is_dir()).expect("it has a folder");
        command.env("HOME", home);
        command.cwd(home);
        for (name, value) in environment {
            command.env(name, value);
        }
        let child = pair.slave.spawn_command(command).expect("it starts");
        let written = Arc::new(Mutex::new(Written { raw: Vec::new(), screen: parser(24, 80) }));
        let mut reader = pair.master.try_clone_reader().expect("it can be read");
        let into = Arc::clone(&written);
        let reading = std::thread::spawn(move || {
            let mut bytes = [0; 4096];
            while let Ok(count @ 1..) = reader.read(&mut bytes) {
                let mut into = into.lock().unwrap_or_else(PoisonError::into_inner);
                into.raw.extend_from_slice(&bytes[..count]);
                into.screen.process(&bytes[..count]);
            }
        });
        let keyboard = pair.master.take_writer().expect("it can be written to");
        Self { child, keyboard, terminal: pair.master, written, reading: Some(reading) }
    }

    fn written(&self) -> MutexGuard<'_, Written> {
        self.written.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn screen(&self) -> String {
        self.written().screen.screen().contents()
    }

    /// Waits until something holds.
    fn until(&self, what: &str, holds: impl Fn(&Written) -> bool) {
        let came = poll(|| holds(&self.written()).then_some(()));
        assert!(came.is_some(), "{what} did not come:\n{}", self.screen());
    }

    /// Waits until a text stands on the screen.
    fn sees(&self, text: &str) {
        self.until(text, |written| written.screen.screen().contents().contains(text));
    }

    /// Waits until the screen has changed so many times by itself.
    fn changes(&self, times: usize) {
        for _ in 0..times {
            let before = self.screen();
            self.until("another figure", |written| written.screen.screen().contents() != before);
        }
    }

    /// Waits until a text was written so many times.
    fn sees_times(&self, text: &str, times: usize) {
        let count = |written: &Written| {
            written.raw.windows(text.len()).filter(|part| *part == text.as_bytes()).count()
        };
        self.until(text, |written| count(written) >= times);
    }

    fn press(&mut self, keys: &str) {
        self.keyboard.write_all(keys.as_bytes()).expect("it takes keys");
        self.keyboard.flush().expect("it takes keys");
    }

    fn signal(&self, signal: Signal) {
        let id = self.child.process_id().and_then(|id| Pid::from_raw(i32::try_from(id).ok()?));
        kill_process(id.expect("it runs"), signal).expect("it can be sent");
    }

    /// SIGKILL: nothing is closed, nothing is given back.
    fn kill(mut self) {
        self.signal(Signal::KILL);
        self.child.wait().expect("it ends");
    }

    fn ends(&mut self) -> ExitStatus {
        let Some(status) = poll(|| self.child.try_wait().expect("it can be asked")) else {
            panic!("it did not end:\n{}", self.screen());
        };
        // What it wrote last is still on its way; its terminal has an end now that nothing has it open.
        if let Some(reading) = self.reading.take() {
            let read = poll(|| reading.is_finished().then_some(()));
            assert!(read.is_some(), "its terminal did not end:\n{}", self.screen());
        }
        status
    }

    /// Whether the terminal was given back: the screen before is shown again, the cursor too.
    fn gave_back(&self) -> bool {
        let written = self.written();
        let has = |bytes: &[u8]| written.raw.windows(bytes.len()).any(|part| part == bytes);
        let screen = written.screen.screen();
        has(b"\x1b[?1049l") && !screen.alternate_screen() && !screen.hide_cursor()
    }
}

/// A store with the plan adopted.
fn begun(dir: &tempfile::TempDir) -> PathBuf {
    let store = dir.path().join("records.db");
    let plan = dir.path().join("plan.toml");
    std::fs::write(&plan, PLAN).expect("it can be written");
    let adopted = Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(["plan", "adopt"])
        .arg(&plan)
        .arg("--store")
        .arg(&store)
        .output()
        .expect("it starts");
    assert!(adopted.status.success(), "{adopted:?}");
    store
}

fn folder() -> tempfile::TempDir {
    tempfile::tempdir().expect("a folder for the test")
}

impl Program {
    /// Presses the key that stands beside a label.
    fn tap(&mut self, label: &str) {
        self.sees(label);
        let screen = self.screen();
        let before = screen.split(label).next().unwrap_or_default();
        let cap = before.split_whitespace().next_back().expect("a cap").to_owned();
        let press = if cap == "enter" { "\r" } else { cap.as_str() };
        self.press(press);
    }

    /// Moves down to a line.
    fn down_to(&mut self, line: &str) {
        for _ in 0..60 {
            if self.screen().contains(&format!("▸   {line}")) {
                return;
            }
            let before = self.screen();
            self.press("j");
            self.until("the next line", |written| written.screen.screen().contents() != before);
        }
        panic!("no line {line}:\n{}", self.screen());
    }
}

#[test]
fn a_gym_is_made_on_a_terminal_killed_gone_on_with_and_saved() {
    let dir = folder();
    let store = begun(&dir);
    let mut program = Program::start(&store, &[], &[]);
    program.sees("Begin");
    program.press("E");
    program.tap("New gym, empty, kg");
    program.sees("Gym: My gym");
    program.down_to("Add a bar");
    program.press("1");
    program.sees("Long bar: 20 kg");
    program.down_to("Add a size of plate");
    program.press("1");
    program.sees("167.5 kg, every 2.5 kg");
    program.down_to("2.5 kg: 1 pair");
    program.press("+");
    program.sees("2.5 kg: 2 pairs");

    // What was made stands on disk.
    program.kill();
    let mut program = Program::start(&store, &[], &[]);
    program.sees("Begin");
    program.press("E");
    program.tap("Go on making a gym");
    program.sees("Gym: My gym");
    program.down_to("2.5 kg: 2 pairs");
    program.press("u");
    program.sees("2.5 kg: 1 pair");
    program.press("\x1b[H");
    program.until("nothing is chosen", |written| !written.screen.screen().contents().contains('▸'));
    program.down_to("Name: My gym");
    program.press("\r");
    program.press("\x15Garage\r");
    program.sees("Gym: Garage");
    program.press("o");
    program.sees("Save as");
    program.press("\r");
    program.sees("Saved in garage.toml");
    let saved = std::fs::read_to_string(dir.path().join("garage.toml")).expect("it is there");
    assert!(saved.contains("name = \"Garage\""), "{saved}");
    program.press("\x1b");
    program.tap("Use it");
    program.sees("loads in kg");
    program.sees("Garage");
    program.press("q");
    assert!(program.ends().success());
}

#[test]
fn a_session_on_a_terminal_is_killed_in_the_middle_of_sets_and_goes_on() {
    let dir = folder();
    let store = begun(&dir);
    let mut program = Program::start(&store, &[], &[]);
    program.sees("Begin");
    program.press("\r");
    program.sees("Set 1 of 2, block 1 of 3: 2 reps");
    program.press(" ");
    program.sees("block 2 of 3");
    program.sees("Pause in the set");

    // In the middle of a cluster.
    program.kill();
    let mut program = Program::start(&store, &[], &[]);
    program.sees("Set 1 of 2, block 2 of 3: 2 reps");
    program.sees("Pause in the set");
    for next in ["block 3 of 3", "Set 2 of 2, block 1", "block 2 of 3", "block 3 of 3"] {
        program.press("\r");
        program.sees(next);
    }
    program.press("\r");
    program.sees("Bench press");
    program.sees("60 kg");

    // In the middle of a drop set: the next load stands on the bar.
    program.press("\r");
    program.sees("drop 1 of 2");
    let stood = program.screen();
    assert!(stood.contains("take off"), "{stood}");
    program.kill();
    let mut program = Program::start(&store, &[], &[]);
    program.sees("drop 1 of 2");
    program.press("\r");
    program.sees("drop 2 of 2");
    program.press(".0");
    program.sees("Goblet squat");

    // In the middle of rest-pause: two mini-sets are done, a tap too many is taken back.
    program.press("\r");
    program.sees("mini-set 1 (8 of 15 done)");
    program.press("\r");
    program.sees("mini-set 2 (11 of 15 done)");
    program.press("u");
    program.sees("mini-set 1 (8 of 15 done)");
    program.kill();
    let mut program = Program::start(&store, &[], &[]);
    program.sees("mini-set 1 (8 of 15 done)");
    program.press("r");
    program.sees("mini-set 2 (11 of 15 done)");
    program.press("\r");
    program.sees("mini-set 3 (14 of 15 done)");
    program.press("0");
    program.sees("Plank");

    // A hold counts by itself.
    program.press("s");
    program.sees("Done");
    program.changes(2);
    program.press("\r");
    program.sees("Back squat");

    // Effort in halves, and one rep fewer than called.
    program.press("-");
    program.press(".");
    program.press("1");
    program.sees("Set 2 of 2");
    program.press("2");
    program.sees("Finish the session");
    program.kill();
    let mut program = Program::start(&store, &[], &[]);
    program.sees("Finish the session");
    program.press("\r");
    program.sees("7 work sets");
    program.press("q");
    assert!(program.ends().success());
    assert!(program.gave_back());
    let mut program = Program::start(&store, &[], &[]);
    program.sees("tAlly");
    program.press("A");
    program.sees("Deadlift");
    program.press("\x1b[F");
    program.sees("80 kg × 4");
    program.sees("1.5 in reserve");
}

#[test]
fn a_rest_that_is_over_rings_once_and_says_so() {
    let dir = folder();
    let store = begun(&dir);
    let mut program = Program::start(&store, &[("NO_COLOR", "1")], &[]);
    program.sees("Begin");
    program.press("\r");
    program.sees("block 1 of 3");
    // The last exercise has a rest of two seconds.
    program.press("m");
    program.sees("Order of exercises");
    program.press("9");
    program.sees("Back squat: 2 sets");
    program.press("jjjj\r");
    program.sees("Set 1 of 2: 5 reps, 1–2 in reserve");
    program.press("2");
    program.sees("Set 2 of 2");
    program.until("the bell", |written| written.raw.contains(&7));
    program.sees("Rest over.");
    // Two more seconds are shown, and nothing is heard.
    program.changes(2);
    assert_eq!(program.written().raw.iter().filter(|byte| **byte == 7).count(), 1);
    // With NO_COLOR, none was ever asked for.
    let raw = String::from_utf8_lossy(&program.written().raw).into_owned();
    assert!(!raw.contains("\x1b[38;") && !raw.contains("\x1b[48;"), "{raw:?}");
    program.kill();
}

#[test]
fn a_rest_outlives_a_kill_and_rings_all_the_same() {
    let dir = folder();
    let store = begun(&dir);
    let mut program = Program::start(&store, &[], &[]);
    program.sees("Begin");
    program.press("\r");
    program.sees("block 1 of 3");
    program.press("\r");
    program.sees("Pause in the set");
    // Fifteen of its twenty seconds off, then the plug is pulled.
    program.press("[");
    // The tap is on disk when the next one is shown: help comes after it.
    program.press("?");
    program.sees("Everywhere");
    program.kill();
    // It rings on any screen.
    let mut program = Program::start(&store, &[], &[]);
    program.sees("Pause in the set");
    program.press("W");
    program.sees("Week 1");
    program.until("the bell", |written| written.raw.contains(&7));
    program.sees("Pause over.");
    program.kill();
}

#[test]
fn signals_and_resizes_leave_the_terminal_as_it_was() {
    let dir = folder();
    let store = begun(&dir);
    for signal in [Signal::TERM, Signal::HUP, Signal::INT] {
        let program = &mut Program::start(&store, &[("COLORTERM", "truecolor")], &[]);
        program.sees("Begin");
        for (rows, cols) in [(40, 120), (10, 30), (24, 80)] {
            let size = PtySize { rows, cols, pixel_width: 0, pixel_height: 0 };
            let drawn = program.written().raw.len();
            program.terminal.resize(size).expect("it can be resized");
            program.written().screen.screen_mut().set_size(size_of(rows), size_of(cols));
            program.until("a frame of that size", |written| written.raw.len() > drawn);
        }
        program.sees("Begin");
        program.signal(signal);
        assert!(!program.ends().success());
        assert!(program.gave_back(), "{signal:?}");
    }
}

#[test]
fn the_first_start_says_so_and_makes_nothing_until_it_is_told() {
    let dir = folder();
    let store = dir.path().join("deep/records.db");
    let mut program = Program::start(&store, &[], &[]);
    program.sees("No records yet");
    program.press("q\r");
    assert!(program.ends().success());
    assert!(!store.exists());

    // A plan with a fault is shown with its place and asked for again; nothing is made of it.
    let plan = dir.path().join("plan.toml");
    std::fs::write(&plan, PLAN.replace("weeks = 2", "weaks = 2")).expect("it can be written");
    let mut program = Program::start(&store, &[], &[]);
    program.sees("d, p, n or q:");
    program.press("p\r");
    program.sees("Plan file:");
    program.press(&format!("{}\r", plan.display()));
    program.sees("weaks");
    assert!(!store.exists());
    std::fs::write(&plan, PLAN).expect("it can be written");
    program.press("p\r");
    program.sees_times("Plan file:", 2);
    program.press(&format!("{}\r", plan.display()));
    program.sees("All kinds");
    assert!(store.exists());
    program.press("q");
    assert!(program.ends().success());
}

/// The locale of the environment chooses the language, of what the terminal says of its own too.
#[cfg(feature = "german")]
#[test]
fn a_german_terminal_speaks_german_from_the_first_line() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut program = Program::start(&dir.path().join("new.db"), &[("LANG", "de_DE.UTF-8")], &[]);
    program.sees("Noch keine Aufzeichnungen");
    program.sees("d, p, n oder q:");
    program.press("n\r");
    program.sees("heuTe  Fläche");
    program.press("E");
    program.sees("Kraftraum aus einer Datei hinzufügen");
    program.press("o");
    program.sees("Datei des Kraftraums: ");
    program.sees("esc: lassen, wie es war");
    program.press("keiner.toml\r");
    program.sees("Die Datei keiner.toml lässt sich nicht lesen: Dort ist nichts.");
    program.press("?");
    program.sees("Tasten");
    program.press("q");
    assert!(program.ends().success());
}

#[test]
fn the_demo_is_kept_apart_from_the_records() {
    let dir = folder();
    let store = dir.path().join("records.db");
    let mut program = Program::start(&store, &[], &[]);
    program.sees("d, p, n or q:");
    program.press("d\r");
    program.sees("invented");
    program.sees("Begin");
    assert!(!store.exists());
    assert!(dir.path().join("demo-records.db").exists());
    // Every screen is reached by its letter, and shown in its place.
    for (letter, text) in [
        ("W", "Week 7"),
        ("L", "Heaviest work load"),
        ("B", "hard sets"),
        ("E", "Plates"),
        ("P", "weeks"),
    ] {
        program.press(letter);
        program.sees(text);
    }
    program.press("?");
    program.sees("Everywhere");
    program.press("\x1b");
    program.press("A");
    program.sees("Next time");
    program.press("q");
    assert!(program.ends().success());
}

/// With nothing that changes by itself, nothing is done: no turn of the loop, no read of a clock.
#[cfg(target_os = "linux")]
#[test]
fn the_desk_lists_lifters_opens_one_and_keeps_nothing() {
    let dir = folder();
    let store = begun(&dir);
    let returns = dir.path().join("returns");
    std::fs::create_dir(&returns).expect("it can be made");
    for name in ["anna", "ben"] {
        let written = Command::new(env!("CARGO_BIN_EXE_barwright"))
            .args(["records", "export", "--jsonl"])
            .arg(returns.join(name).with_extension("jsonl"))
            .arg("--store")
            .arg(&store)
            .output()
            .expect("it starts");
        assert!(written.status.success(), "{written:?}");
    }
    let read = || std::fs::read(returns.join("ben.jsonl")).expect("it is there");
    let before = read();
    let mut program = Program::start(&store, &[], &["desk", returns.to_str().expect("a path")]);
    program.sees("2 lifters");
    program.sees("> anna");
    // Every figure of a line fits on the narrowest terminal.
    program.sees("days off");
    program.press("j");
    program.sees("> ben");
    program.press("\r");
    program.sees("a return: nothing is kept");
    program.sees("All kinds");
    program.press("b");
    program.press("q");
    program.sees("> ben");
    program.press("q");
    assert!(program.ends().success());
    assert!(program.gave_back());
    assert_eq!(read(), before);
}

#[test]
fn it_sleeps_while_nothing_changes() {
    let dir = folder();
    let store = begun(&dir);
    let program = Program::start(&store, &[], &[]);
    program.sees("Begin");
    let id = program.child.process_id().expect("it runs");
    let turns = || -> u64 {
        let tasks = std::fs::read_dir(format!("/proc/{id}/task")).expect("it runs");
        tasks
            .filter_map(|task| {
                let status = task.ok()?.path().join("status");
                let text = std::fs::read_to_string(status).ok()?;
                let line = text.lines().find(|line| line.starts_with("voluntary_ctxt"))?;
                line.split_whitespace().nth(1)?.parse::<u64>().ok()
            })
            .sum()
    };
    // This span is what is measured, not a wait: one that ticks has none like it. A busy machine may
    // take a few until the program has come to rest.
    let still = || {
        let before = turns();
        sleep(Duration::from_millis(1500));
        turns() == before
    };
    assert!((0..10).any(|_| still()), "it never came to rest");
    program.kill();
}

/// A connection that breaks takes the terminal with it: there is nothing to give back, and nothing
/// to run on for.
#[test]
fn it_ends_with_its_terminal() {
    let dir = tempfile::tempdir().expect("a folder");
    let store = begun(&dir);
    let size = PtySize { rows: 24, cols: 80, pixel_width: 0, pixel_height: 0 };
    let pair = native_pty_system().openpty(size).expect("there is a terminal");
    let mut command = CommandBuilder::new(env!("CARGO_BIN_EXE_barwright"));
    command.env("TERM", "xterm-256color");
    command.env("BARWRIGHT_STORE", &store);
    command.cwd(dir.path());
    let mut child = pair.slave.spawn_command(command).expect("it starts");
    // Once it has drawn, it waits for a key.
    let mut reader = pair.master.try_clone_reader().expect("it can be read");
    let mut written = Vec::new();
    while !written.windows(5).any(|part| part == b"Begin") {
        let mut more = [0; 4096];
        let count = reader.read(&mut more).expect("it draws");
        written.extend_from_slice(&more[..count]);
    }
    drop((reader, pair));
    if poll(|| child.try_wait().expect("it can be asked")).is_none() {
        child.kill().expect("it can be stopped");
        panic!("it ran on without a terminal");
    }
}
