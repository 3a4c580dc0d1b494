//! Marks of the needle's way in: how straight down the beam it was held, and how near to its mark it ended.

use super::marks::{Marks, not_yet};
use super::remark::Remark;
use crate::anatomy::interior::Interior;
use crate::needle::reading::off_mark_mm;
use crate::procedure::beam::view_of;
use crate::procedure::case::Case;
use crate::procedure::state::State;
use glam::DVec3;

/// Travel along the beam before it is scored, mm.
const LEAST_TRAVEL_MM: f64 = 5.0;

/// A needle is being steered from this depth on, mm.
pub(super) const DEEP_MM: f64 = 30.0;

pub(super) fn down_the_beam(case: &Case, state: &State) -> Marks {
    if state.held.travel_mm < LEAST_TRAVEL_MM {
        return not_yet(Remark::BeamNotYet);
    }
    let mean = state.held.degree_mm / state.held.travel_mm;
    let score = case.needle.coaxial_deg.score(mean);
    let reason = if score >= 1.0 { Remark::BeamHeld { deg: mean } } else { Remark::BeamOff { deg: mean } };
    (Some(score), vec![reason])
}

pub(super) fn steering(case: &Case, interior: &Interior, state: &State) -> Marks {
    let (Some(tip), Some(mark)) = (final_tip(state), state.mark) else {
        return not_yet(Remark::SteerNotYet);
    };
    let view = view_of(&mark.arm, case, interior);
    let off = off_mark_mm(&view, mark.uv, tip);
    let distance = libm::hypot(off[0], off[1]);
    let score = case.needle.off_mark_mm.score(distance);
    let mut reasons =
        vec![if score >= 1.0 { Remark::Steered { mm: distance } } else { Remark::Strayed { mm: distance } }];
    // What was decided counts, not how often the hub was turned: drift seen, and the notch turned towards it.
    let all = state.turns.len();
    let blind = state.turns.iter().filter(|t| !t.decided()).count();
    if blind > 0 {
        reasons.push(Remark::TurnedBlind { blind, all });
    }
    let decided = if all == 0 { 1.0 } else { (all - blind) as f64 / all as f64 };
    (Some(score * decided), reasons)
}

/// The tip that is scored: where contrast went in last, else where it stands once it is deep.
pub(super) fn final_tip(state: &State) -> Option<DVec3> {
    match state.injected.last() {
        Some(last) => Some(last.bolus.tip),
        None => state.needle.as_ref().filter(|n| n.depth_mm() > DEEP_MM).map(|n| n.tip().position),
    }
}
