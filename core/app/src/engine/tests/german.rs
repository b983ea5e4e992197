//! Every screen in German: no word of the English folder is left on one.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use barwright_domain::catalogue::{Catalogue, Exercise, Tongue};
use serde_json::Value;

use super::language::{Abroad, play};
use crate::contract::{Intent, Look, Screen};
use crate::locale::Locale;

/// Words of the English folder that stand on German screens too, and why.
const ALLOWED: &[(&str, &str)] = &[
    ("in an was so lies do half", "small German words and forms; Sunday and Thursday in short"),
    ("nov", "a month that is short for the same"),
    ("name test plan start text hand partner reserve training", "German nouns"),
    ("rpe tempo drop drops cluster rest pause block back off", "the trade's own, borrowed"),
    ("rack kettlebell kettlebells band trap bar", "implements that are called so in German"),
    ("kg lb mm min barwright", "units, and the program's name"),
    ("lloyd et al british journal of sports medicine", "a paper, as it is cited"),
    ("accept substitutes pairs check", "keys of a file and the command that reads it"),
    ("no substitute", "a check, by the name that a file accepts it with"),
    ("barbell bench safety", "words of a file that a lifter types"),
];

/// What an exercise is called in German: some keep the trade's English name.
fn german(exercise: &Exercise) -> impl Iterator<Item = &str> {
    let tongue = Tongue::German;
    std::iter::once(exercise.name_in(tongue)).chain(exercise.also_in(tongue))
}

/// Words of a text in small letters; what stands in straight quotes is a file's own and is left out.
fn words(text: &str) -> Vec<String> {
    let outside: Vec<&str> = text.split('"').step_by(2).collect();
    outside
        .join(" ")
        .split(|one: char| !one.is_alphabetic())
        .filter(|word| word.chars().count() > 1)
        .map(str::to_lowercase)
        .collect()
}

/// The same with a space before and after each, so that a name is not found within a word.
fn spaced(text: &str) -> String {
    format!(" {} ", words(text).join(" "))
}

/// What stands in quotes in the source of the English words, without what it is filled in with.
fn english() -> BTreeSet<String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/phrase/en");
    let mut all = BTreeSet::new();
    for file in std::fs::read_dir(folder).unwrap() {
        let source = std::fs::read_to_string(file.unwrap().path()).unwrap();
        let source = source.split("#[cfg(test)]").next().unwrap_or_default();
        let code: Vec<&str> =
            source.lines().filter(|line| !line.trim_start().starts_with("//")).collect();
        let code = code.join("\n").replace("\\\"", " ").replace("'\"'", " ");
        for (nth, literal) in code.split('"').enumerate() {
            if nth % 2 == 1 {
                let mut filled = String::new();
                let mut depth = 0_u32;
                for one in literal.chars() {
                    match one {
                        '{' => depth += 1,
                        '}' => depth = depth.saturating_sub(1),
                        _ if depth == 0 => filled.push(one),
                        _ => {}
                    }
                }
                all.extend(words(&filled.replace('\\', " ")));
            }
        }
    }
    all
}

/// The looks that keys of a screen lead to.
fn leads_to(value: &Value, found: &mut Vec<Look>) {
    match value {
        Value::Object(fields) => {
            let look = fields.get("show").and_then(|show| show.get("look")).cloned();
            found.extend(look.and_then(|look| serde_json::from_value(look).ok()));
            fields.values().for_each(|value| leads_to(value, found));
        }
        Value::Array(values) => values.iter().for_each(|value| leads_to(value, found)),
        _ => {}
    }
}

/// The looks that some screen leads to, the nearest first, each once: a load that is stepped leads on
/// without an end, so there is one here.
fn wander(lifter: &mut Abroad) -> usize {
    let mut ahead = vec![Look::Today { session: None, minutes: None }, Look::Care, Look::Weeks];
    let mut next = 0;
    while next < ahead.len().min(200) {
        let look = ahead[next].clone();
        next += 1;
        if let Some(screen) = lifter.view(look) {
            let mut found = Vec::new();
            leads_to(&serde_json::to_value(screen).unwrap(), &mut found);
            for look in found {
                if !ahead.contains(&look) {
                    ahead.push(look);
                }
            }
        }
    }
    next
}

/// What a plan made by hand calls its lines; what stands in them is the file's.
fn labels_of_a_plan_by_hand() -> Vec<(String, String)> {
    let say = Locale::read("de-DE").words().plan_form();
    let keys = [
        "name",
        "day",
        "minutes",
        "weeks",
        "goal",
        "sets",
        "reps",
        "seconds",
        "metres",
        "load",
        "left",
        "rpe",
        "rest",
        "next",
        "superset",
        "optional",
        "substitutes",
        "keep",
        "tempo",
        "technique",
        "cues",
        "every",
        "on_sets",
        "drop",
        "cluster.blocks",
        "cluster.pause",
        "rest_pause.each",
        "rest_pause.pause",
        "rest_pause.total",
        "climb.step",
        "climb.most_sets",
        "repeat.most_sets",
        "total.reps",
        "test.step",
        "speed",
        "side",
        "track",
        "sides",
        "counted",
        "percent_of",
        "ramp",
        "wear",
        "misses",
        "set_up.pins",
        "set_up.seat",
        "set_up.attachment",
        "set_up.bench",
    ];
    keys.iter().map(|key| ("label".to_owned(), say.key(key))).collect()
}

#[test]
fn no_german_screen_says_an_english_word() {
    let mut lifter = Abroad::new(Locale::read("de-DE"));
    play(&mut lifter);
    let shown = wander(&mut lifter);
    assert!(shown == 200, "{shown} screens were shown");
    lifter.texts.extend(labels_of_a_plan_by_hand());
    let english = english();
    assert!(english.len() > 800, "{} words of English", english.len());
    let catalogue = Catalogue::builtin();
    // The longest first: one name stands within another.
    let mut names: Vec<String> = catalogue.iter().flat_map(german).map(spaced).collect();
    names.sort_unstable_by_key(|name| std::cmp::Reverse(name.len()));
    // A word, and a text it was said in.
    let mut left = BTreeMap::new();
    let allowed: BTreeSet<&str> = ALLOWED.iter().flat_map(|(words, _)| words.split(' ')).collect();
    let mut met: BTreeSet<String> = BTreeSet::new();
    for (field, text) in &lifter.texts {
        let mut said = spaced(text);
        for name in &names {
            said = said.replace(name.as_str(), "  ");
        }
        for word in words(&said) {
            let own = word.starts_with("qq");
            if !english.contains(&word) || own {
                continue;
            }
            if allowed.contains(word.as_str()) {
                met.insert(word);
            } else {
                left.entry(word).or_insert_with(|| format!("{field}: {text}"));
            }
        }
    }
    assert!(left.is_empty(), "{left:#?}");
    let never: Vec<&&str> = allowed.iter().filter(|word| !met.contains(**word)).collect();
    assert!(never.is_empty(), "allowed, and on no screen: {never:?}");
}

/// Whether a text holds a number with a decimal point; a date's stop stands before a space.
fn pointed(text: &str) -> bool {
    let letters: Vec<char> = text.chars().collect();
    letters.windows(3).any(|three| {
        matches!(three, [one, '.', other] if one.is_ascii_digit() && other.is_ascii_digit())
    })
}

#[test]
fn no_german_screen_writes_a_decimal_point() {
    let mut lifter = Abroad::new(Locale::read("de-DE"));
    play(&mut lifter);
    // A session of a week is no number: "Zusammen mit Unterkörper (2.1)".
    let left: Vec<_> = lifter
        .texts
        .iter()
        .filter(|(_, text)| !text.starts_with("Zusammen mit "))
        .filter(|(_, text)| text.split('"').step_by(2).any(pointed))
        .collect();
    assert!(left.is_empty(), "{left:#?}");
    for said in ["1,25 auflegen", "1,25 kg auflegen", "1,25 kg · 1 Paar und 1 einzeln"] {
        assert!(lifter.texts.iter().any(|(_, text)| text.contains(said)), "{said}");
    }
}

/// What stands on plates and pins is shown with the number as the lifter writes it, and stays in
/// the file and in names for programs as it was written; what is no number is shown as it stands.
#[test]
fn what_stands_on_plates_and_pins_is_a_number_where_it_is_one() {
    const GYM: &str = "name = \"Qqroom\"\nunit = \"kg\"\n\
        [[bar]]\nname = \"Qqbar\"\nmass = \"20 kg\"\n\
        [[plate]]\nmass = \"1.25 kg\"\npairs = 1\n\
        [[stack]]\nname = \"Qqone\"\nkind = \"pulldown\"\npins = [\"1.5\", \"2.5 alt\"]\n\
        [[stack]]\nname = \"Qqtwo\"\nkind = \"low-row\"\npins = [\"20A\", \"A.5\"]\n";
    let shown = |tag: &str| {
        let mut lifter = Abroad::new(Locale::read(tag));
        lifter.tap(Intent::AddGym { text: GYM.into() }).unwrap();
        lifter.tap(Intent::ChooseGym { name: "Qqroom".into() }).unwrap();
        let Some(Screen::Equipment { equipment }) = lifter.view(Look::Equipment) else { panic!() };
        let lines = equipment
            .rows
            .into_iter()
            .filter(|row| row.id.starts_with("plate-") || row.id.starts_with("stack-"));
        lines.map(|row| (row.id, row.text)).collect::<Vec<_>>()
    };
    let said = |lines: [(&str, &str); 3]| lines.map(|(id, text)| (id.to_owned(), text.to_owned()));
    let english = [
        ("plate-1.25 kg", "1.25 kg · 1 pair"),
        ("stack-Qqone", "Qqone · pin 1.5 to 2.5 alt"),
        ("stack-Qqtwo", "Qqtwo · pin 20A to A.5"),
    ];
    let german = [
        ("plate-1.25 kg", "1,25 kg · 1 Paar"),
        ("stack-Qqone", "Qqone · Stift 1,5 bis 2.5 alt"),
        ("stack-Qqtwo", "Qqtwo · Stift 20A bis A.5"),
    ];
    let swiss = german.map(|(id, text)| (id, text.replace("1,", "1.")));
    assert_eq!(shown("en-GB"), said(english));
    assert_eq!(shown("de-DE"), said(german));
    assert_eq!(shown("de-CH"), said(swiss.each_ref().map(|(id, text)| (*id, text.as_str()))));
}
