//! Where a tip stands against where it should be, in the best AP and the best lateral view; at S1 in the opening and along the tunnel.
//!
//! Where a tip should be: common practice, no source.

use super::remark::{Along, Remark};
use crate::anatomy::foramen::Approach;
use crate::anatomy::interior::Interior;
use crate::anatomy::names::Level;
use crate::imaging::c_arm::CArm;
use crate::needle::reading::{clock, lateral};
use crate::procedure::beam::view_of;
use crate::procedure::case::Case;
use crate::procedure::state::State;
use crate::view::best_view::{Orientation, ViewKind, best_view};
use glam::DVec3;

/// Where a tip should be, as [low, high] of each reading.
struct Place {
    /// In the foramen, 0 under the upper pedicle to 1.
    height: [f64; 2],
    /// Behind the posterior body line, mm.
    behind_wall_mm: [f64; 2],
    /// Medial of 6 o'clock, mm.
    medial_mm: [f64; 2],
}

/// Under the root the place lies further in. Common practice, no source.
const INFRANEURAL_MEDIAL_MM: f64 = 4.0;

/// Behind the opening's plane by less than this the tip is at it, mm. Derived: the bevel's own length.
const SACRAL_BEHIND_MM: f64 = 0.5;
/// Past the plane of the posterior opening a tip should not go further, mm at average size: halfway through the bone. Derived.
const SACRAL_DEEP_MM: f64 = 9.0;

/// How far medial of 6 o'clock a tip may be before contrast, mm.
pub(super) fn medial_limit_mm(case: &Case, approach: Approach) -> f64 {
    match (approach, case.target.level) {
        (Approach::Infraneural, level) if level != Level::S1 => INFRANEURAL_MEDIAL_MM,
        _ => 0.0,
    }
}

/// `border_mm`: from 6 o'clock out to the pedicle's lateral border.
fn place(approach: Approach, border_mm: f64) -> Place {
    match approach {
        Approach::Subpedicular => {
            Place { height: [-0.05, 0.5], behind_wall_mm: [-0.5, 9.0], medial_mm: [-border_mm, 0.0] }
        }
        Approach::Infraneural => Place {
            height: [0.45, 1.05],
            behind_wall_mm: [-0.5, 9.0],
            medial_mm: [-16.0, INFRANEURAL_MEDIAL_MM],
        },
    }
}

fn beyond(value: f64, [low, high]: [f64; 2]) -> f64 {
    (low - value).max(value - high).max(0.0)
}

/// A part of a step's marks and its reason.
pub(super) type Part = (f64, Remark);

/// The views that prove depth.
pub(super) const PROVING: [ViewKind; 2] = [ViewKind::TrueAp, ViewKind::Lateral];

/// The best AP and the best lateral view.
pub(super) fn best_pair(case: &Case, interior: &Interior) -> [Orientation; 2] {
    PROVING.map(|kind| best_view(interior, case.target, kind, &CArm::default()).orientation)
}

/// Where a tip stands in the best AP and the best lateral view (`best`, of [`best_pair`]), each with its marks; at S1 in the opening and along the tunnel.
pub(super) fn tip_place(
    case: &Case,
    interior: &Interior,
    state: &State,
    best: [Orientation; 2],
    tip: DVec3,
) -> [Part; 2] {
    match case.target.level {
        Level::S1 => sacral_place(case, interior, tip),
        _ => foraminal_place(case, interior, state, best, tip),
    }
}

/// Where the tip stands in the best AP and in the best lateral view.
fn foraminal_place(
    case: &Case,
    interior: &Interior,
    state: &State,
    best: [Orientation; 2],
    tip: DVec3,
) -> [Part; 2] {
    let (level, side) = (case.target.level, case.target.side);
    let [from_behind, from_side] = best.map(|orientation| {
        let arm = CArm::at_degrees(orientation.oblique_deg, orientation.tilt_deg).unwrap_or_default();
        view_of(&arm, case, interior)
    });
    let landmarks = interior.level(level);
    let pedicle = &landmarks.side(side).pedicle;
    let place = place(state.approach, pedicle.across.dot(landmarks.upper_plate.left).abs());
    let ap = clock(&from_behind, interior, level, side, tip);
    let too_medial = (ap.medial_mm - place.medial_mm[1]).max(0.0);
    let too_lateral = (place.medial_mm[0] - ap.medial_mm).max(0.0);
    let ap_score = case.needle.medial_mm.score(too_medial).min(case.needle.depth_mm.score(too_lateral));
    let ap_reason = if too_medial > case.needle.medial_mm.full {
        Remark::ApMedial { mm: too_medial }
    } else if too_lateral > case.needle.depth_mm.full {
        Remark::ApShort { mm: too_lateral }
    } else {
        Remark::ApAt { hour: ap.hour }
    };
    let side_view = lateral(&from_side, interior, level, side, tip);
    let span = 2.0 * interior.foramen(level, side).map_or(10.0, |f| f.ring.up.length());
    let off_height = beyond(side_view.height, place.height) * span;
    let off_depth = beyond(side_view.behind_wall_mm, place.behind_wall_mm);
    let full = case.needle.depth_mm.full;
    let side_reason = if off_depth > full && side_view.behind_wall_mm < place.behind_wall_mm[0] {
        Remark::SideDeep { mm: side_view.behind_wall_mm.abs() }
    } else if off_depth > full {
        Remark::SideShallow { mm: off_depth }
    } else if off_height > full {
        let along = if side_view.height < place.height[0] { Along::High } else { Along::Low };
        Remark::SideOff { mm: off_height, along }
    } else {
        Remark::SideInside
    };
    [(ap_score, ap_reason), (case.needle.depth_mm.score(off_height.max(off_depth)), side_reason)]
}

/// Where the tip stands in the first sacral foramen: in the upper lateral part, since the root runs down and out through it, and just past
/// the opening's plane. Common practice, no source.
fn sacral_place(case: &Case, interior: &Interior, tip: DVec3) -> [Part; 2] {
    let side = case.target.side;
    let Some(foramen) = interior.foramen(Level::S1, side) else {
        return [(0.0, Remark::SacralOutside), (0.0, Remark::SacralOutside)];
    };
    let (ring, plate) = (&foramen.ring, &interior.level(Level::S1).upper_plate);
    let outwards = plate.left * side.sign();
    let off = tip - ring.centre;
    let (wide, tall) = (ring.across.length().max(1e-6), ring.up.length().max(1e-6));
    let across = if ring.across.dot(outwards) < 0.0 { -ring.across } else { ring.across } / wide;
    let up = if ring.up.dot(plate.normal) < 0.0 { -ring.up } else { ring.up } / tall;
    let (out, high) = (off.dot(across), off.dot(up));
    // The root's side of the line from the upper medial to the lower lateral border, and the opening's own border.
    let root_side = (-(out / wide + high / tall) * 0.5 * (wide + tall) / std::f64::consts::SQRT_2).max(0.0);
    let beyond_rim = ((libm::hypot(out / wide, high / tall) - 1.0) * 0.5 * (wide + tall)).max(0.0);
    let aside = root_side.max(beyond_rim);
    let full = case.needle.depth_mm.full;
    let place = if aside <= full {
        Remark::SacralUpper
    } else if beyond_rim > root_side {
        Remark::SacralOutside
    } else {
        Remark::SacralLow { mm: aside }
    };
    let normal = foramen.subpedicular.normal();
    let inside_mm = -off.dot(normal);
    let low = -SACRAL_BEHIND_MM;
    let off_depth = beyond(inside_mm, [low, SACRAL_DEEP_MM * interior.scale]);
    let depth = if off_depth <= full {
        Remark::SacralInside
    } else if inside_mm < low {
        Remark::SideShallow { mm: off_depth }
    } else {
        Remark::SacralDeep { mm: off_depth }
    };
    [(case.needle.depth_mm.score(aside), place), (case.needle.depth_mm.score(off_depth), depth)]
}
