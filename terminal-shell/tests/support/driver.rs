//! `barwright drive` as another program.
#![allow(dead_code)] // not every test sends all of it

use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};

use serde_json::Value;

/// A program that drives the core.
pub(crate) struct Driver {
    child: Child,
    input: Option<ChildStdin>,
    output: BufReader<ChildStdout>,
}

impl Driver {
    pub(crate) fn start(store: &Path) -> Self {
        Self::start_in(store, "en-GB")
    }

    /// Spoken to as a locale says.
    pub(crate) fn start_in(store: &Path, locale: &str) -> Self {
        let mut child = Command::new(env!("CARGO_BIN_EXE_barwright"))
            .args(["drive", "--locale", locale, "--store"])
            .arg(store)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .expect("it starts");
        let input = child.stdin.take();
        let output = BufReader::new(child.stdout.take().expect("it is piped"));
        Self { child, input, output }
    }

    pub(crate) fn send(&mut self, line: &[u8]) {
        let input = self.input.as_mut().expect("it is open");
        input.write_all(line).expect("it is read");
        input.write_all(b"\n").expect("it is read");
        input.flush().expect("it is read");
    }

    pub(crate) fn answer(&mut self) -> Value {
        let mut line = String::new();
        self.output.read_line(&mut line).expect("it answers");
        serde_json::from_str(&line).unwrap_or_else(|error| panic!("{error}: {line}"))
    }

    pub(crate) fn ask(&mut self, line: &Value) -> Value {
        self.send(line.to_string().as_bytes());
        self.answer()
    }

    /// SIGKILL: nothing is closed, nothing is said.
    pub(crate) fn kill(mut self) {
        self.child.kill().expect("it runs");
        self.child.wait().expect("it ends");
    }

    /// The end of the input: everything is closed.
    pub(crate) fn leave(mut self) -> bool {
        drop(self.input.take());
        self.child.wait().expect("it ends").success()
    }
}
