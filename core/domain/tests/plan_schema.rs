//! docs/plan.schema.json says what the reader reads: the same keys, the same types.
//!
//! The schema's structure is made from the reader's own declarations; its descriptions are written
//! by hand in the file and kept. `BARWRIGHT_REWRITE=1 cargo test -p barwright-domain --test
//! plan_schema` writes the file anew after a key was added; then describe the key there.

use std::collections::{BTreeMap, BTreeSet};

use barwright_domain::catalogue::Catalogue;
use barwright_domain::plan::Plan;
use barwright_domain::quantity::Kind;
use barwright_domain::text::{Holds, Problem, Shape};
use serde_json::{Map, Value, json};
use toml_span::value::ValueInner;

const PAGE: &str = include_str!("../../../docs/plan-format.md");
const FILE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs/plan.schema.json");

fn reference(shape: &Shape) -> Value {
    json!({ "$ref": format!("#/definitions/{}", shape.name) })
}

/// What may stand behind a key, as a schema; shapes met on the way join `shapes`.
fn schema_of(holds: &Holds, shapes: &mut BTreeMap<&'static str, &'static Shape>) -> Value {
    match holds {
        Holds::Text(most) => json!({ "type": "string", "minLength": 1, "maxLength": most }),
        Holds::Word(words) => json!({ "enum": words }),
        Holds::Whole(least, greatest) => {
            json!({ "type": "integer", "minimum": least, "maximum": greatest })
        }
        Holds::Flag => json!({ "type": "boolean" }),
        Holds::Quantity(Kind::Reps) => json!({ "type": ["integer", "string"] }),
        Holds::Quantity(Kind::Reserve | Kind::Rpe) => json!({ "type": ["number", "string"] }),
        Holds::Quantity(_) => json!({ "type": "string" }),
        Holds::List(of, most) => {
            json!({ "type": "array", "minItems": 1, "maxItems": most, "items": schema_of(of, shapes) })
        }
        Holds::Table(shape) => {
            collect(shape, shapes);
            reference(shape)
        }
        Holds::Any(several) => {
            let any: Vec<_> = several.iter().map(|one| schema_of(one, shapes)).collect();
            json!({ "anyOf": any })
        }
    }
}

fn collect(shape: &'static Shape, shapes: &mut BTreeMap<&'static str, &'static Shape>) {
    if shapes.insert(shape.name, shape).is_none() {
        for key in shape.keys {
            schema_of(&key.holds, shapes);
        }
    }
}

fn all_shapes() -> BTreeMap<&'static str, &'static Shape> {
    let mut shapes = BTreeMap::new();
    collect(Plan::shape(), &mut shapes);
    shapes
}

/// The schema, with the descriptions of `written`.
fn schema(written: &Value) -> Value {
    let mut definitions = Map::new();
    for (name, shape) in all_shapes() {
        let mut properties = Map::new();
        for key in shape.keys {
            let mut holds = schema_of(&key.holds, &mut BTreeMap::new());
            if holds.get("$ref").is_some() {
                // Beside a reference nothing else is read.
                holds = json!({ "allOf": [holds] });
            }
            let path = format!("/definitions/{name}/properties/{}/description", key.name);
            let description = written.pointer(&path).cloned().unwrap_or(json!(""));
            let mut property = Map::new();
            property.insert("description".into(), description);
            property.extend(holds.as_object().cloned().unwrap_or_default());
            properties.insert(key.name.into(), Value::Object(property));
        }
        let required: Vec<_> =
            shape.keys.iter().filter(|key| key.required).map(|key| key.name).collect();
        let mut definition = Map::new();
        definition.insert("type".into(), json!("object"));
        definition.insert("additionalProperties".into(), json!(false));
        if !required.is_empty() {
            definition.insert("required".into(), json!(required));
        }
        definition.insert("properties".into(), Value::Object(properties));
        definitions.insert(name.into(), Value::Object(definition));
    }
    json!({
        "$schema": "http://json-schema.org/draft-07/schema#",
        "title": "A Barwright plan",
        "description": "See docs/plan-format.md: every key with an example.",
        "allOf": [reference(Plan::shape())],
        "definitions": definitions,
    })
}

fn written() -> Value {
    let text = std::fs::read_to_string(FILE).unwrap_or_else(|_| "{}".into());
    serde_json::from_str(&text).expect("the schema file is JSON")
}

#[test]
fn the_schema_has_the_readers_keys() {
    let made = schema(&written());
    if std::env::var_os("BARWRIGHT_REWRITE").is_some() {
        let text = serde_json::to_string_pretty(&made).expect("plain data");
        std::fs::write(FILE, text + "\n").expect("the schema file can be written");
    }
    assert!(made == written(), "docs/plan.schema.json is not what is read: see this test's head");
    for (name, shape) in all_shapes() {
        for key in shape.keys {
            let path = format!("/definitions/{name}/properties/{}/description", key.name);
            let described = made.pointer(&path).and_then(Value::as_str).unwrap_or_default();
            assert!(!described.is_empty(), "describe {path}");
        }
    }
}

/// Whether a value is as the schema says: the keywords above, and no others.
fn fits(value: &Value, schema: &Value, root: &Value) -> bool {
    let Some(schema) = schema.as_object() else { return false };
    schema.iter().all(|(keyword, says)| match keyword.as_str() {
        "$ref" => {
            let path = says.as_str().expect("a reference is a text").trim_start_matches('#');
            fits(value, root.pointer(path).expect("what is referred to is there"), root)
        }
        "allOf" => says.as_array().is_some_and(|all| all.iter().all(|one| fits(value, one, root))),
        "anyOf" => says.as_array().is_some_and(|any| any.iter().any(|one| fits(value, one, root))),
        "type" => match says {
            Value::Array(types) => types.iter().any(|one| is_of_type(value, one)),
            one => is_of_type(value, one),
        },
        "enum" => says.as_array().is_some_and(|words| words.contains(value)),
        "minimum" => value.as_i64().is_none_or(|number| Some(number) >= says.as_i64()),
        "maximum" => value.as_i64().is_none_or(|number| Some(number) <= says.as_i64()),
        "minLength" => value.as_str().is_none_or(|text| text.chars().count() >= size(says)),
        "maxLength" => value.as_str().is_none_or(|text| text.chars().count() <= size(says)),
        "minItems" => value.as_array().is_none_or(|list| list.len() >= size(says)),
        "maxItems" => value.as_array().is_none_or(|list| list.len() <= size(says)),
        "items" => {
            value.as_array().is_none_or(|list| list.iter().all(|item| fits(item, says, root)))
        }
        "required" => value.as_object().is_none_or(|table| {
            let keys = says.as_array().into_iter().flatten().filter_map(Value::as_str);
            keys.into_iter().all(|key| table.contains_key(key))
        }),
        "properties" => value.as_object().is_none_or(|table| {
            table.iter().all(|(key, value)| says.get(key).is_none_or(|own| fits(value, own, root)))
        }),
        "additionalProperties" => value.as_object().is_none_or(|table| {
            table
                .keys()
                .all(|key| schema.get("properties").is_some_and(|own| own.get(key).is_some()))
        }),
        "description" | "title" | "$schema" | "definitions" => true,
        other => panic!("the schema uses {other}, which this test does not know"),
    })
}

fn size(number: &Value) -> usize {
    number.as_u64().and_then(|number| usize::try_from(number).ok()).expect("a size")
}

fn is_of_type(value: &Value, name: &Value) -> bool {
    match name.as_str() {
        Some("string") => value.is_string(),
        Some("integer") => value.is_i64(),
        Some("number") => value.is_number(),
        Some("boolean") => value.is_boolean(),
        Some("array") => value.is_array(),
        Some("object") => value.is_object(),
        _ => false,
    }
}

/// The examples of the page as trees.
fn examples() -> Vec<Value> {
    PAGE.split("```toml ")
        .skip(1)
        .filter_map(|part| part.split("```").next())
        .filter_map(|part| part.split_once('\n'))
        .map(|(kind, body)| match kind {
            "exercises" => {
                format!("name = \"Example\"\nweeks = 4\n[[session]]\nname = \"One\"\n{body}")
            }
            _ => body.to_string(),
        })
        .map(|text| tree(&toml_span::parse(&text).expect("the examples are TOML")))
        .collect()
}

fn tree(value: &toml_span::Value<'_>) -> Value {
    match value.as_ref() {
        ValueInner::String(text) => json!(text),
        ValueInner::Integer(number) => json!(number),
        ValueInner::Float(number) => json!(number),
        ValueInner::Boolean(flag) => json!(flag),
        ValueInner::Array(list) => Value::Array(list.iter().map(tree).collect()),
        ValueInner::Table(table) => Value::Object(
            table.iter().map(|(key, value)| (key.name.to_string(), tree(value))).collect(),
        ),
    }
}

/// A tree as TOML: a line for each key of the root, all else inline.
fn toml(root: &Value) -> String {
    let table = root.as_object().into_iter().flatten();
    table.map(|(key, value)| format!("{key} = {}\n", inline(value))).collect()
}

fn inline(value: &Value) -> String {
    match value {
        Value::Object(table) => {
            let pairs: Vec<_> =
                table.iter().map(|(key, value)| format!("{key} = {}", inline(value))).collect();
            format!("{{ {} }}", pairs.join(", "))
        }
        Value::Array(list) => {
            format!("[{}]", list.iter().map(inline).collect::<Vec<_>>().join(", "))
        }
        other => other.to_string(),
    }
}

/// The paths of every value in a tree.
fn paths(value: &Value, at: &str, found: &mut Vec<String>) {
    if !at.is_empty() {
        found.push(at.to_string());
    }
    match value {
        Value::Object(table) => {
            table.iter().for_each(|(key, value)| paths(value, &format!("{at}/{key}"), found));
        }
        Value::Array(list) => list
            .iter()
            .enumerate()
            .for_each(|(place, value)| paths(value, &format!("{at}/{place}"), found)),
        _ => {}
    }
}

#[test]
fn the_reader_and_the_schema_take_the_same_types() {
    let schema = written();
    let strangers = [
        json!(true),
        json!(5),
        json!(0.5),
        json!("zzz"),
        json!(["zzz"]),
        json!([]),
        json!({ "zzz": 1 }),
        json!(-1),
    ];
    for example in examples() {
        assert!(fits(&example, &schema, &schema), "{example:#}");
        let mut places = Vec::new();
        paths(&example, "", &mut places);
        for place in places {
            for stranger in &strangers {
                let mut changed = example.clone();
                *changed.pointer_mut(&place).expect("a path of this tree") = stranger.clone();
                let fits = fits(&changed, &schema, &schema);
                match Plan::read(&toml(&changed), &Catalogue::builtin()) {
                    Ok(_) => assert!(fits, "read, but not in the schema: {place} = {stranger}"),
                    Err(faults) => {
                        let of_type = faults.iter().any(|fault| {
                            matches!(
                                fault.problem,
                                Problem::WrongType { .. }
                                    | Problem::UnknownKey { .. }
                                    | Problem::UnknownWord { .. }
                                    | Problem::MissingKey { .. }
                            )
                        });
                        assert!(
                            !(fits && of_type),
                            "in the schema, but not read: {place} = {stranger}: {faults:#?}"
                        );
                    }
                }
            }
        }
    }
}

#[test]
fn the_page_shows_every_key() {
    let mut shown: BTreeSet<(&str, &str)> = BTreeSet::new();
    for example in examples() {
        see(&example, &Holds::Table(Plan::shape()), &mut shown);
    }
    let unseen: Vec<_> = all_shapes()
        .into_iter()
        .flat_map(|(name, shape)| shape.keys.iter().map(move |key| (name, key.name)))
        // What an exercise and its rows share is shown once.
        .filter(|(name, key)| {
            let names: &[_] = match *name {
                "set" | "exercise of a session" => &["set", "exercise of a session"],
                _ => &[name],
            };
            !names.iter().any(|name| shown.contains(&(*name, *key)))
        })
        .collect();
    assert!(unseen.is_empty(), "without an example: {unseen:?}");
}

fn see(value: &Value, holds: &Holds, shown: &mut BTreeSet<(&'static str, &'static str)>) {
    match (holds, value) {
        (Holds::Table(shape), Value::Object(table)) => {
            for key in shape.keys {
                if let Some(value) = table.get(key.name) {
                    shown.insert((shape.name, key.name));
                    see(value, &key.holds, shown);
                }
            }
        }
        (Holds::List(of, _), Value::Array(list)) => {
            list.iter().for_each(|item| see(item, of, shown));
        }
        (Holds::Any(several), value) => several.iter().for_each(|one| see(value, one, shown)),
        _ => {}
    }
}
