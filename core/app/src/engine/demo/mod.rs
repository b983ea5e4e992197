//! The demo: a plan, a gym and six weeks of history, all invented, in a file of its own.
//!
//! A rowing club trains three days a week in its boathouse cellar. The history is not written down
//! but played: an invented lifter goes through the plan by the keys of the screens, so that the
//! demo can show nothing that a lifter could not have done.

mod player;
mod turn;

use std::path::Path;
use std::sync::Arc;

use barwright_store::Place;

use super::{Core, Engine, Slot};
use crate::contract::{EngineError, Intent, Reading};
use crate::locale::Locale;
use player::Player;

/// The demo's plan.
pub const PLAN: &str = include_str!("plan.toml");
/// The demo's gym.
pub const GYM: &str = include_str!("gym.toml");

/// The invented lifter reads the screens, and reads English.
const ENGLISH: &str = "en-GB";
/// Weeks that lie behind the lifter.
const WEEKS_DONE: i64 = 6;
const DAY_MS: i64 = 86_400_000;

/// Makes the demo at `path`, as of `now`: the seventh week is on. The file must not be there yet.
///
/// # Errors
/// [`EngineError::Storage`] when it can't be written, or is there already.
pub fn create(path: &Path, locale: &str, now: &Reading) -> Result<Arc<Engine>, EngineError> {
    create_in(Place::file(path), locale, now)
}

/// As [`create`], in a place of the store's kind.
///
/// # Errors
/// As there.
pub fn create_in(place: Place, locale: &str, now: &Reading) -> Result<Arc<Engine>, EngineError> {
    let english = Locale::read(ENGLISH);
    Engine::holding(played(now)?, english).back_up_in(place.clone())?;
    Engine::open_in(place, locale)
}

/// The demo in memory: for tests, and for a look that leaves nothing behind.
///
/// # Errors
/// [`EngineError`], as from any tap.
pub fn play(locale: &str, now: &Reading) -> Result<Arc<Engine>, EngineError> {
    Ok(Arc::new(Engine::holding(played(now)?, Locale::read(locale))))
}

/// The demo as it was played, whatever language it is shown in.
fn played(now: &Reading) -> Result<Box<Core>, EngineError> {
    let engine = Engine::in_memory(ENGLISH.to_owned())?;
    play_in(&engine, now)?;
    let played = std::mem::replace(&mut *engine.lock(), Slot::Closed);
    match played {
        Slot::Open(core) => Ok(core),
        Slot::Suspended(_) | Slot::Closed => Err(engine.words().storage().closed()),
    }
}

/// Plays the demo in an engine that has no records yet.
fn play_in(engine: &Engine, now: &Reading) -> Result<(), EngineError> {
    let monday = last_monday(now) - WEEKS_DONE * 7 * DAY_MS;
    let mut player = Player::new(engine, at(now, monday, 17 * 60));
    player.tap(Intent::AddGym { text: GYM.to_owned() })?;
    player.tap(Intent::ChooseGym { name: "Boathouse cellar".to_owned() })?;
    player.tap(Intent::adopt(PLAN))?;
    player.write("body-mass", "82.4 kg")?;
    for (lift, max) in [
        ("back-squat", "142.5 kg"),
        ("bench-press", "97.5 kg"),
        ("deadlift", "175 kg"),
        ("overhead-press", "62.5 kg"),
        ("power-clean", "82.5 kg"),
    ] {
        player.write(&format!("max:{lift}"), max)?;
    }
    for week in 0..WEEKS_DONE {
        for (session, day) in [0, 2, 4].into_iter().enumerate() {
            // One evening the river was low enough to row.
            if (week, day) == (2, 4) {
                continue;
            }
            let minutes = 18 * 60 + 20 + 7 * day;
            player.set_clock(at(now, monday + (week * 7 + day) * DAY_MS, minutes));
            player.session(&format!("{}.{}", week + 1, session + 1))?;
        }
        // Mass creeps up over the winter.
        let grams = 82_400 + 150 * (week + 1);
        player.write("body-mass", &format!("{}.{:03} kg", grams / 1000, grams % 1000))?;
    }
    Ok(())
}

/// The Monday of the week, at midnight local time.
fn last_monday(now: &Reading) -> i64 {
    let local = now.wall_ms + i64::from(now.offset_minutes) * 60_000;
    let day = local.div_euclid(DAY_MS);
    // 1970-01-01 was a Thursday.
    let weekday = (day + 3).rem_euclid(7);
    (day - weekday) * DAY_MS - i64::from(now.offset_minutes) * 60_000
}

/// So many minutes into a day. The history was written on another device: it names no boot.
fn at(now: &Reading, midnight_ms: i64, minutes: i64) -> Reading {
    Reading {
        wall_ms: midnight_ms + minutes * 60_000,
        offset_minutes: now.offset_minutes,
        boot_ms: None,
        boot_id: None,
    }
}
