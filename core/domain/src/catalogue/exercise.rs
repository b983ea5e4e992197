//! One exercise.

use std::borrow::Cow;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::{Movement, Muscle, Region, Tongue};
use crate::equipment::{DUMBBELL, KETTLEBELL};
use crate::quantity::Percent;

/// What an exercise is. The slug is its name for ever: histories are kept under it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Exercise {
    /// Small letters of any script, digits and hyphens: `front-squat`.
    pub slug: Cow<'static, str>,
    /// As a coach says it: `Front squat`.
    pub name: Cow<'static, str>,
    /// Other usual names.
    pub also: Names,
    /// German names, the first as it is shown; none where it is called by its one name everywhere, as
    /// a plan's own is.
    #[serde(default)]
    pub german: Names,
    /// The movement.
    pub movement: Movement,
    /// What is lifted, a slug shared with equipment: `barbell`, `dumbbell`, `leg-press`, … (an
    /// open set; [`IMPLEMENTS`](super::IMPLEMENTS) lists those of the built-in exercises).
    pub implement: Cow<'static, str>,
    /// What must stand in the gym beside the implement: `rack`, `bench`, … (an open set).
    pub needs: Names,
    /// Muscles trained directly: a hard set counts 1 for each.
    pub direct: Cow<'static, [Muscle]>,
    /// Muscles that help: a hard set counts a half for each (Pelland et al. 2024,
    /// SportRxiv osf.io/6z3xu).
    pub indirect: Cow<'static, [Muscle]>,
    /// One side at a time: each side has its own sets and history.
    pub one_sided: bool,
    /// Share of body mass that is moved beside the load; nothing where it is not counted (a squat's
    /// load is what the bar weighs).
    pub body_share: Percent,
    /// How the written load is meant.
    pub counting: Counting,
    /// What a set is measured in when a plan does not say.
    pub measure: Measure,
    /// A barbell main lift: percent tables and estimates are made for these alone, since machines
    /// and single joints differ far too much.
    pub main_lift: bool,
    /// The bar starts on the floor: a ramp starts where full-size plates set its height.
    pub from_floor: bool,
    /// The load is over the body or on the back; [`Exercise::bar_over`] says whether a missed rep
    /// needs pins or a spotter.
    pub over_body: bool,
}

/// How the load of an exercise is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Counting {
    /// All that is lifted, the bar with its plates.
    Total,
    /// What each hand holds, with one in each.
    EachHand,
    /// The one dumbbell, kettlebell, ball or plate, in one hand or both.
    One,
    /// What the pin of a stack says.
    Stack,
    /// What is loaded on one side of a machine.
    EachSide,
    /// What hangs on the body or is taken off it; nothing for the body alone.
    Added,
    /// No load that has a number: a band, a named set-up.
    Unnumbered,
}

impl Counting {
    /// All of them, in the order of their declaration.
    pub const ALL: [Self; 7] = [
        Self::Total,
        Self::EachHand,
        Self::One,
        Self::Stack,
        Self::EachSide,
        Self::Added,
        Self::Unnumbered,
    ];
}

/// What a set is measured in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Measure {
    /// Repetitions.
    Reps,
    /// Seconds held.
    Seconds,
    /// Metres walked or pushed.
    Metres,
}

impl Exercise {
    /// Every name it goes by, in every language: its slug, its name, other usual ones.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        let english = [self.slug.as_ref(), self.name.as_ref()].into_iter().chain(self.also.iter());
        english.chain(self.german.iter())
    }

    /// Its name in a language.
    pub fn name_in(&self, tongue: Tongue) -> &str {
        match tongue {
            Tongue::English => &self.name,
            Tongue::German => self.german.iter().next().unwrap_or(&self.name),
        }
    }

    /// Other usual names in a language.
    pub fn also_in(&self, tongue: Tongue) -> impl Iterator<Item = &str> {
        let (names, shown) = match tongue {
            Tongue::German if !self.german.is_empty() => (&self.german, 1),
            Tongue::English | Tongue::German => (&self.also, 0),
        };
        names.iter().skip(shown)
    }

    /// Which half of the body it loads first.
    pub fn region(&self) -> Region {
        self.movement.region()
    }

    /// Whether several joints do the work.
    pub fn is_compound(&self) -> bool {
        self.movement.is_compound()
    }

    /// Whether a bar could come down on the lifter, so that a missed rep needs pins or a spotter: not
    /// what is held in the hands, which is let go to the side, and not the quick lifts, which are
    /// dropped and never spotted (NSCA Essentials of Strength Training and Conditioning, 4th ed. 2016,
    /// ch. 15, from memory).
    pub fn bar_over(&self) -> bool {
        let in_hand = [DUMBBELL, KETTLEBELL].contains(&self.implement.as_ref());
        self.over_body && !in_hand && self.movement != Movement::QuickLift
    }

    /// Whether it is a press from a bench under a bar, where collars keep a lone lifter from tipping
    /// the plates off.
    pub fn is_bench_press(&self) -> bool {
        let on_bench = ["bench", "incline-bench"].iter().any(|bench| self.needs.contains(bench));
        self.bar_over() && on_bench && self.movement == Movement::HorizontalPush
    }

    /// Whether a bar goes back to its rack after a set. Without a rack, or from the floor, nothing is
    /// racked, and under a fixed bar the body's own weight is lifted.
    pub fn is_racked(&self) -> bool {
        self.needs.contains("rack") && self.counting == Counting::Total && !self.from_floor
    }

    /// Whether it trains the muscle, directly or not.
    pub fn trains(&self, muscle: Muscle) -> bool {
        self.direct.contains(&muscle) || self.indirect.contains(&muscle)
    }
}

/// A list of words: fixed ones from the built-in table, or a plan's own.
#[derive(Clone)]
pub enum Names {
    /// From the built-in table.
    Fixed(&'static [&'static str]),
    /// A plan's own.
    Own(Vec<String>),
}

impl Names {
    /// None.
    pub const NONE: Self = Self::Fixed(&[]);

    /// Each in turn.
    pub fn iter(&self) -> impl Iterator<Item = &str> {
        let (fixed, own): (&[&str], &[String]) = match self {
            Self::Fixed(fixed) => (fixed, &[]),
            Self::Own(own) => (&[], own),
        };
        fixed.iter().copied().chain(own.iter().map(String::as_str))
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.iter().next().is_none()
    }

    /// Whether the word is among them.
    pub fn contains(&self, word: &str) -> bool {
        self.iter().any(|name| name == word)
    }
}

impl Default for Names {
    fn default() -> Self {
        Self::NONE
    }
}

impl PartialEq for Names {
    fn eq(&self, other: &Self) -> bool {
        self.iter().eq(other.iter())
    }
}

impl Eq for Names {}

impl std::fmt::Debug for Names {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_list().entries(self.iter()).finish()
    }
}

impl Serialize for Names {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.iter())
    }
}

impl<'de> Deserialize<'de> for Names {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Vec::deserialize(deserializer).map(Self::Own)
    }
}
