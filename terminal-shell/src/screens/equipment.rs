//! What this gym has.

use barwright_app::contract::EquipmentScreen;

use super::sheet::Sheet;

pub(super) fn sheet(equipment: &EquipmentScreen) -> Sheet<'_> {
    let mut sheet = Sheet::new(&equipment.title, &equipment.subtitle)
        .keys(&equipment.gyms)
        .keys(&equipment.keys)
        .opens("Add a gym from a file");
    sheet.rows("", &equipment.rows);
    sheet
}
