//! The floor, in its three zones: the bar, the call, the thumb.

use barwright_app::contract::{BarZone, FloorScreen, Key, Panel, ThumbZone};
use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use ratatui::style::Style;
use ratatui::text::{Line, Span};
use unicode_width::UnicodeWidthStr;

use super::sheet::{self, Item, Selectable, Sheet, Tone, put, split, wrapped};
use super::{Ui, bar, keys_line, large, pen};
use crate::keys::{self, Bound, Chosen};
use crate::palette::{Palette, WARNS};
use crate::words::Own;

/// Columns of the large type, left of the drawing.
const LEFT: u16 = 38;

/// How much room there is for type and drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Size {
    /// Words only.
    Small,
    /// As drawn for 80 × 24.
    Usual,
    /// Everything twice as high.
    Tall,
}

impl Size {
    const fn of(area: Rect) -> Self {
        if area.width < 72 || area.height < 22 {
            Self::Small
        } else if area.width >= 110 && area.height >= 36 {
            Self::Tall
        } else {
            Self::Usual
        }
    }
}

/// The call in full, over the floor: why this load, and every line of it.
pub(super) fn call_sheet(floor: &FloorScreen, own: Own) -> Sheet<'_> {
    let call = &floor.call;
    let mut sheet = Sheet::new(&call.exercise, &call.sentence);
    sheet.texts(own.why_this_load, &call.why, Tone::Plain);
    sheet.texts(own.take_care, &call.cautions, Tone::Warning);
    sheet.texts(own.how, &call.manner, Tone::Plain);
    sheet.texts(own.set_up, &call.set_up, Tone::Plain);
    sheet.texts(own.cues, &call.cues, Tone::Plain);
    if !call.last.is_empty() {
        sheet.items.push(Item::Gap);
        sheet.items.push(Item::Text(&call.last, Tone::Quiet));
    }
    sheet
}

/// What can be selected: the lines and fields of the open panel.
pub(super) fn selectable(floor: &FloorScreen) -> Vec<Selectable<'_>> {
    floor.panel.as_ref().map(|panel| sheet::selectable(&panel_items(panel))).unwrap_or_default()
}

/// The keys that work. An open panel lies over the thumb: its keys stand for the thumb's.
pub(super) fn bound<'a>(floor: &'a FloorScreen, chosen: Chosen<'a>) -> Vec<Bound<'a>> {
    match &floor.panel {
        Some(panel) => keys::panel(panel, chosen),
        None => keys::floor(floor),
    }
}

fn panel_items(panel: &Panel) -> Vec<Item<'_>> {
    let rows = panel.rows.iter().map(Item::Row);
    rows.chain(panel.fields.iter().map(Item::Field)).collect()
}

pub(super) fn draw(
    floor: &FloorScreen,
    bound: &[Bound<'_>],
    ui: &Ui,
    palette: Palette,
    area: Rect,
    buf: &mut Buffer,
) -> usize {
    let size = Size::of(area);
    let (head, rest) = split(area, 1);
    header(floor, ui, palette, head, buf);
    let (first, rest) = split(rest, bar_height(floor, size));
    bar_zone(floor, bound, size, palette, first, buf);
    if let Some(panel) = &floor.panel {
        return panel_zone(panel, bound, ui, palette, rest, buf);
    }
    let thumb = thumb_lines(floor, bound, ui.own, size, palette, rest.width);
    let height = u16::try_from(thumb.len()).unwrap_or(u16::MAX).min(rest.height);
    let (second, third) = split(rest, rest.height - height);
    call_zone(floor, ui, palette, second, buf);
    put(&thumb, third, buf);
    if size != Size::Small {
        thumb_drawing(&floor.thumb, bound, ui, size, palette, third, buf);
    }
    0
}

fn header(floor: &FloorScreen, ui: &Ui, palette: Palette, area: Rect, buf: &mut Buffer) {
    pen::text(buf, area.x + 1, area.y, &floor.title, palette.strong());
    let to_go = &floor.call.to_go;
    let mark = ui.mark.map_or(0, |mark| mark.width() + 4);
    let used = floor.title.width() + 3 + to_go.width() + mark + 1;
    if used <= usize::from(area.width) {
        let x = area.right() - u16::try_from(to_go.width() + mark + 1).unwrap_or(0);
        pen::text(buf, x, area.y, to_go, palette.quiet());
    }
}

// Zone one: the bar.

fn bar_height(floor: &FloorScreen, size: Size) -> u16 {
    let change = u16::from(!floor.bar.change.is_empty());
    let busy = floor.rest.is_some() || change > 0;
    match size {
        Size::Small => 3 + change,
        // Nothing to change: the drawing shrinks and the call grows.
        Size::Usual if busy || floor.bar.drawn => 8 + change,
        Size::Usual => 7,
        Size::Tall => 14 + change,
    }
}

fn bar_zone(
    floor: &FloorScreen,
    bound: &[Bound<'_>],
    size: Size,
    palette: Palette,
    area: Rect,
    buf: &mut Buffer,
) {
    let zone = &floor.bar;
    let area = inside(area);
    let change = u16::from(!zone.change.is_empty());
    let (area, below) = split(area, area.height.saturating_sub(change));
    if change > 0 {
        put(&wrapped(&zone.change, below.width, "", palette.now()), below, buf);
    }
    if size == Size::Small {
        put(&bar_words(floor, bound, palette, area.width), area, buf);
        return;
    }
    let left_width = if size == Size::Tall { 72 } else { LEFT };
    let left = Rect { width: left_width.min(area.width), ..area };
    let right = Rect { x: left.right(), width: area.width.saturating_sub(left_width), ..area };
    left_side(floor, bound, size, palette, left, buf);
    let (name, drawing) = split(right, 1);
    let standing = standing(zone);
    if zone.drawn {
        // Under a rest the load stands before it: what has no room is left out whole, and the change
        // of plates says it too.
        let before = floor.rest.as_ref().map_or(0, |_| zone.total.width() + 2);
        let fits = before + standing.width() <= usize::from(name.width);
        let standing = if fits { standing.clone() } else { zone.bar.clone() };
        let line = match &floor.rest {
            Some(_) => Line::from(vec![
                Span::styled(zone.total.clone(), palette.strong()),
                Span::styled(format!("  {standing}"), palette.quiet()),
            ]),
            None => Line::styled(standing, palette.quiet()),
        };
        put(&[line], name, buf);
        let height = drawing.height.saturating_sub((drawing.height + 1) % 2);
        bar::draw(zone, palette, Rect { height, ..drawing }, buf);
    } else {
        let mut lines = Vec::new();
        if floor.rest.is_some() {
            lines.push(Line::styled(zone.total.clone(), palette.strong()));
        }
        if zone.line != zone.total {
            lines.extend(wrapped(&zone.line, drawing.width, "", palette.strong()));
        }
        lines.extend(wrapped(&standing, drawing.width, "", palette.quiet()));
        put(&lines, Rect { y: drawing.y + 1, ..drawing }, buf);
    }
}

/// What is drawn, in words: "Bar, 20 kg · each side".
fn standing(zone: &BarZone) -> String {
    let parts = [zone.bar.as_str(), zone.counts.as_str()];
    let said: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    said.join(" · ")
}

/// The largest type of the screen: the countdown while resting, else the load.
fn left_side(
    floor: &FloorScreen,
    bound: &[Bound<'_>],
    size: Size,
    palette: Palette,
    area: Rect,
    buf: &mut Buffer,
) {
    let (label, rest) = split(area, 1);
    match &floor.rest {
        Some(view) => {
            let style = if view.over { palette.now() } else { palette.strong() };
            let told = if view.over { palette.key() } else { palette.strong() };
            pen::text(buf, label.x, label.y, &view.label, told);
            let under = big(&view.text, size, style, rest, buf);
            // Under an open list they don't work.
            if floor.panel.is_none() {
                let keys = [&view.shorter, &view.longer]
                    .into_iter()
                    .map(|key| keys_line::part(bound, key, palette))
                    .collect();
                let (_, foot) = split(rest, under + 1);
                put(&keys_line::flow(keys, foot.width), foot, buf);
            }
        }
        None => {
            let text = if floor.bar.total.is_empty() { &floor.bar.line } else { &floor.bar.total };
            big(text, size, palette.strong(), rest, buf);
        }
    }
}

/// A text in large type, from the top of an area; plain where it has no room or no letters.
/// Answers how many rows it took.
fn big(text: &str, size: Size, style: Style, area: Rect, buf: &mut Buffer) -> u16 {
    let (across, high) = if size == Size::Tall { (4, 2) } else { (2, 1) };
    let fits = |rows: &Vec<String>| {
        rows.iter().all(|row| row.width() <= usize::from(area.width.saturating_sub(1)))
    };
    // The unit gives way first: it stands in plain type behind the figures.
    let (figures, unit) = text.rsplit_once([' ', '\u{a0}', '\u{202f}']).unwrap_or((text, ""));
    let whole = large::rows(text, across).filter(fits).map(|rows| (rows, ""));
    let tried = whole.or_else(|| {
        let rows = large::rows(figures, across).filter(|rows| {
            let room = area.width.saturating_sub(1);
            rows.iter().all(|row| row.width() + 1 + unit.width() <= usize::from(room))
        })?;
        Some((rows, unit))
    });
    let Some((rows, unit)) = tried else {
        put(&wrapped(text, area.width, "", style), area, buf);
        return 1;
    };
    let mut y = area.y;
    let last = rows.len() - 1;
    for (at, row) in rows.iter().enumerate() {
        for _ in 0..high {
            if y < area.bottom() {
                pen::text(buf, area.x, y, row, style);
            }
            y += 1;
        }
        if at == last && !unit.is_empty() && y <= area.bottom() {
            let x = area.x + u16::try_from(row.width() + 1).unwrap_or(0);
            pen::text(buf, x, y - 1, unit, style);
        }
    }
    y - area.y
}

/// Zone one in words, where there is no room to draw.
fn bar_words(
    floor: &FloorScreen,
    bound: &[Bound<'_>],
    palette: Palette,
    width: u16,
) -> Vec<Line<'static>> {
    let zone = &floor.bar;
    let mut lines = Vec::new();
    if let Some(rest) = &floor.rest {
        let style = if rest.over { palette.now() } else { palette.strong() };
        let mut parts = vec![vec![Span::styled(format!("{} {}", rest.label, rest.text), style)]];
        let keys = [&rest.shorter, &rest.longer];
        parts.extend(keys.into_iter().map(|key| keys_line::part(bound, key, palette)));
        lines.extend(keys_line::flow(parts, width));
    }
    let plates: Vec<&str> = zone.plates.iter().map(|plate| plate.label.as_str()).collect();
    let said = [zone.total.clone(), zone.line.clone(), plates.join(" · "), zone.counts.clone()];
    let said: Vec<String> = said.into_iter().filter(|part| !part.is_empty()).collect();
    lines.extend(wrapped(&said.join("   "), width, "", palette.strong()));
    lines
}

// Zone two: the call.

fn call_zone(floor: &FloorScreen, ui: &Ui, palette: Palette, area: Rect, buf: &mut Buffer) {
    let area = inside(area);
    let width = area.width;
    let call = &floor.call;
    let mut lines = Vec::new();
    for notice in &floor.notices {
        lines.extend(wrapped(notice, width, &format!("{WARNS} "), palette.warning()));
    }
    lines.extend(ui.notice_lines(palette, width));
    lines.extend(wrapped(&call.exercise, width, "", palette.strong()));
    lines.extend(wrapped(&call.sentence, width, "", palette.strong()));
    for caution in &call.cautions {
        lines.extend(wrapped(caution, width, &format!("{WARNS} "), palette.warning()));
    }
    for texts in [&call.manner, &call.set_up, &call.cues] {
        lines.extend(wrapped(&texts.join(" · "), width, "", palette.plain()));
    }
    lines.extend(wrapped(&call.last, width, "", palette.plain()));
    let room = usize::from(area.height);
    if room == 0 {
        return;
    }
    if lines.len() > room {
        // Nothing is dropped in silence: the key for the whole call says so.
        lines.truncate(room);
        if let Some(last) = lines.last_mut() {
            last.push_span(Span::styled(" …", palette.quiet()));
        }
    } else {
        // The call stands in the middle of its zone.
        let above = (room - lines.len()) / 2;
        lines.splice(0..0, vec![Line::default(); above]);
    }
    put(&lines, area, buf);
}

// Zone three: the thumb.

/// Rows of the thumb zone that are drawn: the prompt, the keys, their halves, and what stands beside.
const fn thumb_rows(size: Size) -> u16 {
    match size {
        Size::Small => 0,
        Size::Usual => 6,
        Size::Tall => 10,
    }
}

/// Columns of the figure, left of the keys.
const fn figure_columns(size: Size) -> u16 {
    match size {
        Size::Small | Size::Usual => 21,
        Size::Tall => 38,
    }
}

/// The keys beside the wide one, or beside those of the effort, as one line; none where they need
/// more.
fn beside(
    thumb: &ThumbZone,
    bound: &[Bound<'_>],
    size: Size,
    palette: Palette,
    width: u16,
) -> Option<Line<'static>> {
    let room = width.saturating_sub(figure_columns(size));
    let mut lines = keys_line::flow(beside_parts(thumb, bound, palette), room);
    (lines.len() <= 1).then(|| lines.pop().unwrap_or_default())
}

fn beside_parts(
    thumb: &ThumbZone,
    bound: &[Bound<'_>],
    palette: Palette,
) -> Vec<Vec<Span<'static>>> {
    // Where the effort keys record, the wide key is one of the others.
    let main = thumb.main.iter().filter(|_| !thumb.effort.is_empty());
    main.chain(&thumb.beside).map(|key| keys_line::part(bound, key, palette)).collect()
}

/// The lines of the thumb zone; what is drawn over its first ones is [`thumb_drawing`]'s.
fn thumb_lines(
    floor: &FloorScreen,
    bound: &[Bound<'_>],
    own: Own,
    size: Size,
    palette: Palette,
    width: u16,
) -> Vec<Line<'static>> {
    let thumb = &floor.thumb;
    let width = width.saturating_sub(2);
    let mut lines = vec![Line::default(); usize::from(thumb_rows(size))];
    let mut small = Vec::new();
    if size == Size::Small {
        lines = thumb_words(thumb, bound, palette, width);
    } else if beside(thumb, bound, size, palette, width).is_none() {
        small.extend(beside_parts(thumb, bound, palette));
    }
    let part = |key: &Key| keys_line::part(bound, key, palette);
    let named = [&thumb.ended, &thumb.undo, &thumb.redo, &thumb.more, &floor.bar.holds];
    small.extend(named.into_iter().flatten().map(part));
    if !floor.beats.is_empty() {
        small.push(keys_line::named("c", own.count_tempo, palette));
    }
    small.push(keys_line::named("w", own.why, palette));
    lines.extend(keys_line::flow(small, width));
    for line in &mut lines {
        line.spans.insert(0, Span::styled(" ", palette.plain()));
    }
    lines
}

/// The thumb zone in words, where there is no room to draw.
fn thumb_words(
    thumb: &ThumbZone,
    bound: &[Bound<'_>],
    palette: Palette,
    width: u16,
) -> Vec<Line<'static>> {
    let mut parts = Vec::new();
    if let Some(figure) = &thumb.figure {
        parts
            .push(vec![Span::styled(format!("{} {}", figure.text, figure.unit), palette.strong())]);
        parts.push(keys_line::step(bound, &figure.down, palette));
        parts.push(keys_line::step(bound, &figure.up, palette));
        parts.push(keys_line::step(bound, &figure.pad, palette));
    }
    let mut lines = keys_line::flow(parts, width);
    lines.extend(wrapped(&thumb.prompt, width, "", palette.strong()));
    let effort = thumb.effort.iter().map(|effort| keys_line::part(bound, &effort.key, palette));
    lines.extend(keys_line::flow(effort.collect(), width));
    let others = thumb.main.iter().chain(&thumb.beside);
    let others = others.map(|key| keys_line::part(bound, key, palette)).collect();
    lines.extend(keys_line::flow(others, width));
    lines
}

fn thumb_drawing(
    thumb: &ThumbZone,
    bound: &[Bound<'_>],
    ui: &Ui,
    size: Size,
    palette: Palette,
    area: Rect,
    buf: &mut Buffer,
) {
    let area = inside(Rect { height: thumb_rows(size).min(area.height), ..area });
    let left = figure_columns(size).min(area.width);
    if let Some(figure) = &thumb.figure {
        // The unit, the steps and the press that types it stand beside the figure.
        let digits = Rect { width: left.saturating_sub(6), ..area };
        big(&figure.text, size, palette.strong(), digits, buf);
        let mut beside = |row: u16, line: Line<'static>| {
            pen::line(buf, digits.right(), area.y + row, &line, 6);
        };
        beside(0, Line::from(keys_line::step(bound, &figure.pad, palette)));
        beside(1, Line::from(keys_line::step(bound, &figure.up, palette)));
        beside(2, Line::styled(figure.unit.clone(), palette.strong()));
        beside(3, Line::from(keys_line::step(bound, &figure.down, palette)));
    }
    let keys = Rect { x: area.x + left, width: area.width - left, ..area };
    // Between the prompt above, and the halves and what stands beside below.
    let buttons = Rect { y: keys.y + 1, height: keys.height.saturating_sub(3), ..keys };
    pen::text(buf, keys.x, keys.y, &thumb.prompt, palette.strong());
    if thumb.effort.is_empty() {
        if let Some(main) = &thumb.main {
            let cap = keys::cap(bound, main);
            button(&main.label, cap.as_deref(), palette, buttons, buf);
        }
    } else {
        let count = u16::try_from(thumb.effort.len()).unwrap_or(u16::MAX).max(1);
        let wide = (keys.width / count).clamp(6, 14);
        for (nth, effort) in (0_u16..).zip(&thumb.effort) {
            let place = Rect { x: keys.x + nth * wide, width: wide - 1, ..buttons };
            if place.right() > area.right() {
                break;
            }
            button(&effort.key.label, None, palette, place, buf);
            let half = effort.half.as_ref();
            if let Some((half, cap)) = half.and_then(|key| Some((key, keys::cap(bound, key)?))) {
                let label = format!("{cap} {}", half.label);
                let label = format!("{label:^wide$}", wide = usize::from(place.width));
                let style = if ui.half { palette.key() } else { palette.quiet() };
                pen::text(buf, place.x, buttons.bottom(), label, style);
            }
        }
    }
    if let Some(line) = beside(thumb, bound, size, palette, area.width) {
        pen::line(buf, keys.x, keys.bottom().saturating_sub(1), &line, keys.width);
    }
}

/// A key to be hit without looking twice.
fn button(label: &str, cap: Option<&str>, palette: Palette, area: Rect, buf: &mut Buffer) {
    buf.set_style(area, palette.key());
    for row in area.rows() {
        pen::text(buf, row.x, row.y, " ".repeat(usize::from(row.width)), palette.key());
    }
    let text = match cap {
        Some(cap) => format!("{label}   [{cap}]"),
        None => label.to_owned(),
    };
    let text = format!("{text:^wide$}", wide = usize::from(area.width));
    let line = Line::styled(text, palette.key());
    pen::line(buf, area.x, area.y + area.height / 2, &line, area.width);
}

// A panel over the call and the thumb.

fn panel_zone(
    panel: &Panel,
    bound: &[Bound<'_>],
    ui: &Ui,
    palette: Palette,
    area: Rect,
    buf: &mut Buffer,
) -> usize {
    let area = inside(area);
    let mut items = panel_items(panel);
    let chosen_from = panel.rows.iter().any(|row| !row.keys.is_empty());
    // With no lines to choose from the keys are the list.
    let list = in_columns(panel, bound, palette, area.width);
    let room = usize::from(area.height).saturating_sub(items.len() + 4);
    let listed = !chosen_from && list.len() <= room && ui.editor.is_none();
    let shown = panel.keys.iter().filter(|_| !listed).chain([&panel.close]);
    let foot = sheet::foot(shown, &items, bound, ui, palette, area.width);
    if listed {
        items.push(Item::Drawing(list));
    }
    let (title, rest) = split(area, 1);
    put(&[Line::styled(panel.title.clone(), palette.strong())], title, buf);
    let high = u16::try_from(foot.len()).unwrap_or(u16::MAX).min(rest.height);
    let items_high = rest.height.saturating_sub(high);
    let (body, foot_area) = split(rest, items_high);
    put(&foot, foot_area, buf);
    sheet::body(&items, ui, palette, body, buf)
}

/// The keys of a panel down two columns, or one where they are few or long.
fn in_columns(
    panel: &Panel,
    bound: &[Bound<'_>],
    palette: Palette,
    width: u16,
) -> Vec<Line<'static>> {
    let parts: Vec<_> =
        panel.keys.iter().map(|key| Line::from(keys_line::part(bound, key, palette))).collect();
    let half = usize::from(width / 2);
    if parts.len() < 10 || parts.iter().any(|part| part.width() + 2 > half) {
        return parts;
    }
    let (left, right) = parts.split_at(parts.len().div_ceil(2));
    left.iter()
        .enumerate()
        .map(|(at, one)| {
            let mut line = one.clone();
            if let Some(other) = right.get(at) {
                let gap = " ".repeat(half - one.width());
                line.push_span(Span::styled(gap, palette.plain()));
                line.extend(other.spans.clone());
            }
            line
        })
        .collect()
}

/// An area with a column free on both sides.
fn inside(area: Rect) -> Rect {
    let margin = u16::from(area.width > 20);
    Rect { x: area.x + margin, width: area.width.saturating_sub(2 * margin), ..area }
}
