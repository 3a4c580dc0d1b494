//! Marks of a view that was kept.

use super::marks::{Marks, not_yet};
use super::remark::Remark;
use crate::anatomy::interior::Interior;
use crate::procedure::case::Case;
use crate::procedure::record::KeptView;
use crate::procedure::state::State;
use crate::view::best_view::ViewKind;
use crate::view::report::view_score;

/// The true AP is that which was kept last before the first oblique; the oblique and lateral are those kept last.
pub(super) fn kept_view(case: &Case, interior: &Interior, state: &State, kind: ViewKind) -> Marks {
    let first_oblique = state.kept.iter().position(|k| k.view == ViewKind::Oblique);
    let in_time = match (kind, first_oblique) {
        (ViewKind::TrueAp, Some(oblique)) => &state.kept[..oblique],
        _ => &state.kept[..],
    };
    let last = |kept: &[KeptView]| kept.iter().rev().find(|k| k.view == kind).map(|k| k.arm);
    let (arm, late) = match (last(in_time), last(&state.kept)) {
        (Some(arm), _) => (arm, false),
        (None, Some(arm)) => (arm, true),
        (None, None) => return not_yet(Remark::KeepView { view: kind }),
    };
    // What is kept as the oblique is measured as the oblique that the approach wants.
    let asked = case.asked(state.approach);
    let measured = asked.measured(kind);
    let worst = view_score(interior, &asked, kind, &arm);
    let mut reasons = vec![if worst.score >= 1.0 {
        Remark::ViewRight { view: measured }
    } else {
        Remark::ViewOff { criterion: worst.id, finding: worst.finding, advice: worst.advice }
    }];
    if late {
        reasons.push(Remark::KeptLate);
    }
    (Some(if late { 0.5 * worst.score } else { worst.score }), reasons)
}
