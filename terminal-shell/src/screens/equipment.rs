//! What this gym has.

use barwright_app::contract::EquipmentScreen;

use super::sheet::Sheet;
use crate::words::Own;

pub(super) fn sheet(equipment: &EquipmentScreen, own: Own) -> Sheet<'_> {
    let mut sheet = Sheet::new(&equipment.title, &equipment.subtitle)
        .keys(&equipment.gyms)
        .keys(&equipment.keys)
        .opens(own.add_gym);
    sheet.rows("", &equipment.rows);
    sheet
}
