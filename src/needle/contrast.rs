//! What injected contrast looks like, by the space that the tip lies in, over time: closed bodies with the share of the syringe's
//! strength in each.
//!
//! Contrast never lies even or ends sharp. A body is drawn as shells of the same course, each thinner and shorter than the one before and
//! with its share of the strength, so that edges and ends thin out; its thickness wavers along the way, and wisps run on past its ends.
//! What stays is conserved: the bodies' volumes times their shares sum to what was injected. With time it spreads into the tissue, wider and
//! paler (`MIXING`). In a vessel it runs off with the blood:
//! its strength is flow over blood flow through the section, and it fades when the injection stops. Which space gives which
//! pattern: common practice, no source; speeds, sleeves and shares: derived.
//!
//! Published descriptions that the patterns follow (from memory): a perineural epidurogram outlines the root and the medial border of the
//! pedicles with a gap between them; the first drops lie as a small cloud at the tip; muscle shows feathery streaks.
//!
//! Limits: no resorption, no gravity but in the sac, one tip at a time.

use super::compartment::{Compartment, compartment_at};
use crate::anatomy::interior::Interior;
use crate::anatomy::names::{Level, Side};
use crate::anatomy::nerves::{Node, nearest};
use crate::anatomy::seeded::Numbers;
use crate::anatomy::vessels::VesselKind;
use crate::geometry::mesh::Mesh;
use crate::geometry::pipe::{Section, pipe};
use glam::DVec3;

/// One injection at one place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bolus {
    /// Where the tip was, column frame, mm.
    pub tip: DVec3,
    /// The space it was in.
    pub compartment: Compartment,
    /// Injected so far, ml.
    pub volume_ml: f64,
    /// When it began, s.
    pub begun_s: f64,
    /// When the last drop went in, s.
    pub ended_s: f64,
}

/// A body of contrast.
#[derive(Clone, Debug)]
pub struct Spread {
    /// Closed, column frame, mm.
    pub mesh: Mesh,
    /// Share of the syringe's strength; < 0 takes away what another body has too much.
    pub share: f64,
}

/// Sleeve of contrast around a root, mm at average size.
const SLEEVE_MM: f64 = 0.9;
/// Share of a perineural injection that stays around the root; the rest climbs along the sac.
const ROOT_SHARE: f64 = 0.6;
/// How far out along the nerve it goes at most, mm.
const OUTWARD_REACH_MM: f64 = 34.0;
/// Half width and half depth of the epidural streak, mm.
const STREAK_HALF_MM: [f64; 2] = [1.7, 0.8];
/// Longest epidural streak, mm; more volume makes it thicker.
const STREAK_REACH_MM: f64 = 62.0;
/// Longest streak along a muscle's fibres, mm; more volume makes it thicker.
const LONGEST_STREAK_MM: f64 = 60.0;
/// Speed of blood in an artery, mm/s, and time in which contrast fades by 1/e, s.
const ARTERIAL_BLOOD: (f64, f64) = (160.0, 0.4);
/// The same in a vein: slower, and longer to clear.
const VENOUS_BLOOD: (f64, f64) = (60.0, 1.2);
/// Part of the vessel's section that the stream of contrast fills: blood flows between it and the wall. Derived.
const STREAM_FILLS: f64 = 0.6;
/// Share that runs off where the bevel stands half in a vein.
const MIXED_VENOUS_SHARE: f64 = 0.5;
/// How much wider contrast gets as it mixes with the tissue, and the time in which it does so by 1 - 1/e, s. Derived.
const MIXING: (f64, f64) = (0.35, 45.0);
/// The first drops lie as a cloud at the tip, mm³.
const CLOUD_MM3: f64 = 130.0;
/// Shells of a body: thickness and length over the whole, and their part of the strength.
const SHELLS: [[f64; 3]; 3] = [[1.15, 1.0, 0.22], [0.85, 0.88, 0.36], [0.55, 0.72, 0.42]];
/// A joint's cleft as it holds contrast, half height, width and thickness, mm. Derived: some 0.15 ml.
const CLEFT_HALF_MM: [f64; 3] = [7.0, 5.5, 0.8];
/// Below this share nothing is drawn.
const LEAST_SHARE: f64 = 0.01;
/// Dilution in the sac's fluid.
const SAC_SHARE: f64 = 0.5;
/// Corners of a section.
const SIDES: usize = 14;
/// Corners of a shell's.
const SHELL_SIDES: usize = 9;
/// Spacing of sections, mm.
const SPACING_MM: f64 = 1.2;

impl Bolus {
    /// Nothing yet, at a tip.
    pub fn at(interior: &Interior, tip: DVec3, now_s: f64) -> Self {
        let compartment = compartment_at(interior, tip);
        Self { tip, compartment, volume_ml: 0.0, begun_s: now_s, ended_s: now_s }
    }

    /// Its bodies at a time, s.
    pub fn spread(&self, interior: &Interior, now_s: f64) -> Vec<Spread> {
        let volume = 1000.0 * self.volume_ml;
        if volume <= 0.0 {
            return Vec::new();
        }
        let k = interior.scale;
        let (most, time) = MIXING;
        let wider = 1.0 + most * (1.0 - libm::exp(-(now_s - self.ended_s).max(0.0) / time));
        match self.compartment {
            Compartment::Perineural { level, side } => self.around_root(interior, level, side, volume, wider),
            Compartment::Intravascular { vessel } => self.in_vessel(interior, now_s, vessel, volume),
            Compartment::Mixed { vessel, level, side } => {
                let beside = volume * (1.0 - MIXED_VENOUS_SHARE);
                let mut bodies = self.around_root(interior, level, side, beside, wider);
                bodies.extend(self.in_vessel(interior, now_s, vessel, volume * MIXED_VENOUS_SHARE));
                bodies
            }
            Compartment::Subdural => self.under_dura(interior, volume),
            Compartment::FacetJoint { level, side } => {
                let Some(below) = level.below() else { return Vec::new() };
                let middle = interior.level(below).side(side).superior_facet;
                let plate = &interior.level(below).upper_plate;
                // The joint stands upright; in section it lies between the two planes.
                let out = plate.left * side.sign();
                self.in_joint(middle, plate.normal, (out + plate.back).normalize_or(out), k, volume)
            }
            Compartment::Intrathecal => self.in_sac(interior, volume),
            Compartment::Intraneural { level, side } => {
                let Some(root) = interior.nerves().root(level, side) else { return Vec::new() };
                let radius = 0.55 * root.course[1].radius_mm;
                let length = volume / (std::f64::consts::PI * radius * radius);
                let middle = nearest(&root.course, self.tip).0;
                let line = along(&root.course, middle - 0.4 * length, middle + 0.6 * length);
                feathered(&sections(&line, DVec3::X, |t| [radius * uneven(t); 2]), volume)
            }
            Compartment::Intradiscal { level } => {
                let (Some(above), Some(below)) = (interior.level(level).lower_plate, level.below()) else {
                    return Vec::new();
                };
                let below = interior.level(below).upper_plate;
                let middle = (above.centre + below.centre) / 2.0;
                let gap = above.centre.distance(below.centre);
                self.blob(middle, above.left * 13.0 * k, above.back, [9.0 * k, 0.4 * gap], volume)
            }
            Compartment::Peritoneal => {
                let streaks = [-0.6, -0.1, 0.5].map(|z| (DVec3::new(0.0, -3.0 * z, 9.0 * z) * k, DVec3::X));
                self.streaks(&streaks, [0.8 * k * wider, 2.2 * k * wider], volume)
            }
            Compartment::Muscular | Compartment::Subcutaneous => {
                // The back's muscles run up and inwards, the psoas down and outwards: both within a fifth of upright.
                let outwards = (self.tip.x - interior.level(Level::L4).centre.x).signum();
                let fibre = DVec3::new(-0.18 * outwards, 0.05, 1.0).normalize();
                let streaks = [(0.0, 0.0), (2.2, 1.1), (-1.9, 1.7), (0.9, -2.3), (-2.6, -1.2)]
                    .map(|(x, y)| (DVec3::new(x, y, 0.6 * x - 0.4 * y) * k, fibre));
                self.streaks(&streaks, [0.75 * k * wider, 0.75 * k * wider], volume)
            }
        }
    }

    /// A cloud at the tip first, then a sheath along the root, out past the ganglion and thinning, and a streak up the side of the sac that
    /// clings to the pedicles and is notched between them.
    fn around_root(
        &self,
        interior: &Interior,
        level: Level,
        side: Side,
        volume: f64,
        wider: f64,
    ) -> Vec<Spread> {
        let Some(root) = interior.nerves().root(level, side) else { return Vec::new() };
        let k = interior.scale;
        let mut number =
            Numbers::stream((self.tip.x * 64.0) as i64 as u64, (self.tip.z * 64.0) as i64 as u64);
        // What follows washes a part of the cloud on.
        let first = volume.min(CLOUD_MM3 * k * k * k);
        let cloud = first * (1.0 - 0.6 * (1.0 - first / volume));
        let flows = volume - cloud;
        let (middle, _) = nearest(&root.course, self.tip);
        let mut bodies = self.cloud(cloud, wider, &mut number);
        if flows <= 0.0 {
            return bodies;
        }
        let radius = root.course[1].radius_mm;
        let sheath = ROOT_SHARE * flows;
        let ring = std::f64::consts::PI * SLEEVE_MM * k * (2.0 * radius + SLEEVE_MM * k);
        // Paler than the syringe, and so longer.
        let length = 1.8 * sheath / ring;
        let (inner, outer) =
            ((middle - 0.4 * length).max(0.0), middle + (0.6 * length).clamp(3.0, OUTWARD_REACH_MM * k));
        let line = along(&root.course, inner, outer);
        let ripple = Ripple::new(&mut number);
        // Around the root as a sheath: what the root itself takes is pale.
        let taper = |t: f64| (1.0 - 0.55 * t) * ripple.at(t);
        let sections = sections(&line, DVec3::X, |t| {
            [
                (0.45 * radius + SLEEVE_MM * k) * wider * taper(t),
                (0.8 * radius + SLEEVE_MM * k) * wider * taper(t),
            ]
        });
        let edge = |off: f64| -> Vec<Section> {
            // To either side of the root, as one looks on it from behind.
            sections
                .iter()
                .map(|s| Section { point: s.point + DVec3::new(0.25, 0.0, 1.0) * (off * radius), ..*s })
                .collect()
        };
        for (off, part) in [(0.75, 0.36), (-0.75, 0.36), (0.0, 0.18)] {
            bodies.extend(feathered(&edge(off), sheath * part));
        }
        bodies.extend(wisps(&line, 0.8 * k, sheath * 0.1, &mut number));
        bodies.extend(self.beside_sac(
            interior,
            side,
            root.course[0].point,
            flows - sheath,
            wider,
            &mut number,
        ));
        bodies
    }

    /// A small cloud of lumps.
    fn cloud(&self, volume: f64, wider: f64, number: &mut Numbers) -> Vec<Spread> {
        let reach = 0.75 * libm::cbrt(volume * 2.2) * wider;
        let lumps: Vec<(DVec3, f64)> = (0..7)
            .map(|_| {
                let mut off = || (number.unit() - 0.5) * 1.7 * reach;
                (DVec3::new(1.2 * off(), 0.8 * off(), off()), reach * (0.3 + 0.5 * number.unit()))
            })
            .collect();
        let whole: f64 = lumps.iter().map(|(_, r)| r * r * r).sum();
        lumps
            .iter()
            .flat_map(|&(off, r)| {
                let slant = DVec3::new(0.5, 0.1, 0.8);
                let list: Vec<Section> = (0..=8)
                    .map(|i| {
                        let t = f64::from(i) / 4.0 - 1.0;
                        let half = r * libm::sqrt((1.0 - t * t).max(0.01));
                        Section {
                            point: self.tip + off + slant * (t * r),
                            wide: DVec3::Y,
                            half_mm: [half, half],
                        }
                    })
                    .collect();
                feathered(&list, volume * r * r * r / whole)
            })
            .collect()
    }

    /// Three quarters up from the root's shoulder, one down; wide where a pedicle's medial wall holds it, notched between.
    fn beside_sac(
        &self,
        interior: &Interior,
        side: Side,
        shoulder: DVec3,
        volume: f64,
        wider: f64,
        number: &mut Numbers,
    ) -> Vec<Spread> {
        let k = interior.scale;
        let [wide, deep] = STREAK_HALF_MM.map(|h| h * k);
        let reach = (volume / (std::f64::consts::PI * wide * deep)).clamp(4.0, STREAK_REACH_MM * k);
        // From one pedicle (1) to the next, at the disc between them 0.
        let held = |z: f64| {
            let near = Level::ALL
                .iter()
                .map(|&l| (z - interior.level(l).side(side).pedicle.centre.z).abs())
                .fold(f64::INFINITY, f64::min);
            libm::exp(-(near / (9.0 * k)) * (near / (9.0 * k)))
        };
        let course: Vec<Node> = interior
            .nerves()
            .sac
            .iter()
            .rev()
            .map(|n| Node { point: n.point + n.left * (side.sign() * n.half_width_mm), radius_mm: 1.0 })
            .collect();
        let (start, _) = nearest(&course, shoulder);
        let ripple = Ripple::new(number);
        let mut line = along(&course, start - 0.25 * reach, start + 0.75 * reach);
        for node in &mut line {
            // Out to the pedicle's wall, back towards the sac between.
            node.point.x += side.sign() * wide * (1.3 * held(node.point.z) - 0.5);
        }
        let heights: Vec<f64> = line.iter().map(|n| n.point.z).collect();
        let last = heights.len().saturating_sub(1).max(1) as f64;
        let list = sections(&line, DVec3::X, |t| {
            let z = heights.get(libm::round(t * last) as usize).copied().unwrap_or(0.0);
            let swell = (0.35 + 0.95 * held(z)) * ripple.at(t);
            [wide * wider * swell, deep * wider * swell]
        });
        let mut bodies = feathered(&list, volume * 0.88);
        bodies.extend(wisps(&line, 0.7 * k, volume * 0.12, number));
        bodies
    }

    fn in_vessel(&self, interior: &Interior, now_s: f64, kind: VesselKind, volume: f64) -> Vec<Spread> {
        let nearest_vessel = interior
            .vessels()
            .iter()
            .filter(|v| v.kind == kind)
            .min_by(|a, b| nearest(&a.course, self.tip).1.total_cmp(&nearest(&b.course, self.tip).1));
        let Some(vessel) = nearest_vessel else { return Vec::new() };
        let (start, _) = nearest(&vessel.course, self.tip);
        let (speed, fading) = if kind.is_artery() { ARTERIAL_BLOOD } else { VENOUS_BLOOD };
        let (front, tail) = (speed * (now_s - self.begun_s), speed * (now_s - self.ended_s).max(0.0) * 0.5);
        // Past the drawn course it goes on as it went.
        let mut course = vessel.course.clone();
        if let [.., a, b] = course[..] {
            let on = (b.point - a.point).normalize_or(DVec3::Z) * 60.0;
            course.push(Node { point: b.point + on, ..b });
        }
        let line = along(&course, start + tail, start + front.max(2.0));
        let radius = vessel.course[0].radius_mm;
        let area = std::f64::consts::PI * radius * radius;
        let lasting = (self.ended_s - self.begun_s).max(0.2);
        let strength = (volume / lasting / (area * speed)).min(1.0);
        let share = strength * libm::exp(-(now_s - self.ended_s).max(0.0) / fading);
        if share < LEAST_SHARE {
            return Vec::new();
        }
        // Front and tail run out to points, faster in the middle of the vessel than at its wall.
        let list =
            sections(&line, DVec3::X, |t| [radius * libm::sqrt((6.0 * t * (1.0 - t)).clamp(0.02, 1.0)); 2]);
        let filled = pipe(&list, SIDES).map_or(0.0, |mesh| mesh.volume());
        feathered(&list, STREAM_FILLS * share * filled)
    }

    /// Between the two processes; what the cleft does not hold bulges into the capsule's recesses above and below. `up` and `wide` lie in
    /// the joint's plane.
    fn in_joint(&self, middle: DVec3, up: DVec3, wide: DVec3, k: f64, volume: f64) -> Vec<Spread> {
        let [tall, broad, thin] = CLEFT_HALF_MM.map(|h| h * k);
        let holds = 4.0 / 3.0 * std::f64::consts::PI * tall * broad * thin;
        let mut bodies = self.blob(middle, up * tall, wide, [broad, thin], volume.min(holds));
        let rest = (volume - holds) / 2.0;
        if rest > 0.0 {
            for way in [1.0, -1.0] {
                let recess = middle + up * (way * 1.15 * tall);
                bodies.extend(self.blob(recess, up * (0.6 * tall), wide, [0.8 * broad, 3.0 * thin], rest));
            }
        }
        bodies
    }

    /// Under the dura on the needle's side: a narrow band that holds together.
    fn under_dura(&self, interior: &Interior, volume: f64) -> Vec<Spread> {
        let sac = &interior.nerves().sac;
        let Some(here) =
            sac.iter().min_by(|a, b| a.point.distance(self.tip).total_cmp(&b.point.distance(self.tip)))
        else {
            return Vec::new();
        };
        let side = (self.tip - here.point).dot(here.left).signum();
        let k = interior.scale;
        let course: Vec<Node> = sac
            .iter()
            .map(|n| Node { point: n.point + n.left * (side * (n.half_width_mm - 1.2 * k)), radius_mm: 1.0 })
            .collect();
        let (middle, _) = nearest(&course, self.tip);
        let half = [1.5 * k, 2.8 * k];
        let length = (1.4 * volume / (std::f64::consts::PI * half[0] * half[1])).clamp(6.0, 60.0 * k);
        let line = along(&course, middle - 0.5 * length, middle + 0.5 * length);
        feathered(&sections(&line, DVec3::X, |t| half.map(|h| h * (0.75 + 0.25 * uneven(t)))), volume)
    }

    /// At the front of the sac, where it sinks to in a prone patient.
    fn in_sac(&self, interior: &Interior, volume: f64) -> Vec<Spread> {
        let course: Vec<Node> = interior
            .nerves()
            .sac
            .iter()
            .map(|n| {
                let front = n.left.cross(DVec3::Z).normalize_or(DVec3::Y);
                let front = if front.y > 0.0 { -front } else { front };
                Node { point: n.point + front * (0.5 * n.half_depth_mm), radius_mm: 0.8 * n.half_width_mm }
            })
            .collect();
        let (middle, _) = nearest(&course, self.tip);
        let node = course[1];
        let deep = 0.4;
        let area = std::f64::consts::PI * node.radius_mm * node.radius_mm * deep;
        let length = volume / SAC_SHARE / area;
        let line = along(&course, middle - 0.5 * length - 4.0, middle + 0.5 * length + 4.0);
        let radii: Vec<f64> = line.iter().map(|n| n.radius_mm).collect();
        let list: Vec<Section> = line
            .iter()
            .zip(&radii)
            .map(|(n, r)| Section { point: n.point, wide: DVec3::X, half_mm: [*r, deep * r] })
            .collect();
        feathered(&list, volume)
    }

    /// An egg of the given half axes, scaled so that the contrast in it is undiluted when it is full.
    fn blob(&self, middle: DVec3, half: DVec3, wide: DVec3, across: [f64; 2], volume: f64) -> Vec<Spread> {
        let full = 4.0 / 3.0 * std::f64::consts::PI * half.length() * across[0] * across[1];
        let scale = libm::cbrt((volume / full).min(1.0));
        let list: Vec<Section> = (0..=12)
            .map(|i| {
                let t = f64::from(i) / 6.0 - 1.0;
                let r = libm::sqrt((1.0 - t * t).max(0.004)) * scale;
                Section { point: middle + half * (t * scale), wide, half_mm: across.map(|a| a * r) }
            })
            .collect();
        feathered(&list, volume)
    }

    /// Spindles through the tip's surroundings.
    fn streaks(&self, streaks: &[(DVec3, DVec3)], half: [f64; 2], volume: f64) -> Vec<Spread> {
        let each = volume / streaks.len() as f64;
        // A spindle of round profile holds two thirds of its cylinder.
        let length = (each / (std::f64::consts::PI * half[0] * half[1] * 2.0 / 3.0)).min(LONGEST_STREAK_MM);
        streaks
            .iter()
            .flat_map(|&(off, direction)| {
                let list: Vec<Section> = (0..=10)
                    .map(|i| {
                        let t = f64::from(i) / 5.0 - 1.0;
                        let r = libm::sqrt((1.0 - t * t).max(0.01));
                        Section {
                            point: self.tip + off + direction * (0.5 * length * t),
                            wide: DVec3::Y,
                            half_mm: half.map(|h| h * r * uneven(0.5 + 0.5 * t)),
                        }
                    })
                    .collect();
                feathered(&list, each)
            })
            .collect()
    }
}

/// Contrast never lies even: a ripple of the thickness along the way, mean 1.
fn uneven(t: f64) -> f64 {
    1.0 + 0.22 * libm::sin(23.0 * t) + 0.13 * libm::sin(51.0 * t + 1.0)
}

/// How thickness wavers along a body, by chance of its own: mean about 1.
struct Ripple([[f64; 2]; 4]);

impl Ripple {
    fn new(number: &mut Numbers) -> Self {
        Self(
            [5.0, 11.0, 23.0, 41.0]
                .map(|waves| [waves * (0.8 + 0.4 * number.unit()), std::f64::consts::TAU * number.unit()]),
        )
    }

    fn at(&self, t: f64) -> f64 {
        let strength = [0.24, 0.22, 0.17, 0.12];
        1.0 + self.0.iter().zip(strength).map(|([w, p], a)| a * libm::sin(w * t + p)).sum::<f64>()
    }
}

/// Shells of one course that hold the given volume, mm³ ([`SHELLS`]), tapering at both ends.
fn feathered(sections: &[Section], volume: f64) -> Vec<Spread> {
    let last = sections.len().saturating_sub(1).max(1) as f64;
    let shell = |[thick, long, _]: [f64; 3], grow: f64| -> Option<Mesh> {
        let list: Vec<Section> = sections
            .iter()
            .enumerate()
            .filter_map(|(i, s)| {
                let t = 2.0 * i as f64 / last - 1.0;
                let within = t / long;
                // A shell ends where its taper does.
                (within.abs() <= 1.0).then(|| {
                    let taper = libm::sqrt((1.0 - within * within).max(0.004));
                    Section { half_mm: s.half_mm.map(|h| h * thick * grow * taper), ..*s }
                })
            })
            .collect();
        pipe(&list, SHELL_SIDES)
    };
    let shells = |grow: f64| -> Vec<(Mesh, f64)> {
        SHELLS.iter().filter_map(|&s| shell(s, grow).map(|mesh| (mesh, s[2]))).collect()
    };
    let room =
        |shells: &[(Mesh, f64)]| -> f64 { shells.iter().map(|(mesh, part)| mesh.volume() * part).sum() };
    let mut meshes = shells(1.0);
    let mut whole = room(&meshes);
    if whole <= 0.0 {
        return Vec::new();
    }
    // Thicker where there is not room enough: undiluted is the most.
    if volume > whole {
        meshes = shells(libm::sqrt(volume / whole));
        whole = room(&meshes);
    }
    meshes.into_iter().map(|(mesh, part)| Spread { mesh, share: part * volume / whole }).collect()
}

/// Thin streaks that leave a course near its ends.
fn wisps(line: &[Node], half_mm: f64, volume: f64, number: &mut Numbers) -> Vec<Spread> {
    const COUNT: usize = 4;
    let (Some(first), Some(last)) = (line.first(), line.last()) else { return Vec::new() };
    let along = (last.point - first.point).normalize_or(DVec3::Z);
    (0..COUNT)
        .flat_map(|i| {
            let (end, way) = if i % 2 == 0 { (last.point, along) } else { (first.point, -along) };
            let mut any = || number.unit() - 0.5;
            let turned = (way + DVec3::new(any(), 0.6 * any(), any()) * 1.1).normalize_or(way);
            let start = end - way * (3.0 + 4.0 * number.unit());
            let length = (4.0 + 6.0 * number.unit()) * half_mm.max(0.3) / 0.7;
            let list: Vec<Section> = (0..=6)
                .map(|j| {
                    let t = f64::from(j) / 6.0;
                    let half = half_mm * (0.55 - 0.4 * t);
                    Section { point: start + turned * (length * t), wide: DVec3::Y, half_mm: [half, half] }
                })
                .collect();
            feathered(&list, volume / COUNT as f64)
        })
        .collect()
}

/// The course from one length to another, cut at its ends, with points no more than [`SPACING_MM`] apart.
fn along(course: &[Node], from_mm: f64, to_mm: f64) -> Vec<Node> {
    let mut list = Vec::new();
    let mut walked = 0.0;
    for pair in course.windows(2) {
        let length = pair[0].point.distance(pair[1].point);
        let (low, high) = ((from_mm - walked).max(0.0), (to_mm - walked).min(length));
        if high > low {
            let count = libm::ceil((high - low) / SPACING_MM).max(1.0) as usize;
            for i in 0..=count {
                if i == 0 && !list.is_empty() {
                    continue;
                }
                let t = (low + (high - low) * i as f64 / count as f64) / length;
                list.push(Node {
                    point: pair[0].point.lerp(pair[1].point, t),
                    radius_mm: pair[0].radius_mm + t * (pair[1].radius_mm - pair[0].radius_mm),
                });
            }
        }
        walked += length;
    }
    list
}

/// Sections of a line, half axes by share of the way.
fn sections(line: &[Node], wide: DVec3, half: impl Fn(f64) -> [f64; 2]) -> Vec<Section> {
    let last = line.len().saturating_sub(1).max(1) as f64;
    line.iter()
        .enumerate()
        .map(|(i, n)| Section { point: n.point, wide, half_mm: half(i as f64 / last) })
        .collect()
}
