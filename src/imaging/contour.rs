//! Apparent contours: the lines on a surface where the beam just grazes it.
//!
//! With a vertex normal n and the focal spot s, `g = n · (p - s)` changes sign across the contour. Within each triangle the
//! zero line of the interpolated g is a segment between two of its edges; since every edge has two triangles, the segments
//! chain into closed loops, which are smoother than the mesh's own silhouette edges because n is the field's gradient.
//!
//! Source of the idea: Hertzmann & Zorin 2000, "Illustrating smooth surfaces" (memory).

use crate::geometry::mesh::{Edges, Mesh};
use glam::Vec3;

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
    done: Vec<bool>,
    crossed: Vec<u32>,
}

impl ContourTracer {
    /// Traces all loops of a closed mesh seen from `source` (column frame, mm); each loop closes on its first point.
    pub fn trace(&mut self, mesh: &Mesh, edges: &Edges, source: Vec3, mut emit: impl FnMut(&[ContourPoint])) {
        self.facing.clear();
        self.facing.extend(mesh.positions.iter().zip(&mesh.normals).map(|(&p, &n)| n.dot(p - source)));
        self.done.clear();
        self.done.resize(mesh.triangles.len(), true);
        self.crossed.clear();
        for (i, t) in mesh.triangles.iter().enumerate() {
            let [a, b, c] = t.map(|v| self.facing[v as usize] >= 0.0);
            if a != b || b != c {
                self.done[i] = false;
                self.crossed.push(i as u32);
            }
        }
        let mut points = Vec::new();
        for k in 0..self.crossed.len() {
            let start = self.crossed[k];
            if self.done[start as usize] {
                continue;
            }
            points.clear();
            let mut triangle = start;
            // Leave through the edge that goes from the side facing away to the side facing the source, so that all loops
            // run the same way around.
            while !self.done[triangle as usize] {
                self.done[triangle as usize] = true;
                let t = mesh.triangles[triangle as usize];
                let away = |v: u32| self.facing[v as usize] >= 0.0;
                let Some(e) = (0..3).find(|&e| away(t[e]) && !away(t[(e + 1) % 3])) else { break };
                points.push(self.crossing(mesh, t[e], t[(e + 1) % 3]));
                let edge = edges.of_triangle[triangle as usize][e];
                let [one, other] = edges.triangles[edge as usize];
                triangle = if one == triangle { other } else { one };
            }
            emit(&points);
        }
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
