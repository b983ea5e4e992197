//! How numbers and masses are written for this lifter.

use barwright_domain::quantity::{Mass, MassUnit, Numerals, Unreadable};

use crate::phrase::{Language, Words};

/// What a locale says of numbers and masses.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Locale {
    /// The language that is spoken.
    pub language: Language,
    /// Decimal point or comma.
    pub numerals: Numerals,
    /// The unit of body mass, and of loads where no gym says another.
    pub unit: MassUnit,
}

/// Languages that write a decimal comma, unless the region says otherwise.
const COMMA: &[&str] = &[
    "af", "az", "be", "bg", "bs", "ca", "cs", "da", "de", "el", "es", "et", "eu", "fi", "fr", "gl",
    "hr", "hu", "hy", "id", "is", "it", "ka", "kk", "ky", "lt", "lv", "mk", "nb", "nl", "nn", "no",
    "pl", "pt", "ro", "ru", "sk", "sl", "sq", "sr", "sv", "tr", "uk", "uz", "vi",
];
/// Regions that write a point though their language writes a comma elsewhere.
const POINT_REGIONS: &[&str] = &["CH", "LI", "MX", "GT", "HN", "NI", "SV", "DO", "PA", "PE", "US"];
/// Regions that weigh in pounds.
const POUNDS: &[&str] = &["US", "LR", "MM"];

impl Locale {
    /// Its words.
    pub const fn words(&self) -> Words {
        Words::new(self.language, self.numerals)
    }

    /// A mass that a person typed, and the unit it is in: without one, that which is shown.
    ///
    /// # Errors
    /// [`Unreadable`], with what was read instead.
    pub(crate) fn typed_mass(
        &self,
        text: &str,
        unit: MassUnit,
    ) -> Result<(Mass, MassUnit), Unreadable> {
        let text = text.trim();
        let bare = !text.is_empty() && !text.chars().any(char::is_alphabetic);
        if bare {
            Mass::read_as_written(&format!("{text} {}", unit.symbol()), self.numerals)
        } else {
            Mass::read_as_written(text, self.numerals)
        }
    }

    /// Reads a tag such as `en-GB`, `de_DE.UTF-8` or `fr`. Every text gives a locale: what is not
    /// known writes a point and weighs in kilograms.
    pub fn read(tag: &str) -> Self {
        let mut parts = tag.split(['.', '@']).next().unwrap_or_default().split(['-', '_']);
        let language = parts.next().unwrap_or_default().to_ascii_lowercase();
        let region =
            parts.find(|part| part.len() == 2).map(str::to_ascii_uppercase).unwrap_or_default();
        let comma = COMMA.contains(&language.as_str()) && !POINT_REGIONS.contains(&region.as_str());
        Self {
            // Whoever speaks one that is not here is spoken to in English.
            language: Language::of(&language),
            numerals: if comma { Numerals::Comma } else { Numerals::Point },
            unit: if POUNDS.contains(&region.as_str()) {
                MassUnit::Pound
            } else {
                MassUnit::Kilogram
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[cfg(feature = "german")]
    #[test]
    fn german_is_spoken_where_it_is_the_language() {
        for tag in ["de", "de-DE", "de_AT.UTF-8", "de_CH", "DE-li"] {
            assert_eq!(Locale::read(tag).language, Language::German, "{tag}");
        }
        for tag in ["", "en-DE", "dsb", "nds-DE", "fr-CH", "C"] {
            assert_eq!(Locale::read(tag).language, Language::English, "{tag}");
        }
    }

    #[test]
    fn reads_tags_of_every_system() {
        let read = |tag| {
            let Locale { numerals, unit, .. } = Locale::read(tag);
            (numerals, unit)
        };
        assert_eq!(read("en-US"), (Numerals::Point, MassUnit::Pound));
        assert_eq!(read("en_GB.UTF-8"), (Numerals::Point, MassUnit::Kilogram));
        assert_eq!(read("de-DE"), (Numerals::Comma, MassUnit::Kilogram));
        assert_eq!(read("de-CH"), (Numerals::Point, MassUnit::Kilogram));
        assert_eq!(read("sr-Latn-RS"), (Numerals::Comma, MassUnit::Kilogram));
        for tag in ["", "C", "POSIX", "xx-YY", "💪", "-", "en-"] {
            assert_eq!(read(tag), (Numerals::Point, MassUnit::Kilogram), "{tag}");
        }
    }
}
