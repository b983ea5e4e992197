//! Every word a lifter reads, in one place: a folder for each language.
//!
//! Facts come as data of the domain; here they become sentences: short, plain, a coach's. What can be
//! said is declared once in `table`, and a language that lacks any of it does not compile. Screens
//! ask [`Words`] and know no language.

#[cfg(feature = "german")]
#[allow(
    unreachable_pub,
    reason = "what a language can say is declared in the table, and reached there"
)]
mod de;
#[allow(
    unreachable_pub,
    reason = "what a language can say is declared in the table, and reached there"
)]
mod en;
#[cfg(test)]
mod made_up;
mod table;
#[allow(unreachable_pub, reason = "a language hands on to the table what it takes from here")]
mod written;

pub use table::*;

use barwright_domain::catalogue::Tongue;
use barwright_domain::quantity::Numerals;

/// The languages there are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Language {
    /// English.
    #[default]
    English,
    /// German.
    #[cfg(feature = "german")]
    German,
    /// One of nobody's, with longer words, other plural forms and letters that run from right to
    /// left: for tests, which show with it that no word stands outside.
    #[cfg(test)]
    MadeUp,
}

impl Language {
    /// That which a tag's first part names, `de`; English for every other.
    pub fn of(tag: &str) -> Self {
        match tag {
            #[cfg(feature = "german")]
            "de" => Self::German,
            _ => Self::English,
        }
    }
}

/// The words of a language, and how it writes numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Words {
    language: Language,
    /// Decimal point or comma.
    pub numerals: Numerals,
    /// Today's local day, in days since 1970-01-01, where it is known: a date far from it has its
    /// year.
    pub today: Option<i32>,
}

impl Words {
    /// Of a language, with numbers written so.
    pub const fn new(language: Language, numerals: Numerals) -> Self {
        Self { language, numerals, today: None }
    }

    /// The language that exercises are named in.
    pub const fn tongue(self) -> Tongue {
        match self.language {
            Language::English => Tongue::English,
            #[cfg(feature = "german")]
            Language::German => Tongue::German,
            #[cfg(test)]
            Language::MadeUp => Tongue::English,
        }
    }

    /// The same on a day.
    pub const fn on(self, day: i32) -> Self {
        Self { today: Some(day), ..self }
    }
}

/// Declares the phrases of a subject, a method for each, said by whichever language it is.
macro_rules! phrases {
    (
        $(#[$about:meta])*
        $subject:ident in $file:ident {
            $(
                $(#[$says:meta])*
                fn $phrase:ident($($given:ident: $kind:ty),* $(,)?) -> $said:ty;
            )*
        }
    ) => {
        $(#[$about])*
        #[derive(Debug, Clone, Copy)]
        pub struct $subject(Language);

        impl Words {
            $(#[$about])*
            pub const fn $file(self) -> $subject {
                $subject(self.language)
            }
        }

        impl $subject {
            $(
                $(#[$says])*
                pub fn $phrase(self, $($given: $kind),*) -> $said {
                    match self.0 {
                        Language::English => en::$file::$phrase($($given),*),
                        #[cfg(feature = "german")]
                        Language::German => de::$file::$phrase($($given),*),
                        #[cfg(test)]
                        Language::MadeUp => made_up::said(en::$file::$phrase($($given),*)),
                    }
                }
            )*
        }
    };
}
use phrases;

#[cfg(test)]
mod tests {
    use barwright_domain::catalogue::Catalogue;

    use crate::locale::Locale;

    /// What screens say of an exercise and what files are written with is one name.
    #[test]
    fn exercises_are_said_as_they_are_written() {
        for tag in ["en-GB", "de-DE"] {
            let words = Locale::read(tag).words();
            for exercise in Catalogue::builtin().iter() {
                let said = words.words().exercise(exercise);
                assert_eq!(said, exercise.name_in(words.tongue()), "{tag}");
                assert_eq!(words.exercises().value("name", exercise), said, "{tag}");
            }
        }
    }
}
