//! Which loads a lifter likes: in whole steps, without the smallest plates.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::model::Equipment;
use crate::quantity::Mass;

/// Which of the loads that a gym makes a lifter likes called.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Liked {
    /// Plates smaller than this stay where they are.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub smallest: Option<Mass>,
    /// Loads are multiples of this, where one is made.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub step: Option<Mass>,
}

impl Liked {
    /// Whether every load is liked.
    pub const fn any(&self) -> bool {
        self.smallest.is_none() && self.step.is_none()
    }

    /// This, and where it says nothing, `other`.
    #[must_use]
    pub fn or(self, other: Self) -> Self {
        Self { smallest: self.smallest.or(other.smallest), step: self.step.or(other.step) }
    }

    /// A gym with the plates that are liked.
    pub fn of<'a>(&self, gym: &'a Equipment) -> Cow<'a, Equipment> {
        match self.smallest {
            Some(smallest) if gym.plates.iter().any(|plate| plate.mass < smallest) => {
                let mut liked = gym.clone();
                liked.plates.retain(|plate| plate.mass >= smallest);
                Cow::Owned(liked)
            }
            _ => Cow::Borrowed(gym),
        }
    }
}
