//! What a device's log comes to, worked out from its bodies by plain code that knows nothing of the
//! engine's: sets done, what the owners of loads are at, which session of the plan is next.

use std::collections::{BTreeMap, BTreeSet};

use barwright_domain::call::Amount;
use barwright_store::{Event, Store};
use serde_json::Value;

use super::owners::Owners;
use super::plans;

/// A set of a session: its exercise and its number.
type Set = (u64, u64);
/// A session of a plan: week and number, from 1.
type At = (u64, u64);

/// What the model keeps of a session's event.
#[derive(Debug, Clone)]
enum Kept {
    Part(Set, u64, u64),
    Corrected(Set, u64, u64),
    Undone(u64),
    Finished,
    Other,
}

/// A session as the log has it.
#[derive(Debug, Clone, Default)]
struct Session {
    /// Its place in a plan: the plan, and where.
    place: Option<(u64, At)>,
    /// Each event with its tap.
    events: Vec<(u64, Kept)>,
    began_in: u64,
}

/// A plan that was adopted.
#[derive(Debug, Clone, Default)]
struct Plan {
    name: String,
    /// Where it was entered, and the number of that event.
    entered: Option<(At, u64)>,
    left_out: BTreeSet<At>,
    /// Dates or order were arranged in a way that the model does not follow.
    by_hand: bool,
}

/// The reference.
#[derive(Debug, Clone, Default)]
pub(super) struct Model {
    /// The last entry that was read, with its body.
    last: Option<(u64, String)>,
    sessions: BTreeMap<u64, Session>,
    plans: BTreeMap<u64, Plan>,
    on: Option<u64>,
    owners: Owners,
    /// What was next when the session that began last did not run yet.
    was_next: Option<(u64, Option<At>)>,
}

impl Session {
    /// The taps that are taken back: an undo that is itself taken back takes nothing back.
    fn taken_back(&self) -> BTreeSet<u64> {
        let mut taken = BTreeSet::new();
        for (tap, event) in self.events.iter().rev() {
            if let Kept::Undone(of) = event
                && !taken.contains(tap)
            {
                taken.insert(*of);
            }
        }
        taken
    }

    fn stands(&self) -> bool {
        !self.taken_back().contains(&self.began_in)
    }

    fn is_over(&self) -> bool {
        let taken = self.taken_back();
        let over =
            |(tap, event): &(u64, Kept)| matches!(event, Kept::Finished) && !taken.contains(tap);
        self.stands() && self.events.iter().any(over)
    }

    /// How much was done of each set.
    fn done(&self) -> BTreeMap<Set, u64> {
        let taken = self.taken_back();
        let mut parts: BTreeMap<(Set, u64), u64> = BTreeMap::new();
        for (tap, event) in &self.events {
            if taken.contains(tap) || taken.contains(&self.began_in) {
                continue;
            }
            match event {
                Kept::Part(set, part, amount) => {
                    parts.insert((*set, *part), *amount);
                }
                Kept::Corrected(set, part, amount) => {
                    parts.entry((*set, *part)).and_modify(|was| *was = *amount);
                }
                _ => {}
            }
        }
        let mut sets = BTreeMap::new();
        for ((set, _), amount) in parts {
            *sets.entry(set).or_default() += amount;
        }
        sets
    }
}

fn number(value: &Value) -> u64 {
    value.as_u64().unwrap_or(0)
}

fn amount(done: &Value) -> u64 {
    let amounts = done["amount"].as_object();
    amounts.and_then(|amounts| amounts.values().next()).map_or(0, number)
}

fn set(value: &Value) -> Set {
    (number(&value["set"]["entry"]), number(&value["set"]["set"]))
}

fn at(value: &Value) -> At {
    (number(&value["week"]), number(&value["session"]))
}

/// An event's name and what it says.
fn named(body: &Value) -> (&str, &Value) {
    let event = &body["event"];
    match event.as_object().and_then(|one| one.iter().next()) {
        Some((name, value)) => (name, value),
        None => (event.as_str().unwrap_or(""), &Value::Null),
    }
}

impl Model {
    /// Reads on in a store, and holds what is derived there against what the log comes to. `all`
    /// looks at every session, not the last ones alone.
    pub(super) fn hold(&mut self, store: &Store, all: bool) -> Result<(), String> {
        self.read_on(store)?;
        let history = store.history().map_err(|error| format!("rows are not read: {error}"))?;
        let some = if all { usize::MAX } else { 3 };
        for (seq, session) in self.sessions.iter().rev().take(some) {
            if !session.is_over() {
                continue;
            }
            let sets = history.sets_in(*seq).map_err(|error| format!("sets: {error}"))?;
            let sets: BTreeMap<Set, u64> = sets
                .iter()
                .map(|row| {
                    let amounts = row.parts.iter().map(|part| match part.amount {
                        Amount::Reps(reps) => u64::from(reps),
                        Amount::Seconds(seconds) => u64::from(seconds.count()),
                        Amount::Metres(distance) => u64::from(distance.millimetres()),
                    });
                    let key = row.key.set;
                    ((u64::from(key.entry.0), u64::from(key.set)), amounts.sum())
                })
                .collect();
            if sets != session.done() {
                return Err(format!(
                    "session {seq} has the sets {sets:?}, and its log {:?}",
                    session.done()
                ));
            }
            if history.session(*seq).ok().flatten().is_none() {
                return Err(format!("session {seq} has no row"));
            }
        }
        drop(history);
        self.owners.hold(store)
    }

    fn read_on(&mut self, store: &Store) -> Result<(), String> {
        let from = self.last.as_ref().map_or(0, |(seq, _)| *seq);
        let events = store.events_from(from.max(1)).map_err(|error| format!("the log: {error}"))?;
        let mut events = events.into_iter();
        if let Some((seq, body)) = &self.last {
            let again = events.next().ok_or("the last entry is gone")?;
            if (again.seq, &again.body) != (*seq, body) {
                return Err(format!("entry {seq} is another one now"));
            }
        }
        let mut before = self.last.as_ref().map(|(seq, _)| *seq);
        for event in events {
            let fits = event.seq == before.unwrap_or(0) + 1 && event.tap <= event.seq;
            if !fits {
                return Err(format!("entry {} of tap {} after {before:?}", event.seq, event.tap));
            }
            before = Some(event.seq);
            self.fold(&event)?;
            self.last = Some((event.seq, event.body));
        }
        Ok(())
    }

    fn fold(&mut self, event: &Event) -> Result<(), String> {
        let body: Value = serde_json::from_str(&event.body)
            .map_err(|error| format!("entry {} is no JSON: {error}", event.seq))?;
        let (name, what) = named(&body);
        if event.kind == "session" {
            self.fold_session(event, name, what);
        } else {
            self.fold_desk(event.seq, name, what);
        }
        Ok(())
    }

    fn fold_session(&mut self, event: &Event, name: &str, what: &Value) {
        if name == "began" {
            let place = what["sheet"]["place"].as_object().map(|place| {
                (number(&place["plan"]), (number(&place["week"]), number(&place["session"])))
            });
            self.was_next = self.next();
            let session = Session { place, events: Vec::new(), began_in: event.tap };
            self.sessions.insert(event.seq, session);
            return;
        }
        let Some(mut session) = self.sessions.last_entry() else { return };
        let kept = match name {
            "part_done" => Kept::Part(set(what), number(&what["part"]), amount(&what["done"])),
            "corrected" => Kept::Corrected(set(what), number(&what["part"]), amount(&what["done"])),
            "undone" => Kept::Undone(number(&what["tap"])),
            "finished" => Kept::Finished,
            _ => Kept::Other,
        };
        session.get_mut().events.push((event.tap, kept));
    }

    fn fold_desk(&mut self, seq: u64, name: &str, what: &Value) {
        self.owners.fold(seq, name, what);
        match name {
            "plan_adopted" => {
                let name = what["name"].as_str().unwrap_or("").to_owned();
                let by_hand = !plans::is_known(what["text"].as_str().unwrap_or(""));
                self.plans.insert(seq, Plan { name, by_hand, ..Plan::default() });
                self.on = Some(seq);
            }
            "plan_mended" => {
                if let Some(plan) = self.plans.get_mut(&number(&what["plan"])) {
                    // What was made of it by hand, nobody here knows.
                    plan.by_hand |= !plans::is_known(what["text"].as_str().unwrap_or(""));
                }
            }
            "plan_taken_up" => self.on = Some(number(&what["plan"])),
            "arranged" => {
                let Some(plan) = self.plans.get_mut(&number(&what["plan"])) else { return };
                let Some((name, what)) = what["what"].as_object().and_then(|one| one.iter().next())
                else {
                    return;
                };
                match name.as_str() {
                    "entered" => {
                        let at = at(&what["at"]);
                        plan.entered = Some((at, seq));
                        plan.left_out.retain(|one| *one < at);
                    }
                    "left_out" => {
                        let at = at(&what["at"]);
                        plan.left_out.remove(&at);
                        if what["left_out"].as_bool() == Some(true) {
                            plan.left_out.insert(at);
                        }
                    }
                    // Weeks away, and what is changed in a session for once, change no order.
                    "travel" | "for_once" => {}
                    _ => plan.by_hand = true,
                }
            }
            _ => {}
        }
    }

    /// The session that is next, with its plan: as of the log that was read, where one that is open
    /// is over. None where the model can't tell.
    fn next(&self) -> Option<(u64, Option<At>)> {
        let on = self.on?;
        let plan = self.plans.get(&on).filter(|plan| !plan.by_hand)?;
        let (weeks, in_week) = plans::size(&plan.name)?;
        let (entry, since) = plan.entered.unwrap_or(((1, 1), 0));
        let last = self.sessions.keys().next_back().copied();
        let done: BTreeSet<At> = self
            .sessions
            .iter()
            .filter(|(seq, session)| session.is_over() || (Some(**seq) == last && session.stands()))
            .filter(|(seq, _)| **seq > since)
            .filter_map(|(_, session)| session.place.filter(|(plan, _)| *plan == on))
            .map(|(_, at)| at)
            .collect();
        let furthest = done.last().copied();
        let next = (1..=weeks)
            .flat_map(|week| (1..=in_week).map(move |session| (week, session)))
            .find(|at| {
                *at >= entry
                    && !plan.left_out.contains(at)
                    && furthest.is_none_or(|furthest| *at > furthest)
            });
        Some((on, next))
    }

    /// The session that was next before the one began that began last.
    pub(super) fn was_next(&self) -> Option<(u64, Option<At>)> {
        self.was_next
    }

    /// The place of the session that began last.
    pub(super) fn place(&self) -> Option<(u64, At)> {
        self.sessions.last_key_value()?.1.place
    }

    /// The session that began last, by its number.
    pub(super) fn session(&self) -> Option<u64> {
        self.sessions.keys().next_back().copied()
    }
}
