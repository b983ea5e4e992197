//! What the worker calls. Answers are JSON: `{"answer": …}` or `{"error": …}` for what shows a
//! screen, `{"done": …}` or `{"error": …}` for the rest.

// What crosses to the worker is `pub` for the macro that exports it.
#![allow(unreachable_pub)]

use std::cell::RefCell;
use std::path::Path;
use std::sync::Arc;

use barwright_app::contract::{Action, EngineError, Intent, Look, Reading};
use barwright_app::{Engine, recover_in, restore_in};
use serde::{Deserialize, Serialize};
use wasm_bindgen::prelude::*;

use crate::pool::{self, Handle};
use crate::{ports, vfs};

thread_local! {
    static ENGINE: RefCell<Option<Arc<Engine>>> = const { RefCell::new(None) };
}

/// One thing asked, at a reading of the clocks.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Line {
    reading: Reading,
    #[serde(default)]
    intent: Option<Intent>,
    #[serde(default)]
    action: Option<Action>,
    #[serde(default)]
    view: Option<Look>,
}

#[derive(Serialize)]
#[serde(rename_all = "snake_case")]
enum Said<T> {
    Answer(T),
    Done(T),
    Error(EngineError),
}

/// Where a file's bytes could not be moved.
fn unmoved() -> JsError {
    JsError::new("the browser's file")
}

fn json<T: Serialize>(said: &Said<T>) -> Result<String, JsError> {
    Ok(serde_json::to_string(said)?)
}

fn done<T: Serialize>(result: Result<T, EngineError>) -> Result<String, JsError> {
    json(&result.map_or_else(Said::Error, Said::Done))
}

fn engine() -> Result<Arc<Engine>, JsError> {
    ENGINE.with_borrow(|engine| engine.clone()).ok_or_else(|| JsError::new("nothing is open"))
}

/// Takes an opened file into the pool. All of them come before the first call.
#[wasm_bindgen]
pub fn take(handle: Handle) -> Result<(), JsError> {
    pool::take(handle).map_err(|_| unmoved())
}

/// Files that stand ready.
#[wasm_bindgen]
pub fn free() -> usize {
    pool::count().0
}

/// Files that can't be told from each other: what is in them may be records.
#[wasm_bindgen]
pub fn unread() -> usize {
    pool::count().1
}

/// Opens the store of a name, or makes it; the one that was open is let go.
#[wasm_bindgen]
pub fn open(name: &str, locale: &str) -> Result<String, JsError> {
    vfs::register();
    ENGINE.with_borrow_mut(|engine| *engine = None);
    done(Engine::open_in(ports::place(name), locale).map(|opened| {
        ENGINE.with_borrow_mut(|engine| *engine = Some(opened));
    }))
}

/// Answers one line.
#[wasm_bindgen]
pub fn answer(line: &str) -> Result<String, JsError> {
    let engine = engine()?;
    // By way of a tree, which takes less code than one reader for each type.
    let line: Line = serde_json::from_value(serde_json::from_str(line)?)?;
    let answer = match (line.intent, line.action, line.view) {
        (Some(intent), None, None) => engine.dispatch(intent, line.reading),
        (None, Some(action), None) => engine.act(action, line.reading),
        (None, None, Some(look)) => engine.view(look, line.reading),
        _ => return Err(JsError::new("one of intent, action and view is wanted")),
    };
    json(&answer.map_or_else(Said::Error, Said::Answer))
}

/// How many entries the log has.
#[wasm_bindgen]
pub fn entries() -> Result<String, JsError> {
    done(engine()?.count_records())
}

/// Gives the file up until the next call.
#[wasm_bindgen]
pub fn suspend() -> Result<String, JsError> {
    done(engine()?.suspend())
}

/// Closes the store.
#[wasm_bindgen]
pub fn close() -> Result<String, JsError> {
    let engine = ENGINE.with_borrow_mut(Option::take);
    done(engine.map_or(Ok(()), |engine| engine.shut_down()))
}

/// Checks the whole file; answers how many entries there are.
#[wasm_bindgen]
pub fn check() -> Result<String, JsError> {
    done(engine()?.check_records())
}

/// The versions of program, contract and store.
#[wasm_bindgen]
pub fn versions() -> Result<String, JsError> {
    let versions = engine()?.versions();
    done(versions.map(|versions| (versions.program, versions.contract, versions.store)))
}

/// Writes a copy of the records to another name and checks it.
#[wasm_bindgen]
pub fn back_up(to: &str) -> Result<String, JsError> {
    done(engine()?.back_up(to.to_owned()))
}

/// Puts a copy in the place of the records of a name; nothing may have it open. Answers in words.
#[wasm_bindgen]
pub fn restore(from: &str, name: &str, locale: &str) -> Result<String, JsError> {
    vfs::register();
    done(restore_in(Path::new(from), &ports::place(name), locale))
}

/// Reads what is good in a damaged file; nothing may have it open. Answers in words.
#[wasm_bindgen]
pub fn recover(name: &str, locale: &str) -> Result<String, JsError> {
    vfs::register();
    done(recover_in(&ports::place(name), locale).map(|recovered| recovered.reason))
}

/// Whether there is a file of a name.
#[wasm_bindgen]
pub fn is_there(name: &str) -> bool {
    pool::find(name).is_some()
}

/// A file's bytes.
#[wasm_bindgen]
pub fn read_file(name: &str) -> Result<Vec<u8>, JsError> {
    let slot = pool::find(name).ok_or_else(unmoved)?;
    let mut bytes = vec![0; usize::try_from(slot.bytes())?];
    let read = slot.read_at(0, &mut bytes).map_err(|_| unmoved())?;
    bytes.truncate(read);
    Ok(bytes)
}

/// Makes a file of bytes, under a name that is not taken.
#[wasm_bindgen]
pub fn write_file(name: &str, bytes: &[u8]) -> Result<(), JsError> {
    let slot = pool::make(name).map_err(|_| unmoved())?;
    slot.write_at(0, bytes).and_then(|()| slot.flush()).map_err(|_| {
        // A part of it is of no use.
        let _ = pool::remove(name);
        unmoved()
    })
}

/// Removes a file; where there is none it is so already.
#[wasm_bindgen]
pub fn remove_file(name: &str) {
    let _ = pool::remove(name);
}
