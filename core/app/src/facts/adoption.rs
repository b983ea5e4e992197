//! What adopting a plan does, before it is adopted.

use barwright_domain::desk::{self, Adoption, Shared};
use barwright_domain::plan::Plan;

use super::{Held, catalogue_of};

/// The plan that is on, where this is that one mended: it has its name.
pub(crate) fn mended<'a>(held: &'a Held, plan: &Plan, as_new: bool) -> Option<&'a Plan> {
    held.plan.as_deref().filter(|on| on.name == plan.name && !as_new)
}

/// What it does to rows and tracks.
pub(crate) fn adopted(held: &Held, plan: &Plan, mended: Option<&Plan>, shared: Shared) -> Adoption {
    let catalogue = catalogue_of(Some(plan), &held.known);
    desk::adoption(plan, mended, &held.desk, &catalogue, shared)
}
