//! Reading of JSON that comes from outside: an error is one sentence with its place, what was found and what is allowed.

use serde::Serialize;
use serde::de::{self, Deserialize, DeserializeOwned, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Value};
use std::fmt;

/// Why a lesson or receipt cannot be taken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct ReadError {
    /// Where, such as `tolerances.squared_deg`; empty for the whole file.
    pub path: String,
    /// What was found there and what is allowed.
    pub problem: String,
}

impl ReadError {
    /// At a place.
    pub fn at(path: impl Into<String>, problem: impl Into<String>) -> Self {
        // A key of the file stands in its place as it was read: on one line, whatever it holds.
        let path: String = path.into().chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
        Self { path, problem: problem.into() }
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
    typed(value_of(text, kind, format, most_bytes)?)
}

/// Reads as [`read`] does and goes on after a fault: what cannot be used is taken from `usual`, a good value of the kind, or left out. All
/// faults that were found (at most [`MOST_FAULTS`]), and what could be read nevertheless.
pub(crate) fn read_all<T: DeserializeOwned>(
    text: &str,
    kind: &str,
    format: u32,
    most_bytes: usize,
    usual: &Value,
) -> (Option<T>, Vec<ReadError>) {
    let mut value = match value_of(text, kind, format, most_bytes) {
        Ok(value) => value,
        Err(error) => return (None, vec![error]),
    };
    let mut found: Vec<ReadError> = Vec::new();
    // A key that was left out here is missing then, and that is no other fault.
    let mut left_out: Vec<(String, String)> = Vec::new();
    for _ in 0..2 * MOST_FAULTS {
        let failed = match serde_path_to_error::deserialize::<_, T>(value.clone()) {
            Ok(read) => return (Some(read), found),
            Err(failed) => failed,
        };
        let keys: Vec<Key> = failed.path().iter().filter_map(Key::of).collect();
        let said = failed.inner().to_string();
        let error = at(&failed);
        let unknown = named(&said, "unknown field `");
        let missing = named(&said, "missing field `");
        let place = place(&keys);
        if !missing.as_ref().is_some_and(|key| left_out.contains(&(place.clone(), key.clone()))) {
            if found.contains(&error) || found.len() == MOST_FAULTS {
                return (None, found);
            }
            found.push(error);
        }
        let mended = match (unknown, missing) {
            (Some(key), _) => {
                remove(&mut value, &keys, &key)
                    || keys.split_last().is_some_and(|(_, above)| remove(&mut value, above, &key))
            }
            (_, Some(key)) => insert(&mut value, usual, &keys, &key),
            _ => replace(&mut value, usual, &keys, &mut left_out),
        };
        if !mended {
            return (None, found);
        }
    }
    (None, found)
}

/// Most faults that are reported at once.
const MOST_FAULTS: usize = 32;

/// A step of a path.
#[derive(Clone, Debug, PartialEq)]
enum Key {
    Field(String),
    Item(usize),
}

impl Key {
    fn of(segment: &serde_path_to_error::Segment) -> Option<Self> {
        match segment {
            serde_path_to_error::Segment::Map { key } => Some(Self::Field(key.clone())),
            serde_path_to_error::Segment::Seq { index } => Some(Self::Item(*index)),
            _ => None,
        }
    }
}

fn place(keys: &[Key]) -> String {
    keys.iter()
        .map(|key| match key {
            Key::Field(name) => format!(".{name}"),
            Key::Item(index) => format!("[{index}]"),
        })
        .collect()
}

/// The name in a message that begins so.
fn named(said: &str, begins: &str) -> Option<String> {
    Some(said.strip_prefix(begins)?.split('`').next()?.to_owned())
}

fn within<'a>(value: &'a mut Value, keys: &[Key]) -> Option<&'a mut Value> {
    keys.iter().try_fold(value, |value, key| match key {
        Key::Field(name) => value.get_mut(name),
        Key::Item(index) => value.get_mut(index),
    })
}

fn remove(value: &mut Value, keys: &[Key], key: &str) -> bool {
    within(value, keys).and_then(Value::as_object_mut).is_some_and(|object| object.remove(key).is_some())
}

fn insert(value: &mut Value, usual: &Value, keys: &[Key], key: &str) -> bool {
    let Some(good) = within(&mut usual.clone(), keys).and_then(|v| v.get(key)).cloned() else { return false };
    let Some(object) = within(value, keys).and_then(Value::as_object_mut) else { return false };
    object.insert(key.to_owned(), good).is_none()
}

/// Puts the usual value in place of a bad one; where there is none, the bad one, or else the whole that it stands in, is left out.
fn replace(value: &mut Value, usual: &Value, keys: &[Key], left_out: &mut Vec<(String, String)>) -> bool {
    let mut usual = usual.clone();
    for end in (1..=keys.len()).rev() {
        let (path, last) = (&keys[..end], &keys[end - 1]);
        if let (Some(good), Some(bad)) = (within(&mut usual, path).cloned(), within(value, path))
            && *bad != good
        {
            *bad = good;
            return true;
        }
        match (within(value, &path[..end - 1]), last) {
            (Some(Value::Object(object)), Key::Field(name)) if object.contains_key(name) => {
                object.remove(name);
                left_out.push((place(&path[..end - 1]), name.clone()));
                return true;
            }
            (Some(Value::Array(list)), Key::Item(index)) if *index < list.len() => {
                list.remove(*index);
                return true;
            }
            _ => {}
        }
    }
    false
}

/// A text as a JSON object of that kind and format.
fn value_of(text: &str, kind: &str, format: u32, most_bytes: usize) -> Result<Value, ReadError> {
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
    Ok(value)
}

fn typed<T: DeserializeOwned>(value: Value) -> Result<T, ReadError> {
    serde_path_to_error::deserialize::<_, T>(value).map_err(|failed| at(&failed))
}

fn at(failed: &serde_path_to_error::Error<serde_json::Error>) -> ReadError {
    let path = failed.path().to_string();
    let path = if path == "." { String::new() } else { path };
    ReadError::at(path, sentence(failed.inner()))
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
