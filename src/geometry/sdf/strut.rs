//! A tapered bar with an elliptic or squarish section: pedicles, processes, laminae.

use glam::Vec3;

/// A bar from `a` to `b` whose section has a wide and a thin axis, tapered linearly, with rounded ends.
#[derive(Clone, Debug)]
pub struct Strut {
    a: Vec3,
    axis: Vec3,
    length: f32,
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
        Self { a, axis, length, wide, thin: axis.cross(wide), half_wide, half_thin, square }
    }

    /// First-order distance, mm: the section's norm over its gradient, caps half as long as they are thin.
    pub fn distance(&self, p: Vec3) -> f32 {
        let r = p - self.a;
        let along = r.dot(self.axis);
        let s = (along / self.length).clamp(0.0, 1.0);
        let hw = self.half_wide[0] + s * (self.half_wide[1] - self.half_wide[0]);
        let ht = self.half_thin[0] + s * (self.half_thin[1] - self.half_thin[0]);
        let u = r.dot(self.wide) / hw;
        let v = r.dot(self.thin) / ht;
        let w = (along - s * self.length) / ht;
        let (k0, k1) = if self.square {
            let (uu, vv, ww) = (u * u, v * v, w * w);
            let k0 = (uu * uu + vv * vv + ww * ww).sqrt().sqrt();
            let cube = k0 * k0 * k0;
            let g = Vec3::new(uu * u / hw, vv * v / ht, ww * w / ht);
            (k0, if cube < 1e-9 { 0.0 } else { g.length() / cube })
        } else {
            let k0 = (u * u + v * v + w * w).sqrt();
            let g = Vec3::new(u / hw, v / ht, w / ht).length();
            (k0, if k0 < 1e-6 { 0.0 } else { g / k0 })
        };
        let thinnest = hw.min(ht);
        // Deep inside, the norm's gradient says nothing about the nearest wall: the thin half does.
        if k1 < 1e-6 { -thinnest } else { ((k0 - 1.0) / k1).max(-thinnest) }
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
            let bar =
                Strut::new(Vec3::ZERO, Vec3::Y * 20.0, Vec3::Z, [6.0, 4.0], [3.0, 2.0], square);
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
