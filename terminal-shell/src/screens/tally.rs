//! The end of a session.

use barwright_app::contract::TallyScreen;

use super::sheet::{Item, Sheet, Tone};
use crate::words::Own;

pub(super) fn sheet(tally: &TallyScreen, own: Own) -> Sheet<'_> {
    let mut sheet = Sheet::new(&tally.title, &tally.subtitle).keys(&tally.keys);
    sheet.items.extend(tally.cautions.iter().map(|text| Item::Text(text, Tone::Warning)));
    sheet.rows(own.next_time, &tally.changes);
    sheet.rows(own.done, &tally.done);
    sheet.texts(own.notes, &tally.notes, Tone::Plain);
    sheet.fields(own.to_write, &tally.fields);
    sheet
}
