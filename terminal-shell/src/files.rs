//! Files that a person names: plans and gyms, as text of a bounded size.

use std::fs::File;
use std::io::{Read, Write};
use std::path::Path;

/// The largest file that is read: some ten times what the reader of plans takes, so that it can
/// say itself what is too much.
const LARGEST: u64 = 4 << 20;

/// The text of a file.
pub(crate) fn read(path: &Path) -> Result<String, String> {
    let shown = path.display();
    let cannot = |error: std::io::Error| format!("The file {shown} can't be read: {error}.");
    let file = File::open(path).map_err(cannot)?;
    let mut bytes = Vec::new();
    file.take(LARGEST + 1).read_to_end(&mut bytes).map_err(cannot)?;
    if u64::try_from(bytes.len()).is_ok_and(|length| length > LARGEST) {
        return Err(format!("The file {shown} is larger than {} MB.", LARGEST >> 20));
    }
    String::from_utf8(bytes).map_err(|error| {
        let at = error.utf8_error().valid_up_to();
        format!("The file {shown} is not plain text (UTF-8): byte {} is something else.", at + 1)
    })
}

/// Saves a text in a new file; one that is there already is left as it is. Answers what was done.
pub(crate) fn save(path: &Path, text: &str) -> Result<String, String> {
    let shown = path.display();
    let made = File::options().write(true).create_new(true).open(path);
    let written = made.and_then(|mut file| {
        file.write_all(text.as_bytes())?;
        file.sync_all()
    });
    match written {
        Ok(()) => Ok(format!("Saved in {shown}.")),
        Err(error) if error.kind() == std::io::ErrorKind::AlreadyExists => {
            Err(format!("There is a file {shown} already; it was left as it is. Name another."))
        }
        Err(error) => Err(format!("The file {shown} can't be written: {error}.")),
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
        assert!(read(&path).expect_err("it is no text").contains("byte 12"));
        assert!(read(dir.path()).is_err());
        assert!(read(&dir.path().join("none")).is_err());
        std::fs::write(&path, "x".repeat(5 << 20)).expect("it can be written");
        assert!(read(&path).expect_err("it is too large").contains("4 MB"));
    }
}
