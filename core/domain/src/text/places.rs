//! Where a byte of a text stands: line, column, and the fault there.

use std::ops::Range;

use super::fault::{Fault, Problem};

/// The lines of a text, to turn bytes into lines and columns.
pub(super) struct Places {
    text: String,
    /// The byte where each line starts.
    starts: Vec<usize>,
}

impl Places {
    pub(super) fn of(text: &str) -> Self {
        let starts =
            std::iter::once(0).chain(text.match_indices('\n').map(|(at, _)| at + 1)).collect();
        Self { text: text.to_string(), starts }
    }

    /// Line and column of a byte, both from 1.
    pub(super) fn line_column(&self, at: usize) -> (usize, usize) {
        let line = self.starts.partition_point(|start| *start <= at).max(1);
        let start = self.starts.get(line - 1).copied().unwrap_or_default();
        let column = self.text.get(start..at).map_or(0, |before| before.chars().count());
        (line, column + 1)
    }

    /// A fault whose span is cut to its first line and to whole characters.
    pub(super) fn fault(&self, span: Range<usize>, problem: Problem) -> Fault {
        let text = self.text.as_str();
        let mut start = span.start.min(text.len());
        while !text.is_char_boundary(start) {
            start -= 1;
        }
        let mut end = span.end.clamp(start, text.len());
        while !text.is_char_boundary(end) {
            end += 1;
        }
        let line = text.get(start..end).unwrap_or_default();
        if let Some(newline) = line.find('\n') {
            end = start + newline;
        }
        let (line, column) = self.line_column(start);
        Fault { line, column, span: start..end, problem }
    }
}
