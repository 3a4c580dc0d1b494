//! What a lesson can be made of: the names and usual limits that the author's form offers, from where they are defined.

use super::exchange::{patients, to_js};
use super::lesson_desk::LessonDesk;
use super::values::{Choices, StepEntry, ToleranceEntry};
use crate::anatomy::names::{Level, Side};
use crate::lesson::file::{FORMAT, LessonPart, LessonTolerances};
use crate::procedure::case::Case;
use crate::procedure::step::StepId;
use crate::score::gate::FURTHER;
use crate::view::criteria::Target;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::*;

#[wasm_bindgen]
impl LessonDesk {
    /// What a lesson file can name, and what holds where it says nothing:
    /// `{format, steps, parts, patients, levels, tolerances, par, gates}`.
    #[wasm_bindgen(unchecked_return_type = "values.Choices")]
    pub fn choices() -> Result<JsValue, JsError> {
        let case = Case::new(Target { level: Level::L4, side: Side::Left });
        let (views, needle) = (serde_json::to_value(case.views)?, serde_json::to_value(case.needle)?);
        let usual = |name: &str| views.get(name).or_else(|| needle.get(name)).cloned().unwrap_or_default();
        let tolerances = LessonTolerances::default().list();
        to_js(&Choices {
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
