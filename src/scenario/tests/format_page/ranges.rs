//! The range of every number, asked of the checks: each is given a value that no file may have, and
//! what the refusal says is the range.

use super::chapters::{given, referred};
use super::sample;
use crate::scenario::load::{LoadError, ScenarioText, read};
use crate::scenario::problem::ProblemKind;
use crate::scenario::schema::{ScenarioFile, VehicleFile};
use schemars::schema_for;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::sync::OnceLock;

/// Least and greatest value of a number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    pub least: f64,
    pub most: f64,
    /// The field cannot hold more; nothing is refused by a check.
    pub is_of_type: bool,
}

/// Numbers whose right value is said otherwise.
pub const WITHOUT: [&str; 3] = ["ScenarioFile.version", "VehicleFile.version", "RouteFile.version"];

/// A number of the sample: where it stands and what it can hold.
struct Place {
    key: String,
    pointer: String,
    is_whole: bool,
    /// What the type can hold.
    holds: (f64, f64),
}

/// Both files as values that can be changed.
struct Sample {
    scenario: Value,
    vehicle: Value,
    /// As they are, scenario first.
    texts: (String, String),
}

impl Sample {
    fn new() -> Self {
        let (scenario, vehicle) = sample::files();
        let value = |result: serde_json::Result<Value>| result.unwrap();
        let texts = (ron::to_string(&scenario).unwrap(), ron::to_string(&vehicle).unwrap());
        Self {
            texts,
            scenario: value(serde_json::to_value(scenario)),
            vehicle: value(serde_json::to_value(vehicle)),
        }
    }

    /// Every number that has a name of its own, the first of each.
    fn places(&self) -> Vec<(bool, Place)> {
        let mut found = BTreeMap::new();
        let schemas = [
            (false, "ScenarioFile", schema_for!(ScenarioFile), &self.scenario),
            (true, "VehicleFile", schema_for!(VehicleFile), &self.vehicle),
        ];
        for (in_vehicle, name, schema, value) in &schemas {
            let mut walk = Walk { root: schema.as_value(), found: Vec::new() };
            walk.at(schema.as_value(), value, name, "", String::new());
            for place in walk.found {
                found.entry(place.key.clone()).or_insert((*in_vehicle, place));
            }
        }
        found.into_values().collect()
    }

    /// The ranges by which a check refuses a number at a place; empty where nothing refuses it.
    fn refused(&self, in_vehicle: bool, pointer: &str, number: &Value) -> Vec<(f64, f64)> {
        let mut changed = if in_vehicle { &self.vehicle } else { &self.scenario }.clone();
        *changed.pointer_mut(pointer).unwrap() = number.clone();
        let (mut scenario_text, mut vehicle_text) = self.texts.clone();
        if in_vehicle {
            let file: VehicleFile = serde_json::from_value(changed).unwrap();
            vehicle_text = ron::to_string(&file).unwrap();
        } else {
            let file: ScenarioFile = serde_json::from_value(changed).unwrap();
            scenario_text = ron::to_string(&file).unwrap();
        }
        let scenario_name = "sample".to_owned();
        let text = ScenarioText { scenario_name, scenario_text, vehicle_text };
        let Err(LoadError::Problems { problems, .. }) = read(text) else { return Vec::new() };
        let wanted = number.as_f64().unwrap();
        problems
            .into_iter()
            .filter_map(|problem| match problem.kind {
                ProblemKind::OutOfRange { found, least, most } if found == wanted => {
                    Some((least, most))
                }
                _ => None,
            })
            .collect()
    }
}

/// Follows a value and its type side by side.
struct Walk<'s> {
    root: &'s Value,
    found: Vec<Place>,
}

impl<'s> Walk<'s> {
    fn at(&mut self, schema: &'s Value, value: &Value, owner: &str, field: &str, pointer: String) {
        let schema = given(schema).unwrap_or(schema);
        if let Some(name) = referred(schema) {
            let named = &self.root["$defs"][name];
            let is_plain = named.get("properties").is_none() && named.get("oneOf").is_none();
            let (owner, field) = if is_plain { (owner, field) } else { (name, "") };
            return self.at(named, value, owner, field, pointer);
        }
        match value {
            Value::Number(_) => self.found.push(Place {
                key: format!("{owner}.{field}"),
                pointer,
                is_whole: schema["format"].as_str().is_some_and(|format| format.contains("int")),
                holds: holds(schema),
            }),
            Value::Array(items) => {
                for (number, item) in items.iter().enumerate() {
                    let inner = schema.get("items").unwrap_or(&schema["prefixItems"][number]);
                    self.at(inner, item, owner, field, format!("{pointer}/{number}"));
                }
            }
            Value::Object(fields) => {
                for (name, value) in fields {
                    let pointer = format!("{pointer}/{name}");
                    if let Some(inner) = schema["properties"].get(name) {
                        self.at(inner, value, owner, name, pointer);
                    } else if let Some(kinds) = schema["oneOf"].as_array() {
                        let kind = kinds.iter().find_map(|kind| kind["properties"].get(name));
                        self.at(kind.unwrap(), value, &format!("{owner}::{name}"), "", pointer);
                    } else {
                        let inner = &schema["additionalProperties"];
                        self.at(inner, value, owner, field, pointer);
                    }
                }
            }
            _ => {}
        }
    }
}

/// What a whole number's type can hold.
fn holds(schema: &Value) -> (f64, f64) {
    let most = match schema["format"].as_str() {
        Some("uint8") => f64::from(u8::MAX),
        Some("uint16") => f64::from(u16::MAX),
        Some("uint32") => f64::from(u32::MAX),
        Some("uint64") => u64::MAX as f64,
        Some("int64") => i64::MAX as f64,
        _ => f64::MAX,
    };
    let least = schema["minimum"].as_f64().unwrap_or(-most);
    (least, most)
}

/// A number as the field's type writes it.
fn written(place: &Place, number: f64) -> Value {
    if place.is_whole && place.holds.0 < 0.0 {
        json!(number as i64)
    } else if place.is_whole {
        json!(number as u64)
    } else {
        json!(number)
    }
}

fn asked() -> &'static (Vec<(bool, Place)>, BTreeMap<String, Range>) {
    static ASKED: OnceLock<(Vec<(bool, Place)>, BTreeMap<String, Range>)> = OnceLock::new();
    ASKED.get_or_init(|| {
        let sample = Sample::new();
        let places = sample.places();
        let mut ranges = BTreeMap::new();
        for (in_vehicle, place) in &places {
            let (least, most) = place.holds;
            let by_check = sample.refused(*in_vehicle, &place.pointer, &written(place, most));
            let range = by_check.first().map(|(least, most)| Range {
                least: *least,
                most: *most,
                is_of_type: false,
            });
            let small = most <= f64::from(u16::MAX);
            let of_type =
                (place.is_whole && small).then_some(Range { least, most, is_of_type: true });
            if let Some(range) = range.or(of_type) {
                ranges.insert(place.key.clone(), range);
            }
        }
        (places, ranges)
    })
}

/// The range of every number by the name of its field.
pub fn all() -> &'static BTreeMap<String, Range> {
    &asked().1
}

/// Ranges whose ends are refused, or beyond whose ends something is taken.
pub fn not_where_they_should_end() -> Vec<String> {
    let sample = Sample::new();
    let (places, ranges) = asked();
    let mut wrong = Vec::new();
    for (in_vehicle, place) in places {
        let Some(range) = ranges.get(&place.key).filter(|range| !range.is_of_type) else {
            continue;
        };
        let next = |number: f64, up: bool| match (place.is_whole, up) {
            (true, true) => number + 1.0,
            (true, false) => number - 1.0,
            (false, true) => number.next_up(),
            (false, false) => number.next_down(),
        };
        let asked = [
            (range.least, false),
            (range.most, false),
            (next(range.least, false), true),
            (next(range.most, true), true),
        ];
        for (number, is_beyond) in asked {
            if number < place.holds.0 {
                continue;
            }
            let refusals = sample.refused(*in_vehicle, &place.pointer, &written(place, number));
            if refusals.is_empty() == is_beyond {
                wrong.push(format!(
                    "{}: {number} should {}be refused",
                    place.key,
                    if is_beyond { "" } else { "not " }
                ));
            }
        }
    }
    assert!(ranges.len() > 120, "only {} ranges were asked for", ranges.len());
    wrong
}
