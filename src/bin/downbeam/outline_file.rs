//! The outlines as JSON for other programs: points in mm on the detector, u to the right, v up, 0 in the centre.
//!
//! `outlines` holds the apparent contours of whole bones, cut by part and clipped to the field; `silhouettes` the border of
//! the shadow of each part of the target level, alone and unclipped.

use crate::mesh::parts;
use crate::shown::Shown;
use anyhow::Context;
use downbeam::anatomy::names::{Part, Side};
use downbeam::geometry::polyline::Point;
use downbeam::imaging::outline::silhouette;
use serde::Serialize;
use std::path::Path;

#[derive(Serialize)]
struct OutlineFile<'a> {
    unit: &'static str,
    frame: &'static str,
    half_field: f64,
    outlines: Vec<Line<'a>>,
    silhouettes: Vec<Silhouette>,
}

#[derive(Serialize)]
struct Line<'a> {
    level: &'static str,
    part: Part,
    side: Option<Side>,
    closed: bool,
    points: &'a [Point],
}

#[derive(Serialize)]
struct Silhouette {
    level: &'static str,
    part: Part,
    side: Option<Side>,
    rings: Vec<Vec<Point>>,
}

/// Writes the outlines of `shown`.
pub(crate) fn write(path: &Path, shown: &Shown<'_>) -> anyhow::Result<()> {
    let outlines = shown.outlines.iter().map(|outline| Line {
        level: outline.label.level.name(),
        part: outline.label.part,
        side: outline.label.side,
        closed: outline.closed(),
        points: &outline.points,
    });
    let file = OutlineFile {
        unit: "mm",
        frame: "detector: u to the right of the screen, v up, origin in the centre",
        half_field: shown.arm.half_field_mm(),
        outlines: outlines.collect(),
        silhouettes: silhouettes(shown),
    };
    let text = serde_json::to_string(&file)? + "\n";
    std::fs::write(path, text).with_context(|| format!("cannot write {}", path.display()))
}

fn silhouettes(shown: &Shown<'_>) -> Vec<Silhouette> {
    parts(shown.patient, shown.target.level)
        .into_iter()
        .map(|(label, mesh)| Silhouette {
            level: label.level.name(),
            part: label.part,
            side: label.side,
            rings: silhouette(&mesh, &shown.projection),
        })
        .collect()
}
