//! Weighted path length through closed meshes, a pixel at a time, as a signed sum over triangles.
//!
//! Along the ray of a pixel, `L = Σ ± t` over the triangles it meets, + where it leaves and - where it enters; the sum needs
//! no order and no depth buffer. `t` is taken as the depth along the central ray less the SOD (a constant that cancels on
//! a closed mesh), and the result is stretched to the slanted ray by [`Raster::slant`].
//!
//! The sum is done over edges, not over pixels. On the screen a triangle's depth is a plane, and along a row its slope is switched
//! on at one edge and off at another. Two triangles that share an edge have the same depth along it, so that crossing the edge
//! changes the slope alone: each edge adds, on every row that it crosses, the change of slope `Δ` at the first pixel past it and
//! `Δ · (pixel - x)` to start it at the edge itself. One running sum along each row then gives the picture. Nothing is
//! added that does not cancel on a closed mesh.
//!
//! Depth is linear on the screen within a triangle; for triangles of 2 mm at 700 mm that errs by at most
//! 2 · (2 / 2)² / 700 = 0.003 mm at one pixel and much less in the mean.
//!
//! A change of slope stays in the running sum to the end of its row, and so would its rounding. Steps are therefore whole numbers of
//! 2⁻²¹ (`STEPS_A_UNIT`): what cancels, cancels wholly, in any order, and a number too large for 32 bits comes back as it went, since
//! all sums wrap. What is left is the rounding of single edges: about 1e-5 at the far end of a row through 300 triangles. A sum of 1024
//! (mm, or attenuation) and more would come out wrong.

use super::projection::Projection;
use crate::geometry::chunks::Chunk;
use crate::geometry::mesh::{Edges, Mesh};
use glam::Vec3;
use std::ops::Range;

/// Where a vertex is on the screen.
#[derive(Clone, Copy, Debug)]
struct Place {
    /// Pixels to the right, pixels down, depth less SOD (mm).
    at: Vec3,
    /// First row whose centre is at or past it, clamped to the picture.
    row: u32,
}

/// A square picture of weighted path lengths.
#[derive(Clone, Debug)]
pub struct Raster {
    size: usize,
    pixel_mm: f32,
    /// Step of value and of slope at each pixel, [`stride`] a row; nothing but zeros between one picture and the next.
    steps: Vec<[i32; 2]>,
    /// Whether something has been added that no sum has taken up.
    added: bool,
    sums: Vec<f32>,
    slant: Vec<f32>,
    screen: Vec<Place>,
    /// Of each triangle of the mesh that is being added, in steps a pixel.
    slopes: Vec<i64>,
}

impl Raster {
    /// `size` pixels of `pixel_mm` along each edge of a detector at `sid_mm` from the source.
    pub fn new(size: usize, pixel_mm: f64, sid_mm: f64) -> Self {
        let half = (size as f64 - 1.0) / 2.0;
        let slant = (0..size * size)
            .map(|i| {
                let x = ((i % size) as f64 - half) * pixel_mm / sid_mm;
                let y = ((i / size) as f64 - half) * pixel_mm / sid_mm;
                (1.0 + x * x + y * y).sqrt() as f32
            })
            .collect();
        Self {
            size,
            pixel_mm: pixel_mm as f32,
            steps: vec![[0; 2]; size * stride(size)],
            added: false,
            sums: vec![0.0; size * size],
            slant,
            screen: Vec::new(),
            slopes: Vec::new(),
        }
    }

    /// Pixels along an edge.
    pub fn size(&self) -> usize {
        self.size
    }

    /// Length of a pixel's ray over its depth along the central ray; row 0 is the top.
    pub fn slant(&self) -> &[f32] {
        &self.slant
    }

    /// Sums of `weight · depth` as of the last [`Self::finish`], to be multiplied by [`Self::slant`]; row 0 is the top.
    pub fn sums(&self) -> &[f32] {
        &self.sums
    }

    /// Forgets what has been added and not finished.
    pub fn clear(&mut self) {
        if self.added {
            self.steps.fill([0; 2]);
        }
        self.added = false;
    }

    /// Adds a closed mesh with the given weight (1/mm, or 1 for plain mm). Runs of triangles above, below and to the right of the
    /// field are passed over: rows run from the left, so that nothing there can reach the picture.
    pub fn add(&mut self, mesh: &Mesh, edges: &Edges, chunks: &[Chunk], view: &Projection, weight: f32) {
        let seen = |c: &&Chunk| view.rows_see(c.centre.as_dvec3(), f64::from(c.radius));
        if !chunks.iter().any(|c| view.sees(c.centre.as_dvec3(), f64::from(c.radius))) {
            return;
        }
        self.added = true;
        self.project_all(&mesh.positions, view);
        self.slopes.clear();
        self.slopes.resize(mesh.triangles.len(), 0);
        for chunk in chunks.iter().filter(seen) {
            let run = chunk.first..chunk.end;
            for (slope, t) in self.slopes[run.clone()].iter_mut().zip(&mesh.triangles[run]) {
                *slope = slope_of(t.map(|i| self.screen[i as usize].at), weight);
            }
        }
        // Each edge with the first of its triangles: a run that is passed over has none that reaches the picture.
        for chunk in chunks.iter().filter(seen) {
            let run = chunk.first_edge..chunk.end_edge;
            for (ends, triangles) in edges.ends[run.clone()].iter().zip(&edges.triangles[run]) {
                let [p, q] = triangles.map(|t| self.slopes[t as usize]);
                let change = p.wrapping_sub(q);
                let ends = ends.map(|i| self.screen[i as usize]);
                if change != 0 && ends[0].row != ends[1].row {
                    add_edge(&mut self.steps, self.size, ends, change);
                }
            }
        }
    }

    /// Runs the sums along all rows. The raster is then empty.
    pub fn finish(&mut self) {
        self.finish_rows(0..self.size);
        self.added = false;
    }

    /// Runs the sums along some rows. What was added to them is then taken up; all rows are to be finished before anything is added again.
    pub fn finish_rows(&mut self, rows: Range<usize>) {
        let size = self.size;
        let steps = &mut self.steps[rows.start * stride(size)..rows.end * stride(size)];
        run_along(&mut self.sums[rows.start * size..rows.end * size], steps, size);
        self.added = rows.end < size;
    }

    /// [`Self::finish`] into another picture of the same size: for one that is summed beside.
    pub fn finish_into(&mut self, sums: &mut [f32]) {
        run_along(sums, &mut self.steps, self.size);
        self.added = false;
    }

    /// Where vertices of the column frame come to stand.
    fn project_all(&mut self, positions: &[Vec3], view: &Projection) {
        let right = view.right.as_vec3();
        let up = view.up.as_vec3();
        let d = view.d.as_vec3();
        let source = view.source.as_vec3();
        let sod = view.sod_mm as f32;
        let scale = view.sid_mm as f32 / self.pixel_mm;
        let (middle, limit) = (self.size as f32 / 2.0, self.size as f32);
        self.screen.clear();
        self.screen.extend(positions.iter().map(|&p| {
            let r = p - source;
            let depth = r.dot(d);
            let m = scale / depth.max(1.0);
            let y = middle - r.dot(up) * m;
            // Through i32: that conversion is one instruction.
            let row = (y.clamp(0.0, limit) + 0.5) as i32 as u32;
            Place { at: Vec3::new(middle + r.dot(right) * m, y, depth - sod), row }
        }));
    }
}

/// Steps of the sums in one unit of depth times weight.
const STEPS_A_UNIT: f64 = 2_097_152.0;

/// Steps a row: one more than pixels for what ends past the last, and filled up to an odd number of cache lines (64 bytes, eight
/// steps), so that the rows of an object do not all fall on the same lines of the cache.
const fn stride(size: usize) -> usize {
    let lines = size / 8 + 1;
    (lines + 1 - lines % 2) * 8
}

/// Rows that are summed side by side: each sum waits for the one before it, and other rows fill the wait.
const ABREAST: usize = 4;

/// Runs the sums along rows and leaves zeros behind, while the steps are at hand.
fn run_along(sums: &mut [f32], steps: &mut [[i32; 2]], size: usize) {
    let stride = stride(size);
    let mut sums = sums.chunks_exact_mut(ABREAST * size);
    let mut steps = steps.chunks_exact_mut(ABREAST * stride);
    for (sums, steps) in sums.by_ref().zip(steps.by_ref()) {
        run_abreast(sums, steps, size);
    }
    let rest = sums.into_remainder().chunks_exact_mut(size);
    for (sums, steps) in rest.zip(steps.into_remainder().chunks_exact_mut(stride)) {
        let mut running = [0; 2];
        for (pixel, step) in sums.iter_mut().zip(&mut *steps) {
            take(&mut running, step, pixel);
        }
        steps[size] = [0; 2];
    }
}

/// [`ABREAST`] rows.
fn run_abreast(sums: &mut [f32], steps: &mut [[i32; 2]], size: usize) {
    let (ab, cd) = sums.split_at_mut(2 * size);
    let ((a, b), (c, d)) = (ab.split_at_mut(size), cd.split_at_mut(size));
    let (pq, rs) = steps.split_at_mut(steps.len() / 2);
    let ((p, q), (r, s)) = (pq.split_at_mut(stride(size)), rs.split_at_mut(stride(size)));
    let mut running = [[0; 2]; ABREAST];
    // Zipped, so that no place has to be checked.
    let pixels = a.iter_mut().zip(b).zip(c).zip(d);
    let all = pixels.zip(p.iter_mut()).zip(q.iter_mut()).zip(r.iter_mut()).zip(s.iter_mut());
    for (((((((a, b), c), d), p), q), r), s) in all {
        take(&mut running[0], p, a);
        take(&mut running[1], q, b);
        take(&mut running[2], r, c);
        take(&mut running[3], s, d);
    }
    // What ends past the last pixel.
    for row in [p, q, r, s] {
        row[size] = [0; 2];
    }
}

/// One pixel further with a running `[value, slope]`.
#[inline]
fn take([value, slope]: &mut [i32; 2], step: &mut [i32; 2], pixel: &mut f32) {
    *value = value.wrapping_add(slope.wrapping_add(step[0]));
    *slope = slope.wrapping_add(step[1]);
    *step = [0; 2];
    *pixel = *value as f32 * (1.0 / STEPS_A_UNIT) as f32;
}

/// How a triangle's weighted depth changes along a row, in steps a pixel.
#[inline]
fn slope_of([a, b, c]: [Vec3; 3], weight: f32) -> i64 {
    // In f64 from here on: the corners are the same numbers for all the triangles that meet there, and only then do the planes of
    // neighbours meet along their edge, slivers and all.
    let [a, b, c] = [a, b, c].map(Vec3::as_dvec3);
    let (ab, ac) = (b - a, c - a);
    let area = ab.x * ac.y - ac.x * ab.y;
    if area == 0.0 {
        return 0;
    }
    whole(f64::from(weight) * STEPS_A_UNIT * (ab.z * ac.y - ac.z * ab.y) / area)
}

/// The nearest whole number. Beside 1.5 · 2⁵² it falls into the last bits of the mantissa, which is faster than a conversion that has to
/// look for what does not fit.
#[inline]
fn whole(value: f64) -> i64 {
    const BESIDE: f64 = 6_755_399_441_055_744.0;
    if value.abs() < BESIDE / 4.0 {
        (value + BESIDE).to_bits().wrapping_sub(BESIDE.to_bits()) as i64
    } else {
        value as i64
    }
}

/// One pixel, and half of one, where columns are counted in 2⁻³² of a pixel.
const PIXEL: i64 = 1 << 32;
const HALF: i64 = PIXEL / 2;

/// Adds an edge that runs from one end to the other in a triangle whose slope is greater by `change` than that of the other one.
#[inline]
fn add_edge(steps: &mut [[i32; 2]], size: usize, ends: [Place; 2], change: i64) {
    // Always walked downwards. A triangle that faces the receptor (the ray leaves there) is clockwise on the screen, whose y runs
    // down: its rows end at an edge that runs down.
    // By index and not by a branch, which would go either way as often.
    let up = usize::from(ends[0].row > ends[1].row);
    let (top, bottom) = (ends[up], ends[1 - up]);
    let change = (change ^ -(up as i64)).wrapping_add(up as i64);
    let [top_x, top_y, bottom_x, bottom_y] = [top.at.x, top.at.y, bottom.at.x, bottom.at.y].map(f64::from);
    let limit = size as f64;
    if top_x >= limit && bottom_x >= limit {
        return;
    }
    let (first, last) = (top.row as usize, bottom.row as usize);
    let slant = (bottom_x - top_x) / (bottom_y - top_y);
    let x = top_x + (f64::from(first as u32) + 0.5 - top_y) * slant;
    let [mut x, slant] = [x, slant].map(|pixels| whole(pixels * PIXEL as f64));
    let stride = stride(size);
    let mut row = first * stride;
    for _ in first..last {
        // First pixel whose centre is at or past x.
        let i = (x.wrapping_add(HALF) >> 32).clamp(0, size as i64);
        let to_centre = ((i << 32) + HALF).wrapping_sub(x);
        let value = change.wrapping_mul(to_centre).wrapping_add(HALF) >> 32;
        let step = &mut steps[row + i as usize];
        step[0] = step[0].wrapping_add(value as i32);
        step[1] = step[1].wrapping_add(change as i32);
        x = x.wrapping_add(slant);
        row += stride;
    }
}
