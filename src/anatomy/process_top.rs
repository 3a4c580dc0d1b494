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

impl Facet {
    /// The point itself, or where it comes to lie on the facet when it stands out in front of it.
    fn cut(&self, p: DVec3) -> DVec3 {
        let r = p - self.point;
        let t = r.dot(self.tangent);
        p - self.normal * (r.dot(self.normal) - self.curvature * t * t).max(0.0)
    }
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
    /// What cuts them.
    pub facet: Facet,
}

impl ProcessTop {
    /// Points around each section, cut by the facet.
    pub fn points(&self) -> [[DVec3; AROUND]; SECTIONS] {
        self.sections.map(|ring| {
            AROUND_CIRCLE.map(|[c, s]| self.facet.cut(ring.centre + ring.across * c + ring.up * s))
        })
    }

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
            facet: Facet {
                point: at(self.facet.point),
                normal: along(self.facet.normal),
                tangent: along(self.facet.tangent),
                curvature: self.facet.curvature,
            },
        }
    }
}

/// Cosine of 15, 30, 45, 60 and 75 degrees.
const C: [f64; 5] = [
    0.965_925_826_289_068_3,
    0.866_025_403_784_438_6,
    std::f64::consts::FRAC_1_SQRT_2,
    0.5,
    0.258_819_045_102_520_74,
];

/// Cosine and sine of every fifteenth degree.
const AROUND_CIRCLE: [[f64; 2]; AROUND] = [
    [1.0, 0.0],
    [C[0], C[4]],
    [C[1], C[3]],
    [C[2], C[2]],
    [C[3], C[1]],
    [C[4], C[0]],
    [0.0, 1.0],
    [-C[4], C[0]],
    [-C[3], C[1]],
    [-C[2], C[2]],
    [-C[1], C[3]],
    [-C[0], C[4]],
    [-1.0, 0.0],
    [-C[0], -C[4]],
    [-C[1], -C[3]],
    [-C[2], -C[2]],
    [-C[3], -C[1]],
    [-C[4], -C[0]],
    [0.0, -1.0],
    [C[4], -C[0]],
    [C[3], -C[1]],
    [C[2], -C[2]],
    [C[1], -C[3]],
    [C[0], -C[4]],
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_circle_s_points_are_every_fifteenth_degree() {
        for (i, [c, s]) in AROUND_CIRCLE.into_iter().enumerate() {
            let (sine, cosine) = libm::sincos(std::f64::consts::TAU * i as f64 / AROUND as f64);
            assert!((c - cosine).abs() < 1e-15 && (s - sine).abs() < 1e-15, "{i}");
        }
    }

    #[test]
    fn what_stands_out_of_a_facet_is_cut_back_to_it() {
        let facet = Facet { point: DVec3::Y, normal: DVec3::Y, tangent: DVec3::X, curvature: 0.1 };
        assert_eq!(facet.cut(DVec3::new(0.0, 3.0, 5.0)), DVec3::new(0.0, 1.0, 5.0));
        assert_eq!(facet.cut(DVec3::new(2.0, 3.0, 5.0)), DVec3::new(2.0, 1.4, 5.0));
        assert_eq!(facet.cut(DVec3::new(2.0, 1.2, 5.0)), DVec3::new(2.0, 1.2, 5.0));
    }
}
