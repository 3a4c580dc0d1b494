//! The lesson's part of the handle: reading a lesson or a link, drawing it for a learner, the attempt under the lesson's rules, its
//! score and its receipt.
//!
//! A lesson stays open until the patient, the target or the attempt is changed by anything else.

use super::procedure::Procedure;
use super::{TeachingRoom, plain};
use crate::anatomy::patient::PatientSpec;
use crate::lesson::action::Event;
use crate::lesson::attempt::Attempt;
use crate::lesson::draw::{Drawn, Interiors, code, drawn};
use crate::lesson::file::{Lesson, LessonApproach, Mode};
use crate::lesson::marks::{lesson_score, replay};
use crate::lesson::receipt::Receipt;
use crate::lesson::{link, log_line};
use serde::Serialize;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::*;

/// A lesson at work, as drawn for a learner.
#[derive(Debug)]
pub(super) struct Open {
    pub(super) lesson: Lesson,
    drawn: Drawn,
    learner: String,
}

/// A lesson as the page tells of it.
#[derive(Serialize)]
struct LessonEntry<'a> {
    id: &'a str,
    title: &'a str,
    intro: &'a str,
    mode: Mode,
    steps: Vec<StepEntry>,
    /// Whether the way into the foramen is the learner's to choose.
    open_approach: bool,
    exposures: bool,
    /// Percent.
    pass_mark: u32,
    sha256: String,
}

#[derive(Serialize)]
struct StepEntry {
    id: &'static str,
    name: &'static str,
}

impl<'a> LessonEntry<'a> {
    fn of(lesson: &'a Lesson, language: &str) -> Self {
        Self {
            id: &lesson.id,
            title: lesson.title.in_language(language),
            intro: lesson.intro.in_language(language),
            mode: lesson.mode,
            steps: lesson.steps.iter().map(|s| StepEntry { id: s.id(), name: s.name() }).collect(),
            open_approach: lesson.approach == Some(LessonApproach::Open),
            exposures: lesson.exposes(),
            pass_mark: lesson.pass_mark,
            sha256: lesson.hash(),
        }
    }
}

/// What a learner's code draws.
#[derive(Serialize)]
struct DrawnEntry {
    patient: &'static str,
    /// As `beginPatient` takes it.
    seed: u32,
    level: &'static str,
    side: &'static str,
    /// The code without the blanks around it.
    learner: String,
}

fn same(a: &PatientSpec, b: &PatientSpec) -> bool {
    (a.name, a.seed) == (b.name, b.seed)
}

#[wasm_bindgen]
impl TeachingRoom {
    /// A lesson file in words of a language (BCP 47): `{id, title, intro, mode, steps, open_approach, exposures, pass_mark, sha256}`.
    #[wasm_bindgen(js_name = readLesson)]
    pub fn read_lesson(json: &str, language: &str) -> Result<JsValue, JsError> {
        plain(&LessonEntry::of(&Lesson::from_json(json)?, language))
    }

    /// What a lesson draws for a learner's code: `{patient, seed, level, side, learner}`.
    #[wasm_bindgen(js_name = drawLesson)]
    pub fn draw_lesson(json: &str, learner_code: &str) -> Result<JsValue, JsError> {
        let learner = code(learner_code)?;
        let drawn = drawn(&Lesson::from_json(json)?, learner)?;
        let target = drawn.case.target;
        plain(&DrawnEntry {
            patient: drawn.spec.name,
            // A draw gives 32 bits, and a lesson's own seed is one of 32.
            seed: u32::try_from(drawn.spec.seed).unwrap_or_default(),
            level: target.level.name(),
            side: target.side.name(),
            learner: learner.to_owned(),
        })
    }

    /// The lesson in a link or its fragment, as a lesson file.
    #[wasm_bindgen(js_name = readLink)]
    pub fn read_link(link: &str) -> Result<String, JsError> {
        Ok(link::lesson(link)?.to_json())
    }

    /// The fragment that carries a lesson, without `#`.
    #[wasm_bindgen(js_name = makeLink)]
    pub fn make_link(json: &str) -> Result<String, JsError> {
        Ok(link::fragment(&Lesson::from_json(json)?)?)
    }

    /// Begins an attempt at a lesson. The patient that it draws must stand in the room; level and side are set.
    #[wasm_bindgen(js_name = openLesson)]
    pub fn open_lesson(&mut self, json: &str, learner_code: &str) -> Result<(), JsError> {
        let lesson = Lesson::from_json(json)?;
        let learner = code(learner_code)?.to_owned();
        let drawn = drawn(&lesson, &learner)?;
        if !same(&drawn.spec, &self.patient.spec) {
            return Err(JsError::new(&format!(
                "the lesson draws the patient '{}' with seed {}, and another stands in the room",
                drawn.spec.name, drawn.spec.seed
            )));
        }
        self.target = drawn.case.target;
        self.procedure = Procedure::of(Attempt::new(drawn.case));
        self.lesson = Some(Open { lesson, drawn, learner });
        Ok(())
    }

    /// Takes up the open lesson where a log (a line an event) left it; on an error nothing has changed.
    #[wasm_bindgen(js_name = resumeLesson)]
    pub fn resume_lesson(&mut self, log: Vec<String>) -> Result<(), JsError> {
        let open = self.lesson.as_ref().ok_or_else(none_open)?;
        let events: Vec<Event> = log
            .iter()
            .map(|line| log_line::read(line))
            .collect::<Result<_, _>>()
            .map_err(|problem| JsError::new(&problem))?;
        let attempt = replay(&open.lesson, &open.drawn, &self.patient.interior, &events)?;
        self.arm = attempt.state.arm;
        self.procedure = Procedure::of(attempt);
        self.procedure.changed();
        Ok(())
    }

    /// The attempt's log, a line an event.
    #[wasm_bindgen(js_name = attemptLog)]
    pub fn attempt_log(&self) -> Vec<String> {
        self.procedure.attempt.log.iter().map(log_line::write).collect()
    }

    /// The score of the open lesson (`lesson::marks::LessonScore`).
    #[wasm_bindgen(js_name = lessonScore)]
    pub fn lesson_score(&self) -> Result<JsValue, JsError> {
        let open = self.lesson.as_ref().ok_or_else(none_open)?;
        plain(&lesson_score(&open.lesson, &open.drawn, &self.patient.interior, &self.procedure.attempt.state))
    }

    /// The receipt of the open lesson as it stands, as the text of a file.
    pub fn receipt(&self) -> Result<String, JsError> {
        let open = self.lesson.as_ref().ok_or_else(none_open)?;
        let log = &self.procedure.attempt.log;
        Ok(Receipt::of(&open.lesson, &open.learner, log, &mut Interiors::default())?.to_json())
    }
}

fn none_open() -> JsError {
    JsError::new("no lesson is open")
}
