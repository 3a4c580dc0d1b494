//! The sacrum as a solid, in its own frame: origin at the S1 plate's centre, +z the plate's normal, +y posterior in it.
//!
//! Fused bodies curving back, wings to the sacroiliac joints, lateral masses, laminae with a median crest, S1 superior
//! processes, and tunnels for the first two pairs of foramina and the canal.
//!
//! Limits: segments below S2 are one tapering bar; no hiatus, no coccyx. Sizes not in the table are from memory.

use super::dimensions::Pelvis;
use super::names::{Part, Side};
use super::place::{Place, tag};
use super::superior_process::{JointState, SuperiorProcess};
use crate::geometry::sdf::{Drum, Shape};
use crate::geometry::solid::{Carve, Piece, Solid};

/// Nominal cortical thickness, mm. Derived.
const CORTEX_MM: f64 = 0.9;
/// Height of the S1 segment, mm. Memory.
const S1_HEIGHT_MM: f64 = 30.0;

/// Left posterior and anterior openings of the first foramen: centres in the sacral frame, mm.
pub(super) fn first_foramen_mm(d: &Pelvis, scale: f64) -> ([f64; 3], [f64; 3]) {
    let posterior = [d.posterior_foramen_lateral_mm, 25.0 * scale, -d.foramen_below_plate_mm];
    let anterior = [d.anterior_foramen_lateral_mm, -6.0 * scale, -d.foramen_below_plate_mm];
    (posterior, anterior)
}

/// The wing of a side: from the body and the S1 pedicle out to the joint, its upper edge falling outwards.
pub(super) fn wing(place: &Place, k: f64) -> [Piece; 2] {
    let [root, bend, end] =
        [[15.0, 3.0, -13.0], [33.0, 9.0, -16.0], [47.0, 15.0, -22.0]].map(|node| node.map(|x| x * k));
    let bar = |a, b, tall: [f64; 2], thick: [f64; 2]| {
        let shape = place.strut(a, b, [0.0, 0.0, 1.0], tall.map(|x| x * k), thick.map(|x| x * k), false);
        place.piece(Part::Ala, shape, CORTEX_MM, 5.0 * k)
    };
    [bar(root, bend, [12.5, 12.0], [11.5, 11.0]), bar(bend, end, [12.0, 14.0], [11.0, 10.5])]
}

/// Builds the sacrum.
pub(super) fn solid(d: &Pelvis, scale: f64, joint: &JointState) -> Solid {
    let k = scale;
    let at = |x: f64, y: f64, z: f64| [x * k, y * k, z * k];
    let mut solid = Solid::default();
    let middle = Place::own(None);
    let half = |x: f64| x * 0.5;

    // S1 body: a drum hung below the plate.
    let drum = Drum {
        half_width: [15.5 * k, half(d.plate_width_mm)].map(|x| x as f32),
        half_depth: [10.5 * k, half(d.plate_depth_mm)].map(|x| x as f32),
        posterior_height: (S1_HEIGHT_MM * 0.97 * k) as f32,
        anterior_height: (S1_HEIGHT_MM * k) as f32,
        waist: [0.02; 2],
        waist_flat: 0.0,
        waist_shift: 0.0,
        squareness: 0.55,
        plate_sag: [0.3, 0.8],
        posterior_dent: 1.2,
        plate_cortex_ratio: 1.5,
    };
    solid.pieces.push(Piece::hung(
        Shape::Drum(drum),
        tag(Part::Body, None),
        0.7,
        3.0,
        glam::Vec3::new(0.0, 0.0, -(S1_HEIGHT_MM * 0.4925 * k) as f32),
    ));
    for (a, b, wide, thin) in [
        (at(0.0, 2.5, -26.0), at(0.0, 7.5, -54.0), [16.5, 13.0], [9.5, 7.0]),
        (at(0.0, 7.5, -54.0), at(0.0, 7.0, -78.0), [13.0, 10.0], [7.0, 5.0]),
        (at(0.0, 7.0, -78.0), at(0.0, 0.0, -98.0), [10.0, 7.0], [5.0, 3.6]),
    ] {
        let shape = middle.strut(a, b, [1.0, 0.0, 0.0], wide.map(|x| x * k), thin.map(|x| x * k), false);
        solid.pieces.push(middle.piece(Part::Body, shape, CORTEX_MM, 4.0 * k));
    }

    let process = SuperiorProcess::of_sacrum(d, scale, joint);
    for side in Side::BOTH {
        let place = Place::own(Some(side));
        solid.pieces.extend(wing(&place, k));
        let mut add =
            |part: Part, a, b, wide_dir, wide: [f64; 2], thin: [f64; 2], cortex: f64, blend: f64| {
                let shape = place.strut(a, b, wide_dir, wide.map(|x| x * k), thin.map(|x| x * k), false);
                solid.pieces.push(place.piece(part, shape, cortex, blend * k));
            };
        let up = [0.0, 0.0, 1.0];
        // Lateral mass behind the joint surface, tapering down to the angle.
        add(
            Part::Ala,
            at(44.0, 16.0, -26.0),
            at(29.0, 16.0, -56.0),
            [1.0, 0.0, 0.35],
            [11.0, 9.0],
            [9.5, 6.5],
            CORTEX_MM,
            5.0,
        );
        add(
            Part::Ala,
            at(29.0, 16.0, -56.0),
            at(11.0, 6.0, -90.0),
            [1.0, 0.0, 0.4],
            [9.0, 6.0],
            [6.5, 4.0],
            CORTEX_MM,
            5.0,
        );
        // The bars between the foramina.
        add(
            Part::Ala,
            at(12.0, 8.0, -42.5),
            at(30.0, 14.0, -42.5),
            up,
            [6.0, 6.5],
            [8.0, 8.0],
            CORTEX_MM,
            4.0,
        );
        add(
            Part::Ala,
            at(10.0, 9.0, -66.0),
            at(22.0, 13.0, -66.0),
            up,
            [7.0, 7.0],
            [6.0, 6.0],
            CORTEX_MM,
            4.0,
        );
        // Bone lateral of the foramina.
        add(
            Part::Ala,
            at(30.5, 12.0, -20.0),
            at(27.0, 15.0, -58.0),
            [1.0, 0.0, 0.0],
            [7.0, 6.0],
            [9.0, 7.5],
            CORTEX_MM,
            4.0,
        );
        // Roof of the canal.
        add(Part::Lamina, at(24.0, 22.0, -19.0), at(1.0, 31.5, -17.0), up, [7.5, 8.5], [3.2, 3.2], 1.0, 3.0);
        add(Part::Lamina, at(22.0, 24.0, -42.0), at(1.0, 29.5, -42.0), up, [7.0, 15.0], [3.0, 3.0], 1.0, 3.0);
        add(
            Part::Lamina,
            at(17.0, 20.0, -66.0),
            at(1.0, 24.0, -66.0),
            up,
            [12.0, 14.0],
            [2.6, 2.6],
            1.0,
            3.0,
        );
        solid.pieces.extend(process.pieces(&place));

        let (posterior, anterior) = first_foramen_mm(d, scale);
        let back = [2.0 * posterior[0] - anterior[0], 2.0 * posterior[1] - anterior[1], posterior[2]];
        let front = [2.0 * anterior[0] - posterior[0], 2.0 * anterior[1] - posterior[1], anterior[2]];
        let r = |x: f64| x * k;
        let tunnels = [
            (anterior, front, d.anterior_foramen_radius_mm, d.anterior_foramen_radius_mm * 1.2),
            (anterior, back, d.anterior_foramen_radius_mm, d.posterior_foramen_radius_mm * 0.9),
            (at(15.0, -2.0, -54.0), at(16.5, 34.0, -54.0), 5.4, 3.2),
        ];
        for (a, b, from, to) in tunnels {
            let shape = place.strut(a, b, up, [r(from) * 0.92, r(to) * 0.92], [r(from), r(to)], false);
            solid.carves.push(Carve { piece: place.piece(Part::Ala, shape, 1.0, 1.0), gap_mm: 0.0 });
        }
    }

    let crest = |a, b, tall: [f64; 2], thin: [f64; 2]| {
        let shape = middle.strut(a, b, [0.0, 1.0, 0.0], tall.map(|x| x * k), thin.map(|x| x * k), false);
        middle.piece(Part::MedianCrest, shape, 0.9, 3.0 * k)
    };
    solid.pieces.push(crest(at(0.0, 35.0, -13.0), at(0.0, 36.0, -29.0), [6.5, 4.5], [3.0, 2.6]));
    solid.pieces.push(crest(at(0.0, 34.0, -38.0), at(0.0, 31.0, -66.0), [5.0, 3.0], [2.6, 2.4]));
    // Canal, open above.
    for (a, b, wide, deep) in [
        (at(0.0, 27.0, 14.0), at(0.0, 20.5, -24.0), [15.0, 12.5], [8.5, 7.0]),
        (at(0.0, 20.5, -24.0), at(0.0, 18.0, -75.0), [12.5, 7.0], [6.0, 3.4]),
    ] {
        let shape = middle.strut(a, b, [1.0, 0.0, 0.0], wide.map(|x| x * k), deep.map(|x| x * k), false);
        solid.carves.push(Carve { piece: middle.piece(Part::Lamina, shape, 1.0, 1.0), gap_mm: 0.0 });
    }
    solid
}
