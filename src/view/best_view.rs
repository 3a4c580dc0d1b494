//! The best view of each kind: both of its errors zero in (oblique, tilt), by Newton's method with a Jacobian from differences,
//! held inside the machine's ranges.

use super::criteria::{
    Target, facet_place, foramen_offset_mm, lateral_place, plate_angle, process_at_mid_plate_percent,
    spinous_offset_percent,
};
use crate::anatomy::interior::Interior;
use crate::anatomy::names::Level;
use crate::imaging::c_arm::CArm;
use crate::imaging::projection::Projection;
use serde::{Deserialize, Serialize};

/// The views of a transforaminal injection.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, strum::IntoStaticStr)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[strum(serialize_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the trade's")]
pub enum ViewKind {
    TrueAp,
    Oblique,
    Lateral,
    /// For the way under the root: steeper, until the articular process below halves the disc.
    SteepOblique,
}

impl ViewKind {
    /// Those that a report lists; the steep oblique belongs to one approach only.
    pub const ALL: [Self; 3] = [Self::TrueAp, Self::Oblique, Self::Lateral];

    /// Such as `true AP`.
    pub fn in_words(self) -> &'static str {
        match self {
            Self::TrueAp => "true AP",
            Self::Oblique => "oblique",
            Self::Lateral => "lateral",
            Self::SteepOblique => "steep oblique",
        }
    }

    /// `true_ap`, `oblique`, `lateral`, `steep_oblique`.
    pub fn name(self) -> &'static str {
        self.into()
    }
}

/// An orientation, degrees.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Orientation {
    /// > 0 receptor to the patient's left.
    #[serde(rename = "oblique")]
    pub oblique_deg: f64,
    /// > 0 receptor cephalad.
    #[serde(rename = "tilt")]
    pub tilt_deg: f64,
}

/// The best view and what is left of its errors.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BestView {
    /// Where.
    pub orientation: Orientation,
    /// Whether both errors are zero there; else this is the nearest the machine can come.
    pub reached: bool,
}

/// The two errors of a view, each about one degree a unit.
fn errors(interior: &Interior, target: Target, kind: ViewKind, view: &Projection) -> [f64; 2] {
    let level = interior.level(target.level);
    let below = target.level.below().filter(|_| kind == ViewKind::SteepOblique);
    let plate = below.map_or(&level.upper_plate, |below| &interior.level(below).upper_plate);
    let squared = plate_angle(view, plate).to_degrees();
    let turn = match kind {
        ViewKind::TrueAp => spinous_offset_percent(view, level),
        ViewKind::Oblique if target.level == Level::S1 => {
            foramen_offset_mm(view, interior, target.side).map_or(f64::NAN, |o| o[0] * 2.0)
        }
        ViewKind::Oblique => facet_place(view, interior, target).map_or(f64::NAN, |f| f.offset_percent),
        ViewKind::SteepOblique => {
            process_at_mid_plate_percent(view, interior, target).map_or(f64::NAN, |offset| 0.4 * offset)
        }
        // Squaring by tilt brings the two pedicles to one height; the oblique brings them to one depth.
        ViewKind::Lateral => lateral_place(view, interior, target.level).pedicles_mm[0] * 2.0,
    };
    [turn, squared]
}

/// Solves for the best view. `arm` gives distances, detector and table; its own orientation does not matter.
pub fn best_view(interior: &Interior, target: Target, kind: ViewKind, arm: &CArm) -> BestView {
    let centre = interior.level(target.level).centre;
    let side = target.side.sign();
    let at = |q: [f64; 2]| {
        let turned = CArm { oblique_rad: q[0].to_radians(), tilt_rad: q[1].to_radians(), ..*arm };
        errors(interior, target, kind, &Projection::new(&turned, centre))
    };
    let starts: &[f64] = match kind {
        ViewKind::TrueAp => &[0.0, 10.0, -10.0],
        ViewKind::Oblique if target.level == Level::S1 => &[6.0, 0.0, 15.0],
        ViewKind::Oblique => &[22.0, 30.0, 12.0, 40.0],
        ViewKind::SteepOblique => &[35.0, 45.0, 25.0],
        ViewKind::Lateral => &[90.0, 84.0, 96.0],
    };
    let mut best = ([0.0, 0.0], f64::INFINITY);
    for &start in starts {
        let (q, size) = newton([start * side, 0.0], at);
        if size < best.1 {
            best = (q, size);
        }
        if best.1 < SOLVED {
            break;
        }
    }
    BestView {
        orientation: Orientation { oblique_deg: best.0[0], tilt_deg: best.0[1] },
        reached: best.1 < SOLVED,
    }
}

/// Sum of the squared errors at which a view counts as solved.
const SOLVED: f64 = 1e-12;

/// Newton's method in degrees, kept in range; where it ends and the sum of squares there.
fn newton(start: [f64; 2], errors: impl Fn([f64; 2]) -> [f64; 2]) -> ([f64; 2], f64) {
    const STEP_DEG: f64 = 1e-3;
    let size = |e: [f64; 2]| {
        let sum = e[0] * e[0] + e[1] * e[1];
        if sum.is_nan() { f64::INFINITY } else { sum }
    };
    let ranged = |q: [f64; 2]| {
        [
            q[0].clamp(CArm::OBLIQUE_RANGE_DEG.0, CArm::OBLIQUE_RANGE_DEG.1),
            q[1].clamp(CArm::TILT_RANGE_DEG.0, CArm::TILT_RANGE_DEG.1),
        ]
    };
    let mut q = start;
    let mut e = errors(q);
    for _ in 0..40 {
        if size(e) < SOLVED * 1e-6 {
            break;
        }
        let column = |i: usize| {
            let mut moved = q;
            moved[i] += STEP_DEG;
            let there = errors(moved);
            [(there[0] - e[0]) / STEP_DEG, (there[1] - e[1]) / STEP_DEG]
        };
        let (a, b) = (column(0), column(1));
        let determinant = a[0] * b[1] - a[1] * b[0];
        if !determinant.is_finite() || determinant.abs() < 1e-9 {
            break;
        }
        let step = [(e[0] * b[1] - e[1] * b[0]) / determinant, (a[0] * e[1] - a[1] * e[0]) / determinant];
        // Halve a step that does not help.
        let mut share = 1.0_f64.min(20.0 / step[0].abs().max(step[1].abs()).max(1e-9));
        let next = loop {
            let tried = ranged([q[0] - share * step[0], q[1] - share * step[1]]);
            let there = errors(tried);
            if size(there) < size(e) {
                break Some((tried, there));
            }
            share *= 0.5;
            if share < 1e-4 {
                break None;
            }
        };
        let Some(next) = next else { break };
        (q, e) = next;
    }
    (q, size(e))
}
