//! The program on records of its own, and what it says.
#![allow(dead_code)] // not every test refuses, or is told so

use std::path::Path;
use std::process::{Command, Output};

/// Runs it where English is spoken.
pub(crate) fn barwright(store: &Path, args: &[&str]) -> Output {
    barwright_in("en_GB.UTF-8", store, args)
}

/// Runs it in a locale of the system.
pub(crate) fn barwright_in(locale: &str, store: &Path, args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(args)
        .arg("--store")
        .arg(store)
        .env("LC_ALL", locale)
        .output()
        .expect("the program starts")
}

/// All that it said.
pub(crate) fn said(output: &Output) -> String {
    format!(
        "{}{}",
        String::from_utf8_lossy(&output.stdout),
        String::from_utf8_lossy(&output.stderr)
    )
}

/// Runs it and expects it to do what it is asked.
pub(crate) fn does(store: &Path, args: &[&str]) -> String {
    let output = barwright(store, args);
    assert!(output.status.success(), "{args:?}: {}", said(&output));
    said(&output)
}

/// Runs it and expects it to refuse.
pub(crate) fn refuses(store: &Path, args: &[&str]) -> String {
    let output = barwright(store, args);
    assert!(!output.status.success(), "{args:?}: {}", said(&output));
    said(&output)
}
