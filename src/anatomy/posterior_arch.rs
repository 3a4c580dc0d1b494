//! The axes of a vertebra's posterior arch: the points through which its bars run, left side, in the vertebra's own frame, mm
//! ([left, posterior, cranial]).
//!
//! The bone's shape ([`super::vertebra`]) and its landmarks ([`super::landmarks`]) both take them from here, so that a landmark is by
//! construction where the bone is. Offsets that are not in the dimension table are derived: chosen so that the bars meet and the
//! film's lines come out in their order, times the vertebra's size.

use super::dimensions::{JOINT_SPACE_MM, Vertebra};
use super::superior_process::SuperiorProcess;

type Point = [f64; 3];

/// Axis points of one vertebra.
#[derive(Clone, Copy, Debug)]
pub(super) struct PosteriorArch {
    /// Where the articular pillar leaves the pedicle.
    pub(super) junction: Point,
    /// Lower end of the pars interarticularis, where lamina and inferior process leave it.
    pub(super) pars: Point,
    /// Lamina: at the pars, its bend (middle of the half), and beside the midline.
    pub(super) lamina: [Point; 3],
    /// Transverse process: root, waist, and end of its axis.
    pub(super) transverse: [Point; 3],
    /// Half the thickness of the transverse process at the waist and at its end: its cap is as long.
    pub(super) transverse_half_thin_mm: [f64; 2],
    /// Spinous process: base, neck, and end of its axis.
    pub(super) spinous: [Point; 3],
    /// The bone's hindmost point.
    pub(super) spinous_tip: Point,
    /// Back of the lamina in the midline.
    pub(super) lamina_back_mm: f64,
}

/// Half the thickness of the spinous process at its end, and so its cap, a unit of size, mm.
pub(super) const SPINOUS_END_HALF_THIN_MM: f64 = 3.6;

impl PosteriorArch {
    /// Of a vertebra of size `k` against the average.
    pub(super) fn new(d: &Vertebra, k: f64) -> Self {
        let wall = d.posterior_wall_mm();
        let [px, _, pz] = d.pedicle_centre_mm();
        let half_pedicle = d.pedicle_height_mm / 2.0;
        let lamina_back = wall + d.canal_depth_mm + 3.3 * k;
        let lamina_z = d.half_height_mm() - 2.0 * k - half_pedicle - d.lamina_height_mm * 0.42;
        let lamina_front = wall + 13.4 * k;

        // The stoutness is that of the transverse process's root; it wears off outwards.
        let stout = d.transverse_stoutness;
        let g = 0.65 + 0.35 * stout;
        let lifted = 3.0 * (stout - 1.0).max(0.0) - 0.5;
        let root = [px + d.pedicle_width_mm / 2.0 - 1.5 * k, wall + 8.0 * k, pz + lifted * k];
        let blunt = 2.2 * stout.min(1.0) + 0.7 * (stout - 1.0).max(0.0);
        let out = d.transverse_span_mm / 2.0 - blunt * k - root[0];
        let rise = if stout > 1.2 { 4.0 } else { 1.5 } * k;
        let lean = out * 0.22;

        let spinous_tip = [0.0, lamina_back + d.spinous_length_mm, lamina_z - 7.5 * k];
        Self {
            junction: [px + 1.0 * k, wall + 10.6 * k, pz - 1.5 * k],
            pars: [d.pars_lateral_mm, wall + 13.6 * k, pz - half_pedicle - 3.5 * k],
            lamina: [
                [d.pars_lateral_mm * 0.93, lamina_front, lamina_z - 0.5 * k],
                [d.pars_lateral_mm * 0.55, lamina_front + (lamina_back - lamina_front) * 0.62, lamina_z],
                [0.8 * k, lamina_back, lamina_z - 1.0 * k],
            ],
            transverse: [
                root,
                [root[0] + out * 0.6, root[1] + lean * 0.6, root[2] + rise * 0.5],
                [root[0] + out, root[1] + lean, root[2] + rise],
            ],
            transverse_half_thin_mm: [2.8 * g * k, 2.0 * g * k],
            spinous: [
                [0.0, lamina_back, lamina_z - 2.0 * k],
                [0.0, lamina_back + d.spinous_length_mm * 0.45, lamina_z - 5.0 * k],
                [0.0, spinous_tip[1] - SPINOUS_END_HALF_THIN_MM * k, spinous_tip[2]],
            ],
            spinous_tip,
            lamina_back_mm: lamina_back,
        }
    }

    /// Middle of the pars interarticularis between the pedicle's lower edge and the inferior process: three quarters down its bar,
    /// whose upper half is melted into the pedicle.
    pub(super) fn pars_middle(&self) -> Point {
        std::array::from_fn(|i| self.junction[i] + 0.75 * (self.pars[i] - self.junction[i]))
    }

    /// The outermost point of the transverse process: its axis and the cap on its end.
    pub(super) fn transverse_tip(&self) -> Point {
        capped(self.transverse[1], self.transverse[2], self.transverse_half_thin_mm[1])
    }
}

/// Axis of an inferior articular process behind the joint with the level below, left side, in the *lower* neighbour's frame, mm.
#[derive(Clone, Copy, Debug)]
pub(super) struct InferiorProcess {
    /// Upper end, at the joint.
    pub(super) upper: Point,
    /// Lower end of the axis.
    pub(super) lower: Point,
    /// Half the thickness at both ends: the lower one is the cap's length too.
    pub(super) half_thin_mm: [f64; 2],
}

impl InferiorProcess {
    /// Of a vertebra of size `k` whose joints have grown by `swelling_mm`, on the superior process `below`.
    pub(super) fn on(below: &SuperiorProcess, k: f64, swelling_mm: f64) -> Self {
        let (n, m) = (below.normal(), below.joint_middle());
        let thick = 3.9 * k + 0.5 * swelling_mm;
        let off = JOINT_SPACE_MM + thick * 0.85;
        let at = |up: f64| [m[0] + n[0] * off, m[1] + n[1] * off, m[2] + up];
        Self { upper: at(5.5 * k), lower: at(-6.0 * k), half_thin_mm: [thick, 0.72 * thick] }
    }

    /// The lowest point: the axis and the cap on its end.
    pub(super) fn tip(&self) -> Point {
        capped(self.upper, self.lower, self.half_thin_mm[1])
    }
}

/// The point `cap_mm` beyond `to`, coming from `from`.
fn capped(from: Point, to: Point, cap_mm: f64) -> Point {
    let along: Point = std::array::from_fn(|i| to[i] - from[i]);
    let length = libm::sqrt(along.iter().map(|x| x * x).sum());
    std::array::from_fn(|i| to[i] + along[i] * (cap_mm / length))
}
