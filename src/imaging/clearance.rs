//! Whether the C-arm has room: receptor and source housing against table and patient.
//!
//! Four convex bodies. The housings are round drums about the beam's axis, the table is a slab that carries the patient, the trunk
//! is the skin's elliptic cylinder between seat and shoulders. Two of them are apart by the length of the shortest vector of
//! their Minkowski difference A - B, which is found from support points alone (Gilbert, Johnson & Keerthi 1988, IEEE J Robot Autom
//! 4:193: from memory): with `s` the point of A - B furthest against `v`, the next `v` is the point nearest to the origin of the
//! simplex of `s` and the corners that carried the last `v`, and `v·s / |v| ≤ distance ≤ |v|` says when it is decided.
//!
//! Sizes of housings and table and the room that must stay: common practice, no source. Limits: the C itself, arms, legs and
//! head are not bodies here, and the skin's outline is the same all along the trunk.

use super::c_arm::CArm;
use crate::anatomy::soft_tissue::Trunk;
use glam::{DVec2, DVec3};

/// Half the receptor's breadth, mm.
pub const RECEPTOR_RADIUS_MM: f64 = 155.0;
/// How far the receptor's housing reaches behind its face, mm.
pub const RECEPTOR_DEEP_MM: f64 = 200.0;
/// Half the breadth of the source's housing, mm.
pub const SOURCE_RADIUS_MM: f64 = 95.0;
/// How far the source's housing reaches from the focal spot to the patient (collimator) and away from it, mm.
pub const SOURCE_REACH_MM: (f64, f64) = (40.0, 80.0);
/// Half the table's width, mm.
pub const TABLE_HALF_WIDTH_MM: f64 = 260.0;
/// The table's thickness, mm.
pub const TABLE_THICK_MM: f64 = 45.0;
/// How far the table reaches from the target to the feet and to the head, mm.
pub const TABLE_REACH_MM: (f64, f64) = (1050.0, 900.0);
/// How far the trunk reaches from the target to the feet and to the head, mm.
const TRUNK_REACH_MM: (f64, f64) = (330.0, 520.0);
/// Room that must stay between a housing and table or patient, mm.
const ROOM_MM: f64 = 20.0;

/// A step of a turn that is looked at, degrees, and of a move of the table, mm. Less than the room that must stay.
const STEP_DEG: f64 = 1.0;
const STEP_MM: f64 = 5.0;
/// Furthest that the table is moved to make room, mm.
const WAY_OUT_MM: i32 = 200;
/// Points tried before the shortest vector is taken as it is, and how near to it is near enough, mm.
const TRIES: usize = 64;
const CLOSE_MM: f64 = 0.01;

/// What turns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Housing {
    Receptor,
    Source,
}

/// What lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Obstacle {
    Patient,
    Table,
}

/// Where the table can be moved to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum TableWay {
    Down,
    Up,
    Left,
    Right,
    Head,
    Feet,
}

impl TableWay {
    /// All of them, that which is tried first at an equal way foremost.
    pub const ALL: [Self; 6] = [Self::Down, Self::Up, Self::Left, Self::Right, Self::Head, Self::Feet];

    /// As a direction, patient axes.
    pub fn direction(self) -> DVec3 {
        match self {
            Self::Down => -DVec3::Y,
            Self::Up => DVec3::Y,
            Self::Left => DVec3::X,
            Self::Right => -DVec3::X,
            Self::Head => DVec3::Z,
            Self::Feet => -DVec3::Z,
        }
    }
}

/// What would hit what, and the shortest move of the table after which it would not.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Hit {
    /// What turns.
    pub housing: Housing,
    /// What it would come to.
    pub obstacle: Obstacle,
    /// Which way to move the table; none where no move within reach makes room.
    pub table: Option<TableWay>,
    /// By how much, mm; 0 with none.
    pub by_mm: f64,
}

/// How far a way is free.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// Where it ends, to a tenth of a degree and of a millimetre.
    pub arm: CArm,
    /// What stopped it.
    pub hit: Option<Hit>,
}

/// What lies under the C-arm, about the target, which a table that stands at nothing brings to the isocentre.
#[derive(Clone, Copy, Debug)]
pub struct Lying {
    /// Middle of the trunk's section across and in height, mm.
    trunk_centre_mm: DVec2,
    /// Half its width and depth, mm.
    trunk_half_mm: DVec2,
}

/// A convex body by its support points.
#[derive(Clone, Copy, Debug)]
enum Convex {
    /// A round drum: middle, half axis, radius.
    Drum(DVec3, DVec3, f64),
    /// A box along the axes: middle, half edges.
    Box(DVec3, DVec3),
    /// An elliptic cylinder along z: middle, half axes.
    Oval(DVec3, DVec3),
}

impl Convex {
    /// The point furthest along a direction.
    fn support(&self, n: DVec3) -> DVec3 {
        let end = |x: f64, half: f64| if x < 0.0 { -half } else { half };
        match *self {
            Self::Drum(middle, axis, radius) => {
                let along = axis.normalize_or(DVec3::Y);
                let across = (n - along * n.dot(along)).normalize_or_zero();
                middle + if n.dot(axis) < 0.0 { -axis } else { axis } + across * radius
            }
            Self::Box(middle, half) => {
                middle + DVec3::new(end(n.x, half.x), end(n.y, half.y), end(n.z, half.z))
            }
            Self::Oval(middle, half) => {
                let h = DVec2::new(half.x, half.y);
                let edge = h * (h * n.truncate()).normalize_or_zero();
                middle + edge.extend(end(n.z, half.z))
            }
        }
    }

    fn middle(&self) -> DVec3 {
        match *self {
            Self::Drum(middle, ..) | Self::Box(middle, _) | Self::Oval(middle, _) => middle,
        }
    }
}

/// Whether two bodies are nearer to each other than `limit_mm`.
fn nearer(a: &Convex, b: &Convex, limit_mm: f64) -> bool {
    let mut v = a.middle() - b.middle();
    let mut corners: Vec<DVec3> = Vec::with_capacity(4);
    for _ in 0..TRIES {
        let length = v.length();
        if length < limit_mm {
            return true;
        }
        let s = a.support(-v) - b.support(v);
        let least = v.dot(s) / length;
        if least >= limit_mm {
            return false;
        }
        if length - least < CLOSE_MM {
            break;
        }
        corners.push(s);
        v = shortest(&mut corners);
    }
    v.length() < limit_mm
}

/// The point nearest to the origin of the simplex of up to four corners; keeps those corners of whose face it is.
fn shortest(corners: &mut Vec<DVec3>) -> DVec3 {
    let n = corners.len();
    if let [a, b, c, d] = corners[..] {
        // The origin lies within when it is on the inner side of all four faces.
        let inner = |a: DVec3, b: DVec3, c: DVec3, d: DVec3| {
            let normal = (b - a).cross(c - a);
            normal.dot(d - a) * normal.dot(-a) > 0.0
        };
        if inner(a, b, c, d) && inner(b, c, d, a) && inner(c, d, a, b) && inner(d, a, b, c) {
            return DVec3::ZERO;
        }
    }
    let mut best = (DVec3::INFINITY, Vec::new());
    let mut offer = |p: DVec3, of: &[DVec3]| {
        if p.length_squared() < best.0.length_squared() {
            best = (p, of.to_vec());
        }
    };
    for i in 0..n {
        offer(corners[i], &[corners[i]]);
        for j in i + 1..n {
            let (a, b) = (corners[i], corners[j]);
            let t = -a.dot(b - a) / (b - a).length_squared();
            if t > 0.0 && t < 1.0 {
                offer(a + (b - a) * t, &[a, b]);
            }
            for &c in &corners[j + 1..] {
                let normal = (b - a).cross(c - a);
                let p = normal * (a.dot(normal) / normal.length_squared());
                let side = |a: DVec3, b: DVec3| (b - a).cross(p - a).dot(normal) > 0.0;
                if side(a, b) && side(b, c) && side(c, a) {
                    offer(p, &[a, b, c]);
                }
            }
        }
    }
    *corners = best.1;
    best.0
}

impl Lying {
    /// A patient whose target's middle is `centre`, column frame, mm.
    pub fn new(trunk: &Trunk, centre: DVec3) -> Self {
        let [x, y] = trunk.skin.centre_mm;
        Self {
            trunk_centre_mm: DVec2::new(x, y) - centre.truncate(),
            trunk_half_mm: DVec2::from_array(trunk.skin.half_mm),
        }
    }

    /// Height of the table's top against the target, mm: the belly lies on it.
    pub fn table_top_mm(&self) -> f64 {
        self.trunk_centre_mm.y - self.trunk_half_mm.y
    }

    fn bodies(&self, shift: DVec3) -> [(Obstacle, Convex); 2] {
        let span = |(feet, head): (f64, f64)| (0.5 * (head - feet), 0.5 * (head + feet));
        let (trunk_z, trunk_long) = span(TRUNK_REACH_MM);
        let trunk =
            Convex::Oval(self.trunk_centre_mm.extend(trunk_z) + shift, self.trunk_half_mm.extend(trunk_long));
        let (table_z, table_long) = span(TABLE_REACH_MM);
        let slab = Convex::Box(
            DVec3::new(self.trunk_centre_mm.x, self.table_top_mm() - 0.5 * TABLE_THICK_MM, table_z) + shift,
            DVec3::new(TABLE_HALF_WIDTH_MM, 0.5 * TABLE_THICK_MM, table_long),
        );
        [(Obstacle::Patient, trunk), (Obstacle::Table, slab)]
    }

    /// What is too near as the C-arm stands, if anything.
    fn touching(&self, arm: &CArm) -> Option<(Housing, Obstacle)> {
        let bodies = self.bodies(arm.table_shift_mm);
        for (housing, drum) in housings(arm) {
            for (obstacle, body) in &bodies {
                if nearer(&drum, body, ROOM_MM) {
                    return Some((housing, *obstacle));
                }
            }
        }
        None
    }

    /// What is too near as the C-arm stands, and how to make room.
    pub fn hit(&self, arm: &CArm) -> Option<Hit> {
        let (housing, obstacle) = self.touching(arm)?;
        let freed = |by: i32, way: TableWay| {
            let table_shift_mm = arm.table_shift_mm + way.direction() * f64::from(by);
            self.touching(&CArm { table_shift_mm, ..*arm }).is_none()
        };
        let way_out = (5..=WAY_OUT_MM)
            .step_by(5)
            .find_map(|by| TableWay::ALL.into_iter().find(|&way| freed(by, way)).map(|way| (way, by)));
        let by_mm = way_out.map_or(0.0, |(_, by)| f64::from(by));
        Some(Hit { housing, obstacle, table: way_out.map(|(way, _)| way), by_mm })
    }

    /// How far the way from one place to another is free. Who already stands too near may go anywhere.
    pub fn reach(&self, from: &CArm, to: &CArm) -> Reach {
        let turn =
            (to.oblique_rad - from.oblique_rad).abs().max((to.tilt_rad - from.tilt_rad).abs()).to_degrees();
        let moved = (to.table_shift_mm - from.table_shift_mm).abs().max_element();
        let steps = libm::ceil((turn / STEP_DEG).max(moved / STEP_MM)).max(1.0);
        if self.touching(from).is_some() {
            return Reach { arm: *to, hit: None };
        }
        let mut last = *from;
        for step in 1..=steps as usize {
            let at = if step as f64 == steps { *to } else { between(from, to, step as f64 / steps) };
            if self.touching(&at).is_some() {
                return Reach { arm: last, hit: self.hit(&at) };
            }
            last = at;
        }
        Reach { arm: *to, hit: None }
    }
}

/// Receptor and source about the isocentre.
fn housings(arm: &CArm) -> [(Housing, Convex); 2] {
    let d = arm.receptor_direction();
    let drum = |from: f64, to: f64, radius: f64| {
        Convex::Drum(d * (0.5 * (from + to)), d * (0.5 * (to - from).abs()), radius)
    };
    let face = arm.sid_mm - arm.sod_mm;
    let (near, far) = SOURCE_REACH_MM;
    [
        (Housing::Receptor, drum(face, face + RECEPTOR_DEEP_MM, RECEPTOR_RADIUS_MM)),
        (Housing::Source, drum(near - arm.sod_mm, -far - arm.sod_mm, SOURCE_RADIUS_MM)),
    ]
}

/// A place on the way, to a tenth.
fn between(from: &CArm, to: &CArm, share: f64) -> CArm {
    let tenth = |value: f64| libm::round(value * 10.0) / 10.0;
    let angle = |a: f64, b: f64| tenth((a + (b - a) * share).to_degrees()).to_radians();
    let shift = from.table_shift_mm + (to.table_shift_mm - from.table_shift_mm) * share;
    CArm {
        oblique_rad: angle(from.oblique_rad, to.oblique_rad),
        tilt_rad: angle(from.tilt_rad, to.tilt_rad),
        table_shift_mm: DVec3::new(tenth(shift.x), tenth(shift.y), tenth(shift.z)),
        ..*to
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::interior::Interior;
    use crate::anatomy::names::Level;
    use crate::anatomy::patient::PatientSpec;
    use proptest::prelude::*;

    fn average() -> Lying {
        let interior = &Interior::of(&PatientSpec::named("average").unwrap());
        Lying::new(&interior.trunk, interior.level(Level::L4).centre)
    }

    /// Worked by hand: two boxes 30 mm apart, and a drum of radius 10 over a box's top by 25.
    #[test]
    fn distances_of_worked_cases() {
        let a = Convex::Box(DVec3::ZERO, DVec3::splat(10.0));
        let b = Convex::Box(DVec3::new(50.0, 0.0, 0.0), DVec3::splat(10.0));
        assert!(nearer(&a, &b, 30.1) && !nearer(&a, &b, 29.9));
        let drum = Convex::Drum(DVec3::new(0.0, 45.0, 0.0), DVec3::X * 5.0, 10.0);
        assert!(nearer(&a, &drum, 25.1) && !nearer(&a, &drum, 24.9));
        let oval = Convex::Oval(DVec3::new(100.0, 0.0, 3.0), DVec3::new(60.0, 20.0, 500.0));
        assert!(nearer(&a, &oval, 30.1) && !nearer(&a, &oval, 29.9));
        assert!(nearer(&a, &Convex::Box(DVec3::splat(8.0), DVec3::splat(3.0)), 0.5));
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        /// Against points strewn over both bodies: no pair of points is nearer than bodies said to be apart, and bodies said to
        /// be near have points almost as near.
        #[test]
        fn agrees_with_points_on_the_bodies(
            oblique in -110.0..110.0, tilt in -50.0..50.0, x in -150.0..150.0, y in -150.0..150.0, limit in 5.0..200.0,
        ) {
            let arm = CArm::at_degrees(oblique, tilt).unwrap();
            let bodies = average().bodies(DVec3::new(x, y, 0.0));
            let ring = |n: usize| (0..n).map(move |i| libm::sincos(std::f64::consts::TAU * i as f64 / n as f64));
            for (_, drum) in housings(&arm) {
                let Convex::Drum(middle, axis, radius) = drum else { unreachable!() };
                let e = axis.cross(DVec3::Z).normalize();
                let f = axis.cross(e).normalize();
                let shell: Vec<DVec3> = ring(48).flat_map(|(s, c)| {
                    [-1.0, -0.5, 0.0, 0.5, 1.0].into_iter().flat_map(move |k| {
                        [0.33, 0.66, 1.0].map(|r| middle + axis * k + (e * c + f * s) * radius * r)
                    })
                }).collect();
                for (_, body) in &bodies {
                    // How far a point is from the other body: exactly for the box, by a ring of 360 points for the oval.
                    let off = |p: DVec3| match *body {
                        Convex::Box(m, h) => ((p - m).abs() - h).max(DVec3::ZERO).length(),
                        Convex::Oval(m, h)
                            if ((p - m).truncate() / h.truncate()).length() < 1.0 && (p.z - m.z).abs() < h.z =>
                        {
                            0.0
                        }
                        Convex::Oval(m, h) => ring(360).map(|(s, c)| {
                            let z = (p.z - m.z).clamp(-h.z, h.z);
                            (p - m - DVec3::new(h.x * c, h.y * s, z)).length()
                        }).fold(f64::INFINITY, f64::min),
                        Convex::Drum(..) => unreachable!(),
                    };
                    let least = shell.iter().map(|&p| off(p)).fold(f64::INFINITY, f64::min);
                    if nearer(&drum, body, limit) {
                        // Strewn points leave gaps of 25 mm at most, and an oval may hold the point within.
                        prop_assert!(least < limit + 60.0, "said near, points {least} apart, limit {limit}");
                    } else {
                        prop_assert!(least > limit - 1.0, "said apart, points {least} apart, limit {limit}");
                    }
                }
            }
        }

        /// Wherever a way ends there is room, and it ends where it was to go or is stopped.
        #[test]
        fn ways_end_where_there_is_room(
            from in (-110.0..110.0, -50.0..50.0), to in (-110.0..110.0, -50.0..50.0), x in -150.0..150.0, y in -100.0..100.0,
        ) {
            let lying = average();
            let table_shift_mm = DVec3::new(x, y, 0.0);
            let arm = |(o, t): (f64, f64)| CArm { table_shift_mm, ..CArm::at_degrees(o, t).unwrap() };
            let (from, to) = (arm(from), arm(to));
            prop_assume!(lying.touching(&from).is_none());
            let reach = lying.reach(&from, &to);
            prop_assert!(lying.touching(&reach.arm).is_none());
            prop_assert_eq!(reach.hit.is_none(), reach.arm == to);
            if let Some(Hit { table: Some(way), by_mm, .. }) = reach.hit {
                // The move that is told makes room where it was stopped: one step further than it came.
                let moved = CArm { table_shift_mm: table_shift_mm + way.direction() * by_mm, ..reach.arm };
                prop_assert!(by_mm > 0.0 && lying.touching(&moved).is_none());
            }
        }
    }

    /// Where the table stands at nothing an average patient leaves free what views need: only corners with oblique and tilt both far out
    /// are not.
    #[test]
    fn range_is_free_about_an_average_patient_in_the_middle() {
        let lying = average();
        for oblique in (-110_i32..=110).step_by(5) {
            for tilt in (-50_i32..=50).step_by(5) {
                let arm = CArm::at_degrees(f64::from(oblique), f64::from(tilt)).unwrap();
                let hit = lying.hit(&arm);
                let far = oblique.abs() >= 40 && tilt.abs() >= 45 || oblique.abs() >= 90 && tilt.abs() >= 25;
                assert!(hit.is_none() || far, "{oblique} {tilt}: {hit:?}");
            }
        }
    }

    /// A table far to the left meets what is turned far to the left, and lowering or moving it back makes room.
    #[test]
    fn table_to_the_side_stops_the_lateral() {
        let lying = average();
        let table_shift_mm = DVec3::new(150.0, 60.0, 0.0);
        let from = CArm { table_shift_mm, ..CArm::default() };
        let reach = lying.reach(&from, &from.turned_to(105.0, 0.0).unwrap());
        let hit = reach.hit.unwrap();
        assert_eq!((hit.housing, hit.obstacle), (Housing::Receptor, Obstacle::Table));
        assert!(matches!(hit.table, Some(TableWay::Right | TableWay::Up | TableWay::Down)), "{hit:?}");
        let stopped = reach.arm.oblique_rad.to_degrees();
        assert!((30.0..104.0).contains(&stopped), "{stopped}");
    }
}
