//! A tapered bar with an elliptic or squarish section: pedicles, processes, laminae.

use glam::Vec3;

/// A bar from `a` to `b` whose section has a wide and a thin axis, tapered linearly, with rounded ends.
#[derive(Clone, Debug)]
pub struct Strut {
    a: Vec3,
    axis: Vec3,
    length: f32,
    per_length: f32,
    wide: Vec3,
    thin: Vec3,
    half_wide: [f32; 2],
    half_thin: [f32; 2],
    square: bool,
}

impl Strut {
    /// `wide` is made perpendicular to the bar; the half widths (mm) stand at `a` and at `b`.
    /// `square` gives the section flat faces (a superellipse of power 4) in place of an ellipse.
    pub fn new(a: Vec3, b: Vec3, wide: Vec3, half_wide: [f32; 2], half_thin: [f32; 2], square: bool) -> Self {
        let length = (b - a).length().max(1e-3);
        let axis = (b - a) / length;
        let wide = (wide - axis * wide.dot(axis)).normalize_or(axis.any_orthonormal_vector());
        Self {
            a,
            axis,
            length,
            per_length: 1.0 / length,
            wide,
            thin: axis.cross(wide),
            half_wide,
            half_thin,
            square,
        }
    }

    /// First-order distance, mm: the section's norm over its gradient, caps half as long as they are thin.
    pub fn distance(&self, p: Vec3) -> f32 {
        if self.square { self.section::<true>(p) } else { self.section::<false>(p) }
    }

    /// [`Self::distance`] of many points. The section is chosen outside the loop, so that the loop is free of branches and the
    /// compiler can take several points at a time.
    pub fn distances(&self, points: &[Vec3], out: &mut [f32]) {
        if self.square {
            points.iter().zip(out).for_each(|(&p, d)| *d = self.section::<true>(p));
        } else {
            points.iter().zip(out).for_each(|(&p, d)| *d = self.section::<false>(p));
        }
    }

    #[inline(always)]
    fn section<const SQUARE: bool>(&self, p: Vec3) -> f32 {
        let r = p - self.a;
        let along = r.dot(self.axis);
        let s = (along * self.per_length).clamp(0.0, 1.0);
        let hw = self.half_wide[0] + s * (self.half_wide[1] - self.half_wide[0]);
        let ht = self.half_thin[0] + s * (self.half_thin[1] - self.half_thin[0]);
        let (per_wide, per_thin) = (1.0 / hw, 1.0 / ht);
        let u = r.dot(self.wide) * per_wide;
        let v = r.dot(self.thin) * per_thin;
        let w = (along - s * self.length) * per_thin;
        let (uu, vv, ww) = (u * u, v * v, w * w);
        let (gap, steep) = if SQUARE {
            let k0 = (uu * uu + vv * vv + ww * ww).sqrt().sqrt();
            let (gu, gv, gw) = (uu * u * per_wide, vv * v * per_thin, ww * w * per_thin);
            ((k0 - 1.0) * (k0 * k0 * k0), (gu * gu + gv * gv + gw * gw).sqrt())
        } else {
            let kk = uu + vv + ww;
            (kk - kk.sqrt(), (uu * per_wide * per_wide + (vv + ww) * per_thin * per_thin).sqrt())
        };
        // Deep inside, the norm's gradient says nothing about the nearest wall: the thin half does.
        let thinnest = -hw.min(ht);
        if steep < 1e-9 { thinnest } else { (gap / steep).max(thinnest) }
    }

    /// A ball that holds the bar.
    pub fn ball(&self) -> (Vec3, f32) {
        let widest = self.half_wide[0].max(self.half_wide[1]).max(self.half_thin[0]).max(self.half_thin[1]);
        // A squarish section reaches 2^(1/4) further at its corners.
        let reach = if self.square { 1.19 } else { 1.0 } * widest;
        (self.a + self.axis * (self.length / 2.0), self.length / 2.0 + reach)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn walls_and_caps_are_where_they_were_asked_for() {
        for square in [false, true] {
            let bar = Strut::new(Vec3::ZERO, Vec3::Y * 20.0, Vec3::Z, [6.0, 4.0], [3.0, 2.0], square);
            for wall in [
                Vec3::new(3.0, 0.0, 0.0),
                Vec3::new(0.0, 0.0, 6.0),
                Vec3::new(2.5, 10.0, 0.0),
                Vec3::new(0.0, 10.0, -5.0),
                Vec3::new(0.0, 22.0, 0.0),
                Vec3::new(0.0, -3.0, 0.0),
            ] {
                assert!(bar.distance(wall).abs() < 1e-5, "{wall} {square}");
            }
            assert!(bar.distance(Vec3::new(5.0, 0.0, 0.0)) > 1.5);
            assert!(bar.distance(Vec3::Y * 10.0) < -2.0);
        }
    }
}
