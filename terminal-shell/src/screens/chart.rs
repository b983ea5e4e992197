//! A chart as lines of characters.

use barwright_app::contract::{Chart, ChartAxis, ChartPoint, SeriesKind};
use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use ratatui::style::Style;
use ratatui::symbols::Marker;
use ratatui::text::{Line, Span};
use ratatui::widgets::Widget;
use ratatui::widgets::canvas::{Canvas, Line as Stroke};
use unicode_width::UnicodeWidthStr;

use super::pen;
use super::sheet::wrapped;
use crate::palette::Palette;

/// Rows of the drawing.
const HIGH: u16 = 12;

/// Where a value of an axis lies over so many cells.
fn place(axis: &ChartAxis, value: i64, cells: u16) -> Option<u16> {
    let span = i128::from(axis.to) - i128::from(axis.from);
    let from = i128::from(value) - i128::from(axis.from);
    if span <= 0 || from < 0 || from > span {
        return None;
    }
    u16::try_from(from * i128::from(cells.saturating_sub(1)) / span).ok()
}

/// The chart as lines: bands behind, then lines and marks, with the ticks of both axes.
pub(super) fn drawing(chart: &Chart, width: u16, palette: Palette) -> Vec<Line<'static>> {
    let labels = chart.up.ticks.iter().map(|tick| tick.label.width()).max().unwrap_or(0);
    let left = u16::try_from(labels).unwrap_or(0).min(16) + 2;
    let area = Rect::new(0, 0, width.max(left + 10), HIGH + 2);
    let mut buf = Buffer::empty(area);
    buf.set_style(area, palette.plain());
    let plot = Rect { x: left, y: 0, width: area.width - left, height: HIGH };
    axes(chart, plot, palette, &mut buf);
    for series in chart.series.iter().filter(|series| series.kind == SeriesKind::Band) {
        band(chart, &series.points, plot, palette.quiet(), &mut buf);
    }
    for series in chart.series.iter().filter(|series| series.kind == SeriesKind::Line) {
        line(chart, &series.points, plot, palette, &mut buf);
    }
    let marks = chart.series.iter().filter_map(|series| match series.kind {
        SeriesKind::Marks => Some((series, "●", palette.now())),
        SeriesKind::Failed => Some((series, "×", palette.warning())),
        SeriesKind::Band | SeriesKind::Line => None,
    });
    for (series, mark, style) in marks {
        for point in &series.points {
            let at = place(&chart.across, point.x, plot.width).zip(place(
                &chart.up,
                point.low,
                plot.height,
            ));
            if let Some((x, y)) = at {
                pen::text(&mut buf, plot.x + x, plot.bottom() - 1 - y, mark, style);
            }
        }
    }
    // What the figures beside the axis are of stands over it.
    let of = format!("{:>wide$}", chart.up.label, wide = usize::from(left.saturating_sub(2)));
    let mut lines = vec![Line::styled(of, palette.quiet())];
    lines.extend(area.rows().map(|row| of_row(&buf, row)));
    lines.extend(wrapped(&legend(chart), width, "", palette.quiet()));
    lines.extend(wrapped(&chart.aloud, width, "", palette.quiet()));
    lines
}

fn axes(chart: &Chart, plot: Rect, palette: Palette, buf: &mut Buffer) {
    for y in plot.y..plot.bottom() {
        pen::text(buf, plot.x - 1, y, "│", palette.quiet());
    }
    for tick in &chart.up.ticks {
        if let Some(y) = place(&chart.up, tick.at, plot.height) {
            let wide = u16::try_from(tick.label.width()).unwrap_or(0).min(plot.x - 2);
            let y = plot.bottom() - 1 - y;
            pen::text(buf, plot.x - 2 - wide, y, &tick.label, palette.quiet());
            pen::text(buf, plot.x - 1, y, "┤", palette.quiet());
        }
    }
    pen::text(buf, plot.x - 1, plot.bottom(), "└", palette.quiet());
    let bottom = "─".repeat(usize::from(plot.width));
    pen::text(buf, plot.x, plot.bottom(), bottom, palette.quiet());
    let mut free = 0;
    for tick in &chart.across.ticks {
        let Some(x) = place(&chart.across, tick.at, plot.width) else { continue };
        pen::text(buf, plot.x + x, plot.bottom(), "┴", palette.quiet());
        let wide = u16::try_from(tick.label.width()).unwrap_or(0);
        // The label under its tick, within the drawing, not over another.
        let last = plot.right().saturating_sub(wide);
        let from = (plot.x + x).saturating_sub(wide / 2).min(last);
        if from >= free {
            pen::text(buf, from, plot.bottom() + 1, &tick.label, palette.quiet());
            free = from + wide + 1;
        }
    }
}

/// Shades between low and high, from point to point.
fn band(chart: &Chart, points: &[ChartPoint], plot: Rect, style: Style, buf: &mut Buffer) {
    for pair in points.windows(2) {
        let [one, other] = pair else { continue };
        let ends =
            place(&chart.across, one.x, plot.width).zip(place(&chart.across, other.x, plot.width));
        let Some((from, to)) = ends else { continue };
        let between = |a: i64, b: i64, x: u16| {
            let (over, of) = (i128::from(x - from), i128::from(to.max(from + 1) - from));
            let value = i128::from(a) + (i128::from(b) - i128::from(a)) * over / of;
            i64::try_from(value).unwrap_or(a)
        };
        for x in from..=to {
            // As far as the drawing goes.
            let within = |value: i64| value.clamp(chart.up.from, chart.up.to.max(chart.up.from));
            let low = within(between(one.low, other.low, x));
            let high = within(between(one.high, other.high, x));
            let low = place(&chart.up, low, plot.height);
            let high = place(&chart.up, high, plot.height);
            let Some((low, high)) = low.zip(high) else { continue };
            for y in low..=high {
                pen::text(buf, plot.x + x, plot.bottom() - 1 - y, "░", style);
            }
        }
    }
}

// A drawing library takes its coordinates as floating-point numbers; nothing is counted here.
#[allow(clippy::cast_precision_loss)]
fn line(chart: &Chart, points: &[ChartPoint], plot: Rect, palette: Palette, buf: &mut Buffer) {
    let (from_x, to_x) = (chart.across.from as f64, chart.across.to as f64);
    let (from_y, to_y) = (chart.up.from as f64, chart.up.to as f64);
    if from_x >= to_x || from_y >= to_y {
        return;
    }
    let style = palette.strong();
    Canvas::default()
        .marker(Marker::Braille)
        .background_color(style.bg.unwrap_or_default())
        .x_bounds([from_x, to_x])
        .y_bounds([from_y, to_y])
        .paint(|painter| {
            for pair in points.windows(2) {
                let [one, other] = pair else { continue };
                painter.draw(&Stroke {
                    x1: one.x as f64,
                    y1: one.low as f64,
                    x2: other.x as f64,
                    y2: other.low as f64,
                    color: style.fg.unwrap_or_default(),
                });
            }
        })
        .render(plot, buf);
}

/// One row of a buffer as a line.
fn of_row(buf: &Buffer, row: Rect) -> Line<'static> {
    let spans: Vec<Span<'static>> = row
        .columns()
        .map(|cell| {
            let cell = &buf[(cell.x, cell.y)];
            Span::styled(cell.symbol().to_owned(), cell.style())
        })
        .collect();
    Line::from(spans)
}

fn legend(chart: &Chart) -> String {
    let parts: Vec<String> = chart
        .series
        .iter()
        .map(|series| {
            let mark = match series.kind {
                SeriesKind::Band => "░",
                SeriesKind::Line => "⠤⠤",
                SeriesKind::Marks => "●",
                SeriesKind::Failed => "×",
            };
            format!("{mark} {}", series.label)
        })
        .collect();
    parts.join("   ")
}
