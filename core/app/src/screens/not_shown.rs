//! What stands where a tap is recorded and its screen could not be made.

use super::key::shows;
use crate::contract::{Draft, EngineError, Key, Look, NotShownScreen};
use crate::phrase::Words;

/// That it is recorded, what failed, and where to go from here.
pub(crate) fn screen(failed: &EngineError, running: bool, words: Words) -> NotShownScreen {
    let say = words.not_shown();
    let title = say.title().to_owned();
    let reason = say.reason(&failed.to_string());
    let report = match failed {
        EngineError::Broken { report, .. } => report.clone(),
        _ => String::new(),
    };
    NotShownScreen {
        aloud: words.words().spoken(&[&title, &reason]),
        title,
        reason,
        report,
        keys: keys(running, words),
    }
}

fn keys(running: bool, words: Words) -> Vec<Key> {
    let say = words.not_shown();
    let floor = Look::Floor { draft: Draft::default() };
    let today = Look::Today { session: None, minutes: None };
    let floor = running.then(|| shows("floor", say.floor(), floor));
    floor.into_iter().chain([shows("today", say.today(), today)]).collect()
}
