//! A question while it is drawn: whom it is drawn on, what is known of it so far, and choices by lot.

use super::question::{Asked, Choice, Fact, Injection, Margin};
use super::stage::Stage;
use crate::anatomy::interior::Interior;
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
