//! The muscles that sets are counted for.

use serde::{Deserialize, Serialize};

/// A muscle or a group that works as one, by its textbook name.
///
/// Fine enough to see what a week leaves out, coarse enough that two coaches agree on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Muscle {
    /// Pectoralis major and minor.
    Chest,
    /// Deltoid, anterior part.
    FrontDeltoid,
    /// Deltoid, lateral part.
    SideDeltoid,
    /// Deltoid, posterior part.
    RearDeltoid,
    /// Infraspinatus, teres minor, subscapularis, supraspinatus.
    RotatorCuff,
    /// Serratus anterior.
    Serratus,
    /// Latissimus dorsi with teres major.
    Lats,
    /// Rhomboids with middle and lower trapezius.
    UpperBack,
    /// Upper trapezius.
    UpperTrapezius,
    /// Biceps brachii and brachialis.
    Biceps,
    /// Triceps brachii.
    Triceps,
    /// Flexors and extensors of wrist and fingers, brachioradialis: the grip.
    Forearms,
    /// Rectus abdominis with the deep abdominals.
    Abdominals,
    /// Internal and external obliques.
    Obliques,
    /// Erector spinae.
    SpinalErectors,
    /// Gluteus maximus.
    Glutes,
    /// Gluteus medius and minimus, tensor fasciae latae.
    HipAbductors,
    /// Adductor group.
    Adductors,
    /// Iliopsoas with rectus femoris.
    HipFlexors,
    /// Quadriceps femoris.
    Quadriceps,
    /// Biceps femoris, semitendinosus, semimembranosus.
    Hamstrings,
    /// Gastrocnemius and soleus.
    Calves,
    /// Tibialis anterior.
    Shins,
    /// Neck flexors and extensors.
    Neck,
}

impl Muscle {
    /// All of them, from the shoulders down.
    pub const ALL: [Self; 24] = [
        Self::Neck,
        Self::UpperTrapezius,
        Self::FrontDeltoid,
        Self::SideDeltoid,
        Self::RearDeltoid,
        Self::RotatorCuff,
        Self::Chest,
        Self::Serratus,
        Self::UpperBack,
        Self::Lats,
        Self::Biceps,
        Self::Triceps,
        Self::Forearms,
        Self::Abdominals,
        Self::Obliques,
        Self::SpinalErectors,
        Self::Glutes,
        Self::HipAbductors,
        Self::HipFlexors,
        Self::Adductors,
        Self::Quadriceps,
        Self::Hamstrings,
        Self::Calves,
        Self::Shins,
    ];

    /// As a plan file writes it: `rear-deltoid`.
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Chest => "chest",
            Self::FrontDeltoid => "front-deltoid",
            Self::SideDeltoid => "side-deltoid",
            Self::RearDeltoid => "rear-deltoid",
            Self::RotatorCuff => "rotator-cuff",
            Self::Serratus => "serratus",
            Self::Lats => "lats",
            Self::UpperBack => "upper-back",
            Self::UpperTrapezius => "upper-trapezius",
            Self::Biceps => "biceps",
            Self::Triceps => "triceps",
            Self::Forearms => "forearms",
            Self::Abdominals => "abdominals",
            Self::Obliques => "obliques",
            Self::SpinalErectors => "spinal-erectors",
            Self::Glutes => "glutes",
            Self::HipAbductors => "hip-abductors",
            Self::Adductors => "adductors",
            Self::HipFlexors => "hip-flexors",
            Self::Quadriceps => "quadriceps",
            Self::Hamstrings => "hamstrings",
            Self::Calves => "calves",
            Self::Shins => "shins",
            Self::Neck => "neck",
        }
    }

    /// The muscle of that slug; case, spaces and underscores do not matter.
    pub fn read(text: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|muscle| super::find::same(muscle.slug(), text))
    }

    /// The muscle whose slug is most like a misspelt one, when any is near.
    pub fn nearest(text: &str) -> Option<Self> {
        super::find::most_alike(text, Self::ALL.into_iter().map(|muscle| (muscle.slug(), muscle)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_its_own_slugs_and_serialises_by_them() {
        for muscle in Muscle::ALL {
            assert_eq!(Muscle::read(muscle.slug()), Some(muscle));
            assert_eq!(serde_json::to_value(muscle).unwrap(), muscle.slug());
        }
        assert_eq!(Muscle::read("Rear deltoid"), Some(Muscle::RearDeltoid));
        assert_eq!(Muscle::nearest("hamstring"), Some(Muscle::Hamstrings));
        assert_eq!(Muscle::nearest("engine"), None);
    }
}
