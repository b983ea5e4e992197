//! Each muscle and side, planned and done.

use barwright_domain::call::WeekKind;
use barwright_domain::catalogue::Muscle;
use barwright_domain::desk::Standing;
use barwright_domain::plan::Plan;
use barwright_domain::volume::{Tally, behind, behind_side, places, planned};

use super::key::shows;
use super::row::{aloud, row};
use crate::contract::{BalanceScreen, Key, Look, MuscleBar, Row};
use crate::facts::{Balance, Held, Tallies};
use crate::phrase::Words;

/// Over a span of the plan's weeks, the current one last.
pub(super) fn screen(held: &Held, of: &Balance<'_>, words: Words) -> BalanceScreen {
    let plan = of.plan;
    let (first, last) = of.span;
    let next = of.calendar.next;
    let by_week: Vec<OneWeek> = {
        let asked = |week, sessions| asked(held, plan, week, sessions);
        (first..=last)
            .map(|week| OneWeek {
                kind: plan.weeks.get(index(week)).map(|week| week.kind).unwrap_or_default(),
                // What is planned is outlined whole; what is not due yet is no reason to be behind.
                asked: asked(week, usize::MAX),
                due: match next {
                    Some(next) if next.week == week => asked(week, next.nth().1),
                    _ => asked(week, usize::MAX),
                },
                over: next.is_none_or(|next| next.week > week),
                done: of.done.get(&week).cloned().unwrap_or_default(),
            })
            .collect()
    };
    let sum = |of: fn(&OneWeek) -> &Tallies| together(by_week.iter().map(of));
    let (asked, due) = (sum(|week| &week.asked), sum(|week| &week.due));
    let done = sum(|week| &week.done);
    // A week of which nothing was done yet would make every average less than it was.
    let begun = by_week.iter().filter(|week| week.over || !week.done.is_empty()).count();
    let open = still_to_train(of);
    let mut bars = Vec::new();
    let mut sentences: Vec<Row> = Vec::new();
    for muscle in Muscle::ALL {
        let of = |tallies: &Tallies| tallies.get(&muscle).copied().unwrap_or_default();
        let (asked, due, done) = (of(&asked), of(&due), of(&done));
        if asked == Tally::default() && done == Tally::default() {
            continue;
        }
        let lags = behind(muscle, due, done);
        bars.push(bar(muscle, asked, done, lags.is_some(), begun, words));
        if let Some(lags) = lags {
            let where_to = where_to(held, muscle, &open, false);
            let text = words.muscle().behind(&lags, &where_to, words.numerals);
            sentences.push(row(format!("behind-{}", muscle.slug()), 1, text).warns(true));
        }
        if let Some(lags) = behind_side(muscle, due, done) {
            let where_to = where_to(held, muscle, &open, true);
            let text = words.muscle().behind_side(&lags, &where_to, words.numerals);
            sentences.push(row(format!("side-{}", muscle.slug()), 1, text).warns(true));
        }
    }
    let widest = bars.iter().map(|bar| bar.planned_halves.max(bar.done_halves)).max();
    let subtitle = words.muscle().subtitle(&plan.name, first, last, plan.weeks.len());
    let texts: Vec<&str> = bars.iter().map(|bar| bar.text.as_str()).collect();
    let spoken = words.muscle().aloud(&subtitle, &texts, &aloud(&sentences, words));
    BalanceScreen {
        title: words.muscle().title().to_owned(),
        subtitle,
        full_halves: widest.unwrap_or(0).max(2),
        bars,
        sentences,
        kinds: kinds(&by_week, words),
        keys: keys(by_week.len(), last, words),
        aloud: spoken,
    }
}

/// A week's place in the plan's list.
fn index(week: u16) -> usize {
    usize::from(week).saturating_sub(1)
}

/// One week of the span.
struct OneWeek {
    kind: WeekKind,
    asked: Tallies,
    due: Tallies,
    /// Nothing more of it is to come.
    over: bool,
    done: Tallies,
}

fn asked(held: &Held, plan: &Plan, week: u16, sessions: usize) -> Tallies {
    let week = index(week);
    let ledger = planned(plan, week, sessions, &held.catalogue, plan.hard_at_left);
    let number = i32::try_from(week).unwrap_or(i32::MAX);
    Muscle::ALL.into_iter().map(|muscle| (muscle, ledger.week(number, muscle))).collect()
}

fn together<'a>(each: impl Iterator<Item = &'a Tallies>) -> Tallies {
    let mut sum = Tallies::new();
    for (muscle, tally) in each.flatten() {
        let known = sum.entry(*muscle).or_default();
        *known = known.and(*tally);
    }
    sum
}

/// Where a set could go: the exercises of what is still to be trained of the last week, by session.
fn still_to_train(of: &Balance<'_>) -> Vec<(String, String)> {
    let (plan, (_, last)) = (of.plan, of.span);
    let mut open = Vec::new();
    for (nth, at) in plan.sessions_of(index(last)).into_iter().enumerate() {
        let to_train = of.calendar.sessions.iter().any(|one| {
            one.at.nth() == (index(last), nth)
                && matches!(one.standing, Standing::Next | Standing::ToCome | Standing::Again)
        });
        let laid = plan.session(index(last), nth).filter(|_| to_train);
        let (Some(session), Some(laid)) = (plan.sessions.get(at), laid) else { continue };
        let exercises = laid.exercises.into_iter();
        open.extend(exercises.map(|entry| (session.name.clone(), entry.exercise)));
    }
    open
}

/// The sessions that a set for the muscle could go into; for one side alone, those that train it
/// one side at a time.
fn where_to(
    held: &Held,
    muscle: Muscle,
    open: &[(String, String)],
    one_sided: bool,
) -> Vec<String> {
    let exercises = open.iter().filter_map(|(name, slug)| Some((name, held.catalogue.get(slug)?)));
    let fit = exercises.filter(|(_, exercise)| exercise.one_sided || !one_sided);
    let mut names: Vec<String> = places(muscle, fit).cloned().collect();
    names.dedup();
    names
}

/// A week of each kind on average: the kinds in the order they first come, each muscle below. Of
/// weeks that are over, since one that runs would make its kind look behind.
fn kinds(by_week: &[OneWeek], words: Words) -> Vec<Row> {
    let over: Vec<&OneWeek> = by_week.iter().filter(|week| week.over).collect();
    let mut of: Vec<WeekKind> = Vec::new();
    for week in &over {
        if !of.contains(&week.kind) {
            of.push(week.kind);
        }
    }
    if of.len() < 2 {
        return Vec::new();
    }
    let mut rows = Vec::new();
    for kind in of {
        let alike: Vec<&&OneWeek> = over.iter().filter(|week| week.kind == kind).collect();
        let id = week_kind(kind);
        rows.push(row(format!("kind-{id}"), 1, words.muscle().week_kind(kind, alike.len())));
        let asked = together(alike.iter().map(|week| &week.asked));
        let done = together(alike.iter().map(|week| &week.done));
        for muscle in Muscle::ALL {
            let of = |tallies: &Tallies| halves(tallies.get(&muscle).copied().unwrap_or_default());
            let (asked, done) = (of(&asked), of(&done));
            if (asked, done) != (0, 0) {
                let (say, weeks) = (words.muscle(), alike.len());
                let text = say.week_of_kind(muscle, asked, done, weeks, words.numerals);
                rows.push(row(format!("kind-{id}-{}", muscle.slug()), 2, text));
            }
        }
    }
    rows
}

fn halves(tally: Tally) -> u32 {
    tally.sets.and(tally.under_six).both().halves()
}

/// The name of a kind in an id.
fn week_kind(kind: WeekKind) -> &'static str {
    match kind {
        WeekKind::Ordinary => "ordinary",
        WeekKind::EaseIn => "ease-in",
        WeekKind::Deload => "deload",
        WeekKind::Test => "test",
    }
}

fn keys(count: usize, most: u16, words: Words) -> Vec<Key> {
    [1_u16, 4, 8]
        .into_iter()
        .filter(|span| *span == 1 || *span <= most)
        .map(|span| {
            let label = words.words().weeks(usize::from(span));
            let look = Look::Balance { weeks: Some(u32::from(span)) };
            shows(format!("weeks-{span}"), label, look).chosen(count == usize::from(span))
        })
        .collect()
}

fn bar(
    muscle: Muscle,
    asked: Tally,
    done: Tally,
    behind: bool,
    weeks: usize,
    words: Words,
) -> MuscleBar {
    let (say, numerals) = (words.muscle(), words.numerals);
    let asked = asked.sets.and(asked.under_six);
    let all = done.sets.and(done.under_six);
    let (planned_halves, done_halves) = (asked.both().halves(), all.both().halves());
    let apart = all.left != all.right || asked.left != asked.right;
    let (direct, total) = (all.both().direct, all.both().total());
    let under_six_halves = done.under_six.both().halves().min(done_halves);
    MuscleBar {
        muscle: say.name(muscle),
        planned_halves,
        done_halves,
        left_halves: apart.then(|| all.left.halves()),
        right_halves: apart.then(|| all.right.halves()),
        direct,
        total,
        under_six_halves,
        text: say.bar(muscle, planned_halves, done_halves, numerals),
        detail: if done_halves == 0 {
            String::new()
        } else {
            let sides = apart.then(|| (all.left.halves(), all.right.halves()));
            say.counts(done_halves, (direct, total), under_six_halves, sides, weeks, numerals)
        },
        behind,
    }
}
