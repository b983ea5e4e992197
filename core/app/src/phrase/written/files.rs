//! A place in a file, and the carets under it.

use std::ops::Range;

use barwright_domain::shown::is_hidden;

use crate::contract::FileFault;

/// The most characters of a line that are shown around a fault.
pub const WINDOW: usize = 76;

/// What is said of a place of a file's text, its line and column both from 1: the problem with it, and
/// what to write instead.
pub fn in_place(
    (line, column): (usize, usize),
    span: Range<usize>,
    text: &str,
    (problem, advice): (String, String),
    label: &str,
) -> FileFault {
    let (shown, underline) = underlined(column, span, text);
    FileFault {
        line: u32::try_from(line).unwrap_or(u32::MAX),
        column: u32::try_from(column).unwrap_or(u32::MAX),
        text: shown,
        underline,
        problem,
        advice,
        advises: false,
        label: label.to_owned(),
        check: String::new(),
    }
}

/// The lines of a fault as a command prints them; `name` is the file's.
pub fn lines(fault: &FileFault, name: &str) -> String {
    let FileFault { line, column, text, underline, problem, advice, .. } = fault;
    let margin = line.to_string();
    let blank = " ".repeat(margin.len());
    let what = if fault.advises { format!("{}: ", fault.label) } else { String::new() };
    let mut shown = format!("{name}:{line}:{column}: {what}{problem}\n");
    if !text.is_empty() {
        shown.push_str(&format!("{blank} |\n{margin} | {text}\n{blank} | {underline}\n"));
    }
    if !advice.is_empty() {
        shown.push_str(&format!("{blank} = {advice}\n"));
    }
    shown
}

/// The line of a place and the carets under it, cut to a window around it.
fn underlined(column: usize, span: Range<usize>, text: &str) -> (String, String) {
    let at = span.start.min(text.len());
    let start =
        text.get(..at).and_then(|before| before.rfind('\n')).map_or(0, |newline| newline + 1);
    let line = text.get(start..).and_then(|rest| rest.lines().next()).unwrap_or_default();
    let before = column.saturating_sub(1);
    let length = text.get(span).map_or(1, |part| part.chars().count().max(1));
    let skip = if before > WINDOW / 2 { before - WINDOW / 4 } else { 0 };
    // A tab or a control character would move the carets away from their place.
    let plain = |c: char| if is_hidden(c) { ' ' } else { c };
    let shown: String = line.chars().skip(skip).take(WINDOW).map(plain).collect();
    let shown = shown.trim_end().to_owned();
    let carets = length.min(WINDOW.saturating_sub(before - skip).max(1));
    (shown, format!("{}{}", " ".repeat(before - skip), "^".repeat(carets)))
}
