//! A loft: a smooth axis with sections along it. Pedicles, processes and laminae are lofts.
//!
//! The sections stand on parallel planes across the chord from the first section's centre to the last one's, at `t` from 0 to 1 along it.
//! Centre, half widths, squareness and the section's own wide direction are natural cubic splines of `t` (twice continuously
//! differentiable), kept as truncated powers, `f(t) = c0 + c1 t + Σ cj (t - tj)³₊`, which needs no search for the segment.
//!
//! Within its plane a section is `(X² + Y²)² - 2 q X² Y² = 1` with X along the wide axis over the half width, Y across it over the half
//! thickness: an ellipse at squareness q = 0, a superellipse of power 4 at q = 1. Beyond the ends a third term `W²` closes it with a cap.
//!
//! Distance: of first order, `(N - 1) / |∇N|`, the gradient with its part along the chord, so that an axis that leans against its chord
//! and a section that widens do not thicken the cortex under the surface.
//!
//! Far away it is at least the distance to a ball around the loft.
//!
//! Limits: the axis must not turn back on its chord; a section that leans by more than about 60 degrees against its own part of the
//! axis should be another loft.

use glam::{DVec3, Vec3};

/// One section of a loft.
#[derive(Clone, Copy, Debug)]
pub struct Section {
    /// Centre, mm.
    pub centre: DVec3,
    /// Direction of the wide axis; what of it lies along the chord is dropped.
    pub wide: DVec3,
    /// Half the width along `wide`, mm.
    pub half_wide: f64,
    /// Half the thickness across it, mm.
    pub half_thin: f64,
    /// 0 an ellipse, 1 a superellipse of power 4.
    pub squareness: f64,
}

/// Most sections that a loft can have.
pub const MOST_SECTIONS: usize = 8;
/// Further out than this, in half widths, a section that widens along the axis no longer tilts the wall.
const NEAR: f32 = 1.2;
/// Splines of a loft: centre along u and v, half width, half thickness, wide axis along u and v, squareness.
const SPLINES: usize = 7;

/// A solid with a smooth axis.
#[derive(Clone, Debug)]
pub struct Loft {
    origin: Vec3,
    axis: Vec3,
    u: Vec3,
    v: Vec3,
    length: f32,
    per_length: f32,
    cap: [f32; 2],
    /// Where it begins and ends, as shares of the chord.
    span: [f32; 2],
    /// Interior knots.
    knots: [f32; MOST_SECTIONS - 2],
    interior: usize,
    /// For each spline: value and slope at 0, t³, then one coefficient a knot.
    splines: [[f32; MOST_SECTIONS + 1]; SPLINES],
    ball: (Vec3, f32),
}

impl Loft {
    /// From two to eight sections in their order along the axis, and the lengths of the caps beyond the first and the last, mm.
    pub fn new(sections: &[Section], cap_mm: [f64; 2]) -> Self {
        let count = sections.len().clamp(2, MOST_SECTIONS);
        let sections = &sections[..count.min(sections.len())];
        let (first, last) = (sections[0].centre, sections[sections.len() - 1].centre);
        let chord = last - first;
        let length = chord.length().max(1e-3);
        let axis = chord / length;
        let across = |d: DVec3| (d - axis * d.dot(axis)).normalize_or(axis.any_orthonormal_vector());
        let u = across(sections[0].wide);
        let v = axis.cross(u);
        let mut at = [0.0; MOST_SECTIONS];
        for (i, s) in sections.iter().enumerate() {
            let t = (s.centre - first).dot(axis) / length;
            // Sections in order: a spline needs rising knots.
            at[i] = if i == 0 { 0.0 } else { t.max(at[i - 1] + 0.02) };
        }
        let stretch = 1.0 / at[count - 1];
        at.iter_mut().for_each(|t| *t *= stretch);
        let values = |f: &dyn Fn(&Section) -> f64| {
            let mut y = [0.0; MOST_SECTIONS];
            for (slot, s) in y.iter_mut().zip(sections) {
                *slot = f(s);
            }
            truncated_powers(&at[..count], &y[..count])
        };
        let wide = |s: &Section| across(s.wide);
        let splines = [
            values(&|s| (s.centre - first).dot(u)),
            values(&|s| (s.centre - first).dot(v)),
            values(&|s| s.half_wide),
            values(&|s| s.half_thin),
            values(&|s| wide(s).dot(u)),
            values(&|s| wide(s).dot(v)),
            values(&|s| s.squareness),
        ];
        let mut knots = [2.0; MOST_SECTIONS - 2];
        for (knot, &t) in knots.iter_mut().zip(&at[1..count - 1]) {
            *knot = t as f32;
        }
        let middle = (first + last) / 2.0;
        let reach = sections
            .iter()
            .map(|s| (s.centre - middle).length() + 1.19 * s.half_wide.max(s.half_thin))
            .fold(0.0, f64::max);
        Self {
            origin: first.as_vec3(),
            axis: axis.as_vec3(),
            u: u.as_vec3(),
            v: v.as_vec3(),
            length: length as f32,
            per_length: (1.0 / length) as f32,
            cap: cap_mm.map(|c| c as f32),
            span: [0.0, 1.0],
            knots,
            interior: count - 2,
            splines,
            // Between sections the spline may swing out a little.
            ball: (middle.as_vec3(), (reach + cap_mm[0].max(cap_mm[1]) + 0.5) as f32),
        }
    }

    /// The part of it between two shares of its chord, with a cap of `cap_mm` where it was cut: two such parts continue each other.
    pub fn between(mut self, span: [f32; 2], cap_mm: f32) -> Self {
        for (end, whole) in [(0, 0.0), (1, 1.0)] {
            if span[end] != whole {
                self.cap[end] = cap_mm;
            }
        }
        self.span = span;
        self
    }

    /// First-order distance, mm.
    pub fn distance(&self, p: Vec3) -> f32 {
        match self.interior {
            0..=2 => self.at::<2>(p),
            3 => self.at::<3>(p),
            4 => self.at::<4>(p),
            5 => self.at::<5>(p),
            _ => self.at::<6>(p),
        }
    }

    /// [`Self::distance`] of many points.
    pub fn distances(&self, points: &[Vec3], out: &mut [f32]) {
        match self.interior {
            0..=2 => points.iter().zip(out).for_each(|(&p, d)| *d = self.at::<2>(p)),
            3 => points.iter().zip(out).for_each(|(&p, d)| *d = self.at::<3>(p)),
            4 => points.iter().zip(out).for_each(|(&p, d)| *d = self.at::<4>(p)),
            5 => points.iter().zip(out).for_each(|(&p, d)| *d = self.at::<5>(p)),
            _ => points.iter().zip(out).for_each(|(&p, d)| *d = self.at::<6>(p)),
        }
    }

    #[inline(always)]
    fn at<const KNOTS: usize>(&self, p: Vec3) -> f32 {
        let r = p - self.origin;
        let along = r.dot(self.axis);
        let t = (along * self.per_length).clamp(self.span[0], self.span[1]);
        let beyond = along - t * self.length;
        let mut cubes = [0.0_f32; KNOTS];
        let mut squares = [0.0_f32; KNOTS];
        for j in 0..KNOTS {
            let past = (t - self.knots[j]).max(0.0);
            squares[j] = 3.0 * past * past;
            cubes[j] = past * past * past;
        }
        let tt = t * t;
        let spline = |c: &[f32; MOST_SECTIONS + 1]| {
            let mut value = c[0] + t * (c[1] + tt * c[2]);
            let mut slope = c[1] + 3.0 * tt * c[2];
            for j in 0..KNOTS {
                value += c[3 + j] * cubes[j];
                slope += c[3 + j] * squares[j];
            }
            (value, slope * self.per_length)
        };
        // Beyond the ends the axis goes on straight, and the section stays as it is.
        let (cu, cu_slope) = spline(&self.splines[0]);
        let (cv, cv_slope) = spline(&self.splines[1]);
        let (cu, cv) = (cu + cu_slope * beyond, cv + cv_slope * beyond);
        let (half_wide, wide_slope) = spline(&self.splines[2]);
        let (half_thin, thin_slope) = spline(&self.splines[3]);
        let (wu, _) = spline(&self.splines[4]);
        let (wv, _) = spline(&self.splines[5]);
        let (q, _) = spline(&self.splines[6]);
        let (half_wide, half_thin) = (half_wide.max(0.3), half_thin.max(0.3));
        let unit = 1.0 / (wu * wu + wv * wv + 1e-12).sqrt();
        let (c, s) = (wu * unit, wv * unit);
        let (du, dv) = (r.dot(self.u) - cu, r.dot(self.v) - cv);
        let (per_wide, per_thin) = (1.0 / half_wide, 1.0 / half_thin);
        let x = (c * du + s * dv) * per_wide;
        let y = (c * dv - s * du) * per_thin;
        let cap = if beyond < 0.0 { self.cap[0] } else { self.cap[1] };
        let per_cap = 1.0 / cap;
        let w = beyond * per_cap;
        // In a cap the section no longer widens; it stops doing so bit by bit, so that the field has no step at the end's plane.
        let inside = (1.0 - w.abs()).max(0.0);
        let (xx, yy, ww) = (x * x, y * y, w * w);
        let sum = xx + yy + ww;
        let fourth = (sum * sum - 2.0 * q * xx * yy).max(1e-12);
        let root = fourth.sqrt().sqrt();
        // Gradient of the fourth power over 4, then of the root by dividing by root³.
        let gx = x * (sum - q * yy) * per_wide;
        let gy = y * (sum - q * xx) * per_thin;
        let gw = w * sum * per_cap;
        // Along the chord: the centre moves, the section widens.
        let gt = gw
            - gx * (c * cu_slope + s * cv_slope + x.clamp(-NEAR, NEAR) * wide_slope * inside)
            - gy * (c * cv_slope - s * cu_slope + y.clamp(-NEAR, NEAR) * thin_slope * inside);
        let steep = (gx * gx + gy * gy + gt * gt).sqrt();
        // Deep inside, the gradient says nothing about the nearest wall: the thinner half does.
        let thinnest = -half_wide.min(half_thin);
        let first_order = (root - 1.0) * root * root * root / (steep + 1e-9);
        // Far away the ball around the loft knows better.
        let (middle, radius) = self.ball;
        first_order.max(thinnest).max((p - middle).length() - radius)
    }

    /// The section `along_mm` from the plane of the first one: centre, half of its wide and half of its thin axis, mm. In a cap it shrinks,
    /// as an ellipse does (squareness 0).
    pub fn ring(&self, along_mm: f64) -> [DVec3; 3] {
        let length = f64::from(self.length);
        let t = (along_mm / length).clamp(f64::from(self.span[0]), f64::from(self.span[1]));
        let beyond = along_mm - t * length;
        let spline = |i: usize| {
            let c = self.splines[i].map(f64::from);
            let (mut value, mut slope) = (c[0] + t * (c[1] + t * t * c[2]), c[1] + 3.0 * t * t * c[2]);
            for (&knot, c) in self.knots.iter().zip(&c[3..]).take(self.interior) {
                let past = (t - f64::from(knot)).max(0.0);
                value += c * past * past * past;
                slope += c * 3.0 * past * past;
            }
            (value, slope / length)
        };
        let [axis, u, v] = [self.axis, self.u, self.v].map(|e| e.as_dvec3());
        let ((cu, cu_slope), (cv, cv_slope)) = (spline(0), spline(1));
        let centre = self.origin.as_dvec3()
            + axis * along_mm
            + u * (cu + cu_slope * beyond)
            + v * (cv + cv_slope * beyond);
        let wide = (u * spline(4).0 + v * spline(5).0).normalize_or(u);
        let cap = f64::from(self.cap[usize::from(beyond > 0.0)]);
        let round = libm::sqrt((1.0 - (beyond / cap) * (beyond / cap)).max(0.0));
        [centre, wide * (spline(2).0 * round), axis.cross(wide) * (spline(3).0 * round)]
    }

    /// Squareness of the section `along_mm` from the plane of the first one.
    pub fn squareness(&self, along_mm: f64) -> f64 {
        let length = f64::from(self.length);
        let t = (along_mm / length).clamp(f64::from(self.span[0]), f64::from(self.span[1]));
        let c = self.splines[6].map(f64::from);
        let knots = self.knots.iter().zip(&c[3..]).take(self.interior);
        let cubes = knots.map(|(&knot, c)| {
            let past = (t - f64::from(knot)).max(0.0);
            c * past * past * past
        });
        c[0] + t * (c[1] + t * t * c[2]) + cubes.sum::<f64>()
    }

    /// How far the two ends of its caps stand from the plane of the first section, mm.
    pub fn reach_mm(&self) -> [f64; 2] {
        let [from, to] = self.span.map(f64::from);
        let length = f64::from(self.length);
        [from * length - f64::from(self.cap[0]), to * length + f64::from(self.cap[1])]
    }

    /// The point on the end of the last section's cap.
    pub fn tip(&self) -> DVec3 {
        self.ring(self.reach_mm()[1])[0]
    }

    /// A ball that holds the loft: centre and radius, mm.
    pub fn ball(&self) -> (Vec3, f32) {
        self.ball
    }
}

/// The natural cubic spline through `(at, y)` as `[value at 0, slope at 0, t³, (t - knot)³ …]`; `at` rises from 0 to 1.
fn truncated_powers(at: &[f64], y: &[f64]) -> [f32; MOST_SECTIONS + 1] {
    let n = at.len();
    // Second derivatives at the sections, 0 at both ends (Thomas's algorithm).
    let mut second = [0.0; MOST_SECTIONS];
    let (mut upper, mut right) = ([0.0; MOST_SECTIONS], [0.0; MOST_SECTIONS]);
    for i in 1..n.saturating_sub(1) {
        let (before, after) = (at[i] - at[i - 1], at[i + 1] - at[i]);
        let bend = 6.0 * ((y[i + 1] - y[i]) / after - (y[i] - y[i - 1]) / before);
        let pivot = 2.0 * (before + after) - before * upper[i - 1];
        upper[i] = after / pivot;
        right[i] = (bend - before * right[i - 1]) / pivot;
    }
    for i in (1..n.saturating_sub(1)).rev() {
        second[i] = right[i] - upper[i] * second[i + 1];
    }
    let first = at[1] - at[0];
    let slope = (y[1] - y[0]) / first - first * second[1] / 6.0;
    let mut powers = [0.0_f32; MOST_SECTIONS + 1];
    powers[0] = y[0] as f32;
    powers[1] = slope as f32;
    let third = |i: usize| (second[i + 1] - second[i]) / (6.0 * (at[i + 1] - at[i]));
    powers[2] = third(0) as f32;
    for j in 1..n - 1 {
        powers[2 + j] = (third(j) - third(j - 1)) as f32;
    }
    powers
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bent() -> Loft {
        let section = |x: f64, y: f64, half: [f64; 2], q| Section {
            centre: DVec3::new(x, y, 2.0 * y),
            wide: DVec3::Z,
            half_wide: half[0],
            half_thin: half[1],
            squareness: q,
        };
        Loft::new(
            &[
                section(0.0, 0.0, [6.0, 3.0], 0.0),
                section(7.0, 2.0, [5.0, 3.0], 0.3),
                section(14.0, 2.5, [4.0, 2.5], 0.6),
                section(20.0, 1.0, [4.0, 2.0], 0.0),
            ],
            [2.0, 2.0],
        )
    }

    #[test]
    fn walls_stand_at_the_half_widths_of_each_section() {
        let loft = Loft::new(
            &[0.0, 5.0, 12.0, 20.0].map(|y| Section {
                centre: DVec3::new(0.0, y, 0.0),
                wide: DVec3::Z,
                half_wide: 6.0,
                half_thin: 3.0,
                squareness: 0.0,
            }),
            [3.0, 2.0],
        );
        for wall in [
            Vec3::new(3.0, 0.0, 0.0),
            Vec3::new(0.0, 12.0, 6.0),
            Vec3::new(-3.0, 9.0, 0.0),
            Vec3::new(0.0, 22.0, 0.0),
            Vec3::new(0.0, -3.0, 0.0),
        ] {
            assert!(loft.distance(wall).abs() < 1e-4, "{wall}: {}", loft.distance(wall));
        }
    }

    #[test]
    fn distance_near_the_surface_is_that_to_the_nearest_point() {
        let loft = bent();
        // Walk from a point along the field's slope to the surface: the way is as long as the field said.
        let mut tried = 0;
        for i in 0..4000 {
            let p =
                Vec3::new((i % 20) as f32 + 0.3, (i / 20 % 20) as f32 - 9.0, (i / 400) as f32 * 2.0 - 8.0);
            let d = loft.distance(p);
            if !(0.2..1.5).contains(&d) {
                continue;
            }
            tried += 1;
            let slope = |q: Vec3| {
                let h = 1e-2;
                Vec3::from_array(
                    [Vec3::X, Vec3::Y, Vec3::Z].map(|e| loft.distance(q + e * h) - loft.distance(q - e * h)),
                ) / (2.0 * h)
            };
            let mut q = p;
            for _ in 0..60 {
                // Half a Newton step: whole ones go to and fro across the wall inside the bend.
                let g = slope(q);
                q -= g * (0.5 * loft.distance(q) / g.length_squared().max(0.1));
            }
            assert!(loft.distance(q).abs() < 2e-2, "{p}: {q} {}", loft.distance(q));
            let way = q.distance(p);
            assert!((0.5..1.35).contains(&(d / way)), "{p}: {d} for {way}");
        }
        assert!(tried > 100);
    }

    #[test]
    fn one_point_and_many_have_the_same_bits() {
        let loft = bent();
        let points: Vec<Vec3> = (0..27_000)
            .map(|i| {
                Vec3::new((i % 30) as f32 * 1.1 - 6.0, (i / 30 % 30) as f32 - 15.0, (i / 900) as f32 - 12.0)
            })
            .collect();
        let mut many = vec![0.0; points.len()];
        loft.distances(&points, &mut many);
        for (&p, d) in points.iter().zip(many) {
            assert_eq!(loft.distance(p).to_bits(), d.to_bits(), "{p}");
        }
    }

    #[test]
    fn ball_holds_the_loft() {
        let loft = bent();
        let (centre, radius) = loft.ball();
        for i in 0..27_000 {
            let p = Vec3::new((i % 30) as f32 - 5.0, (i / 30 % 30) as f32 - 15.0, (i / 900) as f32 - 12.0);
            assert!(loft.distance(p) > 0.0 || p.distance(centre) < radius);
        }
    }
}
