//! The posterior arch of one vertebra: the table's rows ([`super::vertebra_rows`]) carried to its dimensions, left side, in its own frame.
//!
//! A part is carried by a shift of its first section and one of its last, with what lies between sharing both by its place between
//! them, and by factors of its half widths: so a wider pedicle is wider and moves what hangs on it outwards, a deeper canal moves the
//! lamina's midline back, a longer spinous process stretches. At the average's dimensions nothing moves, and the rows stand as written.
//!
//! The bone's shape ([`super::vertebra`]) and its landmarks ([`super::landmarks`]) both come from here, so that a landmark is by
//! construction where the bone is.
//!
//! The inferior articular process hangs on the pillar above and on the joint below: its sections from the facet down are laid against the
//! lower neighbour's facet wherever posture and patient put it, and keep their height ([`PosteriorArch::pillar`]): where a disc is low, the
//! process stands lower on the facet, as in life.

use super::dimensions::{JOINT_SPACE_MM, Vertebra, average};
use super::place::Place;
use super::superior_process::SuperiorProcess;
use super::track::{Track, track};
use super::vertebra_rows::{Rows, wide};
use crate::geometry::frame::Rigid;
use glam::DVec3;

/// How far the inferior facet reaches into the joint before the superior process carves it, mm: so that it is carved all over.
const JOINT_BITE_MM: f64 = 0.5;
/// Where an inferior process is laid against the facet below, above its tip, mm: half of the 12–14 mm that the two overlap.
const MET_ABOVE_TIP_MM: f64 = 6.5;
/// How far to either side along the facet the inferior process may stand by its own rows, mm.
const ALONG_FACET_MM: f64 = 1.5;
/// Share of the joint's shift that a section of the pillar takes, from the pedicle down.
const JOINT_SHARE: [f64; 7] = [0.0, 0.0, 0.15, 0.55, 0.9, 1.0, 1.0];
/// Where the pars ends and the inferior process begins, as a share of the pillar.
pub(super) const PARS_SHARE: f32 = 0.52;

/// The parts of one vertebra's arch but for its superior process.
#[derive(Clone, Copy, Debug)]
pub(super) struct PosteriorArch {
    pub(super) pedicle: Track<4>,
    /// Pars and inferior process as they hang before they meet the joint.
    hanging: Track<7>,
    pub(super) lamina: Track<4>,
    pub(super) transverse: Track<5>,
    pub(super) spinous: Track<6>,
    k: f64,
}

impl PosteriorArch {
    /// Of a vertebra of size `k` against the average.
    pub(super) fn new(d: &Vertebra, k: f64) -> Self {
        let (rows, a) = average(d.rows);
        let a = a.scaled(k);
        Self::with(rows, d, &a, k)
    }

    /// From these rows, written at the dimensions `a` (already at size `k`).
    pub(super) fn with(rows: &Rows, d: &Vertebra, a: &Vertebra, k: f64) -> Self {
        let wall = d.posterior_rims_mm();
        let ([x, y, z], [ax, ay, az]) = (d.pedicle_centre_mm(), a.pedicle_centre_mm());
        let hung = DVec3::new(x - ax, (y - wall) - (ay - a.posterior_rims_mm()), z - az);
        let out = |of: f64, average: f64| DVec3::new(of - average, 0.0, z - az);
        let on_pars = out(d.pars_lateral_mm, a.pars_lateral_mm);
        let edge = |d: &Vertebra| d.interpedicular_mm / 2.0 + d.pedicle_width_mm;
        let back = DVec3::new(0.0, d.canal_depth_mm - a.canal_depth_mm, z - az);

        let pedicle = track(&rows.pedicle, wide::PEDICLE, k, wall)
            .stretched(d.pedicle_height_mm / a.pedicle_height_mm, d.pedicle_width_mm / a.pedicle_width_mm);
        let tangent = |v: &Vertebra| libm::tan(v.pedicle_axial_deg.to_radians());
        let turn = tangent(d) - tangent(a);
        let pedicle = pedicle.moved(|_, p| hung + DVec3::X * (turn * (p.y - y)));

        let transverse = track(&rows.transverse, wide::TRANSVERSE, k, wall);
        let (root, end) =
            (out(edge(d), edge(a)), out(d.transverse_span_mm / 2.0, a.transverse_span_mm / 2.0));
        let lamina = track(&rows.lamina, wide::LAMINA, k, wall)
            .stretched(d.lamina_height_mm / a.lamina_height_mm, 1.0)
            .moved(|t, _| on_pars.lerp(back, t));
        let longer = d.spinous_length_mm / a.spinous_length_mm - 1.0;
        let spinous = track(&rows.spinous, wide::SPINOUS, k, wall)
            .stretched(d.spinous_height_mm / a.spinous_height_mm, 1.0);
        let start = spinous.sections[0].centre.y;
        Self {
            pedicle,
            hanging: track(&rows.pillar, wide::PILLAR, k, wall).moved(|_, _| on_pars),
            lamina,
            transverse: transverse.moved(|t, _| root.lerp(end, t)),
            spinous: spinous.moved(|_, p| back + DVec3::Y * (longer * (p.y - start))),
            k,
        }
    }

    /// The pillar of a side, written for the left: from the pedicle down to the tip of the inferior process, which stands on the facet
    /// of the lower neighbour's `process`. `motion` says where that neighbour's frame stands in this one.
    pub(super) fn pillar(&self, place: &Place, process: &SuperiorProcess, motion: &Rigid) -> Track<7> {
        let other = Place { side: place.side, motion: *motion };
        let home = Place::own(place.side);
        // Mirrored back to the left.
        let point = |p: DVec3| home.at(other.at(p));
        let direction = |v: DVec3| home.along(other.along(v));
        let (normal, tangent, up) =
            (direction(process.normal()), direction(process.tangent()), direction(DVec3::Z));

        let loft = self.hanging.own();
        let [_, end] = loft.reach_mm();
        let [centre, wide, thin] = loft.ring(end - MET_ABOVE_TIP_MM * self.k);
        // The facet stands upright on its own bone: its point at the height of the section.
        let middle = point(process.joint_middle());
        let middle = middle + up * ((centre.z - middle.z) / up.z.max(0.5));
        // How far the bone reaches towards the joint.
        let reach = libm::sqrt(normal.dot(wide) * normal.dot(wide) + normal.dot(thin) * normal.dot(thin));
        let off = middle - centre;
        let along = off.dot(tangent);
        let shift = normal * (off.dot(normal) + JOINT_SPACE_MM - JOINT_BITE_MM + reach)
            + tangent * (along - along.clamp(-ALONG_FACET_MM, ALONG_FACET_MM));
        let mut pillar = self.hanging;
        for (section, share) in pillar.sections.iter_mut().zip(JOINT_SHARE) {
            section.centre += shift * share;
            let grown = process.joint.swelling_mm * share;
            section.half_wide += grown;
            section.half_thin += 0.5 * grown;
        }
        pillar
    }

    /// The pillar as it hangs without a neighbour.
    pub(super) fn free_pillar(&self) -> Track<7> {
        self.hanging
    }

    /// Middle of the accessory process: on the back of the transverse process's root, low.
    pub(super) fn accessory(&self) -> DVec3 {
        let loft = self.transverse.own();
        let [from, to] = loft.reach_mm();
        let [centre, _, thin] = loft.ring(from + 0.3 * (to - from));
        centre + thin * (0.9 * thin.y.signum()) - DVec3::Z * self.k
    }

    /// A point inside the lamina's half, nearer to the midline than to the pillar.
    pub(super) fn lamina_middle(&self) -> DVec3 {
        let loft = self.lamina.own();
        let [from, to] = loft.reach_mm();
        loft.ring(from + 0.62 * (to - from))[0]
    }
}

/// A point inside the pars interarticularis, under the pedicle, towards its free lateral border.
pub(super) fn pars_middle(pillar: &Track<7>) -> DVec3 {
    let loft = pillar.own();
    let [from, to] = loft.reach_mm();
    let [centre, wide, _] = loft.ring(from + 0.36 * (to - from));
    centre + wide * 0.4
}
