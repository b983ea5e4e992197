//! A plan's file changed a step at a time, as by hand: see [`crate::text::edit`].

use super::shapes::{self, PLAN};
use super::{Plan, bounds};
use crate::catalogue::{Catalogue, Exercise, Measure};
use crate::text::edit::{NotEdited, Put, Written, add, again, put, remove};
use crate::text::typed;

/// The kinds of weeks, in the format's own words.
pub const KINDS: &[&str] = shapes::KINDS;
/// What a plan can be for.
pub const GOALS: &[&str] = shapes::GOALS;
/// What can change next time.
pub const RULES: &[&str] = shapes::RULES_KNOWN;
/// The days of the week.
pub const DAYS: &[&str] = shapes::DAYS;
/// The most weeks.
pub const WEEKS: usize = bounds::WEEKS;
/// The most sets of a row.
pub const SETS: usize = bounds::SETS;

/// A plan with one session and nothing in it.
pub fn empty(name: &str, session: &str) -> String {
    let named = [("name", Put::from(name)), ("weeks", Put::Whole(4))];
    let text = named
        .into_iter()
        .fold(String::new(), |text, (key, value)| put(&text, key, &value).unwrap_or(text));
    one_session(&text, session).unwrap_or(text)
}

/// The plan under another name.
///
/// # Errors
/// [`NotEdited`].
pub fn named(text: &str, name: &str) -> Result<String, NotEdited> {
    put(text, "name", &name.into())
}

/// One more session, last, with nothing in it.
///
/// # Errors
/// [`NotEdited`].
pub fn one_session(text: &str, name: &str) -> Result<String, NotEdited> {
    add(text, "session", &Put::Table(vec![("name", name.into())]))
}

/// A session again, last, under another name: rows that are written alike go on sharing their loads.
///
/// # Errors
/// [`NotEdited`].
pub fn session_again(text: &str, session: usize, name: &str) -> Result<String, NotEdited> {
    let count = Written::of(text).map_or(0, |written| written.count("session"));
    let text = again(text, &format!("session.{session}"))?;
    put(&text, &format!("session.{count}.name"), &name.into())
}

/// One more exercise in a session, last, by its name in the language of `known`: three sets of what is usual for
/// it (common practice).
///
/// # Errors
/// [`NotEdited`].
pub fn one_exercise(
    text: &str,
    session: &str,
    exercise: &Exercise,
    known: &Catalogue,
) -> Result<String, NotEdited> {
    let how_many = match exercise.measure {
        Measure::Reps => ("reps", Put::from("8-12")),
        Measure::Seconds => ("seconds", Put::Whole(30)),
        Measure::Metres => ("metres", Put::Whole(20)),
    };
    let name = Put::from(known.written(exercise));
    let named = [("name", name), ("sets", Put::Whole(3)), how_many];
    add(text, &format!("{session}.exercise"), &Put::Table(named.into()))
}

/// One more row of sets in an exercise: where it had none, what it says itself is the first one's.
///
/// # Errors
/// [`NotEdited`].
pub fn one_row(text: &str, exercise: &str) -> Result<String, NotEdited> {
    let row = || Put::Table(vec![("sets", Put::Whole(1))]);
    let written = Written::of(text).ok_or(NotEdited::NotToml)?;
    let place = format!("{exercise}.set");
    if written.count(&place) > 0 {
        return add(text, &place, &row());
    }
    let sets = written.said(&format!("{exercise}.sets")).and_then(|sets| sets.parse().ok());
    let mut text = add(text, &place, &row())?;
    if let Some(sets) = sets {
        text = put(&text, &format!("{place}.0.sets"), &Put::Whole(sets))?;
        text = remove(&text, &format!("{exercise}.sets"))?;
    }
    add(&text, &place, &row())
}

/// The kind of a week, from 1.
///
/// # Errors
/// [`NotEdited`].
pub fn week_kind(text: &str, week: usize, kind: &str) -> Result<String, NotEdited> {
    let written = Written::of(text).ok_or(NotEdited::NotToml)?;
    let number = |at: usize| written.said(&format!("week.{at}.number"));
    let own = (0..written.count("week")).find(|at| number(*at) == Some(week.to_string()));
    match own {
        Some(at) if KINDS.first() == Some(&kind) => {
            let text = remove(text, &format!("week.{at}.kind"))?;
            // Where it says no more than its number it says nothing.
            let left = Written::of(&text).map(|written| written.keys(&format!("week.{at}")));
            match left {
                Some(left) if left == ["number"] => remove(&text, &format!("week.{at}")),
                _ => Ok(text),
            }
        }
        Some(at) => put(text, &format!("week.{at}.kind"), &kind.into()),
        None => {
            let number = i64::try_from(week).map_err(|_| NotEdited::NoPlace)?;
            let keys = vec![("number", Put::Whole(number)), ("kind", kind.into())];
            add(text, "week", &Put::Table(keys))
        }
    }
}

/// What a person typed at a place; nothing takes it away. Weeks are told apart by semicolons, or by
/// commas where each has one for all its sets; sets by commas.
///
/// # Errors
/// [`NotEdited`].
pub fn write(text: &str, place: &str, said: &str) -> Result<String, NotEdited> {
    let said = said.trim();
    if said.is_empty() {
        return remove(text, place.strip_suffix(".by_week").unwrap_or(place));
    }
    let Some(key) = place.strip_suffix(".by_week") else {
        let value = typed(&PLAN, place, said).ok_or(NotEdited::NoPlace)?;
        return put(text, place, &value);
    };
    let each = said.split(if said.contains(';') { ';' } else { ',' });
    let week = format!("{place}.0");
    let weeks: Option<Vec<Put>> = each.map(|said| typed(&PLAN, &week, said.trim())).collect();
    let weeks = Put::List(weeks.ok_or(NotEdited::NoPlace)?);
    // What is the same in all weeks makes room.
    let written = Written::of(text).ok_or(NotEdited::NotToml)?;
    let text = match written.said(key) {
        Some(_) if written.keys(key).is_empty() => remove(text, key)?,
        _ => text.to_owned(),
    };
    put(&text, place, &weeks)
}

/// What of a slot belongs to the exercise that it was written for, in the exercise and in its rows.
const OF_ITS_EXERCISE: [&str; 9] = [
    "load",
    "percent_of",
    "counted",
    "sides",
    "set_up",
    "track",
    "technique",
    "part_techniques",
    "cues",
];

/// Another exercise in the place of one of a session, both by their places, from now on: it has its
/// own history, so its load is found by feel; it is named in the language of `known`. What the new one can't follow (a rule, a list of
/// substitutes) goes too.
///
/// # Errors
/// [`NotEdited`].
pub fn exchange(
    text: &str,
    (session, slot): (usize, usize),
    exercise: &Exercise,
    known: &Catalogue,
) -> Result<String, NotEdited> {
    let place = format!("session.{session}.exercise.{slot}");
    let mut text = put(text, &format!("{place}.name"), &known.written(exercise).into())?;
    let rows = Written::of(&text).map_or(0, |written| written.count(&format!("{place}.set")));
    let owners =
        std::iter::once(place.clone()).chain((0..rows).map(|at| format!("{place}.set.{at}")));
    for owner in owners {
        for key in OF_ITS_EXERCISE {
            if let Ok(without) = remove(&text, &format!("{owner}.{key}")) {
                text = without;
            }
        }
    }
    let sound = |text: &str| Plan::read(text, known).is_ok();
    for key in ["next", "substitutes", "ramp"] {
        if sound(&text) {
            break;
        }
        if let Ok(without) = remove(&text, &format!("{place}.{key}"))
            && (sound(&without) || !sound(&text))
        {
            text = without;
        }
    }
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::PlanFile;

    fn read(text: &str) -> Result<PlanFile, Vec<crate::text::Fault>> {
        Plan::read(text, &Catalogue::builtin())
    }

    fn sound(text: &str) -> Plan {
        read(text).unwrap_or_else(|faults| panic!("{faults:#?}\n{text}")).plan
    }

    #[test]
    fn a_plan_is_made_step_by_step() {
        let catalogue = Catalogue::builtin();
        let text = empty("Mine", "A");
        assert!(read(&text).is_err(), "a session without an exercise is a fault");
        let text =
            one_exercise(&text, "session.0", catalogue.get("back-squat").unwrap(), &catalogue)
                .unwrap();
        let text = one_session(&text, "B").unwrap();
        let text =
            one_exercise(&text, "session.1", catalogue.get("plank").unwrap(), &catalogue).unwrap();
        // The second session's comes after its own heading, the first's before it.
        let text = one_exercise(&text, "session.0", catalogue.get("pull-up").unwrap(), &catalogue)
            .unwrap();
        let plan = sound(&text);
        let names: Vec<_> =
            plan.sessions.iter().map(|s| (s.name.as_str(), s.exercises.len())).collect();
        assert_eq!(names, [("A", 2), ("B", 1)]);
        let text = week_kind(&text, 4, "deload").unwrap();
        assert_eq!(sound(&text).weeks[3].kind, crate::call::WeekKind::Deload);
        let text = week_kind(&text, 4, "ordinary").unwrap();
        assert_eq!(sound(&text).weeks[3], super::super::Week::default());
    }

    #[test]
    fn varied_by_week_and_by_set() {
        let catalogue = Catalogue::builtin();
        let squat = catalogue.get("back-squat").unwrap();
        let text = one_exercise(&empty("Mine", "A"), "session.0", squat, &catalogue).unwrap();
        let place = "session.0.exercise.0";
        let text = write(&text, &format!("{place}.load"), "100 kg").unwrap();
        let text =
            write(&text, &format!("{place}.load.by_week"), "70 %, 75 %, 80 %, 60 %").unwrap();
        let text = write(&text, &format!("{place}.sets"), "3").unwrap();
        let text =
            write(&text, &format!("{place}.reps.by_week"), "5, 5, 5; 5, 3, 1; 3; 5").unwrap();
        let line = &sound(&text).sessions[0].exercises[0].lines[0];
        assert!(line.load.by_week() && line.how_many.by_week());
        assert_eq!(line.how_many.at(1).unwrap().len(), 3);
        // And the same in all weeks again.
        let text = write(&text, &format!("{place}.load"), "80 kg").unwrap();
        assert!(!sound(&text).sessions[0].exercises[0].lines[0].load.by_week());
        // A row apart takes what it does not say from the exercise.
        let text = write(&text, &format!("{place}.reps"), "5").unwrap();
        let text = one_row(&text, place).unwrap();
        let lines = &sound(&text).sessions[0].exercises[0].lines;
        assert_eq!(lines.len(), 2);
    }
}
