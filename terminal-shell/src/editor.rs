//! One line that is being written.

use ratatui::text::{Line, Span};
use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

use crate::palette::Palette;
use crate::words::Own;

/// The longest line that is taken.
const LONGEST: usize = 4_000;

/// A line that is being written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Editor {
    label: String,
    hint: String,
    text: Vec<char>,
    /// The characters before the cursor.
    at: usize,
}

impl Editor {
    /// An editor that starts from a value.
    pub(crate) fn new(label: &str, hint: &str, value: &str) -> Self {
        let text: Vec<char> = value.chars().take(LONGEST).collect();
        Self { label: label.to_owned(), hint: hint.to_owned(), at: text.len(), text }
    }

    /// What is written.
    pub(crate) fn text(&self) -> String {
        self.text.iter().collect()
    }

    /// Writes a character.
    pub(crate) fn insert(&mut self, one: char) {
        if !one.is_control() && self.text.len() < LONGEST {
            self.text.insert(self.at, one);
            self.at += 1;
        }
    }

    /// Takes the character before the cursor out.
    pub(crate) fn backspace(&mut self) {
        if self.at > 0 {
            self.at -= 1;
            self.text.remove(self.at);
        }
    }

    /// Takes the character under the cursor out.
    pub(crate) fn delete(&mut self) {
        if self.at < self.text.len() {
            self.text.remove(self.at);
        }
    }

    /// Takes everything before the cursor out.
    pub(crate) fn clear(&mut self) {
        self.text.drain(..self.at);
        self.at = 0;
    }

    /// Moves the cursor by so many characters.
    pub(crate) fn step(&mut self, by: isize) {
        self.at = self.at.saturating_add_signed(by).min(self.text.len());
    }

    /// As it is shown: the label, the line with its cursor, and what would do.
    pub(crate) fn lines(&self, own: Own, palette: Palette, width: u16) -> Vec<Line<'static>> {
        let label = format!("{}: ", self.label);
        let room = usize::from(width).saturating_sub(label.width() + 1).max(8);
        // From the left, so that the cursor is always seen.
        let mut from = 0;
        let wide = |part: &[char]| part.iter().map(|one| one.width().unwrap_or(0)).sum::<usize>();
        while wide(&self.text[from..self.at]) >= room {
            from += 1;
        }
        let before: String = self.text[from..self.at].iter().collect();
        let mut left = room - before.width();
        let after: String = self
            .text
            .iter()
            .skip(self.at + 1)
            .take_while(|one| {
                let wide = one.width().unwrap_or(0);
                let fits = wide < left;
                left = left.saturating_sub(wide);
                fits
            })
            .collect();
        let under = self.text.get(self.at).copied().unwrap_or(' ');
        let hint = match self.hint.as_str() {
            "" => String::new(),
            hint => format!("{}   ", (own.such_as)(hint)),
        };
        vec![
            Line::from(vec![
                Span::styled(label, palette.strong()),
                Span::styled(before, palette.plain()),
                Span::styled(under.to_string(), palette.cap()),
                Span::styled(after, palette.plain()),
            ]),
            Line::styled(format!("{hint}{}", own.taken_or_left), palette.quiet()),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::palette::Colours;

    #[test]
    fn writes_corrects_and_moves() {
        let mut editor = Editor::new("Body mass", "82.5 kg", "8é");
        editor.insert('2');
        editor.step(-1);
        editor.backspace();
        editor.step(5);
        editor.insert('\n');
        editor.insert('k');
        assert_eq!(editor.text(), "82k");
        editor.step(-99);
        editor.delete();
        editor.delete();
        editor.step(1);
        editor.clear();
        editor.delete();
        editor.backspace();
        assert_eq!(editor.text(), "");
    }

    #[test]
    fn a_long_line_keeps_its_cursor_in_sight() {
        let palette = Palette::new(Colours::None, false);
        let mut editor = Editor::new("Note", "", &"abcdefghij".repeat(20));
        let shown = |editor: &Editor| editor.lines(Own::default(), palette, 40)[0].to_string();
        assert!(shown(&editor).ends_with("hij "));
        assert!(shown(&editor).width() <= 40);
        editor.step(-200);
        assert!(shown(&editor).starts_with("Note: abcdefgh"));
        assert!(shown(&editor).width() <= 40);
    }
}
