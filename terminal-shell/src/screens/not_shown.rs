//! What stands where a screen could not be made.

use barwright_app::contract::NotShownScreen;

use super::sheet::{Item, Sheet, Tone};

pub(super) fn sheet(not_shown: &NotShownScreen) -> Sheet<'_> {
    let mut sheet = Sheet::new(&not_shown.title, "").keys(&not_shown.keys);
    sheet.items.push(Item::Text(&not_shown.reason, Tone::Warning));
    if !not_shown.report.is_empty() {
        sheet.items.push(Item::Text(&not_shown.report, Tone::Quiet));
    }
    sheet
}
