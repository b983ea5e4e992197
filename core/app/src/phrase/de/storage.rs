//! When the file can't be read or written: what is wrong, what was kept and where, what to do.

use barwright_store::{Foreign, Kept, Salvage, Stamp, StoreError};
use chrono::Datelike;

use crate::contract::EngineError;

/// An error of the store in words.
pub fn error(error: &StoreError) -> EngineError {
    let at = |path: &std::path::Path| path.display().to_string();
    let (reason, path) = match error {
        StoreError::Newer { path, .. } => {
            return EngineError::NewerFile {
                reason: format!(
                    "{} wurde von einer neueren Version geschrieben. Die Datei blieb, wie sie \
                     ist: Öffne sie mit jener Version oder nenne eine andere.",
                    at(path)
                ),
            };
        }
        StoreError::ReadOnly { path } => (
            "Die Datei oder ihr Ordner lässt sich nicht beschreiben, nur ansehen. Nichts wurde \
             eingetragen, und was da ist, ist unberührt: Erlaube dort das Schreiben oder nenne \
             einen anderen Ort.",
            path,
        ),
        StoreError::Full { path } => (
            "Auf diesem Gerät ist kein Platz mehr. Die Eingabe wurde nicht gespeichert; alles \
             davor ist behalten. Schaff Platz und tippe noch einmal.",
            path,
        ),
        StoreError::InUse { path } => (
            "Ein anderes Programm hat diese Datei geöffnet. Schließ sie dort zuerst; nichts \
              wurde geändert.",
            path,
        ),
        StoreError::NotThere { path } => {
            ("Diese Datei gibt es nicht. Nichts wurde geändert.", path)
        }
        StoreError::NoFolder { path } => (
            "Für diese Datei gibt es keinen Ordner. Leg ihn an oder nenne einen anderen Ort.",
            path,
        ),
        StoreError::NotAStore { path, found } => (
            match found {
                Foreign::Folder => "Das ist ein Ordner. Nenne eine Datei.",
                Foreign::NotSqlite | Foreign::OtherDatabase { .. } => {
                    "Diese Datei ist keine von unseren. Sie blieb, wie sie ist: Nenne eine andere."
                }
            },
            path,
        ),
        StoreError::Corrupt { path, .. } => (
            "Die Datei ist beschädigt. Sie blieb, wie sie ist. Die Rettung legt sie beiseite und \
             liest, was gut ist, in eine neue.",
            path,
        ),
        StoreError::Spoiled { path, .. } => (
            "Was aus den Aufzeichnungen errechnet ist, passte nicht zu ihnen und wird neu \
             gemacht. Was eingetragen war, ist behalten.",
            path,
        ),
        StoreError::Moved { path } => (
            "Diese Datei wurde verschoben, ersetzt oder überschrieben, während sie offen war. Die \
             Eingabe wurde nicht gespeichert. Was davor eingetragen wurde, steht in der Datei, \
             die geöffnet wurde, wo immer sie jetzt ist: Leg sie zurück oder öffne sie dort.",
            path,
        ),
        StoreError::DiskFailed { path, .. } => (
            "Der Datenträger versagte. Vielleicht wurde die Eingabe nicht gespeichert: Sieh auf \
             den Bildschirm, bevor du noch einmal tippst. Alles davor ist behalten.",
            path,
        ),
        StoreError::Closed { path } => (
            "Die Datei ist nach einem Fehler geschlossen. Öffne sie \
                                         noch einmal.",
            path,
        ),
        StoreError::NoWriteAheadLog { path, .. } => (
            "Dieser Ort kann kein Protokoll führen, das einen Stromausfall übersteht. Nenne \
              einen anderen.",
            path,
        ),
        StoreError::Exists { path } => (
            "Eine Datei dieses Namens gibt es schon. Sie blieb, wie sie ist: Nenne eine andere.",
            path,
        ),
        StoreError::Failed { path, .. } => {
            ("Die Datei ließ sich nicht benutzen. Was darin steht, ist behalten.", path)
        }
    };
    storage(reason, at(path))
}

fn storage(reason: &str, kept_at: String) -> EngineError {
    EngineError::Storage { reason: reason.to_owned(), kept_at }
}

/// An event in the log that this release can't read.
pub fn unreadable_event(seq: u64) -> EngineError {
    EngineError::NewerFile {
        reason: format!(
            "Eintrag {seq} des Protokolls wurde von einer neueren Version geschrieben. Die Datei \
             blieb, wie sie ist: Öffne sie mit jener Version."
        ),
    }
}

/// The engine was shut down.
pub fn closed() -> EngineError {
    EngineError::Closed { reason: "Das wurde geschlossen. Öffne es noch einmal.".to_owned() }
}

/// A defect of ours.
pub fn broken(what: &str) -> EngineError {
    EngineError::Broken {
        reason: "Im Programm ging etwas schief. Was eingetragen war, ist behalten, und du kannst \
                 weitermachen. Geschieht es wieder, mach eine Kopie der Aufzeichnungen und lass sie \
                 prüfen."
            .to_owned(),
        report: format!(
            "Für die Entwickler, auf Englisch: „barwright {}: {what}“",
            env!("CARGO_PKG_VERSION")
        ),
    }
}

/// There is no file to recover.
pub fn no_file(path: &str) -> String {
    format!("Es gibt keine Datei {path}. Nichts wurde angelegt.")
}

/// Nothing is wrong with the file that was to be recovered.
pub fn nothing_damaged(mended: u64) -> String {
    match mended {
        0 => "Dieser Datei fehlt nichts; sie blieb, wie sie ist.".to_owned(),
        _ => {
            "Kein Eintrag dieser Datei ist beschädigt. Was daraus errechnet ist, passte nicht und \
             wurde neu gemacht."
                .to_owned()
        }
    }
}

/// What was read back from a damaged file.
pub fn recovered(aside: &str, read: &Salvage) -> String {
    let kept = match read.kept {
        1 => "Ihr erster Eintrag steht in der neuen Datei.".to_owned(),
        kept if kept == read.last => format!(
            "Alle ihre {kept} Einträge stehen in der neuen \
                                              Datei."
        ),
        kept => format!("Ihre ersten {kept} Einträge stehen in der neuen Datei, ohne Lücke."),
    };
    let mended = match read.mended {
        0 => String::new(),
        1 => " Einer davon hatte ein falsches Bit, das seine Prüfsumme berichtigte.".to_owned(),
        mended => format!(
            " {mended} davon hatten ein falsches Bit, das ihre Prüfsummen \
                           berichtigten."
        ),
    };
    let until = read.kept_at.map(|at| format!(", eingetragen nach dem {}", moment(at)));
    let lost = match read.last - read.kept {
        0 => String::new(),
        lost => {
            let what = if lost == 1 { "Ein späterer Eintrag" } else { "Spätere Einträge" };
            let many = if lost == 1 { String::new() } else { format!(" ({lost} oder mehr)") };
            format!(" {what} nicht{many}{}.", until.unwrap_or_default())
        }
    };
    let beyond = match (read.beyond, read.beyond_at) {
        (0, _) | (_, None) => String::new(),
        (1, Some(at)) => format!(
            " Einer davon lässt sich in der beschädigten Datei noch lesen, schließt aber nicht \
             an; er wurde am {} eingetragen.",
            moment(at)
        ),
        (beyond, Some(at)) => format!(
            " {beyond} davon lassen sich in der beschädigten Datei noch lesen, schließen aber \
             nicht an; der letzte wurde am {} eingetragen.",
            moment(at)
        ),
    };
    format!("Die beschädigte Datei bleibt als {aside} erhalten. {kept}{mended}{lost}{beyond}")
}

/// A backup was put in the place of the records; what was there lies `aside`.
pub fn restored(entries: u64, aside: Option<&str>) -> String {
    let entries = counted(entries, "Eintrag", "Einträge");
    let aside = aside.map(|aside| format!(" Was dort war, bleibt als {aside} erhalten."));
    format!("{entries}, alle gut, sind an ihrem Platz.{}", aside.unwrap_or_default())
}

/// What a folder of backups has after one was kept there, or was not due.
pub fn kept_backup(kept: &Kept) -> String {
    let made = match &kept.made {
        Some((path, verified)) => format!(
            "{}: {}, eine ganze Kopie.",
            path.display(),
            counted(verified.events, "Eintrag", "Einträge")
        ),
        None => {
            let last = kept.days.last().map(|day| super::date::day(*day)).unwrap_or_default();
            format!("Keine Sicherung fällig: Die letzte ist vom {last}.")
        }
    };
    let removed = match kept.removed {
        0 => String::new(),
        removed => {
            format!(" {} entfernt.", counted(removed.into(), "ältere wurde", "ältere wurden"))
        }
    };
    format!(
        "{made}{removed} {} aufgehoben.",
        counted(kept.days.len() as u64, "Sicherung ist", "Sicherungen sind")
    )
}

/// The day of a tap, where it was made.
fn moment(at: Stamp) -> String {
    let local = at.wall_ms.saturating_add(i64::from(at.offset_minutes) * 60_000);
    let day = super::date::day(i32::try_from(local.div_euclid(86_400_000)).unwrap_or(0));
    let year = chrono::DateTime::from_timestamp_millis(local).map(|date| date.year());
    format!("{day} {}", year.unwrap_or_default())
}

/// What a whole file was looked at for.
pub fn examined(entries: u64, derived: u64, mended: u64, sealed: u64) -> String {
    let entries = counted(entries, "Eintrag", "Einträge");
    let derived = counted(derived, "Zeile", "Zeilen");
    let mended = match mended {
        0 => String::new(),
        1 => " Mindestens eine dieser Zeilen passte nicht und wurde neu gemacht.".to_owned(),
        mended => format!(" {mended} dieser Zeilen passten nicht und wurden neu gemacht."),
    };
    format!(
        "{entries}, alle gut. Geprüft: der Aufbau der Datei, jeder Eintrag gegen seine Prüfsumme \
         und den davor, und {derived}, daraus errechnet, jede gegen das, was sie ergeben.{mended} \
         Der Verlust eines Eintrags bis Nummer {sealed} fiele auf."
    )
}

fn counted(count: u64, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

/// Nothing at all could be read of a damaged file, which was moved out of the way.
pub fn nothing_read(aside: &std::path::Path, beyond: u64) -> EngineError {
    let found = match beyond {
        0 => "In dieser Datei ließ sich nichts lesen.".to_owned(),
        _ => format!("{beyond} Einträge dieser Datei lassen sich lesen, aber nicht die ersten."),
    };
    let reason = format!(
        "{found} Sie wurde beiseitegelegt und bleibt, wie sie ist. Eine frühere Kopie kann an \
         ihre Stelle gelegt werden; sonst beginnt das Öffnen mit nichts."
    );
    storage(&reason, aside.display().to_string())
}
