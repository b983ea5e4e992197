//! Sets made of parts.

use barwright_domain::call;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::how_many::HowMany;
use super::load_call::LoadCall;
use super::quantity::{Percent, Range, Reps, Seconds};

/// A part in a named range of movement.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct RangePart {
    /// The range: "bottom half".
    pub name: String,
    /// Repetitions in it.
    pub reps: Range<Reps>,
}

mirror!(struct RangePart = call::RangePart { name, reps });

/// A part that goes on in an easier variation.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
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

mirror!(struct ContinuedPart = call::ContinuedPart { exercise, load, how_many, pause });

/// What a set is made of. The first part is the set's own how-many but for a cluster, whose blocks
/// say it.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Structure {
    /// One stretch of work.
    #[default]
    Straight,
    /// Blocks at one load with a short pause between (usually 15–45 s), not to failure.
    Cluster {
        /// Repetitions of each block.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
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
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        off: Vec<Percent>,
    },
    /// Parts in named ranges of movement, no rest between. Repetitions stand with the ranges; the
    /// set's own how-many is the first's.
    Ranges {
        /// The ranges in order.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        parts: Vec<RangePart>,
    },
    /// Goes on in easier variations.
    Continued {
        /// The variations in order.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        parts: Vec<ContinuedPart>,
    },
}

mirror!(enum Structure = call::Structure {
    Straight,
    Cluster { blocks, pause },
    RestPause { pause, each, total, most },
    Drop { off },
    Ranges { parts },
    Continued { parts },
});
