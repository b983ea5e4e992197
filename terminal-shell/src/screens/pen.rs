//! Writing into a buffer without ever leaving it: a window can be of any size.

use ratatui::buffer::Buffer;
use ratatui::layout::Position;
use ratatui::style::Style;
use ratatui::text::Line;

fn inside(buf: &Buffer, x: u16, y: u16) -> bool {
    buf.area.contains(Position { x, y })
}

/// A text from a place on, as far as the buffer goes.
pub(super) fn text(buf: &mut Buffer, x: u16, y: u16, text: impl AsRef<str>, style: Style) {
    if inside(buf, x, y) {
        buf.set_string(x, y, text, style);
    }
}

/// A line from a place on, no wider than so many columns.
pub(super) fn line(buf: &mut Buffer, x: u16, y: u16, line: &Line<'_>, width: u16) {
    if inside(buf, x, y) {
        buf.set_line(x, y, line, width);
    }
}
