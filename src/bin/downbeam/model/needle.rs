//! The needle's bend: paths as the engine's screw motion gives them.

use super::round;
use downbeam::needle::device::{Gauge, LENGTHS_MM, Medium};
use downbeam::needle::motion::{Tip, spun};
use glam::DVec3;
use serde_json::{Value, json};

const MEDIA: [(&str, Medium); 2] = [("muscle", Medium::Muscle), ("gel", Medium::Gel)];
/// Shares of the way on which the needle is spun.
const DUTIES: [f64; 4] = [0.0, 0.25, 0.5, 0.75];

pub(super) fn numbers() -> Value {
    let bends: Vec<Value> =
        Gauge::ALL.iter().flat_map(|&gauge| MEDIA.map(|(name, medium)| bend(gauge, name, medium))).collect();
    json!({ "lengths_mm": LENGTHS_MM, "bends": bends })
}

/// How far aside the tip is when it is so far in, mm, with a curvature; the way in is found to a thousandth.
fn aside_mm(curvature_per_mm: f64, depth_mm: f64) -> f64 {
    let start = Tip::looking(DVec3::ZERO, DVec3::NEG_Y, DVec3::X);
    let (mut low, mut high) = (depth_mm, 1.2 * depth_mm);
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        let in_mm = start.advanced(middle, curvature_per_mm, 0.0).position.dot(start.axis());
        if in_mm < depth_mm { low = middle } else { high = middle }
    }
    start.advanced(low, curvature_per_mm, 0.0).position.dot(start.across(0.0))
}

fn bend(gauge: Gauge, name: &str, medium: Medium) -> Value {
    let curvature = gauge.curvature_per_mm(medium);
    let path: Vec<[f64; 2]> =
        (0..=9).map(|i| 10.0 * f64::from(i)).map(|z| [z, round(aside_mm(curvature, z), 2)]).collect();
    let spinning = DUTIES.map(|duty| [duty, round(aside_mm(spun(curvature, duty), 80.0), 2)]);
    json!({
        "gauge": gauge,
        "medium": name,
        "outer_mm": gauge.outer_mm(),
        "inner_mm": gauge.inner_mm(),
        "radius_mm": round(1.0 / curvature, 0),
        "at_50_mm": round(aside_mm(curvature, 50.0), 1),
        "at_80_mm": round(aside_mm(curvature, 80.0), 1),
        "path": path,
        "spinning_at_80_mm": spinning,
    })
}
