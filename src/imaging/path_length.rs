//! Weighted path length through closed meshes, a pixel at a time, as a signed sum over triangles.
//!
//! Along the ray of a pixel, `L = Σ ± t` over the triangles it meets, + where it leaves and - where it enters; the sum needs
//! no order and no depth buffer. `t` is taken as the depth along the central ray less the SOD (a constant that cancels on
//! a closed mesh), and the result is stretched to the slanted ray by [`Raster::slant`].
//!
//! The sum is done over edges, not over pixels. On the screen a triangle's depth is a plane P(x, y); along a row it is switched on
//! at one edge and off at another. So each edge, between the triangles P and Q, adds on every row that it crosses the step
//! `P - Q` and the change of slope at the first pixel past it, and one running sum along each row gives the picture. An edge is
//! crossed at the same pixel for both its triangles, so entries and exits balance exactly.
//!
//! Depth is linear on the screen within a triangle; for triangles of 2 mm at 700 mm that errs by at most
//! 2 · (2 / 2)² / 700 = 0.003 mm at one pixel and much less in the mean. Sums are f64: a step stays in the running sum to
//! the end of its row, and so would its rounding.

use super::projection::Projection;
use crate::geometry::chunks::Chunk;
use crate::geometry::mesh::{Edges, Mesh};
use glam::Vec3;

/// A square picture of weighted path lengths.
#[derive(Clone, Debug)]
pub struct Raster {
    size: usize,
    pixel_mm: f32,
    /// Step of value and of slope at each pixel, one pixel more than a row is long.
    steps: Vec<[f64; 2]>,
    sums: Vec<f32>,
    slant: Vec<f32>,
    screen: Vec<Vec3>,
    planes: Vec<Plane>,
}

/// Weighted depth over the screen, `base + across · x + down · y`; all zero for a triangle that is left out.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Plane {
    base: f64,
    across: f64,
    down: f64,
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
            steps: vec![[0.0; 2]; size * (size + 1)],
            sums: vec![0.0; size * size],
            slant,
            screen: Vec::new(),
            planes: Vec::new(),
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

    /// Empties the picture.
    pub fn clear(&mut self) {
        self.steps.fill([0.0; 2]);
    }

    /// Adds a closed mesh with the given weight (1/mm, or 1 for plain mm). Runs of triangles outside the field are passed over;
    /// what they would add lies outside the picture.
    pub fn add(&mut self, mesh: &Mesh, edges: &Edges, chunks: &[Chunk], view: &Projection, weight: f32) {
        let seen = |c: &&Chunk| view.sees(c.centre.as_dvec3(), f64::from(c.radius));
        if !chunks.iter().any(|c| seen(&c)) {
            return;
        }
        self.project_all(&mesh.positions, view);
        self.planes.clear();
        self.planes.resize(mesh.triangles.len(), Plane::default());
        for chunk in chunks.iter().filter(seen) {
            let run = chunk.first..chunk.end;
            for (plane, t) in self.planes[run.clone()].iter_mut().zip(&mesh.triangles[run]) {
                *plane = plane_of(t.map(|i| self.screen[i as usize]), weight);
            }
        }
        for (ends, triangles) in edges.ends.iter().zip(&edges.triangles) {
            let (p, q) = (self.planes[triangles[0] as usize], self.planes[triangles[1] as usize]);
            if p != q {
                let [a, b] = ends.map(|i| self.screen[i as usize]);
                add_edge(&mut self.steps, self.size, a, b, p, q);
            }
        }
    }

    /// Runs the sums along all rows.
    pub fn finish(&mut self) {
        let size = self.size;
        for (row, steps) in self.sums.chunks_mut(size).zip(self.steps.chunks(size + 1)) {
            let (mut value, mut slope) = (0.0, 0.0);
            for (pixel, step) in row.iter_mut().zip(steps) {
                value += slope + step[0];
                slope += step[1];
                *pixel = value as f32;
            }
        }
    }

    /// Column frame to (pixel x, pixel y downwards, depth less SOD).
    fn project_all(&mut self, positions: &[Vec3], view: &Projection) {
        let right = view.right.as_vec3();
        let up = view.up.as_vec3();
        let d = view.d.as_vec3();
        let source = view.source.as_vec3();
        let sod = view.sod_mm as f32;
        let scale = view.sid_mm as f32 / self.pixel_mm;
        let middle = self.size as f32 / 2.0;
        self.screen.clear();
        self.screen.extend(positions.iter().map(|&p| {
            let r = p - source;
            let depth = r.dot(d);
            let m = scale / depth.max(1.0);
            Vec3::new(middle + r.dot(right) * m, middle - r.dot(up) * m, depth - sod)
        }));
    }
}

/// First pixel whose centre is at or past `x`, clamped to the picture.
#[inline]
fn first_pixel(x: f32, size: f32) -> usize {
    // Through i32: that conversion is one instruction.
    (x.max(0.0).min(size) + 0.5) as i32 as usize
}

/// A triangle's weighted depth as a plane over the screen. A sliver's plane is all rounding: its mean depth does.
#[inline]
fn plane_of([a, b, c]: [Vec3; 3], weight: f32) -> Plane {
    let (ab, ac) = (b - a, c - a);
    let area = ab.x * ac.y - ac.x * ab.y;
    let weight = f64::from(weight);
    if area.abs() < 1e-3 {
        return Plane { base: weight * f64::from((a.z + b.z + c.z) / 3.0), across: 0.0, down: 0.0 };
    }
    let scale = weight / f64::from(area);
    let across = f64::from(ab.z * ac.y - ac.z * ab.y) * scale;
    let down = f64::from(ab.x * ac.z - ac.x * ab.z) * scale;
    Plane { base: weight * f64::from(a.z) - across * f64::from(a.x) - down * f64::from(a.y), across, down }
}

/// Adds the steps of an edge that runs from `a` to `b` in the triangle with plane `p` and back in that with plane `q`.
#[inline]
fn add_edge(steps: &mut [[f64; 2]], size: usize, a: Vec3, b: Vec3, p: Plane, q: Plane) {
    let limit = size as f32;
    // Always walked downwards. A triangle that faces the receptor (the ray leaves there) is clockwise on the screen, whose y runs
    // down: it begins at an edge that runs up.
    let (top, bottom, from, to) = if a.y < b.y { (a, b, q, p) } else { (b, a, p, q) };
    if a.x >= limit && b.x >= limit {
        return;
    }
    let (first, last) = (first_pixel(top.y, limit), first_pixel(bottom.y, limit));
    if first >= last {
        return;
    }
    let slope = (bottom.x - top.x) / (bottom.y - top.y);
    let (base, across, down) = (to.base - from.base, to.across - from.across, to.down - from.down);
    let centre = first as f32 + 0.5;
    let mut x = top.x + (centre - top.y) * slope;
    let mut value = base + down * f64::from(centre) + 0.5 * across;
    let stride = size + 1;
    for row in steps[first * stride..last * stride].chunks_exact_mut(stride) {
        let i = first_pixel(x, limit);
        row[i][0] += value + across * f64::from(i as u32);
        row[i][1] += across;
        x += slope;
        value += down;
    }
}
