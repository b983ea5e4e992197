//! What kind of movement an exercise is.

use serde::{Deserialize, Serialize};

/// The movement, by the textbook's patterns and, for one joint alone, by the joint's action.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Movement {
    /// Knees and hips bend together, both feet down.
    Squat,
    /// The hips bend, the knees little.
    Hinge,
    /// A split stance or one leg.
    Lunge,
    /// Hips extend against a load across them, the back supported.
    Bridge,
    /// Pressing away from the chest.
    HorizontalPush,
    /// Pulling toward the trunk.
    HorizontalPull,
    /// Pressing overhead, or dipping.
    VerticalPush,
    /// Pulling down, or up to a bar.
    VerticalPull,
    /// Cleans, snatches, jerks, swings.
    QuickLift,
    /// Walking with a load.
    Carry,
    /// Pushing or pulling a sled.
    Sled,
    /// Jumps.
    Jump,
    /// Throws.
    Throw,
    /// The trunk resists being extended.
    TrunkBrace,
    /// The trunk bends.
    TrunkFlexion,
    /// The trunk straightens.
    TrunkExtension,
    /// The trunk resists bending sideways, or bends.
    TrunkSide,
    /// The trunk turns, or resists being turned.
    TrunkRotation,
    /// Knee alone, straightening.
    KneeExtension,
    /// Knee alone, bending.
    KneeFlexion,
    /// Hip alone, back.
    HipExtension,
    /// Hip alone, up.
    HipFlexion,
    /// Hip alone, outward.
    HipAbduction,
    /// Hip alone, inward.
    HipAdduction,
    /// Ankle, onto the toes.
    CalfRaise,
    /// Ankle, toes up.
    ToeRaise,
    /// Elbow alone, bending.
    ElbowFlexion,
    /// Elbow alone, straightening.
    ElbowExtension,
    /// Wrist and grip.
    Wrist,
    /// Arm out to the side.
    ShoulderAbduction,
    /// Arm up in front.
    ShoulderFlexion,
    /// Straight arm down.
    ShoulderExtension,
    /// Arms together in front.
    ChestFly,
    /// Arms apart behind.
    RearFly,
    /// Upper arm turning.
    ShoulderRotation,
    /// Shoulders up.
    Shrug,
    /// Head and neck.
    Neck,
}

/// The joints that a movement works most, for pain that is of a joint.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Joint {
    /// Shoulder, and with it the elbow where it presses or pulls.
    Shoulder,
    /// Elbow and wrist.
    Elbow,
    /// Hip and lower back.
    Hip,
    /// Knee and ankle.
    Knee,
    /// Spine.
    Spine,
}

impl Joint {
    /// As records keep it: `joint shoulder`. No exercise has a space in its key.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Shoulder => "joint shoulder",
            Self::Elbow => "joint elbow",
            Self::Hip => "joint hip",
            Self::Knee => "joint knee",
            Self::Spine => "joint spine",
        }
    }
}

/// Upper body, lower body, or the trunk between.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Region {
    /// Arms, shoulders, chest, upper back.
    Upper,
    /// Hips and legs; also what is lifted from the floor, carried or pushed.
    Lower,
    /// Trunk.
    Trunk,
}

impl Movement {
    /// All of them.
    pub const ALL: [Self; 37] = [
        Self::Squat,
        Self::Hinge,
        Self::Lunge,
        Self::Bridge,
        Self::HorizontalPush,
        Self::HorizontalPull,
        Self::VerticalPush,
        Self::VerticalPull,
        Self::QuickLift,
        Self::Carry,
        Self::Sled,
        Self::Jump,
        Self::Throw,
        Self::TrunkBrace,
        Self::TrunkFlexion,
        Self::TrunkExtension,
        Self::TrunkSide,
        Self::TrunkRotation,
        Self::KneeExtension,
        Self::KneeFlexion,
        Self::HipExtension,
        Self::HipFlexion,
        Self::HipAbduction,
        Self::HipAdduction,
        Self::CalfRaise,
        Self::ToeRaise,
        Self::ElbowFlexion,
        Self::ElbowExtension,
        Self::Wrist,
        Self::ShoulderAbduction,
        Self::ShoulderFlexion,
        Self::ShoulderExtension,
        Self::ChestFly,
        Self::RearFly,
        Self::ShoulderRotation,
        Self::Shrug,
        Self::Neck,
    ];

    /// The joint it works most (common practice).
    pub const fn joint(self) -> Joint {
        match self {
            Self::Squat
            | Self::Lunge
            | Self::Jump
            | Self::KneeExtension
            | Self::KneeFlexion
            | Self::CalfRaise
            | Self::ToeRaise
            | Self::Sled => Joint::Knee,
            Self::Hinge
            | Self::Bridge
            | Self::QuickLift
            | Self::Carry
            | Self::HipExtension
            | Self::HipFlexion
            | Self::HipAbduction
            | Self::HipAdduction => Joint::Hip,
            Self::HorizontalPush
            | Self::HorizontalPull
            | Self::VerticalPush
            | Self::VerticalPull
            | Self::Throw
            | Self::ShoulderAbduction
            | Self::ShoulderFlexion
            | Self::ShoulderExtension
            | Self::ChestFly
            | Self::RearFly
            | Self::ShoulderRotation
            | Self::Shrug => Joint::Shoulder,
            Self::ElbowFlexion | Self::ElbowExtension | Self::Wrist => Joint::Elbow,
            Self::TrunkBrace
            | Self::TrunkFlexion
            | Self::TrunkExtension
            | Self::TrunkSide
            | Self::TrunkRotation
            | Self::Neck => Joint::Spine,
        }
    }

    /// As a plan file writes it: `horizontal-push`.
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Squat => "squat",
            Self::Hinge => "hinge",
            Self::Lunge => "lunge",
            Self::Bridge => "bridge",
            Self::HorizontalPush => "horizontal-push",
            Self::HorizontalPull => "horizontal-pull",
            Self::VerticalPush => "vertical-push",
            Self::VerticalPull => "vertical-pull",
            Self::QuickLift => "quick-lift",
            Self::Carry => "carry",
            Self::Sled => "sled",
            Self::Jump => "jump",
            Self::Throw => "throw",
            Self::TrunkBrace => "trunk-brace",
            Self::TrunkFlexion => "trunk-flexion",
            Self::TrunkExtension => "trunk-extension",
            Self::TrunkSide => "trunk-side",
            Self::TrunkRotation => "trunk-rotation",
            Self::KneeExtension => "knee-extension",
            Self::KneeFlexion => "knee-flexion",
            Self::HipExtension => "hip-extension",
            Self::HipFlexion => "hip-flexion",
            Self::HipAbduction => "hip-abduction",
            Self::HipAdduction => "hip-adduction",
            Self::CalfRaise => "calf-raise",
            Self::ToeRaise => "toe-raise",
            Self::ElbowFlexion => "elbow-flexion",
            Self::ElbowExtension => "elbow-extension",
            Self::Wrist => "wrist",
            Self::ShoulderAbduction => "shoulder-abduction",
            Self::ShoulderFlexion => "shoulder-flexion",
            Self::ShoulderExtension => "shoulder-extension",
            Self::ChestFly => "chest-fly",
            Self::RearFly => "rear-fly",
            Self::ShoulderRotation => "shoulder-rotation",
            Self::Shrug => "shrug",
            Self::Neck => "neck",
        }
    }

    /// The movement of that slug; case, spaces and underscores do not matter.
    pub fn read(text: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|movement| super::find::same(movement.slug(), text))
    }

    /// The movement whose slug is most like a misspelt one, when any is near.
    pub fn nearest(text: &str) -> Option<Self> {
        super::find::most_alike(text, Self::ALL.into_iter().map(|m| (m.slug(), m)))
    }

    /// Which half of the body it loads first.
    pub const fn region(self) -> Region {
        match self {
            Self::Squat
            | Self::Hinge
            | Self::Lunge
            | Self::Bridge
            | Self::QuickLift
            | Self::Carry
            | Self::Sled
            | Self::Jump
            | Self::KneeExtension
            | Self::KneeFlexion
            | Self::HipExtension
            | Self::HipFlexion
            | Self::HipAbduction
            | Self::HipAdduction
            | Self::CalfRaise
            | Self::ToeRaise => Region::Lower,
            Self::HorizontalPush
            | Self::HorizontalPull
            | Self::VerticalPush
            | Self::VerticalPull
            | Self::Throw
            | Self::ElbowFlexion
            | Self::ElbowExtension
            | Self::Wrist
            | Self::ShoulderAbduction
            | Self::ShoulderFlexion
            | Self::ShoulderExtension
            | Self::ChestFly
            | Self::RearFly
            | Self::ShoulderRotation
            | Self::Shrug
            | Self::Neck => Region::Upper,
            Self::TrunkBrace
            | Self::TrunkFlexion
            | Self::TrunkExtension
            | Self::TrunkSide
            | Self::TrunkRotation => Region::Trunk,
        }
    }

    /// Whether several joints do the work; the rest are isolation and trunk exercises.
    pub const fn is_compound(self) -> bool {
        matches!(
            self,
            Self::Squat
                | Self::Hinge
                | Self::Lunge
                | Self::Bridge
                | Self::HorizontalPush
                | Self::HorizontalPull
                | Self::VerticalPush
                | Self::VerticalPull
                | Self::QuickLift
                | Self::Carry
                | Self::Sled
                | Self::Jump
                | Self::Throw
        )
    }

    /// Whether its sets carry no effort call and count as no hard sets: jumps and throws.
    pub const fn is_speed_work(self) -> bool {
        matches!(self, Self::Jump | Self::Throw)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_its_own_slugs_and_serialises_by_them() {
        for movement in Movement::ALL {
            assert_eq!(Movement::read(movement.slug()), Some(movement));
            assert_eq!(serde_json::to_value(movement).unwrap(), movement.slug());
        }
    }
}
