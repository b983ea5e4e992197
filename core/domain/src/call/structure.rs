//! Sets made of parts.

use serde::{Deserialize, Serialize};

use super::how_many::HowMany;
use super::load::LoadCall;
use crate::quantity::{Percent, RepRange, Reps, Seconds};

/// A part in a named range of movement.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct RangePart {
    /// The range: "bottom half".
    pub name: String,
    /// Repetitions in it.
    pub reps: RepRange,
}

/// A part that goes on in an easier variation.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct ContinuedPart {
    /// The variation, by its slug.
    pub exercise: String,
    /// Its load.
    pub load: LoadCall,
    /// How many.
    pub how_many: HowMany,
    /// Pause before it; none goes straight on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pause: Option<Seconds>,
}

/// What a set is made of. The first part is the set's own how-many but for a cluster, whose blocks
/// say it.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Structure {
    /// One stretch of work.
    #[default]
    Straight,
    /// Blocks at one load with a short pause between (usually 15–45 s), not to failure.
    Cluster {
        /// Repetitions of each block.
        blocks: Vec<Reps>,
        /// Pause between.
        pause: Seconds,
    },
    /// An opening part near failure, then short parts after a pause until the total, the most
    /// parts, or a miss.
    RestPause {
        /// Pause before each short part.
        pause: Seconds,
        /// Repetitions asked of each short part.
        each: Reps,
        /// Ends when so many are done in all.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        total: Option<Reps>,
        /// The most short parts.
        most: u8,
    },
    /// Near failure, then so much off and on again, once or more.
    Drop {
        /// The share taken off before each further part.
        off: Vec<Percent>,
    },
    /// Parts in named ranges of movement, no rest between. Repetitions stand with the ranges; the
    /// set's own how-many is the first's.
    Ranges {
        /// The ranges in order.
        parts: Vec<RangePart>,
    },
    /// Goes on in easier variations.
    Continued {
        /// The variations in order.
        parts: Vec<ContinuedPart>,
    },
}

impl Structure {
    /// The pauses within it together, all its parts done.
    pub fn pauses(&self) -> Seconds {
        let times = |count: usize, pause: &Seconds| {
            pause.count().saturating_mul(u32::try_from(count).unwrap_or(u32::MAX))
        };
        Seconds::new(match self {
            Self::Straight | Self::Drop { .. } | Self::Ranges { .. } => 0,
            Self::Cluster { blocks, pause } => times(blocks.len().saturating_sub(1), pause),
            Self::RestPause { pause, most, .. } => times(usize::from(*most), pause),
            Self::Continued { parts } => parts
                .iter()
                .filter_map(|part| part.pause)
                .fold(0, |sum, pause| sum.saturating_add(pause.count())),
        })
    }

    /// How many the whole set or its first part asks for, where the structure itself says it: a
    /// cluster's blocks together, the first of ranges.
    pub fn opening(&self) -> Option<HowMany> {
        match self {
            Self::Cluster { blocks, .. } => {
                let sum = blocks.iter().fold(0, |sum: Reps, block| sum.saturating_add(*block));
                Some(HowMany::Reps(RepRange::just(sum)))
            }
            Self::Ranges { parts } => parts.first().map(|part| HowMany::Reps(part.reps)),
            Self::Straight
            | Self::RestPause { .. }
            | Self::Drop { .. }
            | Self::Continued { .. } => None,
        }
    }

    /// The most parts it can have, the first included; a rest-pause or a miss may end it sooner.
    pub fn most_parts(&self) -> usize {
        match self {
            Self::Straight => 1,
            Self::Cluster { blocks, .. } => blocks.len().max(1),
            Self::RestPause { most, .. } => usize::from(*most) + 1,
            Self::Drop { off } => off.len() + 1,
            Self::Ranges { parts } => parts.len().max(1),
            Self::Continued { parts } => parts.len() + 1,
        }
    }
}
