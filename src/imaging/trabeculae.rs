//! The texture of cancellous bone, and the mottle of what lies around it, as a volume that the rays run through.
//!
//! A periodic block of power-law noise (octaves of white noise, each twice as fine as the one before and nearly as strong), of voxels
//! three times as long up the patient as across: trabeculae of the lumbar spine mostly stand upright. A ray's path through marrow of
//! length L meets L / ℓ independent pieces of it, whose sum has a standard deviation that goes with √L. It is taken at a few planes
//! across the beam, which stand for all: their places in the block are linear in the pixel's, so that a sample costs an addition and a
//! look-up. The same block, twelve times as large, mottles the trunk.
//!
//! With less mineral the struts that are left are fewer and coarser: the voxels grow. Strength and sizes are fitted for appearance; a power
//! law with an exponent of about 3 is what is found on films of the calcaneus and spine (memory).
//!
//! Limits: one block and one upright for all bones; depth within a bone is not followed, so that texture slides a little against a bone
//! far in front of or behind the isocentre while the beam turns.

use super::projection::Projection;
use glam::{DVec2, DVec3};
use std::sync::LazyLock;

/// Voxels of the block across and up.
pub const BLOCK: [usize; 2] = [128, 32];
/// Size of a voxel across at average density, mm.
const VOXEL_MM: f64 = 0.34;
/// Length of a voxel over its width.
const UPRIGHT: f64 = 3.0;
/// Where the planes stand from the isocentre towards the receptor, mm; odd, so that none repeats another.
const PLANES_MM: [f64; 5] = [-17.3, -8.9, 0.7, 9.4, 18.1];
/// Standard deviation of the attenuation behind 1 mm of marrow.
const STRENGTH: f64 = 0.0105;
/// Standard deviation of the trunk's mottle, and the size of its voxels over those of bone.
const MOTTLE: (f64, f64) = (0.035, 12.0);
/// Less marrow than this shows no texture, mm.
const LEAST_MARROW_MM: f32 = 0.3;
/// Pixels that are passed over at once where none has marrow.
const ABREAST: usize = 8;
/// Standard deviation of the block's values.
const UNIT: f32 = 42.0;

/// The block, x fastest, then y, then z (up).
pub static VOLUME: LazyLock<Vec<i8>> = LazyLock::new(volume);

fn volume() -> Vec<i8> {
    let mut random = super::detector::Random::new(0x7AB_EC01A);
    let mut white = || (random.next_bits() >> 40) as f32 / 8_388_608.0 - 1.0;
    let (mut side, mut height) = (8, 2);
    let mut grid: Vec<f32> = (0..side * side * height).map(|_| white()).collect();
    let mut strength = 1.0_f32;
    while side < BLOCK[0] {
        grid = doubled(&grid, side, height);
        (side, height) = (2 * side, 2 * height);
        // A linear rise between neighbours loses about half of the variance: what is added keeps the octaves nearly alike.
        strength *= 0.80;
        grid.iter_mut().for_each(|v| *v += strength * white());
    }
    let mean = grid.iter().sum::<f32>() / grid.len() as f32;
    let variance = grid.iter().map(|v| (v - mean) * (v - mean)).sum::<f32>() / grid.len() as f32;
    let gain = UNIT / variance.sqrt();
    grid.iter().map(|v| ((v - mean) * gain).clamp(-127.0, 127.0) as i8).collect()
}

/// A periodic grid at twice the resolution, linear between.
fn doubled(grid: &[f32], side: usize, height: usize) -> Vec<f32> {
    let along = |list: &[f32], count: usize, stride: usize| -> Vec<f32> {
        // Each run of `count` values with `stride` between becomes twice as long.
        let mut out = vec![0.0; 2 * list.len()];
        for (run, to) in list.chunks(count * stride).zip(out.chunks_mut(2 * count * stride)) {
            for i in 0..count {
                let next = (i + 1) % count;
                for s in 0..stride {
                    let (a, b) = (run[i * stride + s], run[next * stride + s]);
                    to[2 * i * stride + s] = a;
                    to[(2 * i + 1) * stride + s] = 0.5 * (a + b);
                }
            }
        }
        out
    };
    let x = along(grid, side, 1);
    let y = along(&x, side, 2 * side);
    along(&y, height, 4 * side * side)
}

/// A plane across the beam: where in the block the picture's middle is, and how far a pixel to the right and one down go, in voxels.
pub type Plane = [DVec3; 3];

/// The texture of one picture.
#[derive(Clone, Copy, Debug)]
pub struct Texture {
    /// The planes.
    pub planes: [Plane; 5],
    /// Attenuation that a value of one stands for behind 1 mm of marrow.
    pub strength: f32,
    mottled: [Plane; 5],
}

impl Texture {
    /// For pictures of `size` pixels a side through a patient of a bone density.
    pub fn new(view: &Projection, size: usize, density: f64) -> Self {
        let pixel_mm = 2.0 * view.half_field_mm / size as f64;
        let voxel = VOXEL_MM * (1.0 + 0.9 * (1.0 - density).max(0.0));
        let planes = |voxel: f64, spread: f64| {
            PLANES_MM.map(|mm| {
                let depth = view.sod_mm + spread * mm;
                let middle = in_block(view.source + view.d * depth, voxel);
                let step = pixel_mm * depth / view.sid_mm;
                [middle, in_block(view.right * step, voxel), in_block(-view.up * step, voxel)]
            })
        };
        let strength = STRENGTH / f64::from(UNIT) / libm::sqrt(PLANES_MM.len() as f64);
        Self {
            planes: planes(voxel, 1.0),
            strength: strength as f32,
            mottled: planes(VOXEL_MM * MOTTLE.1, 4.0),
        }
    }

    /// Adds the texture of a row to attenuation, given how much marrow each pixel's ray meets, mm.
    pub fn add(&self, y: usize, marrow_mm: &[f32], line: &mut [f32]) {
        // As an array, whose length the compiler knows: every voxel's number is within it.
        let Ok(volume) = <&[i8; BLOCK[0] * BLOCK[0] * BLOCK[1]]>::try_from(&VOLUME[..]) else { return };
        let middle = line.len() as f64 / 2.0 - 0.5;
        let places = self
            .planes
            .map(|[at, right, down]| (fixed(at + down * (y as f64 - middle) - right * middle), fixed(right)));
        for (i, (marrow, line)) in marrow_mm.chunks(ABREAST).zip(line.chunks_mut(ABREAST)).enumerate() {
            if marrow.iter().fold(0.0, |most: f32, &mm| most.max(mm)) <= LEAST_MARROW_MM {
                continue;
            }
            let start = (i * ABREAST) as u64;
            let mut at = places.map(|(left, right)| left.wrapping_add(right.wrapping_mul(start)));
            for (&mm, value) in marrow.iter().zip(line) {
                if mm > LEAST_MARROW_MM {
                    let sum: i32 = at.iter().map(|&place| i32::from(volume[voxel(place)])).sum();
                    *value += self.strength * mm.sqrt() * sum as f32;
                }
                for (place, (_, step)) in at.iter_mut().zip(&places) {
                    *place = place.wrapping_add(*step);
                }
            }
        }
    }

    /// Mottle of the trunk at a place in pixels from the picture's middle, right and down.
    pub fn mottle(&self, pixels: DVec2) -> f64 {
        let sum: i32 = self
            .mottled
            .iter()
            .map(|[at, right, down]| {
                i32::from(VOLUME[voxel(fixed(*at + *right * pixels.x + *down * pixels.y))])
            })
            .sum();
        MOTTLE.0 * f64::from(sum) / f64::from(UNIT) / libm::sqrt(PLANES_MM.len() as f64)
    }
}

/// A direction or place of the patient in voxels. The block stands a little turned, so that it repeats along none of the usual views.
fn in_block(p: DVec3, voxel_mm: f64) -> DVec3 {
    let (c, s) = (0.8192, 0.5736);
    DVec3::new(c * p.x + s * p.y, c * p.y - s * p.x, p.z / UPRIGHT) / voxel_mm
}

/// A place or step of the block has its three parts in one number, so that one addition steps them all: first bit of each, and where its
/// whole voxels begin. z is topmost; each part wraps as the block does, and what is carried into the next is a fraction's last bit a lap.
const X: [u32; 2] = [0, 16];
const Y: [u32; 2] = [23, 39];
const Z: [u32; 2] = [46, 59];

fn fixed(p: DVec3) -> u64 {
    let part =
        |v: f64, [first, whole]: [u32; 2]| ((v * f64::from(1_u32 << (whole - first))) as i64 as u64) << first;
    part(p.x, X).wrapping_add(part(p.y, Y)).wrapping_add(part(p.z, Z))
}

#[inline]
fn voxel(place: u64) -> usize {
    let of = |[_, whole]: [u32; 2], count: usize| (place >> whole) as usize & (count - 1);
    let [side, height] = BLOCK;
    (of(Z, height) * side + of(Y, side)) * side + of(X, side)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::imaging::c_arm::CArm;

    #[test]
    fn the_block_is_full_and_even() {
        let volume = &**VOLUME;
        assert_eq!(volume.len(), BLOCK[0] * BLOCK[0] * BLOCK[1]);
        let mean = volume.iter().map(|&v| f64::from(v)).sum::<f64>() / volume.len() as f64;
        assert!(mean.abs() < 1.0, "{mean}");
    }

    /// Power law: of a section across, the power of a wave falls with its frequency, by a slope between -2 and -4 in logarithms.
    #[test]
    fn power_falls_as_a_power_of_frequency() {
        let side = BLOCK[0];
        let power = |cycles: usize| {
            let mut sum = 0.0;
            for row in VOLUME.chunks(side) {
                let (mut re, mut im) = (0.0, 0.0);
                for (x, &v) in row.iter().enumerate() {
                    let (s, c) = libm::sincos(std::f64::consts::TAU * (cycles * x) as f64 / side as f64);
                    re += c * f64::from(v);
                    im += s * f64::from(v);
                }
                sum += re * re + im * im;
            }
            sum
        };
        // A line through a volume of exponent β has β - 2.
        let slope = libm::log(power(32) / power(6)) / libm::log(32.0 / 6.0);
        assert!(slope < -0.5 && slope > -2.0, "{slope}");
    }

    /// Twice the marrow gives √2 of the texture, and none gives none.
    #[test]
    fn strength_goes_with_the_root_of_the_marrow() {
        let view = Projection::new(&CArm::default(), DVec3::ZERO);
        let texture = Texture::new(&view, 512, 1.0);
        let deviation = |mm: f32| {
            let mut line = vec![0.0; 512];
            (0..64).for_each(|y| texture.add(8 * y, &[mm; 512], &mut line));
            (line.iter().map(|v| f64::from(v * v)).sum::<f64>() / 512.0).sqrt()
        };
        assert_eq!(deviation(0.0), 0.0);
        assert!((deviation(30.0) / deviation(15.0) - libm::sqrt(2.0)).abs() < 1e-3);
    }
}
