//! Refusals: what is wrong, what was kept, what to do.

use barwright_domain::quantity::{MassUnit, Numerals, Unreadable};
use barwright_domain::session::Refusal;

use super::{date, words};

/// A refusal of the session in words.
pub fn of(refusal: &Refusal, unit: MassUnit, numerals: Numerals) -> String {
    let mass = |mass| words::mass(mass, unit, numerals);
    match refusal {
        Refusal::BadReading => {
            "Die Uhr des Geräts zeigt eine Zeit, die nicht sein kann. Stell Datum und Uhrzeit und \
             tippe noch einmal."
                .into()
        }
        Refusal::NoSession => "Es läuft keine Einheit. Beginne eine.".into(),
        Refusal::SessionRunning => {
            "Eine Einheit läuft. Beende sie zuerst; was gemacht wurde, bleibt.".into()
        }
        Refusal::NothingLeft => {
            "Alle Sätze sind gemacht oder übersprungen. Beende die Einheit oder nimm einen Satz \
             dazu."
                .into()
        }
        Refusal::EmptySheet => "Diese Einheit hat keine Sätze. Wähle eine andere.".into(),
        Refusal::SheetTooLarge => {
            "Die Einheit hat mehr Übungen oder Sätze, als eine Einheit fassen kann.".into()
        }
        Refusal::WrongKind => {
            "Dieser Satz zählt etwas anderes. Gib ein, wonach gefragt ist.".into()
        }
        Refusal::OutOfRange => "Das liegt außerhalb des Möglichen. Nichts wurde geändert.".into(),
        Refusal::NothingDone => {
            "Nichts wurde gemacht. Sag, warum der Satz abgebrochen wurde.".into()
        }
        Refusal::LoadNeeded => "Wähle zuerst ein Gewicht: Es ist noch keins bekannt.".into(),
        Refusal::NoSuchEntry => "Diese Übung gibt es in dieser Einheit nicht.".into(),
        Refusal::NoSuchPart => "Diesen Satz gibt es noch nicht.".into(),
        Refusal::NothingLeftOf => "Von dieser Übung sind keine Sätze übrig.".into(),
        Refusal::AlreadyThere => "Das ist schon an der Reihe.".into(),
        Refusal::TooMany => "Mehr geht nicht.".into(),
        Refusal::CannotMake(_) => {
            "Dieses Gewicht ist in diesem Kraftraum nicht möglich. Wähle ein anderes oder tausche \
             die Übung."
                .into()
        }
        Refusal::NotExact { nearest } => {
            format!(
                "Dieses Gewicht ist in diesem Kraftraum nicht möglich. Das nächste ist {}.",
                mass(*nearest)
            )
        }
        Refusal::OverSupported { supported } => format!(
            "Das ist über ein Zehntel mehr, als die letzten vier Wochen hergeben ({}). Trotzdem \
             auflegen?",
            words::whole(*supported, unit, numerals)
        ),
        Refusal::BelowNothing => "So klein kann kein Gewicht sein. Nichts wurde geändert.".into(),
        Refusal::FarFromRecorded { recorded } => {
            format!("Das ist weit weg von den eingetragenen {}. Stimmt es?", mass(*recorded))
        }
        Refusal::NoSuchPin => "Diesen Stift hat der Gewichtsblock hier nicht. Wähle einen, den er \
                               hat."
            .into(),
        Refusal::NoRest => "Es läuft keine Pause.".into(),
        Refusal::AlreadySo | Refusal::AlreadyStarted => "Das ist schon so.".into(),
        Refusal::BadText => "Der Text ist leer oder zu lang. Nichts wurde geändert.".into(),
        Refusal::NothingToUndo => "Es gibt nichts rückgängig zu machen.".into(),
        Refusal::NothingToRedo => "Es gibt nichts wiederherzustellen.".into(),
    }
}

/// No exercise has that name; those it may mean.
pub fn no_exercise(name: &str, near: &[String]) -> String {
    let name: String = name.chars().take(60).collect();
    let near = match near {
        [] => "Ihr Name steht bei den Wochen und im Plan.".to_owned(),
        near => format!("Ähnlich: {}.", near.join(", ")),
    };
    format!("Keine Übung heißt „{name}“. {near}")
}

/// The tap was meant for another part, or another session.
pub fn stale() -> &'static str {
    "Dieser Satz ist schon eingetragen. Nichts kam dazu."
}

/// The tap was meant for a session that is past.
pub fn stale_session() -> &'static str {
    "Das gehört zu einer vergangenen Einheit. Nichts wurde geändert."
}

/// There is no such thing.
pub fn not_here() -> &'static str {
    "Das gibt es hier nicht. Nichts wurde geändert."
}

/// There is no plan.
pub fn nothing_to_go_by() -> &'static str {
    "Es gibt noch keinen Plan. Übernimm zuerst einen."
}

/// A figure that could not be read.
pub fn unreadable(unreadable: &Unreadable) -> String {
    super::quantity::unreadable(unreadable)
}

/// Every session of the plan is done.
pub fn plan_is_over() -> &'static str {
    "Alle Einheiten des Plans sind gemacht. Übernimm den nächsten oder wähle eine Einheit aus den \
     Wochen."
}

/// Something is being made already.
pub fn draft_open() -> &'static str {
    "So etwas ist schon in Arbeit. Übernimm oder verwirf es zuerst; es wurde behalten."
}

/// The tap was meant for another step of what is being made.
pub fn stale_draft() -> &'static str {
    "Das wurde inzwischen geändert. Es wurde nicht noch einmal geändert."
}

/// Nothing to take back of what is being made, or to bring again.
pub fn no_step() -> &'static str {
    "Es gibt keinen Schritt zurückzunehmen oder wiederherzustellen."
}

/// What is being made would be too large to be read.
pub fn draft_too_large() -> &'static str {
    "Das wäre mehr, als von einer Datei gelesen wird. Nichts wurde geändert; nimm zuerst etwas \
     heraus."
}

/// Another gym has this name.
pub fn gym_there(name: &str) -> String {
    format!(
        "Ein anderer Kraftraum heißt „{name}“. Beide wurden behalten; gib diesem einen \
             anderen Namen."
    )
}

/// Nothing stands there yet.
pub fn nothing_stands() -> &'static str {
    "Da steht noch nichts, wovon es mehr oder weniger sein könnte. Schreib das Gewicht selbst."
}

/// More than by half.
pub fn too_many_percent() -> &'static str {
    "Das ist mehr als die Hälfte. Schreib das Gewicht selbst, damit nichts versehentlich gilt."
}

/// The clock is far from the last session's date.
pub fn clock_far(last: i32, now: i32) -> String {
    let (then, today) = (date::in_full(last), date::in_full(now));
    let apart = words::count(usize::try_from(last.abs_diff(now)).unwrap_or(0), "Tag", "Tage");
    let how = if now < last { "davor" } else { "danach" };
    format!(
        "Die letzte Einheit war am {then}; dieses Gerät sagt, heute sei {today}, {apart} {how}. \
         Nichts wurde eingetragen. Ist sein Datum falsch, stell es zuerst. Stimmt es?"
    )
}

/// Another exercise has this name.
pub fn exercise_there(name: &str) -> String {
    format!(
        "Eine andere Übung heißt „{name}“. Beide wurden behalten; gib dieser einen anderen \
             Namen."
    )
}
