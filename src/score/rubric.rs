//! What each step of the procedure is worth, and the whole. Everything is computed from the state, the patient's geometry and the
//! lesson's limits.
//!
//! Order and weights of the steps, and from when on a step counts: common practice, no source.

use super::contacts::contacts;
use super::contrast::contrast;
use super::depth::depth;
use super::gate::{Gate, gate, gates_of};
use super::kept_view::kept_view;
use super::marks::{Step, not_yet, scale_economy, weighed};
use super::needle_path::{down_the_beam, steering};
use super::radiation::radiation;
use super::remark::Remark;
use super::target::target;
use super::target_centred::target_centred;
use crate::anatomy::interior::Interior;
use crate::procedure::case::Case;
use crate::procedure::state::State;
use crate::procedure::step::StepId;
use crate::view::best_view::ViewKind;
use serde::Serialize;

/// All steps and the whole.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Score {
    /// In order.
    pub steps: Vec<Step>,
    /// Weighted mean over the steps that count, 0 to 1; steps not done give nothing.
    pub total: f64,
    /// Whether everything was done.
    pub complete: bool,
    /// What would fail it whatever the marks.
    pub gates: Vec<Gate>,
}

/// Scores an attempt as it stands.
pub fn score(case: &Case, interior: &Interior, state: &State) -> Score {
    let mut steps: Vec<Step> =
        StepId::OF_PROCEDURE.into_iter().map(|id| step(case, interior, state, id)).collect();
    scale_economy(&mut steps);
    let counts = |s: &&Step| s.id != StepId::Radiation || case.exposures;
    let counted: Vec<Step> = steps.iter().filter(counts).cloned().collect();
    let gates = gates_of(&StepId::OF_PROCEDURE, &[]);
    Score {
        total: weighed(counted.iter()),
        complete: counted.iter().all(|s| s.score.is_some()),
        gates: gates.into_iter().map(|id| gate(case, interior, state, &counted, id)).collect(),
        steps,
    }
}

/// One step of an attempt as it stands. Naming parts is the lesson's to score (`crate::lesson::parts`): here it is never done.
pub fn step(case: &Case, interior: &Interior, state: &State, id: StepId) -> Step {
    let (score, reasons) = match id {
        StepId::NameParts => not_yet(Remark::NameParts),
        StepId::TargetCentred => target_centred(case, state),
        StepId::TrueAp => kept_view(case, interior, state, ViewKind::TrueAp),
        StepId::Oblique => kept_view(case, interior, state, ViewKind::Oblique),
        StepId::Lateral => kept_view(case, interior, state, ViewKind::Lateral),
        StepId::Target => target(case, interior, state),
        StepId::DownTheBeam => down_the_beam(case, state),
        StepId::Steering => steering(case, interior, state),
        StepId::Depth => depth(case, interior, state),
        StepId::Contacts => contacts(state),
        StepId::Contrast => contrast(case, state),
        StepId::Radiation => radiation(case, state),
    };
    Step { id, name: id.name(), weight: weight(id), score, reasons }
}

/// A step's share when all steps count.
fn weight(id: StepId) -> f64 {
    match id {
        StepId::NameParts
        | StepId::TargetCentred
        | StepId::Lateral
        | StepId::TrueAp
        | StepId::Steering
        | StepId::Radiation => 1.0,
        StepId::Oblique | StepId::Target | StepId::DownTheBeam => 1.5,
        StepId::Depth | StepId::Contacts | StepId::Contrast => 2.0,
    }
}
