//! A sheet: one column of lines that scrolls, with its keys below.

use barwright_app::contract::{Field, FileFault, FormRow, Key, Row};
use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use ratatui::style::Style;
use ratatui::text::{Line, Span};
use unicode_width::UnicodeWidthStr;

use super::{Ui, keys_line, pen};
use crate::keys::Bound;
use crate::palette::{Palette, WARNS};
use crate::words::Own;

/// The widest a column of text gets: longer lines are hard to follow.
const WIDEST: u16 = 100;

/// How a plain line reads.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Tone {
    Plain,
    Quiet,
    Heading,
    /// A heading, where we are.
    Here,
    Warning,
}

/// Something on a sheet.
pub(super) enum Item<'a> {
    /// A line of text.
    Text(&'a str, Tone),
    /// A row of the contract.
    Row(&'a Row),
    /// A line of a form.
    FormRow(&'a FormRow),
    /// Something to write.
    Field(&'a Field),
    /// A key in a list of many.
    Key(&'a Key),
    /// Something wrong with a file.
    Fault(&'a FileFault),
    /// A drawing, already made.
    Drawing(Vec<Line<'static>>),
    /// Space.
    Gap,
}

/// What can be selected on a sheet.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Selectable<'a> {
    /// A row that can do something or say why.
    Row(&'a Row),
    /// A line of a form that can be stepped, written or opened.
    Form(&'a FormRow),
    /// Something to write.
    Field(&'a Field),
    /// A key in a list of many.
    Key(&'a Key),
}

/// A sheet.
pub(super) struct Sheet<'a> {
    pub(super) title: &'a str,
    pub(super) subtitle: &'a str,
    pub(super) items: Vec<Item<'a>>,
    pub(super) keys: Vec<&'a Key>,
    /// What `o` opens here; none where it opens nothing.
    pub(super) opens: Option<&'static str>,
}

impl<'a> Sheet<'a> {
    pub(super) fn new(title: &'a str, subtitle: &'a str) -> Self {
        Self { title, subtitle, items: Vec::new(), keys: Vec::new(), opens: None }
    }

    /// With keys below.
    pub(super) fn keys(mut self, keys: impl IntoIterator<Item = &'a Key>) -> Self {
        self.keys.extend(keys);
        self
    }

    /// With a file to open.
    pub(super) fn opens(mut self, what: &'static str) -> Self {
        self.opens = Some(what);
        self
    }

    /// With lines under a heading; nothing where there are none.
    pub(super) fn texts(&mut self, heading: &'a str, texts: &'a [String], tone: Tone) {
        if !texts.is_empty() {
            self.heading(heading);
            self.items.extend(texts.iter().map(|text| Item::Text(text, tone)));
        }
    }

    /// With rows, under a heading where there is one; nothing where there are none.
    pub(super) fn rows(&mut self, heading: &'a str, rows: &'a [Row]) {
        if !rows.is_empty() {
            self.heading(heading);
            self.items.extend(rows.iter().map(Item::Row));
        }
    }

    /// With fields, under a heading.
    pub(super) fn fields(&mut self, heading: &'a str, fields: &'a [Field]) {
        if !fields.is_empty() {
            self.heading(heading);
            self.items.extend(fields.iter().map(Item::Field));
        }
    }

    /// With keys to choose from, under a heading.
    pub(super) fn list(&mut self, heading: &'a str, keys: impl Iterator<Item = &'a Key>) {
        let before = self.items.len();
        self.items.extend(keys.map(Item::Key));
        if self.items.len() > before {
            let listed = self.items.split_off(before);
            self.heading(heading);
            self.items.extend(listed);
        }
    }

    fn heading(&mut self, heading: &'a str) {
        if !self.items.is_empty() {
            self.items.push(Item::Gap);
        }
        if !heading.is_empty() {
            self.items.push(Item::Text(heading, Tone::Heading));
        }
    }
}

/// What can be selected, in order.
pub(super) fn selectable<'a>(items: &[Item<'a>]) -> Vec<Selectable<'a>> {
    items.iter().filter_map(select).collect()
}

fn select<'a>(item: &Item<'a>) -> Option<Selectable<'a>> {
    match item {
        Item::Row(row) if !row.keys.is_empty() || !row.why.is_empty() => Some(Selectable::Row(row)),
        Item::FormRow(row)
            if row.field.is_some()
                || row.up.is_some()
                || row.down.is_some()
                || !row.keys.is_empty() =>
        {
            Some(Selectable::Form(row))
        }
        Item::Field(field) => Some(Selectable::Field(field)),
        Item::Key(key) => Some(Selectable::Key(key)),
        _ => None,
    }
}

/// A whole sheet. Answers the line that stands at the top, for the next time.
pub(super) fn draw(
    sheet: &Sheet<'_>,
    bound: &[Bound<'_>],
    ui: &Ui,
    palette: Palette,
    area: Rect,
    buf: &mut Buffer,
) -> usize {
    let area = column(area);
    let mut head = vec![Line::styled(sheet.title.to_owned(), palette.strong())];
    head.extend(wrapped(sheet.subtitle, area.width, "", palette.quiet()));
    let mut foot = foot(sheet.keys.iter().copied(), &sheet.items, bound, ui, palette, area.width);
    if let Some(what) = sheet.opens.filter(|_| ui.editor.is_none()) {
        foot.push(Line::from(keys_line::named("o", what, palette)));
    }
    let (top, rest) = split(area, u16::try_from(head.len()).unwrap_or(u16::MAX).saturating_add(1));
    put(&head, top, buf);
    let foot_height = u16::try_from(foot.len()).unwrap_or(u16::MAX).min(rest.height / 2);
    let (body_area, foot_area) = split(rest, rest.height.saturating_sub(foot_height));
    put(&foot, foot_area, buf);
    body(&sheet.items, ui, palette, body_area, buf)
}

/// What stands below a sheet: the notice, then the keys; or what is being written.
pub(super) fn foot<'a>(
    keys: impl IntoIterator<Item = &'a Key>,
    items: &[Item<'_>],
    bound: &[Bound<'_>],
    ui: &Ui,
    palette: Palette,
    width: u16,
) -> Vec<Line<'static>> {
    let mut lines = vec![Line::default()];
    lines.extend(ui.notice_lines(palette, width));
    if let Some(editor) = &ui.editor {
        lines.extend(editor.lines(ui.own, palette, width));
        return lines;
    }
    let selected = ui.selected.and_then(|at| selectable(items).get(at).copied());
    let mut of_row: Vec<Vec<Span<'static>>> = Vec::new();
    match selected {
        Some(Selectable::Row(row)) => {
            of_row.extend(row.keys.iter().map(|key| keys_line::part(bound, key, palette)));
            if !row.why.is_empty() {
                of_row.push(keys_line::named("w", ui.own.why, palette));
            }
        }
        Some(Selectable::Form(row)) => {
            let steps = row.down.iter().chain(&row.up).filter(|key| key.enabled);
            of_row.extend(steps.map(|key| keys_line::step(bound, key, palette)));
            if row.field.is_some() {
                of_row.push(keys_line::named("enter", ui.own.write, palette));
            }
            of_row.extend(row.keys.iter().map(|key| keys_line::part(bound, key, palette)));
        }
        Some(Selectable::Key(key)) => of_row.push(keys_line::part(bound, key, palette)),
        Some(Selectable::Field(_)) => of_row.push(keys_line::named("enter", ui.own.write, palette)),
        None => {}
    }
    lines.extend(keys_line::flow(of_row, width));
    let parts = keys.into_iter().map(|key| keys_line::part(bound, key, palette)).collect();
    lines.extend(keys_line::flow(parts, width));
    lines
}

/// The lines of a sheet from where it is scrolled to. Answers the line at the top.
pub(super) fn body(
    items: &[Item<'_>],
    ui: &Ui,
    palette: Palette,
    area: Rect,
    buf: &mut Buffer,
) -> usize {
    let mut lines = Vec::new();
    let mut chosen = 0..0;
    let mut nth = 0;
    for item in items {
        let selected = select(item).is_some_and(|_| {
            nth += 1;
            ui.selected == Some(nth - 1)
        });
        let from = lines.len();
        lines.extend(item_lines(item, selected, ui, palette, area.width));
        if selected {
            chosen = from..lines.len();
        }
    }
    let height = usize::from(area.height);
    let last = lines.len().saturating_sub(height);
    let mut top = ui.top.min(last);
    if !chosen.is_empty() {
        // One line of what comes before stays in sight; the selected row is seen from its start.
        top = top.max(chosen.end.saturating_sub(height)).min(chosen.start.saturating_sub(1));
    }
    let seen: Vec<Line<'static>> = lines.iter().skip(top).take(height).cloned().collect();
    put(&seen, area, buf);
    let right = area.right().saturating_sub(1);
    let mut mark = |row: u16, mark: &str| {
        if area.height > 1 {
            pen::text(buf, right, row, mark, palette.quiet());
        }
    };
    if top > 0 {
        mark(area.y, "↑");
    }
    if top < last {
        mark(area.bottom().saturating_sub(1), "↓");
    }
    top
}

fn item_lines(
    item: &Item<'_>,
    selected: bool,
    ui: &Ui,
    palette: Palette,
    width: u16,
) -> Vec<Line<'static>> {
    match item {
        Item::Gap => vec![Line::default()],
        Item::Drawing(lines) => lines.clone(),
        Item::Text(text, tone) => match tone {
            Tone::Plain => wrapped(text, width, "  ", palette.plain()),
            Tone::Quiet => wrapped(text, width, "  ", palette.quiet()),
            Tone::Heading => wrapped(text, width, "", palette.strong()),
            Tone::Here => wrapped(text, width, "▸ ", palette.now()),
            Tone::Warning => wrapped(text, width, &format!("{WARNS} "), palette.warning()),
        },
        Item::Row(row) => row_lines(row, selected, ui, palette, width),
        Item::FormRow(row) => form_lines(row, selected, palette, width),
        Item::Field(field) => field_lines(field, selected, ui.own, palette, width),
        Item::Key(key) => key_lines(key, selected, palette, width),
        Item::Fault(fault) => fault_lines(fault, ui.own, palette, width),
    }
}

/// A line of a form: what it is, what it says between its steps, what follows, and what is wrong.
fn form_lines(row: &FormRow, selected: bool, palette: Palette, width: u16) -> Vec<Line<'static>> {
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

fn row_lines(
    row: &Row,
    selected: bool,
    ui: &Ui,
    palette: Palette,
    width: u16,
) -> Vec<Line<'static>> {
    let mark = match (selected, row.warns, row.done) {
        (true, ..) => "▸",
        (false, true, _) => WARNS,
        (false, false, true) => "✓",
        (false, false, false) => " ",
    };
    let style = match (selected, row.warns, row.depth) {
        (true, ..) => palette.cap(),
        (false, true, _) => palette.warning(),
        (false, false, 0 | 1) => palette.strong(),
        (false, false, _) => palette.plain(),
    };
    let indent = " ".repeat(usize::from(row.depth).saturating_mul(2).min(8));
    let mut lines = wrapped(&row.text, width, &format!("{mark} {indent}"), style);
    let quiet = format!("  {indent}");
    lines.extend(wrapped(&row.detail, width, &quiet, palette.quiet()));
    if ui.open.contains(&row.id) {
        for step in &row.why {
            lines.extend(wrapped(step, width, &format!("{quiet}· "), palette.quiet()));
        }
    }
    lines
}

fn field_lines(
    field: &Field,
    selected: bool,
    own: Own,
    palette: Palette,
    width: u16,
) -> Vec<Line<'static>> {
    let value = if field.value.is_empty() {
        format!("…  ({})", (own.such_as)(&field.hint))
    } else {
        field.value.clone()
    };
    let style = if selected { palette.cap() } else { palette.plain() };
    let lead = if selected { "▸ " } else { "  " };
    wrapped(&format!("{}: {value}", field.label), width, lead, style)
}

fn key_lines(key: &Key, selected: bool, palette: Palette, width: u16) -> Vec<Line<'static>> {
    let lead = match (selected, key.chosen) {
        (true, _) => "▸ ",
        (false, true) => "● ",
        (false, false) => "  ",
    };
    let style = if selected { palette.cap() } else { palette.plain() };
    wrapped(&key.label, width, lead, style)
}

fn fault_lines(fault: &FileFault, own: Own, palette: Palette, width: u16) -> Vec<Line<'static>> {
    let said = (own.fault)(fault.line, fault.column, &fault.label, &fault.problem);
    let (mark, style) =
        if fault.advises { (" ", palette.strong()) } else { (WARNS, palette.warning()) };
    let mut lines = wrapped(&said, width, &format!("{mark} "), style);
    // The underline stands under its text only where neither is broken into lines.
    let room = usize::from(width.saturating_sub(4));
    for line in [&fault.text, &fault.underline] {
        let cut: String = line.chars().take(room).collect();
        lines.push(Line::styled(format!("    {cut}"), palette.plain()));
    }
    lines.extend(wrapped(&fault.advice, width, "  ", palette.quiet()));
    lines.push(Line::default());
    lines
}

/// A text in lines no wider than the column, behind `lead`, which later lines leave free. Nothing
/// for an empty text.
pub(super) fn wrapped(text: &str, width: u16, lead: &str, style: Style) -> Vec<Line<'static>> {
    if text.is_empty() {
        return Vec::new();
    }
    let under = " ".repeat(lead.width());
    let options = textwrap::Options::new(usize::from(width.max(8)))
        .initial_indent(lead)
        .subsequent_indent(&under);
    textwrap::wrap(text, options)
        .into_iter()
        .map(|line| Line::styled(line.into_owned(), style))
        .collect()
}

/// Lines from the top of an area down.
pub(super) fn put(lines: &[Line<'static>], area: Rect, buf: &mut Buffer) {
    for (row, line) in area.rows().zip(lines) {
        pen::line(buf, row.x, row.y, line, row.width);
    }
}

/// The first rows of an area, and the others.
pub(super) fn split(area: Rect, rows: u16) -> (Rect, Rect) {
    let rows = rows.min(area.height);
    let first = Rect { height: rows, ..area };
    (first, Rect { y: area.y + rows, height: area.height - rows, ..area })
}

/// An area no wider than a column of text, with a margin.
fn column(area: Rect) -> Rect {
    let margin = u16::from(area.width > 60);
    Rect { x: area.x + margin, width: area.width.saturating_sub(2 * margin).min(WIDEST), ..area }
}
