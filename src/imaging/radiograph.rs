//! The radiograph: Beer–Lambert attenuation through trunk and bones, windowed to grey.
//!
//! `-ln(I / I0) = μ_soft L_trunk + Σ (μ_cortex - μ_soft) L_bone + (μ_marrow - μ_cortex) L_marrow`, each L a signed sum over
//! triangles; the trunk, an elliptic cylinder, in closed form on a coarse grid. The picture shows this value less a share
//! of its own low frequencies (as a receptor's display processing evens out a field), between percentiles.
//!
//! Limits: one energy, no scatter, no noise, no blur.

use super::attenuation::{CORTICAL_PER_MM, SOFT_PER_MM, marrow_per_mm};
use super::c_arm::CArm;
use super::path_length::Raster;
use super::projection::Projection;
use crate::anatomy::patient::{Patient, Trunk};
use glam::DVec2;

/// How the picture is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// Fluoroscopy shows bone dark, a film shows it white.
    pub bone_dark: bool,
    /// Share of the low frequencies taken out, 0 to 1.
    pub evening: f32,
}

impl Default for Look {
    fn default() -> Self {
        Self { bone_dark: true, evening: 0.55 }
    }
}

/// Cells of the coarse grid along an edge.
const COARSE: usize = 32;

/// A picture and its buffers; nothing is allocated from frame to frame.
#[derive(Clone, Debug)]
pub struct Radiograph {
    raster: Raster,
    attenuation: Vec<f32>,
    trunk_mm: Vec<f32>,
    low: Vec<f32>,
    sorted: Vec<f32>,
    grey: Vec<u8>,
}

impl Radiograph {
    /// For the detector of `arm`.
    pub fn new(arm: &CArm) -> Self {
        let count = arm.pixels * arm.pixels;
        Self {
            raster: Raster::new(arm.pixels, arm.pixel_mm, arm.sid_mm),
            attenuation: vec![0.0; count],
            trunk_mm: vec![0.0; (COARSE + 1) * (COARSE + 1)],
            low: vec![0.0; (COARSE + 1) * (COARSE + 1)],
            sorted: Vec::with_capacity(count / 16),
            grey: vec![0; count],
        }
    }

    /// Pixels along an edge.
    pub fn size(&self) -> usize {
        self.raster.size()
    }

    /// Attenuation integral of every pixel of the last picture, row 0 at the top.
    pub fn attenuation(&self) -> &[f32] {
        &self.attenuation
    }

    /// Computes the picture: grey values, row 0 at the top.
    pub fn render(&mut self, patient: &Patient, view: &Projection, look: &Look) -> &[u8] {
        self.expose(patient, view);
        self.show(look);
        &self.grey
    }

    /// Computes the attenuation only.
    pub fn expose(&mut self, patient: &Patient, view: &Projection) {
        let cortex = (CORTICAL_PER_MM - SOFT_PER_MM) as f32;
        let marrow = (marrow_per_mm(patient.spec.bone_density) - CORTICAL_PER_MM) as f32;
        self.raster.clear();
        for bone in &patient.bones {
            self.raster.add(&bone.outer, &bone.edges, &bone.outer_chunks, view, cortex);
            self.raster.add(&bone.marrow, &bone.marrow_edges, &bone.marrow_chunks, view, marrow);
        }
        self.raster.finish();
        self.trace_trunk(&patient.trunk, view);
        let size = self.raster.size();
        let soft = SOFT_PER_MM as f32;
        for y in 0..size {
            let row = y * size;
            let (sums, slant) = (&self.raster.sums()[row..row + size], &self.raster.slant()[row..row + size]);
            let line = &mut self.attenuation[row..row + size];
            along_coarse_row(&self.trunk_mm, size, y, |x, trunk| {
                line[x] = sums[x] * slant[x] + soft * trunk;
            });
        }
    }

    fn trace_trunk(&mut self, trunk: &Trunk, view: &Projection) {
        let half = view.half_field_mm;
        for j in 0..=COARSE {
            for i in 0..=COARSE {
                let uv =
                    DVec2::new(i as f64 / COARSE as f64 - 0.5, 0.5 - j as f64 / COARSE as f64) * (2.0 * half);
                let ray = view.ray_through(uv);
                // Ellipse in the (x, y) plane: |(o + t r) / half|² = 1.
                let scale = DVec2::from_array(trunk.half_mm);
                let o = (view.source.truncate() - DVec2::from_array(trunk.centre_mm)) / scale;
                let r = ray.truncate() / scale;
                let (a, b, c) = (r.length_squared(), o.dot(r), o.length_squared() - 1.0);
                let disc = b * b - a * c;
                self.trunk_mm[j * (COARSE + 1) + i] =
                    if disc > 0.0 { (2.0 * disc.sqrt() / a) as f32 } else { 0.0 };
            }
        }
    }

    /// Windows the attenuation to grey.
    fn show(&mut self, look: &Look) {
        let size = self.raster.size();
        let cell = size / COARSE;
        // Means of the cells, then spread over a wide neighbourhood.
        let mut means = [0.0_f32; COARSE * COARSE];
        for (i, mean) in means.iter_mut().enumerate() {
            let (x0, y0) = ((i % COARSE) * cell, (i / COARSE) * cell);
            let sum: f32 = (0..cell)
                .step_by(2)
                .map(|y| {
                    let row = (y0 + y) * size + x0;
                    self.attenuation[row..row + cell].iter().step_by(2).sum::<f32>()
                })
                .sum();
            *mean = sum / (cell.div_ceil(2) * cell.div_ceil(2)) as f32;
        }
        const REACH: usize = 5;
        for j in 0..=COARSE {
            for i in 0..=COARSE {
                let (mut sum, mut weight) = (0.0, 0.0);
                for y in j.saturating_sub(REACH)..(j + REACH).min(COARSE) {
                    for x in i.saturating_sub(REACH)..(i + REACH).min(COARSE) {
                        sum += means[y * COARSE + x];
                        weight += 1.0;
                    }
                }
                self.low[j * (COARSE + 1) + i] = sum / weight;
            }
        }
        let evening = look.evening;
        for y in 0..size {
            let line = &mut self.attenuation[y * size..(y + 1) * size];
            along_coarse_row(&self.low, size, y, |x, low| line[x] -= evening * low);
        }
        self.sorted.clear();
        self.sorted.extend(self.attenuation.iter().skip(size / 3).step_by(17).copied());
        let n = self.sorted.len();
        let low = *self.sorted.select_nth_unstable_by(n / 100, f32::total_cmp).1;
        let high = *self.sorted.select_nth_unstable_by(n - 1 - n / 150, f32::total_cmp).1;
        let span = (high - low).max(0.05);
        // A little room at both ends so that lines do not clip.
        let (offset, gain) = (low - 0.06 * span, 255.0 / (1.16 * span));
        for (g, a) in self.grey.iter_mut().zip(&self.attenuation) {
            let value = ((a - offset) * gain).clamp(0.0, 255.0);
            *g = if look.bone_dark { 255.0 - value } else { value } as u8;
        }
    }
}

/// Visits a row of pixels with the bilinear value of a coarse grid at each.
fn along_coarse_row(grid: &[f32], size: usize, y: usize, mut visit: impl FnMut(usize, f32)) {
    let cell = size / COARSE;
    let fy = (y as f32 + 0.5) / cell as f32;
    let j = (fy as usize).min(COARSE - 1);
    let ty = fy - j as f32;
    let at = |i: usize| {
        let upper = grid[j * (COARSE + 1) + i];
        upper + ty * (grid[(j + 1) * (COARSE + 1) + i] - upper)
    };
    for i in 0..COARSE {
        let (a, b) = (at(i), at(i + 1));
        let step = (b - a) / cell as f32;
        let mut value = a + 0.5 * step;
        for x in i * cell..(i + 1) * cell {
            visit(x, value);
            value += step;
        }
    }
}
