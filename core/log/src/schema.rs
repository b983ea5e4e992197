//! The JSON schema of what is written.

use schemars::JsonSchema;

use crate::v1;

/// Everything that is written: the roots of the schema.
#[derive(JsonSchema)]
#[expect(dead_code, reason = "its schema is all that is wanted of it")]
struct Written {
    /// The body of a session's event.
    session: v1::Body<v1::event::Event>,
    /// The body of an event between sessions.
    desk: v1::Body<v1::desk_event::DeskEvent>,
    /// The standing desk.
    standing_desk: v1::desk::Desk,
    /// The standing account of an owner.
    account: v1::account::Account,
    /// What is being made by hand.
    draft: v1::draft::Draft,
}

/// The JSON schema of the bodies, version 1, with each root as a property.
pub fn schema() -> serde_json::Value {
    let mut schema = schemars::schema_for!(Written).to_value();
    schema.sort_all_objects();
    schema
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use serde_json::Value;

    use super::schema;

    /// A schema without its words.
    fn shape(schema: &Value) -> Value {
        match schema {
            Value::Object(keys) => keys
                .iter()
                // A field of that name has a schema, not a text.
                .filter(|(key, of)| key.as_str() != "description" || !of.is_string())
                .map(|(key, of)| (key.clone(), shape(of)))
                .collect(),
            Value::Array(items) => items.iter().map(shape).collect(),
            other => other.clone(),
        }
    }

    /// The lines that went and came, each below the names that it stands under.
    fn difference(then: &Value, now: &Value, place: &str, found: &mut Vec<String>) {
        match (then, now) {
            (Value::Object(before), Value::Object(after)) => {
                for (key, of) in before {
                    let place = format!("{place}/{key}");
                    match after.get(key) {
                        Some(now) => difference(of, now, &place, found),
                        None => found.push(format!("- {place}: {of}")),
                    }
                }
                let come = after.iter().filter(|(key, _)| !before.contains_key(*key));
                found.extend(come.map(|(key, of)| format!("+ {place}/{key}: {of}")));
            }
            (Value::Array(before), Value::Array(after)) if before.len() == after.len() => {
                for (nth, (then, now)) in before.iter().zip(after).enumerate() {
                    difference(then, now, &format!("{place}/{nth}"), found);
                }
            }
            (then, now) if then == now => {}
            (then, now) => found.push(format!("- {place}: {then}\n+ {place}: {now}")),
        }
    }

    #[test]
    fn the_schema_is_as_its_snapshot_says() {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("schema/v1.json");
        let schema = schema();
        let now = serde_json::to_string_pretty(&schema).expect("a schema is plain data") + "\n";
        let committed = std::fs::read_to_string(&path).expect("the snapshot is committed");
        if committed == now {
            return;
        }
        let then: Value = serde_json::from_str(&committed).expect("the snapshot is JSON");
        let mut found = Vec::new();
        difference(&shape(&then), &shape(&schema), "", &mut found);
        assert!(
            !found.is_empty(),
            "\nOnly the words of core/log/schema/v1.json differ, or their order: put them right.\n"
        );
        panic!(
            "\nWhat is written to the log changed:\n\n{}\n\n\
             Version 1 is frozen: records out there are written in it. What is to be written otherwise \
             is a new version, with types, a schema and samples of its own, and version 1 keeps its \
             reader.\n",
            found.join("\n")
        );
    }

    #[test]
    fn the_schema_knows_every_kind() {
        let schema = schema();
        for place in [
            "/properties/session",
            "/properties/desk",
            "/properties/standing_desk",
            "/properties/account",
            "/properties/draft",
            "/$defs/Event/oneOf",
            "/$defs/DeskEvent/oneOf",
            "/$defs/PartDone/properties/done",
            "/$defs/Mass/pattern",
        ] {
            assert!(schema.pointer(place).is_some(), "{place}");
        }
        assert_eq!(schema.pointer("/$defs/PartDone/additionalProperties"), Some(&false.into()));
    }
}
