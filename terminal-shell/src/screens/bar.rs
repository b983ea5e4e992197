//! The loaded sleeve, side on and to scale.

use barwright_app::contract::{BarZone, PlateDrawing};
use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use ratatui::style::Style;
use unicode_width::UnicodeWidthStr;

use super::pen;
use crate::palette::Palette;

/// Columns of the bar's shaft left of the sleeve, with the shoulder that stops the plates.
const SHAFT: u16 = 4;
/// Columns after the plates: a collar, and the end of the sleeve.
const END: u16 = 4;

/// How wide each plate is drawn, and the columns between two; none where they don't fit.
fn widths(plates: &[PlateDrawing], room: u16) -> Option<(Vec<u16>, u16)> {
    let sleeve = u32::from(room);
    let wide: Vec<u16> = plates
        .iter()
        .map(|plate| {
            let scaled = u16::try_from((plate.width * sleeve + 500) / 1000).unwrap_or(room);
            // A number is read whole, or it is worth nothing.
            scaled.max(u16::try_from(plate.label.width()).unwrap_or(room)).max(1)
        })
        .collect();
    let sum: u16 = wide.iter().fold(0, |sum, one| sum.saturating_add(*one));
    let between = u16::try_from(plates.len().saturating_sub(1)).unwrap_or(room);
    if sum.saturating_add(between) <= room {
        Some((wide, 1))
    } else if sum <= room {
        Some((wide, 0))
    } else {
        None
    }
}

/// Draws the sleeve of a bar over the whole height of an area, which is odd. Where the plates
/// don't fit beside each other they are listed.
pub(super) fn draw(zone: &BarZone, palette: Palette, area: Rect, buf: &mut Buffer) {
    let room = area.width.saturating_sub(SHAFT + END);
    let middle = area.y + area.height / 2;
    let Some((wide, gap)) = widths(&zone.plates, room) else {
        let labels: Vec<&str> = zone.plates.iter().map(|plate| plate.label.as_str()).collect();
        let lines = super::sheet::wrapped(&labels.join(" · "), area.width, "", palette.strong());
        super::sheet::put(&lines, area, buf);
        return;
    };
    let steel = palette.steel();
    let across = |buf: &mut Buffer, from: u16, to: u16, one: &str| {
        for x in from..to.min(area.right()) {
            pen::text(buf, x, middle, one, steel);
        }
    };
    across(buf, area.x, area.right().saturating_sub(1), "━");
    pen::text(buf, area.right().saturating_sub(1), middle, "╸", steel);
    // The shoulder: plates are pushed against it.
    let shoulder = area.x + SHAFT - 1;
    column(buf, area, shoulder, 3, "▐", steel);
    let mut x = area.x + SHAFT;
    for (plate, width) in zone.plates.iter().zip(wide) {
        one_plate(plate, palette, area, x, width, buf);
        x = x.saturating_add(width).saturating_add(gap);
    }
    if zone.collar {
        let x = x.saturating_sub(gap);
        column(buf, area, x, 1, "▐", steel);
        column(buf, area, x + 1, 1, "▌", steel);
    }
}

/// One column of the drawing, so many rows high about the middle.
fn column(buf: &mut Buffer, area: Rect, x: u16, rows: u16, one: &str, style: Style) {
    let from = area.y + area.height.saturating_sub(rows) / 2;
    for y in from..(from + rows).min(area.bottom()) {
        if x < area.right() {
            pen::text(buf, x, y, one, style);
        }
    }
}

fn one_plate(
    plate: &PlateDrawing,
    palette: Palette,
    area: Rect,
    x: u16,
    width: u16,
    buf: &mut Buffer,
) {
    let (body, number) = palette.plate(&plate.colour, &plate.ink);
    // In half rows, the same above and below the middle.
    let all = u32::from(area.height) * 2;
    let high = ((plate.height * all + 1000) / 2000 * 2).clamp(2, all);
    let above = (all - high) / 2;
    let within = |half: u32| half >= above && half < above + high;
    for (row, y) in (0..).zip(area.y..area.bottom()) {
        let block = match (within(row * 2), within(row * 2 + 1)) {
            (true, true) => "█",
            (true, false) => "▀",
            (false, true) => "▄",
            (false, false) => continue,
        };
        for x in x..x + width {
            pen::text(buf, x, y, block, body);
        }
    }
    let middle = area.y + area.height / 2;
    let label = format!("{:^width$}", plate.label, width = usize::from(width));
    pen::text(buf, x, middle, label, number);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plate(label: &str, height: u32, width: u32) -> PlateDrawing {
        PlateDrawing {
            label: label.into(),
            colour: String::new(),
            ink: String::new(),
            height,
            width,
        }
    }

    #[test]
    fn plates_keep_their_numbers_and_give_up_the_gaps_first() {
        let side = [plate("25", 1000, 101), plate("1.25", 355, 36)];
        assert_eq!(widths(&side, 34), Some((vec![3, 4], 1)));
        assert_eq!(widths(&side, 7), Some((vec![2, 4], 1)));
        assert_eq!(widths(&side, 6), Some((vec![2, 4], 0)));
        assert_eq!(widths(&side, 5), None);
    }
}
