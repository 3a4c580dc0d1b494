//! Lessons: the file and its rules, the patient that a learner's code draws, the naming of parts, and a lesson's own score.

pub mod changes;
pub mod check;
pub mod digest;
pub mod draw;
pub mod file;
pub mod link;
pub mod marks;
pub mod parts;
pub mod read_error;
#[cfg(feature = "cli")]
pub mod schema;
