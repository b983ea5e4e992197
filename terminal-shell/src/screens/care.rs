//! The general cautions.

use barwright_app::contract::CareScreen;

use super::sheet::Sheet;

pub(super) fn sheet(care: &CareScreen) -> Sheet<'_> {
    let mut sheet = Sheet::new(&care.title, &care.subtitle).keys(&care.keys);
    sheet.rows("", &care.rows);
    sheet
}
