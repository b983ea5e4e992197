//! What to leave out when there is less time than the sheet takes.

use serde::{Deserialize, Serialize};

use super::duration::duration;
use crate::session::{Call, Entry, SetKind, Sheet};

/// Something left out for want of time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LeftOut {
    /// A whole exercise, by name.
    Exercise(String),
    /// Sets of an exercise.
    Sets {
        /// Its name.
        name: String,
        /// How many, each side's counted once.
        sets: u16,
    },
}

/// The sheet cut to the minutes there are, and what was left out of it; one that fits loses nothing.
/// In this order, from the last exercise to the first each time: optional exercises; sets of small
/// ones, down to one; small exercises; and sets of the main lifts last. What was cut too much comes
/// back, the last cut first. What the plan keeps is never touched, and the day's first lift never
/// left out whole: it is what the day is for (common practice). Of what stays the ramp stays.
pub fn fit_minutes(sheet: &Sheet, minutes: u32) -> (Sheet, Vec<LeftOut>) {
    let limit = u64::from(minutes) * 60;
    let mut cut = sheet.clone();
    let fits = |sheet: &Sheet| duration(sheet).total() <= limit;
    let count = sheet.entries().count();
    let ramped = |entry: &Entry| entry.calls.iter().any(|call| call.kind == SetKind::Ramp);
    let first = sheet.entries().position(ramped).unwrap_or(0);
    let main = |at: usize, entry: &Entry| entry.main || at == first;
    type Step = fn(&mut Entry) -> bool;
    let steps: [(bool, Step); 6] = [
        (false, |entry| entry.optional && drop_all(entry)),
        (false, |entry| drop_set(entry, 3)),
        (false, |entry| drop_set(entry, 2)),
        (false, drop_all),
        (true, |entry| drop_set(entry, 3)),
        (true, |entry| drop_set(entry, 2)),
    ];
    let mut cuts: Vec<(usize, Vec<Call>)> = Vec::new();
    'cut: for (of_main, step) in steps {
        loop {
            let mut any = false;
            for at in (0..count).rev() {
                if fits(&cut) {
                    break 'cut;
                }
                let Some(entry) = nth(&mut cut, at) else { continue };
                if entry.keep || main(at, entry) != of_main {
                    continue;
                }
                let before = entry.calls.clone();
                if step(entry) {
                    any = true;
                    cuts.push((at, before));
                }
            }
            if !any {
                break;
            }
        }
    }
    while let Some((at, before)) = cuts.pop() {
        let mut back = cut.clone();
        if let Some(entry) = nth(&mut back, at) {
            entry.calls = before;
        }
        if fits(&back) {
            cut = back;
        }
    }
    for block in &mut cut.blocks {
        block.entries.retain(|entry| !entry.calls.is_empty());
    }
    cut.blocks.retain(|block| !block.entries.is_empty());
    let left_out = sheet
        .entries()
        .filter_map(|entry| {
            let left = cut.entries().find(|other| other.id == entry.id);
            let missing = rounds(entry) - left.map_or(0, rounds);
            match (left, missing) {
                (None, _) => Some(LeftOut::Exercise(entry.name.clone())),
                (Some(_), 0) => None,
                (Some(_), sets) => Some(LeftOut::Sets {
                    name: entry.name.clone(),
                    sets: u16::try_from(sets).unwrap_or(u16::MAX),
                }),
            }
        })
        .collect();
    (cut, left_out)
}

fn nth(sheet: &mut Sheet, at: usize) -> Option<&mut Entry> {
    sheet.blocks.iter_mut().flat_map(|block| &mut block.entries).nth(at)
}

/// Empties an entry; the empty ones are taken out at the end, so that places stay.
fn drop_all(entry: &mut Entry) -> bool {
    let any = !entry.calls.is_empty();
    entry.calls.clear();
    any
}

/// Takes the last round off an entry that has at least so many.
fn drop_set(entry: &mut Entry, at_least: usize) -> bool {
    if rounds(entry) < at_least {
        return false;
    }
    let last = entry.calls.iter().map(|call| (call.row, call.round)).max();
    entry.calls.retain(|call| Some((call.row, call.round)) != last || call.kind == SetKind::Ramp);
    true
}

fn rounds(entry: &Entry) -> usize {
    let mut all: Vec<_> = entry
        .calls
        .iter()
        .filter(|call| call.kind != SetKind::Ramp)
        .map(|call| (call.row, call.round))
        .collect();
    all.sort_unstable();
    all.dedup();
    all.len()
}
