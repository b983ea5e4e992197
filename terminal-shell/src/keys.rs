//! Which key of the keyboard stands for which key of a screen.
//!
//! The core names its keys; this table gives the well-known ones a letter that stays where it is.
//! Every other key takes a free letter out of its label.

use barwright_app::contract::{FloorScreen, Key, Panel};

/// A press of the keyboard.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Press {
    /// Enter, or space on the floor.
    Enter,
    /// Escape.
    Escape,
    /// A character.
    Char(char),
    /// A character after a point: the half behind a figure.
    Half(char),
}

impl Press {
    /// As it is shown on the screen.
    pub(crate) fn cap(self) -> String {
        match self {
            Self::Enter => "enter".to_owned(),
            Self::Escape => "esc".to_owned(),
            Self::Char(one) => one.to_string(),
            Self::Half(one) => format!(".{one}"),
        }
    }
}

/// A key of a screen with its press.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Bound<'a> {
    pub(crate) press: Press,
    pub(crate) key: &'a Key,
}

/// Letters that mean the same on every screen: why, move, open a file, leave.
const KEPT: [char; 5] = ['w', 'j', 'k', 'o', 'q'];

/// The press of a key that the core names the same on every screen.
fn known(id: &str) -> Option<Press> {
    Some(match id {
        "record" | "start" | "resume" | "finish" | "correct" | "begin" | "go-on" | "adopt" => {
            Press::Enter
        }
        "leave" => Press::Escape,
        "down" => Press::Char('-'),
        "up" => Press::Char('+'),
        "shorter" => Press::Char('['),
        "longer" => Press::Char(']'),
        "ended" => Press::Char('e'),
        "undo" => Press::Char('u'),
        "redo" => Press::Char('r'),
        "more" => Press::Char('m'),
        "holds" => Press::Char('b'),
        "short" => Press::Char('s'),
        "uncalled" => Press::Char('n'),
        _ => return None,
    })
}

/// Keys as they are given their presses, in order; those that can't be tapped now take none.
struct Binder<'a> {
    bound: Vec<Bound<'a>>,
}

impl<'a> Binder<'a> {
    const fn new() -> Self {
        Self { bound: Vec::new() }
    }

    fn taken(&self, press: Press) -> bool {
        self.bound.iter().any(|bound| bound.press == press)
    }

    fn give(&mut self, press: Press, key: &'a Key) {
        if key.enabled && !self.taken(press) {
            self.bound.push(Bound { press, key });
        }
    }

    /// By the table, else a letter of its label, else any that is free.
    fn letter(&mut self, key: &'a Key) {
        let free = |one: &char| !KEPT.contains(one) && !self.taken(Press::Char(*one));
        let own = key.label.chars().map(|one| one.to_ascii_lowercase());
        let press = known(&key.id).filter(|press| !self.taken(*press)).or_else(|| {
            own.filter(char::is_ascii_lowercase).chain('a'..='z').find(free).map(Press::Char)
        });
        if let Some(press) = press {
            self.give(press, key);
        }
    }

    /// By number, then by letter.
    fn digit(&mut self, key: &'a Key) {
        let press = ('1'..='9').map(Press::Char).find(|press| !self.taken(*press));
        match press {
            Some(press) if key.enabled => self.give(press, key),
            _ => self.letter(key),
        }
    }
}

/// The keys of a sheet: the selected row's by number, the screen's by letter.
pub(crate) fn sheet<'a>(keys: &[&'a Key], row: &'a [Key]) -> Vec<Bound<'a>> {
    let mut binder = Binder::new();
    row.iter().for_each(|key| binder.digit(key));
    keys.iter().for_each(|key| binder.letter(key));
    binder.bound
}

/// The keys of a panel: with lines to choose from, the selected line's by number and the panel's
/// by letter; else the panel's by number.
pub(crate) fn panel<'a>(panel: &'a Panel, row: Option<&'a [Key]>) -> Vec<Bound<'a>> {
    let mut binder = Binder::new();
    binder.give(Press::Escape, &panel.close);
    match row {
        Some(row) => {
            row.iter().for_each(|key| binder.digit(key));
            panel.keys.iter().for_each(|key| binder.letter(key));
        }
        None => panel.keys.iter().for_each(|key| binder.digit(key)),
    }
    binder.bound
}

/// The keys of the floor.
pub(crate) fn floor(floor: &FloorScreen) -> Vec<Bound<'_>> {
    let thumb = &floor.thumb;
    let mut binder = Binder::new();
    for (digit, effort) in ('0'..='9').zip(&thumb.effort) {
        binder.give(Press::Char(digit), &effort.key);
        if let Some(half) = &effort.half {
            binder.give(Press::Half(digit), half);
        }
    }
    if let Some(main) = &thumb.main {
        binder.give(Press::Enter, main);
    }
    if let Some(figure) = &thumb.figure {
        binder.give(Press::Char('-'), &figure.down);
        binder.give(Press::Char('+'), &figure.up);
    }
    if let Some(rest) = &floor.rest {
        binder.give(Press::Char('['), &rest.shorter);
        binder.give(Press::Char(']'), &rest.longer);
    }
    let named = [&thumb.ended, &thumb.undo, &thumb.redo, &thumb.more, &floor.bar.holds];
    named.into_iter().flatten().for_each(|key| binder.letter(key));
    thumb.beside.iter().for_each(|key| binder.letter(key));
    binder.bound
}

/// The cap of a key, where it has one.
pub(crate) fn cap(bound: &[Bound<'_>], key: &Key) -> Option<String> {
    bound.iter().find(|bound| std::ptr::eq(bound.key, key)).map(|bound| bound.press.cap())
}

#[cfg(test)]
mod tests {
    use barwright_app::contract::{Action, Look};

    use super::*;

    fn key(id: &str, label: &str) -> Key {
        Key {
            id: id.into(),
            label: label.into(),
            says: label.into(),
            enabled: true,
            chosen: false,
            action: Action::Show { look: Look::Weeks },
        }
    }

    fn caps(bound: &[Bound<'_>]) -> Vec<(String, String)> {
        bound.iter().map(|bound| (bound.press.cap(), bound.key.id.clone())).collect()
    }

    #[test]
    fn known_keys_have_their_letters_and_others_one_of_their_own() {
        let keys = [
            key("begin", "Begin"),
            key("m45", "45 min"),
            key("m30", "30 min"),
            key("why", "w"),
            key("undo", "Undo"),
        ];
        let keys: Vec<&Key> = keys.iter().collect();
        let bound = sheet(&keys, &[]);
        let want = [("enter", "begin"), ("m", "m45"), ("i", "m30"), ("a", "why"), ("u", "undo")];
        assert_eq!(caps(&bound), want.map(|(cap, id)| (cap.to_owned(), id.to_owned())));
    }

    #[test]
    fn no_press_is_given_twice_and_none_to_a_key_that_is_off() {
        let many: Vec<Key> = (0..40).map(|at| key(&format!("k{at}"), "Same label")).collect();
        let off = Key { enabled: false, ..key("record", "Racked") };
        let mut all: Vec<&Key> = many.iter().collect();
        all.push(&off);
        let row: Vec<Key> = (0..12).map(|at| key(&format!("r{at}"), "Row")).collect();
        let bound = sheet(&all, &row);
        for (at, one) in bound.iter().enumerate() {
            assert!(bound[..at].iter().all(|other| other.press != one.press), "{one:?}");
            assert!(!KEPT.iter().any(|kept| one.press == Press::Char(*kept)), "{one:?}");
            assert_ne!(one.key.id, "record");
        }
        // Nine digits, and the letters that are not kept.
        assert_eq!(bound.len(), 9 + 26 - KEPT.len());
    }
}
