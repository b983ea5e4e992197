//! A value walked by the committed schema: whether it is by it, and which variants it takes.

use std::collections::BTreeSet;
use std::path::Path;

use serde_json::Value;

/// A schema, of what our types make of one: references, choices, objects, lists and leaves.
pub(crate) struct Schema(Value);

const ROOT: &str = "#";
/// The keys of what is kept by number.
const NUMBER: &str = "^\\d+$";

impl Schema {
    pub(crate) fn read(path: &Path) -> Self {
        let text = std::fs::read_to_string(path).expect("the schema is committed");
        Self(serde_json::from_str(&text).expect("the schema is JSON"))
    }

    /// Every variant of every choice, by its place in the schema.
    pub(crate) fn branches(&self) -> BTreeSet<String> {
        let mut all = BTreeSet::new();
        choices(&self.0, ROOT, &mut all);
        all
    }

    /// The place of a variant that is but a name.
    pub(crate) fn branch(&self, of: &str, name: &str) -> Option<String> {
        let branches = self.0.pointer(&format!("/$defs/{of}/oneOf"))?.as_array()?;
        let nth = branches.iter().position(|one| one.get("const") == Some(&name.into()))?;
        Some(format!("{ROOT}/$defs/{of}/oneOf/{nth}"))
    }

    /// The variants that a value takes, which is an object of one root and what it holds.
    ///
    /// # Errors
    /// The place in the schema that it is not by.
    pub(crate) fn branches_of(&self, value: &Value) -> Result<BTreeSet<String>, String> {
        let (root, body) =
            value.as_object().and_then(|roots| roots.iter().next()).ok_or("not an object")?;
        let roots = self.0.get("properties").and_then(|roots| roots.get(root));
        self.walk(roots.ok_or("no such root")?, &format!("{ROOT}/properties/{root}"), body)
    }

    fn walk(&self, schema: &Value, place: &str, value: &Value) -> Result<BTreeSet<String>, String> {
        let not_by_it = || format!("{place}: {value}");
        let mut taken = BTreeSet::new();
        if let Some(to) = schema.get("$ref").and_then(Value::as_str) {
            let target = to.strip_prefix(ROOT).and_then(|to| self.0.pointer(to));
            taken.extend(self.walk(target.ok_or_else(not_by_it)?, to, value)?);
        }
        for key in ["oneOf", "anyOf"] {
            let Some(branches) = schema.get(key).and_then(Value::as_array) else { continue };
            let tried = branches.iter().enumerate().map(|(nth, branch)| {
                let place = format!("{place}/{key}/{nth}");
                let mut taken = self.walk(branch, &place, value)?;
                taken.insert(place);
                Ok(taken)
            });
            let (fits, fails): (Vec<_>, Vec<_>) = tried.partition(Result::is_ok);
            if key == "oneOf" && fits.len() > 1 {
                return Err(format!("more than one of {}", not_by_it()));
            }
            // Of those that fail the one that came furthest says most.
            let furthest = || fails.into_iter().filter_map(Result::err).max_by_key(String::len);
            let fit = fits.into_iter().flatten().next();
            taken.extend(fit.ok_or_else(|| furthest().unwrap_or_else(not_by_it))?);
        }
        if let Some(of) = schema.get("enum").and_then(Value::as_array) {
            let nth = of.iter().position(|one| one == value).ok_or_else(not_by_it)?;
            taken.insert(format!("{place}/enum/{nth}"));
        }
        if schema.get("const").is_some_and(|one| one != value) {
            return Err(not_by_it());
        }
        if schema.get("type").is_some_and(|kind| !is_of(kind, value)) {
            return Err(not_by_it());
        }
        if let Some(fields) = value.as_object() {
            taken.extend(self.fields(schema, place, fields)?);
        }
        for (nth, item) in value.as_array().into_iter().flatten().enumerate() {
            let (of, place) = match schema.get("prefixItems").and_then(|of| of.get(nth)) {
                Some(of) => (Some(of), format!("{place}/prefixItems/{nth}")),
                None => (schema.get("items"), format!("{place}/items")),
            };
            if let Some(of) = of {
                taken.extend(self.walk(of, &place, item)?);
            }
        }
        Ok(taken)
    }

    fn fields(
        &self,
        schema: &Value,
        place: &str,
        fields: &serde_json::Map<String, Value>,
    ) -> Result<BTreeSet<String>, String> {
        let mut taken = BTreeSet::new();
        for name in schema.get("required").and_then(Value::as_array).into_iter().flatten() {
            if !fields.contains_key(name.as_str().unwrap_or_default()) {
                return Err(format!("{place} requires {name}"));
            }
        }
        let known = schema.get("properties");
        let numbered = schema.get("patternProperties").and_then(|of| of.get(NUMBER));
        let others = schema.get("additionalProperties");
        for (name, field) in fields {
            if let Some(of) = known.and_then(|known| known.get(name)) {
                taken.extend(self.walk(of, &format!("{place}/properties/{name}"), field)?);
            } else if let Some(of) =
                numbered.filter(|_| name.bytes().all(|byte| byte.is_ascii_digit()))
            {
                taken.extend(self.walk(
                    of,
                    &format!("{place}/patternProperties/{NUMBER}"),
                    field,
                )?);
            } else if others == Some(&Value::Bool(false)) {
                return Err(format!("{place} has no {name}"));
            } else if let Some(of) = others.filter(|of| of.is_object()) {
                taken.extend(self.walk(of, &format!("{place}/additionalProperties"), field)?);
            }
        }
        Ok(taken)
    }
}

/// Whether a value is of a type, or of one of several.
fn is_of(kind: &Value, value: &Value) -> bool {
    match kind {
        Value::Array(kinds) => kinds.iter().any(|kind| is_of(kind, value)),
        Value::String(kind) => match kind.as_str() {
            "object" => value.is_object(),
            "array" => value.is_array(),
            "string" => value.is_string(),
            "integer" => value.is_i64() || value.is_u64(),
            "boolean" => value.is_boolean(),
            "null" => value.is_null(),
            _ => false,
        },
        _ => false,
    }
}

/// The branches of every choice within a schema. Nothing at all is no variant: it is left out.
fn choices(schema: &Value, place: &str, all: &mut BTreeSet<String>) {
    match schema {
        Value::Object(keys) => {
            for (key, of) in keys {
                let place = format!("{place}/{key}");
                if let ("oneOf" | "anyOf" | "enum", Some(branches)) = (key.as_str(), of.as_array())
                {
                    let branches = branches.iter().enumerate();
                    let said = branches.filter(|(_, one)| one.get("type") != Some(&"null".into()));
                    all.extend(said.map(|(nth, _)| format!("{place}/{nth}")));
                }
                choices(of, &place, all);
            }
        }
        Value::Array(items) => {
            for (nth, item) in items.iter().enumerate() {
                choices(item, &format!("{place}/{nth}"), all);
            }
        }
        _ => {}
    }
}
