//! Which control to move, which way and how far, in the words that a teacher would use.
//!
//! From the criterion's slope along each control: the move that brings its value to zero, `-value / slope`, in steps of the model
//! itself (a few Newton steps of at most 35 degrees), so that a large error gets the right advice too.

use super::criteria::CriterionId;
use crate::imaging::c_arm::CArm;
use serde::Serialize;

/// A control of the C-arm.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "lowercase")]
#[allow(missing_docs, reason = "the names are the trade's")]
pub enum Control {
    Oblique,
    Tilt,
}

/// One move.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Advice {
    /// Which control.
    pub control: Control,
    /// `left` or `right` (of the patient), `cephalad` or `caudad`.
    pub direction: &'static str,
    /// How far, degrees, > 0.
    pub amount_deg: f64,
}

/// The control that answers to a criterion.
pub fn control_of(id: CriterionId) -> Control {
    match id {
        CriterionId::Squared | CriterionId::SquaredBelow => Control::Tilt,
        CriterionId::SpinousCentred
        | CriterionId::FacetUnderPedicle
        | CriterionId::Lateral
        | CriterionId::ForamenAligned
        | CriterionId::ProcessAtMidPlate => Control::Oblique,
    }
}

/// A step of Newton's method too small to matter, radians.
const SOLVED_RAD: f64 = 1e-9;

/// The move of one control that brings `value` (a signed error as a function of the C-arm) to zero, if the machine can make it.
pub fn advice(control: Control, arm: &CArm, value: impl Fn(&CArm) -> f64) -> Option<Advice> {
    const STEP_RAD: f64 = 1e-4;
    let moved = |by_rad: f64| match control {
        Control::Oblique => CArm { oblique_rad: arm.oblique_rad + by_rad, ..*arm },
        Control::Tilt => CArm { tilt_rad: arm.tilt_rad + by_rad, ..*arm },
    };
    let mut by_rad = 0.0;
    for _ in 0..8 {
        let here = value(&moved(by_rad));
        let slope = (value(&moved(by_rad + STEP_RAD)) - here) / STEP_RAD;
        let step = -here / slope;
        if !step.is_finite() {
            return None;
        }
        by_rad += step.clamp(-0.6, 0.6);
        if step.abs() < SOLVED_RAD {
            break;
        }
    }
    let amount_deg = by_rad.to_degrees();
    let there = moved(by_rad);
    let reached = there.turned_to(there.oblique_rad.to_degrees(), there.tilt_rad.to_degrees()).is_ok();
    if !reached || value(&there).abs() > value(arm).abs() {
        return None;
    }
    let direction = match (control, by_rad > 0.0) {
        (Control::Oblique, true) => "left",
        (Control::Oblique, false) => "right",
        (Control::Tilt, true) => "cephalad",
        (Control::Tilt, false) => "caudad",
    };
    Some(Advice { control, direction, amount_deg: amount_deg.abs() })
}

/// The advice as a sentence.
pub fn sentence(advice: &Advice) -> String {
    let degrees = advice.amount_deg;
    let amount = if degrees < 1.0 {
        "less than 1 degree".to_owned()
    } else {
        let rounded = libm::round(degrees);
        format!("{rounded} degree{}", if rounded == 1.0 { "" } else { "s" })
    };
    match advice.control {
        Control::Oblique => format!("Turn the receptor {amount} towards the patient's {}.", advice.direction),
        Control::Tilt => format!("Tilt the receptor {amount} {}.", advice.direction),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn advice_finds_the_zero_of_a_known_curve() {
        let arm = CArm::at_degrees(5.0, 0.0).unwrap();
        let found =
            advice(Control::Oblique, &arm, |a| libm::tan(a.oblique_rad) - libm::tan(25.0_f64.to_radians()))
                .unwrap();
        assert_eq!(found.direction, "left");
        assert!((found.amount_deg - 20.0).abs() < 1e-6);
        assert_eq!(sentence(&found), "Turn the receptor 20 degrees towards the patient's left.");
    }

    #[test]
    fn no_advice_where_nothing_helps() {
        assert_eq!(advice(Control::Tilt, &CArm::default(), |_| 1.0), None);
    }
}
