//! One module for each screen: from what stands to a value that a shell lays out.

mod balance;
mod bar;
mod changes;
mod chart;
mod equipment;
mod floor;
mod key;
mod lift;
mod panel;
mod plan;
mod row;
mod tally;
mod today;
mod weeks;

pub(crate) use bar::total;
pub use plan::{plan_checked, plan_in_file};

use barwright_domain::session::Reading;

use crate::contract::{EngineError, Look, Screen};
use crate::engine::Core;

/// The screen that was asked for.
pub(crate) fn show(core: &Core, look: &Look, at: &Reading) -> Result<Screen, EngineError> {
    Ok(match look {
        Look::Today { session, minutes } => {
            Screen::Today { today: today::screen(core, session.as_deref(), *minutes, at)? }
        }
        // The floor is where a session runs; without one, what is on today says how to begin.
        Look::Floor { draft } => match core.state.running() {
            Some(run) => Screen::Floor { floor: floor::screen(core, run, draft, at) },
            None => Screen::Today { today: today::screen(core, None, None, at)? },
        },
        Look::Tally => match core.state.run() {
            Some(run) => Screen::Tally { tally: tally::screen(core, run, at)? },
            None => Screen::Today { today: today::screen(core, None, None, at)? },
        },
        Look::Weeks => Screen::Weeks { weeks: weeks::screen(core, at)? },
        Look::Lift { exercise, page } => {
            Screen::Lift { lift: lift::screen(core, exercise, *page, at)? }
        }
        Look::Balance { weeks } => Screen::Balance { balance: balance::screen(core, *weeks, at)? },
        Look::Equipment => Screen::Equipment { equipment: equipment::screen(core) },
        Look::Plan { text, week } => {
            Screen::Plan { plan: plan::screen(core, text.as_deref(), *week)? }
        }
    })
}
