//! `barwright today`: today's sheet as text or JSON.

use std::io::Write;

use barwright_app::Engine;
use barwright_app::contract::Look;

use super::{Failure, say};
use crate::{clock, screens};

/// Prints the sheet.
pub(crate) fn run(
    engine: &Engine,
    minutes: Option<u32>,
    json: bool,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let screen = engine.view(Look::Today { session: None, minutes }, clock::read())?;
    if json {
        serde_json::to_writer_pretty(&mut *out, &screen).map_err(std::io::Error::from)?;
        return say(out, "\n");
    }
    say(out, &screens::text(&screen))
}
