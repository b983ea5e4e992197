//! docs/gym-format.md and docs/gym.schema.json say what the reader of gyms reads.
//!
//! `BARWRIGHT_REWRITE=1 cargo test -p barwright-domain --test gym_format` writes the schema anew after
//! a key was added; then describe the key there.

mod format;

use barwright_domain::equipment::{EQUIPMENT, Equipment, builtin_text};
use barwright_domain::quantity::MassUnit;

use format::Format;

fn gym() -> Format {
    Format {
        page: include_str!("../../../docs/gym-format.md"),
        file: concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs/gym.schema.json"),
        title: "A Barwright gym",
        about: "See docs/gym-format.md: every key with an example.",
        root: &EQUIPMENT,
        whole: |kind, body| match kind {
            "gym" => body.to_owned(),
            other => panic!("an example of what: {other}?"),
        },
        faults: |text| Equipment::read(text).err().unwrap_or_default(),
        alike: &[],
    }
}

#[test]
fn the_schema_has_the_readers_keys() {
    gym().has_the_readers_keys();
}

#[test]
fn the_reader_and_the_schema_take_the_same_types() {
    gym().takes_the_same_types();
}

#[test]
fn the_page_shows_every_key() {
    gym().is_shown_whole();
}

#[test]
fn every_example_of_the_page_is_read_and_survives_writing() {
    let examples = gym().examples();
    assert!(examples.len() > 6, "{}", examples.len());
    let built_in = [MassUnit::Kilogram, MassUnit::Pound].map(|unit| (0, builtin_text(unit).into()));
    for (line, text) in examples.into_iter().chain(built_in) {
        let read = Equipment::read(&text);
        let gym = read.unwrap_or_else(|why| panic!("the example at line {line}: {why:#?}"));
        let written = gym.write();
        let again = Equipment::read(&written)
            .unwrap_or_else(|faults| panic!("line {line}: {faults:#?}\n{written}"));
        assert_eq!(again, gym, "line {line}\n{written}");
    }
}

/// What the page says of what can be made.
#[test]
fn the_page_says_what_can_be_made() {
    let (_, whole) = gym().examples().swap_remove(0);
    let gym = Equipment::read(&whole).unwrap();
    let reach = gym.reach_of_bar(&gym.bars[0]).unwrap();
    let said = |mass: barwright_domain::quantity::Mass| mass.kilograms().to_string();
    let step = reach.step.map(said);
    assert_eq!(
        (said(reach.least), said(reach.most), step),
        ("20".into(), "145".into(), Some("2.5".into()))
    );
    let page = include_str!("../../../docs/gym-format.md");
    assert!(page.contains("20 kg to 145 kg, every 2.5 kg"));
}
