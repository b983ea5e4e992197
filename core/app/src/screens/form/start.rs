//! How to begin: each way says what it does.

use super::super::key::{does, shows};
use super::super::weeks;
use super::{form_row, form_screen};
use crate::contract::{FormOf, FormRow, FormScreen, Intent, Key, Look};
use crate::facts::Held;
use crate::phrase::Words;

/// The look at it.
pub(in crate::screens) fn look() -> Look {
    Look::Form { of: FormOf::Start, at: String::new(), text: String::new() }
}

/// The key that goes to the demo, or back from it.
pub(in crate::screens) fn demo(on: bool, words: Words) -> Key {
    let id = if on { "demo" } else { "leave-demo" };
    does(id, words.start().turn(on), Intent::Demo { on })
}

/// The ways to begin.
pub(in crate::screens) fn screen(held: &Held, words: Words) -> FormScreen {
    let say = words.start();
    let today = Look::Today { session: None, minutes: None };
    let row = |id: &str, (text, detail): (&str, &str), keys: Vec<Key>| -> FormRow {
        form_row(id, 1, text).detail(detail).keys(keys)
    };
    let gym = shows("gym", say.to_gym(), Look::Equipment);
    let rows = vec![
        row("demo", say.demo(), vec![demo(!held.demo, words)]),
        row("new-plan", say.new_plan(), weeks::making(held, words)),
        row("plan-file", say.plan_file(), Vec::new()),
        row("records", words.records().from_file(), Vec::new()),
        row("gym", say.gym(), vec![gym]),
    ];
    let (title, subtitle) = (say.title(), say.subtitle());
    let keys = vec![shows("leave", words.by_hand().back(), today)];
    FormScreen { plan_file: true, ..form_screen(title, subtitle, rows, keys, words) }
}
