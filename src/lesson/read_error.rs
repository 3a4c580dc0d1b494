//! Reading of JSON that comes from outside: an error is one sentence with its place, what was found and what is allowed.

use serde::Serialize;
use serde::de::{self, Deserialize, DeserializeOwned, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Value};
use std::fmt;

/// Why a lesson or receipt cannot be taken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ReadError {
    /// Where, such as `tolerances.squared_deg`; empty for the whole file.
    pub path: String,
    /// What was found there and what is allowed.
    pub problem: String,
}

impl ReadError {
    /// At a place.
    pub fn at(path: impl Into<String>, problem: impl Into<String>) -> Self {
        Self { path: path.into(), problem: problem.into() }
    }
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.path.is_empty() {
            f.write_str(&self.problem)
        } else {
            write!(f, "{}: {}", self.path, self.problem)
        }
    }
}

impl std::error::Error for ReadError {}

/// Reads a `kind` of file (`lesson`, `receipt`) that has a `format`.
pub(crate) fn read<T: DeserializeOwned>(
    text: &str,
    kind: &str,
    format: u32,
    most_bytes: usize,
) -> Result<T, ReadError> {
    if text.len() > most_bytes {
        let problem = format!("the {kind} is longer than {most_bytes} bytes, the most that is allowed");
        return Err(ReadError::at("", problem));
    }
    // As a value first: types are then read from one kind of source only, which keeps the page's engine small.
    let mut reader = serde_json::Deserializer::from_str(text.strip_prefix('\u{feff}').unwrap_or(text));
    let Whole(value) = Whole::deserialize(&mut reader).map_err(|e| ReadError::at("", sentence(&e)))?;
    reader.end().map_err(|e| ReadError::at("", format!("after the {kind}: {}", sentence(&e))))?;
    let Some(object) = value.as_object() else {
        let found = if value.is_array() { "a list" } else { "a single value" };
        return Err(ReadError::at("", format!("found {found}: a {kind} is an object, in braces")));
    };
    // Keys of a later format would be called unknown: say first that it is one.
    if let Some(found) = object.get("format").filter(|&found| found != format) {
        let problem = format!("{found} is no {kind} format that is known here: allowed is {format}");
        return Err(ReadError::at("format", problem));
    }
    serde_path_to_error::deserialize::<_, T>(value).map_err(|failed| {
        let path = failed.path().to_string();
        let path = if path == "." { String::new() } else { path };
        ReadError::at(path, sentence(failed.inner()))
    })
}

/// A JSON value of objects that have each key once; `serde_json` would let the last one win.
struct Whole(Value);

impl<'de> Deserialize<'de> for Whole {
    fn deserialize<D: Deserializer<'de>>(source: D) -> Result<Self, D::Error> {
        struct Any;
        impl<'de> Visitor<'de> for Any {
            type Value = Value;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("JSON")
            }
            fn visit_unit<E>(self) -> Result<Value, E> {
                Ok(Value::Null)
            }
            fn visit_bool<E>(self, it: bool) -> Result<Value, E> {
                Ok(it.into())
            }
            fn visit_u64<E>(self, it: u64) -> Result<Value, E> {
                Ok(it.into())
            }
            fn visit_i64<E>(self, it: i64) -> Result<Value, E> {
                Ok(it.into())
            }
            fn visit_f64<E>(self, it: f64) -> Result<Value, E> {
                Ok(it.into())
            }
            fn visit_str<E>(self, it: &str) -> Result<Value, E> {
                Ok(it.into())
            }
            fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Value, A::Error> {
                let mut list = Vec::new();
                while let Some(Whole(item)) = items.next_element()? {
                    list.push(item);
                }
                Ok(list.into())
            }
            fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Value, A::Error> {
                let mut map = Map::new();
                while let Some((key, Whole(item))) = entries.next_entry::<String, Whole>()? {
                    if map.contains_key(&key) {
                        return Err(de::Error::custom(format_args!("the key '{key}' stands twice")));
                    }
                    map.insert(key, item);
                }
                Ok(map.into())
            }
        }
        source.deserialize_any(Any).map(Self)
    }
}

/// serde's message in our words: "…, expected one of `a`, `b`" becomes "…: allowed are 'a', 'b'".
pub(crate) fn sentence(error: &serde_json::Error) -> String {
    use serde_json::error::Category;
    let text = error.to_string();
    let place = format!(" at line {} column {}", error.line(), error.column());
    let bare = text.strip_suffix(&place).unwrap_or(&text);
    if error.classify() != Category::Data {
        let what = match bare {
            _ if error.is_eof() => "the JSON ends too early",
            "recursion limit exceeded" => "the JSON is nested too deeply",
            _ => "this is no JSON",
        };
        return format!("{what} (line {}, column {}: {bare})", error.line(), error.column());
    }
    let mut said = bare.replace('`', "'");
    for (theirs, ours) in [
        (", expected one of ", ": allowed are "),
        (", expected ", ": allowed is "),
        ("invalid type: ", "found "),
        ("invalid value: ", "found "),
        ("invalid length ", "found a length of "),
        (": allowed is u32", ": allowed is a whole number from 0 to 4294967295"),
        (": allowed is u64", ": allowed is a whole number, 0 or more"),
        (": allowed is f64", ": allowed is a number"),
    ] {
        said = said.replacen(theirs, ours, 1);
    }
    said.chars().map(|c| if c.is_control() { ' ' } else { c }).collect()
}
