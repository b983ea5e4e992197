//! What a plan's file says at a place as a person types it, and a step of it either way.

use barwright_domain::plan::by_hand;

/// One step down and up; none either way where it has none.
pub(super) type Steps = (Option<String>, Option<String>);

/// A list as a person types it: without brackets and quotes.
pub(super) fn listed(said: &str) -> String {
    match said.strip_prefix('[').and_then(|said| said.strip_suffix(']')) {
        Some(inner) if !inner.contains(['{', '[']) => inner.replace('"', "").trim().to_owned(),
        _ => said.to_owned(),
    }
}

/// Weeks as a person types them: apart by semicolons where one has several sets.
pub(super) fn by_week(said: &str) -> String {
    let inner = said.trim().strip_prefix('[').and_then(|said| said.strip_suffix(']'));
    let inner = inner.unwrap_or(said);
    if !inner.contains('[') {
        return inner.replace('"', "").trim().trim_end_matches(',').to_owned();
    }
    let mut weeks = vec![String::new()];
    let mut within = false;
    for one in inner.chars() {
        match one {
            '[' => within = true,
            ']' => within = false,
            ',' if !within => weeks.push(String::new()),
            '"' | '\n' => {}
            one => {
                if let Some(week) = weeks.last_mut() {
                    week.push(one);
                }
            }
        }
    }
    let weeks: Vec<&str> = weeks.iter().map(|week| week.trim()).filter(|w| !w.is_empty()).collect();
    weeks.join("; ")
}

/// Whether one of some words of the file is written at a key.
pub(super) fn is_word(key: &str) -> bool {
    matches!(key, "next" | "goal" | "day" | "optional" | "keep" | "speed")
}

/// One step down and up of what is written, where it has steps.
pub(super) fn stepped(key: &str, said: &str) -> Option<Steps> {
    match key {
        "next" => beside_word(by_hand::RULES, said, true),
        "goal" => beside_word(by_hand::GOALS, said, true),
        "day" => beside_word(by_hand::DAYS, said, true),
        "optional" | "keep" | "speed" => beside_word(&["false", "true"], said, true),
        "sets" | "weeks" | "reps" | "seconds" | "metres" | "minutes" => {
            let most = match key {
                "sets" => by_hand::SETS,
                "weeks" => by_hand::WEEKS,
                _ => 600,
            };
            let now: usize = said.parse().ok()?;
            let by = if matches!(key, "seconds" | "metres" | "minutes") { 5 } else { 1 };
            let down = now.checked_sub(by).filter(|down| *down > 0);
            let up = Some(now.saturating_add(by)).filter(|up| *up <= most);
            Some((down.map(|to| to.to_string()), up.map(|to| to.to_string())))
        }
        "load" => load_steps(said),
        _ => None,
    }
}

/// A load 2.5 kg, 2.5 % or 5 lb down and up.
fn load_steps(said: &str) -> Option<Steps> {
    let (figure, unit) = said.split_once(' ')?;
    let by = match unit {
        "kg" | "%" => 25,
        "lb" => 50,
        _ => return None,
    };
    let (whole, tenth) = figure.split_once('.').unwrap_or((figure, "0"));
    let tenth: u32 = tenth.parse().ok().filter(|tenth| *tenth < 10)?;
    let tenths = whole.parse::<u32>().ok()?.checked_mul(10)?.checked_add(tenth)?;
    let print = |tenths: u32| match tenths % 10 {
        0 => format!("{} {unit}", tenths / 10),
        part => format!("{}.{part} {unit}", tenths / 10),
    };
    let down = tenths.checked_sub(by).filter(|down| *down > 0);
    Some((down.map(print), tenths.checked_add(by).map(print)))
}

/// The words before and after one in a list; where nothing may be said, nothing stands before the
/// first. None where it is none of them.
pub(super) fn beside_word(all: &[&str], said: &str, or_nothing: bool) -> Option<Steps> {
    let word = |at: Option<usize>| at.and_then(|at| all.get(at)).map(|word| (*word).to_owned());
    match all.iter().position(|word| *word == said) {
        None if or_nothing && said.is_empty() => Some((None, word(Some(0)))),
        None => None,
        Some(0) if or_nothing => Some((Some(String::new()), word(Some(1)))),
        Some(at) => Some((word(at.checked_sub(1)), word(at.checked_add(1)))),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn as_a_person_types_it() {
        assert_eq!(listed("[\"5\", \"3\", \"1\"]"), "5, 3, 1");
        assert_eq!(listed("[{ name = \"x\" }]"), "[{ name = \"x\" }]");
        assert_eq!(by_week("[\"70 %\", \"75 %\"]"), "70 %, 75 %");
        assert_eq!(by_week("[[5, 5, 5], [5, 3, 1], 3]"), "5, 5, 5; 5, 3, 1; 3");
    }

    #[test]
    fn a_step_either_way() {
        let some = |text: &str| Some(text.to_owned());
        assert_eq!(stepped("load", "77.5 %"), Some((some("75 %"), some("80 %"))));
        assert_eq!(stepped("load", "2.5 kg"), Some((None, some("5 kg"))));
        assert_eq!(stepped("load", "by feel"), None);
        assert_eq!(stepped("sets", "1"), Some((None, some("2"))));
        assert_eq!(stepped("reps", "6-10"), None);
        assert_eq!(stepped("day", ""), Some((None, some("Monday"))));
        assert_eq!(stepped("day", "Monday"), Some((some(""), some("Tuesday"))));
        assert_eq!(beside_word(by_hand::KINDS, "test", false), Some((some("deload"), None)));
    }
}
