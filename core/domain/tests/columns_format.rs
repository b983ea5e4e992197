//! docs/columns-format.md and docs/columns.schema.json say what the reader of columns reads.
//!
//! `BARWRIGHT_REWRITE=1 cargo test -p barwright-domain --test columns_format` writes the schema anew
//! after a key was added; then describe the key there.

mod format;

use barwright_domain::catalogue::Catalogue;
use barwright_domain::columns::{COLUMNS, Columns};

use format::Format;

fn columns() -> Format {
    Format {
        page: include_str!("../../../docs/columns-format.md"),
        file: concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs/columns.schema.json"),
        title: "The columns of a table of old sets",
        about: "See docs/columns-format.md: every key with an example.",
        root: &COLUMNS,
        whole: |kind, body| match kind {
            "columns" => body.to_owned(),
            other => panic!("an example of what: {other}?"),
        },
        faults: |text| Columns::read(text, &Catalogue::builtin()).err().unwrap_or_default(),
        alike: &[],
    }
}

#[test]
fn the_schema_has_the_readers_keys() {
    columns().has_the_readers_keys();
}

#[test]
fn the_reader_and_the_schema_take_the_same_types() {
    columns().takes_the_same_types();
}

#[test]
fn the_page_shows_every_key() {
    columns().is_shown_whole();
}

#[test]
fn every_example_of_the_page_is_read() {
    let examples = columns().examples();
    assert!(examples.len() > 1, "{}", examples.len());
    for (line, text) in examples {
        let read = Columns::read(&text, &Catalogue::builtin());
        let columns = read.unwrap_or_else(|why| panic!("the example at line {line}: {why:#?}"));
        assert!(columns.at.len() > 5, "line {line}");
    }
}
