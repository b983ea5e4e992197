//! Names that a key or a field carries: a part of the session, and what is written of it. Each names
//! the session too, so that one kept from an earlier session is known for what it is.

use barwright_domain::session::{Cursor, EntryId, Run, SetId};

use crate::contract::{Draft, Look};

/// The name of a part: exercise, set and part, and the session's number: "0.2.1@57".
pub(crate) fn name(run: &Run, cursor: &Cursor) -> String {
    format!("{}.{}.{}@{}", cursor.set.entry.0, cursor.set.set, cursor.part, run.session)
}

/// The part of a name, and the session where it names one.
pub(crate) fn named(name: &str) -> Option<(Cursor, Option<u64>)> {
    let (part, session) = of_session(name);
    let mut numbers = part.split('.').map(|number| number.parse::<u16>().ok());
    let (entry, set, part) = (numbers.next()??, numbers.next()??, numbers.next()??);
    let set = SetId { entry: EntryId(entry), set };
    numbers.next().is_none().then_some((Cursor { set, part }, session))
}

/// The name of a field of a session: "note@57", "load:0@57".
pub(crate) fn field(run: &Run, what: &str, entry: Option<EntryId>) -> String {
    match entry {
        Some(entry) => format!("{what}:{}@{}", entry.0, run.session),
        None => format!("{what}@{}", run.session),
    }
}

/// A name without its session, and the session's number where it names one.
pub(crate) fn of_session(name: &str) -> (&str, Option<u64>) {
    match name.rsplit_once('@') {
        Some((rest, session)) => match session.parse() {
            Ok(session) => (rest, Some(session)),
            Err(_) => (name, None),
        },
        None => (name, None),
    }
}

/// Where a search on the floor leads: its panel, with what was looked for.
pub(crate) fn found_in(field: &str, text: &str) -> Option<Look> {
    let (name, _) = of_session(field);
    let (kind, of) = name.split_once(':').unwrap_or((name, ""));
    let panel = kind.strip_prefix("find-")?;
    let panel = Some(format!("{panel}:{of}:{}", text.trim()));
    Some(Look::Floor { draft: Draft { panel, ..Draft::default() } })
}
