//! What a gym that is made by hand begins from.

use barwright_domain::equipment::{self, Equipment};
use barwright_domain::quantity::MassUnit;

use super::Held;

/// What it begins from, as a place names it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum GymFrom {
    /// An empty room.
    Nothing(MassUnit),
    /// The usual gym of a unit, as it comes with the program.
    Usual(MassUnit),
    /// A copy of a gym.
    Copy(String),
    /// A gym, to be put right.
    Own(String),
}

impl GymFrom {
    /// The place.
    pub(crate) fn place(&self) -> String {
        match self {
            Self::Nothing(unit) => format!("nothing:{}", unit.symbol()),
            Self::Usual(unit) => format!("usual:{}", unit.symbol()),
            Self::Copy(name) => format!("copy:{name}"),
            Self::Own(name) => format!("own:{name}"),
        }
    }

    /// What a place names.
    pub(crate) fn named(place: &str) -> Option<Self> {
        let (what, of) = place.split_once(':')?;
        let unit = || [MassUnit::Kilogram, MassUnit::Pound].into_iter().find(|u| u.symbol() == of);
        match what {
            "nothing" => unit().map(Self::Nothing),
            "usual" => unit().map(Self::Usual),
            "copy" => Some(Self::Copy(of.to_owned())),
            "own" => Some(Self::Own(of.to_owned())),
            _ => None,
        }
    }
}

impl Held {
    /// The file of a gym: as it was written where it came with one.
    pub(crate) fn gym_file(&self, gym: &Equipment) -> String {
        if self.desk.gyms.iter().any(|own| own.name == gym.name) {
            let file = self.desk.gym_files.get(&gym.name);
            return file.cloned().unwrap_or_else(|| gym.write());
        }
        equipment::builtin_text(gym.unit).to_owned()
    }

    /// A name that no gym has: this one, or it with a number.
    pub(crate) fn free_gym_name(&self, name: &str) -> String {
        let built_in = equipment::builtin();
        let taken = |name: &str| self.desk.gyms.iter().chain(built_in).any(|gym| gym.name == name);
        if !taken(name) {
            return name.to_owned();
        }
        let numbered = (2..1_000).map(|nth| format!("{name} {nth}")).find(|name| !taken(name));
        numbered.unwrap_or_else(|| name.to_owned())
    }
}
