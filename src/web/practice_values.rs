//! The plain values that pass between practice and its pages, as in `super::values`.

use crate::anatomy::names::{Level, Side};
use crate::practice::curve::Curve;
use crate::practice::kind::{Kind, Skill};
use crate::practice::question::{Asked, Choice, Fact, Margin};
use crate::view::best_view::Orientation;
use serde::Serialize;

/// A card of a round.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct AskedCard {
    /// Of question.
    pub kind: Kind,
    /// That it belongs to.
    pub skill: Skill,
    /// Level.
    pub level: Level,
    /// Side.
    pub side: Side,
    /// How hard, from 0.
    pub stage: u8,
}

/// A question as the page shows it, without its answer.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS), ts(rename = "ShownQuestion"))]
pub struct Shown<'a> {
    /// Of question.
    pub kind: Kind,
    /// That it belongs to.
    pub skill: Skill,
    /// How hard, from 0.
    pub stage: u8,
    /// Level.
    pub level: Level,
    /// Side.
    pub side: Side,
    /// What is asked.
    pub asked: Asked,
    /// What can be answered.
    pub choices: &'a [Choice],
    /// What is told beside the film.
    pub seen: &'a [Fact],
    /// Where the C-arm stands.
    pub view: Orientation,
    /// Whether outlines are drawn.
    pub outlines: bool,
    /// Whether contrast flows.
    pub contrast: bool,
}

/// What an answer was worth.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS), ts(rename = "AnswerReport"))]
pub struct AnswerReport<'a> {
    /// Whether it was right.
    pub right: bool,
    /// Place of the right choice, from 0.
    pub answer: usize,
    /// Why.
    pub reason: &'a [Fact],
    /// How clear the question was.
    pub margin: Margin,
    /// The view that it is about.
    pub truth: Orientation,
}

/// A skill and its curve.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct SkillCurve {
    /// Which.
    pub skill: Skill,
    /// CUSUM and LC-CUSUM of its answers.
    pub curve: Curve,
}

/// What the page says before a round.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Overview {
    /// Cards due today.
    pub due: usize,
    /// Cards answered at least once.
    pub begun: usize,
    /// All cards.
    pub cards: usize,
    /// All answers.
    pub answers: usize,
    /// How hard each kind of question is by now.
    pub stages: Vec<(Kind, u8)>,
    /// Each skill's curve.
    pub skills: Vec<SkillCurve>,
    /// Rate of wrong answers that is acceptable, 0 to 1.
    pub acceptable: f64,
    /// Rate of wrong answers that is not, 0 to 1.
    pub unacceptable: f64,
    /// Chance of "reached" within 60 answers of who still fails at the unacceptable rate.
    pub by_chance: f64,
}

/// After codes were taken in.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS), ts(rename = "CodesReport"))]
pub struct CodesReport<'a> {
    /// Learners so far.
    pub learners: usize,
    /// A sentence for each code that was not taken.
    pub refused: &'a [String],
}

/// What a class answered to a question.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Counts {
    /// By choice.
    pub counts: [u32; 4],
    /// Without an answer.
    pub none: u32,
}

/// A picture code's dark modules.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS), ts(rename = "CodePicture"))]
pub struct Picture {
    /// Of the view box.
    pub size: i32,
    /// As of an SVG path.
    pub path: String,
}

/// A receipt of practice and what its check found.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct CheckedPractice<'a> {
    /// Code.
    pub learner: &'a str,
    /// `verified`, `altered` or `unknown_engine`.
    pub status: &'static str,
    /// Why it is altered; of another engine its version.
    pub note: &'a str,
}
