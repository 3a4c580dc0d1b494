//! The bones as an onlooker sees them, against the meshes' own vertices projected here by two dot products.

use downbeam::anatomy::names::Level;
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::imaging::onlooker::{onlooker, parts_seen};
use downbeam::procedure::pointing::{bone_part, has_part};
use glam::{DVec2, DVec3};
use std::collections::BTreeMap;
use std::f64::consts::TAU;

/// The page's two onlookers, roughly: from the feet and from the patient's right, both a little raised.
const VIEWERS: [[DVec3; 2]; 2] = [
    [DVec3::new(-1.0, 0.0, 0.0), DVec3::new(0.0, 0.988, 0.156)],
    [DVec3::new(-0.242, 0.0, 0.970), DVec3::new(0.152, 0.988, 0.038)],
];
/// A contour may stand over its edges' chords by this (`MAX_BULGE_MM`), and the far source is parallel to within this too.
const BULGE_MM: f64 = 0.35;

#[test]
fn the_outline_of_a_bone_reaches_as_far_as_its_vertices_every_way() {
    let patient = Patient::new(&PatientSpec::named("average").unwrap());
    let centre = patient.level(Level::L4).centre;
    for [right, up] in VIEWERS {
        let view = onlooker(centre, right, up, 300.0).unwrap();
        let (right, up) = (right.normalize(), (up - right * up.dot(right)).normalize());
        let lines = parts_seen(&patient, &view);
        let bone = patient.bones.iter().find(|b| b.level == Level::L4).unwrap();
        let flat: Vec<DVec2> = bone
            .outer
            .positions
            .iter()
            .map(|p| p.as_dvec3() - centre)
            .map(|p| DVec2::new(p.dot(right), p.dot(up)))
            .collect();
        let outline: Vec<DVec2> = lines
            .iter()
            .filter(|o| o.label.level == Level::L4)
            .flat_map(|o| o.points.iter().map(|p| DVec2::new(f64::from(p[0]), f64::from(p[1]))))
            .collect();
        // Two sets with the same support in every direction have the same convex hull.
        for step in 0..72 {
            let way = DVec2::from_angle(f64::from(step) / 72.0 * TAU);
            let reach = |points: &[DVec2]| points.iter().map(|p| p.dot(way)).fold(f64::MIN, f64::max);
            let (seen, solid) = (reach(&outline), reach(&flat));
            assert!(
                (seen - solid).abs() < BULGE_MM,
                "step {step}: outline {seen:.2}, vertices {solid:.2} mm"
            );
        }
    }
}

#[test]
fn a_parts_lines_lie_on_that_parts_vertices() {
    let patient = Patient::new(&PatientSpec::named("average").unwrap());
    let centre = patient.level(Level::L4).centre;
    for [right, up] in VIEWERS {
        let view = onlooker(centre, right, up, 300.0).unwrap();
        let (right, up) = (right.normalize(), (up - right * up.dot(right)).normalize());
        let bone = patient.bones.iter().find(|b| b.level == Level::L4).unwrap();
        let mut vertices: BTreeMap<_, Vec<DVec2>> = BTreeMap::new();
        for (p, &tag) in bone.outer.positions.iter().zip(&bone.outer.tags) {
            let p = p.as_dvec3() - centre;
            vertices.entry(bone.label(tag)).or_default().push(DVec2::new(p.dot(right), p.dot(up)));
        }
        let mut parts = BTreeMap::new();
        for line in parts_seen(&patient, &view).iter().filter(|o| o.label.level == Level::L4) {
            // The last point is the first of the next part's line.
            let own = &line.points[..line.points.len() - 1];
            for p in own {
                let p = DVec2::new(f64::from(p[0]), f64::from(p[1]));
                let near = vertices[&line.label].iter().map(|v| v.distance(p)).fold(f64::MAX, f64::min);
                assert!(near < 1.5, "{:?}: {near:.2} mm from its vertices", line.label);
            }
            let label = bone_part(line.label);
            assert!(!own.is_empty() && has_part(label.level, label.part));
            *parts.entry(label).or_insert(0) += own.len();
        }
        // Body, spinous process, and six parts a side.
        assert_eq!(parts.len(), 14, "{parts:?}");
    }
}

#[test]
fn axes_that_span_no_screen_are_refused() {
    assert!(onlooker(DVec3::ZERO, DVec3::X, DVec3::X * 2.0, 80.0).is_none());
    assert!(onlooker(DVec3::ZERO, DVec3::NAN, DVec3::Y, 80.0).is_none());
    // Slanted axes are made square.
    let view = onlooker(DVec3::ZERO, DVec3::X * 3.0, DVec3::new(0.4, 1.0, 0.0), 80.0).unwrap();
    assert!((view.up - DVec3::Y).length() < 1e-12 && (view.right - DVec3::X).length() < 1e-12);
}
