//! docs/plan-format.md and docs/plan.schema.json say what the reader reads: the same keys, the same types.
//!
//! `BARWRIGHT_REWRITE=1 cargo test -p barwright-domain --test plan_format` writes the file anew after
//! a key was added; then describe the key there.

mod format;

use barwright_domain::catalogue::Catalogue;
use barwright_domain::plan::Plan;

use format::Format;

fn plan() -> Format {
    Format {
        page: include_str!("../../../docs/plan-format.md"),
        file: concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs/plan.schema.json"),
        title: "A Barwright plan",
        about: "See docs/plan-format.md: every key with an example.",
        root: Plan::shape(),
        whole: |kind, body| match kind {
            "plan" => body.to_owned(),
            "exercises" => {
                format!("name = \"Example\"\nweeks = 4\n[[session]]\nname = \"One\"\n{body}")
            }
            other => panic!("an example of what: {other}?"),
        },
        faults: |text| Plan::read(text, &Catalogue::builtin()).err().unwrap_or_default(),
        // What an exercise and its rows share is shown once.
        alike: &["set", "exercise of a session"],
    }
}

#[test]
fn the_schema_has_the_readers_keys() {
    plan().has_the_readers_keys();
}

#[test]
fn the_reader_and_the_schema_take_the_same_types() {
    plan().takes_the_same_types();
}

#[test]
fn the_page_shows_every_key() {
    plan().is_shown_whole();
}

#[test]
fn every_example_of_the_page_is_read_and_survives_printing() {
    let examples = plan().examples();
    assert!(examples.len() > 25, "{}", examples.len());
    for (line, text) in examples {
        let read = Plan::read(&text, &Catalogue::builtin());
        let plan = read.unwrap_or_else(|why| panic!("the example at line {line}: {why:#?}")).plan;
        let printed = plan.print(&Catalogue::builtin());
        let again = Plan::read(&printed, &Catalogue::builtin())
            .unwrap_or_else(|faults| panic!("line {line}: {faults:#?}\n{printed}"));
        assert_eq!(again.plan, plan, "line {line}\n{printed}");
    }
}
