//! Marks of bringing the target to the middle: how far its vertebra's body lies from the isocentre, across, along and in height.

use super::marks::{Marks, not_yet};
use super::remark::Remark;
use crate::imaging::clearance::TableWay;
use crate::procedure::case::Case;
use crate::procedure::state::State;
use crate::view::tolerance::Tolerance;
use glam::DVec3;

/// Off the isocentre on the way that is furthest off, mm. Common practice, no source.
pub(crate) const OFF_MM: Tolerance = Tolerance { full: 8.0, none: 30.0 };

/// Where the table stood when the last view was kept, or stands while none is.
fn stands(state: &State) -> DVec3 {
    state.kept.last().map_or(state.arm, |kept| kept.arm).table_shift_mm
}

pub(super) fn target_centred(case: &Case, state: &State) -> Marks {
    let off = stands(state);
    if case.is_off_centre() && off == case.off_centre_mm() {
        return not_yet(Remark::CentreTarget);
    }
    let moves = moves(off);
    let reasons = if moves.is_empty() { vec![Remark::TargetCentred] } else { moves };
    (Some(OFF_MM.score(off.abs().max_element())), reasons)
}

/// The next move of the table, in height only once the others are right: it is seen in the lateral alone.
pub(super) fn next_move(state: &State) -> Option<Remark> {
    moves(stands(state)).into_iter().next()
}

/// The moves of the table that are wanted: across, along, then in height.
fn moves(off: DVec3) -> Vec<Remark> {
    [
        (off.x, TableWay::Right, TableWay::Left),
        (off.z, TableWay::Feet, TableWay::Head),
        (off.y, TableWay::Down, TableWay::Up),
    ]
    .into_iter()
    .filter(|(mm, ..)| mm.abs() > OFF_MM.full)
    .map(|(mm, back, forth)| Remark::MoveTable { mm: mm.abs(), way: if mm > 0.0 { back } else { forth } })
    .collect()
}
