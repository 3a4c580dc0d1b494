//! Ellipsoid.

use glam::{Mat3, Vec3};

/// An ellipsoid; a sphere when the radii are equal.
#[derive(Clone, Debug)]
pub struct Ellipsoid {
    /// mm.
    pub centre: Vec3,
    /// Unit axes as columns.
    pub axes: Mat3,
    /// Semi-axes, mm.
    pub radii: Vec3,
}

impl Ellipsoid {
    /// First-order distance `k0 (k0 - 1) / k1` with `k0 = |q / r|`, `k1 = |q / r²|`; exact for a sphere.
    pub fn distance(&self, p: Vec3) -> f32 {
        let r = p - self.centre;
        let q = Vec3::new(r.dot(self.axes.x_axis), r.dot(self.axes.y_axis), r.dot(self.axes.z_axis));
        let scaled = q / self.radii;
        let k0 = scaled.length();
        let k1 = (scaled / self.radii).length();
        if k1 < 1e-6 { -self.radii.min_element() } else { k0 * (k0 - 1.0) / k1 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sphere_is_exact_and_poles_are_zero() {
        let ball = Ellipsoid { centre: Vec3::ONE, axes: Mat3::IDENTITY, radii: Vec3::splat(5.0) };
        assert!((ball.distance(Vec3::new(9.0, 1.0, 1.0)) - 3.0).abs() < 1e-6);
        let egg = Ellipsoid { centre: Vec3::ZERO, axes: Mat3::IDENTITY, radii: Vec3::new(2.0, 3.0, 4.0) };
        for pole in [Vec3::X * 2.0, Vec3::Y * -3.0, Vec3::Z * 4.0] {
            assert!(egg.distance(pole).abs() < 1e-6);
        }
        assert_eq!(egg.distance(Vec3::ZERO), -2.0);
    }
}
