//! The projected outline of a superior articular process at one height: where it begins and ends from left to right.
//!
//! The picture's line at that height and the focal spot span a plane; the process's surface, given by sections with straight sides
//! between them ([`ProcessTop`]), is cut by it in a closed curve whose projection runs along the line. The curve's ends are therefore the ends of
//! the outline, whatever the orientation. Every point is kept as (left, cranial, depth), each linear in space, so that a point of a
//! section is a sum of its axes' and a crossing is found by one division.

use super::image_axes::ImageAxes;
use crate::anatomy::landmarks::Ring;
use crate::anatomy::process_top::{AROUND, AROUND_COS, AROUND_SIN, ProcessTop, SECTIONS};
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

/// A linear function of space: its slope, and its value at the isocentre.
struct Linear(DVec3, f64);

impl Linear {
    fn at(&self, r: DVec3) -> f64 {
        self.0.dot(r) + self.1
    }

    /// Its values around a ring whose centre is `r` from the isocentre and whose points stand `out` times as far out as an ellipse's.
    fn around(&self, ring: &Ring, r: DVec3, out: &[f64; AROUND]) -> [f64; AROUND] {
        let (middle, across, up) = (self.at(r), self.0.dot(ring.across), self.0.dot(ring.up));
        let mut values = [middle; AROUND];
        for k in 0..AROUND {
            values[k] += out[k] * (across * AROUND_COS[k] + up * AROUND_SIN[k]);
        }
        values
    }
}

/// How far out the points around a section of this squareness stand against an ellipse's: `(1 - 2 q cos² sin²)^(-1/4)`.
fn out(squareness: f64) -> [f64; AROUND] {
    let mut out = [1.0; AROUND];
    for k in 0..AROUND {
        let (c, s) = (AROUND_COS[k] * AROUND_COS[k], AROUND_SIN[k] * AROUND_SIN[k]);
        out[k] = 1.0 / libm::sqrt(libm::sqrt(1.0 - 2.0 * squareness * c * s));
    }
    out
}

/// The outline `under_mm` (mm at the process's depth) under its top.
pub fn silhouette(view: &Projection, axes: &ImageAxes, top: &ProcessTop, under_mm: f64) -> Silhouette {
    let along = |axis: DVec2| Linear((view.right * axis.x + view.up * axis.y) * view.sid_mm, 0.0);
    let picture = [along(axes.left), along(axes.cranial), Linear(view.d, view.sod_mm)];
    let facet = &top.facet;
    let on_facet = facet.point - view.isocentre;
    let before = Linear(facet.normal, -facet.normal.dot(on_facet));
    let beside = Linear(facet.tangent, -facet.tangent.dot(on_facet));
    let normal = [0, 1, 2].map(|i| picture[i].0.dot(facet.normal));

    // [left, cranial, depth] of the points around each section, cut by the facet.
    let points: [_; SECTIONS] = std::array::from_fn(|n| {
        let (ring, out) = (&top.sections[n], out(top.squareness[n]));
        let r = ring.centre - view.isocentre;
        let (before, beside) = (before.around(ring, r, &out), beside.around(ring, r, &out));
        let mut around = [0, 1, 2].map(|i| picture[i].around(ring, r, &out));
        for k in 0..AROUND {
            let excess = before[k] - facet.curvature * beside[k] * beside[k];
            let excess = if excess > 0.0 { excess } else { 0.0 };
            for i in 0..3 {
                around[i][k] -= excess * normal[i];
            }
        }
        around
    });
    let mut highest = f64::NEG_INFINITY;
    for [_, cranial, depth] in &points {
        for k in 0..AROUND {
            let height = cranial[k] / depth[k];
            highest = if height > highest { height } else { highest };
        }
    }
    let tip = points[0].map(|around| around[0]);
    let line = highest - under_mm * view.sid_mm / tip[2];

    // Above the line where > 0.
    let over = points
        .map(|[_, cranial, depth]| std::array::from_fn::<f64, AROUND, _>(|k| cranial[k] - line * depth[k]));
    let mut span = (f64::INFINITY, f64::NEG_INFINITY);
    for (pair, over) in points.windows(2).zip(over.windows(2)) {
        for k in 0..AROUND {
            let (a, b) = (over[0][k], over[1][k]);
            if (a > 0.0) != (b > 0.0) {
                let share = a / (a - b);
                let [x, depth] = [0, 2].map(|i| pair[0][i][k] + share * (pair[1][i][k] - pair[0][i][k]));
                span = (span.0.min(x / depth), span.1.max(x / depth));
            }
        }
    }
    if span.0 > span.1 {
        // Seen so steeply that the line lies beyond all sections: the top is all there is to go by.
        span = (tip[0] / tip[2], tip[0] / tip[2]);
    }
    Silhouette { top: highest, line, span }
}
