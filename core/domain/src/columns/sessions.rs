//! Sets of a table, put together to sessions.

use std::collections::BTreeMap;

use super::bounds;
use super::row::{BadRow, Lifted};
use crate::call::{Amount, HowMany, SetKind, WeekKind};
use crate::catalogue::Catalogue;
use crate::history::{DonePart, DoneSet, Outcome, SessionRow, SetKey, session_volume};
use crate::quantity::{Range, Reserve};
use crate::session::{EntryId, SetId};

/// Sessions of a day have numbers that the day is told from by this.
const OF_A_DAY: u64 = 100;

/// A session as it is put together.
#[derive(Debug)]
struct Gathered {
    title: Option<String>,
    minute: Option<u16>,
    sets: Vec<Lifted>,
    /// Sets, those counted that one row stands for.
    count: usize,
}

/// The sets of a table as sessions: what was done on one day, and under one title and from one time
/// where the table has them.
#[derive(Debug, Default)]
pub struct Sessions {
    /// By day; on a day in the order of the table.
    days: BTreeMap<i32, Vec<Gathered>>,
    /// The last day that came, and how often the next was later, or earlier.
    last: Option<i32>,
    later: u64,
    earlier: u64,
}

impl Sessions {
    /// Takes a set in.
    ///
    /// # Errors
    /// [`BadRow::TooManySets`] and [`BadRow::TooManySessions`].
    pub fn add(&mut self, set: Lifted) -> Result<(), BadRow> {
        let (day, times) = (set.day, usize::from(set.times));
        let sessions = self.days.entry(day).or_default();
        let of = |session: &Gathered| session.title == set.title && session.minute == set.minute;
        let many = sessions.len() >= bounds::SESSIONS;
        let at = sessions.iter().position(of).and_then(|at| sessions.get_mut(at));
        match at {
            Some(session) if session.count + times > bounds::SETS => {
                return Err(BadRow::TooManySets(bounds::SETS));
            }
            Some(session) => {
                session.count += times;
                session.sets.push(set);
            }
            None if many => return Err(BadRow::TooManySessions(bounds::SESSIONS)),
            None => {
                let (title, minute) = (set.title.clone(), set.minute);
                sessions.push(Gathered { title, minute, sets: vec![set], count: times });
            }
        }
        match self.last {
            Some(last) if day > last => self.later += 1,
            Some(last) if day < last => self.earlier += 1,
            _ => {}
        }
        self.last = Some(day);
        Ok(())
    }

    /// How many.
    #[must_use]
    pub fn count(&self) -> usize {
        self.days.values().map(Vec::len).sum()
    }

    /// Each with its sets, oldest first. A session's number is its day's and its place in that day:
    /// by time, and without one as the table has them, so that a table that grew numbers them as
    /// before. One without a title has `name`. Sets are hard with `easiest` or fewer left.
    #[must_use]
    pub fn put_together(
        self,
        name: &str,
        catalogue: &Catalogue,
        easiest: Reserve,
    ) -> Vec<(SessionRow, Vec<DoneSet>)> {
        // A table that begins with the newest grows at its head.
        let newest_first = self.earlier > self.later;
        let mut all = Vec::new();
        for (day, mut sessions) in self.days {
            if newest_first {
                sessions.reverse();
            }
            sessions.sort_by_key(|session| session.minute);
            for (nth, session) in (1_u64..).zip(sessions) {
                let number = u64::try_from(day).unwrap_or_default() * OF_A_DAY + nth;
                let title = session.title.clone().unwrap_or_else(|| name.to_owned());
                let sets = sets_of(number, session);
                let done = sets.iter().filter(|set| set.is_work()).count();
                let done = u16::try_from(done).unwrap_or(u16::MAX);
                let volume = session_volume(&sets, catalogue, easiest);
                let outcome = Outcome { seconds: 0, owed: done, done, volume };
                let row = SessionRow {
                    session: number,
                    day,
                    title,
                    place: None,
                    week_kind: WeekKind::Ordinary,
                    outcome: Some(outcome),
                };
                all.push((row, sets));
            }
        }
        all
    }
}

/// The sets of a session: exercises as they first come, and of each its sets as the table has them, or
/// backwards where their numbers count down.
fn sets_of(session: u64, gathered: Gathered) -> Vec<DoneSet> {
    let mut entries: Vec<Vec<Lifted>> = Vec::new();
    for set in gathered.sets {
        let of = |sets: &&mut Vec<Lifted>| {
            sets.first().is_some_and(|first| first.exercise == set.exercise)
        };
        match entries.iter_mut().find(of) {
            Some(sets) => sets.push(set),
            None => entries.push(vec![set]),
        }
    }
    let mut all = Vec::new();
    for (entry, mut sets) in (0_u16..).zip(entries) {
        // A table that begins with the newest may count down.
        let numbers: Vec<u16> = sets.iter().filter_map(|set| set.number).collect();
        if numbers.len() > 1 && numbers.is_sorted_by(|one, next| one > next) {
            sets.reverse();
        }
        let (mut place, mut round) = (0_u16, 0_u16);
        for lifted in sets {
            for nth in 1..=lifted.times {
                let ramp = lifted.kind == SetKind::Ramp;
                round += u16::from(!ramp);
                let set = SetId { entry: EntryId(entry), set: place };
                let key = SetKey { session, set };
                let last = nth == lifted.times;
                all.push(done(key, if ramp { 0 } else { round }, &lifted, last));
                place += 1;
            }
        }
    }
    all
}

fn done(key: SetKey, round: u16, lifted: &Lifted, last: bool) -> DoneSet {
    let asked = match lifted.amount {
        Amount::Reps(reps) => HowMany::Reps(Range::just(reps)),
        Amount::Seconds(seconds) => HowMany::Seconds(Range::just(seconds)),
        Amount::Metres(distance) => HowMany::Metres(Range::just(distance)),
    };
    DoneSet {
        key,
        day: lifted.day,
        exercise: lifted.exercise.clone(),
        kind: lifted.kind,
        row: 0,
        round,
        side: lifted.side,
        asked,
        target: None,
        meant: None,
        figure: lifted.figure,
        counting: lifted.counting,
        moved: lifted.moved,
        bands: None,
        technique: None,
        set_up: Vec::new(),
        kit: Vec::new(),
        parts: vec![DonePart { amount: lifted.amount, figure: lifted.figure, slowing: None }],
        // Of several sets in one row the effort is that after the last.
        left: lifted.left.filter(|_| last),
        helped: 0,
        ending: lifted.ending,
    }
}
