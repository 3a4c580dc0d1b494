//! Roots, sac, foramina and skin, measured on the fields as `tests/needle_tissue.rs` does.

use super::round;
use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::PatientSpec;
use downbeam::anatomy::tissues::TissueKind;
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::projection::Projection;
use downbeam::needle::reading::open_mm2;
use downbeam::procedure::beam::skin_entry;
use downbeam::view::best_view::{ViewKind, best_view};
use downbeam::view::criteria::Target;
use glam::DVec3;
use serde_json::{Value, json};

const LUMBAR: [Level; 5] = [Level::L1, Level::L2, Level::L3, Level::L4, Level::L5];

pub(super) fn numbers(average: &Interior) -> Value {
    let levels: Vec<Value> = LUMBAR.iter().map(|&level| of_level(average, level)).collect();
    let skin: Vec<Value> = ["small", "average", "large"]
        .iter()
        .map(|name| json!({ "patient": name, "mm": LUMBAR.map(|level| round(skin_mm(name, level), 0)) }))
        .collect();
    let triangle: Vec<[f64; 2]> = (0..=9)
        .map(|i| f64::from(i) * 5.0)
        .map(|deg| {
            let area = &average.foramen(Level::L5, Side::Left).map(|f| &f.subpedicular);
            let open = area.map_or(0.0, |area| open_mm2(&squared(average, Level::L5, deg), average, area));
            [deg, round(open, 1)]
        })
        .collect();
    let largest = triangle.iter().copied().max_by(|a, b| a[1].total_cmp(&b[1]));
    json!({ "levels": levels, "skin": skin, "open_triangle_l5": triangle, "largest_open_l5": largest })
}

fn bone_mm(interior: &Interior, p: DVec3) -> f64 {
    interior.tissues().of_kind(TissueKind::Bone).map(|t| t.distance_mm(p)).fold(f64::MAX, f64::min)
}

fn of_level(interior: &Interior, level: Level) -> Value {
    let landmarks = interior.level(level);
    let plate = &landmarks.upper_plate;
    let root = interior.nerves().root(level, Side::Left);
    let root_gap = root.map(|r| round(bone_mm(interior, r.course[1].point) - r.course[1].radius_mm, 1));
    let ring = landmarks.side(Side::Left).pedicle;
    let medial = ring.centre - plate.left * ring.across.dot(plate.left).abs();
    let dura_gap = interior.tissues().of_kind(TissueKind::Dura).next().map(|sac| {
        let along = (0..60).map(|i| sac.distance_mm(medial + plate.back * (f64::from(i) * 0.1)));
        round(along.fold(f64::MAX, f64::min), 1)
    });
    let foramen = interior.foramen(level, Side::Left);
    json!({
        "level": level,
        "root_gap_mm": root_gap,
        "root_mm": root.map(|r| round(2.0 * r.course[1].radius_mm, 1)),
        "ganglion_mm": root.map(|r| [round(2.0 * r.ganglion.half_width_mm, 1), round(2.0 * r.ganglion.half_length_mm, 1)]),
        "dura_gap_mm": dura_gap,
        "foramen_mm": foramen.map(|f| [round(2.0 * f.ring.up.length(), 1), round(2.0 * f.ring.across.length(), 1)]),
        "triangle_mm2": foramen.map(|f| round(f.subpedicular.area_mm2(), 1)),
        "infraneural_mm2": foramen.and_then(|f| f.infraneural.as_ref()).map(|a| round(a.area_mm2(), 1)),
    })
}

/// A view with the level's upper plate squared, at an oblique.
fn squared(interior: &Interior, level: Level, oblique_deg: f64) -> Projection {
    let l = interior.level(level);
    let tilt_deg = libm::asin(-l.upper_plate.normal.y).to_degrees();
    let arm = CArm::at_degrees(oblique_deg, tilt_deg).unwrap_or_default();
    Projection::new(&arm, l.centre)
}

/// Skin to the middle of the area under the pedicle, along the beam of the best oblique, mm.
fn skin_mm(name: &str, level: Level) -> f64 {
    let Ok(spec) = PatientSpec::named(name) else { unreachable!("a patient of our own: {name}") };
    let interior = &Interior::of(&spec);
    let target = Target { level, side: Side::Left };
    let best = best_view(interior, target, ViewKind::Oblique, &CArm::default()).orientation;
    let arm = CArm::at_degrees(best.oblique_deg, best.tilt_deg).unwrap_or_default();
    let view = Projection::new(&arm, interior.level(level).centre);
    let aim = interior.foramen(level, Side::Left).map(|f| f.subpedicular.centre());
    aim.and_then(|aim| Some(skin_entry(interior, &view, view.project(aim))?.distance(aim)))
        .unwrap_or(f64::NAN)
}
