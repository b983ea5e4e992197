//! What is being made by hand, and holds for nothing until it is taken up.

use serde::{Deserialize, Serialize};

/// The most steps that can be taken back.
pub const MOST_STEPS: usize = 100;

/// What a draft is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DraftOf {
    /// A gym.
    Gym,
    /// A plan.
    Plan,
    /// An exercise of the lifter's own.
    Exercise,
}

impl DraftOf {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Gym, Self::Plan, Self::Exercise];

    /// A name in a word.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Gym => "gym",
            Self::Plan => "plan",
            Self::Exercise => "exercise",
        }
    }
}

/// A piece of a text in place of another.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Splice {
    /// Bytes before it.
    pub at: u32,
    /// Bytes that go.
    pub gone: u32,
    /// What comes there.
    pub put: String,
}

impl Splice {
    /// From one text to another: the shortest one piece. None where they are alike.
    pub fn between(was: &str, is: &str) -> Option<Self> {
        if was == is {
            return None;
        }
        let alike = |one: &mut dyn Iterator<Item = (char, char)>| -> usize {
            one.take_while(|(one, other)| one == other).map(|(one, _)| one.len_utf8()).sum()
        };
        let at = alike(&mut was.chars().zip(is.chars()));
        let (was_rest, is_rest) = (was.get(at..)?, is.get(at..)?);
        let after = alike(&mut was_rest.chars().rev().zip(is_rest.chars().rev()));
        let put = is_rest.get(..is_rest.len() - after)?.to_owned();
        let gone = u32::try_from(was_rest.len() - after).ok()?;
        Some(Self { at: u32::try_from(at).ok()?, gone, put })
    }

    /// The text with it, and what takes it back. None where the text has no such place.
    pub fn on(&self, text: &str) -> Option<(String, Self)> {
        let at = usize::try_from(self.at).ok()?;
        let end = at.checked_add(usize::try_from(self.gone).ok()?)?;
        let (before, gone, after) = (text.get(..at)?, text.get(at..end)?, text.get(end..)?);
        let back =
            Self { at: self.at, gone: u32::try_from(self.put.len()).ok()?, put: gone.to_owned() };
        Some((format!("{before}{}{after}", self.put), back))
    }
}

/// Something that is being made.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Draft {
    /// What it was begun from, by name; empty for nothing.
    pub from: String,
    /// Its text.
    pub text: String,
    /// The log's number of its last step.
    pub step: u64,
    /// What takes its steps back, the last one last, [`MOST_STEPS`] at the most.
    pub back: Vec<Splice>,
    /// What brings steps that were taken back again, the next one last.
    pub forth: Vec<Splice>,
}

impl Draft {
    /// A draft as it is begun.
    pub fn begun(step: u64, from: String, text: String) -> Self {
        Self { from, text, step, back: Vec::new(), forth: Vec::new() }
    }

    /// A step. One that the text has no place for changes nothing.
    pub fn change(&mut self, step: u64, splice: &Splice) {
        if let Some(back) = self.apply(step, splice) {
            self.forth.clear();
            self.back.push(back);
            if self.back.len() > MOST_STEPS {
                self.back.remove(0);
            }
        }
    }

    /// The last step is taken back, or the one that was taken back last comes again.
    pub fn turn(&mut self, step: u64, back: bool) {
        let from = if back { &mut self.back } else { &mut self.forth };
        let Some(splice) = from.pop() else { return };
        if let Some(inverse) = self.apply(step, &splice) {
            let to = if back { &mut self.forth } else { &mut self.back };
            to.push(inverse);
        }
    }

    fn apply(&mut self, step: u64, splice: &Splice) -> Option<Splice> {
        let (text, back) = splice.on(&self.text)?;
        self.text = text;
        self.step = step;
        Some(back)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_step_is_a_piece_of_text_and_can_be_taken_back() {
        let splice = Splice::between("pairs = 2\n", "pairs = 3\n").unwrap();
        assert_eq!((splice.at, splice.gone, splice.put.as_str()), (8, 1, "3"));
        assert_eq!(Splice::between("a", "a"), None);
        // Letters of several bytes, and what repeats itself.
        for (was, is) in [("ä", "äää"), ("жж", "ж"), ("", "x"), ("ab", "ba"), ("é", "è")] {
            let splice = Splice::between(was, is).unwrap();
            let (made, back) = splice.on(was).unwrap();
            assert_eq!(made, is);
            assert_eq!(back.on(is).unwrap().0, was);
        }
        assert_eq!(splice.on("short"), None);
    }

    #[test]
    fn steps_go_back_and_forth_until_another_is_taken() {
        let mut draft = Draft::begun(1, String::new(), "a".into());
        for (step, text) in [(2, "ab"), (3, "abc")] {
            draft.change(step, &Splice::between(&draft.text.clone(), text).unwrap());
        }
        draft.turn(4, true);
        assert_eq!((draft.text.as_str(), draft.step), ("ab", 4));
        draft.turn(5, false);
        assert_eq!(draft.text, "abc");
        draft.turn(6, true);
        draft.change(7, &Splice::between("ab", "abd").unwrap());
        draft.turn(8, false);
        assert_eq!(draft.text, "abd");
        for step in 9..12 {
            draft.turn(step, true);
        }
        assert_eq!(draft.text, "a");
    }
}
