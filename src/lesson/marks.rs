//! A lesson's own score: its steps only, weighted among themselves, and whether that is a pass.

use super::draw::Drawn;
use super::file::{Lesson, LessonApproach};
use super::parts::Exercise;
use crate::anatomy::interior::Interior;
use crate::anatomy::names::Label;
use crate::procedure::action::{Action, ActionError, Event};
use crate::procedure::attempt::Attempt;
use crate::procedure::state::State;
use crate::procedure::step::StepId;
use crate::score::gate::{Gate, gate, gates_of};
use crate::score::marks::{Step, scale_economy, weighed};
use crate::score::rubric::step;
use serde::Serialize;

/// The score of a lesson.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct LessonScore {
    /// The lesson's steps, in order.
    pub steps: Vec<Step>,
    /// Weighted mean, 0 to 1; a step not done gives nothing.
    pub total: f64,
    /// Whether every step was done.
    pub complete: bool,
    /// Whether everything was done, the pass mark is reached and no gate fails.
    pub passed: bool,
    /// What fails it whatever the marks, in order.
    pub gates: Vec<Gate>,
}

/// Scores where an attempt at a lesson stands.
pub fn lesson_score(lesson: &Lesson, drawn: &Drawn, interior: &Interior, state: &State) -> LessonScore {
    let mut steps: Vec<Step> = lesson
        .steps
        .iter()
        .map(|&id| {
            let mut step = step(&drawn.case, interior, state, id);
            if id == StepId::NameParts {
                exercise(lesson, drawn, &state.pointed).fill(&mut step);
            }
            step
        })
        .collect();
    scale_economy(&mut steps);
    let total = weighed(steps.iter());
    let complete = steps.iter().all(|s| s.score.is_some());
    let gates: Vec<Gate> = gates_of(&lesson.steps, &lesson.gates)
        .into_iter()
        .map(|id| gate(&drawn.case, interior, state, &steps, id))
        .collect();
    let enough = total * 100.0 >= f64::from(lesson.pass_mark);
    let passed = complete && enough && gates.iter().all(|g| g.passed);
    LessonScore { steps, total, complete, passed, gates }
}

/// Where naming the parts stands after these answers.
pub fn exercise(lesson: &Lesson, drawn: &Drawn, pointed: &[Label]) -> Exercise {
    Exercise::new(&lesson.parts, drawn.case.target, drawn.order_seed).after(pointed)
}

/// Why a log is none of a lesson's.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ReplayError {
    /// The lesson does not allow it.
    #[error("action {number} ({action}) is not part of the lesson: {why}")]
    #[allow(missing_docs, reason = "the message is the documentation")]
    NotAllowed { number: usize, action: &'static str, why: NotAllowed },
    /// It cannot be done.
    #[error("action {number} cannot be done: {why}")]
    #[allow(missing_docs, reason = "the message is the documentation")]
    Impossible { number: usize, why: ActionError },
}

/// Why a lesson does not let an action happen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[allow(missing_docs, reason = "the messages are the documentation")]
pub enum NotAllowed {
    #[error("the way into the foramen is set by the lesson")]
    Approach,
    #[error("no parts are asked for")]
    Parts,
}

/// Whether a lesson lets an action happen at all.
///
/// # Errors
/// When it does not.
pub fn allows(lesson: &Lesson, action: &Action) -> Result<(), NotAllowed> {
    match action {
        Action::Choose { .. } if lesson.approach != Some(LessonApproach::Open) => Err(NotAllowed::Approach),
        Action::Point { .. } if lesson.parts.is_empty() => Err(NotAllowed::Parts),
        _ => Ok(()),
    }
}

/// Replays a log at a lesson.
///
/// # Errors
/// At the first action that cannot be done or that the lesson does not allow.
pub fn replay(
    lesson: &Lesson,
    drawn: &Drawn,
    interior: &Interior,
    log: &[Event],
) -> Result<Attempt, ReplayError> {
    let mut attempt = Attempt::new(drawn.case);
    go_on(lesson, interior, &mut attempt, log)?;
    Ok(attempt)
}

/// Goes on with an attempt at a lesson.
///
/// # Errors
/// As [`replay`]; what came before the action is done then.
pub fn go_on(
    lesson: &Lesson,
    interior: &Interior,
    attempt: &mut Attempt,
    log: &[Event],
) -> Result<(), ReplayError> {
    for &event in log {
        let number = attempt.log.len() + 1;
        allows(lesson, &event.1).map_err(|why| ReplayError::NotAllowed {
            number,
            action: event.1.name(),
            why,
        })?;
        attempt.apply(interior, event).map_err(|why| ReplayError::Impossible { number, why })?;
    }
    Ok(())
}
