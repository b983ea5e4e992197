//! A format of files held to its page of documentation and to its schema.
//!
//! The schema's structure is made from the reader's own declarations; its descriptions are written
//! by hand in the file and kept. `BARWRIGHT_REWRITE=1` writes the file anew after a key was added; then
//! describe the key there.

use std::collections::{BTreeMap, BTreeSet};

use barwright_domain::quantity::Kind;
use barwright_domain::text::{Fault, Holds, Problem, Shape};
use serde_json::{Map, Value, json};
use toml_span::value::ValueInner;

/// A format.
pub(crate) struct Format {
    /// Its page.
    pub(crate) page: &'static str,
    /// The path of its schema.
    pub(crate) file: &'static str,
    /// What the schema calls itself.
    pub(crate) title: &'static str,
    /// And says of itself.
    pub(crate) about: &'static str,
    /// The keys of the whole file.
    pub(crate) root: &'static Shape,
    /// An example of a kind as a whole file.
    pub(crate) whole: fn(&str, &str) -> String,
    /// The reader's faults; none where it is read.
    pub(crate) faults: fn(&str) -> Vec<Fault>,
    /// Tables that share keys, which are shown once.
    pub(crate) alike: &'static [&'static str],
}

impl Format {
    fn shapes(&self) -> BTreeMap<&'static str, &'static Shape> {
        let mut shapes = BTreeMap::new();
        collect(self.root, &mut shapes);
        shapes
    }

    /// The schema, with the descriptions of `written`.
    fn schema(&self, written: &Value) -> Value {
        let mut definitions = Map::new();
        for (name, shape) in self.shapes() {
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
            "title": self.title,
            "description": self.about,
            "allOf": [reference(self.root)],
            "definitions": definitions,
        })
    }

    fn written(&self) -> Value {
        let text = std::fs::read_to_string(self.file).unwrap_or_else(|_| "{}".into());
        serde_json::from_str(&text).expect("the schema file is JSON")
    }

    /// The examples of the page with the line each stands on, as whole files.
    pub(crate) fn examples(&self) -> Vec<(usize, String)> {
        let mut found = Vec::new();
        let mut lines = self.page.lines().enumerate();
        while let Some((at, line)) = lines.next() {
            let Some(kind) = line.strip_prefix("```toml ") else { continue };
            let body: Vec<_> =
                lines.by_ref().map(|(_, line)| line).take_while(|line| *line != "```").collect();
            found.push((at + 1, (self.whole)(kind, &body.join("\n"))));
        }
        found
    }

    fn trees(&self) -> Vec<Value> {
        let parse = |text: &str| tree(&toml_span::parse(text).expect("the examples are TOML"));
        self.examples().iter().map(|(_, text)| parse(text)).collect()
    }

    /// The schema has the reader's keys, and each is described.
    pub(crate) fn has_the_readers_keys(&self) {
        let made = self.schema(&self.written());
        if std::env::var_os("BARWRIGHT_REWRITE").is_some() {
            let text = serde_json::to_string_pretty(&made).expect("plain data");
            std::fs::write(self.file, text + "\n").expect("the schema file can be written");
        }
        assert!(made == self.written(), "{} is not what is read: see tests/format", self.file);
        for (name, shape) in self.shapes() {
            for key in shape.keys {
                let path = format!("/definitions/{name}/properties/{}/description", key.name);
                let described = made.pointer(&path).and_then(Value::as_str).unwrap_or_default();
                assert!(!described.is_empty(), "describe {path}");
            }
        }
    }

    /// The reader and the schema take the same types.
    pub(crate) fn takes_the_same_types(&self) {
        let schema = self.written();
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
        for example in self.trees() {
            assert!(fits(&example, &schema, &schema), "{example:#}");
            let mut places = Vec::new();
            paths(&example, "", &mut places);
            for place in places {
                for stranger in &strangers {
                    let mut changed = example.clone();
                    *changed.pointer_mut(&place).expect("a path of this tree") = stranger.clone();
                    let fits = fits(&changed, &schema, &schema);
                    match (self.faults)(&toml(&changed)) {
                        none if none.is_empty() => {
                            assert!(fits, "read, but not in the schema: {place} = {stranger}");
                        }
                        faults => {
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

    /// The page shows every key.
    pub(crate) fn is_shown_whole(&self) {
        let mut shown: BTreeSet<(&str, &str)> = BTreeSet::new();
        for example in self.trees() {
            see(&example, &Holds::Table(self.root), &mut shown);
        }
        let unseen: Vec<_> = self
            .shapes()
            .into_iter()
            .flat_map(|(name, shape)| shape.keys.iter().map(move |key| (name, key.name)))
            .filter(|(name, key)| {
                let names = if self.alike.contains(name) { self.alike } else { &[*name] };
                !names.iter().any(|name| shown.contains(&(*name, *key)))
            })
            .collect();
        assert!(unseen.is_empty(), "without an example: {unseen:?}");
    }
}

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
