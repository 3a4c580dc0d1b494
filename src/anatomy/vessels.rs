//! Vessels near the foramina: aorta and caval vein, segmental arteries, veins of the foramina, and now and then a radiculomedullary
//! artery, placed by the patient's seed. Column frame, mm.
//!
//! Sources: radiculomedullary arteries lie in the foramen's upper half in 97 %, 88 % in its upper third, none in the lowest
//! fifth, mostly on the left, from T2 to L3 with 92 % between T8 and L1 (Murthy 2010, Pain Med 11:1756: read). Share of
//! injections with vascular spread 6.1–17.7 % lumbar and 16.5–27.8 % sacral (range quoted in Pain Res Manag 2017, 6426802:
//! read at second hand): the veins' number and thickness are chosen so that a well placed tip meets one about as often
//! (`tests/needle_tissue.rs` counts). Chances by level, courses and calibres: derived or memory.
//!
//! Limits: no vessels of muscles or skin, no variants of the great vessels.

use super::foramen::Foramen;
use super::landmarks::LevelLandmarks;
use super::names::{Level, Side};
use super::nerves::{Node, frame_of};
use super::seeded::Numbers;
use glam::DVec3;
use serde::Serialize;

/// What kind of vessel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the anatomist's")]
pub enum VesselKind {
    Aorta,
    CavalVein,
    SegmentalArtery,
    ForaminalVein,
    RadiculomedullaryArtery,
}

impl VesselKind {
    /// Whether it flows away from the heart.
    pub fn is_artery(self) -> bool {
        matches!(self, Self::Aorta | Self::SegmentalArtery | Self::RadiculomedullaryArtery)
    }
}

/// A vessel.
#[derive(Clone, Debug, PartialEq)]
pub struct Vessel {
    /// What it is.
    pub kind: VesselKind,
    /// The level it belongs to, where it has one.
    pub level: Option<Level>,
    /// Side, where it has one.
    pub side: Option<Side>,
    /// In the direction of its flow.
    pub course: Vec<Node>,
}

/// Chance of a radiculomedullary artery with the root of L1, L2, L3 on the left; the right has a fifth of it. Derived.
const MEDULLARY_CHANCE_LEFT: [f64; 3] = [0.10, 0.05, 0.02];
/// The right's share (20 of 120 counted arteries were on the right: Murthy 2010).
const MEDULLARY_RIGHT_SHARE: f64 = 0.2;
/// Half the calibre of a radiculomedullary artery, mm. Memory: about 1 mm across.
const MEDULLARY_RADIUS_MM: f64 = 0.5;
/// Veins in a lumbar foramen, and their half calibre, mm. Derived, see above.
const LUMBAR_VEINS: (usize, f64) = (2, 0.95);
/// The same at S1.
const SACRAL_VEINS: (usize, f64) = (3, 0.75);

/// Lays them out for a patient of size `k`.
pub(super) fn build(levels: &[LevelLandmarks; 7], foramina: &[Foramen], k: f64, seed: u64) -> Vec<Vessel> {
    let mut list = great_vessels(levels, k);
    for level in &levels[1..6] {
        list.extend(Side::BOTH.map(|side| segmental_artery(level, side, k)));
    }
    for (i, foramen) in foramina.iter().enumerate() {
        // A stream of its own for each foramen, so that one more vessel in one does not move those of the others.
        let mut numbers = Numbers::stream(seed, i as u64);
        list.extend(medullary_artery(foramen, k, &mut numbers));
        list.extend(foraminal_veins(foramen, k, &mut numbers));
    }
    list
}

/// In front of the bodies: the aorta a little left of the midline down to L4, the caval vein right of it up from L5.
fn great_vessels(levels: &[LevelLandmarks; 7], k: f64) -> Vec<Vessel> {
    let front = |level: Level, left: f64, gap: f64, radius: f64| {
        let l = &levels[level.index()];
        let frame = frame_of(l);
        let depth = l.upper_plate.half_depth + (gap + radius) * k;
        Node { point: frame.point(DVec3::new(left * k, -depth, 0.0)), radius_mm: radius * k }
    };
    let aorta = [Level::T12, Level::L1, Level::L2, Level::L3, Level::L4].map(|l| front(l, 8.0, 2.5, 9.0));
    let cava = [Level::L5, Level::L4, Level::L3, Level::L2, Level::L1].map(|l| front(l, -17.0, 2.0, 10.0));
    [(VesselKind::Aorta, aorta), (VesselKind::CavalVein, cava)]
        .map(|(kind, course)| Vessel { kind, level: None, side: None, course: course.to_vec() })
        .to_vec()
}

/// Around the waist of the body, then back beside the foramen.
fn segmental_artery(level: &LevelLandmarks, side: Side, k: f64) -> Vessel {
    let frame = frame_of(level);
    let (wide, deep) = (level.upper_plate.half_width, level.upper_plate.half_depth);
    let at = |x: f64, y: f64, z: f64| Node {
        point: frame.point(DVec3::new(x * side.sign(), y, z)),
        radius_mm: 0.9 * k,
    };
    let z = -2.0 * k;
    // At L5 it is the lumbar branch of the iliolumbar artery, which comes from the side and keeps further out. Memory.
    let beside = if level.level == Level::L5 { 9.0 } else { 2.0 };
    let course = vec![
        at(6.0 * k, -deep - 2.0 * k, z),
        at(0.78 * wide, -0.62 * deep, z),
        at(wide + 0.5 * k, 0.15 * deep, z),
        at(0.93 * wide, 0.75 * deep, z - 2.0 * k),
        at(wide + beside * k, deep + 8.0 * k, z - 6.0 * k),
    ];
    Vessel { kind: VesselKind::SegmentalArtery, level: Some(level.level), side: Some(side), course }
}

/// A point of a foramen: `height` 0 at its bottom to 1 under the pedicle, `depth` 0 in front to 1 behind, `out` mm laterally.
fn inside(foramen: &Foramen, height: f64, depth: f64, out: f64) -> DVec3 {
    let ring = &foramen.ring;
    let outwards = ring.across.cross(ring.up).normalize_or(DVec3::X);
    let outwards = if outwards.x * foramen.side.sign() < 0.0 { -outwards } else { outwards };
    ring.centre + ring.up * (2.0 * height - 1.0) + ring.across * (2.0 * depth - 1.0) + outwards * out
}

fn medullary_artery(foramen: &Foramen, k: f64, numbers: &mut Numbers) -> Option<Vessel> {
    let chance = MEDULLARY_CHANCE_LEFT.get(foramen.level.index().wrapping_sub(1)).copied().unwrap_or(0.0)
        * if foramen.side == Side::Left { 1.0 } else { MEDULLARY_RIGHT_SHARE };
    // Drawn in any case, so that the chance does not move what comes after.
    let (draw, third, within) = (numbers.unit(), numbers.unit(), numbers.unit());
    if draw >= chance {
        return None;
    }
    let height = match third {
        t if t < 0.88 => 1.0 - within / 3.0,
        t if t < 0.97 => 0.5 + within / 6.0,
        _ => 0.2 + 0.3 * within,
    };
    let depth = 0.25 + 0.2 * numbers.unit();
    let course = [(0.0, 14.0), (0.0, 5.0), (0.04, 0.0), (0.1, -6.0), (0.5, -11.0)]
        .map(|(rise, out)| Node {
            point: inside(foramen, (height + rise).min(1.15), depth, out * k),
            radius_mm: MEDULLARY_RADIUS_MM * k,
        })
        .to_vec();
    Some(Vessel {
        kind: VesselKind::RadiculomedullaryArtery,
        level: Some(foramen.level),
        side: Some(foramen.side),
        course,
    })
}

fn foraminal_veins(foramen: &Foramen, k: f64, numbers: &mut Numbers) -> Vec<Vessel> {
    let sacral = foramen.level == Level::S1;
    let (count, radius) = if sacral { SACRAL_VEINS } else { LUMBAR_VEINS };
    (0..count)
        .map(|_| {
            // At S1 the ring is the opening itself and is crossed from front to back.
            let mut draw = || (numbers.unit(), numbers.unit());
            let (start, end) = (draw(), draw());
            let course = if sacral {
                let ring = foramen.ring;
                let back = ring.across.cross(ring.up).normalize_or(DVec3::Y);
                let back = if back.y < 0.0 { -back } else { back };
                // Around the root, along the tunnel's wall: the middle is the root's.
                let at = |(a, b): (f64, f64), way: f64| {
                    let (s, c) = libm::sincos(std::f64::consts::TAU * a);
                    let out = 0.45 + 0.45 * b;
                    ring.centre + ring.across * (c * out) + ring.up * (s * out) + back * (way * k)
                };
                let end = (start.0 + 0.25 * end.0, end.1);
                vec![at(start, -16.0), at(end, -2.0), at(end, 5.0)]
            } else {
                let (low, high) = (0.35 + 0.65 * start.0, 0.35 + 0.65 * end.0);
                vec![
                    inside(foramen, low, 0.15 + 0.7 * start.1, -8.0 * k),
                    inside(foramen, 0.5 * (low + high), 0.15 + 0.35 * (start.1 + end.1), 1.0 * k),
                    inside(foramen, high, 0.15 + 0.7 * end.1, 10.0 * k),
                ]
            };
            Vessel {
                kind: VesselKind::ForaminalVein,
                level: Some(foramen.level),
                side: Some(foramen.side),
                course: course.into_iter().map(|point| Node { point, radius_mm: radius * k }).collect(),
            }
        })
        .collect()
}
