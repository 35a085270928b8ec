//! What the types say of a kind of file: its structs, its words and their descriptions.

use super::meaning;
use crate::scenario::schema::{RouteFile, ScenarioFile, VehicleFile, since};
use crate::session::step::CustomerTopic;
use schemars::{Schema, schema_for};
use serde_json::{Map, Value};
use std::collections::BTreeSet;

/// All that is said of one kind of file.
pub struct Chapter {
    pub title: &'static str,
    pub sections: Vec<Section>,
}

/// One struct, or one list of words.
pub struct Section {
    pub name: String,
    pub description: String,
    pub body: Body,
}

pub enum Body {
    Fields(Vec<Field>),
    /// Words, each with what it means.
    Words(Vec<(String, String)>),
    /// Words that each have fields of their own.
    Kinds(Vec<(String, String, Vec<Field>)>),
}

pub struct Field {
    pub name: String,
    /// `Type.field`, by which its range is known.
    pub key: String,
    pub kind: String,
    pub unit: Option<String>,
    pub is_number: bool,
    /// As written in a file; nothing where the field must be there.
    pub default: Option<String>,
    /// Version of the format that brought it.
    pub since: u32,
    pub description: String,
}

/// Types that are as plain as a number or a text; the introduction says what they are.
const PLAIN: [(&str, &str); 3] = [("Id", "name"), ("Code", "trouble code"), ("Elements", "")];

impl Chapter {
    pub fn all() -> Vec<Self> {
        let topics = schema_for!(CustomerTopic);
        vec![
            Self::of(
                "Scenario",
                "ScenarioFile",
                &schema_for!(ScenarioFile),
                &[("CustomerTopic", &topics)],
            ),
            Self::of("Vehicle", "VehicleFile", &schema_for!(VehicleFile), &[]),
            Self::of("Route", "RouteFile", &schema_for!(RouteFile), &[]),
        ]
    }

    fn of(title: &'static str, root: &str, schema: &Schema, more: &[(&str, &Schema)]) -> Self {
        let types = Types { all: schema.get("$defs").and_then(Value::as_object) };
        let mut sections = Vec::new();
        let mut seen = BTreeSet::new();
        types.tell(root, schema.as_value(), 1, &mut sections, &mut seen);
        for (name, schema) in more {
            types.tell(name, schema.as_value(), 1, &mut sections, &mut seen);
        }
        Self { title, sections }
    }
}

impl Body {
    fn fields_mut(&mut self) -> Vec<&mut Field> {
        match self {
            Self::Fields(fields) => fields.iter_mut().collect(),
            Self::Words(_) => Vec::new(),
            Self::Kinds(kinds) => kinds.iter_mut().flat_map(|(_, _, fields)| fields).collect(),
        }
    }
}

impl Section {
    pub fn fields(&self) -> Vec<&Field> {
        match &self.body {
            Body::Fields(fields) => fields.iter().collect(),
            Body::Words(_) => Vec::new(),
            Body::Kinds(kinds) => kinds.iter().flat_map(|(_, _, fields)| fields).collect(),
        }
    }
}

/// The name at the end of a reference.
pub fn referred(schema: &Value) -> Option<&str> {
    schema.get("$ref")?.as_str()?.rsplit('/').next()
}

/// What a schema offers instead of nothing.
pub fn given(schema: &Value) -> Option<&Value> {
    let choices = schema.get("anyOf")?.as_array()?;
    choices.iter().find(|choice| choice.get("type").is_none_or(|kind| kind != "null"))
}

fn is_kind(schema: &Value, name: &str) -> bool {
    match schema.get("type") {
        Some(Value::String(kind)) => kind == name,
        Some(Value::Array(kinds)) => kinds.iter().any(|kind| kind == name),
        _ => false,
    }
}

fn text(schema: &Value, field: &str) -> String {
    schema.get(field).and_then(Value::as_str).unwrap_or_default().to_owned()
}

struct Types<'s> {
    all: Option<&'s Map<String, Value>>,
}

impl Types<'_> {
    fn named(&self, name: &str) -> &Value {
        self.all.and_then(|all| all.get(name)).unwrap_or(&Value::Null)
    }

    /// Adds a type's section, then those of what it is made of, each once. What a version brought is as old in all its parts.
    fn tell(
        &self,
        name: &str,
        schema: &Value,
        brought: u32,
        sections: &mut Vec<Section>,
        seen: &mut BTreeSet<String>,
    ) {
        if !seen.insert(name.to_owned()) {
            return;
        }
        let mut younger = Vec::new();
        if let Some(mut body) = self.body(name, schema) {
            for field in body.fields_mut() {
                field.since = field.since.max(brought);
                younger.push((field.kind.clone(), field.since));
            }
            let description = text(schema, "description");
            sections.push(Section { name: name.to_owned(), description, body });
        }
        let mut next = Vec::new();
        mentioned(schema, &mut next);
        for name in next {
            let link = format!("[`{name}`]");
            let of_field = younger.iter().find(|(kind, _)| kind.contains(&link));
            let brought = of_field.map_or(brought, |(_, since)| *since);
            self.tell(&name, self.named(&name), brought, sections, seen);
        }
    }

    fn body(&self, name: &str, schema: &Value) -> Option<Body> {
        if let Some(words) = schema.get("enum").and_then(Value::as_array) {
            let words = words.iter().filter_map(Value::as_str);
            return Some(Body::Words(
                words.map(|word| (format!("{word:?}"), String::new())).collect(),
            ));
        }
        if let Some(choices) = schema.get("oneOf").and_then(Value::as_array) {
            if choices.iter().all(|choice| choice.get("const").is_some()) {
                let word = |choice: &Value| (text(choice, "const"), text(choice, "description"));
                return Some(Body::Words(choices.iter().map(word).collect()));
            }
            let kind = |choice: &Value| {
                if choice.get("const").is_some() {
                    return Some((text(choice, "const"), text(choice, "description"), Vec::new()));
                }
                let (word, inner) = choice.get("properties")?.as_object()?.iter().next()?;
                let fields = self.fields(&format!("{name}::{word}"), inner);
                Some((word.clone(), text(choice, "description"), fields))
            };
            return Some(Body::Kinds(choices.iter().filter_map(kind).collect()));
        }
        schema.get("properties").map(|_| Body::Fields(self.fields(name, schema)))
    }

    /// Fields of a struct: those that must be there in the order of the type, then the others.
    fn fields(&self, owner: &str, schema: &Value) -> Vec<Field> {
        let Some(properties) = schema.get("properties").and_then(Value::as_object) else {
            return Vec::new();
        };
        let needed: Vec<&str> = schema
            .get("required")
            .and_then(Value::as_array)
            .map(|names| names.iter().filter_map(Value::as_str).collect())
            .unwrap_or_default();
        let others = properties.keys().map(String::as_str).filter(|name| !needed.contains(name));
        needed
            .iter()
            .copied()
            .chain(others)
            .map(|name| self.field(owner, name, &properties[name], needed.contains(&name)))
            .collect()
    }

    fn field(&self, owner: &str, name: &str, schema: &Value, is_needed: bool) -> Field {
        let key = format!("{owner}.{name}");
        let description = text(schema, "description");
        let inner = given(schema).unwrap_or(schema);
        let of_type = self.plain_type(inner).map(|name| text(self.named(name), "description"));
        Field {
            name: name.to_owned(),
            kind: self.kind(schema),
            unit: meaning::unit(&description).or_else(|| meaning::unit(&of_type?)),
            is_number: self.is_number(inner),
            default: (!is_needed).then(|| default(schema)),
            since: since(&key),
            description,
            key,
        }
    }

    /// The name of the plain type of which a field, or each value of its map, is; a struct's unit is told by its own fields.
    fn plain_type<'v>(&self, schema: &'v Value) -> Option<&'v str> {
        let name = referred(schema).or_else(|| referred(schema.get("additionalProperties")?))?;
        self.named(name).get("properties").is_none().then_some(name)
    }

    fn is_number(&self, schema: &Value) -> bool {
        if let Some(name) = referred(schema) {
            let named = self.named(name);
            return named.get("properties").is_none() && self.is_number(named);
        }
        is_kind(schema, "number") || is_kind(schema, "integer")
    }

    /// What should be written, in a few words; a link where a section tells more.
    fn kind(&self, schema: &Value) -> String {
        if let Some(inner) = given(schema) {
            return format!("{}, or `None`", self.kind(inner));
        }
        if let Some(name) = referred(schema) {
            if let Some((_, plain)) = PLAIN.iter().find(|(known, _)| *known == name)
                && !plain.is_empty()
            {
                return (*plain).to_owned();
            }
            let named = self.named(name);
            if self.body(name, named).is_some() {
                return format!("[`{name}`](#{})", name.to_lowercase());
            }
            return self.kind(named);
        }
        let or_none = if is_kind(schema, "null") { ", or `None`" } else { "" };
        let plain = [
            ("string", "text"),
            ("integer", "whole number"),
            ("number", "number"),
            ("boolean", "`true` or `false`"),
        ];
        if let Some((_, word)) = plain.iter().find(|(kind, _)| is_kind(schema, kind)) {
            return format!("{word}{or_none}");
        }
        if schema.get("prefixItems").is_some() {
            return "pair of numbers".to_owned();
        }
        if let Some(items) = schema.get("items") {
            let count = schema.get("minItems").map(|count| format!("{count} ")).unwrap_or_default();
            return format!("list of {count}{}", plural(&self.kind(items)));
        }
        let of = schema.get("additionalProperties").map(|of| self.kind(of)).unwrap_or_default();
        // The schema does not say of what type the keys of a map are; the field does, where they are no names.
        let keys = schema.get("x-keys").and_then(Value::as_str).map_or_else(
            || "names".to_owned(),
            |name| format!("[`{name}`](#{})", name.to_lowercase()),
        );
        format!("map from {keys} to {of}")
    }
}

fn plural(kind: &str) -> String {
    match kind {
        "text" | "number" | "whole number" | "name" | "trouble code" => format!("{kind}s"),
        _ => kind.replacen("list of", "lists of", 1),
    }
}

/// References in the order in which they stand, those of fields that must be there first.
fn mentioned(schema: &Value, into: &mut Vec<String>) {
    match schema {
        Value::Object(fields) => {
            if let Some(name) = referred(schema) {
                into.push(name.to_owned());
            }
            let needed = fields.get("required").and_then(Value::as_array);
            if let Some(properties) = fields.get("properties") {
                for name in needed.into_iter().flatten().filter_map(Value::as_str) {
                    mentioned(&properties[name], into);
                }
            }
            for (name, value) in fields {
                if name != "$defs" {
                    mentioned(value, into);
                }
            }
        }
        Value::Array(items) => items.iter().for_each(|item| mentioned(item, into)),
        _ => {}
    }
}

/// A default as it would be written; that of a struct is told by its own fields.
fn default(schema: &Value) -> String {
    match schema.get("default") {
        Some(Value::Null) => "`None`".to_owned(),
        Some(Value::Object(_)) => "what its fields say".to_owned(),
        Some(Value::Array(items)) if items.is_empty() => "`[]`".to_owned(),
        Some(Value::String(word)) if schema.get("$ref").is_some() && !word.contains('-') => {
            format!("`{word}`")
        }
        Some(Value::Number(number)) => format!("`{}`", number.as_f64().unwrap_or_default()),
        Some(value) => format!("`{value}`"),
        None if is_kind(schema, "array") => "`[]`".to_owned(),
        None if is_kind(schema, "string") => "`\"\"`".to_owned(),
        None if given(schema).is_some() || is_kind(schema, "null") => "`None`".to_owned(),
        None => "left out".to_owned(),
    }
}
