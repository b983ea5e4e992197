//! German, after the terms that the core's German words keep to.

use std::io::{self, ErrorKind};

use super::OwnWords;

pub(super) const WORDS: OwnWords = OwnWords {
    // Short, so that all of them stand in 80 columns; the last begins its screen's title.
    places: ["Heute", "Fläche", "Fazit", "Wochen", "Verlauf", "Bilanz", "Gerät", "Plan", "Achte"],
    help_and_leave: "? Hilfe q aus",
    yes: "Ja, trotzdem",
    why: "Warum",
    write: "Schreiben",
    invented: "Demo: erfunden",
    looked_at: "Rückgabe: nichts wird behalten",

    keys: "Tasten",
    on_the_floor: (
        "Auf der Fläche",
        &[
            "enter oder die Leertaste trägt ein, was gemacht wurde, wo das eine breite Taste tut.",
            "Wo nach der Anstrengung gefragt wird, trägt eine Ziffer den Satz mit so vielen Wdh. in \
             Reserve ein, oder mit dieser RPE (0 ist zehn); ein Punkt oder Komma davor macht eine \
             halbe daraus: .2 ist zweieinhalb.",
            "- und + berichtigen die Zahl vor dem Eintragen, # tippt eine ganz andere ein (x nimmt \
             eine Ziffer weg, enter übernimmt die Zahl), u macht den letzten Druck rückgängig.",
            "[ und ] machen die Pause kürzer und länger. Nichts muss gestartet werden: Wer den \
             nächsten Satz einträgt, beendet die Pause.",
            "c zählt ein Tempo laut, mit einer Glocke zu jedem Schlag, bis der Satz eingetragen ist \
             oder bis zum nächsten c.",
            "b berichtigt, was auf der Stange ist, e sagt, warum ein Satz kürzer war, m öffnet den \
             Rest.",
        ],
    ),
    everywhere: (
        "Überall",
        &[
            "Jede Taste, die etwas tut, steht dort, wo sie es tut, und tut, was daneben steht.",
            "Ein Großbuchstabe der untersten Zeile führt zu diesem Bildschirm: T heute, F Fläche, A \
             Fazit der Einheit, W Wochen, L Verlauf einer Übung, B Bilanz der Muskeln, E Gerät, P \
             Plan, C worauf du achtest. Tab führt zum nächsten.",
            "Auf und ab wählen eine Zeile, Bild auf und Bild ab blättern; enter schreibt in ein \
             Feld; w sagt, warum.",
            "esc schließt, was über einem Bildschirm liegt; q verlässt das Programm. Was \
             eingetragen ist, bleibt; eine laufende Einheit geht weiter, wenn du zurückkommst.",
        ],
    ),
    files: (
        "Dateien",
        &["o öffnet eine Datei: unter Plan einen Plan, unter Gerät einen Kraftraum."],
    ),

    add_gym: "Kraftraum aus einer Datei hinzufügen",
    read_plan: "Plandatei lesen",
    open_plan: "Datei öffnen",
    save: "Als Datei speichern",

    plan_file: "Datei",
    plan_path: "plaene/fruehjahr.toml",
    gym_file: "Datei des Kraftraums",
    gym_path: "raeume/bootshaus.toml",
    save_as: "Speichern als",
    such_as: |what| format!("etwa {what}"),
    none_taken: "Noch nichts wurde übernommen. --yes übernimmt alles, was passt, --take ID eines davon.",
    taken_or_left: "enter: so übernehmen   esc: lassen, wie es war",

    get_set: "mach dich bereit",
    count_tempo: "Tempo zählen",
    why_this_load: "Warum dieses Gewicht",
    take_care: "Vorsicht",
    how: "Ausführung",
    set_up: "Einstellung",
    cues: "Stichworte",

    still_needed: "Fehlt noch",
    left_out: "Weggelassen, weil die Zeit fehlt",
    skipped: "Übersprungen, weil die Zeit fehlt",
    next_time: "Nächstes Mal",
    done: "Gemacht",
    is_done: "gemacht",
    notes: "Notizen",
    to_write: "Zum Ausfüllen",
    by_hand: "Von Hand",
    records: "Bestwerte",
    sessions: "Einheiten",
    no_session: "Noch keine Einheit.",
    other_exercises: "Andere Übungen",
    behind: "Im Rückstand",
    by_kind: "Nach Art der Woche",
    bar_done: "gemacht",
    bar_short: "davon unter sechs Wdh.",
    bar_planned: "geplant",
    bar_sides: "darunter: ▀ links  ▄ rechts",
    this_week: "diese Woche",
    look: "ansehen",
    fault: |line, column, label, problem| {
        format!("Zeile {line}, Spalte {column}, {label}: {problem}")
    },

    not_read: |path, error| format!("Die Datei {path} lässt sich nicht lesen: {}.", cause(error)),
    too_large: |path, most| format!("Die Datei {path} ist größer als {most} MB."),
    no_text: |path, byte| {
        format!("Die Datei {path} ist kein reiner Text (UTF-8): Byte {byte} ist etwas anderes.")
    },
    saved: |path| format!("In {path} gespeichert."),
    there_already: |path| {
        format!("Eine Datei {path} gibt es schon; sie blieb, wie sie ist. Nenne eine andere.")
    },
    name_another: |path| format!("{path} gibt es schon; nenne einen anderen Namen."),
    not_written: |path, error| {
        format!("Die Datei {path} lässt sich nicht schreiben: {}.", cause(error))
    },
    no_folder: |path, error| {
        format!("Der Ordner {path} lässt sich nicht anlegen: {}.", cause(error))
    },
    folder_not_read: |path, error| format!("{path} lässt sich nicht lesen: {}.", cause(error)),
    reading_stopped: "Ein Fehler im Programm hat das Lesen bei einer der Dateien abgebrochen. Nichts wurde \
                      geändert.",
    many_returns: |path, most| format!("{path} hat mehr als {most} Rückgaben; lies sie in Teilen."),
    path_no_text: |path| format!("Der Pfad {path} ist kein reiner Text (UTF-8)."),
    no_home: |variable| {
        format!(
            "Hier gibt es keinen eigenen Ordner. Sag mit --store oder {variable}, wo die \
             Aufzeichnungen liegen sollen."
        )
    },

    nothing_yet: |path| {
        format!(
            "Noch keine Aufzeichnungen: Es gibt keine Datei {path}.\n\
             barwright --demo              die Demo ansehen, Erfundenes in einer eigenen Datei\n\
             barwright plan adopt DATEI    mit einem Plan beginnen\n\
             barwright                     in einem Terminal: die Bildschirme"
        )
    },
    demo_sheet: "Das Blatt der Demo, alles erfunden:",
    first: |path| {
        format!(
            "Barwright. Noch keine Aufzeichnungen: Es gibt keine Datei {path}.\n\n\
             d  die Demo ansehen: Erfundenes, in einer eigenen Datei\n\
             p  mit einer Plandatei beginnen: erst wird gezeigt, was darin falsch ist\n\
             n  leer beginnen: Plan, Kraftraum und Maxima werden hier angelegt, Taste um Taste\n\
             q  Ende; nichts wird angelegt\n"
        )
    },
    d_p_n_q: "d, p, n oder q: ",
    ask_plan: "Plandatei: ",

    no_fault: |name| format!("{name}: kein Fehler."),
    trained_in: "hier wird trainiert",
    trains_in: |name| format!("Trainiert wird von jetzt an hier: {name}."),
    no_gym: |name, names| format!("Kein Kraftraum heißt „{name}“. Es gibt: {names}."),
    accepted: "hingenommen:",
    plan_no_fault: |title, length| format!("{title}: {length}, kein Fehler"),
    adopted: |title, length| format!("Übernommen: {title}\n{length}"),
    copied: |path, entries| format!("{path}: {}, eine ganze Kopie", entries_of(entries)),
    exported: |path, entries, sessions| {
        let sessions = count(sessions, "Einheit", "Einheiten");
        format!("{path}: {}, {sessions}", entries_of(entries))
    },
    rows: |path, rows| format!("{path}: {}", count(rows, "Zeile", "Zeilen")),
    way_back: |path| {
        format!("Wie sie davor waren: {path}\nZurück führt: barwright records restore {path}")
    },
    loads_differ: |loads| match loads {
        1 => "Ein Gewicht steht dort anders; es bleibt, wie es hier ist.".to_owned(),
        _ => format!("{loads} Gewichte stehen dort anders; sie bleiben, wie sie hier sind."),
    },
    loads_written: |path| {
        format!("Zum Ansehen, und um zu nehmen, was du willst: barwright records changes {path}")
    },
    look_at_columns: |table, columns| {
        format!(
            "Sieh sie an und stell sie richtig, dann: barwright records import {table} --columns \
             {columns} --dry-run"
        )
    },
    way_out: "Um es wieder herauszunehmen: barwright records import --take-back",
    taken_back: |sessions| match sessions {
        0 => "Von anderswo ist nichts in den Verlauf gekommen.".to_owned(),
        1 => "1 Einheit ist wieder aus dem Verlauf genommen.".to_owned(),
        _ => format!("{sessions} Einheiten sind wieder aus dem Verlauf genommen."),
    },
};

fn count(number: u64, one: &str, many: &str) -> String {
    format!("{number} {}", if number == 1 { one } else { many })
}

fn entries_of(number: u64) -> String {
    count(number, "Eintrag", "Einträge")
}

/// Why a file was not to be had. What is rare stays in the words of the system.
fn cause(error: &io::Error) -> String {
    match error.kind() {
        ErrorKind::NotFound => "Dort ist nichts".to_owned(),
        ErrorKind::PermissionDenied => "Das ist hier nicht erlaubt".to_owned(),
        ErrorKind::IsADirectory => "Das ist ein Ordner".to_owned(),
        ErrorKind::NotADirectory => "Auf dem Weg dorthin liegt eine Datei".to_owned(),
        ErrorKind::AlreadyExists => "Das gibt es schon".to_owned(),
        ErrorKind::StorageFull => "Kein Platz mehr".to_owned(),
        ErrorKind::ReadOnlyFilesystem => "Dort lässt sich nichts schreiben".to_owned(),
        _ => error.to_string(),
    }
}
