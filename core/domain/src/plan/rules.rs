//! What changes from one time to the next, as a plan names it. The rules themselves are applied
//! elsewhere.

use serde::{Deserialize, Serialize};

use crate::quantity::{Mass, Percent, Reserve};

/// What a lighter week takes off.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Cut {
    /// Share of the sets.
    pub sets_off: Percent,
    /// Share of the load.
    pub load_off: Percent,
    /// More left in reserve.
    pub more_left: u8,
}

impl Cut {
    /// A deload where the plan gives no numbers: 40 % of the sets, 10 % of the load, two more in
    /// reserve (common practice: sets −40 to −50 %, load 0 to −10 %).
    pub const DELOAD: Self =
        Self { sets_off: Percent::whole(40), load_off: Percent::whole(10), more_left: 2 };
    /// A reduced first week where the plan gives no numbers: half the sets, 10 % of the load, two
    /// more in reserve (common practice).
    pub const EASE_IN: Self =
        Self { sets_off: Percent::whole(50), load_off: Percent::whole(10), more_left: 2 };

    /// What is left of a number of sets or repetitions: to the nearest, a half up, and never none
    /// of some.
    pub fn count(self, count: u16) -> u16 {
        let keep = i64::from(10_000 - self.sets_off.hundredths().clamp(0, 10_000));
        let left = (i64::from(count) * keep + 5_000) / 10_000;
        u16::try_from(left).unwrap_or(count).max(count.min(1))
    }

    /// As [`Cut::count`], of a small number.
    pub fn count_u8(self, count: u8) -> u8 {
        u8::try_from(self.count(count.into())).unwrap_or(count)
    }

    /// What is left of a share.
    pub fn share(self, share: Percent) -> Percent {
        let keep = i64::from(10_000 - self.load_off.hundredths());
        let left = (i64::from(share.hundredths()) * keep + 5_000).div_euclid(10_000);
        Percent::from_hundredths(i32::try_from(left).unwrap_or(share.hundredths()))
    }

    /// What is left of a load.
    pub fn load(self, load: Mass) -> Mass {
        self.share(Percent::WHOLE).of(load).unwrap_or(load)
    }

    /// A reserve with the more left added, 20 at most.
    pub fn left(self, left: Reserve) -> Reserve {
        let halves = left.halves().saturating_add(self.more_left.saturating_mul(2));
        Reserve::from_halves(halves).unwrap_or(left)
    }
}

/// A rule for next time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Rule {
    /// Which rule.
    pub kind: RuleKind,
    /// By effort on a row in percent: up as well as down.
    #[serde(default)]
    pub up: bool,
    /// The step it takes; where none is given, 2.5 kg or 5 lb on plates, else the smallest that the
    /// equipment makes (by effort: 2 % for each half point).
    pub step: Option<Step>,
}

/// Rules a plan can name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RuleKind {
    /// The plan's own numbers by week.
    AsPlanned,
    /// More repetitions, seconds or metres to the end of the range, then more load.
    DoubleProgression,
    /// More load after two or more repetitions over the goal in the last set of two sessions
    /// running (NSCA Essentials, ch. 17).
    TwoForTwo,
    /// More load after every session in which all called sets were made (common practice).
    AddWhenMade,
    /// The load follows the effort called (Helms et al. 2018, Front Physiol 9:247).
    ByEffort,
    /// Less help.
    LessAssistance,
    /// More weight on the body.
    MoreAddedLoad,
}

/// The step of a rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Step {
    /// So much.
    Mass(Mass),
    /// Such a share of the load.
    Share(Percent),
}

/// What follows a miss.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Miss {
    /// The same again.
    Repeat,
    /// So much less.
    Less(Percent),
    /// Hold, and ask the coach.
    Hold,
}

/// Repeat, then 5 % less, then hold and ask (common practice).
pub const USUAL_MISSES: [Miss; 3] = [Miss::Repeat, Miss::Less(Percent::whole(5)), Miss::Hold];

/// What follows days without training.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct LayOff {
    /// More days than this.
    pub over_days: u16,
    /// Share of the load taken off.
    pub load_off: Percent,
    /// Share of the sets taken off.
    pub sets_off: Percent,
    /// Start again with the ease-in.
    pub ease_in: bool,
}

/// To 10 days nothing, to 3 weeks −10 % and half the sets, to 8 weeks −20 %, longer the ease-in
/// (common practice).
pub const USUAL_LAY_OFF: [LayOff; 3] = [
    LayOff {
        over_days: 10,
        load_off: Percent::whole(10),
        sets_off: Percent::whole(50),
        ease_in: false,
    },
    LayOff {
        over_days: 21,
        load_off: Percent::whole(20),
        sets_off: Percent::whole(0),
        ease_in: false,
    },
    LayOff {
        over_days: 56,
        load_off: Percent::whole(0),
        sets_off: Percent::whole(0),
        ease_in: true,
    },
];

/// What may raise a reference max.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RaiseMax {
    /// Nothing but an entry by hand.
    Never,
    /// A test.
    #[default]
    Tests,
    /// A test, or an estimate from sets of ten repetitions or fewer.
    Estimates,
}
