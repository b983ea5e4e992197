//! `barwright estimate`: a max estimated from one set.

use std::io::Write;

use barwright_app::Locale;
use barwright_domain::progress::estimate::{Estimate, Formula, Nearness};
use barwright_domain::quantity::{Mass, Reserve};
use serde::Serialize;

use super::{Failure, say};

/// The set, and how to estimate from it.
#[derive(Debug, clap::Args)]
pub(crate) struct Asked {
    /// The load: 100kg, "225 lb". For lifts of the body all that was moved.
    load: String,
    /// Repetitions made.
    reps: u16,
    /// Repetitions in reserve, by halves; without it the set was to failure.
    #[arg(long, value_name = "N")]
    left: Option<String>,
    /// The formula.
    #[arg(long, default_value = Formula::default().slug(), value_parser = formulas())]
    formula: String,
    /// As JSON.
    #[arg(long)]
    json: bool,
}

fn formulas() -> clap::builder::PossibleValuesParser {
    Formula::ALL.map(Formula::slug).into()
}

/// What is printed as JSON; masses are exact kilograms with five decimals at least.
#[derive(Serialize)]
struct Found {
    estimate_kg: String,
    low_kg: String,
    high_kg: String,
    formula: &'static str,
    source: &'static str,
    version: u8,
    load_kg: String,
    reps: u16,
    #[serde(skip_serializing_if = "Option::is_none")]
    left: Option<String>,
}

/// Prints the estimate.
pub(crate) fn run(asked: &Asked, locale: &str, out: &mut impl Write) -> Result<(), Failure> {
    let words = Locale::read(locale).words();
    let numerals = words.numerals;
    let unreadable = |error| Failure::asked(words.quantity().underlined(&error));
    let (load, unit) = Mass::read_as_written(&asked.load, numerals).map_err(unreadable)?;
    let left = asked
        .left
        .as_deref()
        .map(|left| Reserve::read(left, numerals))
        .transpose()
        .map_err(unreadable)?;
    let formula = Formula::read(&asked.formula).unwrap_or_default();
    let nearness = left.map_or(Nearness::Failed, Nearness::Called);
    let estimate = Estimate::of(load, asked.reps, nearness, formula)
        .map_err(|why| Failure::asked(words.estimate().none(why)))?;
    if !asked.json {
        return say(
            out,
            &words.estimate().found(&estimate, load, asked.reps, left, unit, numerals),
        );
    }
    let found = Found {
        estimate_kg: estimate.max.kilograms_with(5),
        low_kg: estimate.low.kilograms_with(5),
        high_kg: estimate.high.kilograms_with(5),
        formula: formula.slug(),
        source: formula.source(),
        version: estimate.version,
        load_kg: load.kilograms(),
        reps: asked.reps,
        left: left.map(|left| left.print(Default::default())),
    };
    let text = serde_json::to_string(&found).map_err(|error| Failure::here(error.to_string()))?;
    say(out, &format!("{text}\n"))
}

#[cfg(test)]
mod tests {
    use clap::Parser;

    use super::*;

    #[derive(Parser)]
    struct Line {
        #[command(flatten)]
        asked: Asked,
    }

    fn printed(args: &[&str]) -> Result<String, Failure> {
        let line = Line::parse_from(["estimate"].iter().chain(args));
        let mut out = Vec::new();
        run(&line.asked, "en-GB", &mut out)?;
        Ok(String::from_utf8(out).unwrap())
    }

    fn json(args: &[&str]) -> serde_json::Value {
        let args: Vec<_> = args.iter().copied().chain(["--json"]).collect();
        serde_json::from_str(&printed(&args).unwrap()).unwrap()
    }

    #[test]
    fn as_json_it_is_exact_strings() {
        let found = json(&["100kg", "8"]);
        assert_eq!(found["estimate_kg"], "126.666666667");
        assert_eq!(found["formula"], "epley");
        assert_eq!(found["source"], "Epley 1985, Poundage chart");
        assert!(found.get("left").is_none());
        assert_eq!(json(&["100kg", "1", "--formula", "mayhew"])["estimate_kg"], "100.00000");
        // Eight and two left are ten: 100 · 36 / 27.
        let called = json(&["100 kg", "8", "--left", "2", "--formula", "brzycki"]);
        assert_eq!(
            (&called["estimate_kg"], &called["left"]),
            (&"133.333333333".into(), &"2".into())
        );
    }

    #[test]
    fn what_cannot_be_estimated_ends_with_two() {
        for args in [
            &["100kg", "37", "--formula", "brzycki"][..],
            &["100kg", "0"],
            &["100", "8"],
            &["0kg", "8"],
        ] {
            assert_eq!(printed(args).unwrap_err().status, 2, "{args:?}");
        }
        assert!(printed(&["100kg", "5", "--left", "1.3"]).unwrap_err().text.contains("half"));
    }

    #[test]
    fn in_words_it_speaks_the_unit_it_was_asked_in() {
        assert!(printed(&["225lb", "10"]).unwrap().starts_with("Estimate 300 lb\n"));
    }
}
