//! The whole procedure: what is set, what the learner does, and what each step is worth.

pub mod action;
pub mod attempt;
pub mod case;
pub mod changes;
pub mod check;
pub mod class_report;
pub mod class_table;
pub mod digest;
pub mod draw;
pub mod engine;
pub mod file;
pub mod gate;
pub mod link;
pub mod log_likeness;
pub mod log_line;
pub mod marks;
pub mod parts;
pub mod read_error;
pub mod receipt;
pub mod receipt_text;
pub mod remark;
pub mod report;
#[cfg(feature = "cli")]
pub mod schema;
pub mod score;
