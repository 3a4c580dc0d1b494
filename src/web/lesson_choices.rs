//! What a lesson can be made of: the names and usual limits that the author's form offers, from where they are defined.

use super::lesson_desk::{LessonDesk, StepEntry};
use super::{PatientEntry, patients, plain};
use crate::anatomy::names::{Level, Side};
use crate::lesson::file::{FORMAT, LessonPart, LessonTolerances};
use crate::procedure::case::{Case, Par};
use crate::procedure::step::StepId;
use crate::score::gate::{FURTHER, GateId};
use crate::view::criteria::Target;
use serde::Serialize;
use serde_json::Value;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::*;

#[derive(Serialize)]
struct Choices {
    format: u32,
    steps: Vec<StepEntry>,
    /// As a lesson file names them.
    parts: &'static [LessonPart],
    patients: Vec<PatientEntry>,
    levels: Vec<&'static str>,
    /// In the order of the file.
    tolerances: Vec<ToleranceEntry>,
    par: Par,
    /// Those that a lesson file can name.
    gates: Vec<GateId>,
}

#[derive(Serialize)]
struct ToleranceEntry {
    name: &'static str,
    /// What holds when a lesson says nothing: `{full, none}`.
    usual: Value,
}

#[wasm_bindgen]
impl LessonDesk {
    /// What a lesson file can name, and what holds where it says nothing:
    /// `{format, steps, parts, patients, levels, tolerances, par, gates}`.
    pub fn choices() -> Result<JsValue, JsError> {
        let case = Case::new(Target { level: Level::L4, side: Side::Left });
        let (views, needle) = (serde_json::to_value(case.views)?, serde_json::to_value(case.needle)?);
        let usual = |name: &str| views.get(name).or_else(|| needle.get(name)).cloned().unwrap_or_default();
        let tolerances = LessonTolerances::default().list();
        plain(&Choices {
            format: FORMAT,
            steps: StepId::ALL.iter().copied().map(StepEntry::from).collect(),
            parts: LessonPart::ALL,
            patients: patients(),
            levels: Level::TARGETS.map(Level::name).to_vec(),
            tolerances: tolerances.map(|(name, _)| ToleranceEntry { name, usual: usual(name) }).into(),
            par: case.par,
            gates: FURTHER.map(|g| g.0).to_vec(),
        })
    }
}
