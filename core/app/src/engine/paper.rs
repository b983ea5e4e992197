//! Sessions as paper has them: looked at, and nothing recorded.

use barwright_domain::session::Reading;

use super::Engine;
use super::core::Core;
use super::intents::{self, Appends};
use crate::contract::{self, EngineError, Intent};
use crate::facts::Held;
use crate::fault::Fault;
use crate::gather;
use crate::screens::{self, Paper};

/// What is printed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PaperOf {
    /// The session whose turn it is.
    Next,
    /// A week of the plan that is on, from 1; without one the week we are in.
    Week(Option<u16>),
    /// A week of a plan in a file, as it would be if it were adopted now; without one the first that
    /// is to be done.
    File {
        /// The file's text.
        text: String,
        /// The week, from 1.
        week: Option<u16>,
    },
}

impl Engine {
    /// A week, or a session, to be printed: every set with its load worked out for this lifter in the
    /// gym that is trained in, as the loads stand today. Nothing is recorded.
    ///
    /// # Errors
    /// [`EngineError::Refused`] without a plan, for a week that it does not have and for a text with
    /// faults; else as [`Engine::view`].
    pub fn paper(&self, of: PaperOf, reading: contract::Reading) -> Result<Paper, EngineError> {
        let at = Reading::from(reading);
        self.with(|core| core.paper(&of, &at))
    }
}

impl Core {
    fn paper(&self, of: &PaperOf, at: &Reading) -> Result<Paper, Fault> {
        let ended = self.held.when_next_begins(at);
        let held = ended.as_ref().unwrap_or(&self.held);
        let words = held.locale.words();
        let today = at.local_day();
        let adopted;
        let (held, week) = match of {
            PaperOf::Next => (held, gather::printed_next(&self.store, held, at)?),
            PaperOf::Week(week) => (held, gather::printed_week(&self.store, held, *week, at)?),
            PaperOf::File { text, week } => {
                adopted = self.as_if_adopted(held, text.clone(), at)?;
                (&adopted, gather::printed_week(&self.store, &adopted, *week, at)?)
            }
        };
        Ok(screens::paper(held, &week, today, words))
    }

    /// What would stand with a plan adopted now.
    fn as_if_adopted(&self, held: &Held, text: String, at: &Reading) -> Result<Held, Fault> {
        let mut desk = held.desk.clone();
        if let Appends::Desk(events) = intents::appends(&self.store, held, Intent::adopt(text), at)?
        {
            for (seq, event) in (self.store.next_seq()..).zip(&events) {
                desk.apply(seq, event);
            }
        }
        Ok(Held::new(held.locale, desk, held.state.clone()))
    }
}
