//! What we take from others: under which licences, from where, and that NOTICES says so.
//!
//! The lock file and NOTICES are compared at each `cargo test`. Licences are known to the packages
//! alone; Cargo may have to fetch those of other platforms first, so `.ci/run` compares them.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::process::Command;

use serde_json::Value;

/// What may be linked into a program that is handed on under the MIT licence, on the terms that
/// NOTICES states.
const LICENCES: &[&str] = &[
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "MIT",
    "Unicode-3.0",
    "Unicode-DFS-2016",
    "WTFPL",
    "Zlib",
];

/// Packages that may have this licence too, and no other may.
const ALSO: (&str, &str) = ("MPL-2.0", "uniffi");

/// Nothing here talks over a network.
const BANNED: &[&str] = &[
    "async-std",
    "curl",
    "hyper",
    "isahc",
    "native-tls",
    "openssl",
    "quinn",
    "reqwest",
    "rustls",
    "tokio",
    "tungstenite",
    "ureq",
];

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

/// The packages that a lock file names, each with its source and whether it has a checksum.
fn locked(lock: &str) -> BTreeMap<Package, (String, bool)> {
    let packages = lock.split("[[package]]\n").skip(1).filter_map(|block| {
        let field = |key| block.lines().find_map(|line| value(line, key)).map(str::to_owned);
        let source = field("source")?;
        Some(((field("name")?, field("version")?), (source, field("checksum").is_some())))
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

/// Whether an expression of licences leaves a choice that is among those allowed. `AND` binds more
/// than `OR`; some packages still write `/` for it.
fn allows(expression: &str, allowed: &impl Fn(&str) -> bool) -> bool {
    let spaced = expression.replace('/', " OR ").replace('(', " ( ").replace(')', " ) ");
    let words: Vec<&str> = spaced.split_whitespace().collect();
    let mut at = 0;
    any_of(&words, &mut at, allowed) && at == words.len()
}

fn any_of(words: &[&str], at: &mut usize, allowed: &impl Fn(&str) -> bool) -> bool {
    let mut holds = all_of(words, at, allowed);
    while words.get(*at) == Some(&"OR") {
        *at += 1;
        holds |= all_of(words, at, allowed);
    }
    holds
}

fn all_of(words: &[&str], at: &mut usize, allowed: &impl Fn(&str) -> bool) -> bool {
    let mut holds = true;
    loop {
        if words.get(*at) == Some(&"(") {
            *at += 1;
            holds &= any_of(words, at, allowed) && words.get(*at) == Some(&")");
            *at += 1;
        } else {
            let mut one = words.get(*at).copied().unwrap_or_default().to_owned();
            *at += 1;
            if let (Some(&"WITH"), Some(exception)) = (words.get(*at), words.get(*at + 1)) {
                one = format!("{one} WITH {exception}");
                *at += 2;
            }
            holds &= allowed(&one);
        }
        if words.get(*at) != Some(&"AND") {
            return holds;
        }
        *at += 1;
    }
}

fn may_be_taken(name: &str, licence: &str) -> bool {
    let (also, family) = ALSO;
    let family = name == family || name.starts_with(&format!("{family}_"));
    allows(licence, &|one| LICENCES.contains(&one) || (family && one == also))
}

#[test]
fn every_package_comes_from_the_one_registry_and_may_be_taken() {
    let locked = locked(&read("Cargo.lock"));
    assert!(locked.len() > 200, "the lock file is read");
    let sources: BTreeSet<&str> = locked.values().map(|(source, _)| source.as_str()).collect();
    assert!(
        sources.len() == 1 && sources.iter().all(|one| one.starts_with("registry+")),
        "{sources:?}"
    );
    let loose: Vec<_> = locked.iter().filter(|(_, (_, checksum))| !checksum).collect();
    assert!(loose.is_empty(), "without a checksum: {loose:?}");
    let banned: Vec<_> =
        locked.keys().filter(|(name, _)| BANNED.contains(&name.as_str())).collect();
    assert!(banned.is_empty(), "{banned:?}");
    let licences = listed(&read("NOTICES"));
    let refused: Vec<_> =
        licences.iter().filter(|((name, _), licence)| !may_be_taken(name, licence)).collect();
    assert!(refused.is_empty(), "{refused:?}");
}

#[test]
fn notices_names_what_is_locked() {
    let notices = read("NOTICES");
    let named: BTreeSet<Package> = listed(&notices).into_keys().collect();
    let locked: BTreeSet<Package> = locked(&read("Cargo.lock")).into_keys().collect();
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

/// The tests above would pass for ever on a reader that allows everything.
#[test]
fn choices_of_licences_are_understood() {
    for good in ["MIT", "MIT/GPL-3.0", "(GPL-2.0 OR MIT) AND Zlib", "MIT OR GPL-2.0 AND GPL-3.0"] {
        assert!(may_be_taken("any", good), "{good}");
    }
    for bad in ["", "none stated", "GPL-3.0", "MIT AND GPL-3.0", "(MIT", "MPL-2.0", "MIT GPL-3.0"] {
        assert!(!may_be_taken("any", bad), "{bad}");
    }
    assert!(may_be_taken("uniffi_core", "MPL-2.0") && !may_be_taken("unify", "MPL-2.0"));
    assert!(!may_be_taken("any", "Apache-2.0 WITH other-exception"));
}
