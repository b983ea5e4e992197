//! `barwright drive`: the core for other programs, as JSON lines in and out.

use std::io::{self, BufRead, Read, Write};

use barwright_app::Engine;
use barwright_app::contract::{Action, Answer, EngineError, Intent, Look, Reading, RefusalCode};
use serde::{Deserialize, Serialize};

/// The longest line that is taken, in bytes: a plan file fits in many times over.
const LONGEST: u64 = 8 << 20;

/// One line in: a reading of the clocks with an intent to carry out, or a screen to look at.
#[derive(Debug, Deserialize, schemars::JsonSchema)]
#[serde(deny_unknown_fields)]
struct Line {
    /// The clocks, as they stand.
    reading: Reading,
    /// What to carry out.
    #[serde(default)]
    intent: Option<Intent>,
    /// What a key says, in place of an intent.
    #[serde(default)]
    action: Option<Action>,
    /// What to look at, in place of an intent.
    #[serde(default)]
    view: Option<Look>,
}

/// One line out, for each line in.
#[derive(Debug, Serialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
// One answer at a time is made and written.
#[allow(clippy::large_enum_variant)]
enum Said {
    /// The screen that was asked for, or that of an intent that is carried out and on disk.
    Answer(Answer),
    /// Nothing changed.
    Refused {
        /// For programs.
        code: RefusalCode,
        /// In words.
        text: String,
        /// The yes to what it asks; none where it does not ask.
        #[serde(skip_serializing_if = "Option::is_none")]
        ask: Option<Action>,
    },
    /// The store failed, or the line could not be read. Nothing was recorded.
    Error(Failed),
}

/// What failed.
#[derive(Debug, Serialize, schemars::JsonSchema)]
struct Failed {
    /// Which.
    kind: Kind,
    /// In words.
    text: String,
    /// The line in question, from 1.
    line: u64,
    /// The column in it where reading stopped, from 1, for a line that could not be read.
    #[serde(skip_serializing_if = "Option::is_none")]
    column: Option<usize>,
    /// Where what was kept lies; empty where there is no file.
    #[serde(skip_serializing_if = "String::is_empty")]
    kept_at: String,
}

/// Kinds of failure.
#[derive(Debug, Serialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
enum Kind {
    /// The line could not be read.
    Line,
    /// The file could not be read or written.
    Storage,
    /// The file was written by a newer release.
    NewerFile,
    /// The engine was shut down.
    Closed,
    /// A defect; the next line works.
    Broken,
}

/// The JSON Schema of the lines in and out.
pub(crate) fn describe(out: &mut impl Write) -> io::Result<()> {
    let both = serde_json::json!({
        "in": schemars::schema_for!(Line),
        "out": schemars::schema_for!(Said),
    });
    serde_json::to_writer_pretty(&mut *out, &both)?;
    out.write_all(b"\n")
}

/// Answers every line, each when what it asked for is on disk.
pub(crate) fn run(
    engine: &Engine,
    mut input: impl BufRead,
    out: &mut impl Write,
) -> io::Result<()> {
    let mut bytes = Vec::new();
    let mut number = 0;
    loop {
        bytes.clear();
        if input.by_ref().take(LONGEST + 1).read_until(b'\n', &mut bytes)? == 0 {
            return Ok(());
        }
        number += 1;
        let answer = if u64::try_from(bytes.len()).is_ok_and(|length| length > LONGEST) {
            skip_line(&mut input, &bytes)?;
            let text = format!("the line is longer than {LONGEST} bytes");
            unreadable(number, text, None)
        } else if bytes.iter().all(u8::is_ascii_whitespace) {
            continue;
        } else {
            answer(engine, &bytes, number)
        };
        serde_json::to_writer(&mut *out, &answer)?;
        out.write_all(b"\n")?;
        out.flush()?;
    }
}

/// Reads on to the end of a line that is too long to keep.
fn skip_line(input: &mut impl BufRead, begun: &[u8]) -> io::Result<()> {
    let mut ended = begun.ends_with(b"\n");
    while !ended {
        let chunk = input.fill_buf()?;
        let end = chunk.iter().position(|byte| *byte == b'\n');
        let used = end.map_or(chunk.len(), |at| at + 1);
        ended = end.is_some() || used == 0;
        input.consume(used);
    }
    Ok(())
}

fn answer(engine: &Engine, bytes: &[u8], number: u64) -> Said {
    let line: Line = match serde_json::from_slice(bytes.trim_ascii_end()) {
        Ok(line) => line,
        Err(error) => {
            // The library's own place says "at line 1": the line is ours to name.
            let said = error.to_string();
            let text = said.split(" at line ").next().unwrap_or(&said).to_owned();
            return unreadable(number, text, Some(error.column().max(1)));
        }
    };
    let answer = match (line.intent, line.action, line.view) {
        (Some(intent), None, None) => engine.dispatch(intent, line.reading),
        (None, Some(action), None) => engine.act(action, line.reading),
        (None, None, Some(look)) => engine.view(look, line.reading),
        _ => {
            let text = "a line has `intent`, `action` or `view`, and one of them".to_owned();
            return unreadable(number, text, None);
        }
    };
    answer.map_or_else(|error| refused(error, number), Said::Answer)
}

fn unreadable(line: u64, text: String, column: Option<usize>) -> Said {
    Said::Error(Failed { kind: Kind::Line, text, line, column, kept_at: String::new() })
}

fn refused(error: EngineError, line: u64) -> Said {
    let failed =
        |kind, text, kept_at| Said::Error(Failed { kind, text, line, column: None, kept_at });
    match error {
        EngineError::Refused { code, reason, ask } => Said::Refused { code, text: reason, ask },
        EngineError::Storage { reason, kept_at } => failed(Kind::Storage, reason, kept_at),
        EngineError::NewerFile { reason } => failed(Kind::NewerFile, reason, String::new()),
        EngineError::Closed { reason } => failed(Kind::Closed, reason, String::new()),
        EngineError::Broken { reason, .. } => failed(Kind::Broken, reason, String::new()),
    }
}
