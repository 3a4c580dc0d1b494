//! Naming the parts: which part is asked next, and what an answer is worth. A pure function of what was pointed at.
//!
//! A part that was missed comes back after two others, until each has been found once. Marks: full at the first asking, half at the
//! second, a quarter at the third, none later. Order and marks are our own choice; that what was missed should return after a gap is
//! the spacing effect (Cepeda 2006, Psychol Bull 132:354: from memory).

use super::file::{AskedBone, AskedPart, AskedSide};
use crate::anatomy::names::{Label, Part};
use crate::anatomy::seeded::Numbers;
use crate::score::marks::Step;
use crate::score::remark::Remark;
use crate::view::criteria::Target;
use std::collections::VecDeque;

fn in_midline(part: Part) -> bool {
    matches!(part, Part::Body | Part::SpinousProcess | Part::MedianCrest)
}

/// The part that is meant at a target; `None` when its bone is not there.
pub fn label(asked: AskedPart, target: Target) -> Option<Label> {
    let level = match asked.bone {
        AskedBone::Target => Some(target.level),
        AskedBone::Below => target.level.below(),
    }?;
    let side = match asked.side {
        AskedSide::Needle => target.side,
        AskedSide::Other => target.side.other(),
    };
    let part = Part::from(asked.part);
    Some(Label { level, part, side: (!in_midline(part)).then_some(side) })
}

/// A missed part comes back after this many others.
const GAP: usize = 2;

/// Where the exercise stands.
#[derive(Clone, Debug)]
pub struct Exercise {
    /// What is asked now and after it.
    waiting: VecDeque<Asked>,
    /// Found, and at which asking.
    found: Vec<Asked>,
}

#[derive(Clone, Copy, Debug)]
struct Asked {
    label: Label,
    misses: u32,
}

impl Exercise {
    /// Shuffles the parts by a seed.
    pub fn new(parts: &[AskedPart], target: Target, seed: u64) -> Self {
        let mut order: Vec<Asked> =
            parts.iter().filter_map(|&p| label(p, target)).map(|label| Asked { label, misses: 0 }).collect();
        let mut numbers = Numbers::stream(seed, ORDER_STREAM);
        // Fisher and Yates.
        for i in (1..order.len()).rev() {
            order.swap(i, (numbers.unit() * (i + 1) as f64) as usize);
        }
        Self { waiting: order.into(), found: Vec::new() }
    }

    /// After these answers.
    pub fn after(mut self, pointed: &[Label]) -> Self {
        for &answer in pointed {
            self.answer(answer);
        }
        self
    }

    /// What is asked now; `None` when all have been found.
    pub fn asks(&self) -> Option<Label> {
        self.waiting.front().map(|asked| asked.label)
    }

    /// How many parts have been found, and of how many.
    pub fn counts(&self) -> (usize, usize) {
        (self.found.len(), self.found.len() + self.waiting.len())
    }

    /// Takes an answer; whether it was right. After the last part nothing is.
    pub fn answer(&mut self, answer: Label) -> bool {
        let Some(mut asked) = self.waiting.pop_front() else { return false };
        let right = asked.label == answer;
        if right {
            self.found.push(asked);
        } else {
            asked.misses += 1;
            self.waiting.insert(GAP.min(self.waiting.len()), asked);
        }
        right
    }

    /// Fills in the step of a score.
    pub fn fill(&self, step: &mut Step) {
        let all = self.waiting.len() + self.found.len();
        if all == 0 || (self.found.is_empty() && self.waiting.iter().all(|a| a.misses == 0)) {
            return;
        }
        let worth = |asked: &Asked| [1.0, 0.5, 0.25].get(asked.misses as usize).copied().unwrap_or(0.0);
        let missed: Vec<Label> =
            self.found.iter().chain(&self.waiting).filter(|a| a.misses > 0).map(|a| a.label).collect();
        // Not `sum`: of nothing it is -0.
        step.score = Some(self.found.iter().map(worth).fold(0.0, |sum, one| sum + one) / all as f64);
        step.reasons = vec![match (self.waiting.len(), missed.is_empty()) {
            (0, true) => Remark::PartsFound { all },
            (0, false) => Remark::PartsMissed { missed },
            (left, true) => Remark::PartsLeft { left, all },
            (left, false) => Remark::PartsLeftMissed { left, all, missed },
        }];
    }
}

/// Stream of the seed that the order is taken from; the anatomy has its own.
const ORDER_STREAM: u64 = 0x0e8d;
