//! Downbeam computes what a C-arm shows of a lumbar spine at any orientation, and says how good the view is.
//!
//! # Frame and units
//!
//! Millimetres and radians inside; degrees only in names that end in `_deg`, on screen and in files.
//! Patient axes are DICOM's LPS: +x to the patient's left, +y posterior, +z cranial. The *column frame*
//! has those axes and its origin at the centre of the S1 end plate; the *patient frame* shown to users has its
//! origin at the centre of the target vertebra's body. The patient lies prone, the source is under the table.
//!
//! # Layers
//!
//! A module uses only modules to its left:
//!
//! ```text
//! geometry  <-  anatomy  <-  imaging  <-  view  <-  needle  <-  lesson  <-  practice  <-  web   (wasm-bindgen lives there only)
//!                                                                       <-  bin   (files, processes, sockets live there only)
//! ```
//!
//! # Not for clinical use
//!
//! A teaching model: not for planning or guiding a procedure. Follow local policy, supervised training and
//! licensed practice.

pub mod anatomy;
pub mod geometry;
pub mod imaging;
pub mod lesson;
pub mod needle;
#[cfg(feature = "practice")]
pub mod practice;
pub mod view;
#[cfg(any(target_arch = "wasm32", feature = "cli"))]
pub mod web;
