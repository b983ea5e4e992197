//! Each muscle and side, planned and done: one bar for each.

use barwright_app::contract::{BalanceScreen, MuscleBar};
use ratatui::text::{Line, Span};
use unicode_width::UnicodeWidthStr;

use super::sheet::{Item, Sheet, wrapped};
use crate::palette::{Palette, WARNS};
use crate::words::Own;

pub(super) fn sheet(balance: &BalanceScreen, width: u16, palette: Palette, own: Own) -> Sheet<'_> {
    let mut sheet = Sheet::new(&balance.title, &balance.subtitle).keys(&balance.keys);
    // A third for the bars leaves the counts of one muscle on one line of 80 columns.
    let length = (width.saturating_sub(6) / 3).min(60);
    sheet.items.extend(
        balance
            .bars
            .iter()
            .map(|bar| Item::Drawing(bar_lines(bar, balance.full_halves, length, width, palette))),
    );
    if !balance.bars.is_empty() {
        let mut legend = vec![format!("█ {}", own.bar_done)];
        if balance.bars.iter().any(|bar| bar.under_six_halves > 0) {
            legend.push(format!("▓ {}", own.bar_short));
        }
        legend.push(format!("░ {}", own.bar_planned));
        if balance.bars.iter().any(|bar| bar.left_halves.is_some()) {
            legend.push(own.bar_sides.to_owned());
        }
        let legend = wrapped(&legend.join("   "), width.saturating_sub(2), "", palette.quiet());
        sheet.items.push(Item::Drawing(std::iter::once(Line::default()).chain(legend).collect()));
    }
    sheet.rows("", &balance.sentences);
    sheet.rows(own.by_kind, &balance.kinds);
    sheet
}

/// The bars as text: what a pipe is given.
pub(super) fn drawn(
    balance: &BalanceScreen,
    width: u16,
    palette: Palette,
    own: Own,
) -> Vec<Line<'static>> {
    let mut lines = Vec::new();
    for item in sheet(balance, width, palette, own).items {
        if let Item::Drawing(drawing) = item {
            lines.extend(drawing);
        }
    }
    lines
}

/// One muscle: planned as an outline, done as a fill; under it left over right where a side
/// matters.
fn bar_lines(
    bar: &MuscleBar,
    full: u32,
    length: u16,
    width: u16,
    palette: Palette,
) -> Vec<Line<'static>> {
    let cells = |halves: u32| {
        let scaled = u64::from(halves) * u64::from(length) / u64::from(full.max(1));
        u16::try_from(scaled).unwrap_or(u16::MAX).min(length).max(u16::from(halves > 0))
    };
    let planned = cells(bar.planned_halves);
    let done = cells(bar.done_halves);
    // Short sets stand apart, at the end of what was done.
    let long = cells(bar.done_halves.saturating_sub(bar.under_six_halves)).min(done);
    let drawn: String = (0..length)
        .map(|at| match (at < done, at < planned) {
            // Where the plan ended shows in a fill that is longer.
            (true, false) if at == planned && planned > 0 => '┃',
            (true, _) if at >= long => '▓',
            (true, _) => '█',
            (false, true) => '░',
            (false, false) => ' ',
        })
        .collect();
    let sides = bar.left_halves.zip(bar.right_halves).map(|(left, right)| {
        let (left, right) = (cells(left), cells(right));
        let drawn: String = (0..left.max(right))
            .map(|at| match (at < left, at < right) {
                (true, true) => '█',
                (true, false) => '▀',
                (false, _) => '▄',
            })
            .collect();
        drawn
    });
    let style = if bar.behind { palette.warning() } else { palette.plain() };
    let mark = if bar.behind { WARNS } else { " " };
    let lead = format!("  {drawn} ");
    let under = " ".repeat(lead.width());
    let room = width.saturating_sub(length + 5);
    let mut below = sides.map(|sides| format!("  {sides:<wide$} ", wide = usize::from(length)));
    let mut lines = Vec::new();
    let mut beside = wrapped(&bar.text, room, &format!("{mark} "), style);
    beside.extend(wrapped(&bar.detail, room, "  ", palette.quiet()));
    for (at, text) in beside.into_iter().enumerate() {
        let before = match at {
            0 => Span::styled(lead.clone(), palette.steel()),
            _ => Span::styled(below.take().unwrap_or_else(|| under.clone()), palette.quiet()),
        };
        let mut line = Line::from(before);
        line.extend(text.spans.into_iter().map(|span| span.style(text.style)));
        lines.push(line);
    }
    lines.extend(below.map(|sides| Line::styled(sides, palette.quiet())));
    lines
}
