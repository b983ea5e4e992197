//! Today's sheet.

use barwright_app::contract::TodayScreen;

use super::sheet::{Item, Sheet, Tone};
use crate::words::Own;

pub(super) fn sheet(today: &TodayScreen, own: Own) -> Sheet<'_> {
    let mut sheet = Sheet::new(&today.title, &today.subtitle).keys(&today.keys);
    if !today.duration.is_empty() {
        sheet.items.push(Item::Text(&today.duration, Tone::Plain));
    }
    sheet.items.extend(today.cautions.iter().map(|text| Item::Text(text, Tone::Warning)));
    sheet.fields(own.still_needed, &today.needs);
    sheet.rows("", &today.rows);
    sheet.texts(own.left_out, &today.left_out, Tone::Plain);
    sheet
}
