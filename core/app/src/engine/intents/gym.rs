//! Gyms, and which loads are liked in them.

use barwright_domain::desk::{DeskEvent, MOST_GYMS};
use barwright_domain::equipment::{Equipment, Liked};
use barwright_domain::plan::SetUp;
use barwright_domain::quantity::Mass;
use barwright_domain::session::Refusal;

use super::{Appends, Deciding};
use crate::contract::Edit;
use crate::facts::LikedOf;
use crate::fault::{Fault, Refused};

impl Deciding<'_> {
    /// Which loads are liked: "gym:Boathouse/step".
    pub(super) fn like(&self, place: &str, edit: &Edit) -> Result<Appends, Fault> {
        let (of, what) = place.rsplit_once('/').ok_or(Refused::NotHere)?;
        let (of, Edit::Put { text }) = (LikedOf::named(of).ok_or(Refused::NotHere)?, edit) else {
            return Err(Refused::NotHere.into());
        };
        let mass = if text.is_empty() { None } else { Some(self.mass(text)?) };
        if mass.is_some_and(|mass| mass <= Mass::ZERO) {
            return Err(self.refused(Refusal::OutOfRange).into());
        }
        let stands = of.stands(self.held);
        let liked = match what {
            "step" => Liked { step: mass, ..stands },
            "smallest" => Liked { smallest: mass, ..stands },
            _ => return Err(Refused::NotHere.into()),
        };
        let (lift, gym) = match of {
            LikedOf::Gym(name) => (None, Some(name)),
            LikedOf::Lift(slug) => (Some(slug), None),
        };
        Ok(Appends::Desk(vec![DeskEvent::LoadsLiked { lift, gym, liked }]))
    }

    /// A line of what is set up as it is kept: by the key that a plan file has for it.
    pub(super) fn kept(&self, line: &str) -> String {
        let words = self.held.locale.words().words();
        let same = |key: &&str| {
            let word = line.split(' ').next().unwrap_or_default();
            words.part_set_up(key).is_some_and(|said| said.to_lowercase() == word.to_lowercase())
        };
        match (SetUp::KEYS.into_iter().find(same), line.split_once(' ')) {
            (Some(key), Some((_, how))) => format!("{key} {how}"),
            _ => line.to_owned(),
        }
    }

    pub(super) fn add_gym(&self, text: String) -> Result<Appends, Fault> {
        let equipment = Equipment::read(&text).map_err(|faults| Refused::Faults(faults.len()))?;
        if self.held.desk.gyms.len() >= MOST_GYMS
            && self.held.desk.gyms.iter().all(|gym| gym.name != equipment.name)
        {
            return Err(self.refused(Refusal::TooMany).into());
        }
        Ok(Appends::Desk(vec![DeskEvent::GymKept { equipment, text }]))
    }
}
