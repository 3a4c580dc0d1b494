//! A solid sampled on a cubic lattice, block by block, leaving out the blocks that no surface crosses.
//!
//! A block of `BLOCK³` samples is skipped when the field at its centre, divided by [`SAFETY`], says that neither the outer
//! surface nor the marrow surface can reach it or the samples next to it; it is then filled with that value, whose sign
//! is right and whose size nobody reads.

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
        let blocks_along = ((high - low + 2.0 * margin) / (spacing * BLOCK as f32)).ceil().as_uvec3() + UVec3::ONE;
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
        let half_diagonal = spacing * (BLOCK as f32 + 1.0) * 0.5 * 1.732_051;
        let deepest = half_diagonal * SAFETY + solid.thickest_cortex();
        let mut active = Active::default();
        for bz in 0..blocks_along[2] {
            for by in 0..blocks_along[1] {
                for bx in 0..blocks_along[0] {
                    let corner = [bx * BLOCK, by * BLOCK, bz * BLOCK];
                    let centre = lattice.position(corner) + spacing * (BLOCK as f32 - 1.0) * 0.5;
                    solid.activate(centre, half_diagonal, &mut active);
                    if active.pieces.is_empty() {
                        continue;
                    }
                    let middle = solid.sample_active(centre, &active).distance;
                    if middle > half_diagonal * SAFETY {
                        continue;
                    }
                    if middle < -deepest {
                        lattice.fill(corner, middle);
                        continue;
                    }
                    solid.narrow(centre, half_diagonal, &mut active);
                    lattice.evaluate(solid, corner, &active);
                    lattice.blocks.push(Block { corner, active: active.clone() });
                }
            }
        }
        lattice
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

    fn evaluate(&mut self, solid: &Solid, [i, j, k]: [usize; 3], active: &Active) {
        for dz in 0..BLOCK {
            for dy in 0..BLOCK {
                let row = self.index([i, j + dy, k + dz]);
                let start = self.position([i, j + dy, k + dz]);
                for dx in 0..BLOCK {
                    let sample = solid.sample_active(start + Vec3::X * (self.spacing * dx as f32), active);
                    self.distance[row + dx] = sample.distance;
                    self.marrow[row + dx] = sample.distance + sample.cortex;
                }
            }
        }
    }
}
