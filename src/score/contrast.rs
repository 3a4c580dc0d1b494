//! Marks of the contrast: suction first, watched live, in the right place, and its spread named rightly.

use super::marks::{Marks, not_yet};
use super::remark::Remark;
use crate::needle::compartment::{Compartment, Pattern};
use crate::procedure::case::Case;
use crate::procedure::record::Injected;
use crate::procedure::state::State;

pub(super) fn contrast(case: &Case, state: &State) -> Marks {
    let Some(last) = state.injected.last() else {
        return not_yet(Remark::ContrastNotYet);
    };
    let all = |f: fn(&Injected) -> bool| state.injected.iter().all(f);
    let mut score = 0.0;
    let mut reasons = Vec::new();
    let mut part = |good: bool, weight: f64, bad: Remark| {
        if good {
            score += weight;
        } else {
            reasons.push(bad);
        }
    };
    part(all(|i| i.aspirated), 0.2, Remark::AspirateFirst);
    part(all(|i| i.live), 0.3, Remark::InjectLive);
    let right = matches!(
        last.bolus.compartment,
        Compartment::Perineural { level, side } if level == case.target.level && side == case.target.side
    );
    part(right, 0.3, Remark::WrongPlace);
    let named = all(|i| i.named == Some(i.bolus.compartment.pattern()));
    let unnamed = last.named.is_none();
    part(named, 0.2, if unnamed { Remark::NamePattern } else { Remark::NamedWrongly });
    if reasons.is_empty() {
        reasons.push(Remark::ContrastGood);
    }
    if state.injected.iter().any(|i| i.bolus.compartment.pattern() == Pattern::Intraneural) {
        score = f64::min(score, 0.2);
        reasons.push(Remark::ContrastInRoot);
    }
    (Some(score), reasons)
}
