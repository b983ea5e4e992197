//! One module for each screen: from facts to a value that a shell lays out. Nothing here reads a
//! file, asks for the time or knows the engine; a screen follows from its arguments alone.

mod balance;
mod bar;
mod care;
mod chart;
mod equipment;
mod floor;
mod form;
mod guard;
mod hand;
mod key;
mod lift;
pub(crate) mod name;
pub(crate) mod not_shown;
mod panel;
mod paper;
mod plan;
mod returned;
mod row;
mod tally;
mod today;
mod wakes;
mod weeks;

pub(crate) use paper::paper;
pub use paper::{Paper, PaperColumns, PaperEntry, PaperSession, PaperSet};
pub use plan::{plan_checked, plan_in_file};
pub(crate) use returned::week as returned_week;
pub use returned::{LifterWeek, OutOf};
pub(crate) use wakes::wakes_at;

use crate::contract::{Draft, Look, Screen};
use crate::facts::{Facts, Of};
use crate::phrase::Words;

#[cfg(test)]
thread_local! {
    /// Screens panic, to see what becomes of the tap before.
    pub(crate) static PANICS: std::cell::Cell<bool> = const { std::cell::Cell::new(false) };
}

/// The screen of a look, from what was gathered for it.
pub(crate) fn show(facts: &Facts<'_>, look: &Look, words: Words) -> Screen {
    #[cfg(test)]
    assert!(!PANICS.get(), "a screen that panics");
    let Facts { held, at, of } = facts;
    let words = words.on(at.local_day());
    match of {
        Of::NothingOn => Screen::Today { today: today::nothing_on(held, words) },
        Of::PlanIsOver(plan) => Screen::Today { today: today::plan_is_over(plan, words) },
        Of::Today(of) => {
            Screen::Today { today: today::screen(held, of, asked(look).minutes, words) }
        }
        Of::Floor(run) => {
            let none = Draft::default();
            let draft = asked(look).draft.unwrap_or(&none);
            Screen::Floor { floor: floor::screen(held, run, draft, at, words) }
        }
        Of::Tally(of) => Screen::Tally { tally: tally::screen(held, of, at, words) },
        Of::Weeks(of) => Screen::Weeks { weeks: weeks::screen(held, of, at, words) },
        Of::Anew(of) => Screen::Weeks { weeks: weeks::anew(held, of, at, words) },
        Of::Lift(of) => {
            let Asked { page, all, .. } = asked(look);
            Screen::Lift { lift: lift::screen(held, of, (page, all), words) }
        }
        Of::Balance(of) => Screen::Balance { balance: balance::screen(held, of, words) },
        Of::Equipment => Screen::Equipment { equipment: equipment::screen(held, words) },
        Of::Start => Screen::Form { form: form::start::screen(held, words) },
        Of::Handed(handed) => Screen::Form { form: form::records::screen(held, handed, words) },
        Of::Coming(coming) => Screen::Form { form: form::coming::screen(held, coming, words) },
        Of::Exercises => {
            let Asked { at, text, .. } = asked(look);
            Screen::Form { form: form::exercises::screen(held, at, text, words) }
        }
        Of::Maxes(of) => Screen::Form { form: form::maxes::screen(held, of, words) },
        Of::GymForm(draft) => {
            let Asked { at, .. } = asked(look);
            Screen::Form { form: form::gym::screen(held, draft, at, words) }
        }
        Of::SessionForm(of) => {
            let Asked { at, text, .. } = asked(look);
            Screen::Form { form: form::session::screen(held, of, at, text, words) }
        }
        Of::Sent(of) => {
            let Asked { text, .. } = asked(look);
            Screen::Form { form: form::sent::screen(held, (of, text), words) }
        }
        Of::Care => Screen::Care { care: care::screen(held, at, words) },
        Of::PlanForm(draft) => {
            let Asked { at, text, .. } = asked(look);
            Screen::Form { form: form::plan::screen(held, draft, (at, text), words) }
        }
        Of::LikedForm(of) => Screen::Form { form: form::liked::screen(held, of, words) },
        Of::PlanFile => {
            let Asked { text, week, .. } = asked(look);
            Screen::Plan { plan: plan::in_hand(held, text, week, words) }
        }
        Of::PlanOn(plan) => {
            let plan = plan::plan(plan, &held.known, (asked(look).week, None), words);
            Screen::Plan { plan }
        }
    }
}

/// What a look asks for beyond its screen.
#[derive(Default)]
struct Asked<'a> {
    minutes: Option<u32>,
    draft: Option<&'a Draft>,
    page: u32,
    all: bool,
    text: &'a str,
    week: Option<u32>,
    /// The part of a form that is open.
    at: &'a str,
}

fn asked(look: &Look) -> Asked<'_> {
    let none = Asked::default();
    match look {
        Look::Today { session: _, minutes } => Asked { minutes: *minutes, ..none },
        Look::Floor { draft } => Asked { draft: Some(draft), ..none },
        Look::Lift { exercise: _, page, all } => Asked { page: *page, all: *all, ..none },
        Look::Plan { text, week } => {
            Asked { text: text.as_deref().unwrap_or_default(), week: *week, ..none }
        }
        Look::Form { of: _, at, text } => Asked { at, text, ..none },
        Look::Tally
        | Look::Weeks
        | Look::Anew { .. }
        | Look::Balance { .. }
        | Look::Equipment
        | Look::Care => none,
    }
}
