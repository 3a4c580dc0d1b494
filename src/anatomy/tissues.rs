//! What a needle can meet, as fields that answer at a point: bones, discs, sac, roots, ganglia, vessels, peritoneum.
//!
//! Bones answer with the very solids that are meshed for the picture. The rest is built from struts and drums on the courses of
//! [`super::nerves`] and [`super::vessels`] and on the plates, so that one scheme of distances serves all. Distances are
//! first-order, f32, from `+ - * /` and square roots only: the same bits natively and in wasm.
//!
//! Limits: a disc is one body without annulus and nucleus; the peritoneum is an elliptic cylinder in front of the column.

use super::landmarks::{LevelLandmarks, Plate};
use super::names::{Level, Part, Side};
use super::nerves::{Nerves, Node};
use super::place::untag;
use super::soft_tissue::Cylinder;
use super::vessels::{Vessel, VesselKind};
use crate::geometry::frame::Rigid;
use crate::geometry::lattice::Lattice;
use crate::geometry::mesh::Mesh;
use crate::geometry::sdf::{Drum, Ellipsoid, Shape, Strut};
use crate::geometry::solid::{FAR_MM, Piece, Solid};
use crate::geometry::surface_nets::{Surface, extract};
use glam::{DMat3, DVec3, Mat3, Vec3};
use serde::Serialize;

/// A kind of tissue.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum TissueKind {
    Bone,
    Disc,
    Dura,
    Root,
    Ganglion,
    Vessel,
}

impl TissueKind {
    /// All that are soft.
    pub const SOFT: [Self; 5] = [Self::Disc, Self::Dura, Self::Root, Self::Ganglion, Self::Vessel];

    /// Such as `ganglion`.
    pub fn name(self) -> &'static str {
        match self {
            Self::Bone => "bone",
            Self::Disc => "disc",
            Self::Dura => "dura",
            Self::Root => "root",
            Self::Ganglion => "ganglion",
            Self::Vessel => "vessel",
        }
    }
}

/// One body of tissue.
#[derive(Clone, Debug)]
pub struct Tissue {
    /// What it is.
    pub kind: TissueKind,
    /// The level it belongs to (a disc to the vertebra above it).
    pub level: Option<Level>,
    /// Side, for what is paired.
    pub side: Option<Side>,
    /// For vessels, which kind.
    pub vessel: Option<VesselKind>,
    frame: Rigid,
    solid: Solid,
    /// Ball around it, column frame, mm.
    ball: (DVec3, f64),
}

impl Tissue {
    /// Signed distance, negative inside, mm (column frame).
    pub fn distance_mm(&self, p: DVec3) -> f64 {
        f64::from(self.solid.sample(self.frame.inverse().point(p).as_vec3()).distance)
    }

    /// The same within `reach_mm`; a lower bound of it beyond.
    fn within_mm(&self, p: DVec3, reach_mm: f64) -> f64 {
        let bound = self.at_least_mm(p);
        if bound > reach_mm {
            return bound;
        }
        let local = self.frame.inverse().point(p).as_vec3();
        let distance = f64::from(self.solid.distance_within(local, reach_mm as f32));
        if distance > reach_mm { reach_mm } else { distance }
    }

    /// A lower bound of [`Self::distance_mm`] without asking the field.
    fn at_least_mm(&self, p: DVec3) -> f64 {
        p.distance(self.ball.0) - self.ball.1
    }

    /// Unit normal of the level surface through a point, outwards, from differences.
    pub fn normal(&self, p: DVec3) -> DVec3 {
        const STEP_MM: f64 = 0.05;
        let d = |axis: DVec3| self.distance_mm(p + axis * STEP_MM) - self.distance_mm(p - axis * STEP_MM);
        DVec3::new(d(DVec3::X), d(DVec3::Y), d(DVec3::Z)).normalize_or(DVec3::Y)
    }

    /// Its surface, column frame, mm.
    pub fn mesh(&self, spacing_mm: f32) -> Mesh {
        let lattice = Lattice::sample(&self.solid, spacing_mm);
        extract(&self.solid, &lattice, Surface::Outer).moved(&self.frame)
    }

    /// For bones, the part whose surface is nearest and its side.
    pub fn part_at(&self, p: DVec3) -> Option<(Part, Option<Side>)> {
        if self.kind != TissueKind::Bone {
            return None;
        }
        let nearest = self.solid.sample(self.frame.inverse().point(p).as_vec3()).nearest;
        Some(untag(self.solid.pieces[usize::from(nearest)].tag))
    }

    /// For bones, every part whose own body holds a point: where parts melt into each other, more than one.
    pub fn parts_holding(&self, p: DVec3) -> impl Iterator<Item = (Part, Option<Side>)> {
        let local = self.frame.inverse().point(p).as_vec3();
        let pieces = self.solid.pieces.iter().filter(|_| self.kind == TissueKind::Bone);
        pieces.filter(move |piece| piece.sample(local).0 < 0.0).map(|piece| untag(piece.tag))
    }
}

/// Everything a needle can meet in a patient.
#[derive(Clone, Debug)]
pub struct Tissues {
    /// Bones first.
    pub list: Vec<Tissue>,
    /// How many of them are bones.
    bones: usize,
    peritoneum: Cylinder,
}

/// A bone's field: its level, where it stands, the field itself.
pub(super) struct BoneField {
    pub(super) level: Level,
    pub(super) frame: Rigid,
    pub(super) solid: Solid,
}

/// Front of the peritoneum's back wall before the L4 body's front, mm. Memory: the great vessels lie between.
const PERITONEUM_GAP_MM: f64 = 24.0;

/// Gathers them.
pub(super) fn build(
    bones: Vec<BoneField>,
    levels: &[LevelLandmarks; 7],
    nerves: &Nerves,
    vessels: &[Vessel],
    fascia: &Cylinder,
    scale: f64,
) -> Tissues {
    let mut list: Vec<Tissue> =
        bones.into_iter().map(|b| tissue(TissueKind::Bone, Some(b.level), None, b.frame, b.solid)).collect();
    let bones = list.len();
    for pair in levels.windows(2) {
        if let Some(lower) = &pair[0].lower_plate {
            list.push(disc(pair[0].level, lower, &pair[1].upper_plate));
        }
    }
    let here = |kind, level, side, pieces| {
        tissue(kind, level, side, Rigid::IDENTITY, Solid { pieces, carves: Vec::new() })
    };
    list.push(here(TissueKind::Dura, None, None, sac_pieces(nerves)));
    for root in &nerves.roots {
        let (level, side) = (Some(root.level), Some(root.side));
        list.push(here(TissueKind::Root, level, side, chain(&root.course)));
        let g = &root.ganglion;
        let along = g.along.as_vec3();
        let across = along.any_orthonormal_vector();
        let ellipsoid = Ellipsoid {
            centre: g.centre.as_vec3(),
            axes: Mat3::from_cols(along, across, along.cross(across)),
            radii: Vec3::new(g.half_length_mm as f32, g.half_width_mm as f32, g.half_width_mm as f32),
        };
        list.push(here(TissueKind::Ganglion, level, side, vec![piece(Shape::Ellipsoid(ellipsoid))]));
    }
    for vessel in vessels {
        let tube = here(TissueKind::Vessel, vessel.level, vessel.side, chain(&vessel.course));
        list.push(Tissue { vessel: Some(vessel.kind), ..tube });
    }
    let l4 = &levels[Level::L4.index()];
    let back = l4.centre.y - l4.upper_plate.half_depth - PERITONEUM_GAP_MM * scale;
    let front = fascia.centre_mm[1] - fascia.half_mm[1] + 12.0 * scale;
    let half = [(fascia.half_mm[0] - 14.0 * scale).max(40.0), ((back - front) / 2.0).max(10.0)];
    let peritoneum = Cylinder { centre_mm: [fascia.centre_mm[0], back - half[1]], half_mm: half, seat: None };
    Tissues { list, bones, peritoneum }
}

fn tissue(kind: TissueKind, level: Option<Level>, side: Option<Side>, frame: Rigid, solid: Solid) -> Tissue {
    let (low, high) = solid.bounds();
    let centre = frame.point(((low + high) / 2.0).as_dvec3());
    let ball = (centre, f64::from((high - low).length()) / 2.0);
    Tissue { kind, level, side, vessel: None, frame, solid, ball }
}

/// A piece without cortex or part.
fn piece(shape: Shape) -> Piece {
    Piece::new(shape, 0, 1.0, CHAIN_BLEND_MM)
}

/// Between struts that continue each other, mm.
const CHAIN_BLEND_MM: f32 = 0.4;

/// A round tube along a course.
fn chain(course: &[Node]) -> Vec<Piece> {
    course
        .windows(2)
        .map(|pair| {
            let radii = [pair[0].radius_mm as f32, pair[1].radius_mm as f32];
            let (a, b) = (pair[0].point.as_vec3(), pair[1].point.as_vec3());
            piece(Shape::Strut(Strut::new(a, b, Vec3::X, radii, radii, false)))
        })
        .collect()
}

fn sac_pieces(nerves: &Nerves) -> Vec<Piece> {
    nerves
        .sac
        .windows(2)
        .map(|pair| {
            let of = |f: fn(&super::nerves::SacNode) -> f64| [f(&pair[0]) as f32, f(&pair[1]) as f32];
            let shape = Strut::new(
                pair[0].point.as_vec3(),
                pair[1].point.as_vec3(),
                pair[0].left.as_vec3(),
                of(|n| n.half_width_mm),
                of(|n| n.half_depth_mm),
                false,
            );
            piece(Shape::Strut(shape))
        })
        .collect()
}

/// The disc between two plates: a drum a little wider than both at its waist.
fn disc(level: Level, above: &Plate, below: &Plate) -> Tissue {
    let up = (above.normal + below.normal).normalize();
    let left = (above.left + below.left).normalize();
    let back = up.cross(left);
    let frame = Rigid {
        rotation: DMat3::from_cols(left, back, up),
        translation: (above.centre + below.centre) / 2.0,
    };
    let height = |way: f64| {
        let at = |p: &Plate| p.centre + p.back * (way * p.half_depth);
        (at(above) - at(below)).dot(up).max(0.5) as f32
    };
    let drum = Drum {
        half_width: [below.half_width as f32, above.half_width as f32],
        half_depth: [below.half_depth as f32, above.half_depth as f32],
        posterior_height: height(1.0),
        anterior_height: height(-1.0),
        waist: [-DISC_BULGE; 2],
        waist_flat: 0.0,
        waist_shift: 0.0,
        squareness: 0.55,
        // It fills the hollows of both.
        plate_sag: [below.sag_mm, above.sag_mm].map(|sag| -sag as f32),
        posterior_dent: 1.0,
        plate_cortex_ratio: 1.0,
    };
    let solid = Solid { pieces: vec![piece(Shape::Drum(drum))], carves: Vec::new() };
    tissue(TissueKind::Disc, Some(level), None, frame, solid)
}

/// How much wider than its plates a healthy disc is at half height. Memory.
const DISC_BULGE: f32 = 0.02;

/// What a point of the body is near to.
#[derive(Clone, Copy, Debug)]
pub struct Probe {
    /// Nearest bone: number in the list and signed distance, mm.
    pub bone: (usize, f64),
    /// Distance to the nearest surface of anything else, from either side, mm.
    pub soft_mm: f64,
}

/// Set of tissues by their number in the list.
pub type Inside = Vec<usize>;

impl Tissues {
    /// Asks all fields that can matter at a point; `inside` becomes the soft tissues that hold it. Distances further than
    /// `reach_mm` are given as lower bounds.
    pub fn probe(&self, p: DVec3, reach_mm: f64, inside: &mut Inside) -> Probe {
        self.probe_beside(self.nearest_bone(p, reach_mm), p, reach_mm, inside)
    }

    /// [`Self::probe`] where [`Self::nearest_bone`] has been asked at the same point already.
    pub fn probe_beside(&self, bone: (usize, f64), p: DVec3, reach_mm: f64, inside: &mut Inside) -> Probe {
        inside.clear();
        let mut found = Probe { bone, soft_mm: self.peritoneum_mm(p).abs() };
        for (i, tissue) in self.list.iter().enumerate().skip(self.bones) {
            let distance = tissue.within_mm(p, reach_mm);
            if distance < 0.0 {
                inside.push(i);
            }
            found.soft_mm = found.soft_mm.min(distance.abs());
        }
        found
    }

    /// The nearest bone alone, as [`Self::probe`] gives it.
    pub fn nearest_bone(&self, p: DVec3, reach_mm: f64) -> (usize, f64) {
        let mut nearest = (0, f64::from(FAR_MM));
        for (i, bone) in self.list[..self.bones].iter().enumerate() {
            let distance = bone.within_mm(p, reach_mm);
            if distance < nearest.1 {
                nearest = (i, distance);
            }
        }
        nearest
    }

    /// Signed distance to the peritoneum, negative in front of it, mm (first order).
    pub fn peritoneum_mm(&self, p: DVec3) -> f64 {
        self.peritoneum.distance_mm(p)
    }

    /// The tissues of a kind.
    pub fn of_kind(&self, kind: TissueKind) -> impl Iterator<Item = &Tissue> {
        self.list.iter().filter(move |t| t.kind == kind)
    }

    /// Distance from a point to the first bone along a ray, mm; `None` when there is none within `reach_mm`.
    pub fn bone_along(&self, from: DVec3, ray: DVec3, reach_mm: f64) -> Option<(usize, f64)> {
        let mut t = 0.0;
        while t < reach_mm {
            let (bone, distance) = self.nearest_bone(from + ray * t, RAY_REACH_MM);
            if distance < RAY_HIT_MM {
                return Some((bone, t));
            }
            // Six tenths of a first-order distance never pass the surface.
            t += (0.6 * distance).max(RAY_HIT_MM);
        }
        None
    }
}

/// Fields further away than this are bounded by their balls.
const RAY_REACH_MM: f64 = 30.0;
/// A ray has met a bone when it is this near.
const RAY_HIT_MM: f64 = 0.05;
