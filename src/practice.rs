//! Practice: short questions on films of seeded patients, when they come back, and what a row of answers shows.
//!
//! - [`question`]: one film, one decision, its choices and the right one. Truth comes from the computed geometry; what lies within its
//!   stated margin of another answer is not asked ([`ask`]).
//! - [`round`]: a seed makes a round of questions.
//! - [`schedule`]: which kind of question, at which level and side, is due again.
//! - [`curve`]: cumulative sum charts of right and wrong answers.
//! - [`progress`]: what is kept of a learner, as a file; [`practice_receipt`]: handed in, and asked again.
//! - [`answer_code`], [`class_round`], [`item_figures`]: a round in a class, and what it says about the questions.
//!
//! No clock: days come in as numbers. No words: what is said of a question goes out as names and values.

pub mod answer_code;
pub mod ask;
pub mod class_round;
pub mod contrast_question;
pub mod curve;
mod draft;
pub mod film;
pub mod item_figures;
pub mod kind;
pub mod needle_question;
pub mod overlay;
pub mod part_question;
pub mod practice_receipt;
pub mod progress;
pub mod question;
pub mod round;
pub mod schedule;
pub mod stage;
pub mod view_question;
