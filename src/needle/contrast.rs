//! What injected contrast looks like, by the space that the tip lies in, over time: closed bodies with the share of the syringe's
//! strength in each.
//!
//! What stays is conserved: the bodies' volumes times their shares sum to what was injected. In a vessel it runs off with the blood:
//! its strength is flow over blood flow through the section, and it fades when the injection stops. Which space gives which
//! pattern: common practice, no source; speeds, sleeves and shares: derived.
//!
//! Limits: no diffusion, no gravity but in the sac, one tip at a time.

use super::compartment::{Compartment, compartment_at};
use crate::anatomy::interior::Interior;
use crate::anatomy::names::{Level, Side};
use crate::anatomy::nerves::{Node, nearest};
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
/// Share that runs off where the bevel stands half in a vein.
const MIXED_VENOUS_SHARE: f64 = 0.5;
/// Below this share nothing is drawn.
const LEAST_SHARE: f64 = 0.01;
/// Dilution in the sac's fluid.
const SAC_SHARE: f64 = 0.5;
/// Corners of a section.
const SIDES: usize = 14;
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
        match self.compartment {
            Compartment::Perineural { level, side } => self.around_root(interior, level, side, volume),
            Compartment::Intravascular { vessel } => self.in_vessel(interior, now_s, vessel, volume),
            Compartment::Mixed { vessel, level, side } => {
                let mut bodies = self.around_root(interior, level, side, volume * (1.0 - MIXED_VENOUS_SHARE));
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
                self.blob(
                    middle,
                    plate.normal * (6.5 * k),
                    (out + plate.back).normalize_or(out),
                    [5.5 * k, 0.9 * k],
                    volume,
                )
            }
            Compartment::Intrathecal => self.in_sac(interior, volume),
            Compartment::Intraneural { level, side } => {
                let Some(root) = interior.nerves.root(level, side) else { return Vec::new() };
                let radius = 0.55 * root.course[1].radius_mm;
                let length = volume / (std::f64::consts::PI * radius * radius);
                let middle = nearest(&root.course, self.tip).0;
                let line = along(&root.course, middle - 0.4 * length, middle + 0.6 * length);
                filled(&sections(&line, DVec3::X, |_| [radius; 2]), volume)
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
                self.streaks(&streaks, [0.8 * k, 2.2 * k], volume)
            }
            Compartment::Muscular | Compartment::Subcutaneous => {
                // The back's muscles run up and inwards, the psoas down and outwards: both within a fifth of upright.
                let outwards = (self.tip.x - interior.level(Level::L4).centre.x).signum();
                let fibre = DVec3::new(-0.18 * outwards, 0.05, 1.0).normalize();
                let streaks = [(0.0, 0.0), (2.2, 1.1), (-1.9, 1.7), (0.9, -2.3), (-2.6, -1.2)]
                    .map(|(x, y)| (DVec3::new(x, y, 0.6 * x - 0.4 * y) * k, fibre));
                self.streaks(&streaks, [0.75 * k, 0.75 * k], volume)
            }
        }
    }

    /// A sleeve around the root, the root itself left out, and a streak up the side of the sac.
    fn around_root(&self, interior: &Interior, level: Level, side: Side, volume: f64) -> Vec<Spread> {
        let Some(root) = interior.nerves.root(level, side) else { return Vec::new() };
        let k = interior.scale;
        let (middle, _) = nearest(&root.course, self.tip);
        let radius = root.course[1].radius_mm;
        let area =
            std::f64::consts::PI * ((radius + SLEEVE_MM * k) * (radius + SLEEVE_MM * k) - radius * radius);
        let length = ROOT_SHARE * volume / area;
        let (inner, outer) =
            ((middle - 0.4 * length).max(0.0), middle + (0.6 * length).min(OUTWARD_REACH_MM * k));
        let line = along(&root.course, inner, outer);
        let mut bodies = Vec::new();
        let fade = |t: f64| libm::sqrt((4.0 * t * (1.0 - t)).clamp(0.0, 1.0)) * uneven(t);
        let sleeve = pipe(&sections(&line, DVec3::X, |t| [radius + SLEEVE_MM * k * fade(t); 2]), SIDES);
        let core = pipe(&sections(&line, DVec3::X, |_| [radius * 0.98; 2]), SIDES);
        let mut held = 0.0;
        if let (Some(sleeve), Some(core)) = (sleeve, core) {
            held = sleeve.volume() - core.volume();
            bodies.push(Spread { mesh: sleeve, share: 1.0 });
            bodies.push(Spread { mesh: core, share: -1.0 });
        }
        let rest = volume - held;
        if rest <= 0.0 {
            // So little that the sleeve is thinner than drawn: all of it there, paler.
            let share = volume / held.max(1e-9);
            bodies.iter_mut().for_each(|b| b.share *= share);
            return bodies;
        }
        let [wide, deep] = STREAK_HALF_MM.map(|h| h * k);
        let reach = (rest / (std::f64::consts::PI * wide * deep)).clamp(4.0, STREAK_REACH_MM * k);
        // Beside the sac from the root's shoulder: three quarters up, one down.
        let course: Vec<Node> = interior
            .nerves
            .sac
            .iter()
            .rev()
            .map(|n| {
                let out = n.left * (side.sign() * (n.half_width_mm + 0.5 * wide));
                Node { point: n.point + out, radius_mm: 1.0 }
            })
            .collect();
        let (start, _) = nearest(&course, root.course[0].point);
        let line = along(&course, start - 0.25 * reach, start + 0.75 * reach);
        let swell = |t: f64| (0.2 + 0.8 * libm::sqrt((4.0 * t * (1.0 - t)).clamp(0.0, 1.0))) * uneven(t);
        bodies.extend(filled(&sections(&line, DVec3::X, |t| [wide * swell(t), deep * swell(t)]), rest));
        bodies
    }

    fn in_vessel(&self, interior: &Interior, now_s: f64, kind: VesselKind, volume: f64) -> Vec<Spread> {
        let nearest_vessel = interior
            .vessels
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
        let mesh = pipe(&sections(&line, DVec3::X, |_| [radius; 2]), SIDES);
        mesh.into_iter().map(|mesh| Spread { mesh, share }).collect()
    }

    /// Under the dura on the needle's side: a narrow band that holds together.
    fn under_dura(&self, interior: &Interior, volume: f64) -> Vec<Spread> {
        let sac = &interior.nerves.sac;
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
        let half = [1.1 * k, 2.4 * k];
        let length = (volume / (std::f64::consts::PI * half[0] * half[1])).clamp(6.0, 80.0 * k);
        filled(
            &sections(&along(&course, middle - 0.5 * length, middle + 0.5 * length), DVec3::X, |_| half),
            volume,
        )
    }

    /// At the front of the sac, where it sinks to in a prone patient.
    fn in_sac(&self, interior: &Interior, volume: f64) -> Vec<Spread> {
        let course: Vec<Node> = interior
            .nerves
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
        filled(&list, volume)
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
        filled(&list, volume)
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
                            half_mm: half.map(|h| h * r),
                        }
                    })
                    .collect();
                filled(&list, each)
            })
            .collect()
    }
}

/// Contrast never lies even: a ripple of the thickness along the way, mean 1.
fn uneven(t: f64) -> f64 {
    1.0 + 0.22 * libm::sin(23.0 * t) + 0.13 * libm::sin(51.0 * t + 1.0)
}

/// A pipe that holds the given volume, mm³: paler than the syringe where there is room, and thicker where there is not.
fn filled(sections: &[Section], volume: f64) -> Vec<Spread> {
    let Some(mesh) = pipe(sections, SIDES) else { return Vec::new() };
    let share = volume / mesh.volume().max(1e-9);
    if share <= 1.0 {
        return vec![Spread { mesh, share }];
    }
    let grow = libm::sqrt(share);
    let thicker: Vec<Section> =
        sections.iter().map(|s| Section { half_mm: s.half_mm.map(|h| h * grow), ..*s }).collect();
    let Some(mesh) = pipe(&thicker, SIDES) else { return Vec::new() };
    let share = volume / mesh.volume().max(1e-9);
    vec![Spread { mesh, share }]
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
