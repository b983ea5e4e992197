//! What may stand in a tracked file: nothing that only holds on one machine or for one way out to
//! the network.

use std::path::Path;
use std::process::Command;

/// Hosts of package registries and their mirrors. Each tool knows its own; a copy in the tree breaks
/// wherever another one is to be used. Written in halves, so that this file passes too.
const REGISTRIES: &[(&str, &str)] = &[
    ("crates", ".io"),
    ("registry.npm", "js.org"),
    ("registry.yarn", "pkg.com"),
    ("pypi", ".org"),
    ("files.python", "hosted.org"),
    ("repo.maven", ".apache.org"),
    ("repo1", ".maven.org"),
    ("maven.google", ".com"),
    ("plugins.gradle", ".org"),
    ("services.gradle", ".org"),
    ("proxy.golang", ".org"),
    ("deb.debian", ".org"),
];

/// Folders of one machine or one person.
const PLACES: &[(&str, &str)] =
    &[("/ro", "ot/"), ("/ho", "me/"), ("/Us", "ers/"), ("/wo", "rk/"), ("C:\\Us", "ers")];

/// Files that a package manager writes, and which name where each package comes from.
const LOCKS: &[&str] = &["Cargo.lock", "package-lock.json"];

/// What a text holds of these, with the line.
fn found(text: &str, of: &[(&str, &str)]) -> Vec<String> {
    let mut found = Vec::new();
    for (at, line) in text.lines().enumerate() {
        for (one, other) in of {
            let whole = format!("{one}{other}");
            // A folder begins a path: `network/` and `a/home/b` are none.
            let begins = |at: usize| {
                !whole.starts_with('/')
                    || !line[..at].ends_with(|c: char| c.is_alphanumeric() || "_-.})".contains(c))
            };
            if line.match_indices(&whole).any(|(at, _)| begins(at)) {
                found.push(format!("line {}: {whole}", at + 1));
            }
        }
    }
    found
}

#[test]
fn no_file_names_a_registry_or_a_place_on_one_machine() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("the tests lie in the tree");
    let listed = Command::new("git").args(["ls-files", "-z"]).current_dir(root).output();
    let listed = listed.expect("a checkout is made by git");
    assert!(listed.status.success(), "{}", String::from_utf8_lossy(&listed.stderr));
    let listed = String::from_utf8(listed.stdout).expect("names are UTF-8");
    let (mut read, mut wrong) = (0, Vec::new());
    for name in listed.split_terminator('\0') {
        // Removed and not yet committed, or no text.
        let Ok(text) = std::fs::read_to_string(root.join(name)) else { continue };
        read += 1;
        let lock = LOCKS.iter().any(|lock| Path::new(name).ends_with(lock));
        let registries = if lock { Vec::new() } else { found(&text, REGISTRIES) };
        wrong.extend(
            registries.into_iter().chain(found(&text, PLACES)).map(|one| format!("{name}, {one}")),
        );
    }
    assert!(read > 300, "git lists the tree");
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// The test above would pass for ever on a reader that sees nothing.
#[test]
fn what_must_not_stand_is_seen() {
    for (one, other) in REGISTRIES {
        assert_eq!(found(&format!("a\nurl = \"https://{one}{other}/x\""), REGISTRIES).len(), 1);
    }
    for (one, other) in PLACES {
        assert_eq!(found(&format!("in {one}{other}somebody"), PLACES).len(), 1);
    }
    assert!(found("core/home/mod.rs, network/, $folder/home/x", PLACES).is_empty());
}
