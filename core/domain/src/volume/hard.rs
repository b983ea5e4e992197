//! Which sets are hard.

use serde::{Deserialize, Serialize};

use crate::call::EffortTarget;
use crate::quantity::Reserve;

/// A set is hard with so many repetitions left or fewer, where the plan says nothing: four. Common
/// practice.
pub const EASIEST_HARD: Reserve = match Reserve::from_halves(8) {
    Some(reserve) => reserve,
    None => Reserve::NONE,
};

/// What is known of how near failure a set was.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Closeness {
    /// The lifter called so many left.
    Called(Reserve),
    /// A repetition failed, or form went.
    Failed,
    /// Done as planned, effort not called; or not done yet.
    NotCalled {
        /// What was asked, if anything was.
        target: Option<EffortTarget>,
    },
    /// Ended by pain, an interruption or the equipment, and not called.
    CutShort,
}

/// Whether a work set is hard, where it is hard with `easiest` or fewer left.
///
/// A call decides. Without one, a set with a target is hard when all of the target is; a work set
/// without a target is taken to be hard, since a plan that names a load and a number means them to
/// be work. A set cut short says nothing, and does not count.
pub fn is_hard(closeness: Closeness, easiest: Reserve) -> bool {
    match closeness {
        Closeness::Called(left) => left <= easiest,
        Closeness::Failed | Closeness::NotCalled { target: None } => true,
        Closeness::NotCalled { target: Some(target) } => target.left.to <= easiest,
        Closeness::CutShort => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Numerals, Rpe};

    fn is_hard(closeness: Closeness) -> bool {
        super::is_hard(closeness, EASIEST_HARD)
    }

    fn left(text: &str) -> Reserve {
        Reserve::read(text, Numerals::Point).unwrap()
    }

    #[test]
    fn a_call_decides() {
        assert!(is_hard(Closeness::Called(left("4"))));
        assert!(!is_hard(Closeness::Called(left("4.5"))));
        assert!(is_hard(Closeness::Failed));
        assert!(!super::is_hard(Closeness::Called(left("4")), left("3")));
    }

    #[test]
    fn without_a_call_the_target_does() {
        let rpe = |from, to| {
            let read = |text| Rpe::read(text, Numerals::Point).unwrap();
            Closeness::NotCalled { target: Some(EffortTarget::rpe(read(from), read(to))) }
        };
        assert!(is_hard(rpe("6", "8")));
        assert!(!is_hard(rpe("5", "7")));
        assert!(is_hard(Closeness::NotCalled { target: None }));
        assert!(!is_hard(Closeness::CutShort));
    }
}
