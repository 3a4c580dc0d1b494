//! What an attempt is worth, and what can be said of it: marks by step, gates, remarks, the procedure as it stands.

mod contacts;
mod contrast;
mod depth;
pub mod engine;
pub mod gate;
mod kept_view;
pub mod marks;
mod needle_path;
pub mod radiation;
pub mod remark;
pub mod report;
pub mod rubric;
mod target;
pub(crate) mod target_centred;
mod tip_place;
