//! Lattice to closed mesh: surface nets with one vertex a sheet.
//!
//! Method: every cell that a surface crosses gets one vertex per *sheet* (a connected set of crossed edges), placed at
//! the mean of the crossings and, on the outer surface, drawn onto the field by a Newton step `p -= d ∇d / |∇d|²` with the
//! gradient of the cell's eight samples, where it gets the field's own gradient as its normal; every crossed lattice edge becomes
//! two triangles between the vertices of its four cells. Sheets are told apart by linking crossed edges over the cell's faces, an
//! ambiguous face always separating its inside corners, so that neighbours agree.
//!
//! Promise: every edge has exactly two triangles. The one case in which a plain dual mesh breaks this (both links of
//! an ambiguous face join the same two vertices) is mended by a vertex of its own in the middle of that edge.
//!
//! Limits: what is thinner than the spacing can be lost.
//!
//! Source of the idea: Gibson 1998, "Constrained elastic surface nets"; one vertex a sheet after Nielson 2004, "Dual
//! marching cubes" (both from memory).

mod mend;
mod pattern;

use self::mend::mend;
use self::pattern::{EDGE_CORNERS, PATTERNS, Pattern, edge_between, offset};
use super::lattice::{BLOCK, Block, Lattice};
use super::mesh::Mesh;
use super::sdf::{DrumSurface, Shape};
use super::solid::{Active, Solid};
use glam::Vec3;

/// Directions whose sum and products cancel, so that the samples' weighted sum is the gradient.
const TETRAHEDRON: [Vec3; 4] = [
    Vec3::new(1.0, 1.0, 1.0),
    Vec3::new(1.0, -1.0, -1.0),
    Vec3::new(-1.0, 1.0, -1.0),
    Vec3::new(-1.0, -1.0, 1.0),
];
/// Half the width over which a normal is taken, mm along each axis.
const NORMAL_STEP_MM: f32 = 0.1;

/// Vertices whose normals are taken in one go.
const AT_ONCE: usize = 8;

/// Which surface of the solid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Surface {
    /// The bone's outside.
    Outer,
    /// The inside of its cortex.
    Marrow,
}

/// Extracts one surface of a sampled solid.
pub fn extract(solid: &Solid, lattice: &Lattice, surface: Surface) -> Mesh {
    let mut build = Build {
        solid,
        lattice,
        surface,
        values: match surface {
            Surface::Outer => &lattice.distance,
            Surface::Marrow => &lattice.marrow,
        },
        first_vertex: vec![u32::MAX; lattice.distance.len()],
        mesh: Mesh::default(),
        doubled: Vec::new(),
    };
    for block in &lattice.blocks {
        build.vertices(block);
    }
    for block in &lattice.blocks {
        build.triangles(block);
    }
    mend(&mut build.mesh, &build.doubled);
    build.mesh
}

struct Build<'a> {
    solid: &'a Solid,
    lattice: &'a Lattice,
    surface: Surface,
    values: &'a [f32],
    first_vertex: Vec<u32>,
    mesh: Mesh,
    doubled: Vec<[u32; 2]>,
}

impl Build<'_> {
    /// Sign pattern of the cell whose lowest corner is sample `index`.
    fn signs(&self, index: usize) -> usize {
        let (sx, sy) = (self.lattice.size[0], self.lattice.size[0] * self.lattice.size[1]);
        (0..8).fold(0, |bits, c| {
            let [x, y, z] = offset(c);
            bits | usize::from(self.values[index + x + y * sx + z * sy] < 0.0) << c
        })
    }

    fn is_cell(&self, cell: [usize; 3]) -> bool {
        (0..3).all(|a| cell[a] + 1 < self.lattice.size[a])
    }

    fn vertices(&mut self, block: &Block) {
        let first = self.mesh.positions.len();
        for_each_cell(block, |cell| {
            if self.is_cell(cell) {
                let index = self.lattice.index(cell);
                let signs = self.signs(index);
                if signs != 0 && signs != 255 {
                    self.push_cell(cell, index, signs, &block.active);
                }
            }
        });
        self.take_normals(first, &block.active);
    }

    /// The vertices of a crossed cell, one a sheet.
    fn push_cell(&mut self, cell: [usize; 3], index: usize, signs: usize, active: &Active) {
        self.first_vertex[index] = self.mesh.positions.len() as u32;
        let pattern = &PATTERNS[signs];
        for sheet in 0..pattern.sheets {
            let start = self.mean_crossing(cell, pattern, sheet);
            let gradient = self.gradient(cell, index, start);
            self.push_vertex(start, gradient, active);
        }
    }

    fn mean_crossing(&self, cell: [usize; 3], pattern: &Pattern, sheet: u8) -> Vec3 {
        let mut sum = Vec3::ZERO;
        let mut count = 0.0;
        for e in (0..12).filter(|&e| pattern.sheet[e] == sheet) {
            let [a, b] = EDGE_CORNERS[e].map(|c| {
                let [x, y, z] = offset(c);
                let at = [cell[0] + x, cell[1] + y, cell[2] + z];
                (self.values[self.lattice.index(at)], self.lattice.position(at))
            });
            // A skipped block holds a value of the right sign but any size: keep the crossing on the edge.
            sum += a.1.lerp(b.1, (a.0 / (a.0 - b.0)).clamp(0.0, 1.0));
            count += 1.0;
        }
        sum / count
    }

    /// Gradient of the trilinear interpolant of a cell's samples.
    fn gradient(&self, cell: [usize; 3], index: usize, p: Vec3) -> Vec3 {
        let (sx, sy) = (self.lattice.size[0], self.lattice.size[0] * self.lattice.size[1]);
        let t = ((p - self.lattice.position(cell)) / self.lattice.spacing).clamp(Vec3::ZERO, Vec3::ONE);
        let v: [f32; 8] = std::array::from_fn(|c| {
            let [x, y, z] = offset(c);
            self.values[index + x + y * sx + z * sy]
        });
        let mix = |a: f32, b: f32, t: f32| a + (b - a) * t;
        // Difference along one axis, interpolated along the two others (`p` by s, `q` by t; all are corner bits).
        let along = |bit: usize, (p, s): (usize, f32), (q, t): (usize, f32)| {
            mix(
                mix(v[bit] - v[0], v[bit + p] - v[p], s),
                mix(v[bit + q] - v[q], v[bit + p + q] - v[p + q], s),
                t,
            )
        };
        Vec3::new(along(1, (2, t.y), (4, t.z)), along(2, (4, t.z), (1, t.x)), along(4, (1, t.x), (2, t.y)))
            / self.lattice.spacing
    }

    fn push_vertex(&mut self, start: Vec3, gradient: Vec3, active: &Active) {
        match self.surface {
            Surface::Outer => {
                let sample = self.solid.sample_active(start, active);
                let step = gradient * (sample.distance / gradient.length_squared().max(0.05));
                // The step is held inside the cell so that sheets do not cross.
                let p = start - step.clamp_length_max(0.45 * self.lattice.spacing);
                self.mesh.positions.push(p);
                // For now; see `take_normals`.
                self.mesh.normals.push(gradient.normalize_or(Vec3::Z));
                let tag =
                    self.solid.pieces.get(usize::from(sample.nearest)).map_or(0, |piece| tag_at(piece, p));
                self.mesh.tags.push(tag);
            }
            Surface::Marrow => {
                self.mesh.positions.push(start);
                self.mesh.normals.push(gradient.normalize_or(Vec3::Z));
            }
        }
    }

    /// Gives the outer surface's vertices from number `first` on the direction of the field's gradient where they are, from four
    /// samples at the corners of a tetrahedron around each. The lattice's own gradient turns too little where the surface bends
    /// within a cell: a line on which the beam grazes a shallow groove would be lost.
    fn take_normals(&mut self, first: usize, active: &Active) {
        if self.surface != Surface::Outer {
            return;
        }
        for at in (first..self.mesh.positions.len()).step_by(AT_ONCE) {
            let end = (at + AT_ONCE).min(self.mesh.positions.len());
            let mut corners = [self.mesh.positions[at]; 4 * AT_ONCE];
            for (four, &p) in corners.chunks_exact_mut(4).zip(&self.mesh.positions[at..end]) {
                four.copy_from_slice(&TETRAHEDRON.map(|c| p + c * NORMAL_STEP_MM));
            }
            let (distance, _) = self.solid.sample_many(&corners, active);
            for (normal, d) in self.mesh.normals[at..end].iter_mut().zip(distance.chunks_exact(4)) {
                let gradient: Vec3 = TETRAHEDRON.iter().zip(d).map(|(&c, &d)| c * d).sum();
                *normal = gradient.normalize_or(*normal);
            }
        }
    }

    fn triangles(&mut self, block: &Block) {
        let strides = [1, self.lattice.size[0], self.lattice.size[0] * self.lattice.size[1]];
        for_each_cell(block, |cell| {
            let index = self.lattice.index(cell);
            let here = self.values[index] < 0.0;
            for axis in 0..3 {
                let (u, v) = ((axis + 1) % 3, (axis + 2) % 3);
                if cell[axis] + 1 >= self.lattice.size[axis] || cell[u] == 0 || cell[v] == 0 {
                    continue;
                }
                if here == (self.values[index + strides[axis]] < 0.0) {
                    continue;
                }
                // The four cells around the edge, turning from u to v, and the edge's number in each.
                let quad = [(0, 0), (1, 0), (1, 1), (0, 1)].map(|(du, dv): (usize, usize)| {
                    let at = index - du * strides[u] - dv * strides[v];
                    if self.first_vertex[at] == u32::MAX {
                        // The cell's lowest corner lies in a skipped block.
                        let mut there = cell;
                        (there[u], there[v]) = (cell[u] - du, cell[v] - dv);
                        let first = self.mesh.positions.len();
                        self.push_cell(there, at, self.signs(at), &block.active);
                        self.take_normals(first, &block.active);
                    }
                    let mut low = [0; 3];
                    (low[u], low[v]) = (du, dv);
                    let a = low[0] + 2 * low[1] + 4 * low[2];
                    let sheet = PATTERNS[self.signs(at)].sheet[edge_between(a, a + (1 << axis))];
                    self.first_vertex[at] + u32::from(sheet)
                });
                self.push_quad(if here { [quad[0], quad[3], quad[2], quad[1]] } else { quad });
            }
            self.note_doubled(cell, index, strides);
        });
    }

    /// Splits a quad along its shorter diagonal.
    fn push_quad(&mut self, [a, b, c, d]: [u32; 4]) {
        let p = |i: u32| self.mesh.positions[i as usize];
        let split = if p(a).distance_squared(p(c)) <= p(b).distance_squared(p(d)) {
            [[a, c, b], [a, d, c]]
        } else {
            [[a, d, b], [b, d, c]]
        };
        self.mesh.triangles.extend(split);
    }

    /// Notes the edges that an ambiguous face to the next cell would give four triangles.
    fn note_doubled(&mut self, cell: [usize; 3], index: usize, strides: [usize; 3]) {
        if !self.is_cell(cell) {
            return;
        }
        let signs = self.signs(index);
        if signs == 0 || signs == 255 {
            return;
        }
        for axis in 0..3 {
            let mut next = cell;
            next[axis] += 1;
            let Some([a, b]) = PATTERNS[signs].ambiguous[2 * axis + 1] else { continue };
            if a != b || !self.is_cell(next) {
                continue;
            }
            let there = index + strides[axis];
            if let Some([c, d]) = PATTERNS[self.signs(there)].ambiguous[2 * axis]
                && c == d
            {
                self.doubled
                    .push([self.first_vertex[index] + u32::from(a), self.first_vertex[there] + u32::from(c)]);
            }
        }
    }
}

/// The part of a vertex: a drum has three of them in a row, wall, upper plate and lower plate; a sheet has two, the plate and its
/// upper border.
fn tag_at(piece: &super::solid::Piece, p: Vec3) -> u8 {
    match &piece.shape {
        Shape::Drum(drum) => {
            piece.tag
                + match drum.surface(piece.shape_point(p)) {
                    DrumSurface::Wall => 0,
                    DrumSurface::UpperPlate => 1,
                    DrumSurface::LowerPlate => 2,
                }
        }
        Shape::Sheet(sheet) => piece.tag + u8::from(sheet.on_upper_border(piece.shape_point(p))),
        _ => piece.tag,
    }
}

fn for_each_cell(block: &Block, mut visit: impl FnMut([usize; 3])) {
    let [i, j, k] = block.corner;
    for z in k..k + BLOCK {
        for y in j..j + BLOCK {
            for x in i..i + BLOCK {
                visit([x, y, z]);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::sdf::Ellipsoid;
    use crate::geometry::solid::Piece;
    use glam::Mat3;

    fn ball(radius: f32) -> Solid {
        let shape = Shape::Ellipsoid(Ellipsoid {
            centre: Vec3::ZERO,
            axes: Mat3::IDENTITY,
            radii: Vec3::splat(radius),
        });
        Solid { pieces: vec![Piece::new(shape, 0, 2.0, 1.0)], carves: Vec::new() }
    }

    #[test]
    fn ball_is_closed_and_has_its_volume() {
        let solid = ball(10.0);
        let lattice = Lattice::sample(&solid, 0.8);
        for (surface, radius, error_mm) in [(Surface::Outer, 10.0_f64, 0.01), (Surface::Marrow, 8.0, 0.06)] {
            let mesh = extract(&solid, &lattice, surface);
            assert!(mesh.is_closed());
            let exact = 4.0 / 3.0 * std::f64::consts::PI * radius * radius * radius;
            assert!((mesh.volume() / exact - 1.0).abs() < 0.02, "{} {exact}", mesh.volume());
            for p in &mesh.positions {
                assert!((f64::from(p.length()) - radius).abs() < error_mm);
            }
        }
    }

    /// Random signs meet every pattern and every ambiguous pair of neighbours: the promise must hold for all of them.
    #[test]
    fn noise_gives_two_triangles_an_edge() {
        let solid = ball(10.0);
        let mut seed = 0x2545_F491_4F6C_DD1D_u64;
        for _ in 0..20 {
            let size = [12, 12, 12];
            let mut lattice = Lattice {
                origin: Vec3::ZERO,
                spacing: 1.0,
                size,
                distance: vec![1.0; 12 * 12 * 12],
                marrow: vec![1.0; 12 * 12 * 12],
                blocks: Vec::new(),
            };
            for k in 1..11 {
                for j in 1..11 {
                    for i in 1..11 {
                        seed ^= seed << 13;
                        seed ^= seed >> 7;
                        seed ^= seed << 17;
                        let at = lattice.index([i, j, k]);
                        lattice.distance[at] = if seed >> 40 & 1 == 0 { -1.0 } else { 1.0 };
                    }
                }
            }
            for k in (0..12).step_by(BLOCK) {
                for j in (0..12).step_by(BLOCK) {
                    for i in (0..12).step_by(BLOCK) {
                        lattice.blocks.push(Block { corner: [i, j, k], active: solid.all() });
                    }
                }
            }
            let mesh = extract(&solid, &lattice, Surface::Outer);
            assert!(mesh.triangles.len() > 1000);
            assert!(mesh.is_closed());
        }
    }
}
