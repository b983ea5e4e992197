//! Intents that most tests tap.

use barwright_app::contract::{HowEnded, Intent};

/// Begins the session that is on.
#[must_use]
pub fn begin() -> Intent {
    Intent::Begin { session: None, minutes: None, sure: false }
}

/// Begins a session by its row, "2.1".
#[must_use]
pub fn begin_row(row: &str) -> Intent {
    Intent::Begin { session: Some(row.into()), minutes: None, sure: false }
}

/// Records the part that is called: so many repetitions, or as called; half repetitions left, or no
/// word of them.
#[must_use]
pub fn done(amount: Option<u32>, left_halves: Option<u8>, ended: HowEnded) -> Intent {
    Intent::Record { part: None, amount, left_halves, ended, helped: 0, last: false }
}

/// Records the part that is called as it was called.
#[must_use]
pub fn as_called() -> Intent {
    done(None, None, HowEnded::AsCalled)
}

/// Writes into a field, without the yes to what is asked.
#[must_use]
pub fn write(field: &str, text: &str) -> Intent {
    Intent::Write { field: field.into(), text: text.into(), sure: false }
}
