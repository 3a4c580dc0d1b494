//! One vertebra as a solid, in its own frame: origin at the body's centre, +x left, +y posterior, +z cranial, mid-plane z = 0.
//!
//! Body, pedicles, articular pillars and processes are bars and drums at the places that the dimension table gives; the
//! inferior articular processes grow to meet the neighbour's superior ones and are carved by them with the joint space
//! around, so that every joint is open and congruent in every posture.
//!
//! Limits: no accessory process, no nutrient foramina; left and right are mirror images.

use super::dimensions::{
    JOINT_SPACE_MM, LOWER_PLATE_SAG_MM, PEDICLE_BEHIND_WALL_MM, Pelvis, UPPER_PLATE_SAG_MM, Vertebra,
};
use super::names::{Part, Side};
use super::place::{Place, tag};
use super::posterior_arch::{InferiorProcess, PosteriorArch, SPINOUS_END_HALF_THIN_MM};
use super::sacrum;
use crate::geometry::frame::Rigid;
use crate::geometry::sdf::{Drum, Ellipsoid, Shape, Strut};
use crate::geometry::solid::{Carve, Facet, Piece, Solid};
use glam::Mat3;

/// Nominal cortical thickness by part, mm. Derived: shell of the body about 0.5 (memory), pedicle and posterior
/// elements thicker; chosen within that so that the lines of a film appear in their order of strength.
mod cortex_mm {
    pub(super) const BODY_WALL: f64 = 0.55;
    pub(super) const PEDICLE: f64 = 1.2;
    pub(super) const PARS: f64 = 1.25;
    pub(super) const LAMINA: f64 = 1.1;
    pub(super) const ARTICULAR: f64 = 1.25;
    pub(super) const TRANSVERSE: f64 = 1.0;
    pub(super) const SPINOUS: f64 = 0.65;
    /// Plates over walls.
    pub(super) const PLATE_RATIO: f32 = 1.45;
}

/// Thickness of the superior process in front of its facet, mm.
const FACET_BACKING_MM: f64 = 3.0;
/// Half the articular process's width across the facet, mm: facets are 14–15 wide (within Panjabi 1993: read).
const PROCESS_HALF_WIDTH_MM: f64 = 7.0;
/// Facet's middle below the process's tip, mm: facets are 15–17 high (within Panjabi 1993: read).
const FACET_BELOW_TIP_MM: f64 = 8.5;

/// Blend radius between two bars that continue each other, mm: a larger one would swell the joint, where both surfaces
/// coincide, by a quarter of itself.
const CHAIN_BLEND_MM: f64 = 0.4;

/// What age has done to a pair of facet joints.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct JointState {
    /// Growth (hypertrophy), mm.
    pub(super) swelling_mm: f64,
    /// Bone worn off the superior process's facet, mm.
    pub(super) worn_mm: f64,
    /// How far the inferior process of the level above has slid forwards along the facet, mm.
    pub(super) slide_mm: f64,
}

/// What the joint between two levels needs to know of the lower one, in the lower one's own frame (left side).
#[derive(Clone, Copy, Debug)]
pub(super) struct SuperiorProcess {
    /// Root of the process on the pillar.
    pub(super) root: [f64; 3],
    /// Tip: growth thickens the process and leaves it as high as it was.
    pub(super) tip: [f64; 3],
    /// Facet plane from the sagittal plane, radians.
    pub(super) plane: f64,
    /// Size against the average.
    pub(super) scale: f64,
    /// State of the joint (all 0 in health).
    pub(super) joint: JointState,
}

impl SuperiorProcess {
    /// Of a vertebra.
    pub(super) fn of_vertebra(d: &Vertebra, scale: f64, joint: &JointState) -> Self {
        let wall = d.posterior_wall_mm();
        let [x, _, z] = d.pedicle_centre_mm();
        Self {
            root: [x + 1.4 * scale, wall + 9.5 * scale, z + 1.0 * scale],
            tip: [
                d.superior_process_lateral_mm,
                wall + d.superior_process_behind_mm,
                d.half_height_mm() + d.superior_process_rise_mm,
            ],
            plane: d.facet_plane_deg.to_radians(),
            scale,
            joint: *joint,
        }
    }

    /// Of the sacrum, whose frame has its origin in the S1 plate.
    pub(super) fn of_sacrum(d: &Pelvis, scale: f64, joint: &JointState) -> Self {
        let edge = d.plate_depth_mm / 2.0;
        let tip =
            [d.superior_process_lateral_mm, edge + d.superior_process_behind_mm, d.superior_process_rise_mm];
        Self {
            root: [tip[0] + 0.8 * scale, tip[1] - 4.0 * scale, tip[2] - 21.0 * scale],
            tip,
            plane: d.facet_plane_deg.to_radians(),
            scale,
            joint: *joint,
        }
    }

    /// Unit normal of the left facet, out of the process: backwards and to the midline.
    pub(super) fn normal(&self) -> [f64; 3] {
        let (s, c) = libm::sincos(self.plane);
        [-c, s, 0.0]
    }

    fn tangent(&self) -> [f64; 3] {
        let (s, c) = libm::sincos(self.plane);
        [s, c, 0.0]
    }

    /// Middle of the left facet.
    pub(super) fn facet_middle(&self) -> [f64; 3] {
        let n = self.normal();
        let backing = FACET_BACKING_MM * self.scale - self.joint.worn_mm;
        [
            self.tip[0] + n[0] * backing,
            self.tip[1] + n[1] * backing,
            self.tip[2] - FACET_BELOW_TIP_MM * self.scale,
        ]
    }

    /// Where the middle of the upper neighbour's facet lies on this one.
    pub(super) fn joint_middle(&self) -> [f64; 3] {
        let (m, t) = (self.facet_middle(), self.tangent());
        std::array::from_fn(|i| m[i] - t[i] * self.joint.slide_mm)
    }

    /// The process as a piece, and the mamillary bump behind it.
    pub(super) fn pieces(&self, place: &Place) -> [Piece; 2] {
        let k = self.scale;
        let grown = self.joint.swelling_mm;
        let cap = 2.5 * k + 0.5 * grown;
        let top = [self.tip[0], self.tip[1], self.tip[2] - cap];
        let wide = PROCESS_HALF_WIDTH_MM * k + grown;
        let shape = place.strut(
            self.root,
            top,
            self.tangent(),
            [1.05 * wide, 0.66 * wide],
            [5.8 * k + 0.5 * grown, cap],
            false,
        );
        let facet = Facet {
            point: place.point(self.facet_middle()),
            normal: place.direction(self.normal()),
            tangent: place.direction(self.tangent()),
            // Sagittal (upper) joints are more hollow than frontal (lower) ones. Memory.
            curvature: (0.030 - 0.022 * (self.plane / 0.95)).max(0.004) as f32,
        };
        let process = place
            .piece(Part::SuperiorArticularProcess, shape, cortex_mm::ARTICULAR, 3.0 * k)
            .with_facet(facet);
        let t = self.tangent();
        let bump = Shape::Ellipsoid(Ellipsoid {
            centre: place.point([
                self.tip[0] + 4.6 * k * t[0] + 0.5 * k,
                self.tip[1] + 4.6 * k * t[1] - 0.5 * k,
                self.tip[2] - 10.5 * k,
            ]),
            axes: Mat3::IDENTITY,
            radii: glam::Vec3::new(3.0, 3.2, 5.2) * (k as f32) + grown as f32 * 0.5,
        });
        [
            process,
            place
                .piece(Part::SuperiorArticularProcess, bump, cortex_mm::ARTICULAR, 3.0 * k)
                .with_facet(facet),
        ]
    }
}

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
        waist: 0.085,
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
            solid.pieces.push(place.piece(
                Part::InferiorArticularProcess,
                shape,
                cortex_mm::ARTICULAR,
                blend,
            ));
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
