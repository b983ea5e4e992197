//! A session made to fit the gym: which exercises would do in the place of others.

use barwright_domain::catalogue::Exercise;
use barwright_domain::desk::ForOnce;
use barwright_domain::equipment::Equipment;
use barwright_domain::prescribe::{self, Candidate};
use barwright_domain::session::{Entry, Sheet};

use super::Held;

/// What would do in the place of an entry, the likeliest first; of none, what could be added.
pub(crate) fn candidates<'a>(
    held: &'a Held,
    gym: &Equipment,
    entry: Option<&Entry>,
    here: &[String],
) -> Vec<Candidate<'a>> {
    let of = entry.and_then(|entry| first(held, entry));
    let planned: Vec<String> = entry
        .map(|entry| entry.instead.iter().map(|one| one.exercise.clone()).collect())
        .unwrap_or_default();
    prescribe::candidates(&held.catalogue, gym, of, &planned, here)
}

/// The exercise that an entry is, or stands in for.
fn first<'a>(held: &'a Held, entry: &Entry) -> Option<&'a Exercise> {
    held.catalogue.get(entry.stands_in_for.as_deref().unwrap_or(&entry.exercise))
}

/// Changes after which a session asks for nothing that the gym lacks.
pub(crate) fn fitted(held: &Held, sheet: &Sheet) -> Vec<ForOnce> {
    let gym = held.gym();
    let mut here: Vec<String> = sheet.entries().map(|entry| entry.exercise.clone()).collect();
    let mut changes = Vec::new();
    for entry in sheet.entries().filter(|entry| !entry.lacks.is_empty()) {
        let would_do = candidates(held, &gym, Some(entry), &here)
            .into_iter()
            .find(|one| one.possible() && one.would_do())
            .map(|one| one.exercise.slug.to_string());
        let of = entry.exercise.clone();
        changes.push(match would_do {
            Some(exercise) => {
                here.push(exercise.clone());
                ForOnce::Instead { of, exercise }
            }
            None => ForOnce::LeftOut { exercise: of },
        });
    }
    changes
}
