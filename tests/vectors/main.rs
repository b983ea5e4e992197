//! Every scripted session of this folder through the engine, in memory, on disk, and with
//! the file opened anew after every step: whole answers are compared. Kotlin and Swift replay the same files (`bindings/check`).
//!
//! `BARWRIGHT_WRITE_VECTORS=1 cargo test -p barwright-tests --test vectors` writes the answers as
//! the engine gives them now: read the difference before it is committed.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{Answer, EngineError};
use barwright_tests::vectors::{Ask, Reply, Script, canonical};
use serde::Serialize;
use serde_json::Value;

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("vectors")
}

/// Scripts of a folder, in order of name.
fn scripts(folder: &Path) -> Vec<PathBuf> {
    let mut scripts: Vec<PathBuf> = folder
        .read_dir()
        .expect("the folder is in the checkout")
        .map(|entry| entry.expect("it can be read").path())
        .filter(|path| path.extension().is_some_and(|extension| extension == "json"))
        .collect();
    scripts.sort();
    scripts
}

fn read(path: &Path) -> Script {
    let text = std::fs::read_to_string(path).expect("it can be read");
    Script::read(&text).unwrap_or_else(|reason| panic!("{}: {reason}", path.display()))
}

/// When an engine ends and another opens the same file.
#[derive(Clone, Copy, PartialEq)]
enum Kills {
    /// Never: in memory nothing outlives an engine.
    Never,
    /// Where the script says so.
    AsWritten,
    /// After every step: nothing may depend on what only memory held.
    AfterEveryStep,
}

/// An engine's answers to a script, one for each step; `Null` where nothing is answered.
fn answers(script: &Script, open: &dyn Fn() -> Arc<Engine>, kills: Kills) -> Vec<Value> {
    let mut engine = Some(open());
    let answer = |answer: Result<Answer, EngineError>| {
        let reply = answer.map_or_else(Reply::Error, Reply::Answer);
        serde_json::from_str(&reply.canonical()).expect("it was just written")
    };
    let mut answers = Vec::new();
    for step in &script.steps {
        let held = engine.as_ref().expect("an engine is open between steps");
        answers.push(match step.ask().expect("checked when read") {
            Ask::Dispatch(intent, reading) => answer(held.dispatch(intent, reading)),
            Ask::Act(action, reading) => answer(held.act(action, reading)),
            Ask::View(look, reading) => answer(held.view(look, reading)),
            Ask::Suspend => {
                held.suspend().expect("the file is given up");
                Value::Null
            }
            Ask::Kill => Value::Null,
        });
        let killed = step.kill && kills == Kills::AsWritten || kills == Kills::AfterEveryStep;
        if killed {
            // There is one engine to a file: this one goes before the next comes.
            drop(engine.take());
            engine = Some(open());
        }
    }
    answers
}

/// Every way through the engine.
fn replay(script: &Script) -> [(&'static str, Vec<Value>); 3] {
    let folder = tempfile::tempdir().expect("a folder for the files");
    let file = |name: &str| folder.path().join(name).display().to_string();
    let open =
        |path: &str| Engine::open(path.to_owned(), script.locale.clone()).expect("the file opens");
    let in_memory = || Engine::in_memory(script.locale.clone()).expect("memory opens");
    let (once, often) = (file("once.db"), file("often.db"));
    [
        ("in memory", answers(script, &in_memory, Kills::Never)),
        ("on disk", answers(script, &|| open(&once), Kills::AsWritten)),
        ("reopened after every step", answers(script, &|| open(&often), Kills::AfterEveryStep)),
    ]
}

/// A script as it is committed: a line for each value, one space a level.
fn written(script: &Script) -> Vec<u8> {
    let mut text = Vec::new();
    let formatter = serde_json::ser::PrettyFormatter::with_indent(b" ");
    let mut writer = serde_json::Serializer::with_formatter(&mut text, formatter);
    script.serialize(&mut writer).expect("a script is plain data");
    text.push(b'\n');
    text
}

fn check(path: &Path) {
    let mut script = read(path);
    let replays = replay(&script);
    if std::env::var_os("BARWRIGHT_WRITE_VECTORS").is_some() {
        for (step, answer) in script.steps.iter_mut().zip(&replays[0].1) {
            step.expected = answer.clone();
        }
        std::fs::write(path, written(&script)).expect("the checkout can be written");
    }
    for (place, answers) in replays {
        for (step, answer) in script.steps.iter().zip(answers) {
            assert!(
                step.expected == answer,
                "{}, {place}, step “{}”: expected\n{}\nanswered\n{}",
                path.display(),
                step.name,
                canonical(&step.expected),
                canonical(&answer)
            );
        }
    }
}

#[test]
fn every_script_is_answered_as_written() {
    let scripts = scripts(&folder());
    assert!(!scripts.is_empty());
    scripts.iter().for_each(|path| check(path));
}

#[test]
fn every_invalid_script_is_refused_as_written() {
    let scripts = scripts(&folder().join("invalid"));
    assert!(!scripts.is_empty());
    for path in scripts {
        check(&path);
        for step in read(&path).steps.iter().filter(|step| step.intent.is_some()) {
            assert!(step.expected.get("error").is_some(), "“{}” was not refused", step.name);
        }
    }
}
