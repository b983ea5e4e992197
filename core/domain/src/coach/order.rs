//! What follows on what, and what stands in for what.

use super::laid;
use super::{About, Check, Finding, Level, Look};
use crate::call::{LoadCall, WeekKind};
use crate::catalogue::{Catalogue, IMPLEMENTS, Muscle, SUPPORTS};
use crate::plan::{Entry, Plan, WeekSession};
use crate::quantity::Percent;

/// Implements and supports of the catalogue that many gyms lack: common practice.
const SELDOM: [&str; 12] = [
    "trap-bar",
    "landmine",
    "sled",
    "hack-squat",
    "calf-machine",
    "hip-adduction",
    "hip-abduction",
    "row-machine",
    "pec-deck",
    "assisted-pull-up",
    "rings",
    "back-extension-bench",
];

/// From such a share of the max a set is heavy (NSCA Essentials, 4th ed., ch. 17: strength from
/// 85 %).
const HEAVY: Percent = Percent::whole(85);
/// So few repetitions, with so little left (in half repetitions), are heavy where no share says:
/// common practice, after the same table's six repetitions or fewer.
const HEAVY_REPS: u16 = 5;
const HEAVY_LEFT: u8 = 4;
/// Muscles that a finding names.
const NAMED: usize = 3;

/// Exercises that need what a gym may well lack, with nothing named instead.
pub(super) fn substitutes(look: Look<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (session, written) in look.plan.sessions.iter().enumerate() {
        for (slot, of) in written.exercises.iter().enumerate() {
            let Some(exercise) = look.catalogue.get(&of.exercise) else { continue };
            if of.optional || !of.substitutes.is_empty() {
                continue;
            }
            let elastic = elastic(look, (session, slot));
            let all = || {
                let own = std::iter::once(exercise.implement.as_ref()).chain(exercise.needs.iter());
                own.chain(elastic.iter().map(String::as_str))
            };
            let own = |need: &str| {
                let known = IMPLEMENTS.contains(&need) || SUPPORTS.contains(&need);
                !known && !elastic.iter().any(|one| one == need)
            };
            let owned = |needs: Vec<&str>| needs.into_iter().map(str::to_owned).collect::<Vec<_>>();
            let lacking = owned(all().filter(|need| !offers(look, need)).collect());
            let seldom = owned(all().filter(|need| SELDOM.contains(need) || own(need)).collect());
            let about = match (lacking.is_empty(), seldom.is_empty()) {
                (false, _) => About::Rare { needs: lacking, lacking: true },
                (true, false) => About::Rare { needs: seldom, lacking: false },
                (true, true) => continue,
            };
            let check = (Check::NoSubstitute, Level::LookAt);
            found.push(look.at_exercise(check, (session, slot), 0, &["name"], about));
        }
    }
    found
}

/// Whether it is there. A gym that has bands or chains without saying which has each of them; one
/// that names its own has those.
fn offers(look: Look<'_>, need: &str) -> bool {
    let any = ELASTIC.iter().find(|kind| need.split('-').any(|word| word == **kind));
    let plain = any.is_some_and(|kind| {
        let also = look.equipment.also.iter();
        also.map(String::as_str).any(|own| own == *kind || own.strip_suffix('s') == Some(kind))
    });
    plain || look.equipment.offers(need).is_here()
}

/// Words of a set-up's name that say what it is made of.
const ELASTIC: [&str; 2] = ["band", "chain"];

/// The bands and chains that an exercise is loaded with, by what equipment calls them: "red band,
/// doubled" needs a `red-band`.
fn elastic(look: Look<'_>, at: (usize, usize)) -> Vec<String> {
    let mut needs: Vec<String> = Vec::new();
    for (.., sessions) in look.laid.weeks() {
        let sets = laid::rows(sessions, at).flat_map(|row| &row.block.sets);
        for set in sets {
            let LoadCall::SetUp { name, .. } = &set.load else { continue };
            let Some(need) = named(name) else { continue };
            if !needs.contains(&need) {
                needs.push(need);
            }
        }
    }
    needs
}

/// The words up to "band" or "chain", joined as a slug; none where a set-up is of neither.
fn named(name: &str) -> Option<String> {
    let name = name.to_lowercase();
    let words: Vec<&str> = name.split(|c: char| !c.is_alphanumeric()).collect();
    let is = |word: &str| {
        ELASTIC.into_iter().find(|kind| word.strip_suffix('s').unwrap_or(word) == *kind)
    };
    let (at, kind) = words.iter().enumerate().find_map(|(at, word)| Some((at, is(word)?)))?;
    let before = words.iter().take(at).filter(|word| !word.is_empty()).copied();
    Some(before.chain([kind]).collect::<Vec<_>>().join("-"))
}

/// Heavy lifts on the same muscles a day apart: each pair of sessions once, at the later one's
/// exercise. About two days between them is common practice.
pub(super) fn neighbours(look: Look<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = Vec::new();
    let mut told: Vec<(usize, usize)> = Vec::new();
    for (week, sessions) in look.laid.of_kind(WeekKind::Ordinary) {
        let after = look.laid.week(week + 1);
        let this = sessions.iter().map(|session| (session, 0));
        let next = after.iter().map(|session| (session, 7));
        let both: Vec<(&WeekSession, i64)> = this.chain(next).collect();
        let day = |(session, later): &(&WeekSession, i64)| {
            session.day.map(|day| i64::from(day.num_days_from_monday()) + later)
        };
        for one in &both {
            for other in &both {
                let apart = day(other).zip(day(one)).map(|(other, one)| other - one);
                let pair = (one.0.session, other.0.session);
                if apart != Some(1) || one.1 > 0 || told.contains(&pair) {
                    continue;
                }
                if let Some(finding) = pair_of(look, one.0, other.0) {
                    told.push(pair);
                    found.push(finding);
                }
            }
        }
    }
    found
}

fn pair_of(look: Look<'_>, before: &WeekSession, after: &WeekSession) -> Option<Finding> {
    let direct = |entry: &Entry| -> &[Muscle] {
        look.catalogue.get(&entry.exercise).map_or(&[], |exercise| &exercise.direct)
    };
    for later in after.exercises.iter().filter(|entry| is_heavy(look, entry)) {
        for earlier in before.exercises.iter().filter(|entry| is_heavy(look, entry)) {
            let shared = direct(later).iter().filter(|one| direct(earlier).contains(one));
            let muscles: Vec<Muscle> = shared.copied().take(NAMED).collect();
            if !muscles.is_empty() {
                let about = About::HeavyBefore {
                    session: before.name.clone(),
                    exercise: earlier.exercise.clone(),
                    muscles,
                };
                let check = (Check::HeavyNeighbours, Level::LookAt);
                let at = (after.session, later.slot);
                return Some(look.at_exercise(check, at, 0, &["name"], about));
            }
        }
    }
    None
}

fn is_heavy(look: Look<'_>, entry: &Entry) -> bool {
    has_heavy_set(look.plan, look.catalogue, entry, false)
}

/// Whether an exercise of several joints has a heavy set; few repetitions of which no effort is said
/// are heavy where they are to be `taken_so`.
pub(super) fn has_heavy_set(
    plan: &Plan,
    catalogue: &Catalogue,
    entry: &Entry,
    taken_so: bool,
) -> bool {
    let compound = catalogue.get(&entry.exercise).is_some_and(|own| own.is_compound());
    let mut sets = entry.blocks.iter().flat_map(|block| &block.sets).filter(|set| !set.speed);
    compound
        && sets.any(|set| match laid::share(plan, &entry.exercise, set) {
            Some(share) => share >= HEAVY,
            None => {
                let few = laid::reps(set).is_some_and(|reps| (1..=HEAVY_REPS).contains(&reps));
                let said = set.effort.map(|effort| effort.left.from.halves() <= HEAVY_LEFT);
                few && said.unwrap_or(taken_so)
            }
        })
}
