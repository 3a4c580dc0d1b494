//! What someone beside the table sees of the bones: outlines by part in parallel projection.
//!
//! A cone beam whose source stands `FAR_MM` away is parallel to within 0.1 percent over 100 mm of depth, so the beam's own tracer
//! draws these lines too. They are the picture's lines seen from another side: occluding contours, cut where the part changes.

use super::outline::{Outline, OutlineTracer};
use super::projection::Projection;
use crate::anatomy::patient::Patient;
use glam::DVec3;

/// From the onlooker's source to what is seen, mm.
const FAR_MM: f64 = 100_000.0;

/// A view along `right` × `up` that shows `centre` in its middle and `half_mm` around it, at natural size. `right` and `up` are taken
/// to unit length and square to each other; `None` where they run along each other or are no numbers.
pub fn onlooker(centre: DVec3, right: DVec3, up: DVec3, half_mm: f64) -> Option<Projection> {
    let d = right.cross(up).try_normalize()?;
    let right = right.try_normalize()?;
    Some(Projection {
        source: centre - d * FAR_MM,
        isocentre: centre,
        d,
        right,
        up: d.cross(right),
        sod_mm: FAR_MM,
        sid_mm: FAR_MM,
        half_field_mm: half_mm,
    })
}

/// The lines of all bones in such a view, mm from its middle.
pub fn parts_seen(patient: &Patient, view: &Projection) -> Vec<Outline> {
    OutlineTracer::default().trace(patient, view)
}
