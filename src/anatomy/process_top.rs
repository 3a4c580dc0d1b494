//! The upper end of a superior articular process as a landmark: what an oblique view is judged by.
//!
//! A real process ends in a ridge and not in a point, so that its outline counts and not its tip. It is given by sections from the
//! top down, with straight sides between neighbours, cut by the joint's facet: the very shapes that the bone is made of, so that its
//! outline in a picture follows at any orientation (`view::silhouette`). f64, mm.
//!
//! Limits: what is melted onto the process from below (mamillary bump, pillar) is not in it; the facet's edge is sharp.

use super::names::Side;
use super::ring::Ring;
use crate::geometry::frame::Rigid;
use glam::DVec3;

/// The hollow surface of a joint: bone ends where `normal · r = curvature · (tangent · r)²`.
#[derive(Clone, Copy, Debug)]
pub struct Facet {
    /// A point of it, mm.
    pub point: DVec3,
    /// Unit normal out of the bone.
    pub normal: DVec3,
    /// Unit direction across the facet in which it is curved.
    pub tangent: DVec3,
    /// Half the inverse radius, 1/mm; > 0 is hollow.
    pub curvature: f64,
}

/// How many sections an upper end has.
pub const SECTIONS: usize = 6;
/// Points around a section: an outline's width is understated by at most 0.9 percent.
pub const AROUND: usize = 24;

/// The upper end of a superior articular process.
#[derive(Clone, Copy, Debug)]
pub struct ProcessTop {
    /// From the highest point down.
    pub sections: [Ring; SECTIONS],
    /// How square each of them is: `(X² + Y²)² - 2 q X² Y² = 1` over its half axes, an ellipse at 0.
    pub squareness: [f64; SECTIONS],
    /// What cuts them.
    pub facet: Facet,
}

impl ProcessTop {
    /// A left one given in its bone's frame, on either side of a bone that stands at `frame`.
    pub(super) fn placed(&self, frame: &Rigid, side: Side) -> Self {
        let mirror = |v: DVec3| DVec3::new(v.x * side.sign(), v.y, v.z);
        let (at, along) = (|p| frame.point(mirror(p)), |v| frame.direction(mirror(v)));
        Self {
            sections: self.sections.map(|r| Ring {
                centre: at(r.centre),
                across: along(r.across),
                up: along(r.up),
            }),
            squareness: self.squareness,
            facet: Facet {
                point: at(self.facet.point),
                normal: along(self.facet.normal),
                tangent: along(self.facet.tangent),
                curvature: self.facet.curvature,
            },
        }
    }
}

/// Cosine of 0, 15, … 90 degrees.
const C: [f64; 7] = [
    1.0,
    0.965_925_826_289_068_3,
    0.866_025_403_784_438_6,
    std::f64::consts::FRAC_1_SQRT_2,
    0.5,
    0.258_819_045_102_520_74,
    0.0,
];

/// Cosine of every fifteenth degree.
pub const AROUND_COS: [f64; AROUND] = turned(0);
/// Sine of every fifteenth degree.
pub const AROUND_SIN: [f64; AROUND] = turned(18);

/// Cosines of every fifteenth degree, from `start` times that on.
const fn turned(start: usize) -> [f64; AROUND] {
    let mut list = [0.0; AROUND];
    let mut i = 0;
    while i < AROUND {
        let at = (start + i) % AROUND;
        // Down from 1 to -1 and up again.
        let way = if at > 12 { 24 - at } else { at };
        list[i] = if way <= 6 { C[way] } else { -C[12 - way] };
        i += 1;
    }
    list
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_circle_s_points_are_every_fifteenth_degree() {
        for i in 0..AROUND {
            let (sine, cosine) = libm::sincos(std::f64::consts::TAU * i as f64 / AROUND as f64);
            assert!((AROUND_COS[i] - cosine).abs() < 1e-15 && (AROUND_SIN[i] - sine).abs() < 1e-15, "{i}");
        }
    }
}
