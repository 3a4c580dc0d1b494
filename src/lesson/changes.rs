//! Numbers of a named patient that a lesson changes: `"changed": {"curve_deg": 9, "size": 0.95}`. Names, ranges and sentences are those
//! of `anatomy::patient_field`.

use crate::anatomy::patient_field::field;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Fields by name, each in its unit.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(transparent)]
pub struct Changes(pub BTreeMap<String, f64>);

impl Changes {
    /// Whether nothing is changed.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Each name with its number.
    pub fn list(&self) -> impl Iterator<Item = (&str, f64)> {
        self.0.iter().map(|(name, &value)| (name.as_str(), value))
    }

    /// What is wrong with them: the name (shortened) and a sentence each.
    pub fn problems(&self) -> Vec<(String, String)> {
        let wrong = |(name, value)| {
            let error = field(name).and_then(|field| field.check(value)).err()?;
            Some((name.chars().take(40).collect(), error.to_string()))
        };
        self.list().filter_map(wrong).collect()
    }
}

#[cfg(feature = "cli")]
impl schemars::JsonSchema for Changes {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Changes".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let of_field = |field: &crate::anatomy::patient_field::Field| {
            let description = format!("{}; {}.", field.sentence, field.unit);
            let schema = serde_json::json!({
                "type": "number", "minimum": field.low, "maximum": field.high, "description": description
            });
            (field.name.to_owned(), schema)
        };
        let properties: serde_json::Map<_, _> =
            crate::anatomy::patient_field::FIELDS.iter().map(of_field).collect();
        schemars::json_schema!({
            "description": "Fields of the patient by name, each in its unit.",
            "type": "object",
            "properties": properties,
            "additionalProperties": false,
        })
    }
}
