//! A plan file read: what it says, or what is wrong with it and where.

use barwright_app::contract::PlanScreen;

use super::sheet::{Item, Sheet};

pub(super) fn sheet(plan: &PlanScreen) -> Sheet<'_> {
    let mut sheet =
        Sheet::new(&plan.title, &plan.subtitle).keys(&plan.keys).opens("Read a plan file");
    sheet.items.extend(plan.faults.iter().map(Item::Fault));
    sheet.rows("", &plan.rows);
    sheet
}
