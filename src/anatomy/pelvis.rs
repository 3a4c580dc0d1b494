//! The iliac wings as solids, in the pelvic frame: origin at the S1 plate's centre, axes those of the patient.
//!
//! A curved plate with a beaded border (the crest), thickened behind where it meets the sacrum. Outline from memory:
//! 150 mm from posterior to anterior superior spine, wing leaning outwards.
//!
//! Limits: ends above the hip joint, which no lumbar view shows.

use super::names::{Part, Side};
use super::place::{Place, tag};
use crate::geometry::sdf::{Shape, Sheet};
use crate::geometry::solid::{Piece, Solid};
use glam::{DVec3, Mat3, Vec2};

/// Outline in the wing's plane, mm: s from the posterior superior spine forwards, t upwards. Memory.
const OUTLINE_MM: [[f64; 2]; 14] = [
    [0.0, -6.0],
    [5.0, 10.0],
    [20.0, 33.0],
    [42.0, 55.0],
    [68.0, 66.0],
    [95.0, 63.0],
    [125.0, 44.0],
    [148.0, 14.0],
    [147.0, 2.0],
    [136.0, -22.0],
    [112.0, -48.0],
    [62.0, -44.0],
    [44.0, -20.0],
    [8.0, -24.0],
];
/// Highest point of the outline above the posterior superior spine's corner, mm.
const CREST_TOP_MM: f64 = 66.0;
/// Posterior superior spine in the pelvic frame (left), mm. Memory.
const POSTERIOR_SPINE_MM: [f64; 2] = [44.0, 52.0];
/// How far the wing leans outwards, radians (about 15 degrees). Memory.
const LEAN: f64 = 0.26;
/// Direction of the wing seen from above, radians from the sagittal plane forwards and outwards. Memory.
const SPREAD: f64 = 0.50;

/// Curvature of the wing's middle surface along s and t, 1/mm. Memory.
const BOW_PER_MM: [f32; 2] = [-0.0018, 0.0008];

struct Wing {
    origin: DVec3,
    s: DVec3,
    t: DVec3,
    n: DVec3,
}

/// The left wing's frame such that the crest tops out at `crest_top_mm` above the S1 plate's centre.
fn wing(scale: f64, crest_top_mm: f64) -> Wing {
    let (sin, cos) = libm::sincos(SPREAD);
    let s = DVec3::new(sin, -cos, 0.0);
    let outwards = DVec3::new(cos, sin, 0.0);
    let (lean_sin, lean_cos) = libm::sincos(LEAN);
    let t = outwards * lean_sin + DVec3::Z * lean_cos;
    let origin = DVec3::new(
        POSTERIOR_SPINE_MM[0] * scale,
        POSTERIOR_SPINE_MM[1] * scale,
        crest_top_mm - CREST_TOP_MM * scale * lean_cos,
    );
    Wing { origin, s, t, n: s.cross(t) }
}

/// Highest points of the left crest, mm in the pelvic frame.
pub(super) fn crest_top(scale: f64, crest_top_mm: f64) -> DVec3 {
    let wing = wing(scale, crest_top_mm);
    wing.origin + (wing.s * 74.0 + wing.t * CREST_TOP_MM) * scale
}

/// Builds the wing of a side.
pub(super) fn solid(side: Side, scale: f64, crest_top_mm: f64) -> Solid {
    let k = scale;
    let place = Place::own(Some(side));
    let wing = wing(scale, crest_top_mm);
    let point = |v: DVec3| place.point(v.to_array());
    let direction = |v: DVec3| place.direction(v.to_array());
    let sheet = Sheet {
        origin: point(wing.origin),
        axes: Mat3::from_cols(direction(wing.s), direction(wing.t), direction(wing.n)),
        outline: rounded(&OUTLINE_MM.map(|c| Vec2::new((c[0] * k) as f32, (c[1] * k) as f32))),
        half_thickness: 3.2 * k as f32,
        edge_half_thickness: 5.6 * k as f32,
        bead_width: 13.0 * k as f32,
        flat_at: Vec2::new(70.0, 0.0) * k as f32,
        // Hollow towards the belly: the ends of the wing bend inwards.
        bow: Vec2::new(BOW_PER_MM[0], BOW_PER_MM[1]) / k as f32,
    };
    let mut solid = Solid::default();
    solid.pieces.push(Piece::new(Shape::Sheet(sheet), tag(Part::IliacWing, Some(side)), 0.9, 3.0));
    let along =
        |s: f64, t: f64, n: f64| (wing.origin + (wing.s * s + wing.t * t + wing.n * n) * k).to_array();
    // Behind, where the ligaments hold it to the sacrum, the wing is thick.
    for (a, b, wide, thin) in [
        (along(6.0, -10.0, 0.0), along(34.0, 22.0, 0.0), [10.0, 13.0], [7.0, 7.5]),
        (along(36.0, -8.0, 0.0), along(64.0, -34.0, 0.0), [12.0, 13.0], [6.5, 8.0]),
    ] {
        let shape = place.strut(a, b, wing.t.to_array(), wide.map(|x| x * k), thin.map(|x| x * k), false);
        solid.pieces.push(place.piece(Part::IliacWing, shape, 0.9, 6.0 * k));
    }
    solid
}

/// A closed polygon with its corners cut (Chaikin 1974, twice), so that no film line has a kink.
fn rounded(corners: &[Vec2]) -> Vec<Vec2> {
    let cut = |list: &[Vec2]| -> Vec<Vec2> {
        (0..list.len())
            .flat_map(|i| {
                let (a, b) = (list[i], list[(i + 1) % list.len()]);
                [a.lerp(b, 0.25), a.lerp(b, 0.75)]
            })
            .collect()
    };
    cut(&cut(corners))
}

/// The crest alone: the strip of the wing along its upper border.
pub(super) fn crest(wing: &Solid) -> Option<Solid> {
    let piece = wing.pieces.first()?;
    let Shape::Sheet(sheet) = &piece.shape else { return None };
    let middle = sheet.flat_at;
    let border: Vec<Vec2> = sheet.outline.iter().copied().filter(|c| c.y > middle.y).collect();
    let width = sheet.bead_width;
    let inner = border.iter().rev().map(|&c| c + (middle - c).normalize_or(Vec2::NEG_Y) * width);
    let outline = border.iter().copied().chain(inner).collect();
    let strip = Shape::Sheet(Sheet { outline, half_thickness: sheet.edge_half_thickness, ..sheet.clone() });
    let pieces = vec![Piece::new(strip, piece.tag + 1, piece.cortex_mm, piece.blend_mm)];
    Some(Solid { pieces, carves: Vec::new() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use glam::Vec3;

    #[test]
    fn crest_tops_out_where_it_was_asked_to() {
        for side in Side::BOTH {
            let solid = solid(side, 1.0, 40.0);
            let top = crest_top(1.0, 40.0);
            let mut highest = f32::MIN;
            for i in 0..600 {
                for j in 0..100 {
                    let p = Vec3::new(
                        (side.sign() as f32) * (40.0 + i as f32 * 0.2),
                        top.y as f32,
                        30.0 + j as f32 * 0.2,
                    );
                    if solid.sample(p).distance < 0.0 {
                        highest = highest.max(p.z);
                    }
                }
            }
            assert!((highest - 40.0).abs() < 3.0, "{side}: {highest}");
        }
    }
}
