//! The rest of a plan laid anew after an absence.

use super::order::has_heavy_set;
use crate::catalogue::Catalogue;
use crate::desk::{Arranged, At, Calendar, Dated, Dates, Standing, TrainedAt, calendar};
use crate::plan::Plan;

/// How the rest is laid anew.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anew {
    /// All of it comes so many whole weeks later that nothing lies behind: the days of the week stay.
    PushBack,
    /// What lies behind is left out, and the rest stays where it is.
    Drop,
    /// What lies behind comes on the days that are free, one a day, never a lift heavy on
    /// neighbouring days; what finds none is left out.
    Squeeze,
    /// The same, whatever is heavy on neighbouring days.
    SqueezeClose,
}

/// Days, from today on, on which what lies behind finds its place.
const ROOM: i32 = 14;

/// A plan as it stands on a day.
#[derive(Debug, Clone, Copy)]
pub struct Rest<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// Its exercises.
    pub catalogue: &'a Catalogue,
    /// Local date on which it was taken up.
    pub adopted: i32,
    /// What was arranged otherwise.
    pub arranged: &'a Arranged,
    /// What was trained.
    pub trained: &'a [TrainedAt],
    /// Today's local date.
    pub today: i32,
}

/// Sessions on neighbouring days that are heavy in one lift, and were not so by the plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Close {
    /// The earlier one.
    pub before: At,
    /// The later one.
    pub after: At,
    /// The lift, by its slug.
    pub lift: String,
}

impl Rest<'_> {
    fn calendar(&self, arranged: &Arranged) -> Calendar {
        calendar(self.plan, self.adopted, arranged, self.trained)
    }

    /// The sessions that are still to come and lie behind, in order.
    pub fn behind(&self) -> Vec<(At, i32)> {
        let behind = self.calendar(self.arranged).sessions.into_iter().filter_map(|one| {
            let day = one.due.filter(|day| *day < self.today)?;
            to_come(&one).then_some((one.at, day))
        });
        behind.collect()
    }

    /// What laying the rest anew sets; nothing where nothing lies behind.
    pub fn anew(&self, how: Anew) -> Dates {
        let behind = self.behind();
        let Some((first, day)) = behind.iter().min_by_key(|(_, day)| *day).copied() else {
            return Dates::default();
        };
        match how {
            Anew::PushBack => self.pushed_back(first, day),
            Anew::Drop => {
                let left_out = behind.iter().map(|(at, _)| (*at, true)).collect();
                Dates { left_out, ..Dates::default() }
            }
            Anew::Squeeze => self.squeezed(&behind, false),
            Anew::SqueezeClose => self.squeezed(&behind, true),
        }
    }

    fn pushed_back(&self, first: At, day: i32) -> Dates {
        let weeks = self.today.saturating_sub(day).saturating_add(6) / 7;
        let before = self.arranged.travel.get(&first.week).copied().unwrap_or(0);
        let more = u16::try_from(weeks).unwrap_or(u16::MAX);
        let days = weeks.saturating_mul(7);
        // Those that were moved have no week that moves them.
        let open = self.calendar(self.arranged).sessions.into_iter().filter(to_come);
        let moved = open
            .filter(|one| one.moved)
            .filter_map(|one| Some((one.at, Some(one.due?.saturating_add(days)))));
        Dates {
            moved: moved.collect(),
            travel: vec![(first.week, before.saturating_add(more))],
            ..Dates::default()
        }
    }

    fn squeezed(&self, behind: &[(At, i32)], close: bool) -> Dates {
        let is_behind = |at: At| behind.iter().any(|(one, _)| *one == at);
        let all = self.calendar(self.arranged).sessions;
        let mut taken: Vec<(At, i32)> = all
            .iter()
            .filter(|one| !is_behind(one.at))
            .filter_map(|one| Some((one.at, on(one)?)))
            .collect();
        let mut dates = Dates::default();
        for (at, _) in behind {
            let lifts = self.heavy(*at);
            let fits = |day: i32| {
                let clash = |(other, on): &(At, i32)| {
                    on.abs_diff(day) == 1 && self.heavy(*other).iter().any(|l| lifts.contains(l))
                };
                taken.iter().all(|(_, on)| *on != day) && (close || !taken.iter().any(clash))
            };
            match (self.today..self.today.saturating_add(ROOM)).find(|day| fits(*day)) {
                Some(day) => {
                    taken.push((*at, day));
                    dates.moved.push((*at, Some(day)));
                }
                None => dates.left_out.push((*at, true)),
            }
        }
        dates
    }

    /// The calendar with these dates.
    pub fn with(&self, dates: &Dates) -> Calendar {
        self.calendar(&self.arranged.with_dates(dates))
    }

    /// What comes heavy on neighbouring days with these dates that did not before.
    pub fn close(&self, dates: &Dates) -> Vec<Close> {
        let before = self.neighbours(&self.calendar(self.arranged));
        let mut after = self.neighbours(&self.with(dates));
        after.retain(|one| !before.contains(one));
        after
    }

    fn neighbours(&self, calendar: &Calendar) -> Vec<Close> {
        let dated: Vec<(At, i32)> =
            calendar.sessions.iter().filter_map(|one| Some((one.at, on(one)?))).collect();
        let mut found = Vec::new();
        for (before, day) in &dated {
            let next = dated.iter().filter(|(_, other)| *other == day.saturating_add(1));
            for (after, _) in next {
                let lifts = self.heavy(*after);
                let both = self.heavy(*before).into_iter().find(|lift| lifts.contains(lift));
                let (before, after) = (*before, *after);
                found.extend(both.map(|lift| Close { before, after, lift }));
            }
        }
        found
    }

    /// The lifts that are heavy in a session.
    fn heavy(&self, at: At) -> Vec<String> {
        let nth = |number: u16| usize::from(number).saturating_sub(1);
        let session = self.plan.session(nth(at.week), nth(at.session));
        let all = session.into_iter().flat_map(|session| session.exercises);
        all.filter(|entry| has_heavy_set(self.plan, self.catalogue, entry, true))
            .map(|entry| entry.exercise)
            .collect()
    }
}

const fn to_come(one: &Dated) -> bool {
    matches!(one.standing, Standing::Next | Standing::ToCome | Standing::Again)
}

/// The day on which a session is, or was.
fn on(one: &Dated) -> Option<i32> {
    match one.standing {
        Standing::Done(day) => Some(day),
        Standing::Next | Standing::ToCome | Standing::Again => one.due,
        Standing::DoneWith(..)
        | Standing::With(_)
        | Standing::Missed
        | Standing::LeftOut
        | Standing::Before => None,
    }
}
