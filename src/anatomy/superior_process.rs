//! The superior articular process with its facet, of a vertebra or of the sacrum: what a joint needs to know of its lower bone.
//!
//! Its rows ([`super::vertebra_rows`]) are carried to the dimensions in the bone's own frame (see `super::vertebra`, for the sacrum
//! `super::sacrum`): the foot goes with the pedicle, the tip to where the table puts it, the facet turns to the table's plane. The
//! inferior process of the level above follows the facet and is carved by it (`super::posterior_arch`).
//!
//! Limits: one curvature a facet, the same up and down, and no lean; left and right are mirror images.

use super::dimensions::{Pelvis, Vertebra, average};
use super::names::{Level, Part};
use super::place::Place;
use super::process_top::{Facet, ProcessTop};
use super::ring::Ring;
use super::track::{Track, track};
use super::vertebra_rows::{ProcessRows, Rows, wide};
use crate::geometry::sdf::{Ellipsoid, Loft, Shape};
use crate::geometry::solid::{self, Piece};
use glam::{DVec3, Mat3};

/// Nominal cortical thickness of the articular processes, mm. Derived, as those of the other parts (`super::vertebra`).
pub(super) const ARTICULAR_CORTEX_MM: f64 = 1.25;
/// Blend radius with what the process stands on, mm.
const BLEND_MM: f64 = 3.0;

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

/// A bump behind the process: centre and half axes, mm.
#[derive(Clone, Copy, Debug)]
struct Mamillary {
    centre: DVec3,
    half: DVec3,
}

/// What the joint between two levels needs to know of the lower one, in the lower one's own frame (left side).
#[derive(Clone, Copy, Debug)]
pub(super) struct SuperiorProcess {
    /// The process: growth thickens it and leaves it as high as it was.
    bar: Track<5>,
    /// Middle of the facet.
    facet: DVec3,
    mamillary: Mamillary,
    /// Facet plane from the sagittal plane, radians.
    plane: f64,
    /// Half the inverse radius of the facet, 1/mm.
    curvature: f64,
    /// Size against the average.
    scale: f64,
    /// State of the joint (all 0 in health).
    pub(super) joint: JointState,
}

impl SuperiorProcess {
    /// Of a vertebra.
    pub(super) fn of_vertebra(d: &Vertebra, scale: f64, joint: &JointState) -> Self {
        let (rows, a) = average(d.rows);
        Self::with(rows, d, &a.scaled(scale), scale, joint)
    }

    /// From these rows of a vertebra, written at the dimensions `a` (already at size `scale`).
    pub(super) fn with(rows: &Rows, d: &Vertebra, a: &Vertebra, scale: f64, joint: &JointState) -> Self {
        let foot = |d: &Vertebra| {
            let [x, y, z] = d.pedicle_centre_mm();
            DVec3::new(x, y, z)
        };
        let tip = |d: &Vertebra| {
            DVec3::new(
                d.superior_process_lateral_mm,
                d.posterior_rims_mm() + d.superior_process_behind_mm,
                d.half_height_mm() + d.superior_process_rise_mm,
            )
        };
        let planes = [d.facet_plane_deg, a.facet_plane_deg];
        let wall = a.posterior_rims_mm();
        Self::carried(&rows.superior, wall, [foot(d) - foot(a), tip(d) - tip(a)], planes, scale, joint)
    }

    /// Of the sacrum, whose frame has its origin in the S1 plate. It is shaped as L5's, moved to the sacrum's tip and turned to its plane.
    pub(super) fn of_sacrum(d: &Pelvis, scale: f64, joint: &JointState) -> Self {
        let (rows, l5) = average(Level::L5);
        let edge = d.plate_depth_mm / 2.0;
        let written = track(&rows.superior.bar, wide::SUPERIOR, scale, edge).own().tip();
        let tip = DVec3::new(
            d.superior_process_lateral_mm,
            edge + d.superior_process_behind_mm,
            d.superior_process_rise_mm,
        );
        let planes = [d.facet_plane_deg, l5.facet_plane_deg];
        Self::carried(&rows.superior, edge, [tip - written; 2], planes, scale, joint)
    }

    fn carried(
        rows: &ProcessRows,
        wall_mm: f64,
        [foot, tip]: [DVec3; 2],
        planes_deg: [f64; 2],
        k: f64,
        joint: &JointState,
    ) -> Self {
        let bar = track(&rows.bar, wide::SUPERIOR, k, wall_mm);
        let (low, high) = (bar.sections[0].centre.z, bar.sections[4].centre.z);
        let share = |p: DVec3| ((p.z - low) / (high - low)).clamp(0.0, 1.0);
        let at = |p: [f64; 3]| {
            let p = DVec3::new(k * p[0], k * p[1] + wall_mm, k * p[2]);
            p + foot.lerp(tip, share(p))
        };
        let mut bar = bar.moved(|t, _| foot.lerp(tip, t));
        // The sections turn with the facet, seen from above.
        let (s, c) = libm::sincos((planes_deg[1] - planes_deg[0]).to_radians());
        let grown = joint.swelling_mm;
        for section in &mut bar.sections {
            let w = section.wide;
            section.wide = DVec3::new(c * w.x - s * w.y, s * w.x + c * w.y, w.z);
            section.half_wide += grown;
            section.half_thin += 0.5 * grown;
        }
        let mut process = Self {
            bar,
            facet: at(rows.facet.at),
            mamillary: Mamillary {
                centre: at(rows.mamillary.at),
                half: DVec3::from_array(rows.mamillary.half) * k + DVec3::splat(0.5 * grown),
            },
            plane: planes_deg[0].to_radians(),
            curvature: rows.facet.curvature / k,
            scale: k,
            joint: *joint,
        };
        process.facet -= process.normal() * joint.worn_mm;
        process
    }

    /// The process without what cuts it or is melted onto it.
    fn loft(&self) -> Loft {
        self.bar.own()
    }

    /// The top of the process.
    pub(super) fn tip(&self) -> DVec3 {
        self.loft().tip()
    }

    /// Unit normal of the left facet, out of the process: backwards and to the midline.
    pub(super) fn normal(&self) -> DVec3 {
        let (s, c) = libm::sincos(self.plane);
        DVec3::new(-c, s, 0.0)
    }

    /// Unit vector along the facet, level: backwards and away from the midline.
    pub(super) fn tangent(&self) -> DVec3 {
        let (s, c) = libm::sincos(self.plane);
        DVec3::new(s, c, 0.0)
    }

    /// Middle of the left facet.
    pub(super) fn facet_middle(&self) -> DVec3 {
        self.facet
    }

    /// Where the middle of the upper neighbour's facet lies on this one.
    pub(super) fn joint_middle(&self) -> DVec3 {
        self.facet - self.tangent() * self.joint.slide_mm
    }

    /// The upper end as sections, from the top down, and the facet that cuts them (left side).
    pub(super) fn top(&self) -> ProcessTop {
        let loft = self.loft();
        let [_, end] = loft.reach_mm();
        let cap = self.bar.cap_mm[1];
        let k = self.scale;
        let down_mm = [0.0, 0.1 * cap, 0.4 * cap, cap, cap + 3.5 * k, cap + 8.0 * k];
        ProcessTop {
            sections: down_mm.map(|down_mm| {
                let [centre, across, up] = loft.ring(end - down_mm);
                Ring { centre, across, up }
            }),
            squareness: down_mm.map(|down_mm| loft.squareness(end - down_mm)),
            facet: Facet {
                point: self.facet,
                normal: self.normal(),
                tangent: self.tangent(),
                curvature: self.curvature,
            },
        }
    }

    /// The process as a piece, and the mamillary bump behind it.
    pub(super) fn pieces(&self, place: &Place) -> [Piece; 2] {
        let facet = solid::Facet {
            point: place.at(self.facet).as_vec3(),
            normal: place.along(self.normal()).as_vec3(),
            tangent: place.along(self.tangent()).as_vec3(),
            curvature: self.curvature as f32,
        };
        let axis = |v: DVec3| place.along(v).as_vec3();
        let bump = Ellipsoid {
            centre: place.at(self.mamillary.centre).as_vec3(),
            axes: Mat3::from_cols(axis(DVec3::X), axis(DVec3::Y), axis(DVec3::Z)),
            radii: self.mamillary.half.as_vec3(),
        };
        [Shape::Loft(Box::new(self.bar.loft(place))), Shape::Ellipsoid(bump)].map(|shape| {
            place
                .piece(Part::SuperiorArticularProcess, shape, ARTICULAR_CORTEX_MM, BLEND_MM * self.scale)
                .with_facet(facet)
        })
    }
}
