//! A language of nobody's, made from English by rule: letters from right to left, longer words, and
//! four forms of what is counted. What still reads as English on a screen was not said by a phrase.

use crate::contract::{EngineError, FileFault};

/// A phrase as this language says it.
pub(super) fn said<T: Speak>(english: T) -> T {
    english.speak()
}

/// What a phrase comes out as.
pub(super) trait Speak {
    fn speak(self) -> Self;
}

impl Speak for String {
    fn speak(self) -> Self {
        translated(&self)
    }
}

impl Speak for &'static str {
    fn speak(self) -> Self {
        // Some hundred short texts in one test.
        Box::leak(translated(self).into_boxed_str())
    }
}

impl Speak for &'static [&'static str] {
    fn speak(self) -> Self {
        Box::leak(self.iter().map(|text| text.speak()).collect())
    }
}

impl<T: Speak> Speak for Option<T> {
    fn speak(self) -> Self {
        self.map(Speak::speak)
    }
}

impl<T: Speak> Speak for Vec<T> {
    fn speak(self) -> Self {
        self.into_iter().map(Speak::speak).collect()
    }
}

impl<A: Speak, B: Speak> Speak for (A, B) {
    fn speak(self) -> Self {
        (self.0.speak(), self.1.speak())
    }
}

impl Speak for u32 {
    fn speak(self) -> Self {
        self
    }
}

impl Speak for FileFault {
    fn speak(self) -> Self {
        let Self { problem, advice, label, .. } = &self;
        let (problem, advice, label) = (translated(problem), translated(advice), translated(label));
        Self { problem, advice, label, ..self }
    }
}

impl Speak for EngineError {
    fn speak(mut self) -> Self {
        match &mut self {
            Self::Refused { reason, .. }
            | Self::Storage { reason, .. }
            | Self::NewerFile { reason }
            | Self::Closed { reason }
            | Self::Broken { reason, .. } => *reason = translated(reason),
        }
        self
    }
}

/// Word by word; what is no Latin word stays: figures, marks, and what was translated before.
fn translated(english: &str) -> String {
    let mut out = String::new();
    let mut counted: Option<u64> = None;
    let mut word = String::new();
    for one in english.chars().chain(['\0']) {
        if one.is_ascii_alphabetic() {
            word.push(one);
            continue;
        }
        if !word.is_empty() {
            out.extend(word.drain(..).map(letter));
            out.push_str(ending(counted.take()));
        }
        match one.to_digit(10) {
            Some(digit) => {
                let so_far = counted.unwrap_or(0);
                counted = Some(so_far.wrapping_mul(10).wrapping_add(digit.into()));
            }
            None if one != ' ' => counted = None,
            None => {}
        }
        if one != '\0' {
            out.push(one);
        }
    }
    out
}

/// A letter that runs from right to left.
fn letter(latin: char) -> char {
    let nth = u32::from(latin.to_ascii_lowercase()) - u32::from('a');
    // 22 letters and five that end words: U+05D0 to U+05EA.
    char::from_u32(0x05D0 + nth).unwrap_or(latin)
}

/// The ending of a word after a number: one, two, a few, many; and of any other.
fn ending(counted: Option<u64>) -> &'static str {
    match counted {
        None => "\u{05E9}\u{05E9}",
        Some(1) => "\u{05D0}\u{05D0}",
        Some(2) => "\u{05D1}\u{05D1}",
        Some(3..=10) => "\u{05D2}\u{05D2}\u{05D2}",
        Some(_) => "\u{05D3}\u{05D3}\u{05D3}\u{05D3}",
    }
}

mod tests {
    use super::*;

    #[test]
    fn it_has_other_letters_longer_words_and_four_forms() {
        let english = "1 set, 2 set, 5 set, 30 set";
        let made = translated(english);
        assert!(!made.chars().any(|one| one.is_ascii_alphabetic()), "{made}");
        assert!(made.chars().count() > english.chars().count());
        let mut forms: Vec<&str> =
            made.split(", ").filter_map(|part| part.split(' ').next_back()).collect();
        forms.sort_unstable();
        forms.dedup();
        assert_eq!(forms.len(), 4);
        // What was said once is not said again.
        assert_eq!(translated(&made), made);
    }
}
