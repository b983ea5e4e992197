//! Every example of docs/plan-format.md is read, and says what the page says it does.

use barwright_domain::catalogue::Catalogue;
use barwright_domain::plan::Plan;

const PAGE: &str = include_str!("../../../docs/plan-format.md");

/// The examples of the page with the line each stands on; those of exercises in a plan of four
/// weeks.
fn examples() -> Vec<(usize, String)> {
    let mut found = Vec::new();
    let mut lines = PAGE.lines().enumerate();
    while let Some((at, line)) = lines.next() {
        let Some(kind) = line.strip_prefix("```toml ") else { continue };
        let body: Vec<_> =
            lines.by_ref().map(|(_, line)| line).take_while(|line| *line != "```").collect();
        let body = body.join("\n");
        let text = match kind {
            "plan" => body,
            "exercises" => {
                format!("name = \"Example\"\nweeks = 4\n[[session]]\nname = \"One\"\n{body}")
            }
            other => panic!("line {}: an example of what: {other}?", at + 1),
        };
        found.push((at + 1, text));
    }
    found
}

#[test]
fn every_example_of_the_page_is_read() {
    let examples = examples();
    assert!(examples.len() > 25, "{}", examples.len());
    for (line, text) in examples {
        let read = Plan::read(&text, &Catalogue::builtin());
        assert!(read.is_ok(), "the example at line {line}: {:#?}", read.err());
    }
}

#[test]
fn every_example_survives_printing_and_reading() {
    for (line, text) in examples() {
        let plan = Plan::read(&text, &Catalogue::builtin()).unwrap().plan;
        let printed = plan.print(&Catalogue::builtin());
        let again = Plan::read(&printed, &Catalogue::builtin())
            .unwrap_or_else(|faults| panic!("line {line}: {faults:#?}\n{printed}"));
        assert_eq!(again.plan, plan, "line {line}\n{printed}");
    }
}
