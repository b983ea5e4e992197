//! The shape of the house: the arrows between the crates and within them, and what each may name.

mod folders;
mod notices;
mod tracked;

use std::collections::BTreeSet;
use std::process::Command;

use serde_json::Value;

/// Who may depend on whom, of our own crates: shells → bindings → app → store → domain, and app → log →
/// domain. The rehearsal is for the desk: what a phone carries can't reach it.
const ARROWS: &[(&str, &[&str])] = &[
    ("barwright-domain", &[]),
    ("barwright-log", &["barwright-domain"]),
    ("barwright-store", &["barwright-domain"]),
    ("barwright-app", &["barwright-domain", "barwright-log", "barwright-store"]),
    ("barwright-bindings", &["barwright-app"]),
    ("barwright-rehearsal", &["barwright-domain"]),
    ("barwright-web", &["barwright-app"]),
    ("barwright", &["barwright-app", "barwright-domain", "barwright-rehearsal"]),
];

/// Libraries that only these crates of the house may name, tests and benches apart.
const KEPT_TO: &[(&str, &[&str])] = &[
    ("rusqlite", &["barwright-store"]),
    ("libsqlite3-sys", &[]),
    ("uniffi", &["barwright-app", "barwright-bindings"]),
    ("ratatui", &["barwright"]),
    ("crossterm", &["barwright"]),
    ("clap", &["barwright"]),
    ("csv", &["barwright", "barwright-app"]),
    ("indicatif", &["barwright"]),
    ("maud", &["barwright"]),
    ("rand_chacha", &["barwright-rehearsal"]),
    ("rand_distr", &["barwright-rehearsal"]),
    ("rayon", &["barwright-rehearsal"]),
];

fn metadata() -> Value {
    let out = Command::new(env!("CARGO"))
        .args(["metadata", "--no-deps", "--format-version", "1", "--offline"])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("cargo runs the tests, so it is there");
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
    serde_json::from_slice(&out.stdout).expect("cargo prints JSON")
}

/// Names of what a package depends on when it is not built for its own tests.
fn dependencies(package: &Value) -> BTreeSet<String> {
    package["dependencies"]
        .as_array()
        .expect("a list")
        .iter()
        .filter(|dependency| dependency["kind"] != "dev")
        .map(|dependency| dependency["name"].as_str().expect("a name").to_owned())
        .collect()
}

#[test]
fn arrows_go_one_way() {
    let metadata = metadata();
    let packages = metadata["packages"].as_array().expect("a list");
    let ours: BTreeSet<&str> =
        packages.iter().map(|package| package["name"].as_str().expect("a name")).collect();
    let mut seen = 0;
    for package in packages {
        let name = package["name"].as_str().expect("a name");
        let Some((_, allowed)) = ARROWS.iter().find(|(from, _)| *from == name) else { continue };
        seen += 1;
        for to in dependencies(package).iter().filter(|to| ours.contains(to.as_str())) {
            assert!(allowed.contains(&to.as_str()), "{name} must not depend on {to}");
        }
    }
    assert!(seen >= 8, "the crates of the house are in the workspace");
}

#[test]
fn libraries_stay_where_they_belong() {
    for package in metadata()["packages"].as_array().expect("a list") {
        let name = package["name"].as_str().expect("a name");
        if !ARROWS.iter().any(|(ours, _)| *ours == name) {
            continue;
        }
        let named = dependencies(package);
        for (library, allowed) in KEPT_TO {
            assert!(
                !named.contains(*library) || allowed.contains(&name),
                "{name} must not name {library}"
            );
        }
    }
}

/// Features of a workspace unify, so code that asks for the time compiles beside its neighbours and
/// fails alone; and the other way round. The domain is built by itself, into a folder of its own.
#[test]
fn the_domain_builds_by_itself() {
    let target = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("domain-alone");
    let status = Command::new(env!("CARGO"))
        .args(["check", "--quiet", "--offline", "-p", "barwright-domain", "--target-dir"])
        .arg(target)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .status()
        .expect("cargo runs the tests, so it is there");
    assert!(status.success());
}
