//! What makes a view right, each as one signed number from the projected landmarks.
//!
//! - *squared*: angle between the ray through the end plate's centre and the plate, degrees: `asin(ray · normal)`, > 0 when the
//!   receptor must go cephalad. Also the gap on the detector between the plate's front and back rims, mm.
//! - *spinous centred*: along the plate's image direction (see [`super::image_axes`]), the spinous tip's offset from the midpoint of the pedicle centres
//!   over their spacing, percent; > 0 when the tip stands to the patient's left.
//! - *facet under pedicle*: along the same direction, the offset of the superior articular process of the level below from the
//!   pedicle's centre over the pedicle's projected width, percent, > 0 to the patient's left; and whether its top lies below
//!   the pedicle's 6 o'clock. The process ends in a ridge: where it stands is told by the lateral edge of its outline
//!   [`UNDER_TOP_MM`] under its top ([`super::silhouette`]).
//! - *lateral*: how far apart the two pedicle centres fall, mm at the target's depth; likewise the crests and the edges of the
//!   posterior wall.
//! - *process at mid plate* (the way under the root): the same outline's offset from the middle of its own vertebra's upper end plate, over
//!   half the plate's projected width, percent; *squared below* is said of that plate. Common practice, no source.
//! - *foramen aligned* (S1): anterior over posterior first foramen, mm at the target's depth. Common practice, no source.
//!
//! Rotation from an AP view, with the magnification of each depth taken out: Stokes 1986, Spine 11:702 (formula from memory):
//! `tan t = (w / 2d) (a - b) / (a + b)`.

use super::image_axes::{image_axes, plate_cranial, plate_direction};
use super::silhouette::silhouette;
use crate::anatomy::interior::Interior;
use crate::anatomy::landmarks::{LevelLandmarks, Plate, Ring};
use crate::anatomy::names::{Level, Side};
use crate::imaging::projection::Projection;
use glam::{DVec2, DVec3};
use serde::{Deserialize, Serialize};

/// What the learner aims at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Target {
    /// L1 … L5 or S1.
    pub level: Level,
    /// Which side the needle will come from.
    pub side: Side,
}

/// The name of a criterion.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "described at the top of the module")]
pub enum CriterionId {
    SpinousCentred,
    Squared,
    FacetUnderPedicle,
    Lateral,
    ForamenAligned,
    ProcessAtMidPlate,
    SquaredBelow,
}

impl CriterionId {
    /// In the trade's words.
    pub fn name(self) -> &'static str {
        match self {
            Self::SpinousCentred => "Spinous process centred",
            Self::Squared => "End plate squared",
            Self::FacetUnderPedicle => "Articular process under the pedicle",
            Self::Lateral => "Left and right superimposed",
            Self::ForamenAligned => "Sacral foramina over each other",
            Self::ProcessAtMidPlate => "Articular process at the middle of the end plate",
            Self::SquaredBelow => "End plate below squared",
        }
    }

    /// Unit of the value.
    pub fn unit(self) -> &'static str {
        match self {
            Self::SpinousCentred => "% of pedicle spacing",
            Self::Squared | Self::SquaredBelow => "degrees",
            Self::ProcessAtMidPlate => "% of half the end plate",
            Self::FacetUnderPedicle => "% of pedicle width",
            Self::Lateral | Self::ForamenAligned => "mm",
        }
    }
}

/// Ray against plate, radians, > 0 when the receptor must go cephalad.
pub fn plate_angle(view: &Projection, plate: &Plate) -> f64 {
    // The plate's normal is cranial; a ray that climbs too little against it has a negative dot product.
    -libm::asin(view.ray_to(plate.centre).dot(plate.normal).clamp(-1.0, 1.0))
}

/// Gap between the images of the plate's front and back rim, along the image normal of the plate, mm on the detector.
pub fn rim_gap_mm(view: &Projection, plate: &Plate) -> f64 {
    let front = view.project(plate.centre - plate.back * plate.half_depth);
    let back = view.project(plate.centre + plate.back * plate.half_depth);
    (back - front).perp_dot(plate_direction(view, plate)).abs()
}

/// Spinous tip off the midpoint of the pedicles over their spacing, percent, > 0 to the patient's left. Not a number where the
/// pedicles fall on each other.
pub fn spinous_offset_percent(view: &Projection, level: &LevelLandmarks) -> f64 {
    let axes = image_axes(view, &level.upper_plate);
    let at = |p: DVec3| view.project(p).dot(axes.left);
    let [left, right] = level.sides.map(|s| at(s.pedicle.centre));
    let spacing = left - right;
    if spacing < SPACING_SEEN_MM {
        f64::NAN
    } else {
        100.0 * (at(level.spinous_tip) - 0.5 * (left + right)) / spacing
    }
}

/// Least spacing of the pedicles, mm on the detector, at which a view still counts as one from behind.
const SPACING_SEEN_MM: f64 = 10.0;

/// Stokes' relation for a parallel beam: `a`, `b` are the image distances from the body's centre line to the left and right
/// pedicle, `spacing` between the pedicles and `depth` behind the body's centre (all in the same unit). Radians, > 0 when
/// the left pedicle is nearer the centre line.
pub fn rotation_from_pedicles(a: f64, b: f64, spacing: f64, depth: f64) -> f64 {
    libm::atan(spacing / (2.0 * depth) * (b - a) / (a + b))
}

/// Rotation of a vertebra against the beam from where its pedicles and its body fall on the detector, each first scaled back to
/// its own depth, radians, > 0 when the receptor stands too far to the patient's left.
pub fn implied_rotation(view: &Projection, level: &LevelLandmarks) -> f64 {
    let along = image_axes(view, &level.upper_plate).left;
    let scaled = |p: DVec3| view.project(p).dot(along) / view.magnification_at(p);
    let body =
        0.5 * (level.upper_plate.centre + level.lower_plate.map_or(level.upper_plate.centre, |p| p.centre));
    let [left, right] = level.sides.map(|s| s.pedicle.centre);
    let middle = scaled(body);
    let depth = (0.5 * (left + right) - body).dot(level.upper_plate.back);
    rotation_from_pedicles(scaled(left) - middle, middle - scaled(right), left.distance(right), depth)
}

/// Where the superior articular process of the level below stands against the pedicle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FacetPlace {
    /// Offset of the outline's lateral edge over the pedicle's projected width, percent, > 0 to the patient's left.
    pub offset_percent: f64,
    /// How far the top lies below the pedicle's 6 o'clock, mm on the detector; < 0 when it overlaps the pedicle.
    pub below_mm: f64,
    /// Where the outline begins and ends, to the vertebra's right and left, on the detector, mm.
    pub ends_mm: [DVec2; 2],
}

/// How far under its top the outline of an articular process is taken, mm at the process: where the eye sees it stand. Common practice, no source.
pub const UNDER_TOP_MM: f64 = 3.0;

/// Which point of the process's outline is brought under the pedicle's centre: 0 its middle, 1 its lateral edge. With the edge there the
/// target, lateral of 6 o'clock, is free of the process. On bones of 87 patients and of one man the edge stands there at 20, 22 and 29 degrees at
/// L2 to L4, at 21 at L5, as obliques are taught (L1 15–20 to L5 25–30: memory), the middle at 3, 3, 10 and 4: in a plain AP
/// (`tests/reference/oblique_of_mesh.py`).
const ACROSS_OUTLINE: f64 = 1.0;

/// The facet criterion of a vertebra; `None` on the sacrum.
pub fn facet_place(view: &Projection, interior: &Interior, target: Target) -> Option<FacetPlace> {
    let below = target.level.below()?;
    let level = interior.level(target.level);
    let axes = image_axes(view, &level.upper_plate);
    let pedicle = level.side(target.side).pedicle;
    let (low, high) = ring_span(view, &pedicle, axes.left);
    let (six, _) = ring_span(view, &pedicle, axes.cranial);
    let process = &interior.level(below).side(target.side).superior_process_top;
    let seen = silhouette(view, &axes, process, UNDER_TOP_MM);
    let middle = view.project(pedicle.centre).dot(axes.left);
    let half = 0.5 * (seen.span.1 - seen.span.0);
    let mark = seen.middle() + ACROSS_OUTLINE * half * target.side.sign();
    Some(FacetPlace {
        offset_percent: 100.0 * (mark - middle) / (high - low).max(1e-6),
        below_mm: six - seen.top,
        ends_mm: [seen.span.0, seen.span.1].map(|x| {
            plate_direction(view, &level.upper_plate) * x
                + plate_cranial(view, &level.upper_plate) * seen.line
        }),
    })
}

/// Middle of the outline of the superior articular process below, off the middle of its vertebra's upper end plate, percent of half the plate's projected
/// width, > 0 to the patient's left; `None` on the sacrum.
pub fn process_at_mid_plate_percent(view: &Projection, interior: &Interior, target: Target) -> Option<f64> {
    let below = interior.level(target.level.below()?);
    let plate = &below.upper_plate;
    let axes = image_axes(view, plate);
    let at = |p: DVec3| view.project(p).dot(axes.left);
    let [left, right] = [1.0, -1.0].map(|s| at(plate.centre + plate.left * (s * plate.half_width)));
    let process = &below.side(target.side).superior_process_top;
    let seen = silhouette(view, &axes, process, UNDER_TOP_MM).middle();
    Some(100.0 * (seen - 0.5 * (left + right)) / (0.5 * (left - right)))
}

/// Least and greatest coordinate of a projected ring along an image direction, mm on the detector.
///
/// On the ring the coordinate is `k = (α + β cos + γ sin) / (δ + ε cos + ζ sin)`; it is extreme where
/// `(α - kδ)² = (β - kε)² + (γ - kζ)²`, a quadratic in k.
pub fn ring_span(view: &Projection, ring: &Ring, along: DVec2) -> (f64, f64) {
    let axis = (view.right * along.x + view.up * along.y) * view.sid_mm;
    let r = ring.centre - view.isocentre;
    let (alpha, beta, gamma) = (r.dot(axis), ring.across.dot(axis), ring.up.dot(axis));
    let (delta, epsilon, zeta) = (view.sod_mm + r.dot(view.d), ring.across.dot(view.d), ring.up.dot(view.d));
    let a = delta * delta - epsilon * epsilon - zeta * zeta;
    let b = alpha * delta - beta * epsilon - gamma * zeta;
    let c = alpha * alpha - beta * beta - gamma * gamma;
    let root = libm::sqrt((b * b - a * c).max(0.0));
    ((b - root) / a, (b + root) / a)
}

/// Left against right in a lateral view, mm at the target's depth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LateralPlace {
    /// Left pedicle centre from the right one: [across the vertebra's image, to the right of its cranial direction; along it], mm.
    pub pedicles_mm: [f64; 2],
    /// Left crest top from the right one, same axes, mm.
    pub crests_mm: [f64; 2],
    /// Distance between the images of the left and right edges of the posterior wall, mm.
    pub posterior_wall_mm: f64,
}

impl LateralPlace {
    /// The distance that is scored: between the pedicle centres.
    pub fn apart_mm(&self) -> f64 {
        libm::hypot(self.pedicles_mm[0], self.pedicles_mm[1])
    }
}

/// Where left and right fall in a lateral view.
pub fn lateral_place(view: &Projection, interior: &Interior, level: Level) -> LateralPlace {
    let l = interior.level(level);
    let scale = view.magnification_at(l.centre);
    // The image of the plate's normal: steady from AP to lateral, where the plate's own left shrinks to a point.
    let cranial = plate_cranial(view, &l.upper_plate);
    let across = -cranial.perp();
    let between = |a: DVec3, b: DVec3| {
        let r = (view.project(a) - view.project(b)) / scale;
        [r.dot(across), r.dot(cranial)]
    };
    let [left, right] = l.sides.map(|s| s.pedicle.centre);
    let sacrum = interior.level(Level::S1);
    let crests = sacrum.sides.map(|s| s.crest_top.unwrap_or(sacrum.centre));
    let half_wall = l.upper_plate.left * (l.upper_plate.half_width * 0.6);
    let wall = between(l.posterior_wall + half_wall, l.posterior_wall - half_wall);
    LateralPlace {
        pedicles_mm: between(left, right),
        crests_mm: between(crests[0], crests[1]),
        posterior_wall_mm: wall[0].abs(),
    }
}

/// Anterior first sacral foramen from the posterior one: [to the patient's left, cranial], mm at the sacrum's depth; `None`
/// where the patient's level has no such foramina.
pub fn foramen_offset_mm(view: &Projection, interior: &Interior, side: Side) -> Option<[f64; 2]> {
    let sacrum = interior.level(Level::S1);
    let s = sacrum.side(side);
    let (anterior, posterior) = (s.anterior_foramen?.centre, s.posterior_foramen?.centre);
    let axes = image_axes(view, &sacrum.upper_plate);
    let r = (view.project(anterior) - view.project(posterior)) / view.magnification_at(posterior);
    Some([r.dot(axes.left), r.dot(axes.cranial)])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::imaging::c_arm::CArm;

    #[test]
    fn span_of_a_ring_is_that_of_its_points() {
        let view = Projection::new(&CArm::at_degrees(35.0, -20.0).unwrap(), DVec3::ZERO);
        let ring = Ring {
            centre: DVec3::new(20.0, 15.0, -8.0),
            across: DVec3::new(5.0, -2.0, 0.5),
            up: DVec3::new(1.0, 0.5, 8.0),
        };
        let along = DVec2::new(0.6, 0.8);
        let (low, high) = (0..10_000)
            .map(|i| view.project(ring.point(f64::from(i) * std::f64::consts::TAU / 1e4)).dot(along))
            .fold((f64::MAX, f64::MIN), |(l, h), x| (l.min(x), h.max(x)));
        let span = ring_span(&view, &ring, along);
        assert!((span.0 - low).abs() < 1e-5 && (span.1 - high).abs() < 1e-5, "{span:?} {low} {high}");
    }
}
