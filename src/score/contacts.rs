//! Marks of what the needle met.
//!
//! What is taken off for a contact: common practice, no source.

use super::marks::{Marks, not_yet};
use super::needle_path::final_tip;
use super::remark::Remark;
use crate::needle::contact::ContactKind;
use crate::procedure::record::ContactRecord;
use crate::procedure::state::State;

/// Pushed on further than this after a contact counts as pushed through, mm.
pub(super) const PUSHED_MM: f64 = 2.0;

pub(super) fn contacts(state: &State) -> Marks {
    if state.needles == 0 || final_tip(state).is_none() {
        return not_yet(Remark::NothingMetYet);
    }
    let harms: Vec<&ContactRecord> =
        state.contacts.iter().filter(|m| m.contact.kind.is_harm() && m.shown).collect();
    if harms.is_empty() {
        return (Some(1.0), vec![Remark::NothingMet]);
    }
    let mut score = 1.0;
    let mut reasons = Vec::new();
    for harm in harms {
        let (answered, through) = cost(harm.contact.kind);
        let pushed = harm.pushed_on_mm > PUSHED_MM;
        score -= if pushed { through } else { answered };
        reasons.push(Remark::Harm {
            kind: harm.contact.kind,
            level: harm.contact.level,
            mm: harm.contact.depth_mm,
            pushed_mm: pushed.then_some(harm.pushed_on_mm),
        });
    }
    (Some(score.max(0.0)), reasons)
}

/// What a contact takes off when it is answered by drawing back, and when it is pushed through.
fn cost(kind: ContactKind) -> (f64, f64) {
    match kind {
        ContactKind::Root | ContactKind::Ganglion => (0.4, 1.0),
        ContactKind::Dura => (0.6, 1.0),
        // Cannot be foreseen: drawn back from, it costs nothing.
        ContactKind::Vessel => (0.0, 0.4),
        ContactKind::Disc => (0.4, 0.6),
        ContactKind::Peritoneum => (0.7, 1.0),
        ContactKind::Skin | ContactKind::Fascia | ContactKind::Bone => (0.0, 0.0),
    }
}
