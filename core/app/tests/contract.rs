//! The contract with every shell, held to its committed snapshot `core/app/contract.txt`: whatever
//! crosses to a shell, by its names, types and order. Words of the documentation are left out: they
//! may be mended freely.
//!
//! A change to the contract wants a version of its own. Raise `CONTRACT_VERSION`, then
//! `BARWRIGHT_WRITE_CONTRACT=1 cargo test -p barwright-app --test contract` writes the snapshot anew.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use barwright_app::contract::CONTRACT_VERSION;
use quote::ToTokens;
use syn::{Attribute, Fields, FnArg, ImplItem, Item, Meta, ReturnType, Signature};

fn folder() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// Every Rust file under a folder.
fn sources(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in folder.read_dir().expect("the folder is in the checkout") {
        let path = entry.expect("it can be read").path();
        if path.is_dir() {
            sources(&path, into);
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            into.push(path);
        }
    }
}

/// Tokens as text, without spaces: `Option<String>`.
fn text(tokens: &impl ToTokens) -> String {
    tokens.to_token_stream().to_string().replace(' ', "")
}

/// What `attribute` hands to shells: serde's words and UniFFI's, the latter out of their `cfg_attr`.
/// None for every other attribute.
fn crossing(attribute: &Attribute) -> Option<String> {
    match &attribute.meta {
        Meta::List(list) if list.path.is_ident("serde") => Some(text(&list)),
        Meta::List(list) if list.path.is_ident("cfg_attr") => {
            text(&list.tokens).strip_prefix("feature=\"uniffi\",").map(str::to_owned)
        }
        _ => None,
    }
}

/// Whether UniFFI carries what has these attributes.
fn is_carried(attributes: &[Attribute]) -> bool {
    attributes
        .iter()
        .filter_map(crossing)
        .any(|word| word.starts_with("derive(uniffi::") || word.starts_with("uniffi::export"))
}

/// The attributes that matter, each behind a mark.
fn marks(attributes: &[Attribute]) -> String {
    attributes.iter().filter_map(crossing).fold(String::new(), |marks, word| marks + "  #" + &word)
}

fn write_fields(fields: &Fields, indent: &str, out: &mut String) {
    for (place, field) in fields.iter().enumerate() {
        let name = field.ident.as_ref().map_or_else(|| place.to_string(), ToString::to_string);
        let _ = writeln!(out, "{indent}{name}: {}{}", text(&field.ty), marks(&field.attrs));
    }
}

fn signature(signature: &Signature) -> String {
    let input = |input: &FnArg| match input {
        FnArg::Receiver(_) => text(input),
        FnArg::Typed(typed) => format!("{}: {}", text(&typed.pat), text(&typed.ty)),
    };
    let inputs: Vec<String> = signature.inputs.iter().map(input).collect();
    let output = match &signature.output {
        ReturnType::Default => String::new(),
        ReturnType::Type(_, output) => format!(" -> {}", text(output)),
    };
    format!("{}({}){output}", signature.ident, inputs.join(", "))
}

/// What an item hands to shells, under its name; none where it hands nothing.
fn declared(item: &Item) -> Option<(String, String)> {
    let mut out = String::new();
    let (name, attributes) = match item {
        Item::Struct(item) if is_carried(&item.attrs) => {
            // An object's fields stay inside.
            let object = item.attrs.iter().filter_map(crossing).any(|word| word.contains("Object"));
            if !object {
                write_fields(&item.fields, "    ", &mut out);
            }
            (format!("struct {}", item.ident), &item.attrs)
        }
        Item::Enum(item) if is_carried(&item.attrs) => {
            for variant in &item.variants {
                let _ = writeln!(out, "    {}{}", variant.ident, marks(&variant.attrs));
                write_fields(&variant.fields, "        ", &mut out);
            }
            (format!("enum {}", item.ident), &item.attrs)
        }
        Item::Impl(item) if is_carried(&item.attrs) => {
            for member in &item.items {
                let ImplItem::Fn(method) = member else { continue };
                let _ = writeln!(out, "    {}{}", signature(&method.sig), marks(&method.attrs));
            }
            (format!("impl {}", text(&item.self_ty)), &item.attrs)
        }
        Item::Fn(item) if is_carried(&item.attrs) => {
            (format!("fn {}", signature(&item.sig)), &item.attrs)
        }
        _ => return None,
    };
    Some((name.clone(), format!("{name}{}\n{out}", marks(attributes))))
}

/// The contract as it stands in the sources, in order of name.
fn contract() -> String {
    let mut files = Vec::new();
    sources(&folder().join("src"), &mut files);
    let mut declarations = BTreeMap::new();
    for path in files {
        let source = std::fs::read_to_string(&path).expect("it can be read");
        let file = syn::parse_file(&source).expect("it was just compiled");
        for (name, declaration) in file.items.iter().filter_map(declared) {
            let twice = declarations.insert(name, declaration);
            assert_eq!(twice, None, "declared twice, the second time in {}", path.display());
        }
    }
    let declarations: Vec<String> = declarations.into_values().collect();
    declarations.join("\n")
}

/// The version in a snapshot's first line, and the contract after it.
fn read(snapshot: &str) -> Option<(u32, &str)> {
    let (first, rest) = snapshot.split_once("\n\n")?;
    Some((first.strip_prefix("contract version ")?.parse().ok()?, rest))
}

/// Each line with those that it stands under: many a struct has a `title`.
fn lines_in_place(contract: &str) -> Vec<String> {
    let mut above: Vec<(usize, &str)> = Vec::new();
    let mut lines = Vec::new();
    for line in contract.lines().filter(|line| !line.is_empty()) {
        let depth = line.len() - line.trim_start().len();
        above.retain(|(other, _)| *other < depth);
        above.push((depth, line.trim_start()));
        let names = above.iter().map(|(_, line)| line.split("  #").next().unwrap_or_default());
        let mut place: Vec<&str> = names.collect();
        place.pop();
        place.push(line.trim_start());
        lines.push(place.join(" / "));
    }
    lines
}

/// The lines that went and came between two contracts.
fn difference(then: &str, now: &str) -> String {
    let (then, now) = (lines_in_place(then), lines_in_place(now));
    let gone = then.iter().filter(|line| !now.contains(line)).map(|line| format!("- {line}"));
    let come = now.iter().filter(|line| !then.contains(line)).map(|line| format!("+ {line}"));
    let lines: Vec<String> = gone.chain(come).collect();
    if lines.is_empty() { "the order of its lines".to_owned() } else { lines.join("\n") }
}

#[test]
fn the_contract_is_as_its_snapshot_says() {
    let path = folder().join("contract.txt");
    let committed = std::fs::read_to_string(&path).expect("the snapshot is committed");
    let (version, then) = read(&committed).expect("its first line names its version");
    let now = contract();
    if then == now && version == CONTRACT_VERSION {
        return;
    }
    let changed = difference(then, &now);
    assert!(
        then == now || version != CONTRACT_VERSION,
        "\nThe contract changed, and its version is still {version}. What changed:\n\n{changed}\n\n\
         If that was meant:\n\
         1. raise CONTRACT_VERSION in core/app/src/contract/mod.rs to {},\n\
         2. run BARWRIGHT_WRITE_CONTRACT=1 cargo test -p barwright-app --test contract,\n\
         3. read what it changed in core/app/contract.txt and commit both.\n",
        version + 1
    );
    assert!(
        CONTRACT_VERSION > version,
        "\nCONTRACT_VERSION is {CONTRACT_VERSION}, and the snapshot core/app/contract.txt is already \
         at {version}: the version only rises. Set it to {}.\n",
        if then == now { version } else { version + 1 }
    );
    assert!(
        std::env::var_os("BARWRIGHT_WRITE_CONTRACT").is_some(),
        "\nCONTRACT_VERSION is {CONTRACT_VERSION}, and the snapshot core/app/contract.txt is of \
         {version}. Run\n\
         BARWRIGHT_WRITE_CONTRACT=1 cargo test -p barwright-app --test contract\n\
         then read what it changed and commit it. What changed:\n\n{changed}\n"
    );
    let written = format!("contract version {CONTRACT_VERSION}\n\n{now}");
    std::fs::write(&path, written).expect("the checkout can be written");
}

/// What the snapshot has to see: the test above would pass for ever on a reader that sees nothing.
#[test]
fn the_snapshot_sees_every_kind_of_declaration() {
    let now = contract();
    for seen in [
        "struct Reading  #derive(uniffi::Record)  #serde(deny_unknown_fields)\n    wall_ms: i64\n",
        "enum Effect ",
        "    RingAt\n        wall_ms: i64\n",
        "enum EngineError  #derive(uniffi::Error)",
        "struct Engine  #derive(uniffi::Object)\n\n",
        "    dispatch(&self, intent: Intent, reading: Reading) -> Result<Answer,EngineError>\n",
        "    open(path: String, locale: String) -> Result<Arc<Self>,EngineError>  #uniffi::constructor",
    ] {
        assert!(now.contains(seen), "not in the contract as read: {seen}\n{now}");
    }
}
