//! The page that specifies the format names every table, column and event.
#![expect(clippy::unwrap_used, reason = "a test's helpers fail as the test does")]

use std::path::Path;

use barwright_store::Store;
use rusqlite::Connection;

fn text(path: &str) -> String {
    std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(path)).unwrap()
}

/// The chapter of a table.
fn chapter<'a>(page: &'a str, table: &str) -> &'a str {
    let (_, rest) = page.split_once(&format!("\n## `{table}`")).unwrap();
    rest.split("\n## ").next().unwrap()
}

#[test]
fn every_table_and_column_is_specified() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("new");
    Store::open(&path).unwrap().close().unwrap();
    let connection = Connection::open(&path).unwrap();
    let mut columns = connection
        .prepare(
            "SELECT tables.name, columns.name
             FROM sqlite_schema AS tables, pragma_table_info(tables.name) AS columns
             WHERE tables.type = 'table'",
        )
        .unwrap();
    let columns: Vec<(String, String)> = columns
        .query_map([], |row| Ok((row.get(0)?, row.get(1)?)))
        .unwrap()
        .map(Result::unwrap)
        .collect();
    assert!(columns.len() > 50, "{columns:?}");
    let page = text("docs/store-format.md");
    for (table, column) in columns {
        assert!(chapter(&page, &table).contains(&format!("`{column}`")), "{table}.{column}");
    }
}

#[test]
fn every_event_is_specified() {
    let page = text("docs/store-format.md");
    let chapter = chapter(&page, "event");
    let mut seen = 0;
    for (file, name) in [("session/event.rs", "Event"), ("desk/event.rs", "DeskEvent")] {
        let source = text(&format!("core/domain/src/{file}"));
        let (_, variants) = source.split_once(&format!("pub enum {name} {{\n")).unwrap();
        let (variants, _) = variants.split_once("\n}\n").unwrap();
        for line in variants.lines() {
            // A variant stands four spaces in and begins with a capital.
            let Some(word) = line.strip_prefix("    ") else { continue };
            if !word.starts_with(char::is_uppercase) {
                continue;
            }
            let name: String = word.chars().take_while(char::is_ascii_alphanumeric).collect();
            let mut snake = String::new();
            for (at, letter) in name.chars().enumerate() {
                if letter.is_uppercase() && at > 0 {
                    snake.push('_');
                }
                snake.push(letter.to_ascii_lowercase());
            }
            assert!(chapter.contains(&format!("`{snake}`")), "{snake}");
            seen += 1;
        }
    }
    assert!(seen > 25, "{seen}");
}
