//! A plan file read: what it says, or what is wrong with it and where.

use barwright_app::contract::PlanScreen;

use super::sheet::{Item, Sheet};
use crate::words::Own;

pub(super) fn sheet(plan: &PlanScreen, own: Own) -> Sheet<'_> {
    let mut sheet = Sheet::new(&plan.title, &plan.subtitle).keys(&plan.keys).opens(own.read_plan);
    sheet.items.extend(plan.faults.iter().map(Item::Fault));
    sheet.rows("", &plan.rows);
    sheet
}
