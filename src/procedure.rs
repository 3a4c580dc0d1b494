//! The procedure: what is set, what a learner can do, how it is logged, and where that leads. Nothing in here gives marks.

pub mod action;
pub mod attempt;
pub mod attempt_file;
pub mod beam;
pub mod case;
mod imaging_acts;
pub mod log_line;
mod needle_acts;
pub mod pointing;
pub mod record;
pub mod state;
pub mod step;
mod syringe_acts;
pub mod time_line;
