//! Files that a person names: plans and gyms, as text of a bounded size.

use std::fs::File;
use std::io::{Read, Write};
use std::path::Path;

use crate::words::Own;

/// The largest file that is read: a little more than a screen takes of records, and far more than a
/// plan has, so that the core can say itself what is too much.
const LARGEST: u64 = 17 << 20;

/// The text of a file.
pub(crate) fn read(path: &Path, own: Own) -> Result<String, String> {
    let shown = path.display().to_string();
    let cannot = |error: std::io::Error| (own.not_read)(&shown, &error);
    let file = File::open(path).map_err(cannot)?;
    let mut bytes = Vec::new();
    file.take(LARGEST + 1).read_to_end(&mut bytes).map_err(cannot)?;
    if u64::try_from(bytes.len()).is_ok_and(|length| length > LARGEST) {
        return Err((own.too_large)(&shown, LARGEST >> 20));
    }
    String::from_utf8(bytes)
        .map_err(|error| (own.no_text)(&shown, error.utf8_error().valid_up_to() + 1))
}

/// Saves a text in a new file; one that is there already is left as it is. Answers what was done.
pub(crate) fn save(path: &Path, text: &str, own: Own) -> Result<String, String> {
    let shown = path.display().to_string();
    let made = File::options().write(true).create_new(true).open(path);
    let written = made.and_then(|mut file| {
        file.write_all(text.as_bytes())?;
        file.sync_all()
    });
    match written {
        Ok(()) => Ok((own.saved)(&shown)),
        Err(error) if error.kind() == std::io::ErrorKind::AlreadyExists => {
            Err((own.there_already)(&shown))
        }
        Err(error) => Err((own.not_written)(&shown, &error)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_text_is_refused_with_its_place() {
        let dir = tempfile::tempdir().expect("a folder for the test");
        let path = dir.path().join("plan.toml");
        std::fs::write(&path, b"name = \"a\"\n\xff").expect("it can be written");
        assert!(read(&path, Own::default()).expect_err("it is no text").contains("byte 12"));
        assert!(read(dir.path(), Own::default()).is_err());
        assert!(read(&dir.path().join("none"), Own::default()).is_err());
        std::fs::write(&path, "x".repeat(18 << 20)).expect("it can be written");
        assert!(read(&path, Own::default()).expect_err("it is too large").contains("17 MB"));
    }
}
