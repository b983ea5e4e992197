//! `barwright today`, `lift`, `balance` and `weeks`: the screens of the same names as text or JSON.

use std::io::Write;

use barwright_app::Engine;
use barwright_app::contract::Look;

use super::{Failure, say};
use crate::words::Own;
use crate::{clock, screens};

/// Prints a screen.
pub(crate) fn run(
    engine: &Engine,
    look: Look,
    json: bool,
    own: Own,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let screen = engine.view(whole(look), clock::read())?.screen;
    if json {
        serde_json::to_writer_pretty(&mut *out, &screen).map_err(std::io::Error::from)?;
        return say(out, "\n");
    }
    say(out, &screens::text(&screen, own))
}

/// A look with all its pages on one, as paper has it.
fn whole(look: Look) -> Look {
    match look {
        Look::Lift { exercise, page, all: _ } => Look::Lift { exercise, page, all: true },
        look => look,
    }
}
