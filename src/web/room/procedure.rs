//! The needle's part of the handle: the attempt, its log and its score, and what the beam sees of needle and contrast.
//!
//! The C-arm may be turned freely while a picture is being looked for; before any action where it stands is written to the log, in
//! tenths of a degree and of a millimetre, so that the log alone leads to the same state.

use super::super::exchange::refusal;
use super::super::values::CaseOptions;
use super::{TeachingRoom, to_js, understood};
use crate::imaging::inclusion::Inclusion;
use crate::procedure::action::{Action, Event};
use crate::procedure::attempt::Attempt;
use crate::procedure::attempt_file::AttemptFile;
use crate::procedure::case::Case;
use crate::procedure::log_line;
use crate::procedure::time_line::TimeLine;
use crate::score::report::procedure_report;
use crate::score::rubric::score;
use crate::view::criteria::Target;
use wasm_bindgen::prelude::*;

/// The attempt and what is drawn of it.
#[derive(Debug)]
pub(super) struct Procedure {
    pub(super) attempt: Attempt,
    needle: Vec<Inclusion>,
    /// Needle and contrast as of `drawn_tick`.
    scene: Vec<Inclusion>,
    drawn_tick: Option<u32>,
    /// What is played back.
    time_line: Option<TimeLine>,
}

impl Procedure {
    pub(super) fn new(target: Target) -> Self {
        Self::of(Attempt::new(Case::new(target)))
    }

    fn of(attempt: Attempt) -> Self {
        Self { attempt, needle: Vec::new(), scene: Vec::new(), drawn_tick: None, time_line: None }
    }

    /// Needle and contrast as of the tick they were last brought up to.
    pub(super) fn inclusions(&self) -> &[Inclusion] {
        &self.scene
    }

    fn changed(&mut self) {
        self.needle = self.attempt.state.needle_bodies();
        self.scene.clone_from(&self.needle);
        self.drawn_tick = None;
    }
}

impl TeachingRoom {
    /// A new attempt at the same case, for another patient or target.
    pub(super) fn begin_again(&mut self) {
        let case = Case { target: self.target, ..self.procedure.attempt.case };
        self.procedure = Procedure::of(Attempt::new(case));
    }

    /// Replays a log; on an error nothing has changed.
    fn take_up(&mut self, case: Case, log: &[Event]) -> Result<(), JsError> {
        let attempt = Attempt::replay(case, &self.patient.interior, log)?;
        self.target = attempt.case.target;
        self.arm = attempt.state.arm;
        self.procedure = Procedure::of(attempt);
        self.procedure.changed();
        Ok(())
    }

    /// Does an action of the attempt.
    pub(super) fn do_action(&mut self, tick: u32, action: Action) -> Result<(), JsError> {
        // Time goes on even where the page's clock has been set back.
        let tick = tick.max(self.procedure.attempt.state.tick);
        self.procedure.attempt.settle(&self.patient.interior, tick, &self.arm)?;
        self.procedure.attempt.apply(&self.patient.interior, Event(tick, action))?;
        self.arm = self.procedure.attempt.state.arm;
        self.procedure.changed();
        Ok(())
    }
}

#[wasm_bindgen]
impl TeachingRoom {
    /// Begins a new attempt: `{approach, medium, exposures}`, each of which may be left out.
    #[wasm_bindgen(js_name = newAttempt)]
    pub fn new_attempt(
        &mut self,
        #[wasm_bindgen(unchecked_optional_param_type = "values.CaseOptions")] options: JsValue,
    ) -> Result<(), JsValue> {
        let options: CaseOptions =
            if options.is_undefined() { CaseOptions::default() } else { understood("case", &options)? };
        let usual = Case::new(self.target);
        let case = Case {
            approach: options.approach.unwrap_or(usual.approach),
            medium: options.medium.unwrap_or(usual.medium),
            exposures: options.exposures,
            ..usual
        };
        self.procedure = Procedure::of(Attempt::new(case));
        Ok(())
    }

    /// Begins a new attempt at a whole case (`procedure::case::Case`), as a lesson sets it; level and side become the case's.
    #[wasm_bindgen(js_name = beginCase)]
    pub fn begin_case(
        &mut self,
        #[wasm_bindgen(unchecked_param_type = "values.Case")] case: JsValue,
    ) -> Result<(), JsValue> {
        let case: Case = understood("case", &case)?;
        self.target = case.target;
        self.procedure = Procedure::of(Attempt::new(case));
        Ok(())
    }

    /// The attempt's log, a line an event (`procedure::log_line`).
    #[wasm_bindgen(js_name = attemptLog)]
    pub fn attempt_log(&self) -> Vec<String> {
        self.procedure.attempt.log.iter().map(log_line::write).collect()
    }

    /// Takes the present case up where a log left it; on an error nothing has changed.
    #[wasm_bindgen(js_name = resumeLog)]
    pub fn resume_log(&mut self, log: Vec<String>) -> Result<(), JsError> {
        let events: Vec<Event> = log
            .iter()
            .map(|line| log_line::read(line))
            .collect::<Result<_, _>>()
            .map_err(|problem| JsError::new(&problem.to_string()))?;
        self.take_up(self.procedure.attempt.case, &events)
    }

    /// Does an action (`procedure::action::Action`) at a tick (twentieths of a second). Returns the procedure as it then stands.
    #[wasm_bindgen(unchecked_return_type = "values.ProcedureReport")]
    pub fn act(
        &mut self,
        tick: u32,
        #[wasm_bindgen(unchecked_param_type = "values.Action")] action: JsValue,
    ) -> Result<JsValue, JsValue> {
        let action =
            Action::from_object(understood("action", &action)?).map_err(|error| refusal("action", &error))?;
        self.do_action(tick, action)?;
        self.procedure(tick)
    }

    /// Puts needle and contrast as of a tick (the last action's when it is left out) into the pictures that are drawn from now on.
    #[wasm_bindgen(js_name = showNeedleAt)]
    pub fn show_needle_at(&mut self, tick: Option<u32>) {
        let procedure = &mut self.procedure;
        let tick = tick.unwrap_or(procedure.attempt.state.tick);
        let still = procedure.attempt.state.injected.is_empty();
        if procedure.drawn_tick.is_some_and(|drawn| still || drawn == tick) {
            return;
        }
        procedure.scene.clear();
        procedure.scene.extend(procedure.needle.iter().cloned());
        procedure.scene.extend(procedure.attempt.state.contrast_bodies(&self.patient.interior, tick));
        procedure.drawn_tick = Some(tick);
    }

    /// Writes down where the C-arm has come to rest.
    pub fn settle(&mut self, tick: u32) -> Result<(), JsValue> {
        let tick = tick.max(self.procedure.attempt.state.tick);
        Ok(self.procedure.attempt.settle(&self.patient.interior, tick, &self.arm).map_err(JsError::from)?)
    }

    /// The procedure as it stands (`score::report::ProcedureReport`), in the present view.
    #[wasm_bindgen(unchecked_return_type = "values.ProcedureReport")]
    pub fn procedure(&self, tick: u32) -> Result<JsValue, JsValue> {
        Ok(to_js(&procedure_report(&self.procedure.attempt, &self.patient.interior, &self.arm, tick))?)
    }

    /// The score by step (`score::rubric::Score`).
    #[wasm_bindgen(unchecked_return_type = "values.Score")]
    pub fn score(&self) -> Result<JsValue, JsError> {
        let attempt = &self.procedure.attempt;
        to_js(&score(&attempt.case, &self.patient.interior, &attempt.state))
    }

    /// Takes back the last action that is no exposure; `false` when there is none.
    pub fn undo(&mut self) -> bool {
        let done = self.procedure.attempt.undo(&self.patient.interior);
        self.arm = self.procedure.attempt.state.arm;
        self.procedure.changed();
        done
    }

    /// Does again what was taken back last; `false` when there is nothing.
    pub fn redo(&mut self) -> bool {
        let done = self.procedure.attempt.redo(&self.patient.interior);
        self.arm = self.procedure.attempt.state.arm;
        self.procedure.changed();
        done
    }

    /// The attempt as a plain object that [`Self::load_attempt`] takes: `{patient, case, log}`, and
    /// `seed` and `changed` where they are not the named patient's own.
    #[wasm_bindgen(js_name = attemptTrace, unchecked_return_type = "values.AttemptFile")]
    pub fn attempt_trace(&self) -> Result<JsValue, JsError> {
        let attempt = &self.procedure.attempt;
        to_js(&AttemptFile::of_attempt(&self.patient.spec, attempt))
    }

    /// Takes an attempt on the present patient up to be played back, at its beginning; on an error nothing has changed. Returns how many
    /// actions it has.
    #[wasm_bindgen(js_name = beginReplay)]
    pub fn begin_replay(
        &mut self,
        #[wasm_bindgen(unchecked_param_type = "values.AttemptFile")] trace: JsValue,
    ) -> Result<usize, JsValue> {
        let trace = self.own_trace(&trace)?;
        let line = TimeLine::new(trace.case, &self.patient.interior, &trace.log).map_err(JsError::from)?;
        let actions = line.actions();
        self.stand(line, 0)?;
        Ok(actions)
    }

    /// Where what is played back stood after so many actions; without [`Self::begin_replay`] nothing happens.
    #[wasm_bindgen(js_name = standAfter)]
    pub fn stand_after(&mut self, done: usize) -> Result<(), JsValue> {
        self.procedure.time_line.take().map_or(Ok(()), |line| self.stand(line, done))
    }

    /// Replays an attempt on the present patient; on an error nothing has changed.
    #[wasm_bindgen(js_name = loadAttempt)]
    pub fn load_attempt(
        &mut self,
        #[wasm_bindgen(unchecked_param_type = "values.AttemptFile")] trace: JsValue,
    ) -> Result<(), JsValue> {
        let trace = self.own_trace(&trace)?;
        Ok(self.take_up(trace.case, &trace.log)?)
    }
}

impl TeachingRoom {
    /// An attempt, if it is of the present patient.
    fn own_trace(&self, trace: &JsValue) -> Result<AttemptFile, JsValue> {
        let trace: AttemptFile = understood("attempt", trace)?;
        if trace.spec().is_none_or(|spec| spec.key() != self.patient.spec.key()) {
            let other = trace.spec().map_or(trace.patient, |spec| spec.title());
            let text =
                format!("the attempt is of the patient '{other}', not of '{}'", self.patient.spec.title());
            return Err(JsError::new(&text).into());
        }
        Ok(trace)
    }

    /// Stands at a moment of what is played back.
    fn stand(&mut self, line: TimeLine, done: usize) -> Result<(), JsValue> {
        let attempt = line.at(&self.patient.interior, done).map_err(JsError::from)?;
        self.target = attempt.case.target;
        self.arm = attempt.state.arm;
        self.procedure = Procedure::of(attempt);
        self.procedure.time_line = Some(line);
        self.procedure.changed();
        Ok(())
    }
}
