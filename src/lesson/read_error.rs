//! Reading of JSON that comes from outside: an error is one sentence with its place, what was found and what is allowed.

use serde::de::DeserializeOwned;
use std::fmt;

/// Why a lesson or receipt cannot be taken.
#[derive(Clone, Debug, PartialEq, Eq)]
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
        let problem = format!("the {kind} has {} bytes: allowed are at most {most_bytes}", text.len());
        return Err(ReadError::at("", problem));
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    // serde would read a list as an object without its keys.
    if text.trim_start().starts_with('[') {
        return Err(ReadError::at("", format!("found a list: a {kind} is an object, in braces")));
    }
    let mut reader = serde_json::Deserializer::from_str(text);
    let failed = match serde_path_to_error::deserialize::<_, T>(&mut reader) {
        Ok(read) => {
            reader.end().map_err(|e| ReadError::at("", format!("after the {kind}: {}", sentence(&e))))?;
            // A format of another number with the keys of this one is still another format.
            return other_format(text, kind, format).map_or(Ok(read), Err);
        }
        Err(failed) => failed,
    };
    // Keys of a later format would be called unknown: say first that it is one.
    if let Some(other) = other_format(text, kind, format) {
        return Err(other);
    }
    let path = failed.path().to_string();
    let path = if path == "." { String::new() } else { path };
    Err(ReadError::at(path, sentence(failed.inner())))
}

fn other_format(text: &str, kind: &str, format: u32) -> Option<ReadError> {
    #[derive(serde::Deserialize)]
    struct Probe {
        format: serde_json::Value,
    }
    let found = serde_json::from_str::<Probe>(text).ok()?.format;
    let problem = || format!("{found} is no {kind} format that is known here: allowed is {format}");
    (found != format).then(|| ReadError::at("format", problem()))
}

/// serde's message in our words: "…, expected one of `a`, `b`" becomes "…: allowed are 'a', 'b'".
fn sentence(error: &serde_json::Error) -> String {
    use serde_json::error::Category;
    let text = error.to_string();
    let place = format!(" at line {} column {}", error.line(), error.column());
    let bare = text.strip_suffix(&place).unwrap_or(&text);
    if error.classify() != Category::Data {
        let what = if error.is_eof() { "the JSON ends too early" } else { "this is no JSON" };
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
