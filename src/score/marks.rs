//! Marks of a step: how much, and why, as remarks that a learner can act on.

use super::remark::Remark;
use crate::procedure::step::StepId;
use serde::Serialize;

/// One step's marks.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Step {
    /// Which.
    pub id: StepId,
    /// In words.
    pub name: &'static str,
    /// Share of the whole when all steps count.
    pub weight: f64,
    /// 0 to 1; `null` while it has not been done or where it does not count.
    pub score: Option<f64>,
    /// Why: one remark or a few, in the order in which they are said.
    pub reasons: Vec<Remark>,
}

/// Marks of a step and the reasons.
pub(super) type Marks = (Option<f64>, Vec<Remark>);

/// Not done: no marks, and what there is to do.
pub(super) fn not_yet(remark: Remark) -> Marks {
    (None, vec![remark])
}

/// Little radiation is worth something for what was reached with it: its marks scale with those of the other steps.
pub(crate) fn scale_economy(steps: &mut [Step]) {
    let reached = weighed(steps.iter().filter(|s| s.id != StepId::Radiation));
    for step in steps.iter_mut().filter(|s| s.id == StepId::Radiation) {
        if let Some(score) = &mut step.score
            && reached < 1.0
        {
            *score *= reached;
            step.reasons.push(Remark::EconomyScaled { percent: 100.0 * reached });
        }
    }
}

/// Weighted mean over steps, 0 to 1; a step not done gives nothing.
pub(crate) fn weighed<'a>(steps: impl Iterator<Item = &'a Step>) -> f64 {
    let (sum, weight) = steps
        .fold((0.0, 0.0), |(sum, weight), s| (sum + s.weight * s.score.unwrap_or(0.0), weight + s.weight));
    if weight > 0.0 { sum / weight } else { 0.0 }
}
