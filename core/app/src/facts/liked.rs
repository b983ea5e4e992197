//! What it is that loads are liked of, and the steps that can be chosen.

use barwright_domain::equipment::Liked;
use barwright_domain::quantity::{Mass, MassUnit};

use super::Held;

/// A gym, or a lift wherever.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum LikedOf {
    /// A gym, by its name.
    Gym(String),
    /// A lift, by its slug.
    Lift(String),
}

impl LikedOf {
    /// As a form names it: "gym:Boathouse", "lift:back-squat".
    pub(crate) fn name(&self) -> String {
        match self {
            Self::Gym(name) => format!("gym:{name}"),
            Self::Lift(slug) => format!("lift:{slug}"),
        }
    }

    pub(crate) fn named(name: &str) -> Option<Self> {
        let (kind, of) = name.split_once(':')?;
        match kind {
            "gym" => Some(Self::Gym(of.to_owned())),
            "lift" => Some(Self::Lift(of.to_owned())),
            _ => None,
        }
    }

    /// What is liked of it now.
    pub(crate) fn stands(&self, held: &Held) -> Liked {
        let found = match self {
            Self::Gym(name) => held.desk.liked_in.get(name),
            Self::Lift(slug) => held.desk.liked_of.get(slug),
        };
        found.copied().unwrap_or_default()
    }
}

/// The steps to choose from: any, then whole figures of the unit.
pub(crate) fn steps(unit: MassUnit) -> Vec<Option<Mass>> {
    let tenths: [i64; 4] = match unit {
        MassUnit::Kilogram => [10, 25, 50, 100],
        MassUnit::Pound => [25, 50, 100, 200],
    };
    let of = |tenths: i64| Mass::from_nanograms(unit.nanograms() / 10 * tenths);
    std::iter::once(None).chain(tenths.map(|tenths| Some(of(tenths)))).collect()
}

/// The smallest plates to choose from: any, then those of the gym, the smallest first.
pub(crate) fn plates(held: &Held) -> Vec<Option<Mass>> {
    let mut masses: Vec<Mass> = held.gym().plates.iter().map(|plate| plate.mass).collect();
    masses.sort_unstable();
    masses.dedup();
    std::iter::once(None).chain(masses.into_iter().skip(1).map(Some)).collect()
}
