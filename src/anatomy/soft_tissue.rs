//! What is not bone: skin, fat and fascia as elliptic cylinders; psoas, bowel gas, buttocks and skin folds as meshed bodies, for the film.
//!
//! Sizes from memory, fitted to the published skin-to-foramen distance (median 75 mm at normal weight, 100 mm in class I obesity:
//! Brummett 2009, Reg Anesth Pain Med 34:100). Gas lies as the seed has it: a haustrated colon up one side and down the other, filled
//! here and there, and clusters of small bubbles between.
//!
//! Limits: no organs, no breathing; the trunk has the same section all along.

use super::landmarks::LevelLandmarks;
use super::names::Level;
use super::seeded::Numbers;
use crate::geometry::chunks::{Chunk, chunks};
use crate::geometry::lattice::Lattice;
use crate::geometry::mesh::{Edges, Mesh};
use crate::geometry::sdf::{Ellipsoid, Shape, Strut};
use crate::geometry::solid::{Piece, Solid};
use crate::geometry::surface_nets::{Surface, extract};
use glam::{DVec2, DVec3, Mat3, Vec3};

/// An elliptic cylinder along the patient, column frame, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cylinder {
    /// Axis in the (x, y) plane.
    pub centre_mm: [f64; 2],
    /// Half width and half depth.
    pub half_mm: [f64; 2],
    /// What stands out from it over the sacrum.
    pub seat: Option<Seat>,
}

/// An ellipsoid melted into a cylinder: over the pelvis the body is thicker than over the hollow of the back.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    /// Middle, mm.
    pub centre_mm: DVec3,
    /// Half axes, mm.
    pub half_mm: DVec3,
}

impl Seat {
    fn distance_mm(&self, p: DVec3) -> f64 {
        let q = (p - self.centre_mm) / self.half_mm;
        let (norm, steep) = (q.length(), (q / self.half_mm).length());
        if steep < 1e-9 { -self.half_mm.min_element() } else { (norm - 1.0) * norm / steep }
    }

    fn crossings_mm(&self, from: DVec3, ray: DVec3) -> Option<[f64; 2]> {
        crossings((from - self.centre_mm) / self.half_mm, ray / self.half_mm)
    }
}

/// Where `o + t r` enters and leaves the unit ball.
fn crossings(o: DVec3, r: DVec3) -> Option<[f64; 2]> {
    let (a, b, c) = (r.length_squared(), o.dot(r), o.length_squared() - 1.0);
    let disc = b * b - a * c;
    let root = libm::sqrt(disc.max(0.0));
    (disc > 0.0 && a > 0.0).then(|| [(-root - b) / a, (root - b) / a])
}

impl Cylinder {
    /// Signed distance, negative inside, mm (first order).
    pub fn distance_mm(&self, p: DVec3) -> f64 {
        let (x, y) =
            ((p.x - self.centre_mm[0]) / self.half_mm[0], (p.y - self.centre_mm[1]) / self.half_mm[1]);
        let (norm, steep) = (libm::hypot(x, y), libm::hypot(x / self.half_mm[0], y / self.half_mm[1]));
        let wall =
            if steep < 1e-9 { -self.half_mm[0].min(self.half_mm[1]) } else { (norm - 1.0) * norm / steep };
        self.seat.map_or(wall, |seat| wall.min(seat.distance_mm(p)))
    }

    /// Where a ray enters and leaves it, mm along the unit ray: `|(o + t r) / half|² = 1` in the (x, y) plane, and the same in space for
    /// the seat. A gap between the two, which no ray through the column has, counts as inside.
    pub fn crossings_mm(&self, from: DVec3, ray: DVec3) -> Option<[f64; 2]> {
        let half = DVec2::from_array(self.half_mm);
        let o = (from.truncate() - DVec2::from_array(self.centre_mm)) / half;
        let wall = crossings(o.extend(0.0), (ray.truncate() / half).extend(0.0));
        let seat = self.seat.and_then(|seat| seat.crossings_mm(from, ray));
        match (wall, seat) {
            (Some([a, b]), Some([c, d])) => Some([a.min(c), b.max(d)]),
            (wall, seat) => wall.or(seat),
        }
    }
}

/// The trunk.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trunk {
    /// Outside of the skin.
    pub skin: Cylinder,
    /// Under the fat.
    pub fascia: Cylinder,
}

/// What a body is filled with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Filling {
    /// Muscle in fat.
    MuscleInFat,
    /// Fat in soft tissue.
    Fat,
    /// Gas in soft tissue.
    Gas,
    /// Fat in air: what bulges past the trunk.
    Bulge,
}

/// A closed body, column frame.
#[derive(Clone, Debug)]
pub struct Body {
    /// What it is filled with.
    pub filling: Filling,
    /// Its surface.
    pub mesh: Mesh,
    /// Edge numbers.
    pub edges: Edges,
    /// Runs of triangles.
    pub chunks: Vec<Chunk>,
}

/// All that is not bone.
#[derive(Clone, Debug)]
pub struct SoftTissue {
    /// The trunk.
    pub trunk: Trunk,
    /// Psoas, gas, bulges.
    pub bodies: Vec<Body>,
}

/// Back of the fascia behind the L4 body's centre, mm, average size. Derived: spinous tips lie just under it.
const FASCIA_BEHIND_MM: f64 = 72.0;
/// Fat on the back at average girth, mm. Derived from the skin-to-foramen distance.
const BACK_FAT_MM: f64 = 21.0;
/// Half width and half depth of the trunk under the fat, mm. Memory.
const FASCIA_HALF_MM: [f64; 2] = [138.0, 88.0];
/// Half width, half depth and half height of what stands out over the sacrum, under the fat, mm. Memory.
const SEAT_HALF_MM: [f64; 3] = [155.0, 90.0, 120.0];
/// Its middle below the S1 plate, and its hindmost place behind the sacrum's, mm. Derived: skin 20–30 mm over S2 (memory).
const SEAT_BELOW_PLATE_MM: f64 = 48.0;
const SEAT_BEHIND_SACRUM_MM: f64 = 10.0;

/// The trunk around a column of levels. `girth` and `size` are against the average.
pub(super) fn trunk(levels: &[LevelLandmarks; 7], size: f64, girth: f64) -> Trunk {
    let l4 = levels[Level::L4.index()].centre;
    let back = l4.y + FASCIA_BEHIND_MM * size;
    let half = FASCIA_HALF_MM.map(|h| h * size * (0.75 + 0.25 * girth));
    // Fat takes the most of a larger girth, twice as much at the sides and in front as on the back.
    let fat = (BACK_FAT_MM * size * (1.0 + 3.4 * (girth - 1.0))).max(3.0);
    // The sacrum stands out behind the hollow of the back, the more the steeper it is.
    let s1 = &levels[Level::S1.index()];
    let hind = s1.upper_plate.centre + (s1.upper_plate.back * 46.0 - s1.upper_plate.normal * 80.0) * size;
    let seat = |fat: f64| {
        let half = DVec3::new(
            SEAT_HALF_MM[0] * size + 2.0 * fat,
            SEAT_HALF_MM[1] * size + fat,
            SEAT_HALF_MM[2] * size,
        );
        let centre_mm = DVec3::new(
            l4.x,
            hind.y + (SEAT_BEHIND_SACRUM_MM - SEAT_HALF_MM[1]) * size,
            s1.upper_plate.centre.z - SEAT_BELOW_PLATE_MM * size,
        );
        Some(Seat { centre_mm, half_mm: half })
    };
    let fascia = Cylinder { centre_mm: [l4.x, back - half[1]], half_mm: half, seat: seat(0.0) };
    let skin = Cylinder {
        centre_mm: [l4.x, back + fat - (half[1] + 1.5 * fat)],
        half_mm: [half[0] + 2.0 * fat, half[1] + 1.5 * fat],
        seat: seat(fat),
    };
    Trunk { skin, fascia }
}

/// Meshes the bodies of a trunk.
pub(super) fn build(
    levels: &[LevelLandmarks; 7],
    trunk: Trunk,
    size: f64,
    girth: f64,
    seed: u64,
) -> SoftTissue {
    let mut bodies = psoas(levels, size);
    bodies.extend(gas(levels, &trunk, size, seed));
    bodies.push(body(Filling::Bulge, bulges(levels, &trunk, size, girth)));
    SoftTissue { trunk, bodies }
}

fn body(filling: Filling, mesh: Mesh) -> Body {
    let edges = mesh.edges();
    let chunks = chunks(&mesh, &edges);
    Body { filling, mesh, edges, chunks }
}

fn meshed(pieces: Vec<Piece>, spacing: f32) -> Mesh {
    let solid = Solid { pieces, carves: Vec::new() };
    extract(&solid, &Lattice::sample(&solid, spacing), Surface::Outer)
}

/// Both psoas muscles in a sleeve of fat, so that their edge shows as it does on a film.
fn psoas(levels: &[LevelLandmarks; 7], size: f64) -> Vec<Body> {
    let k = size as f32;
    let mut list = Vec::new();
    for (filling, sleeve_mm) in [(Filling::Fat, 2.5), (Filling::MuscleInFat, 0.0)] {
        let mut pieces = Vec::new();
        for side in [1.0_f32, -1.0] {
            let node = |level: Level, out: f32, front: f32| {
                levels[level.index()].centre.as_vec3() + Vec3::new(side * out * k, -front * k, 0.0)
            };
            let course = [
                (node(Level::L1, 27.0, -6.0), 8.0),
                (node(Level::L3, 38.0, 2.0), 17.0),
                (node(Level::L5, 50.0, 14.0), 23.0),
                (node(Level::S1, 66.0, 38.0), 21.0),
            ];
            for pair in course.windows(2) {
                let [(a, ra), (b, rb)] = [pair[0], pair[1]].map(|(p, r)| (p, r * k + sleeve_mm));
                let shape = Strut::new(a, b, Vec3::Y, [ra * 1.2, rb * 1.2], [ra, rb], false);
                pieces.push(Piece::new(Shape::Strut(shape), 0, 1.0, 6.0));
            }
        }
        list.push(body(filling, meshed(pieces, 9.0)));
    }
    list
}

/// Gas in the colon (haustra: bulges between folds) and in small bowel (bubbles in clusters), in front of the column.
fn gas(levels: &[LevelLandmarks; 7], trunk: &Trunk, size: f64, seed: u64) -> Option<Body> {
    let mut number = Numbers::stream(seed, 1);
    let mut unit = || number.unit() as f32;
    let k = size as f32;
    let l4 = levels[Level::L4.index()].centre.as_vec3();
    let mut meshes = Vec::new();
    let mut add = |pieces: Vec<Piece>, spacing: f32| {
        if !pieces.is_empty() {
            meshes.push(meshed(pieces, spacing * k));
        }
    };
    let ball = |centre: Vec3, radii: Vec3, blend: f32| {
        Piece::new(Shape::Ellipsoid(Ellipsoid { centre, axes: Mat3::IDENTITY, radii }), 0, 1.0, blend)
    };
    // How far in front of L4 there is room inside the fascia.
    let front =
        ((trunk.fascia.half_mm[1] + l4.y as f64 - trunk.fascia.centre_mm[1]) as f32 - 26.0 * k).max(40.0);
    for side in [1.0_f32, -1.0] {
        let out = (78.0 + 16.0 * unit()) * k;
        let mut z = -95.0 + 30.0 * unit();
        let mut run: Vec<Piece> = Vec::new();
        while z < 120.0 {
            let wide = (9.0 + 6.0 * unit()) * k;
            let tall = (6.5 + 3.5 * unit()) * k;
            // Filled here and there, a few haustra at a time.
            let filled = unit() < if run.is_empty() { 0.18 } else { 0.66 };
            if filled && run.len() < 7 {
                let sway =
                    Vec3::new(side * (out + 9.0 * k * (unit() - 0.5)), -front * (0.35 + 0.1 * unit()), z * k);
                run.push(ball(l4 + sway, Vec3::new(wide, 0.5 * wide, tall), 5.0 * k));
            } else {
                add(std::mem::take(&mut run), 2.6);
            }
            z += 1.25 * tall / k;
        }
        add(run, 2.6);
    }
    let clusters = 2 + (3.0 * unit()) as usize;
    for _ in 0..clusters {
        let middle = l4
            + Vec3::new(120.0 * (unit() - 0.5), -front / k * (0.6 + 0.3 * unit()), 150.0 * (unit() - 0.45))
                * k;
        let bubbles = 2 + (5.0 * unit()) as usize;
        let pieces = (0..bubbles)
            .map(|_| {
                let at = Vec3::new(30.0 * (unit() - 0.5), 12.0 * (unit() - 0.5), 24.0 * (unit() - 0.5)) * k;
                let r = (3.0 + 5.0 * unit()) * k;
                ball(middle + at, Vec3::new(r * (0.9 + 0.7 * unit()), 0.7 * r, r), 3.0 * k)
            })
            .collect();
        add(pieces, 2.0);
    }
    let mut mesh = Mesh::default();
    meshes.iter().for_each(|part| mesh.append(part));
    (!mesh.triangles.is_empty()).then(|| body(Filling::Gas, mesh))
}

/// Buttocks behind the pelvis, and on a full trunk skin folds across the loin.
fn bulges(levels: &[LevelLandmarks; 7], trunk: &Trunk, size: f64, girth: f64) -> Mesh {
    let k = size as f32;
    let l4 = levels[Level::L4.index()].centre.as_vec3();
    let full = (girth - 0.75).clamp(0.1, 1.2) as f32;
    let back = (trunk.skin.centre_mm[1] + trunk.skin.half_mm[1]) as f32;
    let mut pieces = Vec::new();
    for side in [1.0_f32, -1.0] {
        let centre = Vec3::new(l4.x + side * 62.0 * k, back - 6.0 * k, l4.z - 150.0 * k);
        let radii = Vec3::new(72.0 * k, (4.0 + 8.0 * full) * k, 92.0 * k);
        pieces.push(Piece::new(
            Shape::Ellipsoid(Ellipsoid { centre, axes: Mat3::IDENTITY, radii }),
            0,
            1.0,
            4.0,
        ));
    }
    let mut mesh = meshed(pieces, 7.0 * k);
    if girth > 1.1 {
        // Where rolls of fat meet, skin lies double: a faint line across the loin.
        let mut folds = Vec::new();
        for (z, tilt) in [(34.0_f32, 5.0_f32), (-22.0, -4.0)] {
            for side in [1.0_f32, -1.0] {
                let a = Vec3::new(l4.x + side * 22.0 * k, back - 3.0 * k, l4.z + (z + 1.5 * tilt) * k);
                let b = Vec3::new(l4.x + side * 150.0 * k, back - 52.0 * k, l4.z + (z - 2.0 * tilt) * k);
                let shape = Strut::new(a, b, Vec3::Y, [1.4 * k, 2.4 * k], [2.6 * k, 4.2 * k], false);
                folds.push(Piece::new(Shape::Strut(shape), 0, 1.0, 1.0));
            }
        }
        mesh.append(&meshed(folds, 1.6 * k));
    }
    mesh
}
