//! The page's handles on the engine: the only code that knows wasm-bindgen.
//!
//! They make three modules, so that the first picture waits for nothing that it does not need: `room` (feature `room`) has patient,
//! C-arm, picture and needle; `lessons` (feature `lessons`) reads lessons, links and receipts, scores and checks, and is
//! loaded when there is a lesson or a class; `practice` (feature `practice`) has the rounds of questions with their films, and is loaded by
//! the page of practice alone.

#[cfg(any(feature = "room", feature = "practice"))]
mod canvas;
#[cfg(feature = "lessons")]
mod class_room;
#[cfg(feature = "lessons")]
mod lesson_choices;
#[cfg(feature = "lessons")]
mod lesson_desk;
#[cfg(feature = "practice")]
mod practice;
#[cfg(feature = "room")]
mod room;

#[cfg(any(feature = "room", feature = "lessons"))]
use crate::anatomy::patient::PatientSpec;
#[cfg(feature = "room")]
use crate::lesson::read_error::sentence;
use serde::Serialize;
use wasm_bindgen::prelude::*;

/// Runs once when the module is loaded: a panic, should there be one, is readable in the console.
#[wasm_bindgen(start)]
fn start() {
    console_error_panic_hook::set_once();
}

/// What the page passed in as an object, or a sentence on what is wrong with it.
#[cfg(feature = "room")]
fn understood<T: serde::de::DeserializeOwned>(what: &str, value: &JsValue) -> Result<T, JsValue> {
    let refuse = |error| JsError::new(&format!("{what} not understood: {}", sentence(&error))).into();
    let text = js_sys::JSON::stringify(value)?;
    // A value without JSON, such as a function, gives no text.
    let text = text.as_string().unwrap_or_else(|| "null".to_owned());
    let value: serde_json::Value = serde_json::from_str(&text).map_err(refuse)?;
    serde_json::from_value(value).map_err(refuse)
}

/// Plain JS objects with `null`, as JSON would give them.
fn plain(value: &impl Serialize) -> Result<JsValue, JsError> {
    let text = serde_json::to_string(value)?;
    js_sys::JSON::parse(&text).map_err(|_| JsError::new("the engine wrote what is no JSON"))
}

/// A patient as the page lists it.
#[cfg(any(feature = "room", feature = "lessons"))]
#[derive(Serialize)]
struct PatientEntry {
    name: &'static str,
    sentence: &'static str,
}

#[cfg(any(feature = "room", feature = "lessons"))]
fn patients() -> Vec<PatientEntry> {
    PatientSpec::all()
        .iter()
        .map(|spec| PatientEntry { name: spec.name, sentence: spec.description })
        .collect()
}
