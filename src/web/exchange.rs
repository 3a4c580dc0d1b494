//! What all handles share: values that go in and out, as JSON would give them.

#[cfg(any(feature = "room", feature = "lessons"))]
use super::values::PatientEntry;
#[cfg(any(feature = "room", feature = "lessons"))]
use crate::anatomy::patient::PatientSpec;
#[cfg(feature = "room")]
use crate::lesson::read_error::sentence;
use serde::Serialize;
use wasm_bindgen::prelude::*;

/// What the declarations of the handles call the values that are made by `super::declarations`.
#[wasm_bindgen(typescript_custom_section)]
const VALUES: &str = "import type * as values from './values.js';";

/// Runs once when the module is loaded: a panic, should there be one, is readable in the console.
#[wasm_bindgen(start)]
fn start() {
    console_error_panic_hook::set_once();
}

/// What the page passed in as an object, or a sentence on what is wrong with it.
#[cfg(feature = "room")]
pub(super) fn understood<T: serde::de::DeserializeOwned>(what: &str, value: &JsValue) -> Result<T, JsValue> {
    let refuse = |error| refusal(what, &error);
    let text = js_sys::JSON::stringify(value)?;
    // A value without JSON, such as a function, gives no text.
    let text = text.as_string().unwrap_or_else(|| "null".to_owned());
    let value: serde_json::Value = serde_json::from_str(&text).map_err(refuse)?;
    serde_json::from_value(value).map_err(refuse)
}

/// A sentence on what is wrong with something that the page passed in.
#[cfg(feature = "room")]
pub(super) fn refusal(what: &str, error: &serde_json::Error) -> JsValue {
    JsError::new(&format!("{what} not understood: {}", sentence(error))).into()
}

/// Plain JS objects with `null`, as JSON would give them.
pub(super) fn to_js(value: &impl Serialize) -> Result<JsValue, JsError> {
    let text = serde_json::to_string(value)?;
    js_sys::JSON::parse(&text).map_err(|_| JsError::new("the engine wrote what is no JSON"))
}

#[cfg(any(feature = "room", feature = "lessons"))]
pub(super) fn patients() -> Vec<PatientEntry> {
    PatientSpec::all()
        .iter()
        .map(|spec| PatientEntry { name: spec.name, sentence: spec.description })
        .collect()
}
