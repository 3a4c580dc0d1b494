//! The projected outline of a superior articular process at one height: where it begins and ends from left to right.
//!
//! The picture's line at that height and the focal spot span a plane; the process's surface, given by sections with straight sides
//! between them ([`ProcessTop`]), is cut by it in a closed curve whose projection runs along the line. The curve's ends are therefore the ends of
//! the outline, whatever the orientation. Every point is kept as (left, cranial, depth), each linear in space, so that a crossing is found by
//! one division.

use super::criteria::ImageAxes;
use crate::anatomy::process_top::{AROUND, ProcessTop, SECTIONS};
use crate::imaging::projection::Projection;
use glam::{DVec2, DVec3};

/// A process's outline along the image axes of a vertebra, mm on the detector.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Silhouette {
    /// Its highest point.
    pub top: f64,
    /// The height that was asked for, cranial.
    pub line: f64,
    /// Least and greatest coordinate to the vertebra's left, at the height asked for.
    pub span: (f64, f64),
}

impl Silhouette {
    /// Middle between the outline's ends.
    pub fn middle(&self) -> f64 {
        0.5 * (self.span.0 + self.span.1)
    }
}

/// The outline `under_mm` (mm at the process's depth) under its top.
pub fn silhouette(view: &Projection, axes: &ImageAxes, top: &ProcessTop, under_mm: f64) -> Silhouette {
    let along = |axis: DVec2| (view.right * axis.x + view.up * axis.y) * view.sid_mm;
    let (left, cranial) = (along(axes.left), along(axes.cranial));
    let at = |p: DVec3| {
        let r = p - view.isocentre;
        DVec3::new(r.dot(left), r.dot(cranial), (view.sod_mm + r.dot(view.d)).max(1e-6))
    };
    let points = top.points().map(|section| section.map(at));
    let highest = points.iter().flatten().map(|p| p.y / p.z).fold(f64::NEG_INFINITY, f64::max);
    let depth = points[0][0].z;
    let line = highest - under_mm * view.sid_mm / depth;

    let mut span = (f64::INFINITY, f64::NEG_INFINITY);
    // Homogeneous: above the line where > 0.
    let above = points.map(|section| section.map(|p| p.y - line * p.z));
    let mut edge = |a: (usize, usize), b: (usize, usize)| {
        let (over, under) = (above[a.0][a.1], above[b.0][b.1]);
        if (over > 0.0) != (under > 0.0) {
            let p = points[a.0][a.1].lerp(points[b.0][b.1], over / (over - under));
            let x = p.x / p.z;
            span = (span.0.min(x), span.1.max(x));
        }
    };
    for i in 0..SECTIONS {
        for k in 0..AROUND {
            edge((i, k), (i, (k + 1) % AROUND));
            if i + 1 < SECTIONS {
                edge((i, k), (i + 1, k));
            }
        }
    }
    if span.0 > span.1 {
        // Seen so steeply that the line lies beyond all sections: the top is all there is to go by.
        let x = points[0][0].x / depth;
        span = (x, x);
    }
    Silhouette { top: highest, line, span }
}
