//! Marks of the target that was marked: inside the area aimed at, not medial of the pedicle, and with no bone before it.

use super::marks::{Marks, not_yet};
use super::remark::{self, Across, Along, Remark};
use crate::anatomy::foramen::{Approach, Foramen};
use crate::anatomy::interior::Interior;
use crate::anatomy::names::{Level, Side};
use crate::needle::reading::OPEN_REACH_MM;
use crate::procedure::beam::view_of;
use crate::procedure::case::Case;
use crate::procedure::record::Mark;
use crate::procedure::state::State;
use glam::DVec3;

pub(super) fn target(case: &Case, interior: &Interior, state: &State) -> Marks {
    let (Some(Mark { uv, arm }), Some(area)) = (state.mark, state.area(case, interior)) else {
        return not_yet(Remark::MarkOnOblique);
    };
    let view = view_of(&arm, case, interior);
    let ray = view.ray_through(uv);
    let Some(at) = area.meets(view.source, ray) else {
        return (Some(0.0), vec![Remark::MarkAlongPlane]);
    };
    let outside = area.distance_mm(at);
    let mut score = case.needle.mark_mm.score(outside.max(0.0));
    let named = remark::Area::of(case.target.level, state.approach);
    let mut reasons = vec![if outside <= case.needle.mark_mm.full {
        Remark::MarkInside { area: named }
    } else {
        let (along, across) = direction(case, interior, at - area.centre());
        Remark::MarkOutside { mm: outside, area: named, along, across }
    }];
    if state.approach == Approach::Subpedicular && case.target.level != Level::S1 {
        let six = interior.level(case.target.level).side(case.target.side).pedicle.centre;
        let medial =
            -(at - six).dot(interior.level(case.target.level).upper_plate.left) * case.target.side.sign();
        if medial > case.needle.medial_mm.full {
            score = score.min(case.needle.medial_mm.score(medial));
            reasons.push(Remark::MarkMedial { mm: medial });
        }
    }
    // Bone between the skin and the target: the ray from the target towards the receptor.
    if let Some((bone, _)) = interior.tissues().bone_along(at, ray, OPEN_REACH_MM) {
        score *= 0.5;
        reasons.push(Remark::MarkBehindBone { level: interior.tissues().list[bone].level });
    }
    (Some(score), reasons)
}

/// Which way a point lies off: the larger of the two, or both where neither is twice the other.
fn direction(case: &Case, interior: &Interior, off: DVec3) -> (Along, Across) {
    let plate = &interior.level(case.target.level).upper_plate;
    let lateral = off.dot(plate.left) * case.target.side.sign();
    let cranial = off.dot(plate.normal);
    let along = if cranial > 0.0 { Along::High } else { Along::Low };
    let across = if lateral > 0.0 { Across::Lateral } else { Across::Medial };
    if lateral.abs() > 2.0 * cranial.abs() {
        (Along::None, across)
    } else if cranial.abs() > 2.0 * lateral.abs() {
        (along, Across::None)
    } else {
        (along, across)
    }
}

/// The point of the area's plane that was marked.
pub(super) fn marked_point(case: &Case, interior: &Interior, state: &State) -> Option<DVec3> {
    let Mark { uv, arm } = state.mark?;
    let view = view_of(&arm, case, interior);
    state.area(case, interior)?.meets(view.source, view.ray_through(uv))
}

/// Level and side of the foramen whose area is nearest to a point.
pub(super) fn place_of(interior: &Interior, approach: Approach, p: DVec3) -> Option<(Level, Side)> {
    let nearest = interior.foramina().iter().min_by(|a, b| {
        let to = |f: &&Foramen| f.area(approach).centre().distance(p);
        to(a).total_cmp(&to(b))
    })?;
    Some((nearest.level, nearest.side))
}
