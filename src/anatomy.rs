//! The lumbar spine from published numbers: named parts as signed distance fields, stacked into a column.

pub mod column;
pub mod dimensions;
pub mod landmarks;
pub mod names;
pub mod patient;
mod pelvis;
mod place;
mod rib;
mod sacrum;
pub mod soft_tissue;
mod vertebra;
