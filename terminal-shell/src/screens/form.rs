//! What is made and mended by hand.

use barwright_app::contract::FormScreen;

use super::chart;
use super::sheet::{Item, Sheet, Tone};
use crate::palette::Palette;
use crate::words::Own;

pub(super) fn sheet(form: &FormScreen, width: u16, palette: Palette, own: Own) -> Sheet<'_> {
    let mut sheet = Sheet::new(&form.title, &form.subtitle).keys(&form.keys);
    if form.plan_file {
        sheet.opens = Some(own.open_plan);
    } else if form.file.is_some() {
        sheet.opens = Some(own.save);
    }
    sheet.items.extend(form.rows.iter().map(Item::FormRow));
    if !form.notes.is_empty() {
        sheet.items.push(Item::Gap);
        sheet.items.extend(form.notes.iter().map(|note| Item::Text(note, Tone::Plain)));
    }
    if let Some(chart) = &form.chart {
        sheet.items.push(Item::Gap);
        sheet.items.push(Item::Drawing(chart::drawing(chart, width, palette)));
    }
    sheet
}
