//! The beam over the target, and where it leaves the skin.

use super::case::Case;
use crate::anatomy::interior::Interior;
use crate::imaging::c_arm::CArm;
use crate::imaging::projection::Projection;
use glam::{DVec2, DVec3};

/// The beam of a C-arm over the case's target.
pub fn view_of(arm: &CArm, case: &Case, interior: &Interior) -> Projection {
    Projection::new(arm, interior.level(case.target.level).centre)
}

/// Where the ray of a point on the detector leaves the skin on its way to the receptor, column frame, mm.
pub fn skin_entry(interior: &Interior, view: &Projection, uv: DVec2) -> Option<DVec3> {
    let ray = view.ray_through(uv);
    interior.trunk.skin.crossings_mm(view.source, ray).map(|[_, leaves]| view.source + ray * leaves)
}
