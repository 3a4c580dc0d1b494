//! The bones: what the dimension table asks of each vertebra, and what its mesh measures.
//!
//! Measured on vertices, middles of edges and centroids of the outer mesh, in the vertebra's own frame, by the same sections as
//! `tests/dimensions.rs`. `null` where nothing is measured and the number is the shape's by construction.

use super::round;
use downbeam::anatomy::dimensions::{self, Vertebra, vertebra};
use downbeam::anatomy::names::{Level, Part, Side};
use downbeam::anatomy::patient::Patient;
use glam::DVec3;
use serde_json::{Value, json};

const LUMBAR: [Level; 5] = [Level::L1, Level::L2, Level::L3, Level::L4, Level::L5];

type Asked = fn(&Vertebra) -> f64;
type Measured = fn(&Section) -> f64;

/// Name, unit, what the table asks, what the mesh measures.
const ROWS: [(&str, &str, Asked, Option<Measured>); 17] = [
    ("upper_width", "mm", |d| d.upper_width_mm, Some(|s| s.plate(true).0)),
    ("upper_depth", "mm", |d| d.upper_depth_mm, Some(|s| s.plate(true).1)),
    ("lower_width", "mm", |d| d.lower_width_mm, Some(|s| s.plate(false).0)),
    ("lower_depth", "mm", |d| d.lower_depth_mm, Some(|s| s.plate(false).1)),
    ("posterior_height", "mm", |d| d.posterior_height_mm, Some(|s| s.heights().1)),
    ("anterior_height", "mm", |d| d.anterior_height_mm, Some(|s| s.heights().0)),
    ("pedicle_width", "mm", |d| d.pedicle_width_mm, Some(|s| s.pedicle().0)),
    ("pedicle_height", "mm", |d| d.pedicle_height_mm, Some(|s| s.pedicle().1)),
    ("pedicle_axial", "degrees", |d| d.pedicle_axial_deg, None),
    ("interpedicular", "mm", |d| d.interpedicular_mm, Some(Section::interpedicular)),
    ("canal_depth", "mm", |d| d.canal_depth_mm, Some(Section::canal_depth)),
    ("facet_plane", "degrees", |d| d.facet_plane_deg, None),
    ("transverse_span", "mm", |d| d.transverse_span_mm, Some(Section::transverse_span)),
    ("spinous_length", "mm", |d| d.spinous_length_mm, None),
    ("spinous_height", "mm", |d| d.spinous_height_mm, None),
    ("lamina_height", "mm", |d| d.lamina_height_mm, None),
    ("wedge", "degrees", |d| d.wedge().to_degrees(), Some(|s| s.wedge().to_degrees())),
];

/// Every row over L1 … L5, and the constants of all levels.
pub(super) fn measured(patient: &Patient) -> Value {
    let sections = LUMBAR.map(|level| Section::of(patient, level));
    let rows: Vec<Value> = ROWS
        .iter()
        .map(|(name, unit, asked, measured)| {
            let asked: Vec<f64> = sections.iter().map(|s| round(asked(&s.d), 1)).collect();
            let measured: Option<Vec<f64>> =
                measured.map(|of| sections.iter().map(|s| round(of(s), 1)).collect());
            json!({ "name": name, "unit": unit, "asked": asked, "measured": measured })
        })
        .collect();
    json!({
        "levels": LUMBAR,
        "rows": rows,
        "upper_sag_mm": dimensions::UPPER_PLATE_SAG_MM,
        "lower_sag_mm": dimensions::LOWER_PLATE_SAG_MM,
        "joint_space_mm": dimensions::JOINT_SPACE_MM,
    })
}

/// How fine the meshes are.
pub(super) fn mesh(patient: &Patient) -> Value {
    let triangles: usize =
        patient.bones.iter().map(|b| b.outer.triangles.len() + b.marrow.triangles.len()).sum();
    let soft: usize = patient.soft_tissue.bodies.iter().map(|b| b.mesh.triangles.len()).sum();
    json!({ "bones": patient.bones.len(), "bone_triangles": triangles, "soft_triangles": soft })
}

/// A vertebra's surface points in its own frame.
struct Section {
    d: Vertebra,
    points: Vec<DVec3>,
    ring: Vec<DVec3>,
}

fn span(points: impl Iterator<Item = f64>) -> (f64, f64) {
    points.fold((f64::MAX, f64::MIN), |(low, high), x| (low.min(x), high.max(x)))
}

fn width(points: impl Iterator<Item = f64>) -> f64 {
    let (low, high) = span(points);
    high - low
}

impl Section {
    fn of(patient: &Patient, level: Level) -> Self {
        let d = vertebra(level).unwrap_or_else(|| unreachable!("{level} is a vertebra"));
        let bone = patient.bone(level);
        let frame = bone.frame.inverse();
        let at = |i: u32| frame.point(bone.outer.positions[i as usize].as_dvec3());
        let of_triangle = |t: &[u32; 3]| {
            let [a, b, c] = t.map(at);
            [(a + b) / 2.0, (b + c) / 2.0, (c + a) / 2.0, (a + b + c) / 3.0]
        };
        let vertices = bone.outer.positions.iter().map(|p| frame.point(p.as_dvec3()));
        let points = vertices.chain(bone.outer.triangles.iter().flat_map(of_triangle)).collect();
        let centre = DVec3::from_array(d.pedicle_centre_mm());
        let pedicle = patient.part_mesh(level, Part::Pedicle, Some(Side::Left));
        let ring = pedicle.map_or_else(Vec::new, |mesh| {
            mesh.positions.iter().map(|p| frame.point(p.as_dvec3()) - centre).collect()
        });
        Self { d, points, ring }
    }

    /// Width in front of the pedicles, and depth between them, 2.5 mm inside the plate, where the rim's rounding ends, mm.
    fn plate(&self, upper: bool) -> (f64, f64) {
        let z = if upper { 1.0 } else { -1.0 } * (self.d.half_height_mm() - 2.5);
        let slice = || self.points.iter().filter(move |p| (p.z - z).abs() < 1.2);
        let between = self.d.interpedicular_mm / 2.0 - 1.0;
        let body = self.d.posterior_rims_mm() + 3.0;
        (
            width(slice().filter(|p| p.y < 3.0).map(|p| p.x)),
            width(slice().filter(|p| p.x.abs() < between && p.y < body).map(|p| p.y)),
        )
    }

    /// Heights at the front and back walls, on the midline: taken 3 mm inside them and carried on along the straight plates, mm.
    fn heights(&self) -> (f64, f64) {
        let height = |y: f64| {
            width(self.points.iter().filter(|p| p.x.abs() < 5.0 && (p.y - y).abs() < 0.8).map(|p| p.z))
        };
        let wall = self.d.posterior_rims_mm();
        let (front, back) = (height(3.0 - wall), height(wall - 3.0));
        let slope = (front - back) / (2.0 * wall - 6.0);
        (front + 3.0 * slope, back - 3.0 * slope)
    }

    fn wedge(&self) -> f64 {
        let (front, back) = self.heights();
        2.0 * libm::atan((front - back) / 2.0 / (2.0 * self.d.posterior_rims_mm()))
    }

    /// The left pedicle's isthmus across and up-down, square to its axis, mm.
    fn pedicle(&self) -> (f64, f64) {
        let (s, c) = libm::sincos(self.d.pedicle_axial_deg.to_radians());
        let (axis, across) = (DVec3::new(s, c, 0.0), DVec3::new(c, -s, 0.0));
        let isthmus = || self.ring.iter().filter(|r| r.dot(axis).abs() < 0.6);
        (width(isthmus().map(|r| r.dot(across))), width(isthmus().map(|r| r.z)))
    }

    /// Twice the left pedicle's medial wall, in the section square to its axis, mm.
    fn interpedicular(&self) -> f64 {
        let (s, c) = libm::sincos(self.d.pedicle_axial_deg.to_radians());
        let near = self.ring.iter().filter(|r| r.z.abs() < 1.5 && (r.x * s + r.y * c).abs() < 0.8);
        2.0 * (self.d.pedicle_centre_mm()[0] + span(near.map(|r| r.x)).0)
    }

    /// Posterior wall to lamina on the midline, mm.
    fn canal_depth(&self) -> f64 {
        let wall = self.d.posterior_rims_mm() + 3.0;
        let lamina = self.points.iter().filter(|p| p.x.abs() < 1.5 && p.y > wall);
        let back = self.points.iter().filter(|p| p.x.abs() < 2.0 && p.z.abs() < 3.0 && p.y < wall);
        span(lamina.map(|p| p.y)).0 - span(back.map(|p| p.y)).1
    }

    fn transverse_span(&self) -> f64 {
        width(self.points.iter().map(|p| p.x))
    }
}
