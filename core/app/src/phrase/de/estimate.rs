//! Words of an estimated max, as the desk asks for one.

use barwright_domain::call::EffortScale;
use barwright_domain::progress::estimate::{Estimate, NoEstimate};
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Reps, Reserve};

use super::words;

/// "Schätzung 126,67 kg, 120 bis 127,67 nach den sieben Formeln", where it comes from, and what it
/// is
/// not.
pub fn found(
    estimate: &Estimate,
    load: Mass,
    reps: Reps,
    left: Option<Reserve>,
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    let max = estimate.max.print(unit, numerals);
    let range = if estimate.low == estimate.high {
        "Eine Einzelwiederholung bis zum Muskelversagen ist das Maximum des Tages.".to_owned()
    } else {
        let (low, high) =
            (estimate.low.figure(unit, numerals), estimate.high.print(unit, numerals));
        let call =
            if left.is_some() { " und mit einer Angabe, die danebenliegen kann" } else { "" };
        format!("{low} bis {high} nach den sieben Formeln{call}.")
    };
    let from = format!(
        "{} mit {}, {}: {}.",
        words::reps_of(reps),
        load.print(unit, numerals),
        match left {
            Some(left) => words::reserve(left, EffortScale::Left, numerals),
            None => "bis zum Muskelversagen".to_owned(),
        },
        estimate.formula.source()
    );
    format!(
        "Schätzung {max}\n{range}\n{from}\nFür Hauptübungen mit der Langhantel; beim Kreuzheben \
         liegen die Formeln zu niedrig (LeSuer et al. 1997).\n"
    )
}

/// Why there is none, and what would do.
pub fn none(why: NoEstimate) -> String {
    match why {
        NoEstimate::NoReps => "Keine Wiederholung wurde geschafft: Es gibt nichts, woraus sich \
                               schätzen ließe."
            .to_owned(),
        NoEstimate::TooManyReps { most } => format!(
            "Mehr als {most} Wdh. bis zum Muskelversagen, die in Reserve mitgezählt, liegen \
             außerhalb des Bereichs der Formeln. Nimm einen schwereren Satz."
        ),
        NoEstimate::TooMuchLeft { most } => format!(
            "Mit mehr als {most} Wdh. in Reserve ist eine Angabe zu grob. Nimm einen Satz näher \
             am Muskelversagen."
        ),
        NoEstimate::NoLoad => "Es gibt kein Gewicht, aus dem sich schätzen ließe.".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use barwright_domain::progress::estimate::{Formula, Nearness};

    use super::*;

    fn words(reps: Reps, left: Option<Reserve>) -> String {
        let load = Mass::whole(100, MassUnit::Kilogram);
        let nearness = left.map_or(Nearness::Failed, Nearness::Called);
        let estimate = Estimate::of(load, reps, nearness, Formula::Epley).unwrap();
        found(&estimate, load, reps, left, MassUnit::Kilogram, Numerals::Comma)
    }

    #[test]
    fn says_the_range_and_where_it_comes_from() {
        let text = words(8, None);
        assert!(
            text.starts_with("Schätzung 126,67 kg\n120 bis 127,67 kg nach den sieben Formeln.\n")
        );
        assert!(text.contains("8 Wdh. mit 100 kg, bis zum Muskelversagen: Epley 1985"), "{text}");
        let text = words(8, Reserve::from_halves(4));
        assert!(text.contains("mit einer Angabe, die danebenliegen kann"), "{text}");
        assert!(text.contains("8 Wdh. mit 100 kg, 2 in Reserve"), "{text}");
        assert!(
            words(1, None)
                .contains("Eine Einzelwiederholung bis zum Muskelversagen ist das Maximum")
        );
    }
}
