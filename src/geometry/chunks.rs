//! Runs of a mesh's triangles with a ball around each, so that what is out of the picture costs one test a run.

use super::mesh::{Edges, Mesh};
use glam::Vec3;

/// Triangles a run. Meshes come out of the lattice block by block, so that neighbours in the list are neighbours in space.
const RUN: usize = 192;

/// A run of triangles.
#[derive(Clone, Copy, Debug)]
pub struct Chunk {
    /// First triangle.
    pub first: usize,
    /// One past the last.
    pub end: usize,
    /// First edge that is first met in the run.
    pub first_edge: usize,
    /// One past the last.
    pub end_edge: usize,
    /// Centre of a ball around all of them, mm.
    pub centre: Vec3,
    /// Its radius, mm.
    pub radius: f32,
}

/// Cuts a mesh into runs. `edges` are its own, numbered in the order of the triangles that meet them.
pub fn chunks(mesh: &Mesh, edges: &Edges) -> Vec<Chunk> {
    let mut end_edge = 0;
    (0..mesh.triangles.len())
        .step_by(RUN)
        .map(|first| {
            let end = (first + RUN).min(mesh.triangles.len());
            let points = || mesh.triangles[first..end].iter().flatten().map(|&i| mesh.positions[i as usize]);
            let (low, high) = points().fold((Vec3::MAX, Vec3::MIN), |(l, h), p| (l.min(p), h.max(p)));
            let centre = 0.5 * (low + high);
            let radius = points().map(|p| p.distance_squared(centre)).fold(0.0, f32::max).sqrt();
            let first_edge = end_edge;
            let edge_ends = edges.of_triangle[first..end].iter().flatten().map(|&e| e as usize + 1);
            end_edge = edge_ends.fold(first_edge, usize::max);
            Chunk { first, end, first_edge, end_edge, centre, radius }
        })
        .collect()
}
