//! What the folders of a crate import of each other: one way only.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use quote::ToTokens;

/// Crates whose folders import each other one way only.
const LAYERED: &[&str] =
    &["core/domain", "core/log", "core/store", "core/app", "core/rehearsal", "terminal-shell"];

/// A part of a crate: a folder of its sources, or a file beside them.
type Parts = BTreeMap<String, BTreeSet<String>>;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("the tests lie in the checkout")
}

/// Every Rust file under a folder, tests' own files apart.
fn sources(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in folder.read_dir().expect("the folder is in the checkout") {
        let path = entry.expect("it can be read").path();
        let name = path.file_name().expect("it has a name").to_string_lossy().into_owned();
        if path.is_dir() && name != "tests" {
            sources(&path, into);
        } else if name.ends_with(".rs") && name != "tests.rs" {
            into.push(path);
        }
    }
}

/// A source without its comments, its texts and the modules of its tests.
fn bare(source: &str) -> String {
    let tokens: proc_macro2::TokenStream = source.parse().expect("it was just compiled");
    let file: syn::File = syn::parse2(tokens).expect("it was just compiled");
    let items = file.items.iter().filter(|item| {
        let attributes = match item {
            syn::Item::Mod(item) => &item.attrs,
            syn::Item::Use(item) => &item.attrs,
            syn::Item::Fn(item) => &item.attrs,
            _ => return true,
        };
        !attributes.iter().any(|one| one.to_token_stream().to_string().contains("cfg (test)"))
    });
    items.map(|item| without_words(item.to_token_stream())).collect::<Vec<_>>().join(" ")
}

/// Tokens as text, each behind a space, without literals: documentation is one.
fn without_words(tokens: proc_macro2::TokenStream) -> String {
    let mut text = String::new();
    for token in tokens {
        match token {
            proc_macro2::TokenTree::Literal(_) => {}
            proc_macro2::TokenTree::Group(group) => {
                text.push_str(" { ");
                text.push_str(&without_words(group.stream()));
                text.push_str(" } ");
            }
            other => {
                text.push(' ');
                text.push_str(&other.to_string());
            }
        }
    }
    text
}

/// What each part of a crate imports of its others.
fn imports(package: &str) -> Parts {
    let src = root().join(package).join("src");
    let mut files = Vec::new();
    sources(&src, &mut files);
    let part_of = |path: &Path| {
        let first = path.strip_prefix(&src).expect("it lies there").iter().next();
        first.expect("it has a name").to_string_lossy().trim_end_matches(".rs").to_owned()
    };
    let names: BTreeSet<String> = files.iter().map(|path| part_of(path)).collect();
    let mut parts = Parts::new();
    for path in &files {
        let own = part_of(path);
        if own == "lib" || own == "main" {
            continue;
        }
        let text = bare(&std::fs::read_to_string(path).expect("it can be read"));
        let words: Vec<&str> = text.split_whitespace().collect();
        // How many names lead from the crate to the module of this file.
        let inside = path.strip_prefix(&src).expect("it lies there");
        let depth = inside.iter().count() - usize::from(path.ends_with("mod.rs"));
        let imported = parts.entry(own.clone()).or_default();
        for (at, word) in words.iter().enumerate() {
            // `crate::name`, or so many `super::` that they lead out of the part.
            let supers = words[at..].chunks(3).take_while(|three| *three == ["super", ":", ":"]);
            let (behind, out) = match *word {
                "crate" if words.get(at + 1..at + 3) == Some(&[":", ":"]) => (at + 3, true),
                "super" if at < 3 || words[at - 3] != "super" => {
                    let count = supers.count();
                    (at + 3 * count, count >= depth)
                }
                _ => continue,
            };
            let next = words.get(behind..behind + 1).unwrap_or_default();
            let listed: Vec<&str> = match next {
                ["{"] => words[behind + 1..].split(|word| *word == "}").next().unwrap_or_default(),
                one => one,
            }
            .to_vec();
            let found = listed.into_iter().filter(|name| out && names.contains(*name));
            imported.extend(found.filter(|name| **name != own).map(str::to_owned));
        }
    }
    parts
}

/// What can be reached from a part.
fn reached(parts: &Parts, from: &str) -> BTreeSet<String> {
    let mut reached = BTreeSet::new();
    let mut next = vec![from.to_owned()];
    while let Some(part) = next.pop() {
        for to in parts.get(&part).into_iter().flatten() {
            if reached.insert(to.clone()) {
                next.push(to.clone());
            }
        }
    }
    reached
}

/// The folders of each circle of a crate, in order of name: those that reach each other, by way of
/// the files beside them too.
fn circles(package: &str) -> Vec<Vec<String>> {
    let parts = imports(package);
    let src = root().join(package).join("src");
    let mut files = Vec::new();
    sources(&src, &mut files);
    let within = files.iter().filter_map(|path| path.strip_prefix(&src).ok());
    let folders: BTreeSet<String> = within
        .filter(|path| path.iter().count() > 1)
        .filter_map(|path| Some(path.iter().next()?.to_string_lossy().into_owned()))
        .collect();
    let reaches: BTreeMap<&String, BTreeSet<String>> =
        parts.keys().map(|part| (part, reached(&parts, part))).collect();
    let mut circles: Vec<Vec<String>> = Vec::new();
    for (part, to) in &reaches {
        let back =
            to.iter().filter(|other| reaches.get(other).is_some_and(|to| to.contains(*part)));
        let folders = back.filter(|part| folders.contains(*part)).cloned();
        let circle: Vec<String> = folders.collect();
        if circle.len() > 1 && !circles.contains(&circle) {
            circles.push(circle);
        }
    }
    circles
}

#[test]
fn folders_of_a_crate_import_each_other_one_way() {
    for package in LAYERED {
        let found = circles(package);
        assert!(
            found.is_empty(),
            "{found:?} in {package}, whose parts import {:#?}",
            imports(package)
        );
    }
}

/// The test above would pass for ever on a reader that sees nothing.
#[test]
fn what_folders_import_is_seen() {
    let app = imports("core/app");
    let sees = |from: &str, to: &str| app[from].contains(to);
    assert!(sees("engine", "gather") && sees("gather", "facts") && sees("screens", "phrase"));
    assert!(!sees("phrase", "screens") && !sees("screens", "engine") && !sees("screens", "fault"));
}
