//! What the table asks for is measured back on the mesh (vertices stand on the field, so 0.5 mm is asked).

#[path = "common/marks.rs"]
mod marks;

use downbeam::anatomy::dimensions::vertebra;
use downbeam::anatomy::names::{Level, Part, Side};
use downbeam::anatomy::patient::{Patient, PatientSpec};
use glam::DVec3;
use std::sync::LazyLock;

static PATIENT: LazyLock<Patient> = LazyLock::new(|| Patient::new(&PatientSpec::named("average").unwrap()));
const TOLERANCE_MM: f64 = 0.5;

/// Points all over the vertebra's mesh, in its own frame: vertices, middles of edges, centroids of triangles.
fn own(level: Level) -> Vec<DVec3> {
    let bone = PATIENT.bone(level);
    let frame = bone.frame.inverse();
    let mesh = &bone.outer;
    let at = |i: u32| frame.point(mesh.positions[i as usize].as_dvec3());
    let of_triangle = |t: &[u32; 3]| {
        let [a, b, c] = t.map(at);
        [(a + b) / 2.0, (b + c) / 2.0, (c + a) / 2.0, (a + b + c) / 3.0]
    };
    let vertices = mesh.positions.iter().map(|p| frame.point(p.as_dvec3()));
    vertices.chain(mesh.triangles.iter().flat_map(of_triangle)).collect()
}

fn span(points: impl Iterator<Item = f64>) -> (f64, f64) {
    points.fold((f64::MAX, f64::MIN), |(low, high), x| (low.min(x), high.max(x)))
}

fn near(level: Level, what: &str, measured: f64, asked: f64, tolerance: f64) {
    assert!((measured - asked).abs() < tolerance, "{level} {what}: measured {measured:.2}, asked {asked:.2}");
}

#[test]
fn bodies_have_their_width_and_depth() {
    for level in Level::VERTEBRAE {
        let d = vertebra(level).unwrap();
        let points = own(level);
        let h = d.half_height_mm();
        // The rims' widest places stand 1.6 mm inside the plates, where the edge's rounding ends; in front of the pedicles.
        for (z, width, depth, what) in [
            (h - 2.5, d.upper_width_mm, d.upper_depth_mm, "upper"),
            (2.5 - h, d.lower_width_mm, d.lower_depth_mm, "lower"),
        ] {
            let slice = || points.iter().filter(move |p| (p.z - z).abs() < 1.2 && p.y < 3.0);
            let (right, left) = span(slice().map(|p| p.x));
            near(level, &format!("{what} width"), left - right, width, 1.6);
            let (front, _) = span(slice().filter(|p| p.x.abs() < 5.0).map(|p| p.y));
            near(level, &format!("{what} half depth"), -front, depth / 2.0, 0.9);
        }
    }
}

#[test]
fn bodies_have_their_heights() {
    for level in Level::VERTEBRAE {
        let d = vertebra(level).unwrap();
        let points = own(level);
        let height = |y: f64| {
            let (low, high) =
                span(points.iter().filter(|p| p.x.abs() < 5.0 && (p.y - y).abs() < 0.8).map(|p| p.z));
            high - low
        };
        // Heights on the rim, 3 mm inside the walls, carried on to the walls along the straight plates.
        let (f, b) = (-d.posterior_rims_mm() + 3.0, d.posterior_rims_mm() - 3.0);
        let (front, back) = (height(f), height(b));
        let slope = (front - back) / (b - f);
        near(level, "anterior height", front + 3.0 * slope, d.anterior_height_mm, TOLERANCE_MM);
        near(level, "posterior height", back - 3.0 * slope, d.posterior_height_mm, TOLERANCE_MM);
    }
}

#[test]
fn pedicles_have_their_isthmus() {
    for level in Level::VERTEBRAE {
        let d = vertebra(level).unwrap();
        let mesh = PATIENT.part_mesh(level, Part::Pedicle, Some(Side::Left)).unwrap();
        let frame = PATIENT.bone(level).frame.inverse();
        let centre = DVec3::from_array(d.pedicle_centre_mm());
        let (s, c) = libm::sincos(d.pedicle_axial_deg.to_radians());
        let (axis, across) = (DVec3::new(s, c, 0.0), DVec3::new(c, -s, 0.0));
        let ring: Vec<DVec3> = mesh
            .positions
            .iter()
            .map(|p| frame.point(p.as_dvec3()) - centre)
            .filter(|r| r.dot(axis).abs() < 0.6)
            .collect();
        let (a, b) = span(ring.iter().map(|r| r.dot(across)));
        near(level, "pedicle width", b - a, d.pedicle_width_mm, TOLERANCE_MM);
        let (a, b) = span(ring.iter().map(|r| r.z));
        near(level, "pedicle height", b - a, d.pedicle_height_mm, TOLERANCE_MM);
    }
}

#[test]
fn canal_is_open_to_its_width_and_depth() {
    for level in Level::VERTEBRAE {
        let d = vertebra(level).unwrap();
        let points = own(level);
        // The pedicle's medial wall in the section square to its axis, as its width is measured: the recess behind it is narrower.
        let mesh = PATIENT.part_mesh(level, Part::Pedicle, Some(Side::Left)).unwrap();
        let frame = PATIENT.bone(level).frame.inverse();
        let centre = DVec3::from_array(d.pedicle_centre_mm());
        let (sin, cos) = libm::sincos(d.pedicle_axial_deg.to_radians());
        let medial = mesh
            .positions
            .iter()
            .map(|p| frame.point(p.as_dvec3()))
            .filter(|p| {
                let r = *p - centre;
                r.z.abs() < 1.5 && (r.x * sin + r.y * cos).abs() < 0.8
            })
            .map(|p| p.x)
            .fold(f64::MAX, f64::min);
        near(level, "half interpedicular distance", medial, d.interpedicular_mm / 2.0, 1.2);
        let lamina = points
            .iter()
            .filter(|p| p.x.abs() < 1.5 && p.y > d.posterior_wall_mm() + 3.0)
            .map(|p| p.y)
            .fold(f64::MAX, f64::min);
        let wall = points
            .iter()
            .filter(|p| p.x.abs() < 2.0 && p.z.abs() < 3.0 && p.y < d.posterior_wall_mm() + 3.0)
            .map(|p| p.y)
            .fold(f64::MIN, f64::max);
        // From the wall's waist to the lamina's most forward point: the laminae lean.
        let depth = lamina - wall;
        assert!(
            depth > d.canal_depth_mm - 1.0 && depth < d.canal_depth_mm + 4.5,
            "{level} canal depth {depth:.1}, asked {:.1}",
            d.canal_depth_mm
        );
    }
}

#[test]
fn processes_reach_their_span() {
    for level in Level::VERTEBRAE {
        let d = vertebra(level).unwrap();
        let (right, left) = span(own(level).into_iter().map(|p| p.x));
        near(level, "transverse span", left - right, d.transverse_span_mm.max(d.upper_width_mm), 1.5);
        let tip = PATIENT.bone(level).frame.inverse().point(PATIENT.level(level).spinous_tip);
        let (_, back) = span(own(level).into_iter().map(|p| p.y));
        // The hatchet's back edge is not square to its axis, on which the landmark lies.
        near(level, "spinous tip", back, tip.y, 2.2);
    }
}

/// Joint space 1.0–1.6 mm: no point of the upper neighbour comes nearer to the lower one's superior process, and some come near.
#[test]
fn joints_are_open_and_narrow() {
    for level in [Level::T12, Level::L1, Level::L2, Level::L3, Level::L4, Level::L5] {
        let below = PATIENT.bone(level.below().unwrap());
        let frame = below.frame.inverse();
        for side in Side::BOTH {
            let facet = PATIENT.level(level.below().unwrap()).side(side).superior_facet;
            let nearest = PATIENT
                .bone(level)
                .outer
                .positions
                .iter()
                .filter(|p| p.as_dvec3().distance(facet) < 12.0)
                .flat_map(|p| {
                    let p = frame.point(p.as_dvec3()).as_vec3();
                    let process = |tag| below.label(tag).part == Part::SuperiorArticularProcess;
                    below
                        .solid
                        .pieces
                        .iter()
                        .filter(move |piece| process(piece.tag))
                        .map(move |piece| piece.sample(p).0)
                })
                .fold(f32::MAX, f32::min);
            assert!((0.9..=1.6).contains(&nearest), "{level} {side}: {nearest}");
        }
    }
}

/// Bones do not run into each other anywhere.
#[test]
fn neighbours_do_not_touch() {
    for spec in PatientSpec::all() {
        let patient = Patient::new(spec);
        for level in [Level::T12, Level::L1, Level::L2, Level::L3, Level::L4, Level::L5] {
            let below = patient.bone(level.below().unwrap());
            let frame = below.frame.inverse();
            let deepest = patient
                .bone(level)
                .outer
                .positions
                .iter()
                .map(|p| below.solid.sample(frame.point(p.as_dvec3()).as_vec3()).distance)
                .fold(f32::MAX, f32::min);
            assert!(deepest > 0.0, "{} {level}: {deepest}", spec.name);
        }
    }
}

/// Tips are on the bone's surface, axis points inside it and nearest to the part that they name, in every patient.
#[test]
fn landmarks_stand_on_the_bone_that_they_name() {
    for spec in PatientSpec::all() {
        let patient = Patient::new(spec);
        for (level, side) in Level::VERTEBRAE.into_iter().flat_map(|l| Side::BOTH.map(|s| (l, s))) {
            let bone = patient.bone(level);
            for (part, point, on_surface) in marks::of_parts(patient.level(level), side) {
                let own = bone.frame.inverse().point(point).as_vec3();
                let sample = bone.solid.sample(own);
                let name = format!("{} {level} {side} {part:?}: {} mm", spec.name, sample.distance);
                assert_eq!(
                    bone.label(bone.solid.pieces[usize::from(sample.nearest)].tag).part,
                    part,
                    "{name}"
                );
                if on_surface {
                    assert!(sample.distance.abs() < 0.15, "{name}");
                } else {
                    assert!(sample.distance < -0.3, "{name}");
                }
            }
        }
    }
}
