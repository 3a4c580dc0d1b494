//! The one case in which a dual mesh gives an edge four triangles: both links of an ambiguous face join the same two vertices.

use super::super::mesh::Mesh;
use glam::Vec3;

/// Gives the second pair of triangles of each doubled edge a vertex of its own in the middle.
pub(super) fn mend(mesh: &mut Mesh, doubled: &[[u32; 2]]) {
    for &[a, b] in doubled {
        let middle = mesh.positions.len() as u32;
        let mean = |list: &[Vec3]| (list[a as usize] + list[b as usize]) * 0.5;
        mesh.positions.push(mean(&mesh.positions));
        mesh.normals.push(mean(&mesh.normals).normalize_or(Vec3::Z));
        // A marrow's mesh has no tags.
        if let Some(&tag) = mesh.tags.get(a as usize) {
            mesh.tags.push(tag);
        }
        for [from, to] in [[a, b], [b, a]] {
            // The last triangle with this half-edge; its partner in the other direction is taken the same way.
            let found =
                mesh.triangles.iter().rposition(|t| (0..3).any(|e| t[e] == from && t[(e + 1) % 3] == to));
            if let Some(at) = found {
                let t = mesh.triangles[at];
                mesh.triangles[at] = t.map(|i| if i == to { middle } else { i });
                mesh.triangles.push(t.map(|i| if i == from { middle } else { i }));
            }
        }
    }
}
