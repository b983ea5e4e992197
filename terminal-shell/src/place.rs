//! Where the records are kept, and how this lifter writes numbers.

use std::ffi::OsString;
use std::path::{Path, PathBuf};

use etcetera::BaseStrategy;

use crate::words::Own;

/// Names the store's file.
pub(crate) const STORE_VARIABLE: &str = "BARWRIGHT_STORE";

/// The folder of this user's own files, whether it is there or not.
fn folder(own: Own) -> Result<PathBuf, String> {
    etcetera::choose_base_strategy()
        .map(|base| base.data_dir().join("barwright"))
        .map_err(|_| (own.no_home)(STORE_VARIABLE))
}

/// The file of the real records: as said, else as the environment says, else this user's own.
pub(crate) fn store(said: Option<PathBuf>, own: Own) -> Result<PathBuf, String> {
    let set = || std::env::var_os(STORE_VARIABLE).filter(|path| !path.is_empty());
    match said.or_else(|| set().map(PathBuf::from)) {
        Some(path) => Ok(path),
        None => Ok(folder(own)?.join("records.db")),
    }
}

/// The file of the demo, beside the real records and never the same.
pub(crate) fn demo(said: Option<PathBuf>, own: Own) -> Result<PathBuf, String> {
    let store = store(said, own)?;
    let mut name = OsString::from("demo-");
    name.push(store.file_name().unwrap_or_default());
    Ok(store.with_file_name(name))
}

/// Makes the folder of a file, for this user's eyes only.
pub(crate) fn make_folder(file: &Path, own: Own) -> Result<(), String> {
    let Some(folder) = file.parent().filter(|folder| !folder.as_os_str().is_empty()) else {
        return Ok(());
    };
    let mut builder = std::fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(folder).map_err(|error| (own.no_folder)(&folder.display().to_string(), &error))
}

/// A path as the engine takes it.
pub(crate) fn text(path: &Path, own: Own) -> Result<String, String> {
    path.to_str().map(str::to_owned).ok_or_else(|| (own.path_no_text)(&path.display().to_string()))
}

/// The locale that the lifter is spoken to in: as said, else the first that the environment sets.
pub(crate) fn locale(said: Option<String>) -> String {
    let set = |name| std::env::var(name).ok().filter(|tag| !tag.is_empty());
    said.or_else(|| ["LC_ALL", "LC_NUMERIC", "LANG"].into_iter().find_map(set)).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_demo_lies_beside_the_records_and_is_another_file() {
        let said = Some(PathBuf::from("folder/mine.db"));
        assert_eq!(store(said.clone(), Own::default()), Ok(PathBuf::from("folder/mine.db")));
        assert_eq!(demo(said, Own::default()), Ok(PathBuf::from("folder/demo-mine.db")));
    }

    #[cfg(unix)]
    #[test]
    fn a_new_folder_is_private() {
        use std::os::unix::fs::PermissionsExt;
        let dir = tempfile::tempdir().expect("a folder for the test");
        let file = dir.path().join("a/b/records.db");
        make_folder(&file, Own::default()).expect("it can be made");
        let mode = std::fs::metadata(dir.path().join("a/b")).expect("it is there").permissions();
        assert_eq!(mode.mode() & 0o777, 0o700);
    }
}
