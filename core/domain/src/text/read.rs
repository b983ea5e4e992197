//! From text to a tree, within bounds, with every line that is not TOML reported.

use std::ops::Range;

use toml_span::tokens::{Token, Tokenizer};
use toml_span::{ErrorKind, Span};

use super::bounds;
use super::fault::{Fault, Piece, Problem, Syntax};
use super::item::{Faults, Table};
use super::places::Places;
use super::shape::Shape;
use crate::shown::excerpt;

/// Reads a file of bytes; see [`read`].
///
/// # Errors
/// As [`read`], and one fault where the bytes are not UTF-8 text.
pub fn read_bytes<T>(
    bytes: &[u8],
    shape: &'static Shape,
    reader: impl FnOnce(&Table<'_>) -> Option<T>,
) -> Result<T, Vec<Fault>> {
    match std::str::from_utf8(bytes) {
        Ok(text) => read(text, shape, reader),
        Err(error) => {
            let good = bytes.get(..error.valid_up_to()).unwrap_or_default();
            let text = String::from_utf8_lossy(good);
            let end = text.len();
            Err(vec![Places::of(&text).fault(end..end, Problem::NotText)])
        }
    }
}

/// Reads a text: `reader` takes the root table, whose keys `shape` declares, and gives what it
/// made of it.
///
/// A line that is not TOML is reported, set aside, and the rest is read without it; missing keys
/// are then not reported, since they may stand in what was set aside.
///
/// # Errors
/// Every fault, in the order of the file; `Ok` only where there was none.
pub fn read<T>(
    text: &str,
    shape: &'static Shape,
    reader: impl FnOnce(&Table<'_>) -> Option<T>,
) -> Result<T, Vec<Fault>> {
    let places = Places::of(text);
    let nowhere = 0..0;
    if text.len() > bounds::FILE_BYTES {
        let problem = Problem::TooManyBytes { most: bounds::FILE_BYTES };
        return Err(vec![places.fault(nowhere, problem)]);
    }
    let faults = Faults::new(places);
    // Same length as `text`, with the lines set aside turned to spaces: places stay what they are.
    let mut kept = text.to_string();
    let mut made = None;
    for _ in 0..=bounds::SET_ASIDE {
        if let Err((span, problem)) = within_bounds(&kept) {
            faults.add(span, problem);
            break;
        }
        match toml_span::parse(&kept) {
            Ok(root) => {
                if let Some(table) = root.as_table() {
                    let table = Table::new(table, 0..0, text, &faults, shape);
                    made = reader(&table);
                    table.refuse_unknown_keys();
                }
                break;
            }
            Err(error) => {
                let (span, syntax) = syntax(&error, &faults.places);
                faults.add(span.clone(), Problem::Syntax(syntax));
                faults.set_aside();
                match without_line(&kept, span.start) {
                    Some(rest) => kept = rest,
                    None => break,
                }
            }
        }
    }
    let faults = faults.sorted();
    match made {
        Some(made) if faults.is_empty() => Ok(made),
        // A reader that gives nothing has said why; should it not have, the file is still refused.
        None if faults.is_empty() => Err(vec![Places::of(text).fault(0..0, Problem::Empty)]),
        _ => Err(faults),
    }
}

/// A place in a text, cut to its first line and to whole characters.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct At {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// Bytes of the text.
    pub span: Range<usize>,
}

/// Where a span of bytes stands in a text.
pub fn at(text: &str, span: Range<usize>) -> At {
    let Fault { line, column, span, .. } = Places::of(text).fault(span, Problem::Empty);
    At { line, column, span }
}

/// Checks depth and number of items on the tokens, before anything is built of them.
fn within_bounds(text: &str) -> Result<(), (Range<usize>, Problem)> {
    let mut tokens = Tokenizer::new(text);
    let (mut depth, mut dots, mut items) = (0_usize, 0_usize, 0_usize);
    // What can't be cut into tokens is left to the parser, which stops at the same place.
    while let Ok(Some((span, token))) = tokens.step() {
        match token {
            Token::LeftBrace | Token::LeftBracket => depth += 1,
            Token::RightBrace | Token::RightBracket => depth = depth.saturating_sub(1),
            Token::Equals | Token::Comma | Token::Newline => items += 1,
            _ => {}
        }
        match token {
            Token::Period => dots += 1,
            Token::Keylike(_) | Token::String { .. } | Token::Whitespace(_) => {}
            _ => dots = 0,
        }
        if depth + dots > bounds::DEPTH {
            return Err((span.start..span.end, Problem::TooDeep { most: bounds::DEPTH }));
        }
        if items > bounds::ITEMS {
            return Err((span.start..span.end, Problem::TooManyItems { most: bounds::ITEMS }));
        }
    }
    Ok(())
}

/// The text with the line at `at` turned to spaces; `None` where the line is part of something
/// longer, so that what follows would make no sense without it.
fn without_line(text: &str, at: usize) -> Option<String> {
    let before = text.get(..at)?;
    let start = before.rfind('\n').map_or(0, |newline| newline + 1);
    let end = text.get(at..)?.find('\n').map_or(text.len(), |newline| at + newline);
    let line = text.get(start..end)?;
    let count = |c: char| line.chars().filter(|found| *found == c).count();
    let whole = count('[') == count(']')
        && count('{') == count('}')
        && !line.contains("\"\"\"")
        && !line.contains("'''");
    let stands_alone =
        line.trim_start().starts_with(|c: char| c.is_alphanumeric() || c == '_' || c == '"');
    // A table's head is not set aside: its keys would fall to the table before.
    if !whole || !stands_alone || line.trim().is_empty() {
        return None;
    }
    let mut kept = String::with_capacity(text.len());
    kept.push_str(before.get(..start)?);
    kept.extend(std::iter::repeat_n(' ', end - start));
    kept.push_str(text.get(end..)?);
    Some(kept)
}

fn syntax(error: &toml_span::Error, places: &Places) -> (Range<usize>, Syntax) {
    let mut span = error.span.start..error.span.end;
    let first_line = |first: &Span| places.line_column(first.start).0;
    let cut = |name: &str| excerpt(name);
    let syntax = match &error.kind {
        ErrorKind::UnexpectedEof => Syntax::EndsEarly,
        ErrorKind::ExceededDepthLimit => Syntax::TooDeep,
        ErrorKind::InvalidCharInString(c) => Syntax::CharInText(*c),
        ErrorKind::InvalidEscape(_)
        | ErrorKind::InvalidHexEscape(_)
        | ErrorKind::InvalidEscapeValue(_) => Syntax::Escape,
        ErrorKind::Unexpected(c) => Syntax::Unexpected(*c),
        ErrorKind::UnterminatedString => Syntax::OpenText,
        ErrorKind::InvalidNumber | ErrorKind::OutOfRange(_) => Syntax::Number,
        ErrorKind::Wanted { expected, found } => {
            // The parser measures what it found by its description; the place is what counts.
            span.end = span.start + 1;
            match (*expected, *found) {
                (_, "eof") => Syntax::EndsEarly,
                ("a value", _) => Syntax::Wanted(Piece::Value),
                ("a table key", _) => Syntax::Wanted(Piece::Key),
                ("an equals", _) => Syntax::Wanted(Piece::Equals),
                ("newline", _) => Syntax::Wanted(Piece::LineEnd),
                ("a comma" | "a right bracket" | "a right brace", _) => {
                    Syntax::Wanted(Piece::CommaOrBracket)
                }
                _ => Syntax::Wanted(Piece::Other),
            }
        }
        ErrorKind::DuplicateTable { name, first } => {
            Syntax::Twice { name: cut(name), first_line: first_line(first) }
        }
        ErrorKind::DuplicateKey { key, first } => {
            Syntax::Twice { name: cut(key), first_line: first_line(first) }
        }
        ErrorKind::RedefineAsArray => Syntax::TableAndList,
        ErrorKind::DottedKeyInvalidType { .. } => Syntax::NotATable,
        ErrorKind::UnquotedString => Syntax::NoQuotes,
        _ => Syntax::Wanted(Piece::Other),
    };
    (span, syntax)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::{Expected, Found, Holds, Key};

    static ROOT: Shape = Shape {
        name: "root",
        keys: &[
            Key::must("name", Holds::Text(20)),
            Key::may("sets", Holds::Whole(1, 20)),
            Key::may("notes", Holds::List(&Holds::Text(20), 3)),
        ],
    };

    fn faults(text: &str) -> Vec<(usize, usize, String, Problem)> {
        let read = read(text, &ROOT, |root| {
            let name = root.need("name").and_then(|item| Some(item.text(20)?.to_string()));
            root.get("sets").and_then(|item| item.whole(1, 20));
            for note in root.get("notes").and_then(|item| item.list(3)).unwrap_or_default() {
                note.text(20);
            }
            name
        });
        read.err()
            .unwrap_or_default()
            .into_iter()
            .map(|f| (f.line, f.column, text.get(f.span).unwrap().to_string(), f.problem))
            .collect()
    }

    #[test]
    fn all_faults_come_at_once_in_order() {
        let found = faults("nme = \"a\"\nsets = 50\nnotes = [\"a\", 2]\n");
        let places: Vec<_> = found.iter().map(|(l, c, text, _)| (*l, *c, text.as_str())).collect();
        assert_eq!(places, [(1, 1, "nme"), (2, 8, "50"), (3, 15, "2")]);
        assert!(matches!(&found[0].3, Problem::UnknownKey { nearest: Some("name"), .. }));
        assert_eq!(found[1].3, Problem::OutOfRange { least: 1, greatest: 20 });
        let text = Problem::WrongType { expected: Expected::Text, found: Found::Whole };
        assert_eq!(found[2].3, text);
        let missing = faults("sets = 5").into_iter().map(|(.., problem)| problem);
        assert_eq!(missing.collect::<Vec<_>>(), [Problem::MissingKey { key: "name" }]);
    }

    #[test]
    fn a_line_that_is_not_toml_hides_no_other_fault() {
        let found = faults("name = back squat\nsets = 4 sets\nnotes = [1]\n");
        let lines: Vec<_> = found.iter().map(|(line, ..)| *line).collect();
        assert_eq!(lines, [1, 2, 3], "{found:?}");
        assert_eq!(found[0].3, Problem::Syntax(Syntax::NoQuotes));
        assert_eq!(found[1].3, Problem::Syntax(Syntax::Wanted(Piece::LineEnd)));
    }

    #[test]
    fn what_is_too_large_is_refused_before_it_is_built() {
        let only = |text: &str| match faults(text).as_slice() {
            [one] => one.3.clone(),
            other => panic!("{other:?}"),
        };
        let big = "#".repeat(bounds::FILE_BYTES + 1);
        assert_eq!(only(&big), Problem::TooManyBytes { most: bounds::FILE_BYTES });
        let deep = Problem::TooDeep { most: bounds::DEPTH };
        assert_eq!(only(&format!("a = {}", "[".repeat(100_000))), deep);
        assert_eq!(only(&format!("a = {}", "{a=".repeat(40_000))), deep);
        assert_eq!(only(&format!("{}a = 1", "a.".repeat(60_000))), deep);
        assert_eq!(only(&format!("[{}a]", "a.".repeat(60_000))), deep);
        let many = Problem::TooManyItems { most: bounds::ITEMS };
        assert_eq!(only(&format!("a = [{}]", "1,".repeat(60_000))), many);
        assert_eq!(only(&"a.b = 1\n".repeat(15_000)), many);
    }

    #[test]
    fn bytes_that_are_no_text_say_where() {
        let fault = read_bytes(b"name = \"a\"\nb\xff", &ROOT, |_| Some(())).unwrap_err();
        assert_eq!((fault[0].line, fault[0].column), (2, 2));
        assert_eq!(fault[0].problem, Problem::NotText);
    }
}
