//! Keys in a line, each with the press it takes.

use barwright_app::contract::Key;
use ratatui::text::{Line, Span};
use unicode_width::UnicodeWidthStr;

use crate::keys::{self, Bound};
use crate::palette::Palette;

/// A key: its cap and its label. One that can't be tapped now has no cap and stands in brackets;
/// one that holds already has a dot.
pub(super) fn part(bound: &[Bound<'_>], key: &Key, palette: Palette) -> Vec<Span<'static>> {
    let chosen = if key.chosen { "● " } else { "" };
    match keys::cap(bound, key) {
        Some(cap) => {
            let label = format!("{chosen}{}", key.label);
            if cap == "enter" { main(&cap, &label, palette) } else { named(&cap, &label, palette) }
        }
        None => vec![Span::styled(format!("({chosen}{})", key.label), palette.quiet())],
    }
}

/// A cap and what it does.
pub(super) fn named(cap: &str, label: &str, palette: Palette) -> Vec<Span<'static>> {
    vec![
        Span::styled(format!(" {cap} "), palette.cap()),
        Span::styled(format!(" {label}"), palette.plain()),
    ]
}

/// The one thing to do now.
fn main(cap: &str, label: &str, palette: Palette) -> Vec<Span<'static>> {
    vec![
        Span::styled(format!(" {cap} "), palette.key()),
        Span::styled(format!(" {label}"), palette.now()),
    ]
}

/// Parts side by side, on as many lines as they need.
pub(super) fn flow(parts: Vec<Vec<Span<'static>>>, width: u16) -> Vec<Line<'static>> {
    let mut lines: Vec<Line<'static>> = Vec::new();
    let mut used = 0;
    for part in parts {
        let wide: usize = part.iter().map(|span| span.content.width()).sum();
        match lines.last_mut() {
            Some(line) if used + 2 + wide <= usize::from(width) => {
                line.push_span("  ");
                line.extend(part);
                used += 2 + wide;
            }
            _ => {
                lines.push(Line::from(part));
                used = wide;
            }
        }
    }
    lines
}

/// A key whose label is the press itself: a step up or down.
pub(super) fn step(bound: &[Bound<'_>], key: &Key, palette: Palette) -> Vec<Span<'static>> {
    match keys::cap(bound, key) {
        Some(cap) => vec![Span::styled(format!(" {cap} "), palette.cap())],
        None => Vec::new(),
    }
}
