//! The few words that are the terminal's own, in each language: headings, keys that only a terminal
//! has, files, and how the program begins.
//!
//! What can be said is declared once, and a language that lacks any of it does not compile. They are
//! spoken in the language that the engine takes from the same locale. English in every language stay
//! the help of the command line, which is built before a locale is known, what is printed for other
//! programs (`--json`, the lines of `drive`), what `rehearse` works out for whoever writes plans, and
//! the caps of keys, as keyboards have them.

#[cfg(feature = "german")]
mod de;
mod en;

use std::io;

use barwright_app::Locale;
use barwright_app::phrase::Language;

/// The words of one language.
pub(crate) type Own = &'static OwnWords;

/// What a language says; see [`Own`].
#[derive(Debug)]
pub(crate) struct OwnWords {
    // The line of places, and what stands on every screen.
    /// The screens' names, each with the letter in it that leads there: T, F, A, W, L, B, E, P, C.
    pub(crate) places: [&'static str; 9],
    /// The keys at the end of that line.
    pub(crate) help_and_leave: &'static str,
    /// A key: yes, to what is asked.
    pub(crate) yes: &'static str,
    /// A key: the reason.
    pub(crate) why: &'static str,
    /// A key: write what is chosen.
    pub(crate) write: &'static str,
    /// The mark on every screen of the demo.
    pub(crate) invented: &'static str,
    /// The mark on every screen of a return.
    pub(crate) looked_at: &'static str,

    // The page of keys.
    /// Its title.
    pub(crate) keys: &'static str,
    /// A heading, and what stands under it.
    pub(crate) on_the_floor: (&'static str, &'static [&'static str]),
    /// The same of every screen.
    pub(crate) everywhere: (&'static str, &'static [&'static str]),
    /// The same of files.
    pub(crate) files: (&'static str, &'static [&'static str]),

    // What `o` does.
    /// On the gym's screen.
    pub(crate) add_gym: &'static str,
    /// On the plan's.
    pub(crate) read_plan: &'static str,
    /// Where plans are made.
    pub(crate) open_plan: &'static str,
    /// Where what is made can be saved.
    pub(crate) save: &'static str,

    // The line that is being written.
    /// What the path of a plan is asked with.
    pub(crate) plan_file: &'static str,
    /// A path of one.
    pub(crate) plan_path: &'static str,
    /// What the path of a gym is asked with.
    pub(crate) gym_file: &'static str,
    /// A path of one.
    pub(crate) gym_path: &'static str,
    /// What the path to save in is asked with.
    pub(crate) save_as: &'static str,
    /// What would do, given it.
    pub(crate) such_as: fn(&str) -> String,
    /// What a coach sent was shown, and none of it taken.
    pub(crate) none_taken: &'static str,
    /// How the line is taken and left.
    pub(crate) taken_or_left: &'static str,

    // The floor.
    /// A metronome begins.
    pub(crate) get_set: &'static str,
    /// A key.
    pub(crate) count_tempo: &'static str,
    /// A heading.
    pub(crate) why_this_load: &'static str,
    /// A heading, and what a caution begins with.
    pub(crate) take_care: &'static str,
    /// A heading.
    pub(crate) how: &'static str,
    /// A heading.
    pub(crate) set_up: &'static str,
    /// A heading.
    pub(crate) cues: &'static str,

    // Other screens.
    /// A heading: what is to be written before the sheet is whole.
    pub(crate) still_needed: &'static str,
    /// A heading on the screen.
    pub(crate) left_out: &'static str,
    /// The same on a pipe.
    pub(crate) skipped: &'static str,
    /// A heading.
    pub(crate) next_time: &'static str,
    /// A heading.
    pub(crate) done: &'static str,
    /// A row that is done, in words.
    pub(crate) is_done: &'static str,
    /// A heading.
    pub(crate) notes: &'static str,
    /// A heading.
    pub(crate) to_write: &'static str,
    /// A heading.
    pub(crate) by_hand: &'static str,
    /// A heading.
    pub(crate) records: &'static str,
    /// A heading.
    pub(crate) sessions: &'static str,
    /// There is none.
    pub(crate) no_session: &'static str,
    /// A heading.
    pub(crate) other_exercises: &'static str,
    /// A heading.
    pub(crate) behind: &'static str,
    /// A heading.
    pub(crate) by_kind: &'static str,
    /// What a fill means.
    pub(crate) bar_done: &'static str,
    /// What the end of it means.
    pub(crate) bar_short: &'static str,
    /// What an outline means.
    pub(crate) bar_planned: &'static str,
    /// What the bars below it mean.
    pub(crate) bar_sides: &'static str,
    /// Behind the title of the current week.
    pub(crate) this_week: &'static str,
    /// Before a row that warns.
    pub(crate) look: &'static str,
    /// Where a fault is: line, column, what it is called, the problem.
    pub(crate) fault: fn(u32, u32, &str, &str) -> String,

    // Files.
    /// Of a path: it can't be read.
    pub(crate) not_read: fn(&str, &io::Error) -> String,
    /// Of a path: it has more megabytes than so many.
    pub(crate) too_large: fn(&str, u64) -> String,
    /// Of a path: this byte, from 1, is no text.
    pub(crate) no_text: fn(&str, usize) -> String,
    /// Of a path.
    pub(crate) saved: fn(&str) -> String,
    /// Of a path: another file has it.
    pub(crate) there_already: fn(&str) -> String,
    /// The same, where a command wrote nothing.
    pub(crate) name_another: fn(&str) -> String,
    /// Of a path: it can't be written.
    pub(crate) not_written: fn(&str, &io::Error) -> String,
    /// Of a folder: it can't be made.
    pub(crate) no_folder: fn(&str, &io::Error) -> String,
    /// Of a folder: it can't be read.
    pub(crate) folder_not_read: fn(&str, &io::Error) -> String,
    /// A defect at one file stopped the reading of all.
    pub(crate) reading_stopped: &'static str,
    /// Of a folder: it has more returns than so many.
    pub(crate) many_returns: fn(&str, usize) -> String,
    /// Of a path: it is no text itself.
    pub(crate) path_no_text: fn(&str) -> String,
    /// The records have no place; given the variable that names one.
    pub(crate) no_home: fn(&str) -> String,

    // How the program begins.
    /// There is no file of this path, and what there is to do.
    pub(crate) nothing_yet: fn(&str) -> String,
    /// What the demo's sheet stands under.
    pub(crate) demo_sheet: &'static str,
    /// There is no file of this path: what to press.
    pub(crate) first: fn(&str) -> String,
    /// The question below it.
    pub(crate) d_p_n_q: &'static str,
    /// The question for a plan's path.
    pub(crate) ask_plan: &'static str,

    // What commands did.
    /// Of a gym.
    pub(crate) no_fault: fn(&str) -> String,
    /// Behind the gym that is trained in.
    pub(crate) trained_in: &'static str,
    /// Of a gym.
    pub(crate) trains_in: fn(&str) -> String,
    /// Of a name, and the names there are.
    pub(crate) no_gym: fn(&str, &str) -> String,
    /// What accepted remarks stand under.
    pub(crate) accepted: &'static str,
    /// Of a plan: its title, and its length.
    pub(crate) plan_no_fault: fn(&str, &str) -> String,
    /// The same of one that is adopted.
    pub(crate) adopted: fn(&str, &str) -> String,
    /// Of a path and a count of entries.
    pub(crate) copied: fn(&str, u64) -> String,
    /// Of a path, entries, sessions.
    pub(crate) exported: fn(&str, u64, u64) -> String,
    /// Of a path, and rows.
    pub(crate) rows: fn(&str, u64) -> String,
    /// Of the copy's path.
    pub(crate) way_back: fn(&str) -> String,
    /// How many loads stand otherwise where history came from.
    pub(crate) loads_differ: fn(u64) -> String,
    /// They are in a file of this path.
    pub(crate) loads_written: fn(&str) -> String,
    /// What comes next, of a table's path and that of the file of its columns.
    pub(crate) look_at_columns: fn(&str, &str) -> String,
    /// How what came from a table goes out of the history again.
    pub(crate) way_out: &'static str,
    /// How many sessions went out of the history again.
    pub(crate) taken_back: fn(u64) -> String,
}

impl Default for Own {
    fn default() -> Self {
        &en::WORDS
    }
}

/// The words that a locale is spoken to in.
pub(crate) const fn of(locale: &Locale) -> Own {
    match locale.language {
        Language::English => &en::WORDS,
        #[cfg(feature = "german")]
        Language::German => &de::WORDS,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::screens;

    /// The line of places shows each letter in its name, and stands on the narrowest usual terminal.
    #[test]
    fn every_place_has_its_letter() {
        for own in [
            &en::WORDS,
            #[cfg(feature = "german")]
            &de::WORDS,
        ] {
            let letters = "TFAWLBEPC".chars();
            for (letter, name) in letters.zip(own.places) {
                assert!(screens::place(letter).is_some(), "{letter}");
                assert!(name.to_lowercase().contains(letter.to_ascii_lowercase()), "{name}");
            }
            let wide = own.places.map(|name| name.chars().count() + 2).iter().sum::<usize>();
            assert!(wide + own.help_and_leave.chars().count() <= 80, "{:?}", own.places);
        }
    }
}
