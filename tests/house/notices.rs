//! That NOTICES says what we take from others, and under which licences. Which may be taken, and from
//! where, stands in deny.toml.
//!
//! The lock file and NOTICES are compared at each `cargo test`. Licences are known to the packages
//! alone; Cargo may have to fetch those of other platforms first, so `.ci/run` compares them.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::process::Command;

use serde_json::Value;

/// Where the list begins in NOTICES; what stands above is written by hand.
const LIST: &str = "\nPackages of Rust\n----------------\n\n";

/// A package of others: name and version.
type Package = (String, String);

fn read(name: &str) -> String {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("the tests lie in the tree");
    std::fs::read_to_string(root.join(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// The value of `key = "value"`.
fn value<'a>(line: &'a str, key: &str) -> Option<&'a str> {
    line.strip_prefix(key)?.strip_prefix(" = \"")?.strip_suffix('"')
}

/// The packages of others that a lock file names.
fn locked(lock: &str) -> BTreeSet<Package> {
    let packages = lock.split("[[package]]\n").skip(1).filter_map(|block| {
        let field = |key| block.lines().find_map(|line| value(line, key)).map(str::to_owned);
        field("source")?;
        Some((field("name")?, field("version")?))
    });
    packages.collect()
}

/// The list of a NOTICES file.
fn listed(notices: &str) -> BTreeMap<Package, String> {
    let (_, list) = notices.split_once(LIST).expect("NOTICES has its list");
    let lines = list.lines().map(|line| {
        let (package, licence) = line.split_once(": ").expect("a line is `name version: licence`");
        let (name, version) = package.split_once(' ').expect("a package has a version");
        ((name.to_owned(), version.to_owned()), licence.to_owned())
    });
    lines.collect()
}

#[test]
fn notices_names_what_is_locked() {
    let notices = read("NOTICES");
    let named: BTreeSet<Package> = listed(&notices).into_keys().collect();
    let locked = locked(&read("Cargo.lock"));
    assert!(locked.len() > 200, "the lock file is read");
    let missing: Vec<_> = locked.difference(&named).collect();
    let gone: Vec<_> = named.difference(&locked).collect();
    assert!(
        missing.is_empty() && gone.is_empty(),
        "NOTICES lacks {missing:?} and still has {gone:?}; BARWRIGHT_WRITE_NOTICES=1 with \
         `cargo test -p barwright-tests --test house -- --ignored` writes it anew"
    );
    let versions = read("android-shell/gradle/libs.versions.toml");
    for (key, title) in [("jna", "JNA"), ("kotlin", "Kotlin's standard library")] {
        let version = versions.lines().find_map(|line| value(line, key)).expect("it is there");
        let line = format!("{title} {version}: ");
        assert!(notices.lines().any(|one| one.starts_with(&line)), "NOTICES lacks `{line}`");
    }
}

/// Licences as the packages state them. `BARWRIGHT_WRITE_NOTICES=1` writes them down.
#[test]
#[ignore = "Cargo may have to fetch packages of other platforms: .ci/run does"]
fn notices_has_the_licences_that_packages_state() {
    let out = Command::new(env!("CARGO"))
        .args(["metadata", "--locked", "--all-features", "--format-version", "1"])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("cargo runs the tests, so it is there");
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
    let metadata: Value = serde_json::from_slice(&out.stdout).expect("cargo prints JSON");
    let packages = metadata["packages"].as_array().expect("a list");
    let stated: BTreeMap<Package, String> = packages
        .iter()
        .filter(|package| !package["source"].is_null())
        .map(|package| {
            let text = |key: &str| package[key].as_str().unwrap_or("none stated").to_owned();
            ((text("name"), text("version")), text("license"))
        })
        .collect();
    let notices = read("NOTICES");
    if std::env::var_os("BARWRIGHT_WRITE_NOTICES").is_some() {
        let (above, _) = notices.split_once(LIST).expect("NOTICES has its list");
        let lines = stated
            .iter()
            .map(|((name, version), licence)| format!("{name} {version}: {licence}\n"));
        let whole = format!("{above}{LIST}{}", lines.collect::<String>());
        let root =
            Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("the tests lie in the tree");
        std::fs::write(root.join("NOTICES"), whole).expect("it can be written");
        return;
    }
    assert_eq!(listed(&notices), stated);
}
