//! A needle in the patient: its path under the skin, its roll, and what moving it does.
//!
//! Inside, the shaft lies where the tip has been; outside it is straight, the hub above the entry. Withdrawing follows the path
//! back. Re-angling the hub turns the whole needle about the skin while it is shallow; deeper, tissue holds the tip and the turn
//! fades along the shaft (a beam in an elastic bed: decay length derived).
//!
//! The tip is stepped by at most six tenths of the nearest distance that the fields give, which never passes a surface
//! (`geometry::sdf`), and the last step onto bone is bisected: no order and no size of steps gets through bone.
//!
//! Limits: the tip is a point, the bevel a direction; tissue is one medium; an old track does not guide a new one.

use super::contact::{Contact, ContactKind, of_kind, with_tissue};
use super::device::{Device, Medium};
use super::motion::{Tip, spun};
use crate::anatomy::interior::Interior;
use crate::anatomy::tissues::{Inside, Probe};
use crate::geometry::frame::rotation_about;
use glam::DVec3;

/// A point of the path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PathNode {
    /// Length of path from the skin, mm.
    pub arc_mm: f64,
    /// There.
    pub tip: Tip,
    /// Curvature of the piece that ends here, 1/mm.
    curvature_per_mm: f64,
    /// Roll of its drift, radians.
    drift_roll_rad: f64,
}

/// A needle at or under the skin.
#[derive(Clone, Debug)]
pub struct Needle {
    /// Which.
    pub device: Device,
    /// Where it goes in, column frame, mm.
    pub entry: DVec3,
    /// Roll of the notch about the needle, radians, 0 towards the head, > 0 clockwise as the operator looks down on the hub.
    pub roll_rad: f64,
    path: Vec<PathNode>,
    inside: Inside,
    /// Tissue number of the bone that the tip rests on.
    resting_on: Option<usize>,
    through_peritoneum: bool,
}

/// Longest step, mm.
const LONGEST_STEP_MM: f64 = 2.0;
/// Shortest step in the open, mm: well under the thickness of the thinnest vessel.
const SHORTEST_STEP_MM: f64 = 0.1;
/// Distances beyond this are bounded, not asked for, mm.
const PROBE_REACH_MM: f64 = 4.0;
/// A tip on bone stands this far off its surface, mm.
const BONE_GAP_MM: f64 = 0.01;
/// Away from bone by this much the contact is over, mm.
const LEFT_BONE_MM: f64 = 0.3;
/// A tip that meets bone within this angle of the surface slides along it, radians. Derived.
const GLANCING_RAD: f64 = 0.17;
/// The same when the notch faces the bone, so that the bevel lifts the tip off, radians. Derived.
const GLANCING_LIFTED_RAD: f64 = 0.45;
/// How fast a sliding tip turns along the bone, radians a mm. Derived.
const SLIDE_TURN_PER_MM: f64 = 0.05;
/// Step of a sliding tip, mm.
const SLIDE_STEP_MM: f64 = 0.25;
/// Up to this depth the needle turns as a whole, mm; from [`HELD_MM`] on it is held. Derived.
const SHALLOW_MM: f64 = 20.0;
/// See [`SHALLOW_MM`].
const HELD_MM: f64 = 50.0;
/// Where it is held, the turn fades along the shaft by 1/e in this length, mm. Derived.
const FADE_MM: f64 = 15.0;
/// Largest turn at once while looking out for bone, radians.
const TURN_STEP_RAD: f64 = 0.005;

impl Needle {
    /// At the skin, looking along `direction`.
    pub fn at_skin(device: Device, entry: DVec3, direction: DVec3) -> Self {
        let tip = Tip::looking(entry, direction, DVec3::Z);
        let node = PathNode { arc_mm: 0.0, tip, curvature_per_mm: 0.0, drift_roll_rad: 0.0 };
        Self {
            device,
            entry,
            roll_rad: 0.0,
            path: vec![node],
            inside: Inside::new(),
            resting_on: None,
            through_peritoneum: false,
        }
    }

    /// Points of the path from the skin to the tip, at least one.
    pub fn path(&self) -> &[PathNode] {
        &self.path
    }

    fn last(&self) -> &PathNode {
        // Never empty: withdrawing stops at the skin.
        &self.path[self.path.len() - 1]
    }

    /// The tip.
    pub fn tip(&self) -> Tip {
        self.last().tip
    }

    /// Length under the skin, mm.
    pub fn depth_mm(&self) -> f64 {
        self.last().arc_mm
    }

    /// Unit direction of the part outside, into the patient.
    pub fn direction(&self) -> DVec3 {
        self.path[0].tip.axis()
    }

    /// Where shaft and hub meet, column frame, mm.
    pub fn hub(&self) -> DVec3 {
        self.entry - self.direction() * (f64::from(self.device.length_mm) - self.depth_mm())
    }

    /// Unit direction of the notch at the tip; the tip drifts the other way.
    pub fn notch(&self) -> DVec3 {
        self.tip().across(self.roll_rad)
    }

    /// Unit direction of the notch at the hub.
    pub fn notch_at_hub(&self) -> DVec3 {
        self.path[0].tip.across(self.roll_rad)
    }

    /// Whether the tip rests on bone.
    pub fn on_bone(&self) -> bool {
        self.resting_on.is_some()
    }

    /// Turns the hub, radians, > 0 clockwise from above.
    pub fn turn(&mut self, radians: f64) {
        let turn = std::f64::consts::TAU;
        self.roll_rad = libm::fmod(self.roll_rad + radians, turn);
        if self.roll_rad < 0.0 {
            self.roll_rad += turn;
        }
    }

    /// Pushes the needle by `length_mm` (what is left of its length at most), spinning for a share `duty` of the way.
    /// Returns what the tip met, in order.
    pub fn advance(
        &mut self,
        interior: &Interior,
        medium: Medium,
        length_mm: f64,
        duty: f64,
    ) -> Vec<Contact> {
        let mut contacts = Vec::new();
        let left = f64::from(self.device.length_mm) - self.depth_mm();
        let mut remaining = length_mm.clamp(0.0, left.max(0.0));
        let curvature = spun(self.device.gauge.curvature_per_mm(medium), duty);
        if self.depth_mm() == 0.0 && remaining > 0.0 {
            contacts.push(of_kind(ContactKind::Skin, self.entry, 0.0));
        }
        let mut around = Inside::new();
        let mut probe = interior.tissues().probe(self.tip().position, PROBE_REACH_MM, &mut around);
        while remaining > 1e-9 {
            let here = *self.last();
            if self.resting_on.is_some() && probe.bone.1 < LEFT_BONE_MM {
                let slid = self.slide(interior, probe.bone.0, remaining, duty);
                if slid == 0.0 {
                    break;
                }
                remaining -= slid;
                let bone = interior.tissues().nearest_bone(self.tip().position, PROBE_REACH_MM);
                probe = self.note(interior, &here, bone, &mut around, &mut contacts);
                continue;
            }
            let clear = 0.6 * probe.bone.1.min(probe.soft_mm);
            let step = clear.clamp(SHORTEST_STEP_MM, LONGEST_STEP_MM).min(remaining);
            // Away from the notch.
            let drift = self.roll_rad + std::f64::consts::PI;
            let moved = |length: f64| here.tip.advanced(length, curvature, drift);
            let bone_mm = |tip: &Tip| interior.tissues().nearest_bone(tip.position, PROBE_REACH_MM);
            let mut length = step;
            let mut bone_hit = None;
            let (bone, distance) = bone_mm(&moved(step));
            let mut at_tip = (bone, distance);
            if distance < BONE_GAP_MM {
                let (mut free, mut stuck) = (0.0, step);
                for _ in 0..20 {
                    let middle = 0.5 * (free + stuck);
                    if bone_mm(&moved(middle)).1 < BONE_GAP_MM { stuck = middle } else { free = middle }
                }
                (length, bone_hit) = (free, Some(bone));
                at_tip = bone_mm(&moved(free));
            }
            self.push(moved(length), length, curvature, drift);
            remaining -= length;
            probe = self.note(interior, &here, at_tip, &mut around, &mut contacts);
            if let Some(bone) = bone_hit {
                if self.resting_on != Some(bone) {
                    let last = self.last();
                    contacts.push(with_tissue(interior, bone, last.tip.position, last.arc_mm));
                }
                self.resting_on = Some(bone);
            } else if self.resting_on.is_some() && distance > LEFT_BONE_MM {
                self.resting_on = None;
            }
        }
        contacts
    }

    fn push(&mut self, tip: Tip, length_mm: f64, curvature_per_mm: f64, drift_roll_rad: f64) {
        if length_mm > 0.0 {
            let arc_mm = self.depth_mm() + length_mm;
            self.path.push(PathNode { arc_mm, tip, curvature_per_mm, drift_roll_rad });
        }
    }

    /// Slides along the bone that the tip rests on, where it meets it flat enough; returns how far, 0 when it does not.
    fn slide(&mut self, interior: &Interior, bone: usize, remaining: f64, duty: f64) -> f64 {
        let here = *self.last();
        let tissue = &interior.tissues().list[bone];
        let normal = tissue.normal(here.tip.position);
        let into = -here.tip.axis().dot(normal);
        let (tip, step) = if into <= 0.0 {
            // Pointing away already: an ordinary step, of the shortest kind, leaves the surface.
            let step = SHORTEST_STEP_MM.min(remaining);
            (Tip { position: here.tip.position + here.tip.axis() * step, ..here.tip }, step)
        } else {
            let lifted = self.notch().dot(normal) < -0.3 && duty < 0.5;
            if libm::asin(into.min(1.0)) > if lifted { GLANCING_LIFTED_RAD } else { GLANCING_RAD } {
                return 0.0;
            }
            let step = SLIDE_STEP_MM.min(remaining);
            let along = (here.tip.axis() + normal * into).normalize();
            let mut position = here.tip.position + along * step;
            // Back onto the surface, from either side.
            for _ in 0..3 {
                position += normal * (BONE_GAP_MM - tissue.distance_mm(position));
            }
            if position.distance(here.tip.position) > 2.0 * step {
                return 0.0;
            }
            let turn = (SLIDE_TURN_PER_MM * step).min(libm::asin(into.min(1.0)));
            let axis = (here.tip.axis() + normal * libm::tan(turn)).normalize();
            (Tip::looking(position, axis, here.tip.frame.x_axis), step)
        };
        // Another bone, or an edge of this one, may stand in the way of either.
        if in_bone(interior, here.tip.position, tip.position) {
            return 0.0;
        }
        self.push(tip, step, 0.0, 0.0);
        step
    }

    /// Notes the soft tissues that the tip came into on its way from `before`, and gives what is around it now; `bone` is the nearest one.
    fn note(
        &mut self,
        interior: &Interior,
        before: &PathNode,
        bone: (usize, f64),
        around: &mut Inside,
        contacts: &mut Vec<Contact>,
    ) -> Probe {
        let now = *self.last();
        let (from, to) = (before.tip.position, now.tip.position);
        let fascia = &interior.trunk.fascia;
        if fascia.distance_mm(from) >= 0.0 && fascia.distance_mm(to) < 0.0 {
            contacts.push(of_kind(ContactKind::Fascia, to, now.arc_mm));
        }
        let probe = interior.tissues().probe_beside(bone, to, PROBE_REACH_MM, around);
        for &index in around.iter() {
            if !self.inside.contains(&index) {
                contacts.push(with_tissue(interior, index, to, now.arc_mm));
            }
        }
        std::mem::swap(&mut self.inside, around);
        let through = interior.tissues().peritoneum_mm(to) < 0.0;
        if through && !self.through_peritoneum {
            contacts.push(of_kind(ContactKind::Peritoneum, to, now.arc_mm));
        }
        self.through_peritoneum = through;
        probe
    }

    /// Draws the needle back along its path by `length_mm`, to the skin at most.
    pub fn withdraw(&mut self, interior: &Interior, length_mm: f64) {
        let goal = (self.depth_mm() - length_mm.max(0.0)).max(0.0);
        while self.path.len() > 1 && self.path[self.path.len() - 2].arc_mm > goal - 1e-9 {
            self.path.pop();
        }
        if self.path.len() > 1 && self.depth_mm() > goal + 1e-9 {
            // Part of the last piece stays.
            let piece = *self.last();
            self.path.pop();
            let start = *self.last();
            let tip = if piece.curvature_per_mm == 0.0 {
                let share = (goal - start.arc_mm) / (piece.arc_mm - start.arc_mm);
                Tip { position: start.tip.position.lerp(piece.tip.position, share), ..start.tip }
            } else {
                start.tip.advanced(goal - start.arc_mm, piece.curvature_per_mm, piece.drift_roll_rad)
            };
            self.path.push(PathNode { arc_mm: goal, tip, ..piece });
        }
        self.settle(interior);
    }

    /// Looks around without noting contacts.
    fn settle(&mut self, interior: &Interior) {
        let position = self.tip().position;
        let probe = interior.tissues().probe(position, PROBE_REACH_MM, &mut self.inside);
        self.resting_on = (probe.bone.1 < 2.0 * BONE_GAP_MM).then_some(probe.bone.0);
        self.through_peritoneum = interior.tissues().peritoneum_mm(position) < 0.0;
    }

    /// Share of a turn of the hub that the needle follows as a whole.
    fn freedom(&self) -> f64 {
        ((HELD_MM - self.depth_mm()) / (HELD_MM - SHALLOW_MM)).clamp(0.0, 1.0)
    }

    /// Turns the outside part about the skin by `radians` around a unit `axis` (column frame). Bone in the way of the shaft stops
    /// the turn; returns the angle that was made.
    pub fn re_angle(&mut self, interior: &Interior, axis: DVec3, radians: f64) -> f64 {
        let mut made = 0.0;
        while (radians - made).abs() > 1e-12 {
            let step = (radians - made).clamp(-TURN_STEP_RAD, TURN_STEP_RAD);
            let turned = self.turned(axis, step);
            if turned.windows(2).any(|w| in_bone(interior, w[0].tip.position, w[1].tip.position)) {
                break;
            }
            self.path = turned;
            made += step;
        }
        self.settle(interior);
        made
    }

    /// The path with its directions turned, at the skin in full and further in by what the tissue allows.
    fn turned(&self, axis: DVec3, radians: f64) -> Vec<PathNode> {
        let free = self.freedom();
        let share = |arc: f64| free + (1.0 - free) * libm::exp(-arc / FADE_MM);
        let mut path: Vec<PathNode> = Vec::with_capacity(self.path.len());
        for (i, node) in self.path.iter().enumerate() {
            let turn = rotation_about(axis, radians * share(node.arc_mm));
            let position = match i.checked_sub(1) {
                None => node.tip.position,
                Some(before) => {
                    // Each piece is turned by the mean of its ends.
                    let middle = 0.5 * (self.path[before].arc_mm + node.arc_mm);
                    let piece = rotation_about(axis, radians * share(middle));
                    path[before].tip.position + piece * (node.tip.position - self.path[before].tip.position)
                }
            };
            path.push(PathNode { tip: Tip { position, frame: turn * node.tip.frame }, ..*node });
        }
        path
    }
}

/// Whether the way from one node to the next is in bone: its end, or by more than a tip's gap anything between.
fn in_bone(interior: &Interior, from: DVec3, to: DVec3) -> bool {
    let bone_mm = |p: DVec3| interior.tissues().nearest_bone(p, PROBE_REACH_MM).1;
    let length = from.distance(to);
    let mut walked = 0.0;
    while walked < length {
        let distance = bone_mm(from.lerp(to, walked / length));
        if distance < -BONE_GAP_MM {
            return true;
        }
        walked += (0.6 * distance).max(SHORTEST_STEP_MM);
    }
    bone_mm(to) < 0.0
}
