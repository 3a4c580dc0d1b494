//! The thecal sac, the exiting roots with their ganglia, and the spinal nerves, as courses of points with radii.
//!
//! Each root is laid out in its own vertebra's frame against that vertebra's pedicle: it leaves the sac, passes the pedicle's
//! lower medial border at [`PEDICLE_GAP_MM`], swells to the ganglion under the pedicle, and runs on outwards, forwards and down
//! into the psoas. Column frame, mm, f64.
//!
//! Sources: gap to the pedicle below which a root passes 1.5 (Ebraheim 1997, Spine 22:2338: read) and 1.98 (14 cadavers, Acta
//! Ortop Bras: read); root 3.8–4.6 thick, 34–39 degrees from the midline (Ebraheim 1997: read; 51 degrees against the disc's
//! plane by MRI: read); ganglia (Silav 2016, J Neurosurg Sci 60:339: read), in the medial zone of the foramen at L1–L4 and in
//! the lateral one at L5 (Silverstein 2015, Int J Spine Surg 9:3: read); dura 1.5 and 3.0 from the pedicle's medial wall
//! (Ebraheim 1997; Acta Ortop Bras: read). The course beyond the foramen and the sac's depth: memory.
//!
//! Limits: no roots inside the sac, no variants of roots, left and right are mirror images.

use super::dimensions::Vertebra;
use super::landmarks::LevelLandmarks;
use super::names::{Level, Side};
use crate::geometry::frame::Rigid;
use glam::{DMat3, DVec3};

/// Nearest surface of the root from the pedicle above it. Between the two published means.
pub const PEDICLE_GAP_MM: f64 = 1.75;
/// How far the wall of the whole pedicle stands out past its ring under the root, L1 … L5, mm. Measured (`examples/interior.rs`).
const WALL_BULGE_MM: [f64; 5] = [1.2, 0.2, 0.8, 0.8, 0.9];
/// Dura from the pedicle's medial wall. Within the two published means, at their upper end: the joints narrow the canal too.
const DURA_GAP_MM: f64 = 2.9;
/// Half the sac's depth, share of the bony canal's, and half its width, share of the distance between the pedicles. Derived: fills the front of
/// a canal that is a triangle under two laminae.
const SAC_HALF_DEPTH: f64 = 0.32;
const SAC_HALF_WIDTH: f64 = 0.355;
/// Front of the sac behind the wall's waist at the pedicles, and behind the rims at the discs, mm. Derived.
const SAC_BEHIND_WALL_MM: f64 = 1.1;
const SAC_BEHIND_RIMS_MM: f64 = 0.8;
/// Half the thickness of a root.
const ROOT_RADIUS_MM: f64 = 2.1;
/// Root from the caudal direction in the frontal plane where it passes the pedicle.
const ROOT_DESCENT_DEG: f64 = 39.0;
/// The nerve past its ganglion, likewise. Derived: flatter, since it turns into the psoas.
const NERVE_DESCENT_DEG: f64 = 58.0;
/// Depth of root and ganglion behind the wall's waist, L1 … L5. Derived: the middle of the upper foramen between the body, whose rim stands out
/// below, and the arch.
const ROOT_BEHIND_WALL_MM: [f64; 5] = [4.4, 4.9, 4.8, 4.0, 2.3];
/// Half width of the ganglion, L1 … L5 (Silav 2016).
const GANGLION_HALF_WIDTH_MM: [f64; 5] = [2.18, 2.28, 2.50, 2.61, 2.91];
/// Half length of the ganglion, L1 … L5 (Silav 2016).
const GANGLION_HALF_LENGTH_MM: [f64; 5] = [2.70, 2.92, 3.62, 3.99, 5.42];
/// Ganglion's middle from the pedicle's, in half pedicle widths outwards, L1 … L5 (zones of Silverstein 2015).
const GANGLION_ZONE: [f64; 5] = [-0.30, -0.30, -0.30, -0.25, 0.05];
/// Which point of a lumbar root's course is its ganglion's middle.
pub(super) const GANGLION_NODE: usize = 2;

/// A point of a course.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Node {
    /// Middle, column frame, mm.
    pub point: DVec3,
    /// Half the thickness, mm.
    pub radius_mm: f64,
}

/// Length along a course to its point nearest to `p`, and the distance there, mm.
pub fn nearest(course: &[Node], p: DVec3) -> (f64, f64) {
    let mut walked = 0.0;
    let mut best = (0.0, f64::INFINITY);
    for pair in course.windows(2) {
        let along = pair[1].point - pair[0].point;
        let share = ((p - pair[0].point).dot(along) / along.length_squared()).clamp(0.0, 1.0);
        let distance = p.distance(pair[0].point + along * share);
        if distance < best.1 {
            best = (walked + share * along.length(), distance);
        }
        walked += along.length();
    }
    best
}

/// A swelling of a course.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ganglion {
    /// Middle, column frame, mm.
    pub centre: DVec3,
    /// Unit vector along the root, outwards.
    pub along: DVec3,
    /// mm.
    pub half_length_mm: f64,
    /// mm.
    pub half_width_mm: f64,
}

/// One exiting root and the nerve that it becomes.
#[derive(Clone, Debug, PartialEq)]
pub struct Nerve {
    /// The pedicle under which it leaves.
    pub level: Level,
    /// Side.
    pub side: Side,
    /// From inside the sac outwards.
    pub course: Vec<Node>,
    /// Its ganglion.
    pub ganglion: Ganglion,
}

/// A section of the thecal sac: an ellipse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SacNode {
    /// Middle, column frame, mm.
    pub point: DVec3,
    /// Unit vector to the patient's left.
    pub left: DVec3,
    /// Left-right, mm.
    pub half_width_mm: f64,
    /// Front-back, mm.
    pub half_depth_mm: f64,
}

/// Sac and roots.
#[derive(Clone, Debug, PartialEq)]
pub struct Nerves {
    /// From above T12 down to S2.
    pub sac: Vec<SacNode>,
    /// L1 … S1, left then right each.
    pub roots: Vec<Nerve>,
}

impl Nerves {
    /// The root of a level and side; `None` above L1.
    pub fn root(&self, level: Level, side: Side) -> Option<&Nerve> {
        self.roots.iter().find(|n| n.level == level && n.side == side)
    }
}

/// A vertebra's own frame from its landmarks: origin in the body's centre (S1: the plate's), x left, y posterior, z cranial.
pub(super) fn frame_of(level: &LevelLandmarks) -> Rigid {
    let left = level.upper_plate.left;
    let lower = level.lower_plate.map_or(level.upper_plate.normal, |p| p.normal);
    let up = (level.upper_plate.normal + lower).normalize();
    let origin = if level.lower_plate.is_some() { level.centre } else { level.upper_plate.centre };
    Rigid { rotation: DMat3::from_cols(left, up.cross(left), up), translation: origin }
}

/// Lays them out. `vertebrae` are T12, L1 … L5 at the patient's size `scale`.
pub(super) fn build(levels: &[LevelLandmarks; 7], vertebrae: &[Vertebra; 6], scale: f64) -> Nerves {
    let mut roots = Vec::new();
    let sacrum = frame_of(&levels[6]);
    for i in 1..6 {
        for side in Side::BOTH {
            let over_sacrum = (i == 5).then_some(&sacrum);
            roots.push(lumbar_root(&levels[i], &vertebrae[i], i - 1, side, scale, over_sacrum));
        }
    }
    for side in Side::BOTH {
        roots.push(sacral_root(&levels[6], side, scale));
    }
    Nerves { sac: sac(levels, vertebrae, scale), roots }
}

/// Half axes of the frontal section through a pedicle's isthmus, mm: (across, up). The axis converges, so that the section is wider
/// than the ring.
fn frontal_section(level: &LevelLandmarks, frame: &Rigid, side: Side) -> (f64, f64) {
    let ring = &level.side(side).pedicle;
    let seen = (frame.rotation.transpose() * ring.across).x.abs();
    (ring.across.length_squared() / seen, ring.up.length())
}

/// Where the L5 nerve crosses the front edge of the sacrum's wing, and where it has gone down before it: in the sacrum's frame, left
/// side, mm at average size. Memory.
const OVER_WING_MM: [[f64; 3]; 2] = [[30.0, -14.0, 1.0], [28.0, -23.0, -28.0]];

/// `over_sacrum` is the sacrum's frame for the nerve that runs over it; the others go out into the psoas.
fn lumbar_root(
    level: &LevelLandmarks,
    d: &Vertebra,
    row: usize,
    side: Side,
    k: f64,
    over_sacrum: Option<&Rigid>,
) -> Nerve {
    let frame = frame_of(level);
    let [px, _, pz] = d.pedicle_centre_mm();
    let wall = d.posterior_wall_mm();
    let (across, tall) = frontal_section(level, &frame, side);
    let at = |v: DVec3| frame.point(DVec3::new(v.x * side.sign(), v.y, v.z));
    let radius = ROOT_RADIUS_MM * k;
    let (half_width, half_length) = (GANGLION_HALF_WIDTH_MM[row] * k, GANGLION_HALF_LENGTH_MM[row] * k);

    // The line that passes the pedicle's ellipse at the gap: its support in the direction of the line's normal.
    let (s, c) = libm::sincos(ROOT_DESCENT_DEG.to_radians());
    let support = libm::hypot(across * c, tall * s);
    let off = support + PEDICLE_GAP_MM * k + radius;
    let y = wall + ROOT_BEHIND_WALL_MM[row] * k;
    let passing = DVec3::new(px - c * off, y, pz - s * off);
    let inside_sac = passing + DVec3::new(-s * 5.0, 1.2, c * 5.0) * k;

    // The ganglion hangs under the ring at the same gap.
    let zone = GANGLION_ZONE[row];
    let bottom = pz - tall * libm::sqrt(1.0 - zone * zone);
    let centre = DVec3::new(px + zone * across, y, bottom - PEDICLE_GAP_MM * k - half_width * 1.15);
    let along = (centre - passing).normalize();
    let (s, c) = libm::sincos(NERVE_DESCENT_DEG.to_radians());
    let onwards = |length: f64, forwards: f64| centre + DVec3::new(s * length, -forwards, -c * length) * k;
    // The fifth lumbar nerve turns forwards over the sacrum's wing, which is near below.
    let leaving = match over_sacrum {
        Some(_) => centre + DVec3::new(6.0, -9.0, -3.5) * k,
        None => onwards(half_length / k + 5.0, 1.6),
    };
    let outside = leaving + DVec3::new(9.0, -9.0, -12.0) * k;
    let end = outside + DVec3::new(5.0, -8.0, -24.0) * k;
    // The straight way from the passing to the ganglion would cut the corner under the ring: the whole root moves off by that.
    let pedicle = DVec3::new(px, y, pz);
    let nearest = (0..=24)
        .map(|i| passing.lerp(centre, f64::from(i) / 20.0) - pedicle)
        .map(|r| ellipse_distance(r.x / across, r.z / tall, across, tall) - radius * 1.1)
        .fold(f64::INFINITY, f64::min);
    let moved = DVec3::new(-0.5, 0.0, -0.87) * ((PEDICLE_GAP_MM + WALL_BULGE_MM[row]) * k - nearest).max(0.0);
    let at = |v: DVec3| at(v + moved);
    let node = |p: DVec3, radius_mm: f64| Node { point: at(p), radius_mm };
    let beyond = match over_sacrum {
        Some(sacrum) => OVER_WING_MM.map(|[x, y, z]| Node {
            point: sacrum.point(DVec3::new(x * side.sign(), y, z) * k),
            radius_mm: radius * 1.1,
        }),
        None => [node(outside, radius * 1.1), node(end, radius * 1.1)],
    };
    Nerve {
        level: level.level,
        side,
        course: vec![
            node(inside_sac, radius * 0.8),
            node(passing, radius),
            node(centre, radius * 1.1),
            node(leaving, radius * 1.1),
            beyond[0],
            beyond[1],
        ],
        ganglion: Ganglion {
            centre: at(centre),
            along: frame.direction(DVec3::new(along.x * side.sign(), along.y, along.z)),
            half_length_mm: half_length,
            half_width_mm: half_width,
        },
    }
}

/// First-order distance from an ellipse of half axes `a` and `b`; `u`, `v` are the coordinates over them.
fn ellipse_distance(u: f64, v: f64, a: f64, b: f64) -> f64 {
    let norm = libm::hypot(u, v);
    (norm - 1.0) * norm / libm::hypot(u / a, v / b)
}

/// The first sacral root: along the canal's side through its recess to the first foramen, and out in front. Derived: the middle of those.
fn sacral_root(level: &LevelLandmarks, side: Side, k: f64) -> Nerve {
    let frame = frame_of(level);
    let at = |v: [f64; 3]| frame.point(DVec3::new(v[0] * side.sign(), v[1], v[2]) * k);
    let node = |v: [f64; 3], radius_mm: f64| Node { point: at(v), radius_mm: radius_mm * k };
    let course = vec![
        node([9.0, 22.2, 5.0], 1.9),
        node([13.0, 18.2, -6.0], 2.1),
        node([17.6, 14.4, -21.0], 2.4),
        node([20.6, 11.8, -29.0], 2.4),
        node([23.4, 6.0, -32.0], 2.6),
        node([23.5, -4.0, -33.0], 2.6),
        node([24.0, -16.0, -46.0], 2.6),
    ];
    let centre = at([17.6, 14.4, -21.0]);
    let along = (course[3].point - course[1].point).normalize();
    let ganglion = Ganglion { centre, along, half_length_mm: 5.0 * k, half_width_mm: 2.75 * k };
    Nerve { level: Level::S1, side, course, ganglion }
}

/// Elliptic sections at every pedicle and disc; the sac ends at S2.
fn sac(levels: &[LevelLandmarks; 7], vertebrae: &[Vertebra; 6], k: f64) -> Vec<SacNode> {
    let mut list = Vec::new();
    for (i, d) in vertebrae.iter().enumerate() {
        let frame = frame_of(&levels[i]);
        let [px, py, pz] = d.pedicle_centre_mm();
        let half_depth = d.canal_depth_mm * SAC_HALF_DEPTH;
        let y = d.posterior_wall_mm() + SAC_BEHIND_WALL_MM * k + half_depth;
        // The pedicles' medial walls open backwards by their axial angle; the sac's widest place lies behind the isthmus.
        let (across, _) = frontal_section(&levels[i], &frame, Side::Left);
        let opening = libm::tan(d.pedicle_axial_deg.to_radians()) * (y - py);
        let medial = px - across + opening.max(0.0);
        let half_width = (medial - DURA_GAP_MM * k).min(d.interpedicular_mm * SAC_HALF_WIDTH);
        let mut section = |z: f64, y: f64, wide: f64, deep: f64| {
            list.push(SacNode {
                point: frame.point(DVec3::new(0.0, y, z)),
                left: frame.rotation.x_axis,
                half_width_mm: half_width * wide,
                half_depth_mm: half_depth * deep,
            });
        };
        if i == 0 {
            section(pz + 24.0 * k, y, 0.95, 1.0);
        }
        section(pz, y, 1.0, 1.0);
        // At the disc the rims stand out behind the wall's waist. Where the level has slipped, the sac bends back over the corner below and is
        // narrowed by the arch behind.
        let slip = levels[i].slip_mm;
        let at_disc = d.posterior_rims_mm() + SAC_BEHIND_RIMS_MM * k + half_depth;
        section(-d.half_height_mm(), at_disc + 0.45 * slip, 0.93, 1.0 - 0.9 * slip / d.canal_depth_mm);
    }
    let frame = frame_of(&levels[6]);
    for (y, z, wide, deep) in [(24.5, 0.0, 9.0, 5.4), (24.8, -22.0, 6.2, 3.2), (31.5, -48.0, 3.0, 2.2)] {
        list.push(SacNode {
            point: frame.point(DVec3::new(0.0, y, z) * k),
            left: frame.rotation.x_axis,
            half_width_mm: wide * k,
            half_depth_mm: deep * k,
        });
    }
    list
}
