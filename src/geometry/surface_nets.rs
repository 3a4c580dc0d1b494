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
use self::pattern::{EDGE_AROUND, EDGE_CORNERS, PATTERNS, Pattern, offset};
use super::lattice::{BLOCK, Block, Lattice};
use super::mesh::Mesh;
use super::sdf::{DrumSurface, Shape};
use super::solid::{AT_ONCE, Active, Solid};
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
        patterns: &PATTERNS,
    };
    let crossed: Vec<Vec<Crossed>> = lattice.blocks.iter().map(|block| build.crossed(block)).collect();
    for (block, crossed) in lattice.blocks.iter().zip(&crossed) {
        let first = build.mesh.positions.len();
        crossed.iter().for_each(|cell| build.push_cell(cell));
        build.settle(first, &block.active);
    }
    for (block, crossed) in lattice.blocks.iter().zip(&crossed) {
        crossed.iter().for_each(|cell| build.triangles(cell, &block.active));
    }
    mend(&mut build.mesh, &build.doubled);
    build.mesh
}

/// A cell that the surface crosses.
struct Crossed {
    /// Its lowest corner.
    at: [usize; 3],
    /// That sample's index.
    index: usize,
    /// Which of its corners are inside, a bit each.
    signs: u8,
}

struct Build<'a> {
    solid: &'a Solid,
    lattice: &'a Lattice,
    surface: Surface,
    values: &'a [f32],
    first_vertex: Vec<u32>,
    mesh: Mesh,
    doubled: Vec<[u32; 2]>,
    patterns: &'static [Pattern],
}

impl Build<'_> {
    /// The crossed cells of a block: a bit for each sample inside, a row of samples after the other, and from four rows the eight corners of
    /// each cell between them. Every crossed edge belongs to the crossed cell at its lower end: the border of the lattice is outside.
    fn crossed(&self, block: &Block) -> Vec<Crossed> {
        let [i, j, k] = block.corner;
        // The block's samples and one more on each axis, unless the lattice ends there.
        let along: [usize; 3] =
            std::array::from_fn(|a| (BLOCK + 1).min(self.lattice.size[a] - block.corner[a]));
        let mut rows = [[0_u8; BLOCK + 1]; BLOCK + 1];
        for (z, layer) in rows.iter_mut().enumerate().take(along[2]) {
            for (y, inside) in layer.iter_mut().enumerate().take(along[1]) {
                let row = self.lattice.index([i, j + y, k + z]);
                let values = self.values[row..row + along[0]].iter().enumerate();
                *inside = values.fold(0, |bits, (x, value)| bits | u8::from(*value < 0.0) << x);
            }
        }
        let all = (1_u8 << along[0]) - 1;
        let mut crossed = Vec::new();
        for z in 0..along[2] - 1 {
            for y in 0..along[1] - 1 {
                let four = [rows[z][y], rows[z][y + 1], rows[z + 1][y], rows[z + 1][y + 1]];
                if four == [0; 4] || four == [all; 4] {
                    continue;
                }
                let row = self.lattice.index([i, j + y, k + z]);
                for x in 0..along[0] - 1 {
                    let [a, b, c, d] = four.map(|row| row >> x & 3);
                    let signs = a | b << 2 | c << 4 | d << 6;
                    if signs != 0 && signs != 255 {
                        crossed.push(Crossed { at: [i + x, j + y, k + z], index: row + x, signs });
                    }
                }
            }
        }
        crossed
    }

    /// The values at a cell's corners.
    fn corners(&self, index: usize) -> [f32; 8] {
        let (sx, sy) = (self.lattice.size[0], self.lattice.size[0] * self.lattice.size[1]);
        std::array::from_fn(|c| {
            let [x, y, z] = offset(c);
            self.values[index + x + y * sx + z * sy]
        })
    }

    /// Which of a cell's corners are inside, a bit each.
    fn signs(&self, index: usize) -> u8 {
        self.corners(index).iter().enumerate().fold(0, |bits, (c, value)| bits | u8::from(*value < 0.0) << c)
    }

    fn is_cell(&self, cell: [usize; 3]) -> bool {
        (0..3).all(|a| cell[a] + 1 < self.lattice.size[a])
    }

    /// The vertices of a crossed cell, one a sheet, at the mean of the crossings and with the lattice's gradient there, until
    /// [`Self::settle`] puts them right.
    fn push_cell(&mut self, cell: &Crossed) {
        self.first_vertex[cell.index] = self.mesh.positions.len() as u32;
        let pattern = &self.patterns[usize::from(cell.signs)];
        let values = self.corners(cell.index);
        let corners: [Vec3; 8] = std::array::from_fn(|c| {
            let [x, y, z] = offset(c);
            self.lattice.position([cell.at[0] + x, cell.at[1] + y, cell.at[2] + z])
        });
        for sheet in 0..pattern.sheets {
            let start = mean_crossing(&values, &corners, pattern, sheet);
            let t = ((start - corners[0]) / self.lattice.spacing).clamp(Vec3::ZERO, Vec3::ONE);
            self.mesh.positions.push(start);
            self.mesh.normals.push(gradient(&values, t) / self.lattice.spacing);
        }
    }

    /// Finishes the vertices from number `first` on. On the outer surface each is drawn onto the field and gets its part and its normal;
    /// the marrow's stay where the lattice has them.
    fn settle(&mut self, first: usize, active: &Active) {
        if self.surface == Surface::Outer {
            self.draw_onto_field(first, active);
        }
        for normal in &mut self.mesh.normals[first..] {
            *normal = normal.normalize_or(Vec3::Z);
        }
        if self.surface == Surface::Outer {
            self.take_normals(first, active);
        }
    }

    /// One Newton step along the lattice's gradient, and the part of the nearest piece.
    fn draw_onto_field(&mut self, first: usize, active: &Active) {
        let (mut distance, mut nearest) = ([0.0; AT_ONCE], [0; AT_ONCE]);
        let positions = self.mesh.positions[first..].chunks_mut(AT_ONCE);
        for (starts, gradients) in positions.zip(self.mesh.normals[first..].chunks(AT_ONCE)) {
            let n = starts.len();
            self.solid.nearest_many(starts, active, &mut distance[..n], &mut nearest[..n]);
            for (i, (p, gradient)) in starts.iter_mut().zip(gradients).enumerate() {
                let step = *gradient * (distance[i] / gradient.length_squared().max(0.05));
                // The step is held inside the cell so that sheets do not cross.
                *p -= step.clamp_length_max(0.45 * self.lattice.spacing);
                let piece = self.solid.pieces.get(usize::from(nearest[i]));
                self.mesh.tags.push(piece.map_or(0, |piece| tag_at(piece, *p)));
            }
        }
    }

    /// Gives the outer surface's vertices from number `first` on the direction of the field's gradient where they are, from four
    /// samples at the corners of a tetrahedron around each. The lattice's own gradient turns too little where the surface bends
    /// within a cell: a line on which the beam grazes a shallow groove would be lost.
    fn take_normals(&mut self, first: usize, active: &Active) {
        const VERTICES: usize = AT_ONCE / 4;
        let (mut corners, mut distance, mut unread) = ([Vec3::ZERO; AT_ONCE], [0.0; AT_ONCE], [0.0; AT_ONCE]);
        let positions = self.mesh.positions[first..].chunks(VERTICES);
        for (positions, normals) in positions.zip(self.mesh.normals[first..].chunks_mut(VERTICES)) {
            for (four, &p) in corners.chunks_exact_mut(4).zip(positions) {
                four.copy_from_slice(&TETRAHEDRON.map(|c| p + c * NORMAL_STEP_MM));
            }
            let n = 4 * positions.len();
            self.solid.sample_many(&corners[..n], active, &mut distance[..n], &mut unread[..n]);
            for (normal, d) in normals.iter_mut().zip(distance.chunks_exact(4)) {
                let gradient: Vec3 = TETRAHEDRON.iter().zip(d).map(|(&c, &d)| c * d).sum();
                *normal = gradient.normalize_or(*normal);
            }
        }
    }

    /// Two triangles for each crossed edge that starts at the cell's lowest corner.
    fn triangles(&mut self, cell: &Crossed, active: &Active) {
        let strides = [1, self.lattice.size[0], self.lattice.size[0] * self.lattice.size[1]];
        let here = cell.signs & 1 == 1;
        for (axis, numbers) in EDGE_AROUND.iter().enumerate() {
            let (u, v) = ((axis + 1) % 3, (axis + 2) % 3);
            if cell.at[u] == 0 || cell.at[v] == 0 || here == (cell.signs >> (1 << axis) & 1 == 1) {
                continue;
            }
            // The four cells around the edge, turning from u to v, and the edge's number in each.
            let quad = [(0, 0), (1, 0), (1, 1), (0, 1)].map(|(du, dv): (usize, usize)| {
                let index = cell.index - du * strides[u] - dv * strides[v];
                let signs = self.signs(index);
                if self.first_vertex[index] == u32::MAX {
                    // The cell's lowest corner lies in a skipped block.
                    let mut at = cell.at;
                    (at[u], at[v]) = (at[u] - du, at[v] - dv);
                    let first = self.mesh.positions.len();
                    self.push_cell(&Crossed { at, index, signs });
                    self.settle(first, active);
                }
                let sheet = self.patterns[usize::from(signs)].sheet[numbers[du][dv]];
                self.first_vertex[index] + u32::from(sheet)
            });
            self.push_quad(if here { [quad[0], quad[3], quad[2], quad[1]] } else { quad });
        }
        self.note_doubled(cell, strides);
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
    fn note_doubled(&mut self, cell: &Crossed, strides: [usize; 3]) {
        for axis in 0..3 {
            let mut next = cell.at;
            next[axis] += 1;
            let ambiguous = self.patterns[usize::from(cell.signs)].ambiguous[2 * axis + 1];
            let Some([a, _]) = ambiguous.filter(|[a, b]| a == b && self.is_cell(next)) else { continue };
            let there = cell.index + strides[axis];
            if let Some([c, d]) = self.patterns[usize::from(self.signs(there))].ambiguous[2 * axis]
                && c == d
            {
                self.doubled.push([
                    self.first_vertex[cell.index] + u32::from(a),
                    self.first_vertex[there] + u32::from(c),
                ]);
            }
        }
    }
}

/// The mean of the points where one sheet crosses a cell's edges.
fn mean_crossing(values: &[f32; 8], corners: &[Vec3; 8], pattern: &Pattern, sheet: u8) -> Vec3 {
    let mut sum = Vec3::ZERO;
    let mut count = 0.0;
    for (_, [a, b]) in pattern.sheet.iter().zip(EDGE_CORNERS).filter(|(of, _)| **of == sheet) {
        // A skipped block holds a value of the right sign but any size: keep the crossing on the edge.
        sum += corners[a].lerp(corners[b], (values[a] / (values[a] - values[b])).clamp(0.0, 1.0));
        count += 1.0;
    }
    sum / count
}

/// Gradient of the trilinear interpolant of a cell's corner values at `t` (each 0 to 1), per cell.
fn gradient(v: &[f32; 8], t: Vec3) -> Vec3 {
    let mix = |a: f32, b: f32, t: f32| a + (b - a) * t;
    // Difference along one axis, interpolated along the two others (`p` by s, `q` by t; all are corner bits).
    let along = |bit: usize, (p, s): (usize, f32), (q, t): (usize, f32)| {
        mix(mix(v[bit] - v[0], v[bit + p] - v[p], s), mix(v[bit + q] - v[q], v[bit + p + q] - v[p + q], s), t)
    };
    Vec3::new(along(1, (2, t.y), (4, t.z)), along(2, (4, t.z), (1, t.x)), along(4, (1, t.x), (2, t.y)))
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
