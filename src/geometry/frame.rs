//! Rotations about the patient axes and rigid motions.
//!
//! Right-handed rotations, angles in radians, all through `libm` so that native and wasm give the same bits.

use glam::{DMat3, DVec3};

/// Rotation about +x (patient's left): +y (posterior) turns towards +z (cranial).
pub fn rotation_x(angle_rad: f64) -> DMat3 {
    let (s, c) = libm::sincos(angle_rad);
    DMat3::from_cols(DVec3::new(1.0, 0.0, 0.0), DVec3::new(0.0, c, s), DVec3::new(0.0, -s, c))
}

/// Rotation about +y (posterior): +z (cranial) turns towards +x (left).
pub fn rotation_y(angle_rad: f64) -> DMat3 {
    let (s, c) = libm::sincos(angle_rad);
    DMat3::from_cols(DVec3::new(c, 0.0, -s), DVec3::new(0.0, 1.0, 0.0), DVec3::new(s, 0.0, c))
}

/// Rotation about +z (cranial): +x (left) turns towards +y (posterior).
pub fn rotation_z(angle_rad: f64) -> DMat3 {
    let (s, c) = libm::sincos(angle_rad);
    DMat3::from_cols(DVec3::new(c, s, 0.0), DVec3::new(-s, c, 0.0), DVec3::new(0.0, 0.0, 1.0))
}

/// Right-handed rotation about a unit axis (Rodrigues).
pub fn rotation_about(axis: DVec3, angle_rad: f64) -> DMat3 {
    let (s, c) = libm::sincos(angle_rad);
    let column = |v: DVec3| v * c + axis.cross(v) * s + axis * (axis.dot(v) * (1.0 - c));
    DMat3::from_cols(column(DVec3::X), column(DVec3::Y), column(DVec3::Z))
}

/// A rigid motion: `p -> rotation * p + translation` (mm).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rigid {
    /// Orthonormal, determinant +1.
    pub rotation: DMat3,
    /// Millimetres.
    pub translation: DVec3,
}

impl Rigid {
    /// The motion that leaves everything where it is.
    pub const IDENTITY: Self = Self { rotation: DMat3::IDENTITY, translation: DVec3::ZERO };

    /// Moves a point, mm.
    pub fn point(&self, p: DVec3) -> DVec3 {
        self.rotation * p + self.translation
    }

    /// Turns a direction; lengths stay.
    pub fn direction(&self, v: DVec3) -> DVec3 {
        self.rotation * v
    }

    /// First `inner`, then `self`.
    pub fn after(&self, inner: &Self) -> Self {
        Self { rotation: self.rotation * inner.rotation, translation: self.point(inner.translation) }
    }

    /// The motion that undoes this one.
    pub fn inverse(&self) -> Self {
        let rotation = self.rotation.transpose();
        Self { rotation, translation: -(rotation * self.translation) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::FRAC_PI_2;

    #[test]
    fn quarter_turns_follow_the_right_hand() {
        for (turn, from, to) in [
            (rotation_x(FRAC_PI_2), DVec3::Y, DVec3::Z),
            (rotation_y(FRAC_PI_2), DVec3::Z, DVec3::X),
            (rotation_z(FRAC_PI_2), DVec3::X, DVec3::Y),
            (rotation_about(DVec3::Z, FRAC_PI_2), DVec3::X, DVec3::Y),
        ] {
            assert!((turn * from - to).length() < 1e-15);
        }
    }

    #[test]
    fn inverse_undoes() {
        let m =
            Rigid { rotation: rotation_x(0.3) * rotation_z(-1.1), translation: DVec3::new(3.0, -4.0, 5.0) };
        let p = DVec3::new(1.0, 2.0, 3.0);
        assert!((m.inverse().after(&m).point(p) - p).length() < 1e-14);
    }
}
