//! The superior articular process with its facet, of a vertebra or of the sacrum: what a joint needs to know of its lower bone.
//!
//! Root, tip and facet plane stand where the dimension table puts them, in the bone's own frame (see `super::vertebra`, for the sacrum
//! `super::sacrum`); the inferior process of the level above grows to meet the facet and is carved by it (`super::posterior_arch`).
//!
//! Offsets and radii that no line marks are choices, no source, times the bone's size.
//!
//! Limits: one curvature a facet, the same up and down; left and right are mirror images.

use super::dimensions::{Pelvis, Vertebra};
use super::names::Part;
use super::place::Place;
use super::process_top::{Facet, ProcessTop};
use super::ring::Ring;
use crate::geometry::sdf::{Ellipsoid, Shape};
use crate::geometry::solid::{self, Piece};
use glam::{DVec3, Mat3};

/// Thickness of the superior process in front of its facet, mm.
const FACET_BACKING_MM: f64 = 3.0;
/// Half the articular process's width across the facet, mm: facets are 14–15 wide (within Panjabi 1993: read).
pub(super) const PROCESS_HALF_WIDTH_MM: f64 = 7.0;
/// Facet's middle below the process's tip, mm: facets are 15–17 high (within Panjabi 1993: read).
const FACET_BELOW_TIP_MM: f64 = 8.5;
/// Nominal cortical thickness of the articular processes, mm. Derived, as those of the other parts (`super::vertebra`).
pub(super) const ARTICULAR_CORTEX_MM: f64 = 1.25;

/// What age has done to a pair of facet joints.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct JointState {
    /// Growth (hypertrophy), mm.
    pub(super) swelling_mm: f64,
    /// Bone worn off the superior process's facet, mm.
    pub(super) worn_mm: f64,
    /// How far the inferior process of the level above has slid forwards along the facet, mm.
    pub(super) slide_mm: f64,
}

/// What the joint between two levels needs to know of the lower one, in the lower one's own frame (left side).
#[derive(Clone, Copy, Debug)]
pub(super) struct SuperiorProcess {
    /// Root of the process on the pillar.
    pub(super) root: [f64; 3],
    /// Tip: growth thickens the process and leaves it as high as it was.
    pub(super) tip: [f64; 3],
    /// Facet plane from the sagittal plane, radians.
    pub(super) plane: f64,
    /// Size against the average.
    pub(super) scale: f64,
    /// State of the joint (all 0 in health).
    pub(super) joint: JointState,
}

impl SuperiorProcess {
    /// Of a vertebra.
    pub(super) fn of_vertebra(d: &Vertebra, scale: f64, joint: &JointState) -> Self {
        let wall = d.posterior_wall_mm();
        let [x, _, z] = d.pedicle_centre_mm();
        Self {
            root: [x + 1.4 * scale, wall + 9.5 * scale, z + 1.0 * scale],
            tip: [
                d.superior_process_lateral_mm,
                wall + d.superior_process_behind_mm,
                d.half_height_mm() + d.superior_process_rise_mm,
            ],
            plane: d.facet_plane_deg.to_radians(),
            scale,
            joint: *joint,
        }
    }

    /// Of the sacrum, whose frame has its origin in the S1 plate.
    pub(super) fn of_sacrum(d: &Pelvis, scale: f64, joint: &JointState) -> Self {
        let edge = d.plate_depth_mm / 2.0;
        let tip =
            [d.superior_process_lateral_mm, edge + d.superior_process_behind_mm, d.superior_process_rise_mm];
        Self {
            root: [tip[0] + 0.8 * scale, tip[1] - 4.0 * scale, tip[2] - 21.0 * scale],
            tip,
            plane: d.facet_plane_deg.to_radians(),
            scale,
            joint: *joint,
        }
    }

    /// Unit normal of the left facet, out of the process: backwards and to the midline.
    pub(super) fn normal(&self) -> [f64; 3] {
        let (s, c) = libm::sincos(self.plane);
        [-c, s, 0.0]
    }

    /// Unit vector along the facet, level: backwards and away from the midline.
    pub(super) fn tangent(&self) -> [f64; 3] {
        let (s, c) = libm::sincos(self.plane);
        [s, c, 0.0]
    }

    /// Middle of the left facet.
    pub(super) fn facet_middle(&self) -> [f64; 3] {
        let n = self.normal();
        let backing = FACET_BACKING_MM * self.scale - self.joint.worn_mm;
        [
            self.tip[0] + n[0] * backing,
            self.tip[1] + n[1] * backing,
            self.tip[2] - FACET_BELOW_TIP_MM * self.scale,
        ]
    }

    /// Where the middle of the upper neighbour's facet lies on this one.
    pub(super) fn joint_middle(&self) -> [f64; 3] {
        let (m, t) = (self.facet_middle(), self.tangent());
        std::array::from_fn(|i| m[i] - t[i] * self.joint.slide_mm)
    }

    /// Half the inverse radius of the facet, 1/mm: sagittal (upper) joints are more hollow than frontal (lower) ones. Memory.
    fn curvature(&self) -> f64 {
        (0.030 - 0.022 * (self.plane / 0.95)).max(0.004)
    }

    /// Length of the cap on the end of the process's bar, mm.
    fn cap_mm(&self) -> f64 {
        2.5 * self.scale + 0.5 * self.joint.swelling_mm
    }

    /// Upper end of the bar, half its width and half its thickness, each at the root and there, mm.
    fn bar(&self) -> ([f64; 3], [f64; 2], [f64; 2]) {
        let (k, grown, cap) = (self.scale, self.joint.swelling_mm, self.cap_mm());
        let wide = PROCESS_HALF_WIDTH_MM * k + grown;
        let top = [self.tip[0], self.tip[1], self.tip[2] - cap];
        (top, [1.05 * wide, 0.66 * wide], [5.8 * k + 0.5 * grown, cap])
    }

    /// The upper end as sections, from the top down, and the facet that cuts them (left side).
    pub(super) fn top(&self) -> ProcessTop {
        let (end, wide, thin) = self.bar();
        let (root, end) = (DVec3::from_array(self.root), DVec3::from_array(end));
        let axis = (end - root).normalize_or(DVec3::Z);
        let length = end.distance(root);
        let tangent = DVec3::from_array(self.tangent());
        let tangent = (tangent - axis * tangent.dot(axis)).normalize_or(DVec3::X);
        let across = axis.cross(tangent);
        let section = |down_mm: f64| {
            // Above the bar's end its cap, half an ellipsoid; below it the bar, which widens evenly.
            let over = (-down_mm / self.cap_mm()).clamp(0.0, 1.0);
            let round = libm::sqrt(1.0 - over * over);
            let share = down_mm.max(0.0) / length;
            let half = |[root, end]: [f64; 2]| round * (end + share * (root - end));
            Ring { centre: end - axis * down_mm, across: tangent * half(wide), up: across * half(thin) }
        };
        let cap = self.cap_mm();
        let k = self.scale;
        ProcessTop {
            sections: [-cap, -0.9 * cap, -0.6 * cap, 0.0, 3.5 * k, 8.0 * k].map(section),
            facet: Facet {
                point: DVec3::from_array(self.facet_middle()),
                normal: DVec3::from_array(self.normal()),
                tangent: DVec3::from_array(self.tangent()),
                curvature: self.curvature(),
            },
        }
    }

    /// The process as a piece, and the mamillary bump behind it.
    pub(super) fn pieces(&self, place: &Place) -> [Piece; 2] {
        let k = self.scale;
        let grown = self.joint.swelling_mm;
        let (top, wide, thin) = self.bar();
        let shape = place.strut(self.root, top, self.tangent(), wide, thin, false);
        let facet = solid::Facet {
            point: place.point(self.facet_middle()),
            normal: place.direction(self.normal()),
            tangent: place.direction(self.tangent()),
            curvature: self.curvature() as f32,
        };
        let t = self.tangent();
        let bump = Shape::Ellipsoid(Ellipsoid {
            centre: place.point([
                self.tip[0] + 4.6 * k * t[0] + 0.5 * k,
                self.tip[1] + 4.6 * k * t[1] - 0.5 * k,
                self.tip[2] - 10.5 * k,
            ]),
            axes: Mat3::IDENTITY,
            radii: glam::Vec3::new(3.0, 3.2, 5.2) * (k as f32) + grown as f32 * 0.5,
        });
        [shape, bump].map(|shape| {
            place.piece(Part::SuperiorArticularProcess, shape, ARTICULAR_CORTEX_MM, 3.0 * k).with_facet(facet)
        })
    }
}
