//! How to begin, and the demo.

/// The title.
pub fn title() -> &'static str {
    "So fängst du an"
}

/// What is here yet.
pub fn subtitle() -> &'static str {
    "Was du auch wählst: Nichts geht dadurch verloren."
}

/// The ways to begin.
pub fn open() -> (&'static str, &'static str) {
    ("So fängst du an", "Zeigen, wie man anfangen kann und was jeder Weg tut")
}

/// The demo.
pub fn demo() -> (&'static str, &'static str) {
    (
        "Beispiel ansehen",
        "Ein Plan, ein Kraftraum und sechs Wochen Training, alles erfunden, in einer eigenen \
         Datei. Deine eigenen Aufzeichnungen bleiben, wie sie sind; ein Druck auf der Seite \
         „Heute“ führt wieder hinaus.",
    )
}

/// A plan file.
pub fn plan_file() -> (&'static str, &'static str) {
    (
        "Mit einer Plandatei anfangen",
        "Eine Textdatei, die ein Trainer oder du geschrieben hat. Sie wird mit allen Fehlern \
         gezeigt, und nichts ändert sich, bevor du sie übernimmst.",
    )
}

/// A plan of one's own.
pub fn new_plan() -> (&'static str, &'static str) {
    (
        "Plan erstellen",
        "Einheiten, Übungen und Sätze, Schritt für Schritt gewählt; was nicht stimmt, steht neben \
         seiner Zeile. Du kannst aufhören und später weitermachen, und nichts gilt, bevor du ihn \
         übernimmst.",
    )
}

/// A gym.
pub fn gym() -> (&'static str, &'static str) {
    (
        "Deinen Kraftraum angeben",
        "Stangen, Scheiben, was in der Hand gehalten wird. Jedes Gewicht lässt sich dort auch \
         auflegen. Das geht auch später: Bis dahin gilt ein üblicher Kraftraum.",
    )
}

/// To the gym.
pub fn to_gym() -> &'static str {
    "Zum Kraftraum"
}

/// To the demo, or back.
pub fn turn(on: bool) -> (&'static str, &'static str) {
    if on {
        (
            "Beispiel ansehen",
            "Das Beispiel ansehen, erfundene Aufzeichnungen in einer eigenen \
                              Datei",
        )
    } else {
        ("Beispiel verlassen", "Das Beispiel verlassen und die eigenen Aufzeichnungen zeigen")
    }
}

/// On the demo's sheets.
pub fn invented() -> &'static str {
    "Das ist das Beispiel: alles erfunden. Nichts hiervon steht in deinen eigenen Aufzeichnungen."
}

/// A session runs.
pub fn finish_first() -> &'static str {
    "Eine Einheit läuft. Beende sie zuerst; das Beispiel wartet."
}

/// So already.
pub fn so_already(on: bool) -> &'static str {
    if on {
        "Das Beispiel ist schon zu sehen."
    } else {
        "Das sind schon deine eigenen \
                                                         Aufzeichnungen."
    }
}
