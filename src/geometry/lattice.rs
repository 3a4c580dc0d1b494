//! A solid sampled on a cubic lattice, block by block, leaving out the blocks that no surface crosses.
//!
//! A block of `BLOCK³` samples is skipped when the field at its centre, divided by [`SAFETY`], says that neither the outer
//! surface nor the marrow surface can reach it or the samples next to it; it is then filled with that value, whose sign
//! is right and whose size nobody reads. Where a sampled block disagrees in sign with a skipped neighbour, the neighbour is
//! sampled after all, and so on: no surface ends at a skipped block.

use super::sdf::SAFETY;
use super::solid::{Active, FAR_MM, Solid};
use glam::{UVec3, Vec3};

/// Samples along a block's edge.
pub const BLOCK: usize = 4;

/// A block that a surface may cross, with what can matter in it.
#[derive(Clone, Debug)]
pub struct Block {
    /// First sample of the block.
    pub corner: [usize; 3],
    /// Pieces and carves that matter in the block and one sample around it.
    pub active: Active,
}

/// The samples.
#[derive(Clone, Debug)]
pub struct Lattice {
    /// Position of sample (0, 0, 0), mm.
    pub origin: Vec3,
    /// Spacing, mm.
    pub spacing: f32,
    /// Samples along x, y, z.
    pub size: [usize; 3],
    /// Signed distance, x fastest, mm.
    pub distance: Vec<f32>,
    /// Distance to the marrow surface (`distance + cortex`), same order, mm.
    pub marrow: Vec<f32>,
    /// The blocks to look at.
    pub blocks: Vec<Block>,
}

impl Lattice {
    /// Samples `solid` with the given spacing (mm).
    pub fn sample(solid: &Solid, spacing: f32) -> Self {
        let (low, high) = solid.bounds();
        let margin = 2.0 * spacing;
        let origin = low - margin;
        let blocks_along =
            ((high - low + 2.0 * margin) / (spacing * BLOCK as f32)).ceil().as_uvec3() + UVec3::ONE;
        let blocks_along = blocks_along.to_array().map(|n| n as usize);
        let size = blocks_along.map(|n| n * BLOCK);
        let count = size[0] * size[1] * size[2];
        let mut lattice = Self {
            origin,
            spacing,
            size,
            distance: vec![FAR_MM; count],
            marrow: vec![FAR_MM; count],
            blocks: Vec::new(),
        };
        // The block and one sample around it.
        let reach = spacing * (BLOCK as f32 + 1.0) * 0.5 * 1.732_051;
        let deepest = reach * SAFETY + solid.thickest_cortex();
        let mut visited = Visited { along: blocks_along, done: vec![false; blocks_along.iter().product()] };
        let mut active = Active::default();
        for bz in 0..blocks_along[2] {
            for by in 0..blocks_along[1] {
                for bx in 0..blocks_along[0] {
                    let block = [bx, by, bz];
                    let corner = block.map(|b| b * BLOCK);
                    let centre = lattice.position(corner) + spacing * (BLOCK as f32 - 1.0) * 0.5;
                    solid.activate(centre, reach, &mut active);
                    if active.pieces.is_empty() {
                        continue;
                    }
                    let middle = solid.sample_active(centre, &active).distance;
                    if middle > reach * SAFETY {
                        continue;
                    }
                    if middle < -deepest {
                        lattice.fill(corner, middle);
                        continue;
                    }
                    solid.narrow(centre, reach, &mut active);
                    lattice.evaluate(solid, corner, &active);
                    visited.mark(block);
                    lattice.blocks.push(Block { corner, active: active.clone() });
                }
            }
        }
        let mut next = 0;
        while next < lattice.blocks.len() {
            let block = lattice.blocks[next].corner.map(|c| c / BLOCK);
            next += 1;
            for (axis, forward) in [(0, false), (0, true), (1, false), (1, true), (2, false), (2, true)] {
                let Some(neighbour) = visited.fresh_neighbour(block, axis, forward) else { continue };
                if lattice.signs_agree(block, axis, forward) {
                    continue;
                }
                let corner = neighbour.map(|b| b * BLOCK);
                let centre = lattice.position(corner) + spacing * (BLOCK as f32 - 1.0) * 0.5;
                solid.activate(centre, reach, &mut active);
                lattice.evaluate(solid, corner, &active);
                visited.mark(neighbour);
                lattice.blocks.push(Block { corner, active: active.clone() });
            }
        }
        lattice
    }

    /// Whether the samples on both sides of a block's face have the same signs.
    fn signs_agree(&self, block: [usize; 3], axis: usize, forward: bool) -> bool {
        let (u, v) = ((axis + 1) % 3, (axis + 2) % 3);
        (0..BLOCK * BLOCK).all(|i| {
            let mut here = block.map(|b| b * BLOCK);
            here[u] += i % BLOCK;
            here[v] += i / BLOCK;
            let mut there = here;
            if forward {
                here[axis] += BLOCK - 1;
                there[axis] += BLOCK;
            } else {
                there[axis] -= 1;
            }
            let (a, b) = (self.index(here), self.index(there));
            (self.distance[a] < 0.0) == (self.distance[b] < 0.0)
                && (self.marrow[a] < 0.0) == (self.marrow[b] < 0.0)
        })
    }

    /// Position of a sample, mm.
    pub fn position(&self, [i, j, k]: [usize; 3]) -> Vec3 {
        self.origin + self.spacing * Vec3::new(i as f32, j as f32, k as f32)
    }

    /// Index of a sample.
    pub fn index(&self, [i, j, k]: [usize; 3]) -> usize {
        i + self.size[0] * (j + self.size[1] * k)
    }

    fn fill(&mut self, [i, j, k]: [usize; 3], value: f32) {
        for dz in 0..BLOCK {
            for dy in 0..BLOCK {
                let row = self.index([i, j + dy, k + dz]);
                self.distance[row..row + BLOCK].fill(value);
                self.marrow[row..row + BLOCK].fill(value);
            }
        }
    }

    fn evaluate(&mut self, solid: &Solid, corner: [usize; 3], active: &Active) {
        const COUNT: usize = BLOCK * BLOCK * BLOCK;
        let within = |n: usize| [n % BLOCK, n / BLOCK % BLOCK, n / (BLOCK * BLOCK)];
        let points: [Vec3; COUNT] = std::array::from_fn(|n| {
            let [x, y, z] = within(n);
            self.position([corner[0] + x, corner[1] + y, corner[2] + z])
        });
        let (mut distance, mut cortex) = ([0.0; COUNT], [0.0; COUNT]);
        solid.sample_many(&points, active, &mut distance, &mut cortex);
        for row in 0..BLOCK * BLOCK {
            let [_, y, z] = within(row * BLOCK);
            let to = self.index([corner[0], corner[1] + y, corner[2] + z]);
            for x in 0..BLOCK {
                self.distance[to + x] = distance[row * BLOCK + x];
                self.marrow[to + x] = distance[row * BLOCK + x] + cortex[row * BLOCK + x];
            }
        }
    }
}

/// Which blocks have been sampled.
struct Visited {
    along: [usize; 3],
    done: Vec<bool>,
}

impl Visited {
    fn index(&self, [x, y, z]: [usize; 3]) -> usize {
        x + self.along[0] * (y + self.along[1] * z)
    }

    fn mark(&mut self, block: [usize; 3]) {
        let i = self.index(block);
        self.done[i] = true;
    }

    /// The neighbour over a face, if there is one and it has not been sampled.
    fn fresh_neighbour(&self, block: [usize; 3], axis: usize, forward: bool) -> Option<[usize; 3]> {
        let mut next = block;
        next[axis] = if forward { block[axis] + 1 } else { block[axis].checked_sub(1)? };
        (next[axis] < self.along[axis] && !self.done[self.index(next)]).then_some(next)
    }
}
