//! A plan played through by invented lifters.

use barwright_domain::catalogue::Catalogue;
use barwright_domain::equipment::builtin_in;
use barwright_domain::plan::Plan;
use barwright_domain::quantity::MassUnit;
use barwright_rehearsal::{Cast, rehearse};

use crate::clock::micros;
use crate::lifter::PLAN;
use crate::measure::{Measure, Outcome};

/// Lifters of one run.
const LIFTERS: u32 = 200;

/// How fast a plan is rehearsed.
pub(crate) const SPEED: Measure = Measure {
    name: "rehearsal",
    unit: "weeks/s",
    against: "lifters times weeks of the bench's plan, rehearsed in a second on all cores",
    bar: None,
    run: || {
        let file = Plan::read(PLAN, &Catalogue::builtin()).expect("the bench's plan is in order");
        let gym = builtin_in(MassUnit::Kilogram);
        let cast = Cast { lifters: LIFTERS, seed: 1 };
        let run = || micros(|| rehearse(&file.plan, &gym, cast, &|| {}));
        let best = (0..3).map(|_| run()).fold(f64::INFINITY, f64::min);
        let weeks = f64::from(LIFTERS) * file.plan.weeks.len() as f64;
        Outcome { value: weeks / best * 1e6 }
    },
};
