//! Names made into slugs.

/// Small letters and digits of a name in any script, everything between them one hyphen: `Leg press
/// 45°` is `leg-press-45`, `Жим лёжа` is `жим-лёжа`. Marks that a script writes above, below or after
/// its letters stay: two names that differ in no more than one are two slugs.
pub(crate) fn slug(name: &str) -> String {
    let mut slug = String::new();
    for c in name.chars().flat_map(char::to_lowercase) {
        if c.is_alphanumeric() || is_of_a_script(c) {
            slug.push(c);
        } else if !slug.is_empty() && !slug.ends_with('-') {
            slug.push('-');
        }
    }
    slug.trim_end_matches('-').to_string()
}

/// Past the Latin letters whatever is no space, no control and no mark between words: vowel signs,
/// tone marks, joiners, what joins letters of a script.
fn is_of_a_script(c: char) -> bool {
    // General punctuation; marks of Chinese, Japanese and Korean writing; forms that are as wide.
    let between = ['\u{2000}'..='\u{206F}', '\u{3000}'..='\u{303F}', '\u{FF00}'..='\u{FF0F}'];
    let joins = ['\u{200C}', '\u{200D}'];
    c >= '\u{0300}'
        && !c.is_whitespace()
        && !c.is_control()
        && (joins.contains(&c) || between.iter().all(|marks| !marks.contains(&c)))
}

#[cfg(test)]
mod tests {
    use super::slug;

    #[test]
    fn names_of_any_script_have_slugs_of_their_own() {
        for (name, expected) in [
            ("Leg press 45°", "leg-press-45"),
            ("  Leg -- press  ", "leg-press"),
            ("Sissy squat – heels up", "sissy-squat-heels-up"),
            ("Жим лёжа", "жим-лёжа"),
            ("ЖИМ ЛЁЖА", "жим-лёжа"),
            ("Kniebeuge für Anfänger", "kniebeuge-für-anfänger"),
            ("深蹲（前）", "深蹲-前"),
            ("スクワット・前", "スクワット・前"),
            ("", ""),
            (" – ", ""),
        ] {
            assert_eq!(slug(name), expected, "{name}");
        }
        // What differs in a vowel sign, a tone mark or a letter is two.
        let apart = ["की", "का", "क", "ยืน", "ยื่น", "Тяга 2", "Жим 2", "Zug ä", "Zug ö", "💪", "🏋"];
        for (at, one) in apart.iter().enumerate() {
            assert!(!slug(one).is_empty(), "{one}");
            assert!(apart[..at].iter().all(|other| slug(other) != slug(one)), "{one}");
        }
    }
}
