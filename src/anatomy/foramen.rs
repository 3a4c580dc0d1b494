//! The foramen between two pedicles, and the areas in it that a needle may aim at.
//!
//! - *Ring*: from the lower border of one pedicle to the upper border of the next, and from the posterior wall back to the superior
//!   articular process of the level below.
//! - *Safe triangle* (subpedicular; usual description, attributed to Bogduk: memory): base along the pedicle's lower border, side
//!   down its lateral border, hypotenuse along the root and ganglion. It lies in the plane of the ring's middle.
//! - *Infraneural triangle* (usual description after Kambin; foraminal endoscopy reviews: read): base along the upper end
//!   plate of the level below, upright along dura and articular process, hypotenuse along the root. It lies on the back of the disc.
//! - S1: the upper lateral half of the posterior opening of the first sacral foramen (common practice, no source).
//!
//! Column frame, mm. Areas are polygons with their corners in one plane.

use super::landmarks::{LevelLandmarks, Ring};
use super::names::{Level, Side};
use super::nerves::{Nerve, Nerves, Node, frame_of};
use crate::geometry::frame::Rigid;
use glam::{DVec2, DVec3};
use serde::{Deserialize, Serialize};

/// Which way into the foramen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Approach {
    /// Under the pedicle, above the root.
    Subpedicular,
    /// Above the disc's lower plate, under the root.
    Infraneural,
}

/// A flat, convex area.
#[derive(Clone, Debug, PartialEq)]
pub struct Area {
    /// Corners in order, column frame, mm.
    pub corners: Vec<DVec3>,
}

impl Area {
    /// Its middle (mean of the corners), mm.
    pub fn centre(&self) -> DVec3 {
        self.corners.iter().sum::<DVec3>() / self.corners.len() as f64
    }

    /// Unit normal, backwards (+y).
    pub fn normal(&self) -> DVec3 {
        let c = &self.corners;
        let n = (c[1] - c[0]).cross(c[2] - c[0]).normalize_or(DVec3::Y);
        if n.y < 0.0 { -n } else { n }
    }

    /// mm².
    pub fn area_mm2(&self) -> f64 {
        let c = &self.corners;
        (1..c.len() - 1).map(|i| (c[i] - c[0]).cross(c[i + 1] - c[0])).sum::<DVec3>().length() / 2.0
    }

    /// Where a ray (point and direction) meets the area's plane; `None` when it runs along it.
    pub fn meets(&self, from: DVec3, ray: DVec3) -> Option<DVec3> {
        let normal = self.normal();
        let climb = ray.dot(normal);
        (climb.abs() > 1e-6).then(|| from + ray * ((self.centre() - from).dot(normal) / climb))
    }

    /// Distance of a point of the plane from the border, mm, negative inside.
    pub fn distance_mm(&self, p: DVec3) -> f64 {
        let (c, normal) = (&self.corners, self.normal());
        let middle = self.centre();
        let (mut outside, mut inside) = (f64::INFINITY, f64::NEG_INFINITY);
        for i in 0..c.len() {
            let (a, b) = (c[i], c[(i + 1) % c.len()]);
            let along = b - a;
            let share = ((p - a).dot(along) / along.length_squared()).clamp(0.0, 1.0);
            outside = outside.min(p.distance(a + along * share));
            let mut out = along.cross(normal).normalize_or(DVec3::X);
            if out.dot(middle - a) > 0.0 {
                out = -out;
            }
            inside = inside.max((p - a).dot(out));
        }
        if inside <= 0.0 { inside } else { outside }
    }
}

/// The foramen under a level's pedicle.
#[derive(Clone, Debug)]
pub struct Foramen {
    /// The pedicle above it.
    pub level: Level,
    /// Side.
    pub side: Side,
    /// Middle, half depth backwards, half height upwards.
    pub ring: Ring,
    /// Under the pedicle; for S1 the upper lateral half of the posterior foramen.
    pub subpedicular: Area,
    /// Above the disc's lower plate; `None` on the sacrum.
    pub infraneural: Option<Area>,
}

impl Foramen {
    /// The area of an approach; the sacrum has but one.
    pub fn area(&self, approach: Approach) -> &Area {
        match (approach, &self.infraneural) {
            (Approach::Infraneural, Some(area)) => area,
            _ => &self.subpedicular,
        }
    }
}

/// The foramina of L1 … S1, left then right each.
pub(super) fn build(levels: &[LevelLandmarks; 7], nerves: &Nerves, scale: f64) -> Vec<Foramen> {
    let mut list = Vec::new();
    for i in 1..7 {
        for side in Side::BOTH {
            let Some(root) = nerves.root(Level::ALL[i], side) else { continue };
            list.push(match levels.get(i + 1) {
                Some(below) => lumbar(&levels[i], below, root, nerves, scale),
                None => sacral(&levels[i], side),
            });
        }
    }
    list
}

/// Half the depth of an articular process in front of its axis at the foramen's height, mm. As in `vertebra`.
const PROCESS_HALF_DEPTH_MM: f64 = 4.9;

/// Room that the traversing root takes beside the sac, mm. Derived from its thickness.
const TRAVERSING_ROOT_MM: f64 = 3.0;

fn lumbar(level: &LevelLandmarks, below: &LevelLandmarks, root: &Nerve, nerves: &Nerves, k: f64) -> Foramen {
    let side = root.side;
    let frame = frame_of(level);
    let own = |p: DVec3| {
        let q = frame.inverse().point(p);
        DVec3::new(q.x * side.sign(), q.y, q.z)
    };
    let back_out = |v: DVec3| frame.point(DVec3::new(v.x * side.sign(), v.y, v.z));

    let (upper, lower) = (level.side(side).pedicle, below.side(side).pedicle);
    let (top, bottom) = (upper.centre - upper.up, lower.centre + lower.up);
    let wall = own(level.posterior_wall).y;
    let process = own(below.side(side).superior_process_tip).y - PROCESS_HALF_DEPTH_MM * k;
    let middle = own((top + bottom) / 2.0);
    // Of a slipped pair the upper wall stands forward of the lower: the front is between them.
    let front = wall + level.slip_mm / 2.0;
    let ring = Ring {
        centre: back_out(DVec3::new(middle.x, (front + process) / 2.0, middle.z)),
        across: frame.direction(DVec3::Y) * ((process - front) / 2.0),
        up: (top - bottom) / 2.0,
    };

    let pedicle = own(upper.centre);
    let half_width = (frame.rotation.transpose() * upper.across).x.abs();
    let base = pedicle.z - upper.up.length();
    let edge = pedicle.x + half_width;
    let above = offset(&root.course, &own, 1.0);
    let inner = crossing(&above, |p| p.y - base).unwrap_or(DVec2::new(pedicle.x - half_width, base));
    let foot = crossing(&above, |p| edge - p.x).unwrap_or(DVec2::new(edge, base - 6.0 * k));
    let corners =
        [inner, DVec2::new(edge, base), foot].map(|p| back_out(DVec3::new(p.x, pedicle.y, p.y))).to_vec();

    // On the back of the disc: its lower edge is the plate below, seen in this level's frame.
    let under = offset(&root.course, &own, -1.0);
    let plate = below.upper_plate;
    let plate_z = own(plate.centre + plate.back * plate.half_depth).z;
    // The upright stands outside dura and traversing root, and not far medial of the pedicle's 6 o'clock.
    let upright =
        (sac_edge(nerves, &frame, plate_z) + TRAVERSING_ROOT_MM * k).max(pedicle.x - 0.5 * half_width);
    let outer = crossing(&under, |p| p.y - plate_z).unwrap_or(DVec2::new(edge + 6.0 * k, plate_z));
    let head = crossing(&under, |p| upright - p.x).map_or(base - 4.0 * k, |p| p.y);
    let lower_wall = wall + level.slip_mm;
    let infraneural = [
        DVec3::new(upright, lower_wall, plate_z),
        DVec3::new(outer.x, lower_wall, outer.y),
        DVec3::new(upright, wall, head),
    ]
    .map(back_out)
    .to_vec();
    Foramen {
        level: level.level,
        side,
        ring,
        subpedicular: Area { corners },
        infraneural: Some(Area { corners: infraneural }),
    }
}

/// A course in the frontal plane (x outwards, z as y), moved by its radius up and outwards (`way` 1) or down and inwards (-1).
fn offset(course: &[Node], own: &impl Fn(DVec3) -> DVec3, way: f64) -> Vec<DVec2> {
    let points: Vec<DVec2> = course.iter().map(|n| own(n.point)).map(|p| DVec2::new(p.x, p.z)).collect();
    (0..points.len())
        .map(|i| {
            let along = points[(i + 1).min(points.len() - 1)] - points[i.saturating_sub(1)];
            let across = DVec2::new(-along.y, along.x).normalize_or(DVec2::Y);
            points[i] + across * (way * course[i].radius_mm)
        })
        .collect()
}

/// Where `f` falls through zero along a chain of points, from > 0 to <= 0.
fn crossing(chain: &[DVec2], f: impl Fn(DVec2) -> f64) -> Option<DVec2> {
    chain.windows(2).find_map(|pair| {
        let (a, b) = (f(pair[0]), f(pair[1]));
        (a > 0.0 && b <= 0.0).then(|| pair[0].lerp(pair[1], a / (a - b)))
    })
}

/// Half width of the sac at a height of a vertebra's frame, mm.
fn sac_edge(nerves: &Nerves, frame: &Rigid, z: f64) -> f64 {
    let inverse = frame.inverse();
    let nearest = nerves.sac.iter().min_by(|a, b| {
        let off = |n: &&super::nerves::SacNode| (inverse.point(n.point).z - z).abs();
        off(a).total_cmp(&off(b))
    });
    nearest.map_or(0.0, |n| n.half_width_mm)
}

/// Corners of a ring that stands for an opening.
const RING_CORNERS: usize = 24;

fn sacral(level: &LevelLandmarks, side: Side) -> Foramen {
    let landmarks = level.side(side);
    let ring = landmarks.posterior_foramen.unwrap_or(landmarks.pedicle);
    let (out, cranial) = (level.upper_plate.left * side.sign(), level.upper_plate.normal);
    let across = if ring.across.dot(out) < 0.0 { -ring.across } else { ring.across };
    let up = if ring.up.dot(cranial) < 0.0 { -ring.up } else { ring.up };
    // The root runs down and out through the opening: the half above and lateral of it is free.
    let corners = (0..=RING_CORNERS / 2)
        .map(|i| std::f64::consts::PI * (i as f64 / (RING_CORNERS / 2) as f64 - 0.25))
        .map(|angle| ring.centre + across * libm::cos(angle) + up * libm::sin(angle))
        .collect();
    Foramen { level: level.level, side, ring, subpedicular: Area { corners }, infraneural: None }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn triangle() -> Area {
        Area { corners: vec![DVec3::ZERO, DVec3::new(6.0, 0.0, 0.0), DVec3::new(6.0, 0.0, -8.0)] }
    }

    #[test]
    fn distances_from_a_right_triangle() {
        let t = triangle();
        assert_eq!(t.area_mm2(), 24.0);
        // The inscribed circle of a 6-8-10 triangle has radius 2; its centre lies 2 mm from both legs.
        assert!((t.distance_mm(DVec3::new(4.0, 0.0, -2.0)) + 2.0).abs() < 1e-12);
        assert!((t.distance_mm(DVec3::new(9.0, 0.0, 4.0)) - 5.0).abs() < 1e-12);
        assert!(t.distance_mm(DVec3::new(6.0, 0.0, -3.0)).abs() < 1e-12);
    }

    #[test]
    fn a_ray_meets_the_plane() {
        let hit = triangle().meets(DVec3::new(3.0, -10.0, -1.0), DVec3::new(0.1, 1.0, 0.0)).unwrap();
        assert!((hit - DVec3::new(4.0, 0.0, -1.0)).length() < 1e-12);
        assert_eq!(triangle().meets(DVec3::NEG_Y, DVec3::X), None);
    }
}
