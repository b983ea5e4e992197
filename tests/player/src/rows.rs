//! Rows of what is shown, by their texts.

use barwright_app::contract::{FormRow, Key, Row, Screen};

use crate::keys::by_id;
use crate::{Player, intents};

impl Player {
    /// A key of a row, by the row's text and the key's id.
    ///
    /// # Panics
    /// With the rows that there are.
    pub fn tap_row(&mut self, text: &str, id: &str) {
        let rows: Vec<(String, Vec<Key>)> = match &self.shown.screen {
            Screen::Form { form } => {
                form.rows.iter().map(|row| (row.text.clone(), row.keys.clone())).collect()
            }
            Screen::Today { today } => texts(&today.rows),
            Screen::Weeks { weeks } => {
                weeks.weeks.iter().flat_map(|week| texts(&week.rows)).collect()
            }
            Screen::Floor { .. } => texts(&self.panel().rows),
            other => panic!("no rows are known of {other:#?}"),
        };
        let keys = rows.iter().find(|(found, _)| found == text);
        let keys = &keys.unwrap_or_else(|| panic!("no row {text} among {rows:#?}")).1;
        self.press(&by_id(keys, id));
    }

    /// A row of the form that is shown.
    ///
    /// # Panics
    /// With the form.
    #[must_use]
    pub fn row(&self, text: &str) -> FormRow {
        let form = self.form();
        let row = form.rows.iter().find(|row| row.text == text);
        row.cloned().unwrap_or_else(|| panic!("no row {text} in {form:#?}"))
    }

    /// Steps a form's row up.
    pub fn up(&mut self, row: &str) {
        let row = self.row(row);
        let key = row.up.clone().unwrap_or_else(|| panic!("it does not step: {row:#?}"));
        self.press(&key);
    }

    /// Steps a form's row down.
    pub fn down(&mut self, row: &str) {
        let row = self.row(row);
        let key = row.down.clone().unwrap_or_else(|| panic!("it does not step: {row:#?}"));
        self.press(&key);
    }

    /// Writes into a form's row.
    pub fn write(&mut self, row: &str, text: &str) {
        let row = self.row(row);
        let field = row.field.clone().unwrap_or_else(|| panic!("it is not written: {row:#?}"));
        self.type_in(&field.id, text);
    }

    /// Writes into a field by its id.
    pub fn type_in(&mut self, field: &str, text: &str) {
        self.dispatch(intents::write(field, text));
    }

    /// Exercises of the sheet that is on.
    pub fn exercises(&mut self) -> Vec<String> {
        let rows = self.today().rows.into_iter();
        rows.filter(|row| row.id.starts_with("entry-")).map(|row| row.text).collect()
    }
}

fn texts(rows: &[Row]) -> Vec<(String, Vec<Key>)> {
    rows.iter().map(|row| (row.text.clone(), row.keys.clone())).collect()
}
