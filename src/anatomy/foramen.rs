//! The foramen between two pedicles, and the areas in it that a needle may aim at.
//!
//! - *Ring*: from the lower border of one pedicle to the upper border of the next, and from the posterior wall back to the superior
//!   articular process of the level below.
//! - *Safe triangle* (subpedicular; usual description, attributed to Bogduk: memory): base along the pedicle's lower border, side
//!   down its lateral border, hypotenuse along the root and ganglion. It lies in the plane of the ring's middle. It ends at the pedicle's 6 o'clock,
//!   medial of which no tip may stand before contrast has been seen, so that its medial end is a short upright over the root.
//! - *Infraneural triangle* (usual description after Kambin; foraminal endoscopy reviews: read): base along the upper end
//!   plate of the level below, upright along dura and articular process, hypotenuse along the root. It lies on the back of the disc.
//! - S1: the upper lateral half of the posterior opening of the first sacral foramen (common practice, no source).
//!
//! Column frame, mm. Areas are polygons with their corners in one plane.

use super::landmarks::{LevelLandmarks, Ring};
use super::names::{Level, Side};
use super::nerves::{GANGLION_NODE, Nerve, Nerves, Node, frame_of};
use super::process_top::SECTIONS;
use crate::geometry::frame::Rigid;
use glam::{DVec2, DVec3};
use serde::{Deserialize, Serialize};

/// Which way into the foramen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
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
    let turn = frame.rotation.transpose();
    let front_of = |ring: &Ring| own(ring.centre).y - libm::hypot((turn * ring.across).y, (turn * ring.up).y);
    // The lowest section lies under the foramen.
    let sections = &below.side(side).superior_process_top.sections[..SECTIONS - 1];
    let process = sections.iter().map(front_of).fold(f64::INFINITY, f64::min);
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
    let mut swollen = root.course.clone();
    swollen[GANGLION_NODE].radius_mm = root.ganglion.half_width_mm;
    let below_ring = LOWER_BORDER_MM[level.level.index() - 1].map(|mm| base - mm * k);
    let corners = over_the_root(&offset(&swollen, &own, 1.0), below_ring, [pedicle.x, edge], k);
    let corners = corners.into_iter().map(|p| back_out(DVec3::new(p.x, pedicle.y, p.y))).collect();

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

/// Bone under the pedicle's ring at its 6 o'clock and at its lateral border, L1 … L5, mm: at L5 the pedicle goes over into a broad transverse
/// process. Measured on the mesh of the average.
const LOWER_BORDER_MM: [[f64; 2]; 5] = [[1.2, 0.0], [0.5, 0.0], [0.0, 0.0], [0.0, 0.0], [0.5, 2.2]];

/// Corners of the area between a pedicle's lower border and the root's upper border `above`, from the pedicle's 6 o'clock to its lateral border:
/// heights and places of these two, in the frontal plane (x outwards, z as y).
fn over_the_root(above: &[DVec2], [base, end]: [f64; 2], [six, edge]: [f64; 2], k: f64) -> Vec<DVec2> {
    let mut foot = crossing(above, |p| edge - p.x).unwrap_or(DVec2::new(edge, end - 6.0 * k));
    let mut head = crossing(above, |p| six - p.x).unwrap_or(DVec2::new(six, base));
    // The ganglion may stand up between the two: the line is moved up to it, so that the area stays convex and free of it.
    let slope = (foot.y - head.y) / (foot.x - head.x).max(1e-6);
    let over = |p: &DVec2| p.y - (head.y + slope * (p.x - head.x));
    let most = above.iter().filter(|p| p.x > six && p.x < edge).map(over).fold(0.0, f64::max);
    // However low the root may run, something is left to aim at.
    foot.y = (foot.y + most).min(end - 1.0 * k);
    head.y += most;
    let corner = DVec2::new(edge, end);
    if head.y < base {
        return vec![DVec2::new(six, base), corner, foot, head];
    }
    // The root passes the border only lateral of 6 o'clock.
    let (start, stop) = (head.y - base, end - foot.y);
    let t = start / (start + stop);
    vec![DVec2::new(six, base).lerp(corner, t), corner, foot]
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

    /// Heights under a base at 0, from 6 o'clock at 0 to the lateral border at 6.
    #[test]
    fn the_area_over_a_root_ends_at_6_o_clock_and_over_the_ganglion() {
        let chain = |middle: f64, shift: f64| {
            [(-4.0, 2.0), (3.0, middle), (10.0, -12.0)].map(|(x, y)| DVec2::new(x, y + shift))
        };
        let is = |area: &[DVec2], corners: &[(f64, f64)]| {
            assert_eq!(area.len(), corners.len(), "{area:?}");
            area.iter().zip(corners).for_each(|(p, &q)| assert!(p.distance(q.into()) < 1e-12, "{area:?}"));
        };
        // Straight: from 2 mm under the border to 8.
        let area = over_the_root(&chain(-5.0, 0.0), [0.0; 2], [0.0, 6.0], 1.0);
        is(&area, &[(0.0, 0.0), (6.0, 0.0), (6.0, -8.0), (0.0, -2.0)]);
        // A ganglion that stands up lifts the whole line to it.
        let area = over_the_root(&chain(-4.0, 0.0), [0.0; 2], [0.0, 6.0], 1.0);
        assert!(((area[2].y + area[3].y) / 2.0 + 4.0).abs() < 1e-12, "{area:?}");
        // Higher: a triangle.
        let area = over_the_root(&chain(-5.0, 3.0), [0.0; 2], [0.0, 6.0], 1.0);
        is(&area, &[(1.0, 0.0), (6.0, 0.0), (6.0, -5.0)]);
    }

    #[test]
    fn a_ray_meets_the_plane() {
        let hit = triangle().meets(DVec3::new(3.0, -10.0, -1.0), DVec3::new(0.1, 1.0, 0.0)).unwrap();
        assert!((hit - DVec3::new(4.0, 0.0, -1.0)).length() < 1e-12);
        assert_eq!(triangle().meets(DVec3::NEG_Y, DVec3::X), None);
    }
}
