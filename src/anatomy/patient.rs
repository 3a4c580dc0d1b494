//! A patient built from its specification: bones with meshes, fields and landmarks.
//!
//! Everything is in the column frame (patient axes, origin at the S1 plate's centre), mm. The same specification gives
//! the same patient everywhere: no clock, no randomness.

use super::column::stack;
use super::interior::Interior;
use super::landmarks::{self, LevelLandmarks};
use super::names::{Label, Level, Part, Side};
use super::physique::Physique;
use super::place::{other_side, tag, untag};
use super::rib::Rib;
use super::soft_tissue::{self, SoftTissue};
use super::superior_process::{JointState, SuperiorProcess};
use super::tissues::BoneField;
use super::vertebra::Below;
use super::{pelvis, rib, sacrum, thoracic, vertebra};
use crate::geometry::chunks::{Chunk, chunks};
use crate::geometry::frame::{Rigid, rotation_z};
use crate::geometry::lattice::Lattice;
use crate::geometry::mesh::{Edges, Mesh};
use crate::geometry::sdf::Shape;
use crate::geometry::solid::{Carve, Piece, Solid};
use crate::geometry::surface_nets::{Surface, extract};
use glam::{DVec3, Vec3};

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

/// Lattice spacing, mm. The coarsest with which a superior process on the mesh stays within 0.4 mm of the one that is scored
/// (`tests/silhouette.rs`) and films do not change to the eye; time of a frame and of a patient goes with the inverse square.
mod spacing_mm {
    pub(super) const LUMBAR: f32 = 1.8;
    /// No needle goes there, and it stands at the edge of a film of L1.
    pub(super) const T12: f32 = 2.4;
    pub(super) const SACRUM: f32 = 2.5;
    pub(super) const WING: f32 = 3.8;
    pub(super) const RIB: f32 = 2.4;
    pub(super) const CONTEXT: f32 = 3.8;
    pub(super) const PART: f32 = 1.0;
}

/// A body of fewer triangles than this share of the largest one's is a speck that the lattice has left.
const SPECK_SHARE: f64 = 0.02;
/// End plates of 0.55 mm (memory: 0.5 to 0.6), so that pedicles, laminae and facets hold their own beside them.
const PLATE_THINNED: f32 = 0.69;
/// Half the height of the grain on the marrow's surface, mm: stands for trabeculae running into the cortex. Derived.
const GRAIN_MM: f32 = 0.28;
/// The same on ilium and rib.
const FINE_GRAIN_MM: f32 = 0.12;

/// A bone before meshing.
#[derive(Debug)]
struct Draft {
    level: Level,
    /// As in [`Bone`].
    axial: bool,
    spacing_mm: f32,
    frame: Rigid,
    solid: Solid,
    /// The other side's solid, for bones that come in mirrored pairs and are meshed once.
    twin: Option<Solid>,
}

/// The bones before meshing, and the landmarks.
struct Plan {
    bones: Vec<Draft>,
    interior: Interior,
}

#[expect(
    clippy::too_many_lines,
    reason = "one bone after the other, in the order in which they rest on each other"
)]
fn plan(spec: &PatientSpec) -> Plan {
    let physique = Physique::of(spec);
    let Physique { scale: k, vertebrae, pelvis: pelvis_size, shape, joints, .. } = &physique;
    let k = *k;
    let on_table = Rigid { rotation: rotation_z(spec.turned_deg.to_radians()), translation: DVec3::ZERO };
    let frames = stack(vertebrae, shape).map(|f| on_table.after(&f));

    let mut bones = Vec::new();
    for level in Level::VERTEBRAE {
        let i = level.index();
        let motion = frames[i].inverse().after(&frames[i + 1]);
        let arch = vertebrae.get(i + 1).map_or_else(Vec::new, |d| vertebra::arch(motion, d, k));
        let below = Below { process: physique.process(i + 1), motion, arch };
        let solid = vertebra::solid(&vertebrae[i], k, &joints[i], &below);
        bones.push(Draft {
            level,
            axial: true,
            spacing_mm: if level == Level::T12 { spacing_mm::T12 } else { spacing_mm::LUMBAR },
            frame: frames[i],
            solid,
            twin: None,
        });
    }
    let disc_middle = {
        let l5 = &frames[5];
        let up = l5.rotation * DVec3::Z;
        (l5.translation + up * (vertebrae[5].half_height_mm() + shape.disc_height_mm[4] / 2.0)).z
    };
    let crest_z = disc_middle + physique.crest_above_disc_mm * k;
    let ilium = pelvis::Wing::reaching(k, frames[6].rotation.transpose() * DVec3::Z, crest_z);
    let solid = sacrum::solid(pelvis_size, k, &joints[6], Side::BOTH.map(|side| ilium.piece(side)));
    bones.push(Draft {
        level: Level::S1,
        axial: true,
        spacing_mm: spacing_mm::SACRUM,
        frame: frames[6],
        solid,
        twin: None,
    });
    let [left, right] = Side::BOTH;
    bones.push(Draft {
        level: Level::S1,
        axial: false,
        spacing_mm: spacing_mm::WING,
        frame: frames[6],
        solid: ilium.solid(left),
        twin: Some(ilium.solid(right)),
    });
    let [eleventh, tenth] = thoracic_context(&physique, &frames[0]);
    let mut rib = |which, frame| {
        bones.push(Draft {
            level: Level::T12,
            axial: false,
            spacing_mm: spacing_mm::RIB,
            frame,
            solid: rib::solid(which, left, k),
            twin: Some(rib::solid(which, right, k)),
        });
    };
    rib(Rib::Twelfth, frames[0]);
    rib(Rib::Eleventh, eleventh.frame);
    rib(Rib::Tenth, tenth.frame);
    bones.extend([eleventh, tenth]);

    let top = ilium.crest_top;
    let crest_tops = Side::BOTH.map(|s| frames[6].point(DVec3::new(top.x * s.sign(), top.y, top.z)));
    let landmarks = std::array::from_fn(|i| {
        if i < 6 {
            let below = physique.process(i + 1);
            let marks = landmarks::of_vertebra(
                Level::ALL[i],
                &vertebrae[i],
                k,
                &joints[i],
                &frames[i],
                (&below, &frames[i + 1]),
            );
            LevelLandmarks { slip_mm: shape.slip_mm[i], ..marks }
        } else {
            landmarks::of_sacrum(pelvis_size, k, &joints[6], &frames[6], crest_tops)
        }
    });
    let fields = bones.iter().flat_map(|b| {
        let field = |solid: &Solid| BoneField { level: b.level, frame: b.frame, solid: solid.clone() };
        [Some(field(&b.solid)), b.twin.as_ref().map(field)].into_iter().flatten()
    });
    let trunk = soft_tissue::trunk(&landmarks, k, physique.girth);
    let interior = Interior::new(landmarks, vertebrae, fields.collect(), trunk, k, spec.seed);
    Plan { bones, interior }
}

/// T11 and T10 above T12, whose frame stands at `frame`.
fn thoracic_context(physique: &Physique, frame: &Rigid) -> [Draft; 2] {
    let k = physique.scale;
    let (mut lower, mut frame) = (physique.vertebrae[0], *frame);
    let mut process = physique.process(0);
    thoracic::UPWARDS.map(|average| {
        let d = physique.own.vertebra(&average.scaled(k));
        let own_frame = thoracic::above(&lower, &frame, &d, k);
        let below = Below { process, motion: own_frame.inverse().after(&frame), arch: Vec::new() };
        let joint = JointState::default();
        let solid = vertebra::solid(&d, k, &joint, &below);
        process = SuperiorProcess::of_vertebra(&d, k, &joint);
        (lower, frame) = (d, own_frame);
        Draft {
            level: Level::T12,
            axial: false,
            spacing_mm: spacing_mm::CONTEXT,
            frame: own_frame,
            solid,
            twin: None,
        }
    })
}

/// A patient in the making, a bone a step, so that a page can do other things in between.
#[derive(Debug)]
pub struct PatientBuilder {
    spec: PatientSpec,
    waiting: Vec<Draft>,
    total: usize,
    bones: Vec<Bone>,
    interior: Interior,
}

impl PatientBuilder {
    /// Plans all bones; meshes none.
    pub fn new(spec: &PatientSpec) -> Self {
        let mut plan = plan(spec);
        plan.bones.reverse();
        Self {
            spec: spec.clone(),
            total: plan.bones.len(),
            waiting: plan.bones,
            bones: Vec::new(),
            interior: plan.interior,
        }
    }

    /// Landmarks and tissues, which need no mesh.
    pub fn interior(&self) -> &Interior {
        &self.interior
    }

    /// Meshes the next bone; returns the share that is done, 1 when nothing is left.
    pub fn step(&mut self) -> f64 {
        if let Some(draft) = self.waiting.pop() {
            self.bones.extend(mesh(draft, libm::sqrt(self.spec.bone_density) as f32));
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

/// Meshes a draft: one bone, or two mirrored ones.
fn mesh(draft: Draft, cortex: f32) -> Vec<Bone> {
    let thinned = |mut solid: Solid| {
        for piece in &mut solid.pieces {
            let plate = if matches!(piece.shape, Shape::Drum(_)) { PLATE_THINNED } else { 1.0 };
            piece.cortex_mm *= cortex * plate;
        }
        solid
    };
    let Draft { level, axial, spacing_mm, frame, solid, twin } = draft;
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
        let lattice = Lattice::sample(&solid, spacing_mm::PART);
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
    let lattice = Lattice::sample(&solid, spacing_mm::PART);
    Some(extract(&solid, &lattice, Surface::Outer).without_specks(SPECK_SHARE).moved(&bone.frame))
}
