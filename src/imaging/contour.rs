//! Apparent contours: the lines on a surface where the beam just grazes it.
//!
//! With a vertex normal n and the focal spot s, `g = n · (p - s)` changes sign across the contour. Within each triangle the
//! zero line of the interpolated g is a segment between two of its edges; since every edge has two triangles, the segments
//! chain into closed loops, which are smoother than the mesh's own silhouette edges because n is the field's gradient.
//!
//! Source of the idea: Hertzmann & Zorin 2000, "Illustrating smooth surfaces" (memory).

use crate::geometry::mesh::{Edges, Mesh};
use glam::Vec3;
use std::ops::Range;

/// Most that an edge may bulge, mm: where normals turn more than this a crease runs between them, not an arc.
const MAX_BULGE_MM: f32 = 0.25;

/// One vertex of a contour loop.
#[derive(Clone, Copy, Debug)]
pub struct ContourPoint {
    /// Column frame, mm.
    pub position: Vec3,
    /// Tag of the nearer end of the crossed edge.
    pub tag: u8,
}

/// Buffers that live from frame to frame.
#[derive(Clone, Debug, Default)]
pub struct ContourTracer {
    facing: Vec<f32>,
    waiting: Vec<bool>,
    crossed: Vec<u32>,
    points: Vec<ContourPoint>,
}

impl ContourTracer {
    /// Traces the contour of a closed mesh seen from `source` (column frame, mm). A loop repeats its first point at the end. Triangles
    /// outside the `runs` given are passed over, and lines end there.
    pub fn trace(
        &mut self,
        mesh: &Mesh,
        edges: &Edges,
        source: Vec3,
        runs: impl Iterator<Item = Range<usize>>,
        mut emit: impl FnMut(&[ContourPoint]),
    ) {
        self.facing.clear();
        self.facing.extend(mesh.positions.iter().zip(&mesh.normals).map(|(&p, &n)| n.dot(p - source)));
        self.waiting.clear();
        self.waiting.resize(mesh.triangles.len(), false);
        self.crossed.clear();
        for run in runs {
            let first = run.start;
            for (i, t) in mesh.triangles[run].iter().enumerate() {
                let [a, b, c] = t.map(|v| self.facing[v as usize] >= 0.0);
                if a != b || b != c {
                    self.waiting[first + i] = true;
                    self.crossed.push((first + i) as u32);
                }
            }
        }
        let mut points = std::mem::take(&mut self.points);
        for k in 0..self.crossed.len() {
            let mut triangle = self.crossed[k] as usize;
            if !self.waiting[triangle] {
                continue;
            }
            points.clear();
            // Leave through the edge that goes from the side facing away to the side facing the source, so that all loops
            // run the same way around.
            while let Some(e) = self.exit(mesh.triangles[triangle]) {
                let t = mesh.triangles[triangle];
                points.push(self.crossing(mesh, t[e], t[(e + 1) % 3]));
                if !self.waiting[triangle] {
                    break;
                }
                self.waiting[triangle] = false;
                let [one, other] = edges.triangles[edges.of_triangle[triangle][e] as usize];
                triangle = if one as usize == triangle { other } else { one } as usize;
            }
            emit(&points);
        }
        self.points = points;
    }

    /// The edge through which the contour leaves a triangle, if it crosses it.
    fn exit(&self, t: [u32; 3]) -> Option<usize> {
        let away = t.map(|v| self.facing[v as usize] >= 0.0);
        (0..3).find(|&e| away[e] && !away[(e + 1) % 3])
    }

    fn crossing(&self, mesh: &Mesh, a: u32, b: u32) -> ContourPoint {
        // Ends in a fixed order, so that both triangles of the edge find the same point.
        let (a, b) = (a.min(b) as usize, a.max(b) as usize);
        let (ga, gb) = (self.facing[a], self.facing[b]);
        let t = ga / (ga - gb);
        // An edge is a chord of the surface. Its normals tell how far the surface bulges over it: with the curvature
        // (b - a)·(n_b - n_a) / |b - a|², the arc stands half that times t (1 - t) |b - a|² above the chord.
        let (pa, pb, na, nb) = (mesh.positions[a], mesh.positions[b], mesh.normals[a], mesh.normals[b]);
        let bulge = (0.5 * t * (1.0 - t) * (pb - pa).dot(nb - na)).clamp(-MAX_BULGE_MM, MAX_BULGE_MM);
        ContourPoint {
            position: pa.lerp(pb, t) + na.lerp(nb, t) * bulge,
            tag: mesh.tags[if t < 0.5 { a } else { b }],
        }
    }
}
