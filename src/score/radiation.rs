//! Marks of the radiation: pictures and beam time against par.

use super::marks::{Marks, not_yet};
use super::remark::Remark;
use crate::procedure::case::{Case, Par};
use crate::procedure::state::State;
use crate::view::tolerance::Tolerance;

pub(super) fn radiation(case: &Case, state: &State) -> Marks {
    if !case.exposures {
        return not_yet(Remark::PicturesFree);
    }
    if state.pictures.is_empty() {
        return not_yet(Remark::NoExposure);
    }
    let (pictures, beam_s) = spent(state);
    let within = |value: f64, par: u32| {
        let par = f64::from(par.max(1));
        Tolerance { full: par, none: 3.0 * par }.score(value)
    };
    let score = within(f64::from(pictures), case.par.exposures).min(within(beam_s, case.par.beam_s));
    let Par { exposures: par_pictures, beam_s: par_beam_s } = case.par;
    (Some(score), vec![Remark::Spent { pictures, beam_s, par_pictures, par_beam_s }])
}

/// Pictures (a run counts once) and seconds of fluoroscopy.
pub fn spent(state: &State) -> (u32, f64) {
    let pictures = state.pictures.iter().filter(|t| !t.goes_on).count() as u32;
    (pictures, state.pictures.iter().map(|t| t.beam_s).sum())
}
