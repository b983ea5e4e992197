//! Which key of the keyboard stands for which key of a screen.
//!
//! The core names its keys; this table gives the well-known ones a letter that stays where it is.
//! Every other key takes a free letter out of its label.

use barwright_app::contract::{EffortKey, FloorScreen, FormRow, Key, Panel};

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

/// Letters that mean the same on every screen: why, move, open a file, count a tempo, leave.
const KEPT: [char; 6] = ['w', 'j', 'k', 'o', 'c', 'q'];

/// Letters of the floor's own keys. A panel that lies over it gives them to nothing else.
const FLOORS: [char; 7] = ['b', 'e', 'm', 'n', 'r', 's', 'u'];

/// The press of a key that the core names the same on every screen.
fn known(id: &str) -> Option<Press> {
    Some(match id {
        "record" | "start" | "resume" | "finish" | "correct" | "begin" | "floor" | "today"
        | "adopt" => Press::Enter,
        "take-up" => Press::Char('t'),
        "drop" => Press::Char('d'),
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
    /// Enter writes the selected field.
    writes: bool,
    /// Presses of keys that can't be tapped now: they keep their place.
    kept: Vec<Press>,
    /// Letters that mean something else under what is bound here.
    under: &'static [char],
}

impl<'a> Binder<'a> {
    const fn new() -> Self {
        Self { bound: Vec::new(), writes: false, kept: Vec::new(), under: &[] }
    }

    fn taken(&self, press: Press) -> bool {
        (self.writes && press == Press::Enter)
            || self.kept.contains(&press)
            || self.bound.iter().any(|bound| bound.press == press)
    }

    fn chosen(&mut self, chosen: Chosen<'a>) {
        match chosen {
            Chosen::Nothing => {}
            Chosen::Field => self.writes = true,
            Chosen::Form(row) => {
                self.writes = row.field.is_some();
                let steps = [(Press::Char('-'), &row.down), (Press::Char('+'), &row.up)];
                for (press, key) in steps {
                    key.iter().for_each(|key| self.give(press, key));
                }
                let mut keys = row.keys.iter();
                if let Some(first) = keys.next() {
                    match self.writes {
                        true => self.digit(first),
                        false => self.give(Press::Enter, first),
                    }
                }
                keys.for_each(|key| self.digit(key));
            }
            Chosen::Row([key]) => self.give(Press::Enter, key),
            Chosen::Row(keys) => keys.iter().for_each(|key| self.digit(key)),
        }
    }

    fn give(&mut self, press: Press, key: &'a Key) {
        if key.enabled && !self.taken(press) {
            self.bound.push(Bound { press, key });
        }
    }

    /// By the table, else a letter of its label, else any that is free.
    fn letter(&mut self, key: &'a Key) {
        match known(&key.id).filter(|press| !self.taken(*press)) {
            Some(press) => self.give(press, key),
            None => self.own_letter(key),
        }
    }

    fn own_letter(&mut self, key: &'a Key) {
        let free = |one: &char| {
            let kept = KEPT.contains(one) || self.under.contains(one);
            !kept && !self.taken(Press::Char(*one))
        };
        let own = key.label.chars().map(|one| one.to_ascii_lowercase());
        let letter = own.filter(char::is_ascii_lowercase).chain('a'..='z').find(free);
        if let Some(letter) = letter {
            self.give(Press::Char(letter), key);
        }
    }

    /// By number, then by letter: in a list, enter is for the line that is chosen. A key that can't be
    /// tapped now keeps its number, so that those after it stay where they are.
    fn digit(&mut self, key: &'a Key) {
        let digit = ('1'..='9').map(Press::Char).find(|press| !self.taken(*press));
        match digit {
            Some(press) if key.enabled => self.give(press, key),
            Some(press) => self.kept.push(press),
            None => self.own_letter(key),
        }
    }
}

/// What is selected, and the keys it has.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Chosen<'a> {
    /// Nothing is.
    Nothing,
    /// A row with these keys.
    Row(&'a [Key]),
    /// A line of a form: minus and plus step it, enter writes it or does the first it can.
    Form(&'a FormRow),
    /// A field: enter writes it.
    Field,
}

/// The keys of a sheet: the selected row's by number, or by enter where it has just one; the
/// screen's by letter.
pub(crate) fn sheet<'a>(keys: &[&'a Key], chosen: Chosen<'a>) -> Vec<Bound<'a>> {
    let mut binder = Binder::new();
    binder.chosen(chosen);
    // A letter that is a key's own everywhere is not taken by another that stands before it.
    let (own, others): (Vec<&Key>, Vec<&Key>) = keys.iter().partition(|key| {
        known(&key.id).is_some_and(|press| !binder.taken(press) && press != Press::Enter)
    });
    own.into_iter().for_each(|key| binder.letter(key));
    others.into_iter().for_each(|key| binder.letter(key));
    binder.bound
}

/// The keys of a panel: with lines to choose from, the selected line's as on a sheet and the
/// panel's by letter; else the panel's by number, a pad's digits as themselves. No letter of the floor under it means another thing.
pub(crate) fn panel<'a>(panel: &'a Panel, chosen: Chosen<'a>) -> Vec<Bound<'a>> {
    let mut binder = Binder { under: &FLOORS, ..Binder::new() };
    binder.give(Press::Escape, &panel.close);
    binder.chosen(chosen);
    let lines = panel.rows.iter().any(|row| !row.keys.is_empty());
    for key in &panel.keys {
        match pad(&key.id).or_else(|| known(&key.id)) {
            Some(press) if pad(&key.id).is_some() => binder.give(press, key),
            Some(step @ Press::Char('-' | '+')) => binder.give(step, key),
            _ if lines => binder.own_letter(key),
            _ => binder.digit(key),
        }
    }
    binder.bound
}

/// A pad's digits are pressed as themselves.
fn pad(id: &str) -> Option<Press> {
    match id {
        "rub-out" => Some(Press::Char('x')),
        "set" => Some(Press::Enter),
        _ => id.strip_prefix("digit-")?.chars().next().map(Press::Char),
    }
}

/// The digit of an effort key: its label's last, so that "5+" is 5 and an RPE of "10" is 0.
fn digit(effort: &EffortKey) -> Option<char> {
    effort.key.label.chars().rev().find(char::is_ascii_digit)
}

/// The keys of the floor.
pub(crate) fn floor(floor: &FloorScreen) -> Vec<Bound<'_>> {
    let thumb = &floor.thumb;
    let mut binder = Binder::new();
    for (digit, effort) in thumb.effort.iter().filter_map(|effort| Some((digit(effort)?, effort))) {
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
        binder.give(Press::Char('#'), &figure.pad);
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
        let bound = sheet(&keys, Chosen::Nothing);
        let want = [("u", "undo"), ("enter", "begin"), ("m", "m45"), ("i", "m30"), ("a", "why")];
        assert_eq!(caps(&bound), want.map(|(cap, id)| (cap.to_owned(), id.to_owned())));
    }

    #[test]
    fn enter_is_for_what_is_selected() {
        let keys = [key("begin", "Begin")];
        let keys: Vec<&Key> = keys.iter().collect();
        let one = [key("lay-out", "Show its sheet")];
        let of = |chosen| {
            let bound = sheet(&keys, chosen);
            caps(&bound).into_iter().map(|(cap, id)| format!("{cap} {id}")).collect::<Vec<_>>()
        };
        assert_eq!(of(Chosen::Row(&one)), ["enter lay-out", "b begin"]);
        assert_eq!(of(Chosen::Field), ["b begin"]);
        assert_eq!(of(Chosen::Row(&[])), ["enter begin"]);
    }

    fn in_panel(keys: Vec<Key>) -> Panel {
        Panel {
            id: "bar".into(),
            title: "The bar holds".into(),
            rows: Vec::new(),
            keys,
            fields: Vec::new(),
            close: key("close", "Back"),
        }
    }

    #[test]
    fn a_key_of_a_panel_keeps_its_number_whatever_can_be_tapped() {
        let of = |off: bool| {
            let keys = vec![
                Key { enabled: !off, ..key("off", "Take off 25 kg") },
                key("on-25", "Put on 25 kg"),
                key("on-20", "Put on 20 kg"),
            ];
            let panel = in_panel(keys);
            caps(&super::panel(&panel, Chosen::Nothing))
        };
        let bound = |caps: &[(&str, &str)]| -> Vec<(String, String)> {
            caps.iter().map(|(cap, id)| ((*cap).to_owned(), (*id).to_owned())).collect()
        };
        let all = [("esc", "close"), ("1", "off"), ("2", "on-25"), ("3", "on-20")];
        assert_eq!(of(false), bound(&all));
        assert_eq!(of(true), bound(&[all[0], all[2], all[3]]));
    }

    #[test]
    fn a_pads_digits_are_pressed_as_themselves() {
        let mut keys: Vec<Key> = "1234567890"
            .chars()
            .map(|one| key(&format!("digit-{one}"), &one.to_string()))
            .collect();
        keys.insert(9, key("rub-out", "⌫"));
        keys.push(key("set", "That is it"));
        let bound = caps(&super::panel(&in_panel(keys), Chosen::Nothing));
        for one in "1234567890".chars() {
            assert!(bound.contains(&(one.to_string(), format!("digit-{one}"))), "{bound:?}");
        }
        assert!(bound.contains(&("x".into(), "rub-out".into())), "{bound:?}");
        assert!(bound.contains(&("enter".into(), "set".into())), "{bound:?}");
    }

    #[test]
    fn no_letter_of_the_floor_means_another_thing_in_a_panel() {
        let many = (0..30).map(|at| key(&format!("k{at}"), "Undo remembers bench")).collect();
        let panel = in_panel(many);
        for bound in super::panel(&panel, Chosen::Nothing) {
            assert!(FLOORS.iter().all(|one| bound.press != Press::Char(*one)), "{bound:?}");
        }
    }

    #[test]
    fn no_press_is_given_twice_and_none_to_a_key_that_is_off() {
        let many: Vec<Key> = (0..40).map(|at| key(&format!("k{at}"), "Same label")).collect();
        let off = Key { enabled: false, ..key("record", "Racked") };
        let mut all: Vec<&Key> = many.iter().collect();
        all.push(&off);
        let row: Vec<Key> = (0..12).map(|at| key(&format!("r{at}"), "Row")).collect();
        let bound = sheet(&all, Chosen::Row(&row));
        for (at, one) in bound.iter().enumerate() {
            assert!(bound[..at].iter().all(|other| other.press != one.press), "{one:?}");
            assert!(!KEPT.iter().any(|kept| one.press == Press::Char(*kept)), "{one:?}");
            assert_ne!(one.key.id, "record");
        }
        // Nine digits, and the letters that are not kept.
        assert_eq!(bound.len(), 9 + 26 - KEPT.len());
    }
}
