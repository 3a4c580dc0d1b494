//! A lesson at work: read from a file or a link, drawn for a learner, its score and its receipt.
//!
//! The room does the attempt; what passes between the two is the case that the lesson sets and the log, a line an event.

use super::exchange::to_js;
use super::values::{DrawnEntry, ExerciseEntry, LessonEntry, Standing, StepEntry};
use crate::anatomy::names::Label;
use crate::class::receipt::Receipt;
use crate::lesson::check::faults;
use crate::lesson::draw::{Drawn, Interiors, code, drawn};
use crate::lesson::file::{Lesson, LessonApproach};
use crate::lesson::link;
use crate::lesson::marks::{exercise, go_on, lesson_score};
use crate::procedure::action::Event;
use crate::procedure::attempt::Attempt;
use crate::procedure::log_line;
use crate::procedure::step::StepId;
use crate::score::gate::gates_of;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::*;

/// A lesson as drawn for a learner.
#[wasm_bindgen]
#[derive(Debug)]
pub struct LessonDesk {
    lesson: Lesson,
    drawn: Drawn,
    learner: String,
    interiors: Interiors,
    /// The attempt that was asked for last: a log is mostly that one and a little more.
    last: Option<Attempt>,
}

impl From<StepId> for StepEntry {
    fn from(step: StepId) -> Self {
        Self { id: step.id(), name: step.name() }
    }
}

#[wasm_bindgen]
impl LessonDesk {
    /// A lesson file, drawn for a learner's code.
    #[wasm_bindgen(constructor)]
    pub fn new(json: &str, learner_code: &str) -> Result<Self, JsError> {
        let lesson = Lesson::from_json(json)?;
        let learner = code(learner_code)?.to_owned();
        let drawn = drawn(&lesson, &learner)?;
        Ok(Self { lesson, drawn, learner, interiors: Interiors::default(), last: None })
    }

    /// The lesson in words of a language (BCP 47): `{id, title, intro, mode, steps, open_approach, exposures, gates, pass_mark, asks_code, sha256}`.
    #[wasm_bindgen(unchecked_return_type = "values.LessonEntry")]
    pub fn read(json: &str, language: &str) -> Result<JsValue, JsError> {
        let lesson = Lesson::from_json(json)?;
        to_js(&LessonEntry {
            id: &lesson.id,
            title: lesson.title.in_language(language),
            intro: lesson.intro.in_language(language),
            mode: lesson.mode,
            steps: lesson.steps.iter().map(|&step| step.into()).collect(),
            open_approach: lesson.approach == Some(LessonApproach::Open),
            exposures: lesson.exposes(),
            gates: gates_of(&lesson.steps, &lesson.gates),
            pass_mark: lesson.pass_mark,
            asks_code: lesson.depends_on_code(),
            sha256: lesson.hash(),
        })
    }

    /// All that is wrong with a lesson file: `[{path, problem}]`, empty when nothing is.
    #[wasm_bindgen(unchecked_return_type = "values.ReadError[]")]
    pub fn problems(json: &str) -> Result<JsValue, JsError> {
        let found = faults(json);
        to_js(&found)
    }

    /// The lesson in a link or its fragment, as a lesson file.
    #[wasm_bindgen(js_name = fromLink)]
    pub fn from_link(link: &str) -> Result<String, JsError> {
        Ok(link::lesson(link)?.to_json())
    }

    /// The fragment that carries a lesson, without `#`.
    #[wasm_bindgen(js_name = toLink)]
    pub fn to_link(json: &str) -> Result<String, JsError> {
        Ok(link::fragment(&Lesson::from_json(json)?)?)
    }

    /// What was drawn: `{patient, seed, changed, level, side, learner, case}`.
    #[wasm_bindgen(unchecked_return_type = "values.DrawnEntry")]
    pub fn drawn(&self) -> Result<JsValue, JsError> {
        let target = self.drawn.case.target;
        to_js(&DrawnEntry {
            patient: self.drawn.spec.name,
            // A draw gives 32 bits, and a lesson's own seed is one of 32.
            seed: u32::try_from(self.drawn.spec.seed).unwrap_or_default(),
            changed: self.drawn.spec.differences().into_iter().collect(),
            level: target.level.name(),
            side: target.side.name(),
            learner: self.learner.clone(),
            case: self.drawn.case,
        })
    }

    /// Where a log stands: `{steps, total, complete, passed, gates, exercise}` (`lesson::marks::LessonScore`, and the naming of
    /// parts where it is asked for).
    #[wasm_bindgen(unchecked_return_type = "values.Standing")]
    pub fn standing(&mut self, log: Vec<String>) -> Result<JsValue, JsError> {
        let attempt = self.replayed(&log)?;
        let interior = self.interiors.of(&self.drawn.spec);
        let score = lesson_score(&self.lesson, &self.drawn, interior, &attempt.state);
        let exercise = (!self.lesson.parts.is_empty()).then(|| self.naming(&attempt));
        to_js(&Standing { score, exercise })
    }

    /// The receipt of a log, as the text of a file.
    pub fn receipt(&mut self, log: Vec<String>) -> Result<String, JsError> {
        Ok(Receipt::of(&self.lesson, &self.learner, &events(&log)?, &mut self.interiors)?.to_json())
    }
}

impl LessonDesk {
    fn replayed(&mut self, log: &[String]) -> Result<Attempt, JsError> {
        let interior = self.interiors.of(&self.drawn.spec);
        let events = events(log)?;
        let mut attempt = match self.last.take() {
            Some(last) if events.starts_with(&last.log) => last,
            _ => Attempt::new(self.drawn.case),
        };
        let done = attempt.log.len();
        go_on(&self.lesson, interior, &mut attempt, &events[done..])?;
        self.last = Some(attempt.clone());
        Ok(attempt)
    }

    fn naming(&self, attempt: &Attempt) -> ExerciseEntry {
        let after = |pointed: &[Label]| exercise(&self.lesson, &self.drawn, pointed);
        let pointed = &attempt.state.pointed;
        let now = after(pointed);
        let last = pointed.split_last().and_then(|(&said, before)| Some((after(before).asks()?, said)));
        let (found, all) = now.counts();
        ExerciseEntry {
            asks: now.asks(),
            found,
            all,
            right: last.map(|(was, said)| was == said),
            was: last.map(|(was, _)| was),
            said: last.map(|(_, said)| said),
        }
    }
}

fn events(log: &[String]) -> Result<Vec<Event>, JsError> {
    log.iter()
        .map(|line| log_line::read(line).map_err(|problem| JsError::new(&problem.to_string())))
        .collect()
}
