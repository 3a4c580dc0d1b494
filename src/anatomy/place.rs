//! Where a piece of a bone goes: mirrored to a side, then moved rigidly.

use super::names::{Part, Side};
use crate::geometry::frame::Rigid;
use crate::geometry::sdf::{Shape, Strut};
use crate::geometry::solid::Piece;
use glam::{DVec3, Vec3};

/// A frame to write a bone's left half in: points are mirrored for the right side and moved by `motion`.
#[derive(Clone, Copy)]
pub(super) struct Place {
    pub(super) side: Option<Side>,
    pub(super) motion: Rigid,
}

impl Place {
    /// The bone's own frame, for the given side (or the midline).
    pub(super) fn own(side: Option<Side>) -> Self {
        Self { side, motion: Rigid::IDENTITY }
    }

    fn mirrored(&self, v: DVec3) -> DVec3 {
        DVec3::new(v.x * self.side.map_or(1.0, Side::sign), v.y, v.z)
    }

    /// A point given for the left side, mm.
    pub(super) fn point(&self, v: [f64; 3]) -> Vec3 {
        self.at(DVec3::from_array(v)).as_vec3()
    }

    /// The same in double precision.
    pub(super) fn at(&self, v: DVec3) -> DVec3 {
        self.motion.point(self.mirrored(v))
    }

    /// A direction given for the left side.
    pub(super) fn direction(&self, v: [f64; 3]) -> Vec3 {
        self.along(DVec3::from_array(v)).as_vec3()
    }

    /// The same in double precision.
    pub(super) fn along(&self, v: DVec3) -> DVec3 {
        self.motion.direction(self.mirrored(v))
    }

    /// A bar through two points given for the left side; half widths in mm.
    pub(super) fn strut(
        &self,
        a: [f64; 3],
        b: [f64; 3],
        wide: [f64; 3],
        half_wide: [f64; 2],
        half_thin: [f64; 2],
        square: bool,
    ) -> Shape {
        let f = |v: [f64; 2]| v.map(|x| x as f32);
        Shape::Strut(Strut::new(
            self.point(a),
            self.point(b),
            self.direction(wide),
            f(half_wide),
            f(half_thin),
            square,
        ))
    }

    /// A piece of `part` on this side.
    pub(super) fn piece(&self, part: Part, shape: Shape, cortex_mm: f64, blend_mm: f64) -> Piece {
        Piece::new(shape, tag(part, self.side), cortex_mm as f32, blend_mm as f32)
    }
}

/// Number of a part on a side, for the mesh's vertices: the part's place in [`Part::ALL`] plus 16 a side.
pub(super) fn tag(part: Part, side: Option<Side>) -> u8 {
    part as u8
        + match side {
            None => 0,
            Some(Side::Left) => 16,
            Some(Side::Right) => 32,
        }
}

/// The part and side of a number made by [`tag`].
pub(super) fn untag(tag: u8) -> (Part, Option<Side>) {
    let side = match tag / 16 {
        0 => None,
        1 => Some(Side::Left),
        _ => Some(Side::Right),
    };
    (Part::ALL[usize::from(tag % 16)], side)
}

/// The number of the same part on the other side.
pub(super) fn other_side(tag: u8) -> u8 {
    match tag / 16 {
        1 => tag + 16,
        2 => tag - 16,
        _ => tag,
    }
}
