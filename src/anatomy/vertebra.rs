//! One vertebra as a solid, in its own frame: origin at the body's centre, +x left, +y posterior, +z cranial, mid-plane z = 0.
//!
//! Body, pedicles, articular pillars and processes are bars and drums at the places that the dimension table gives; the
//! inferior articular processes grow to meet the neighbour's superior ones and are carved by them with the joint space
//! around, so that every joint is open and congruent in every posture.
//!
//! Limits: no accessory process, no nutrient foramina; left and right are mirror images.

use super::dimensions::{
    JOINT_SPACE_MM, LOWER_PLATE_SAG_MM, PEDICLE_BEHIND_WALL_MM, UPPER_PLATE_SAG_MM, Vertebra,
};
use super::names::{Part, Side};
use super::place::{Place, tag};
use super::posterior_arch::{InferiorProcess, PosteriorArch, SPINOUS_END_HALF_THIN_MM};
use super::sacrum;
use super::superior_process::{ARTICULAR_CORTEX_MM, JointState, PROCESS_HALF_WIDTH_MM, SuperiorProcess};
use crate::geometry::frame::Rigid;
use crate::geometry::sdf::{Drum, Shape, Strut};
use crate::geometry::solid::{Carve, Piece, Solid};

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
    let top = [px + d.pedicle_width_mm / 2.0 + 9.0 * k, d.posterior_wall_mm() + 8.5 * k, pz - 1.0 * k];
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

/// Builds a vertebra. `scale` is its size against the average, for the bits that the table does not list.
pub(super) fn solid(d: &Vertebra, scale: f64, joint_above: &JointState, below: &Below) -> Solid {
    let k = scale;
    let swelling_mm = joint_above.swelling_mm;
    let mut solid = Solid::default();

    let body = Drum {
        half_width: [d.lower_width_mm / 2.0, d.upper_width_mm / 2.0].map(|x| x as f32),
        half_depth: [d.lower_depth_mm / 2.0, d.upper_depth_mm / 2.0].map(|x| x as f32),
        posterior_height: d.posterior_height_mm as f32,
        anterior_height: d.anterior_height_mm as f32,
        waist: [0.085; 2],
        waist_flat: 0.0,
        waist_shift: 0.0,
        squareness: 0.55,
        plate_sag: [LOWER_PLATE_SAG_MM as f32, UPPER_PLATE_SAG_MM as f32],
        posterior_dent: 1.6 * k as f32,
        plate_cortex_ratio: cortex_mm::PLATE_RATIO,
    };
    solid.pieces.push(Piece::new(Shape::Drum(body), tag(Part::Body, None), cortex_mm::BODY_WALL as f32, 2.0));

    let own = SuperiorProcess::of_vertebra(d, scale, joint_above);
    let arch = PosteriorArch::new(d, k);
    for side in Side::BOTH {
        let place = Place::own(Some(side));
        solid.pieces.extend(pedicle(&place, d, k));

        // Articular pillar: junction, pars, and on to the inferior process.
        let stout = pillar_half_width_mm(d, k);
        solid.pieces.push(pars(&place, d, &arch, k));
        solid.pieces.extend(own.pieces(&place));

        // Transverse process: root, waist, slightly clubbed tip, leaning back.
        let f = d.transverse_stoutness;
        let g = 0.65 + 0.35 * f;
        // A stouter process is thicker more than it is tall: its lower edge stays at the pedicle's, where needles pass.
        let tall = f.min(1.0) + 0.5 * (f - 1.0).max(0.0);
        let [root, mid, end] = arch.transverse;
        let [waist, cap] = arch.transverse_half_thin_mm;
        for (a, b, tall, thin, blend) in [
            (root, mid, [6.4 * tall, 4.6 * g], [4.2 * f * k, waist], 3.2 * k),
            (mid, end, [4.6 * g, 4.0 * g], [waist, cap], CHAIN_BLEND_MM),
        ] {
            let shape = place.strut(a, b, [0.0, 0.0, 1.0], tall.map(|x| x * k), thin, false);
            solid.pieces.push(place.piece(Part::TransverseProcess, shape, cortex_mm::TRANSVERSE, blend));
        }
        if d.transition > 0.0 {
            let joint = Place { side: Some(side), motion: below.motion };
            solid.pieces.push(foot(&place, &joint, d, k));
            for piece in sacrum::wing(&joint, k) {
                solid.carves.push(Carve { piece, gap_mm: (WING_JOINT_MM + WING_BULGE_MM) as f32 });
            }
        }

        solid.pieces.extend(lamina(&place, d, &arch, k));

        // Inferior process: from the pars down to the neighbour's facet, behind and medial of it.
        let joint = Place { side: Some(side), motion: below.motion };
        let axis = InferiorProcess::on(&below.process, k, swelling_mm);
        let [thick, cap] = axis.half_thin_mm;
        let tangent = joint.direction(below.process.tangent());
        let half_wide = PROCESS_HALF_WIDTH_MM * k * 0.92 + swelling_mm;
        let (upper, lower) = (joint.point(axis.upper), joint.point(axis.lower));
        let pars = arch.pars;
        let start = place.point([pars[0] - 0.5 * k, pars[1] + 0.6 * k, pars[2] - 2.0 * k]);
        for (a, b, wide, thin, blend) in [
            (start, upper, [stout, 0.95 * half_wide], [3.4 * k, thick], 3.2 * k),
            (upper, lower, [0.95 * half_wide, 0.66 * half_wide], [thick, cap], CHAIN_BLEND_MM),
        ] {
            let [wide, thin] = [wide, thin].map(|pair| pair.map(|x| x as f32));
            let shape = Shape::Strut(Strut::new(a, b, tangent, wide, thin, false));
            solid.pieces.push(place.piece(Part::InferiorArticularProcess, shape, ARTICULAR_CORTEX_MM, blend));
        }
        for piece in below.process.pieces(&joint) {
            solid.carves.push(Carve { piece, gap_mm: JOINT_SPACE_MM as f32 });
        }
    }

    solid.pieces.extend(spinous(&Place::own(None), d, &arch, k));
    for piece in &below.arch {
        solid.carves.push(Carve { piece: piece.clone(), gap_mm: ARCH_GAP_MM });
    }
    solid
}

/// Least room between the arches of neighbours that would touch, mm. Derived.
const ARCH_GAP_MM: f32 = 0.9;

/// Pedicle: an hourglass along its axis, converging forwards: in front of its isthmus, and behind it.
fn pedicle(place: &Place, d: &Vertebra, k: f64) -> [Piece; 2] {
    let [px, py, pz] = d.pedicle_centre_mm();
    let half_width = d.pedicle_width_mm / 2.0;
    let half_pedicle = d.pedicle_height_mm / 2.0;
    let (s, c) = libm::sincos(d.pedicle_axial_deg.to_radians());
    let along = |t: f64| [px + s * t, py + c * t, pz - 0.04 * t];
    let across = [c, -s, 0.0];
    let (front, back) = (-PEDICLE_BEHIND_WALL_MM - 5.0 * k, 6.5 * k);
    let half = |a: f64, b: f64, flare: [f64; 2], blend: f64| {
        let shape = place.strut(
            along(a),
            along(b),
            across,
            flare.map(|f| half_width * f),
            flare.map(|f| half_pedicle * (0.5 + 0.5 * f)),
            false,
        );
        place.piece(Part::Pedicle, shape, cortex_mm::PEDICLE, blend)
    };
    [half(front, 0.0, [1.22, 1.0], 2.6 * k), half(0.0, back, [1.0, 1.08], CHAIN_BLEND_MM)]
}

/// Half the width of the articular pillar, mm.
fn pillar_half_width_mm(d: &Vertebra, k: f64) -> f64 {
    (d.pedicle_width_mm / 2.0 * 0.55 + 2.4 * k).min(6.2 * k)
}

/// Pars interarticularis, from the junction with the pedicle down.
fn pars(place: &Place, d: &Vertebra, arch: &PosteriorArch, k: f64) -> Piece {
    let stout = pillar_half_width_mm(d, k);
    let shape = place.strut(
        arch.junction,
        arch.pars,
        [1.0, 0.25, 0.0],
        [stout + 0.3 * k, stout - 0.2 * k],
        [4.2 * k, 3.4 * k],
        false,
    );
    place.piece(Part::Pars, shape, cortex_mm::PARS, 4.0 * k)
}

/// Pedicles behind their isthmus, partes, laminae and the spinous process, which crowd the arch above where discs are low, the back is hollow or a level has slipped.
pub(super) fn arch(motion: Rigid, d: &Vertebra, k: f64) -> Vec<Piece> {
    let arch = PosteriorArch::new(d, k);
    let laminae = Side::BOTH.map(|side| {
        let place = Place { side: Some(side), motion };
        let [lateral, medial] = lamina(&place, d, &arch, k);
        let [_, pedicle] = pedicle(&place, d, k);
        [pedicle, pars(&place, d, &arch, k), lateral, medial]
    });
    let spinous = spinous(&Place { side: None, motion }, d, &arch, k);
    laminae.into_iter().flatten().chain(spinous).collect()
}

/// Lamina: a shingle from the pars back to the midline, its upper edge further forward.
fn lamina(place: &Place, d: &Vertebra, arch: &PosteriorArch, k: f64) -> [Piece; 2] {
    let half_lamina = d.lamina_height_mm / 2.0;
    let [lateral, bend, middle] = arch.lamina;
    [(lateral, bend, [0.80, 0.86], 3.6 * k), (bend, middle, [0.86, 0.95], CHAIN_BLEND_MM)].map(
        |(a, b, tall, blend)| {
            let shape = place.strut(
                a,
                b,
                [0.0, -0.32, 1.0],
                tall.map(|x| x * half_lamina),
                [3.1 * k, 3.0 * k],
                false,
            );
            place.piece(Part::Lamina, shape, cortex_mm::LAMINA, blend)
        },
    )
}

/// Spinous process: a plate, thicker along its lower and back edge, sloping down.
fn spinous(place: &Place, d: &Vertebra, arch: &PosteriorArch, k: f64) -> [Piece; 3] {
    let half_tall = d.spinous_height_mm / 2.0;
    let [base, neck, end] = arch.spinous;
    let plate = |a, b, tall: [f64; 2], thin: [f64; 2], square, blend| {
        let shape =
            place.strut(a, b, [0.0, 0.15, 1.0], tall.map(|x| x * half_tall), thin.map(|x| x * k), square);
        place.piece(Part::SpinousProcess, shape, cortex_mm::SPINOUS, blend)
    };
    let beak = place.strut(
        [0.0, arch.lamina_back_mm + d.spinous_length_mm * 0.35, neck[2] - half_tall * 0.78],
        [0.0, arch.spinous_tip[1] - 4.5 * k, end[2] - half_tall * 0.80],
        [1.0, 0.0, 0.0],
        [2.8 * k, 4.2 * k],
        [2.6 * k, 3.4 * k],
        false,
    );
    [
        plate(base, neck, [0.92, 0.86], [3.2, 2.5], false, 3.2 * k),
        plate(neck, end, [0.86, 0.98], [2.5, SPINOUS_END_HALF_THIN_MM], true, 1.0),
        place.piece(Part::SpinousProcess, beak, cortex_mm::SPINOUS, 3.0 * k),
    ]
}
