//! Draws a question: patient, place and film by a seed, again and again until the truth is clear of every other answer.

use super::draft::{Draft, Setting};
use super::kind::Kind;
use super::question::Question;
use super::stage::{patient, stage};
use super::{contrast_question, needle_question, part_question, view_question};
use crate::anatomy::interior::Interior;
use crate::anatomy::seeded::Numbers;
use crate::view::criteria::Target;

/// Patients tried for one question, and films tried on each.
const TRIES: (u64, u64) = (40, 12);

/// Streams of the seed that the wish is taken from.
const WISH_STREAM: u64 = 0x3157;

/// The question of a seed; `None` when no patient gave a clear one (`tests/practice_truth.rs` has not met such a seed).
pub fn ask(kind: Kind, stage_number: u8, target: Target, seed: u64) -> Option<Question> {
    let stage = stage(stage_number);
    let wish = Numbers::stream(seed, WISH_STREAM + kind as u64).unit();
    (0..TRIES.0).find_map(|attempt| {
        let mut numbers = Numbers::stream(seed, 0x7ac7 + (attempt << 8) + kind as u64);
        let spec = patient(stage, &mut numbers);
        let interior = Interior::of(&spec);
        // A wish that half of the patients could not meet is given up.
        let wish = if attempt < TRIES.0 / 2 { wish } else { numbers.unit() };
        let setting = Setting { stage, interior: &interior, target, wish };
        (0..TRIES.1).find_map(|_| {
            let draft = draw(kind, &setting, &mut numbers)?;
            draft.margin.holds().then(|| Question {
                kind,
                stage: stage_number,
                spec: spec.clone(),
                target,
                view: draft.view,
                asked: draft.asked,
                needle: draft.needle,
                needle_after: draft.needle_after,
                injection: draft.injection,
                dot_mm: draft.dot_mm,
                choices: draft.choices,
                answer: draft.answer,
                margin: draft.margin,
                seen: draft.seen,
                reason: draft.reason,
                truth: draft.truth,
            })
        })
    })
}

fn draw(kind: Kind, setting: &Setting<'_>, numbers: &mut Numbers) -> Option<Draft> {
    match kind {
        Kind::Way => view_question::way(setting, numbers),
        Kind::Amount => view_question::amount(setting, numbers),
        Kind::Step => view_question::step(setting, numbers),
        Kind::TrueAp => view_question::true_ap(setting, numbers),
        Kind::Part => part_question::part(setting, numbers),
        Kind::Clock => needle_question::clock(setting, numbers),
        Kind::Notch => needle_question::notch(setting, numbers),
        Kind::Spread => contrast_question::spread(setting, numbers),
        Kind::Stop => contrast_question::stop(setting, numbers),
    }
}
