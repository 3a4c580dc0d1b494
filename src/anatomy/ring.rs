//! A ring in space.

use glam::DVec3;

/// An elliptic ring: the isthmus of a pedicle, the opening of a foramen, a section of a process.
#[derive(Clone, Copy, Debug)]
pub struct Ring {
    /// mm.
    pub centre: DVec3,
    /// Half axis across, with its length, mm.
    pub across: DVec3,
    /// Half axis upwards, with its length, mm.
    pub up: DVec3,
}

impl Ring {
    /// The ring's point at `angle_rad` from `across` towards `up`.
    pub fn point(&self, angle_rad: f64) -> DVec3 {
        let (s, c) = libm::sincos(angle_rad);
        self.centre + self.across * c + self.up * s
    }
}
