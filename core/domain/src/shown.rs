//! Text as it may be shown: what comes from outside can hold characters that are not seen and change
//! what others look like, or what a terminal does.

/// Characters of an excerpt.
const EXCERPT: usize = 80;

/// Whether a character is not seen itself: a control, a line separator, or a mark that turns the
/// direction of what follows (Unicode Standard Annex 9, 2.1 to 2.4: embeddings, overrides, isolates
/// and marks). Letters of any script, joiners among them, are none.
#[must_use]
pub fn is_hidden(c: char) -> bool {
    c.is_control()
        || matches!(
            c,
            '\u{061C}'
                | '\u{200E}'
                | '\u{200F}'
                | '\u{2028}'..='\u{202E}'
                | '\u{2066}'..='\u{2069}'
                | '\u{FEFF}'
        )
}

/// A text with a space for each character that is hidden.
#[must_use]
pub fn plain(text: &str) -> String {
    text.chars().map(|c| if is_hidden(c) { ' ' } else { c }).collect()
}

/// The beginning of a text, to be quoted in an error.
pub(crate) fn excerpt(text: &str) -> String {
    plain(&text.chars().take(EXCERPT).collect::<String>())
}
