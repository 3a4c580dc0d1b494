//! The whole procedure: what is set, what the learner does, and what each step is worth.

pub mod action;
pub mod attempt;
pub mod case;
pub mod report;
pub mod score;
