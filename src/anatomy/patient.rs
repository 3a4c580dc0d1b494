//! A patient built from its specification: bones with meshes, fields and landmarks.
//!
//! Everything is in the column frame (patient axes, origin at the S1 plate's centre), mm. The same specification gives
//! the same patient everywhere: no clock, no randomness.

use super::interior::Interior;
use super::landmarks::LevelLandmarks;
use super::names::{Label, Level, Part, Side};
use super::pelvis;
use super::place::{other_side, tag, untag};
use super::skeleton::UnmeshedBone;
use super::soft_tissue::{self, SoftTissue};
use crate::geometry::chunks::{Chunk, chunks};
use crate::geometry::frame::Rigid;
use crate::geometry::lattice::Lattice;
use crate::geometry::mesh::{Edges, Mesh};
use crate::geometry::sdf::Shape;
use crate::geometry::solid::{Carve, Piece, Solid};
use crate::geometry::surface_nets::{Surface, extract};
use glam::Vec3;

pub use super::patient_spec::PatientSpec;

/// One bone, meshed.
#[derive(Clone, Debug)]
pub struct Bone {
    /// The level it counts to: the ilium to S1; ribs, T11 and T10 to T12.
    pub level: Level,
    /// The bone's field in its own frame.
    pub solid: Solid,
    /// Where that frame stands in the column frame.
    pub frame: Rigid,
    /// The outside, column frame.
    pub outer: Mesh,
    /// Edge numbers of the outside.
    pub edges: Edges,
    /// Runs of the outside's triangles.
    pub outer_chunks: Vec<Chunk>,
    /// The inside of the cortex, column frame.
    pub marrow: Mesh,
    /// Edge numbers of the inside.
    pub marrow_edges: Edges,
    /// Runs of the inside's triangles.
    pub marrow_chunks: Vec<Chunk>,
    /// Whether it is the bone that carries the level's landmarks (not ilium or rib, nor T11 or T10).
    pub axial: bool,
}

impl Bone {
    /// The label of a vertex of the outer mesh.
    pub fn label(&self, vertex_tag: u8) -> Label {
        let (part, side) = untag(vertex_tag);
        Label { level: self.level, part, side }
    }
}

/// A patient.
#[derive(Clone, Debug)]
pub struct Patient {
    /// What was asked for.
    pub spec: PatientSpec,
    /// T12, L1 … L5, sacrum; then iliac wings, three pairs of ribs, T11 and T10.
    pub bones: Vec<Bone>,
    /// Trunk, muscle, gas.
    pub soft_tissue: SoftTissue,
    /// Landmarks, and what a needle can meet.
    pub interior: Interior,
}

/// Lattice spacing of a part alone, mm.
const PART_SPACING_MM: f32 = 1.0;

/// A body of fewer triangles than this share of the largest one's is a speck that the lattice has left.
const SPECK_SHARE: f64 = 0.02;
/// End plates of 0.55 mm (memory: 0.5 to 0.6), so that pedicles, laminae and facets hold their own beside them.
const PLATE_THINNED: f32 = 0.69;
/// Half the height of the grain on the marrow's surface, mm: stands for trabeculae running into the cortex. Derived.
const GRAIN_MM: f32 = 0.28;
/// The same on ilium and rib.
const FINE_GRAIN_MM: f32 = 0.12;

/// A patient in the making, a bone a step, so that a page can do other things in between.
#[derive(Debug)]
pub struct PatientBuilder {
    spec: PatientSpec,
    waiting: Vec<UnmeshedBone>,
    total: usize,
    bones: Vec<Bone>,
    interior: Interior,
}

impl PatientBuilder {
    /// Makes the field of each bone; meshes none.
    pub fn new(spec: &PatientSpec) -> Self {
        let interior = Interior::of(spec);
        let mut waiting = interior.skeleton.bones();
        waiting.reverse();
        Self { spec: spec.clone(), total: waiting.len(), waiting, bones: Vec::new(), interior }
    }

    /// Meshes the next bone; returns the share that is done, 1 when nothing is left.
    pub fn step(&mut self) -> f64 {
        if let Some(bone) = self.waiting.pop() {
            self.bones.extend(mesh(bone, libm::sqrt(self.spec.bone_density) as f32));
        }
        1.0 - self.waiting.len() as f64 / self.total as f64
    }

    /// Does whatever is left.
    pub fn finish(mut self) -> Patient {
        while self.step() < 1.0 {}
        let Interior { landmarks, trunk, scale, .. } = &self.interior;
        let soft_tissue = soft_tissue::build(landmarks, *trunk, *scale, self.spec.girth, self.spec.seed);
        Patient { spec: self.spec, bones: self.bones, soft_tissue, interior: self.interior }
    }
}

impl Patient {
    /// Builds and meshes everything.
    pub fn new(spec: &PatientSpec) -> Self {
        PatientBuilder::new(spec).finish()
    }

    /// The landmarks of a level.
    pub fn level(&self, level: Level) -> &LevelLandmarks {
        self.interior.level(level)
    }

    /// The vertebra or the sacrum.
    pub fn bone(&self, level: Level) -> &Bone {
        &self.bones[level.index()]
    }

    /// One closed mesh of a part alone, column frame, mm; `None` when the level has no such part on that side.
    /// For paired parts `side = None` gives both sides in one mesh.
    pub fn part_mesh(&self, level: Level, part: Part, side: Option<Side>) -> Option<Mesh> {
        // T11 and T10 count to T12, but have no parts of their own.
        let carries = |b: &&Bone| {
            b.level == level && (b.axial || matches!(part, Part::IliacWing | Part::IliacCrest | Part::Rib))
        };
        let mut meshes = self.bones.iter().filter(carries).filter_map(|b| part_of(b, part, side));
        let mut all = meshes.next()?;
        meshes.for_each(|mesh| all.append(&mesh));
        Some(all)
    }
}

/// Meshes a bone: one, or two mirrored ones.
fn mesh(bone: UnmeshedBone, cortex: f32) -> Vec<Bone> {
    let thinned = |mut solid: Solid| {
        for piece in &mut solid.pieces {
            let plate = if matches!(piece.shape, Shape::Drum(_)) { PLATE_THINNED } else { 1.0 };
            piece.cortex_mm *= cortex * plate;
        }
        solid
    };
    let UnmeshedBone { level, axial, spacing_mm, frame, solid, twin } = bone;
    let solid = thinned(solid);
    let lattice = Lattice::sample(&solid, spacing_mm);
    let outer = extract(&solid, &lattice, Surface::Outer).without_specks(SPECK_SHARE);
    let mut marrow = extract(&solid, &lattice, Surface::Marrow);
    grain(&mut marrow, if axial { GRAIN_MM } else { FINE_GRAIN_MM });
    let mut bones = Vec::new();
    let mut finish = |solid: Solid, outer: Mesh, marrow: Mesh| {
        let (edges, marrow_edges) = (outer.edges(), marrow.edges());
        let (outer, marrow) = (outer.moved(&frame), marrow.moved(&frame));
        let (outer_chunks, marrow_chunks) = (chunks(&outer, &edges), chunks(&marrow, &marrow_edges));
        bones.push(Bone {
            level,
            solid,
            frame,
            outer,
            edges,
            outer_chunks,
            marrow,
            marrow_edges,
            marrow_chunks,
            axial,
        });
    };
    if let Some(twin) = twin {
        finish(thinned(twin), outer.mirrored(other_side), marrow.mirrored(other_side));
    }
    finish(solid, outer, marrow);
    bones
}

/// Roughens the marrow's surface by an integer hash of the vertex number.
fn grain(mesh: &mut Mesh, height_mm: f32) {
    for (i, (p, n)) in mesh.positions.iter_mut().zip(&mesh.normals).enumerate() {
        let mut h = (i as u32).wrapping_mul(0x9E37_79B1);
        h = (h ^ h >> 15).wrapping_mul(0x85EB_CA77);
        h ^= h >> 13;
        let unit = (h >> 8) as f32 / 8_388_608.0 - 1.0;
        *p += *n * (unit * height_mm);
    }
}

fn part_of(bone: &Bone, part: Part, side: Option<Side>) -> Option<Mesh> {
    let (wanted, plate) = match part {
        Part::UpperEndPlate => (Part::Body, 1.0),
        Part::LowerEndPlate => (Part::Body, -1.0),
        _ => (part, 0.0),
    };
    if part == Part::IliacCrest {
        let of_side =
            side.is_none() || bone.solid.pieces.iter().any(|p| untag(p.tag) == (Part::IliacWing, side));
        let solid = pelvis::crest(&bone.solid).filter(|_| of_side)?;
        let lattice = Lattice::sample(&solid, PART_SPACING_MM);
        return Some(extract(&solid, &lattice, Surface::Outer).moved(&bone.frame));
    }
    let matches = |p: &Piece| {
        let (p_part, p_side) = untag(p.tag);
        p_part == wanted && (side.is_none() || p_side.is_none() || p_side == side)
    };
    let mut pieces: Vec<Piece> = bone.solid.pieces.iter().filter(|p| matches(p)).cloned().collect();
    let mut carves = bone.solid.carves.clone();
    if plate != 0.0 {
        // The plate is what is left of the body when the body, moved along its axis, is taken away with a margin
        // that swallows the walls.
        pieces.retain(|p| matches!(p.shape, Shape::Drum(_)));
        let drum = pieces.first()?;
        if bone.level == Level::S1 && plate < 0.0 {
            return None;
        }
        let moved = Piece::hung(
            drum.shape.clone(),
            tag(part, None),
            1.0,
            1.0,
            -drum.shape_point(Vec3::ZERO) - Vec3::Z * (plate * 3.2),
        );
        carves = vec![Carve { piece: moved, gap_mm: 1.0 }];
    }
    if pieces.is_empty() {
        return None;
    }
    let solid = Solid { pieces, carves };
    let lattice = Lattice::sample(&solid, PART_SPACING_MM);
    Some(extract(&solid, &lattice, Surface::Outer).without_specks(SPECK_SHARE).moved(&bone.frame))
}
