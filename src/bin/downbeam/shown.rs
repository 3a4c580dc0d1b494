//! What the files of `view` are written from.

use downbeam::anatomy::patient::Patient;
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::outline::Outline;
use downbeam::imaging::projection::Projection;
use downbeam::view::criteria::Target;
use downbeam::view::report::Report;

/// Everything that there is to show of one orientation.
pub(crate) struct Shown<'a> {
    pub(crate) patient: &'a Patient,
    pub(crate) target: Target,
    pub(crate) arm: CArm,
    pub(crate) projection: Projection,
    pub(crate) report: Report,
    pub(crate) outlines: Vec<Outline>,
}
