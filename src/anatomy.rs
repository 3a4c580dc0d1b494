//! The lumbar spine from published numbers: named parts as signed distance fields, stacked into a column.

pub mod column;
pub mod dimensions;
pub mod foramen;
pub mod interior;
pub mod landmarks;
pub mod names;
pub mod nerves;
pub mod patient;
pub mod patient_field;
pub mod patient_spec;
mod pelvis;
mod physique;
mod place;
mod posterior_arch;
pub mod process_top;
mod rib;
mod ring;
mod sacrum;
pub(crate) mod seeded;
pub mod soft_tissue;
mod superior_process;
mod thoracic;
pub mod tissues;
pub mod variation;
mod vertebra;
pub mod vessels;
