//! What the file accepts, and acceptances that name nothing.

use super::{About, Check, Finding, Level, Look};
use crate::plan::Accepted;

/// Marks what the file accepts, and adds what is to be said of the acceptances themselves.
pub(super) fn mark(look: Look<'_>, found: &mut Vec<Finding>) {
    let mut said = Vec::new();
    for (at, accepted) in look.plan.accepted.iter().enumerate() {
        let mut used = false;
        for finding in found.iter_mut().filter(|finding| accepts(look, accepted, finding)) {
            used = true;
            finding.accepted.get_or_insert_with(|| accepted.because.clone());
        }
        let check = Check::ALL
            .into_iter()
            .find(|check| check.slug() == accepted.check && check.can_be_accepted());
        let session = accepted.session.as_deref();
        let known = |name: &&str| look.plan.sessions.iter().any(|one| one.name == **name);
        let (kind, key, about) = match (check, session.filter(|name| !known(name))) {
            (None, _) => {
                let name = accepted.check.clone();
                let nearest = nearest(&name);
                (Check::AcceptUnknown, "check", About::UnknownCheck { name, nearest })
            }
            (Some(_), Some(name)) => {
                (Check::AcceptUnknown, "session", About::UnknownSession { name: name.to_owned() })
            }
            // What a gym can step hangs on the gym, and this may be another one.
            (Some(Check::CoarseSteps | Check::CannotProgress | Check::NoSubstitute), None) => {
                continue;
            }
            (Some(_), None) if used => continue,
            (Some(_), None) => (Check::AcceptUnused, "check", About::Unused),
        };
        let place = look.file.places.accepted(at).unwrap_or(look.file.places.plan());
        said.push(Finding {
            check: kind,
            level: if kind == Check::AcceptUnknown { Level::Change } else { Level::LookAt },
            session: None,
            exercise: None,
            span: place.at(&[key]),
            about,
            accepted: None,
        });
    }
    found.extend(said);
}

fn accepts(look: Look<'_>, accepted: &Accepted, finding: &Finding) -> bool {
    let session = finding.session.and_then(|at| look.plan.sessions.get(at));
    let exercise = session.zip(finding.exercise).and_then(|(of, at)| of.exercises.get(at));
    accepted.check == finding.check.slug()
        && finding.check.can_be_accepted()
        && accepted.session.as_ref().is_none_or(|name| session.is_some_and(|s| s.name == *name))
        && accepted
            .exercise
            .as_ref()
            .is_none_or(|slug| exercise.is_some_and(|e| e.exercise == *slug))
}

fn nearest(name: &str) -> Option<&'static str> {
    let name: String = name.to_lowercase().chars().take(60).collect();
    Check::ALL
        .into_iter()
        .filter(|check| check.can_be_accepted())
        .map(|check| (strsim::osa_distance(&name, check.slug()), check.slug()))
        .filter(|(distance, slug)| *distance <= slug.len() / 3)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, slug)| slug)
}
