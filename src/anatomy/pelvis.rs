//! The iliac wings as solids, in the sacrum's frame: origin at the S1 plate's centre, +z the plate's normal, +y posterior in it. A
//! pelvis turns as one piece: with the sacral slope the wings turn too.
//!
//! A curved plate, hollow in front, thick behind where it meets the sacrum, with a beaded border (the crest). Its outline, middle
//! surface and thickness were measured on one man (the Visible Human male, as segmented in the ArtiSynth lumbosacral model,
//! github RemusR9/artisynth_lumbosacralSpineModel, BSD-3) and brought to the average's size; they are the coefficients of smooth
//! splines, rounded.
//!
//! How high the crest stands is the patient's own: a taller wing is drawn out from the sciatic notch upwards, along the plate.
//!
//! Limits: ends above the hip joint, which no lumbar view shows; left and right are mirror images.

use super::names::{Part, Side};
use super::place::{Place, tag};
use crate::geometry::frame::rotation_x;
use crate::geometry::sdf::{Bead, Shape, Sheet};
use crate::geometry::solid::{Piece, Solid};
use glam::{DVec2, DVec3, Mat3, Vec2, Vec3};

/// The average's size against the measured man's: he was tall, but his pelvis is 282 mm wide as the average one is (about 280: memory).
const SIZE: f64 = 1.0;
/// Middle of the left plate in the man's sacral frame, mm at his size.
const MIDDLE_MM: DVec3 = DVec3::new(88.0, -4.0, -14.0);
/// Direction forwards along the plate, and up along it, in the man's sacral frame.
const FORWARDS: DVec3 = DVec3::new(0.5, -0.866_025_4, 0.0);
const UPWARDS: DVec3 = DVec3::new(0.6, 0.346_410_2, 0.721_110_3);
/// How far the average's wings are turned against the sacrum from the man's, front upwards, about the sacroiliac joints. His pelvic
/// incidence is 39 degrees (measured on the mesh: a sphere fitted to the acetabulum), the average one 54.7 ± 10.6 (Vialle 2005: memory);
/// this brings it to 51.
const TURN_DEG: f64 = -15.0;
/// The middle of the sacroiliac joint in the sagittal plane, mm at the man's size.
const TURN_ABOUT_MM: DVec3 = DVec3::new(0.0, 8.0, -35.0);
/// Distance of the outline's corners from the middle every 15 degrees, from forwards over upwards, mm.
const OUTLINE_MM: [f64; 24] = [
    65.0, 80.0, 73.0, 67.0, 63.0, 64.0, 61.0, 62.0, 64.0, 65.0, 67.0, 69.0, 77.0, 83.0, 89.0, 85.0, 71.0,
    46.0, 65.0, 67.0, 66.0, 89.0, 78.0, 71.0,
];
/// Where the splines' first coefficients stand (s, t), and their spacing, mm.
const SPLINE_CORNER_MM: DVec2 = DVec2::new(-82.0, -72.0);
const SPLINE_STEP_MM: DVec2 = DVec2::new(30.0, 25.0);
/// Middle surface above the plane: coefficients, from behind forwards in a row, rows from below, mm.
const BOW_MM: [[f64; 8]; 8] = [
    [-35.5, -39.0, -40.5, -39.0, -31.0, -17.5, -1.5, 16.0],
    [-22.0, -24.0, -23.5, -21.5, -21.0, -11.0, 4.0, 19.0],
    [-11.0, -8.0, -10.5, -5.0, -10.5, -5.0, 8.5, 21.0],
    [-4.0, 5.0, 5.5, -1.5, -7.5, 1.0, 11.0, 20.5],
    [5.0, 11.0, 9.0, -7.0, -6.5, 4.5, 11.0, 19.0],
    [12.5, 10.5, 5.0, -6.0, -6.0, 4.0, 10.5, 16.0],
    [16.5, 10.0, 4.0, -2.5, -3.5, 1.5, 7.0, 12.0],
    [19.0, 11.0, 4.5, 0.5, -1.0, -0.5, 3.0, 7.0],
];
/// Half the thickness, the same way, mm.
const HALF_MM: [[f64; 8]; 8] = [
    [-3.0, -3.5, -1.5, 4.5, 17.5, 24.5, 23.0, 17.0],
    [2.0, 4.5, 5.5, 7.5, 23.0, 22.5, 13.0, 5.0],
    [5.5, 11.5, 12.0, 14.0, 18.5, 14.5, 4.0, -2.5],
    [6.0, 10.0, 11.5, 5.5, 7.0, 7.0, 1.5, -3.5],
    [8.0, 8.0, 5.5, 0.0, 6.0, 6.5, 4.0, 0.0],
    [9.0, 7.5, 4.5, 2.0, 7.0, 7.5, 7.0, 5.0],
    [9.0, 8.0, 7.0, 7.5, 10.0, 10.5, 10.5, 10.0],
    [8.5, 9.0, 10.5, 12.0, 13.0, 13.5, 14.0, 14.5],
];
/// The wing is drawn out from here upwards, t in mm: the sciatic notch.
const NOTCH_MM: f64 = -50.0;
/// Width of the crest's bead, mm.
const BEAD_MM: f64 = 13.0;

/// The iliac wings of a patient.
#[derive(Clone, Debug)]
pub(super) struct Wing {
    scale: f64,
    /// How much taller it is above the notch than the man's.
    stretch: f64,
    /// Highest point of the crest, in the sacrum's frame.
    pub(super) crest_top: DVec3,
}

/// What the border is made of at one of the outline's corners.
struct Rim {
    /// Where its middle stands in an unstretched wing, mm from the notch, and what stretching adds to it per unit.
    fixed: DVec3,
    drawn_out: DVec3,
    /// Half its thickness, mm.
    half: f64,
}

impl Wing {
    /// The wing whose crest tops out at `height_mm` above the S1 plate's centre along `up` (the patient's long axis in the sacrum's
    /// frame). `scale` is the patient's size against the average.
    pub(super) fn reaching(scale: f64, up: DVec3, height_mm: f64) -> Self {
        let k = scale * SIZE;
        let rims = rims(k);
        // Each place of the border would reach the height at its own stretch: the crest's top is the one that does so first.
        let needed = |rim: &Rim| (height_mm - rim.half - rim.fixed.dot(up)) / rim.drawn_out.dot(up);
        let first = rims
            .iter()
            .filter(|rim| rim.drawn_out.dot(up) > 0.0)
            .min_by(|a, b| needed(a).total_cmp(&needed(b)))
            .unwrap_or(&rims[0]);
        let stretch = needed(first);
        Self { scale: k, stretch, crest_top: first.fixed + first.drawn_out * stretch + up * first.half }
    }

    /// The plate that it is made of, in the plate's own frame.
    pub(super) fn plate(&self) -> Sheet {
        plate(self.stretch, self.scale)
    }

    /// The wing of a side, made of the plate.
    pub(super) fn piece(&self, plate: &Sheet, side: Side) -> Piece {
        let place = Place::own(Some(side));
        let [s, t, n] = axes().map(|axis| place.direction(axis.to_array()));
        let origin = place.point((middle() * self.scale).to_array());
        let sheet = plate.placed(origin, Mat3::from_cols(s, t, n));
        Piece::new(Shape::Sheet(sheet), tag(Part::IliacWing, Some(side)), 0.9, 3.0)
    }
}

/// A wing as a bone of its own.
pub(super) fn solid(wing: Piece) -> Solid {
    Solid { pieces: vec![wing], carves: Vec::new() }
}

/// The plate in its own frame, `stretch` times as tall above the notch, at a scale against the man.
fn plate(stretch: f64, k: f64) -> Sheet {
    let above = |t: f64, factor: f64| if t > NOTCH_MM { NOTCH_MM + (t - NOTCH_MM) * factor } else { t };
    let drawn_out = |q: DVec2| (DVec2::new(q.x, above(q.y, stretch)) * k).as_vec2();
    let outline: Vec<Vec2> = outline().into_iter().map(drawn_out).collect();
    let bead = Bead { width: (BEAD_MM * k) as f32, above: 0.0 };
    Sheet::new(Vec3::ZERO, Mat3::IDENTITY, &outline, bead, |q| {
        let q = q.as_dvec2() / k;
        let q = DVec2::new(q.x, above(q.y, 1.0 / stretch));
        ((spline(&BOW_MM, q) * k) as f32, (spline(&HALF_MM, q) * k) as f32)
    })
}

/// Forwards and upwards along the plate, and out of it to the belly, in the sacrum's frame.
fn axes() -> [DVec3; 3] {
    let turn = rotation_x(TURN_DEG.to_radians());
    [FORWARDS, UPWARDS, FORWARDS.cross(UPWARDS)].map(|axis| turn * axis)
}

/// Middle of the left plate in the sacrum's frame, mm at the man's size.
fn middle() -> DVec3 {
    TURN_ABOUT_MM + rotation_x(TURN_DEG.to_radians()) * (MIDDLE_MM - TURN_ABOUT_MM)
}

/// The outline of the average's plate: a closed smooth curve in (s, t), mm.
fn outline() -> Vec<DVec2> {
    let corners: Vec<DVec2> = OUTLINE_MM
        .iter()
        .enumerate()
        .map(|(i, &r)| {
            let (sin, cos) = libm::sincos(15.0_f64.to_radians() * i as f64);
            DVec2::new(r * cos, r * sin)
        })
        .collect();
    rounded(&corners)
}

/// The border above the middle, place by place.
fn rims(k: f64) -> Vec<Rim> {
    let axes = axes();
    let outline = outline();
    let count = outline.len();
    let at = |s: f64, t: f64, n: f64| axes[0] * s + axes[1] * t + axes[2] * n;
    (0..count)
        .filter(|&i| outline[i].y > 0.0)
        .map(|i| {
            let q = outline[i];
            let half = spline(&HALF_MM, q);
            // The outline runs anticlockwise: outwards lies to the right of it.
            let along = (outline[(i + 1) % count] - outline[(i + count - 1) % count]).normalize();
            let inner = DVec2::new(-along.y, along.x) * half;
            let fixed = at(q.x + inner.x, NOTCH_MM + inner.y, spline(&BOW_MM, q + inner));
            Rim { fixed: (middle() + fixed) * k, drawn_out: axes[1] * ((q.y - NOTCH_MM) * k), half: half * k }
        })
        .collect()
}

/// A uniform quadratic spline of two variables at `q`.
fn spline(rows: &[[f64; 8]; 8], q: DVec2) -> f64 {
    let u = ((q - SPLINE_CORNER_MM) / SPLINE_STEP_MM).clamp(DVec2::ZERO, DVec2::splat(6.0));
    let cell = u.floor().min(DVec2::splat(5.0));
    let weights = |f: f64| [0.5 * (1.0 - f) * (1.0 - f), 0.5 + f - f * f, 0.5 * f * f];
    let (across, up) = (weights(u.x - cell.x), weights(u.y - cell.y));
    let (i, j) = (cell.x as usize, cell.y as usize);
    (0..3).map(|b| up[b] * (0..3).map(|a| across[a] * rows[j + b][i + a]).sum::<f64>()).sum()
}

/// A closed polygon with its corners cut (Chaikin 1974), so that no film line has a kink.
fn rounded(corners: &[DVec2]) -> Vec<DVec2> {
    let next = corners.iter().cycle().skip(1);
    corners.iter().zip(next).flat_map(|(a, b)| [a.lerp(*b, 0.25), a.lerp(*b, 0.75)]).collect()
}

/// The crest alone: the strip of the wing along its upper border.
pub(super) fn crest(wing: &Solid) -> Option<Solid> {
    let piece = wing.pieces.first()?;
    let Shape::Sheet(sheet) = &piece.shape else { return None };
    let strip = Shape::Sheet(sheet.upper_border());
    let pieces = vec![Piece::new(strip, piece.tag + 1, piece.cortex_mm, piece.blend_mm)];
    Some(Solid { pieces, carves: Vec::new() })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The highest place on a fine lattice around the top is where it was asked for, whatever the slope and the height.
    #[test]
    fn crest_tops_out_where_it_was_asked_to() {
        for (slope_deg, height) in [(29.0, 45.0), (41.0, 45.0), (20.0, 36.0), (29.0, 65.0)] {
            let turn = rotation_x(f64::to_radians(slope_deg));
            let wing = Wing::reaching(1.0, turn.transpose() * DVec3::Z, height);
            let top = turn * wing.crest_top;
            assert!((top.z - height).abs() < 0.01);
            for side in Side::BOTH {
                let solid = solid(wing.piece(&wing.plate(), side));
                let mut highest = f64::MIN;
                for i in 0..60 * 60 * 60 {
                    let step = DVec3::new((i % 60) as f64, (i / 60 % 60) as f64, (i / 3600) as f64) - 30.0;
                    let p = top + step * DVec3::new(1.0, 1.0, 0.5);
                    let p = turn.transpose() * DVec3::new(side.sign() * p.x, p.y, p.z);
                    if solid.sample(p.as_vec3()).distance < 0.0 {
                        highest = highest.max((turn * p).z);
                    }
                }
                assert!((highest - height).abs() < 1.5, "{side}, {slope_deg}: {highest} for {height}");
            }
        }
    }
}
