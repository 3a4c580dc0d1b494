//! Draws a question: patient, place and film by a seed, again and again until the truth is clear of every other answer.

use super::kind::Kind;
use super::question::{Asked, Choice, Fact, Injection, Margin, Question};
use super::stage::{Stage, patient, stage};
use super::{contrast_question, needle_question, part_question, view_question};
use crate::anatomy::interior::Interior;
use crate::anatomy::patient::PatientBuilder;
use crate::anatomy::seeded::Numbers;
use crate::needle::shaft::Needle;
use crate::view::best_view::Orientation;
use crate::view::criteria::Target;

/// Who and what a question is drawn on.
pub(super) struct Setting<'a> {
    pub(super) stage: &'static Stage,
    pub(super) interior: &'a Interior,
    pub(super) target: Target,
    /// In [0, 1): which answer is to be the right one, so that those that are seldom clear are asked as often as the others.
    pub(super) wish: f64,
}

impl Setting<'_> {
    /// What the wish picks of a list that is not empty.
    pub(super) fn wished<T: Copy>(&self, list: &[T]) -> T {
        list[((self.wish * list.len() as f64) as usize).min(list.len() - 1)]
    }
}

/// A question without its patient.
pub(super) struct Draft {
    pub(super) view: Orientation,
    pub(super) asked: Asked,
    pub(super) needle: Option<Needle>,
    pub(super) needle_after: Option<Needle>,
    pub(super) injection: Option<Injection>,
    pub(super) dot_mm: Option<[f64; 2]>,
    pub(super) choices: Vec<Choice>,
    pub(super) answer: usize,
    pub(super) margin: Margin,
    pub(super) seen: Vec<Fact>,
    pub(super) reason: Vec<Fact>,
    pub(super) truth: Orientation,
}

impl Draft {
    /// A film and its sentence; the rest is filled in by who draws it.
    pub(super) fn new(view: Orientation, asked: Asked, margin: Margin) -> Self {
        Self {
            view,
            asked,
            needle: None,
            needle_after: None,
            injection: None,
            dot_mm: None,
            choices: Vec::new(),
            answer: 0,
            margin,
            seen: Vec::new(),
            reason: Vec::new(),
            truth: view,
        }
    }

    /// With these answers, of which `right` is one.
    pub(super) fn answered(mut self, choices: Vec<Choice>, right: Choice) -> Option<Self> {
        self.answer = choices.iter().position(|choice| *choice == right)?;
        self.choices = choices;
        Some(self)
    }
}

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
        let builder = PatientBuilder::new(&spec);
        // A wish that half of the patients could not meet is given up.
        let wish = if attempt < TRIES.0 / 2 { wish } else { numbers.unit() };
        let setting = Setting { stage, interior: builder.interior(), target, wish };
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

/// In a range.
pub(super) fn between(numbers: &mut Numbers, [low, high]: [f64; 2]) -> f64 {
    low + (high - low) * numbers.unit()
}

/// Either sign.
pub(super) fn sign(numbers: &mut Numbers) -> f64 {
    if numbers.unit() < 0.5 { -1.0 } else { 1.0 }
}

/// One of a list that is not empty.
pub(super) fn one_of<T: Copy>(numbers: &mut Numbers, list: &[T]) -> T {
    list[((numbers.unit() * list.len() as f64) as usize).min(list.len() - 1)]
}

/// Fisher and Yates.
pub(super) fn shuffle<T>(numbers: &mut Numbers, list: &mut [T]) {
    for i in (1..list.len()).rev() {
        list.swap(i, (numbers.unit() * (i + 1) as f64) as usize);
    }
}
