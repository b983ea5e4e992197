//! The plan as weeks and sessions.

use barwright_app::contract::WeeksScreen;

use super::sheet::{Item, Sheet, Tone};

pub(super) fn sheet(weeks: &WeeksScreen) -> Sheet<'_> {
    let mut sheet = Sheet::new(&weeks.title, &weeks.subtitle).keys(&weeks.keys);
    for week in &weeks.weeks {
        sheet.rows(&week.title, &week.rows);
        if week.current && !week.rows.is_empty() {
            let heading = sheet.items.len() - week.rows.len() - 1;
            sheet.items[heading] = Item::Text(&week.title, Tone::Here);
        }
    }
    sheet
}
