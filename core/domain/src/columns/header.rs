//! What the first line of a table calls its columns, in English and German.

use super::model::{DistanceUnit, Field};
use crate::catalogue::find::plain;
use crate::quantity::MassUnit;

/// What columns are usually called. Written as names are compared: small, `ue` for `ü`, hyphens.
const CALLED: &[(Field, &[&str])] = &[
    (Field::Date, &["date", "day", "datum", "tag", "trainingstag"]),
    (
        Field::Time,
        &[
            "time",
            "start",
            "start-time",
            "begin",
            "began",
            "uhrzeit",
            "zeit",
            "beginn",
            "startzeit",
        ],
    ),
    (
        Field::Title,
        &[
            "title",
            "session",
            "session-name",
            "workout",
            "workout-name",
            "day",
            "titel",
            "training",
            "einheit",
            "trainingseinheit",
            "tag",
        ],
    ),
    (
        Field::Exercise,
        &[
            "exercise",
            "exercise-name",
            "lift",
            "movement",
            "name",
            "uebung",
            "uebungsname",
            "bewegung",
        ],
    ),
    (Field::Kind, &["kind", "type", "set-type", "set-kind", "art", "typ", "satzart", "satztyp"]),
    (
        Field::Set,
        &[
            "set",
            "set-number",
            "set-no",
            "set-nr",
            "set-order",
            "satz",
            "satz-nr",
            "satznummer",
            "nr",
            "no",
        ],
    ),
    (Field::Side, &["side", "seite"]),
    (Field::Sets, &["sets", "number-of-sets", "saetze", "anzahl-saetze"]),
    (Field::Reps, &["reps", "rep", "repetitions", "wdh", "wiederholungen", "wiederholung", "whg"]),
    (
        Field::Seconds,
        &[
            "seconds",
            "secs",
            "sec",
            "hold",
            "time",
            "duration",
            "sekunden",
            "sek",
            "haltezeit",
            "dauer",
            "zeit",
        ],
    ),
    (
        Field::Distance,
        &["distance", "metres", "meters", "miles", "yards", "strecke", "distanz", "meter", "weg"],
    ),
    (
        Field::Load,
        &["load", "weight", "mass", "gewicht", "last", "masse", "zusatzgewicht", "added"],
    ),
    (
        Field::Unit,
        &["unit", "units", "weight-unit", "load-unit", "einheit", "gewichtseinheit", "einheiten"],
    ),
    (Field::Rpe, &["rpe", "exertion", "effort", "anstrengung"]),
    (
        Field::Left,
        &["left", "rir", "reserve", "reps-left", "reps-in-reserve", "in-reserve", "wdh-in-reserve"],
    ),
];

/// A column of one of these is not of what was done: what was asked, estimates, the body, pauses.
const OTHER: &[&str] = &[
    "target",
    "planned",
    "goal",
    "previous",
    "estimated",
    "soll",
    "ziel",
    "geplant",
    "vorgabe",
    "body",
    "bodyweight",
    "koerper",
    "koerpergewicht",
    "rest",
    "pause",
    "pausenzeit",
    "volume",
    "volumen",
];

/// How a column is called.
#[derive(Debug)]
pub(super) struct Called {
    /// Its words, small and without a unit.
    words: Vec<String>,
    /// The unit of loads that it names.
    pub(super) mass: Option<MassUnit>,
    /// The unit of distances.
    pub(super) distance: Option<DistanceUnit>,
}

impl Called {
    pub(super) fn of(header: &str) -> Self {
        let mut called = Self { words: Vec::new(), mass: None, distance: None };
        let small = plain(header);
        for word in small.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()) {
            match word {
                "kg" | "kgs" | "kilogram" | "kilograms" | "kilogramm" => {
                    called.mass = Some(MassUnit::Kilogram);
                }
                "lb" | "lbs" | "pounds" => called.mass = Some(MassUnit::Pound),
                "m" => called.distance = Some(DistanceUnit::Metre),
                "km" => called.distance = Some(DistanceUnit::Kilometre),
                "ft" | "feet" => called.distance = Some(DistanceUnit::Foot),
                "yd" => called.distance = Some(DistanceUnit::Yard),
                "mi" => called.distance = Some(DistanceUnit::Mile),
                "metres" | "meters" | "meter" => {
                    called.distance = Some(DistanceUnit::Metre);
                    called.words.push(word.to_owned());
                }
                "miles" | "yards" => {
                    let miles = word == "miles";
                    let unit = if miles { DistanceUnit::Mile } else { DistanceUnit::Yard };
                    called.distance = Some(unit);
                    called.words.push(word.to_owned());
                }
                word => called.words.push(word.to_owned()),
            }
        }
        called
    }

    /// How well it names a field; none where it does not.
    pub(super) fn names(&self, field: Field) -> Option<usize> {
        if self.words.iter().any(|word| OTHER.contains(&word.as_str())) {
            return None;
        }
        // "kg" alone is a load, "m" alone a distance.
        if self.words.is_empty() {
            let unit = match field {
                Field::Load => self.mass.is_some(),
                Field::Distance => self.distance.is_some(),
                _ => false,
            };
            return unit.then_some(200);
        }
        let whole = self.words.join("-");
        let (_, names) = CALLED.iter().find(|(of, _)| *of == field)?;
        let each = names.iter().filter_map(|name| {
            let count = name.split('-').count();
            let within = || {
                let mut windows = self.words.windows(count);
                windows.any(|words| words.join("-") == *name)
            };
            match () {
                () if whole == *name => Some(300),
                () if within() => Some(100 + name.len()),
                () => None,
            }
        });
        each.max()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The field that a header names best.
    fn best(header: &str) -> Option<Field> {
        let called = Called::of(header);
        let each = Field::ALL.into_iter().filter_map(|field| Some((called.names(field)?, field)));
        // The first of the best.
        each.rev().max_by_key(|(score, _)| *score).map(|(_, field)| field)
    }

    #[test]
    fn headers_of_either_language_name_fields() {
        for (header, field) in [
            ("Date", Some(Field::Date)),
            ("Datum", Some(Field::Date)),
            ("Übung", Some(Field::Exercise)),
            ("Exercise name", Some(Field::Exercise)),
            ("Weight (kg)", Some(Field::Load)),
            ("load_lb", Some(Field::Load)),
            ("Gewicht [kg]", Some(Field::Load)),
            ("kg", Some(Field::Load)),
            ("Wdh.", Some(Field::Reps)),
            ("Reps in reserve (RIR)", Some(Field::Left)),
            ("Reps", Some(Field::Reps)),
            ("Set type", Some(Field::Kind)),
            ("Set #", Some(Field::Set)),
            ("Sätze", Some(Field::Sets)),
            ("Uhrzeit", Some(Field::Time)),
            ("Distance (km)", Some(Field::Distance)),
            ("m", Some(Field::Distance)),
            ("Seite", Some(Field::Side)),
            ("Target reps", None),
            ("Body weight", None),
            ("Körpergewicht", None),
            ("Rest time", None),
            ("Notes", None),
            ("", None),
        ] {
            assert_eq!(best(header), field, "{header}");
        }
        assert_eq!(Called::of("Weight (lbs)").mass, Some(MassUnit::Pound));
        assert_eq!(Called::of("Distance (km)").distance, Some(DistanceUnit::Kilometre));
    }
}
