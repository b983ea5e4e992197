//! A text as TOML writes it.

/// The text in quotes: what ends them, and what is not seen, is written by its number.
pub(crate) fn quoted(text: impl AsRef<str>) -> String {
    let mut out = String::from("\"");
    for c in text.as_ref().chars() {
        match c {
            '"' | '\\' => out.extend(['\\', c]),
            c if c.is_control() => out.push_str(&format!("\\u{:04X}", u32::from(c))),
            c => out.push(c),
        }
    }
    out.push('"');
    out
}
