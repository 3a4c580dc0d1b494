//! One vertebra as a solid, in its own frame: origin at the body's centre, +x left, +y posterior, +z cranial, mid-plane z = 0.
//!
//! The body is a drum; pedicles, articular pillars, laminae and processes are lofts through the rows of [`super::vertebra_table`], carried
//! to the patient's dimensions (`posterior_arch`, `superior_process`). The inferior articular processes follow the
//! neighbour's superior ones and are carved by them with the joint space around, so that every joint is open and congruent in every
//! posture.
//!
//! Limits: no nutrient foramina; left and right are mirror images.

use super::dimensions::{JOINT_SPACE_MM, Vertebra, average};
use super::names::{Part, Side};
use super::place::{Place, tag};
use super::posterior_arch::{PARS_SHARE, PosteriorArch};
use super::sacrum;
use super::superior_process::{ARTICULAR_CORTEX_MM, JointState, SuperiorProcess};
use super::track::Track;
use super::vertebra_rows::Rows;
use crate::geometry::frame::Rigid;
use crate::geometry::sdf::{Drum, Ellipsoid, Loft, Shape, Strut};
use crate::geometry::solid::{Carve, Piece, Solid};
use glam::{Mat3, Vec3};

/// Nominal cortical thickness by part, mm. Derived: shell of the body about 0.5 (memory), pedicle and posterior
/// elements thicker; chosen within that so that the lines of a film appear in their order of strength.
mod cortex_mm {
    pub(super) const BODY_WALL: f64 = 0.55;
    pub(super) const PEDICLE: f64 = 1.2;
    pub(super) const PARS: f64 = 1.25;
    pub(super) const LAMINA: f64 = 1.1;
    pub(super) const TRANSVERSE: f64 = 1.0;
    pub(super) const SPINOUS: f64 = 0.65;
    /// Plates over walls.
    pub(super) const PLATE_RATIO: f32 = 1.45;
}

/// Blend radius between two bars that continue each other, mm: a larger one would swell the joint, where both surfaces
/// coincide, by a quarter of itself.
const CHAIN_BLEND_MM: f64 = 0.4;

/// The lower neighbour: its superior process and where its frame stands in this vertebra's.
#[derive(Clone, Debug)]
pub(super) struct Below {
    pub(super) process: SuperiorProcess,
    pub(super) motion: Rigid,
    /// Its arch, where it may touch, in this vertebra's frame.
    pub(super) arch: Vec<Piece>,
}

/// Space of the joint between a transitional L5's transverse process and the sacrum's wing, mm. Derived: as other joints.
const WING_JOINT_MM: f64 = 1.3;
/// How far the wing's surface may stand out past the bars that it is melted from, mm: a quarter of their blend radius.
const WING_BULGE_MM: f64 = 1.25;

/// The broad foot of a transitional L5's transverse process: from under the process out and down into the sacrum's wing, lateral of
/// the root, as far as the transition has gone.
fn foot(place: &Place, sacrum: &Place, d: &Vertebra, k: f64) -> Piece {
    let [px, _, pz] = d.pedicle_centre_mm();
    let top = [px + d.pedicle_width_mm / 2.0 + 7.0 * k, d.posterior_rims_mm() + 6.5 * k, pz - 5.0 * k];
    let a = place.point(top);
    let b = a.lerp(sacrum.point([44.5 * k, 10.0 * k, -8.0 * k]), d.transition as f32);
    let f = |v: [f64; 2]| v.map(|x| (x * k) as f32);
    let shape = Strut::new(
        a,
        b,
        place.direction([1.0, 0.0, 0.0]),
        f([6.0, 6.0 + 3.0 * d.transition]),
        f([5.0, 6.0]),
        false,
    );
    place.piece(Part::TransverseProcess, Shape::Strut(shape), cortex_mm::TRANSVERSE, 4.5 * k)
}

/// Builds a vertebra. `scale` is its size against the average, for what the table does not list.
pub(super) fn solid(d: &Vertebra, scale: f64, joint_above: &JointState, below: &Below) -> Solid {
    let k = scale;
    let (rows, _) = average(d.rows);
    let own = SuperiorProcess::of_vertebra(d, scale, joint_above);
    let arch = PosteriorArch::new(d, k);
    let mut solid = Solid::default();
    solid.pieces.push(body(d, rows, k));
    for side in Side::BOTH {
        let place = Place::own(Some(side));
        let pillar = arch.pillar(&place, &below.process, &below.motion);
        solid.pieces.extend(half(&place, &arch, &own, &pillar, k));
        let joint = Place { side: Some(side), motion: below.motion };
        if d.transition > 0.0 {
            solid.pieces.push(foot(&place, &joint, d, k));
            for piece in sacrum::wing(&joint, k) {
                solid.carves.push(Carve { piece, gap_mm: (WING_JOINT_MM + WING_BULGE_MM) as f32 });
            }
        }
        for piece in below.process.pieces(&joint) {
            solid.carves.push(Carve { piece, gap_mm: JOINT_SPACE_MM as f32 });
        }
    }
    solid.pieces.push(spinous(&Place::own(None), &arch, k));
    for piece in &below.arch {
        solid.carves.push(Carve { piece: piece.clone(), gap_mm: ARCH_GAP_MM });
    }
    solid
}

/// The vertebra that `rows` make at the dimensions `d` where they stand as written, without a neighbour below: what a fit compares with a
/// real bone.
pub fn as_written(rows: &Rows, d: &Vertebra) -> Solid {
    let own = SuperiorProcess::with(rows, d, d, 1.0, &JointState::default());
    let arch = PosteriorArch::with(rows, d, d, 1.0);
    let mut solid = Solid::default();
    solid.pieces.push(body(d, rows, 1.0));
    for side in Side::BOTH {
        solid.pieces.extend(half(&Place::own(Some(side)), &arch, &own, &arch.free_pillar(), 1.0));
    }
    solid.pieces.push(spinous(&Place::own(None), &arch, 1.0));
    solid
}

/// Least room between the arches of neighbours that would touch, mm. Derived.
const ARCH_GAP_MM: f32 = 0.9;

fn body(d: &Vertebra, rows: &Rows, k: f64) -> Piece {
    let walls = &rows.walls;
    let drum = Drum {
        half_width: [d.lower_width_mm / 2.0, d.upper_width_mm / 2.0].map(|x| x as f32),
        half_depth: [d.lower_depth_mm / 2.0, d.upper_depth_mm / 2.0].map(|x| x as f32),
        posterior_height: d.posterior_height_mm as f32,
        anterior_height: d.anterior_height_mm as f32,
        waist: walls.waist.map(|x| x as f32),
        waist_flat: walls.waist_flat as f32,
        waist_shift: (k * walls.waist_shift_mm) as f32,
        squareness: walls.square as f32,
        plate_sag: d.plate_sag_mm().map(|x| x as f32),
        posterior_dent: (k * walls.dent_mm) as f32,
        plate_cortex_ratio: cortex_mm::PLATE_RATIO,
    };
    Piece::new(Shape::Drum(drum), tag(Part::Body, None), cortex_mm::BODY_WALL as f32, 2.0)
}

fn lofted<const N: usize>(
    place: &Place,
    part: Part,
    track: &Track<N>,
    cortex_mm: f64,
    blend_mm: f64,
) -> Piece {
    place.piece(part, Shape::Loft(Box::new(track.loft(place))), cortex_mm, blend_mm)
}

/// Everything of one side but the body.
fn half(
    place: &Place,
    arch: &PosteriorArch,
    own: &SuperiorProcess,
    pillar: &Track<7>,
    k: f64,
) -> impl Iterator<Item = Piece> {
    let [pars, inferior] = pillar_pieces(place, pillar, k);
    let pedicle = lofted(place, Part::Pedicle, &arch.pedicle, cortex_mm::PEDICLE, 2.6 * k);
    let lamina = lofted(place, Part::Lamina, &arch.lamina, cortex_mm::LAMINA, 3.0 * k);
    let transverse = lofted(place, Part::TransverseProcess, &arch.transverse, cortex_mm::TRANSVERSE, 3.0 * k);
    let superior = own.pieces(place);
    [pedicle].into_iter().chain(superior).chain([
        pars,
        inferior,
        lamina,
        transverse,
        accessory(place, arch, k),
    ])
}

/// Half axes of the accessory process, mm. Memory: a small bump, largest at L5 and often absent.
const ACCESSORY_HALF_MM: [f32; 3] = [2.2, 2.4, 2.8];

fn accessory(place: &Place, arch: &PosteriorArch, k: f64) -> Piece {
    let bump = Ellipsoid {
        centre: place.at(arch.accessory()).as_vec3(),
        axes: Mat3::IDENTITY,
        radii: Vec3::from_array(ACCESSORY_HALF_MM) * k as f32,
    };
    place.piece(Part::TransverseProcess, Shape::Ellipsoid(bump), cortex_mm::TRANSVERSE, 2.5 * k)
}

/// Pars interarticularis and inferior process: one loft, shown as two parts.
fn pillar_pieces(place: &Place, pillar: &Track<7>, k: f64) -> [Piece; 2] {
    let whole: Loft = pillar.loft(place);
    let part = |part, span, cortex, blend| {
        place.piece(part, Shape::Loft(Box::new(whole.clone().between(span, 1.0))), cortex, blend)
    };
    [
        part(Part::Pars, [0.0, PARS_SHARE], cortex_mm::PARS, 3.0 * k),
        part(Part::InferiorArticularProcess, [PARS_SHARE, 1.0], ARTICULAR_CORTEX_MM, CHAIN_BLEND_MM),
    ]
}

fn spinous(place: &Place, arch: &PosteriorArch, k: f64) -> Piece {
    lofted(place, Part::SpinousProcess, &arch.spinous, cortex_mm::SPINOUS, 3.0 * k)
}

/// Pedicles, partes, laminae and the spinous process, which crowd the arch above where discs are low, the back is hollow or a level has
/// slipped.
pub(super) fn arch(motion: Rigid, d: &Vertebra, k: f64) -> Vec<Piece> {
    let arch = PosteriorArch::new(d, k);
    let halves = Side::BOTH.map(|side| {
        let place = Place { side: Some(side), motion };
        let [pars, _] = pillar_pieces(&place, &arch.free_pillar(), k);
        let pedicle = lofted(&place, Part::Pedicle, &arch.pedicle, cortex_mm::PEDICLE, 2.6 * k);
        let lamina = lofted(&place, Part::Lamina, &arch.lamina, cortex_mm::LAMINA, 3.0 * k);
        [pedicle, pars, lamina]
    });
    let middle = spinous(&Place { side: None, motion }, &arch, k);
    halves.into_iter().flatten().chain([middle]).collect()
}
