//! The end of a session.

use barwright_app::contract::TallyScreen;

use super::sheet::{Item, Sheet, Tone};

pub(super) fn sheet(tally: &TallyScreen) -> Sheet<'_> {
    let mut sheet = Sheet::new(&tally.title, &tally.subtitle).keys(&tally.keys);
    sheet.items.extend(tally.cautions.iter().map(|text| Item::Text(text, Tone::Warning)));
    sheet.rows("Next time", &tally.changes);
    sheet.rows("Done", &tally.done);
    sheet.texts("Notes", &tally.notes, Tone::Plain);
    sheet.fields("To write", &tally.fields);
    sheet
}
