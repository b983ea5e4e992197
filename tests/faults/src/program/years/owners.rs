//! What the owners of loads are at, as the log says: maxes and loads of tracks.

use std::collections::BTreeMap;

use barwright_store::Store;
use serde_json::Value;

/// Nanograms.
type Mass = i128;

/// What was said to an owner, once.
#[derive(Debug, Clone)]
struct Word {
    /// The session that decided it; none where a person or a plan said it.
    session: Option<u64>,
    /// The number of the event; what is said again has the number it was said again by.
    seq: u64,
    changes: Vec<Value>,
}

/// Owners by name, each with all that was ever said to it.
#[derive(Debug, Clone, Default)]
pub(super) struct Owners {
    words: BTreeMap<String, Vec<Word>>,
    /// What a person said, by its number: for taking it back.
    said: BTreeMap<u64, (String, Vec<Value>)>,
    /// What the store had of each owner when it was read last, and what that comes to: most of them
    /// are the same from one time to the next.
    read: BTreeMap<String, (String, Option<Mass>)>,
}

fn mass(value: &Value) -> Option<Mass> {
    let text = value.as_str()?;
    let (negative, text) = text.strip_prefix('-').map_or((false, text), |rest| (true, rest));
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    let digits = format!("{whole}{part:0<12}");
    let mass = digits.parse::<Mass>().ok()?;
    Some(if negative { -mass } else { mass })
}

/// `{"track": 2}` as `track:2`.
fn name(owner: &Value) -> Option<String> {
    let (kind, of) = owner.as_object()?.iter().next()?;
    Some(match of {
        Value::String(slug) => format!("{kind}:{slug}"),
        of => format!("{kind}:{of}"),
    })
}

fn list(value: &Value) -> Vec<Value> {
    value.as_array().cloned().unwrap_or_default()
}

/// The load or the max after one change.
fn after(before: Option<Mass>, change: &Value) -> Option<Mass> {
    if change == "fresh" {
        return None;
    }
    match change.as_object().and_then(|one| one.iter().next()) {
        Some((kind, what)) => match kind.as_str() {
            "max" => mass(&what["mass"]),
            "load" => mass(&what["load"]),
            "step" => before.zip(mass(what)).map(|(load, step)| load + step).or(before),
            _ => before,
        },
        None => before,
    }
}

impl Owners {
    fn say(&mut self, owner: String, word: Word) {
        let words = self.words.entry(owner).or_default();
        let before =
            words.iter_mut().find(|other| other.session.is_some() && other.session == word.session);
        match before {
            Some(before) => *before = word,
            None => words.push(word),
        }
    }

    pub(super) fn fold(&mut self, seq: u64, event: &str, what: &Value) {
        match event {
            "plan_adopted" | "plan_mended" => {
                for said in list(&what["said"]) {
                    let owner = format!("track:{}", said[0]);
                    self.say(owner, Word { session: None, seq, changes: list(&said[1]) });
                }
            }
            "said" => {
                let Some(owner) = name(&what["owner"]) else { return };
                let changes = list(&what["changes"]);
                self.said.insert(seq, (owner.clone(), changes.clone()));
                self.say(owner, Word { session: None, seq, changes });
            }
            "track_parted" => {
                let owner = format!("track:{}", what["track"]);
                self.say(owner, Word { session: None, seq, changes: list(&what["changes"]) });
            }
            "taken_back" => {
                let of = what["seq"].as_u64().unwrap_or(0);
                for words in self.words.values_mut() {
                    words.retain(|word| word.session.is_some() || word.seq != of);
                }
            }
            "brought_back" => {
                let of = what["seq"].as_u64().unwrap_or(0);
                if let Some((owner, changes)) = self.said.get(&of).cloned() {
                    self.say(owner, Word { session: None, seq: of, changes });
                }
            }
            "decided" => self.decide(seq, what),
            _ => {}
        }
    }

    fn decide(&mut self, seq: u64, what: &Value) {
        let session = what["session"].as_u64();
        let outcomes = list(&what["outcomes"]);
        let told: Vec<String> = outcomes.iter().filter_map(|one| name(&one["owner"])).collect();
        for (owner, words) in &mut self.words {
            if !told.contains(owner) {
                words.retain(|word| word.session != session);
            }
        }
        for (outcome, owner) in outcomes.iter().zip(told) {
            let is = |key: &str| outcome[key].as_bool() == Some(true);
            let held = is("silent") || is("held");
            let changes = if held { Vec::new() } else { list(&outcome["changes"]) };
            self.say(owner, Word { session, seq, changes });
        }
    }

    /// Holds the owners that stand in a store against these.
    pub(super) fn hold(&mut self, store: &Store) -> Result<(), String> {
        let facts = store.standing().map_err(|error| format!("facts: {error}"))?;
        let owners = facts.beginning("owner:").map_err(|error| format!("facts: {error}"))?;
        for (key, fact) in owners {
            let owner = key.trim_start_matches("owner:");
            if owner.starts_with("care:") {
                continue;
            }
            let stands = match self.read.get(owner) {
                Some((body, stands)) if *body == fact.body => *stands,
                _ => {
                    let stands =
                        stands(&fact.body).map_err(|error| format!("{key} is no JSON: {error}"))?;
                    self.read.insert(owner.to_owned(), (fact.body, stands));
                    stands
                }
            };
            let words = self.words.get(owner).into_iter().flatten();
            let by_log = words.flat_map(|word| &word.changes).fold(None, after);
            if stands != by_log {
                return Err(format!("{owner} stands at {stands:?}, and by the log at {by_log:?}"));
            }
        }
        Ok(())
    }
}

/// What an owner stands at, by what the store has of it.
fn stands(body: &str) -> Result<Option<Mass>, serde_json::Error> {
    let account: Value = serde_json::from_str(body)?;
    let base = &account["base"];
    let mut stands = mass(&base["max"]["now"][0]).or(mass(&base["track"]["load"]));
    for word in list(&account["words"]) {
        let outcome = &word["outcome"];
        let is = |key: &str| outcome[key].as_bool() == Some(true);
        if is("silent") || is("held") {
            continue;
        }
        for change in list(&outcome["changes"]) {
            stands = after(stands, &change);
        }
    }
    Ok(stands)
}
