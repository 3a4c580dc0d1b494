//! Labelled outlines on the detector.
//!
//! A bone's contour loops are projected, cut where the part changes and at the edge of the field. A part's *silhouette* is the
//! border of its shadow: the region around which the full, consistently oriented contour winds (each turn stands for one
//! sheet of surface in front of another behind).

use super::contour::{ContourPoint, ContourTracer};
use super::projection::Projection;
use crate::anatomy::names::Label;
use crate::anatomy::patient::Patient;
use crate::geometry::mesh::Mesh;
use crate::geometry::polyline::{Point, clip};
use glam::Vec3;
use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::single::SingleFloatOverlay;

/// One line of the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    /// What it bounds.
    pub label: Label,
    /// Detector, mm, v up. A closed line repeats its first point.
    pub points: Vec<Point>,
}

impl Outline {
    /// Whether the line ends where it begins.
    pub fn closed(&self) -> bool {
        self.points.len() > 2 && self.points.first() == self.points.last()
    }
}

/// Flat projection in f32, for many points.
struct Flat {
    source: Vec3,
    right: Vec3,
    up: Vec3,
    d: Vec3,
    sid: f32,
}

impl Flat {
    fn new(view: &Projection) -> Self {
        Self {
            source: view.source.as_vec3(),
            right: view.right.as_vec3(),
            up: view.up.as_vec3(),
            d: view.d.as_vec3(),
            sid: view.sid_mm as f32,
        }
    }

    fn project(&self, p: Vec3) -> Point {
        let r = p - self.source;
        let m = self.sid / r.dot(self.d).max(1.0);
        [r.dot(self.right) * m, r.dot(self.up) * m]
    }
}

/// Buffers for [`OutlineTracer::trace`].
#[derive(Clone, Debug, Default)]
pub struct OutlineTracer {
    tracer: ContourTracer,
    run: Vec<Point>,
}

impl OutlineTracer {
    /// All outlines of a patient inside the field, bone by bone.
    pub fn trace(&mut self, patient: &Patient, view: &Projection) -> Vec<Outline> {
        let flat = Flat::new(view);
        let half = view.half_field_mm as f32;
        let mut outlines = Vec::new();
        let run = &mut self.run;
        for bone in &patient.bones {
            let runs = bone
                .outer_chunks
                .iter()
                .filter(|c| view.sees(c.centre.as_dvec3(), f64::from(c.radius)))
                .map(|c| c.first..c.end);
            self.tracer.trace(&bone.outer, &bone.edges, flat.source, runs, |ring| {
                if spread_mm(ring, &flat) < HOOK_MM {
                    return;
                }
                split_by_tag(ring, &flat, run, |tag, line| {
                    let label = bone.label(tag);
                    clip(line, half, |piece| outlines.push(Outline { label, points: piece.to_vec() }));
                });
            });
        }
        outlines
    }
}

/// Runs of points with the same tag; each run reaches to the first point of the next so that nothing gapes.
fn split_by_tag(
    line: &[ContourPoint],
    flat: &Flat,
    run: &mut Vec<Point>,
    mut emit: impl FnMut(u8, &[Point]),
) {
    let Some((first, rest)) = line.split_first() else { return };
    let mut tag = first.tag;
    run.clear();
    run.push(flat.project(first.position));
    for point in rest {
        run.push(flat.project(point.position));
        if point.tag != tag {
            emit(tag, run);
            let last = run[run.len() - 1];
            run.clear();
            run.push(last);
            tag = point.tag;
        }
    }
    if run.len() > 1 {
        emit(tag, run);
    }
}

/// The border of a closed mesh's shadow, as closed rings (first point not repeated), detector, mm. Outer rings only.
pub fn silhouette(mesh: &Mesh, view: &Projection) -> Vec<Vec<Point>> {
    let flat = Flat::new(view);
    let mut rings: Vec<Vec<Point>> = Vec::new();
    let all = std::iter::once(0..mesh.triangles.len());
    ContourTracer::default().trace(mesh, &mesh.edges(), flat.source, all, |ring| {
        if ring.len() > 3 {
            rings.push(ring[1..].iter().map(|c| flat.project(c.position)).collect());
        }
    });
    let none: Vec<Vec<Point>> = Vec::new();
    // Traced this way around, the contour winds negatively about the shadow.
    let shapes = rings.overlay(&none, OverlayRule::Subject, FillRule::Negative);
    let outer = shapes.into_iter().filter_map(|shape| shape.into_iter().next());
    outer.filter(|ring| area_mm2(ring) > SPECK_MM2).collect()
}

/// Rings smaller than this are where the contour crosses itself at a cusp, not shadows.
const SPECK_MM2: f32 = 0.5;

/// Area inside a closed ring (first point not repeated), mm², by the shoelace formula.
fn area_mm2(ring: &[Point]) -> f32 {
    let twice: f32 = (0..ring.len())
        .map(|i| {
            let ([ax, ay], [bx, by]) = (ring[i], ring[(i + 1) % ring.len()]);
            ax * by - bx * ay
        })
        .sum();
    twice.abs() / 2.0
}

/// Loops that spread less than this on the detector are the mesh's own ripples in a crease, not a bone's border.
const HOOK_MM: f32 = 3.0;

/// The larger side of the box around a projected loop, mm.
fn spread_mm(ring: &[ContourPoint], flat: &Flat) -> f32 {
    let (low, high) =
        ring.iter().map(|c| flat.project(c.position)).fold(([f32::MAX; 2], [f32::MIN; 2]), |(l, h), p| {
            ([l[0].min(p[0]), l[1].min(p[1])], [h[0].max(p[0]), h[1].max(p[1])])
        });
    (high[0] - low[0]).max(high[1] - low[1])
}
