//! One exercise over time: a drawing first, then its records and sessions.

use barwright_app::contract::{Key, LiftScreen};

use super::chart;
use super::sheet::{Item, Sheet, Tone};
use crate::palette::Palette;
use crate::words::Own;

pub(super) fn sheet(lift: &LiftScreen, width: u16, palette: Palette, own: Own) -> Sheet<'_> {
    let mut sheet =
        Sheet::new(&lift.title, &lift.subtitle).keys(lift.keys.iter().filter(|key| !leads(key)));
    if let Some(chart) = &lift.chart {
        if chart.title != lift.title {
            sheet.items.push(Item::Text(&chart.title, Tone::Heading));
        }
        sheet.items.push(Item::Drawing(chart::drawing(
            chart,
            width.saturating_sub(4).min(96),
            palette,
        )));
    }
    sheet.rows("", &lift.records);
    sheet.fields(own.by_hand, &lift.fields);
    sheet.rows(own.sessions, &lift.sessions);
    sheet.list(own.other_exercises, lift.keys.iter().filter(|key| leads(key)));
    sheet
}

/// Whether a key leads to an exercise: there can be dozens.
fn leads(key: &Key) -> bool {
    key.id.starts_with("lift-")
}
