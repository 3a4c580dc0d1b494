//! Marks of the depth: where the tip stands, and whether that was seen in an AP and a lateral view.

use super::marks::{Marks, not_yet};
use super::needle_path::final_tip;
use super::remark::Remark;
use super::tip_place::{PROVING, best_pair, tip_place};
use crate::anatomy::interior::Interior;
use crate::imaging::c_arm::CArm;
use crate::procedure::case::Case;
use crate::procedure::state::State;
use crate::view::best_view::{Orientation, ViewKind};

/// How near to the best view of its kind a picture must be to prove depth, degrees.
const PROVING_DEG: f64 = 12.0;
/// And how near to the final depth the needle must have been, mm.
const PROVING_MM: f64 = 12.0;

/// What the views say about where a tip is.
pub(super) fn depth(case: &Case, interior: &Interior, state: &State) -> Marks {
    let Some(tip) = final_tip(state) else {
        return not_yet(Remark::DepthNotYet);
    };
    let best = best_pair(case, interior);
    let place = tip_place(case, interior, state, best, tip);
    let worst = place.iter().fold(1.0, |least, part| f64::min(least, part.0));
    let mut scores: Vec<f64> = place.iter().map(|part| part.0).collect();
    let mut reasons: Vec<Remark> = place.into_iter().map(|part| part.1).collect();
    for (seen, view) in depth_seen(case, state, best).into_iter().zip(PROVING) {
        scores.push(if seen { 1.0 } else { 0.0 });
        if !seen {
            reasons.push(Remark::Unproven { view });
        }
    }
    let mean = scores.iter().sum::<f64>() / scores.len() as f64;
    // A tip in the wrong place is not made good by having looked.
    (Some(mean.min(worst * 0.5 + 0.5)), reasons)
}

/// The view that depth was not proven in, if there is one.
pub(super) fn unproven(case: &Case, interior: &Interior, state: &State) -> Option<ViewKind> {
    let seen = depth_seen(case, state, best_pair(case, interior));
    PROVING.into_iter().zip(seen).find_map(|(kind, seen)| (!seen).then_some(kind))
}

/// Whether an AP and a lateral picture, near `best` of [`best_pair`] each, were taken with the needle near its final depth.
pub(super) fn depth_seen(case: &Case, state: &State, best: [Orientation; 2]) -> [bool; 2] {
    let pictures: Vec<(CArm, f64)> = if case.exposures {
        state.pictures.iter().filter_map(|t| t.depth_mm.map(|d| (t.arm, d))).collect()
    } else {
        state.looked.clone()
    };
    let deepest = pictures.iter().map(|p| p.1).fold(0.0, f64::max);
    let end = state.needle.as_ref().map_or(deepest, |n| n.depth_mm());
    let seen = |near: fn(f64) -> f64, best: Orientation| {
        pictures.iter().any(|(arm, depth)| {
            let turn_deg = (arm.oblique_rad.to_degrees() - best.oblique_deg).abs();
            (depth - end).abs() <= PROVING_MM && near(turn_deg) <= PROVING_DEG
        })
    };
    let [ap, lateral] = best;
    // A lateral from the other side is as good.
    [seen(|turn_deg| turn_deg, ap), seen(|turn_deg| turn_deg.min((turn_deg - 180.0).abs()), lateral)]
}
