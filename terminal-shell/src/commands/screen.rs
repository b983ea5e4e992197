//! `barwright today`, `lift`, `balance` and `weeks`: the screens of the same names as text or JSON.

use std::io::Write;

use barwright_app::Engine;
use barwright_app::contract::{Action, EngineError, Look, Screen};

use super::{Failure, say};
use crate::{clock, screens};

/// Prints a screen.
pub(crate) fn run(
    engine: &Engine,
    look: Look,
    json: bool,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let screen = whole(engine, engine.view(look, clock::read())?)?;
    if json {
        serde_json::to_writer_pretty(&mut *out, &screen).map_err(std::io::Error::from)?;
        return say(out, "\n");
    }
    say(out, &screens::text(&screen))
}

/// A screen with all its pages on one, as paper has it.
fn whole(engine: &Engine, mut screen: Screen) -> Result<Screen, EngineError> {
    if let Screen::Lift { lift } = &mut screen {
        while let Some(at) = lift.keys.iter().position(|key| key.id == "older") {
            let Action::Show { look } = lift.keys.remove(at).action else { break };
            let Screen::Lift { lift: older } = engine.view(look, clock::read())? else { break };
            lift.sessions.extend(older.sessions);
            lift.keys.extend(older.keys.into_iter().filter(|key| key.id == "older"));
        }
    }
    Ok(screen)
}
