//! What is made and mended by hand.

use barwright_app::contract::{FormRow, FormScreen};
use ratatui::text::Line;

use super::lift;
use super::sheet::{Item, Sheet, Tone, wrapped};
use crate::palette::{Palette, WARNS};
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
        sheet.items.push(Item::Drawing(lift::drawing(chart, width, palette)));
    }
    sheet
}

/// A line: what it is, what it says between its steps, what follows, and what is wrong.
pub(super) fn row_lines(
    row: &FormRow,
    selected: bool,
    palette: Palette,
    width: u16,
) -> Vec<Line<'static>> {
    let mark = match (selected, row.warns) {
        (true, _) => "▸",
        (false, true) => WARNS,
        (false, false) => " ",
    };
    let style = match (selected, row.warns, row.depth) {
        (true, ..) => palette.cap(),
        (false, true, _) => palette.warning(),
        (false, false, 0) => palette.strong(),
        (false, false, _) => palette.plain(),
    };
    let indent = " ".repeat(usize::from(row.depth).saturating_mul(2).min(8));
    let text = if row.value.is_empty() {
        row.text.clone()
    } else {
        format!("{}: {}", row.text, row.value)
    };
    let quiet = format!("  {indent}");
    let mut lines = wrapped(&text, width, &format!("{mark} {indent}"), style);
    lines.extend(wrapped(&row.detail, width, &quiet, palette.quiet()));
    for fault in &row.faults {
        lines.extend(wrapped(fault, width, &format!("{quiet}{WARNS} "), palette.warning()));
    }
    for remark in &row.remarks {
        lines.extend(wrapped(remark, width, &format!("{quiet}· "), palette.quiet()));
    }
    lines
}
