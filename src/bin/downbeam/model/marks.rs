//! What the marks are made of: criteria, their limits, the steps and their weights, cautions, and what contrast shows.

use super::round;
use downbeam::anatomy::foramen::Approach;
use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Level, Side};
use downbeam::needle::compartment::Pattern;
use downbeam::needle::contact::ContactKind;
use downbeam::procedure::attempt::Attempt;
use downbeam::procedure::case::{Case, Caution};
use downbeam::procedure::step::StepId;
use downbeam::score::rubric::step;
use downbeam::view::criteria::{CriterionId, Target};
use serde_json::{Value, json};
use std::collections::BTreeMap;

const CRITERIA: [CriterionId; 7] = [
    CriterionId::SpinousCentred,
    CriterionId::Squared,
    CriterionId::FacetUnderPedicle,
    CriterionId::Lateral,
    CriterionId::ForamenAligned,
    CriterionId::ProcessAtMidPlate,
    CriterionId::SquaredBelow,
];

pub(super) fn numbers(average: &Interior) -> Value {
    let case = |level, approach| Case { approach, ..Case::new(Target { level, side: Side::Left }) };
    let usual = case(Level::L4, Approach::Subpedicular);
    let state = Attempt::new(usual).state;
    let steps: Vec<Value> = StepId::ALL
        .iter()
        .map(|&id| json!({ "id": id.id(), "name": id.name(), "weight": round(step(&usual, average, &state, id).weight, 3) }))
        .collect();
    let criteria: Vec<Value> =
        CRITERIA.iter().map(|c| json!({ "id": c, "name": c.name(), "unit": c.unit() })).collect();
    let cautions: BTreeMap<Caution, &str> =
        Caution::ALL.iter().map(|&caution| (caution, caution.sentence())).collect();
    let patterns: Vec<Value> = Pattern::ALL.iter().map(|p| json!({ "name": p, "sign": p.sign() })).collect();
    let contacts: Vec<Value> =
        ContactKind::ALL.iter().map(|k| json!({ "kind": k, "sign": k.sign() })).collect();
    json!({
        "criteria": criteria,
        "views": usual.views,
        "needle": usual.needle,
        "par": usual.par,
        "steps": steps,
        "patterns": patterns,
        "contacts": contacts,
        "cautions": cautions,
    })
}
