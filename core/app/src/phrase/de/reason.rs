//! Why a number is what it is: a derivation as lines of words, the first short enough to be read
//! during a rest.

use barwright_domain::call::EffortScale;
use barwright_domain::owners::{Cut, Cutting};
use barwright_domain::plan::Miss;
use barwright_domain::progress::test_day;
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Percent};
use barwright_domain::session::{Because, Reason};

use super::{date, outcome, words};
use crate::phrase::written::figures;
use crate::phrase::written::plates::label;

/// A derivation. The first line has the owner of the load, since when, each factor and what is made
/// here: "Maximum 142,5 kg seit Mo., 12. Okt. × 82,5 % = 117,56 kg; gerundet auf 117,5 kg." The
/// further ones
/// say how it came to that, with efforts in the scale that the plan asks in.
pub fn lines(
    reason: &Reason,
    hurt: Option<Mass>,
    scale: EffortScale,
    today: Option<i32>,
    unit: MassUnit,
    numerals: Numerals,
) -> Vec<String> {
    let say = Say { hurt, scale, today, unit, numerals };
    let mut factors: Vec<String> = Vec::new();
    let mut further: Vec<String> = Vec::new();
    let mut working = None;
    for because in &reason.0 {
        match because {
            Because::WorkingMax { share, of, .. } => working = Some((*share, *of)),
            Because::ShareOfMax { share, max, day, of, gives } => {
                let max = (*max, *day, of.as_deref());
                factors.push(say.share_of_max(max, working, *share, *gives));
            }
            because => match say.factor(because) {
                Some(factor) => factors.push(factor),
                None => further.extend(say.further(because)),
            },
        }
    }
    let first = factors.join("; ");
    let first = (!first.is_empty()).then(|| words::end(words::sentence_case(&first)));
    first.into_iter().chain(further).collect()
}

#[derive(Clone, Copy)]
struct Say {
    hurt: Option<Mass>,
    scale: EffortScale,
    today: Option<i32>,
    unit: MassUnit,
    numerals: Numerals,
}

impl Say {
    fn mass(self, mass: Mass) -> String {
        mass.print(self.unit, self.numerals)
    }

    fn load(self, load: Mass) -> String {
        words::or_help(load, self.unit, self.numerals)
    }

    fn day(self, day: i32) -> String {
        date::dated(day, self.today)
    }

    fn percent(self, percent: Percent) -> String {
        percent.print(self.numerals)
    }

    fn share_of_max(
        self,
        (max, day, of): (Mass, i32, Option<&str>),
        working: Option<(Percent, Mass)>,
        share: Percent,
        gives: Mass,
    ) -> String {
        let whose = of.map(|lift| format!("{lift}: ")).unwrap_or_default();
        let (max, working) = match working {
            Some((part, of)) => (of, format!(" × {}", self.percent(part))),
            None => (max, String::new()),
        };
        let (max, day) = (self.mass(max), self.day(day));
        let (share, gives) = (self.percent(share), self.mass(gives));
        format!("{whose}Maximum {max} seit {day}{working} × {share} = {gives}")
    }

    /// What stands in the first line.
    fn factor(self, because: &Because) -> Option<String> {
        Some(match because {
            Because::PlanSays(load) => format!("laut Plan {}", self.load(*load)),
            Because::Carried { load, since } => {
                format!("Arbeitsgewicht {} seit {}", self.load(*load), self.day(*since))
            }
            Because::ShareOfEstimate { share, max, day, gives } => format!(
                "{} von {}, geschätzt aus deinen Sätzen ({}) = {}",
                self.percent(*share),
                words::tenth(*max, self.unit, self.numerals),
                self.day(*day),
                self.mass(*gives)
            ),
            Because::Single { rule, last, gives } => self.single(*rule, *last, *gives),
            Because::UpTo { share, gives } => {
                format!("bis {} = {}", self.percent(*share), self.mass(*gives))
            }
            Because::LessBody { body, gives, .. } => {
                format!("abzüglich {} Körpergewicht = {}", self.mass(*body), self.load(*gives))
            }
            Because::RampShare { share, of, gives } => format!(
                "Aufwärmsatz, {} von {} = {}",
                self.percent(*share),
                self.mass(*of),
                self.mass(*gives)
            ),
            Because::RampSpread { step, of, from, to, gives } => format!(
                "Aufwärmsatz {step} von {of}, verteilt von {} bis {} = {}",
                self.mass(*from),
                self.mass(*to),
                words::tenth(*gives, self.unit, self.numerals)
            ),
            Because::EmptyBar => "Aufwärmsatz: die leere Stange".to_owned(),
            Because::FullSizePlates => {
                "Aufwärmsatz: das Leichteste mit großen Scheiben, die die Stange auf Höhe bringen"
                    .to_owned()
            }
            Because::Unguarded => {
                "weder Ablagen noch Helfer, also kein Versuch am Maximum".to_owned()
            }
            Because::BodyAlone => "Aufwärmsatz: Körpergewicht".to_owned(),
            Because::MovedWithinSlack { asked } => {
                format!("statt {}, um Scheibenwechsel zu sparen", self.mass(*asked))
            }
            Because::ShareOfTop { share, top, gives } => format!(
                "{} von {} im Topsatz = {}",
                self.percent(*share),
                self.load(*top),
                self.load(*gives)
            ),
            Because::DropOff { off, gives } => {
                format!("\u{2212}{} = {}", self.percent(*off), self.load(*gives))
            }
            Because::Liked { smallest, step, made } => {
                let how = match (step, smallest) {
                    (Some(step), _) => format!("in Schritten von {}", self.load(*step)),
                    (None, Some(smallest)) => {
                        format!("keine Scheibe unter {}", self.load(*smallest))
                    }
                    (None, None) => String::new(),
                };
                format!("{how}, wie du es magst: {}", self.load(*made))
            }
            Because::Made { made, .. } => format!("gerundet auf {}", self.load(*made)),
            Because::FromFirst { first, gives } => {
                format!("erster Satz {}, dieser {}", self.load(*first), self.load(*gives))
            }
            Because::Cut { cut, gives } => format!("{}: {}", self.cut(cut), self.load(*gives)),
            Because::PlaceOfLast(place) => {
                format!("Stift {}, wie letztes Mal hier", label(place, self.numerals))
            }
            Because::LifterChose(load) => format!("du hast {} gewählt", self.load(*load)),
            Because::LifterChosePin(pin) => {
                format!("du hast Stift {} gewählt", label(pin, self.numerals))
            }
            Because::ClimbStep { step, from } => {
                format!("{} gegenüber {}", figures::change(*step, self.numerals), self.load(*from))
            }
            Because::ShareOfMax { .. }
            | Because::WorkingMax { .. }
            | Because::PercentForReps { .. }
            | Because::Said { .. }
            | Because::Aim(_)
            | Because::Extended(_)
            | Because::NothingToGoBy
            | Because::AfterPause { .. } => return None,
        })
    }

    /// What stands below it.
    fn further(self, because: &Because) -> Option<String> {
        Some(match because {
            Because::PercentForReps { reps, left, share, interpolated } => {
                let between = if *interpolated { ", zwischen zwei Zeilen der Tabelle" } else { "" };
                format!(
                    "{}, {}: {} laut Prozenttabelle{between}.",
                    words::reps_of(*reps),
                    words::reserve(*left, self.scale, self.numerals),
                    self.percent(*share)
                )
            }
            Because::Said { day, why, by } => {
                let step = by.map(|by| outcome::step(why, by, self.unit, self.numerals));
                let why = outcome::why(why, self.scale, self.unit, self.numerals);
                words::end(format!("{}: {why}{}", self.day(*day), step.unwrap_or_default()))
            }
            Because::Aim(amount) => {
                words::end(format!("Ziel: {}", words::amount(amount, self.numerals)))
            }
            Because::Extended(amount) => words::end(format!(
                "Bereich erweitert auf {}",
                words::amount(amount, self.numerals)
            )),
            Because::NothingToGoBy => {
                "Noch kein Gewicht bekannt: Wähle eines, das zu Wiederholungen und Anstrengung \
                 passt."
                    .to_owned()
            }
            Because::AfterPause { pause } => {
                format!("Nach einer Unterbrechung von {} noch ein Aufwärmsatz.", pause.print())
            }
            _ => return None,
        })
    }

    /// "Entlastung, −30 %"; after pain by its rule, since its share of the owner's load says little.
    fn cut(self, cut: &Cut) -> String {
        let change = cut.keep.hundredths().saturating_sub(Percent::WHOLE.hundredths());
        let change = figures::change(Percent::from_hundredths(change), self.numerals);
        match cut.why {
            Cutting::Deload => format!("Entlastung, {change}"),
            Cutting::EaseIn => format!("Einstieg, {change}"),
            Cutting::LayOff { days: Some(days) } => format!(
                "Trainingspause von {days} Tagen, \
                                                             {change}"
            ),
            Cutting::LayOff { days: None } => format!("zurück nach einer Trainingspause, {change}"),
            Cutting::Pain { since } => {
                let under = match self.hurt {
                    Some(hurt) => {
                        format!("ein Zehntel unter den {}, die wehtaten", self.mass(hurt))
                    }
                    None => "mindestens ein Zehntel weniger".to_owned(),
                };
                format!("Schmerz seit {}, {under}", self.day(since))
            }
            Cutting::BackFromPain => {
                "zurück nach Schmerzen, je Einheit höchstens ein Zehntel mehr".to_owned()
            }
            Cutting::Missed { times, then } => {
                let missed = match times {
                    1 => "letztes Mal verfehlt".to_owned(),
                    times => format!("{times}-mal in Folge verfehlt"),
                };
                match then {
                    Miss::Repeat => format!("{missed}, nicht schwerer"),
                    Miss::Less(_) => format!("{missed}, {change}"),
                    Miss::Hold => format!("{missed}, keine Änderung (frag den Trainer)"),
                }
            }
            Cutting::Effort => format!("{change} für eine Einheit"),
        }
    }

    /// The single after the one that was tried last.
    fn single(self, rule: test_day::Because, last: Mass, gives: Mass) -> String {
        use test_day::Because as Rule;
        let [last, gives] = [last, gives].map(|mass| self.mass(mass));
        match rule {
            Rule::First(share) => format!("{} vom Maximum: {gives}", self.percent(share)),
            Rule::Lifted(step) => {
                format!("{last} geschafft: {} mehr sind {gives}", self.percent(step))
            }
            Rule::Missed(off) => {
                format!("{last} nicht geschafft: {} weniger sind {gives}", self.percent(off))
            }
            Rule::Between { lifted, missed } => format!(
                "{} geschafft, {} nicht: Die Mitte ist {gives}",
                self.mass(lifted),
                self.mass(missed)
            ),
            Rule::Next { lifted } => {
                format!("das nächste Gewicht hier über den geschafften {}", self.mass(lifted))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use barwright_domain::call::Amount;
    use barwright_domain::owners::Why;
    use barwright_domain::quantity::Reserve;

    use super::*;

    fn kg(text: &str) -> Mass {
        Mass::read(&format!("{text} kg"), Numerals::Point).unwrap()
    }

    fn say(steps: Vec<Because>) -> Vec<String> {
        lines(&Reason(steps), None, EffortScale::Left, None, MassUnit::Kilogram, Numerals::Comma)
    }

    fn share(max: &str, of: Option<&str>, gives: &str) -> Because {
        Because::ShareOfMax {
            share: Percent::from_hundredths(8_250),
            max: kg(max),
            day: 20_417,
            of: of.map(str::to_owned),
            gives: kg(gives),
        }
    }

    fn cut(keep: i16, why: Cutting, gives: &str) -> Because {
        let cut = Cut { keep: Percent::whole(keep), sets_off: Percent::default(), why };
        Because::Cut { cut, gives: kg(gives) }
    }

    #[test]
    fn the_first_line_has_the_owner_each_factor_and_what_is_made() {
        let steps = vec![
            share("142.5", None, "117.5625"),
            Because::Said {
                day: 20_417,
                why: Why::OffTarget {
                    called: Reserve::from_halves(2).unwrap(),
                    edge: Reserve::from_halves(4).unwrap(),
                    change: Percent::whole(-4),
                },
                by: None,
            },
            cut(96, Cutting::Effort, "112.86"),
            Because::Made { asked: kg("112.86"), made: kg("112.5") },
        ];
        assert_eq!(
            say(steps),
            [
                "Maximum 142,5 kg seit Di., 25. Nov. × 82,5 % = 117,56 kg; \u{2212}4 % für eine \
                 Einheit: 112,86 kg; gerundet auf 112,5 kg.",
                "Di., 25. Nov.: 1 in Reserve, Ziel 2 in Reserve: 4 % weniger.",
            ]
        );
    }

    #[test]
    fn a_working_max_is_one_more_factor() {
        let working =
            Because::WorkingMax { share: Percent::whole(92), of: kg("200"), gives: kg("184") };
        assert_eq!(
            say(vec![working, share("184", Some("Kreuzheben"), "151.8")]),
            ["Kreuzheben: Maximum 200 kg seit Di., 25. Nov. × 92 % × 82,5 % = 151,8 kg."]
        );
    }

    #[test]
    fn what_a_track_carries_since_when_and_what_it_added() {
        let steps = vec![
            Because::Carried { load: kg("52.5"), since: 20_417 },
            Because::Said { day: 20_417, why: Why::AllMade, by: Some(kg("2.5")) },
            Because::Aim(Amount::Reps(9)),
        ];
        assert_eq!(
            say(steps),
            [
                "Arbeitsgewicht 52,5 kg seit Di., 25. Nov.",
                "Di., 25. Nov.: alle Sätze geschafft: 2,5 kg mehr.",
                "Ziel: 9 Wdh."
            ]
        );
    }

    #[test]
    fn a_cut_says_why_and_how_much() {
        let carried = || Because::Carried { load: kg("60"), since: 20_417 };
        let all = [
            (Cutting::Deload, "Entlastung"),
            (Cutting::LayOff { days: Some(31) }, "Trainingspause von 31 Tagen"),
        ];
        for (why, words) in all {
            assert_eq!(
                say(vec![carried(), cut(80, why, "48")]),
                [format!("Arbeitsgewicht 60 kg seit Di., 25. Nov.; {words}, \u{2212}20 %: 48 kg.")]
            );
        }
    }

    #[test]
    fn after_pain_the_rule_is_said_and_no_share_of_another_load() {
        let said = |why: Cutting, hurt: Option<Mass>| {
            let carried = Because::Carried { load: kg("60"), since: 20_417 };
            let reason = Reason(vec![carried, cut(60, why, "36")]);
            let unit = MassUnit::Kilogram;
            lines(&reason, hurt, EffortScale::Left, None, unit, Numerals::Comma).join(" ")
        };
        let pain = Cutting::Pain { since: 20_410 };
        assert_eq!(
            said(pain, None),
            "Arbeitsgewicht 60 kg seit Di., 25. Nov.; Schmerz seit Di., 18. Nov., mindestens ein Zehntel weniger: 36 kg."
        );
        assert_eq!(
            said(pain, Some(kg("40"))),
            "Arbeitsgewicht 60 kg seit Di., 25. Nov.; Schmerz seit Di., 18. Nov., ein Zehntel unter den 40 kg, die wehtaten: 36 kg."
        );
        assert_eq!(
            said(Cutting::BackFromPain, None),
            "Arbeitsgewicht 60 kg seit Di., 25. Nov.; zurück nach Schmerzen, je Einheit höchstens ein Zehntel mehr: 36 kg."
        );
    }

    #[test]
    fn masses_are_said_in_the_unit_and_with_the_mark_of_the_locale() {
        let reason = Reason(vec![Because::PlanSays(kg("102.05828325"))]);
        assert_eq!(
            lines(&reason, None, EffortScale::Left, None, MassUnit::Pound, Numerals::Comma),
            ["Laut Plan 225 lb."]
        );
        let reason = Reason(vec![Because::PlanSays(kg("102.5"))]);
        assert_eq!(
            lines(&reason, None, EffortScale::Left, None, MassUnit::Kilogram, Numerals::Comma),
            ["Laut Plan 102,5 kg."]
        );
    }

    #[test]
    fn assistance_is_said_as_such() {
        assert_eq!(say(vec![Because::PlanSays(kg("-20"))]), ["Laut Plan 20 kg Unterstützung."]);
        assert_eq!(say(vec![Because::PlanSays(kg("0"))]), ["Laut Plan ohne Zusatzgewicht."]);
    }
}
