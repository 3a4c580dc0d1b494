//! Signed distance fields of simple shapes, negative inside, mm.
//!
//! None but the sphere is exact: each is a *first-order* distance, value over gradient length, which is right at the
//! surface and too small far away. The lattice therefore widens its skipping test by [`SAFETY`], and whoever marches
//! along a ray must step by less than the value (0.6 of it is safe; measured by `tests/fields.rs`).
//!
//! Only `+ - * /` and square roots are used, so the fields give the same bits natively and in wasm.

mod drum;
mod ellipsoid;
mod loft;
mod sheet;
mod strut;

pub use drum::{Drum, DrumSurface};
pub use ellipsoid::Ellipsoid;
pub use loft::{Loft, MOST_SECTIONS, Section};
pub use sheet::{Bead, Sheet};
pub use strut::Strut;

use glam::Vec3;

/// How much steeper than 1 a field may be between two points of a block. A block that is skipped wrongly all the same is found
/// again from its neighbours (see `lattice`).
pub const SAFETY: f32 = 1.15;

/// One shape.
#[derive(Clone, Debug)]
#[allow(missing_docs, reason = "each is documented at its type")]
pub enum Shape {
    Strut(Strut),
    Ellipsoid(Ellipsoid),
    Loft(Box<Loft>),
    Drum(Drum),
    Sheet(Sheet),
}

impl Shape {
    /// Signed distance in mm, and the factor by which the shape's cortex is thicker here than its nominal.
    pub fn sample(&self, p: Vec3) -> (f32, f32) {
        match self {
            Self::Strut(s) => (s.distance(p), 1.0),
            Self::Ellipsoid(s) => (s.distance(p), 1.0),
            Self::Loft(s) => (s.distance(p), 1.0),
            Self::Drum(s) => s.sample(p),
            Self::Sheet(s) => (s.distance(p), 1.0),
        }
    }

    /// [`Self::sample`] of many points: distances and cortex factors.
    pub fn samples(&self, points: &[Vec3], distance: &mut [f32], cortex: &mut [f32]) {
        match self {
            Self::Strut(s) => {
                s.distances(points, distance);
                cortex.fill(1.0);
            }
            Self::Loft(s) => {
                s.distances(points, distance);
                cortex.fill(1.0);
            }
            Self::Drum(s) => s.samples(points, distance, cortex),
            _ => {
                for ((&p, d), c) in points.iter().zip(distance).zip(cortex) {
                    (*d, *c) = self.sample(p);
                }
            }
        }
    }

    /// A ball that holds the shape: centre and radius, mm.
    pub fn ball(&self) -> (Vec3, f32) {
        match self {
            Self::Strut(s) => s.ball(),
            Self::Ellipsoid(s) => (s.centre, s.radii.max_element()),
            Self::Loft(s) => s.ball(),
            Self::Drum(s) => s.ball(),
            Self::Sheet(s) => s.ball(),
        }
    }
}

/// Smooth minimum with compact support: equals `min(a, b)` where they differ by `k` or more, and is at most `k / 4` below.
/// Also returns the weight of `b`, 0 to 1.
#[inline]
pub fn smooth_min(a: f32, b: f32, k: f32) -> (f32, f32) {
    let h = (0.5 + 0.5 * (a - b) / k).clamp(0.0, 1.0);
    (b * h + a * (1.0 - h) - k * h * (1.0 - h), h)
}

/// Smooth maximum, the mirror of [`smooth_min`].
#[inline]
pub fn smooth_max(a: f32, b: f32, k: f32) -> f32 {
    -smooth_min(-a, -b, k).0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn smooth_min_is_min_outside_its_support() {
        assert_eq!(smooth_min(1.0, 5.0, 3.0), (1.0, 0.0));
        assert_eq!(smooth_min(5.0, 1.0, 3.0), (1.0, 1.0));
        let (middle, weight) = smooth_min(2.0, 2.0, 4.0);
        assert_eq!((middle, weight), (1.0, 0.5));
        assert_eq!(smooth_max(2.0, 2.0, 4.0), 3.0);
    }
}
